package testsheet

import (
	"fyne.io/fyne/v2"

	"ebbwell/app/kit/field"
	"ebbwell/app/kit/look"
	"ebbwell/internal/climate"
	"ebbwell/internal/consult"
	"ebbwell/internal/evidence"
	"ebbwell/internal/quantity"
	"ebbwell/internal/record"
)

// before is the first part: the session, the air, the scale, the urine.
type before struct {
	b          *binder
	activities climate.Activities
	met        *field.Number
	folds      []*fold
	// hidden: body mass is kept out of sight, and with it kilocalories.
	hidden   bool
	masses   *weighingList
	mornings *weighingList
	urine    *look.Paragraph
	gravity  *field.Number
	colour   *field.Number
	// device leads to the file of a watch or a bike computer.
	device *field.Link
	// day is the day of the test as it was when a field was left last.
	day  record.Date
	body fyne.CanvasObject
}

// newBefore builds the part.
func newBefore(b *binder, hidden bool, askDevice func()) (*before, error) {
	activities, err := climate.LoadActivities()
	if err != nil {
		return nil, err
	}
	p := &before{b: b, activities: activities.Named(b.Desk.Words.Activity), hidden: hidden, device: newDeviceLink(b, "testsheet.device", askDevice)}
	p.body = look.VBox(paneGap, p.session(), p.air(), p.scale(), p.urineSheet())
	return p, nil
}

// show follows the sheet where the fields do not by themselves.
func (p *before) show(s sheet) {
	p.masses.show(s)
	p.mornings.show(s)
	p.met.SetPlaceholder(p.tableMet(s.Record))
	after := s.Record.Urine.When == record.After
	look.ShowIf(p.urine, after)
	for _, n := range []*field.Number{p.gravity, p.colour} {
		if after {
			n.Disable()
		}
	}
	for _, f := range p.folds {
		f.show()
	}
}

// tableMet is the metabolic rate the table gives for the activity.
func (p *before) tableMet(t record.Test) string {
	a, ok := p.activities.Find(t.Session.Activity)
	if !ok {
		return ""
	}
	return p.b.Say("testsheet.met.table", p.b.Desk.Words.Number(a.Met, 1))
}

// session is when, where and what.
func (p *before) session() fyne.CanvasObject {
	b, say := p.b, p.b.Say
	date := b.Date(PartBefore, "testsheet.date", field.Past, func(t *record.Test) (*record.Date, string) { return &t.Session.Date, "session.date" })
	start := b.Clock(PartBefore, "testsheet.start", func(t *record.Test) (*record.Clock, string) { return &t.Session.Start, "session.start" })
	place := b.Line(PartBefore, "testsheet.place", 200, func(t *record.Test) *string { return &t.Session.Place })
	effort := b.Rating(PartBefore, "testsheet.effort", say("testsheet.effort.low"), say("testsheet.effort.high"),
		at("session.effort", func(t *record.Test) *record.Number { return &t.Session.Effort }))
	return look.NewPanel(say("testsheet.session"), p.device, newForm(
		look.NewEntry(say("testsheet.date"), date), look.NewEntry(say("testsheet.start"), small(start)),
		look.NewEntry(say("testsheet.place"), place), look.NewEntry(say("testsheet.sport"), p.sport()),
		look.NewEntry(say("testsheet.activity"), look.MaxWidth(460, p.activity())).Wide(),
		look.NewEntry(say("testsheet.effort"), look.MaxWidth(400, effort)).Wide(),
	), p.work())
}

// work is how hard the session was, where something measured it.
func (p *before) work() fyne.CanvasObject {
	say, list := p.b.Say, []look.Entry{}
	controls := []string{"testsheet.power", "testsheet.speed", "testsheet.met"}
	power, _ := number(p.b, "session.power")
	speed, _ := number(p.b, "session.speed")
	met, field := number(p.b, "session.met")
	energy, used := number(p.b, "session.energy")
	p.met = field
	list = append(list, power, speed, met, energy)
	title := "testsheet.fold.work.hidden"
	if look.ShowIf(used, !p.hidden); !p.hidden {
		title, controls = "testsheet.fold.work", append(controls, "testsheet.energy")
	}
	body := look.VBox(8, newForm(list...), look.NewParagraph(say("testsheet.effort.note"), look.Note, look.Ink2))
	return p.fold("testsheet.fold.effort", say(title), body, controls...)
}

// fold folds fields of this part away.
func (p *before) fold(name, title string, body fyne.CanvasObject, controls ...string) fyne.CanvasObject {
	f := newFold(p.b, name, title, body, controls...)
	p.folds = append(p.folds, f)
	return f.box
}

// sport is one the program knows, or the athlete's own word.
func (p *before) sport() *field.Suggest {
	w := p.b.Desk.Words
	option := func(code string) field.Option {
		if consult.SportOf(code).Code == "" {
			return field.Option{Text: code}
		}
		return field.Option{Key: code, Text: w.Say("sport." + code)}
	}
	return p.b.Suggest(PartBefore, "testsheet.sport", func(text string) []field.Option {
		var all []field.Option
		for _, s := range consult.Sports() {
			all = append(all, option(s.Code))
		}
		return field.Matching(all, text)
	}, func(t record.Test) field.Option { return option(t.Session.Sport) },
		func(t *record.Test, o field.Option) { t.Session.Sport = keyOrText(o) }).Choosy()
}

// activity is a row of the table of activities, or the athlete's own words.
func (p *before) activity() *field.Suggest {
	option := func(a climate.Activity) field.Option {
		return field.Option{Key: a.ID, Text: a.Name, Note: p.b.Desk.Words.Amount(a.Met, quantity.Met)}
	}
	return p.b.Suggest(PartBefore, "testsheet.activity", func(text string) []field.Option {
		var list []field.Option
		for _, a := range p.activities.Search(text) {
			list = append(list, option(a))
		}
		return list
	}, func(t record.Test) field.Option {
		if a, ok := p.activities.Find(t.Session.Activity); ok {
			return option(a)
		}
		return field.Option{Text: t.Session.Activity}
	}, func(t *record.Test, o field.Option) { t.Session.Activity = keyOrText(o) }).Choosy()
}

// air is the weather, and what is worn in it.
func (p *before) air() fyne.CanvasObject {
	say := p.b.Say
	sun := p.b.Choice(PartBefore, "testsheet.air.sun", p.b.Options("sun.", suns()...), word(
		func(t record.Test) string { return string(t.Air.Sun) }, func(t *record.Test, w string) { t.Air.Sun = record.Sun(w) }))
	clothing := p.b.Choice(PartBefore, "testsheet.air.clothing", p.b.Options("clothing.", clothes()...), word(
		func(t record.Test) string { return t.Air.Clothing }, func(t *record.Test, w string) { t.Air.Clothing = w }))
	heat := p.b.Toggle(PartBefore, "testsheet.heat", p.b.Options("testsheet.heat.", string(record.AcclimatisedYes), string(record.AcclimatisedNo)), word(
		func(t record.Test) string { return string(t.Session.UsedToHeat) }, func(t *record.Test, w string) { t.Session.UsedToHeat = record.Acclimatised(w) }))
	temperature, _ := number(p.b, "air.temperature")
	humidity, _ := number(p.b, "air.humidity")
	wind, _ := number(p.b, "air.wind")
	altitude, _ := number(p.b, "air.altitude")
	wbgt, _ := number(p.b, "air.wbgt")
	rare := newForm(wind, altitude, wbgt, look.NewEntry(say("testsheet.air.clothing"), look.MaxWidth(190, clothing)))
	return panel(say("testsheet.air"), "", newForm(
		temperature, humidity, look.NewEntry(say("testsheet.heat"), look.MaxWidth(190, heat)),
		look.NewEntry(say("testsheet.air.sun"), look.MaxWidth(190, sun)),
	), p.fold("testsheet.fold.air", say("testsheet.fold.air"), rare,
		"testsheet.air.wind", "testsheet.air.altitude", "testsheet.air.wbgt", "testsheet.air.clothing"))
}

// suns lists the presets of sun, the strongest first.
func suns() []string {
	var list []string
	for _, s := range []record.Sun{record.SunHigh, record.SunLow, record.SunPart, record.SunOvercast, record.SunShade, record.SunNone} {
		list = append(list, string(s))
	}
	return list
}

// clothes lists what may be worn in play.
func clothes() []string {
	return []string{consult.ClothingVest, consult.ClothingShirt, consult.ClothingTracksuit}
}

// scale is the weighing before, and the mornings.
func (p *before) scale() fyne.CanvasObject {
	say := p.b.Say
	step, _ := number(p.b, "scale.step")
	dress := p.b.Toggle(PartBefore, "testsheet.scale.before", p.b.Options("testsheet.dress.", string(record.DressMinimal), string(record.DressKit)), word(
		func(t record.Test) string { return string(t.Scale.Before) }, func(t *record.Test, w string) { t.Scale.Before = record.Dress(w) }))
	p.masses = newWeighingList(p.b, PartBefore, record.Before)
	p.mornings = newWeighingList(p.b, PartBefore, record.Morning)
	mornings := look.VBox(8, newForm(look.NewEntry(say("testsheet.morning"), p.mornings.box).Wide()),
		look.NewParagraph(say("testsheet.morning.note"), look.Note, look.Ink2))
	folded := p.fold("testsheet.fold.mornings", say("testsheet.fold.mornings"), mornings, "testsheet.morning.mass.1")
	f := p.folds[len(p.folds)-1]
	f.words = func() string { return say("testsheet.fold.count", filledWeighings(p.b.Doc.Now(), record.Morning)) }
	return panel(say("testsheet.scale"), say("testsheet.scale.note"), newForm(
		look.NewEntry(say("testsheet.scale.before"), look.MaxWidth(400, dress)).Wide(),
		look.NewEntry(say("testsheet.before.mass"), p.masses.box), step,
	), folded)
}

// urineSheet is the marker where it is taken before the session.
func (p *before) urineSheet() fyne.CanvasObject {
	b, say := p.b, p.b.Say
	place := func(path string, of func(t *record.Test) *record.Number) func(t *record.Test, grow bool) (*record.Number, string) {
		return func(t *record.Test, grow bool) (*record.Number, string) {
			if t.Urine.When == record.After {
				return nil, path
			}
			if grow {
				t.Urine.When, t.Urine.NotTaken = record.Before, false
			}
			return of(t), path
		}
	}
	p.gravity = b.Number(PartBefore, "testsheet.before.gravity", evidence.USG, quantity.None, place("urine.gravity", func(t *record.Test) *record.Number { return &t.Urine.Gravity }))
	p.colour = b.Number(PartBefore, "testsheet.before.colour", evidence.UrineColour, quantity.None, place("urine.colour", func(t *record.Test) *record.Number { return &t.Urine.Colour }))
	p.gravity.SetDecimals(3)
	p.urine = look.NewParagraph(say("testsheet.before.urine.after"), look.Note, look.Ink2)
	return panel(say("testsheet.before.urine"), "", newForm(
		look.NewEntry(say("testsheet.urine.gravity"), small(p.gravity)), look.NewEntry(say("testsheet.urine.colour"), small(p.colour)),
	), p.urine)
}

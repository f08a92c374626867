package trip

import (
	"strconv"
	"strings"

	"fyne.io/fyne/v2"

	"ebbwell/app/kit/bind"
	"ebbwell/app/kit/field"
	"ebbwell/app/kit/look"
	"ebbwell/app/screen/heat"
	"ebbwell/internal/climate"
	"ebbwell/internal/consult"
	"ebbwell/internal/evidence"
	"ebbwell/internal/quantity"
	"ebbwell/internal/record"
)

// cityName is the control of a stop's city.
const cityName = "trip.stop.city"

// airForm is the air of a stop: from the climate table, or as typed.
type airForm struct {
	v       *View
	days    *look.Label
	city    *field.Suggest
	month   *field.Choice
	hour    *field.Choice
	typed   map[string]*field.Number
	byMonth fyne.CanvasObject
	credit  *look.Paragraph
	guessed *look.Paragraph
	body    *look.Sheet
}

// newAirForm makes the form.
func newAirForm(v *View) *airForm {
	p := &airForm{v: v, days: look.NewLabel("", look.Note, look.Ink2), typed: map[string]*field.Number{},
		credit: look.NewParagraph("", look.Note, look.Ink2), guessed: look.NewParagraph("", look.Note, look.Ink)}
	b, say := v.b, v.desk.Words.Say
	place := b.Line("stop", "trip.stop.place", 60, func(t *record.Trip) *string { return &v.here(t).Place })
	p.city = b.Suggest("stop", cityName, p.cities, func(t record.Trip) field.Option { return field.Option{Text: v.here(&t).City} },
		func(t *record.Trip, o field.Option) { v.here(t).City = strings.TrimSpace(o.Text) }).Choosy()
	p.city.SetPlaceholder(say("trip.city.type"))
	p.month = b.Choice("stop", "trip.stop.month", p.months(), bind.Word[record.Trip]{
		Get: func(t record.Trip) string { return strconv.Itoa(v.here(&t).Month) },
		Set: func(t *record.Trip, w string) {
			if m, err := strconv.Atoi(w); err == nil {
				v.here(t).Month = m
			}
		},
	})
	p.hour = b.Choice("stop", "trip.stop.hour", b.Options("trip.hour.", consult.Afternoon, consult.MeanOfDay, consult.HotDay), bind.Word[record.Trip]{
		Get: func(t record.Trip) string { return hourOf(v.here(&t).TimeOfDay) }, Set: func(t *record.Trip, w string) { v.here(t).TimeOfDay = w },
	})
	p.byMonth = look.VBox(formGap, row(say("trip.month"), 180, p.month), row(say("trip.hour"), 180, p.hour))
	dew := field.NewLink(v.desk.Host, "trip.stop.dewpoint", say("trip.dewpoint"), p.askDewPoint)
	humidity := p.number("humidity", evidence.Humidity, quantity.PerCent, func(a *record.Air) *record.Number { return &a.Humidity })
	p.body = look.NewPanel(say("trip.air"), p.days, look.VBox(formGap,
		row(say("trip.place"), 280, place), row(say("trip.city"), 280, p.city), p.byMonth,
		row(say("trip.temperature"), smallField, p.number("temperature", evidence.AirTemperature, quantity.DegreeCelsius, func(a *record.Air) *record.Number { return &a.Temperature })),
		row(say("trip.humidity"), smallField, humidity),
		row(say("trip.sun"), 180, p.word("sun", "sun.", suns(), func(a *record.Air) *string { return (*string)(&a.Sun) })),
		row(say("trip.wind"), smallField, p.number("wind", evidence.Wind, quantity.MetrePerSecond, func(a *record.Air) *record.Number { return &a.Wind })),
		row(say("trip.altitude"), smallField, p.number("altitude", evidence.Altitude, quantity.Metre, func(a *record.Air) *record.Number { return &a.Altitude })),
		look.Pad(0, 0, 0, -field.LinkPad, look.HBox(0, dew))), p.guessed, p.credit)
	return p
}

// smallField is the width of a field for a number, in px at 100 % text.
const smallField float32 = 112

// suns are the presets of the sun, the strongest first.
func suns() []string {
	var list []string
	for _, s := range climate.Suns() {
		list = append([]string{string(s)}, list...)
	}
	return list
}

// hourOf is the hour the table is read at; the afternoon unless said.
func hourOf(kept string) string {
	if kept == "" {
		return consult.Afternoon
	}
	return kept
}

// number binds a number of the air.
func (p *airForm) number(name string, f evidence.Field, u quantity.Unit, of func(a *record.Air) *record.Number) *field.Number {
	v := p.v
	n := v.b.Number("stop", "trip.stop."+name, f, u, func(t *record.Trip, _ bool) (*record.Number, string) {
		return of(&v.here(t).Air), v.path(t, "air."+name)
	})
	p.typed[name] = n
	return n
}

// word binds a word of the air.
func (p *airForm) word(name, beginning string, words []string, of func(a *record.Air) *string) *field.Choice {
	v := p.v
	c := v.b.Choice("stop", "trip.stop."+name, v.b.Options(beginning, words...), bind.Word[record.Trip]{
		Get: func(t record.Trip) string { return *of(&v.here(&t).Air) }, Set: func(t *record.Trip, w string) { *of(&v.here(t).Air) = w },
	})
	c.SetPlaceholder(v.desk.Words.Say("trip.choose"))
	return c
}

// cities are the places of the table that fit a text.
func (p *airForm) cities(text string) []field.Option {
	var list []field.Option
	for i, c := range p.v.places.Search(text) {
		if i == mostCities {
			break
		}
		list = append(list, field.Option{Key: c.Name, Text: p.v.desk.Words.Say("trip.city.named", p.v.desk.Words.City(c.Name), p.v.desk.Words.Country(c.Country))})
	}
	return list
}

// mostCities is how many cities are offered at once.
const mostCities = 12

// months are the months, with the one that the dates say first.
func (p *airForm) months() []field.Option {
	w := p.v.desk.Words
	list := []field.Option{{Key: "0", Text: w.Say("trip.month.dates")}}
	for m := 1; m <= 12; m++ {
		list = append(list, field.Option{Key: strconv.Itoa(m), Text: w.Say("month." + strconv.Itoa(m))})
	}
	return list
}

// show shows the air of a stop as it was worked out: what the table gives
// behind what was typed, and what is wrong with it.
func (p *airForm) show(sp heat.Speaker, a consult.StopAir, s record.Stop, err error) {
	p.days.SetText(stopLength(sp, s))
	look.ShowIf(p.byMonth, s.City != "")
	for name, x := range map[string]record.Number{"temperature": a.Air.Temperature, "humidity": a.Air.Humidity, "altitude": a.Air.Altitude} {
		p.hint(name, x)
	}
	p.hint("wind", record.Num(evidence.WindNotKnown, quantity.MetrePerSecond))
	setText(p.credit, credit(sp, a, s, p.v.places))
	guessed := ""
	if a.FromTable && a.Place.HighGuessed && hourOf(s.TimeOfDay) != consult.MeanOfDay {
		guessed = sp.Guessed()
	}
	setText(p.guessed, guessed)
	weight, sentence := field.Fine, troubleAt(sp, err, s, evidence.PlaceField)
	if sentence != "" {
		weight = field.Wrong
	}
	p.city.SetTrouble(weight, sentence)
	refresh(p.body)
}

// credit says which row of the climate table was used, with its credit; empty
// where it was not.
func credit(sp heat.Speaker, a consult.StopAir, s record.Stop, places climate.Places) string {
	if !a.FromTable {
		return ""
	}
	say := sp.Words.Say
	args := []any{sp.Words.City(a.City.Name), sp.Words.Country(a.City.Country), say("month." + strconv.Itoa(a.Month)), a.Place.Grade, places.Credit}
	switch hour := hourOf(s.TimeOfDay); hour {
	case consult.HotDay:
		return say("trip.table.hot-day", append(args, sp.By.Degrees(evidence.HotDayAdds))...)
	default:
		return say("trip.table."+hour, args...)
	}
}

// hint shows in an empty field what is taken instead.
func (p *airForm) hint(name string, x record.Number) {
	n := p.typed[name]
	if !x.Known() {
		n.SetPlaceholder("")
		return
	}
	u, decimals := unitOf(name)
	shown, err := quantity.Convert(*x.Value, u, p.v.b.By.Unit(u))
	if err != nil {
		shown = *x.Value // the two units are of one kind
	}
	n.SetPlaceholder(p.v.desk.Words.Number(shown, decimals))
}

// unitOf is the unit a number of the air is kept in, and the decimals it is
// shown with.
func unitOf(name string) (u quantity.Unit, decimals int) {
	switch name {
	case "temperature":
		return quantity.DegreeCelsius, 1
	case "humidity":
		return quantity.PerCent, 0
	case "wind":
		return quantity.MetrePerSecond, 1
	}
	return quantity.Metre, 0
}

// stopLength are the days of a stop and how many they are.
func stopLength(sp heat.Speaker, s record.Stop) string {
	from, ok1 := s.From.Time()
	until, ok2 := s.Until.Time()
	if !ok1 || !ok2 {
		return sp.Words.Say("trip.days.open")
	}
	n, err := climate.StopDays(from, until)
	if err != nil {
		return "" // said where nothing follows from it
	}
	return sp.Words.Say("trip.days", n, sp.Span(from, until))
}

// ptr is a pointer to a copy.
func ptr[T any](x T) *T { return &x }

// askDewPoint reads a dew point, as forecasts give it, and writes down the
// humidity it means.
func (p *airForm) askDewPoint() {
	v, say := p.v, p.v.desk.Words.Say
	sp := v.speaker(nil)
	n := field.NewNumber(v.desk.Host, "trip.dewpoint.value", evidence.DewPointField, quantity.DegreeCelsius)
	n.SetShown(v.b.By.Unit(quantity.DegreeCelsius))
	trouble := look.NewParagraph("", look.Note, look.Ink)
	take := func() (stay bool) {
		air, err := consult.AirOf(*v.here(ptr(v.now())), v.places)
		dew, ok := n.Value()
		switch {
		case err != nil || !air.Air.Temperature.Known():
			trouble.SetText(say("trip.dewpoint.air"))
			return true
		case !ok:
			trouble.SetText(say("trip.dewpoint.none"))
			return true
		}
		made, err := climate.AirFromDewPoint(quantity.Celsius(*air.Air.Temperature.Value), quantity.Celsius(dew))
		if err != nil {
			trouble.SetText(sentences(sp, err))
			return true
		}
		v.b.Pick("trip.stop.humidity", func(s *sheet) {
			here := v.here(&s.Record)
			here.Air.Humidity = record.Num(quantity.Round(float64(made.Humidity()), 0), quantity.PerCent)
			delete(s.Raw, v.path(&s.Record, "air.humidity"))
		})
		v.b.Show()
		return false
	}
	v.desk.Host.Ask(v.canvas(), field.Question{
		Name: "trip.dewpoint", Title: say("trip.dewpoint.title"), Sentence: say("trip.dewpoint.sentence"),
		Content: look.VBox(8, row(say("trip.dewpoint.label"), smallField, n), trouble),
		Actions: []field.Action{{Name: "no", Text: say("field.ask.cancel")}, {Name: "yes", Text: say("trip.dewpoint.take"), Kind: field.Primary, Do: take}},
	})
}

// sentences are the troubles of an error in words.
func sentences(sp heat.Speaker, err error) string {
	var list []string
	for _, t := range sp.Troubles(err, record.Stop{}) {
		list = append(list, t.Sentence)
	}
	return strings.Join(list, " ")
}

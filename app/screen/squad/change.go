package squad

import (
	"strconv"

	"fyne.io/fyne/v2"

	"ebbwell/app/kit/desk"
	"ebbwell/app/kit/field"
	"ebbwell/app/kit/look"
	"ebbwell/internal/consult"
	"ebbwell/internal/evidence"
	"ebbwell/internal/quantity"
	"ebbwell/internal/record"
	"ebbwell/internal/squad"
)

// mostBottles is how many kinds of bottle all may share.
const mostBottles = 4

// changing is the dialog that changes what holds for all.
type changing struct {
	v     *View
	visit string
}

// askChange asks what holds for all; every value is written through as it is typed.
func (v *View) askChange() {
	c := &changing{v: v}
	say := v.say
	content := look.VBox(10,
		look.NewForm(
			look.NewEntry(say("squad.change.name"), c.line("name", 60, func(g *record.GroupSession) *string { return &g.Name })),
			look.NewEntry(say("squad.change.day"), c.day()),
			look.NewEntry(say("squad.change.place"), c.line("place", 80, func(g *record.GroupSession) *string { return &g.Session.Place })),
			look.NewEntry(say("squad.change.sport"), c.sport()),
			look.NewEntry(say("squad.change.start"), c.clock("start", func(g *record.GroupSession) *record.Clock { return &g.Session.Start })),
			look.NewEntry(say("squad.change.end"), c.clock("end", func(g *record.GroupSession) *record.Clock { return &g.Session.End })),
			look.NewEntry(say("squad.change.temperature"), c.number("temperature", evidence.AirTemperature, quantity.DegreeCelsius, func(g *record.GroupSession) *record.Number { return &g.Air.Temperature })),
			look.NewEntry(say("squad.change.humidity"), c.number("humidity", evidence.Humidity, quantity.PerCent, func(g *record.GroupSession) *record.Number { return &g.Air.Humidity })),
			look.NewEntry(say("squad.change.wind"), c.number("wind", evidence.Wind, quantity.MetrePerSecond, func(g *record.GroupSession) *record.Number { return &g.Air.Wind })),
			look.NewEntry(say("squad.change.sun"), c.sun()),
			look.NewEntry(say("squad.change.met"), c.number("met", evidence.MetValue, quantity.Met, func(g *record.GroupSession) *record.Number { return &g.Session.Met })),
			look.NewEntry(say("squad.change.patch"), c.patch()),
			look.NewEntry(say("squad.change.known"), c.number("known", "", quantity.Kilogram, func(g *record.GroupSession) *record.Number { return &g.Check.Known })),
			look.NewEntry(say("squad.change.read"), c.number("read", "", quantity.Kilogram, func(g *record.GroupSession) *record.Number { return &g.Check.Read })),
			look.NewEntry(say("squad.change.step"), look.HBox(0, look.MinSized(140, 0, c.number("step", evidence.ScaleStep, quantity.Kilogram, func(g *record.GroupSession) *record.Number { return &g.ScaleStep })))).Wide(),
		), look.NewLabel(say("squad.change.bottles"), look.Strong, look.Ink), c.bottles(),
		look.NewLabel(say("squad.sound"), look.Strong, look.Ink), v.soundPart())
	v.desk.Host.Ask(v.canvas(), field.Question{
		Name: "squad.change", Title: say("squad.change.title"), Sentence: say("squad.change.sentence"), Content: look.Pad(0, look.BarRoom+4, 0, 0, content), Width: 740,
		Actions:  []field.Action{{Name: "done", Text: say("squad.change.done"), Kind: field.Primary}},
		OnClosed: func() { v.reopen(); v.changed(); v.openAgain() },
	})
}

// openAgain gives the keyboard back to the row at the scale.
func (v *View) openAgain() {
	if v.open != nil {
		v.open.focusFirst("")
	}
}

// typed takes a key in.
func (c *changing) typed(name string, f func(*record.GroupSession)) {
	if c.visit == "" {
		c.visit = desk.NewVisit()
	}
	c.v.doc.ChangeSession(c.visit, name, f)
	c.v.changed()
}

func (c *changing) left() {
	c.visit = ""
	c.v.left()
}

func (c *changing) line(name string, most int, at func(*record.GroupSession) *string) *field.Line {
	l := field.NewLine(c.v.desk.Host, "squad.change."+name, most)
	g := c.v.doc.Now().session
	l.SetText(*at(&g))
	l.OnChanged = func(text string) { c.typed(name, func(g *record.GroupSession) { *at(g) = text }) }
	l.OnLeft = func(string) { c.left() }
	return l
}

func (c *changing) number(name string, f evidence.Field, u quantity.Unit, at func(*record.GroupSession) *record.Number) *field.Number {
	n := field.NewNumber(c.v.desk.Host, "squad.change."+name, f, u)
	n.SetShown(c.v.speaker(false).By.Unit(u))
	g := c.v.doc.Now().session
	if x := at(&g); x.Known() {
		n.SetValue(*x.Value)
	}
	n.OnChanged = func(r field.Reading) {
		c.typed(name, func(g *record.GroupSession) {
			*at(g) = record.Number{}
			if r.Known {
				*at(g) = record.Num(r.Value, r.Unit)
			}
			if name == "read" || name == "known" {
				g.Check.At = c.v.now()
			}
		})
	}
	n.OnLeft = func(field.Reading) { c.left() }
	return n
}

func (c *changing) clock(name string, at func(*record.GroupSession) *record.Clock) *field.Clock {
	f := field.NewClock(c.v.desk.Host, "squad.change."+name)
	g := c.v.doc.Now().session
	f.SetClock(*at(&g))
	f.OnChanged = func(clock record.Clock) {
		c.typed(name, func(g *record.GroupSession) {
			*at(g) = clock
			squad.CrossMidnight(&g.Session)
		})
	}
	f.OnLeft = func(record.Clock, bool) { c.left() }
	return f
}

// day is the day of the session: another than today where paper is entered afterwards.
func (c *changing) day() *field.Date {
	f := field.NewDate(c.v.desk.Host, "squad.change.day", field.Past)
	f.SetDate(c.v.doc.Now().session.Session.Date)
	f.OnChanged = func(day record.Date) {
		if day != "" {
			c.typed("day", func(g *record.GroupSession) { g.Session.Date = day })
		}
	}
	f.OnLeft = func(record.Date, bool) { c.left() }
	return f
}

func (c *changing) pick(name string, f func(*record.GroupSession)) {
	c.v.doc.ChangeSession("", name, f)
	c.v.flush()
	c.v.changed()
}

func (c *changing) sun() *field.Choice {
	options := []field.Option{{Key: "", Text: c.v.say("squad.change.unsaid")}}
	for _, s := range []record.Sun{record.SunHigh, record.SunLow, record.SunPart, record.SunOvercast, record.SunShade, record.SunNone} {
		options = append(options, field.Option{Key: string(s), Text: c.v.say("sun." + string(s))})
	}
	f := field.NewChoice(c.v.desk.Host, "squad.change.sun", options)
	f.Choose(string(c.v.doc.Now().session.Air.Sun))
	f.OnChosen = func(key string) { c.pick("sun", func(g *record.GroupSession) { g.Air.Sun = record.Sun(key) }) }
	return f
}

func (c *changing) sport() *field.Choice {
	options := []field.Option{{Key: "", Text: c.v.say("squad.change.unsaid")}}
	for _, known := range consult.Sports() {
		s := known.Code
		options = append(options, field.Option{Key: s, Text: desk.SportWord(c.v.desk.Words, s)})
	}
	f := field.NewChoice(c.v.desk.Host, "squad.change.sport", options)
	f.Choose(c.v.doc.Now().session.Session.Sport)
	f.OnChosen = func(key string) {
		c.pick("sport", func(g *record.GroupSession) { g.Session.Sport = key })
	}
	return f
}

// patch is where the patches sit.
func (c *changing) patch() *field.Choice {
	options := []field.Option{{Key: "", Text: c.v.say("squad.change.nopatch")}}
	for _, s := range []string{
		string(record.SiteForearmDorsal), string(record.SiteUpperArm), string(record.SiteChest), string(record.SiteBack), string(record.SiteForehead),
		string(record.SiteThigh), string(record.SiteCalf), string(record.SiteForearmDorsal) + "," + string(record.SiteBack),
	} {
		options = append(options, field.Option{Key: s, Text: c.siteWords(s)})
	}
	f := field.NewChoice(c.v.desk.Host, "squad.change.patch", options)
	f.Choose(c.v.doc.Now().session.PatchSites)
	f.OnChosen = func(key string) { c.pick("patch", func(g *record.GroupSession) { g.PatchSites = key }) }
	return f
}

// siteWords name one site, or two.
func (c *changing) siteWords(sites string) string {
	var names []string
	for _, s := range squad.Sites(record.GroupSession{PatchSites: sites}) {
		names = append(names, c.v.say("testsheet.site."+string(s)))
	}
	return c.v.desk.Words.List(names)
}

// bottles are the kinds of bottle everybody gets: what is in them, how much they
// hold, what they weigh empty.
func (c *changing) bottles() fyne.CanvasObject {
	say := c.v.say
	tracks := []look.Track{look.Fixed(24), look.Share(1), look.Fixed(110), look.Fixed(110)}
	head := look.Columns(10, tracks, look.Gap(1, 1), look.NewLabel(say("squad.change.drink"), look.Note, look.Ink2),
		look.NewLabel(say("squad.change.volume"), look.Note, look.Ink2).Right(), look.NewLabel(say("squad.change.empty"), look.Note, look.Ink2).Right())
	box := look.VBox(6, head)
	for i := range mostBottles {
		name := "bottle." + strconv.Itoa(i+1)
		what := field.NewSuggest(c.v.desk.Host, "squad.change."+name, true, c.drinks).Choosy()
		if g := c.v.doc.Now().session; i < len(g.Bottles) {
			what.Set(field.Option{Key: string(g.Bottles[i].ProductID), Text: c.v.drinkName(g.Bottles[i].ProductID, g.Bottles[i].Name)})
		}
		put := func(o field.Option) {
			c.typed(name, func(g *record.GroupSession) { putDrink(g, i, o) })
		}
		what.OnChosen = put
		what.OnChanged = func(text string) {
			if _, taken := what.Taken(); !taken {
				put(field.Option{Text: text})
			}
		}
		what.OnLeft = func(string, bool) { c.left() }
		kind := func(of func(*record.BottleKind) *record.Number) func(*record.GroupSession) *record.Number {
			return func(g *record.GroupSession) *record.Number {
				if i >= len(g.Bottles) {
					return &record.Number{}
				}
				return of(&g.Bottles[i])
			}
		}
		volume := c.number(name+".volume", evidence.PouredVolume, quantity.Millilitre, kind(func(b *record.BottleKind) *record.Number { return &b.Volume }))
		empty := c.number(name+".empty", evidence.BottleMass, quantity.Gram, kind(func(b *record.BottleKind) *record.Number { return &b.Empty }))
		box.Add(look.Columns(10, tracks, look.NewLabel(strconv.Itoa(i+1), look.Note, look.Ink2).Right(), what, volume, empty))
	}
	return box
}

// putDrink writes what is in the i-th bottle; an empty text takes the last away.
func putDrink(g *record.GroupSession, i int, o field.Option) {
	switch {
	case i > len(g.Bottles):
		return
	case i == len(g.Bottles) && (o.Key != "" || o.Text != ""):
		g.Bottles = append(g.Bottles, record.BottleKind{Meta: record.Meta{ID: record.NewID()}, Order: i + 1})
	case i == len(g.Bottles):
		return
	case o.Key == "" && o.Text == "" && i == len(g.Bottles)-1:
		g.Bottles = g.Bottles[:i]
		return
	}
	g.Bottles[i].ProductID, g.Bottles[i].Name = record.ID(o.Key), o.Text
}

// drinks are the drinks that fit a text.
func (c *changing) drinks(text string) []field.Option {
	var list []field.Option
	for _, p := range c.v.desk.Products().Drinks() {
		list = append(list, field.Option{Key: p.ID, Text: p.Name})
	}
	return field.Matching(list, text)
}

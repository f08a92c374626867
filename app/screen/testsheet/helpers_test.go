package testsheet

import (
	"context"
	"strings"
	"testing"

	"fyne.io/fyne/v2"

	"ebbwell/app/apptest"
	"ebbwell/app/kit/desk"
	"ebbwell/app/kit/field"
	"ebbwell/app/kit/look"
	"ebbwell/app/kit/look/golden"
	"ebbwell/internal/consult"
	"ebbwell/internal/evidence"
	"ebbwell/internal/quantity"
	"ebbwell/internal/record"
	"ebbwell/internal/store"
)

// bench is a sheet in a window.
type bench struct {
	t    *testing.T
	desk *desk.Desk
	went *[]desk.Place
	who  record.Athlete
	v    *View
	w    fyne.Window
}

// sized is a window as large as the screen's room in a window of a size.
func sized(width, height float32) fyne.Size { return fyne.NewSize(width-180, height-56) }

// openAt opens a place in a window of 1180 x 760.
func openAt(t *testing.T, d *desk.Desk, went *[]desk.Place, place desk.Place) *bench {
	t.Helper()
	golden.Use(t, golden.Mode{Percent: 100})
	v, err := New(d, place)
	if err != nil {
		t.Fatal(err)
	}
	d.Host.OnKey = v.Key
	a, err := d.Store.LoadAthlete(context.Background(), place.Athlete)
	if err != nil {
		t.Fatal(err)
	}
	return &bench{t: t, desk: d, went: went, who: a, v: v, w: golden.Open(t, v.Body(), sized(1180, 760))}
}

// newSheet opens a new sheet for an adult with consents.
func newSheet(t *testing.T) *bench {
	t.Helper()
	d, went := apptest.Desk(t)
	a := consenting(t, d)
	return openAt(t, d, went, desk.Place{Screen: desk.Tests, Athlete: a.ID, New: true})
}

// consenting is an adult who agreed to tests and urine samples.
func consenting(t *testing.T, d *desk.Desk) record.Athlete {
	t.Helper()
	a := apptest.Athlete(t, d)
	for _, p := range []record.Purpose{record.ConsentTest, record.ConsentUrine} {
		a.Consents = append(a.Consents, record.Consent{Meta: record.Meta{ID: record.NewID()}, AthleteID: a.ID, Purpose: p, Given: "2026-01-05", GivenBy: a.Name})
	}
	a, err := d.Store.SaveAthlete(context.Background(), a, store.Edit{})
	if err != nil {
		t.Fatal(err)
	}
	return a
}

// enter types into a control and leaves it.
func (b *bench) enter(name, text string) {
	b.t.Helper()
	apptest.Type(b.t, b.w, name, text)
	if b.w.Canvas().Overlays().Top() != nil {
		apptest.Press(b.w, fyne.KeyEscape) // a list of matches
	}
	apptest.Leave(b.w)
}

// part shows a part by its tab.
func (b *bench) part(part string) {
	b.t.Helper()
	b.v.showPart(part)
}

// kept is the sheet as it is in the data file.
func (b *bench) kept() record.Test {
	b.t.Helper()
	if err := b.desk.Keep.Flush(context.Background()); err != nil {
		b.t.Fatal(err)
	}
	t, err := b.desk.Store.LoadTest(context.Background(), b.v.b.Doc.Now().Record.ID)
	if err != nil {
		b.t.Fatal(err)
	}
	return t
}

// fill enters a whole sheet, as it is done on the day.
func (b *bench) fill() {
	b.t.Helper()
	b.enter("testsheet.start", "14:00")
	b.enter("testsheet.place", "Millrace Park")
	b.enter("testsheet.air.temperature", "31")
	b.enter("testsheet.air.humidity", "46")
	b.enter("testsheet.scale.step", "0.05")
	b.enter("testsheet.before.mass.1", "64,0")
	apptest.Click(b.t, b.w, "testsheet.effort")
	b.part(PartBottles)
	b.enter("testsheet.bottle.1.before", "712")
	b.enter("testsheet.bottle.1.after", "412")
	b.enter("testsheet.bottle.2.what", "Sports drink 6 %")
	b.enter("testsheet.bottle.2.before", "688")
	b.enter("testsheet.bottle.2.after", "432")
	b.part(PartAfter)
	b.enter("testsheet.guess", "0.8")
	b.enter("testsheet.end", "15:35")
	b.enter("testsheet.after.mass.1", "62.4")
	apptest.Click(b.t, b.w, "testsheet.urine.none")
	b.part(PartUrine)
	b.enter("testsheet.urine.gravity", "1.016")
	apptest.Click(b.t, b.w, "testsheet.urine.when")
	apptest.Click(b.t, b.w, "testsheet.patch.add")
	b.enter("testsheet.patch.1.on", "14:28")
	b.enter("testsheet.patch.1.off", "15:20")
}

// aTest is a whole test of an athlete, not kept yet.
func aTest(a record.Athlete, day record.Date, after float64) record.Test {
	n := func(x float64, u quantity.Unit) record.Number { return record.Num(x, u) }
	id := record.NewID()
	return record.Test{
		Meta: record.Meta{ID: id}, AthleteID: a.ID, State: record.TestOpen,
		Session: record.Session{Date: day, Place: "Weirside Ground", Sport: "field-hockey", Activity: "field-hockey", Start: "14:00", End: "15:35", Effort: n(7, quantity.None)},
		Air:     record.Air{Temperature: n(24, quantity.DegreeCelsius), Humidity: n(52, quantity.PerCent)},
		Scale:   record.Scale{Step: n(0.05, quantity.Kilogram), Before: record.DressMinimal, After: record.DressMinimal},
		Loss:    record.Loss{NoUrine: true, NoStool: true, Guess: n(0.8, quantity.Litre)},
		Urine:   record.Urine{Gravity: n(1.016, quantity.None), When: record.Before},
		Weighings: []record.Weighing{
			{Meta: record.Meta{ID: record.NewID()}, TestID: id, Moment: record.Before, Mass: n(64, quantity.Kilogram)},
			{Meta: record.Meta{ID: record.NewID()}, TestID: id, Moment: record.After, Mass: n(after, quantity.Kilogram)},
		},
		Bottles: []record.Bottle{
			{Meta: record.Meta{ID: record.NewID()}, TestID: id, ProductID: consult.Water, Use: record.UseDrunk, Before: n(712, quantity.Gram), After: n(412, quantity.Gram)},
			{Meta: record.Meta{ID: record.NewID()}, TestID: id, Order: 1, ProductID: "generic.drink-6", Use: record.UseDrunk, Before: n(688, quantity.Gram), After: n(432, quantity.Gram)},
		},
		Patches: []record.Patch{{
			Meta: record.Meta{ID: record.NewID()}, TestID: id, Site: record.SiteForearmDorsal, Side: "left", On: "14:28", Off: "15:20",
			Sodium: n(47.5, quantity.MillimolePerLitre), Method: record.MethodDirectElectrode, Condition: record.PatchGood,
		}},
	}
}

// closedTest keeps a closed test of an athlete.
func closedTest(t *testing.T, d *desk.Desk, a record.Athlete, day record.Date, after float64) record.Test {
	t.Helper()
	test := aTest(a, day, after)
	test.State = record.TestClosed
	inputs, results, err := consult.FreezeTest(consult.Find(test, a, nil, d.Calculate()), a, nil, d.Calculate())
	if err != nil {
		t.Fatal(err)
	}
	test, err = d.Store.CloseTest(context.Background(), test, store.Freezing{Inputs: inputs, Results: results, Evidence: evidence.Version}, store.Edit{})
	if err != nil {
		t.Fatal(err)
	}
	return test
}

// fieldWeight is how much a trouble matters.
type fieldWeight = field.Weight

// find is the control with a name in sight.
func find(w fyne.Window, name string) fyne.CanvasObject {
	if top := w.Canvas().Overlays().Top(); top != nil {
		return field.Find(top, name)
	}
	return field.Find(w.Content(), name)
}

// eachText visits every text in sight.
func eachText(o fyne.CanvasObject, at fyne.Position, visit func(text string, at fyne.Position)) {
	if o == nil || !o.Visible() {
		return
	}
	if t, ok := o.(interface{ Text() string }); ok {
		visit(t.Text(), at)
	}
	if c, ok := o.(*look.Table); ok {
		for i := range c.Rows() {
			visit(strings.Join(c.Row(i), " "), at)
		}
	}
	var children []fyne.CanvasObject
	switch o := o.(type) {
	case *fyne.Container:
		children = o.Objects
	case look.Holder:
		children = o.Parts()
	}
	for _, c := range children {
		if c != nil {
			eachText(c, at.Add(c.Position()), visit)
		}
	}
}

// allText is every text in sight, one a line.
func allText(w fyne.Window) string {
	var list []string
	eachText(w.Content(), fyne.Position{}, func(text string, _ fyne.Position) {
		if text != "" {
			list = append(list, text)
		}
	})
	return strings.Join(list, "\n")
}

// place is where a text that begins so stands.
func place(w fyne.Window, begins string) (ok bool, x, y float32) {
	eachText(w.Content(), fyne.Position{}, func(text string, at fyne.Position) {
		if !ok && strings.HasPrefix(text, begins) {
			ok, x, y = true, at.X, at.Y
		}
	})
	return ok, x, y
}

// clipboard is a clipboard of the test's own.
type clipboard struct{ text string }

func (c *clipboard) Content() string     { return c.text }
func (c *clipboard) SetContent(s string) { c.text = s }

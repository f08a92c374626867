package planner

import (
	"context"
	"flag"
	"testing"

	"fyne.io/fyne/v2"

	"ebbwell/app/apptest"
	"ebbwell/app/kit/desk"
	"ebbwell/app/kit/field"
	"ebbwell/app/kit/field/drive"
	"ebbwell/app/kit/look"
	"ebbwell/app/kit/look/golden"
	"ebbwell/app/screen/planner/wording"
	"ebbwell/internal/consult"
	"ebbwell/internal/plan"
	"ebbwell/internal/quantity"
	"ebbwell/internal/record"
	"ebbwell/internal/store"
)

var update = flag.Bool("update", false, "keep new golden pictures")

// bench is a plan in a window with its head above it.
type bench struct {
	*drive.Driver
	t    testing.TB
	desk *desk.Desk
	went *[]desk.Place
	said *[]string
	v    *View
	w    fyne.Window
}

// sized is a window as large as the screen's room in a window of a size.
func sized(width, height float32) fyne.Size { return fyne.NewSize(width-180, height-56) }

// openAt opens a place in a window of 1180 x 760.
func openAt(t testing.TB, d *desk.Desk, went *[]desk.Place, place desk.Place) *bench {
	t.Helper()
	return openIn(t, d, went, place, golden.Mode{Percent: 100}, sized(1180, 760))
}

// openIn opens a place in a look and a size.
func openIn(t testing.TB, d *desk.Desk, went *[]desk.Place, place desk.Place, m golden.Mode, size fyne.Size) *bench {
	t.Helper()
	golden.Use(t, m)
	b := &bench{t: t, desk: d, went: went, said: &[]string{}}
	d.Say = func(sentence, _ string, _ func()) { *b.said = append(*b.said, sentence) }
	head := look.HBox(8)
	d.HeadChanged = func() {
		if b.v != nil {
			head.Objects = b.v.Head().Actions
			head.Refresh()
		}
	}
	v, err := New(d, place)
	if err != nil {
		t.Fatal(err)
	}
	b.v = v
	d.HeadChanged()
	content := &fyne.Container{Layout: underHead{}, Objects: []fyne.CanvasObject{head, v.Body()}}
	b.w = golden.Open(t, content, size)
	b.Driver = drive.On(t, b.w.Canvas())
	return b
}

// underHead gives the screen the whole window; the head has its own place above
// it, out of the picture.
type underHead struct{}

func (underHead) Layout(o []fyne.CanvasObject, size fyne.Size) {
	o[0].Resize(o[0].MinSize())
	o[0].Move(fyne.NewPos(0, -60))
	o[1].Resize(size)
}

func (underHead) MinSize([]fyne.CanvasObject) fyne.Size { return fyne.NewSize(100, 100) }

// settle lays the window out until heights that depend on widths agree.
func (b *bench) settle() { golden.LayOutAgain(b.w.Canvas()) }

// text is what a named object shows.
func (b *bench) text(name string) string {
	b.t.Helper()
	s, ok := b.Find(name).(interface{ Text() string })
	if !ok {
		b.t.Fatalf("%q shows no text", name)
	}
	return s.Text()
}

// tab shows what stands behind a tab.
func (b *bench) tab(key string) {
	b.t.Helper()
	b.v.OpenTab(key)
	b.settle()
}

// slider is the slider of a slot.
func (b *bench) slider(slot plan.Slot) *field.Slider { return b.v.ui.page.mix.Rows[slot].Slider }

// drag drags a slider's knob by a part of its length, in so many moves.
func (b *bench) drag(slot plan.Slot, part float64, moves int) {
	b.t.Helper()
	s := b.slider(slot)
	width := s.Size().Width - 20
	at := 10 + width*float32(s.Value()/s.Scale().Max)
	b.Drag("planner."+wording.SlotName(slot)+".slider", fyne.NewPos(at, 13), fyne.NewPos(at+width*float32(part), 13), moves)
}

// kept is the plan as it is in the data file.
func (b *bench) kept() record.Plan {
	b.t.Helper()
	if err := b.desk.Keep.Flush(context.Background()); err != nil {
		b.t.Fatal(err)
	}
	p, err := b.desk.Store.LoadPlan(context.Background(), b.v.Now.Plan.ID)
	if err != nil {
		b.t.Fatal(err)
	}
	return p
}

// amountKept is the amount of a slot of an option in the data file.
func (b *bench) amountKept(option record.ID, slot plan.Slot) float64 {
	b.t.Helper()
	o, ok := consult.OptionByID(b.kept(), option)
	if !ok {
		b.t.Fatalf("option %s is not kept", option)
	}
	return b.v.Now.PlanCase.MixOf(o)[slot]
}

// hockey keeps an athlete with one closed test, in heat.
func hockey(t testing.TB, d *desk.Desk) (record.Athlete, record.Test) {
	t.Helper()
	return tested(t, d, apptest.Athlete(t, d), 62.4)
}

// tested keeps a closed test of an athlete who weighed 64 kg before.
func tested(t testing.TB, d *desk.Desk, a record.Athlete, after float64) (record.Athlete, record.Test) {
	t.Helper()
	n := func(x float64, u quantity.Unit) record.Number { return record.Num(x, u) }
	meta := func() record.Meta { return record.Meta{ID: record.NewID()} }
	id := record.NewID()
	test := record.Test{
		Meta: record.Meta{ID: id}, AthleteID: a.ID, State: record.TestOpen,
		Session: record.Session{Date: "2026-05-14", Place: "League match", Sport: "field-hockey", Activity: "field-hockey", Start: "14:05", End: "15:40", Effort: n(8, quantity.None)},
		Air:     record.Air{Temperature: n(31, quantity.DegreeCelsius), Humidity: n(46, quantity.PerCent), Sun: record.SunHigh},
		Scale:   record.Scale{Step: n(0.05, quantity.Kilogram), Before: record.DressMinimal, After: record.DressMinimal},
		Loss:    record.Loss{NoUrine: true, NoStool: true},
		Weighings: []record.Weighing{
			{Meta: meta(), TestID: id, Moment: record.Before, Mass: n(64, quantity.Kilogram)},
			{Meta: meta(), TestID: id, Moment: record.After, Mass: n(after, quantity.Kilogram)},
		},
		Bottles: []record.Bottle{
			{Meta: meta(), TestID: id, ProductID: consult.Water, Use: record.UseDrunk, Before: n(712, quantity.Gram), After: n(412, quantity.Gram)},
			{Meta: meta(), TestID: id, Order: 1, ProductID: "generic.drink-6", Use: record.UseDrunk, Before: n(688, quantity.Gram), After: n(432, quantity.Gram)},
		},
		Patches: []record.Patch{{
			Meta: meta(), TestID: id, Site: record.SiteForearmDorsal, Side: "left", On: "14:28", Off: "15:20",
			Sodium: n(47.5, quantity.MillimolePerLitre), Method: record.MethodDirectElectrode, Condition: record.PatchGood,
		}},
	}
	test, err := d.Store.CloseTest(context.Background(), test, store.Freezing{Inputs: []byte("{}"), Results: []byte("[]"), Evidence: "test"}, store.Edit{})
	if err != nil {
		t.Fatal(err)
	}
	return a, test
}

// begun is a new plan for the hockey player.
func begun(t testing.TB) *bench {
	t.Helper()
	d, went := apptest.Desk(t)
	a, test := hockey(t, d)
	return openAt(t, d, went, desk.Place{Screen: desk.Plan, Athlete: a.ID, New: true, Part: string(test.ID)})
}

// option selects the option of a kind.
func (b *bench) option(kind record.OptionKind) record.Option {
	b.t.Helper()
	o, ok := consult.OptionOf(b.v.Now.Plan, kind)
	if !ok {
		b.t.Fatalf("no option %q", kind)
	}
	b.v.ChooseOption(o.ID)
	return o
}

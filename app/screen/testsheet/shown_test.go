package testsheet

import (
	"context"
	"slices"
	"strings"
	"testing"

	"fyne.io/fyne/v2"

	"ebbwell/app/apptest"
	"ebbwell/app/kit/desk"
	"ebbwell/app/kit/field"
	"ebbwell/internal/consult"
	"ebbwell/internal/quantity"
	"ebbwell/internal/record"
	"ebbwell/internal/store"
)

// The guess is asked before anything is shown, and stands under the loss.
func TestAskFirstThenShow(t *testing.T) {
	b := newSheet(t)
	b.fill()
	b.part(PartAfter)
	b.enter("testsheet.guess", "")
	b.part(PartFindings)
	if text := allText(b.w); !strings.Contains(text, "Ask first") || strings.Contains(text, "Sweat rate") {
		t.Fatalf("before the guess:\n%s", text)
	}
	apptest.Type(t, b.w, "findings.guess", "0.8")
	if strings.Contains(allText(b.w), "Sweat rate") {
		t.Error("shown while the guess is typed")
	}
	apptest.Click(t, b.w, "findings.show")
	if text := allText(b.w); !strings.Contains(text, "Sweat rate") || strings.Contains(text, "Ask first") {
		t.Errorf("after Show:\n%s", text)
	}
	if kept := b.kept(); kept.Loss.Guess.Or(0) != 0.8 {
		t.Errorf("the guess is kept as %v", kept.Loss.Guess.Or(0))
	}
}

// Breath and gas exchange are taken off by the method of the practice, which the
// sheet shows; the figure as weighed stands in the why.
func TestMethodOfThePractice(t *testing.T) {
	b := newSheet(t)
	b.fill()
	b.part(PartFindings)
	corrected := b.v.found.Sweat.Fluid.Rate
	apptest.Click(t, b.w, "findings.more")
	if text := allText(b.w); !strings.Contains(text, "subtracted: from the effort rating") {
		t.Errorf("the findings do not say what is taken off:\n%s", text)
	}
	p := b.desk.Practice()
	p.Settings.FieldMethod = true
	if _, err := b.desk.Store.SavePractice(context.Background(), p, store.Edit{}); err != nil {
		t.Fatal(err)
	}
	b.desk.PracticeChanged()
	b.v.changed()
	if text := allText(b.w); !strings.Contains(text, "not subtracted: field method, set in Practice") {
		t.Errorf("the findings do not say what is left in:\n%s", text)
	}
	if now := b.v.found.Sweat.Fluid.Rate; !(now.Value > corrected.Value) || now.Range.Low >= now.Value-b.v.found.Sweat.Fluid.Bias {
		t.Errorf("%v by the field method, %v corrected", now, corrected)
	}
}

// Where body mass is hidden the only kilograms are in the weighing fields.
func TestHiddenMass(t *testing.T) {
	d, went := apptest.Desk(t)
	a := consenting(t, d)
	a.MassHidden, a.MassHiddenSettled = true, true
	a, err := d.Store.SaveAthlete(context.Background(), a, store.Edit{})
	if err != nil {
		t.Fatal(err)
	}
	closedTest(t, d, a, "2026-05-14", 62.4)
	b := openAt(t, d, went, desk.Place{Screen: desk.Tests, Athlete: a.ID})
	for _, part := range []string{PartBottles, PartUrine, PartFindings} {
		b.part(part)
		text := allText(b.w) + "\n" + b.v.Head().Under
		if part != PartFindings {
			text += b.v.ui.balance.bars.AccessibilityLabel()
		}
		for _, sign := range []string{"kg", "kcal", "64.", "62.", "−2.", "2 %"} {
			if strings.Contains(text, sign) {
				t.Errorf("%s shows %q:\n%s", part, sign, text)
			}
		}
	}
	if got := b.v.ui.balance.by.Found(b.v.found.Sweat.Fluid.Deficit); got != "1.60\u00a0L" {
		t.Errorf("the deficit reads %q", got)
	}
}

func TestPracticeUnits(t *testing.T) {
	d, went := apptest.Desk(t)
	p := d.Practice()
	p.Settings.Units = "us"
	if _, err := d.Store.SavePractice(context.Background(), p, store.Edit{}); err != nil {
		t.Fatal(err)
	}
	d.PracticeChanged()
	a := consenting(t, d)
	closedTest(t, d, a, "2026-05-14", 62.4)
	b := openAt(t, d, went, desk.Place{Screen: desk.Tests, Athlete: a.ID, New: true})
	b.enter("testsheet.before.mass.1", "141")
	b.enter("testsheet.air.temperature", "88")
	kept := b.kept()
	if m := kept.Weighings[0].Mass; *m.Value < 63.95 || *m.Value > 63.96 || m.Unit != quantity.Pound {
		t.Errorf("141 lb are kept as %v %s", *m.Value, m.Unit)
	}
	if c := kept.Air.Temperature.Or(0); c < 31.1 || c > 31.2 {
		t.Errorf("88 °F are kept as %v °C", c)
	}
	b = openAt(t, d, went, desk.Place{Screen: desk.Tests, Athlete: a.ID, Part: PartFindings, Record: d2(t, d, a)})
	if text := allText(b.w); !strings.Contains(text, "fl oz/h") || strings.Contains(text, "Sweat rate 1.36") {
		t.Errorf("the findings read\n%s", text)
	}
}

// d2 is the id of the athlete's closed test.
func d2(t *testing.T, d *desk.Desk, a record.Athlete) record.ID {
	t.Helper()
	list, err := d.Store.Tests(context.Background(), a.ID)
	if err != nil {
		t.Fatal(err)
	}
	for _, test := range list {
		if test.State == record.TestClosed {
			return test.ID
		}
	}
	t.Fatal("no closed test")
	return ""
}

// Tab reaches every field of every part, in reading order.
func TestTabReachesEverything(t *testing.T) {
	b := newSheet(t)
	b.fill()
	for _, part := range partList() {
		b.part(part)
		var want []string
		for _, s := range field.Names(b.w.Content()) {
			f, ok := s.Object.(fyne.Focusable)
			if d, can := s.Object.(fyne.Disableable); ok && (!can || !d.Disabled()) && f != nil {
				want = append(want, s.Name)
			}
		}
		b.w.Canvas().Unfocus()
		var got []string
		for range want {
			b.w.Canvas().FocusNext()
			if f, ok := b.w.Canvas().Focused().(interface{ Name() string }); ok {
				got = append(got, f.Name())
			}
		}
		if !slices.Equal(got, want) {
			t.Errorf("%s: Tab goes\n%v, the order is\n%v", part, got, want)
		}
	}
}

// Every control of the sheet has words for a screen reader, and none says its dotted
// name.
func TestEveryControlIsSpoken(t *testing.T) {
	b := newSheet(t)
	b.fill()
	for _, part := range partList() {
		b.part(part)
		for _, s := range field.Names(b.w.Content()) {
			if _, can := s.Object.(fyne.Focusable); !can {
				continue
			}
			a, ok := s.Object.(fyne.Accessible)
			if !ok {
				t.Errorf("%s is not accessible", s.Name)
				continue
			}
			said := a.AccessibilityLabel()
			f, named := s.Object.(interface{ Spoken() string })
			if said == "" || strings.Contains(said, s.Name) || !isPressed(s.Object) && named && f.Spoken() == "" {
				t.Errorf("%s is spoken as %q", s.Name, said)
			}
		}
	}
}

// isPressed reports whether a control has its words on itself.
func isPressed(o fyne.CanvasObject) bool {
	switch o.(type) {
	case *field.Button, *field.Link, *field.Check, *field.Tabs:
		return true
	}
	return false
}

// Every number of a sheet has its control, under the name a trouble leads to,
// and every path is one the store knows.
func TestEveryPathHasItsControl(t *testing.T) {
	b := newSheet(t)
	b.fill()
	b.v.b.Pick("test", func(s *sheet) {
		addRefill(&s.Record, 0)
		weighingAt(&s.Record, record.Morning, 0, true).Mass = record.Num(63, quantity.Kilogram)
		foodAt(&s.Record, 0, true).Mass = record.Num(40, quantity.Gram)
	})
	for _, part := range partList() {
		b.part(part)
	}
	test := b.v.b.Doc.Now().Record
	for _, e := range consult.Entries(test) {
		name := controlOf(test, e.Path)
		f := b.v.b.Field(name)
		if f == nil {
			t.Errorf("%s leads to %q, which is not there", e.Path, name)
			continue
		}
		if f.Path != nil && f.Path(test) != e.Path {
			t.Errorf("%s leads to %q, which shows %s", e.Path, name, f.Path(test))
		}
		if f.Group != partOf(test, e.Path) {
			t.Errorf("%s is said to stand in part %s, its control in %s", e.Path, partOf(test, e.Path), f.Group)
		}
	}
	known, err := store.Fields(record.KindTest)
	if err != nil {
		t.Fatal(err)
	}
	for _, f := range b.v.b.Fields() {
		if f.Path == nil || f.Path(test) == "" {
			continue
		}
		parts := strings.Split(f.Path(test), ".")
		for i, p := range parts {
			if len(p) == 36 {
				parts[i] = "*"
			}
		}
		if path := strings.Join(parts, "."); !slices.Contains(known, path) {
			t.Errorf("%s shows %s, which the store does not know", f.Name, path)
		}
	}
}

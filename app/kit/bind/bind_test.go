package bind_test

import (
	"context"
	"testing"

	"fyne.io/fyne/v2"

	"ebbwell/app/apptest"
	"ebbwell/app/kit/amount"
	"ebbwell/app/kit/bind"
	"ebbwell/app/kit/desk"
	"ebbwell/app/kit/field"
	"ebbwell/app/kit/look"
	"ebbwell/internal/evidence"
	"ebbwell/internal/quantity"
	"ebbwell/internal/record"
	"ebbwell/internal/store"
)

// bench is an athlete's record bound to a handful of fields in a window.
type bench struct {
	desk *desk.Desk
	id   record.ID
	b    *bind.Binder[record.Athlete]
	win  fyne.Window
}

func open(t *testing.T, d *desk.Desk, id record.ID) bench {
	t.Helper()
	a, err := d.Store.LoadAthlete(context.Background(), id)
	if err != nil {
		t.Fatal(err)
	}
	doc, err := bind.Open(d, bind.Kind[record.Athlete]{
		Ref: record.Ref{Kind: record.KindAthlete, ID: id}, Clone: record.Athlete.Clone,
		Meta: func(a *record.Athlete) *record.Meta { return &a.Meta }, Save: d.Store.SaveAthlete,
	}, a)
	if err != nil {
		t.Fatal(err)
	}
	b := bind.New(d, amount.Writer{Words: d.Words}, doc)
	name := b.Line("", "p.name", 200, func(a *record.Athlete) *string { return &a.Name })
	mass := b.Number("", "p.mass", evidence.BodyMass, quantity.Kilogram,
		bind.At("usualMass", func(a *record.Athlete) *record.Number { return &a.UsualMass }))
	born := b.Date("", "p.born", field.Past, func(a *record.Athlete) (*record.Date, string) { return &a.Born, "born" })
	hidden := b.Check("", "p.hidden", "hidden", func(a record.Athlete) bool { return a.MassHidden },
		func(s *bind.Sheet[record.Athlete], on bool) { s.Record.MassHidden = on })
	sex := b.Toggle("", "p.sex", []field.Option{{Key: "female", Text: "woman"}, {Key: "male", Text: "man"}}, bind.Word[record.Athlete]{
		Get: func(a record.Athlete) string { return string(a.Sex) }, Set: func(a *record.Athlete, w string) { a.Sex = record.Sex(w) },
	})
	b.Show()
	return bench{desk: d, id: id, b: b, win: apptest.Window(t, look.VBox(4, name, mass, born, hidden, sex), 500, 400, false, 100)}
}

func (b bench) kept(t *testing.T) record.Athlete {
	t.Helper()
	if !b.b.FlushNow() {
		t.Fatal("not saved")
	}
	a, err := b.desk.Store.LoadAthlete(context.Background(), b.id)
	if err != nil {
		t.Fatal(err)
	}
	return a
}

func TestTypedIsKeptAndUndone(t *testing.T) {
	d, _ := apptest.Desk(t)
	b := open(t, d, apptest.Athlete(t, d).ID)
	apptest.Type(t, b.win, "p.name", "Ravka O.")
	apptest.Type(t, b.win, "p.mass", "64,5")
	apptest.Click(t, b.win, "p.hidden")
	apptest.Leave(b.win)
	a := b.kept(t)
	if a.Name != "Ravka O." || a.UsualMass.Or(0) != 64.5 || !a.MassHidden {
		t.Fatalf("kept %q, %v, %v", a.Name, a.UsualMass.Or(0), a.MassHidden)
	}
	changes, err := d.Store.History(context.Background(), record.Ref{Kind: record.KindAthlete, ID: b.id})
	if err != nil {
		t.Fatal(err)
	}
	names := 0
	for _, c := range changes {
		if c.Field == "name" && c.After == "Ravka O." {
			names++
			if c.Before != "Ravka Oldenmoor" || c.By != "Test Person" {
				t.Errorf("the visit is kept as %+v", c)
			}
		}
	}
	if names != 1 {
		t.Errorf("one visit to the name makes %d changes", names)
	}
	for range 3 {
		if !b.b.Undo() {
			t.Fatal("nothing to undo")
		}
	}
	if a := b.kept(t); a.Name != "Ravka Oldenmoor" || a.UsualMass.Or(0) != 64 || a.MassHidden {
		t.Errorf("after undo %q, %v, %v", a.Name, a.UsualMass.Or(0), a.MassHidden)
	}
	if apptest.Text(t, b.win, "p.name") != "Ravka Oldenmoor" {
		t.Error("the field does not follow undo")
	}
	if !b.b.Redo() || apptest.Text(t, b.win, "p.name") != "Ravka O." {
		t.Error("the field does not follow redo")
	}
}

func TestUnreadableIsKept(t *testing.T) {
	d, _ := apptest.Desk(t)
	id := apptest.Athlete(t, d).ID
	b := open(t, d, id)
	apptest.Type(t, b.win, "p.mass", "sixty")
	apptest.Type(t, b.win, "p.born", "spring")
	apptest.Leave(b.win)
	if a := b.kept(t); a.UsualMass.Known() || a.Born != "" {
		t.Errorf("kept %v, %q", a.UsualMass, a.Born)
	}
	again := open(t, d, id)
	if m, born := apptest.Text(t, again.win, "p.mass"), apptest.Text(t, again.win, "p.born"); m != "sixty" || born != "spring" {
		t.Errorf("reopened as %q, %q", m, born)
	}
	apptest.Type(t, again.win, "p.mass", "61")
	apptest.Leave(again.win)
	again.kept(t)
	texts, err := d.Store.RawOf(context.Background(), record.Ref{Kind: record.KindAthlete, ID: id})
	if err != nil {
		t.Fatal(err)
	}
	for _, raw := range texts {
		if raw.Field == "usualMass" {
			t.Errorf("%q is still kept beside a number", raw.Text)
		}
	}
}

func TestRefusedStaysForTheCalculation(t *testing.T) {
	d, _ := apptest.Desk(t)
	b := open(t, d, apptest.Athlete(t, d).ID)
	apptest.Type(t, b.win, "p.mass", "640")
	apptest.Leave(b.win)
	if a := b.kept(t); a.UsualMass.Or(0) != 640 {
		t.Errorf("kept %v", a.UsualMass)
	}
}

// A record that another part of the program kept meanwhile is taken over.
func TestReplace(t *testing.T) {
	d, _ := apptest.Desk(t)
	b := open(t, d, apptest.Athlete(t, d).ID)
	a := b.kept(t)
	a.Sport = "rowing"
	kept, err := d.Store.SaveAthlete(context.Background(), a, store.Edit{})
	if err != nil {
		t.Fatal(err)
	}
	b.b.Doc.Replace(bind.Sheet[record.Athlete]{Record: kept, Raw: map[string]string{}, Reasons: map[string]string{}})
	apptest.Type(t, b.win, "p.name", "New name")
	apptest.Leave(b.win)
	if got := b.kept(t); got.Sport != "rowing" || got.Name != "New name" {
		t.Errorf("kept %q, %q", got.Sport, got.Name)
	}
}

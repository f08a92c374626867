package testsheet

import (
	"context"
	"os"
	"strings"
	"testing"
	"time"

	"fyne.io/fyne/v2"

	"ebbwell/app/apptest"
	"ebbwell/app/kit/desk"
	"ebbwell/app/kit/field"
	"ebbwell/app/kit/keep"
	"ebbwell/app/kit/keep/clock"
	"ebbwell/internal/quantity"
	"ebbwell/internal/record"
	"ebbwell/internal/store"
	"ebbwell/internal/sweat"
)

// The program is killed in the middle of a sheet: half a second after the last
// key, with no field left and nothing flushed, everything typed is in the file.
func TestKilledInTheMiddle(t *testing.T) {
	d, went := apptest.Desk(t)
	c := clock.New(apptest.Now())
	d.Keep = keep.NewAfter(c.Now, c.After, nil)
	b := openAt(t, d, went, desk.Place{Screen: desk.Tests, Athlete: consenting(t, d).ID, New: true})
	b.enter("testsheet.start", "14:00")
	b.part(PartBottles)
	apptest.Type(t, b.w, "testsheet.bottle.1.before", "712")
	apptest.Type(t, b.w, "testsheet.bottle.1.after", "4x12")
	b.part(PartAfter)
	apptest.Type(t, b.w, "testsheet.after.mass.1", "62.4")
	c.Advance(500 * time.Millisecond)
	killed := t.TempDir()
	if err := os.CopyFS(killed, os.DirFS(b.desk.Store.Dir())); err != nil {
		t.Fatal(err)
	}
	again, err := store.Open(killed, store.Options{Clock: apptest.Now, By: "Test Person"})
	if err != nil {
		t.Fatal(err)
	}
	defer func() {
		if err := again.Close(); err != nil {
			t.Error(err)
		}
	}()
	ctx := context.Background()
	list, err := again.Tests(ctx, b.who.ID)
	if err != nil || len(list) != 1 {
		t.Fatalf("%d sheets in the file (%v)", len(list), err)
	}
	kept := list[0]
	if kept.Session.Start != "14:00" || len(kept.Bottles) != 1 || kept.Bottles[0].Before.Or(0) != 712 || len(kept.Weighings) != 1 || kept.Weighings[0].Mass.Or(0) != 62.4 {
		t.Errorf("kept %+v, %+v, %+v", kept.Session, kept.Bottles, kept.Weighings)
	}
	raw, err := again.RawOf(ctx, refOf(kept))
	if err != nil || len(raw) != 1 || raw[0].Text != "4x12" {
		t.Errorf("the text that is no number: %+v (%v)", raw, err)
	}
}

// Without a birth date no first sheet begins, and the figures of a sheet that is
// there already keep to litres; both lead to the profile.
// Energy that a device gave is enough to take breath and gas exchange off; where
// body mass is hidden no kilocalories stand on the sheet.
func TestEnergyAlone(t *testing.T) {
	b := newSheet(t)
	b.fill()
	if c := b.v.found.Sweat.Corrections[0]; !c.Size.Known || c.Reason != sweat.ReasonRating {
		t.Fatalf("with an effort rating: %+v", c)
	}
	b.part(PartBefore)
	apptest.Click(b.t, b.w, "testsheet.fold.effort")
	b.enter("testsheet.energy", "850")
	if kept := b.kept(); kept.Session.Energy.Or(0) != 850 || kept.Session.Energy.Unit != quantity.Kilocalorie {
		t.Errorf("kept %+v", kept.Session.Energy)
	}
	if c := b.v.found.Sweat.Corrections[0]; !c.Size.Known || c.Reason != sweat.ReasonEnergy {
		t.Errorf("with the energy: %+v", c)
	}
	a := b.who
	a.MassHidden, a.MassHiddenSettled = true, true
	if _, err := b.desk.Store.SaveAthlete(context.Background(), a, store.Edit{}); err != nil {
		t.Fatal(err)
	}
	hidden := openAt(t, b.desk, b.went, desk.Place{Screen: desk.Tests, Athlete: a.ID, Record: b.kept().ID})
	apptest.Click(t, hidden.w, "testsheet.fold.effort")
	if apptest.Has(hidden.w, "testsheet.energy") || !apptest.Has(hidden.w, "testsheet.met") {
		t.Error("kilocalories are in sight where body mass is hidden")
	}
}

// A consent that is missing or has ended is said and does not stop the sheet.
func TestNoTestYet(t *testing.T) {
	d, went := apptest.Desk(t)
	a := consenting(t, d)
	b := openAt(t, d, went, desk.Place{Screen: desk.Tests, Athlete: a.ID})
	apptest.Click(t, b.w, "testsheet.new")
	if last := (*went)[len(*went)-1]; last.Screen != desk.Tests || !last.New || last.Athlete != a.ID {
		t.Errorf("leads to %+v", last)
	}
	if _, err := New(d, desk.Place{Screen: desk.Tests, Athlete: a.ID, Record: record.NewID()}); store.CodeOf(err) != store.CodeNotFound {
		t.Errorf("a test that is not there: %v", err)
	}
}

// A new sheet into which nothing was entered is not kept; its place opens a new
// one again. Once something was entered it names the record, also after that
// was taken back.
func TestPlaceOfANewSheet(t *testing.T) {
	b := newSheet(t)
	place := b.v.Place()
	if !place.New || place.Record != "" || place.Athlete != b.who.ID {
		t.Fatalf("nothing entered, the place is %+v", place)
	}
	again := openAt(t, b.desk, b.went, place)
	if again.v.b == nil || again.v.part != b.v.part {
		t.Fatal("the place does not open a sheet")
	}
	if tests, err := b.desk.Store.Tests(context.Background(), b.who.ID); err != nil || len(tests) != 0 {
		t.Errorf("%d tests kept of nothing: %v", len(tests), err)
	}
	apptest.Type(t, again.w, "testsheet.place", "League match")
	typed := again.v.Place()
	if typed.New || typed.Record == "" {
		t.Fatalf("while typing the place is %+v", typed)
	}
	for again.v.Undo() {
	}
	if after := again.v.Place(); after != typed {
		t.Errorf("after undo the place is %+v", after)
	}
	if err := b.desk.Keep.Flush(context.Background()); err != nil {
		t.Fatal(err)
	}
	if third := openAt(t, b.desk, b.went, typed); third.v.Place() != typed {
		t.Errorf("opened again at %+v, not at %+v", third.v.Place(), typed)
	}
}

func TestDeleteCanBeUndone(t *testing.T) {
	d, went := apptest.Desk(t)
	a := consenting(t, d)
	test := closedTest(t, d, a, "2026-05-14", 62.4)
	var undo func()
	d.Say = func(_, _ string, do func()) { undo = do }
	b := openAt(t, d, went, desk.Place{Screen: desk.Tests, Athlete: a.ID})
	apptest.Click(t, b.w, "testsheet.delete")
	if list, err := d.Store.Tests(context.Background(), a.ID); err != nil || len(list) != 0 {
		t.Fatalf("%d tests (%v)", len(list), err)
	}
	if undo == nil {
		t.Fatal("it cannot be undone")
	}
	undo()
	if list, err := d.Store.Tests(context.Background(), a.ID); err != nil || len(list) != 1 || list[0].ID != test.ID {
		t.Errorf("after undo %d tests (%v)", len(list), err)
	}
}

// The report and the blank sheet are printed on the practice's paper.
// A blank sheet of a test that was never kept is kept with the athlete.
func TestPlanFromThisTest(t *testing.T) {
	d, went := apptest.Desk(t)
	a := consenting(t, d)
	test := closedTest(t, d, a, "2026-05-14", 62.4)
	b := openAt(t, d, went, desk.Place{Screen: desk.Tests, Athlete: a.ID, Part: PartFindings})
	head := b.v.Head()
	if len(head.Actions) != 2 || head.Athlete != a.ID || head.Tab != desk.Tests || head.Under != "27 · field hockey, midfield · 64.0\u00a0kg" {
		t.Errorf("head %+v", head)
	}
	head.Actions[1].(*field.Button).Press()
	if last := (*went)[len(*went)-1]; last != (desk.Place{Screen: desk.Plan, Athlete: a.ID, New: true, Part: string(test.ID)}) {
		t.Errorf("leads to %+v", last)
	}
}

func TestChooseAnotherTest(t *testing.T) {
	d, went := apptest.Desk(t)
	a := consenting(t, d)
	old := closedTest(t, d, a, "2025-10-09", 62.9)
	closedTest(t, d, a, "2026-05-14", 62.4)
	b := openAt(t, d, went, desk.Place{Screen: desk.Tests, Athlete: a.ID, Part: PartFindings})
	if got := b.v.ui.tools.choice.Options()[1].Text; got != "9 Oct 2025 · field hockey · closed" {
		t.Errorf("the older test reads %q", got)
	}
	b.v.ui.tools.choice.TypedKey(&fyne.KeyEvent{Name: fyne.KeyRight})
	if last := (*went)[len(*went)-1]; last.Record != old.ID || last.Part != PartFindings {
		t.Errorf("leads to %+v", last)
	}
	if text := allText(b.w); !strings.Contains(text, "Sweat rate: ") || !strings.Contains(text, "Then 24.0\u00a0°C") {
		t.Errorf("the two are not compared:\n%s", text)
	}
}

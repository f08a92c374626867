package testsheet

import (
	"context"
	"encoding/json"
	"slices"
	"strings"
	"testing"

	"fyne.io/fyne/v2"

	"ebbwell/app/apptest"
	"ebbwell/app/kit/desk"
	"ebbwell/internal/consult"
	"ebbwell/internal/frozen"
	"ebbwell/internal/quantity"
	"ebbwell/internal/record"
	"ebbwell/internal/store"
)

// The whole job of the sheet: filled in by hand, kept, reopened, closed while
// the laboratory has the patch, closed for good by its value.
func TestWholeSheet(t *testing.T) {
	b := newSheet(t)
	b.fill()
	kept := b.kept()
	want := func(name string, got, want float64) {
		t.Helper()
		if got != want {
			t.Errorf("%s is kept as %g, want %g", name, got, want)
		}
	}
	want("air", kept.Air.Temperature.Or(0), 31)
	want("humidity", kept.Air.Humidity.Or(0), 46)
	want("step", kept.Scale.Step.Or(0), 0.05)
	want("gravity", kept.Urine.Gravity.Or(0), 1.016)
	want("guess", kept.Loss.Guess.Or(0), 0.8)
	if len(kept.Bottles) != 2 || kept.Bottles[0].ProductID != consult.Water || kept.Bottles[1].ProductID != "generic.drink-6" {
		t.Fatalf("bottles are kept as %+v", kept.Bottles)
	}
	want("bottle 2 after", kept.Bottles[1].After.Or(0), 432)
	if m := kept.Weighings; len(m) != 2 || m[0].Moment != record.Before || *m[0].Mass.Value != 64 || *m[1].Mass.Value != 62.4 {
		t.Errorf("weighings are kept as %+v", m)
	}
	if kept.Session.Start != "14:00" || kept.Session.End != "15:35" || kept.Session.Place != "Millrace Park" || !kept.Loss.NoUrine {
		t.Errorf("the session is kept as %+v, %+v", kept.Session, kept.Loss)
	}
	rate := b.v.found.Sweat.Fluid.Rate
	if !rate.Known || !rate.Ranged {
		t.Fatalf("no rate with a range: %+v", b.v.found.Sweat.Missing)
	}
	for part, done := range map[string]bool{PartBefore: true, PartBottles: true, PartAfter: true, PartUrine: false} {
		if complete(b.v.b.Doc.Now(), b.v.found, b.v.wrong)[part] != done {
			t.Errorf("part %s is complete: %v", part, !done)
		}
	}
	b.reopened(kept)
	b.waitsAndCloses()
}

// reopened opens the sheet anew and finds what was typed.
func (b *bench) reopened(kept record.Test) {
	b.t.Helper()
	again := openAt(b.t, b.desk, b.went, desk.Place{Screen: desk.Tests, Athlete: b.who.ID, Record: kept.ID})
	for name, want := range map[string]string{
		"testsheet.start": "14:00", "testsheet.place": "Millrace Park", "testsheet.before.mass.1": "64", "testsheet.sport": "field hockey",
	} {
		if got := apptest.Text(b.t, again.w, name); got != want {
			b.t.Errorf("%s is reopened as %q, want %q", name, got, want)
		}
	}
	again.part(PartBottles)
	if what, after := apptest.Text(b.t, again.w, "testsheet.bottle.2.what"), apptest.Text(b.t, again.w, "testsheet.bottle.2.after"); what != "Sports drink 6 %" || after != "432" {
		b.t.Errorf("bottle 2 is reopened as %q, %q", what, after)
	}
	*b = *again
}

// waitsAndCloses closes the sheet for the laboratory, and for good when the
// value is in, which says the plan it changes.
func (b *bench) waitsAndCloses() {
	t := b.t
	t.Helper()
	b.part(PartFindings)
	if got := apptest.Text(t, b.w, "testsheet.next"); got != "Close, waiting for the laboratory" {
		t.Fatalf("the main button says %q", got)
	}
	apptest.Click(t, b.w, "testsheet.next")
	if kept := b.kept(); kept.State != record.TestWaiting || kept.ClosedBy != "Test Person" {
		t.Fatalf("kept as %s by %q", kept.State, kept.ClosedBy)
	}
	id := b.v.b.Doc.Now().Record.ID
	plan := record.Plan{Meta: record.Meta{ID: record.NewID()}, AthleteID: b.who.ID, State: record.PlanDraft, Name: "League match", Basis: record.PlanBasis{Kind: record.BasisTest, TestID: id}}
	if _, err := b.desk.Store.SavePlan(context.Background(), plan, store.Edit{}); err != nil {
		t.Fatal(err)
	}
	b.part(PartUrine)
	b.enter("testsheet.patch.1.sodium", "47,5")
	apptest.Click(t, b.w, "testsheet.next")
	if kept := b.kept(); kept.State != record.TestClosed || kept.Patches[0].Sodium.Or(0) != 47.5 {
		t.Fatalf("after the late value kept as %s with %v", kept.State, kept.Patches[0].Sodium.Or(0))
	}
	copies, err := b.desk.Store.FrozenOf(context.Background(), refOf(b.kept()))
	if err != nil || len(copies) != 2 || copies[0].Evidence == "" {
		t.Fatalf("%d frozen copies (%v)", len(copies), err)
	}
	var out frozen.Findings
	if err := json.Unmarshal(copies[0].Results, &out); err != nil || !out.Sweat.Sodium.LossRate.Known {
		t.Errorf("kept without the sodium lost: %+v (%v)", out.Sweat.Sodium, err)
	}
	apptest.Click(t, b.w, "testsheet.late.plan.1")
	if last := (*b.went)[len(*b.went)-1]; last.Screen != desk.Plan || last.Record != plan.ID {
		t.Errorf("the link leads to %+v", last)
	}
}

func TestClosedIsReadOnlyUntilCorrected(t *testing.T) {
	d, went := apptest.Desk(t)
	a := consenting(t, d)
	test := closedTest(t, d, a, "2026-05-14", 62.4)
	b := openAt(t, d, went, desk.Place{Screen: desk.Tests, Athlete: a.ID})
	if f := b.v.b.Field("testsheet.place"); !f.Field.Disabled() {
		t.Error("a closed sheet can be typed into")
	}
	apptest.Click(t, b.w, "testsheet.correct")
	apptest.Click(t, b.w, "testsheet.reopen.yes")
	if !apptest.Has(b.w, "testsheet.reopen.why") {
		t.Fatal("it was opened without a reason")
	}
	apptest.Type(t, b.w, "testsheet.reopen.why", "the scale was read wrongly")
	apptest.Click(t, b.w, "testsheet.reopen.yes")
	if kept := b.kept(); kept.State != record.TestOpen {
		t.Fatalf("kept as %s", kept.State)
	}
	b.enter("testsheet.before.mass.1", "64.2")
	if kept := b.kept(); *kept.Weighings[0].Mass.Value != 64.2 {
		t.Errorf("the correction is kept as %v", *kept.Weighings[0].Mass.Value)
	}
	changes, err := d.Store.History(context.Background(), refOf(test))
	if err != nil || !slices.ContainsFunc(changes, func(c record.Change) bool { return c.Why == "the scale was read wrongly" }) {
		t.Errorf("the reason is not in the history (%v)", err)
	}
}

func TestNewIsPrefilledFromTheLast(t *testing.T) {
	d, went := apptest.Desk(t)
	a := consenting(t, d)
	closedTest(t, d, a, "2026-05-14", 62.4)
	b := openAt(t, d, went, desk.Place{Screen: desk.Tests, Athlete: a.ID, New: true})
	for name, want := range map[string]string{
		"testsheet.date": "18 May 2026", "testsheet.place": "Weirside Ground", "testsheet.sport": "field hockey", "testsheet.activity": "field hockey",
		"testsheet.scale.step": "0.05", "testsheet.start": "", "testsheet.before.mass.1": "",
	} {
		if got := apptest.Text(t, b.w, name); got != want {
			t.Errorf("%s begins as %q, want %q", name, got, want)
		}
	}
	if list, err := d.Store.Tests(context.Background(), a.ID); err != nil || len(list) != 1 {
		t.Errorf("a sheet nothing was entered in is kept: %d tests (%v)", len(list), err)
	}
}

func TestUndoAndRedo(t *testing.T) {
	b := newSheet(t)
	b.enter("testsheet.place", "Millrace Park")
	b.enter("testsheet.air.temperature", "warm")
	b.part(PartBottles)
	b.enter("testsheet.bottle.1.before", "712")
	if !b.v.CanUndo() || !b.v.Undo() {
		t.Fatal("nothing to undo")
	}
	if kept := b.kept(); len(kept.Bottles) != 0 {
		t.Errorf("%d bottles after undo", len(kept.Bottles))
	}
	if got := apptest.Text(t, b.w, "testsheet.bottle.1.before"); got != "" {
		t.Errorf("the field still shows %q", got)
	}
	b.v.Undo()
	if raw := b.v.b.Doc.Now().Raw["air.temperature"]; raw != "" {
		t.Errorf("the unreadable text %q is still there", raw)
	}
	b.v.Redo()
	b.v.Redo()
	b.part(PartBefore)
	if got := apptest.Text(t, b.w, "testsheet.air.temperature"); got != "warm" {
		t.Errorf("redo brings back %q", got)
	}
	if kept := b.kept(); len(kept.Bottles) != 1 || kept.Bottles[0].Before.Or(0) != 712 {
		t.Errorf("redo keeps %+v", kept.Bottles)
	}
}

// Enter in the last cell of a bottle goes to the next, which need not be made
// first; what stands there becomes a bottle.
func TestEnterMakesTheNextBottle(t *testing.T) {
	b := newSheet(t)
	b.part(PartBottles)
	b.enter("testsheet.bottle.1.before", "712")
	apptest.Type(t, b.w, "testsheet.bottle.1.poured", "5")
	apptest.Press(b.w, fyne.KeyReturn)
	f, ok := b.w.Canvas().Focused().(interface{ Name() string })
	if !ok || f.Name() != "testsheet.bottle.2.what" {
		t.Fatalf("Enter leads to %v", b.w.Canvas().Focused())
	}
	b.enter("testsheet.bottle.2.before", "500")
	if kept := b.kept(); len(kept.Bottles) != 2 || kept.Bottles[0].Poured.Or(0) != 5 {
		t.Errorf("kept %+v", kept.Bottles)
	}
}

// What else may happen to a bottle: refilled, shared, poured over, from a
// carton; and taking it out can be undone.
func TestBottleDetails(t *testing.T) {
	b := newSheet(t)
	b.part(PartBottles)
	b.enter("testsheet.bottle.1.before", "712")
	b.enter("testsheet.bottle.1.after", "412")
	apptest.Click(t, b.w, "testsheet.bottle.1.more")
	apptest.Click(t, b.w, "testsheet.bottle.1.refill")
	b.enter("testsheet.bottle.1.refill.1", "250")
	if got := b.v.found.Sweat.Bottles[0].Drunk; got != 550 {
		t.Errorf("with the refill %g mL were drunk", got)
	}
	use := b.v.ui.bottles.rows[0].detail.use
	use.TypedKey(&fyne.KeyEvent{Name: fyne.KeyRight})
	b.enter("testsheet.bottle.1.share.low", "40")
	b.enter("testsheet.bottle.1.share.high", "60")
	if bounds := b.v.found.Sweat.Bottles[0].Bounds; bounds != (quantity.Range{Low: 220, High: 330}) {
		t.Errorf("shared, bounds are %v", bounds)
	}
	b.enter("testsheet.bottle.2.what", "Apple juice")
	apptest.Click(t, b.w, "testsheet.bottle.2.more")
	apptest.Click(t, b.w, "testsheet.bottle.2.byvolume")
	b.enter("testsheet.bottle.2.volume", "200")
	if got := b.v.found.Sweat.Bottles[1]; !got.Known || got.Drunk < 199 || got.Drunk > 201 {
		t.Errorf("from the carton %+v", got)
	}
	apptest.Click(t, b.w, "testsheet.bottle.1.remove")
	if kept := b.kept(); len(kept.Bottles) != 1 || kept.Bottles[0].ProductID != "generic.apple-juice" || kept.Bottles[0].Order != 0 {
		t.Errorf("left over: %+v", kept.Bottles)
	}
	b.v.Undo()
	if kept := b.kept(); len(kept.Bottles) != 2 || len(kept.Bottles[0].Refills) != 1 {
		t.Errorf("after undo: %+v", kept.Bottles)
	}
	if got := apptest.Text(t, b.w, "testsheet.bottle.1.refill.1"); got != "250" {
		t.Errorf("the refill shows %q", got)
	}
}

func TestFoodShowsWhatItHolds(t *testing.T) {
	b := newSheet(t)
	b.part(PartBottles)
	b.enter("testsheet.food.1.what", "banana")
	b.enter("testsheet.food.1.portions", "½")
	r := b.v.ui.bottles.foods.rows[0]
	if c, s := r.carbohydrate.Text(), r.sodium.Text(); !strings.HasSuffix(c, "\u00a0g") || !strings.HasSuffix(s, "\u00a0mg") {
		t.Errorf("half a banana holds %q, %q", c, s)
	}
	b.enter("testsheet.food.2.what", "grandmother's cake 🎂")
	b.enter("testsheet.food.2.mass", "40")
	if text := b.v.ui.bottles.foods.rows[1].note.text.Text(); !strings.HasPrefix(text, "Not in the list") {
		t.Errorf("an unknown food reads %q", text)
	}
	if kept := b.kept(); kept.Foods[1].Name != "grandmother's cake 🎂" || kept.Foods[1].ProductID != "" || kept.Foods[0].Portions.Or(0) != 0.5 {
		t.Errorf("kept %+v", kept.Foods)
	}
}

// The morning mass of the test's day goes with the day when that was wrong.
func TestMorningsFollowTheDay(t *testing.T) {
	b := newSheet(t)
	apptest.Click(b.t, b.w, "testsheet.fold.mornings")
	b.enter("testsheet.morning.mass.1", "63.4")
	b.enter("testsheet.date", "17.5.2026")
	if kept := b.kept(); kept.Weighings[0].Date != "2026-05-17" {
		t.Errorf("the morning is of %s", kept.Weighings[0].Date)
	}
	b.enter("testsheet.morning.mass.2", "63.8")
	if kept := b.kept(); kept.Weighings[1].Date != "2026-05-16" {
		t.Errorf("the next morning is of %s", kept.Weighings[1].Date)
	}
}

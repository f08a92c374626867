package testsheet

import (
	"context"
	"strings"
	"testing"

	"ebbwell/app/apptest"
	"ebbwell/app/kit/desk"
	"ebbwell/app/kit/look/golden"
	"ebbwell/internal/care"
	"ebbwell/internal/record"
	"ebbwell/internal/store"
)

// corrected is a kept sheet of an athlete, closed, opened again for a reason and
// put right.
func corrected(t *testing.T, d *desk.Desk, a record.Athlete) record.Test {
	t.Helper()
	ctx := context.Background()
	sheet, err := d.Store.SaveTest(ctx, aTest(a, "2026-05-10", 62.4), store.Edit{})
	if err != nil {
		t.Fatal(err)
	}
	sheet.Air.Temperature = record.Num(*sheet.Air.Temperature.Value+1.5, "°C")
	if sheet, err = d.Store.SaveTest(ctx, sheet, store.Edit{}); err != nil {
		t.Fatal(err)
	}
	sheet.State = record.TestClosed
	if sheet, err = d.Store.CloseTest(ctx, sheet, store.Freezing{Inputs: []byte("{}"), Results: []byte("{}"), Evidence: "1"}, store.Edit{}); err != nil {
		t.Fatal(err)
	}
	if sheet, err = d.Store.ReopenTest(ctx, sheet.ID, "the slip of the scale was found"); err != nil {
		t.Fatal(err)
	}
	for i, w := range sheet.Weighings {
		if w.Moment == record.After {
			sheet.Weighings[i].Mass = record.Num(62.15, "kg")
		}
	}
	sheet.Bottles[0].After = record.Num(430, "g")
	if sheet, err = d.Store.SaveTest(ctx, sheet, store.Edit{}); err != nil {
		t.Fatal(err)
	}
	return sheet
}

// historyText is what the list of corrections shows.
func historyText(b *bench) string {
	b.t.Helper()
	apptest.Click(b.t, b.w, "testsheet.history")
	top := b.w.Canvas().Overlays().Top()
	if top == nil {
		b.t.Fatal("no list is shown")
	}
	return strings.Join(strings.Fields(strings.Join(apptest.Texts(top), " ")), " ")
}

// TestHistoryOfASheet: every corrected value stands there with before, after,
// when, by whom and why, on the sheet and in the report; first entries do not.
func TestHistoryOfASheet(t *testing.T) {
	d, went := apptest.Desk(t)
	a := consenting(t, d)
	sheet := corrected(t, d, a)
	b := openAt(t, d, went, desk.Place{Screen: desk.Tests, Athlete: a.ID, Record: sheet.ID, Part: PartFindings})
	all := historyText(b)
	list, err := b.v.corrections(context.Background())
	if err != nil || len(list) != 3 {
		t.Fatalf("%d corrections: %+v, %v", len(list), list, err)
	}
	for _, part := range []string{"Body mass (after, 1): 62.4 kg → 62.15 kg", "Bottle after (1): ", " → 430 g", "Air: ", "18 May 2026", "Test Person", "Reason: the slip of the scale was found"} {
		if !strings.Contains(all, part) {
			t.Errorf("%q is not to be read in %s", part, all)
		}
	}
	if got := onPaper(list); got[0].Why != "the slip of the scale was found" || got[2].Why != "" || len(got) != 3 {
		t.Errorf("on paper: %+v", got)
	}
}

// TestHistoryHidesMass: where body mass is hidden the history tells that a mass
// was corrected and not what it was, nor a reason with figures in it.
func TestHistoryHidesMass(t *testing.T) {
	d, went := apptest.Desk(t)
	a := consenting(t, d)
	a.MassHidden = true
	a, err := d.Store.SaveAthlete(context.Background(), a, store.Edit{})
	if err != nil || !care.MassHidden(a, d.Now()) {
		t.Fatal("mass is not hidden", err)
	}
	sheet := corrected(t, d, a)
	b := openAt(t, d, went, desk.Place{Screen: desk.Tests, Athlete: a.ID, Record: sheet.ID, Part: PartFindings})
	all := historyText(b)
	if strings.Contains(all, "62") || strings.Contains(all, "kg") || !strings.Contains(all, "Body mass (after, 1): changed; body mass is hidden") {
		t.Errorf("shown: %s", all)
	}
	h := historian{Speaker: d.Speaker(true), test: sheet, products: d.Products(), hidden: true}
	id := string(sheet.Weighings[0].ID)
	for _, c := range []record.Change{
		{Field: "weighings." + id + ".mass" + store.RawEnding, Before: "63,,2", After: "63.2"},
		{Field: "weighings." + id + ".mass" + store.ReasonEnding, Before: "63.2 is right", After: "weighed at 63.2"},
		{Field: "weighings." + id + ".mass", Before: "63.2 kg", After: "62.3 kg", Why: "it was 62.3"},
		{Field: "session.energy", Before: "632 kcal", After: "623 kcal"},
		{Field: "scale.kitWet", Before: "1.632 kg", After: "1.623 kg"},
	} {
		if e := h.entry(c); strings.ContainsAny(e.Change+e.Why, "0123456789") {
			t.Errorf("%s tells %q, %q", c.Field, e.Change, e.Why)
		}
	}
}

// A moment is told as the window tells times, never as it is kept; its date where that is
// another than the sheet's.
func TestHistoryTellsTheTime(t *testing.T) {
	d, _ := apptest.Desk(t)
	golden.Use(t, golden.Mode{Percent: 100})
	h := historian{Speaker: d.Speaker(false), products: d.Products()}
	h.test.Session.Date = "2026-05-18"
	for kept, want := range map[string]string{"2026-05-18T12:41:00Z": "12:41", "2026-05-19T00:05:00Z": "19 May 2026 · 00:05"} {
		if got := h.value("weighings.a.at", kept); got != want {
			t.Errorf("%s reads %q", kept, got)
		}
	}
}

// Every field that a change of a sheet can name has a word.
func TestEveryFieldOfASheetsHistoryHasAWord(t *testing.T) {
	d, _ := apptest.Desk(t)
	golden.Use(t, golden.Mode{Percent: 100})
	fields, err := store.Fields(record.KindTest)
	if err != nil || len(fields) < 60 {
		t.Fatalf("%d fields, %v", len(fields), err)
	}
	h := historian{Speaker: d.Speaker(false), products: d.Products()}
	named := 0
	for _, path := range fields {
		if len(record.Corrections([]record.Change{{Field: path, Before: "1", After: "2"}})) == 0 {
			continue
		}
		named++
		if word := h.fieldWord(path); strings.HasPrefix(word, "testsheet.") {
			t.Errorf("%q has no word", path)
		}
	}
	if named < 55 {
		t.Errorf("only %d fields can be corrected", named)
	}
}

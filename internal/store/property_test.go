package store

import (
	"context"
	"fmt"
	"reflect"
	"slices"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"ebbwell/internal/quantity"
	"ebbwell/internal/record"
)

// TestAnyEdits: after any series of edits the sheet that is loaded is the one
// that was saved, and the history of each field is a chain: a change starts
// where the one before it ended, and the last ends at what is kept now.
func TestAnyEdits(t *testing.T) {
	s, ctx := open(t, t.TempDir(), newClock()), context.Background()
	a := got(s.SaveAthlete(ctx, record.Athlete{}, Edit{}))(t)
	rapid.Check(t, func(rt *rapid.T) {
		one, err := s.SaveTest(ctx, record.Test{AthleteID: a.ID, State: record.TestOpen}, Edit{})
		if err != nil {
			rt.Fatal(err)
		}
		past := []record.Test{one}
		for range rapid.IntRange(1, 12).Draw(rt, "edits") {
			next := edit(rt, copyOf(one), past)
			next.Meta = one.Meta
			visit := rapid.SampledFrom([]string{"", "v1", "v2", "v3"}).Draw(rt, "visit")
			if one, err = s.SaveTest(ctx, next, Edit{Visit: visit}); err != nil {
				rt.Fatal(err)
			}
			past = append(past, one)
			loaded, err := s.LoadTest(ctx, one.ID)
			if err != nil || !reflect.DeepEqual(one, loaded) {
				rt.Fatalf("saved  %+v\nloaded %+v, %v", one.Bottles, loaded.Bottles, err)
			}
		}
		wantChains(rt, s, one)
	})
	checkWhole(t, s)
}

// edit changes something of a sheet: a field, a row, or everything, back to
// how it was once.
func edit(rt *rapid.T, one record.Test, past []record.Test) record.Test {
	grams := func(name string) record.Number {
		return record.Num(float64(rapid.IntRange(0, 3).Draw(rt, name)), quantity.Gram)
	}
	n := len(one.Bottles)
	act := rapid.IntRange(0, 6).Draw(rt, "act")
	if n == 0 && act > 2 {
		act = 2
	}
	switch act {
	case 0:
		one.Note = rapid.SampledFrom([]string{"", "a", "b"}).Draw(rt, "note")
	case 1:
		return copyOf(rapid.SampledFrom(past).Draw(rt, "undo"))
	case 2:
		place := 1
		if n > 0 {
			place = one.Bottles[n-1].Order + 1
		}
		one.Bottles = append(one.Bottles, record.Bottle{Meta: record.Meta{ID: record.NewID()}, Order: place, Before: grams("before")})
	case 3:
		one.Bottles[n-1].After = grams("after")
	case 4:
		one.Bottles = slices.Delete(one.Bottles, 0, 1)
	case 5:
		one.Bottles[n-1].Refills = append(one.Bottles[n-1].Refills, record.Refill{Added: grams("refill")})
	case 6:
		one.Bottles[n-1].Refills = nil
	}
	return one
}

// wantChains checks the history of a sheet against what is kept, rows that
// were deleted among it.
func wantChains(rt *rapid.T, s *Store, one record.Test) {
	changes, err := s.History(context.Background(), record.Ref{Kind: record.KindTest, ID: one.ID})
	if err != nil {
		rt.Fatal(err)
	}
	slices.Reverse(changes)
	now := map[string]string{}
	for _, r := range keptRows(rt, s, one.ID) {
		if !r.meta().Deleted() {
			now[r.path] = Present
		}
		for _, l := range r.shape.leaves {
			now[join(r.path, l.path)] = l.text(r.value)
		}
	}
	last := map[string]string{}
	for _, c := range changes {
		if before, seen := last[c.Field]; seen && before != c.Before {
			rt.Fatalf("%s goes on from %q after it ended at %q:\n%s", c.Field, c.Before, before, tell(changes))
		}
		last[c.Field] = c.After
	}
	for field, after := range last {
		if now[field] != after {
			rt.Fatalf("%s is %q and the history ends at %q:\n%s", field, now[field], after, tell(changes))
		}
	}
}

// keptRows loads the rows of a sheet, deleted ones too.
func keptRows(rt *rapid.T, s *Store, id record.ID) (rows []row) {
	err := s.write(context.Background(), "look", func(w *work) (err error) {
		rows, err = w.kept(s.shapes[record.KindTest], id)
		return err
	})
	if err != nil {
		rt.Fatal(err)
	}
	return rows
}

// tell writes a history for a failure.
func tell(changes []record.Change) string {
	var text strings.Builder
	for _, c := range changes {
		fmt.Fprintf(&text, "%s visit %q %s: %q > %q\n", c.At.Format("05.000000"), c.Visit, c.Field, c.Before, c.After)
	}
	return text.String()
}

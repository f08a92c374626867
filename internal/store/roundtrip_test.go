package store

import (
	"context"
	"reflect"
	"slices"
	"strings"
	"testing"

	"ebbwell/internal/record"
)

// TestRoundTrip saves a record of every kind with every field set and loads
// it again: a field without a column of its own comes back empty.
func TestRoundTrip(t *testing.T) {
	s, ctx := open(t, t.TempDir(), newClock()), context.Background()
	w := makeWorld(t, s)
	tests := []struct {
		kind  record.Kind
		saved any
		load  func() (any, error)
	}{
		{record.KindPractice, w.practice, func() (any, error) { return s.Practice(ctx) }},
		{record.KindGroup, w.group, func() (any, error) { return s.LoadGroup(ctx, w.group.ID) }},
		{record.KindProduct, w.product, func() (any, error) { return s.LoadProduct(ctx, w.product.ID) }},
		{record.KindAthlete, w.athlete, func() (any, error) { return s.LoadAthlete(ctx, w.athlete.ID) }},
		{record.KindTest, w.test, func() (any, error) { return s.LoadTest(ctx, w.test.ID) }},
		{record.KindTrip, w.trip, func() (any, error) { return s.LoadTrip(ctx, w.trip.ID) }},
		{record.KindPlan, w.plan, func() (any, error) { return s.LoadPlan(ctx, w.plan.ID) }},
		{record.KindSession, w.session, func() (any, error) { return s.LoadGroupSession(ctx, w.session.ID) }},
		{"print", w.print, func() (any, error) { return s.LoadPrint(ctx, w.print.ID) }},
	}
	for _, tt := range tests {
		t.Run(string(tt.kind), func(t *testing.T) {
			loaded, err := tt.load()
			must(t, err)
			wantFilled(t, reflect.ValueOf(tt.saved), string(tt.kind))
			if !reflect.DeepEqual(tt.saved, loaded) {
				t.Errorf("saved  %+v\nloaded %+v", tt.saved, loaded)
			}
		})
	}
	checkWhole(t, s)
}

// TestRoundTripKeepsInput sees that a save changes nothing a person entered,
// and leaves the struct it was given alone.
func TestRoundTripKeepsInput(t *testing.T) {
	s, ctx := open(t, t.TempDir(), newClock()), context.Background()
	links := map[string]record.ID{"AthleteID": "", "GroupID": "", "DrinkID": "drink", "FoodID": "food", "ImportID": "import"}
	group := got(s.SaveGroup(ctx, record.Group{Name: "Squad"}, Edit{}))(t)
	links["GroupID"] = group.ID
	in := filled[record.Athlete](t, links)
	untouched := copyOf(in)
	out := got(s.SaveAthlete(ctx, in, Edit{}))(t)
	if !reflect.DeepEqual(in, untouched) {
		t.Errorf("the struct that was given changed: %+v", in)
	}
	for i, r := range rowsOf(s.shapes[record.KindAthlete], reflect.ValueOf(&in).Elem()) {
		kept := rowsOf(s.shapes[record.KindAthlete], reflect.ValueOf(&out).Elem())[i]
		for _, l := range r.shape.leaves {
			if l.path != "athleteID" && !l.same(r.value, kept.value) {
				t.Errorf("%s.%s changed from %s to %s", r.path, l.path, l.text(r.value), l.text(kept.value))
			}
		}
		if m := kept.meta(); m.CreatedBy != "Kit" || m.ChangedBy != "Kit" || m.CreatedAt.IsZero() || !m.CreatedAt.Equal(m.ChangedAt) {
			t.Errorf("%s has the stamp %+v", kept.path, *m)
		}
	}
}

// TestRoundTripEmpty: a record with nothing entered comes back the same, and
// saving it again writes nothing.
func TestRoundTripEmpty(t *testing.T) {
	s, ctx := open(t, t.TempDir(), newClock()), context.Background()
	a := got(s.SaveAthlete(ctx, record.Athlete{}, Edit{}))(t)
	one := got(s.SaveTest(ctx, record.Test{AthleteID: a.ID, Bottles: []record.Bottle{{}}}, Edit{}))(t)
	again := got(s.LoadTest(ctx, one.ID))(t)
	if !reflect.DeepEqual(one, again) {
		t.Errorf("saved  %+v\nloaded %+v", one, again)
	}
	twice := got(s.SaveTest(ctx, again, Edit{}))(t)
	if !reflect.DeepEqual(twice, again) {
		t.Errorf("an idle save changed %+v to %+v", again, twice)
	}
	if changes := got(s.History(ctx, record.Ref{Kind: record.KindTest, ID: one.ID}))(t); len(changes) != 1 {
		t.Errorf("got %d changes, want 1: %+v", len(changes), changes)
	}
}

// TestShapes sees that every field has a column of its own.
func TestShapes(t *testing.T) {
	shapes, err := newShapes()
	must(t, err)
	if len(shapes) != 8 {
		t.Errorf("got %d kinds, want 8", len(shapes))
	}
	for kind, sh := range shapes {
		wantColumns(t, string(kind), sh)
	}
}

func wantColumns(t *testing.T, at string, sh *shape) {
	t.Helper()
	seen := []string{"id", "created_at", "created_by", "changed_at", "changed_by", "deleted_at"}
	for _, l := range sh.leaves {
		for _, c := range l.columns {
			if c == "" || slices.Contains(seen, c) {
				t.Errorf("%s: field %s has column %q, which is empty or taken", at, l.path, c)
			}
			seen = append(seen, c)
		}
	}
	for _, l := range sh.lists {
		wantColumns(t, at+"."+l.path, l.of)
	}
}

// TestFields: paths are those of the history.
func TestFields(t *testing.T) {
	fields, err := Fields(record.KindTest)
	must(t, err)
	for _, want := range []string{"session.start", "air.temperature", "loss.urine", "urine.gravity", "note",
		"weighings.*.mass", "bottles.*.after", "bottles.*.refills.*.added", "foods.*.portions", "patches.*.sodium"} {
		if !slices.Contains(fields, want) {
			t.Errorf("no field %s in %s", want, strings.Join(fields, " "))
		}
	}
	_, err = Fields("nothing")
	wantCode(t, err, CodeInvalid)
}

// FuzzText: whatever is typed into a text comes back, from the record and
// from its history.
func FuzzText(f *testing.F) {
	for _, seed := range []string{"", "Mira", "🏃‍♀️ emoji", "a\x00b", `quote ' " ; --`, strings.Repeat("ä", 10_000), "\xff\xfe", "\n\r\t", "%_\\"} {
		f.Add(seed, seed)
	}
	s, ctx := open(f, f.TempDir(), newClock()), context.Background()
	f.Fuzz(func(t *testing.T, name, note string) {
		a := got(s.SaveAthlete(ctx, record.Athlete{Note: "before"}, Edit{}))(t)
		ref := record.Ref{Kind: record.KindAthlete, ID: a.ID}
		a.Name, a.Note = name, note
		got(s.SaveAthlete(ctx, a, Edit{Why: note, Visit: string(record.NewID())}))(t)
		must(t, s.SetRaw(ctx, ref, "height", name, Edit{}))
		after := got(s.LoadAthlete(ctx, a.ID))(t)
		if after.Name != name || after.Note != note {
			t.Fatalf("kept %q and %q, want %q and %q", after.Name, after.Note, name, note)
		}
		changes := got(s.History(ctx, ref))(t)
		at := slices.IndexFunc(changes, func(c record.Change) bool { return c.Field == "note" })
		if (at < 0) != (note == "before") {
			t.Fatalf("history of the note: %+v", changes)
		}
		if at >= 0 && (changes[at].Before != "before" || changes[at].After != note || changes[at].Why != note) {
			t.Fatalf("history has %+v", changes[at])
		}
		raw := got(s.RawOf(ctx, ref))(t)
		if (name == "") != (len(raw) == 0) || name != "" && raw[0].Text != name {
			t.Fatalf("raw texts %+v, want %q", raw, name)
		}
	})
}

package store

import (
	"bufio"
	"context"
	"errors"
	"fmt"
	"os"
	"slices"
	"strings"
	"testing"
	"time"

	"ebbwell/internal/quantity"
	"ebbwell/internal/record"
)

// incoming is three athletes with two tests each, as an import brings them.
func incoming() Incoming {
	in := Incoming{File: "tests.csv", Kind: record.ImportTests}
	for i := range 3 {
		a := record.Athlete{Meta: record.Meta{ID: record.NewID()}, Name: fmt.Sprint("Athlete ", i), Born: "1999-01-01"}
		in.Athletes = append(in.Athletes, a)
		for day := range 2 {
			t := record.Test{Meta: record.Meta{ID: record.NewID()}, AthleteID: a.ID, State: record.TestOpen}
			t.Session.Date = record.Date(fmt.Sprintf("2025-05-1%d", day))
			t.Weighings = []record.Weighing{{Moment: record.Before, Order: 1, Mass: record.Num(70, quantity.Kilogram)}}
			in.Tests = append(in.Tests, t)
		}
	}
	return in
}

// counted counts athletes, tests and imports.
func counted(t testing.TB, s *Store) [3]int {
	t.Helper()
	ctx := context.Background()
	tests := slices.DeleteFunc(got(s.TestDays(ctx))(t), func(d TestDay) bool { return d.DeletedAt != nil })
	return [3]int{len(got(s.Athletes(ctx))(t)), len(tests), len(got(s.Imports(ctx))(t))}
}

// TestImportAddsAll: what was imported names its import, and the import what it added.
func TestImportAddsAll(t *testing.T) {
	s, ctx := open(t, t.TempDir(), newClock()), context.Background()
	in, seen := incoming(), 0
	in.Progress = func(done, of int) {
		if seen++; done != seen || of != 9 {
			t.Errorf("told %d of %d at call %d", done, of, seen)
		}
	}
	im := got(s.Import(ctx, in))(t)
	if im.Athletes != 3 || im.Tests != 6 || im.By != "Kit" || seen != 9 {
		t.Errorf("%+v, told %d times", im, seen)
	}
	if n := counted(t, s); n != [3]int{3, 6, 1} {
		t.Errorf("kept are %v", n)
	}
	for _, x := range in.Tests {
		if kept := got(s.LoadTest(ctx, x.ID))(t); kept.ImportID != im.ID || kept.Weighings[0].Mass.Or(0) != 70 {
			t.Errorf("%+v", kept)
		}
	}
	if a := got(s.LoadAthlete(ctx, in.Athletes[0].ID))(t); a.ImportID != im.ID {
		t.Errorf("the athlete came with %q", a.ImportID)
	}
	checkWhole(t, s)
}

// TestImportAllOrNothing: one that is stopped, or meets an id that is kept already,
// leaves nothing.
func TestImportAllOrNothing(t *testing.T) {
	s := open(t, t.TempDir(), newClock())
	for stop := 1; stop <= 9; stop++ {
		ctx, cancel := context.WithCancel(context.Background())
		in := incoming()
		in.Progress = func(done, _ int) {
			if done == stop {
				cancel()
			}
		}
		if _, err := s.Import(ctx, in); !errors.Is(err, context.Canceled) {
			t.Fatalf("stopped at %d: %v", stop, err)
		}
	}
	in := incoming()
	in.Tests[5].AthleteID = "nobody"
	if _, err := s.Import(context.Background(), in); err == nil {
		t.Error("a test of nobody was imported")
	}
	in = incoming()
	in.Athletes[2].ID = in.Athletes[0].ID
	if _, err := s.Import(context.Background(), in); CodeOf(err) != CodeInvalid {
		t.Errorf("an id twice: %v", err)
	}
	if n := counted(t, s); n != [3]int{} {
		t.Errorf("kept are %v", n)
	}
}

// TestUndoImport removes what is as it came, and leaves and names what is not.
func TestUndoImport(t *testing.T) {
	s, ctx := open(t, t.TempDir(), newClock()), context.Background()
	before := got(s.SaveAthlete(ctx, record.Athlete{Name: "Here before"}, Edit{}))(t)
	in := incoming()
	im := got(s.Import(ctx, in))(t)
	one := got(s.LoadTest(ctx, in.Tests[0].ID))(t)
	one.Note = "typed since"
	got(s.SaveTest(ctx, one, Edit{}))(t)
	plan := record.Plan{AthleteID: in.Athletes[1].ID, State: record.PlanDraft}
	plan.Basis.TestID = in.Tests[2].ID
	got(s.SavePlan(ctx, plan, Edit{}))(t)
	u := got(s.UndoImport(ctx, im.ID))(t)
	if u.Tests != 4 || u.Athletes != 1 || len(u.Left) != 4 {
		t.Fatalf("%+v", u)
	}
	want := map[record.ID]LeftWhy{in.Tests[0].ID: LeftChanged, in.Tests[2].ID: LeftInUse, in.Athletes[0].ID: LeftInUse, in.Athletes[1].ID: LeftInUse}
	for _, l := range u.Left {
		if want[l.Ref.ID] != l.Why || l.Athlete == "" {
			t.Errorf("%+v", l)
		}
	}
	if n := counted(t, s); n != [3]int{3, 2, 1} {
		t.Errorf("kept are %v", n)
	}
	got(s.LoadAthlete(ctx, before.ID))(t)
	if _, err := s.UndoImport(ctx, im.ID); CodeOf(err) != CodeInvalid {
		t.Errorf("undone twice: %v", err)
	}
	// What was removed comes back whole.
	must(t, s.Undelete(ctx, record.Ref{Kind: record.KindTest, ID: in.Tests[4].ID}, Edit{}))
	checkWhole(t, s)
}

// TestImportedResults: a value goes onto its patch, and comes off unless it was
// changed since.
func TestImportedResults(t *testing.T) {
	s, ctx := open(t, t.TempDir(), newClock()), context.Background()
	a := got(s.SaveAthlete(ctx, record.Athlete{Name: "Ann"}, Edit{}))(t)
	patches := []record.Patch{{Order: 1, Site: record.SiteForearmDorsal, AtLaboratory: true}, {Order: 2, Site: record.SiteChest, AtLaboratory: true}}
	one := got(s.SaveTest(ctx, record.Test{AthleteID: a.ID, State: record.TestOpen, Patches: patches}, Edit{}))(t)
	mmol := func(x float64) record.Number { return record.Num(x, quantity.MillimolePerLitre) }
	results := []PatchResult{{Test: one.ID, Patch: one.Patches[0].ID, Sodium: mmol(47), Potassium: mmol(4)}, {Test: one.ID, Patch: one.Patches[1].ID, Sodium: mmol(52)}}
	im := got(s.Import(ctx, Incoming{Kind: record.ImportLaboratory, Results: results}))(t)
	now := got(s.LoadTest(ctx, one.ID))(t)
	if p := now.Patches[0]; p.Sodium.Or(0) != 47 || p.Potassium.Or(0) != 4 || p.AtLaboratory {
		t.Errorf("%+v", p)
	}
	now.Patches[1].Sodium = mmol(53)
	got(s.SaveTest(ctx, now, Edit{}))(t)
	u := got(s.UndoImport(ctx, im.ID))(t)
	now = got(s.LoadTest(ctx, one.ID))(t)
	if u.Results != 1 || len(u.Left) != 1 || now.Patches[0].Sodium.Known() || !now.Patches[0].AtLaboratory || now.Patches[1].Sodium.Or(0) != 53 {
		t.Errorf("%+v, %+v", u, now.Patches)
	}
	again := got(s.Import(ctx, Incoming{Kind: record.ImportLaboratory, Results: results[:1]}))(t)
	got(s.EraseAthlete(ctx, a.ID, false))(t)
	for _, im := range got(s.Imports(ctx))(t) {
		if strings.Contains(string(im.Added), string(one.ID)) {
			t.Errorf("import %s still names the test of one who was erased", im.ID)
		}
	}
	if u := got(s.UndoImport(ctx, again.ID))(t); u.Results != 0 {
		t.Errorf("%+v", u)
	}
	if _, err := s.Import(ctx, Incoming{Results: []PatchResult{{Test: one.ID, Patch: "none"}}}); CodeOf(err) != CodeNotFound {
		t.Errorf("a patch that is not there: %v", err)
	}
}

// TestUndoBeside: plans and trips that came with athletes go with them; one that was
// changed since stays, and keeps what it rests on.
func TestUndoBeside(t *testing.T) {
	s, ctx := open(t, t.TempDir(), newClock()), context.Background()
	in := Incoming{Kind: record.ImportRecords,
		Athletes: []record.Athlete{{Meta: record.Meta{ID: "a1"}, Name: "Wren"}, {Meta: record.Meta{ID: "a2"}, Name: "Tove"}},
		Tests:    []record.Test{{Meta: record.Meta{ID: "t1"}, AthleteID: "a1"}, {Meta: record.Meta{ID: "t2"}, AthleteID: "a2"}},
		Trips:    []record.Trip{{Meta: record.Meta{ID: "r1"}, Name: "Coast", Travellers: []record.Traveller{{AthleteID: "a1"}}}},
		Products: []record.Product{{Meta: record.Meta{ID: "x1"}, Name: "Drink"}},
		Plans: []record.Plan{
			{Meta: record.Meta{ID: "p1"}, AthleteID: "a1", Name: "first", Basis: record.PlanBasis{TestID: "t1"}},
			{Meta: record.Meta{ID: "p2"}, AthleteID: "a2", Name: "second", Basis: record.PlanBasis{TestID: "t2"}},
		},
	}
	im := got(s.Import(ctx, in))(t)
	if plans, trips := PlansAndTrips(im); plans != 2 || trips != 1 {
		t.Errorf("%d plans and %d trips are told", plans, trips)
	}
	if ids := got(s.IDs(ctx, record.KindPlan, record.KindTrip, record.KindProduct))(t); len(ids) != 4 || !ids["p2"] || !ids["r1"] || !ids["x1"] {
		t.Errorf("ids are %v", ids)
	}
	two := got(s.LoadPlan(ctx, "p2"))(t)
	two.Name = "mine"
	got(s.SavePlan(ctx, two, Edit{}))(t)
	u := got(s.UndoImport(ctx, im.ID))(t)
	if u.Plans != 1 || u.Trips != 1 || u.Tests != 1 || u.Athletes != 1 || len(u.Left) != 3 || u.Left[0].Athlete != "mine" || u.Left[0].Why != LeftChanged {
		t.Errorf("undone %+v", u)
	}
	checkWhole(t, s)
}

// TestTemplates: they are kept, replaced and removed.
func TestTemplates(t *testing.T) {
	s, ctx := open(t, t.TempDir(), newClock()), context.Background()
	one := got(s.SaveTemplate(ctx, record.ImportTemplate{Name: "squad", Mapping: []byte(`{}`)}))(t)
	one.Name = "squad 2026"
	got(s.SaveTemplate(ctx, one))(t)
	if list := got(s.Templates(ctx))(t); len(list) != 1 || list[0].Name != "squad 2026" || list[0].By != "Kit" {
		t.Errorf("%+v", list)
	}
	must(t, s.RemoveTemplate(ctx, one.ID))
	if list := got(s.Templates(ctx))(t); len(list) != 0 {
		t.Errorf("%+v", list)
	}
}

// childImport imports, and says so at each record; it goes on when it is told to.
func childImport(dir string) error {
	s, err := Open(dir, Options{By: "Kit"})
	if err != nil {
		return err
	}
	in := incoming()
	next := bufio.NewReader(os.Stdin)
	in.Progress = func(done, _ int) {
		fmt.Println("record", done)
		_, _ = next.ReadString('\n')
	}
	_, err = s.Import(context.Background(), in)
	return errors.Join(err, s.Close())
}

// TestImportKilled: the program is killed at each record of an import; the file holds
// nothing of it.
func TestImportKilled(t *testing.T) {
	for _, at := range []int{1, 4, 9} {
		dir := t.TempDir()
		must(t, openAndClose(Open(dir, Options{Clock: func() time.Time { return time.Date(2026, 5, 14, 10, 0, 0, 0, time.UTC) }})))
		killAt(t, "import", dir, fmt.Sprintf("record %d", at))
		s := open(t, dir, newClock())
		checkWhole(t, s)
		if n := counted(t, s); n != [3]int{} {
			t.Errorf("killed at record %d: kept are %v", at, n)
		}
		must(t, s.Close())
	}
}

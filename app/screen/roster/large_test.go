package roster

import (
	"context"
	"fmt"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"ebbwell/app/apptest"
	"ebbwell/app/kit/desk"
	"ebbwell/internal/care"
	"ebbwell/internal/consult"
	"ebbwell/internal/demo"
	"ebbwell/internal/quantity"
	"ebbwell/internal/record"
	"ebbwell/internal/store"
	"ebbwell/internal/store/large"
)

// copies are made of every athlete of the invented practice and of some more: ten
// thousand athletes and some.
const copies = 680

// gravest is what an athlete's alerts are sorted by, as the head of the window names
// them: the place of the first among the kinds the list shows, and how grave its
// condition is.
func gravest(list []consult.Alert) (rank [2]int) {
	kinds := []consult.AlertKind{consult.AlertCondition, consult.AlertSince, consult.AlertToday, consult.AlertGain}
	for _, x := range list {
		if at := slices.Index(kinds, x.Kind); at >= 0 {
			condition := 0
			for _, y := range list {
				condition = max(condition, care.Gravity(y.Flag))
			}
			return [2]int{at + 1, condition}
		}
	}
	return rank
}

// fillLarge makes the invented practice and some more: heavier after an open sheet,
// nothing to know, one grave condition, three light ones; and copies them all.
func fillLarge(t *testing.T, dir string) {
	t.Helper()
	ctx, w := context.Background(), apptest.Words(t)
	s, err := store.Open(dir, store.Options{Clock: apptest.Now})
	if err != nil {
		t.Fatal(err)
	}
	if err := demo.Fill(ctx, s, apptest.Now(), demo.Names{Options: desk.OptionNames(w), Step: desk.StepName(w), Say: w.Say, Town: w.City}); err != nil {
		t.Fatal(err)
	}
	ids := map[string]record.ID{}
	for name, kinds := range map[string][]record.FlagKind{
		"Gain Everard": {record.FlagNSAID}, "Nothing Ashgrove": nil, "Grave Hollis": {record.FlagHyponatraemia},
		"Light Merrow": {record.FlagNSAID, record.FlagAntidepressant, record.FlagOtherMedicine},
	} {
		a := record.Athlete{Meta: record.Meta{ID: record.NewID()}, Name: name, Born: "1998-02-02"}
		for _, kind := range kinds {
			a.Flags = append(a.Flags, record.Flag{Meta: record.Meta{ID: record.NewID()}, Kind: kind})
		}
		if _, err := s.SaveAthlete(ctx, a, store.Edit{}); err != nil {
			t.Fatal(err)
		}
		ids[name] = a.ID
	}
	kg := func(m record.Moment, x float64) record.Weighing {
		return record.Weighing{Meta: record.Meta{ID: record.NewID()}, Moment: m, Mass: record.Num(x, quantity.Kilogram)}
	}
	sheet := record.Test{
		AthleteID: ids["Gain Everard"], State: record.TestOpen, Session: record.Session{Date: "2026-05-10", Start: "14:00", End: "15:30"},
		Weighings: []record.Weighing{kg(record.Before, 70), kg(record.After, 70.6)},
	}
	if _, err := s.SaveTest(ctx, sheet, store.Edit{}); err != nil {
		t.Fatal(err)
	}
	if err := s.Close(); err != nil {
		t.Fatal(err)
	}
	if err := large.Grow(filepath.Join(dir, "ebbwell.db"), large.Copies{Sessions: 1, Athletes: copies}); err != nil {
		t.Fatal(err)
	}
}

// TestAlertsOfALargePractice sorts ten thousand athletes by their alerts: by gravity as
// the head of the window orders them, whoever is where, and everybody is there once.
func TestAlertsOfALargePractice(t *testing.T) {
	dir := t.TempDir()
	fillLarge(t, dir)
	opened, err := store.Open(dir, store.Options{Clock: apptest.Now})
	if err != nil {
		t.Fatal(err)
	}
	defer func() {
		if err := opened.Close(); err != nil {
			t.Error(err)
		}
	}()
	d, err := desk.New(opened, apptest.Words(t), apptest.Now)
	if err != nil {
		t.Fatal(err)
	}
	ranks := ranksOf(t, d)
	v, err := New(d)
	if err != nil {
		t.Fatal(err)
	}
	apptest.Window(t, v.Body(), 1180, 700, false, 100)
	v.table.OnSort(int(ByFlags), true)
	if v.table.Rows() != len(ranks)*copies || len(ranks)*copies < 10000 {
		t.Fatalf("%d rows of %d athletes", v.table.Rows(), len(ranks)*copies)
	}
	seen, kinds := map[record.ID]bool{}, map[[2]int]int{}
	before := ranks[base(v.state.Row(v.rows[0]).Name)]
	for i, at := range v.rows {
		r := v.state.Row(at)
		rank, known := ranks[base(r.Name)]
		if !known {
			t.Fatalf("row %d is %q", i, r.Name)
		}
		if seen[r.ID] {
			t.Fatalf("%s stands there twice", r.Name)
		}
		if slices.Compare(rank[:], before[:]) > 0 {
			t.Fatalf("row %d: %s is graver (%v) than the row above (%v)", i, r.Name, rank, before)
		}
		if cell := v.table.Row(i)[ByFlags]; (cell == "") != (rank == [2]int{}) {
			t.Fatalf("row %d: %s, whose alerts are %v, says %q", i, r.Name, rank, cell)
		}
		seen[r.ID], before = true, rank
		kinds[rank]++
	}
	if first := v.state.Row(v.rows[0]); !first.Gained {
		t.Errorf("the first is %s", first.Name)
	}
	if len(kinds) < 4 {
		t.Errorf("the practice has only %d sorts of alerts: %v", len(kinds), kinds)
	}
}

// base is the name an athlete was copied from.
func base(name string) string {
	var copied int
	if at := strings.LastIndex(name, " "); at > 0 {
		if n, err := fmt.Sscan(name[at+1:], &copied); n == 1 && err == nil {
			return name[:at]
		}
	}
	return name
}

// ranksOf is how grave the alerts of each athlete are that was copied, by name.
func ranksOf(t *testing.T, d *desk.Desk) map[string][2]int {
	t.Helper()
	ctx := context.Background()
	people, err := d.Store.People(ctx)
	if err != nil {
		t.Fatal(err)
	}
	ranks := map[string][2]int{}
	for _, a := range people {
		if base(a.Name) != a.Name {
			continue
		}
		_, list, err := d.Alerts(ctx, a.ID)
		if err != nil {
			t.Fatal(err)
		}
		plans, err := d.PlanAlerts(ctx, a.ID)
		if err != nil {
			t.Fatal(err)
		}
		ranks[a.Name] = gravest(consult.WithPlan(list, plans))
	}
	return ranks
}

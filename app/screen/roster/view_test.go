package roster

import (
	"context"
	"flag"
	"fmt"
	"slices"
	"strings"
	"testing"

	"fyne.io/fyne/v2"

	"ebbwell/app/apptest"
	"ebbwell/app/kit/desk"
	"ebbwell/app/kit/look/golden"
	"ebbwell/internal/consult"
	"ebbwell/internal/evidence"
	"ebbwell/internal/quantity"
	"ebbwell/internal/record"
	"ebbwell/internal/store"
	"ebbwell/internal/sweat"
)

var update = flag.Bool("update", false, "keep new golden pictures")

func TestSearchSortOpen(t *testing.T) {
	d, went := apptest.Demo(t)
	v, err := New(d)
	if err != nil {
		t.Fatal(err)
	}
	w := apptest.Window(t, v.Body(), 1180, 700, false, 100)
	if v.table.Rows() != 11 || v.table.Row(0)[0] != "Dorian Wexcombe" {
		t.Fatalf("%d rows, the first %q", v.table.Rows(), v.table.Row(0))
	}
	apptest.Type(t, w, "roster.search", "rugby prop")
	if v.table.Rows() != 1 || v.table.Row(0)[0] != "Kester Undermill" {
		t.Fatalf("found %d rows", v.table.Rows())
	}
	apptest.Type(t, w, "roster.search", "ÜNDER-késter")
	if v.table.Rows() != 1 || v.table.Row(0)[0] != "Kester Undermill" {
		t.Fatalf("typed with other accents: %d rows", v.table.Rows())
	}
	apptest.Type(t, w, "roster.search", "millrace")
	if v.table.Rows() != 1 || v.table.Row(0)[0] != "Sefa Quillonde" {
		t.Fatalf("the group is not searched: %d rows", v.table.Rows())
	}
	apptest.Press(w, fyne.KeyReturn)
	if len(*went) != 1 || (*went)[0].Screen != desk.Overview || (*went)[0].Athlete != v.state.Row(v.rows[0]).ID {
		t.Fatalf("went to %+v", *went)
	}
	apptest.Type(t, w, "roster.search", "")
	v.table.OnSort(int(ByRate), true)
	if v.table.Row(0)[0] != "Dorian Wexcombe" && v.state.Row(v.rows[0]).Rate < v.state.Row(v.rows[1]).Rate {
		t.Errorf("sorted by rate the first is %q", v.table.Row(0))
	}
	for i := 1; i < len(v.rows); i++ {
		if v.state.Row(v.rows[i]).Rate > v.state.Row(v.rows[i-1]).Rate {
			t.Errorf("row %d sweats more than the row above", i)
		}
	}
}

// The gravest alert is named first, whatever the order in the profile, and the column
// sorts by it.
func TestAlertsByGravity(t *testing.T) {
	d, went := apptest.Demo(t)
	v, err := New(d)
	if err != nil {
		t.Fatal(err)
	}
	w := apptest.Window(t, v.Body(), 1180, 700, false, 100)
	at := func(name string) []string {
		for i := range v.table.Rows() {
			if row := v.table.Row(i); row[0] == name {
				return row
			}
		}
		t.Fatalf("%s is not in the list", name)
		return nil
	}
	if got := at("Ilse Tarnholme")[ByFlags]; got != "low blood sodium in the past +1" {
		t.Errorf("alerts of Ilse Tarnholme: %q", got)
	}
	v.table.OnSort(int(ByFlags), true)
	if got := v.table.Row(0)[0]; got != "Ilse Tarnholme" {
		t.Errorf("sorted by alerts the first is %q", got)
	}
	apptest.Click(t, w, "roster.table.0")
	if len(*went) != 1 || (*went)[0].Athlete != v.state.Row(v.rows[0]).ID {
		t.Errorf("one click went to %+v", *went)
	}
}

// canisterSheet is an open sheet with a bottle beyond its limits and no sport of
// its own: what its power says follows from the athlete's.
func canisterSheet(a record.Athlete) record.Test {
	kg := func(m record.Moment, x float64) record.Weighing {
		return record.Weighing{Meta: record.Meta{ID: record.NewID()}, Moment: m, Mass: record.Num(x, quantity.Kilogram)}
	}
	g := func(x float64) record.Number { return record.Num(x, quantity.Gram) }
	return record.Test{
		Meta: record.Meta{ID: record.NewID()}, AthleteID: a.ID, State: record.TestOpen,
		Session:   record.Session{Date: "2026-05-10", Start: "14:00", End: "17:00", Power: record.Num(190, quantity.Watt)},
		Air:       record.Air{Temperature: record.Num(24, quantity.DegreeCelsius), Humidity: record.Num(52, quantity.PerCent)},
		Scale:     record.Scale{Step: record.Num(0.05, quantity.Kilogram), Before: record.DressMinimal, After: record.DressMinimal},
		Loss:      record.Loss{NoUrine: true, NoStool: true},
		Weighings: []record.Weighing{kg(record.Before, 64), kg(record.After, 62.4)},
		Bottles: []record.Bottle{{
			Meta: record.Meta{ID: record.NewID()}, ProductID: consult.Water, Use: record.UseDrunk, Before: g(12500), After: g(11800),
		}},
	}
}

// The rate in the list is that of the sheet: with a value kept for a reason, with
// what the athlete is, and of a closed sheet as it was closed.
func TestRateIsThatOfTheSheet(t *testing.T) {
	d, _ := apptest.Desk(t)
	ctx := context.Background()
	a := apptest.Athlete(t, d)
	sheet := canisterSheet(a)
	a.Sport = "rowing"
	a, err := d.Store.SaveAthlete(ctx, a, store.Edit{})
	if err != nil {
		t.Fatal(err)
	}
	if sheet, err = d.Store.SaveTest(ctx, sheet, store.Edit{}); err != nil {
		t.Fatal(err)
	}
	ref := record.Ref{Kind: record.KindTest, ID: sheet.ID}
	shown := func(what string) string {
		t.Helper()
		v, err := New(d)
		if err != nil {
			t.Fatal(err)
		}
		f, err := d.Findings(ctx, sheet, a)
		if err != nil {
			t.Fatal(err)
		}
		rate := d.Words.Say("roster.norate")
		if r := f.Sweat.Fluid.Rate; r.Known {
			rate = d.Words.Amount(r.Value, quantity.LitrePerHour)
		}
		if got := v.table.Row(0)[3]; got != rate {
			t.Errorf("%s: the list says %q, the sheet %q", what, got, rate)
		}
		return rate
	}
	without := shown("a bottle beyond its limits")
	if err := d.Store.SetReason(ctx, ref, "bottles."+string(sheet.Bottles[0].ID)+".before", "a canister", store.Edit{}); err != nil {
		t.Fatal(err)
	}
	with := shown("kept with a reason")
	plain := consult.Find(sheet, record.Athlete{}, nil, d.Calculate()).Sweat.Fluid.Rate
	if with == without || plain.Known && d.Words.Amount(plain.Value, quantity.LitrePerHour) == with {
		t.Errorf("the check cannot fail: %q, %q, %v", without, with, plain.Value)
	}
	raw, err := d.Store.RawOf(ctx, ref)
	if err != nil {
		t.Fatal(err)
	}
	inputs, results, err := consult.FreezeTest(consult.Find(sheet, a, raw, d.Calculate()), a, raw, d.Calculate())
	if err != nil {
		t.Fatal(err)
	}
	if sheet, err = d.Store.CloseTest(ctx, sheet, store.Freezing{Inputs: inputs, Results: results, Evidence: evidence.Version}, store.Edit{}); err != nil {
		t.Fatal(err)
	}
	a.Sport = "gym" // where the power says nothing, and nothing is taken off
	if a, err = d.Store.SaveAthlete(ctx, a, store.Edit{}); err != nil {
		t.Fatal(err)
	}
	anew := consult.Find(sheet, a, raw, d.Calculate()).Sweat.Fluid.Rate
	if closed := shown("closed"); closed != with || d.Words.Amount(anew.Value, quantity.LitrePerHour) == with {
		t.Errorf("closed at %q the list says %q; calculated anew it is %v", with, closed, anew.Value)
	}
}

func TestEveryColumnSorts(t *testing.T) {
	rows := []store.Person{{ID: "1", Name: "b", Sport: "y"}, {ID: "2", Name: "A", Sport: "z"}}
	lines := map[record.ID]store.AthleteLine{
		"1": {LastTest: store.TestLine{Date: "2026-01-02"}, Plan: store.PlanLine{Step: 2, Review: "2026-03-01"}},
		"2": {LastTest: store.TestLine{Date: "2026-01-01"}, Plan: store.PlanLine{Step: 1, Review: "2026-02-01"}},
	}
	s := NewState(rows, []int32{1, 0}, Ask{
		Key: apptest.Words(t).OrderKey(),
		Flags: func(a store.Person) []record.FlagKind {
			if a.ID == "1" {
				return []record.FlagKind{record.FlagHeart}
			}
			return nil
		},
		Word: func(sport string) string { return sport },
	})
	s.ReadLines([]int{0, 1}, lines)
	for c, first := range map[Column]record.ID{ByName: "2", BySport: "1", ByTest: "2", ByStep: "2", ByReview: "2", ByFlags: "2"} {
		if got := s.Sort(c, false).Rows(); s.Row(got[0]).ID != first {
			t.Errorf("column %d up begins with %s", c, s.Row(got[0]).ID)
		}
		if got := s.Sort(c, true).Rows(); s.Row(got[1]).ID != first {
			t.Errorf("column %d down ends with %s", c, s.Row(got[1]).ID)
		}
	}
}

// A long list reads the tests and plans of the rows in sight, of all once it is
// sorted by them, and nothing twice.
func TestALongListReadsWhatIsInSight(t *testing.T) {
	d, _ := apptest.Desk(t)
	const many = 150
	for i := range many {
		if _, err := d.Store.SaveAthlete(context.Background(), record.Athlete{Name: fmt.Sprintf("Athlete %03d", i)}, store.Edit{}); err != nil {
			t.Fatal(err)
		}
	}
	v, err := New(d)
	if err != nil {
		t.Fatal(err)
	}
	w := apptest.Window(t, v.Body(), 1000, 600, false, 100)
	read := func() int { return many - len(v.state.ToRead(v.rows, -1)) }
	w.Canvas().Capture()
	if n := read(); n == 0 || n > aScreenful {
		t.Errorf("%d of %d athletes were read", n, many)
	}
	v.state = v.state.Sort(ByStep, false)
	v.show()
	if n := read(); n != many {
		t.Errorf("sorted by step, %d of %d athletes were read", n, many)
	}
}

// album lists the screens that are kept as pictures.
func album() golden.Album {
	return golden.Album{Update: *update, Keep: []string{
		"empty",
		"list-light-100",
	}}
}

func TestEmpty(t *testing.T) {
	d, went := apptest.Desk(t)
	v, err := New(d)
	if err != nil {
		t.Fatal(err)
	}
	w := apptest.Window(t, v.Body(), 1000, 600, false, 100)
	apptest.Click(t, w, "roster.first")
	if len(*went) != 1 || !(*went)[0].New || (*went)[0].Screen != desk.Profile {
		t.Errorf("went to %+v", *went)
	}
	golden.LayOutAgain(w.Canvas())
	album().Screen(t, "empty", w)
}

func TestPictures(t *testing.T) {
	d, _ := apptest.Demo(t)
	long := record.Athlete{
		Meta: record.Meta{ID: record.NewID()}, Name: strings.Repeat("Anneliese-Wilhelmina ", 3), Sport: "a sport of many words that nobody has put into a table",
		Flags: []record.Flag{{Meta: record.Meta{ID: record.NewID()}, Kind: record.FlagEating}, {Meta: record.Meta{ID: record.NewID()}, Kind: record.FlagSickleCell}},
	}
	if _, err := d.Store.SaveAthlete(context.Background(), long, store.Edit{}); err != nil {
		t.Fatal(err)
	}
	for _, m := range golden.Modes() {
		golden.Use(t, m)
		v, err := New(d)
		if err != nil {
			t.Fatal(err)
		}
		w := golden.Open(t, v.Body(), fyne.NewSize(1000, 600))
		album().Screen(t, "list-"+m.String(), w)
	}
}

// A gain after the last test, kept when the sheet was closed or worked out of an open
// one or of one that does not say, stands before all else and sorts first; a record
// corrected after the plan was agreed stands before the conditions.
func TestGainAndCorrection(t *testing.T) {
	s := NewState([]store.Person{
		{ID: "1", Name: "A", Flags: []record.FlagKind{record.FlagNSAID}}, {ID: "2", Name: "B"}, {ID: "3", Name: "C"}, {ID: "4", Name: "D"},
	}, []int32{0, 1, 2, 3}, Ask{
		Key:   apptest.Words(t).OrderKey(),
		Flags: func(a store.Person) []record.FlagKind { return a.Flags },
		Keeps: func(store.Person, record.FrozenLine) bool { return true },
		Word:  func(string) string { return "" },
	})
	rate := 1.0
	line := func(gain string) store.AthleteLine {
		return store.AthleteLine{Tests: 1, LastTest: store.TestLine{ID: "t" + record.ID(gain), State: record.TestClosed, Line: record.FrozenLine{Rate: &rate, Gain: gain}}}
	}
	rows := s.Sort(ByFlags, true).Rows()
	corrected := line(record.GainNo)
	corrected.Plan = store.PlanLine{ID: "p", Corrected: true}
	s.ReadLines(rows, map[record.ID]store.AthleteLine{"1": corrected, "2": line(record.GainYes), "3": line("")})
	if list := s.ToWorkOut(rows, -1); len(list) != 1 || list[0] != "t" {
		t.Errorf("to work out: %q", list)
	}
	found := consult.Findings{Test: record.Test{Meta: record.Meta{ID: "t"}}}
	found.Sweat.Flags = []sweat.Flag{{ID: sweat.FlagGained, Size: 0.3}}
	s.WorkedOut([]consult.Findings{found})
	rows = s.Sort(ByFlags, true).Rows()
	var order []record.ID
	for _, i := range rows {
		order = append(order, s.Row(i).ID)
	}
	if !slices.Equal(order, []record.ID{"2", "3", "1", "4"}) {
		t.Errorf("sorted by alerts: %q", order)
	}
	d, _ := apptest.Desk(t)
	v := &View{desk: d}
	for i, want := range map[int]string{0: d.Words.Say("alerts.more", d.Words.Say("alert.since"), 1), 1: d.Words.Say("alert.gain"), 2: d.Words.Say("alert.gain"), 3: ""} {
		if got := v.alertCell(s.Row(i)).Text; got != want {
			t.Errorf("row %d: %q, want %q", i, got, want)
		}
	}
}

// What is corrected after a plan was agreed on it is written where the list reads it,
// and goes when it is corrected back.
func TestCorrectionReachesTheList(t *testing.T) { //nolint:gocognit,funlen // one path from a sheet to the list
	d, _ := apptest.Demo(t)
	ctx := context.Background()
	list, err := d.Store.Athletes(ctx)
	if err != nil {
		t.Fatal(err)
	}
	for _, a := range list {
		plans, err := d.Store.Plans(ctx, a.ID)
		if err != nil || a.Plan.ID == "" {
			continue
		}
		for _, p := range plans {
			if p.ID != a.Plan.ID || p.Basis.TestID == "" {
				continue
			}
			opened, err := d.Store.ReopenTest(ctx, p.Basis.TestID, "weighed again")
			if err != nil {
				t.Fatal(err)
			}
			says := func(want bool) {
				t.Helper()
				if err := d.NoteCorrected(ctx, opened); err != nil {
					t.Fatal(err)
				}
				lines, err := d.Store.Lines(ctx, []record.ID{a.ID})
				if err != nil || lines[a.ID].Plan.Corrected != want {
					t.Errorf("%s: corrected is %v, want %v, %v", a.Name, lines[a.ID].Plan.Corrected, want, err)
				}
			}
			says(false) // opened, and nothing changed
			before := opened.Clone()
			for i := range opened.Weighings {
				if w := &opened.Weighings[i]; w.Moment == record.After {
					w.Mass = record.Num(*w.Mass.Value-0.4, quantity.Kilogram)
				}
			}
			shut := func() {
				t.Helper()
				who, err := d.Store.LoadAthlete(ctx, a.ID)
				if err != nil {
					t.Fatal(err)
				}
				found := consult.Find(opened, who, nil, d.Calculate())
				inputs, results, err := consult.FreezeTest(found, who, nil, d.Calculate())
				if err != nil {
					t.Fatal(err)
				}
				opened, err = d.Store.CloseTest(ctx, opened, store.Freezing{Inputs: inputs, Results: results, Evidence: evidence.Version, Line: consult.LineOf(found)}, store.Edit{})
				if err != nil {
					t.Fatal(err)
				}
			}
			shut()
			says(true)
			if opened, err = d.Store.ReopenTest(ctx, opened.ID, "the first was right"); err != nil {
				t.Fatal(err)
			}
			for i := range opened.Weighings {
				opened.Weighings[i].Mass = before.Weighings[i].Mass
			}
			shut()
			says(false)
			return
		}
	}
	t.Fatal("nobody has a plan agreed on a test")
}

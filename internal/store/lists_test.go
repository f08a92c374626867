package store

import (
	"context"
	"reflect"
	"slices"
	"strconv"
	"testing"
	"time"

	"ebbwell/internal/record"
)

// TestSummaries: a line of the roster tells the newest test and the plan
// agreed last, and leaves out what was deleted.
func TestSummaries(t *testing.T) {
	s, ctx := open(t, t.TempDir(), newClock()), context.Background()
	squad := got(s.SaveGroup(ctx, record.Group{Name: "Squad"}, Edit{}))(t)
	gone := got(s.SaveGroup(ctx, record.Group{Name: "Gone"}, Edit{}))(t)
	a := got(s.SaveAthlete(ctx, record.Athlete{Name: "Mira", Sport: "rowing", Position: "bow", Born: "2009-02-01", MassHidden: true,
		Flags:       []record.Flag{{Kind: record.FlagDiabetes}, {Kind: record.FlagKidney}},
		Memberships: []record.Membership{{GroupID: squad.ID}, {GroupID: gone.ID}}}, Edit{}))(t)
	got(s.SaveAthlete(ctx, record.Athlete{Name: "Ann"}, Edit{}))(t)
	deleted := got(s.SaveAthlete(ctx, record.Athlete{Name: "Zoe"}, Edit{}))(t)
	must(t, s.Delete(ctx, record.Ref{Kind: record.KindAthlete, ID: deleted.ID}, Edit{}))
	must(t, s.Delete(ctx, record.Ref{Kind: record.KindGroup, ID: gone.ID}, Edit{}))
	test := func(day record.Date, start record.Clock) record.Test {
		return got(s.SaveTest(ctx, record.Test{AthleteID: a.ID, State: record.TestOpen, Session: record.Session{Date: day, Start: start}}, Edit{}))(t)
	}
	newest := test("2026-05-02", "17:00")
	test("2026-05-02", "08:00")
	test("2025-12-31", "")
	dropped := test("2026-05-03", "")
	must(t, s.Delete(ctx, record.Ref{Kind: record.KindTest, ID: dropped.ID}, Edit{}))
	agreed(t, s, newest)
	last := agreed(t, s, newest)
	last.Steps[0].State, last.Steps[1].State = record.StepDone, record.StepNow
	got(s.SavePlan(ctx, last, Edit{}))(t)

	all := got(s.Athletes(ctx))(t)
	if len(all) != 2 || all[0].Name != "Ann" || all[0].Tests != 0 || all[0].LastTest.ID != "" || all[0].Plan.ID != "" {
		t.Fatalf("got %+v", all)
	}
	want := AthleteSummary{
		Person: Person{
			ID: a.ID, Name: "Mira", Sport: "rowing", Position: "bow", Born: "2009-02-01", MassHidden: true,
			Groups: []string{"Squad"}, Flags: []record.FlagKind{record.FlagDiabetes, record.FlagKidney},
		},
		AthleteLine: AthleteLine{
			Tests: 3, LastTest: TestLine{ID: newest.ID, Date: "2026-05-02", State: record.TestOpen},
			Plan: PlanLine{ID: last.ID, Name: "Long run", Step: 2, Steps: 2, Review: "2026-05-28"},
		},
		ChangedAt: a.ChangedAt,
	}
	if !reflect.DeepEqual(all[1], want) {
		t.Errorf("got  %+v\nwant %+v", all[1], want)
	}
	latest := got(s.Sheets(ctx, []record.ID{newest.ID, dropped.ID}))(t)
	if len(latest) != 1 || latest[0].Test.ID != newest.ID || latest[0].Athlete.Name != "Mira" {
		t.Errorf("sheets %+v", latest)
	}
	tests := got(s.Tests(ctx, a.ID))(t)
	if len(tests) != 3 || tests[0].ID != newest.ID || tests[2].Session.Date != "2025-12-31" {
		t.Errorf("tests %+v", tests)
	}
	if plans := got(s.Plans(ctx, a.ID))(t); len(plans) != 2 || plans[0].ID != last.ID {
		t.Errorf("plans %+v", plans)
	}
}

// TestLatestTested: those of the sport with a test that is done, the newest test first;
// nobody that was deleted or whose only test was.
func TestLatestTested(t *testing.T) {
	s, ctx := open(t, t.TempDir(), newClock()), context.Background()
	tested := func(name, sport string, state record.TestState, day record.Date) (record.ID, record.Test) {
		a := got(s.SaveAthlete(ctx, record.Athlete{Name: name, Sport: sport}, Edit{}))(t)
		return a.ID, got(s.SaveTest(ctx, record.Test{AthleteID: a.ID, State: state, Session: record.Session{Date: day, Start: "09:00"}}, Edit{}))(t)
	}
	early, _ := tested("Early", "rowing", record.TestWaiting, "2026-03-01")
	late, _ := tested("Late", "Rowing", record.TestWaiting, "2026-05-01")
	middle, _ := tested("Middle", "rowing", record.TestWaiting, "2026-04-01")
	tested("Open", "rowing", record.TestOpen, "2026-05-02")
	tested("Other", "judo", record.TestWaiting, "2026-05-02")
	gone, _ := tested("Gone", "rowing", record.TestWaiting, "2026-05-02")
	_, dropped := tested("Dropped", "rowing", record.TestWaiting, "2026-05-02")
	must(t, s.Delete(ctx, record.Ref{Kind: record.KindAthlete, ID: gone}, Edit{}))
	must(t, s.Delete(ctx, record.Ref{Kind: record.KindTest, ID: dropped.ID}, Edit{}))
	for most, want := range map[int][]record.ID{2: {late, middle}, 64: {late, middle, early}} {
		if list := got(s.LatestTested(ctx, "rowing", most))(t); !slices.Equal(list, want) {
			t.Errorf("at most %d: %v, want %v", most, list, want)
		}
	}
}

// A test comes with what it is worked out from: reasons, and copies with the
// newest first; nothing of another test.
func TestSheetsWithWhatIsBesideThem(t *testing.T) {
	s, ctx := open(t, t.TempDir(), newClock()), context.Background()
	a := got(s.SaveAthlete(ctx, record.Athlete{Name: "Mira", Sex: record.Female}, Edit{}))(t)
	got(s.SaveAthlete(ctx, record.Athlete{Name: "Ann, who has no test"}, Edit{}))(t)
	add := func(day record.Date) record.Test {
		test := got(s.SaveTest(ctx, record.Test{AthleteID: a.ID, State: record.TestOpen, Session: record.Session{Date: day}}, Edit{}))(t)
		ref := record.Ref{Kind: record.KindTest, ID: test.ID}
		must(t, s.SetReason(ctx, ref, "session.met", "why on "+string(day), Edit{}))
		must(t, s.SetRaw(ctx, ref, "session.power", "much", Edit{}))
		for _, n := range []string{"1", "2"} {
			got(s.Freeze(ctx, ref, Freezing{Inputs: []byte(n), Results: []byte(day), Evidence: n}))(t)
		}
		return test
	}
	newest, older := add("2026-05-02"), add("2026-05-01")
	whole := func(l Sheet, test record.Test) {
		t.Helper()
		if !reflect.DeepEqual(l.Test, test) || l.Athlete.Sex != record.Female || len(l.Raw) != 2 || len(l.Kept) != 2 {
			t.Fatalf("got %+v", l)
		}
		day := string(test.Session.Date)
		if l.Raw[0].Text != "why on "+day || !l.Raw[0].Reason || l.Kept[0].Evidence != "2" || string(l.Kept[1].Results) != day {
			t.Errorf("got %+v, %+v", l.Raw, l.Kept)
		}
	}
	some := got(s.Sheets(ctx, []record.ID{newest.ID}))(t)
	if len(some) != 1 {
		t.Fatalf("got %d sheets", len(some))
	}
	whole(some[0], newest)
	for _, all := range [][]Sheet{got(s.SheetsOf(ctx, a.ID))(t), got(s.Sheets(ctx, []record.ID{older.ID, newest.ID}))(t)} {
		if len(all) != 2 {
			t.Fatalf("got %d sheets", len(all))
		}
		whole(all[0], newest)
		whole(all[1], older)
	}
}

// The sweat rate of the newest test stands in the list once the test is closed,
// as the newest copy has it.
func TestRateInTheList(t *testing.T) {
	s, ctx := open(t, t.TempDir(), newClock()), context.Background()
	a := got(s.SaveAthlete(ctx, record.Athlete{Name: "Mira"}, Edit{}))(t)
	line := func() TestLine { return got(s.Athletes(ctx))(t)[0].LastTest }
	closeWith := func(test record.Test, rate float64, ranged bool) record.Test {
		f := freezing("closed")
		f.Line = record.FrozenLine{Rate: &rate, Ranged: ranged}
		return got(s.CloseTest(ctx, test, f, Edit{}))(t)
	}
	test := record.Test{AthleteID: a.ID, State: record.TestOpen, Session: record.Session{Date: "2026-05-02"}}
	older := test
	older.Session.Date = "2026-05-01"
	closeWith(got(s.SaveTest(ctx, older, Edit{}))(t), 9, true)
	test = got(s.SaveTest(ctx, test, Edit{}))(t)
	if l := line(); l.ID != test.ID || l.Line.Rate != nil {
		t.Errorf("an open test has the line %+v", l)
	}
	closed := closeWith(test, 1.25, false)
	if l := line(); l.ID != closed.ID || l.State != record.TestClosed || l.Line.Rate == nil || *l.Line.Rate != 1.25 || l.Line.Ranged {
		t.Errorf("the closed test has the line %+v", l)
	}
	closeWith(got(s.ReopenTest(ctx, closed.ID, "another mass"))(t), 1.5, true)
	if l := line(); l.Line.Rate == nil || *l.Line.Rate != 1.5 || !l.Line.Ranged {
		t.Errorf("the corrected test has the line %+v", l)
	}
}

// TestUsesOf a product in tests, plans and trips; what was deleted is none.
func TestUsesOf(t *testing.T) {
	s, ctx := open(t, t.TempDir(), newClock()), context.Background()
	a := got(s.SaveAthlete(ctx, record.Athlete{Name: "Mira"}, Edit{}))(t)
	gone := got(s.SaveAthlete(ctx, record.Athlete{Name: "Ann"}, Edit{}))(t)
	test := func(athlete record.ID, one record.Test) record.Test {
		one.AthleteID = athlete
		return got(s.SaveTest(ctx, one, Edit{}))(t)
	}
	two := []record.Bottle{{ProductID: "mine"}, {ProductID: "mine"}}
	both := test(a.ID, record.Test{Bottles: two, Foods: []record.FoodEaten{{ProductID: "mine"}}})
	test(a.ID, record.Test{Foods: []record.FoodEaten{{ProductID: "mine"}}})
	test(a.ID, record.Test{Bottles: []record.Bottle{{ProductID: "other"}}})
	test(gone.ID, record.Test{Bottles: two})
	must(t, s.Delete(ctx, record.Ref{Kind: record.KindAthlete, ID: gone.ID}, Edit{}))
	got(s.SavePlan(ctx, record.Plan{AthleteID: a.ID, Options: []record.Option{{Items: []record.Item{{ProductID: "mine"}}}}}, Edit{}))(t)
	got(s.SaveTrip(ctx, record.Trip{Supplies: []record.Supply{{ProductID: "mine"}}}, Edit{}))(t)
	if u := got(s.UsesOf(ctx, "mine"))(t); u != (Uses{Tests: 2, Plans: 1, Trips: 1}) {
		t.Errorf("uses %+v", u)
	}
	both.Bottles, both.Foods = nil, nil
	got(s.SaveTest(ctx, both, Edit{}))(t)
	if u := got(s.UsesOf(ctx, "mine"))(t); u != (Uses{Tests: 1, Plans: 1, Trips: 1}) {
		t.Errorf("uses %+v", u)
	}
}

// What the newest test used stands first; what was deleted is not used.
func TestUsedLately(t *testing.T) {
	s, ctx := open(t, t.TempDir(), newClock()), context.Background()
	a := got(s.SaveAthlete(ctx, record.Athlete{Name: "Mira"}, Edit{}))(t)
	test := func(day record.Date, bottle, food record.ID) record.Test {
		return got(s.SaveTest(ctx, record.Test{
			AthleteID: a.ID, Session: record.Session{Date: day}, Bottles: []record.Bottle{{ProductID: bottle}}, Foods: []record.FoodEaten{{ProductID: food}},
		}, Edit{}))(t)
	}
	test("2026-03-01", "juice", "bar")
	test("2026-05-01", "cola", "bar")
	last := test("2026-05-09", "tea", "")
	if list := got(s.UsedLately(ctx))(t); !slices.Equal(list, []record.ID{"tea", "bar", "cola", "juice"}) {
		t.Errorf("used lately: %v", list)
	}
	must(t, s.Delete(ctx, record.Ref{Kind: record.KindTest, ID: last.ID}, Edit{}))
	if list := got(s.UsedLately(ctx))(t); !slices.Equal(list, []record.ID{"bar", "cola", "juice"}) {
		t.Errorf("used lately: %v", list)
	}
}

// A plan agreed for a stop of a trip is not the one in force on the roster,
// also where it was agreed last, or is the only one.
func TestPlanOfAStopIsNotInForce(t *testing.T) {
	s, ctx := open(t, t.TempDir(), newClock()), context.Background()
	a := got(s.SaveAthlete(ctx, record.Athlete{Name: "Mira"}, Edit{}))(t)
	trip := got(s.SaveTrip(ctx, record.Trip{Name: "July", Stops: []record.Stop{{Place: "Camp"}, {Place: "Cup", Order: 1}}}, Edit{}))(t)
	agree := func(name string, stop record.ID) record.Plan {
		p := record.Plan{AthleteID: a.ID, State: record.PlanDraft, Name: name, Basis: record.PlanBasis{Kind: record.BasisEstimate, StopID: stop}}
		p.Steps = []record.Step{{State: record.StepNow}}
		return got(s.AgreePlan(ctx, p, Freezing{Inputs: []byte("{}"), Results: []byte("[]"), Evidence: "1"}, Edit{}))(t)
	}
	inForce := func() PlanLine { return got(s.Athletes(ctx))(t)[0].Plan }
	agree("Camp", trip.Stops[0].ID)
	if line := inForce(); line != (PlanLine{}) {
		t.Errorf("a plan for a stop is in force: %+v", line)
	}
	home := agree("Home", "")
	agree("Cup", trip.Stops[1].ID)
	if line := inForce(); line.ID != home.ID || line.Name != "Home" || line.Step != 1 || line.Steps != 1 {
		t.Errorf("in force is %+v", line)
	}
}

// TestPractice: there is none, then one.
func TestPractice(t *testing.T) {
	s, ctx := open(t, t.TempDir(), newClock()), context.Background()
	_, err := s.Practice(ctx)
	wantCode(t, err, CodeNotFound)
	p := got(s.SavePractice(ctx, record.Practice{Name: "One"}, Edit{}))(t)
	p.Name = "Renamed"
	p = got(s.SavePractice(ctx, p, Edit{}))(t)
	_, err = s.SavePractice(ctx, record.Practice{Name: "Two"}, Edit{})
	wantCode(t, err, CodeConflict)
	if kept := got(s.Practice(ctx))(t); !reflect.DeepEqual(kept, p) {
		t.Errorf("got %+v", kept)
	}
}

// TestTrips: all, and those of an athlete.
func TestTrips(t *testing.T) {
	s, ctx := open(t, t.TempDir(), newClock()), context.Background()
	a := got(s.SaveAthlete(ctx, record.Athlete{}, Edit{}))(t)
	first := got(s.SaveTrip(ctx, record.Trip{Name: "Camp", Travellers: []record.Traveller{{AthleteID: a.ID}}}, Edit{}))(t)
	second := got(s.SaveTrip(ctx, record.Trip{Name: "Games", Travellers: []record.Traveller{{AthleteID: a.ID}}}, Edit{}))(t)
	if all := got(s.Trips(ctx))(t); len(all) != 2 || all[0].ID != second.ID {
		t.Errorf("trips %+v", all)
	}
	second.Travellers = nil
	got(s.SaveTrip(ctx, second, Edit{}))(t)
	if own := got(s.TripsOf(ctx, a.ID))(t); len(own) != 1 || !reflect.DeepEqual(own[0], first) {
		t.Errorf("trips of the athlete %+v", own)
	}
}

// TestOrder: rows come in their place, then by age.
func TestOrder(t *testing.T) {
	s, ctx := open(t, t.TempDir(), newClock()), context.Background()
	a := got(s.SaveAthlete(ctx, record.Athlete{}, Edit{}))(t)
	one := got(s.SaveTest(ctx, record.Test{AthleteID: a.ID, Bottles: []record.Bottle{
		{Name: "third", Order: 3}, {Name: "first", Order: 1}, {Name: "second", Order: 2}, {Name: "also second", Order: 2}}}, Edit{}))(t)
	var names []string
	for _, b := range got(s.LoadTest(ctx, one.ID))(t).Bottles {
		names = append(names, b.Name)
	}
	if want := []string{"first", "second", "also second", "third"}; !reflect.DeepEqual(names, want) {
		t.Errorf("got %q, want %q", names, want)
	}
}

// BenchmarkSaveField saves one field of one test in a practice of 200 athletes
// with 6 tests each.
func BenchmarkSaveField(b *testing.B) {
	s := fullPractice(b)
	ctx := context.Background()
	all := got(s.Athletes(ctx))(b)
	one := got(s.LoadTest(ctx, all[100].LastTest.ID))(b)
	visit := Edit{Visit: string(record.NewID())}
	b.ResetTimer()
	for i := range b.N {
		one.Bottles[1].After = record.Num(float64(i), "g")
		var err error
		one, err = s.SaveTest(ctx, one, visit)
		must(b, err)
	}
}

// BenchmarkSaveFieldBaseline is one column of one row changed in a transaction of
// its own in the same file: what the disk asks for, without history or reading.
func BenchmarkSaveFieldBaseline(b *testing.B) {
	s := fullPractice(b)
	all := got(s.Athletes(context.Background()))(b)
	b.ResetTimer()
	for i := range b.N {
		must(b, s.files.writer.Exec("UPDATE tests SET note = ? WHERE id = ?", strconv.Itoa(i), all[100].LastTest.ID).Error)
	}
}

// BenchmarkOpen opens the same practice: check, settle, connections.
func BenchmarkOpen(b *testing.B) {
	s := fullPractice(b)
	must(b, s.Close())
	b.ResetTimer()
	for range b.N {
		must(b, openAndClose(Open(s.Dir(), Options{Clock: newClock().now})))
	}
}

// BenchmarkAthletes lists the roster of the same practice.
func BenchmarkAthletes(b *testing.B) {
	s := fullPractice(b)
	b.ResetTimer()
	for range b.N {
		got(s.Athletes(context.Background()))(b)
	}
}

// BenchmarkSnapshot copies the same practice.
func BenchmarkSnapshot(b *testing.B) {
	s := fullPractice(b)
	b.ResetTimer()
	for range b.N {
		must(b, s.snapshot(context.Background(), SnapshotDaily))
	}
}

// fullPractice makes a practice of 200 athletes with 6 tests each, every field set.
func fullPractice(b *testing.B) *Store {
	b.Helper()
	c, ctx := newClock(), context.Background()
	s := open(b, b.TempDir(), c)
	group := got(s.SaveGroup(ctx, record.Group{Name: "Squad"}, Edit{}))(b)
	links := map[string]record.ID{"AthleteID": "", "TestID": "", "BottleID": "", "GroupID": group.ID, "ProductID": "water", "DrinkID": "water", "FoodID": "banana", "ImportID": "import"}
	for range 200 {
		links["AthleteID"] = ""
		a := got(s.SaveAthlete(ctx, filled[record.Athlete](b, links), Edit{}))(b)
		links["AthleteID"] = a.ID
		for range 6 {
			t := filled[record.Test](b, links)
			t.State = record.TestOpen
			got(s.SaveTest(ctx, t, Edit{}))(b)
			c.add(time.Second)
		}
	}
	return s
}

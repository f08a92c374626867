package consult

import (
	"testing"
	"time"

	"ebbwell/internal/climate"
	"ebbwell/internal/record"
)

// TestEachTestIsWorkedOutOnce: a traveller's tests are worked out once, however
// many stops and other days are asked for, and every stop comes to what it comes
// to by itself.
func TestEachTestIsWorkedOutOnce(t *testing.T) {
	a, tests, p, d := tripCase(t)
	older := tests[0]
	older.Test.ID, older.Test.Session.Date = "older", "2025-09-02"
	tests = append(tests, older)
	traveller := NewTraveller(a, tests, &p, cities(t), day(), d)
	calls := map[record.ID]int{}
	work := traveller.asking.compare
	traveller.asking.compare = func(f *Findings, air record.Air, a record.Athlete, on time.Time, d Setup) (climate.Test, bool) {
		calls[f.Test.ID]++
		return work(f, air, a, on, d)
	}
	stops := []record.Stop{stop("Chennai", 7), stop("Madrid", 7), stop("London", 7), stop("Lima", 2)}
	for i := range stops {
		stops[i].From, stops[i].Until = stops[i].From.AddDays(30*i), stops[i].Until.AddDays(30*i)
		there, err := traveller.Plan(stops[i])
		if err != nil {
			t.Fatal(err)
		}
		hot, ok := there.OnAnotherDay(5)
		if !ok {
			t.Fatal("nothing is said of a hotter day")
		}
		alone, err := planStop(stops[i], a, tests, &p, cities(t), day(), d)
		if err != nil {
			t.Fatal(err)
		}
		hotAlone, _ := alone.OnAnotherDay(5)
		for what, pair := range map[string][2]float64{
			"rate": {there.Calculation.Climate.Rate.Value, alone.Calculation.Climate.Rate.Value},
			"low":  {there.Calculation.Climate.Rate.Range.Low, alone.Calculation.Climate.Rate.Range.Low},
			"high": {there.Calculation.Climate.Rate.Range.High, alone.Calculation.Climate.Rate.Range.High},
			"hot":  {hot.Calculation.Climate.Rate.Value, hotAlone.Calculation.Climate.Rate.Value},
			"plan": {there.At.Fluid.DrunkL, alone.At.Fluid.DrunkL},
			"ago":  {there.Calculation.Compared[1].MonthsAgo, alone.Calculation.Compared[1].MonthsAgo},
		} {
			if pair[0] != pair[1] {
				t.Errorf("stop %d: %s is %v, by itself %v", i, what, pair[0], pair[1])
			}
		}
	}
	if len(calls) != 2 || calls[tests[0].Test.ID] != 1 || calls["older"] != 1 {
		t.Errorf("the tests were worked out %v times", calls)
	}
}

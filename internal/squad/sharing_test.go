package squad

import (
	"math"
	"slices"
	"testing"
	"time"

	"ebbwell/internal/consult"
	"ebbwell/internal/quantity"
	"ebbwell/internal/record"
)

// TestSecondWeighing: a second weighing in the limits sets a mistaken first aside;
// a gain is never set aside.
func TestSecondWeighing(t *testing.T) {
	s := newSquad(t, day(), 72.4)
	s.weighIn(0, 72.4)
	s.weighOut(0, 67.1)
	s.weighOut(0, 71.0)
	s.edit(0, func(one *record.Test) { WeighAgain(one, record.After) })
	r := s.rows(at18(47))[0]
	if masses := Masses(r.Sheet.Test, record.After); len(masses) != 2 || !masses[0].Aside || masses[1].Aside {
		t.Errorf("weighings %+v", masses)
	}
	if len(r.Odd) != 0 || math.Abs(r.Found.Sweat.Fluid.MassChange.Value+1.934) > 0.01 {
		t.Errorf("odd %+v, change %v", r.Odd, r.Found.Sweat.Fluid.MassChange.Value)
	}
	s = newSquad(t, day(), 72.4)
	s.weighIn(0, 72.4)
	s.weighOut(0, 73.2)
	s.weighOut(0, 71.9)
	s.edit(0, func(one *record.Test) { WeighAgain(one, record.After) })
	if r := s.rows(at18(47))[0]; !r.Flagged || !r.Flag.Gained || Masses(r.Sheet.Test, record.After)[0].Aside {
		t.Errorf("the gain went: %+v", r.Flag)
	}
}

// TestShare: what all share goes to every sheet but those with a value of their own.
func TestShare(t *testing.T) {
	s := newSquad(t, day(), 60, 70, 80)
	s.edit(1, func(t *record.Test) { t.Session.Start, t.Session.End = "18:00", "19:00" })
	s.edit(2, func(t *record.Test) { t.State = record.TestClosed })
	was := s.g
	s.g = s.g.Clone()
	s.g.Session.End, s.g.Air.Temperature, s.g.Session.Place = "18:45", record.Num(30, quantity.DegreeCelsius), "court 2"
	s.g.Bottles = append(s.g.Bottles, record.BottleKind{ProductID: "sports-drink"})
	for i := range s.g.Members {
		s.edit(i, func(t *record.Test) { Share(was, s.g, t) })
	}
	of := func(i int) record.Test { return s.sheets[s.g.Members[i].TestID].Test }
	if a := of(0); a.Session.End != "18:45" || a.Air.Temperature.Or(0) != 30 || a.Session.Place != "court 2" || len(a.Bottles) != 3 {
		t.Errorf("the first sheet has %+v", a.Session)
	}
	if b := of(1); b.Session.End != "19:00" || b.Session.Start != "18:00" || b.Air.Temperature.Or(0) != 30 {
		t.Errorf("own times became %+v", b.Session)
	}
	if own := Own(s.g, of(1)); !slices.Equal(own, []string{"session.start", "session.end"}) || !OwnTimes(s.g, of(1)) || OwnTimes(s.g, of(0)) {
		t.Errorf("own values %q", own)
	}
	if c := of(2); c.Session.End != "18:40" || len(c.Bottles) != 2 {
		t.Errorf("a closed sheet became %+v", c.Session)
	}
	was = s.g.Clone()
	s.g.Bottles = s.g.Bottles[:1]
	s.edit(0, bottles([3]float64{1, 1}, [3]float64{700, 600}))
	s.edit(0, func(t *record.Test) { Share(was, s.g, t) })
	if a := of(0); len(a.Bottles) != 2 {
		t.Errorf("%d bottles: what was weighed must stay", len(a.Bottles))
	}
}

// TestBegin: a new day begins as the last one was, without its air and its sheets.
func TestBegin(t *testing.T) {
	last := day()
	last.Bottles[1].ProductID = "sports-drink"
	last.Members = []record.Member{{}}
	g := Begin(last, "squad", at18(0).AddDate(0, 0, 7))
	if g.ID == last.ID || g.Session.Date != "2026-05-25" || g.Session.Start != "17:05" || g.Air.Temperature.Known() || len(g.Members) != 0 {
		t.Errorf("begun as %+v", g)
	}
	if len(g.Bottles) != 2 || g.Bottles[1].ProductID != "sports-drink" || g.Bottles[1].ID == last.Bottles[1].ID || !g.ScaleStep.Known() {
		t.Errorf("bottles %+v", g.Bottles)
	}
	if g := Begin(record.GroupSession{}, "", at18(0)); len(g.Bottles) != 1 || g.Bottles[0].ProductID != consult.Water {
		t.Errorf("without a day before: %+v", g.Bottles)
	}
}

// TestMidnight: a session over midnight, and one in which the clocks are set.
func TestMidnight(t *testing.T) {
	s := record.Session{Date: "2026-05-18", Start: "23:10"}
	EndNow(&s, time.Date(2026, 5, 19, 0, 40, 0, 0, time.UTC))
	if m, ok := SpanOf(s, time.UTC).Minutes(); !ok || m != 90 || !s.EndsNextDay {
		t.Errorf("%v min, %+v", m, s)
	}
	one := record.Test{Session: s, Patches: []record.Patch{{On: "23:50"}}}
	if p := PatchOf(one, time.Date(2026, 5, 19, 0, 20, 0, 0, time.UTC)); !p.On || p.Minutes != 30 || !p.Due || p.By != "00:20" {
		t.Errorf("the patch over midnight: %+v", p)
	}
	zone, err := time.LoadLocation("Europe/London")
	if err != nil {
		t.Fatal(err)
	}
	night := record.Session{Date: "2026-03-29", Start: "00:30", End: "02:30"}
	if m, ok := SpanOf(night, zone).Minutes(); !ok || m != 60 || !ClocksChanged(night, zone) {
		t.Errorf("%v min on the night the clocks are set", m)
	}
	if ClocksChanged(s, zone) {
		t.Error("the clocks were not set in May")
	}
}

// TestAmounts reads refills and what was poured away.
func TestAmounts(t *testing.T) {
	for text, want := range map[string]struct {
		added  []float64
		poured float64
		ok     bool
	}{
		"": {ok: true}, "610": {[]float64{610}, 0, true}, "300+310": {[]float64{300, 310}, 0, true}, "610-50": {[]float64{610}, 50, true},
		"0-50": {nil, 50, true}, "-50": {nil, 50, true}, "x": {}, "300++2": {}, "610-": {}, "6 − 5": {[]float64{6}, 5, true},
	} {
		added, poured, ok := Amounts(text)
		if ok != want.ok || poured != want.poured || !slices.Equal(added, want.added) {
			t.Errorf("%q reads as %v, %v, %v", text, added, poured, ok)
		}
	}
}

// TestNext: after the end those who are not weighed come first, in the order of the
// scale from here on.
func TestNext(t *testing.T) {
	s := newSquad(t, day(), 60, 60, 60, 60)
	for _, i := range []int{0, 1, 2} {
		s.weighIn(i, 60)
	}
	if got := Next(s.rows(at18(47)), 1); !slices.Equal(got, []int{2, 0}) {
		t.Errorf("next %v", got)
	}
	s.weighOut(0, 59)
	s.weighOut(1, 59)
	s.weighOut(2, 59)
	if got := Next(s.rows(at18(47)), 2); !slices.Equal(got, []int{3}) {
		t.Errorf("next %v", got)
	}
}

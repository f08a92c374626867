package climate

import (
	"math"
	"slices"
	"testing"

	"ebbwell/internal/figure"
	"ebbwell/internal/quantity"
)

// areaOf is DuBois and DuBois by hand.
func areaOf(b Body) float64 {
	return 0.202 * math.Pow(float64(b.Mass), 0.425) * math.Pow(float64(b.Height), 0.725)
}

// input is the value behind a symbol.
func input(t *testing.T, f figure.Figure, symbol string) float64 {
	t.Helper()
	for _, in := range f.Why.Inputs {
		if in.Symbol == symbol {
			return in.Value
		}
	}
	t.Errorf("no %q in %v", symbol, f.Why.Inputs)
	return math.NaN()
}

// Every way to an effort: its size, relative error, and what it is said to come of.
func TestEveryWayToAnEffort(t *testing.T) {
	b := Body{72, 1.8}
	perMl := 72.0 / 1000 / 60 * 20900 / areaOf(b)
	for _, c := range []struct {
		name   string
		effort Effort
		value  float64
		u      float64
		work   float64
		inputs map[string]float64
		spot   bool
	}{
		{"energy", must[Effort](t)(EnergyEffort(b, 700, 90, OnFoot, 0)), 700 * 4184 / 5400.0 / areaOf(b), 0.10, 0, map[string]float64{"joules": 4184, "kcal": 700, "minutes": 90}, true},
		{"energy on the way", must[Effort](t)(EnergyEffort(b, 700, 90, Cycling, 5)), 700 * 4184 / 5400.0 / areaOf(b), 0.10, 700 * 4184 / 5400.0 / areaOf(b) * 0.21, nil, false},
		{"cycling", must[Effort](t)(CyclingEffort(b, 200, 0)), (7 + 10.8*200/72) * perMl, 0.07, 200 / areaOf(b), map[string]float64{"base": 7, "perwatt": 10.8, "power": 200}, true},
		{"cycling on a road", must[Effort](t)(CyclingEffort(b, 200, 8)), (7 + 10.8*200/72) * perMl, 0.07, 200 / areaOf(b), nil, false},
		{"rowing", must[Effort](t)(RowingEffort(b, 190, 0)), 1000 / areaOf(b), 0.07, 190 / areaOf(b), map[string]float64{"efficiency": 0.19}, true},
		{"rowing a boat", must[Effort](t)(RowingEffort(b, 190, 4)), 1000 / areaOf(b), 0.07, 190 / areaOf(b), nil, false},
		{"running uphill", must[Effort](t)(RunningEffort(b, 3, 0.05, true)), (3.5 + 0.2*180 + 0.9*180*0.05) * perMl, 0.10, 0, map[string]float64{"base": 3.5, "level": 0.2, "grade": 0.9, "speed": 180, "gradient": 0.05}, true},
		{"running downhill", must[Effort](t)(RunningEffort(b, 3, -0.05, false)), (3.5 + 0.2*180) * perMl, 0.10, 0, map[string]float64{"gradient": 0}, false},
		{"table", must[Effort](t)(MetEffort(b, 8, OnFoot, 0)), 28 * perMl, 0.20, 0, map[string]float64{"met": 8, "oxygen": 3.5}, true},
		{"table, on a court", must[Effort](t)(MetEffort(b, 8, OnFoot, 1)), 28 * perMl, 0.20, 0, nil, false},
		{"rating", must[Effort](t)(RatedEffort(b, 5, Rowing, 0)), 24.5 * perMl, 0.35, 24.5 * perMl * 0.19, map[string]float64{"met": 7}, true},
		{"assumed", must[Effort](t)(AssumedEffort(b, 6, OnFoot, 0)), 21 * perMl, 0.35, 0, map[string]float64{"met": 6}, true},
	} {
		m := c.effort.Metabolic
		same(t, c.name, m.Value, c.value, 1e-9)
		same(t, c.name+", u", m.U, c.u*c.value, 1e-9)
		same(t, c.name+", work", float64(c.effort.Work), c.work, 1e-9)
		for symbol, want := range c.inputs {
			same(t, c.name+", "+symbol, input(t, m, symbol), want, 1e-12)
		}
		if len(m.Why.Budget) != 1 || m.Why.Budget[0].Part != 1 || c.effort.OnTheSpot != c.spot {
			t.Errorf("%s: %+v, on the spot %v", c.name, m.Why.Budget, c.effort.OnTheSpot)
		}
		if d := c.effort.Kind.relativeU(); math.Abs(d-c.u) > 1e-12 {
			t.Errorf("%s: the rule takes %g", c.name, d)
		}
	}
	for name, err := range map[string]error{
		"energy below nought": second(EnergyEffort(b, -1, 90, OnFoot, 0)), "energy in a second": second(EnergyEffort(b, 3000, 0.1, OnFoot, 0)),
		"own speed below nought": second(EnergyEffort(b, 700, 90, OnFoot, -1)), "power": second(RowingEffort(b, 5000, 0)),
	} {
		if err == nil {
			t.Errorf("%s is an effort", name)
		}
	}
}

// Over breaks the time in play counts by its share, the rest as two MET; the
// relative error stays.
func TestEffortOverItsBreaks(t *testing.T) {
	b := Body{72, 1.8}
	e := must[Effort](t)(CyclingEffort(b, 200, 8))
	rest := 2 * 3.5 / 1000 * 72 / 60 * 20900 / areaOf(b)
	o := e.Over(b, 30, 120)
	same(t, "value", o.Metabolic.Value, 0.25*e.Metabolic.Value+0.75*rest, 1e-9)
	same(t, "u", o.Metabolic.U, 0.07*o.Metabolic.Value, 1e-9)
	same(t, "work", float64(o.Work), 0.25*200/areaOf(b), 1e-9)
	same(t, "speed", float64(o.OwnSpeed), 2, 1e-12)
}

func TestGradesAtTheirEdges(t *testing.T) {
	for share, want := range map[float64]Grade{0.57: Tested, 0.599: Tested, 0.6: Near, 0.63: Near, 0.76: Near, 0.799: Near, 0.8: Far, 0.85: Far} {
		if got := gradeOf(share); got != want {
			t.Errorf("%g: %s", share, got.Code())
		}
	}
}

// What is said beside an estimate, on both sides of each edge.
func TestNotesOfAnEstimate(t *testing.T) {
	said := func(need, capacity, past, metabolic, rate float64, grade Grade) *Basis {
		b := &Basis{Grade: grade, Balance: Balance{Need: need, Capacity: capacity, AirPast: past, WettednessMax: 0.84}}
		b.Rate.Value = rate
		var s Session
		s.Effort.Metabolic.Value = metabolic
		b.note(&TestSet{start: UsualStart()}, &demand{}, s)
		return b
	}
	has := func(name string, b *Basis, code string, want bool) {
		t.Helper()
		if slices.Contains(b.Codes, code) != want {
			t.Errorf("%s: %v", name, b.Codes)
		}
	}
	for need, want := range map[float64]bool{140: true, 149.9: true, 150: false, 155: false} {
		has("need", said(need, 400, 2, 300, 1, Tested), LimitUnsure, want)
	}
	for _, c := range []struct {
		need, capacity       float64
		nothing, uncompensed bool
	}{{200, -1, true, false}, {200, 0, true, false}, {200, 220, false, true}, {200, 300, false, false}} {
		b := said(c.need, c.capacity, 2, 300, 1, Tested)
		has("nothing leaves", b, PlanNothingLeaves, c.nothing)
		has("uncompensable", b, PlanUncompensable, c.uncompensed)
	}
	for past, want := range map[float64]bool{2.9: false, 3: false, 3.1: true, 2.8: false, 3.2: true} {
		has("air", said(200, 400, past, 300, 1, Tested), AirExtrapolated, want)
	}
	for m, want := range map[float64]bool{420: false, 450: false, 451: true, 480: true} {
		has("effort", said(200, 400, 2, m, 1, Tested), EffortExtrapolated, want)
	}
	for rate, want := range map[float64]bool{2.8: false, 3: false, 3.1: true} {
		has("rate", said(200, 400, 2, 300, rate, Tested), RangeAlone, want)
	}
	has("far", said(200, 400, 2, 300, 1, Far), RangeAlone, true)
	b := &Basis{Rate: figure.Figure{Value: 1}, Balance: Balance{Need: 200, Capacity: 400}}
	for wider, want := range map[float64]bool{0.95: false, 1: false, 1.05: true} {
		b.Wider, b.Codes = wider, nil
		b.note(&TestSet{start: UsualStart(), used: []int{0}, tests: make([]Test, 1), demands: make([]demand, 1)}, &demand{}, Session{})
		has("wider", b, TestsDisagree, want)
	}
	// more than 0.10 in the logarithm over every test is above them
	s := &TestSet{demands: []demand{{log: 0.2}, {log: 0.5}}}
	for log, want := range map[float64]bool{0.55: false, 0.595: false, 0.605: true, 0.65: true} {
		if got := s.above(&demand{log: log}); got != want {
			t.Errorf("%g is above 0.5: %v", log, got)
		}
	}
	water := must[Basis](t)(Estimate(Athlete{Body: Body{70, 1.78}}, nil, Session{Effort: Effort{Motion: InWater}}))
	if water.NotTested != 1 || !water.RangeOnly || water.Grade != Far {
		t.Errorf("%+v", water)
	}
}

// A test's rate at another session goes with the first figures of both.
func TestMovedTest(t *testing.T) {
	b, hot := sample(t, 34, SunShade)
	one := testAt(t, 22, 1.2)
	bad := one
	bad.Rate = -1
	s := must[*TestSet](t)(NewTestSet(Athlete{Body: b}, []Test{bad, one}))
	first := func(x Session) float64 { return must[Basis](t)(Estimate(Athlete{Body: b}, nil, x)).Rate.Value }
	rate, ok := s.Moved(1, hot)
	same(t, "moved", float64(rate), float64(one.Rate)*first(hot)/first(one.Session), 1e-9)
	if _, bad := s.Moved(0, hot); bad || !ok {
		t.Error("a refused test is moved, or a good one is not")
	}
	wet, broken := hot, hot
	wet.Effort.Motion = InWater
	broken.Minutes = -5
	for name, x := range map[string]Session{"water": wet, "no time": broken} {
		if _, ok := s.Moved(1, x); ok {
			t.Errorf("moved to %s", name)
		}
	}
	cycling := must[Effort](t)(CyclingEffort(b, 200, 8))
	seat := hot
	seat.Effort = cycling
	for _, c := range []struct {
		s    Session
		want bool
	}{{hot, false}, {seat, true}} {
		if d := demandOf(must[Balance](t)(Calculate(b, c.s)), c.s); d.seated != c.want || (d.at[alongSeated] == 1) != c.want {
			t.Errorf("%s: seated %v at %g", c.s.Effort.Motion, d.seated, d.at[alongSeated])
		}
	}
}

// ISO 7933's clothing, with its coefficients again: wind counts to 3 m/s and a
// walk to 1.5 m/s with clothes on, and to the end without.
func TestClothesByHand(t *testing.T) {
	for _, c := range []struct{ clo, v, w float64 }{
		{0.3, 1, 0.7}, {0.3, 3, 0.7}, {0.3, 3.2, 0.7}, {0.3, 2.8, 1.4}, {0.3, 2, 1.6}, {0.57, 1, 0.5}, {0.6, 1, 0.5}, {0.63, 1, 0.5}, {1, 2, 0.7}, {0.2, 0.3, 0}, {0.3, 12, 0},
	} {
		v, w := min(c.v, 3), min(c.w, 1.5)
		clothed := min(1, 1.044*math.Exp((0.066*v-0.398)*v+(0.094*w-0.378)*w))
		nude := min(1, math.Exp((0.047*c.v-0.472)*c.v+(0.117*w-0.342)*w))
		both := clothed
		if c.clo <= 0.6 {
			both = ((0.6-c.clo)*nude + c.clo*clothed) / 0.6
		}
		area := 1 + 0.3*c.clo
		total := (0.155*c.clo + 0.111/area) * both
		moist := min(0.9, 0.38*((2.6*both-6.5)*both+4.9))
		got := wear(Clo(c.clo), c.v, c.w)
		same(t, "vapour", got.vapour, 16.7*moist/total, 1e-9)
		if inner := total - nude*0.111/area; inner > 1e-6 {
			same(t, "conductance", got.conductance, 1/inner, 1e-6)
		}
	}
	if w := wear(0, 0.3, 0); !w.bare {
		t.Errorf("without clothes: %+v", w)
	}
}

// Between skin and air that are far enough apart, still air carries more.
func TestStillAirByHand(t *testing.T) {
	for speed, forced := range map[float64]float64{0.2: 3.5 + 5.2*0.2, 1: 8.7, 2: 8.7 * math.Pow(2, 0.6)} {
		s := surround(Air{Temperature: 20, Vapour: 1}, 20, speed, 0.97, 0.77)
		same(t, "forced", s.forced, forced, 1e-9)
		same(t, "still", s.still, math.Pow(forced/2.38, 4), 1e-6)
	}
	s := surround(Air{Temperature: 20, Vapour: 1}, 30, 0.2, 0.97, 0.77)
	for skin, want := range map[float64]float64{30: 4.54, 36: 2.38 * 2} {
		same(t, "convection", s.convection(skin), want, 1e-9)
	}
	w := worn{area: 1.1, conductance: 12}
	h, x, k := 4.54, 30.0, 303.0
	out := 1.1*(h*(x-20)+s.radiation*(math.Pow(k, 4)-math.Pow(303, 4))) + (x-34)*12
	same(t, "step", s.surfaceStep(&w, 34, x, h), out/(1.1*(h+4*s.radiation*math.Pow(k, 3))+12), 1e-9)
}

// What is named of the differences: those that set apart by a tenth or more, and
// humidity and sun where they do so through the need.
func TestReasonsOfACoverage(t *testing.T) {
	d := func(by string, size, apart float64) Difference { return Difference{By: by, Size: size, Apart: apart} }
	for _, c := range []struct {
		name string
		list []Difference
		want []string
	}{
		{"air", []Difference{d(ByAir, 8, 0.2), d(ByEffort, 3, 0.09)}, []string{ByAir}},
		{"just", []Difference{d(ByAir, 8, 0.1), d(ByEffort, 3, 0.095)}, []string{ByAir}},
		{"a little more", []Difference{d(ByAir, 8, 0.105)}, []string{ByAir}},
		{"need alone", []Difference{d(ByNeed, 30, 0.3), d(ByAir, 1, 0.02)}, []string{ByNeed}},
		{"need and air", []Difference{d(ByNeed, 30, 0.3), d(ByAir, 8, 0.2)}, []string{ByAir}},
		{"humid through the need", []Difference{d(ByNeed, 30, 0.1), d(ByHumidity, -0.7, 0)}, []string{ByHumidity}},
		{"a little more humid", []Difference{d(ByNeed, 30, 0.1), d(ByHumidity, 0.75, 0)}, []string{ByHumidity}},
		{"hardly more humid", []Difference{d(ByNeed, 30, 0.1), d(ByHumidity, 0.65, 0)}, []string{ByNeed}},
		{"humid, need as it was", []Difference{d(ByNeed, 3, 0.095), d(ByHumidity, 2, 0)}, nil},
		{"sun through the need", []Difference{d(ByNeed, 30, 0.3), d(BySun, 1, 0)}, []string{BySun}},
		{"the same sun", []Difference{d(ByNeed, 30, 0.105), d(BySun, 0, 0)}, []string{ByNeed}},
		{"longer", []Difference{d(ByNeed, 30, 0.3), d(ByDuration, 60, 0)}, []string{ByNeed}},
		{"nothing", []Difference{d(ByAir, 1, 0.02), d(BySun, 2, 0), d(ByHumidity, 1, 0)}, nil},
	} {
		var got []string
		for _, r := range (Coverage{Differences: c.list}).Reasons() {
			got = append(got, r.By)
		}
		if !slices.Equal(got, c.want) {
			t.Errorf("%s: %v", c.name, got)
		}
	}
}

// A test alone grades by its share of the variance; over 2.6 SD it is odd.
func TestCoverageOfATest(t *testing.T) {
	b, plan := sample(t, 25, SunShade)
	one := testAt(t, 25, 1)
	s := must[*TestSet](t)(NewTestSet(Athlete{Body: b}, []Test{one}))
	d := demandOf(must[Balance](t)(Calculate(b, plan)), plan)
	for alone, want := range map[float64]Grade{1: Tested, 1.4: Tested, 1.6: Near, 3.9: Near, 4.1: Far} {
		got := s.cover(&d, outcome{weights: []float64{1}, alone: []float64{alone}, day: 1}, plan)[0].Grade
		if got != want {
			t.Errorf("%g of %g: %s", alone, alone+1, got.Code())
		}
	}
	for odd, want := range map[float64]bool{2.5: false, 2.6: false, 2.61: true, 2.7: true} {
		s.odd[0] = odd
		if got := s.cover(&d, outcome{weights: []float64{1}, alone: []float64{1}, day: 1}, plan)[0].Odd; got != want {
			t.Errorf("%g SD: %v", odd, got)
		}
	}
	done := plan
	done.Weather.Humidity = 30
	ride := plan
	ride.Effort = must[Effort](t)(CyclingEffort(b, 250, 8))
	rode := demandOf(must[Balance](t)(Calculate(b, ride)), ride)
	was := demandOf(must[Balance](t)(Calculate(b, done)), done)
	sizes := map[string]float64{}
	for _, x := range differences(Test{Session: done}, ride, &was, &rode) {
		sizes[x.By] = x.Size
	}
	saturated := 0.6105 * math.Exp(17.27*25/(25+237.3))
	same(t, "humidity", sizes[ByHumidity], saturated*0.2, 1e-9)
	same(t, "seated", sizes[BySeated], 1, 1e-12)
	same(t, "effort", sizes[ByEffort], 100*(rode.balance.Metabolic/was.balance.Metabolic-1), 1e-9)
	same(t, "need", sizes[ByNeed], 100*(rode.flow/was.flow-1), 1e-9)
	for _, x := range differences(Test{Session: ride}, done, &rode, &was) {
		if x.By == BySeated && x.Size != -1 {
			t.Errorf("off the bicycle: %g", x.Size)
		}
	}
}

// The day of a place: 22 °C mean, 28 highest; lowest not known, so 5 °C under
// the mean; nothing over 98 %.
func TestDayByHand(t *testing.T) {
	high := quantity.Celsius(28)
	p := Place{Name: "Somewhere", Grade: "B"}
	p.Months[4] = Month{Mean: 22, High: &high, Vapour: 1.5, YearsAir: 12, YearsVapour: 9}
	for hour, want := range map[float64]float64{6: 17, 5.5: 17, 6.5: 17 + 11*math.Sin(math.Pi*0.5/18), 15: 28, 18: 17 + 11*math.Sin(math.Pi*12/18)} {
		air := must[PlaceAir](t)(p.AtHour(5, hour))
		same(t, "air", float64(air.Temperature), want, 1e-9)
		if !air.LowGuessed || air.HighGuessed || air.Years != 9 || air.Grade != "B" {
			t.Errorf("%+v", air)
		}
	}
	p.Months[4].Vapour = 2.9 // more than air of 22 °C can hold
	same(t, "humidity", float64(must[PlaceAir](t)(p.Mean(5)).Humidity), 98, 1e-9)
	p.Months[4].Vapour = 2.55
	saturated := 0.6105 * math.Exp(17.27*22/(22+237.3))
	same(t, "humidity", float64(must[PlaceAir](t)(p.Mean(5)).Humidity), 100*2.55/saturated, 1e-9)
	p.Months[11].Mean, p.Months[0].Mean = 3, 4
	for month, want := range map[int]float64{12: 3, 1: 4} {
		same(t, "month", float64(must[PlaceAir](t)(p.Mean(month)).Temperature), want, 0)
	}
	for _, month := range []int{0, 13} {
		if _, err := p.Mean(month); err == nil {
			t.Errorf("month %d", month)
		}
	}
}

func TestFindingAPlace(t *testing.T) {
	var p Places
	for _, name := range []string{"Port One", "Port Two", "Port Three", "Port Four", "Port Five", "Port Six", "Alone"} {
		p.List = append(p.List, Place{Name: name, Country: "Land"})
	}
	if got, err := p.Find("port two"); err != nil || got.Name != "Port Two" {
		t.Errorf("%v, %v", got.Name, err)
	}
	if got, err := p.Find("alon"); err != nil || got.Name != "Alone" {
		t.Errorf("%v, %v", got.Name, err)
	}
	_, err := p.Find("Port")
	unknown, ok := err.(UnknownPlaceError) //nolint:errorlint // as it is returned
	if !ok || len(unknown.Like) != 5 {
		t.Errorf("%v", err)
	}
	if _, err := (Places{List: p.List[:1]}).Find(""); err == nil {
		t.Error("a place without a name")
	}
	if _, err := (Places{List: []Place{{}}}).Find("  "); err == nil {
		t.Error("a place without a name")
	}
}

// A speed that does not follow from the activity is our own, by its letter.
func TestOwnSpeedsOfTheTable(t *testing.T) {
	row := []string{"id", "name", "family", "7.0", "on-foot", "1.8", "P", "12020"}
	if a := must[Activity](t)(activityFrom(row)); !a.OwnSpeedProposed || a.Met != 7 || a.OwnSpeed != 1.8 {
		t.Errorf("%+v", a)
	}
	row[6] = "D"
	if a := must[Activity](t)(activityFrom(row)); a.OwnSpeedProposed {
		t.Errorf("%+v", a)
	}
	if _, err := activityFrom(row[:7]); err == nil {
		t.Error("a row of seven cells")
	}
}

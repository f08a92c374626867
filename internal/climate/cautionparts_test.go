package climate

import (
	"math"
	"slices"
	"testing"
	"time"

	"ebbwell/internal/evidence"
	"ebbwell/internal/figure"
	"ebbwell/internal/quantity"
)

// same holds a value against one worked out here.
func same(t *testing.T, name string, got, want, tolerance float64) {
	t.Helper()
	if !(math.Abs(got-want) <= tolerance) {
		t.Errorf("%s: %.9g, want %.9g", name, got, want)
	}
}

// The worst of ratio and level, on both sides of each edge.
func TestWettednessPart(t *testing.T) {
	for _, c := range []struct {
		need, capacity, most float64
		level                Level
		ratio                float64
	}{
		{84, 100, 1, UsualCare, 0.84}, {85, 100, 1, Watch, 0.85}, {86, 100, 1, Watch, 0.86}, {95, 100, 1, Watch, 0.95},
		{100, 100, 1, Watch, 1}, {101, 100, 1, Limit, 1.01}, {105, 100, 1, Limit, 1.05}, {42, 100, 0.84, UsualCare, 0.5},
		{5, 0, 1, Cancel, 0}, {5, -3, 1, Cancel, 0}, {-5, -3, 1, UsualCare, 0}, {0, -3, 1, UsualCare, 0},
	} {
		part := wettednessPart(Balance{Need: c.need, Capacity: c.capacity, WettednessMax: c.most})
		if part.Level != c.level || part.Figure.Known != (c.capacity > 0) {
			t.Errorf("%+v: %s, %+v", c, part.Level.Code(), part.Figure)
		}
		same(t, "ratio", part.Figure.Value, c.ratio, 1e-12)
	}
}

func TestUncompensable(t *testing.T) {
	for _, c := range []struct {
		need, capacity float64
		want           bool
	}{{85, 100, true}, {83, 100, false}, {84, 100, false}, {-5, 100, false}, {-5, -1, false}, {5, -1, true}, {0, -1, false}} {
		if got := (Balance{Need: c.need, Capacity: c.capacity, WettednessMax: 0.84}).Uncompensable(); got != c.want {
			t.Errorf("%+v: %v", c, got)
		}
	}
}

func TestCoreLevel(t *testing.T) {
	for _, c := range []struct {
		value, low float64
		ranged     bool
		want       Level
	}{
		{39.4, 39, true, UsualCare}, {39.5, 39, true, Watch}, {39.9, 39, true, Watch}, {40, 39.9, true, Limit},
		{41, 39.9, true, Limit}, {41, 40, true, Cancel}, {42, 41, true, Cancel}, {42, 41, false, Limit},
	} {
		f := figure.Figure{Known: true, Value: c.value, Ranged: c.ranged, Range: quantity.Range{Low: c.low, High: 43}}
		if got := coreLevel(f); got != c.want {
			t.Errorf("%+v: %s", c, got.Code())
		}
	}
	for high, want := range map[float64]float64{40.8: 40.8, 42: 41} {
		p := CautionPart{Figure: figure.Figure{Known: true, Value: 40.5, Range: quantity.Range{Low: 40, High: high}}}.followed()
		if p.Figure.Range.High != want || p.Beyond {
			t.Errorf("up to %g: %+v", high, p)
		}
	}
}

// A measured WBGT errs by 0.3 °C: its range reaches the band from 30.0 °C on
// where it is above 29.41.
func TestMeasuredBandMayBeHigher(t *testing.T) {
	b, s := sample(t, 20, SunShade)
	for wbgt, want := range map[quantity.Celsius]bool{29.35: false, 29.45: true, 30.1: false, 27.0: false, 27.3: true, 40: false} {
		got := must[Caution](t)(HeatCaution(b, s, Practice{Acclimatised: true}, &wbgt, Basis{}))
		if slices.Contains(got.Codes, BandMayBeHigher) != want {
			t.Errorf("%g °C: %v", float64(wbgt), got.Codes)
		}
		same(t, "u", got.Parts[0].Figure.U, 0.3, 1e-12)
	}
}

// The core temperature is that of the standard with three settings of ours:
// 57.83 W·min/(kg·K), the skin's metabolic rate up to 450 W/m², and a sweat
// maximum of at least what the athlete sweats; its error is that of the effort.
func TestCoreOfACaution(t *testing.T) {
	b, s := sample(t, 36, SunHigh)
	s.Effort = must[Effort](t)(RunningEffort(b, 15/3.6, 0, false))
	x := must[Balance](t)(Calculate(b, s))
	f := 1 - (10/60.0)*(1-math.Exp(-6))
	area := 0.202 * math.Pow(70, 0.425) * math.Pow(1.78, 0.725)
	for _, rate := range []float64{0, 0.5, 2.6, 3.5} {
		basis := Basis{}
		basis.Rate.Known, basis.Rate.Value = rate > 0, rate
		got := must[Caution](t)(HeatCaution(b, s, Practice{}, nil, basis))
		steady := max(demandOf(x, s).flow*area, rate/f*1000)
		rectal := func(more float64) float64 {
			in := StrainInput{
				Air: s.Weather.Air(), Radiant: 36 + 30, Wind: 3, Metabolic: quantity.WattsPerSquareMetre(s.Effort.Metabolic.Value + more),
				Clothing: Clothing{Insulation: 0.3}, Posture: Standing, Body: b, Minutes: 60, Walking: &Walking{Speed: 0.7},
			}
			n := newStrain(in, strainSetting{heatCapacity: 57.83, skinMetabolicMax: 450, sweatMaxLeast: steady * 0.674 / area})
			return float64(n.run(in, nil).Rectal)
		}
		same(t, "rectal", float64(got.Strain.Rectal), rectal(0), 1e-9)
		if p := got.Parts[2]; !p.Beyond {
			same(t, "u", p.Figure.U, math.Abs(rectal(s.Effort.Metabolic.U)-rectal(0)), 1e-9)
		}
	}
	if s.Effort.Metabolic.Value < 500 {
		t.Errorf("%g W/m² does not reach what the skin's line is made for", s.Effort.Metabolic.Value)
	}
	cold := s
	cold.Weather.Temperature, cold.Weather.Sun, cold.Minutes = 22, SunNone, 40
	got := must[Caution](t)(HeatCaution(b, cold, Practice{}, nil, Basis{})).Parts[2]
	if got.Beyond || got.Figure.U <= 0 {
		t.Errorf("a cool run is %+v", got)
	}
}

func TestStrainOfASession(t *testing.T) {
	b, s := sample(t, 25, SunShade)
	s.Effort.OwnSpeed, s.Weather.Wind = 4, 2
	in := must[StrainInput](t)(strainOf(b, s))
	if in.Wind != 3 || in.Posture != Standing || in.Walking.Speed != 0.7 || in.Minutes != 60 || in.Acclimatised {
		t.Errorf("on foot: %+v", in)
	}
	s.Effort.OwnSpeed, s.Weather.Wind, s.State = 1.5, 2, Acclimatised
	s.Effort.Motion = Cycling
	in = must[StrainInput](t)(strainOf(b, s))
	if in.Wind != 2.5 || in.Posture != Sitting || in.Walking.Speed != 0 || !in.Acclimatised {
		t.Errorf("on a bicycle: %+v", in)
	}
}

// The work grows with the metabolic rate it was found with.
func TestWorkFollowsTheEffort(t *testing.T) {
	b, s := sample(t, 25, SunShade)
	s.Effort = must[Effort](t)(CyclingEffort(b, 200, 0))
	area := 0.202 * math.Pow(70, 0.425) * math.Pow(1.78, 0.725)
	m := s.Effort.Metabolic.Value
	for _, k := range []float64{0.5, 1, 1.2} {
		same(t, "work", calculate(b, s, 30, k*m).Work, k*200/area, 1e-9)
	}
	s.Effort.Metabolic.Value, s.Effort.Work = 0, 0
	if w := calculate(b, s, 30, 100).Work; w != 0 {
		t.Errorf("work of no effort: %g", w)
	}
}

// Hotter by more than 5 °C than every test, older than 12 months every one.
func TestHotterAndOld(t *testing.T) {
	b, plan := sample(t, 30, SunShade)
	for _, c := range []struct {
		air    []float64
		months []float64
		hotter bool
		old    bool
	}{
		{[]float64{24.9}, []float64{13}, true, true}, {[]float64{25}, []float64{12}, false, false}, {[]float64{25.3}, []float64{11}, false, false},
		{[]float64{24.7}, []float64{12.1}, true, true}, {[]float64{20, 26}, []float64{14, 3}, false, false}, {nil, nil, false, false},
	} {
		var tests []Test
		for i, air := range c.air {
			one := testAt(t, air, 1)
			one.MonthsAgo = c.months[i]
			tests = append(tests, one)
		}
		set := must[*TestSet](t)(NewTestSet(Athlete{Body: b}, tests))
		if set.hotter(plan) != c.hotter || set.old() != c.old {
			t.Errorf("%v °C, %v months: hotter %v, old %v", c.air, c.months, set.hotter(plan), set.old())
		}
	}
	basis := must[Basis](t)(Estimate(Athlete{Body: b}, nil, plan))
	i := slices.IndexFunc(basis.Advice, func(a Advice) bool { return a.Code == AdviseWeighFirst })
	if i < 0 || basis.Advice[i] != (Advice{AdviseWeighFirst, 1, 2}) {
		t.Errorf("%+v", basis.Advice)
	}
	two := []Test{testAt(t, 30, 1), testAt(t, 30, 1)}
	one := must[Basis](t)(Estimate(Athlete{Body: b}, two, plan))
	if slices.ContainsFunc(one.Advice, func(a Advice) bool { return a.Code == AdviseSecondTest }) {
		t.Errorf("a second test where there are two: %+v", one.Advice)
	}
}

func TestDaysOfAStay(t *testing.T) {
	date := func(month time.Month, day int) time.Time { return time.Date(2026, month, day, 9, 0, 0, 0, time.UTC) }
	if n, err := StopDays(date(5, 1), date(5, 20)); n != 20 || err != nil {
		t.Errorf("%d days, %v", n, err)
	}
	_, err := StopDays(date(5, 10), date(5, 8))
	if p := Problems(err); len(p) != 1 || p[0].Value != -2 || p[0].Code != evidence.CodeEndBefore {
		t.Errorf("%v", err)
	}
	for _, c := range [][2]int{{0, 5}, {1, 0}, {5, 0}, {0, 0}} {
		_, err := Acclimatise(c[0], c[1], Trained)
		if p := Problems(err); len(p) != 1 || p[0].Value != 0 || p[0].Field != evidence.HeatDay {
			t.Errorf("%v: %v", c, err)
		}
	}
	if days, err := Acclimatise(1, 1, Trained); len(days) != 1 || days[0].Day != 1 || err != nil {
		t.Errorf("%v, %v", days, err)
	}
}

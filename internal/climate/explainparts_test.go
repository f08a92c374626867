package climate

import (
	"math"
	"testing"

	"ebbwell/internal/figure"
	"ebbwell/internal/quantity"
)

// The steps of the balance, their errors by the effort and the sun each, and the
// shares of both.
func TestExplainedStepByStep(t *testing.T) { //nolint:funlen // a table
	b, s := sample(t, 28, SunHigh)
	x := must[Balance](t)(Calculate(b, s))
	e := must[Explained](t)(Explain(b, s))
	m := s.Effort.Metabolic
	radiant := 28.0 + 30
	warmer := calculate(b, s, radiant+9/1.96, m.Value)
	harder := calculate(b, s, radiant, m.Value+0.10*m.Value)
	flow := func(x Balance) float64 {
		d := demandOf(x, s)
		return d.flow * areaOf(b) / 1000
	}
	wet := func(x Balance) float64 { return x.Need / x.Capacity }
	for _, c := range []struct {
		name string
		f    figure.Figure
		of   func(Balance) float64
	}{
		{"need", e.Need, func(x Balance) float64 { return x.Need }}, {"capacity", e.Capacity, func(x Balance) float64 { return x.Capacity }},
		{"first", e.First, flow}, {"wettedness", e.Wettedness, wet},
	} {
		effort, sun := c.of(harder)-c.of(x), c.of(warmer)-c.of(x)
		same(t, c.name, c.f.Value, c.of(x), 1e-9)
		same(t, c.name+", u", c.f.U, math.Hypot(effort, sun), 1e-9)
		for _, part := range c.f.Why.Budget {
			want := effort * effort
			if part.Source == "sun" {
				want = sun * sun
			}
			same(t, c.name+", "+part.Source, part.Part, want/(effort*effort+sun*sun), 1e-9)
		}
		if len(c.f.Why.Budget) == 0 {
			t.Errorf("%s has no budget", c.name)
		}
	}
	d := demandOf(x, s)
	same(t, "flow before its limit", input(t, e.First, "flow"), d.need/(0.674*(1-d.effective*d.effective/2)), 1e-9)
	same(t, "most", input(t, e.First, "most"), 2000, 0)
	same(t, "breath, u", e.Breath.U, 0.10*e.Breath.Value, 1e-12)
	same(t, "delay", input(t, e.Onset, "delay"), 10, 0)
	if !e.Onset.Known || onsetFigure(0).Known || onsetFigure(-1).Known {
		t.Error("the onset of no time is known, or that of an hour is not")
	}
	indoors := s
	indoors.Weather.Sun = SunNone
	in := must[Explained](t)(Explain(b, indoors))
	y := must[Balance](t)(Calculate(b, indoors))
	same(t, "indoors, u", in.Need.U, math.Abs(calculate(b, indoors, 28, 1.1*m.Value).Need-y.Need), 1e-9)
	measured := s
	measured.Weather.Radiant = new(quantity.Celsius(50))
	got := must[Explained](t)(Explain(b, measured))
	z := must[Balance](t)(Calculate(b, measured))
	same(t, "measured, u", got.Need.U, math.Abs(calculate(b, measured, 50, 1.1*m.Value).Need-z.Need), 1e-9)
	exact := indoors
	exact.Effort.Metabolic.U, exact.Effort.Metabolic.Ranged = 0, false
	if f := must[Explained](t)(Explain(b, exact)).Need; f.U != 0 || f.Why.Budget != nil {
		t.Errorf("of an exact effort indoors: %g, %v", f.U, f.Why.Budget)
	}
	broken := s
	broken.Minutes = -1
	if _, err := Explain(b, broken); err == nil {
		t.Error("a session that cannot be is explained")
	}
}

// The skin between 0.2 and 0.6 clo lies between that without and with clothes.
func TestSkinBetweenBareAndClothed(t *testing.T) {
	s := surround(Air{Temperature: 30, Vapour: 2}, 40, 1, 0.97, 0.77)
	nude, clothed := s.skin(0.1, 300), s.skin(1, 300)
	for clo, part := range map[Clo]float64{0.15: 0, 0.19: 0, 0.2: 0, 0.21: 0.025, 0.3: 0.25, 0.5: 0.75, 0.57: 0.925, 0.6: 1, 0.63: 1} {
		got := s.skin(clo, 300)
		same(t, "base", got.base, nude.base+part*(clothed.base-nude.base), 1e-9)
		same(t, "slope", got.slope, nude.slope+part*(clothed.slope-nude.slope), 1e-9)
	}
}

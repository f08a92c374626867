package sweat

import (
	"math"
	"slices"
	"testing"

	"ebbwell/internal/evidence"
	"ebbwell/internal/quantity"
)

// runner is an adult whose body water can be calculated.
func runner() Person {
	return Person{Sex: Female, Age: new(29.0), Height: new(quantity.Metres(1.65)), Mass: new(quantity.Kilograms(58))}
}

func TestOverDrinking(t *testing.T) {
	for _, c := range []struct {
		name   string
		person func(*Person)
		in     Exchanged
		state  string
		codes  []string
		not    []string
	}{
		{"drank too much", func(*Person) {}, Exchanged{Ions: -80, Water: 1.2}, "ranged",
			[]string{PlasmaTeaching, PlasmaNoProtect, PlasmaOutside, PlasmaGainLow, PlasmaFall, PlasmaBelow}, nil},
		{"kept even", func(*Person) {}, Exchanged{Ions: -40, Water: 0}, "ranged", []string{PlasmaFall, PlasmaMayBelow}, []string{PlasmaOutside, PlasmaBelow}},
		{"lost 2 %", func(*Person) {}, Exchanged{Ions: -60, Water: -1.2}, "ranged", nil, []string{PlasmaOutside, PlasmaFall, PlasmaBelow, PlasmaGainLow}},
		{"lost 6 %", func(*Person) {}, Exchanged{Ions: -60, Water: -3.5}, "ranged", []string{PlasmaOutside}, []string{PlasmaGainLow}},
		{"a minor", func(p *Person) { p.Age = new(17.0) }, Exchanged{}, "unknown", []string{PlasmaMinor}, nil},
		{"eighteen", func(p *Person) { p.Age = new(18.0) }, Exchanged{}, "ranged", nil, []string{PlasmaMinor}},
		{"age not known", func(p *Person) { p.Age = nil }, Exchanged{}, "unknown", []string{PlasmaNoAge}, nil},
		{"age not a number", func(p *Person) { p.Age = new(math.NaN()) }, Exchanged{}, "unknown", []string{PlasmaMinor}, nil},
		{"sex not known", func(p *Person) { p.Sex = "" }, Exchanged{}, "unknown", []string{PlasmaNoWater}, nil},
		{"height not known", func(p *Person) { p.Height = nil }, Exchanged{}, "unknown", []string{PlasmaNoWater}, nil},
		{"height in centimetres", func(p *Person) { p.Height = new(quantity.Metres(165)) }, Exchanged{}, "unknown", []string{PlasmaNoWater}, nil},
		{"infinite water", func(*Person) {}, Exchanged{Water: math.Inf(1)}, "unknown", []string{PlasmaNoWater}, nil},
		{"all water gone", func(*Person) {}, Exchanged{Water: -60}, "unknown", []string{PlasmaNoWater}, nil},
	} {
		t.Run(c.name, func(t *testing.T) {
			p := runner()
			c.person(&p)
			got := OverDrinking(p, c.in)
			if state(got.Plasma) != c.state {
				t.Fatalf("plasma is %s", state(got.Plasma))
			}
			if got.Plasma.Known && (!got.Plasma.Estimate || !got.Water.Estimate) {
				t.Error("not called an estimate")
			}
			for _, code := range c.codes {
				if !slices.Contains(got.Codes, code) {
					t.Errorf("%s is not said: %v", code, got.Codes)
				}
			}
			for _, code := range c.not {
				if slices.Contains(got.Codes, code) {
					t.Errorf("%s is said", code)
				}
			}
		})
	}
}

// TestPlasmaFigure checks both figures against the plain functions and their
// own formulas, for both sexes.
func TestPlasmaFigure(t *testing.T) {
	for _, sex := range []Sex{Male, Female} {
		p := runner()
		p.Sex = sex
		e := Exchanged{Ions: -75, Water: 0.4, UIons: 10, UWater: 0.1, Plasma: new(quantity.MillimolesPerLitre(139))}
		c := OverDrinking(p, e)
		water := BodyWater(sex, 29, 165, 58)
		near(t, "water", c.Water.Value, water, 1e-9)
		near(t, "plasma", c.Plasma.Value, PlasmaSodium(139, water, -75, 0.4), 1e-9)
		near(t, "change", c.Change, c.Plasma.Value-139, 1e-9)
		for _, f := range figuresOf(c) {
			if wrong := checkFigure(f); wrong != "" {
				t.Error(wrong)
			}
		}
	}
}

// TestHoldKeepsPlasma: taking in what SodiumToHold asks for leaves plasma
// sodium where it was, as far as it may ask for it.
func TestHoldKeepsPlasma(t *testing.T) {
	const water, loss = 40.0, 3.0
	for _, share := range []float64{0.75, 0.85, 0.95} {
		need := SodiumToHold(60, 4, share)
		after := PlasmaSodium(evidence.PlasmaSodium, water, loss*(need-64), -loss*(1-share))
		near(t, "plasma", after, evidence.PlasmaSodium, 0.01)
	}
}

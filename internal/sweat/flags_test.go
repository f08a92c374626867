package sweat

import (
	"testing"

	"ebbwell/internal/evidence"
	"ebbwell/internal/quantity"
)

// flag finds a flag by its id.
func flag(r Result, id string) (Flag, bool) {
	for _, f := range r.Flags {
		if f.ID == id {
			return f, true
		}
	}
	return Flag{}, false
}

func TestFlags(t *testing.T) {
	after := func(kg float64) func(*Input) {
		return func(in *Input) { in.Body.After[0] = quantity.Kilograms(kg) }
	}
	for _, c := range []struct {
		name    string
		change  func(*Input)
		id      string
		up      bool
		certain bool
		size    float64
	}{
		{"2.5 % down", func(*Input) {}, FlagDeficit, true, true, 2.5},
		{"1.9 % down", after(62.8), FlagDeficit, false, false, 0},
		{"2.05 % down", after(62.69), FlagDeficit, true, false, 2.046875},
		{"an aim of 3 %", func(in *Input) { in.Options.DeficitAim = new(quantity.Percent(3)) }, FlagDeficit, false, false, 0},
		{"an aim of 1 %", func(in *Input) { in.Options.DeficitAim = new(quantity.Percent(1)) }, FlagDeficit, true, true, 2.5},
		{"gained half a kilogram", after(64.5), FlagGained, true, true, 0.5},
		{"gained 0.05 kg", after(64.05), FlagGained, true, false, 0.05},
		{"lost", func(*Input) {}, FlagGained, false, false, 0},
		{"gained: drank more than was lost", after(64.4), FlagOverdrank, true, true, 0.4 + wholeBreath()},
		{"just lost less than drunk", after(63.88), FlagOverdrank, true, false, wholeBreath() - 0.12},
		{"nine tenths drunk", after(63.82), FlagNearLoss, true, false, 100 * 0.55 / (0.73 - wholeBreath())},
		{"a quarter drunk", func(*Input) {}, FlagNearLoss, false, false, 0},
		{"high rate", func(*Input) {}, FlagSodiumRate, true, false, (2.15 - wholeBreath()) / (95.0 / 60)},
		{"higher rate", after(62), FlagSodiumRate, true, true, (2.55 - wholeBreath()) / (95.0 / 60)},
		{"95 min", func(*Input) {}, FlagSodiumLong, false, false, 0},
		{"over two hours", func(in *Input) { in.Time.Elapsed = new(quantity.Minutes(150)) }, FlagSodiumLong, true, true, 150},
		{"38 mmol/L", func(*Input) {}, FlagSodiumSalty, false, false, 0},
		{"salty", func(in *Input) { in.Patches[0].Sodium = new(quantity.MillimolesPerLitre(100)) }, FlagSodiumSalty, true, true, 68.05},
	} {
		t.Run(c.name, func(t *testing.T) {
			in := wholeSheet()
			in.Options.Kept = []Kept{{evidence.SweatRate, 0}, {evidence.MassChange, 0}}
			c.change(&in)
			got, up := flag(evaluated(t, in), c.id)
			if up != c.up || got.Certain != c.certain {
				t.Errorf("up %v, certain %v: %+v", up, got.Certain, got)
			}
			near(t, "size", got.Size, c.size, 1e-6)
		})
	}
}

// TestGainSpeaksWithoutAWholeSheet: a gain is flagged as soon as both weighings
// are in, before bottles and urine.
func TestGainSpeaksWithoutAWholeSheet(t *testing.T) {
	r := evaluated(t, Input{Body: Body{Before: []quantity.Kilograms{60}, After: []quantity.Kilograms{60.9}}})
	if f, up := flag(r, FlagGained); !up || !f.Certain {
		t.Errorf("flags %v", r.Flags)
	}
}

// TestRefusedGainStillSpeaks: a gain too large to be used is the gravest one,
// unless it can only be a slip of the pen.
func TestRefusedGainStillSpeaks(t *testing.T) {
	for _, c := range []struct {
		after float64
		up    bool
	}{{62.5, true}, {65.9, true}, {66.5, false}, {132, false}} {
		r := evaluated(t, Input{Body: Body{Before: []quantity.Kilograms{60}, After: []quantity.Kilograms{quantity.Kilograms(c.after)}}})
		f, up := flag(r, FlagGained)
		if up != c.up || f.Certain || r.Fluid.MassChange.Known {
			t.Errorf("60 kg, then %g kg: up %v, %+v", c.after, up, f)
		}
		if !refused(r, evidence.MassChange, 0, evidence.CodeOutside) {
			t.Errorf("60 kg, then %g kg: problems %v", c.after, r.Problems)
		}
	}
}

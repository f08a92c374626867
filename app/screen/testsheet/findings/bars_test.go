package findings

import (
	"math"
	"testing"

	"ebbwell/app/kit/amount"
	"ebbwell/internal/quantity"
	"ebbwell/internal/record"
)

// The two bars add up to what the scale says: what went out, breath and gas exchange as a
// part of their own beside the sweat, less all that came in is the change of body mass,
// which is the deficit that is named; with urine and without, with a gain too.
func TestBarsAddUpToTheScale(t *testing.T) {
	w := english(t)
	sp := speaker{amount.Speaker{Words: w, By: amount.Writer{Words: w}}}
	dry, gained := whole(), whole()
	dry.Loss.Urine, dry.Loss.Stool, dry.Loss.NoUrine, dry.Loss.NoStool = record.Number{}, record.Number{}, true, true
	for i, x := range gained.Weighings {
		if x.Moment == record.After {
			gained.Weighings[i].Mass = record.Num(64.2, quantity.Kilogram)
		}
	}
	for name, test := range map[string]record.Test{"urine": whole(), "none": dry, "gain": gained} {
		in := inputOf(t, test)
		fluid, d := in.Findings.Sweat.Fluid, sp.bars(in)
		taken := 0.0
		for _, part := range d.In {
			taken += part.Value
		}
		other := in.Findings.OtherLosses()
		if !(other.Breath > 0) || math.Abs(d.Beside-other.Breath-other.Urine) > 1e-9 || math.Abs(d.Out-d.Beside-fluid.Loss.Value) > 1e-9 {
			t.Errorf("%s: out %.4f with %.4f beside the sweat of %.4f; breath %.4f, urine %.4f", name, d.Out, d.Beside, fluid.Loss.Value, other.Breath, other.Urine)
		}
		if math.Abs(d.Out-taken-fluid.Deficit.Value) > 1e-6 {
			t.Errorf("%s: %.4f out, %.4f in, and %.4f on the scale", name, d.Out, taken, fluid.Deficit.Value)
		}
	}
}

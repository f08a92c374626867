package athlete

import (
	"math"
	"testing"

	"ebbwell/app/apptest"
)

// The two bars of the last test add up to what the scale says: sweat with breath and gas
// exchange beside it, less all that came in, is the deficit.
func TestLastBarsAddUpToTheScale(t *testing.T) {
	d, _ := apptest.Demo(t)
	drawn := 0
	for _, name := range []string{"Ravka", "Sefa", "Nessa", "Ottoline"} {
		v := overview(t, d, name)
		for _, f := range v.file.tests {
			bars, ok := v.sp.lastBars(f, nil)
			if !ok || v.sp.By.Hidden {
				continue
			}
			drawn++
			in := 0.0
			for _, part := range bars.In {
				in += part.Value
			}
			if fluid := f.Sweat.Fluid; math.Abs(bars.Out-in-fluid.Deficit.Value) > 1e-6 || math.Abs(bars.Out-bars.Beside-fluid.Loss.Value) > 1e-9 || !(bars.Beside > 0) {
				t.Errorf("%s, %s: out %.4f with %.4f beside the sweat of %.4f, in %.4f, on the scale %.4f", name, f.Test.Session.Date, bars.Out, bars.Beside, fluid.Loss.Value, in, fluid.Deficit.Value)
			}
		}
	}
	if drawn < 5 {
		t.Errorf("%d tests drawn", drawn)
	}
}

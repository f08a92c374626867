package consult

import (
	"math"
	"testing"
	"time"

	"ebbwell/internal/record"
)

// In a night in which the clocks are set, the rates of a sheet are by the time that
// passed, and so is the time a patch was worn.
func TestRatesOverAClockChange(t *testing.T) {
	zone, err := time.LoadLocation("Europe/Berlin")
	if err != nil {
		t.Fatal(err)
	}
	d := testSetup(t)
	d.Zone = zone
	for name, c := range map[string]struct {
		day  record.Date
		want float64
	}{"usual": {"2026-05-01", 150}, "spring": {"2026-03-29", 90}, "autumn": {"2026-10-25", 210}} {
		sheet, a := caseSheet()
		sheet.Session.Date, sheet.Session.Start, sheet.Session.End, sheet.Session.EndsNextDay = c.day, "01:30", "04:00", false
		for i := range sheet.Patches {
			sheet.Patches[i].On, sheet.Patches[i].Off = "01:40", "03:30"
		}
		f := Find(sheet, a, nil, d)
		if f.Minutes != c.want {
			t.Errorf("%s: %g minutes", name, f.Minutes)
		}
		fluid := f.Sweat.Fluid
		if got, want := fluid.Rate.Value, fluid.Loss.Value/(c.want/60); math.Abs(got-want) > 1e-9 {
			t.Errorf("%s: %g L/h, want %g", name, got, want)
		}
		if got, want := fluid.DrinkingRate.Value, fluid.Drunk.Value/(c.want/60); math.Abs(got-want) > 1e-9 {
			t.Errorf("%s: drunk at %g L/h, want %g", name, got, want)
		}
		in := SheetInput(sheet, a, nil, d)
		if len(in.Patches) == 0 || math.Abs(float64(*in.Patches[0].Off-*in.Patches[0].On)-(110+c.want-150)) > 1e-9 {
			t.Errorf("%s: the patch was worn %v to %v", name, *in.Patches[0].On, *in.Patches[0].Off)
		}
	}
}

package climate

import (
	"math"
	"testing"

	"ebbwell/internal/quantity"
)

// TestStillAirIsSteepByNature shows why no rule that keeps the coefficients of ISO 7933
// holds 2.5 % for a step of 0.05 m/s in still air, and so why none is blended there.
//
// From 0.35 to 1.0 m/s, between speeds at which published rows pin the estimate, the middle of
// some athletes falls by more than 13 steps of 2.5 %: whatever curve joins the two ends has
// a step that is steeper. No branch is changed on that way: convection by moving air is the
// larger one at both ends, so that a blend of it with that in still air would leave the
// slope as it is. About half of it is not convection at all: the layers of air and clothes let
// more vapour pass (exp(-0.472 v + 0.047 v²) and its like), the skin is less wet, and less
// sweat drips off unused.
func TestStillAirIsSteepByNature(t *testing.T) {
	const from, to, each = 0.35, 1.0, 0.05
	steps := (to - from) / each
	at := func(s sweeper, speed float64) Basis {
		plan := s.plan
		plan.Effort.OnTheSpot, plan.Effort.OwnSpeed, plan.Weather.Wind = false, quantity.MetresPerSecond(speed), 0
		return must[Basis](t)(s.set.Estimate(plan))
	}
	steep, vapour := 0, 0
	for _, s := range sweepers(t, 48) {
		slow, fast := at(s, from), at(s, to)
		if math.Log(slow.Rate.Value/fast.Rate.Value) <= steps*math.Log(1.025) {
			continue
		}
		steep++
		for _, b := range []Basis{slow, fast} {
			air := s.plan.Weather.Air()
			around := surround(air, float64(must[quantity.Celsius](t)(s.plan.Weather.RadiantTemperature())), b.Balance.AirPast, s.plan.Clothing.emissivity(), s.plan.Effort.Motion.radiating())
			if moved, calm := around.forced, natural(math.Abs(b.Balance.Skin-float64(air.Temperature))); moved <= calm || around.convection(b.Balance.Skin) != moved {
				t.Errorf("%.2f m/s: convection %.2f by moving air, %.2f in still air", b.Balance.AirPast, moved, calm)
			}
		}
		// The need alone, with the capacity of the slow air.
		dry := fast.Balance
		dry.Capacity = slow.Balance.Capacity
		d, was, is := demandOf(dry, s.plan), demandOf(slow.Balance, s.plan), demandOf(fast.Balance, s.plan)
		if (was.log-d.log)/(was.log-is.log) < 0.5 {
			vapour++
		}
	}
	t.Logf("%d athletes are steep, %d of them by vapour", steep, vapour)
	if steep < 8 || vapour < steep/2 {
		t.Errorf("%d athletes are steep, %d of them by vapour more than by the need", steep, vapour)
	}
}

package plan

import (
	"math"
	"testing"

	"pgregory.net/rapid"
)

// The aim for the deficit and the guard speak alike: both count the drinks alone,
// food is for carbohydrate. The band of a drink begins where the guard falls
// silent, and food moves neither.
func TestDeficitMissAndGuardAgree(t *testing.T) {
	list, past, within := products(t), 0, 0
	rapid.Check(t, func(t *rapid.T) {
		d := roll(t)
		p := d.planner(t, list)
		mix := d.mix(p.menu)
		q := p.Evaluate(Expected, mix)
		if math.Abs(q.ByDrinks.Value-p.limit) < 1e-6 {
			return
		}
		guard := q.Guards.Has(PastLimit)
		if missed := p.misses(Expected, mix).Has(DeficitMost); missed != guard {
			t.Fatalf("%.3f %% by drinks, limit %.3f: missed %v, guarded %v", q.ByDrinks.Value, p.limit, missed, guard)
		}
		if guard {
			past++
		} else {
			within++
		}
		for s := Food1; s <= Food4; s++ {
			mix[s] = 0
		}
		if p.misses(Expected, mix).Has(DeficitMost) != guard || p.Evaluate(Expected, mix).Guards.Has(PastLimit) != guard {
			t.Fatalf("food water counts toward the deficit")
		}
		band := p.Bands(Expected, mix)[Water]
		if band.Empty || band.Low < 1 {
			return
		}
		mix[Water] = band.Low + 0.5
		if p.Evaluate(Expected, mix).Guards.Has(PastLimit) {
			t.Fatalf("guarded inside the band of %g to %g mL", band.Low, band.High)
		}
	})
	if past == 0 || within == 0 {
		t.Errorf("%d past the limit, %d within", past, within)
	}
}

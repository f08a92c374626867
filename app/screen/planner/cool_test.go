package planner

import (
	"strings"
	"testing"

	"ebbwell/app/apptest"
	"ebbwell/app/kit/desk"
	"ebbwell/app/screen/planner/session"
	"ebbwell/internal/consult"
	"ebbwell/internal/quantity"
	"ebbwell/internal/record"
)

// In cool air, where little has to evaporate, the screen says that the limit is uncertain,
// to weigh and that thirst comes first; a proposal says it too. In mild air neither does.
func TestCoolAirSaysThatTheLimitIsUncertain(t *testing.T) {
	d, _ := apptest.Demo(t)
	a := apptest.AthleteNamed(t, d, "Sefa")
	v, err := New(d, desk.Place{Screen: desk.Plan, Athlete: a.ID})
	if err != nil {
		t.Fatal(err)
	}
	apptest.Window(t, v.Body(), 1180, 700, false, 100)
	for celsius, cool := range map[float64]bool{11: true, 24: false} {
		b := hotBasis(v.Now.Plan)
		b.Air.Temperature, b.Air.Sun = record.Num(celsius, quantity.DegreeCelsius), record.SunNone
		session.TakeClimate(v.Plan, b)
		need := v.Now.PlanCase.Basis.Calculation.Climate.Balance.Need
		if got := need < 150; got != cool {
			t.Fatalf("%g °C: %.0f W/m² have to evaporate", celsius, need)
		}
		var cautions []string
		for _, c := range v.Speaker.Cautions(v.Now, v.Live.At) {
			cautions = append(cautions, c.Short+": "+c.Text)
		}
		const sentence = "cool air: Cool: weigh. The limit is uncertain, so thirst comes first."
		if got := strings.Contains(strings.Join(cautions, "\n"), sentence); got != cool {
			t.Errorf("%g °C: the cautions are %q", celsius, cautions)
		}
		found := v.Now.PlanCase.Planner.Propose(consult.RulesOf(v.Now.Plan))
		said := strings.Join(v.Speaker.Said(found), "\n")
		if got := strings.Contains(said, "Cool air: the limit is uncertain. Weigh, and drink to thirst."); got != cool {
			t.Errorf("%g °C: %q", celsius, said)
		}
	}
}

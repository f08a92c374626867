package planner

import (
	"context"
	"strings"
	"testing"

	"ebbwell/app/apptest"
	"ebbwell/app/kit/desk"
	"ebbwell/app/screen/planner/figures"
	"ebbwell/app/screen/planner/session"
	"ebbwell/internal/quantity"
	"ebbwell/internal/record"
)

// hotBasis is a plan's basis in hot, sunny air the athlete was not tested in.
func hotBasis(p record.Plan) record.PlanBasis {
	b := p.Basis
	b.Kind = record.BasisEstimate
	b.Air = record.Air{
		Temperature: record.Num(37, quantity.DegreeCelsius), Humidity: record.Num(45, quantity.PerCent),
		Wind: record.Num(1.5, quantity.MetrePerSecond), Sun: record.SunHigh, Clothing: "shirt-shorts",
	}
	return b
}

// A draft moves to another climate: figures, range and ceiling follow, it is
// called an estimate, and one step back brings it home.
func TestDraftMovesToAnotherClimate(t *testing.T) {
	d, _ := apptest.Demo(t)
	a := apptest.AthleteNamed(t, d, "Sefa")
	v, err := New(d, desk.Place{Screen: desk.Plan, Athlete: a.ID})
	if err != nil {
		t.Fatal(err)
	}
	apptest.Window(t, v.Body(), 1180, 700, false, 100)
	before := v.Now.PlanCase.Planner.Basis().SweatRate
	session.TakeClimate(v.Plan, hotBasis(v.Now.Plan))
	after := v.Now.PlanCase.Planner.Basis().SweatRate
	if after.Value <= before.Value || after.Width()/after.Value <= before.Width()/before.Value {
		t.Errorf("in the heat %+v, at home %+v", after, before)
	}
	if text := v.ui.strip.words.Text(); !strings.Contains(text, "37") || !strings.Contains(strings.ToLower(text), "estimate") {
		t.Errorf("the strip says %q", text)
	}
	if text := v.ui.page.bars.Data[figures.BarDrinking].Notes[0]; !strings.Contains(text, "an estimate") || strings.Contains(text, v.Speaker.Plain(after.Value, quantity.LitrePerHour)) {
		t.Errorf("the drinking rate stands beside %q", text)
	}
	if q := v.Now.PlanCase.Planner.CeilingOf(0); q.FluidL > after.Low*v.Now.PlanCase.Planner.Session().Minutes[0]/60+1e-9 {
		t.Errorf("the ceiling is %v L, the low end %v L/h", q.FluidL, after.Low)
	}
	if !v.Undo() || v.Now.PlanCase.Planner.Basis().SweatRate != before {
		t.Error("a step back does not bring it home")
	}
}

// An agreed plan stays as it was agreed; a new draft begins from it.
func TestAgreedPlanStaysInItsClimate(t *testing.T) {
	d, went := apptest.Demo(t)
	a := apptest.AthleteNamed(t, d, "Ravka")
	v, err := New(d, desk.Place{Screen: desk.Plan, Athlete: a.ID})
	if err != nil {
		t.Fatal(err)
	}
	apptest.Window(t, v.Body(), 1180, 700, false, 100)
	agreed := v.Now.Plan.ID
	session.TakeClimate(v.Plan, hotBasis(v.Now.Plan))
	if len(*went) != 1 || (*went)[0].Record == agreed {
		t.Fatalf("went to %+v", *went)
	}
	kept, err := d.Store.LoadPlan(context.Background(), (*went)[0].Record)
	if err != nil || kept.State != record.PlanDraft || kept.Basis.Kind != record.BasisEstimate {
		t.Errorf("the new plan is %q on %q, %v", kept.State, kept.Basis.Kind, err)
	}
	old, err := d.Store.LoadPlan(context.Background(), agreed)
	if err != nil || old.State != record.PlanAgreed || old.Basis.Kind != record.BasisTest {
		t.Errorf("the agreed plan is %q on %q, %v", old.State, old.Basis.Kind, err)
	}
}

func TestOtherClimateIsAsked(t *testing.T) {
	d, _ := apptest.Demo(t)
	a := apptest.AthleteNamed(t, d, "Ravka")
	v, err := New(d, desk.Place{Screen: desk.Plan, Athlete: a.ID})
	if err != nil {
		t.Fatal(err)
	}
	w := apptest.Window(t, v.Body(), 1180, 700, false, 100)
	apptest.Click(t, w, "planner.tabs.session")
	apptest.Click(t, w, "planner.climate")
	if !apptest.Has(w, "climate.way") {
		t.Error("nothing is asked")
	}
}

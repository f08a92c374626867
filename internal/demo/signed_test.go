package demo

import (
	"context"
	"testing"

	"ebbwell/internal/consult"
	"ebbwell/internal/record"
)

// TestNoPlanIsLessThanTheHabit: what is agreed in the invented practice has no less to
// drink than the athlete drinks anyway, but for what whole mouthfuls leave out.
func TestNoPlanIsLessThanTheHabit(t *testing.T) {
	ctx, s := context.Background(), filled(t)
	people, err := s.Athletes(ctx)
	if err != nil {
		t.Fatal(err)
	}
	agreed := 0
	for _, a := range people {
		plans, err := s.Plans(ctx, a.ID)
		if err != nil {
			t.Fatal(err)
		}
		for _, p := range plans {
			chosen, ok := consult.InForce(p)
			if p.State != record.PlanAgreed || !ok {
				continue
			}
			agreed++
			habit, _ := consult.OptionOf(p, record.OptionHabit)
			if was, is := drunk(habit), drunk(chosen); is < was-50 {
				t.Errorf("%s: %g mL are agreed, %g are the habit", a.Name, is, was)
			}
		}
	}
	if agreed < 5 {
		t.Errorf("%d agreed plans", agreed)
	}
}

// drunk is what there is to drink in an option, mL.
func drunk(o record.Option) (ml float64) {
	for _, it := range o.Items {
		ml += it.Volume.Or(0)
	}
	return ml
}

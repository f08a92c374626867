package consult

import (
	"slices"
	"testing"
	"time"

	"pgregory.net/rapid"

	"ebbwell/internal/quantity"
	"ebbwell/internal/record"
)

// laddered is an agreed plan of so many steps, the first in force.
func laddered(steps int) record.Plan {
	p := record.Plan{Meta: record.Meta{ID: "p"}, State: record.PlanAgreed}
	for i := range steps {
		p.Steps = append(p.Steps, record.Step{Meta: record.Meta{ID: record.NewID()}, PlanID: p.ID, Order: i, State: record.StepAhead})
	}
	if steps > 0 {
		p.Steps[0].State = record.StepNow
	}
	return p
}

// decided is a decision as a review.
func decided(d record.Decision) record.Review {
	return record.Review{Meta: record.Meta{ID: record.NewID()}, Decision: d}
}

// place is the place of the step in force.
func place(p record.Plan) int {
	_, at, _ := StepNow(p)
	return at
}

func TestDecisionsMoveTheSteps(t *testing.T) {
	p := laddered(2)
	Decide(&p, decided(record.DecisionBack))
	if place(p) != 1 || DecisionOn(p, p.Steps[0].ID) != record.DecisionBack {
		t.Fatalf("back from the first step to %d", place(p))
	}
	Decide(&p, decided(record.DecisionNext))
	if place(p) != 2 || p.Steps[0].State != record.StepDone || StepsDone(p) {
		t.Fatalf("on step %d, %+v, done %v", place(p), p.Steps, StepsDone(p))
	}
	Decide(&p, decided(record.DecisionHold))
	if place(p) != 2 || StepsDone(p) {
		t.Error("holding did more than hold")
	}
	Decide(&p, decided(record.DecisionNext))
	if place(p) != 2 || p.Steps[1].State != record.StepNow || !StepsDone(p) {
		t.Errorf("the last step let go on: step %d, done %v", place(p), StepsDone(p))
	}
	Decide(&p, decided(record.DecisionHold))
	if !StepsDone(p) {
		t.Error("holding after the last step undid it")
	}
	Decide(&p, decided(record.DecisionBack))
	if place(p) != 1 || StepsDone(p) || p.Steps[1].State != record.StepAhead {
		t.Errorf("back from the last step: step %d, %+v", place(p), p.Steps)
	}
	Decide(&p, decided(record.DecisionNext))
	if StepsDone(p) {
		t.Error("done though the last decision on the last step went back from it")
	}
	for i, r := range p.Reviews {
		if r.Order != i || r.PlanID != p.ID {
			t.Errorf("review %d is kept as %+v", i, r)
		}
	}
}

// A plan without steps keeps its decision and moves nothing.
func TestDecisionWithoutSteps(t *testing.T) {
	p := laddered(0)
	Decide(&p, decided(record.DecisionHold))
	if len(p.Reviews) != 1 || StepsDone(p) {
		t.Errorf("%+v", p)
	}
	if !TakeBack(&p, record.Review{}) || len(p.Reviews) != 2 {
		t.Error("it was not taken back")
	}
}

// Whatever was decided, taking the last decision back puts the steps and what
// stands on each where they were, and both stay written down.
func TestTakingBackRestores(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		p := laddered(rapid.IntRange(1, 4).Draw(t, "steps"))
		all := []record.Decision{record.DecisionHold, record.DecisionNext, record.DecisionBack, "session"}
		for _, d := range rapid.SliceOfN(rapid.SampledFrom(all), 0, 8).Draw(t, "before") {
			if d == "session" {
				step, _, _ := StepNow(p)
				p.Reviews = append(p.Reviews, record.Review{StepID: step.ID, Order: NextReview(p)})
				continue
			}
			Decide(&p, decided(d))
			if rapid.Bool().Draw(t, "taken back") {
				TakeBack(&p, record.Review{})
			}
		}
		before := p.Clone()
		Decide(&p, decided(rapid.SampledFrom(all[:3]).Draw(t, "decision")))
		if !TakeBack(&p, record.Review{Note: "a mistake"}) {
			t.Fatal("not taken back")
		}
		if !slices.Equal(p.Steps, before.Steps) || StepsDone(p) != StepsDone(before) {
			t.Fatalf("steps %+v, were %+v", p.Steps, before.Steps)
		}
		for _, s := range p.Steps {
			if got, want := DecisionOn(p, s.ID), DecisionOn(before, s.ID); got != want {
				t.Fatalf("%q stands on a step, %q before", got, want)
			}
		}
		if len(p.Reviews) != len(before.Reviews)+2 || p.Reviews[len(p.Reviews)-1].Note != "a mistake" {
			t.Fatalf("%d reviews after %d", len(p.Reviews), len(before.Reviews))
		}
		if _, again := ToTakeBack(p); again || TakeBack(&p, record.Review{}) {
			t.Fatal("it can be taken back twice")
		}
	})
}

// A decision is not taken back once something was done on it.
func TestNothingToTakeBack(t *testing.T) {
	p := laddered(2)
	if TakeBack(&p, record.Review{}) || len(p.Reviews) != 0 {
		t.Error("there was nothing")
	}
	Decide(&p, decided(record.DecisionNext))
	p.Reviews = append(p.Reviews, record.Review{StepID: p.Steps[1].ID, Order: 1})
	if TakeBack(&p, record.Review{}) || place(p) != 2 {
		t.Error("taken back though a session was done since")
	}
}

func TestUsualRaisedByADecision(t *testing.T) {
	at := time.Date(2026, 5, 18, 9, 0, 0, 0, time.UTC)
	review := record.Review{Meta: record.Meta{CreatedAt: at}, Decision: record.DecisionNext, Note: "comfortable"}
	change := func(why, before, after string, at time.Time) record.Change {
		return record.Change{Field: "usualDrinking", Before: before, After: after, Why: why, At: at}
	}
	for name, c := range map[string]struct {
		history       []record.Change
		before, after record.Number
		ok            bool
	}{
		"none":            {},
		"this one":        {history: []record.Change{change("comfortable", "0.6 L/h", "0.75 L/h", at)}, before: record.Num(0.6, quantity.LitrePerHour), after: record.Num(0.75, quantity.LitrePerHour), ok: true},
		"nothing before":  {history: []record.Change{change("comfortable", "", "0.5 L/h", at)}, after: record.Num(0.5, quantity.LitrePerHour), ok: true},
		"another reason":  {history: []record.Change{change("asked", "0.6 L/h", "0.75 L/h", at)}},
		"an earlier one":  {history: []record.Change{change("comfortable", "0.6 L/h", "0.75 L/h", at.Add(-time.Hour))}},
		"another field":   {history: []record.Change{{Field: "mouthful", Before: "30 mL", After: "35 mL", Why: "comfortable", At: at}}},
		"the newest wins": {history: []record.Change{change("comfortable", "0.7 L/h", "0.8 L/h", at.Add(time.Hour)), change("comfortable", "0.6 L/h", "0.7 L/h", at)}, before: record.Num(0.7, quantity.LitrePerHour), after: record.Num(0.8, quantity.LitrePerHour), ok: true},
	} {
		before, after, ok := UsualRaised(c.history, review)
		if ok != c.ok || !before.Same(c.before) || !after.Same(c.after) {
			t.Errorf("%s: %v to %v, %v", name, before, after, ok)
		}
	}
	if _, _, ok := UsualRaised([]record.Change{change("", "0.6 L/h", "0.7 L/h", at)}, record.Review{}); ok {
		t.Error("a decision without a reason raised something")
	}
}

package consult

import (
	"slices"
	"strings"
	"time"

	"ebbwell/internal/quantity"
	"ebbwell/internal/record"
)

// Standing are the decisions of a plan that were not taken back, in their order.
func Standing(p record.Plan) []record.Review {
	var list []record.Review
	for _, r := range p.Reviews {
		switch r.Decision {
		case "":
		case record.DecisionUndone:
			for i := len(list) - 1; i >= 0; i-- {
				if list[i].StepID == r.StepID {
					list = slices.Delete(list, i, i+1)
					break
				}
			}
		default:
			list = append(list, r)
		}
	}
	return list
}

// DecisionOn is the decision that stands on a step, the one made last; empty
// when none does.
func DecisionOn(p record.Plan, step record.ID) record.Decision {
	last := record.Decision("")
	for _, r := range Standing(p) {
		if r.StepID == step {
			last = r.Decision
		}
	}
	return last
}

// StepsDone reports whether all steps of a plan are done: a review let the last
// one go on, and none since went back from it. It stays the one in force.
func StepsDone(p record.Plan) bool {
	step, place, ok := StepNow(p)
	done := false
	for _, r := range Standing(p) {
		if r.StepID == step.ID && r.Decision != record.DecisionHold {
			done = r.Decision == record.DecisionNext
		}
	}
	return ok && place == len(p.Steps) && done
}

// Decide keeps a decision on the step in force and moves the steps by it: next
// takes the next step in hand, back the one before, hold leaves them. The last
// step stays the one to do, and so does the first at a step back.
func Decide(p *record.Plan, r record.Review) {
	step, place, ok := StepNow(*p)
	r.PlanID, r.StepID, r.Order = p.ID, step.ID, NextReview(*p)
	p.Reviews = append(p.Reviews, r)
	now := place - 1
	switch {
	case !ok:
	case r.Decision == record.DecisionNext && now+1 < len(p.Steps):
		p.Steps[now].State, p.Steps[now+1].State = record.StepDone, record.StepNow
	case r.Decision == record.DecisionBack && now > 0:
		p.Steps[now-1].State, p.Steps[now].State = record.StepNow, record.StepAhead
	}
}

// ToTakeBack is the decision that can be taken back: the one written down last,
// with nothing done since; ok is false when there is none.
func ToTakeBack(p record.Plan) (r record.Review, ok bool) {
	if len(p.Reviews) == 0 {
		return r, false
	}
	r = p.Reviews[len(p.Reviews)-1]
	return r, r.Decision != "" && r.Decision != record.DecisionUndone
}

// TakeBack keeps that the decision made last is taken back, and puts the steps
// where they stood before it; both decisions stay written down. It reports
// false, and changes nothing, where there is none.
func TakeBack(p *record.Plan, r record.Review) bool {
	last, ok := ToTakeBack(*p)
	if !ok {
		return false
	}
	at := slices.IndexFunc(p.Steps, func(s record.Step) bool { return s.ID == last.StepID })
	isNow := func(i int) bool { return i >= 0 && i < len(p.Steps) && p.Steps[i].State == record.StepNow }
	switch {
	case at < 0:
	case last.Decision == record.DecisionNext && isNow(at+1):
		p.Steps[at].State, p.Steps[at+1].State = record.StepNow, record.StepAhead
	case last.Decision == record.DecisionBack && isNow(at-1):
		p.Steps[at-1].State, p.Steps[at].State = record.StepDone, record.StepNow
	}
	r.PlanID, r.StepID, r.Order, r.Decision = p.ID, last.StepID, NextReview(*p), record.DecisionUndone
	p.Reviews = append(p.Reviews, r)
	return true
}

// NextReview is the place of a review after those a plan has.
func NextReview(p record.Plan) int {
	next := 0
	for _, r := range p.Reviews {
		next = max(next, r.Order+1)
	}
	return next
}

// together is how far apart the times of two records may be that were saved by
// one decision: the later of the two may bear the earlier time.
const together = time.Second

// UsualRaised finds, in an athlete's history, newest first, what a decision made
// of what the stomach is used to: what it was before and after, L/h. ok is false
// where the decision changed nothing.
func UsualRaised(history []record.Change, r record.Review) (before, after record.Number, ok bool) {
	for _, c := range history {
		if c.Field != "usualDrinking" || r.Note == "" || c.Why != r.Note || c.At.Before(r.CreatedAt.Add(-together)) {
			continue
		}
		return numberIn(c.Before), numberIn(c.After), true
	}
	return before, after, false
}

// numberIn reads a rate of drinking as the history writes it; not known where
// nothing is written.
func numberIn(text string) record.Number {
	typed, err := quantity.Parse(strings.TrimSpace(text), quantity.LitrePerHour)
	if err != nil {
		return record.Number{}
	}
	return record.Number{Value: &typed.Value, Unit: typed.Unit}
}

package consult

import (
	"ebbwell/internal/record"
)

// Successor is a new draft that goes on from a plan: the same session, basis,
// chances and options under new ids, and the step in force in hand. Its habit is
// what is done now, the step in force, where sessions were done on it; else the
// habit stays. Steps and reviews are not taken over.
func Successor(p record.Plan, name string) record.Plan {
	next := record.Plan{
		Meta: record.Meta{ID: record.NewID()}, AthleteID: p.AthleteID, State: record.PlanDraft, Name: name,
		Target: p.Target, Basis: p.Basis, Rules: p.Rules, Aims: p.Aims,
	}
	next.Agreement.OptionID = ""
	done, known := lastDone(p)
	force, forced := InForce(p)
	for _, o := range p.Options {
		selected := forced && o.ID == force.ID
		if o.Kind == record.OptionStep {
			if !selected {
				continue
			}
			o.Kind, o.Words = record.OptionOwn, ""
		}
		if o.Kind == record.OptionHabit && known {
			o.Items, o.Salt = done.Items, done.Salt
		}
		o = copied(o, next.ID, len(next.Options))
		next.Options = append(next.Options, o)
		if selected {
			next.Agreement.OptionID = o.ID
		}
	}
	for i, ch := range p.Chances {
		ch.Meta, ch.PlanID, ch.Order = record.Meta{ID: record.NewID()}, next.ID, i
		next.Chances = append(next.Chances, ch)
	}
	return next
}

// lastDone is the mix of the step that was reviewed last: the present one where
// a review has let it stand or go on, else the one done before it.
func lastDone(p record.Plan) (o record.Option, ok bool) {
	for _, st := range p.Steps {
		if st.State != record.StepDone && !(st.State == record.StepNow && stands(DecisionOn(p, st.ID))) {
			continue
		}
		if done, there := OptionByID(p, st.OptionID); there {
			o, ok = done, true
		}
	}
	return o, ok
}

// stands reports whether a decision on a step was to stay on it or to go on.
func stands(last record.Decision) bool {
	return last == record.DecisionNext || last == record.DecisionHold
}

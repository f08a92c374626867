package state

import (
	"strings"

	"ebbwell/internal/consult"
	"ebbwell/internal/record"
)

// Successor is a new draft that goes on from a plan: the same session, basis,
// chances and options under new ids. Its habit is what is done now, the option
// in force, where sessions were done on it; else the habit stays.
func Successor(p record.Plan) record.Plan {
	next := record.Plan{
		Meta: record.Meta{ID: record.NewID()}, AthleteID: p.AthleteID, State: record.PlanDraft, Name: p.Name,
		Target: p.Target, Basis: p.Basis, Rules: p.Rules,
	}
	done, settled := lastDone(p)
	for _, o := range SideBySide(p) {
		if o.Kind == record.OptionHabit && settled {
			name := o.Name
			o.Items, o.Salt = done.Items, done.Salt
			o.Name = name
		}
		next.Options = append(next.Options, copyOption(o, next.ID, len(next.Options)))
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
		if st.State != record.StepDone && !(st.State == record.StepNow && stands(consult.DecisionOn(p, st.ID))) {
			continue
		}
		if done, there := consult.OptionByID(p, st.OptionID); there {
			o, ok = done, true
		}
	}
	return o, ok
}

// stands reports whether a decision on a step was to stay on it or to go on.
func stands(last record.Decision) bool {
	return last == record.DecisionNext || last == record.DecisionHold
}

// Replaceable are the agreed plans that a newly agreed one may take the place
// of: those for the same sport, at the same stop of a trip or at none, the
// newest first.
func Replaceable(plans []record.Plan, p record.Plan) []record.Plan {
	var list []record.Plan
	for _, other := range plans {
		if other.ID != p.ID && other.State == record.PlanAgreed && strings.EqualFold(other.Target.Sport, p.Target.Sport) && other.Basis.StopID == p.Basis.StopID {
			list = append(list, other)
		}
	}
	return list
}

// TitleOf is what a plan is called: its own name, else its session's.
func TitleOf(p record.Plan, fallback string) string {
	switch {
	case p.Name != "":
		return p.Name
	case p.Target.SessionName != "":
		return p.Target.SessionName
	}
	return fallback
}

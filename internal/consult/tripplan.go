package consult

import (
	"fmt"
	"slices"
	"strings"
	"time"

	"ebbwell/internal/care"
	"ebbwell/internal/record"
)

// Why the plan of a stop may not be agreed; the words are under each.
const (
	// RefusedNoPlan: there is no plan to take along, or nothing for it to
	// be based on.
	RefusedNoPlan = "agree.no-plan"
	// RefusedDrink: it would be over-drinking.
	RefusedDrink = "agree.over-drinking"
	// RefusedUncertain: the range of the rate is too wide to drink by.
	RefusedUncertain = "agree.too-uncertain"
	// RefusedPhysician: a condition of the profile asks for a physician's name.
	RefusedPhysician = "agree.physician"
	// RefusedOutstanding: the birth date is not known, or a minor's guardian,
	// assent or hidden mass is not settled.
	RefusedOutstanding = "agree.unsettled"
)

// Refusals lists why the plan of a stop may not be agreed on a day; none when
// it may.
func (s StopPlan) Refusals(a record.Athlete, today time.Time) []string {
	var list []string
	care := care.Of(a, today)
	if !s.Planned {
		list = append(list, RefusedNoPlan)
	}
	if s.Planned && s.At.Guards.Stops() {
		list = append(list, RefusedDrink)
	}
	if s.Planned && s.TooUncertain() {
		list = append(list, RefusedUncertain)
	}
	if len(care.NeedsPhysician) > 0 {
		list = append(list, RefusedPhysician)
	}
	if len(care.Outstanding) > 0 {
		list = append(list, RefusedOutstanding)
	}
	return list
}

// StopNames are the words a stop's plan is named by.
type StopNames struct{ Plan, Option string }

// Draft makes the plan of a stop, of the athlete's own: the habit, and the mix
// there, which is the one to be agreed. It is based on what the stop is based on.
// The case it comes in is ready to be frozen.
func (s StopPlan) Draft(names StopNames, review record.Date, today time.Time, d Setup) (Case, error) {
	if !s.Planned {
		return Case{}, fmt.Errorf("plan the stop %s: %w", s.Stop.ID, ErrNoBasis)
	}
	a, from := s.Case.Athlete, s.Case.Plan
	p := record.Plan{
		Meta: record.Meta{ID: record.NewID(), CreatedAt: today}, AthleteID: a.ID, State: record.PlanDraft, Name: names.Plan,
		Target: from.Target, Basis: PlanBasisOf(s.Case.Basis, s.Stop.ID), Rules: from.Rules,
		Agreement: record.Agreement{Review: review, From: s.Stop.From, Until: s.Stop.Until, Physician: physicians(a)},
	}
	p.Target.EventDate, p.Rules.Further = "", ""
	if habit, ok := OptionOf(from, record.OptionHabit); ok {
		p.Options = append(p.Options, copied(habit, p.ID, 0))
	}
	there, _ := InForce(from)
	there = copied(s.Case.WithMix(there, s.Mix), p.ID, len(p.Options))
	there.Kind, there.Name, there.Words = record.OptionOwn, names.Option, ""
	there.Importance, there.Confidence = record.Number{}, record.Number{}
	p.Options = append(p.Options, there)
	p.Agreement.OptionID = there.ID
	for i, ch := range from.Chances {
		ch.Meta, ch.PlanID, ch.Order = record.Meta{ID: record.NewID()}, p.ID, i
		p.Chances = append(p.Chances, ch)
	}
	c, err := OpenCase(p, a, s.Case.Basis, d)
	if err != nil {
		return Case{}, fmt.Errorf("plan the stop %s: %w", s.Stop.ID, err)
	}
	return c, nil
}

// copied is an option with items of its own, for another plan.
func copied(o record.Option, plan record.ID, order int) record.Option {
	o.Meta, o.PlanID, o.Order = record.Meta{ID: record.NewID()}, plan, order
	o.Items = slices.Clone(o.Items)
	for i := range o.Items {
		o.Items[i].Meta, o.Items[i].OptionID = record.Meta{ID: record.NewID()}, o.ID
	}
	return o
}

// physicians are the physicians named in the profile, each once.
func physicians(a record.Athlete) string {
	var list []string
	for _, f := range a.Flags {
		if !f.Deleted() && f.Physician != "" && !slices.Contains(list, f.Physician) {
			list = append(list, f.Physician)
		}
	}
	return strings.Join(list, "; ")
}

// ToTakeAlong is the plan to take on a trip: the one agreed last that was not
// made for a trip; nil when there is none.
func ToTakeAlong(plans []record.Plan) *record.Plan {
	var last *record.Plan
	for i := range plans {
		p := &plans[i]
		if p.State != record.PlanAgreed || p.Basis.StopID != "" || p.Deleted() {
			continue
		}
		if last == nil || agreedAt(*p).After(agreedAt(*last)) {
			last = p
		}
	}
	return last
}

// Own is the plan to show as an athlete's own out of all of theirs, newest
// first: the newest, unless that was made for a stop of a trip; then the one in
// force at home, else the newest made for home, else the trip's, so that it can
// still be reached. ok is false when there is none at all.
func Own(plans []record.Plan) (p record.Plan, ok bool) {
	if len(plans) == 0 {
		return p, false
	}
	if p := ToTakeAlong(plans); p != nil && plans[0].Basis.StopID != "" {
		return *p, true
	}
	if at := slices.IndexFunc(plans, func(p record.Plan) bool { return p.Basis.StopID == "" }); at >= 0 {
		return plans[at], true
	}
	return plans[0], true
}

// AgreedFor is the plan that was agreed for a stop; nil when there is none.
func AgreedFor(stop record.ID, plans []record.Plan) *record.Plan {
	for i := range plans {
		if plans[i].State == record.PlanAgreed && plans[i].Basis.StopID == stop && stop != "" {
			return &plans[i]
		}
	}
	return nil
}

func agreedAt(p record.Plan) time.Time {
	if p.Agreement.AgreedAt == nil {
		return time.Time{}
	}
	return *p.Agreement.AgreedAt
}

package session

import (
	"ebbwell/app/kit/desk"
	"ebbwell/app/kit/field"
	"ebbwell/app/screen/planner/part"
	"ebbwell/internal/consult"
	"ebbwell/internal/evidence"
	"ebbwell/internal/quantity"
	"ebbwell/internal/record"
)

// expected is the length of the session as it is typed: the breaks come along, as one
// step back.
type expected struct {
	v     *part.Plan
	visit string
	// before is the plan as the visit found it: breaks are scaled from there, not
	// from what was typed on the way.
	before record.Plan
	opened consult.Case
}

// newExpected makes the field of the expected length.
func newExpected(v *part.Plan) *field.Number {
	e := &expected{v: v}
	const name = "planner.session.minutes"
	n := v.Binder.Number("", name, evidence.Duration, quantity.Minute, target("minutes", func(t *record.Target) *record.Number { return &t.Minutes }))
	n.SetBox(96)
	n.OnChanged = func(r field.Reading) { e.typed(name, r) }
	n.OnLeft = func(field.Reading) {
		e.visit = ""
		v.Binder.Doc.EndVisit()
		v.Binder.Flush()
	}
	return n
}

// typed takes a keystroke in.
func (e *expected) typed(name string, r field.Reading) {
	v := e.v
	if e.visit == "" {
		e.visit, e.before, e.opened = desk.NewVisit(), v.Binder.Doc.Now().Record.Clone(), v.Now.PlanCase
	}
	v.Desk.Withdraw()
	v.Binder.Doc.Change(e.visit, name, func(s *part.Sheet) {
		s.Put(&s.Record.Target.Minutes, "target.minutes", r)
		s.Record.Chances = e.before.Clone().Chances
		if r.Usable() {
			s.Record.Chances = e.opened.Rescaled(s.Record.Chances, e.before.Target.Minutes.Or(0), r.Value)
		}
	})
	v.Changed()
	v.Desk.HeadChanged()
}

package planner

import (
	"ebbwell/internal/consult"
	"ebbwell/internal/plan"
	"ebbwell/internal/record"
)

// state is a plan as it is open: the record, the case it is calculated in, and
// what is in hand. It is a value; a change makes another.
type state struct {
	planCase consult.Case
	plan     record.Plan
	// option in hand, and the length it is looked at for.
	option record.ID
	length plan.Length
	// mix is that of the option in hand and habit that of the habit, both for
	// the length.
	mix, habit plan.Mix
	// stop says why the last movement of a slider ended where it did.
	stop plan.Reason
}

// newState opens a plan with the option that is to be done now in hand.
func newState(c consult.Case) state {
	s := state{length: plan.Expected}
	o, ok := consult.InForce(c.Plan)
	if !ok && len(c.Plan.Options) > 0 {
		o = c.Plan.Options[0]
	}
	s.option = o.ID
	return s.open(c)
}

// open takes another case: the plan was changed in more than an amount. An
// option that is gone gives way to the one that is to be done now.
func (s state) open(c consult.Case) state {
	s.planCase, s.plan, s.stop = c, c.Plan, plan.Free
	if _, ok := consult.OptionByID(s.plan, s.option); !ok {
		o, _ := consult.InForce(s.plan)
		s.option = o.ID
	}
	return s.settle()
}

// settle reads the mixes in hand off the plan.
func (s state) settle() state {
	s.mix = s.mixOf(s.hand())
	habit, _ := consult.OptionOf(s.plan, record.OptionHabit)
	s.habit = s.mixOf(habit)
	return s
}

// mixOf is the mix of an option for the length in hand. Amounts are kept for
// the expected session; another length is drunk at the same rates.
func (s state) mixOf(o record.Option) plan.Mix {
	mix := s.planCase.MixOf(o)
	if s.length == plan.Expected {
		return mix
	}
	return s.planCase.Planner.Scaled(mix, plan.Expected, s.length)
}

// hand is the option in hand.
func (s state) hand() record.Option {
	o, _ := consult.OptionByID(s.plan, s.option)
	return o
}

// choose takes another option in hand.
func (s state) choose(option record.ID) state {
	s.option, s.stop = option, plan.Free
	return s.settle()
}

// at looks at another length of the session.
func (s state) at(l plan.Length) state {
	s.length, s.stop = l, plan.Free
	return s.settle()
}

// draft reports whether the plan may be changed.
func (s state) draft() bool { return s.plan.State == record.PlanDraft }

// movable reports whether the sliders may be moved: those of a draft, but not
// of the habit, which was measured, nor of a length that follows from the
// expected one.
func (s state) movable() bool {
	return s.draft() && s.length == plan.Expected && s.hand().Kind != record.OptionHabit
}

// move moves one slot as far as the ceiling lets it.
func (s state) move(slot plan.Slot, to float64) state {
	s.mix, s.stop = s.planCase.Planner.Move(s.length, s.mix, slot, to)
	return s
}

// into writes the mix in hand into a plan.
func (s state) into(p *record.Plan) {
	for i, o := range p.Options {
		if o.ID == s.option {
			p.Options[i] = s.planCase.WithMix(o, s.mix)
		}
	}
}

// salted reports whether adding salt is offered at all.
func (s state) salted() bool { return len(s.planCase.Care.WithholdSalt) == 0 }

// shows reports whether a slot has a row among the sliders: water, salt where it
// is offered, what the option in hand has, and what the habit had.
func (s state) shows(slot plan.Slot) bool {
	switch {
	case !s.planCase.Slots[slot].InUse:
		return false
	case slot == plan.Water:
		return true
	case slot == plan.Salt:
		return s.salted() || s.mix[slot] > 0
	}
	return s.habit[slot] > 0 || s.has(slot)
}

// has reports whether the option in hand has an item in a slot.
func (s state) has(slot plan.Slot) bool {
	_, ok := s.itemAt(slot)
	return ok
}

// itemAt is the item of the option in hand in a slot.
func (s state) itemAt(slot plan.Slot) (record.Item, bool) {
	for _, it := range s.hand().Items {
		if at, ok := s.planCase.SlotOf(it); ok && at == slot {
			return it, true
		}
	}
	return record.Item{}, false
}

// removable reports whether the item of a slot may be taken out of the option
// in hand: it stands at nothing, and the habit has none of it.
func (s state) removable(slot plan.Slot) bool {
	return slot != plan.Water && slot != plan.Salt && s.has(slot) && s.mix[slot] == 0 && s.habit[slot] == 0
}

// search is what a suggestion looks for.
func (s state) search() plan.Search {
	habit, _ := consult.OptionOf(s.plan, record.OptionHabit)
	return plan.Search{Length: plan.Expected, Habit: s.planCase.MixOf(habit), Bottles: consult.BottlesOf(s.plan)}
}

// productAt is what a slot is held by: its product, or what stands for the
// added salt.
func (s state) productAt(slot plan.Slot) record.ID {
	if slot == plan.Salt {
		return consult.HeldSalt
	}
	return record.ID(s.planCase.Slots[slot].Product.ID)
}

// held reports whether a suggestion may not change a slot. Salt is held where
// the profile withholds it, whatever the plan says.
func (s state) held(slot plan.Slot) bool {
	return slot == plan.Salt && !s.salted() || consult.Held(s.plan, s.productAt(slot))
}

// chosenOnly is a planner that leaves the slots alone that are held.
func (s state) chosenOnly() (*plan.Planner, error) {
	aim, some := s.planCase.Planner.Aim(), false
	for slot := range aim.Allowed {
		held := s.held(plan.Slot(slot))
		some = some || held
		aim.Allowed[slot] = !held
	}
	if !some {
		return s.planCase.Planner, nil
	}
	return plan.New(s.planCase.Planner.Basis(), s.planCase.Planner.Session(), s.planCase.Planner.Menu(), aim)
}

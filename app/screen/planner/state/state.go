package state

import (
	"ebbwell/internal/consult"
	"ebbwell/internal/plan"
	"ebbwell/internal/plan/proposal"
	"ebbwell/internal/record"
)

// State is a plan as it is open: the record, the case it is calculated in, and
// what is selected. It is a value; a change makes another.
type State struct {
	PlanCase consult.Case
	Plan     record.Plan
	// Option in hand, and the length it is looked at for.
	Option record.ID
	Length plan.Length
	// Mix is that of the selected option and habit that of the habit, both for
	// the length.
	Mix, Habit plan.Mix
	// Stop says why the last movement of a slider ended where it did.
	Stop plan.Reason
}

// New opens a plan with the option that is to be done now in hand.
func New(c consult.Case) State {
	s := State{Length: plan.Expected}
	o, ok := consult.InForce(c.Plan)
	if !ok && len(c.Plan.Options) > 0 {
		o = c.Plan.Options[0]
	}
	s.Option = o.ID
	return s.Open(c)
}

// Open takes another case: the plan was changed in more than an amount. An
// option that is gone gives way to the one that is to be done now.
func (s State) Open(c consult.Case) State {
	s.PlanCase, s.Plan, s.Stop = c, c.Plan, plan.Free
	if _, ok := consult.OptionByID(s.Plan, s.Option); !ok {
		o, _ := consult.InForce(s.Plan)
		s.Option = o.ID
	}
	return s.WithMixes()
}

// WithMixes reads the selected mixes off the plan.
func (s State) WithMixes() State {
	s.Mix = s.MixOf(s.Selected())
	habit, _ := consult.OptionOf(s.Plan, record.OptionHabit)
	s.Habit = s.MixOf(habit)
	return s
}

// MixOf is the mix of an option for the selected length. Amounts are kept for
// the expected session; another length is drunk at the same rates.
func (s State) MixOf(o record.Option) plan.Mix {
	mix := s.PlanCase.MixOf(o)
	if s.Length == plan.Expected {
		return mix
	}
	return s.PlanCase.Planner.Scaled(mix, plan.Expected, s.Length)
}

// Selected is the selected option.
func (s State) Selected() record.Option {
	o, _ := consult.OptionByID(s.Plan, s.Option)
	return o
}

// Choose selects another option.
func (s State) Choose(option record.ID) State {
	s.Option, s.Stop = option, plan.Free
	return s.WithMixes()
}

// At looks at another length of the session.
func (s State) At(l plan.Length) State {
	s.Length, s.Stop = l, plan.Free
	return s.WithMixes()
}

// Draft reports whether the plan may be changed.
func (s State) Draft() bool { return s.Plan.State == record.PlanDraft }

// Movable reports whether the sliders may be moved: those of a draft, but not
// of the habit, which was measured, nor of a length that follows from the
// expected one.
func (s State) Movable() bool {
	return s.Draft() && s.Length == plan.Expected && s.Selected().Kind != record.OptionHabit
}

// Move moves one slot as far as the ceiling lets it.
func (s State) Move(slot plan.Slot, to float64) State {
	s.Mix, s.Stop = s.PlanCase.Planner.Move(s.Length, s.Mix, slot, to)
	return s
}

// Into writes the selected mix into a plan.
func (s State) Into(p *record.Plan) {
	for i, o := range p.Options {
		if o.ID == s.Option {
			p.Options[i] = s.PlanCase.WithMix(o, s.Mix)
		}
	}
}

// Salted reports whether adding salt is offered at all.
func (s State) Salted() bool { return len(s.PlanCase.Care.WithholdSalt) == 0 }

// SodiumMatters reports whether the salt has its place among the sliders: sodium
// matters in such a session, or there is salt in the mix.
func (s State) SodiumMatters() bool {
	return s.PlanCase.Planner.SodiumMatters(s.Length) || s.Mix[plan.Salt] > 0
}

// Shows reports whether a slot has a row among the sliders: water, salt where it
// is offered, what the selected option has, and what the habit had; of an agreed plan
// only what it or the habit has any of.
func (s State) Shows(slot plan.Slot) bool {
	switch {
	case !s.PlanCase.Slots[slot].InUse:
		return false
	case slot == plan.Water:
		return true
	case !s.Draft() && s.Mix[slot] == 0 && s.Habit[slot] == 0:
		return false // what was agreed has none of it
	case slot == plan.Salt:
		return s.Salted() || s.Mix[slot] > 0
	}
	return s.Habit[slot] > 0 || s.has(slot)
}

// has reports whether the selected option has an item in a slot.
func (s State) has(slot plan.Slot) bool {
	_, ok := s.ItemAt(slot)
	return ok
}

// ItemAt is the item of the selected option in a slot.
func (s State) ItemAt(slot plan.Slot) (record.Item, bool) {
	for _, it := range s.Selected().Items {
		if at, ok := s.PlanCase.SlotOf(it); ok && at == slot {
			return it, true
		}
	}
	return record.Item{}, false
}

// Removable reports whether the item of a slot may be taken out of the option
// in hand: it stands at nothing, and the habit has none of it.
func (s State) Removable(slot plan.Slot) bool {
	return slot != plan.Water && slot != plan.Salt && s.has(slot) && s.Mix[slot] == 0 && s.Habit[slot] == 0
}

// ProductAt is what a slot is held by: its product, or what stands for the
// added salt.
func (s State) ProductAt(slot plan.Slot) record.ID {
	if slot == plan.Salt {
		return consult.HeldSalt
	}
	return record.ID(s.PlanCase.Slots[slot].Product.ID)
}

// Held reports whether a suggestion may not change a slot. Salt is held where
// the profile withholds it, whatever the plan says.
func (s State) Held(slot plan.Slot) bool {
	return slot == plan.Salt && !s.Salted() || consult.Held(s.Plan, s.ProductAt(slot))
}

// Proposal is what is proposed for the habit at the plan's breaks.
func (s State) Proposal() proposal.Proposal {
	return s.PlanCase.Planner.Propose(consult.RulesOf(s.Plan))
}

// IsAim reports whether a mix is that of the aim.
func (s State) IsAim(mix plan.Mix) bool {
	aim, ok := consult.OptionOf(s.Plan, record.OptionAim)
	return ok && s.PlanCase.MixOf(aim) == mix
}

// Slots lists the slots in the order of the rows.
func Slots() []plan.Slot {
	var list []plan.Slot
	for s := plan.Water; s < plan.Slots; s++ {
		list = append(list, s)
	}
	return list
}

// Path is where the amount of a slot of the selected option stands in the record.
func (s State) Path(p record.Plan, slot plan.Slot) string {
	begin := "options." + string(s.Option) + "."
	if slot == plan.Salt {
		return begin + "salt"
	}
	o, _ := consult.OptionByID(p, s.Option)
	for _, it := range o.Items {
		if at, ok := s.PlanCase.SlotOf(it); ok && at == slot {
			if slot.IsFood() {
				return begin + "items." + string(it.ID) + ".portions"
			}
			return begin + "items." + string(it.ID) + ".volume"
		}
	}
	return ""
}

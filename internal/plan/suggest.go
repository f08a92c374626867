package plan

import (
	"math"
	"slices"

	"ebbwell/internal/evidence"
	"ebbwell/internal/plan/smallest"
)

// Weights is what one increment of a slot's change counts.
type Weights [Slots]float64

// UsualWeights counts an increment of water, of a drink or of salt (50 mL,
// 0.1 g) as one and half a portion of food as two (our proposal).
func UsualWeights() Weights {
	var w Weights
	for s := range w {
		w[s] = evidence.FluidWeight
		if Slot(s).IsFood() {
			w[s] = evidence.PortionWeight
		}
	}
	w[Salt] = evidence.SaltWeight
	return w
}

// Search says how to look for a suggestion.
type Search struct {
	Length Length
	Habit  Mix
	// Weights of an increment; none set takes [UsualWeights].
	Weights Weights
	// Bottles are the bottle sizes owned, mL; water and drinks then come in
	// sums of whole bottles. Empty: in steps of 50 mL.
	Bottles []float64
}

// Suggestion is the smallest change from the habit that meets the aim.
type Suggestion struct {
	// Met: Mix meets all aims, and in these increments no mix that does is a
	// smaller change, nor one as small that moves fewer slots.
	Met bool
	// Mix is the habit when not Met.
	Mix Mix
	// Cost is weighted increments moved; Moved counts the slots that change.
	Cost  float64
	Moved int
	// Clash is, when not Met, a set of conditions that cannot be met
	// together, though all but any one of them can.
	Clash Condition
	// Nearest has the best there is for each condition of Clash that may be
	// relaxed.
	Nearest []Relaxed
	// Proved is false if the search gave up before it was certain.
	Proved bool
}

// Relaxed is the best mix when one condition is let go: all others are met,
// this one is missed by least, and among those the change is smallest. Misses
// are compared as they are shown: in 0.1 % of body mass, 1 g/h, 20 mg/h, 0.05 L/h.
type Relaxed struct {
	Condition Condition
	// Possible is false where the other conditions clash as well.
	Possible bool
	Mix      Mix
	// Missed is by how much, in the condition's unit: % of body mass, g/h,
	// mg/h, L/h, g per 100 mL. For the strength, least is meant of the grams
	// too many.
	Missed float64
	Cost   float64
	Moved  int
}

// Suggest finds the smallest change from the habit that meets the aim in real
// increments, or says what clashes. A habit that meets the aim stays as it is.
// Otherwise what may change is first rounded to increments, or to what whole
// bottles come to, and the change counted from there: nobody repeats 437 mL.
// A slot that does not move goes back to the habit's own amount where the aims
// are then still met. The search is exact; see package smallest.
func (p *Planner) Suggest(s Search) Suggestion {
	if p.Misses(s.Length, s.Habit) == 0 {
		return Suggestion{Met: true, Mix: s.Habit, Proved: true}
	}
	r := p.rowsOf(s.Length)
	answer := p.problem(s, r.all(), false).Solve()
	out := Suggestion{Met: answer.Found, Mix: s.Habit, Proved: answer.Proved}
	if answer.Found {
		out.Mix = p.keepHabit(s, mixOf(answer.Values))
		out.Cost, out.Moved = answer.Cost, answer.Moved
		return out
	}
	out.Clash, out.Proved = p.clash(s, &r, answer.Proved)
	for _, c := range out.Clash.Each() {
		if c.MayRelax() {
			out.Nearest = append(out.Nearest, p.relax(s, &r, c))
		}
	}
	return out
}

// keepHabit gives slots that do not move their habit back to the mL, where the
// aims are still met.
func (p *Planner) keepHabit(s Search, mix Mix) Mix {
	for slot := range mix {
		if !p.menu[slot].InUse || mix[slot] != p.snapped(s, Slot(slot)) {
			continue
		}
		kept := mix
		kept[slot] = s.Habit[slot]
		if p.Misses(s.Length, kept) == 0 {
			mix = kept
		}
	}
	return mix
}

// snapped is the habit of a slot in increments.
func (p *Planner) snapped(s Search, slot Slot) float64 {
	if !p.aim.allows(slot) {
		return s.Habit[slot]
	}
	return nearest(p.amounts(s, slot), s.Habit[slot])
}

func nearest(list []float64, x float64) float64 {
	best := list[0]
	for _, v := range list {
		if math.Abs(v-x) < math.Abs(best-x) {
			best = v
		}
	}
	return best
}

// clash takes conditions away one by one as long as the rest still clash;
// what is left is a minimal set. Guards are taken away first, so that they
// are named only where the aims alone do not clash.
func (p *Planner) clash(s Search, r *rows, proved bool) (Condition, bool) {
	left, items := slices.Clone(r.all()), true
	without := func(rows []row, free bool) {
		found, sure := p.problem(s, rows, free).Feasible()
		proved = proved && (sure || found)
		if !found {
			left, items = rows, !free
		}
	}
	for i := len(left) - 1; i >= 0; i-- {
		without(slices.Delete(slices.Clone(left), i, i+1), !items)
	}
	without(left, true)
	set := Condition(0)
	for _, w := range left {
		set |= w.condition
	}
	if items && p.aim.Allowed != [Slots]bool{} {
		set |= ItemsChosen
	}
	return set, proved
}

// relax lets one condition go.
func (p *Planner) relax(s Search, r *rows, c Condition) Relaxed {
	out := Relaxed{Condition: c, Mix: s.Habit}
	var answer smallest.Answer
	if c == ItemsChosen {
		answer = p.problem(s, r.all(), true).Solve()
	}
	for i, w := range r.all() {
		if w.condition == c {
			answer = p.problem(s, r.all(), false).Nearest(i, w.matters/w.unit)
			out.Missed = answer.Missed * w.unit
		}
	}
	if answer.Found {
		out.Possible, out.Mix = true, mixOf(answer.Values)
		out.Cost, out.Moved = answer.Cost, answer.Moved
		if c == StrengthMost {
			q := p.Evaluate(s.Length, out.Mix)
			out.Missed = max(0, q.StrengthPercent-p.aim.Strength.High)
		}
	}
	return out
}

// problem states a search; free lets every slot in use change. After the
// conditions comes a row without a limit: it counts the volume drunk, so that the search can
// split between two volumes whatever drinks they are made of.
func (p *Planner) problem(s Search, list []row, free bool) smallest.Problem {
	weights := s.Weights
	if weights == (Weights{}) {
		weights = UsualWeights()
	}
	q := smallest.Problem{Slots: make([]smallest.Slot, Slots), Rows: make([]smallest.Row, len(list), len(list)+1)}
	volume := smallest.Row{A: make([]float64, Slots)}
	for i := range q.Slots {
		home := s.Habit[i]
		slot := smallest.Slot{Values: []float64{home}, Home: home}
		if item := &p.menu[i]; item.InUse {
			slot.Cost = weights[i] / item.Step
			if free || p.aim.allows(Slot(i)) {
				slot.Values = p.amounts(s, Slot(i))
				slot.Home = nearest(slot.Values, home)
			}
		}
		volume.A[i] = p.menu[i].Unit.FluidL
		volume.Most += volume.A[i] * slot.Values[len(slot.Values)-1]
		q.Slots[i] = slot
	}
	for i := range list {
		q.Rows[i] = smallest.Row{A: list[i].a[:], Most: list[i].most}
	}
	q.Rows = append(q.Rows, volume)
	return q
}

// amounts lists what a slot may come to, rising: its increments up to the end
// of its slider or to the habit, whichever is more.
func (p *Planner) amounts(s Search, slot Slot) []float64 {
	item := &p.menu[slot]
	most := max(item.Most, s.Habit[slot])
	if slot.IsDrink() && len(s.Bottles) > 0 {
		return bottleSums(s.Bottles, most)
	}
	var list []float64
	for k := 0.0; k*item.Step <= most*(1+hair); k++ {
		list = append(list, k*item.Step)
	}
	return list
}

// bottleSums lists what whole bottles add up to, to the mL.
func bottleSums(sizes []float64, most float64) []float64 {
	n := int(most * (1 + hair))
	reached := make([]bool, n+1)
	reached[0] = true
	var list []float64
	for v := 0; v <= n; v++ {
		for _, size := range sizes {
			if b := int(math.Round(size)); b > 0 && v >= b && reached[v-b] {
				reached[v] = true
			}
		}
		if reached[v] {
			list = append(list, float64(v))
		}
	}
	return list
}

// mixOf turns the values of a search into a mix.
func mixOf(values []float64) Mix {
	var m Mix
	copy(m[:], values)
	return m
}

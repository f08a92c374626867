package consult

import (
	"slices"

	"ebbwell/internal/plan"
	"ebbwell/internal/quantity"
	"ebbwell/internal/record"
)

// Rescaled are the breaks of a plan's session when it comes to last other minutes
// than before. Breaks as the sport's table has them are taken from the table for the
// new length, so that what comes every so many minutes comes more often, or less;
// breaks that were changed by hand keep their number and their moment of play, to the
// whole minute.
// Without a length before or after they stay.
func (c Case) Rescaled(list []record.Chance, before, after float64) []record.Chance {
	if !(before > 0) || !(after > 0) || before == after {
		return list
	}
	kind, ok := KindOf(c.Plan.Target.Sport, list)
	heat := c.Planner.Session().Heat
	if ok && sameBreaks(list, RecordChances(c.Plan.ID, kind.Chances(before, heat))) {
		return withIDs(RecordChances(c.Plan.ID, kind.Chances(after, heat)), list)
	}
	out := moved(kind, list, before, after)
	for i, ch := range out {
		if ch.AtMinute.Known() {
			out[i].AtMinute = record.Num(quantity.Round(*ch.AtMinute.Value, 0), quantity.Minute)
		}
	}
	return out
}

// sameBreaks reports whether breaks are those of the table, to the minute, with no
// amount set by hand.
func sameBreaks(a, b []record.Chance) bool {
	return slices.EqualFunc(a, b, func(x, y record.Chance) bool {
		minute := func(c record.Chance) float64 { return quantity.Round(c.AtMinute.Or(0), 0) }
		return x.Name == y.Name && minute(x) == minute(y) && x.Seconds.Or(0) == y.Seconds.Or(0) &&
			x.CanEat == y.CanEat && x.Maybe == y.Maybe && !x.Amount.Known()
	})
}

// withIDs gives the first breaks the ids of those before, so that what is kept for
// them stays theirs.
func withIDs(list, before []record.Chance) []record.Chance {
	for i := range list {
		if i < len(before) {
			list[i].Meta = before[i].Meta
		}
	}
	return list
}

// OfferAnew gives the options that still hold what was offered for them what is
// offered now, and returns those that were changed by hand and stay. was is what was
// offered for a kind of option.
func (c Case) OfferAnew(p record.Plan, was func(kind record.OptionKind) (plan.Mix, bool)) (next record.Plan, byHand []record.Option) {
	found := c.Planner.Propose(RulesOf(p))
	next = p.Clone()
	for i, o := range next.Options {
		mix, ok := Offered(found, o.Kind)
		if !ok {
			continue
		}
		if before, known := was(o.Kind); !known || c.MixOf(o) != before {
			if c.MixOf(o) != mix {
				byHand = append(byHand, o)
			}
			continue
		}
		next.Options[i] = c.WithMix(o, mix)
	}
	return next, byHand
}

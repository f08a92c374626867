package consult

import (
	"slices"

	"ebbwell/internal/plan"
	"ebbwell/internal/record"
)

// KindsOf are the kinds of session that the table of chances has for a sport, the
// first as tests are made in: training, where the sport has it.
func KindsOf(sport string) []plan.Sport {
	all, err := plan.Sports()
	code := SportOf(sport).Chances
	if err != nil || code == "" {
		return nil // the table is embedded and read by a test
	}
	return slices.DeleteFunc(all, func(s plan.Sport) bool { return s.Code != code })
}

// KindOf is the kind of session whose breaks stand in a list: the first of the sport
// of which there is a break that its first kind is without, so that a marathon with a
// bottle beside its stations is one. Breaks of no kind are those of the first.
func KindOf(sport string, list []record.Chance) (kind plan.Sport, ok bool) {
	kinds := KindsOf(sport)
	if len(kinds) == 0 {
		return kind, false
	}
	for _, k := range kinds[1:] {
		if slices.ContainsFunc(list, func(c record.Chance) bool { return kindHas(k, c) && !kindHas(kinds[0], c) }) {
			return k, true
		}
	}
	return kinds[0], true
}

// kindHas reports whether a kind of session has such a break.
func kindHas(k plan.Sport, c record.Chance) bool {
	return slices.ContainsFunc(k.Rules, func(r plan.Rule) bool { return r.Chance.Code == c.Name })
}

// WithKind gives a plan the breaks of another kind of session of its sport, named as in
// the table, in the place of those there are. A name that the sport does not have changes
// nothing.
func (c Case) WithKind(p *record.Plan, session string) {
	for _, k := range KindsOf(p.Target.Sport) {
		if k.Session == session {
			p.Chances = RecordChances(p.ID, k.Chances(p.Target.Minutes.Or(0), c.Planner.Session().Heat))
		}
	}
}

// ofAnotherKind reports whether breaks are those of another kind of session than a
// plan's: a race's stations are not there in training.
func ofAnotherKind(p record.Plan, chances []record.Chance) bool {
	own, _ := KindOf(p.Target.Sport, p.Chances)
	in := func(c record.Chance) bool {
		return slices.ContainsFunc(KindsOf(p.Target.Sport), func(k plan.Sport) bool { return k.Session != own.Session && kindHas(k, c) })
	}
	return slices.ContainsFunc(chances, func(c record.Chance) bool { return !kindHas(own, c) && in(c) })
}

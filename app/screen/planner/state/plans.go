package state

import (
	"strings"

	"ebbwell/internal/record"
)

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

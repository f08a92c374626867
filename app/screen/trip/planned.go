package trip

import (
	"ebbwell/app/screen/heat"
	"ebbwell/internal/care"
	"ebbwell/internal/consult"
	"ebbwell/internal/evidence"
	"ebbwell/internal/record"
)

// planned is a stop worked out for a traveller.
type planned struct {
	there consult.StopPlan
	err   error
}

// plan works a stop out for a traveller, once until the trip changes.
func (v *View) plan(m *member, s record.Stop) (consult.StopPlan, error) {
	if p, ok := m.planned[s.ID]; ok {
		return p.there, p.err
	}
	if m.traveller == nil {
		m.traveller = v.traveller(m, v.desk.Calculate())
	}
	there, err := m.traveller.Plan(consult.WithHeatDay(v.now(), s, v.places))
	if m.planned == nil {
		m.planned = map[record.ID]planned{}
	}
	m.planned[s.ID] = planned{there, err}
	return there, err
}

// traveller readies a member for the stops: the tests are worked out once.
func (v *View) traveller(m *member, d consult.Setup) *consult.Traveller {
	return consult.NewTraveller(m.athlete, m.tests, m.along, v.places, v.desk.Now(), d.WithFrozen(m.kept))
}

// forgetPlans lets every stop be worked out anew: the trip has changed.
func (v *View) forgetPlans() {
	for _, m := range v.all {
		m.planned = nil
	}
}

// judged is how the heat judges a stop for the travellers it could be worked out
// for.
func (v *View) judged(crew []*member, s record.Stop) []heat.Judged {
	var list []heat.Judged
	for _, m := range crew {
		there, err := v.plan(m, s)
		if err != nil {
			continue
		}
		j := heat.Judged{Calculation: there.Calculation, Care: care.Of(m.athlete, v.desk.Now())}
		if len(crew) > 1 {
			j.Name = m.athlete.Name
		}
		if hot, ok := there.OnAnotherDay(evidence.HotDayAdds); ok {
			j.Hot = hot.Calculation
		}
		list = append(list, j)
	}
	return list
}

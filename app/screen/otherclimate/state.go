package otherclimate

import (
	"errors"
	"time"

	"ebbwell/internal/climate"
	"ebbwell/internal/consult"
	"ebbwell/internal/record"
)

// The ways to say which air is meant.
const (
	byTest = "test"
	byCity = "city"
	byAir  = "air"
)

// inputs are what is asked from: whose plan it is, and the tests.
type inputs struct {
	athlete record.Athlete
	tests   []consult.Findings
	plan    record.Plan
	places  climate.Places
	today   time.Time
	desk    consult.Setup
}

// state is what has been chosen. Choosing another way keeps what was entered
// on the others.
type state struct {
	way  string
	test record.ID
	// stop holds city, month and hour, and the air as typed: a stop of a trip
	// has them all.
	stop record.Stop
}

// begin is the state at first: a city, with sun, wind and clothing as the plan
// has them now.
func begin(in inputs) state {
	s := state{way: byCity}
	s.stop.Month, s.stop.TimeOfDay = int(in.today.Month()), consult.Afternoon
	s.stop.Air = in.plan.Basis.Air.Without(record.AirOfPlace, record.AirRead)
	if len(in.tests) > 0 {
		s.test = in.tests[0].Test.ID
	}
	return s
}

// asked is the stop that the chosen way describes: without a city where the air
// is typed, and without typed air where a city is chosen.
func (s state) asked() record.Stop {
	stop := s.stop
	if s.way == byCity {
		stop.Air = stop.Air.Without(record.AirOfPlace, record.AirRead)
		return stop
	}
	stop.City = ""
	return stop
}

// answer is what the choice comes to.
type answer struct {
	air         consult.StopAir
	calculation consult.Calculation
	// basis may be taken when ok.
	basis consult.Basis
	ok    bool
	// now and there are the plan as it is and on the new basis.
	now, there consult.Taken
}

// errNothing: nothing has been chosen yet.
var errNothing = errors.New("nothing chosen yet")

// work works the choice out.
func (s state) work(in inputs) (answer, error) {
	var out answer
	if b, err := consult.BasisFor(in.plan, in.athlete, in.tests, in.today, in.desk); err == nil {
		out.now = consult.TakeAlong(in.plan, in.athlete, b, in.today, in.desk)
	}
	stop := s.asked()
	if s.way == byTest {
		test, ok := in.find(s.test)
		if !ok {
			return out, errNothing
		}
		stop = record.Stop{Air: test.Test.Air}
	}
	if s.way == byCity && stop.City == "" {
		return out, errNothing
	}
	var err error
	if out.air, err = consult.AirOf(stop, in.places); err != nil {
		return out, err
	}
	return s.calculate(in, out)
}

// calculate asks the tests about the air; where a test was chosen, about its
// session again.
func (s state) calculate(in inputs, out answer) (answer, error) {
	if s.way == byTest {
		b, err := consult.BasisOf(in.athlete, consult.First(in.tests, s.test), in.today, in.desk)
		if err != nil {
			return out, err
		}
		out.basis, out.ok, out.calculation = b, true, *b.Calculation
	} else {
		r, err := consult.Calculate(consult.OutingFor(in.plan, in.athlete, in.tests, out.air.Air), in.athlete, in.tests, in.today, in.desk)
		if err != nil {
			return out, err
		}
		out.calculation = r
		out.basis, out.ok = r.Basis(in.athlete, in.today)
	}
	if out.ok {
		out.there = consult.TakeAlong(in.plan, in.athlete, out.basis, in.today, in.desk)
	}
	return out, nil
}

// find is a test by its id.
func (in inputs) find(id record.ID) (consult.Findings, bool) {
	for _, f := range in.tests {
		if f.Test.ID == id {
			return f, true
		}
	}
	return consult.Findings{}, false
}

// same reports whether a basis is the one the plan is based on already.
func (in inputs) same(b record.PlanBasis) bool {
	now := in.plan.Basis
	return now.Kind == b.Kind && now.TestID == b.TestID && now.PoolIDs == b.PoolIDs && now.Air.Same(b.Air)
}

package consult

import (
	"errors"
	"fmt"
	"math"
	"time"

	"ebbwell/internal/climate"
	"ebbwell/internal/plan"
	"ebbwell/internal/quantity"
	"ebbwell/internal/record"
)

// StopAir is the air of a stop, as typed or from the climate table.
type StopAir struct {
	Air record.Air
	// FromTable: temperature and humidity are a month's means of the table,
	// whose credit must be shown.
	FromTable bool
	Place     climate.PlaceAir
	City      climate.Place
}

// The hours a climate is taken at.
const (
	Afternoon = "afternoon"
	MeanOfDay = "mean"
	HotDay    = "hot-day"
)

// AirOf is the air of a stop. What was typed goes before the table. It returns
// [climate.UnknownPlaceError] for a city that is not in the table.
func AirOf(s record.Stop, places climate.Places) (StopAir, error) {
	out := StopAir{Air: s.Air}
	if s.City == "" || (s.Air.Temperature.Known() && s.Air.Humidity.Known()) {
		return out, nil
	}
	city, err := places.Find(s.City)
	if err != nil {
		return out, err
	}
	month := s.Month
	if from, ok := s.From.Time(); month == 0 && ok {
		month = int(from.Month())
	}
	var air climate.PlaceAir
	switch s.TimeOfDay {
	case MeanOfDay:
		air, err = city.Mean(month)
	case HotDay:
		air, err = city.HotDay(month)
	default:
		air, err = city.Afternoon(month)
	}
	if err != nil {
		return out, fmt.Errorf("climate of %s in month %d: %w", city.Name, month, err)
	}
	out.FromTable, out.Place, out.City = true, air, city
	if !out.Air.Temperature.Known() {
		out.Air.Temperature = record.Num(quantity.Round(float64(air.Temperature), 1), quantity.DegreeCelsius)
	}
	if !out.Air.Humidity.Known() {
		out.Air.Humidity = record.Num(quantity.Round(float64(air.Humidity), 0), quantity.PerCent)
	}
	if !out.Air.Altitude.Known() {
		out.Air.Altitude = record.Num(float64(city.Elevation), quantity.Metre)
	}
	return out, nil
}

// StopPlan is one athlete's stop: the air, what holds there, and the plan.
type StopPlan struct {
	Stop      record.Stop
	Air       StopAir
	Reckoning Reckoning
	// Case and Mix are the agreed plan taken there; Planned is false where
	// there is no plan or nothing for it to rest on.
	Planned bool
	Case    Case
	Mix     plan.Mix
	// Home is the mix as agreed; Cut when it had to come down to stay under
	// the low end of the estimate.
	Home plan.Mix
	Cut  bool
	At   plan.Prediction
	Days []climate.HeatDay
}

// ErrStopEnds: a stop ends before it begins.
var ErrStopEnds = errors.New("the stop ends before it begins")

// PlanStop works one stop of a trip out for one athlete. agreed is the plan to
// take along; nil where there is none.
func PlanStop(s record.Stop, a record.Athlete, tests []Findings, agreed *record.Plan, places climate.Places, today time.Time, d Desk) (StopPlan, error) {
	out := StopPlan{Stop: s}
	if s.From != "" && s.Until != "" && s.Until < s.From {
		return out, ErrStopEnds
	}
	var err error
	if out.Air, err = AirOf(s, places); err != nil {
		return out, err
	}
	out.Days = heatDays(s, a)
	o := Outing{Session: stopSession(s, a, out.Days), Air: out.Air.Air, Minutes: stopMinutes(s, agreed)}
	if out.Reckoning, err = Reckon(o, a, tests, today, d); err != nil {
		return out, err
	}
	return out, out.takeAlong(a, agreed, today, d)
}

// heatDays are the days of the stop; none where the dates are open.
func heatDays(s record.Stop, a record.Athlete) []climate.HeatDay {
	from, ok1 := s.From.Time()
	until, ok2 := s.Until.Time()
	if !ok1 || !ok2 {
		return nil
	}
	n, err := climate.StopDays(from, until)
	if err != nil {
		return nil
	}
	days, err := climate.Acclimatise(int(max(1, s.HeatDay.Or(1))), n, HeatStateOf("", a))
	if err != nil {
		return nil
	}
	return days
}

// stopSession is the session at a stop: the athlete's sport at the stop's
// effort, as used to heat as on the first day there.
func stopSession(s record.Stop, a record.Athlete, days []climate.HeatDay) record.Session {
	out := record.Session{Sport: a.Sport, Effort: s.Effort, UsedToHeat: record.AcclimatisedNo}
	if len(days) > 0 && days[0].State == climate.Acclimatised {
		out.UsedToHeat = record.AcclimatisedYes
	}
	return out
}

// stopMinutes is how long a session there is: as said, else as planned at home.
func stopMinutes(s record.Stop, agreed *record.Plan) float64 {
	if s.Minutes.Known() {
		return *s.Minutes.Value
	}
	if agreed != nil {
		return agreed.Target.Minutes.Or(0)
	}
	return 0
}

// takeAlong moves the agreed plan to the stop's air. A mix that would pass the
// low end of the loss there comes down to it.
func (s *StopPlan) takeAlong(a record.Athlete, agreed *record.Plan, today time.Time, d Desk) error {
	b, ok := s.Reckoning.Basis(a, today)
	if agreed == nil || !ok {
		return nil
	}
	p := agreed.Clone()
	p.Target.Minutes = record.Num(s.Reckoning.Outing.Minutes, quantity.Minute)
	p.Target.Short, p.Target.Long = record.Number{}, record.Number{}
	c, err := OpenCase(p, a, b, d)
	if err != nil {
		return fmt.Errorf("take the plan to %s: %w", s.Stop.Place, err)
	}
	o, ok := InForce(p)
	if !ok {
		return nil
	}
	s.Case, s.Planned, s.Home = c, true, c.MixOf(o)
	s.Mix = Under(c.Planner, s.Home)
	s.Cut = s.Mix != s.Home
	s.At = c.Planner.Evaluate(plan.Expected, s.Mix)
	return nil
}

// Under brings a mix down under the planner's ceiling: all drinks in
// proportion, each down to its increment. Foods stay.
func Under(p *plan.Planner, mix plan.Mix) plan.Mix {
	q := p.Evaluate(plan.Expected, mix)
	if q.Fluid.DrunkL <= 0 || !q.Guards.Stops() {
		return mix
	}
	room := max(0, q.Ceiling.FluidL-q.Fluid.FoodWaterL)
	part := min(1, room/q.Fluid.DrunkL)
	menu := p.Menu()
	for s := plan.Water; s <= plan.Drink3; s++ {
		if menu[s].InUse && menu[s].Step > 0 {
			mix[s] = math.Floor(mix[s]*part/menu[s].Step+1e-9) * menu[s].Step
		}
	}
	return mix
}

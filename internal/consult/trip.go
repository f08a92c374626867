package consult

import (
	"errors"
	"fmt"
	"math"
	"time"

	"ebbwell/internal/climate"
	"ebbwell/internal/evidence"
	"ebbwell/internal/plan"
	"ebbwell/internal/quantity"
	"ebbwell/internal/record"
)

// StopPlan is one athlete's stop: the air, what holds there, and the plan.
type StopPlan struct {
	Stop      record.Stop
	Air       StopAir
	Reckoning Reckoning
	// Length is the days of the stop, both ends counted; 0 while its dates are
	// open. Days are what each of them is good for; none while the dates are
	// open or too far apart to tell.
	Length int
	Days   []climate.HeatDay
	Taken
}

// Taken is the agreed plan as it is taken along to a stop. Planned is false
// where there is no plan, nothing for it to rest on, or Trouble with it.
type Taken struct {
	Planned bool
	Case    Case
	Mix     plan.Mix
	// Home is the mix as agreed, at the same rates where a session there has
	// another length; Cut when it had to come down to stay under the low end
	// of the estimate.
	Home plan.Mix
	Cut  bool
	At   plan.Prediction
	// Trouble is why the plan cannot be taken along; nil when it can or there
	// is none.
	Trouble error

	// ratio of a session there to one at home.
	ratio float64
}

// ErrStopEnds: a stop ends before it begins.
var ErrStopEnds = errors.New("the stop ends before it begins")

// PlanStop works one stop of a trip out for one athlete. agreed is the plan to
// take along; nil where there is none. It returns [ErrStopEnds], [ErrNoAir],
// [climate.UnknownPlaceError], or the problems of a body, an air or a session
// that cannot be; what is known until then comes with the error.
func PlanStop(s record.Stop, a record.Athlete, tests []Findings, agreed *record.Plan, places climate.Places, today time.Time, d Desk) (StopPlan, error) {
	out := StopPlan{Stop: s}
	if s.From != "" && s.Until != "" && s.Until < s.From {
		return out, ErrStopEnds
	}
	out.Length, out.Days = heatDays(s, a)
	var err error
	if out.Air, err = AirOf(s, places); err != nil {
		return out, err
	}
	minutes, like := stopMinutes(s, agreed), likeSession(tests, agreed)
	o := Outing{Session: stopSession(s, a, out.Days, like, minutes), Air: out.Air.Air, Minutes: minutes}
	if like != nil {
		o.Like = like.Test.ID
	}
	if out.Reckoning, err = Reckon(o, a, tests, today, d); err != nil {
		return out, err
	}
	out.takeAlong(a, agreed, today, d)
	return out, nil
}

// heatDays is how long the stop lasts and what its days are good for; nothing
// where the dates are open.
func heatDays(s record.Stop, a record.Athlete) (length int, days []climate.HeatDay) {
	from, ok1 := s.From.Time()
	until, ok2 := s.Until.Time()
	if !ok1 || !ok2 {
		return 0, nil
	}
	length, err := climate.StopDays(from, until)
	if err != nil {
		return 0, nil
	}
	days, err = climate.Acclimatise(int(max(1, s.HeatDay.Or(1))), length, HeatStateOf("", a))
	if err != nil {
		return length, nil
	}
	return length, days
}

// likeSession is the test a session away is most like: the one the plan rests
// on, else the newest. Its session says what is done, so that like is compared
// with like; nil where there is no test.
func likeSession(tests []Findings, agreed *record.Plan) *Findings {
	var like *Findings
	for i := range tests {
		if agreed != nil && agreed.Basis.TestID != "" && tests[i].Test.ID == agreed.Basis.TestID {
			return &tests[i]
		}
		if like == nil || tests[i].Test.Session.Date > like.Test.Session.Date {
			like = &tests[i]
		}
	}
	return like
}

// stopSession is the session at a stop, as used to heat as on the first day
// there (as the profile says where the dates are open). It is the one of the
// test it is like; where the stop has an effort of its own that is another than
// in the test, that effort in the athlete's sport.
func stopSession(s record.Stop, a record.Athlete, days []climate.HeatDay, like *Findings, minutes float64) record.Session {
	out := record.Session{Sport: a.Sport, Effort: s.Effort}
	if like != nil {
		out = sessionLike(*like, s.Effort, a, minutes)
	}
	if len(days) > 0 {
		out.UsedToHeat = record.AcclimatisedNo
		if days[0].State == climate.Acclimatised {
			out.UsedToHeat = record.AcclimatisedYes
		}
	}
	return out
}

// sessionLike is the session of a test again, over other minutes; at another
// effort where one is given that is not the test's.
func sessionLike(f Findings, effort record.Number, a record.Athlete, minutes float64) record.Session {
	was := f.Test.Session
	out := record.Session{Sport: sportOf(f.Test, a), Effort: was.Effort}
	if effort.Known() && (!was.Effort.Known() || *effort.Value != *was.Effort.Value) {
		out.Effort = effort
		return out
	}
	out.Activity, out.Met, out.Power, out.Speed = was.Activity, was.Met, was.Power, was.Speed
	if was.Played.Known() && f.Timed && f.Minutes > 0 && minutes > 0 {
		out.Played = record.Num(*was.Played.Value*minutes/f.Minutes, quantity.Minute)
	}
	return out
}

// stopMinutes is how long a session there is: as said, else as planned at home;
// 0 where neither is known.
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
func (s *StopPlan) takeAlong(a record.Athlete, agreed *record.Plan, today time.Time, d Desk) {
	b, ok := s.Reckoning.Basis(a, today)
	if agreed == nil || !ok {
		return
	}
	p, ratio := agreed.Clone(), 1.0
	if home := p.Target.Minutes.Or(0); home > 0 {
		ratio = s.Reckoning.Outing.Minutes / home
	}
	p.Target.Minutes = record.Num(s.Reckoning.Outing.Minutes, quantity.Minute)
	p.Target.Short, p.Target.Long = record.Number{}, record.Number{}
	if s.Stop.Effort.Known() {
		p.Target.Effort = s.Stop.Effort
	}
	s.Taken = taken(p, a, b, ratio, today, d)
}

// TakeAlong opens a plan on another basis, its mix brought under the ceiling
// there.
func TakeAlong(p record.Plan, a record.Athlete, b Basis, today time.Time, d Desk) Taken {
	return taken(p.Clone(), a, b, 1, today, d)
}

// taken opens a plan on another basis, its mix for a session of another length
// and brought under the ceiling.
func taken(p record.Plan, a record.Athlete, b Basis, ratio float64, today time.Time, d Desk) Taken {
	t := Taken{ratio: ratio}
	o, ok := InForce(p)
	if !ok {
		return t
	}
	c, err := OpenCase(p, a, b, d)
	if err != nil {
		t.Trouble = fmt.Errorf("take the plan along: %w", err)
		return t
	}
	c.Care = CareOf(a, today)
	t.Case, t.Planned, t.Home = c, true, scaled(c.Planner.Menu(), c.MixOf(o), ratio)
	t.Mix = Under(c.Planner, t.Home)
	t.Cut = t.Mix != t.Home
	t.At = c.Planner.Evaluate(plan.Expected, t.Mix)
	return t
}

// scaled is a mix for a session so many times as long: the same rates, each
// down to its increment.
func scaled(menu plan.Menu, mix plan.Mix, ratio float64) plan.Mix {
	if ratio == 1 {
		return mix
	}
	for s := range mix {
		if step := menu[s].Step; menu[s].InUse && step > 0 {
			mix[s] = math.Floor(mix[s]*ratio/step+hair) * step
		}
	}
	return mix
}

// Under brings a mix down under the planner's ceiling: all drinks in
// proportion, each down to its increment, and the salt that was to go into
// them. Foods stay.
func Under(p *plan.Planner, mix plan.Mix) plan.Mix {
	q := p.Evaluate(plan.Expected, mix)
	if q.Fluid.DrunkL <= 0 || !q.Guards.Stops() {
		return mix
	}
	room := max(0, q.Ceiling.FluidL-q.Fluid.FoodWaterL)
	part := min(1, room/q.Fluid.DrunkL)
	menu := p.Menu()
	for _, s := range []plan.Slot{plan.Water, plan.Drink1, plan.Drink2, plan.Drink3, plan.Salt} {
		if menu[s].InUse && menu[s].Step > 0 {
			mix[s] = math.Floor(mix[s]*part/menu[s].Step+hair) * menu[s].Step
		}
	}
	return mix
}

// hair keeps rounding from taking a whole increment.
const hair = 1e-9

// LongestBreak is the chance to drink at which most is taken; ok is false
// where the plan has no chances or nothing is drunk.
func (t Taken) LongestBreak() (take plan.Take, ok bool) {
	if !t.Planned {
		return take, false
	}
	var s plan.Schedule
	t.Case.Planner.Schedule(plan.Expected, t.Mix, PlanChances(t.Case.Plan), plan.Mouthful(t.Case.Athlete.Mouthful.Or(0)), &s)
	for _, one := range s.Takes {
		if one.ML > take.ML {
			take, ok = one, true
		}
	}
	return take, ok
}

// HighEnd tells what the high end of the loss makes of the plan: passes when
// the deficit at the end is then past the limit, outruns when even what a
// stomach usually takes would leave it there.
func (t Taken) HighEnd() (passes, outruns bool) {
	if !t.Planned {
		return false, false
	}
	limit := t.Case.Limit()
	passes = t.At.Deficit.High > limit
	b, s := t.Case.Planner.Basis(), t.Case.Planner.Session()
	hours := t.At.Minutes / 60
	most := plan.StomachTakes(s.Running).High
	left := (b.SweatRate.High + b.RespiratoryLH - most) * hours
	return passes, passes && 100*left/b.Body.MassKg > limit
}

// Limit is the deficit at the end not to pass, % of body mass.
func (c Case) Limit() float64 {
	if aim := c.Planner.Aim(); aim.Deficit.On {
		return aim.Deficit.High
	}
	return plan.DeficitLimit(c.Planner.Session().Heat)
}

// OtherDay is the same session there on a hotter or a cooler day.
type OtherDay struct {
	Air record.Air
	Taken
}

// OnAnotherDay takes the plan to a day that is so many °C hotter (cooler below
// zero) than the stop's air, the vapour in the air the same. ok is false where
// nothing can be said.
func (s StopPlan) OnAnotherDay(by float64, a record.Athlete, tests []Findings, today time.Time, d Desk) (day OtherDay, ok bool) {
	if !s.Planned {
		return day, false
	}
	o := s.Reckoning.Outing
	if day.Air, ok = warmer(o.Air, by); !ok {
		return day, false
	}
	o.Air = day.Air
	r, err := Reckon(o, a, tests, today, d)
	if err != nil {
		return day, false
	}
	b, ok := r.Basis(a, today)
	if !ok {
		return day, false
	}
	day.Taken = taken(s.Case.Plan, a, b, s.ratio, today, d)
	return day, day.Planned
}

// warmer is air so many °C warmer with the same vapour in it, as humid as a
// day gets at most. A WBGT that was read is of the day it was read on.
func warmer(air record.Air, by float64) (record.Air, bool) {
	if !air.Temperature.Known() || !air.Humidity.Known() {
		return air, false
	}
	now, err := climate.NewAir(quantity.Celsius(*air.Temperature.Value), quantity.Percent(*air.Humidity.Value))
	if err != nil {
		return air, false
	}
	now.Temperature += quantity.Celsius(by)
	air.Temperature = record.Num(float64(now.Temperature), quantity.DegreeCelsius)
	air.Humidity = record.Num(min(float64(now.Humidity()), evidence.HumidityCap), quantity.PerCent)
	air.Wbgt = record.Number{}
	return air, true
}

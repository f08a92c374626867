package consult

import (
	"errors"
	"slices"
	"time"

	"ebbwell/internal/climate"
	"ebbwell/internal/evidence"
	"ebbwell/internal/quantity"
	"ebbwell/internal/record"
)

// StopPlan is one athlete's stop: the air, what holds there, and the plan.
type StopPlan struct {
	Stop        record.Stop
	Air         StopAir
	Calculation Calculation
	// Length is the days of the stop, both ends counted; 0 while its dates are
	// open. Days are what each of them is good for; none while the dates are
	// open or too far apart to tell.
	Length int
	Days   []climate.HeatDay
	Taken

	traveller *Traveller
}

// TooUncertain reports whether the range of the rate there is too wide to drink
// by: a low end of nothing, or a high end over [evidence.EstimateTooWide] times the low
// one.
func (s StopPlan) TooUncertain() bool {
	rate := s.Calculation.Climate.Rate
	return rate.Ranged && rate.Estimate && rate.Range.High > evidence.EstimateTooWide*rate.Range.Low
}

// Unlike reports a body that no estimate of the stop holds for, and no test in just
// its air: below a spinal cord injury it sweats little, however much must evaporate.
func (s StopPlan) Unlike() bool {
	return slices.Contains(s.Calculation.Climate.Codes, climate.NoEstimate)
}

// ErrStopEnds means: a stop ends before it begins.
var ErrStopEnds = errors.New("the stop ends before it begins")

// Traveller is an athlete on a trip: the tests, worked out once for all the
// stops, and the plan that is taken along. It is not for two goroutines at a time.
type Traveller struct {
	athlete record.Athlete
	agreed  *record.Plan
	places  climate.Places
	today   time.Time
	asking  *Asking
}

// NewTraveller readies an athlete for the stops of a trip. agreed is the plan to
// take along; nil where there is none.
func NewTraveller(a record.Athlete, tests []Findings, agreed *record.Plan, places climate.Places, today time.Time, d Setup) *Traveller {
	return &Traveller{athlete: a, agreed: agreed, places: places, today: today, asking: Ask(a, tests, d)}
}

// Plan works one stop out. It returns [ErrStopEnds], [ErrNoAir],
// [climate.UnknownPlaceError], or the problems of a body, an air or a session
// that cannot be; what is known until then comes with the error.
func (t *Traveller) Plan(s record.Stop) (StopPlan, error) {
	out := StopPlan{Stop: s, traveller: t}
	if s.From != "" && s.Until != "" && s.Until < s.From {
		return out, ErrStopEnds
	}
	out.Length, out.Days = heatDays(s, t.athlete)
	var err error
	if out.Air, err = AirOf(s, t.places); err != nil {
		return out, err
	}
	minutes, like := stopMinutes(s, t.agreed), likeSession(t.asking.tests, t.agreed)
	o := Outing{Session: stopSession(s, t.athlete, out.Days, like, minutes), Air: out.Air.Air, Minutes: minutes}
	if like != nil {
		o.Like = like.Test.ID
	}
	if out.Calculation, err = t.asking.Calculate(o, stopDay(s, t.today)); err != nil {
		return out, err
	}
	out.takeAlong(t.athlete, t.agreed, t.today, t.asking.desk)
	return out, nil
}

// stopDay is the first day of a stop, else today.
func stopDay(s record.Stop, today time.Time) time.Time {
	if day, ok := s.From.Time(); ok {
		return day
	}
	return today
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
func likeSession(tests []*Findings, agreed *record.Plan) *Findings {
	var like *Findings
	for _, f := range tests {
		if agreed != nil && agreed.Basis.TestID != "" && f.Test.ID == agreed.Basis.TestID {
			return f
		}
		if like == nil || f.Test.Session.Date > like.Test.Session.Date {
			like = f
		}
	}
	return like
}

// stopSession is the session at a stop, as used to heat as on the first day
// there (as the profile says where the dates are open). It is the one of the
// test it is like; where the stop has an effort of its own that is another than
// in the test, that effort in the athlete's sport.
func stopSession(s record.Stop, a record.Athlete, days []climate.HeatDay, like *Findings, minutes float64) record.Session {
	out := sessionAhead(a.Sport, s.Effort, like, a, minutes)
	if len(days) > 0 {
		out.UsedToHeat = record.AcclimatisedNo
		if days[0].State == climate.Acclimatised {
			out.UsedToHeat = record.AcclimatisedYes
		}
	}
	return out
}

// sessionAhead is the session of a stop or of a plan, which is not over: that of the
// test it is like at its effort, else a sport, empty for the athlete's own, at that
// effort.
func sessionAhead(sport string, effort record.Number, like *Findings, a record.Athlete, minutes float64) record.Session {
	if like != nil {
		return sessionLike(*like, effort, a, minutes)
	}
	if sport == "" {
		sport = a.Sport
	}
	return record.Session{Sport: sport, Effort: effort}
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
	if f.Timed && f.Minutes > 0 && minutes > 0 {
		longer := minutes / f.Minutes
		if was.Played.Known() {
			out.Played = record.Num(*was.Played.Value*longer, quantity.Minute)
		}
		if was.Energy.Known() {
			out.Energy = record.Num(*was.Energy.Value*longer, quantity.Kilocalorie)
		}
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

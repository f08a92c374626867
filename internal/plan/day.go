package plan

import (
	"errors"
	"fmt"
	"time"

	"ebbwell/internal/evidence"
	"ebbwell/internal/fuel"
)

// DaySession is one session of a day with its plan.
type DaySession struct {
	Start   time.Time
	Planner *Planner
	Length  Length
	Mix     Mix
}

// end of a session on the clock.
func (s DaySession) end() time.Time { return s.Start.Add(hoursLong(s.Planner.hours(s.Length))) }

// DayEvent is one line of the day.
type DayEvent struct {
	// From and Until; Until is From for a moment.
	From, Until time.Time
	// Session counts from 0.
	Session int
	// Code names the line; words under it.
	Code string
	// Advice is empty for the session itself.
	Advice fuel.Advice
}

// The codes of the day; each event's advice has its own.
const (
	DayDrinkEarly = "day.drink-early" // at least 4 h before
	DayDrinkLate  = "day.drink-late"  // 2 h before, where no urine came or it is dark
	DayEatBefore  = "day.eat-before"
	DayDuring     = "day.during"
	DayDrinkAfter = "day.drink-after"
	DayEatAfter   = "day.eat-after"
	DayAsUsual    = "day.as-usual" // meals and water
	DayNoDrink    = "day.no-drink" // after a gain
)

// DayTotal is where one session begins and ends.
type DayTotal struct {
	// StartL is the deficit the session starts with, left over from the one before.
	StartL Ranged
	// EndL and End are the deficit at its end, L and % of body mass.
	EndL, End Ranged
	// PastLimit: with what is left it ends past the limit.
	PastLimit bool
}

// Day is the clock of a day's sessions.
type Day struct {
	Events []DayEvent
	Totals []DayTotal
}

// ErrDay means: sessions out of order, or one begins before the last has ended.
var ErrDay = errors.New("sessions of a day overlap")

// PlanDay lays before, during and after on the clock, the sessions in order of
// their start. What the first leaves owing is carried over: until the next
// session as much is made up as fits, 1.25 L for each L and no faster than
// stomachs take. A session that follows another within 12 h has no drinks of
// its own before: what is drunk after the other counts.
func PlanDay(sessions []DaySession) (Day, error) {
	var d Day
	var short Ranged
	for i, s := range sessions {
		if i > 0 && s.Start.Before(sessions[i-1].end()) {
			return Day{}, fmt.Errorf("session %d begins at %s: %w", i+1, s.Start.Format(time.TimeOnly), ErrDay)
		}
		fresh := i == 0 || s.Start.Sub(sessions[i-1].end()) >= hoursLong(evidence.RestoreSoon)
		if fresh {
			d.before(i, s)
		}
		d.Events = append(d.Events, DayEvent{From: s.Start, Until: s.end(), Session: i, Code: DayDuring})
		total := s.total(short)
		d.Totals = append(d.Totals, total)
		next := s.Planner.session.NextHours
		if i+1 < len(sessions) {
			next = sessions[i+1].Start.Sub(s.end()).Hours()
		}
		d.after(i, s, total, next)
		short = total.carry(next)
	}
	return d, nil
}

func hoursLong(h float64) time.Duration { return time.Duration(h * float64(time.Hour)) }

// total adds what was left to what the session leaves.
func (s DaySession) total(short Ranged) DayTotal {
	q := s.Planner.Evaluate(s.Length, s.Mix)
	end := q.DeficitL
	end.Value, end.Low, end.High = end.Value+short.Value, end.Low+short.Low, end.High+short.High
	t := DayTotal{StartL: Between(short.Value, short.Low, short.High), EndL: end}
	t.End = end.times(100 / s.Planner.basis.Body.MassKg)
	t.PastLimit = s.Planner.pastLimit(t.End.Value)
	return t
}

// carry is what of a deficit is still left after some hours; less than [evidence.LeastCarry] is dropped.
func (t DayTotal) carry(hours float64) Ranged {
	made := max(0, hours) * evidence.StomachLow / evidence.RestoreLow
	left := func(x float64) float64 {
		if x = x - made; x < evidence.LeastCarry/1000 {
			return 0
		}
		return x
	}
	return Between(left(t.EndL.Value), left(t.EndL.Low), left(t.EndL.High))
}

// before adds what comes before a session that stands by itself.
func (d *Day) before(i int, s DaySession) {
	kg, minutes := s.Planner.basis.Body.MassKg, s.Planner.session.Minutes[s.Length]
	early, late := s.Start.Add(-hoursLong(evidence.BeforeEarlyHours)), s.Start.Add(-hoursLong(evidence.BeforeLateHours))
	d.Events = append(d.Events, DayEvent{From: early, Until: early, Session: i, Code: DayDrinkEarly, Advice: fuel.BeforeFourHours(kg)})
	if eat := fuel.CarbohydrateBefore(kg, minutes); eat.Says() {
		until := s.Start.Add(-hoursLong(evidence.FuelBeforeFrom))
		d.Events = append(d.Events, DayEvent{From: s.Start.Add(-hoursLong(evidence.FuelBeforeUntil)), Until: until, Session: i, Code: DayEatBefore, Advice: eat})
	}
	d.Events = append(d.Events, DayEvent{From: late, Until: late, Session: i, Code: DayDrinkLate, Advice: fuel.BeforeTwoHours(kg)})
}

// after adds what comes after a session.
func (d *Day) after(i int, s DaySession, t DayTotal, next float64) {
	kg, end := s.Planner.basis.Body.MassKg, s.end()
	drink, eat := fuel.After(t.EndL.Value, kg, next), fuel.CarbohydrateAfter(kg, next)
	line := DayEvent{From: end, Until: end.Add(hoursLong(next)), Session: i, Code: DayDrinkAfter, Advice: drink}
	switch drink.Code {
	case fuel.AfterGain:
		line.Code = DayNoDrink
	case fuel.AfterMeals, fuel.AfterNone:
		line.Code, line.Until = DayAsUsual, end
	}
	d.Events = append(d.Events, line)
	if eat.Code == fuel.FuelAfter {
		until := end.Add(hoursLong(min(next, evidence.FuelAfterHours)))
		d.Events = append(d.Events, DayEvent{From: end, Until: until, Session: i, Code: DayEatAfter, Advice: eat})
	}
}

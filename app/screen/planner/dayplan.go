package planner

import (
	"math"
	"strings"
	"time"

	"ebbwell/app/kit/chart"
	"ebbwell/app/kit/look"
	"ebbwell/internal/consult"
	"ebbwell/internal/evidence"
	"ebbwell/internal/fuel"
	"ebbwell/internal/plan"
	"ebbwell/internal/quantity"
	"ebbwell/internal/record"
)

// onClock is a time of day on a day; ok is false where it is not given.
func onClock(day time.Time, c record.Clock) (time.Time, bool) {
	minutes, ok := c.Minutes()
	return day.Add(time.Duration(minutes * float64(time.Minute))), ok
}

// second is the session that follows by the time to the next one; ok is false
// where there is none within a day.
func (s state) second() (f consult.Further, ok bool) {
	hours := s.plan.Target.NextAfter.Or(0)
	start, known := s.plan.Target.Start.Minutes()
	if !known || !(hours > 0) || hours >= evidence.RestoreWithin {
		return f, false
	}
	at := start + s.planCase.Planner.Session().Minutes[plan.Expected] + hours*60
	return consult.Further{Start: record.ClockAt(at)}, true
}

// further are the sessions of the day after the plan's own: those written down,
// else the one that follows by the time to the next session.
func (s state) further() []consult.Further {
	list, said := consult.FurtherOf(s.plan)
	if f, ok := s.second(); ok && !said {
		list = append(list, f)
	}
	return list
}

// dayLine is one line of the day in words.
type dayLine struct{ when, what, amount, note string }

// dayLines word the events of a day.
func (sp speaker) dayLines(d plan.Day, names, mixes []string, salted bool) []dayLine {
	var list []dayLine
	for _, e := range d.Events {
		l := dayLine{when: sp.w.Clock(e.From), what: sp.say(e.Code), amount: sp.advice(e), note: sp.adviceNote(e, salted)}
		if e.Until.After(e.From) {
			l.when = sp.say("planner.day.span", sp.w.Clock(e.From), sp.w.Clock(e.Until))
		}
		if e.Code == plan.DayDuring {
			l.what, l.amount = names[e.Session], mixes[e.Session]
		}
		list = append(list, l)
	}
	return list
}

// advice is how much an event asks for. What was calculated per kilogram is one
// volume where mass is hidden, the one on the athlete's page: from its ends the
// mass could be worked out; and grams per kilogram are not written at all.
func (sp speaker) advice(e plan.DayEvent) string {
	a := e.Advice
	perMass := e.Code == plan.DayDrinkEarly || e.Code == plan.DayDrinkLate || e.Code == plan.DayEatBefore || e.Code == plan.DayEatAfter
	switch {
	case a.Range.High <= 0:
		return ""
	case sp.by.Hidden && perMass && a.Unit != quantity.Litre:
		return sp.say("planner.day.meal")
	case sp.by.Hidden && perMass:
		return sp.say("planner.day.about", sp.litres(beforeHidden(e)))
	}
	return sp.say("planner.to", sp.by.Number(a.Range.Low, a.Unit), sp.by.Amount(a.Range.High, a.Unit))
}

// beforeHidden is a drink before the session as the page writes it where mass is
// hidden, L.
func beforeHidden(e plan.DayEvent) float64 {
	first := (e.Advice.Range.Low + e.Advice.Range.High) / 2
	if e.Code == plan.DayDrinkLate {
		first *= (evidence.BeforeEarlyLow + evidence.BeforeEarlyHigh) / (evidence.BeforeLateLow + evidence.BeforeLateHigh)
	}
	early, late := consult.BeforeHidden(quantity.Millilitres(1000 * first))
	if e.Code == plan.DayDrinkLate {
		return float64(late.Litres())
	}
	return float64(early.Litres())
}

// drawn is the volume of an event as the picture draws it, L: the low end of the
// advice, or what is written where mass is hidden, since a bar can be measured.
func (sp speaker) drawn(e plan.DayEvent) float64 {
	if sp.by.Hidden && (e.Code == plan.DayDrinkEarly || e.Code == plan.DayDrinkLate) {
		return beforeHidden(e)
	}
	return e.Advice.Range.Low
}

// adviceNote says where an advice is from, or what goes with it; advice to add
// salt is left out where it is withheld.
func (sp speaker) adviceNote(e plan.DayEvent, salted bool) string {
	text := ""
	if key := e.Advice.Code; key != "" && sp.w.Has(key) {
		text = strings.TrimSuffix(sp.say(key), ".")
	}
	if e.Code == plan.DayDrinkAfter && e.Advice.Range.High > 0 && salted {
		text = sp.say("planner.day.sodium", text)
	}
	if source := sourceOf(e.Advice); source != "" {
		return sp.say("planner.day.source", text, source)
	}
	return text
}

// sourceOf is the short name of the source of an advice.
func sourceOf(a fuel.Advice) string {
	for _, id := range []string{a.LowID, a.HighID} {
		if e, ok := evidence.Find(id); ok {
			return e.Source.Short
		}
	}
	return ""
}

// totalWords say where each session begins and ends.
func (sp speaker) totalWords(d plan.Day, names []string) string {
	text := ""
	for i, t := range d.Totals {
		x, u := sp.end(t.EndL, t.End)
		key := "planner.day.ends"
		if t.OwedL.Value > 0 {
			key = "planner.day.owing"
		}
		if i > 0 {
			text += "\n"
		}
		text += sp.say(key, names[i], sp.change(x.Value, u), sp.litres(t.OwedL.Value))
		if t.PastLimit {
			text += " " + sp.say("planner.day.past")
		}
	}
	return text
}

// dayPicture draws a day on a line of time, in minutes from its first event.
func (sp speaker) dayPicture(d plan.Day, sessions []plan.DaySession) chart.BreakData {
	if len(d.Events) == 0 {
		return chart.BreakData{Summary: sp.say("planner.day.nostart")}
	}
	begin := d.Events[0].From
	for _, e := range d.Events {
		if e.From.Before(begin) {
			begin = e.From
		}
	}
	begin = begin.Truncate(time.Hour)
	minute := func(t time.Time) float64 { return t.Sub(begin).Minutes() }
	var out chart.BreakData
	for _, e := range d.Events {
		end := e.From
		switch {
		case e.Code == plan.DayDuring:
			out.Spells = append(out.Spells, chart.Spell{From: minute(e.From), To: minute(e.Until), Name: sp.say("planner.day.session", e.Session+1)})
			end = e.Until
			out.Stops = append(out.Stops, sp.sessionStop(sessions[e.Session], (minute(e.From)+minute(e.Until))/2))
		case e.Advice.Unit == quantity.Litre && e.Advice.Range.High > 0:
			out.Stops = append(out.Stops, chart.BreakStop{
				Minute: minute(e.From), Name: sp.say("planner.mark." + e.Code), Note: sp.w.Clock(e.From), Amount: sp.advice(e), Maybe: e.Code == plan.DayDrinkLate,
				Parts: []chart.Part{{Of: look.Water, Value: 1000 * sp.drawn(e)}},
			})
		}
		out.Minutes = max(out.Minutes, minute(end)+60)
	}
	for at := 0.0; at <= out.Minutes; at += 60 * math.Ceil(out.Minutes/60/9) {
		out.Ticks = append(out.Ticks, chart.Tick{At: at, Text: sp.w.Clock(begin.Add(time.Duration(at) * time.Minute))})
	}
	return out
}

// sessionStop is what is drunk and eaten in a session, in its middle.
func (sp speaker) sessionStop(s plan.DaySession, at float64) chart.BreakStop {
	q := s.Planner.Evaluate(s.Length, s.Mix)
	return chart.BreakStop{Minute: at, Parts: mixParts(s.Mix), Amount: sp.litres(q.Fluid.DrunkL), Name: sp.say("planner.day.in")}
}

// mixWords say a mix in short: "0.45 + 0.35 L, ½ fig bar".
func (sp speaker) mixWords(c consult.Case, mix plan.Mix) string {
	s := state{planCase: c}
	text := sp.drinksOf(s, mix)
	if foods := sp.foodsOf(s, mix); foods != sp.say("planner.none") {
		text += sp.say("format.comma") + foods
	}
	return text
}

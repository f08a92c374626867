package day

import (
	"math"
	"slices"
	"strings"
	"time"

	"ebbwell/app/kit/chart"
	"ebbwell/app/kit/look"
	"ebbwell/app/screen/planner/state"
	"ebbwell/app/screen/planner/wording"
	"ebbwell/internal/care"
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
func second(s state.State) (f consult.Further, ok bool) {
	hours := s.Plan.Target.NextAfter.Or(0)
	start, known := s.Plan.Target.Start.Minutes()
	if !known || !(hours > 0) || hours >= evidence.RestoreWithin {
		return f, false
	}
	at := start + s.PlanCase.Planner.Session().Minutes[plan.Expected] + hours*60
	return consult.Further{Start: record.ClockAt(at)}, true
}

// further are the sessions of the day after the plan's own: those written down,
// else the one that follows by the time to the next session.
func further(s state.State) []consult.Further {
	list, said := consult.FurtherOf(s.Plan)
	if f, ok := second(s); ok && !said {
		list = append(list, f)
	}
	return list
}

// dayLine is one line of the day in words.
type dayLine struct{ when, what, amount, note string }

// dayLines word the events of a day.
func dayLines(sp wording.Speaker, d plan.Day, names, mixes []string, salted bool) []dayLine {
	var list []dayLine
	for _, e := range d.Events {
		l := dayLine{when: sp.Words.Clock(e.From), what: sp.Say(e.Code), amount: Advice(sp, e), note: AdviceNote(sp, e, salted)}
		if e.Until.After(e.From) {
			l.when = sp.Say("planner.day.span", sp.Words.Clock(e.From), sp.Words.Clock(e.Until))
		}
		if e.Code == plan.DayDuring {
			l.what, l.amount = names[e.Session], mixes[e.Session]
		}
		list = append(list, l)
	}
	return list
}

// Advice is how much an event asks for. What was calculated per kilogram is one
// volume where mass is hidden, the one on the athlete's page: from its ends the
// mass could be worked out; and grams per kilogram are not written at all.
func Advice(sp wording.Speaker, e plan.DayEvent) string {
	a := e.Advice
	perMass := e.Code == plan.DayDrinkEarly || e.Code == plan.DayDrinkLate || e.Code == plan.DayEatBefore || e.Code == plan.DayEatAfter
	switch {
	case a.Range.High <= 0:
		return ""
	case sp.By.Hidden && perMass && a.Unit != quantity.Litre:
		return sp.Say("planner.day.meal")
	case sp.By.Hidden && perMass:
		return sp.Say("planner.day.about", sp.Litres(beforeHidden(e)))
	}
	return sp.Say("planner.to", sp.By.Number(a.Range.Low, a.Unit), sp.By.Amount(a.Range.High, a.Unit))
}

// beforeHidden is a drink before the session as the page writes it where mass is
// hidden, L.
func beforeHidden(e plan.DayEvent) float64 {
	first := (e.Advice.Range.Low + e.Advice.Range.High) / 2
	if e.Code == plan.DayDrinkLate {
		first *= (evidence.BeforeEarlyLow + evidence.BeforeEarlyHigh) / (evidence.BeforeLateLow + evidence.BeforeLateHigh)
	}
	early, late := care.BeforeHidden(quantity.Millilitres(1000 * first))
	if e.Code == plan.DayDrinkLate {
		return float64(late.Litres())
	}
	return float64(early.Litres())
}

// Drawn is the volume of an event as the picture draws it, L: the low end of the
// advice, or what is written where mass is hidden, since a bar can be measured.
func Drawn(sp wording.Speaker, e plan.DayEvent) float64 {
	if sp.By.Hidden && (e.Code == plan.DayDrinkEarly || e.Code == plan.DayDrinkLate) {
		return beforeHidden(e)
	}
	return e.Advice.Range.Low
}

// AdviceNote says what goes with an advice; advice to add salt is left out where it is withheld.
func AdviceNote(sp wording.Speaker, e plan.DayEvent, salted bool) string {
	text := ""
	if key := e.Advice.Code; key != "" && sp.Words.Has(key) {
		text = strings.TrimSuffix(sp.Say(key), ".")
	}
	if e.Code == plan.DayDrinkAfter && e.Advice.Range.High > 0 && salted {
		text = sp.Say("planner.day.sodium", text)
	}
	return text
}

// sourcesOf names the sources of the advice of a day, each once.
func sourcesOf(sp wording.Speaker, d plan.Day) string {
	var list []string
	for _, e := range d.Events {
		if source := sourceOf(sp, e.Advice); source != "" && !slices.Contains(list, source) {
			list = append(list, source)
		}
	}
	if len(list) == 0 {
		return ""
	}
	return sp.Say("planner.day.sources", sp.Words.Commas(list))
}

// sourceOf is the short name of the source of an advice.
func sourceOf(sp wording.Speaker, a fuel.Advice) string {
	for _, id := range []string{a.LowID, a.HighID} {
		if e, ok := evidence.Find(id); ok {
			return e.Source.Name(sp.Words.Say)
		}
	}
	return ""
}

// totalWords say where each session begins and ends.
func totalWords(sp wording.Speaker, d plan.Day, names []string) string {
	text := ""
	for i, t := range d.Totals {
		x, u := sp.End(t.EndL, t.End)
		key := "planner.day.ends"
		if t.StartL.Value > 0 {
			key = "planner.day.owing"
		}
		if i > 0 {
			text += "\n"
		}
		text += sp.Say(key, names[i], sp.Change(x.Value, u), sp.Litres(t.StartL.Value))
		if t.PastLimit {
			text += " " + sp.Say("planner.day.past")
		}
	}
	return text
}

// dayPicture draws a day on a line of time, in minutes from its first event.
func dayPicture(sp wording.Speaker, d plan.Day, sessions []plan.DaySession) chart.BreakData {
	if len(d.Events) == 0 {
		return chart.BreakData{Summary: sp.Say("planner.day.nostart")}
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
			out.Spells = append(out.Spells, chart.Spell{From: minute(e.From), To: minute(e.Until), Name: sp.Say("planner.day.session", e.Session+1)})
			end = e.Until
			out.Stops = append(out.Stops, sessionStop(sp, sessions[e.Session], (minute(e.From)+minute(e.Until))/2))
		case e.Advice.Unit == quantity.Litre && e.Advice.Range.High > 0:
			out.Stops = append(out.Stops, chart.BreakStop{
				Minute: minute(e.From), Name: sp.Say("planner.mark." + e.Code), Note: sp.Words.Clock(e.From), Amount: Advice(sp, e), Maybe: e.Code == plan.DayDrinkLate,
				Parts: []chart.Part{{Of: look.Water, Value: 1000 * Drawn(sp, e)}},
			})
		}
		out.Minutes = max(out.Minutes, minute(end)+60)
	}
	for at := 0.0; at <= out.Minutes; at += 60 * math.Ceil(out.Minutes/60/9) {
		out.Ticks = append(out.Ticks, chart.Tick{At: at, Text: sp.Words.Clock(begin.Add(time.Duration(at) * time.Minute))})
	}
	return out
}

// sessionStop is what is drunk and eaten in a session, in its middle.
func sessionStop(sp wording.Speaker, s plan.DaySession, at float64) chart.BreakStop {
	q := s.Planner.Evaluate(s.Length, s.Mix)
	return chart.BreakStop{Minute: at, Parts: wording.MixParts(s.Mix), Amount: sp.Litres(q.Fluid.DrunkL), Name: sp.Say("planner.day.in")}
}

// mixWords say a mix in short: "0.45 + 0.35 L, ½ fig bar".
func mixWords(sp wording.Speaker, c consult.Case, mix plan.Mix) string {
	s := state.State{PlanCase: c}
	text := sp.DrinksOf(s, mix)
	if foods := sp.FoodsOf(s, mix); foods != sp.Say("planner.none") {
		text += sp.Say("format.comma") + foods
	}
	return text
}

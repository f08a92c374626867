package athlete

import (
	"strings"

	"ebbwell/app/kit/desk"
	"ebbwell/internal/consult"
	"ebbwell/internal/quantity"
	"ebbwell/internal/record"
)

// line is an event as the trail shows it.
type line struct {
	day, year   string
	title, note string
	opens       desk.Place
}

// line words an event.
func (sp speaker) line(a record.ID, e event) line {
	l := line{title: sp.Say("overview.event." + string(e.kind)), note: sp.eventNote(e), opens: placeOf(a, e)}
	if t, ok := e.day.Time(); ok {
		l.day = sp.Words.ShortDay(t)
		if t.Year() != sp.Today.Year() {
			l.year = sp.Words.Number(float64(t.Year()), 0)
		}
	}
	return l
}

// placeOf is where an event is to be seen.
func placeOf(a record.ID, e event) desk.Place {
	switch {
	case e.test != nil && e.test.Test.State == record.TestOpen:
		return desk.Place{Screen: desk.Tests, Athlete: a, Record: e.test.Test.ID}
	case e.test != nil:
		return desk.Place{Screen: desk.Tests, Athlete: a, Record: e.test.Test.ID, Part: partFindings}
	case e.plan != nil:
		return desk.Place{Screen: desk.Plan, Athlete: a, Record: e.plan.ID}
	case e.trip != nil:
		return desk.Place{Screen: desk.Trip, Athlete: a, Record: e.trip.ID}
	}
	return desk.Place{Screen: desk.Profile, Athlete: a, Part: desk.PartConsents}
}

// partFindings is the part of a test sheet with its findings.
const partFindings = "findings"

// eventNote is the line below an event's title.
func (sp speaker) eventNote(e event) string {
	switch {
	case e.test != nil:
		return sp.testNote(*e.test)
	case e.review != nil:
		return sp.reviewNote(*e.review)
	case e.plan != nil:
		return sp.agreedNote(*e.plan)
	case e.trip != nil:
		return sp.tripName(*e.trip)
	}
	return sp.purposes(e.purposes)
}

// testNote says a test in short: air, session, sweat rate or how far it is.
func (sp speaker) testNote(f consult.Findings) string {
	var parts []string
	if air := f.Test.Air.Temperature; air.Known() {
		parts = append(parts, sp.degrees(air))
	}
	rate := f.Sweat.Fluid.Rate
	switch {
	case rate.Known && !rate.Ranged:
		parts = append(parts, sp.Say("overview.rate.provisional", sp.By.Found(rate)))
	case rate.Known:
		parts = append(parts, sp.By.Found(rate))
	}
	if place := strings.TrimSpace(f.Test.Session.Place); place != "" {
		parts = append(parts, place)
	}
	if f.Test.State != record.TestClosed {
		parts = append(parts, sp.Say("overview.test."+string(f.Test.State)))
	}
	if f.Test.Session.Date == "" {
		parts = append(parts, sp.Say("overview.undated"))
	}
	return sp.Words.Commas(parts)
}

// agreedNote says what was agreed.
func (sp speaker) agreedNote(p record.Plan) string {
	parts := []string{sp.planName(p)}
	switch _, place, ok := consult.StepNow(p); {
	case p.State == record.PlanReplaced:
		parts = append(parts, sp.Say("overview.agreed.replaced"))
	case ok:
		parts = append(parts, sp.Say("overview.agreed.step", sp.Words.Number(float64(place), 0), sp.Words.Number(float64(len(p.Steps)), 0)))
	default:
		if o, there := consult.OptionByID(p, p.Agreement.OptionID); there && o.Name != "" {
			parts = append(parts, sp.Words.Option(o.Name))
		}
	}
	return sp.Words.Commas(parts)
}

// reviewNote says what was done and decided.
func (sp speaker) reviewNote(r record.Review) string {
	var parts []string
	if r.Decision != "" {
		parts = append(parts, sp.Say("overview.review."+string(r.Decision)))
	}
	switch {
	case r.DoneShare.Known() && !sp.By.Hidden:
		parts = append(parts, sp.Say("overview.review.done", sp.Words.Number(*r.DoneShare.Value, 0)))
	case r.Drunk.Known():
		parts = append(parts, sp.Say("overview.review.drunk", sp.By.Amount(*r.Drunk.Value/1000, quantity.Litre)))
	}
	if r.Stomach.Known() {
		parts = append(parts, sp.Say("overview.review.stomach", sp.Words.Number(*r.Stomach.Value, 0)))
	}
	if r.Heavier {
		parts = append(parts, sp.Say("overview.review.heavier"))
	}
	return sp.Words.Commas(parts)
}

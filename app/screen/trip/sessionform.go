package trip

import (
	"ebbwell/app/kit/bind"
	"ebbwell/app/kit/field"
	"ebbwell/app/kit/look"
	"ebbwell/internal/consult"
	"ebbwell/internal/evidence"
	"ebbwell/internal/quantity"
	"ebbwell/internal/record"
)

// sessionForm is what is done at a stop, how used to heat one is, in what.
type sessionForm struct {
	v       *View
	minutes *field.Number
	effort  *field.Number
	heatDay *field.Number
	note    *look.Paragraph
	body    *look.Sheet
}

// newSessionForm makes the form.
func newSessionForm(v *View) *sessionForm {
	p := &sessionForm{v: v, note: look.NewParagraph("", look.Note, look.Ink2)}
	b, say := v.b, v.desk.Words.Say
	number := func(name, path string, f evidence.Field, u quantity.Unit, of func(s *record.Stop) *record.Number) *field.Number {
		return b.Number("stop", "trip.stop."+name, f, u, func(t *record.Trip, _ bool) (*record.Number, string) {
			return of(v.here(t)), v.path(t, path)
		})
	}
	sessions := number("sessions", "sessionsADay", evidence.TripSessions, quantity.None, func(s *record.Stop) *record.Number { return &s.SessionsADay })
	sessions.SetPlaceholder(v.desk.Words.Number(1, 0))
	p.minutes = number("minutes", "minutes", evidence.Duration, quantity.Minute, func(s *record.Stop) *record.Number { return &s.Minutes })
	p.effort = number("effort", "effort", evidence.EffortRating, quantity.None, func(s *record.Stop) *record.Number { return &s.Effort })
	p.effort.SetSuffix(say("trip.effort.of"))
	p.heatDay = number("heatday", "heatDay", evidence.HeatDay, quantity.None, func(s *record.Stop) *record.Number { return &s.HeatDay })
	p.heatDay.SetSuffix(say("trip.heatday.of", v.desk.Words.Number(evidence.AcclimatisationDays, 0)))
	p.heatDay.SetPlaceholder(v.desk.Words.Number(1, 0))
	clothing := b.Choice("stop", "trip.stop.clothing", b.Options("clothing.", consult.ClothingVest, consult.ClothingShirt, consult.ClothingTracksuit), bind.Word[record.Trip]{
		Get: func(t record.Trip) string {
			if c := v.here(&t).Air.Clothing; c != "" {
				return c
			}
			return consult.ClothingShirt
		},
		Set: func(t *record.Trip, w string) { v.here(t).Air.Clothing = w },
	})
	p.body = look.NewPanel(say("trip.sessions"), nil, look.VBox(formGap,
		row(say("trip.sessions.day"), smallField, sessions), row(say("trip.minutes"), smallField, p.minutes), row(say("trip.effort"), smallField, p.effort),
		row(say("trip.clothing"), 220, clothing), row(say("trip.heatday"), smallField+28, p.heatDay)), p.note)
	return p
}

// show shows in the empty fields what is taken from the plan and the test.
func (p *sessionForm) show(m *member, s record.Stop) {
	w := p.v.desk.Words
	minutes, effort := "", ""
	if m != nil && m.along != nil && m.along.Target.Minutes.Known() {
		minutes = w.Number(*m.along.Target.Minutes.Value, 0)
	}
	if m != nil && m.along != nil && m.along.Target.Effort.Known() {
		effort = w.Number(*m.along.Target.Effort.Value, 0)
	}
	p.minutes.SetPlaceholder(minutes)
	p.effort.SetPlaceholder(effort)
	note := ""
	if (!s.Minutes.Known() && minutes != "") || (!s.Effort.Known() && effort != "") {
		note = w.Say("trip.sessions.note")
	}
	setText(p.note, note)
	refresh(p.body)
}

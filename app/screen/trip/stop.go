package trip

import (
	"errors"

	"fyne.io/fyne/v2"

	"ebbwell/app/kit/field"
	"ebbwell/app/kit/look"
	"ebbwell/app/screen/heat"
	"ebbwell/internal/climate"
	"ebbwell/internal/consult"
	"ebbwell/internal/evidence"
	"ebbwell/internal/record"
)

// stopPart is one stop: what the heat asks of everybody, the air in one line, a
// row for each traveller, the heat days. The forms of air and sessions stay
// folded until they are asked for, or while something in them is missing.
type stopPart struct {
	v       *View
	verdict *look.Caution
	air     *airLine
	forms   fyne.CanvasObject
	airForm *airForm
	done    *sessionForm
	// changing: the forms are open, for the stop of.
	changing bool
	of       record.ID
	crew     *crewPart
	days     *daysPart
	nobody   *look.Sheet
	body     *stopFrame
	// level is what the heat asks of the stop in sight, judged what it was
	// judged by.
	level  climate.Level
	judged []heat.Judged
}

func newStopPart(v *View) *stopPart {
	say := v.desk.Words.Say
	p := &stopPart{v: v, airForm: newAirForm(v), done: newSessionForm(v), crew: newCrewPart(v), days: newDaysPart(v)}
	p.verdict = look.NewVerdict(field.NewLink(v.desk.Host, "trip.stop.reasons", say("trip.reasons"), p.showReasons))
	p.air = newAirLine(v, func() {
		p.changing = !p.changing
		v.follow()
	})
	p.forms = newSides(p.airForm.body, p.done.body)
	add := field.NewButton(v.desk.Host, "trip.stop.travellers", say("trip.nobody.add"), field.Primary, func() { v.ShowPart(PartEdit) })
	p.nobody = look.NewSheet(look.Empty(say("trip.nobody.sentence"), add))
	p.body = newStopFrame(look.VBox(stopGap, p.verdict, p.air.body, p.forms, p.nobody, p.crew.body, p.days.body), p.crew.frame)
	return p
}

// stopGap is the room between the parts of a stop, px.
const stopGap float32 = 8

// here is the stop in sight in a trip; a spare one where none is.
func (v *View) here(t *record.Trip) *record.Stop {
	if s := stopAt(t, stopByID(*t, record.ID(v.part))); s != nil {
		return s
	}
	return &record.Stop{}
}

// path is the path of a field of the stop in sight.
func (v *View) path(t *record.Trip, name string) string {
	return "stops." + string(v.here(t).ID) + "." + name
}

// show shows a stop.
func (p *stopPart) show(crew []*member, i int) {
	v, s := p.v, p.v.now().Stops[i]
	sp := v.speaker(nil)
	air, err := consult.AirOf(s, v.places)
	var unknown climate.UnknownPlaceError
	if errors.As(err, &unknown) && v.b.Typing() == cityName {
		return // still being typed; what stood before stands
	}
	if err == nil {
		_, err = consult.WeatherOf(air.Air)
	}
	p.judged = v.judged(crew, s)
	if err == nil {
		err = v.common(crew, s)
	}
	p.showVerdict(sp, s, err)
	if p.of != s.ID {
		p.of, p.changing = s.ID, false
	}
	p.changing = p.changing || err != nil // and stay open until they are closed
	p.air.show(sp, s, air, crew, p.changing, err)
	look.ShowIf(p.forms, p.changing)
	p.airForm.show(sp, air, s, err)
	p.done.show(v.shown(), s)
	look.ShowIf(p.nobody, len(crew) == 0)
	p.crew.show(crew, s)
	p.days.show(sp, crew, i)
	p.body.squad = len(crew) >= squadFrom && !p.changing
	p.body.Refresh()
}

// common is the trouble of a stop that is the same for everybody; nil where at
// least one could be worked out, or nobody travels.
func (v *View) common(crew []*member, s record.Stop) error {
	var first error
	for i, m := range crew {
		_, err := v.plan(m, s)
		if err == nil || bodyTrouble(err) {
			return nil
		}
		if i == 0 {
			first = err
		}
	}
	return first
}

// bodyTrouble reports whether an error is of one athlete: mass or height.
func bodyTrouble(err error) bool {
	for _, p := range climate.Problems(err) {
		if p.Field == evidence.BodyMass || p.Field == evidence.Height {
			return true
		}
	}
	return errors.Is(err, consult.ErrTestGone)
}

// showVerdict says what the heat asks, or why that cannot be said.
func (p *stopPart) showVerdict(sp heat.Speaker, s record.Stop, err error) {
	p.level = 0
	if err != nil {
		title := sp.Words.Say("heat.caution.unknown")
		if errors.Is(err, consult.ErrNoAir) {
			title = sp.Words.Say("trip.noair")
		}
		p.verdict.SetText(title, troubleSentences(sp, err, s))
		return
	}
	if len(p.judged) == 0 {
		p.verdict.SetText("", "")
		return
	}
	verdict := sp.Verdict(p.judged)
	p.level = verdict.Level
	p.verdict.SetText(verdict.Title, verdict.Sentence)
}

// troubleAt is the sentence of an error that belongs to a field.
func troubleAt(sp heat.Speaker, err error, s record.Stop, f evidence.Field) string {
	for _, t := range sp.Troubles(err, s) {
		if t.Field == f {
			return t.Sentence
		}
	}
	return ""
}

// showReasons opens all there is to say about the heat of the stop.
func (p *stopPart) showReasons() {
	v, say := p.v, p.v.desk.Words.Say
	lines, always := v.speaker(nil).Reasons(p.judged, v.desk.Practice().Emergency)
	column := look.VBox(8)
	for _, line := range lines {
		column.Add(look.NewParagraph(line, look.Body, look.Ink))
	}
	if p.days.body.Visible() {
		column.Add(look.NewParagraph(say("trip.heatdays.note"), look.Body, look.Ink))
	}
	column.Add(look.NewCaution("", always, nil))
	v.desk.Host.Ask(v.canvas(), field.Question{
		Name: "trip.reasons", Title: say("trip.reasons.title"), Content: column, Width: 620,
		Actions: []field.Action{{Name: "close", Text: say("heat.close"), Kind: field.Primary}},
	})
}

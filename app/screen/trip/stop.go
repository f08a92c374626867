package trip

import (
	"errors"
	"slices"
	"strings"

	"fyne.io/fyne/v2"

	"ebbwell/app/kit/desk"
	"ebbwell/app/kit/field"
	"ebbwell/app/kit/look"
	"ebbwell/app/screen/heat"
	"ebbwell/internal/care"
	"ebbwell/internal/climate"
	"ebbwell/internal/consult"
	"ebbwell/internal/evidence"
	"ebbwell/internal/record"
)

// stopPart is one stop: at the left its air, what is done there and what the
// heat calls for, at the right what follows for the traveller shown.
type stopPart struct {
	v        *View
	air      *airForm
	done     *sessionForm
	tests    *heat.Tests
	testBox  *look.Sheet
	cautions *heat.Cautions
	caution  *look.Sheet
	days     *daysPart
	plan     *planPart
	picture  *picturePart
	fix      *field.Button
	nobody   *look.Sheet
	body     *look.Scroll
}

func newStopPart(v *View) *stopPart {
	say := v.desk.Words.Say
	p := &stopPart{v: v, air: newAirForm(v), done: newSessionForm(v), tests: heat.NewTests(v.desk, "trip.stop", v.speaker(nil)), cautions: heat.NewCautions(),
		days: newDaysPart(v), plan: newPlanPart(v), picture: newPicturePart(v)}
	p.fix = field.NewButton(v.desk.Host, "trip.stop.fix", "", field.Outline, nil)
	p.testBox = look.NewPanel(say("trip.tests"), nil, p.tests.Body(), look.HBox(0, p.fix))
	p.caution = look.NewPanel(say("trip.caution"), nil, p.cautions.Body())
	add := field.NewButton(v.desk.Host, "trip.stop.travellers", say("trip.nobody.add"), field.Primary, func() { v.ShowPart(PartEdit) })
	p.nobody = look.NewSheet(look.Empty(say("trip.nobody.sentence"), add))
	left := look.VBox(gap, p.air.body, p.caution, p.done.body, p.days.body)
	right := look.VBox(gap, p.nobody, p.testBox, p.plan.body, p.picture.body)
	p.body = scrolled(newSides(left, right))
	return p
}

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

// show shows a stop for a traveller.
func (p *stopPart) show(m *member, i int) {
	v := p.v
	s := v.now().Stops[i]
	look.ShowIf(p.nobody, m == nil)
	for _, o := range []fyne.CanvasObject{p.testBox, p.caution} {
		look.ShowIf(o, m != nil)
	}
	if m == nil {
		air, err := consult.AirOf(s, v.places)
		p.air.show(v.speaker(nil), air, s, err)
		p.done.show(nil, s)
		for _, o := range []fyne.CanvasObject{p.days.body, p.plan.body, p.picture.body} {
			look.ShowIf(o, false)
		}
		p.body.Refresh()
		return
	}
	sp := v.speaker(m)
	there, err := v.plan(m, s)
	var unknown climate.UnknownPlaceError
	if errors.As(err, &unknown) && v.b.Typing() == cityName {
		return // still being typed; what stood before stands
	}
	p.done.show(m, s)
	p.air.show(sp, there.Air, s, err)
	p.tests.SetSpeaker(sp)
	p.showFix(m, sp.Troubles(err, s))
	if err != nil {
		p.showTrouble(sp, m, s, err)
	} else {
		p.tests.Show(there.Calculation, sp.DaysOf(s))
		p.cautions.Show(sp.Caution(there.Calculation, care.Of(m.athlete, v.desk.Now()), v.desk.Practice().Emergency))
		p.plan.show(sp, m, there)
	}
	p.days.show(sp, there)
	p.picture.show(sp, m, there)
	p.body.Refresh()
}

// showTrouble says why nothing follows for the traveller.
func (p *stopPart) showTrouble(sp heat.Speaker, m *member, s record.Stop, err error) {
	var list []string
	for _, t := range sp.Troubles(err, s) {
		if !slices.Contains(list, t.Sentence) {
			list = append(list, t.Sentence)
		}
	}
	p.tests.ShowTrouble(strings.Join(list, " "))
	refresh(p.testBox)
	p.cautions.Show(sp.Caution(consult.Calculation{}, care.Of(m.athlete, p.v.desk.Now()), p.v.desk.Practice().Emergency))
	look.ShowIf(p.plan.body, false)
}

// showFix leads to where a trouble is put right that is not put right here.
func (p *stopPart) showFix(m *member, troubles []heat.Trouble) {
	v, say := p.v, p.v.desk.Words.Say
	text := ""
	for _, t := range troubles {
		switch t.Field {
		case evidence.StopDates:
			text, p.fix.OnPressed = say("trip.fix.dates"), func() { v.ShowPart(PartEdit) }
		case evidence.BodyMass, evidence.Height:
			text, p.fix.OnPressed = say("trip.fix.profile"), func() { v.desk.Go(desk.Place{Screen: desk.Profile, Athlete: m.athlete.ID}) }
		}
	}
	p.fix.SetText(text)
	look.ShowIf(p.fix, text != "")
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

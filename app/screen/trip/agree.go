package trip

import (
	"context"
	"strings"

	"fyne.io/fyne/v2"

	"ebbwell/app/kit/field"
	"ebbwell/app/kit/look"
	"ebbwell/app/screen/heat"
	"ebbwell/internal/care"
	"ebbwell/internal/climate"
	"ebbwell/internal/consult"
	"ebbwell/internal/evidence"
	"ebbwell/internal/record"
	"ebbwell/internal/store"
)

// offer is the plan of one stop, ready to be agreed, or why it is not.
type offer struct {
	place    int
	there    consult.StopPlan
	refusals []string
	sentence string
}

// offers are the plans of all stops for a traveller.
func (v *View) offers(m *member) []offer {
	sp := v.speaker(m)
	var list []offer
	for i, s := range v.now().Stops {
		there, err := v.plan(m, s)
		o := offer{place: i, there: there, refusals: there.Refusals(m.athlete, v.desk.Now())}
		if err != nil {
			var why []string
			for _, t := range sp.Troubles(err, s) {
				why = append(why, t.Sentence)
			}
			o.refusals, o.sentence = []string{consult.RefusedNoPlan}, strings.Join(why, " ")
		}
		list = append(list, o)
	}
	return list
}

// askAgree asks whether the plans of the stops are agreed with the traveller
// shown, and by when they are looked at again.
func (v *View) askAgree() {
	m := v.shown()
	if m == nil || !v.b.FlushNow() {
		return
	}
	sp, say := v.speaker(m), v.desk.Words.Say
	list := v.offers(m)
	column := look.VBox(8)
	possible := 0
	for _, o := range list {
		column.Add(offerLine(sp, m, o))
		if len(o.refusals) == 0 {
			possible++
		}
	}
	actions := []field.Action{{Name: "no", Text: say("field.ask.cancel")}}
	sentence := say("trip.agree.none")
	if possible > 0 {
		review := field.NewDate(v.desk.Host, "trip.agree.review", field.Coming)
		review.SetDate(v.reviewDay())
		trouble := look.NewParagraph("", look.Note, look.Ink)
		column.Add(look.VBox(4, look.Gap(0, 4), row(say("trip.agree.review"), 240, review), trouble))
		sentence = say("trip.agree.sentence", m.athlete.Name)
		actions = append(actions, field.Action{Name: "yes", Text: say("trip.agree.yes"), Kind: field.Primary, Do: func() bool {
			day, ok := review.Date()
			if !ok || day == "" {
				trouble.SetText(say("trip.agree.noreview"))
				return true
			}
			v.agreeAll(m, list, day)
			return false
		}})
	}
	v.desk.Host.Ask(v.canvas(), field.Question{Name: "trip.agree", Title: say("trip.agree.title", m.athlete.Name), Sentence: sentence, Content: column, Width: 600, Actions: actions})
}

// reviewDay is when the plans are looked at again unless another day is typed:
// after the first good days to test at the first hot stop that is new, else
// when the trip is over.
func (v *View) reviewDay() record.Date {
	t := v.now()
	for _, s := range t.Stops {
		first := s.From.AddDays(int(evidence.FirstRetestUntil) - int(max(1, s.HeatDay.Or(1))))
		if m := v.shown(); m != nil && s.From != "" && first <= s.Until && first >= v.desk.Today() {
			if there, err := v.plan(m, s); err == nil && there.Calculation.Climate.Rate.Estimate {
				return first
			}
		}
	}
	if _, until, ok := dates(t); ok && record.DateOf(until) >= v.desk.Today() {
		return record.DateOf(until)
	}
	return v.desk.Today().AddDays(14)
}

// offerLine is what would be agreed for a stop, or why not.
func offerLine(sp heat.Speaker, m *member, o offer) fyne.CanvasObject {
	say := sp.Words.Say
	name := look.NewLabel(stopName(sp, o.there.Stop, o.place), look.Strong, look.Ink).Shorten()
	text := o.sentence
	switch {
	case len(o.refusals) == 0:
		text = say("trip.agree.line", drinkAmounts(sp, o.there), sp.Rates(o.there.Calculation.Climate.Rate.Range), basisWord(sp, o.there))
		if o.there.Cut {
			text += " " + say("trip.agree.cut")
		}
		if c := sp.Caution(o.there.Calculation, care.Care{}, ""); o.there.Calculation.Caution.Level >= climate.Limit {
			text += " " + c.Title + "."
		}
	case text == "":
		var why []string
		for _, code := range o.refusals {
			why = append(why, refusalSentence(sp, m, code))
		}
		text = say("trip.agree.refused") + " " + strings.Join(why, " ")
	default:
		text = say("trip.agree.refused") + " " + text
	}
	return look.VBox(2, name, look.NewParagraph(text, look.Body, look.Ink))
}

// basisWord says what a stop's plan rests on, in a word or two.
func basisWord(sp heat.Speaker, there consult.StopPlan) string {
	if there.Calculation.Climate.Rate.Estimate {
		return sp.Words.Say("basis.estimate")
	}
	return sp.Words.Say("trip.agree.measured")
}

// refusalSentence says why a plan may not be agreed.
func refusalSentence(sp heat.Speaker, m *member, code string) string {
	if code != consult.RefusedPhysician {
		return sp.Words.Say("trip." + code)
	}
	var names []string
	for _, kind := range care.Of(m.athlete, sp.Today).NeedsPhysician {
		names = append(names, sp.Words.Say("flag."+string(kind)+".name"))
	}
	return sp.Words.Say("trip."+code, sp.Words.List(names))
}

// agreeAll agrees the plans that may be, each for its stop; one that was agreed
// for the stop before is replaced.
func (v *View) agreeAll(m *member, list []offer, review record.Date) {
	sp := v.speaker(m)
	agreed := 0
	for _, o := range list {
		if len(o.refusals) > 0 {
			continue
		}
		if err := v.agreeOne(sp, m, o, review); err != nil {
			v.desk.Trouble(err)
			break
		}
		agreed++
	}
	if err := m.loadPlans(v.desk); err != nil {
		v.desk.Trouble(err)
	}
	v.follow()
	if agreed > 0 {
		v.desk.Say(sp.Words.Say("trip.agreed.done", agreed, m.athlete.Name), "", nil)
	}
}

// agreeOne keeps the plan of one stop as agreed.
func (v *View) agreeOne(sp heat.Speaker, m *member, o offer, review record.Date) error {
	ctx := context.Background()
	key := "trip.plan.name"
	if o.there.Calculation.Climate.Rate.Estimate {
		key = "trip.plan.name.estimate"
	}
	place := stopPlace(sp, o.there.Stop, o.place)
	c, err := o.there.Draft(consult.StopNames{Plan: sp.Words.Say(key, place), Option: sp.Words.Say("trip.plan.option", place)}, review, v.desk.Now(), v.desk.Calculate().WithFrozen(m.kept))
	if err != nil {
		return err
	}
	if there, ok := consult.OptionByID(c.Plan, c.Plan.Agreement.OptionID); ok {
		if err := c.MayAgree(there); err != nil {
			return err
		}
	}
	c.Plan = c.Settle(c.Plan)
	inputs, results, err := c.FreezePlan()
	if err != nil {
		return err
	}
	var replaces []record.ID
	if before := consult.AgreedFor(o.there.Stop.ID, m.plans); before != nil {
		replaces = append(replaces, before.ID)
	}
	_, err = v.desk.Store.AgreePlan(ctx, c.Plan, store.Freezing{Inputs: inputs, Results: results, Evidence: evidence.Version}, store.Edit{}, replaces...)
	return err
}

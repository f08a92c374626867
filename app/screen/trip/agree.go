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

// offer is the plan of one traveller at a stop, ready to be agreed, or why it is
// not.
type offer struct {
	member   *member
	place    int
	there    consult.StopPlan
	refusals []string
	sentence string
	tick     *field.Check
}

// offers are the plans of everybody at a stop.
func (v *View) offers(place int) []*offer {
	s := v.now().Stops[place]
	var list []*offer
	for _, m := range v.crew() {
		sp := v.speaker(m)
		there, err := v.plan(m, s)
		o := &offer{member: m, place: place, there: there, refusals: there.Refusals(m.athlete, v.desk.Now())}
		if err != nil {
			o.refusals, o.sentence = []string{consult.RefusedNoPlan}, troubleSentences(sp, err, s)
		}
		list = append(list, o)
	}
	return list
}

// askAgree asks with whom the plans of the stop in sight are agreed, and by when
// they are looked at again: agreeing is each athlete's own act, so each has a tick.
func (v *View) askAgree() {
	place := v.stopShown()
	if place < 0 || !v.b.FlushNow() {
		return
	}
	say := v.desk.Words.Say
	title := say("trip.agree.title", stopPlace(v.speaker(nil), v.now().Stops[place], place))
	list := v.offers(place)
	column := look.VBox(10)
	cancelled := v.ui.stop.level >= climate.Cancel
	possible := v.offerTo(column, list, !cancelled)
	actions := []field.Action{{Name: "no", Text: say("field.ask.cancel")}}
	sentence := say("trip.agree.none")
	if possible > 0 && cancelled {
		possible, sentence = 0, say("trip.agree.cancelled")
	}
	if possible > 0 {
		review := field.NewDate(v.desk.Host, "trip.agree.review", field.Coming)
		review.SetDate(v.reviewDay(list))
		trouble := look.NewParagraph("", look.Note, look.Ink)
		column.Add(look.VBox(4, look.Gap(0, 4), row(say("trip.agree.review"), 240, review), trouble))
		sentence = say("trip.agree.sentence")
		actions = append(actions, field.Action{Name: "yes", Text: say("trip.agree.yes"), Kind: field.Primary, Do: func() bool {
			text := v.agreeTicked(list, review)
			trouble.SetText(text)
			return text != ""
		}})
	}
	v.desk.Host.Ask(v.canvas(), field.Question{Name: "trip.agree", Title: title, Sentence: sentence, Content: column, Width: 620, Actions: actions})
}

// offerTo lists the offers, with a tick each where ticks are offered, and returns how many
// may be agreed; where that is one alone, it is ticked.
func (v *View) offerTo(column *fyne.Container, list []*offer, ticks bool) (possible int) {
	for _, o := range list {
		if len(o.refusals) == 0 {
			possible++
		}
		if len(o.refusals) == 0 && ticks {
			o.tick = field.NewCheck(v.desk.Host, "trip.agree."+v.desk.Words.Number(float64(possible), 0), o.member.athlete.Name)
		}
		column.Add(offerLine(v.speaker(o.member), o))
	}
	for _, o := range list {
		if o.tick != nil {
			o.tick.Set(len(list) == 1)
		}
	}
	return possible
}

// agreeTicked agrees what is ticked; it returns what is missing for that.
func (v *View) agreeTicked(list []*offer, review *field.Date) (trouble string) {
	say := v.desk.Words.Say
	day, ok := review.Date()
	if !ok || day == "" {
		return say("trip.agree.noreview")
	}
	var names []string
	for _, o := range list {
		if o.tick == nil || !o.tick.On() {
			continue
		}
		if err := v.agreeOne(v.speaker(o.member), o, day); err != nil {
			v.desk.Trouble(err)
			break
		}
		if err := o.member.loadPlans(v.desk); err != nil {
			v.desk.Trouble(err)
		}
		names = append(names, o.member.athlete.Name)
	}
	if len(names) == 0 {
		return say("trip.agree.nobody")
	}
	v.follow()
	v.desk.Say(say("trip.agreed.done", len(names), v.desk.Words.List(names)), "", nil)
	return ""
}

// reviewDay is when the plans are looked at again unless another day is typed:
// after the first good days to test at a hot stop that is new, else when the stop
// is over.
func (v *View) reviewDay(list []*offer) record.Date {
	for _, o := range list {
		s := o.there.Stop
		first := s.From.AddDays(int(evidence.FirstRetestUntil) - int(max(1, s.HeatDay.Or(1))))
		if s.From != "" && first <= s.Until && first >= v.desk.Today() && o.there.Calculation.Climate.Rate.Estimate {
			return first
		}
	}
	if len(list) > 0 && list[0].there.Stop.Until >= v.desk.Today() {
		return list[0].there.Stop.Until
	}
	return v.desk.Today().AddDays(14)
}

// offerLine is what would be agreed with somebody, or why not.
func offerLine(sp heat.Speaker, o *offer) fyne.CanvasObject {
	say := sp.Words.Say
	var name fyne.CanvasObject = look.NewLabel(o.member.athlete.Name, look.Strong, look.Ink).Shorten()
	if o.tick != nil {
		name = o.tick
	}
	text := o.sentence
	switch {
	case len(o.refusals) == 0:
		text = say("trip.agree.line", drinkAmounts(sp, o.there), sp.Rates(o.there.Calculation.Climate.Rate.Range), basisWord(sp, o.there))
		if o.there.Cut {
			text += " " + say("trip.agree.cut")
		}
	case text == "":
		var why []string
		for _, code := range o.refusals {
			why = append(why, refusalSentence(sp, o.member, code))
		}
		text = say("trip.agree.refused") + " " + strings.Join(why, " ")
	default:
		text = say("trip.agree.refused") + " " + text
	}
	return look.VBox(2, name, look.Pad(0, 0, 0, look.Scaled(24), look.NewParagraph(text, look.Body, look.Ink)))
}

// basisWord says what a stop's plan is based on, in a word or two.
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

// agreeOne keeps the plan of one traveller as agreed; the one agreed for the stop
// before is replaced.
func (v *View) agreeOne(sp heat.Speaker, o *offer, review record.Date) error {
	ctx, m := context.Background(), o.member
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
	c.Plan = c.WithCarried(c.Plan)
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

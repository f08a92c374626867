package planner

import (
	"slices"
	"strconv"
	"strings"

	"fyne.io/fyne/v2"

	"ebbwell/app/kit/field"
	"ebbwell/app/kit/look"
	"ebbwell/internal/consult"
	"ebbwell/internal/plan"
	"ebbwell/internal/record"
)

// agreement is what is asked when a plan is agreed.
type agreement struct {
	v *View
	agreementFields
	cautions, trouble *look.Caution
	// smaller proposes a smaller step where confidence is low.
	smaller *look.Caution
	// older are the plans that may be replaced, one check each.
	older []record.Plan
}

// agreementFields are what is filled in.
type agreementFields struct {
	option                 *field.Choice
	words                  *field.Notes
	review, from, until    *field.Date
	physician              *field.Line
	importance, confidence *field.Rating
	replaces               []*field.Check
}

// askAgreement asks what is needed to agree the plan, or says why it cannot be
// agreed yet.
func (v *View) askAgreement() {
	say := v.sp.say
	if !v.b.FlushNow() {
		return
	}
	if wrong := v.notYet(); wrong != "" {
		v.desk.Host.Ask(v.canvas(), field.Question{
			Name: "planner.notyet", Title: say("planner.notyet"), Sentence: wrong,
			Actions: []field.Action{{Name: "done", Text: say("planner.done"), Kind: field.Primary}},
		})
		return
	}
	a := v.newAgreement()
	a.follow()
	v.desk.Host.Ask(v.canvas(), field.Question{
		Name: "planner.agreement", Title: say("planner.agree"), Sentence: say("planner.agree.sentence"), Width: 660, Content: a.content(),
		Actions: []field.Action{
			{Name: "no", Text: say("field.ask.cancel")},
			{Name: "yes", Text: say("planner.agree.yes"), Kind: field.Primary, Do: func() (stay bool) { return !a.agree() }},
		},
	})
}

// notYet says what of the athlete's records has to be settled before any plan
// can be agreed; empty when nothing has.
func (v *View) notYet() string {
	a, care := v.file.athlete, v.now.planCase.Care
	switch {
	case a.Born == "":
		return v.sp.say("planner.notyet.born")
	case a.Sex == "":
		return v.sp.say("planner.notyet.sex")
	case len(care.Unsettled) > 0:
		return v.sp.say("planner.notyet.minor")
	}
	if _, wrong, err := v.file.lenient(v.b.Doc.Now().Record, v.desk); wrong != nil || err != nil {
		return v.sp.say("planner.notyet.session")
	}
	return ""
}

// newAgreement makes the fields, filled in with what the plan has already.
func (v *View) newAgreement() *agreement {
	h, say, p := v.desk.Host, v.sp.say, v.now.plan
	a := &agreement{v: v, cautions: look.NewCaution("", "", nil), trouble: look.NewCaution("", "", nil), smaller: look.NewCaution("", "", nil)}
	a.option = field.NewChoice(h, "planner.agree.option", v.agreeable())
	chosen := agreedOn(p)
	a.option.Choose(string(chosen.ID))
	a.option.OnChosen = func(string) { a.follow() }
	a.words = field.NewNotes(h, "planner.agree.words", 2)
	a.review, a.from, a.until = field.NewDate(h, "planner.agree.review", field.Coming), field.NewDate(h, "planner.agree.from", field.Coming), field.NewDate(h, "planner.agree.until", field.Coming)
	for _, day := range []*field.Date{a.review, a.from, a.until} {
		day.SetBox(200)
	}
	a.from.SetDate(orDate(p.Agreement.From, v.desk.Today()))
	a.review.SetDate(orDate(p.Agreement.Review, consult.ReviewDay(p, v.desk.Today())))
	a.until.SetDate(p.Agreement.Until)
	a.physician = field.NewLine(h, "planner.agree.physician", 120)
	a.physician.SetText(p.Agreement.Physician)
	a.importance = field.NewRating(h, "planner.agree.importance", say("planner.rating.low"), say("planner.rating.high"))
	a.confidence = field.NewRating(h, "planner.agree.confidence", say("planner.rating.low"), say("planner.rating.high"))
	a.confidence.OnChanged = func(int) { a.smaller.SetText(v.sp.doubt(record.Option{Confidence: rated(a.confidence)})) }
	a.older = replaceable(v.file.plans, p)
	for i, old := range a.older {
		c := field.NewCheck(h, "planner.agree.replaces."+strconv.Itoa(i+1), say("planner.agree.replaces", titleOf(old, say("planner.plan.unnamed")), v.sp.agreedDay(old)))
		c.Set(i == 0)
		a.replaces = append(a.replaces, c)
	}
	return a
}

// agreedDay is the day a plan was agreed.
func (sp speaker) agreedDay(p record.Plan) string {
	if p.Agreement.AgreedAt == nil {
		return ""
	}
	return sp.w.Day(*p.Agreement.AgreedAt)
}

func orDate(d, other record.Date) record.Date {
	if d == "" {
		return other
	}
	return d
}

// agreeable are the options and steps that can be agreed on: all but the habit.
func (v *View) agreeable() []field.Option {
	var list []field.Option
	for i, st := range v.now.plan.Steps {
		if o, ok := consult.OptionByID(v.now.plan, st.OptionID); ok {
			list = append(list, field.Option{Key: string(o.ID), Text: v.sp.rungName(i, v.now.isAim(v.now.planCase.MixOf(o)))})
		}
	}
	for _, o := range sideBySide(v.now.plan) {
		if o.Kind != record.OptionHabit {
			list = append(list, field.Option{Key: string(o.ID), Text: v.sp.optionName(o)})
		}
	}
	return list
}

// content sets the fields below each other.
func (a *agreement) content() fyne.CanvasObject {
	say := a.v.sp.say
	fields := []look.Entry{look.NewEntry(say("planner.agree.option"), a.option), look.NewEntry(say("planner.agree.words"), a.words)}
	if a.needsPhysician() {
		fields = append(fields, look.NewEntry(say("planner.agree.physician"), a.physician))
	}
	fields = append(fields, look.NewEntry(say("planner.option.importance"), a.importance), look.NewEntry(say("planner.option.confidence"), a.confidence),
		look.NewEntry(say("planner.agree.from"), a.from), look.NewEntry(say("planner.agree.until"), a.until), look.NewEntry(say("planner.agree.review"), a.review))
	box := look.VBox(10, newForm(fields...))
	for _, c := range a.replaces {
		box.Add(c)
	}
	box.Add(a.smaller)
	box.Add(a.cautions)
	box.Add(a.trouble)
	return box
}

// needsPhysician reports whether a condition of the profile asks for the name of
// a physician that is not there yet.
func (a *agreement) needsPhysician() bool { return len(a.v.now.planCase.Care.NeedsPhysician) > 0 }

// chosen is the option that is to be agreed on.
func (a *agreement) chosen() (record.Option, plan.Prediction) {
	v := a.v
	o, _ := consult.OptionByID(v.now.plan, record.ID(a.option.Chosen()))
	return o, v.now.planCase.Planner.Evaluate(plan.Expected, v.now.planCase.MixOf(o))
}

// follow shows what speaks about the option chosen.
func (a *agreement) follow() {
	o, q := a.chosen()
	v := a.v
	a.words.SetText(o.Words)
	a.importance.SetValue(int(o.Importance.Or(field.Unrated)))
	a.confidence.SetValue(int(o.Confidence.Or(field.Unrated)))
	a.smaller.SetText(v.sp.doubt(o))
	speaking := append(v.sp.guards(v.now.planCase, plan.Expected, q), v.sp.waterCare(v.now.planCase.Care))
	a.cautions.SetText("", strings.TrimSpace(strings.Join(speaking, "\n")))
	a.trouble.SetText("", "")
}

// wrong says what keeps the plan from being agreed as it stands.
func (a *agreement) wrong() string {
	v, say := a.v, a.v.sp.say
	o, q := a.chosen()
	review, okReview := a.review.Date()
	from, okFrom := a.from.Date()
	until, okUntil := a.until.Date()
	switch {
	case o.ID == "":
		return say("planner.agree.nooption")
	case q.Guards.Stops():
		return sentences(say("planner.agree.stops"), strings.Join(v.sp.guards(v.now.planCase, plan.Expected, q), " "))
	case len(v.now.planCase.Care.WithholdSalt) > 0 && o.Salt.Or(0) > 0:
		return sentences(say("planner.agree.salt"), v.sp.saltCare(v.now.planCase.Care))
	case q.Guards.Has(plan.OverSodium) && o.Salt.Or(0) > 0:
		return say("planner.agree.sodium")
	case a.wrongStep() != "":
		return a.wrongStep()
	case a.needsPhysician() && strings.TrimSpace(a.physician.Text()) == "":
		return say("planner.agree.nophysician", v.sp.conditionNames(v.now.planCase.Care.NeedsPhysician))
	case !okReview || !okFrom || !okUntil || from == "":
		return say("planner.agree.nodates")
	case review == "":
		return say("planner.agree.noreview")
	case until != "" && until < from || review < from:
		return say("planner.agree.order")
	}
	return ""
}

// wrongStep says which step that is done from now on may not be: steps are
// agreed with the plan, and a change of what it rests on may have left them
// behind. A plan agreed on another option begins at its first step.
func (a *agreement) wrongStep() string {
	v := a.v
	steps, planCase := v.now.plan.Steps, v.now.planCase
	first := max(0, slices.IndexFunc(steps, func(s record.Step) bool { return string(s.OptionID) == a.option.Chosen() }))
	for i, st := range steps {
		o, ok := consult.OptionByID(v.now.plan, st.OptionID)
		if i < first || !ok {
			continue
		}
		name := v.sp.rungName(i, v.now.isAim(planCase.MixOf(o)))
		switch {
		case planCase.Planner.Evaluate(plan.Expected, planCase.MixOf(o)).Guards.Stops():
			return v.sp.say("planner.agree.step.stops", name)
		case len(planCase.Care.WithholdSalt) > 0 && o.Salt.Or(0) > 0:
			return v.sp.say("planner.agree.step.salt", name)
		}
	}
	return ""
}

// conditionNames lists conditions of the profile in words.
func (sp speaker) conditionNames(kinds []record.FlagKind) string {
	var names []string
	for _, kind := range kinds {
		names = append(names, sp.say("flag."+string(kind)+".name"))
	}
	return sp.w.List(names)
}

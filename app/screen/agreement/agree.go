package agreement

import (
	"strconv"
	"strings"

	"fyne.io/fyne/v2"

	"ebbwell/app/kit/desk"
	"ebbwell/app/kit/field"
	"ebbwell/app/kit/look"
	"ebbwell/app/screen/planner/part"
	"ebbwell/app/screen/planner/state"
	"ebbwell/app/screen/planner/wording"
	"ebbwell/internal/consult"
	"ebbwell/internal/plan"
	"ebbwell/internal/quantity"
	"ebbwell/internal/record"
)

// Agreement is what is asked when a plan is agreed.
type Agreement struct {
	v *part.Plan
	agreementFields
	// summary says in words what would be agreed.
	summary *look.Paragraph
	// cautions are what speaks about it, one bar each, the gravest first.
	cautions *fyne.Container
	Trouble  *look.Caution
	// OneBottle is ticked where each break has one bottle; shown where that is offered.
	OneBottle *field.Check
	// smaller proposes a smaller step where confidence is low.
	smaller *look.Caution
	// Older are the plans that may be replaced, one check each.
	Older []record.Plan
}

// agreementFields are what is filled in.
type agreementFields struct {
	Option                 *field.Choice
	words                  *field.Notes
	review, from, until    *field.Date
	Physician              *field.Line
	importance, confidence *field.Rating
	Replaces               []*field.Check
}

// AskAgreement asks what is needed to agree the plan, or says why it cannot be
// agreed yet.
func AskAgreement(v *part.Plan) {
	say := v.Speaker.Say
	if !v.Binder.FlushNow() {
		return
	}
	if wrong := NotYet(v); wrong != "" {
		v.Desk.Host.Ask(v.Canvas(), field.Question{
			Name: "planner.notyet", Title: say("planner.notyet"), Sentence: wrong,
			Actions: []field.Action{{Name: "done", Text: say("planner.done"), Kind: field.Primary}},
		})
		return
	}
	a := NewAgreement(v)
	a.Follow()
	v.Desk.Host.Ask(v.Canvas(), field.Question{
		Name: "planner.agreement", Title: say("planner.agree"), Sentence: say("planner.agree.sentence"), Width: 660, Content: a.content(), Help: string(desk.HelpAgreement),
		Actions: []field.Action{
			{Name: "no", Text: say("field.ask.cancel")},
			{Name: "yes", Text: say("planner.agree.yes"), Kind: field.Primary, Do: func() (stay bool) { return !a.Agree() }},
		},
	})
}

// NotYet says what of the athlete's records has to be settled before any plan
// can be agreed; empty when nothing has.
func NotYet(v *part.Plan) string {
	a, care := v.File.Athlete, v.Now.PlanCase.Care
	switch {
	case a.Born == "":
		return v.Speaker.Say("planner.notyet.born")
	case a.Sex == "":
		return v.Speaker.Say("planner.notyet.sex")
	case len(care.Outstanding) > 0:
		return v.Speaker.Say("planner.notyet.minor")
	case v.Now.Proposal().Ask:
		return v.Speaker.Say("planner.notyet.breaks")
	}
	if _, wrong, err := v.File.Lenient(v.Binder.Doc.Now().Record, v.Desk); wrong != nil || err != nil {
		return v.Speaker.Say("planner.notyet.session")
	}
	return ""
}

// NewAgreement makes the fields, filled in with what the plan has already.
func NewAgreement(v *part.Plan) *Agreement {
	h, say, p := v.Desk.Host, v.Speaker.Say, v.Now.Plan
	a := &Agreement{v: v, summary: look.NewParagraph("", look.Body, look.Ink), cautions: look.VBox(6), Trouble: look.NewCaution("", "", nil), smaller: look.NewCaution("", "", nil)}
	a.Option = field.NewChoice(h, "planner.agree.option", agreeable(v))
	chosen := preselected(v)
	a.Option.Choose(string(chosen.ID))
	a.Option.OnChosen = func(string) { a.Follow() }
	a.OneBottle = field.NewCheck(h, "planner.agree.onebottle", say("planner.wish."+string(consult.WishOneBottle)))
	a.OneBottle.OnChanged = a.setOneBottle
	a.words = field.NewNotes(h, "planner.agree.words", 2)
	a.review, a.from, a.until = field.NewDate(h, "planner.agree.review", field.Coming), field.NewDate(h, "planner.agree.from", field.Coming), field.NewDate(h, "planner.agree.until", field.Coming)
	for _, day := range []*field.Date{a.review, a.from, a.until} {
		day.SetBox(200)
	}
	a.from.SetDate(orDate(p.Agreement.From, v.Desk.Today()))
	a.review.SetDate(orDate(p.Agreement.Review, consult.ReviewDay(p, v.Desk.Today())))
	a.until.SetDate(p.Agreement.Until)
	a.Physician = field.NewLine(h, "planner.agree.physician", 120)
	a.Physician.SetText(p.Agreement.Physician)
	a.importance = field.NewRating(h, "planner.agree.importance", say("planner.rating.low"), say("planner.rating.high"))
	a.confidence = field.NewRating(h, "planner.agree.confidence", say("planner.rating.low"), say("planner.rating.high"))
	a.confidence.OnChanged = func(int) { a.smaller.SetText(v.Speaker.Doubt(record.Option{Confidence: rated(a.confidence)})) }
	a.Older = state.Replaceable(v.File.Plans, p)
	for i, old := range a.Older {
		c := field.NewCheck(h, "planner.agree.replaces."+strconv.Itoa(i+1), say("planner.agree.replaces", v.Speaker.PlanName(old), agreedDay(v.Speaker, old)))
		c.Set(i == 0)
		a.Replaces = append(a.Replaces, c)
	}
	return a
}

// agreedDay is the day a plan was agreed.
func agreedDay(sp wording.Speaker, p record.Plan) string {
	if p.Agreement.AgreedAt == nil {
		return ""
	}
	return sp.Words.Day(*p.Agreement.AgreedAt)
}

func orDate(d, other record.Date) record.Date {
	if d == "" {
		return other
	}
	return d
}

// preselected is the option that is agreed on unless another is chosen: the one that is marked, or
// the step in force; else the one in hand, but for the habit.
func preselected(v *part.Plan) record.Option {
	p := v.Now.Plan
	_, marked := consult.OptionByID(p, p.Agreement.OptionID)
	_, _, step := consult.StepNow(p)
	if in := v.Now.Selected(); !marked && !step && in.ID != "" && in.Kind != record.OptionHabit {
		return in
	}
	return consult.Meant(p)
}

// agreeable are the options and steps that can be agreed on: all but the habit.
func agreeable(v *part.Plan) []field.Option {
	var list []field.Option
	for i, st := range v.Now.Plan.Steps {
		if o, ok := consult.OptionByID(v.Now.Plan, st.OptionID); ok {
			list = append(list, field.Option{Key: string(o.ID), Text: v.Speaker.RungName(i, v.Now.IsAim(v.Now.PlanCase.MixOf(o)))})
		}
	}
	for _, o := range state.SideBySide(v.Now.Plan) {
		if o.Kind != record.OptionHabit {
			list = append(list, field.Option{Key: string(o.ID), Text: v.Speaker.OptionName(o)})
		}
	}
	return list
}

// content sets the fields below each other.
func (a *Agreement) content() fyne.CanvasObject {
	say := a.v.Speaker.Say
	fields := []look.Entry{look.NewEntry(say("planner.agree.option"), a.Option), look.NewEntry(say("planner.agree.words"), a.words)}
	if a.needsPhysician() {
		fields = append(fields, look.NewEntry(say("planner.agree.physician"), a.Physician))
	}
	fields = append(fields, look.NewEntry(say("planner.option.importance"), a.importance), look.NewEntry(say("planner.option.confidence"), a.confidence),
		look.NewEntry(say("planner.agree.from"), a.from), look.NewEntry(say("planner.agree.until"), a.until), look.NewEntry(say("planner.agree.review"), a.review))
	form := part.NewForm(fields[1:]...)
	box := look.VBox(10, part.NewForm(fields[0]), a.summary, a.OneBottle, a.cautions, form)
	for _, c := range a.Replaces {
		box.Add(c)
	}
	box.Add(a.smaller)
	box.Add(a.Trouble)
	return box
}

// needsPhysician reports whether a condition of the profile asks for the name of
// a physician that is not there yet.
func (a *Agreement) needsPhysician() bool { return len(a.v.Now.PlanCase.Care.NeedsPhysician) > 0 }

// chosen is the option that is to be agreed on.
func (a *Agreement) chosen() (record.Option, plan.Prediction) {
	v := a.v
	o, _ := consult.OptionByID(v.Now.Plan, record.ID(a.Option.Chosen()))
	return o, v.Now.PlanCase.Planner.Evaluate(plan.Expected, v.Now.PlanCase.Carried(o))
}

// Follow shows what speaks about the option chosen.
func (a *Agreement) Follow() {
	o, _ := a.chosen()
	a.words.SetText(o.Words)
	a.importance.SetValue(int(o.Importance.Or(field.Unrated)))
	a.confidence.SetValue(int(o.Confidence.Or(field.Unrated)))
	a.smaller.SetText(a.v.Speaker.Doubt(o))
	a.retell()
}

// retell says anew what would be agreed, and what speaks about it.
func (a *Agreement) retell() {
	o, q := a.chosen()
	v := a.v
	a.summary.SetText(a.Summary())
	_, offer := a.bottles(o)
	a.followBottles(offer)
	a.cautions.Objects = nil
	for _, text := range append(v.Speaker.Guards(v.Now.PlanCase, plan.Expected, q), v.Speaker.WaterCare(v.Now.PlanCase.Care)) {
		if text != "" {
			a.cautions.Add(look.NewCaution("", text, nil))
		}
	}
	a.cautions.Refresh()
	a.Trouble.SetText("", "")
}

// Wrong says what keeps the plan from being agreed as it stands.
func (a *Agreement) Wrong() string {
	v, say := a.v, a.v.Speaker.Say
	o, q := a.chosen()
	review, okReview := a.review.Date()
	from, okFrom := a.from.Date()
	until, okUntil := a.until.Date()
	switch {
	case o.ID == "":
		return say("planner.agree.nooption")
	case stops(v.Now.PlanCase, o):
		return wording.Sentences(say("planner.agree.stops"), strings.Join(v.Speaker.Guards(v.Now.PlanCase, plan.Expected, q), " "))
	case len(v.Now.PlanCase.Care.WithholdSalt) > 0 && o.Salt.Or(0) > 0:
		return wording.Sentences(say("planner.agree.salt"), v.Speaker.SaltCare(v.Now.PlanCase.Care))
	case q.Guards.Has(plan.OverSodium) && o.Salt.Or(0) > 0:
		return say("planner.agree.sodium")
	case !v.Now.PlanCase.LeadsTo(o):
		return say("planner.agree.elsewhere", v.Speaker.OptionName(o))
	case a.WrongStep() != "":
		return a.WrongStep()
	case a.needsPhysician() && strings.TrimSpace(a.Physician.Text()) == "":
		return say("planner.agree.nophysician", conditionNames(v.Speaker, v.Now.PlanCase.Care.NeedsPhysician))
	case !okReview || !okFrom || !okUntil || from == "":
		return say("planner.agree.nodates")
	case review == "":
		return say("planner.agree.noreview")
	case until != "" && until < from || review < from:
		return say("planner.agree.order")
	}
	return ""
}

// WrongStep says which step may not be agreed: every step of the plan is held
// against the limit, those before the one agreed too, because a review may go back
// to them.
func (a *Agreement) WrongStep() string {
	v := a.v
	for _, h := range v.Now.PlanCase.HeldSteps() {
		name := v.Speaker.RungName(h.Place-1, v.Now.IsAim(v.Now.PlanCase.MixOf(h.Option)))
		switch {
		case h.Over:
			return v.Speaker.Say("planner.agree.step.stops", name, v.Speaker.By.Amount(h.FluidL, quantity.Litre), v.Speaker.By.Amount(h.LimitL, quantity.Litre))
		case h.Salt:
			return v.Speaker.Say("planner.agree.step.salt", name)
		}
	}
	return ""
}

// stops reports whether an option as it stands, carried by the breaks or not, is
// over-drinking.
func stops(c consult.Case, o record.Option) bool {
	return c.Planner.Evaluate(plan.Expected, c.MixOf(o)).Guards.Stops()
}

// conditionNames lists conditions of the profile in words.
func conditionNames(sp wording.Speaker, kinds []record.FlagKind) string {
	var names []string
	for _, kind := range kinds {
		names = append(names, sp.Say("flag."+string(kind)+".name"))
	}
	return sp.Words.List(names)
}

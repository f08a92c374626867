package planner

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"

	"ebbwell/app/kit/chart"
	"ebbwell/app/kit/desk"
	"ebbwell/app/kit/field"
	"ebbwell/app/kit/look"
	"ebbwell/internal/consult"
	"ebbwell/internal/evidence"
	"ebbwell/internal/plan"
	"ebbwell/internal/record"
)

// goalsAtOnce is how many things may change at one visit.
func goalsAtOnce() int { return int(evidence.GoalsAtOnce) }

// stepsTab is the way from habit to aim: the picture, what is to be practised on
// each step, the rules the steps are sized by, and the follow-up.
type stepsTab struct {
	v       *View
	ladder  plan.Ladder
	picture *chart.StepColumns
	box     *fyne.Container
	stepWidgets
}

// stepWidgets are what stands below the picture.
type stepWidgets struct {
	words   *look.Paragraph
	changed *look.Paragraph
	build   *field.Button
	again   *fyne.Container
	smaller *look.Caution
	size    *ruleFields
	// rulesPart holds the rules and the day of the event; an agreed plan says
	// what comes of them and no more.
	rulesPart *fyne.Container
	list      *stepList
	// rule says when one goes on, stays or goes back, as it is printed.
	rule  *look.Paragraph
	after *followUp
}

func newStepsTab(v *View) part {
	t := &stepsTab{v: v, picture: chart.NewStepColumns()}
	h, say := v.desk.Host, v.sp.say
	t.words = look.NewParagraph("", look.Body, look.Ink)
	t.changed = look.NewParagraph("", look.Note, look.Ink2)
	t.build = field.NewButton(h, "planner.steps.build", say("planner.steps.build"), field.Outline, t.keep)
	half := field.NewButton(h, "planner.steps.smaller", say("planner.smaller.take"), field.Outline, t.takeSmaller)
	t.smaller = look.NewCaution("", "", half)
	t.size = newRuleFields(v)
	t.list = newStepList(v)
	t.rule = look.NewParagraph("", look.Note, look.Ink2)
	t.after = newFollowUp(v)
	event := v.b.Date("", "planner.event", field.Coming, func(p *record.Plan) (*record.Date, string) { return &p.Target.EventDate, "target.eventDate" })
	head := look.NewParagraph(say("planner.steps.title"), look.Note, look.Ink2)
	event.SetBox(200)
	t.again = look.HBox(12, t.build, look.Grow(t.changed))
	t.rulesPart = look.VBox(12, look.NewRule(), t.size.box, newForm(look.NewEntry(say("planner.event"), event)))
	t.box = look.VBox(12, head, container.NewHScroll(t.picture), t.words, t.after.box, t.smaller,
		t.again, t.list.box, t.rule, t.rulesPart)
	return t
}

func (t *stepsTab) body() fyne.CanvasObject { return t.box }

// open shows the steps that are kept, else those that the rules propose.
func (t *stepsTab) open() {
	v := t.v
	today, _ := v.desk.Today().Time()
	rules := consult.RulesOf(v.now.plan)
	t.ladder = v.now.planCase.Planner.Steps(v.now.climb(rules, today))
	same := v.now.sameSteps(t.ladder)
	t.draw()
	t.words.SetText(v.sp.ladderWords(v.now, t.ladder, rules))
	look.ShowIf(t.words, t.words.Text() != "")
	draft := v.now.draft()
	look.ShowIf(t.again, draft && !same && len(t.ladder.Steps) > 0)
	t.build.SetText(v.sp.say("planner.steps.build"))
	t.changed.SetText("")
	if len(v.now.plan.Steps) > 0 && !same {
		t.build.SetText(v.sp.say("planner.steps.rebuild"))
		t.changed.SetText(v.sp.say("planner.steps.changed"))
	}
	title, sentence := "", ""
	if draft && usualSize(v.now.plan) {
		title, sentence = v.sp.doubt(agreedOn(v.now.plan))
	}
	t.smaller.SetText(title, sentence)
	t.list.open()
	t.rule.SetText(v.sp.ruleWords(v.now.plan))
	look.ShowIf(t.rule, t.rule.Text() != "")
	look.ShowIf(t.rulesPart, draft)
	t.after.open()
	t.box.Refresh()
}

// draw shows the picture.
func (t *stepsTab) draw() {
	v := t.v
	rungs := v.now.keptRungs(v.sp)
	if len(rungs) == 0 {
		rungs = v.now.proposedRungs(v.sp, t.ladder)
	}
	d := chart.StepColumnsData{Columns: v.sp.columns(v.now, rungs)}
	d.Summary = v.sp.say("planner.steps.summary", len(rungs))
	t.picture.Set(d)
}

// follow shows a movement of the mix of a step.
func (t *stepsTab) follow() {
	if t.v.now.hand().Kind == record.OptionStep || t.v.now.hand().Kind == record.OptionAim {
		t.draw()
	}
}

// usualSize reports whether the steps of a plan are as large as they usually are.
func usualSize(p record.Plan) bool {
	own, usual := consult.RulesOf(p), plan.DefaultStepRules()
	return own.FluidLH == usual.FluidLH && own.CarbohydrateGH == usual.CarbohydrateGH
}

// keep keeps the steps that the rules propose, in the place of those there were.
func (t *stepsTab) keep() { t.keepBy(t.v.now.plan) }

// keepBy keeps the steps by the rules of a changed plan, with these rules, as
// one step back.
func (t *stepsTab) keepBy(p record.Plan) {
	v := t.v
	today, _ := v.desk.Today().Time()
	c, rules := v.now.planCase, consult.RulesOf(p)
	c.Plan = p
	next := c.WithLadder(c.Planner.Steps(v.now.climb(rules, today)), rules.Sessions, desk.StepName(v.desk.Words))
	v.b.Pick("planner.steps.build", func(s *sheet) {
		s.Record.Rules, s.Record.Steps, s.Record.Options = next.Rules, next.Steps, next.Options
		if _, ok := consult.OptionByID(next, next.Agreement.OptionID); !ok {
			s.Record.Agreement.OptionID = ""
		}
	})
}

// takeSmaller halves the steps, as low confidence asks for.
func (t *stepsTab) takeSmaller() {
	p := t.v.now.plan.Clone()
	half, _ := consult.RulesOf(p).Smaller(agreedOn(p).Confidence.Or(evidence.ConfidenceEnough))
	consult.SetStepSize(&p, half)
	t.keepBy(p)
}

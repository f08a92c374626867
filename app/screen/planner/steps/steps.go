package steps

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"

	"ebbwell/app/kit/chart"
	"ebbwell/app/kit/desk"
	"ebbwell/app/kit/field"
	"ebbwell/app/kit/look"
	"ebbwell/app/screen/planner/part"
	"ebbwell/app/screen/planner/review"
	"ebbwell/internal/consult"
	"ebbwell/internal/evidence"
	"ebbwell/internal/plan"
	"ebbwell/internal/record"
)

// goalsAtOnce is how many things may change at one visit.
func goalsAtOnce() int { return int(evidence.GoalsAtOnce) }

// StepsTab is the way from habit to aim: the picture, what is to be practised on
// each step, the rules the steps are sized by, and the follow-up.
type StepsTab struct {
	v       *part.Plan
	Ladder  plan.Ladder
	picture *chart.StepColumns
	box     *fyne.Container
	stepWidgets
}

// stepWidgets are what stands below the picture.
type stepWidgets struct {
	Words   *look.Paragraph
	changed *look.Paragraph
	build   *field.Button
	again   *fyne.Container
	smaller *look.Caution
	size    *ruleFields
	// rulesPart holds the rules and the day of the event; an agreed plan says
	// what comes of them and no more.
	rulesPart *fyne.Container
	List      *stepList
	// Rule says when one goes on, stays or goes back, as it is printed.
	Rule  *look.Paragraph
	After *review.FollowUp
}

// New makes the panel of the steps.
func New(v *part.Plan) part.Part {
	t := &StepsTab{v: v, picture: chart.NewStepColumns()}
	h, say := v.Desk.Host, v.Speaker.Say
	t.Words = look.NewParagraph("", look.Body, look.Ink)
	t.changed = look.NewParagraph("", look.Note, look.Ink2)
	t.build = field.NewButton(h, "planner.steps.build", say("planner.steps.build"), field.Outline, t.keep)
	t.smaller = look.NewCaution("", "", nil)
	t.size = newRuleFields(v)
	t.List = newStepList(v)
	t.Rule = look.NewParagraph("", look.Note, look.Ink2)
	t.After = review.New(v)
	event := v.Binder.Date("", "planner.event", field.Coming, func(p *record.Plan) (*record.Date, string) { return &p.Target.EventDate, "target.eventDate" })
	head := look.NewParagraph(say("planner.steps.title"), look.Note, look.Ink2)
	event.SetBox(200)
	t.again = look.HBox(12, t.build, look.Grow(t.changed))
	t.rulesPart = look.VBox(12, look.NewRule(), t.size.box, part.NewForm(look.NewEntry(say("planner.event"), event)))
	t.box = look.VBox(12, head, container.NewHScroll(t.picture), t.Words, t.After.Box, t.smaller,
		t.again, t.List.box, t.Rule, t.rulesPart)
	return t
}

// Body is what stands on the page.
func (t *StepsTab) Body() fyne.CanvasObject { return t.box }

// Open shows the steps that are kept, else those that the rules propose.
func (t *StepsTab) Open() {
	v := t.v
	today, _ := v.Desk.Today().Time()
	rules := consult.RulesOf(v.Now.Plan)
	t.Ladder = v.Now.PlanCase.Planner.Steps(v.Now.Climb(rules, today))
	same := v.Now.SameSteps(t.Ladder)
	t.draw()
	t.Words.SetText(ladderWords(v.Speaker, v.Now, t.Ladder, rules))
	look.ShowIf(t.Words, t.Words.Text() != "")
	draft := v.Now.Draft()
	look.ShowIf(t.again, draft && !same && len(t.Ladder.Steps) > 0)
	t.build.SetText(v.Speaker.Say("planner.steps.build"))
	t.changed.SetText("")
	if len(v.Now.Plan.Steps) > 0 && !same {
		t.build.SetText(v.Speaker.Say("planner.steps.rebuild"))
		t.changed.SetText(v.Speaker.Say("planner.steps.changed"))
	}
	title, sentence := "", ""
	if draft && v.Now.PlanCase.Planner.Background().Confidence.Known {
		title, sentence = v.Speaker.Doubt(consult.Meant(v.Now.Plan))
	}
	t.smaller.SetText(title, sentence)
	t.List.Open()
	t.Rule.SetText(ruleWords(v.Speaker, v.Now.PlanCase, v.Now.Plan))
	look.ShowIf(t.Rule, t.Rule.Text() != "")
	look.ShowIf(t.rulesPart, draft)
	t.After.Open()
	t.box.Refresh()
}

// draw shows the picture.
func (t *StepsTab) draw() {
	v := t.v
	rungs := keptRungs(v.Now, v.Speaker)
	if len(rungs) == 0 {
		rungs = proposedRungs(v.Now, v.Speaker, t.Ladder)
	}
	d := chart.StepColumnsData{Columns: columns(v.Speaker, v.Now, rungs)}
	d.Summary = v.Speaker.Say("planner.steps.summary", len(rungs))
	t.picture.Set(d)
}

// Follow shows a movement of the mix of a step.
func (t *StepsTab) Follow() {
	if t.v.Now.Selected().Kind == record.OptionStep || t.v.Now.Selected().Kind == record.OptionAim {
		t.draw()
	}
}

// keep keeps the steps that the rules propose, in the place of those there were,
// as one step back.
func (t *StepsTab) keep() {
	v, p := t.v, t.v.Now.Plan
	today, _ := v.Desk.Today().Time()
	c, rules := v.Now.PlanCase, consult.RulesOf(p)
	c.Plan = p
	next := c.WithLadder(c.Planner.Steps(v.Now.Climb(rules, today)), rules.Sessions, desk.StepName(v.Desk.Words))
	v.Binder.Pick("planner.steps.build", func(s *part.Sheet) {
		s.Record.Rules, s.Record.Steps, s.Record.Options = next.Rules, next.Steps, next.Options
		if _, ok := consult.OptionByID(next, next.Agreement.OptionID); !ok {
			s.Record.Agreement.OptionID = ""
		}
	})
}

package planner

import (
	"context"

	"fyne.io/fyne/v2"

	"ebbwell/app/bind"
	"ebbwell/app/field"
	"ebbwell/app/look"
	"ebbwell/internal/consult"
	"ebbwell/internal/plan"
	"ebbwell/internal/quantity"
	"ebbwell/internal/record"
	"ebbwell/internal/store"
)

// followUp is what was done on the step in force, what the rule proposes, and
// what the practitioner decides.
type followUp struct {
	v        *View
	title    *look.Label
	sessions *look.Table
	proposal *look.Paragraph
	record   *field.Button
	decide   map[record.Decision]*field.Button
	box      *fyne.Container
}

// decisions lists what a review can decide, in the order of the buttons.
func decisions() []record.Decision {
	return []record.Decision{record.DecisionHold, record.DecisionNext, record.DecisionBack}
}

func newFollowUp(v *View) *followUp {
	f := &followUp{v: v, title: look.NewLabel("", look.Strong, look.Ink), proposal: look.NewParagraph("", look.Body, look.Ink)}
	h, say := v.desk.Host, v.sp.say
	f.sessions = look.NewTable("planner.done", []look.Column{
		{Title: say("planner.done.day"), Width: look.Fixed(110)},
		{Title: say("planner.done.share"), Width: look.Fixed(120), Right: true},
		{Title: say("planner.done.drunk"), Width: look.Fixed(100), Right: true},
		{Title: say("planner.done.stomach"), Width: look.Fixed(100), Right: true},
		{Title: say("planner.done.note"), Width: look.Share(1)},
	})
	f.record = field.NewButton(h, "planner.done.record", say("planner.done.record"), field.Outline, v.askSession)
	f.decide = map[record.Decision]*field.Button{}
	row := look.HBox(10, f.record, look.Gap(16, 0))
	for _, d := range decisions() {
		f.decide[d] = field.NewButton(h, "planner.decide."+string(d), say("planner.decide."+string(d)), field.Outline, func() { v.askDecision(d) })
		row.Add(f.decide[d])
	}
	f.box = look.VBox(8, f.title, f.sessions, f.proposal, row)
	return f
}

// open shows the follow-up of an agreed plan.
func (f *followUp) open() {
	v := f.v
	setVisible(f.box, v.now.plan.State == record.PlanAgreed)
	if !f.box.Visible() {
		return
	}
	step, place, ok := consult.StepNow(v.now.plan)
	f.title.SetText(v.sp.say("planner.follow.option"))
	if ok {
		f.title.SetText(v.sp.say("planner.follow.step", v.sp.rungName(place-1, false), doneOn(v.now.plan, step.ID), v.sp.w.Number(float64(step.Sessions), 0)))
	}
	var rows [][]look.Cell
	for _, r := range v.now.plan.Reviews {
		if r.StepID == step.ID {
			rows = append(rows, v.sp.reviewCells(r))
		}
	}
	f.sessions.SetRows(rows)
	setVisible(f.sessions, len(rows) > 0)
	p := v.proposal()
	f.proposal.SetText(v.sp.proposalWords(p))
	for d, b := range f.decide {
		b.SetKind(field.Outline)
		if d == record.Decision(p.Decision) {
			b.SetKind(field.Primary)
		}
	}
	_, last := v.nextStep()
	enable(f.decide[record.DecisionNext], !last)
	enable(f.decide[record.DecisionBack], place > 1 || p.Decision == plan.Back)
	f.box.Refresh()
}

// nextStep is the place of the step after the one in force; last where there is
// none.
func (v *View) nextStep() (place int, last bool) {
	_, now, ok := consult.StepNow(v.now.plan)
	return now + 1, !ok || now >= len(v.now.plan.Steps)
}

// proposal is what the rule says of the sessions done.
func (v *View) proposal() plan.Proposal {
	usual := plan.Usual{}
	if u := v.file.athlete.UsualDrinking; u.Known() {
		usual = plan.Usual{Known: true, LH: *u.Value}
	}
	return plan.Review(consult.DoneOf(v.now.plan, v.now.plan.Target.Minutes.Or(0)), usual)
}

// proposalWords say what the rule proposes, and why: the reason names both.
func (sp speaker) proposalWords(p plan.Proposal) string {
	return sp.say("planner.proposal", sp.say(p.Reason))
}

// reviewCells are one session, or one decision, in the table.
func (sp speaker) reviewCells(r record.Review) []look.Cell {
	day := ""
	if at, ok := r.Date.Time(); ok {
		day = sp.w.Day(at)
	}
	if r.Decision != "" {
		text := sp.say("planner.decided", sp.say("planner.decide."+string(r.Decision)))
		if r.Note != "" {
			text += sp.say("planner.decided.why", r.Note)
		}
		return []look.Cell{{Text: day, Tone: look.Ink2}, {}, {}, {}, {Text: text, Style: look.Strong}}
	}
	note := r.Note
	if r.Heavier {
		note = sp.say("planner.done.heavier") + note
	}
	share, drunk, stomach := "", "", sp.say("planner.done.notasked")
	if r.DoneShare.Known() {
		share = sp.doneShare(*r.DoneShare.Value)
	}
	if r.Drunk.Known() {
		drunk = sp.sip(*r.Drunk.Value)
	}
	if r.Stomach.Known() {
		stomach = sp.w.Number(*r.Stomach.Value, 0)
	}
	return []look.Cell{{Text: day}, {Text: share}, {Text: drunk}, {Text: stomach}, {Text: note, Tone: look.Ink2}}
}

// doneShare writes how much of a plan was done. Where mass is hidden no per cent
// is on the screen.
func (sp speaker) doneShare(percent float64) string {
	if sp.by.Hidden {
		return sp.say("planner.tenths", sp.w.Number(percent/10, 0))
	}
	return sp.percent(percent, 0)
}

// keepReview keeps a session done; the plan stays agreed.
func (v *View) keepReview(r record.Review) {
	v.b.Pick("planner.done", func(s *sheet) {
		r.Order = len(s.Record.Reviews)
		s.Record.Reviews = append(s.Record.Reviews, r)
	})
}

// decided keeps what the practitioner decided: the decision, where the steps
// stand now, the day of the next review; and, when the next step is taken, what
// the stomach is used to by now, with the reason, in the athlete's profile.
func (v *View) decided(d record.Decision, why string, review record.Date, usual plan.Usual) {
	if !v.b.FlushNow() {
		return
	}
	ctx := context.Background()
	stood, _, _ := consult.StepNow(v.now.plan)
	p, err := v.desk.Store.LoadPlan(ctx, v.now.plan.ID)
	if err != nil {
		v.desk.Trouble(err)
		return
	}
	p.Reviews = append(p.Reviews, recordDecision(p, d, why, v.desk.Today()))
	decide(&p, d)
	if review != "" {
		p.Agreement.Review = review
	}
	kept, err := v.desk.Store.SavePlan(ctx, p, store.Edit{Why: why})
	if err != nil {
		v.desk.Trouble(err)
		return
	}
	if d == record.DecisionNext {
		v.raiseUsual(ctx, usual, why)
	}
	v.replace(kept)
	if o, ok := consult.InForce(kept); ok {
		v.chooseOption(o.ID)
	}
	if _, place, _ := consult.StepNow(kept); d == record.DecisionBack && place == 1 && v.firstStep(stood.ID) {
		v.desk.Say(v.sp.say("planner.decision.first"), v.sp.say("planner.correct"), v.askCorrection)
	}
}

// firstStep reports whether a step is the first of the plan.
func (v *View) firstStep(id record.ID) bool {
	return len(v.now.plan.Steps) > 0 && v.now.plan.Steps[0].ID == id
}

// raiseUsual writes what the stomach is used to into the profile; it rises only
// here.
func (v *View) raiseUsual(ctx context.Context, usual plan.Usual, why string) {
	before := v.file.athlete.UsualDrinking
	if !usual.Known || before.Known() && usual.LH <= *before.Value {
		return
	}
	a, err := v.desk.Store.LoadAthlete(ctx, v.file.athlete.ID)
	if err != nil {
		v.desk.Trouble(err)
		return
	}
	a.UsualDrinking = record.Num(quantity.Round(usual.LH, 2), quantity.LitrePerHour)
	kept, err := v.desk.Store.SaveAthlete(ctx, a, store.Edit{Why: why})
	if err != nil {
		v.desk.Trouble(err)
		return
	}
	v.file.athlete = kept
}

// replace shows the plan as the store has kept it; it is no step back.
func (v *View) replace(p record.Plan) {
	s := v.b.Doc.Now()
	v.b.Doc.Replace(bind.Sheet[record.Plan]{Record: p, Raw: s.Raw, Reasons: s.Reasons})
	for i := range v.file.plans {
		if v.file.plans[i].ID == p.ID {
			v.file.plans[i] = p
		}
	}
	v.reopen(p)
}

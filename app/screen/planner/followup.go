package planner

import (
	"fyne.io/fyne/v2"

	"ebbwell/app/kit/bind"
	"ebbwell/app/kit/field"
	"ebbwell/app/kit/look"
	"ebbwell/internal/consult"
	"ebbwell/internal/plan"
	"ebbwell/internal/record"
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
	// back takes back the decision made last.
	back *field.Button
	box  *fyne.Container
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
	f.back = field.NewButton(h, "planner.takeback", say("planner.takeback"), field.Quiet, v.takeBack)
	row.Add(f.back)
	f.box = look.VBox(8, f.title, f.sessions, f.proposal, row)
	return f
}

// open shows the follow-up of an agreed plan.
func (f *followUp) open() {
	v := f.v
	look.ShowIf(f.box, v.now.plan.State == record.PlanAgreed)
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
			rows = append(rows, v.sp.reviewCells(r, v.decisionWord(r.StepID, r.Decision)))
		}
	}
	f.sessions.SetRows(rows)
	look.ShowIf(f.sessions, len(rows) > 0)
	f.openDecisions(step.ID, place)
	f.box.Refresh()
}

// openDecisions shows what the rule proposes and what can be decided on the step
// in force; its place is 0 where there is none.
func (f *followUp) openDecisions(step record.ID, place int) {
	v, p := f.v, f.v.proposal()
	done := consult.StepsDone(v.now.plan)
	words := v.sp.proposalWords(p)
	proposed := record.Decision(p.Decision)
	switch {
	case done && p.Decision == plan.Back:
		words = sentences(v.sp.say("planner.follow.done"), words)
	case done:
		words, proposed = v.sp.say("planner.follow.done"), ""
	}
	f.proposal.SetText(words)
	look.EnableIf(f.decide[record.DecisionNext], place > 0 && !done)
	look.EnableIf(f.decide[record.DecisionBack], place > 1 || p.Decision == plan.Back)
	for d, b := range f.decide {
		b.SetText(v.decisionWord(step, d))
		b.SetKind(field.Outline)
		if d == proposed && !b.Disabled() {
			b.SetKind(field.Primary)
		}
	}
	_, some := consult.ToTakeBack(v.now.plan)
	look.ShowIf(f.back, some)
}

// decisionWord is what a decision on a step is called: to go on from the last is
// to have done it. A session done is no decision and has no word.
func (v *View) decisionWord(step record.ID, d record.Decision) string {
	steps := v.now.plan.Steps
	switch {
	case d == "" || d == record.DecisionUndone:
		return ""
	case d == record.DecisionNext && len(steps) > 0 && steps[len(steps)-1].ID == step:
		return v.sp.say("planner.decide.last")
	}
	return v.sp.say("planner.decide." + string(d))
}

// proposal is what the rule says of the sessions done.
func (v *View) proposal() plan.Proposal {
	usual := plan.Usual{}
	if u := v.file.athlete.UsualDrinking; u.Known() {
		usual = plan.Usual{Known: true, LH: *u.Value}
	}
	return plan.Review(consult.DoneOf(v.now.plan, v.now.plan.Target.Minutes.Or(0)), usual, v.now.planCase.Planner.Session().Running)
}

// proposalWords say what the rule proposes, and why: the reason names both.
func (sp speaker) proposalWords(p plan.Proposal) string {
	return sp.say("planner.proposal", sp.say(p.Reason))
}

// reviewCells are one session, or one decision by its word, in the table.
func (sp speaker) reviewCells(r record.Review, word string) []look.Cell {
	day := ""
	if at, ok := r.Date.Time(); ok {
		day = sp.w.Day(at)
	}
	switch r.Decision {
	case "":
	case record.DecisionUndone:
		return []look.Cell{{Text: day, Tone: look.Ink2}, {}, {}, {}, {Text: r.Note, Style: look.Strong}}
	default:
		text := sp.say("planner.decided", word)
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
		drunk = sp.millilitres(*r.Drunk.Value)
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
		r.Order = consult.NextReview(s.Record)
		s.Record.Reviews = append(s.Record.Reviews, r)
	})
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

package review

import (
	"fyne.io/fyne/v2"

	"ebbwell/app/kit/field"
	"ebbwell/app/kit/look"
	"ebbwell/app/screen/planner/part"
	"ebbwell/app/screen/planner/state"
	"ebbwell/app/screen/planner/wording"
	"ebbwell/internal/consult"
	"ebbwell/internal/plan"
	"ebbwell/internal/record"
)

// FollowUp is what was done on the step in force, what the rule proposes, and
// what the practitioner decides.
type FollowUp struct {
	v        *part.Plan
	title    *look.Label
	sessions *look.Table
	Proposal *look.Paragraph
	record   *field.Button
	Decide   map[record.Decision]*field.Button
	// back takes back the decision made last.
	back *field.Button
	Box  *fyne.Container
}

// decisionsBeside is the width in px at 100 % text under which the decisions stand below
// the way to record a session: there they have room in the language with the longest words.
const decisionsBeside float32 = 700

// decisions lists what a review can decide, in the order of the buttons.
func decisions() []record.Decision {
	return []record.Decision{record.DecisionHold, record.DecisionNext, record.DecisionBack}
}

// New makes the follow-up of an open plan.
func New(v *part.Plan) *FollowUp {
	f := &FollowUp{v: v, title: look.NewLabel("", look.Strong, look.Ink), Proposal: look.NewParagraph("", look.Body, look.Ink)}
	h, say := v.Desk.Host, v.Speaker.Say
	f.sessions = look.NewTable("planner.done", []look.Column{
		{Title: say("planner.done.day"), Width: look.Fixed(110)},
		{Title: say("planner.done.share"), Width: look.Fixed(120), Right: true},
		{Title: say("planner.done.drunk"), Width: look.Fixed(100), Right: true},
		{Title: say("planner.done.stomach"), Width: look.Fixed(100), Right: true},
		{Title: say("planner.done.note"), Width: look.Share(1)},
	})
	f.record = field.NewButton(h, "planner.done.record", say("planner.done.record"), field.Outline, func() { AskSession(v) })
	f.Decide = map[record.Decision]*field.Button{}
	row := look.HBox(10)
	for _, d := range decisions() {
		f.Decide[d] = field.NewButton(h, "planner.decide."+string(d), say("planner.decide."+string(d)), field.Outline, func() { askDecision(v, d) })
		row.Add(f.Decide[d])
	}
	f.back = field.NewButton(h, "planner.takeback", say("planner.takeback"), field.Quiet, func() { takeBack(v) })
	row.Add(f.back)
	ways := look.NewPair(0.24, decisionsBeside, look.HBox(0, f.record), row)
	f.Box = look.VBox(8, f.title, f.sessions, f.Proposal, ways)
	return f
}

// Open shows the follow-up of an agreed plan.
func (f *FollowUp) Open() {
	v := f.v
	look.ShowIf(f.Box, v.Now.Plan.State == record.PlanAgreed)
	if !f.Box.Visible() {
		return
	}
	step, place, ok := consult.StepNow(v.Now.Plan)
	f.title.SetText(v.Speaker.Say("planner.follow.option"))
	if ok {
		f.title.SetText(v.Speaker.Say("planner.follow.step", v.Speaker.RungName(place-1, false), state.DoneOn(v.Now.Plan, step.ID), v.Speaker.Words.Number(float64(step.Sessions), 0)))
	}
	var rows [][]look.Cell
	for _, r := range v.Now.Plan.Reviews {
		if r.StepID == step.ID {
			rows = append(rows, reviewCells(v.Speaker, r, decisionWord(v, r.StepID, r.Decision)))
		}
	}
	f.sessions.SetRows(rows)
	look.ShowIf(f.sessions, len(rows) > 0)
	f.openDecisions(step.ID, place)
	f.Box.Refresh()
}

// openDecisions shows what the rule proposes and what can be decided on the step
// in force; its place is 0 where there is none.
func (f *FollowUp) openDecisions(step record.ID, place int) {
	v, p := f.v, Proposal(f.v)
	done := consult.StepsDone(v.Now.Plan)
	words := proposalWords(v.Speaker, p)
	proposed := record.Decision(p.Decision)
	switch {
	case done && p.Decision == plan.Back:
		words = wording.Sentences(v.Speaker.Say("planner.follow.done"), words)
	case done:
		words, proposed = v.Speaker.Say("planner.follow.done"), ""
	}
	f.Proposal.SetText(words)
	look.EnableIf(f.Decide[record.DecisionNext], place > 0 && !done)
	look.EnableIf(f.Decide[record.DecisionBack], place > 1 || p.Decision == plan.Back)
	for d, b := range f.Decide {
		b.SetText(decisionWord(v, step, d))
		b.SetKind(field.Outline)
		if d == proposed && !b.Disabled() {
			b.SetKind(field.Primary)
		}
	}
	_, some := consult.ToTakeBack(v.Now.Plan)
	look.ShowIf(f.back, some)
}

// decisionWord is what a decision on a step is called: to go on from the last is
// to have done it. A session done is no decision and has no word.
func decisionWord(v *part.Plan, step record.ID, d record.Decision) string {
	if code := decisionCode(v, step, d); code != "" {
		return v.Speaker.Say("planner.decide." + code)
	}
	return ""
}

// decisionWithin is [decisionWord] as it reads within a line.
func decisionWithin(v *part.Plan, step record.ID, d record.Decision) string {
	if code := decisionCode(v, step, d); code != "" {
		return v.Speaker.Say("planner.decide." + code + ".within")
	}
	return ""
}

// decisionCode ends the key of a decision on a step; empty for what is none.
func decisionCode(v *part.Plan, step record.ID, d record.Decision) string {
	steps := v.Now.Plan.Steps
	switch {
	case d == record.DecisionUndone:
		return ""
	case d == record.DecisionNext && len(steps) > 0 && steps[len(steps)-1].ID == step:
		return "last"
	}
	return string(d)
}

// Proposal is what the rule says of the sessions done.
func Proposal(v *part.Plan) plan.Proposal {
	usual := plan.Usual{}
	if u := v.File.Athlete.UsualDrinking; u.Known() {
		usual = plan.Usual{Known: true, LH: *u.Value}
	}
	return plan.Review(consult.DoneOf(v.Now.Plan, v.Now.Plan.Target.Minutes.Or(0)), usual, v.Now.PlanCase.Planner.Session().Running)
}

// proposalWords say what the rule proposes, and why: the reason names both.
func proposalWords(sp wording.Speaker, p plan.Proposal) string {
	return sp.Say("planner.proposal", sp.Say(p.Reason))
}

// reviewCells are one session, or one decision by its word, in the table.
func reviewCells(sp wording.Speaker, r record.Review, word string) []look.Cell {
	day := ""
	if at, ok := r.Date.Time(); ok {
		day = sp.Words.Day(at)
	}
	switch r.Decision {
	case "":
	case record.DecisionUndone:
		return []look.Cell{{Text: day, Tone: look.Ink2}, {}, {}, {}, {Text: r.Note, Style: look.Strong}}
	default:
		text := sp.Say("planner.decided", word)
		if r.Note != "" {
			text += sp.Say("planner.decided.why", r.Note)
		}
		return []look.Cell{{Text: day, Tone: look.Ink2}, {}, {}, {}, {Text: text, Style: look.Strong}}
	}
	note := r.Note
	if r.Heavier {
		note = sp.Say("planner.done.heavier") + note
	}
	share, drunk, stomach := "", "", sp.Say("planner.done.notasked")
	if r.DoneShare.Known() {
		share = sp.DoneShare(*r.DoneShare.Value)
	}
	if r.Drunk.Known() {
		drunk = sp.Millilitres(*r.Drunk.Value)
	}
	if r.Stomach.Known() {
		stomach = sp.Words.Number(*r.Stomach.Value, 0)
	}
	return []look.Cell{{Text: day}, {Text: share}, {Text: drunk}, {Text: stomach}, {Text: note, Tone: look.Ink2}}
}

// keepReview keeps a session done; the plan stays agreed.
func keepReview(v *part.Plan, r record.Review) {
	v.Binder.Pick("planner.done", func(s *part.Sheet) {
		r.Order = consult.NextReview(s.Record)
		s.Record.Reviews = append(s.Record.Reviews, r)
	})
}

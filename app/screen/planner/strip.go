package planner

import (
	"fyne.io/fyne/v2"

	"ebbwell/app/kit/desk"
	"ebbwell/app/kit/field"
	"ebbwell/app/kit/look"
	"ebbwell/app/screen/planner/state"
	"ebbwell/app/screen/planner/wording"
	"ebbwell/internal/consult"
	"ebbwell/internal/plan"
	"ebbwell/internal/record"
	"ebbwell/internal/words"
)

// strip stands above the panels: what session the plan is for, in which air, and
// what it is based on; the length that is looked at; which plan of the athlete's.
type strip struct {
	sp    wording.Speaker
	words *look.Paragraph
	// whole is all that is said, short where that takes more than a line.
	whole, short string
	rests        *field.Link
	length       *field.Toggle
	plans        *field.Choice
	// cautions opens all that speaks; it says the gravest in a word or two.
	cautions *field.Button
	box      *fyne.Container
}

// stripActions are what the strip tells.
type stripActions struct {
	rests    func()
	length   func(l plan.Length)
	open     func(id record.ID)
	cautions func()
}

// lengthKey is a length in keys and names.
func lengthKey(l plan.Length) string {
	return [plan.Lengths]string{"short", "expected", "long"}[l]
}

// newStrip makes the strip; session opens the session and its limits.
func newStrip(h *field.Host, sp wording.Speaker, do stripActions, session fyne.CanvasObject) *strip {
	s := &strip{sp: sp, words: look.NewParagraph("", look.Body, look.Ink2)}
	s.rests = field.NewLink(h, "planner.basis", sp.Say("planner.basis"), do.rests)
	var lengths []field.Option
	for l := plan.Short; l <= plan.Long; l++ {
		lengths = append(lengths, field.Option{Key: lengthKey(l), Text: sp.Say("planner.length." + lengthKey(l))})
	}
	s.length = field.NewToggle(h, "planner.length", lengths)
	s.length.OnChosen = func(key string) {
		for l := plan.Short; l <= plan.Long; l++ {
			if lengthKey(l) == key {
				do.length(l)
			}
		}
	}
	s.plans = field.NewChoice(h, "planner.plan", nil)
	s.plans.SetLeast(170)
	s.plans.OnChosen = func(key string) { do.open(record.ID(key)) }
	s.cautions = field.NewButton(h, "planner.cautions", "", field.Warning, do.cautions)
	look.ShowIf(s.cautions, false)
	right := look.HBox(10, s.cautions, s.length, s.plans, session)
	s.box = &fyne.Container{Layout: &stripLayout{s}, Objects: []fyne.CanvasObject{s.words, s.rests, right}}
	return s
}

// Open shows a case.
func (s *strip) Open(now state.State, plans []field.Option) {
	session, basis := words.AtStart(sessionWords(s.sp, now)), basedOn(s.sp, now.PlanCase.Basis)
	s.whole = session + airWords(s.sp, now.PlanCase, true) + basis
	s.short = session + airWords(s.sp, now.PlanCase, false) + basis
	s.words.SetText(s.whole)
	s.length.Choose(lengthKey(now.Length))
	m := now.PlanCase.Planner.Session().Minutes
	look.ShowIf(s.length, m[plan.Short] != m[plan.Expected] || m[plan.Long] != m[plan.Expected])
	s.plans.SetOptions(plans)
	s.plans.Choose(string(now.Plan.ID))
	look.ShowIf(s.plans, len(plans) > 1)
	s.box.Refresh()
}

// height is what the strip needs at a width.
func (s *strip) height(width float32) float32 {
	return stripLayout{s}.height(s.box.Objects, width)
}

// caution shows the gravest of what speaks in a word or two, and how many there are.
func (s *strip) caution(list []wording.Caution) {
	text := ""
	if len(list) > 0 {
		text = s.sp.Words.Say("planner.cautions", len(list), list[0].Short)
	}
	if text == s.cautions.Text() {
		return
	}
	s.cautions.SetText(text)
	look.ShowIf(s.cautions, text != "")
	s.box.Refresh()
}

// sessionWords say what is planned: "League match, 95 min".
func sessionWords(sp wording.Speaker, s state.State) string {
	minutes := s.PlanCase.Planner.Session().Minutes[s.Length]
	name := s.Plan.Target.SessionName
	if name == "" {
		name = desk.SportWord(sp.Words, s.Plan.Target.Sport)
	}
	return sp.Say("planner.session.words", name, sp.Words.Number(minutes, 0))
}

// airWords say the air the plan is for, with the sun or without it; empty where nothing
// is known.
func airWords(sp wording.Speaker, c consult.Case, sun bool) string {
	a := c.Basis.Air
	var parts []string
	if a.Temperature.Known() {
		parts = append(parts, sp.Warmth(*a.Temperature.Value))
	}
	if a.Humidity.Known() {
		parts = append(parts, sp.Say("planner.humidity", sp.Words.Number(*a.Humidity.Value, 0)))
	}
	if key := "sun." + string(a.Sun); sun && a.Sun != "" && sp.Words.Has(key) {
		word := sp.Say(key)
		if a.Sun != record.SunNone {
			word = sp.Say("planner.sun", word)
		}
		parts = append(parts, word)
	}
	if len(parts) == 0 {
		return ""
	}
	text := parts[0]
	for _, part := range parts[1:] {
		text += sp.Say("format.comma") + part
	}
	return sp.Say("planner.dot") + text
}

// basedOn says what the plan is based on, with the planned sweat rate.
func basedOn(sp wording.Speaker, b consult.Basis) string {
	words := sp.Say(b.Plan.Code)
	switch {
	case b.Plan.Kind == plan.Test && len(b.Tests) > 0:
		words = sp.Say(b.Plan.Code, sp.Words.ShortDay(consult.TestDay(b.Tests[0].Test)))
	case b.Plan.Kind == plan.Pool:
		words = sp.Say(b.Plan.Code, len(b.Tests))
	}
	return sp.Say("planner.dot") + words
}

package handout

import (
	"math"
	"strings"
	"time"

	"ebbwell/internal/evidence"
	"ebbwell/internal/handout/paper"
	"ebbwell/internal/quantity"
	"ebbwell/internal/words"
)

// Practise is what is new on the step in force, and when one goes on.
type Practise struct {
	// What to practise, as it was typed or as the step differs from the one
	// before; empty leaves it out.
	What string
	// From is its first day; zero where the plan has no steps.
	From time.Time
	// PerWeek is how often.
	PerWeek float64
	Rule    StepRule
}

// StepRule is when to go on, stay or go back, as [ebbwell/internal/plan.Review]
// reads the sessions that were done.
type StepRule struct {
	// Sessions to do before the next step.
	Sessions int
	// Next is the day from which the next step may begin; zero where there is
	// none, Last, or none is dated.
	Next time.Time
	// Last: no step follows.
	Last bool
}

// Say words the rule in short sentences, in the athlete's own person. Where body mass
// is hidden no per cent is written.
func (r StepRule) Say(w *words.Words, hidden bool) string {
	return strings.Join(r.sentences(w, hidden), " ")
}

func (r StepRule) sentences(w *words.Words, hidden bool) []string {
	n := func(x float64) string { return w.Number(x, 0) }
	sessions := n(max(float64(r.Sessions), evidence.StepSessionsLow))
	next := w.Say("handout.practise.rule", sessions)
	switch {
	case r.Last:
		next = w.Say("handout.practise.rule.last", sessions)
	case !r.Next.IsZero():
		next = w.Say("handout.practise.rule.dated", sessions, w.Day(r.Next))
	}
	share := n(evidence.StepDoneShare) + "\u00a0" + string(quantity.PerCent)
	if hidden {
		share = w.Say("handout.practise.rule.well.parts", n(evidence.StepDoneShare/10))
	}
	return []string{
		next,
		w.Say("handout.practise.rule.well", share, n(evidence.StepStomachGood)),
		w.Say("handout.practise.rule.back", n(evidence.StepStomachBad)),
	}
}

// practiseText says what, how often and from when; nothing without steps.
func (p *Press) practiseText(x Practise, am amounts) string {
	if x.From.IsZero() {
		return ""
	}
	from, week := p.say.Day(x.From), often(p.say, x.PerWeek)
	what := strings.TrimRight(strings.TrimSpace(am.typed(x.What)), ".")
	if what == "" {
		return p.say.Say("handout.practise.when.open", from, week)
	}
	return p.say.Say("handout.practise.when", from, week, what)
}

// stepRule is the rule over the whole width, below what is filled in for it.
func (p *Press) stepRule(x Practise, am amounts, width float64) []paper.Item {
	if x.From.IsZero() || p.lean >= leanest {
		return nil
	}
	return []paper.Item{{Block: p.faces.Paragraph(finePrint().In(paper.Black), x.Rule.Say(p.say, am.hidden), width), Gap: 1.2}}
}

// often words how many times a week.
func often(w *words.Words, perWeek float64) string {
	if math.Abs(perWeek-1) < 1e-9 {
		return w.Say("handout.practise.often.once")
	}
	return w.Say("handout.practise.often", w.Number(perWeek, decimals(perWeek)))
}

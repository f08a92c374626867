// Package letter writes a finding or a plan as plain text, for a letter to a colleague
// or for a clinic's own record: what has to be known first, the assessment, the problem
// in the athlete's own words, what was agreed, what will be checked, who wrote it and
// when.
//
// [Of] is pure: it takes what package consult worked out and words it with the same
// writer as the screens and pages, in the language of the practice's pages. It computes
// nothing. Where body mass is hidden it speaks of litres only, and texts that were typed
// lose what mass could be worked out of. What is an estimate is called one.
package letter

import (
	"strings"
	"time"

	"ebbwell/app/kit/amount"
	"ebbwell/internal/consult"
	"ebbwell/internal/handout"
	"ebbwell/internal/record"
)

// Input is what a letter is written of.
type Input struct {
	// Speaker words it: the language of the pages, the units of the practice.
	Speaker  amount.Speaker
	Practice record.Practice
	Athlete  record.Athlete
	// Test is the test it tells of; nil where it is of a plan without one.
	Test *consult.Findings
	// Plan is the plan it tells of; nil where there is none.
	Plan *consult.Case
	// Lost: there is an agreed plan that cannot be opened.
	Lost bool
	// At is when it is written, in the practice's zone.
	At time.Time
}

// Section is a part of a letter under its title.
type Section struct {
	Title string
	Lines []string
}

// Letter is a text in parts.
type Letter struct {
	// Title is whom it is of.
	Title string
	Parts []Section
}

// Text is the letter as it is copied or kept: each part under its title, a line for
// each thing said.
func (l Letter) Text() string {
	var b strings.Builder
	b.WriteString(l.Title + "\n")
	for _, p := range l.Parts {
		b.WriteString("\n" + p.Title + "\n")
		for _, line := range p.Lines {
			b.WriteString(line + "\n")
		}
	}
	return strings.ReplaceAll(b.String(), "\u00a0", " ")
}

// writer writes the parts of one letter.
type writer struct {
	amount.Speaker
	in Input
}

// Of writes the letter.
func Of(in Input) Letter {
	w := writer{in.Speaker, in}
	w.By.Hidden = w.By.Hidden || w.hidden()
	l := Letter{Title: w.title()}
	for _, p := range []Section{
		{w.Say("letter.known"), w.known()},
		{w.Say("letter.assessment"), w.assessment()},
		{w.Say("letter.own"), w.own()},
		{w.Say("letter.agreed"), w.agreed()},
		{w.Say("letter.checked"), w.checked()},
		{w.Say("letter.signed"), w.signed()},
	} {
		if len(p.Lines) > 0 {
			l.Parts = append(l.Parts, p)
		}
	}
	return l
}

// hidden reports whether body mass was hidden on the day of the test or for the plan.
func (w writer) hidden() bool {
	return w.in.Test != nil && w.in.Test.Care.MassHidden || w.in.Plan != nil && w.in.Plan.Care.MassHidden
}

// title is the athlete, with the day of birth.
func (w writer) title() string {
	if born, ok := w.in.Athlete.Born.Time(); ok {
		return w.Say("letter.title.born", w.in.Athlete.Name, w.Words.Date(born))
	}
	return w.in.Athlete.Name
}

// typed is a text that a person typed, in quotes.
func (w writer) typed(text string) string {
	if w.By.Hidden {
		text = handout.Concealed(text, w.Words)
	}
	return w.Say("letter.quoted", strings.TrimSpace(text))
}

// own is the problem in the athlete's own words.
func (w writer) own() []string {
	var list []string
	if w.in.Plan != nil {
		if text := w.in.Plan.Plan.Agreement.Words; strings.TrimSpace(text) != "" {
			list = append(list, w.typed(text))
		}
	}
	if w.in.Test != nil && w.in.Test.Test.Loss.Guess.Known() {
		list = append(list, w.Say("letter.guess", w.By.Amount(*w.in.Test.Test.Loss.Guess.Value, "L")))
	}
	if len(list) == 0 {
		list = append(list, w.Say("letter.own.none"))
	}
	return list
}

// signed is who wrote it, and when.
func (w writer) signed() []string {
	p := w.in.Practice
	who := w.Words.Commas(nonEmpty(p.Practitioner, p.Registration, p.Name))
	if who == "" {
		who = w.Say("letter.unnamed")
	}
	return []string{
		who,
		w.Say("letter.written", w.Words.Date(w.in.At), w.Words.Clock(w.in.At)),
		w.Say("handout.safety.education"),
	}
}

// nonEmpty are the texts with something in them.
func nonEmpty(list ...string) []string {
	var out []string
	for _, s := range list {
		if s = strings.TrimSpace(s); s != "" {
			out = append(out, s)
		}
	}
	return out
}

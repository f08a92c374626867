package testsheet

import (
	"strings"

	"ebbwell/app/kit/amount"
	"ebbwell/app/kit/desk"
	"ebbwell/internal/consult"
	"ebbwell/internal/evidence"
	"ebbwell/internal/quantity"
	"ebbwell/internal/record"
	"ebbwell/internal/words"
)

// speaker says what is wrong with a sheet.
type speaker struct{ amount.Speaker }

// speaker is who speaks on this sheet.
func (v *View) speaker() speaker {
	return speaker{amount.Speaker{Words: v.desk.Words, By: v.by, Today: v.desk.Now()}}
}

// trouble says a trouble: a short sentence and what to do about it.
func (sp speaker) trouble(t record.Test, w trouble) (title, sentence string) {
	say := sp.Say
	switch w.code {
	case codeEndsBefore:
		return say("testsheet.trouble.end.title"), say("testsheet.trouble.end", string(t.Session.Start), string(t.Session.End))
	case codeUnreadable:
		return say("testsheet.trouble.unreadable.title", words.AtStart(sp.name(t, w)), shorten(w.text, 40)), say("testsheet.trouble.unreadable")
	case codeKept:
		return say("testsheet.trouble.kept.title", words.AtStart(sp.problemName(w.problem))), say("testsheet.trouble.kept", shorten(w.text, 160))
	}
	if sp.By.Hidden && desk.TellsMass(w.problem.Field) {
		return say("testsheet.trouble.hidden.title", words.AtStart(sp.problemName(w.problem))), say("testsheet.trouble.hidden")
	}
	text := words.AtStart(desk.ProblemSentence(sp.Words, w.problem))
	title, sentence, _ = strings.Cut(text, ". ")
	if sentence != "" {
		title += "."
	}
	if w.problem.Field == evidence.BottleMass && w.problem.Code == evidence.CodeOrder {
		sentence = strings.TrimSpace(sp.bottleWeighings(t, w.problem.Item) + " " + sentence)
	}
	return title, sentence
}

// bottleWeighings tells the two weighings of a bottle.
func (sp speaker) bottleWeighings(t record.Test, item int) string {
	b := bottleAt(&t, item-1, false)
	if b == nil {
		return ""
	}
	before, after := sp.By.Amount(b.Before.Or(0), quantity.Gram), sp.By.Amount(b.After.Or(0), quantity.Gram)
	if b.Poured.Or(0) > 0 {
		return sp.Words.Say("testsheet.trouble.bottle.poured", before, after, sp.By.Amount(*b.Poured.Value, quantity.Gram))
	}
	return sp.Words.Say("testsheet.trouble.bottle", before, after)
}

// name is the word for the field of a trouble.
func (sp speaker) name(t record.Test, w trouble) string {
	for _, e := range consult.Entries(t) {
		if e.Path == w.path {
			return desk.FieldName(sp.Words, e.Field, e.Item)
		}
	}
	if f, ok := record.SheetFieldOf(w.path); ok && f.Unit != "" { // a number that no problem is about
		return sp.Words.Say(f.Words())
	}
	last := w.path[strings.LastIndex(w.path, ".")+1:]
	return sp.Words.Say("testsheet.named." + last)
}

// problemName is the word for what a problem is about.
func (sp speaker) problemName(p evidence.Problem) string {
	if sp.By.Hidden && p.Field == evidence.MassChange {
		return sp.Words.Say("testsheet.trouble.hidden.change")
	}
	return desk.FieldName(sp.Words, p.Field, p.Item)
}

// shorten cuts a text a person typed to so many runes.
func shorten(text string, most int) string {
	runes := []rune(text)
	if len(runes) <= most {
		return text
	}
	return string(runes[:most-1]) + "…"
}

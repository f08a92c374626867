package handout

import (
	"slices"

	"ebbwell/internal/care"
	"ebbwell/internal/evidence"
	"ebbwell/internal/handout/paper"
	"ebbwell/internal/words"
)

// RedFlagGroup is a list of the sentences of red flags and emergencies that are
// shown in one place.
type RedFlagGroup struct {
	Title     string
	Sentences []string
}

// RedFlagBlank stands in a sentence of [RedFlagWords] for what a test puts in: an
// amount, a name, symptoms.
const RedFlagBlank = "[…]"

// RedFlagWords lists every sentence of red flags and emergencies that the program
// shows or prints, for a clinician to read and sign before it is used in a practice.
func RedFlagWords(w *words.Words, emergency string) []RedFlagGroup {
	pages := RedFlagGroup{Title: w.Say("redflags.pages"), Sentences: SafetySentences(w, emergency)}
	over := RedFlagGroup{Title: w.Say("redflags.over"), Sentences: saidPlainly(w, "handout.over.gain", "handout.over.limit", "handout.caution.sodium", "handout.caution.near")}
	profile := RedFlagGroup{Title: w.Say("redflags.profile")}
	for _, e := range care.Effects() {
		profile.Sentences = append(profile.Sentences, w.Say("flag."+string(e.Kind)+".page"))
	}
	return []RedFlagGroup{pages, {Title: w.Say("redflags.gain"), Sentences: gainSentences(w, emergency)}, over, profile}
}

// saidPlainly are texts into which nothing is put.
func saidPlainly(w *words.Words, keys ...string) []string {
	var list []string
	for _, key := range keys {
		list = append(list, w.Say(key))
	}
	return list
}

// gainSentences are those of a gain in mass, of symptoms and of more drunk than lost: in
// the alerts, on the sheet, in the row of a squad, in the overview and in the letter.
func gainSentences(w *words.Words, emergency string) []string {
	const some = RedFlagBlank
	call, now, anyYes, row := w.Say("gain.number.unset"), w.Say("safety.title.call.unset"), w.Say("safety.any.unset"), w.Say("squad.flag.call.unset")
	if emergency != "" {
		call, now, anyYes, row = w.Say("gain.number", emergency), w.Say("safety.title.call", emergency), w.Say("safety.any", emergency), w.Say("squad.flag.call", emergency)
	}
	alert := []string{w.Say("gain.emergency", call), w.Say("flag.gained", some), w.Say("gain.risks", some)}
	sheet := []string{
		now, anyYes, w.Say("safety.title.symptom", some), w.Say("safety.title.both", some), w.Say("safety.title.told", some, some),
		w.Say("safety.title.nobody", some), w.Say("safety.why.risks", some), w.Say("safety.note.ask", w.Number(evidence.AskAgain, 0)),
	}
	squad := []string{row, w.Say("squad.flag.symptom", some), w.Say("squad.flag.both", some, some), w.Say("squad.flag.both.hidden", some), w.Say("squad.flag.heavier", some), w.Say("squad.flag.risks", some), w.Say("squad.flag.emergency", row)}
	drank := []string{w.Say("letter.gain", some), w.Say("flag.drank-more", some), w.Say("flag.drank-near", some)}
	return slices.Concat(
		saidPlainly(w, "gain.red.title", "gain.again.title"), alert, saidPlainly(w, "gain.red", "gain.again", "gain.heavier.hidden"),
		sheet, saidPlainly(w, "safety.title.heavier", "safety.call", "safety.why", "safety.why.symptom", "safety.why.again",
			"safety.item.stop", "safety.note.stop", "safety.item.medic", "safety.note.medic", "safety.item.stay", "safety.note.stay",
			"safety.item.ask", "safety.item.weigh", "safety.note.weigh"),
		squad, saidPlainly(w, "squad.flag.heavier.hidden", "squad.flag.ask", "squad.flag.mouth", "squad.flag.cool"),
		drank, saidPlainly(w, "letter.gain.hidden", "overview.red.gained", "overview.red.drank-more", "overview.red.drank-near", "findings.drank-near"))
}

// RedFlagPage lays that list out with lines to sign.
func (p *Press) RedFlagPage(t Terms) paper.Document {
	pages := p.pour(func(p *Press) (paper.Frame, []paper.Item) {
		fr := p.frame(t, head{title: p.say.Say("redflags.title"), under: p.say.Say("redflags.under")})
		w := fr.Inner()
		var items []paper.Item
		for _, g := range RedFlagWords(p.say, t.Practice.Emergency) {
			items = append(items, p.section(g.Title, w))
			for _, s := range g.Sentences {
				items = append(items, paper.Item{Block: p.tick(s, w)})
			}
		}
		items = append(items, paper.Item{Block: p.blank(p.say.Say("redflags.clinician"), 90), Gap: 4, Keep: true},
			paper.Item{Block: p.blank(p.say.Say("redflags.signed"), 90), Gap: 2})
		return fr, items
	})
	return p.document(t, p.say.Say("redflags.title"), p.say.Say("redflags.title"), pages)
}

package handout

import (
	"ebbwell/internal/care"
	"ebbwell/internal/handout/paper"
	"ebbwell/internal/words"
)

// RedFlagGroup is a list of the sentences of red flags and emergencies that are
// shown in one place.
type RedFlagGroup struct {
	Title     string
	Sentences []string
}

// RedFlagWords lists every sentence of red flags and emergencies that the program
// shows or prints, for a clinician to read and sign before it is used in a practice.
func RedFlagWords(w *words.Words, emergency string) []RedFlagGroup {
	texts := func(keys ...string) []string {
		var list []string
		for _, key := range keys {
			list = append(list, w.Say(key))
		}
		return list
	}
	call := w.Say("gain.number.unset")
	if emergency != "" {
		call = w.Say("gain.number", emergency)
	}
	pages := RedFlagGroup{Title: w.Say("redflags.pages"), Sentences: SafetySentences(w, emergency)}
	gain := RedFlagGroup{Title: w.Say("redflags.gain"), Sentences: append([]string{w.Say("gain.emergency", call)}, texts("gain.red", "gain.again")...)}
	over := RedFlagGroup{Title: w.Say("redflags.over"), Sentences: texts("handout.over.gain", "handout.over.limit", "handout.caution.sodium", "handout.caution.near")}
	profile := RedFlagGroup{Title: w.Say("redflags.profile")}
	for _, e := range care.Effects() {
		profile.Sentences = append(profile.Sentences, w.Say("flag."+string(e.Kind)+".page"))
	}
	return []RedFlagGroup{pages, gain, over, profile}
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

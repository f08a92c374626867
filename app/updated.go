package app

import (
	"ebbwell/app/kit/field"
	"ebbwell/app/kit/look"
	"ebbwell/assets"
)

// seenVersion is the preference that holds the version that ran here last.
const seenVersion = "version"

// sayUpdated tells, once, that another version runs than last time, and offers
// the list of changes. The first version on a computer is no news.
func (s *Shell) sayUpdated() {
	kept := s.app.Preferences()
	before := kept.String(seenVersion)
	if before == assets.Version {
		return
	}
	kept.SetString(seenVersion, assets.Version)
	if before == "" {
		return
	}
	say := s.words.Say
	s.program.desk.Say(say("program.updated", assets.Version, before), say("practice.about.changes"), s.showChanges)
}

// showChanges shows the list of changes.
func (s *Shell) showChanges() {
	s.program.desk.Host.Ask(s.window.Canvas(), field.Question{
		Name: "practice.changes", Title: s.words.Say("practice.about.changes.title"),
		Content: look.NewParagraph(assets.Changes(), look.Note, look.Ink), Width: changesWidth,
		Actions: []field.Action{{Name: "close", Text: s.words.Say("field.strip.close"), Kind: field.Primary}},
	})
}

// changesWidth is the width of the dialog with the list of changes.
const changesWidth = 680

package app

import (
	"ebbwell/app/screen/practice"
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
	say, d := s.words.Say, s.program.desk
	d.Say(say("program.updated", assets.Version, before), say("practice.about.changes"), func() { practice.ShowChanges(d.Host, s.window.Canvas()) })
}

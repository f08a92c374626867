package desk

import (
	"ebbwell/app/kit/amount"
	"ebbwell/internal/care"
	"ebbwell/internal/record"
)

// US reports whether the practice uses pounds, fluid ounces and degrees
// Fahrenheit.
func (d *Desk) US() bool { return d.Practice().Settings.Units == "us" }

// Speaker words what is shown on the practice's screens; hidden keeps it to what
// tells nothing of body mass.
func (d *Desk) Speaker(hidden bool) amount.Speaker {
	return amount.Speaker{Words: d.Words, By: amount.Writer{Words: d.Words, US: d.US(), Hidden: hidden}, Today: d.Now()}
}

// SpeakerFor is the speaker for what is shown of an athlete.
func (d *Desk) SpeakerFor(a record.Athlete) amount.Speaker {
	return d.Speaker(care.MassHidden(a, d.Now()))
}

package apptest

import (
	"strings"

	"ebbwell/internal/record"
)

// LongNamed is an athlete with names of sixty letters and long texts everywhere, who is
// not kept yet.
func LongNamed() record.Athlete {
	meta := func() record.Meta { return record.Meta{ID: record.NewID()} }
	long := strings.Repeat("Anneliese-Wilhelmina ", 3)
	return record.Athlete{
		Meta: meta(), Name: long, Born: "1988-09-30", Sport: "a sport of many words that nobody has put into a table yet", Position: strings.Repeat("left wing and ", 5),
		Note: strings.Repeat("What was said takes more than a line. ", 6),
		Flags: []record.Flag{
			{Meta: meta(), Kind: record.FlagKidney, Note: strings.Repeat("since childhood ", 6), Physician: "Dr " + long}, {Meta: meta(), Kind: record.FlagSickleCell},
		},
		Consents: []record.Consent{{Meta: meta(), Purpose: record.ConsentCoach, Given: "2025-09-30", Until: "2026-05-30", GivenBy: "for " + long}},
	}
}

// Newcomer is an athlete with a name, a birth date and a sport, who is not kept yet.
func Newcomer(name string, born record.Date, sport string) record.Athlete {
	return record.Athlete{Meta: record.Meta{ID: record.NewID()}, Name: name, Born: born, Sport: sport}
}

// Package evidence holds every published threshold the program uses: its
// number, unit, range of validity, citation, and how sure its reading is.
// No other package types a threshold again.
//
// A threshold is an exported constant, so that a formula reads like its
// source, and an [Entry] beside it that says where it comes from. A test
// fails when a constant has no entry.
package evidence

import (
	"slices"
	"sync"

	"ebbwell/internal/quantity"
)

// Version changes whenever a threshold or a formula changes; it is kept with
// every closed test and agreed plan. A test holds it to a digest of all entries.
const Version = "2026.10"

// Sureness tells how a value was read.
type Sureness string

// How sure a line is.
const (
	// Read: in the source itself or its abstract.
	Read Sureness = "R"
	// Second: in a second text that quotes the source.
	Second Sureness = "S"
	// Memory: from memory, not read again.
	Memory Sureness = "M"
	// Derived: worked out from other entries.
	Derived Sureness = "D"
	// Proposal: this program's own proposal.
	Proposal Sureness = "P"
	// Practice: common practice, no source.
	Practice Sureness = "C"
)

// Citation names a published source, or what stands where there is none.
type Citation struct {
	// Code is set for what is no publication: it is said in the window's language, by
	// the catalogue's texts under "citation."+Code.
	Code string
	// Short is how it stands beside a figure: "Baker et al. 2016".
	Short string
	// Full is the reference: journal, volume, first page.
	Full string
}

// Title is the reference in full: a publication's as it is printed, else in the words
// of say.
func (c Citation) Title(say func(key string, args ...any) string) string {
	if c.Code == "" {
		return c.Full
	}
	return say("citation." + c.Code)
}

// Name is what stands beside a figure, in the words of say where it is no publication.
func (c Citation) Name(say func(key string, args ...any) string) string {
	if c.Code == "" {
		return c.Short
	}
	return say("citation." + c.Code + ".short")
}

// Entry is one threshold or coefficient.
type Entry struct {
	// ID is stable; the catalogue of texts has its meaning under "evidence."+ID.
	ID    string
	Value float64
	Unit  quantity.Unit
	// Valid is the range of the quantity it was established over; both ends
	// zero when the source gives none.
	Valid  quantity.Range
	Source Citation
	Sure   Sureness
}

// Key is the entry's text in the catalogue: what it is, in words.
func (e Entry) Key() string { return "evidence." + e.ID }

// All lists every entry, in the order of the settings screen.
func All() []Entry {
	return slices.Concat(
		limitEntries(),
		uncertaintyEntries(),
		hydrationEntries(),
		sodiumEntries(),
		markerEntries(),
		groupEntries(),
		overdrinkingEntries(),
		drinkingEntries(),
		fuelEntries(),
		scheduleEntries(),
		climateEntries(),
		intakeEntries(),
		proposalEntries(),
		fieldEntries(),
		deviceEntries(),
	)
}

// byID finds entries, made once: every why asks for some of them.
var byID = sync.OnceValue(func() map[string]Entry { //nolint:gochecknoglobals // a table that never changes
	table := map[string]Entry{}
	for _, e := range All() {
		if _, there := table[e.ID]; !there {
			table[e.ID] = e
		}
	}
	return table
})

// Find returns the entry with an id.
func Find(id string) (Entry, bool) {
	e, ok := byID()[id]
	return e, ok
}

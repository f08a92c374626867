// Package handout makes what leaves the room on paper: the athlete's page, the
// card for the kit bag, the blank test sheet, the report of a test, and the
// page of a trip with its packing list.
//
// Each page is a plain struct that says what is to be told; nothing here
// computes a sweat rate or reads a database. A [Press] turns it into a
// [paper.Document] in one language on one size of sheet, which can then be
// written as a PDF or drawn as a picture, both from the same marks.
//
// The pages are for people who will act on them alone, so some things are not
// left to the caller. Every side of every page carries the safety sentences of
// [SafetySentences]; the report, which is for the file, carries them once. An
// estimate is called one and stands with its range. When [Terms.MassHidden] is
// set the page speaks of litres only: kilograms, per cent of body mass, amounts
// per kilogram and energy are left out, and texts that were typed by a person
// lose them visibly. Advice to add salt is left out when it is withheld. A plan
// or test in which more was taken in than lost says so in words.
package handout

import (
	"ebbwell/internal/handout/paper"
	"ebbwell/internal/words"
)

// Press prints pages in one language on one size of sheet. It is not safe for
// use by two goroutines at once; make one for each.
type Press struct {
	faces *paper.Faces
	say   *words.Words
	size  paper.Size
	// tight sets lines and rows closer: 0, 1 or 2. low is how low the rows of the
	// breaks are, an index of [rowForms]; past them they stand in two columns, in one
	// of [cellForms]. lean and gather are those of a [way].
	tight, low, lean, gather int
	// concealed are typed texts as they stand where mass is hidden: a long
	// note is searched once, not for each side.
	concealed map[string]string
	// used is the way the last pages were set in.
	used *way
	// lacks says that letters of the page cannot be printed; see [Press.telling].
	lacks bool
}

// NewPress makes a press. It returns an error when the embedded typeface
// cannot be read.
func NewPress(w *words.Words, size paper.Size) (*Press, error) {
	f, err := paper.Load()
	if err != nil {
		return nil, err
	}
	return &Press{faces: f, say: w, size: size, concealed: map[string]string{}, used: &way{}}, nil
}

// Practice is the house that hands the page out.
type Practice struct {
	Name, Practitioner, Registration, Telephone string
	// Emergency is the number to call; empty where none was set.
	Emergency string
}

// Terms are what the pages of one athlete share.
type Terms struct {
	Practice Practice
	// USUnits writes fluid ounces and degrees Fahrenheit.
	USUnits bool
	// MassHidden keeps from the page all that body mass can be worked out of.
	MassHidden bool
	// SaltWithheld: no advice to add salt (kidney, heart, blood pressure).
	SaltWithheld bool
	// Cautions are sentences that follow from the athlete's profile, the heat
	// or the guards of the plan, already worded in the page's language.
	Cautions []string
}

// Substance is what a part of a bar, a column or a bottle holds.
type Substance uint8

// The substances.
const (
	Water Substance = iota
	Drink
	Food
)

// ink is the hue of a substance.
func (s Substance) ink() paper.Ink {
	switch s {
	case Drink:
		return paper.Drink
	case Food:
		return paper.Food
	}
	return paper.Water
}

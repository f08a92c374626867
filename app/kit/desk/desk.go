// Package desk is what every screen has at hand: the records, the texts, the
// saving, the clock, what there is to drink and eat, and the way to another
// screen. A screen is handed a [Desk] and what it shows; it asks nothing else
// of the program.
//
// A record that is being edited is a [Document]: it keeps its steps back and
// hands its saving over while one types.
package desk

import (
	"context"
	"time"

	"golang.org/x/text/language"

	"ebbwell/app/kit/field"
	"ebbwell/app/kit/sound"
	"ebbwell/internal/climate"
	"ebbwell/internal/consult"
	"ebbwell/internal/fuel"
	"ebbwell/internal/handout/paper"
	"ebbwell/internal/record"
	"ebbwell/internal/store"
	"ebbwell/internal/words"
)

// Screen names a screen.
type Screen string

// The screens. The first five stand on the rail; the next four are the tabs of
// an athlete.
const (
	Athletes Screen = "athletes"
	TestDay  Screen = "test-day"
	Trips    Screen = "trips"
	Pantry   Screen = "pantry"
	Practice Screen = "practice"

	Overview Screen = "overview"
	Tests    Screen = "tests"
	Plan     Screen = "plan"
	Handout  Screen = "handout"

	Profile Screen = "profile"
	Trip    Screen = "trip"
	// Give is where records are given to an athlete or a coach: of the athlete the
	// place names, or of a group.
	Give Screen = "give"
	// Import is where a file of tests, athletes or results is read; Part of its place is
	// a file to begin with, Record an import to look at.
	Import Screen = "import"
	// Colleague is where what another practice sent is taken in.
	Colleague Screen = "colleague"
)

// The parts of a profile that a place can name.
const (
	PartMinor    = "minor"
	PartFlags    = "flags"
	PartConsents = "consents"
)

// The parts of a test day that a place can name: the list of single sheets, the
// findings of the group.
const (
	PartSheets = "sheets"
	PartGroup  = "group"
)

// PartColleague is the part of the screen that gives records where they go to a
// colleague.
const PartColleague = "colleague"

// PartRecords is the part of the practice with copies, backups and exports.
const PartRecords = "records"

// Place is a screen and what it shows.
type Place struct {
	Screen  Screen
	Athlete record.ID
	// Record is the test, plan or trip shown; empty for the newest.
	Record record.ID
	// Part is a part of the screen ("bottles", "findings"); empty for the first.
	Part string
	// New asks the screen to begin a new record.
	New bool
}

// Desk is what a screen has at hand.
type Desk struct {
	Store *store.Store
	Words *words.Words
	// Languages are those that can be chosen, for the window and for pages.
	Languages []language.Tag
	Host      *field.Host
	Keep      Saver
	Now       func() time.Time
	Beside    Runner
	// Go opens another screen; everything is saved first.
	Go func(Place)
	// HeadChanged draws the head of the window anew.
	HeadChanged func()
	// SettingsChanged draws the window in the practice's settings as they are now.
	SettingsChanged func()
	// Say shows a sentence at the foot of the window, with an action that may
	// be empty.
	Say func(sentence, action string, do func())
	// Unsay takes a sentence away again, if it still stands there.
	Unsay func(sentence string)

	// HandedOut is told that a page was saved or printed.
	HandedOut func()
	// Tour begins the tour of the invented practice; nil where there is none.
	Tour func()

	// Later runs something on the window's thread once a time has passed, for what
	// shows the clock; the function returned takes it back. Nil where no clock goes.
	Later func(wait time.Duration, do func()) (stop func())
	// Bell rings at reminders; one that is silent where nothing plays.
	Bell *sound.Bell
	// Round is the group an athlete was opened from, in its order: the keys that go to
	// the next athlete follow it.
	Round []record.ID

	// offered is the sentence of the last offer; see [Desk.Offer].
	offered string
	// faces tell what can be printed; see [Desk.Unprintable].
	faces *paper.Faces

	activities climate.Activities
	generic    *fuel.Catalogue
	pantry     *consult.Pantry
	practice   *record.Practice
	starts     map[string]learnt
	past       past
	order      order
}

// Saver keeps what is handed over; see package keep.
type Saver interface {
	Keeper
	// Flush writes everything that was handed over.
	Flush(ctx context.Context) error
}

// New makes a desk with the generic catalogue; the fields are the caller's to
// fill.
func New(s *store.Store, w *words.Words, now func() time.Time) (*Desk, error) {
	generic, err := fuel.Generic()
	if err != nil {
		return nil, err
	}
	activities, err := climate.LoadActivities()
	if err != nil {
		return nil, err
	}
	return &Desk{
		activities: activities.Named(w.Activity), Store: s, Words: w, Now: now, Host: field.NewHost(w), Beside: Inline{}, generic: generic.Named(w.Food, w.Portion),
		Go: func(Place) {}, HeadChanged: func() {}, SettingsChanged: func() {}, Say: func(string, string, func()) {}, Unsay: func(string) {},
		HandedOut: func() {}, Languages: words.Languages(), Bell: sound.Silent(),
	}, nil
}

// Offer says what has just been done on a screen and offers to take that step
// back. The offer holds for this step only; see [Desk.Withdraw].
func (d *Desk) Offer(sentence, action string, do func()) {
	d.Say(sentence, action, do)
	d.offered = sentence
}

// Withdraw takes back an offer that holds no more, since another step followed
// or the screen is left: it would undo something else.
func (d *Desk) Withdraw() {
	if d.offered != "" {
		d.Unsay(d.offered)
		d.offered = ""
	}
}

// Products is what there is to drink and eat; see [Desk.ProductsChanged].
func (d *Desk) Products() *consult.Pantry {
	if d.pantry == nil {
		own, err := d.Store.Products(context.Background())
		if err != nil {
			d.Trouble(err)
		}
		d.pantry = consult.NewPantry(d.generic, own)
	}
	return d.pantry
}

// ProductsChanged makes the next look into the pantry a fresh one.
func (d *Desk) ProductsChanged() { d.pantry = nil }

// Practice is the practice; a fresh one, not yet kept, before there is one.
func (d *Desk) Practice() record.Practice {
	if d.practice == nil {
		p, err := d.Store.Practice(context.Background())
		if err != nil && store.CodeOf(err) != store.CodeNotFound {
			d.Trouble(err)
		}
		d.practice = &p
	}
	return *d.practice
}

// PracticeChanged makes the next look at the practice a fresh one.
func (d *Desk) PracticeChanged() { d.practice = nil }

// Calculate is what package consult needs besides the records.
func (d *Desk) Calculate() consult.Setup {
	return consult.Setup{Pantry: d.Products(), Settings: d.Practice().Settings, Activities: d.activities, Start: d.startOf, Zone: d.Now().Location()}
}

// CalculateWith is [Desk.Calculate] with products that are not kept yet.
func (d *Desk) CalculateWith(more []record.Product) consult.Setup {
	s := d.Calculate()
	own, err := d.Store.Products(context.Background())
	if err != nil {
		d.Trouble(err)
	}
	s.Pantry = consult.NewPantry(d.generic, append(own, more...))
	return s
}

// Today is the present day.
func (d *Desk) Today() record.Date { return record.DateOf(d.Now()) }

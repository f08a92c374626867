package sound

import (
	"context"
	"slices"
	"time"
)

// Memory keeps the settings of this computer; those of the toolkit are one.
type Memory interface {
	Bool(key string) bool
	SetBool(key string, value bool)
	StringList(key string) []string
	SetStringList(key string, value []string)
}

// Run runs work beside the window's thread and calls done on it; see desk.Runner.
type Run func(work func(ctx context.Context) error, done func(error)) (stop func())

// The names under which a bell is kept, and how many reminders it remembers: more than
// fall due on a day with two groups of forty.
const (
	keyOn     = "sound.on"
	keyGiven  = "sound.given"
	mostGiven = 400
	closesIn  = time.Second
)

// Bell rings at reminders. It belongs to the window's thread.
type Bell struct {
	player Player
	memory Memory
	beside Run
	// stop stops the tone that plays; ended is closed once it has.
	stop   func()
	ended  chan struct{}
	closed bool
}

// NewBell makes a bell that plays with a player; nil is none.
func NewBell(p Player, m Memory, beside Run) *Bell {
	if p == nil {
		p = none{}
	}
	return &Bell{player: p, memory: m, beside: beside, stop: func() {}}
}

// On reports whether it rings.
func (b *Bell) On() bool { return b.memory.Bool(keyOn) }

// Switch turns it on or off.
func (b *Bell) Switch(on bool) { b.memory.SetBool(keyOn, on) }

// Ring takes reminders that are due, by the names that are theirs for good, and rings if
// one of them was never given. They count as given also while it is off, since they stand
// on the screen. What was given is written down before it rings. A tone that fails is
// told to failed.
func (b *Bell) Ring(due []string, failed func(error)) {
	if b.give(due) && b.On() {
		b.play(func(err error) {
			if err != nil {
				failed(err)
			}
		})
	}
}

// Given takes reminders as given, without a sound: what fell due by a person's own hand.
func (b *Bell) Given(due []string) { b.give(due) }

// give writes reminders down as given; false where all were.
func (b *Bell) give(due []string) (fresh bool) {
	given := b.memory.StringList(keyGiven)
	before := len(given)
	for _, name := range due {
		if !slices.Contains(given, name) {
			given = append(slices.Clip(given), name)
		}
	}
	if len(given) == before {
		return false
	}
	b.memory.SetStringList(keyGiven, given[max(0, len(given)-mostGiven):])
	return true
}

// Try plays the tone, whether it is on or not, and tells how that went.
func (b *Bell) Try(done func(error)) { b.play(done) }

// play plays the tone in place of one that still plays.
func (b *Bell) play(done func(error)) {
	if b.closed {
		return
	}
	b.stop()
	ended := make(chan struct{})
	b.ended = ended
	b.stop = b.beside(func(ctx context.Context) error {
		defer close(ended)
		return b.player.Play(ctx)
	}, done)
}

// Close stops a tone and lets no other begin. It waits for its end a moment, never longer.
func (b *Bell) Close() {
	b.closed = true
	b.stop()
	if b.ended == nil {
		return
	}
	select {
	case <-b.ended:
	case <-time.After(closesIn):
	}
}

// Silent is a bell that plays nothing and remembers until the program ends.
func Silent() *Bell {
	return NewBell(nil, &forgetful{}, func(work func(context.Context) error, done func(error)) (stop func()) {
		done(work(context.Background()))
		return func() {}
	})
}

// forgetful is a memory that ends with the program.
type forgetful struct {
	on    bool
	given []string
}

func (f *forgetful) Bool(string) bool                      { return f.on }
func (f *forgetful) SetBool(_ string, on bool)             { f.on = on }
func (f *forgetful) StringList(string) []string            { return f.given }
func (f *forgetful) SetStringList(_ string, list []string) { f.given = list }

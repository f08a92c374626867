// Package keep saves while one types. A screen hands over what to save each
// time something changed; the [Keeper] waits until the typing pauses, saves
// beside the window's thread, one thing after another, and tells how it went.
// What was handed over and not yet written is written by [Keeper.Flush]: on
// leaving a field, on changing the screen, and before the program ends.
//
// A save that fails is kept and tried again, so that a full disk loses
// nothing while the program runs.
package keep

import (
	"context"
	"errors"
	"slices"
	"sync"
	"time"
)

// Pause is how long the typing must rest before what was typed is saved.
// Longest is how long unbroken typing may go unsaved.
const (
	Pause   = 250 * time.Millisecond
	Longest = 400 * time.Millisecond
	// again is the wait before a failed save is tried again.
	again = 3 * time.Second
)

// Save writes something; it runs beside the window's thread.
type Save = func(ctx context.Context) error

// State is how saving stands.
type State struct {
	// Pending counts what is not written yet, also what is being written.
	Pending int
	// Since is when the oldest of it was handed over.
	Since time.Time
	// At is when the last save was written; zero before the first.
	At time.Time
	// Err is why the last try failed; nil when it did not.
	Err error
}

// After calls do once, when d has passed, on any goroutine. The function
// returned takes that back.
type After = func(d time.Duration, do func()) (stop func())

// Keeper saves in order. Its methods may be called from any goroutine.
type Keeper struct {
	now     func() time.Time
	after   After
	onState func(State)

	mu      sync.Mutex
	pending []job // oldest first
	begun   []job // being written
	at      time.Time
	err     error
	stop    func() // takes the wait back; nil while there is none
	closed  bool

	writing sync.Mutex // held while saves run
}

// job is the newest save under one key.
type job struct {
	key   string
	save  Save
	since time.Time // first handed over
	due   time.Time
}

// NewAfter makes a Keeper that waits by a clock it is given.
func NewAfter(now func() time.Time, after After, onState func(State)) *Keeper {
	if onState == nil {
		onState = func(State) {}
	}
	return &Keeper{now: now, after: after, onState: onState}
}

// MachineClock waits by the machine's clock.
func MachineClock(d time.Duration, do func()) (stop func()) {
	timer := time.AfterFunc(d, do)
	return func() { timer.Stop() }
}

// Later hands over a save. A newer one under the same key takes the place of
// one that has not run.
func (k *Keeper) Later(key string, save Save) {
	k.mu.Lock()
	now := k.now()
	k.put(job{key: key, save: save, since: now, due: now.Add(Pause)})
	k.arm()
	state := k.state()
	k.mu.Unlock()
	k.onState(state)
}

// put adds a job or takes the place of the one under its key; k.mu is held.
func (k *Keeper) put(j job) {
	for i, old := range k.pending {
		if old.key != j.key {
			continue
		}
		j.since = old.since
		if latest := j.since.Add(Longest); j.due.After(latest) {
			j.due = latest
		}
		k.pending[i] = j
		return
	}
	k.pending = append(k.pending, j)
}

// arm starts the timer for the earliest job; k.mu is held.
func (k *Keeper) arm() {
	if k.closed || len(k.pending) == 0 {
		return
	}
	first := k.pending[0].due
	for _, j := range k.pending[1:] {
		if j.due.Before(first) {
			first = j.due
		}
	}
	wait := max(first.Sub(k.now()), time.Millisecond)
	if k.stop != nil {
		k.stop()
	}
	k.stop = k.after(wait, k.tick)
}

// tick runs on the clock's goroutine.
func (k *Keeper) tick() {
	// The error is in the state, and the save will be tried again.
	_ = k.Flush(context.Background())
}

// Flush writes everything that was handed over, and returns what failed.
func (k *Keeper) Flush(ctx context.Context) error {
	k.writing.Lock()
	defer k.writing.Unlock()
	k.mu.Lock()
	jobs := k.pending
	k.pending, k.begun = nil, jobs
	k.mu.Unlock()
	if len(jobs) == 0 {
		return nil
	}
	var failed []job
	var errs []error
	for _, j := range jobs {
		if err := j.save(ctx); err != nil {
			failed = append(failed, j)
			errs = append(errs, err)
		}
	}
	k.finish(failed, errors.Join(errs...), len(failed) < len(jobs))
	return errors.Join(errs...)
}

// finish puts failed jobs back, unless a newer one is there, and tells.
func (k *Keeper) finish(failed []job, err error, wrote bool) {
	k.mu.Lock()
	newer := k.pending
	k.pending, k.begun = nil, nil
	retry := k.now().Add(again)
	for _, j := range failed {
		j.since, j.due = k.now(), retry
		k.pending = append(k.pending, j)
	}
	for _, j := range newer {
		k.put(j)
	}
	if wrote {
		k.at = k.now()
	}
	k.err = err
	k.arm()
	state := k.state()
	k.mu.Unlock()
	k.onState(state)
}

// state is how it stands; k.mu is held.
func (k *Keeper) state() State {
	s := State{Pending: len(k.pending) + len(k.begun), At: k.at, Err: k.err}
	for i, j := range slices.Concat(k.begun, k.pending) {
		if i == 0 || j.since.Before(s.Since) {
			s.Since = j.since
		}
	}
	return s
}

// State returns how saving stands.
func (k *Keeper) State() State {
	k.mu.Lock()
	defer k.mu.Unlock()
	return k.state()
}

// Close writes what is left and stops the timer. When something cannot be
// written the Keeper goes on: it tries again, and takes over what comes.
func (k *Keeper) Close(ctx context.Context) error {
	if err := k.Flush(ctx); err != nil {
		return err
	}
	k.mu.Lock()
	defer k.mu.Unlock()
	k.closed = true
	if k.stop != nil {
		k.stop()
	}
	return nil
}

// Drop gives up what could not be written, because a person said so.
func (k *Keeper) Drop() {
	k.mu.Lock()
	k.pending, k.err = nil, nil
	state := k.state()
	k.mu.Unlock()
	k.onState(state)
}

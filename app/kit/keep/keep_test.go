package keep

import (
	"context"
	"errors"
	"sync"
	"testing"
	"time"

	"ebbwell/app/kit/keep/clock"
)

// log collects what was written, safely.
type log struct {
	mu    sync.Mutex
	lines []string
}

func (l *log) save(line string, err error) Save {
	return func(context.Context) error {
		if err != nil {
			return err
		}
		l.mu.Lock()
		defer l.mu.Unlock()
		l.lines = append(l.lines, line)
		return nil
	}
}

func (l *log) read() []string {
	l.mu.Lock()
	defer l.mu.Unlock()
	return append([]string(nil), l.lines...)
}

func TestWritesTheNewestAfterAPause(t *testing.T) {
	var l log
	c := clock.New(time.Date(2026, 5, 14, 10, 0, 0, 0, time.UTC))
	k := NewAfter(c.Now, c.After, nil)
	for _, s := range []string{"6", "61", "61.7"} {
		k.Later("mass", l.save(s, nil))
		c.Advance(Longest / 4)
	}
	if got := l.read(); len(got) != 0 {
		t.Fatalf("wrote %q while the typing went on", got)
	}
	c.Advance(Pause)
	if got := l.read(); len(got) != 1 || got[0] != "61.7" {
		t.Fatalf("wrote %q", got)
	}
	if s := k.State(); s.Pending != 0 || s.At.IsZero() || s.Err != nil {
		t.Errorf("state %+v", s)
	}
}

// What is being written is pending until it is written, since it was handed over first.
func TestPendingWhileItIsWritten(t *testing.T) {
	begun := time.Date(2026, 5, 14, 10, 0, 0, 0, time.UTC)
	c := clock.New(begun)
	k := NewAfter(c.Now, c.After, nil)
	var during State
	k.Later("mass", func(context.Context) error {
		c.Advance(time.Second)
		k.Later("sodium", func(context.Context) error { return nil })
		during = k.State()
		return nil
	})
	c.Advance(Pause)
	if during.Pending != 2 || !during.Since.Equal(begun) {
		t.Errorf("while it is written %+v", during)
	}
	if s := k.State(); s.Pending != 1 || !s.Since.Equal(begun.Add(Pause+time.Second)) {
		t.Errorf("then %+v", s)
	}
}

// By the machine's clock a save runs on another goroutine, and State may be
// read meanwhile.
func TestMachineClock(t *testing.T) {
	wrote := make(chan State, 8)
	k := New(time.Now, func(s State) { wrote <- s })
	k.Later("mass", func(context.Context) error { return nil })
	if s := <-wrote; s.Pending != 1 {
		t.Errorf("handed over: %+v", s)
	}
	if s := <-wrote; s.Pending != 0 || s.Err != nil || k.State().Pending != 0 {
		t.Errorf("written: %+v", s)
	}
	if err := k.Close(context.Background()); err != nil {
		t.Fatal(err)
	}
}

// A failed save is tried again by itself.
func TestFailedSaveIsTriedAgain(t *testing.T) {
	var l log
	c := clock.New(time.Date(2026, 5, 14, 10, 0, 0, 0, time.UTC))
	k := NewAfter(c.Now, c.After, nil)
	full := true
	k.Later("a", func(ctx context.Context) error {
		if full {
			return errors.New("disk full")
		}
		return l.save("a", nil)(ctx)
	})
	c.Advance(Pause)
	if s := k.State(); s.Pending != 1 || s.Err == nil {
		t.Fatalf("state %+v", s)
	}
	full = false
	c.Advance(again)
	if got, s := l.read(), k.State(); len(got) != 1 || s.Pending != 0 || s.Err != nil {
		t.Errorf("wrote %q, state %+v", got, s)
	}
}

func TestUnbrokenTypingIsSaved(t *testing.T) {
	now := time.Date(2026, 5, 14, 10, 0, 0, 0, time.UTC)
	k := New(func() time.Time { return now }, nil)
	var l log
	for range 20 {
		k.mu.Lock()
		k.put(job{key: "note", save: l.save("x", nil), since: now, due: now.Add(Pause)})
		due := k.pending[0].due
		k.mu.Unlock()
		if limit := time.Date(2026, 5, 14, 10, 0, 0, 0, time.UTC).Add(Longest); due.After(limit) {
			t.Fatalf("due %v, after %v", due, limit)
		}
		now = now.Add(100 * time.Millisecond)
	}
}

func TestFailedSaveIsKeptAndNewerWins(t *testing.T) {
	full := errors.New("disk full")
	var l log
	k := New(time.Now, nil)
	k.Later("a", l.save("a1", full))
	k.Later("b", l.save("b1", nil))
	if err := k.Flush(context.Background()); !errors.Is(err, full) {
		t.Fatalf("flush gave %v", err)
	}
	if s := k.State(); s.Pending != 1 || !errors.Is(s.Err, full) {
		t.Fatalf("state %+v", s)
	}
	k.Later("a", l.save("a2", nil))
	if err := k.Close(context.Background()); err != nil {
		t.Fatal(err)
	}
	if got := l.read(); len(got) != 2 || got[0] != "b1" || got[1] != "a2" {
		t.Errorf("wrote %q", got)
	}
	if s := k.State(); s.Pending != 0 || s.Err != nil {
		t.Errorf("state %+v", s)
	}
}

func TestSaveHandedOverWhileWriting(t *testing.T) {
	var l log
	k := New(time.Now, nil)
	k.Later("a", func(context.Context) error {
		k.Later("a", l.save("newer", nil))
		return errors.New("busy")
	})
	if err := k.Flush(context.Background()); err == nil {
		t.Fatal("no error")
	}
	if err := k.Flush(context.Background()); err != nil {
		t.Fatal(err)
	}
	if got := l.read(); len(got) != 1 || got[0] != "newer" {
		t.Errorf("wrote %q", got)
	}
}

// New makes a Keeper that waits by the machine's clock. onState is told of
// every change, from any goroutine: what it does in the window it hands on.
func New(now func() time.Time, onState func(State)) *Keeper {
	return NewAfter(now, MachineClock, onState)
}

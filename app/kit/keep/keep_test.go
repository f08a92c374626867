package keep

import (
	"context"
	"errors"
	"sync"
	"testing"
	"time"
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
	k := New(time.Now, nil)
	start := time.Now()
	for _, s := range []string{"6", "61", "61.7"} {
		k.Later("mass", l.save(s, nil))
	}
	for len(l.read()) == 0 && time.Since(start) < 5*time.Second {
		time.Sleep(5 * time.Millisecond)
	}
	if got := l.read(); len(got) != 1 || got[0] != "61.7" {
		t.Fatalf("wrote %q", got)
	}
	if s := k.State(); s.Pending != 0 || s.At.IsZero() || s.Err != nil {
		t.Errorf("state %+v", s)
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

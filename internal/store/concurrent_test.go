package store

import (
	"context"
	"errors"
	"fmt"
	"sync"
	"sync/atomic"
	"testing"
	"time"

	"ebbwell/internal/record"
)

// How many write at once, and how often each.
const writers, saves = 6, 12

// TestManyAtOnce: writers of different records never disturb one another,
// readers see whole records, and backups run in between.
func TestManyAtOnce(t *testing.T) {
	ctx := context.Background()
	s := open(t, t.TempDir(), newClock())
	var work sync.WaitGroup
	var ids []record.ID
	for range writers {
		one, _ := sheet(t, s)
		ids = append(ids, one.ID)
		work.Go(func() { writeOften(t, s, one) })
	}
	for range 3 {
		work.Go(func() { readOften(t, s, ids) })
	}
	other := t.TempDir()
	work.Go(func() {
		for i := range 3 {
			if err := s.Backup(ctx, fmt.Sprintf("%s/%d.db", other, i)); err != nil {
				t.Error(err)
			}
		}
	})
	work.Wait()
	for _, id := range ids {
		if one := got(s.LoadTest(ctx, id))(t); len(one.Bottles) != saves+1 {
			t.Errorf("%d bottles, want %d", len(one.Bottles), saves+1)
		}
	}
	checkWhole(t, s)
}

// writeOften saves a sheet again and again, with a note that names its last bottle.
func writeOften(t *testing.T, s *Store, one record.Test) {
	for n := range saves {
		one.Note = fmt.Sprint(n)
		one.Bottles = append(one.Bottles, record.Bottle{Name: fmt.Sprint(n)})
		var err error
		if one, err = s.SaveTest(context.Background(), one, Edit{}); err != nil {
			t.Error(err)
			return
		}
	}
}

// readOften sees that every sheet is whole whenever it is read.
func readOften(t *testing.T, s *Store, ids []record.ID) {
	for range saves {
		for _, id := range ids {
			one, err := s.LoadTest(context.Background(), id)
			if err != nil || len(one.Bottles) > 1 && one.Note != one.Bottles[len(one.Bottles)-1].Name {
				t.Errorf("a reader saw note %q with %d bottles, %v", one.Note, len(one.Bottles), err)
			}
		}
		if _, err := s.Athletes(context.Background()); err != nil {
			t.Error(err)
		}
	}
}

// TestOneRecordAtOnce: of saves from the same version one succeeds; the
// history tells of those that did and no others.
func TestOneRecordAtOnce(t *testing.T) {
	s, ctx := open(t, t.TempDir(), newClock()), context.Background()
	one, ref := sheet(t, s)
	var saved atomic.Int64
	var work sync.WaitGroup
	for i := range 8 {
		work.Go(func() {
			mine := copyOf(one)
			mine.Note = fmt.Sprint("from ", i)
			_, err := s.SaveTest(ctx, mine, Edit{})
			switch {
			case err == nil:
				saved.Add(1)
			case CodeOf(err) != CodeConflict:
				t.Error(err)
			}
		})
	}
	work.Wait()
	if saved.Load() != 1 || len(told(t, s, ref)) != 2 {
		t.Errorf("%d saves succeeded, history %q", saved.Load(), told(t, s, ref))
	}
}

// TestRestoreWhileOthersWork: calls wait for the file to be replaced.
func TestRestoreWhileOthersWork(t *testing.T) {
	c, ctx := newClock(), context.Background()
	s := open(t, t.TempDir(), c)
	one, _ := sheet(t, s)
	c.add(24 * time.Hour)
	got(s.SaveGroup(ctx, record.Group{}, Edit{}))(t)
	snap := got(s.Snapshots())(t)[0]
	var work sync.WaitGroup
	for range 4 {
		work.Go(func() {
			for range 10 {
				if _, err := s.LoadTest(ctx, one.ID); err != nil {
					t.Error(err)
				}
			}
		})
	}
	for range 2 {
		must(t, s.Restore(ctx, snap))
	}
	work.Wait()
}

// asked is a context that tells when somebody first waits for its end.
type asked struct {
	err   func() error
	value func(any) any
	ended <-chan struct{}
	done  chan struct{}
	once  sync.Once
}

func askedOf(ctx context.Context) *asked {
	return &asked{err: ctx.Err, value: ctx.Value, ended: ctx.Done(), done: make(chan struct{})}
}

func (a *asked) Deadline() (deadline time.Time, ok bool) { return time.Time{}, false }

func (a *asked) Done() <-chan struct{} {
	a.once.Do(func() { close(a.done) })
	return a.ended
}

func (a *asked) Err() error { return a.err() }

func (a *asked) Value(key any) any { return a.value(key) }

// TestContext: a call whose context has ended does nothing; one that waits
// for another writer stops waiting; a save whose context ends is not kept.
func TestContext(t *testing.T) {
	s := open(t, t.TempDir(), newClock())
	one, _ := sheet(t, s)
	ended, end := context.WithCancel(context.Background())
	end()
	wantEnded := func(err error) {
		t.Helper()
		if !errors.Is(err, context.Canceled) || CodeOf(err) != "" {
			t.Errorf("got %v, want the end of the context", err)
		}
	}
	_, err := s.LoadTest(ended, one.ID)
	wantEnded(err)
	changed := copyOf(one)
	changed.Note = "late"
	_, err = s.SaveTest(ended, changed, Edit{})
	wantEnded(err)
	wantEnded(s.Backup(ended, t.TempDir()+"/b.db"))

	waiting, stop := context.WithCancel(context.Background())
	must(t, s.write(context.Background(), "hold", func(*work) error {
		result := make(chan error, 1)
		asked := askedOf(waiting)
		go func() {
			_, err := s.SaveTest(asked, changed, Edit{})
			result <- err
		}()
		<-asked.done // it waits for its turn, or for the end of its context
		stop()
		wantEnded(<-result)
		return nil
	}))

	inside, stop := context.WithCancel(context.Background())
	err = s.write(inside, "save", func(w *work) error {
		mine := copyOf(changed)
		err := w.save(record.KindTest, &mine, Edit{}, withRespect)
		stop()
		return err
	})
	wantEnded(err)
	if again := got(s.LoadTest(context.Background(), one.ID))(t); again.Note != "" {
		t.Errorf("kept %q", again.Note)
	}
	got(s.SaveTest(context.Background(), changed, Edit{}))(t)
}

// TestPanicInside a transaction leaves the store usable.
func TestPanicInside(t *testing.T) {
	s := open(t, t.TempDir(), newClock())
	func() {
		defer func() { _ = recover() }()
		_ = s.write(context.Background(), "panic", func(w *work) error {
			must(t, w.tx.Create(&record.Group{Meta: record.Meta{ID: "half"}}).Error)
			panic("inside")
		})
	}()
	if groups := got(s.Groups(context.Background()))(t); len(groups) != 0 {
		t.Errorf("kept %+v", groups)
	}
	got(s.SaveGroup(context.Background(), record.Group{Name: "after"}, Edit{}))(t)
}

// TestFailedCommit leaves no transaction open behind it. A link that is looked
// at only when committing makes the commit itself fail.
func TestFailedCommit(t *testing.T) {
	s := open(t, t.TempDir(), newClock())
	err := s.write(context.Background(), "fail", func(w *work) error {
		must(t, w.tx.Exec("PRAGMA defer_foreign_keys = 1").Error)
		return w.tx.Create(&record.Flag{Meta: record.Meta{ID: "half"}, AthleteID: "nobody"}).Error
	})
	wantCode(t, err, CodeInvalid)
	got(s.SaveGroup(context.Background(), record.Group{Name: "after"}, Edit{}))(t)
	checkWhole(t, s)
}

package profile

import (
	"context"
	"flag"
	"testing"
	"time"

	"fyne.io/fyne/v2"

	"ebbwell/app/apptest"
	"ebbwell/app/kit/desk"
	"ebbwell/app/kit/keep"
	"ebbwell/app/kit/keep/clock"
	"ebbwell/internal/record"
	"ebbwell/internal/store"
)

var update = flag.Bool("update", false, "keep new golden pictures")

// bench is a profile in a window.
type bench struct {
	t    *testing.T
	desk *desk.Desk
	v    *View
	w    fyne.Window
	said *[]string
	// undo is the action offered with the last sentence.
	undo *func()
}

func openProfile(t *testing.T, d *desk.Desk, place desk.Place) *bench {
	t.Helper()
	said, undo := &[]string{}, new(func())
	d.Say = func(sentence, _ string, do func()) {
		*said = append(*said, sentence)
		*undo = do
	}
	v, err := New(d, place)
	if err != nil {
		t.Fatal(err)
	}
	w := apptest.Window(t, v.Body(), 1000, 1400, false, 100)
	return &bench{t: t, desk: d, v: v, w: w, said: said, undo: undo}
}

// enter types into a field and leaves it.
func (b *bench) enter(name, text string) {
	b.t.Helper()
	apptest.Type(b.t, b.w, name, text)
	apptest.Leave(b.w)
}

// pick types into a field with a list, takes what is at hand with Enter, and
// leaves it.
func (b *bench) pick(name, text string) {
	b.t.Helper()
	apptest.Type(b.t, b.w, name, text)
	apptest.Press(b.w, fyne.KeyReturn)
	apptest.Leave(b.w)
}

func (b *bench) click(name string) {
	b.t.Helper()
	apptest.Click(b.t, b.w, name)
}

// kept is the athlete as the store has it.
func (b *bench) kept() record.Athlete {
	b.t.Helper()
	if !b.v.b.FlushNow() {
		b.t.Fatal("not saved")
	}
	a, err := b.desk.Store.LoadAthlete(context.Background(), b.v.now().ID)
	if err != nil {
		b.t.Fatal(err)
	}
	return a
}

// raw is what is kept beside a field of the athlete.
func (b *bench) raw(path string, reason bool) string {
	b.t.Helper()
	list, err := b.desk.Store.RawOf(context.Background(), refOf(b.v.now().ID))
	if err != nil {
		b.t.Fatal(err)
	}
	for _, r := range list {
		if r.Field == path && r.Reason == reason {
			return r.Text
		}
	}
	return ""
}

// withCopies is a desk on a data folder that was used the day before too, so
// that there is a copy of it, with an athlete in it.
func withCopies(t *testing.T) (d *desk.Desk, went *[]desk.Place, a record.Athlete) {
	t.Helper()
	dir := t.TempDir()
	a = record.Athlete{Meta: record.Meta{ID: record.NewID()}, Name: "Ravka Oldenmoor"}
	for _, back := range []time.Duration{24 * time.Hour, 0} {
		opened, err := store.Open(dir, store.Options{Clock: func() time.Time { return apptest.Now().Add(-back) }, By: "Test Person"})
		if err != nil {
			t.Fatal(err)
		}
		if back == 0 {
			t.Cleanup(func() { _ = opened.Close() })
			if d, err = desk.New(opened, apptest.Words(t), apptest.Now); err != nil {
				t.Fatal(err)
			}
			break
		}
		if a, err = opened.SaveAthlete(context.Background(), a, store.Edit{}); err != nil {
			t.Fatal(err)
		}
		if err := opened.Close(); err != nil {
			t.Fatal(err)
		}
	}
	d.Keep, went = keep.NewAfter(apptest.Now, clock.New(apptest.Now()).After, nil), &[]desk.Place{}
	d.Go = func(p desk.Place) { *went = append(*went, p) }
	return d, went, a
}

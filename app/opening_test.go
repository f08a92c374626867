package app

import (
	"context"
	"errors"
	"strings"
	"testing"

	"fyne.io/fyne/v2/test"

	"ebbwell/app/apptest"
	"ebbwell/internal/store"
)

// byHand is a runner whose work a test lets go on.
type byHand struct {
	work func(context.Context) error
	done func(error)
}

func (r *byHand) Run(work func(ctx context.Context) error, done func(error)) func() {
	ctx, stop := context.WithCancel(context.Background())
	r.work = func(context.Context) error { return work(ctx) }
	r.done = done
	return stop
}

// goOn does the work and takes it in.
func (r *byHand) goOn() { r.done(r.work(context.Background())) }

// startByHand starts a shell whose opening waits for the test.
func startByHand(t *testing.T, dir string) (*Shell, *byHand, func(name string) bool, func(name string)) {
	t.Helper()
	w := test.NewTempWindow(t, nil)
	r := &byHand{}
	s := NewShell(test.NewTempApp(t), w, apptest.Words(t), Options{Dir: dir, Now: apptest.Now, Beside: r, OnWindow: func(do func()) { do() }})
	s.Start()
	return s, r, func(name string) bool { return apptest.Has(w, name) }, func(name string) { apptest.Click(t, w, name) }
}

// The window stands, with words and a way to stop, before the folder is open.
func TestWindowComesBeforeTheRecords(t *testing.T) {
	s, r, has, _ := startByHand(t, t.TempDir())
	if !has("opening.stop") || s.Program() != nil {
		t.Fatalf("the window shows %q", said(s.window.Content()))
	}
	r.goOn()
	if !has("welcome.begin") {
		t.Errorf("after opening the window shows %q", said(s.window.Content()))
	}
}

// A window closed before there is a practice frees the folder.
func TestClosedAtTheWelcome(t *testing.T) {
	dir := t.TempDir()
	s, r, has, _ := startByHand(t, dir)
	r.goOn()
	if used, err := store.InUse(dir); !used || err != nil || !has("welcome.begin") {
		t.Fatalf("in use: %v, %v", used, err)
	}
	if err := s.Close(); err != nil {
		t.Fatal(err)
	}
	if used, err := store.InUse(dir); used || err != nil {
		t.Errorf("the folder is in use: %v, %v", used, err)
	}
}

// An opening that is stopped says so, leaves the folder free and can be begun again.
func TestOpeningIsStopped(t *testing.T) {
	dir := t.TempDir()
	made, err := store.Open(dir, store.Options{Clock: apptest.Now})
	if err := errors.Join(err, made.Close()); err != nil {
		t.Fatal(err)
	}
	s, r, has, click := startByHand(t, dir)
	click("opening.stop")
	r.goOn()
	if text := said(s.window.Content()); !strings.Contains(text, s.words.Say("opening.stopped")) {
		t.Errorf("the window says %q", text)
	}
	if used, err := store.InUse(dir); used || err != nil {
		t.Errorf("the folder is in use: %v, %v", used, err)
	}
	click("refusal.again")
	r.goOn()
	if !has("welcome.begin") {
		t.Errorf("begun again the window shows %q", said(s.window.Content()))
	}
}

// A window closed while it opens frees the folder.
func TestClosedWhileOpening(t *testing.T) {
	dir := t.TempDir()
	s, r, _, _ := startByHand(t, dir)
	ended, told := make(chan error), make(chan func(), 64)
	s.options.OnWindow = func(do func()) { told <- do } // as the toolkit does: later, and here
	go func() { ended <- r.work(context.Background()) }()
	if err := s.Close(); err != nil { // waits for the work
		t.Error(err)
	}
	r.done(<-ended)
	for len(told) > 0 {
		(<-told)()
	}
	if used, err := store.InUse(dir); used || err != nil || s.Program() != nil {
		t.Errorf("the folder is in use: %v, %v", used, err)
	}
}

// What is done with a folder that has records is said in words.
func TestOpeningTells(t *testing.T) {
	dir := t.TempDir()
	made, err := store.Open(dir, store.Options{Clock: apptest.Now})
	if err := errors.Join(err, made.Close()); err != nil {
		t.Fatal(err)
	}
	var texts []string
	s, r, _, _ := startByHand(t, dir)
	s.options.OnWindow = func(do func()) {
		do()
		texts = append(texts, said(s.window.Content()))
	}
	r.goOn()
	all := strings.Join(texts, "\n")
	for _, part := range []string{"Checking the records", "Making a copy of the records"} {
		if !strings.Contains(all, part) {
			t.Errorf("%q is not among %q", part, texts)
		}
	}
}

// Restoring a copy runs beside the window, which says so meanwhile.
func TestRestoringRunsBesideTheWindow(t *testing.T) {
	dir := t.TempDir()
	first, w := start(t, dir, false)
	begin(t, w)
	for range 2 { // the first use of a day makes a snapshot
		if err := first.Close(); err != nil {
			t.Fatal(err)
		}
		first, _ = start(t, dir, false)
	}
	if err := first.Close(); err != nil {
		t.Fatal(err)
	}
	damage(t, dir)
	s, r, has, click := startByHand(t, dir)
	r.goOn()
	click("refusal.restore.1")
	if s.Program() != nil || !has("opening.stop") {
		t.Fatalf("while it is restored the window shows %q", said(s.window.Content()))
	}
	r.goOn()
	if s.Program() == nil {
		t.Errorf("the copy was not restored: %q", said(s.window.Content()))
	}
}

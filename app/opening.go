package app

import (
	"context"
	"errors"

	"ebbwell/app/kit/desk"
	"ebbwell/app/kit/field"
	"ebbwell/app/screen/welcome"
	"ebbwell/internal/demo"
	"ebbwell/internal/store"
)

// opening is a data folder that is being opened beside the window.
type opening struct {
	stop func()
	// ended is closed when the work has ended; store is set then, unless it
	// failed.
	ended chan struct{}
	store *store.Store
}

// open opens a data folder, lets fill write into it where it is given, and
// begins the program on it.
func (s *Shell) open(dir string, fill func(context.Context, *store.Store) error) {
	s.openAs(func(ctx context.Context, o store.Options) (*store.Store, error) {
		opened, err := store.OpenContext(ctx, dir, o)
		if err != nil || fill == nil {
			return opened, err
		}
		if err := fill(ctx, opened); err != nil {
			return nil, errors.Join(err, opened.Close())
		}
		return opened, nil
	}, s.refuse)
}

// openAsItIs opens the data folder though a value in its file became another.
func (s *Shell) openAsItIs() {
	s.openAs(func(ctx context.Context, o store.Options) (*store.Store, error) {
		o.AsItIs = true
		return store.OpenContext(ctx, s.options.Dir, o)
	}, s.refuse)
}

// restore puts a copy in the place of records that cannot be opened, which is why,
// and begins the program on it.
func (s *Shell) restore(snap store.Snapshot, why error) {
	s.openAs(func(ctx context.Context, o store.Options) (*store.Store, error) {
		o.Progress(store.Progress{Stage: store.StageRestoring, Bytes: snap.Bytes})
		if err := store.Restore(ctx, s.options.Dir, snap, o); err != nil {
			return nil, notRestored{err}
		}
		return store.OpenContext(ctx, s.options.Dir, o)
	}, func(err error) {
		var failed notRestored
		if errors.As(err, &failed) {
			s.refuseAgain(why, failed.error)
			return
		}
		s.refuse(err)
	})
}

// notRestored is why a copy was not restored.
type notRestored struct{ error }

// Unwrap is the cause.
func (e notRestored) Unwrap() error { return e.error }

// openAs opens a data folder by a way that is handed in, beside the window, which
// says what is being done; the person may stop it. refuse shows what went wrong.
func (s *Shell) openAs(way func(context.Context, store.Options) (*store.Store, error), refuse func(error)) {
	o := &opening{ended: make(chan struct{})}
	s.opening = o
	page := welcome.NewOpening(field.NewHost(s.words), func() {
		if s.opening == o && o.stop != nil {
			o.stop()
		}
	})
	s.window.SetContent(page.Body())
	tell := func(p store.Progress) {
		s.options.OnWindow(func() {
			if s.opening == o {
				page.Tell(p)
			}
		})
	}
	o.stop = s.options.Beside.Run(func(ctx context.Context) (err error) {
		defer close(o.ended)
		o.store, err = way(ctx, store.Options{Clock: s.options.Now, Progress: tell})
		return err
	}, func(err error) {
		if s.opening != o {
			return // the window was closed meanwhile
		}
		s.opening = nil
		if err != nil {
			refuse(err)
			return
		}
		s.begin(o.store)
	})
}

// stopOpening stops an opening that goes on, waits for its end and frees the
// folder.
func (s *Shell) stopOpening() error {
	o := s.opening
	if o == nil {
		return nil
	}
	s.opening = nil
	if o.stop != nil {
		o.stop()
	}
	<-o.ended
	if o.store == nil {
		return nil
	}
	return o.store.Close()
}

// openDemo makes the invented practice in a temporary folder and opens it.
func (s *Shell) openDemo() {
	dir, err := demo.NewFolder()
	if err != nil {
		s.refuse(err)
		return
	}
	s.temporary = dir
	s.open(dir, func(ctx context.Context, opened *store.Store) error {
		return demo.Fill(ctx, opened, s.options.Now(), demo.Names{Options: desk.OptionNames(s.words), Step: desk.StepName(s.words), Say: s.words.Say, Town: s.words.City})
	})
}

// whyNot says why the folder was not opened.
func (s *Shell) whyNot(err error) string {
	if errors.Is(err, context.Canceled) {
		return s.words.Say("opening.stopped")
	}
	return desk.Sentence(s.words, err)
}

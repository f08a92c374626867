package shots

import (
	"context"
	"errors"
	"fmt"
	"os"
	"path/filepath"
	"time"

	"ebbwell/internal/bundle"
	"ebbwell/internal/lock"
	"ebbwell/internal/quantity"
	"ebbwell/internal/record"
	"ebbwell/internal/store"
)

// What a colleague's file is called and locked with.
const (
	sentFile   = "from a colleague.ebbwell"
	sentPhrase = "four quiet herons wade"
)

// sentBack lets a colleague work with an athlete: what came back first was taken in and
// left a question, what came back last stands in a locked file beside the records, with
// a change on both sides.
func sentBack(ctx context.Context, s *store.Store, athlete record.ID) (err error) {
	dir, err := os.MkdirTemp("", "ebbwell-shots-")
	if err != nil {
		return fmt.Errorf("make a colleague's folder: %w", err)
	}
	defer func() { err = errors.Join(err, os.RemoveAll(dir)) }()
	later := func() time.Time { return Now().Add(time.Hour) }
	there, err := store.OpenContext(ctx, dir, store.Options{Clock: later})
	if err != nil {
		return fmt.Errorf("open a colleague's folder: %w", err)
	}
	there.SetBy("Bryn Halloway (invented)")
	defer func() { err = errors.Join(err, there.Close()) }()
	if err := passOn(ctx, s, there, athlete); err != nil {
		return err
	}
	if err := change(ctx, there, athlete, func(a *record.Athlete) { a.UsualDrinking = record.Num(1.4, quantity.LitrePerHour) }); err != nil {
		return err
	}
	if err := passOn(ctx, there, s, athlete); err != nil {
		return err
	}
	for _, side := range []struct {
		of   *store.Store
		note string
	}{{s, "asked for less salt"}, {there, "asked for a sweeter drink"}} {
		if err := change(ctx, side.of, athlete, func(a *record.Athlete) { a.Note, a.Position = side.note, side.note }); err != nil {
			return err
		}
	}
	b, err := there.Pack(ctx, []record.ID{athlete}, "Elsewhere (invented)")
	if err != nil {
		return fmt.Errorf("send records back: %w", err)
	}
	return locked(filepath.Join(s.Dir(), sentFile), b)
}

// passOn takes an athlete's records from one practice into another.
func passOn(ctx context.Context, from, to *store.Store, athlete record.ID) error {
	b, err := from.Pack(ctx, []record.ID{athlete}, "Elsewhere (invented)")
	if err != nil {
		return fmt.Errorf("pass records on: %w", err)
	}
	here, err := to.HereOf(ctx, b)
	if err != nil {
		return fmt.Errorf("pass records on: %w", err)
	}
	at := Now().Add(time.Hour)
	_, err = to.Merge(ctx, store.Incomer{Bundle: b, Seen: bundle.Merge(here, b, at), At: at, File: sentFile})
	return err
}

// change changes an athlete.
func change(ctx context.Context, s *store.Store, athlete record.ID, do func(*record.Athlete)) error {
	a, err := s.LoadAthlete(ctx, athlete)
	if err != nil {
		return fmt.Errorf("change an athlete to draw: %w", err)
	}
	do(&a)
	_, err = s.SaveAthlete(ctx, a, store.Edit{})
	return err
}

// locked writes a bundle into a locked file.
func locked(path string, b bundle.Bundle) (err error) {
	const littleWork = 2 // for the picture alone
	key, err := lock.NewKey(sentPhrase, littleWork)
	if err != nil {
		return fmt.Errorf("lock a file: %w", err)
	}
	f, err := os.OpenFile(path, os.O_CREATE|os.O_TRUNC|os.O_WRONLY, 0o600)
	if err != nil {
		return fmt.Errorf("write a locked file: %w", err)
	}
	defer func() { err = errors.Join(err, f.Close()) }()
	w, err := key.Writer(f)
	if err != nil {
		return fmt.Errorf("lock a file: %w", err)
	}
	return errors.Join(bundle.Write(w, b, "1"), w.Close())
}

package main

import (
	"context"
	"errors"
	"fmt"
	"io/fs"
	"os"
	"path/filepath"
	"slices"

	"ebbwell/cmd/dev/drive"
	"ebbwell/internal/store"
)

// script is everything that is done in the window, in order. What other users
// may read is checked where the system's files carry that.
func script(windows bool, kills int) []drive.Step {
	practice := "Käfer & Varrow"
	if windows {
		practice = "Kern & Varrow" // Wine 8 does not pass on what the third level of a key writes
	}
	begun := firstStart(practice)
	if !windows {
		begun = append(begun, drive.Check("only the user can read the data folder", onlyTheUser))
	}
	return slices.Concat(
		begun,
		mainJob(),
		squadDay(kills),
	)
}

// squadAlone is the test day of a squad without the main job: its third athlete is
// written down first.
func squadAlone(kills int) []drive.Step {
	return slices.Concat(firstStart("Kern & Varrow"), makeAthlete(), []drive.Step{drive.Press("Tab"), rest(), drive.Quit()}, squadDay(kills))
}

// firstStart begins a practice, quits, and finds it kept.
func firstStart(practice string) []drive.Step {
	return []drive.Step{
		drive.Start(),
		drive.Shot("first-start"),
		drive.Fill("welcome.person", "Ilse Varrow"),
		drive.Press("Tab"),
		drive.Focus("welcome.practice"),
		drive.Write(practice),
		drive.Fill("welcome.emergency", "112"),
		drive.Click("welcome.begin"),
		drive.Gone("welcome.begin"),
		drive.Shot("no-athletes-yet"),
		drive.Quit(),
		drive.Sound(),
		drive.Check("the practice is kept", keptPractice(practice)),
	}
}

// keptPractice checks what firstStart typed.
func keptPractice(name string) func(context.Context, string) error {
	return func(ctx context.Context, dir string) error {
		return inRecords(dir, func(s *store.Store) error {
			p, err := s.Practice(ctx)
			if err == nil && (p.Practitioner != "Ilse Varrow" || p.Name != name || p.Emergency != "112") {
				err = fmt.Errorf("kept is %q of %q, emergency number %q", p.Practitioner, p.Name, p.Emergency)
			}
			return err
		})
	}
}

// inRecords opens the records of a data folder, for reading only, and looks.
func inRecords(dir string, look func(*store.Store) error) error {
	s, err := store.Open(dir, store.Options{ReadOnly: true})
	if err != nil {
		return fmt.Errorf("look into the records: %w", err)
	}
	if err := errors.Join(look(s), s.Close()); err != nil {
		return fmt.Errorf("look into the records: %w", err)
	}
	return nil
}

// onlyTheUser checks the modes of the data folder and of all that is in it.
func onlyTheUser(_ context.Context, dir string) error {
	files := 0
	err := filepath.WalkDir(dir, func(path string, _ fs.DirEntry, err error) error {
		if err != nil {
			return err
		}
		info, err := os.Lstat(path)
		if err != nil {
			return err
		}
		if info.Mode().Perm()&0o077 != 0 {
			return fmt.Errorf("%s has mode %s", filepath.Base(path), info.Mode())
		}
		if !info.IsDir() {
			files++
		}
		return nil
	})
	if err == nil && files == 0 {
		err = errors.New("there is no file in it")
	}
	if err != nil {
		return fmt.Errorf("look at the data folder: %w", err)
	}
	return nil
}

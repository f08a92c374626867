package store

import (
	"context"
	"encoding/json"
	"errors"
	"os"
	"path/filepath"
	"strings"

	"ebbwell/internal/record"
)

// Erasing takes several steps: the rows, the bytes they leave in the file, every
// copy. A note in the data folder says so meanwhile, so that the next opening ends
// what a program that was stopped, or a disk without room, left undone.

// eraseStart begins the name of such a note; the athlete's id is behind it.
const eraseStart = "erasing-"

// erasing is what is in such a note: the files that were saved elsewhere, whose rows are
// erased too, and whether they are to be removed.
type erasing struct {
	Files  []savedPath
	Remove bool
}

// noteErasing writes down that an athlete is being erased.
func (s *Store) noteErasing(id record.ID, e erasing) (string, error) {
	path := filepath.Join(s.dir, eraseStart+string(id)+noteEnd)
	text, err := json.Marshal(e)
	if err == nil {
		err = os.WriteFile(path, text, 0o600)
	}
	if err == nil {
		err = syncFile(path)
	}
	if err != nil {
		return "", errors.Join(&Error{Code: codeOf(err), Doing: "note erasing", Path: path, Err: err}, remove(path))
	}
	return path, nil
}

// endErasing ends what the notes in the folder say was begun: where the athlete is
// gone, the bytes and the copies follow; where not, nothing was erased. What cannot
// be done now is tried at the next opening, and keeps nothing from opening.
func (s *Store) endErasing(ctx context.Context) error {
	if s.options.ReadOnly {
		return nil
	}
	notes, err := filepath.Glob(filepath.Join(escaped(s.dir), eraseStart+"*"+noteEnd))
	if err != nil {
		return fail(err, "find unfinished erasing")
	}
	for _, path := range notes {
		id := record.ID(strings.TrimSuffix(strings.TrimPrefix(filepath.Base(path), eraseStart), noteEnd))
		var there int64
		if err := s.files.reader.Model(&record.Athlete{}).Where("id = ?", id).Count(&there).Error; err != nil {
			return fail(err, "look for who is erased")
		}
		var e erasing
		if text, err := os.ReadFile(path); err != nil || json.Unmarshal(text, &e) != nil {
			e = erasing{} // a note of an earlier version is empty
		}
		if there > 0 || s.eraseRest(ctx, id, e, &Erased{}) == nil {
			_ = remove(path)
		}
		if err := ctx.Err(); err != nil {
			return err
		}
	}
	return nil
}

// eraseRest rewrites the file, takes an athlete out of the copies and removes the files
// that were saved elsewhere. The error says that something is left that a later try may
// remove; a file that cannot be reached is named, and not tried again.
func (s *Store) eraseRest(ctx context.Context, id record.ID, e erasing, left *Erased) error {
	left.Files = nil
	for _, f := range e.Files {
		one := f.look()
		if e.Remove {
			one = f.remove()
		}
		left.Files = append(left.Files, one)
	}
	rewritten := s.wipe()
	var err error
	left.Snapshots, err = s.eraseFromSnapshots(ctx, id)
	return errors.Join(rewritten, err)
}

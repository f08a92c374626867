package store

import (
	"context"
	"crypto/sha256"
	"encoding/json"
	"errors"
	"io/fs"
	"os"
	"path/filepath"
	"strings"

	"ebbwell/internal/record"
)

// A file that goes out of the data folder (a page, a backup) is made beside its
// place under another name and then renamed. A note in the data folder says so
// meanwhile, so that the next opening ends what a program that was killed began:
// the file with its record, or neither.

// Names of the notes in the data folder and of the files beside their places.
const (
	noteStart, noteEnd = "outgoing-", ".note"
	partStart          = ".ebbwell-"
	copyEnd            = ".copy" // behind the name of a copy that is being made
)

// note is what is written down about a file that goes out.
type note struct {
	Part, To string
	// Print is the page kept with the records; empty where none is.
	Print record.ID
	// Replace is true when a file was there already and is to be replaced.
	Replace bool
}

// WriteFile writes a file of the user's choice, in one step: what was there stays
// whole until all of the new file is on the disk. A file within the data folder
// is refused with CodeInvalid. About are the athletes it holds something of, or
// [Everyone]: where it was saved is kept with their records.
func (s *Store) WriteFile(ctx context.Context, file string, data []byte, about ...record.ID) error {
	s.gate.RLock()
	defer s.gate.RUnlock()
	if s.files == nil {
		return &Error{Code: CodeNotOpen, Doing: "write file", Path: s.dir}
	}
	sum := sha256.Sum256(data)
	return s.writeOut(ctx, file, "", data, func() error { return s.keepPath(ctx, file, sum[:], about) })
}

// HandOut writes a page to a file and keeps it with the records: both or neither,
// also when the program is killed on the way. The print's id, time and name are
// set here, as by [Store.SavePrint].
func (s *Store) HandOut(ctx context.Context, p record.Print, file string) (record.Print, error) {
	if p.ID != "" {
		return p, &Error{Code: CodeInvalid, Doing: "save print", Err: errors.New("a page that was printed does not change")}
	}
	p.ID = record.NewID()
	var kept record.Print
	err := s.writeOut(ctx, file, p.ID, p.Bytes, func() (err error) {
		sum := sha256.Sum256(p.Bytes)
		kept, err = s.savePrint(ctx, p, savedRow(file, sum[:], p.AthleteID, false))
		return err
	})
	return kept, err
}

// writeOut writes bytes to a file; between making and naming it, commit runs.
func (s *Store) writeOut(ctx context.Context, file string, page record.ID, data []byte, commit func() error) error {
	to, err := filepath.Abs(file)
	if err == nil {
		err = ctx.Err()
	}
	if err != nil {
		return fail(err, "write file")
	}
	if err := s.outside(to); err != nil {
		return err
	}
	return s.outgoing(to, page, func(part string) error {
		f, err := os.OpenFile(part, os.O_WRONLY|os.O_CREATE|os.O_EXCL, 0o600)
		if err != nil {
			return err
		}
		_, err = f.Write(data)
		return errors.Join(err, f.Sync(), f.Close())
	}, commit)
}

// outgoing makes a file beside its place with fill, runs commit where there is
// one, and gives it its name. Errors of the system are kept as causes.
func (s *Store) outgoing(to string, page record.ID, fill func(part string) error, commit func() error) (err error) {
	n := note{Part: filepath.Join(filepath.Dir(to), partStart+string(record.NewID())+unfinished), To: to, Print: page}
	if _, err := os.Lstat(to); err == nil {
		n.Replace = true
	}
	noted, err := s.noteDown(n)
	if err != nil {
		return err
	}
	err = fill(n.Part)
	if err == nil && commit != nil {
		err = commit()
	}
	if err == nil {
		err = moveInto(n.Part, to)
	}
	if err != nil {
		return errors.Join(fail(err, "write file"), remove(n.Part), remove(noted))
	}
	return remove(noted)
}

// remove removes a file that may be gone; an empty path is none.
func remove(path string) error {
	if path == "" {
		return nil
	}
	if err := os.Remove(path); err != nil && !errors.Is(err, fs.ErrNotExist) {
		return &Error{Code: codeOf(err), Doing: "remove unfinished file", Path: path, Err: err}
	}
	return nil
}

// noteDown writes a note into the data folder and returns its path; a folder that
// was opened for reading only gets none.
func (s *Store) noteDown(n note) (string, error) {
	if s.options.ReadOnly {
		return "", nil
	}
	text, err := json.Marshal(n)
	if err != nil {
		return "", fail(err, "note file")
	}
	path := filepath.Join(s.dir, noteStart+string(record.NewID())+noteEnd)
	err = os.WriteFile(path, text, 0o600)
	if err == nil {
		err = syncFile(path)
	}
	if err != nil {
		return "", errors.Join(&Error{Code: codeOf(err), Doing: "note file", Path: path, Err: err}, remove(path))
	}
	return path, nil
}

// endOutgoing ends what the notes in the folder say was begun: a page that is
// with the records gets its name, anything else that is half made is removed.
func (s *Store) endOutgoing() error {
	if s.options.ReadOnly {
		return nil
	}
	notes, err := filepath.Glob(filepath.Join(escaped(s.dir), noteStart+"*"+noteEnd))
	if err != nil {
		return fail(err, "find unfinished files")
	}
	for _, path := range notes {
		text, err := os.ReadFile(path)
		if err != nil {
			return &Error{Code: codeOf(err), Doing: "read note", Path: path, Err: err}
		}
		var n note
		if json.Unmarshal(text, &n) == nil {
			// A disk that is not there any more keeps nothing from opening.
			_ = s.end(n)
		}
		if err := remove(path); err != nil {
			return err
		}
	}
	return nil
}

// escaped is a path in which nothing stands for anything else in a pattern.
func escaped(path string) string {
	return strings.NewReplacer(`\`, `\\`, `*`, `\*`, `?`, `\?`, `[`, `\[`).Replace(path)
}

// end ends what one note says was begun.
func (s *Store) end(n note) error {
	if name := filepath.Base(n.Part); filepath.Dir(n.Part) != filepath.Dir(n.To) || !strings.HasPrefix(name, partStart) || !strings.HasSuffix(name, unfinished) {
		return nil // not a note of ours
	}
	kept := int64(0)
	if n.Print != "" {
		if err := s.files.reader.Model(&record.Print{}).Where("id = ?", n.Print).Count(&kept).Error; err != nil {
			return err
		}
	}
	_, err := os.Lstat(n.To)
	if there := err == nil; kept == 0 || there && !n.Replace {
		// The engine writes a journal beside a copy it makes.
		const journal = "-journal"
		return errors.Join(remove(n.Part), remove(n.Part+journal), remove(n.Part+copyEnd), remove(n.Part+copyEnd+journal))
	}
	return moveInto(n.Part, n.To)
}

// savePrint keeps a page under the id it has, and where it was saved.
func (s *Store) savePrint(ctx context.Context, p record.Print, at ...record.SavedFile) (record.Print, error) {
	out := p
	err := s.write(ctx, "save print", func(w *work) error {
		w.peopleChange = false
		out.At, out.By, out.Sum = w.now, w.by, sumOfPage(out)
		if err := w.tx.Create(&out).Error; err != nil {
			return err
		}
		return w.keepPaths(at)
	})
	if err != nil {
		return p, about(err, record.Ref{Kind: p.Kind, ID: p.Record})
	}
	return out, nil
}

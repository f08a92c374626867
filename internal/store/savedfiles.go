package store

import (
	"bytes"
	"cmp"
	"context"
	"crypto/sha256"
	"errors"
	"io"
	"io/fs"
	"os"
	"path/filepath"
	"slices"
	"time"

	"gorm.io/gorm"

	"ebbwell/internal/record"
)

// Everyone stands for all athletes where a file is said to be about somebody.
const Everyone record.ID = ""

// FileState says what became of a file that was saved elsewhere.
type FileState string

// The states.
const (
	FileThere   FileState = "there"   // it is what was saved
	FileChanged FileState = "changed" // something else is in its place: not ours to remove
	FileGone    FileState = "gone"    // nothing is there any more: it was moved or removed
	FileAway    FileState = "away"    // its folder or its disk cannot be reached
	FileRemoved FileState = "removed"
	FileFailed  FileState = "failed" // it is there and could not be removed
)

// Saved is a file that was saved elsewhere and holds something of an athlete.
type Saved struct {
	Path string
	At   time.Time
	// Shared: it holds something of others too, so it is never removed here.
	Shared bool
	State  FileState
}

// SavedOf lists the files that were saved elsewhere and hold something of an athlete, the
// newest first, with what stands there now.
func (s *Store) SavedOf(ctx context.Context, athlete record.ID) ([]Saved, error) {
	paths, err := s.savedRows(ctx, athlete)
	if err != nil {
		return nil, err
	}
	var list []Saved
	for _, p := range paths {
		if err := ctx.Err(); err != nil {
			return nil, err
		}
		list = append(list, p.look())
	}
	return list, nil
}

// savedPath is a place at which files were saved; Sums are those of all of them, since
// which of them stands there now is not known.
type savedPath struct {
	Path   string
	At     time.Time
	Shared bool
	Sums   [][]byte
}

// savedRows lists where files of an athlete were saved, the newest first.
func (s *Store) savedRows(ctx context.Context, athlete record.ID) ([]savedPath, error) {
	var rows []record.SavedFile
	err := s.read(ctx, "list saved files", func(tx *gorm.DB) error {
		return tx.Where("athlete_id IN ?", []record.ID{athlete, Everyone}).Order("at DESC, id DESC").Find(&rows).Error
	})
	if err != nil {
		return nil, about(err, record.Ref{Kind: record.KindAthlete, ID: athlete})
	}
	var list []savedPath
	at := map[string]int{}
	for _, r := range rows {
		i, there := at[r.Path]
		if !there {
			i = len(list)
			at[r.Path] = i
			list = append(list, savedPath{Path: r.Path, At: r.At, Shared: r.Shared})
		}
		if r.Sum != nil {
			list[i].Sums = append(list[i].Sums, r.Sum)
		}
	}
	slices.SortStableFunc(list, func(a, b savedPath) int { return cmp.Compare(b.At.UnixNano(), a.At.UnixNano()) })
	return list, nil
}

// savedRow is what is kept of a file that is saved.
func savedRow(file string, sum []byte, athlete record.ID, shared bool) record.SavedFile {
	if whole, err := filepath.Abs(file); err == nil {
		file = whole
	}
	return record.SavedFile{AthleteID: athlete, Path: file, Sum: sum, Shared: shared}
}

// keepPath keeps where a file about some athletes is saved, nothing in a folder that was
// opened for reading only. The gate is held.
func (s *Store) keepPath(ctx context.Context, file string, sum []byte, of []record.ID) error {
	if len(of) == 0 || s.options.ReadOnly {
		return nil
	}
	var rows []record.SavedFile
	for _, athlete := range of {
		rows = append(rows, savedRow(file, sum, athlete, len(of) > 1 || athlete == Everyone))
	}
	return s.writeHeld(ctx, "keep where a file is", func(w *work) error {
		w.peopleChange = false
		return w.keepPaths(rows)
	})
}

// keepBackup keeps where a backup is made, and forgets those that were moved or deleted
// since: one made every week would leave a row for good. Of a folder that cannot be
// reached nothing is forgotten. The gate is held.
func (s *Store) keepBackup(to string) error {
	if s.options.ReadOnly {
		return nil
	}
	var known []string
	backups := func(db *gorm.DB) *gorm.DB {
		return db.Model(&record.SavedFile{}).Where("athlete_id = ? AND sum IS NULL", Everyone)
	}
	if err := backups(s.files.reader).Distinct().Pluck("path", &known).Error; err != nil {
		return fail(err, "list backups")
	}
	gone := slices.DeleteFunc(known, func(path string) bool { return savedPath{Path: path}.state() != FileGone })
	return s.writeHeld(context.Background(), "keep where a backup is", func(w *work) error {
		w.peopleChange = false
		for chunk := range slices.Chunk(gone, atOnce) {
			if err := backups(w.tx).Where("path IN ?", chunk).Delete(&record.SavedFile{}).Error; err != nil {
				return fail(err, "forget backups")
			}
		}
		return w.keepPaths([]record.SavedFile{savedRow(to, nil, Everyone, true)})
	})
}

// keepPaths writes down where files are saved; the same file at the same place once.
func (w *work) keepPaths(rows []record.SavedFile) error {
	for _, r := range rows {
		r.ID, r.At, r.By = record.NewID(), w.now, w.by
		old := w.tx.Where("athlete_id = ? AND path = ? AND sum IS ?", r.AthleteID, r.Path, r.Sum)
		if err := old.Delete(&record.SavedFile{}).Error; err != nil {
			return fail(err, "keep where a file is")
		}
		if err := w.tx.Create(&r).Error; err != nil {
			return fail(err, "keep where a file is")
		}
	}
	return nil
}

// look says what stands where a file was saved.
func (p savedPath) look() Saved {
	return Saved{Path: p.Path, At: p.At, Shared: p.Shared, State: p.state()}
}

// state compares what stands there with what was saved; a link is not what was saved.
func (p savedPath) state() FileState {
	info, err := os.Lstat(p.Path)
	switch {
	case errors.Is(err, fs.ErrNotExist):
		if folder, err := os.Stat(filepath.Dir(p.Path)); err != nil || !folder.IsDir() {
			return FileAway
		}
		return FileGone
	case err != nil:
		return FileAway
	case !info.Mode().IsRegular():
		return FileChanged
	case len(p.Sums) == 0:
		return FileThere
	}
	sum, err := sumOfFile(p.Path)
	switch {
	case err != nil:
		return FileAway
	case slices.ContainsFunc(p.Sums, func(kept []byte) bool { return bytes.Equal(kept, sum) }):
		return FileThere
	}
	return FileChanged
}

// remove removes the file where it is what was saved, of nobody else.
func (p savedPath) remove() Saved {
	one := p.look()
	if one.State != FileThere || one.Shared || len(p.Sums) == 0 {
		return one
	}
	one.State = FileRemoved
	if err := os.Remove(p.Path); err != nil && !errors.Is(err, fs.ErrNotExist) {
		one.State = FileFailed
	}
	return one
}

// sumOfFile is the SHA-256 of a file.
func sumOfFile(path string) ([]byte, error) {
	f, err := os.Open(path)
	if err != nil {
		return nil, err
	}
	defer f.Close() //nolint:errcheck // it was only read
	sum := sha256.New()
	if _, err := io.Copy(sum, f); err != nil {
		return nil, err
	}
	return sum.Sum(nil), nil
}

package store

import (
	"context"
	"errors"
	"io/fs"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"time"

	"ebbwell/internal/record"
)

// snapshotFolder is the folder of the snapshots inside the data folder.
const snapshotFolder = "snapshots"

// stampLayout writes the time, in UTC, into the name of a snapshot.
const stampLayout = "20060102T150405.000Z"

// SnapshotReason says why a snapshot was made.
type SnapshotReason string

// Why a snapshot was made.
const (
	// SnapshotDaily: the first use of a day.
	SnapshotDaily SnapshotReason = "daily"
	// SnapshotSchema: before a newer version of the program changed the shape.
	SnapshotSchema SnapshotReason = "schema"
	// SnapshotSetAside: what was there before another snapshot was restored.
	SnapshotSetAside SnapshotReason = "set-aside"
)

// Snapshot is a copy of the whole database in the data folder.
type Snapshot struct {
	Path   string
	At     time.Time // UTC
	Reason SnapshotReason
	Bytes  int64
}

// Snapshots lists the snapshots in a data folder, newest first. The folder
// need not be open.
func Snapshots(dir string) ([]Snapshot, error) {
	folder := filepath.Join(dir, snapshotFolder)
	entries, err := os.ReadDir(folder)
	if errors.Is(err, fs.ErrNotExist) {
		return nil, nil
	}
	if err != nil {
		return nil, &Error{Code: codeOf(err), Doing: "list snapshots", Path: folder, Err: err}
	}
	var list []Snapshot
	for _, entry := range entries {
		if snap, ok := snapshotOf(folder, entry); ok {
			list = append(list, snap)
		}
	}
	slices.SortFunc(list, func(a, b Snapshot) int { return b.At.Compare(a.At) })
	return list, nil
}

// snapshotOf reads the name of a snapshot; ok is false for any other file.
func snapshotOf(folder string, entry fs.DirEntry) (snap Snapshot, ok bool) {
	stem, isCopy := strings.CutSuffix(entry.Name(), ".db")
	cut := strings.LastIndex(stem, "-")
	if !isCopy || cut < 0 {
		return Snapshot{}, false
	}
	reason := SnapshotReason(stem[:cut])
	at, err := time.Parse(stampLayout, stem[cut+1:])
	info, err2 := entry.Info()
	// Reading a time takes a comma for a point; such a name is not one of ours.
	if err != nil || err2 != nil || at.Format(stampLayout) != stem[cut+1:] || !slices.Contains([]SnapshotReason{SnapshotDaily, SnapshotSchema, SnapshotSetAside}, reason) {
		return Snapshot{}, false
	}
	return Snapshot{Path: filepath.Join(folder, entry.Name()), At: at, Reason: reason, Bytes: info.Size()}, true
}

// Snapshots lists the snapshots of this data folder, newest first.
func (s *Store) Snapshots() ([]Snapshot, error) { return Snapshots(s.dir) }

// RemoveSnapshots removes snapshots for good, such as those that still hold
// an athlete who was erased.
func (s *Store) RemoveSnapshots(list []Snapshot) error {
	if s.options.ReadOnly {
		return &Error{Code: CodeReadOnly, Doing: "remove snapshot", Path: s.dir}
	}
	kept, err := s.Snapshots()
	if err != nil {
		return err
	}
	for _, snap := range list {
		if !slices.ContainsFunc(kept, func(k Snapshot) bool { return k.Path == snap.Path }) {
			return &Error{Code: CodeNotFound, Doing: "remove snapshot", Path: snap.Path}
		}
		for _, end := range besides() {
			if err := os.Remove(snap.Path + end); err != nil && !errors.Is(err, fs.ErrNotExist) {
				return &Error{Code: codeOf(err), Doing: "remove snapshot", Path: snap.Path, Err: err}
			}
		}
	}
	return nil
}

// Trouble returns what went wrong in the last daily snapshot; nil when it was
// made. Work goes on without one.
func (s *Store) Trouble() error {
	s.state.Lock()
	defer s.state.Unlock()
	return s.state.trouble
}

// snapshotOfDay takes the daily snapshot when this day has none yet, and thins
// the older ones. The caller is the only writer.
func (s *Store) snapshotOfDay(ctx context.Context) {
	today := s.today()
	s.state.Lock()
	done := s.state.snapshotDay == today
	s.state.snapshotDay = today
	s.state.Unlock()
	if done {
		return
	}
	err := s.snapshotOnce(ctx, today)
	s.state.Lock()
	s.state.trouble = err
	s.state.Unlock()
}

// snapshotOnce takes the daily snapshot unless a run before took it.
func (s *Store) snapshotOnce(ctx context.Context, today record.Date) error {
	list, err := s.Snapshots()
	if err != nil {
		return err
	}
	zone := s.options.Clock().Location()
	taken := slices.ContainsFunc(list, func(snap Snapshot) bool {
		return snap.Reason == SnapshotDaily && record.DateOf(snap.At.In(zone)) == today
	})
	if !taken {
		if err := s.snapshot(ctx, SnapshotDaily); err != nil {
			return err
		}
		if list, err = s.Snapshots(); err != nil {
			return err
		}
	}
	return s.RemoveSnapshots(toThin(list, today, zone))
}

// snapshot copies the database into the folder of the snapshots.
func (s *Store) snapshot(ctx context.Context, reason SnapshotReason) error {
	path, err := s.snapshotPath(reason)
	if err != nil {
		return err
	}
	s.tell(StageCopying)
	if err := copyFile(ctx, s.path(), forCopying, path, path+unfinished); err != nil {
		return err
	}
	_ = writeSum(path, false) // a copy without a digest is a copy too
	return nil
}

// snapshotPath is a new name in the folder of the snapshots, which is made.
func (s *Store) snapshotPath(reason SnapshotReason) (string, error) {
	folder := filepath.Join(s.dir, snapshotFolder)
	if err := makeFolder(folder); err != nil {
		return "", err
	}
	for at := s.now(); ; at = at.Add(time.Millisecond) {
		path := filepath.Join(folder, string(reason)+"-"+at.Format(stampLayout)+".db")
		if _, err := os.Lstat(path); errors.Is(err, fs.ErrNotExist) {
			return path, nil
		} else if err != nil {
			return "", &Error{Code: codeOf(err), Doing: "name snapshot", Path: path, Err: err}
		}
	}
}

// copyFile writes a compact copy of the database at from to the path
// to, by way of the path part, so that there is a whole copy or none.
func copyFile(ctx context.Context, from string, how use, to, part string) error {
	if err := makeEmpty(part); err != nil {
		return err
	}
	db, err := connect(from, how)
	if err == nil {
		err = errors.Join(copyInto(ctx, db, part), disconnect(db))
	}
	if err == nil {
		err = syncFile(part)
	}
	if err == nil {
		err = moveInto(part, to)
	}
	if err != nil {
		return errors.Join(fail(err, "copy database"), os.Remove(part))
	}
	return nil
}

// Package store keeps the practice's records: one SQLite database in the
// user's own data folder, reached through GORM. [Open] makes the folder and the
// file, readable by the user only, checks the whole file, brings it up to date
// and takes the snapshot of the day. One running program has a folder at a time.
//
// # Whole records in, whole records out
//
// The structs of package record are the interface. A load returns an athlete,
// a test, a plan or a trip with everything in it; a save takes the whole
// struct, compares it with what is kept, and in one transaction writes the rows
// that differ and one [record.Change] for each field that differs: what was
// there before and after, when, by whom and why. Saves made in one visit to a
// field are one change. A row that left the struct is marked deleted, never
// removed; put it back with its id and it lives again, so undo is a save of
// the earlier struct.
//
// A save returns the struct as it is kept now. Take its Meta over before the
// next save: a struct whose ChangedAt is not the kept one is stale and refused
// with CodeConflict, so that no screen wipes what another wrote. A row of a list
// may come without an id and gets one; a screen that saves while typing gives
// ids itself ([record.NewID]), so that it knows them.
//
// A closed test and an agreed plan refuse saves with CodeClosed until they are
// reopened with a reason; [Store.CloseTest] and [Store.AgreePlan] freeze them
// in the same transaction. What comes later by its nature stays open: the
// laboratory's values of a waiting test, the reviews and the dates of the steps
// of an agreed plan.
//
// # What is promised
//
// When a save returns without an error its bytes are on the disk. When a call
// fails nothing of it was kept. All calls may come from several goroutines at once;
// a context ends the waiting for another writer and the long calls, and a save
// that has begun to commit is finished. Errors are of type [Error] with a code
// out of a closed set. Files of every earlier version open.
package store

import (
	"context"
	"errors"
	"fmt"
	"io/fs"
	"path/filepath"
	"sync"
	"sync/atomic"
	"time"

	"github.com/go-gormigrate/gormigrate/v2"
	"gorm.io/gorm"

	"ebbwell/internal/record"
)

// Options say how a data folder is opened.
type Options struct {
	// Clock tells the time; time.Now when nil. Its zone says when a day begins.
	Clock func() time.Time
	// By is who makes the entries; see [Store.SetBy].
	By string
	// ReadOnly opens for reading: nothing is made, brought up to date or
	// snapshotted, and every write fails with CodeReadOnly.
	ReadOnly bool

	// AsItIs opens a file though a byte of it is not as this program wrote it.
	AsItIs bool

	// Progress is told what opening is doing, on the goroutine that opens; nil
	// when nobody wants to know.
	Progress func(Progress)

	// versions replaces the known changes of shape in tests.
	versions []*gormigrate.Migration
}

// Stage is a part of opening a data folder that may take a while.
type Stage string

// The stages, in their order; a folder need not go through all of them.
const (
	// StageChecking reads the whole file and looks for damage.
	StageChecking Stage = "checking"
	// StageCopying makes a snapshot: the day's, or one from before a change of shape.
	StageCopying Stage = "copying"
	// StageRestoring puts a snapshot in the place of the file.
	StageRestoring Stage = "restoring"
	// StageChanging brings the file to the shape of this version.
	StageChanging Stage = "changing"
)

// Progress tells what opening is doing.
type Progress struct {
	Stage Stage
	// Bytes is the size of the database.
	Bytes int64
}

// filled puts in what was left out.
func (o Options) filled() Options {
	if o.Clock == nil {
		o.Clock = time.Now
	}
	if o.Progress == nil {
		o.Progress = func(Progress) {}
	}
	if o.versions == nil {
		o.versions = versions()
	}
	return o
}

// Store is an open data folder. Make it with [Open].
type Store struct {
	dir     string
	options Options
	shapes  map[record.Kind]*shape
	lock    locks
	// file is the database: in the folder, or where a link in it leads.
	file string
	// gate is held for reading by every call, and for writing while the file
	// is replaced or rewritten; files is nil while the store is closed.
	gate  sync.RWMutex
	files *handles
	// turn is the right to write: one holder at a time.
	turn  chan struct{}
	state state
	// written counts what was written, see [Store.Written].
	written atomic.Uint64
}

// handles are the connections to one file; identity tells that file from any
// other, whatever has its name.
type handles struct {
	writer, reader *gorm.DB
	identity       fs.FileInfo
	people         keptList
}

// state is what changes while a store is open.
type state struct {
	sync.Mutex
	by string
	// snapshotDay is the day of the last daily snapshot, trouble its error.
	snapshotDay record.Date
	trouble     error
	// aside is true once a copy was set aside because another file took the
	// place of the one that is open.
	aside bool
}

// Open opens a data folder, making it and the database in it when absent. The
// error's code says what stands in the way: CodeInUse, CodeReadOnly,
// CodeNoSpace, CodeDamaged (also when the file is gone but snapshots are
// there), CodeAltered, CodeNewer, CodeDisk.
func Open(dir string, o Options) (*Store, error) { return OpenContext(context.Background(), dir, o) }

// OpenContext is [Open] with a way to stop: when the context ends, checking,
// copying and changing the shape stop, the file is as it was, and the error is
// the context's.
func OpenContext(ctx context.Context, dir string, o Options) (*Store, error) {
	s, err := newStore(dir, o)
	if err != nil {
		return nil, err
	}
	if err := s.enter(o.ReadOnly); err != nil {
		return nil, s.offer(err)
	}
	if err := s.openFiles(ctx); err != nil {
		return nil, errors.Join(s.offer(err), s.lock.Close())
	}
	if err := errors.Join(s.endOutgoing(), s.endErasing(ctx)); err != nil {
		return nil, errors.Join(s.offer(err), s.Close())
	}
	return s, nil
}

// newStore makes a store that has opened nothing yet.
func newStore(dir string, o Options) (*Store, error) {
	dir, err := filepath.Abs(dir)
	if err != nil {
		return nil, fail(err, "find data folder")
	}
	shapes, err := newShapes()
	if err != nil {
		return nil, err
	}
	s := &Store{dir: dir, file: filepath.Join(dir, fileName), options: o.filled(), shapes: shapes, turn: make(chan struct{}, 1)}
	s.state.by = o.By
	return s, nil
}

// enter makes the folder, sees that it can be written, finds the database and
// locks the folder, and the one a link in it leads to.
func (s *Store) enter(looking bool) error {
	if !looking {
		if err := makeFolder(s.dir); err != nil {
			return err
		}
		if err := tryWriting(s.dir); err != nil {
			return err
		}
	}
	lock, err := takeLock(s.dir, looking)
	if err != nil {
		return err
	}
	s.lock = locks{lock}
	if err := s.follow(looking); err != nil {
		return errors.Join(err, s.lock.Close())
	}
	return nil
}

// follow finds where the database is when a link stands in its place, and locks
// that folder too: two folders with a link to one file are one.
func (s *Store) follow(looking bool) error {
	target, err := behindLink(s.file)
	if err != nil || target == s.file {
		return err
	}
	s.file = target
	same, err := sameFolder(filepath.Dir(target), s.dir)
	if err != nil || same {
		return fail(err, "follow the link to the database")
	}
	lock, err := takeLock(filepath.Dir(target), looking)
	if err != nil {
		return err
	}
	s.lock = append(s.lock, lock)
	return nil
}

// offer puts the snapshots into an error after which one may be restored.
//
// It is called with the gate held, or by who alone has the store.
func (s *Store) offer(err error) error {
	var own *Error
	if errors.As(err, &own) {
		damaged := own.Code == CodeDamaged || own.Code == CodeAltered || own.Code == CodeNewer
		if own.Path == "" && (damaged || s.files == nil || own.Code == CodeDisk || own.Code == CodeReadOnly) {
			own.Path = s.path()
		}
		if damaged {
			own.Snapshots, _ = Snapshots(s.dir)
		}
	}
	return err
}

// path is the database file.
func (s *Store) path() string { return s.file }

// Dir returns the data folder as an absolute path.
func (s *Store) Dir() string { return s.dir }

// Engine names the database engine and its version, for who reports a fault.
func (s *Store) Engine(ctx context.Context) (name string, err error) {
	err = s.read(ctx, "ask for the version of the engine", func(tx *gorm.DB) error {
		name, err = engineOf(tx)
		return err
	})
	return name, err
}

// tell says what opening is doing.
func (s *Store) tell(stage Stage) {
	size, err := sizeOf(s.path())
	if err != nil {
		size = 0 // it is being made
	}
	s.options.Progress(Progress{Stage: stage, Bytes: size})
}

// SetBy changes who makes the entries from now on.
func (s *Store) SetBy(name string) {
	s.state.Lock()
	defer s.state.Unlock()
	s.state.by = name
}

// Close waits for the calls that run, closes the file and frees the folder.
// Later calls fail with CodeNotOpen.
func (s *Store) Close() error {
	s.gate.Lock()
	defer s.gate.Unlock()
	if s.files == nil {
		return nil
	}
	mine, _ := s.inPlace()
	err := s.closeFiles()
	if err == nil && mine && !s.options.ReadOnly {
		s.sealClosed()
	}
	err = errors.Join(err, s.lock.Close())
	return fail(err, "close data folder")
}

// closeFiles closes the connections; the gate is held for writing.
func (s *Store) closeFiles() error {
	files := s.files
	s.files = nil
	if files.writer == nil {
		return disconnect(files.reader)
	}
	return errors.Join(disconnect(files.reader), disconnect(files.writer))
}

// now is the time for a record: UTC, in microseconds, which every database keeps.
func (s *Store) now() time.Time { return s.options.Clock().UTC().Truncate(time.Microsecond) }

// today is the day by the user's own clock.
func (s *Store) today() record.Date { return record.DateOf(s.options.Clock()) }

// read runs f on one state of the database. Drivers up to
// modernc.org/sqlite 1.23.1 could carry the end of one statement's context into the next one on
// the same connection, so the context is looked at between statements instead.
func (s *Store) read(ctx context.Context, doing string, f func(tx *gorm.DB) error) error {
	if err := s.mend(ctx); err != nil {
		return err
	}
	s.gate.RLock()
	defer s.gate.RUnlock()
	if s.files == nil {
		return &Error{Code: CodeNotOpen, Doing: doing, Path: s.dir}
	}
	if err := ctx.Err(); err != nil {
		return fmt.Errorf("%s: %w", doing, err)
	}
	db := s.files.reader.WithContext(context.WithoutCancel(ctx))
	return s.offer(fail(db.Transaction(f), doing))
}

// write runs f in a transaction of its own, after every other writer, and
// commits what it did unless it fails or the context has ended.
func (s *Store) write(ctx context.Context, doing string, f func(w *work) error) error {
	if err := s.mend(ctx); err != nil {
		return err
	}
	s.gate.RLock()
	defer s.gate.RUnlock()
	return s.writeHeld(ctx, doing, f)
}

// writeHeld is write for who holds the gate.
func (s *Store) writeHeld(ctx context.Context, doing string, f func(w *work) error) error {
	if s.files == nil {
		return &Error{Code: CodeNotOpen, Doing: doing, Path: s.dir}
	}
	if s.options.ReadOnly {
		return &Error{Code: CodeReadOnly, Doing: doing, Path: s.dir}
	}
	if err := s.takeTurn(ctx); err != nil {
		return fmt.Errorf("%s: %w", doing, err)
	}
	defer func() { <-s.turn }()
	s.snapshotOfDay(context.WithoutCancel(ctx))
	wrote := &work{shapes: s.shapes, peopleChange: true}
	err := s.transact(ctx, wrote, f)
	s.written.Add(1)
	if wrote.peopleChange {
		s.files.people.drop()
	} else if len(wrote.athletes) > 0 {
		s.files.people.touch(wrote.athletes)
	}
	return s.offer(fail(err, doing))
}

// Written is another number after every write, and after another file took the place of
// the one in use: what was read before may be other now.
func (s *Store) Written() uint64 { return s.written.Load() }

// takeTurn waits for the right to write.
func (s *Store) takeTurn(ctx context.Context) error {
	if err := ctx.Err(); err != nil {
		return err
	}
	select {
	case s.turn <- struct{}{}:
		return nil
	case <-ctx.Done():
		return ctx.Err()
	}
}

package store

import (
	"context"
	"encoding/binary"
	"errors"
	"fmt"
	"os"
	"path/filepath"
	"slices"
	"testing"
	"time"

	"gorm.io/gorm"
)

// pageBytes is the size of a page of the file.
const pageBytes = 4096

// harmed is a scene whose files are damaged again and again.
type harmed struct {
	folder string
	whole  []byte // the file as it was
	rows   string // what stood in it
	sum    []byte // its digest, and when it was written
	at     time.Time
}

// newHarmed makes a scene with all of it in the file and nothing in the log.
func newHarmed(t testing.TB) harmed {
	t.Helper()
	h := harmed{folder: filepath.Join(t.TempDir(), "scene")}
	makeScene(t, h.folder, false)
	rows, err := h.read()
	must(t, err)
	h.rows, h.whole, h.sum = rows, got(os.ReadFile(h.file()))(t), got(os.ReadFile(h.file()+sumEnd))(t)
	h.at = got(os.Stat(h.file()))(t).ModTime()
	if len(h.whole)%pageBytes != 0 || len(h.whole) < 50*pageBytes {
		t.Fatalf("the file has %d bytes", len(h.whole))
	}
	return h
}

func (h harmed) file() string { return filepath.Join(sceneAt(h.folder).data, fileName) }

// read opens the folder and reads all rows, as the program does.
func (h harmed) read() (rows string, err error) {
	p := sceneAt(h.folder)
	s, err := Open(p.data, Options{Clock: newClock().now}) // a day that has its copy
	if err != nil {
		return "", err
	}
	err = s.read(context.Background(), "read all", func(tx *gorm.DB) error {
		rows, err = writtenDown(tx)
		return err
	})
	return rows, errors.Join(err, s.Close())
}

// with puts a damaged file in the place of the other, as a disk does that changes what
// stands on it, and says what becomes of it: unseen is a value that changed and nothing
// noticed.
func (h harmed) with(t testing.TB, data []byte) (o outcome, unseen bool, err error) {
	t.Helper()
	for _, end := range besides() {
		must(t, remove(h.file()+end))
	}
	must(t, os.WriteFile(h.file(), data, 0o600))
	must(t, os.WriteFile(h.file()+sumEnd, h.sum, 0o600))
	must(t, os.Chtimes(h.file(), h.at, h.at))
	rows, err := h.read()
	var own *Error
	switch {
	case err == nil:
		return survived, rows != h.rows, nil
	case errors.As(err, &own) && (own.Code == CodeDamaged || own.Code == CodeAltered) && len(own.Snapshots) > 0 && own.Path != "":
		return offered, false, nil
	}
	return lost, false, err
}

// TestEveryPageZeroed: with any page of the file zeroed the folder opens with
// everything, or says that it is damaged and offers copies.
func TestEveryPageZeroed(t *testing.T) {
	h := newHarmed(t)
	line := tally{line: "page zeroed"}
	every := max(1, 12/(3*faultsOf(t)))
	for page := 0; page < len(h.whole)/pageBytes; page += every {
		data := slices.Clone(h.whole)
		clear(data[page*pageBytes : (page+1)*pageBytes])
		o, quiet, err := h.with(t, data)
		line.count(o)
		if o == lost || quiet {
			t.Errorf("page %d: %v, unseen %v", page+1, err, quiet)
		}
	}
	line.log(t)
}

// TestBytesFlipped: the same with one byte of each kind flipped on every page, inside a
// value too: none is read as another without a word.
func TestBytesFlipped(t *testing.T) {
	h := newHarmed(t)
	every := max(1, 40/(3*faultsOf(t)))
	for _, kind := range byteKinds() {
		line := tally{line: "byte flipped: " + kind.name}
		for page := 0; page < len(h.whole)/pageBytes; page += every {
			at, there := kind.at(h.whole[page*pageBytes:(page+1)*pageBytes], page == 0)
			if !there {
				continue
			}
			data := slices.Clone(h.whole)
			data[page*pageBytes+at] ^= 0xff
			o, quiet, err := h.with(t, data)
			line.count(o)
			if o == lost {
				t.Errorf("%s of page %d: %v", kind.name, page+1, err)
			}
			if quiet {
				t.Errorf("%s of page %d: another value is read and nothing says so", kind.name, page+1)
			}
		}
		line.log(t)
	}
}

// byteKind is a kind of byte by where it stands on a page of a tree, see
// https://www.sqlite.org/fileformat2.html; there is false where a page has none.
type byteKind struct {
	name string
	at   func(page []byte, first bool) (at int, there bool)
}

func byteKinds() []byteKind {
	head := func(n int) func([]byte, bool) (int, bool) {
		return func(_ []byte, first bool) (int, bool) {
			if first {
				return 100 + n, true
			}
			return n, true
		}
	}
	cells := func(page []byte, first bool) (at, n int) {
		start := 0
		if first {
			start = 100
		}
		n = int(binary.BigEndian.Uint16(page[start+3:]))
		if page[start] == 2 || page[start] == 5 { // with pages below
			return start + 12, n
		}
		return start + 8, n
	}
	list := []byteKind{
		{"kind of page", head(0)}, {"first gap", head(2)}, {"number of cells", head(4)}, {"begin of cells", head(6)},
		{"place of a cell", func(page []byte, first bool) (int, bool) {
			at, n := cells(page, first)
			return at + 1, n > 0
		}},
		{"length of a row", func(page []byte, first bool) (int, bool) {
			at, n := cells(page, first)
			if n == 0 || at+2 > len(page) {
				return 0, false
			}
			cell := int(binary.BigEndian.Uint16(page[at:]))
			return cell, cell > at && cell < len(page)
		}},
		{"head of a row", func(page []byte, first bool) (int, bool) {
			at, n := cells(page, first)
			if n == 0 || at+2 > len(page) {
				return 0, false
			}
			cell := int(binary.BigEndian.Uint16(page[at:])) + 4
			return cell, cell > at && cell < len(page)
		}},
		{"last byte of a page", func([]byte, bool) (int, bool) { return pageBytes - 1, true }},
		{"middle of a page", func([]byte, bool) (int, bool) { return pageBytes / 2, true }},
	}
	for _, n := range []int{0, 16, 18, 19, 20, 24, 28, 36, 44, 47, 56, 60, 68, 92, 96} {
		list = append(list, byteKind{fmt.Sprint("byte ", n, " of the file"), func(_ []byte, first bool) (int, bool) { return n, first }})
	}
	return list
}

// TestTornLog: a log that was cut off anywhere, or has a byte of it flipped, opens
// with all that was saved up to there and nothing half.
func TestTornLog(t *testing.T) {
	dir, c, ctx := t.TempDir(), newClock(), context.Background()
	s := got(Open(dir, Options{Clock: c.now}))(t)
	makeWorld(t, s)
	must(t, emptyLog(s.files.writer))
	states := []string{got(writtenDown(s.files.reader))(t)}
	p := &scene{data: dir, s: s}
	for n := range 3 {
		one := got(s.Tests(ctx, got(s.Athletes(ctx))(t)[0].ID))(t)[0]
		one.Note = fmt.Sprint("note ", n)
		got(s.SaveTest(ctx, one, Edit{}))(t)
		states = append(states, got(writtenDown(s.files.reader))(t))
	}
	file, log := got(os.ReadFile(s.path()))(t), got(os.ReadFile(s.path()+"-wal"))(t)
	must(t, p.s.Close())
	line := tally{line: "torn log"}
	step := max(97, len(log)/(8*faultsOf(t)))
	for at := 0; at < len(log); at += step {
		flipped := slices.Clone(log)
		flipped[at] ^= 0xff
		for _, torn := range [][]byte{log[:at], flipped} {
			o := tornLog(t, file, torn, states)
			line.count(o)
			if o == lost {
				t.Errorf("log of %d bytes, torn at %d", len(log), at)
			}
		}
	}
	line.log(t)
}

// tornLog opens a file with a log and compares what is there with what was saved.
func tornLog(t *testing.T, file, log []byte, states []string) outcome {
	t.Helper()
	dir := t.TempDir()
	must(t, os.WriteFile(filepath.Join(dir, fileName), file, 0o600))
	must(t, os.WriteFile(filepath.Join(dir, fileName+"-wal"), log, 0o600))
	s, err := Open(dir, Options{Clock: newClock().now})
	if err != nil {
		t.Log(err)
		return lost
	}
	rows, err := writtenDown(s.files.reader)
	must(t, errors.Join(err, s.Close()))
	if !slices.Contains(states, rows) {
		return lost
	}
	return survived
}

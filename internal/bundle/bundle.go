package bundle

import (
	"bufio"
	"compress/gzip"
	"encoding/json"
	"errors"
	"fmt"
	"io"
	"time"

	"ebbwell/internal/record"
)

// format and version begin a bundle; a program reads its own version and older ones.
const (
	format  = "ebbwell bundle"
	version = 1
)

// mostBytes is the most that is read of a bundle, unpacked.
const mostBytes = 256 << 20

// The ways in which reading fails.
var (
	// ErrForeign means: the file is no bundle.
	ErrForeign = errors.New("the file is no bundle")
	// ErrNewer means: a newer program wrote it.
	ErrNewer = errors.New("the bundle is of a newer program")
	// ErrDamaged means: it begins as a bundle and cannot be read, or does not hang
	// together.
	ErrDamaged = errors.New("the bundle is damaged")
	// ErrTooLarge means: there is more in it than is read.
	ErrTooLarge = errors.New("the bundle is too large")
)

// Records are athletes with what belongs to them: what a bundle holds, and what of the
// same a practice keeps.
type Records struct {
	Athletes []record.Athlete
	Tests    []record.Test
	Plans    []record.Plan
	// Products of a bundle are those that tests, plans and habits name, as far as they
	// are the practice's own; of a practice, all of its own.
	Products []record.Product
	Changes  []record.Change
	Frozen   []record.Frozen
	Raw      []record.RawText
	// Prints are the pages kept of the athletes; of a practice without their bytes.
	Prints []record.Print
}

// Bundle is what is given.
type Bundle struct {
	// From is the practice, By who made it, Made when.
	From, By string
	Made     time.Time
	// Records are written beside these, each list by its own name.
	Records
}

// head is the first line of a bundle, which every version can read.
type head struct {
	Format  string
	Version int
	// Program is the version of the program that wrote it.
	Program string
}

// Write writes a bundle; it is not locked.
func Write(to io.Writer, b Bundle, program string) error {
	packed := gzip.NewWriter(to)
	e := json.NewEncoder(packed)
	err := e.Encode(head{format, version, program})
	if err == nil {
		err = e.Encode(b)
	}
	if err = errors.Join(err, packed.Close()); err != nil {
		return fmt.Errorf("write a bundle: %w", err)
	}
	return nil
}

// Read reads a bundle and sees that it hangs together. What the reader below returns
// as its error stays in the chain.
func Read(from io.Reader) (Bundle, error) {
	packed, err := gzip.NewReader(from)
	if err != nil {
		return Bundle{}, fmt.Errorf("%w: %w", ErrForeign, err)
	}
	limited := &io.LimitedReader{R: packed, N: mostBytes}
	in := bufio.NewReader(limited)
	line, err := in.ReadBytes('\n')
	var h head
	if err != nil || json.Unmarshal(line, &h) != nil || h.Format != format {
		return Bundle{}, errors.Join(ErrForeign, err)
	}
	if h.Version > version {
		return Bundle{}, ErrNewer
	}
	var b Bundle
	if err := json.NewDecoder(in).Decode(&b); err != nil {
		if limited.N <= 0 {
			return Bundle{}, ErrTooLarge
		}
		return Bundle{}, fmt.Errorf("%w: %w", ErrDamaged, err)
	}
	// To the end: what locks a file tells only there whether it is whole.
	if _, err := io.Copy(io.Discard, in); err != nil {
		return Bundle{}, fmt.Errorf("%w: %w", ErrDamaged, err)
	}
	if err := b.check(); err != nil {
		return Bundle{}, fmt.Errorf("%w: %w", ErrDamaged, err)
	}
	return b, nil
}

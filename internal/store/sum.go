package store

import (
	"bytes"
	"context"
	"crypto/sha256"
	"encoding/hex"
	"errors"
	"fmt"
	"io"
	"io/fs"
	"os"
	"path/filepath"
	"strconv"
	"strings"
)

// The engine finds a page that is no page, and no byte of a value that has become
// another. So a database that nobody writes has its digest beside it: every snapshot,
// every backup without a passphrase (one with a passphrase is sealed byte by byte),
// and the file itself from when it was closed to when it is opened again. While it is
// open, and after a program was killed, there is none.

// sumEnd is behind the name of a database for the file with its digest, SHA-256
// (FIPS 180-4), in the form that the command sha256sum -c reads.
const sumEnd = ".sha256"

// modifiedStart begins a line, a comment to that command, with the time at which the
// file was written last, in nanoseconds since 1970: what the disk changes by itself
// leaves that time as it is, and what another program writes does not.
const modifiedStart = "# modified "

// Seal says what is known of the bytes of a database.
type Seal string

// The seals.
const (
	// SealNone: there is no digest beside it.
	SealNone Seal = "none"
	// SealWhole: every byte is as it was written.
	SealWhole Seal = "whole"
	// SealBroken: a byte is not as it was written.
	SealBroken Seal = "broken"
)

// sumText is the digest of a database as it stands beside it; timed also says when the
// file was written last.
func sumText(path string, timed bool) (string, error) {
	info, err := os.Stat(path)
	if err != nil {
		return "", err
	}
	sum, err := digest(context.Background(), path)
	if err != nil {
		return "", err
	}
	text := sum + "  " + filepath.Base(path) + "\n"
	if timed {
		text = modifiedStart + strconv.FormatInt(info.ModTime().UnixNano(), 10) + "\n" + text
	}
	return text, nil
}

// writeSum puts the digest of a database beside it. Half a digest does not happen.
func writeSum(path string, timed bool) error {
	text, err := sumText(path, timed)
	if err != nil {
		return err
	}
	part := path + sumEnd + unfinished
	err = os.WriteFile(part, []byte(text), 0o600)
	if err == nil {
		err = sealFile(part)
	}
	if err == nil {
		err = moveInto(part, path+sumEnd)
	}
	if err != nil {
		return errors.Join(err, remove(part))
	}
	return nil
}

// digest is the SHA-256 of a file in hexadecimal digits.
func digest(ctx context.Context, path string) (string, error) {
	f, err := os.Open(path)
	if err != nil {
		return "", err
	}
	defer f.Close() //nolint:errcheck // it was only read
	sum := sha256.New()
	if _, err := io.Copy(sum, stoppable{ctx.Err, f}); err != nil {
		return "", err
	}
	return hex.EncodeToString(sum.Sum(nil)), nil
}

// sealOf compares a database with the digest beside it. A digest with another time
// than the file's is of what stood there before, and says nothing.
func sealOf(ctx context.Context, path string) (Seal, error) {
	text, err := os.ReadFile(path + sumEnd)
	if errors.Is(err, fs.ErrNotExist) {
		return SealNone, nil
	}
	if err != nil {
		return SealNone, err
	}
	info, err := os.Stat(path)
	if err != nil {
		return SealNone, err
	}
	sum := ""
	for line := range strings.Lines(string(bytes.ToValidUTF8(text, nil))) {
		if at, timed := strings.CutPrefix(line, modifiedStart); timed {
			if strings.TrimSpace(at) != strconv.FormatInt(info.ModTime().UnixNano(), 10) {
				return SealNone, nil
			}
			continue
		}
		sum, _, _ = strings.Cut(line, " ")
	}
	if len(sum) != hex.EncodedLen(sha256.Size) {
		return SealNone, nil // not one of ours, or a damaged one
	}
	now, err := digest(ctx, path)
	if err != nil {
		return SealNone, err
	}
	if now != sum {
		return SealBroken, nil
	}
	return SealWhole, nil
}

// unaltered returns an error with CodeAltered when a byte of the database is not as it
// was when it was closed. A log beside it says that it was not closed.
func (s *Store) unaltered(ctx context.Context) error {
	if s.options.AsItIs {
		return nil
	}
	if logWaits(s.path()) {
		return nil
	}
	return sealed(ctx, s.path())
}

// sealed returns an error with CodeAltered when a byte of a database is not as it was
// written.
func sealed(ctx context.Context, path string) error {
	seal, err := sealOf(ctx, path)
	if err != nil {
		return fail(err, "compare with the digest")
	}
	if seal == SealBroken {
		return &Error{Code: CodeAltered, Doing: "compare with the digest", Path: path, Err: fmt.Errorf("it is not what %s says", filepath.Base(path)+sumEnd)}
	}
	return nil
}

// unseal takes the digest away before the file is written.
func (s *Store) unseal() error { return remove(s.path() + sumEnd) }

// sealClosed puts the digest beside the file that was closed. Without one (a full
// disk, somebody who still reads) it is opened unchecked the next time.
func (s *Store) sealClosed() {
	if logWaits(s.path()) {
		return
	}
	_ = writeSum(s.path(), true)
}

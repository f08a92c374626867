// Package lock locks a file with a passphrase. What is locked is written for a
// key ([Key.To]); the key is itself locked with the passphrase and stands at
// the head of every file. So copies can be locked without asking for the
// passphrase each time, and each is opened with the passphrase alone.
//
// The locking is age's (age-encryption.org/v1: X25519, ChaCha20-Poly1305,
// scrypt for the passphrase); only the head before it is this package's own.
package lock

import (
	"bufio"
	"bytes"
	"encoding/base64"
	"errors"
	"fmt"
	"io"
	"strings"

	"filippo.io/age"
)

// Work is how hard a passphrase is made to guess: 2 to this power rounds of
// scrypt, as age's own default; about a second on a laptop.
const Work = 18

// ShortestPassphrase is the least length of a passphrase, in characters (own rule).
const ShortestPassphrase = 10

// magic begins a locked file.
const magic = "ebbwell locked 1 "

// mostHead is the longest first line that is read.
const mostHead = 8 << 10

// The ways in which opening fails.
var (
	// ErrPassphrase means: the passphrase is another.
	ErrPassphrase = errors.New("the passphrase does not open it")
	// ErrNotLocked means: the file is none that this package wrote.
	ErrNotLocked = errors.New("the file is not a locked one")
	// ErrDamaged means: the file was changed or cut off.
	ErrDamaged = errors.New("the locked file is damaged")
	// ErrShort means: the passphrase is too short.
	ErrShort = errors.New("the passphrase is too short")
)

// Key is a pair of keys whose secret half is locked with a passphrase.
type Key struct {
	// Locked is the secret half, locked, as one line of text; To the public half.
	Locked, To string
}

// NewKey makes a key and locks it; work is [Work], less in tests.
func NewKey(passphrase string, work int) (Key, error) {
	if len([]rune(passphrase)) < ShortestPassphrase {
		return Key{}, ErrShort
	}
	secret, err := age.GenerateX25519Identity()
	if err != nil {
		return Key{}, fmt.Errorf("make a key: %w", err)
	}
	lockFor, err := age.NewScryptRecipient(passphrase)
	if err != nil {
		return Key{}, fmt.Errorf("lock the key: %w", err)
	}
	lockFor.SetWorkFactor(work)
	var out bytes.Buffer
	w, err := age.Encrypt(&out, lockFor)
	if err == nil {
		_, err = io.WriteString(w, secret.String())
	}
	if err == nil {
		err = w.Close()
	}
	if err != nil {
		return Key{}, fmt.Errorf("lock the key: %w", err)
	}
	return Key{Locked: base64.StdEncoding.EncodeToString(out.Bytes()), To: secret.Recipient().String()}, nil
}

// Writer returns what locks all that is written to it; nothing is whole before
// it is closed.
func (k Key) Writer(to io.Writer) (io.WriteCloser, error) {
	public, err := age.ParseX25519Recipient(k.To)
	if err != nil {
		return nil, fmt.Errorf("lock: %w", err)
	}
	if _, err := io.WriteString(to, magic+k.Locked+"\n"); err != nil {
		return nil, fmt.Errorf("lock: %w", err)
	}
	w, err := age.Encrypt(to, public)
	if err != nil {
		return nil, fmt.Errorf("lock: %w", err)
	}
	return w, nil
}

// Locked reports whether a file that begins so is a locked one.
func Locked(head []byte) bool { return bytes.HasPrefix(head, []byte(magic)) }

// Reader opens what [Key.Writer] locked. Reading on returns [ErrDamaged] where
// the file was changed; what was read before it must not be used then.
func Reader(from io.Reader, passphrase string) (io.Reader, error) {
	in := bufio.NewReaderSize(from, mostHead)
	line, err := in.ReadSlice('\n')
	if err != nil || !Locked(line) {
		return nil, ErrNotLocked
	}
	locked, err := base64.StdEncoding.DecodeString(strings.TrimSpace(string(line[len(magic):])))
	if err != nil {
		return nil, ErrDamaged
	}
	secret, err := unlock(locked, passphrase)
	if err != nil {
		return nil, err
	}
	r, err := age.Decrypt(in, secret)
	if err != nil {
		return nil, fmt.Errorf("%w: %w", ErrDamaged, err)
	}
	return whole{r}, nil
}

// unlock opens the secret half of a key.
func unlock(locked []byte, passphrase string) (age.Identity, error) {
	with, err := age.NewScryptIdentity(passphrase)
	if err != nil {
		return nil, ErrPassphrase
	}
	with.SetMaxWorkFactor(Work)
	r, err := age.Decrypt(bytes.NewReader(locked), with)
	if none := (*age.NoIdentityMatchError)(nil); errors.As(err, &none) {
		return nil, ErrPassphrase
	}
	if err != nil {
		return nil, fmt.Errorf("%w: %w", ErrDamaged, err)
	}
	text, err := io.ReadAll(io.LimitReader(r, mostHead))
	if err != nil {
		return nil, fmt.Errorf("%w: %w", ErrDamaged, err)
	}
	secret, err := age.ParseX25519Identity(string(text))
	if err != nil {
		return nil, fmt.Errorf("%w: %w", ErrDamaged, err)
	}
	return secret, nil
}

// whole names what is wrong with a file by this package's error.
type whole struct{ r io.Reader }

// Read reads on.
func (w whole) Read(p []byte) (int, error) {
	n, err := w.r.Read(p)
	if err != nil && err != io.EOF { //nolint:errorlint // io.Reader returns io.EOF itself
		err = fmt.Errorf("%w: %w", ErrDamaged, err)
	}
	return n, err
}

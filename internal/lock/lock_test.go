package lock

import (
	"bytes"
	"errors"
	"io"
	"strings"
	"testing"
)

const phrase = "four quiet herons wade"

// quick is little enough work for tests.
const quick = 4

// locked locks a text.
func locked(t testing.TB, text string) []byte {
	t.Helper()
	k, err := NewKey(phrase, quick)
	if err != nil {
		t.Fatal(err)
	}
	var out bytes.Buffer
	w, err := k.Writer(&out)
	if err != nil {
		t.Fatal(err)
	}
	if _, err := io.WriteString(w, text); err != nil {
		t.Fatal(err)
	}
	if err := w.Close(); err != nil {
		t.Fatal(err)
	}
	return out.Bytes()
}

// opened opens a locked file and reads all of it.
func opened(file []byte, with string) (string, error) {
	r, err := Reader(bytes.NewReader(file), with)
	if err != nil {
		return "", err
	}
	data, err := io.ReadAll(r)
	return string(data), err
}

func TestWhatWasLockedIsOpened(t *testing.T) {
	for _, text := range []string{"", "one", strings.Repeat("sweat rate ", 30000)} {
		file := locked(t, text)
		if text != "" && bytes.Contains(file, []byte(text)) {
			t.Error("the text stands in the file")
		}
		if got, err := opened(file, phrase); err != nil || got != text {
			t.Errorf("%d characters came back as %d, %v", len(text), len(got), err)
		}
		if _, err := opened(file, phrase+"s"); !errors.Is(err, ErrPassphrase) {
			t.Errorf("another passphrase: %v", err)
		}
		if !Locked(file) || Locked([]byte("SQLite format 3\x00")) {
			t.Error("a locked file is not told from another")
		}
	}
}

// TestEveryChangeIsFound changes each byte and cuts at each: nothing is read as if whole.
func TestEveryChangeIsFound(t *testing.T) {
	const text = "mass before 72.4 kg"
	file := locked(t, text)
	for i := range file {
		changed := bytes.Clone(file)
		changed[i] ^= 1
		if got, err := opened(changed, phrase); err == nil {
			t.Fatalf("byte %d changed, and %q is read", i, got)
		}
		if got, err := opened(file[:i], phrase); err == nil {
			t.Fatalf("cut at %d, and %q is read", i, got)
		}
	}
}

func TestShortPassphrase(t *testing.T) {
	if _, err := NewKey("kurz", quick); !errors.Is(err, ErrShort) {
		t.Errorf("a short passphrase: %v", err)
	}
}

func TestNotLocked(t *testing.T) {
	for _, file := range []string{"", "SQLite format 3", strings.Repeat("x", 1<<20)} {
		if _, err := Reader(strings.NewReader(file), phrase); !errors.Is(err, ErrNotLocked) {
			t.Errorf("%.20q: %v", file, err)
		}
	}
}

func FuzzReader(f *testing.F) {
	f.Add([]byte(magic + "AAAA\n"))
	f.Add([]byte("x"))
	f.Add(locked(f, "x"))
	f.Fuzz(func(t *testing.T, file []byte) {
		if got, err := opened(file, "another passphrase"); err == nil {
			t.Errorf("%q is read with a passphrase it was not locked with", got)
		}
	})
}

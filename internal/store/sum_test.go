package store

import (
	"bytes"
	"context"
	"errors"
	"os"
	"os/exec"
	"path/filepath"
	"testing"
	"time"

	"ebbwell/internal/record"
)

// flip changes the last letter of the note where it stands in a file, and leaves the
// file's time as it was, as a failing disk does.
func flip(t testing.TB, path string) {
	t.Helper()
	data, at := got(os.ReadFile(path))(t), got(os.Stat(path))(t).ModTime()
	i := bytes.Index(data, []byte(noted))
	if i < 0 {
		t.Fatalf("%q is not in %s", noted, path)
	}
	data[i+len(noted)-1] ^= 1
	must(t, os.WriteFile(path, data, 0o600))
	must(t, os.Chtimes(path, at, at))
}

const noted = "a note of 64.3 kg"

// closedFolder is a data folder of yesterday and today that was closed, with a note in
// the file and in the snapshot.
func closedFolder(t testing.TB) (dir string, id record.ID) {
	t.Helper()
	dir, c := t.TempDir(), newClock()
	s := got(Open(dir, Options{Clock: c.now}))(t)
	a := got(s.SaveAthlete(context.Background(), record.Athlete{Name: "Wren Calloway", Note: noted}, Edit{}))(t)
	c.add(24 * time.Hour)
	got(s.SaveGroup(context.Background(), record.Group{Name: "next day"}, Edit{}))(t)
	must(t, s.Close())
	return dir, a.ID
}

// TestAlteredFile: a byte of a value that became another while the file was closed is
// seen; the file opens all the same when asked to, and is then sealed anew.
func TestAlteredFile(t *testing.T) {
	dir, id := closedFolder(t)
	file := filepath.Join(dir, fileName)
	flip(t, file)
	for _, o := range []Options{{}, {ReadOnly: true}} {
		_, err := Open(dir, o)
		wantCode(t, err, CodeAltered)
		var own *Error
		if !errors.As(err, &own) || len(own.Snapshots) == 0 || own.Path != file {
			t.Fatalf("nothing is offered: %+v", err)
		}
	}
	s := got(Open(dir, Options{AsItIs: true}))(t)
	if a := got(s.LoadAthlete(context.Background(), id))(t); a.Note == noted {
		t.Error("the byte was not flipped")
	}
	if _, err := os.Stat(file + sumEnd); !errors.Is(err, os.ErrNotExist) {
		t.Errorf("an open file has a digest beside it: %v", err)
	}
	must(t, s.Close())
	must(t, got(Open(dir, Options{}))(t).Close())
}

// TestWrittenByAnother: a file that another program wrote, an older version or a person
// with a copy, opens: the digest is of what stood there before.
func TestWrittenByAnother(t *testing.T) {
	dir, _ := closedFolder(t)
	file := filepath.Join(dir, fileName)
	flip(t, file)
	later := got(os.Stat(file))(t).ModTime().Add(time.Second)
	must(t, os.Chtimes(file, later, later))
	must(t, got(Open(dir, Options{}))(t).Close())
	for _, text := range []string{"", "no digest", modifiedStart + "x\n", "\xff\xfe\x00"} {
		must(t, os.WriteFile(file+sumEnd, []byte(text), 0o600))
		must(t, got(Open(dir, Options{}))(t).Close())
	}
}

// TestAlteredSnapshot: a snapshot is not restored once a byte of it is another, by
// whatever time it has; erasing an athlete writes its digest anew.
func TestAlteredSnapshot(t *testing.T) {
	dir, id := closedFolder(t)
	snap := got(Snapshots(dir))(t)[0]
	if seal := got(sealOf(context.Background(), snap.Path))(t); seal != SealWhole {
		t.Fatalf("the snapshot is %s", seal)
	}
	if command, err := exec.LookPath("sha256sum"); err == nil {
		check := exec.Command(command, "-c", filepath.Base(snap.Path)+sumEnd)
		check.Dir = filepath.Dir(snap.Path)
		if out, err := check.CombinedOutput(); err != nil {
			t.Errorf("the system's own command says %s: %v", out, err)
		}
	}
	flip(t, snap.Path)
	now := time.Now()
	must(t, os.Chtimes(snap.Path, now, now))
	s := got(Open(dir, Options{}))(t)
	wantCode(t, s.Restore(context.Background(), snap), CodeAltered)
	if a := got(s.LoadAthlete(context.Background(), id))(t); a.Note != noted {
		t.Errorf("the records are %q", a.Note)
	}
	got(s.EraseAthlete(context.Background(), id, false))(t)
	if seal := got(sealOf(context.Background(), snap.Path))(t); seal != SealWhole {
		t.Errorf("a snapshot that was written anew is %s", seal)
	}
	must(t, s.RemoveSnapshots([]Snapshot{snap}))
	if _, err := os.Stat(snap.Path + sumEnd); !errors.Is(err, os.ErrNotExist) {
		t.Errorf("the digest stays behind: %v", err)
	}
	must(t, s.Close())
}

// TestSealOfBackup: what is known of a backup's bytes is said before it is restored.
func TestSealOfBackup(t *testing.T) {
	dir, _ := closedFolder(t)
	s, ctx, to := got(Open(dir, Options{}))(t), context.Background(), filepath.Join(t.TempDir(), "records.db")
	must(t, s.Backup(ctx, to))
	must(t, s.Backup(ctx, to)) // the second takes the place of the first
	seal := func() Seal {
		t.Helper()
		o := got(OpenBackup(ctx, to, ""))(t)
		must(t, o.Close())
		return o.Seal
	}
	if is := seal(); is != SealWhole {
		t.Errorf("a fresh backup is %s", is)
	}
	flip(t, to)
	if is := seal(); is != SealBroken {
		t.Errorf("with a byte flipped it is %s", is)
	}
	must(t, os.Remove(to+sumEnd))
	if is := seal(); is != SealNone {
		t.Errorf("without a digest it is %s", is)
	}
	must(t, s.Close())
}

// TestFlippedStream: a byte of a frozen copy that became another makes it unreadable,
// or changes nothing of what is read.
func TestFlippedStream(t *testing.T) {
	plain := bytes.Repeat([]byte(`{"sweat":1.234,"sodium":41}`), 20)
	kept := got(packed(record.Frozen{Inputs: plain}))(t)
	var u unpacker
	for i := range kept.Inputs {
		for bit := range 8 {
			stream := bytes.Clone(kept.Inputs)
			stream[i] ^= 1 << bit
			if out, err := u.unpack(stream); err == nil && !bytes.Equal(out, plain) {
				t.Fatalf("byte %d, bit %d: another copy is read", i, bit)
			}
		}
	}
}

package store

import (
	"bytes"
	"context"
	"os"
	"path/filepath"
	"testing"

	"ebbwell/internal/record"
)

// harm flips a byte of the file in the middle of what is looked for, as a disk does.
func harm(t testing.TB, path string, what []byte) {
	t.Helper()
	if what == nil {
		return
	}
	data := got(os.ReadFile(path))(t)
	if n := bytes.Count(data, what); n != 1 {
		t.Fatalf("%.20q stands in the file %d times", what, n)
	}
	f := got(os.OpenFile(path, os.O_RDWR, 0))(t)
	at := bytes.Index(data, what) + len(what)/2
	got(f.WriteAt([]byte{data[at] ^ 0x01}, int64(at)))(t)
	must(t, f.Close())
}

// closedWorld is a folder with a closed test, its copy and a page; the file is closed.
func closedWorld(t testing.TB, dir string) (one record.Test, page record.Print, packedInputs []byte) {
	t.Helper()
	s, ctx := got(Open(dir, Options{Clock: newClock().now, By: "Kit"}))(t), context.Background()
	one, ref := sheet(t, s)
	one.Note = "a note that stands in the file once: Quillfeather"
	one = got(s.SaveTest(ctx, one, Edit{}))(t)
	must(t, s.write(ctx, "forget history", func(w *work) error { return w.tx.Where("1 = 1").Delete(&record.Change{}).Error }))
	one = got(s.CloseTest(ctx, one, Freezing{Inputs: []byte(`{"in":"a long enough text, not to be packed into nothing"}`), Results: []byte(`{}`)}, Edit{}))(t)
	page = got(s.SavePrint(ctx, record.Print{AthleteID: one.AthleteID, Kind: ref.Kind, Record: ref.ID, Page: "report", Language: "en", Bytes: []byte("%PDF-1.7 a page that is kept")}))(t)
	must(t, s.files.reader.Raw("SELECT inputs FROM frozen").Row().Scan(&packedInputs))
	must(t, s.snapshot(ctx, SnapshotDaily))
	must(t, s.Close())
	return one, page, packedInputs
}

// TestAlteredWhileOpen: a byte that becomes another while the folder is open, or after the
// program was killed, when the file has no digest, is noticed where a closed test, its copy
// or a page is read, also in a folder that is only read. The rest is read as before.
func TestAlteredWhileOpen(t *testing.T) {
	for name, killed := range map[string]bool{"while it is open": false, "after a kill, only read": true} {
		t.Run(name, func(t *testing.T) {
			dir := t.TempDir()
			one, page, inputs := closedWorld(t, dir)
			for what, bit := range map[string][]byte{"test": []byte(one.Note), "copy": inputs, "page": page.Bytes, "nothing": nil} {
				t.Run(what, func(t *testing.T) {
					other := t.TempDir()
					must(t, os.CopyFS(other, os.DirFS(dir)))
					alteredWhileOpen(t, other, what, bit, killed, one, page)
				})
			}
		})
	}
}

// alteredWhileOpen changes a bit of a test, its copy, a page or nothing in a folder that is
// open, or in one whose program was killed, and reads all of them.
func alteredWhileOpen(t *testing.T, dir, what string, bit []byte, killed bool, one record.Test, page record.Print) {
	ctx, file := context.Background(), filepath.Join(dir, fileName)
	if killed {
		must(t, os.Remove(file+sumEnd))
		harm(t, file, bit)
	}
	s := got(Open(dir, Options{Clock: newClock().now, ReadOnly: killed}))(t)
	if !killed {
		harm(t, file, bit)
	}
	seen := got(s.SheetsOf(ctx, one.AthleteID))(t)[0]
	if copied := seen.Kept[0]; copied.Altered != (what == "copy") || (copied.Inputs == nil) != (what == "copy") {
		t.Errorf("the copy is altered: %v, inputs %q", copied.Altered, copied.Inputs)
	}
	is, err := s.TestAltered(ctx, one.ID)
	must(t, err)
	if is != (what == "test") {
		t.Errorf("the test is altered: %v", is)
	}
	if _, err := s.LoadPrint(ctx, page.ID); what == "page" {
		wantCode(t, err, CodeAltered)
	} else {
		must(t, err)
	}
	must(t, s.Close())
}

// TestAlteredOnOpening: the same byte while the folder is closed keeps it from opening,
// with copies to go back to; opened as it is, the record says it.
func TestAlteredOnOpening(t *testing.T) {
	dir := t.TempDir()
	one, page, _ := closedWorld(t, dir)
	file := filepath.Join(dir, fileName)
	at := got(os.Stat(file))(t).ModTime()
	harm(t, file, []byte(one.Note))
	must(t, os.Chtimes(file, at, at)) // as a disk does
	_, err := Open(dir, Options{Clock: newClock().now})
	wantCode(t, err, CodeAltered)
	s := got(Open(dir, Options{Clock: newClock().now, AsItIs: true}))(t)
	if is := got(s.TestAltered(context.Background(), one.ID))(t); !is {
		t.Error("the test is not said to be altered")
	}
	got(s.LoadPrint(context.Background(), page.ID))(t)
	must(t, s.Close())
}

// TestFingerprintFollows: what changes a closed test in order changes its digest, and an
// open one has none.
func TestFingerprintFollows(t *testing.T) {
	s, ctx := open(t, t.TempDir(), newClock()), context.Background()
	one, ref := sheet(t, s)
	count := func() (n int64) {
		must(t, s.files.reader.Model(&record.Fingerprint{}).Count(&n).Error)
		return n
	}
	if count() != 0 {
		t.Error("an open test has a digest")
	}
	one = got(s.CloseTest(ctx, one, freezing("complete"), Edit{}))(t)
	one.Safety = append(one.Safety, record.SafetyNote{})
	got(s.SaveTest(ctx, one, Edit{}))(t) // open also in a closed one
	must(t, s.Delete(ctx, ref, Edit{}))
	must(t, s.Undelete(ctx, ref, Edit{}))
	wantUnaltered(t, s)
	if count() != 1 {
		t.Errorf("%d digests", count())
	}
	got(s.ReopenTest(ctx, one.ID, "misread"))(t)
	if count() != 0 {
		t.Error("a test that was opened again has a digest")
	}
}

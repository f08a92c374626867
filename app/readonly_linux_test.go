package app

import (
	"os"
	"runtime"
	"strings"
	"syscall"
	"testing"

	"ebbwell/app/apptest"
)

// A data folder that may not be written is said to be so, by its name, and
// nothing in it is touched; once it may be, the same window goes on.
func TestReadOnlyFolderIsSaid(t *testing.T) {
	dir := t.TempDir()
	s, w := start(t, dir, false)
	begin(t, w)
	if err := s.Close(); err != nil {
		t.Fatal(err)
	}
	if err := os.Chmod(dir, 0o500); err != nil {
		t.Fatal(err)
	}
	t.Cleanup(func() { _ = os.Chmod(dir, 0o700) })
	bound(t, func() { s, w = start(t, dir, false) })
	if s.Program() != nil {
		t.Fatal("the program runs on a folder it may not write")
	}
	text := strings.Join(strings.Fields(said(w.Content())), " ")
	for _, part := range []string{"The records can’t be opened", "Can’t write to the data folder", "What is in it is unharmed", "start with another folder", dir} {
		if !strings.Contains(text, part) {
			t.Errorf("%q is not said in %s", part, text)
		}
	}
	bound(t, func() { apptest.Click(t, w, "refusal.again") })
	if s.Program() != nil {
		t.Fatal("trying again opens what may not be written")
	}
	if err := os.Chmod(dir, 0o700); err != nil {
		t.Fatal(err)
	}
	apptest.Click(t, w, "refusal.again")
	if s.Program() == nil || s.Program().Desk().Practice().Practitioner != "Ada Fennimoor" {
		t.Error("it does not open once it may be written")
	}
}

// bound does something as a user whom the modes of files bind: root is not, so
// that the thread looks at files as somebody else meanwhile.
func bound(t *testing.T, do func()) {
	t.Helper()
	if os.Getuid() != 0 {
		do()
		return
	}
	const nobody = 65534
	runtime.LockOSThread()
	defer runtime.UnlockOSThread()
	if err := syscall.Setfsuid(nobody); err != nil {
		t.Skipf("modes do not bind root, and it may not look as another: %v", err)
	}
	defer func() {
		if err := syscall.Setfsuid(0); err != nil {
			t.Error(err)
		}
	}()
	do()
}

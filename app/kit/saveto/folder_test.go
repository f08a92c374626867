package saveto

import (
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"fyne.io/fyne/v2"

	"ebbwell/app/apptest"
)

// The folder used last is offered the next time, and gone to from the list; what is
// inside a folder and above it can be reached.
func TestFoldersAreRemembered(t *testing.T) {
	w, a, _ := ask(t, bytesTo)
	folder := t.TempDir()
	if err := os.Mkdir(filepath.Join(folder, "Pages"), 0o700); err != nil {
		t.Fatal(err)
	}
	apptest.Type(t, w, "test.save.path", filepath.Join(folder, "one.pdf"))
	apptest.Press(w, fyne.KeyReturn)
	if got := Folder(); got != folder {
		t.Fatalf("%q is remembered, want %q", got, folder)
	}
	a = open(a.desk, w.Canvas(), a.request)
	if got := filepath.Dir(a.path.Text()); got != folder {
		t.Errorf("the next is offered in %q", got)
	}
	keys := func() []string {
		var list []string
		for _, o := range a.folder.Options() {
			list = append(list, o.Key)
		}
		return list
	}
	in := filepath.Join(folder, "Pages")
	if list := keys(); !slices.Contains(list, in) || !slices.Contains(list, filepath.Dir(folder)) {
		t.Fatalf("the folders are %q", list)
	}
	a.folder.OnChosen(in)
	if got := a.path.Text(); got != filepath.Join(in, "page.pdf") {
		t.Errorf("after going in the path is %q", got)
	}
	if list := keys(); !slices.Contains(list, folder) || a.folder.Chosen() != in {
		t.Errorf("inside, the folders are %q, chosen %q", list, a.folder.Chosen())
	}
	for i := range 6 {
		Remember(filepath.Join(folder, strings.Repeat("x", i+1)))
	}
	if err := os.RemoveAll(folder); err != nil {
		t.Fatal(err)
	}
	if slices.Contains(Folders(), folder) {
		t.Error("a folder that is gone is offered")
	}
}

func TestPrintingCommands(t *testing.T) {
	for _, system := range []string{"linux", "darwin", "windows"} {
		const page = "-a’s b.pdf"
		name, args, env := printing(system, page)
		given := append(slices.Clone(args), env...)
		if name == "" || !strings.HasSuffix(given[len(given)-1], page) {
			t.Errorf("%s: %s %q %q", system, name, args, env)
		}
		if system == "windows" && strings.Contains(strings.Join(args, " "), page) {
			t.Errorf("the shell reads the name: %q", args)
		}
	}
}

func TestAsideIsForTheUserAlone(t *testing.T) {
	path, err := Aside("page.pdf", []byte("x"))
	if err != nil {
		t.Fatal(err)
	}
	defer func() {
		if err := os.RemoveAll(filepath.Dir(path)); err != nil {
			t.Error(err)
		}
	}()
	if info, err := os.Stat(filepath.Dir(path)); err != nil || info.Mode().Perm()&0o077 != 0 {
		t.Errorf("others may look: %v, %v", info.Mode(), err)
	}
}

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

// Each system is handed the page by its own command, the whole name as one word that is
// never read by a shell, nor by lp as an option.
func TestPrintingCommands(t *testing.T) {
	const page = "-a’s b.pdf"
	for system, want := range map[string]string{"linux": "lp", "freebsd": "lp", "darwin": "lpr", "windows": "powershell"} {
		name, args, env := printing(system, page)
		if name != want {
			t.Errorf("%s prints by %q", system, name)
		}
		if system == "windows" {
			if strings.Contains(strings.Join(args, " "), page) || !slices.Contains(env, "EBBWELL_PAGE="+page) || !strings.Contains(args[len(args)-1], "-Verb Print") {
				t.Errorf("%s: %q, %q", system, args, env)
			}
			continue
		}
		if n := len(args); args[n-1] != page || system != "darwin" && args[0] != "--" || !slices.Contains(env, "LC_ALL=C") {
			t.Errorf("%s: %q, %q", system, args, env)
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

package saveto

import (
	"context"
	"errors"
	"io/fs"
	"os"
	"path/filepath"
	"strings"
	"syscall"
	"testing"

	"fyne.io/fyne/v2"

	"ebbwell/app/apptest"
	"ebbwell/app/kit/look"
	"ebbwell/internal/store"
)

// ask opens the dialog for a file of three bytes in a folder.
func ask(t *testing.T, write func(path string) error) (w fyne.Window, a *asking, done *string) {
	t.Helper()
	d, _ := apptest.Desk(t)
	w = apptest.Window(t, look.NewLabel("", look.Body, look.Ink), 900, 600, false, 100)
	done = new(string)
	a = open(d, w.Canvas(), Request{
		Name: "test.save", Title: "Keep", Sentence: "Where?", Yes: "Save with this reason", File: "page.pdf",
		Write: func(_ context.Context, path string) error { return write(path) }, Done: func(path string) { *done = path },
	})
	return w, a, done
}

func bytesTo(path string) error { return os.WriteFile(path, []byte("new"), 0o600) }

func TestKeepsAtTheTypedPath(t *testing.T) {
	w, _, done := ask(t, bytesTo)
	path := filepath.Join(t.TempDir(), "my page.pdf")
	apptest.Type(t, w, "test.save.path", path)
	apptest.Press(w, fyne.KeyReturn)
	got, err := os.ReadFile(path)
	if err != nil || string(got) != "new" || *done != path {
		t.Errorf("kept %q (%v), told %q", got, err, *done)
	}
	if info, err := os.Stat(path); err != nil || info.Mode().Perm()&0o077 != 0 {
		t.Errorf("others may read it: %v, %v", info.Mode(), err)
	}
	if apptest.Has(w, "test.save.path") {
		t.Error("the dialog is still open")
	}
}

func TestReplacesOnlyAfterAsking(t *testing.T) {
	w, _, done := ask(t, bytesTo)
	folder := t.TempDir()
	path, other := filepath.Join(folder, "a.pdf"), filepath.Join(folder, "b.pdf")
	for _, p := range []string{path, other} {
		if err := os.WriteFile(p, []byte("old"), 0o600); err != nil {
			t.Fatal(err)
		}
	}
	apptest.Type(t, w, "test.save.path", path)
	apptest.Click(t, w, "test.save.yes")
	if got, _ := os.ReadFile(path); string(got) != "old" || apptest.Text(t, w, "test.save.yes") != "Replace" {
		t.Fatalf("the file holds %q, the button says %q", got, apptest.Text(t, w, "test.save.yes"))
	}
	// The answer is for one path only.
	apptest.Type(t, w, "test.save.path", other)
	if apptest.Text(t, w, "test.save.yes") != "Save with this reason" {
		t.Error("another path is replaced without a question")
	}
	apptest.Click(t, w, "test.save.yes")
	apptest.Click(t, w, "test.save.yes")
	if got, _ := os.ReadFile(other); string(got) != "new" || *done != other {
		t.Errorf("the file holds %q, told %q", got, *done)
	}
}

func TestSaysWhatIsWrong(t *testing.T) {
	folder := t.TempDir()
	words := apptest.Words(t)
	for _, c := range []struct {
		path string
		err  error
		want string
	}{
		{filepath.Join(folder, "none", "a.pdf"), nil, words.Say("saveto.nofolder")},
		{filepath.Join(folder, "a.pdf"), fs.ErrPermission, words.Say("saveto.permission")},
		{filepath.Join(folder, "a.pdf"), syscall.ENOSPC, words.Say("saveto.nospace")},
		{filepath.Join(folder, "a.pdf"), &store.Error{Code: store.CodeInvalid}, words.Say("saveto.inside")},
		{filepath.Join(folder, "a.pdf"), errors.New("odd"), words.Say("saveto.other", "odd")},
		{folder, nil, ""}, // a folder: the words stand in the title
	} {
		w, a, done := ask(t, func(path string) error {
			if c.err != nil {
				return c.err
			}
			return bytesTo(path)
		})
		apptest.Type(t, w, "test.save.path", c.path)
		apptest.Click(t, w, "test.save.yes")
		if *done != "" || !apptest.Has(w, "test.save.path") {
			t.Errorf("%s: kept at %q", c.path, *done)
		}
		if title, got := a.trouble.Text(); got != c.want || title == "" {
			t.Errorf("%s, %v: %q, %q, want %q", c.path, c.err, title, got, c.want)
		}
	}
	if left, err := os.ReadDir(folder); err != nil || len(left) != 0 {
		t.Errorf("left behind: %v, %v", left, err)
	}
}

func TestFileName(t *testing.T) {
	for text, want := range map[string]string{
		"Ravka's match plan": "Ravka's match plan.pdf", "a/b:c?": "a-b-c-.pdf", " . ": "Ebbwell.pdf", "tab\there": "tabhere.pdf",
		strings.Repeat("é", 200): strings.Repeat("é", 80) + ".pdf",
	} {
		if got := FileName(text, ".pdf"); got != want {
			t.Errorf("%q became %q, want %q", text, got, want)
		}
	}
}

func TestFreeAndWhole(t *testing.T) {
	folder := t.TempDir()
	for _, want := range []string{"a.pdf", "a 2.pdf", "a 3.pdf"} {
		path := Free(folder, "a.pdf")
		if path != filepath.Join(folder, want) {
			t.Errorf("free is %s, want %s", path, want)
		}
		if err := os.WriteFile(path, nil, 0o600); err != nil {
			t.Fatal(err)
		}
	}
	home := t.TempDir()
	t.Setenv("HOME", home)
	if got := whole(" ~/x.pdf "); got != home+"/x.pdf" {
		t.Errorf("~ became %q", got)
	}
	if got := whole("~x.pdf"); got != "~x.pdf" {
		t.Errorf("a name with ~ became %q", got)
	}
	if Documents() != home {
		t.Errorf("documents are %s", Documents())
	}
	if err := os.Mkdir(filepath.Join(home, "Documents"), 0o700); err != nil {
		t.Fatal(err)
	}
	if Documents() != filepath.Join(home, "Documents") {
		t.Errorf("documents are %s", Documents())
	}
}

// Where a folder is asked for, files are put into it: it is never taken for a file that is
// there, the folders used before go to it, and closing the dialog stops the writing.
func TestAFolderIsAskedFor(t *testing.T) {
	d, _ := apptest.Desk(t)
	waits := &waiting{}
	d.Beside = waits
	w := apptest.Window(t, look.NewLabel("", look.Body, look.Ink), 900, 600, false, 100)
	var wrote, done, stopped string
	request := Request{
		Name: "test.folder", Title: "Keep", Yes: "Save", Busy: "Saving …",
		Write: func(ctx context.Context, folder string) error {
			wrote = folder
			return ctx.Err()
		},
		Done: func(folder string) { done = folder }, Stopped: func(folder string) { stopped = folder },
	}
	folder, other := t.TempDir(), t.TempDir()
	Remember(folder)
	a := open(d, w.Canvas(), request)
	if a.path.Text() != folder {
		t.Errorf("the folder offered is %q", a.path.Text())
	}
	a.folder.OnChosen(other)
	apptest.Click(t, w, "test.folder.yes")
	if title, _ := a.trouble.Text(); title != "Saving …" {
		t.Errorf("while it is written it says %q", title)
	}
	waits.end()
	if wrote != other || done != other || Folder() != other {
		t.Errorf("written into %q, told %q, remembered %q", wrote, done, Folder())
	}
	open(d, w.Canvas(), request)
	apptest.Click(t, w, "test.folder.yes")
	apptest.Press(w, fyne.KeyEscape)
	waits.end()
	if stopped != other {
		t.Errorf("closed while it was written, it tells %q", stopped)
	}
}

// waiting is a runner whose work ends when the test says so.
type waiting struct{ end func() }

func (r *waiting) Run(work func(context.Context) error, done func(error)) (stop func()) {
	ctx, cancel := context.WithCancel(context.Background())
	r.end = func() { done(work(ctx)) }
	return cancel
}

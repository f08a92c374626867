package preview

import (
	"context"
	"errors"
	"image/png"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"

	"ebbwell/app/apptest"
	"ebbwell/app/kit/look"
	"ebbwell/app/kit/picture"
	"ebbwell/app/kit/saveto"
	"ebbwell/internal/handout/paper"
)

// shownFor opens the dialog for blank sheets; a printer of its own keeps what it is handed.
func shownFor(t *testing.T, copies int, file string, printer error) (s *Shown, w fyne.Window, printed *[]string) {
	t.Helper()
	d, _ := apptest.Desk(t)
	w = apptest.Window(t, look.NewLabel("", look.Body, look.Ink), 1180, 760, false, 100)
	doc := blank(t, copies)
	printed = new([]string)
	s = Ask(d, w.Canvas(), saveto.Request{
		Name: "test.page", Title: "A page", Yes: "Save", File: file,
		Write: func(_ context.Context, path string) error {
			pdf, err := doc.PDF(d.Now())
			if err != nil {
				return err
			}
			if file == "" {
				path = filepath.Join(path, "one.pdf")
			}
			return os.WriteFile(path, pdf, 0o600)
		},
	}, Printable{
		Lay: func(context.Context, bool) (paper.Document, error) { return doc, nil },
		Printer: func(_ context.Context, path string) error {
			*printed = append(*printed, path)
			return printer
		},
	})
	return s, w, printed
}

// Pages are shown before they are kept, no more of them than can be looked at; Escape
// keeps nothing.
func TestPagesAreShownBeforeTheyAreKept(t *testing.T) {
	s, w, _ := shownFor(t, 1, "page.pdf", nil)
	if n := len(s.drawing.Pages.Pictures()); n == 0 || n > mostSides || s.more.Text() != "" {
		t.Fatalf("%d sides are shown, and it says %q", n, s.more.Text())
	}
	apptest.Press(w, fyne.KeyEscape)
	if apptest.Has(w, "test.page.path") {
		t.Error("Escape leaves the dialog open")
	}
	s, _, _ = shownFor(t, 20, "page.pdf", nil)
	if n := len(s.drawing.Pages.Pictures()); n != mostSides || !strings.Contains(s.more.Text(), "first 6 of ") {
		t.Errorf("%d sides are shown, and it says %q", n, s.more.Text())
	}
}

// Page Down goes down the page, no further than its end, and Page Up back, while the
// path has the keyboard.
func TestKeysGoDownThePage(t *testing.T) {
	s, w, _ := shownFor(t, 1, "page.pdf", nil)
	top := func() float32 { return fyne.CurrentApp().Driver().AbsolutePositionForObject(s.drawing.Pages).Y }
	first := top()
	apptest.Press(w, fyne.KeyPageDown)
	second := top()
	for range 20 {
		apptest.Press(w, fyne.KeyPageDown)
	}
	last := top()
	if second >= first || last > second || last+s.drawing.Pages.Size().Height < 0 {
		t.Errorf("the page begins at %g, then %g, then %g", first, second, last)
	}
	for range 20 {
		apptest.Press(w, fyne.KeyPageUp)
	}
	if top() != first {
		t.Errorf("back up it begins at %g, was %g", top(), first)
	}
}

// The picture of each side lies where the page would, and replaces nothing.
func TestPagesAreKeptAsPictures(t *testing.T) {
	folder := t.TempDir()
	there := filepath.Join(folder, "page.png")
	if err := os.WriteFile(there, []byte("another"), 0o600); err != nil {
		t.Fatal(err)
	}
	_, w, _ := shownFor(t, 1, "page.pdf", nil)
	apptest.Type(t, w, "test.page.path", filepath.Join(folder, "page.pdf"))
	apptest.Click(t, w, "test.page.picture")
	if got, err := os.ReadFile(there); err != nil || string(got) != "another" {
		t.Error("a file that was there was replaced")
	}
	file, err := os.Open(filepath.Join(folder, "page 2.png"))
	if err != nil {
		t.Fatal(err)
	}
	defer file.Close() //nolint:errcheck // it was only read
	if img, err := png.Decode(file); err != nil || img.Bounds().Dx() != 210*picture.Dots {
		t.Errorf("%v", err)
	}
	if apptest.Has(w, "test.page.path") || saveto.Folder() != folder {
		t.Errorf("the dialog is still open, or %s is remembered", saveto.Folder())
	}
}

// Printing hands every file to the system, opens them where nothing prints, and says why
// it failed.
func TestPagesArePrinted(t *testing.T) {
	for _, file := range []string{"page.pdf", ""} {
		_, w, printed := shownFor(t, 1, file, nil)
		apptest.Click(t, w, "test.page.print")
		if len(*printed) != 1 || filepath.Ext((*printed)[0]) != ".pdf" || apptest.Has(w, "test.page.path") {
			t.Errorf("%q: printed %v", file, *printed)
		}
	}
	_, w, printed := shownFor(t, 1, "page.pdf", saveto.ErrNoPrinting)
	opener := apptest.Opens(t)
	apptest.Click(t, w, "test.page.print")
	if len(opener.Paths) != 1 || opener.Paths[0] != (*printed)[0] {
		t.Errorf("opened %v of %v", opener.Paths, *printed)
	}
	s, w, _ := shownFor(t, 1, "page.pdf", errors.New("paper jam"))
	apptest.Click(t, w, "test.page.print")
	if title, _ := s.trouble.Text(); title != "It was not printed." || !apptest.Has(w, "test.page.path") {
		t.Errorf("it says %q", title)
	}
}

// A page that cannot be laid out says so where it would be, until another can.
func TestTroubleIsSaidOverThePage(t *testing.T) {
	d, _ := apptest.Desk(t)
	w := apptest.Window(t, canvas.NewRectangle(nil), 1180, 760, false, 100)
	fail := errors.New("no paper")
	doc := blank(t, 1)
	s := Ask(d, w.Canvas(), saveto.Request{Name: "test.page", Title: "A page", Yes: "Save", File: "page.pdf"}, Printable{
		Lay: func(context.Context, bool) (paper.Document, error) { return doc, fail },
	})
	if title, _ := s.trouble.Text(); title == "" || len(s.drawing.Pages.Pictures()) != 0 {
		t.Errorf("it says %q", title)
	}
	fail = nil
	s.Again()
	if title, _ := s.trouble.Text(); title != "" || len(s.drawing.Pages.Pictures()) == 0 {
		t.Errorf("and goes on saying %q", title)
	}
}

package handoutview

import (
	"context"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"ebbwell/app/apptest"
	"ebbwell/internal/record"
)

// The last that was handed out is opened by one click as it was: a page as PDF, a letter
// as text; a letter is saved again as text.
func TestLastIsOneClickAway(t *testing.T) {
	d, _ := apptest.Demo(t)
	v, w := open(t, d, "Ravka")
	opener := apptest.Opens(t)
	page := filepath.Join(t.TempDir(), "page.pdf")
	save(t, v, w, page)
	apptest.Click(t, w, "handoutview.last")
	holdOpened(t, opener, page)

	a := v.file.subject.athlete
	letter := filepath.Join(t.TempDir(), "letter.txt")
	p := record.Print{AthleteID: a.ID, Kind: record.KindAthlete, Record: a.ID, Page: record.PageLetter, Language: "en", Bytes: []byte("A letter.")}
	if _, err := d.Store.HandOut(context.Background(), p, letter); err != nil {
		t.Fatal(err)
	}
	v, w = open(t, d, "Ravka")
	opener = apptest.Opens(t)
	if row := v.ui.prints.table.Row(0); row[0] != "Letter" {
		t.Errorf("the newest is called %q", row[0])
	}
	apptest.Click(t, w, "handoutview.last")
	holdOpened(t, opener, letter)
	v.ui.prints.table.Choose(0)
	v.ui.prints.saveAgain()
	if offered := apptest.Text(t, w, "handoutview.ask.path"); !strings.HasSuffix(offered, ".txt") {
		t.Errorf("a letter is saved again as %s", offered)
	}
}

// holdOpened holds the file that was opened last against one that was saved.
func holdOpened(t *testing.T, opener *apptest.Opener, saved string) {
	t.Helper()
	if len(opener.Paths) == 0 {
		t.Fatal("nothing was opened")
	}
	path := opener.Paths[len(opener.Paths)-1]
	got, err := os.ReadFile(path)
	if err != nil {
		t.Fatal(err)
	}
	want, err := os.ReadFile(saved)
	if err != nil || string(got) != string(want) || filepath.Ext(path) != filepath.Ext(saved) {
		t.Errorf("opened was %s of %d bytes, saved %s of %d, %v", path, len(got), saved, len(want), err)
	}
	if err := os.RemoveAll(filepath.Dir(path)); err != nil {
		t.Error(err)
	}
}

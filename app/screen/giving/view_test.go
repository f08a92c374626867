package giving

import (
	"archive/zip"
	"bytes"
	"errors"
	"io"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"fyne.io/fyne/v2"

	"ebbwell/app/apptest"
	"ebbwell/app/kit/desk"
	"ebbwell/internal/bundle"
	"ebbwell/internal/lock"
	"ebbwell/internal/record"
	"ebbwell/internal/store"
)

// open opens the screen; said is what was said last.
func open(t *testing.T, d *desk.Desk, place desk.Place) (v *View, w fyne.Window, said *string) {
	t.Helper()
	said = new(string)
	d.Say = func(sentence, _ string, _ func()) { *said = sentence }
	v, err := New(d, place)
	if err != nil {
		t.Fatal(err)
	}
	return v, apptest.Window(t, v.Body(), 1180, 760, false, 100), said
}

// save lets the person save the file, and reads what is in it.
func save(t *testing.T, w fyne.Window) map[string]string {
	t.Helper()
	path := filepath.Join(t.TempDir(), "given.zip")
	apptest.Click(t, w, "give.save")
	apptest.Type(t, w, "give.ask.path", path)
	apptest.Click(t, w, "give.ask.yes")
	data, err := os.ReadFile(path)
	if err != nil {
		t.Fatal(err)
	}
	archive, err := zip.NewReader(bytes.NewReader(data), int64(len(data)))
	if err != nil {
		t.Fatal(err)
	}
	in := map[string]string{}
	for _, f := range archive.File {
		r, err := f.Open()
		if err != nil {
			t.Fatal(err)
		}
		text, err := io.ReadAll(r)
		if err != nil {
			t.Fatal(err)
		}
		in[f.Name] = string(text)
	}
	return in
}

// TestAnAthletesOwnRecords: whoever asks for theirs gets tables and kept pages, and
// nobody else's; where body mass is hidden a page from before is left out, in the
// athlete's own language.
func TestAnAthletesOwnRecords(t *testing.T) {
	d, _ := apptest.Demo(t)
	ctx := t.Context()
	a := apptest.AthleteNamed(t, d, "Ravka")
	if _, err := d.Store.SavePrint(ctx, record.Print{AthleteID: a.ID, Kind: record.KindAthlete, Record: a.ID, Page: "athlete-page", Language: "en", Bytes: []byte("%PDF 52 kg")}); err != nil {
		t.Fatal(err)
	}
	_, w, said := open(t, d, desk.Place{Athlete: a.ID})
	in := save(t, w)
	if in["Page 1, Athlete’s page, 2026-05-18.pdf"] == "" || !strings.Contains(*said, "given.zip") {
		t.Errorf("said %q, in the file: %v", *said, keys(in))
	}
	if mass := column(t, in["tests.weighings.csv"], "mass [kg]"); mass == "" {
		t.Error("a mass that is not hidden is not given")
	}
	a.MassHidden, a.MassHiddenSettled, a.PageLanguage = true, true, "fr"
	if _, err := d.Store.SaveAthlete(ctx, a, store.Edit{}); err != nil {
		t.Fatal(err)
	}
	v, w, _ := open(t, d, desk.Place{Athlete: a.ID})
	if text := strings.Join(apptest.Texts(v.Body()), " "); !strings.Contains(text, "One saved page is left out") || !strings.Contains(text, "Body mass is hidden for one athlete") {
		t.Errorf("on the screen stands %q", text)
	}
	in = save(t, w)
	for name, text := range in {
		if strings.HasSuffix(name, ".pdf") {
			t.Errorf("%s is given", name)
		}
		if strings.Contains(text, "Mirel") || strings.Contains(text, "Ilse") {
			t.Errorf("%s names another athlete", name)
		}
	}
	if mass := column(t, in["tests.weighings.csv"], "mass [kg]"); mass != "" {
		t.Errorf("a hidden mass is given: %s", mass)
	}
	text := in["Ce qui est omis et pourquoi.txt"]
	if !strings.Contains(text, "masse corporelle désormais masquée") || strings.Contains(text, "Ravka") {
		t.Errorf("the text says %q", text)
	}
}

// column puts the cells of a column of a simple table together.
func column(t *testing.T, table, name string) string {
	t.Helper()
	lines := strings.Split(strings.TrimPrefix(table, "\ufeff"), "\r\n")
	at := -1
	for i, head := range strings.Split(lines[0], ",") {
		if head == name {
			at = i
		}
	}
	if at < 0 || len(lines) < 2 || lines[1] == "" {
		t.Fatalf("no column %q, or no row, in %q", name, table)
	}
	all := ""
	for _, line := range lines[1:] {
		if cells := strings.Split(line, ","); len(cells) > at {
			all += cells[at]
		}
	}
	return all
}

func keys(m map[string]string) (list []string) {
	for k := range m {
		list = append(list, k)
	}
	return list
}

// TestAGroupIsGivenOnlyWithConsent: who has not consented to sharing is named on the
// screen and is not in the file; where nobody is left there is no file.
func TestAGroupIsGivenOnlyWithConsent(t *testing.T) {
	d, _ := apptest.Demo(t)
	ctx := t.Context()
	mirel := apptest.AthleteNamed(t, d, "Mirel")
	for i := range mirel.Consents {
		mirel.Consents[i].Withdrawn = d.Today()
	}
	if _, err := d.Store.SaveAthlete(ctx, mirel, store.Edit{}); err != nil {
		t.Fatal(err)
	}
	v, w, _ := open(t, d, desk.Place{})
	if text := strings.Join(apptest.Texts(v.Body()), " "); !strings.Contains(text, "Mirel Ashgarth") || !strings.Contains(text, "left out: no consent") {
		t.Errorf("on the screen stands %q", text)
	}
	for _, form := range []form{formBook, formJSON, formCSV} {
		v.state.form = form
		in := save(t, w)
		whole := ""
		for _, text := range in {
			whole += text
		}
		if strings.Contains(whole, "Mirel") || in["What was left out and why.txt"] == "" {
			t.Errorf("%s: the file names who did not consent, or lacks the text: %v", form, keys(in))
		}
		if form != formBook && !strings.Contains(whole, "Ravka Oldenmoor") {
			t.Errorf("%s: who consented is not in the file", form)
		}
	}
	v.state.group = string(v.state.groups[0].ID)
	v.follow()
	if n := len(v.state.who()); n == 0 || n >= len(v.state.people) {
		t.Errorf("of %d athletes %d are in the group", len(v.state.people), n)
	}
	people, err := d.Store.Athletes(ctx)
	if err != nil {
		t.Fatal(err)
	}
	for _, p := range people {
		a, err := d.Store.LoadAthlete(ctx, p.ID)
		if err != nil {
			t.Fatal(err)
		}
		a.Consents = nil
		if _, err := d.Store.SaveAthlete(ctx, a, store.Edit{}); err != nil {
			t.Fatal(err)
		}
	}
	if v, _, _ := open(t, d, desk.Place{}); !v.give.Disabled() {
		t.Error("records of nobody can be given")
	}
}

// TestAFileForAColleagueIsLocked: with a passphrase typed twice, in dots until it is to
// be seen; only that opens it.
func TestAFileForAColleagueIsLocked(t *testing.T) {
	d, _ := apptest.Demo(t)
	a := apptest.AthleteNamed(t, d, "Ravka")
	v, w, said := open(t, d, desk.Place{Athlete: a.ID, Part: desk.PartColleague})
	typed := func(first, second string) string {
		apptest.Type(t, w, "give.pass", first)
		apptest.Type(t, w, "give.pass.again", second)
		apptest.Click(t, w, "give.save")
		return strings.Join(apptest.Texts(v.Body()), " ")
	}
	if text := typed("short", "short"); !strings.Contains(text, "too short") || apptest.Has(w, "give.ask.yes") {
		t.Errorf("a short passphrase: %q", text)
	}
	if text := typed("four quiet herons wade", "four quiet herons sleep"); !strings.Contains(text, "differ") || strings.Contains(text, "herons") || apptest.Has(w, "give.ask.yes") {
		t.Errorf("two passphrases: %q", text)
	}
	apptest.Click(t, w, "give.pass.show")
	if text := strings.Join(apptest.Texts(v.Body()), " "); !strings.Contains(text, "herons sleep") {
		t.Errorf("what was typed is not shown: %q", text)
	}
	typed("four quiet herons wade", "four quiet herons wade")
	path := filepath.Join(t.TempDir(), "given.ebbwell")
	apptest.Type(t, w, "give.ask.path", path)
	apptest.Click(t, w, "give.ask.yes")
	data, err := os.ReadFile(path)
	if err != nil || bytes.Contains(data, []byte("Ravka")) || !strings.Contains(*said, "another way") {
		t.Fatalf("the file names the athlete, or is none: %v, said %q", err, *said)
	}
	if _, err := lock.Reader(bytes.NewReader(data), "four quiet herons sleep"); !errors.Is(err, lock.ErrPassphrase) {
		t.Errorf("another passphrase: %v", err)
	}
	plain, err := lock.Reader(bytes.NewReader(data), "four quiet herons wade")
	if err != nil {
		t.Fatal(err)
	}
	b, err := bundle.Read(plain)
	if err != nil || len(b.Athletes) != 1 || b.Athletes[0].ID != a.ID || len(b.Tests) == 0 || len(b.Changes) == 0 {
		t.Errorf("in the file are %d athletes, %d tests, %v", len(b.Athletes), len(b.Tests), err)
	}
}

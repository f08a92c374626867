package practice

import (
	"archive/zip"
	"bytes"
	"encoding/json"
	"io"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"fyne.io/fyne/v2"

	"ebbwell/app/apptest"
	"ebbwell/app/kit/desk"
	"ebbwell/internal/exchange"
	"ebbwell/internal/store"
)

// openRecords opens the records of the invented practice; said is what was said last.
func openRecords(t *testing.T) (d *desk.Desk, w fyne.Window, said *string) {
	t.Helper()
	d, _ = apptest.Demo(t)
	said = new(string)
	d.Say = func(sentence, _ string, _ func()) { *said = sentence }
	_, w = open(t, d, PartRecords)
	return d, w, said
}

func TestALockedBackupIsMadeAndLookedInto(t *testing.T) {
	d, w, said := openRecords(t)
	file := filepath.Join(t.TempDir(), "locked.db")
	ask := func(phrase string) {
		apptest.Click(t, w, "practice.backup")
		apptest.Type(t, w, "practice.backup.ask.path", file)
		apptest.Type(t, w, "practice.backup.phrase", phrase)
		apptest.Click(t, w, "practice.backup.repeat")
		apptest.Click(t, w, "practice.backup.ask.yes")
	}
	ask("short")
	if _, err := os.Stat(file); err == nil || !apptest.Has(w, "practice.backup.ask.path") {
		t.Fatal("a passphrase of five letters was taken")
	}
	apptest.Click(t, w, "practice.backup.ask.no")
	ask("four quiet herons wade")
	data, err := os.ReadFile(file)
	if err != nil || bytes.Contains(data, []byte("Ravka")) {
		t.Fatalf("the backup names an athlete, or is none: %v", err)
	}
	b := kept(t, d).Settings.Backup
	if b.At == nil || b.Folder != filepath.Dir(file) || b.Days != store.BackupDays || b.Key == "" || b.To == "" {
		t.Errorf("of the backup is kept %+v", b)
	}
	look := func(phrase string) {
		apptest.Click(t, w, "practice.restore.file")
		apptest.Type(t, w, "practice.restore.path", file)
		apptest.Type(t, w, "practice.restore.phrase", phrase)
		apptest.Click(t, w, "practice.restore.from.yes")
	}
	look("four quiet herons sleep")
	if !strings.Contains(*said, "passphrase") || apptest.Has(w, "practice.restore.swap.yes") {
		t.Errorf("another passphrase: said %q", *said)
	}
	look("four quiet herons wade")
	apptest.Click(t, w, "practice.restore.swap.yes")
	if !strings.Contains(*said, "Restored") {
		t.Errorf("restoring said %q", *said)
	}
}

func TestExports(t *testing.T) {
	d, w, said := openRecords(t)
	dir := t.TempDir()
	for form, file := range map[string]string{"xlsx": "a.xlsx", "csv": "a.zip", "json": "a.json"} {
		path := filepath.Join(dir, file)
		apptest.Click(t, w, "practice.export."+form)
		apptest.Type(t, w, "practice.export.ask.path", path)
		apptest.Click(t, w, "practice.export.ask.yes")
		if !strings.Contains(*said, file) {
			t.Errorf("%s: said %q", form, *said)
		}
		people, err := d.Store.Athletes(t.Context())
		if err != nil {
			t.Fatal(err)
		}
		whole, err := os.ReadFile(path)
		if err != nil {
			t.Fatal(err)
		}
		if form == "json" {
			checkJSON(t, whole, len(people))
			continue
		}
		checkArchive(t, form, whole)
	}
}

// checkJSON counts the records in an export.
func checkJSON(t *testing.T, data []byte, people int) {
	t.Helper()
	var all struct{ Records exchange.Records }
	if err := json.Unmarshal(data, &all); err != nil {
		t.Fatal(err)
	}
	if r := all.Records; len(r.Athletes) != people || len(r.Tests) == 0 || len(r.Plans) == 0 {
		t.Errorf("%d athletes of %d, %d tests, %d plans", len(r.Athletes), people, len(r.Tests), len(r.Plans))
	}
}

// checkArchive looks for an athlete and the list of columns in the files of an export.
func checkArchive(t *testing.T, form string, data []byte) {
	t.Helper()
	archive, err := zip.NewReader(bytes.NewReader(data), int64(len(data)))
	if err != nil {
		t.Fatal(err)
	}
	found := map[string]bool{}
	for _, f := range archive.File {
		in, err := f.Open()
		if err != nil {
			t.Fatal(err)
		}
		text, err := io.ReadAll(in)
		if err != nil {
			t.Fatal(err)
		}
		for _, want := range []string{"Ravka Oldenmoor", "usualMass", "session.date"} {
			found[want] = found[want] || strings.Contains(string(text), want)
		}
	}
	if len(found) != 3 || !found["Ravka Oldenmoor"] || !found["usualMass"] || !found["session.date"] {
		t.Errorf("%s: found %v", form, found)
	}
}

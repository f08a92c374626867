package practice

import (
	"bytes"
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
		f, err := os.Open(path)
		if err != nil {
			t.Fatal(err)
		}
		var all exchange.Records
		var faults []exchange.Fault
		switch form {
		case "xlsx":
			all, faults, err = exchange.ReadXLSX(f)
		case "csv":
			info, statErr := f.Stat()
			if statErr != nil {
				t.Fatal(statErr)
			}
			all, faults, err = exchange.ReadCSV(f, info.Size())
		default:
			all, err = exchange.ReadJSON(f)
		}
		if err != nil || len(faults) > 0 {
			t.Fatalf("%s: %v, %+v", form, err, faults)
		}
		people, err := d.Store.Athletes(t.Context())
		if err != nil || len(all.Athletes) != len(people) || len(all.Tests) == 0 || len(all.Plans) == 0 {
			t.Errorf("%s: %d athletes of %d, %d tests, %d plans, %v", form, len(all.Athletes), len(people), len(all.Tests), len(all.Plans), err)
		}
		if err := f.Close(); err != nil {
			t.Error(err)
		}
	}
}

func TestColumnsAreExplained(t *testing.T) {
	d, _ := apptest.Demo(t)
	r := &records{v: &View{desk: d}}
	for _, c := range []struct{ table, column, means, limits string }{
		{"tests", "air.temperature", "air", "°C"},
		{"tests.bottles", "before", "before", "g"},
		{"athletes", "name", "Name", ""},
	} {
		means, limits, _ := r.meaning(c.table, exchange.Column{Name: c.column, Holds: exchange.HoldsNumber})
		if !strings.Contains(strings.ToLower(means), strings.ToLower(c.means)) || !strings.Contains(limits, c.limits) {
			t.Errorf("%s.%s is explained as %q, %q", c.table, c.column, means, limits)
		}
	}
}

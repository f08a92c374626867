package saveto

import (
	"os"
	"path/filepath"
	"testing"
	"time"

	"fyne.io/fyne/v2/test"
)

// The file changed last is found in a folder used before, and nothing else of it.
func TestTheNewestFileIsFound(t *testing.T) {
	test.NewTempApp(t)
	t.Setenv("HOME", t.TempDir())
	if got := Newest(".ebbwell"); got != "" {
		t.Errorf("where there is none %q is found", got)
	}
	folder := t.TempDir()
	Remember(folder)
	for i, name := range []string{"new.ebbwell", "newer.pdf", "old.ebbwell"} {
		path := filepath.Join(folder, name)
		at := time.Date(2026, 5, 10-i, 0, 0, 0, 0, time.UTC)
		if err := os.WriteFile(path, nil, 0o600); err != nil {
			t.Fatal(err)
		}
		if err := os.Chtimes(path, at, at); err != nil {
			t.Fatal(err)
		}
	}
	if got := Newest(".ebbwell"); got != filepath.Join(folder, "new.ebbwell") {
		t.Errorf("%q is found", got)
	}
}

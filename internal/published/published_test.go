package published

import (
	"errors"
	"os"
	"path/filepath"
	"strings"
	"testing"
)

func TestParse(t *testing.T) {
	for _, c := range []struct {
		name string
		rec  []string
		want error
	}{
		{"whole", []string{"x", "a=1; b=two", "3", "0.1", "Somebody 1999", "R"}, nil},
		{"no inputs", []string{"x", "", "3", "0.1", "Somebody 1999", "D"}, nil},
		{"no source", []string{"x", "", "3", "0.1", " ", "R"}, errSource},
		{"unknown sureness", []string{"x", "", "3", "0.1", "Somebody 1999", "Q"}, errSource},
		{"memory not said", []string{"x", "", "3", "0.1", "Somebody 1999", "M"}, errSource},
		{"practice not said", []string{"x", "", "3", "0.1", "Somebody 1999", "C"}, errSource},
		{"no value", []string{"x", "a", "3", "0.1", "Somebody 1999", "R"}, errInput},
	} {
		t.Run(c.name, func(t *testing.T) {
			if _, err := parse(2, c.rec); !errors.Is(err, c.want) {
				t.Errorf("got %v, want %v", err, c.want)
			}
		})
	}
}

func TestReach(t *testing.T) {
	for _, c := range []struct {
		text        string
		value, want float64
		fails       bool
	}{
		{"0.05", 3, 0.05, false}, {"2 %", -50, 1, false}, {"0", 1, 0, false},
		{"", 1, 0, true}, {"-1", 1, 0, true}, {"about", 1, 0, true}, {"NaN", 1, 0, true},
	} {
		got, err := Reach(c.text, c.value)
		if got != c.want || (err != nil) != c.fails {
			t.Errorf("Reach(%q, %g) = %g, %v", c.text, c.value, got, err)
		}
	}
}

func TestRowsFailsWithoutFile(t *testing.T) {
	if _, err := Rows("no such topic"); err == nil {
		t.Error("a topic without a file gave no error")
	}
}

// TestEveryFileIsWalked makes sure that each file of check values is named in
// some test, and counts the rows.
func TestEveryFileIsWalked(t *testing.T) {
	folder, err := Folder()
	if err != nil {
		t.Fatal(err)
	}
	names, err := filepath.Glob(filepath.Join(folder, "*.csv"))
	if err != nil || len(names) == 0 {
		t.Fatalf("no check values: %v", err)
	}
	tests := testSources(t, filepath.Join(folder, "..", ".."))
	for _, name := range names {
		topic := strings.TrimSuffix(filepath.Base(name), ".csv")
		if !strings.Contains(tests, `"`+topic+`"`) && !strings.Contains(tests, topic+".csv") {
			t.Errorf("no test walks %s", filepath.Base(name))
		}
		// A file whose rows are read in another way is only counted here.
		if rows, err := Rows(topic); err == nil {
			t.Logf("%s: %d rows", topic, len(rows))
		} else {
			t.Log(err)
		}
	}
}

// testSources is the text of every test of the module.
func testSources(t *testing.T, root string) string {
	t.Helper()
	var all strings.Builder
	err := filepath.WalkDir(root, func(path string, d os.DirEntry, err error) error {
		if err != nil || d.IsDir() || !strings.HasSuffix(path, "_test.go") {
			return err
		}
		text, err := os.ReadFile(path)
		all.Write(text)
		return err
	})
	if err != nil {
		t.Fatal(err)
	}
	return all.String()
}

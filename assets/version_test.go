package assets

import (
	"os"
	"strings"
	"testing"
)

// The version is the same wherever it stands.
func TestVersion(t *testing.T) {
	data, err := os.ReadFile("../FyneApp.toml")
	if err != nil {
		t.Fatal(err)
	}
	if !strings.Contains(string(data), "Version = \""+Version+"\"\n") {
		t.Errorf("FyneApp.toml has another version than %s", Version)
	}
	_, after, _ := strings.Cut(Changes("en"), "\n## ")
	if newest, _, _ := strings.Cut(after, "\n"); newest != Version {
		t.Errorf("the newest changes are those of %q, not of %s", newest, Version)
	}
}

// Every module that go.mod takes in directly has its licence in the notices.
func TestNoticesHaveEveryModule(t *testing.T) {
	data, err := os.ReadFile("../go.mod")
	if err != nil {
		t.Fatal(err)
	}
	_, after, _ := strings.Cut(string(data), "require (\n")
	direct, _, _ := strings.Cut(after, ")")
	n := 0
	for _, line := range strings.Split(direct, "\n") {
		name := strings.Fields(line)
		if len(name) < 2 || name[0] == "pgregory.net/rapid" || name[0] == "gonum.org/v1/gonum" { // for tests alone
			continue
		}
		n++
		if !strings.Contains(Notices(), name[0]+" "+name[1]+"\n") {
			t.Errorf("%s %s has no notice: run go run ./cmd/dev notices", name[0], name[1])
		}
	}
	if n < 8 || !strings.Contains(Notices(), "IBM Plex Sans") || !strings.Contains(Notices(), "SIL OPEN FONT LICENSE") {
		t.Errorf("%d modules, or no typeface", n)
	}
}

package main

import (
	"bytes"
	"path/filepath"
	"strings"
	"testing"

	"ebbwell/cmd/dev/mutate"
)

func TestDraw(t *testing.T) {
	var all []mutate.Mutant
	for i := range 40 {
		all = append(all, mutate.Mutant{File: "a.go", Nth: i})
	}
	for i := range 5 {
		all = append(all, mutate.Mutant{File: "grain.go", Nth: i})
	}
	if got := draw(all, mutation{}); len(got) != 45 {
		t.Errorf("%d of all", len(got))
	}
	if got := draw(all, mutation{only: "grain"}); len(got) != 5 {
		t.Errorf("%d in grain.go", len(got))
	}
	earlier := "survived (constant) line 3: " + all[3].Name() + "\nsweat: 25 of 40 tried\n"
	if got := draw(all, mutation{again: earlier}); len(got) != 1 || got[0].Name() != all[3].Name() {
		t.Errorf("%d of one that survived", len(got))
	}
	a, b, other := draw(all, mutation{n: 10, seed: 4}), draw(all, mutation{n: 10, seed: 4}), draw(all, mutation{n: 10, seed: 5})
	same := func(x, y []mutate.Mutant) bool {
		for i := range x {
			if x[i].Name() != y[i].Name() {
				return false
			}
		}
		return len(x) == 10 && len(y) == 10
	}
	if !same(a, b) || same(a, other) {
		t.Error("a seed does not draw the same, or another draws no other")
	}
}

func TestMutationFlags(t *testing.T) {
	m, err := readMutation(tool{errs: &bytes.Buffer{}}, strings.Fields("-package sweat,plan -n 9"))
	if err != nil || strings.Join(m.packages, " ") != "sweat plan" || m.n != 9 {
		t.Errorf("%+v, %v", m, err)
	}
	if _, err := readMutation(tool{errs: &bytes.Buffer{}}, []string{"-again", filepath.Join(t.TempDir(), "none")}); err == nil {
		t.Error("a file that is not there is read")
	}
	if _, err := readMutation(tool{errs: &bytes.Buffer{}}, []string{"sweat"}); err == nil {
		t.Error("a package without its flag is taken for one")
	}
}

func TestSummary(t *testing.T) {
	got := summary("sweat", 900, map[mutate.Fate]int{mutate.Killed: 57, mutate.Survived: 3, mutate.Equivalent: 1, mutate.Unbuilt: 4})
	for _, want := range []string{"900 mutants", "60 tried", "killed 57", "survived 3 (95.0 %", "equivalent 1 (1.6 %)", "did not build 4"} {
		if !strings.Contains(got, want) {
			t.Errorf("%q does not say %q", got, want)
		}
	}
}

func TestEnough(t *testing.T) {
	for _, c := range []struct {
		killed, survived, equal int
		want                    bool
	}{{95, 5, 0, true}, {94, 6, 0, false}, {97, 0, 3, true}, {96, 0, 4, false}, {0, 0, 0, true}} {
		if got := enough(map[mutate.Fate]int{mutate.Killed: c.killed, mutate.Survived: c.survived, mutate.Equivalent: c.equal}); got != c.want {
			t.Errorf("%+v: %v", c, got)
		}
	}
}

// The kept list can be read: every line has a mutant and a reason.
func TestEquivalentsAreReasoned(t *testing.T) {
	root, err := findRoot()
	if err == nil {
		_, err = mutate.Equivalents(filepath.Join(root, filepath.FromSlash(equivalents)))
	}
	if err != nil {
		t.Error(err)
	}
}

// What is listed for a package below another is not asked of the one above.
func TestStaleEquivalents(t *testing.T) {
	known := map[string]string{"internal/plan/a.go F: 1 => 2": "", "internal/plan/a.go G: 1 => 2": "", "internal/plan/proposal/b.go F: 1 => 2": ""}
	all := []mutate.Mutant{{File: "internal/plan/a.go", Func: "F", Was: "1", Is: "2"}}
	if got := staleNames("plan", all, known); len(got) != 1 || got[0] != "internal/plan/a.go G: 1 => 2" {
		t.Errorf("%v", got)
	}
	if got := staleNames("plan/proposal", nil, known); len(got) != 1 {
		t.Errorf("%v", got)
	}
}

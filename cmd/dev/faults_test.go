package main

import (
	"os"
	"path/filepath"
	"regexp"
	"slices"
	"strings"
	"testing"
)

func TestReadTried(t *testing.T) {
	list := readTried("=== RUN x\n    a_test.go:3: faults|entry: kill|6|5|1|0\n    a_test.go:4: faults|torn log|20|19|0|1\nok\n")
	if want := []tried{{"entry: kill", 6, 5, 1, 0}, {"torn log", 20, 19, 0, 1}}; !slices.Equal(list, want) {
		t.Errorf("read %v", list)
	}
	var sum tried
	for _, l := range list {
		sum.add(l)
	}
	if sum.tried != 26 || sum.lost != 1 {
		t.Errorf("together %+v", sum)
	}
}

// Every test that the command names is there.
func TestFaultTestsAreThere(t *testing.T) {
	root, err := findRoot()
	if err != nil {
		t.Fatal(err)
	}
	for _, set := range slices.Concat(faultTests(1), monkeyTests()) {
		files, err := filepath.Glob(filepath.Join(root, set.folder, "*_test.go"))
		if err != nil {
			t.Fatal(err)
		}
		var text strings.Builder
		for _, f := range files {
			data, err := os.ReadFile(f)
			if err != nil {
				t.Fatal(err)
			}
			text.Write(data)
		}
		names := regexp.MustCompile(`Test\w+`).FindAllString(set.tests, -1)
		if len(names) == 0 {
			t.Errorf("%s: no test is named", set.folder)
		}
		for _, name := range names {
			if !strings.Contains(text.String(), "\nfunc "+name+"(t *testing.T)") {
				t.Errorf("%s has no %s", set.folder, name)
			}
		}
	}
}

package main

import (
	"io/fs"
	"os"
	"path/filepath"
	"regexp"
	"strings"
	"testing"
)

// TestNamedTestsAreThere: each test that DEVELOPERS.md names is there.
func TestNamedTestsAreThere(t *testing.T) {
	root, err := findRoot()
	if err != nil {
		t.Fatal(err)
	}
	text, err := os.ReadFile(filepath.Join(root, "DEVELOPERS.md"))
	if err != nil {
		t.Fatal(err)
	}
	there := map[string]bool{}
	function := regexp.MustCompile(`(?m)^func (Test\w+)\(`)
	err = filepath.WalkDir(root, func(path string, e fs.DirEntry, err error) error {
		if err != nil || e.IsDir() || !strings.HasSuffix(path, "_test.go") {
			return err
		}
		code, err := os.ReadFile(path)
		for _, found := range function.FindAllSubmatch(code, -1) {
			there[string(found[1])] = true
		}
		return err
	})
	if err != nil {
		t.Fatal(err)
	}
	names := regexp.MustCompile(`\bTest[A-Z]\w+`).FindAllString(string(text), -1)
	if len(names) < 150 {
		t.Errorf("only %d tests are named", len(names))
	}
	for _, name := range names {
		if !there[name] {
			t.Errorf("no test %s", name)
		}
	}
}

package main

import (
	"os"
	"path/filepath"
	"strings"
	"testing"
)

// folder makes files in a temporary folder.
func folder(t *testing.T, files map[string]string) string {
	t.Helper()
	root := t.TempDir()
	for name, text := range files {
		path := filepath.Join(root, filepath.FromSlash(name))
		if err := os.MkdirAll(filepath.Dir(path), 0o755); err != nil {
			t.Fatal(err)
		}
		if err := os.WriteFile(path, []byte(text), 0o644); err != nil {
			t.Fatal(err)
		}
	}
	return root
}

func TestUnformatted(t *testing.T) {
	root := folder(t, map[string]string{
		"good.go":           "package a\n",
		"sub/ugly.go":       "package  a\n",
		"testdata/ugly.go":  "package  a\n",
		".hidden/ugly.go":   "package  a\n",
		"bin/ugly.go":       "package  a\n",
		"sub/notes.txt":     "package  a\n",
		"sub/deep/good2.go": "package b\n\nconst X = 1\n",
	})
	got, err := unformatted(root)
	if err != nil || strings.Join(got, " ") != "sub/ugly.go" {
		t.Errorf("got %v, %v", got, err)
	}
	if _, err := unformatted(folder(t, map[string]string{"broken.go": "package"})); err == nil || !strings.Contains(err.Error(), "broken.go") {
		t.Errorf("a file that does not parse: got %v", err)
	}
}

func TestUpdatable(t *testing.T) {
	root := folder(t, map[string]string{
		"app/kit/chart/golden_test.go": "package chart\n\nvar update = flag.Bool(\"update\", false, \"\")\n",
		"app/kit/chart/more_test.go":   "package chart\n",
		"internal/plan/p_test.go":      "package plan\n",
	})
	got, err := updatable(root)
	if err != nil || strings.Join(got, " ") != "./app/kit/chart" {
		t.Errorf("got %v, %v", got, err)
	}
	if got, err := updatable(folder(t, map[string]string{"a/a_test.go": "package a\n"})); err == nil {
		t.Errorf("nothing to update, and got %v", got)
	}
}

func TestMoveFile(t *testing.T) {
	dir := folder(t, map[string]string{"from/tool": "program"})
	to := filepath.Join(dir, "bin", "tool")
	if err := moveFile(filepath.Join(dir, "from", "tool"), to); err != nil {
		t.Fatal(err)
	}
	if data, err := os.ReadFile(to); err != nil || string(data) != "program" {
		t.Errorf("got %q, %v", data, err)
	}
	if info, err := os.Stat(to); err != nil || info.Mode().Perm()&0o100 == 0 {
		t.Errorf("it cannot be run: %v, %v", info, err)
	}
	if err := moveFile(filepath.Join(dir, "none"), to); err == nil {
		t.Error("a file that is not there was moved")
	}
}

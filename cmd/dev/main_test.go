package main

import (
	"bytes"
	"context"
	"errors"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"testing"
)

func TestUsageNamesEveryCommand(t *testing.T) {
	for _, args := range [][]string{nil, {"help"}, {"-h"}} {
		var out bytes.Buffer
		if err := dispatch(context.Background(), args, &out, &out); err != nil {
			t.Fatal(err)
		}
		for _, c := range commands() {
			if !strings.Contains(out.String(), "  "+c.name+" ") {
				t.Errorf("%v: the help does not name %s", args, c.name)
			}
		}
	}
}

func TestUnknownCommand(t *testing.T) {
	err := dispatch(context.Background(), []string{"tset"}, &bytes.Buffer{}, &bytes.Buffer{})
	if err == nil || !strings.Contains(err.Error(), `"tset"`) {
		t.Errorf("got %v", err)
	}
}

func TestExitCode(t *testing.T) {
	if os.Getenv("EBBWELL_EXIT") != "" {
		os.Exit(7)
	}
	self := exec.Command(os.Args[0], "-test.run", "^TestExitCode$")
	self.Env = append(os.Environ(), "EBBWELL_EXIT=1")
	seven := self.Run()
	for _, c := range []struct {
		name string
		err  error
		code int
		said string
	}{
		{"well", nil, 0, ""},
		{"a tool's own", seven, 7, ""},
		{"ours", errors.New("no such thing"), 1, "dev: no such thing\n"},
	} {
		var errs bytes.Buffer
		if code := exitCode(c.err, &errs); code != c.code || errs.String() != c.said {
			t.Errorf("%s: code %d, said %q; want %d, %q", c.name, code, errs.String(), c.code, c.said)
		}
	}
}

func TestFindRoot(t *testing.T) {
	root, err := findRoot()
	if err != nil {
		t.Fatal(err)
	}
	if _, err := os.Stat(filepath.Join(root, "cmd", "dev", "main.go")); err != nil {
		t.Error(err)
	}
	t.Chdir(t.TempDir())
	if dir, err := findRoot(); err == nil {
		t.Errorf("found a module at %s from a folder outside", dir)
	}
}

func TestSplitPackages(t *testing.T) {
	for _, c := range []struct{ args, packages, rest string }{
		{"", "./...", ""},
		{"-v -run TestMainJob", "./...", "-v -run TestMainJob"},
		{"./app/... -run TestMainJob -v", "./app/...", "-run TestMainJob -v"},
		{"-update ./app/kit/field ebbwell/app/kit/chart", "./app/kit/field ebbwell/app/kit/chart", "-update"},
		{".", ".", ""},
	} {
		packages, rest := splitPackages(strings.Fields(c.args))
		if strings.Join(packages, " ") != c.packages || strings.Join(rest, " ") != c.rest {
			t.Errorf("%q: got %v and %v", c.args, packages, rest)
		}
	}
}

func TestPackagesStandBeforeFlags(t *testing.T) {
	got := strings.Join(testLine([]string{"./..."}, []string{"-update", "-v"}), " ")
	if want := "test -tags ci,migrated_fynedo ./... -update -v"; got != want {
		t.Errorf("got %q, want %q", got, want)
	}
}

func TestLanguageEnv(t *testing.T) {
	lookup := func(env map[string]string) func(string) (string, bool) {
		return func(name string) (string, bool) { v, ok := env[name]; return v, ok }
	}
	if got := languageEnv(lookup(map[string]string{"LANG": "de_DE.UTF-8"})); got != nil {
		t.Errorf("a language is set, and %v was added", got)
	}
	if got := languageEnv(lookup(map[string]string{"LANG": ""})); len(got) != 1 || got[0] != "LANG=C.UTF-8" {
		t.Errorf("no language is set, and %v was added", got)
	}
}

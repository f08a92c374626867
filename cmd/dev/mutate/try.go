package mutate

import (
	"context"
	"encoding/json"
	"errors"
	"fmt"
	"os"
	"os/exec"
	"path/filepath"
	"strconv"
	"strings"
)

// Fate is what became of a mutant.
type Fate string

// The fates.
const (
	Killed   Fate = "killed"
	Survived Fate = "survived"
	// Equivalent mutants are listed with the reason why no test can tell them
	// from the program; they are not tried.
	Equivalent Fate = "equivalent"
	// Unbuilt mutants are no program: they count for nothing.
	Unbuilt Fate = "does not build"
)

// Trial tries mutants one at a time.
type Trial struct {
	// Root is the folder of the module.
	Root string
	// Tags are the build tags of the tests.
	Tags string
	// Env is set for every test program, as "NAME=value": what its draws begin
	// with, so that a figure can be repeated.
	Env []string
	// Dir is a folder for the changed files.
	Dir string
	// Covering says which tests to run; nil runs all.
	Covering *Coverage
	// Switched has most mutants in one program; nil builds each by itself.
	Switched *Switched
}

// Try builds the package with a mutant in it and runs those of its tests that run
// the line, until one fails. The error is for what says nothing about the mutant.
func (t Trial) Try(ctx context.Context, m Mutant) (Fate, error) {
	groups := [][]string{nil}
	if t.Covering != nil {
		if groups = t.Covering.Of(m); len(groups) == 0 {
			return Survived, nil // no test comes by
		}
	}
	if t.Switched != nil && t.Switched.wrong[m.Name()] {
		return Unbuilt, nil
	}
	binary, on, err := t.program(ctx, m)
	if err != nil {
		return fateOf(ctx, err, Unbuilt)
	}
	home := filepath.Join(t.Root, filepath.Dir(m.File))
	for _, group := range groups {
		args := append(t.flags(home), "-test.failfast")
		if group != nil {
			args = append(args, "-test.run", "^("+strings.Join(group, "|")+")$")
		}
		run := t.command(ctx, home, binary, args...)
		run.Env = append(run.Env, environment+"="+strconv.Itoa(on))
		if _, err := run.CombinedOutput(); err != nil {
			return fateOf(ctx, err, Killed)
		}
	}
	return Survived, nil
}

// program is a test program with a mutant in it, and the number that turns it
// on; 0 where nothing else is in the program.
func (t Trial) program(ctx context.Context, m Mutant) (binary string, on int, err error) {
	if t.Switched != nil && t.Switched.number[m.Name()] > 0 {
		return t.Switched.binary, t.Switched.number[m.Name()], nil
	}
	place := filepath.Join(t.Root, filepath.FromSlash(m.File))
	source, err := os.ReadFile(place)
	if err != nil {
		return "", 0, fmt.Errorf("read source: %w", err)
	}
	changed, overlay := filepath.Join(t.Dir, "changed.go"), filepath.Join(t.Dir, "overlay.json")
	if err := os.WriteFile(changed, m.apply(source), 0o600); err != nil {
		return "", 0, fmt.Errorf("write the mutant: %w", err)
	}
	data, err := json.Marshal(map[string]any{"Replace": map[string]string{place: changed}})
	if err == nil {
		err = os.WriteFile(overlay, data, 0o600)
	}
	if err != nil {
		return "", 0, fmt.Errorf("write the mutant: %w", err)
	}
	binary = filepath.Join(t.Dir, "mutant.test")
	build := t.command(ctx, t.Root, "go", "test", "-c", "-overlay", overlay, "-tags", t.Tags, "-vet=off", "-o", binary, "./"+filepath.ToSlash(filepath.Dir(m.File)))
	if _, err := build.CombinedOutput(); err != nil {
		return "", 0, err //nolint:wrapcheck // told apart by its kind
	}
	return binary, 0, nil
}

// drawsCases reports whether tests of a folder draw cases with rapid, which
// would keep each case that fails in a file.
func drawsCases(folder string) bool {
	files, err := filepath.Glob(filepath.Join(folder, "*_test.go"))
	if err != nil {
		return false
	}
	for _, f := range files {
		if data, err := os.ReadFile(f); err == nil && strings.Contains(string(data), `"pgregory.net/rapid"`) {
			return true
		}
	}
	return false
}

// fateOf says what a command that failed says of a mutant; the error is for one
// that was not run.
func fateOf(ctx context.Context, err error, failing Fate) (Fate, error) {
	var failed *exec.ExitError
	switch {
	case ctx.Err() != nil:
		return "", fmt.Errorf("try a mutant: %w", ctx.Err())
	case !errors.As(err, &failed):
		return "", fmt.Errorf("try a mutant: %w", err)
	}
	return failing, nil
}

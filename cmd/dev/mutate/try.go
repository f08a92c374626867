package mutate

import (
	"context"
	"encoding/json"
	"errors"
	"fmt"
	"os"
	"os/exec"
	"path/filepath"
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
	// Dir is a folder for the changed files.
	Dir string
}

// Try builds the package with a mutant in it and runs its tests. The error is
// for what says nothing about the mutant.
func (t Trial) Try(ctx context.Context, m Mutant) (Fate, error) {
	place := filepath.Join(t.Root, filepath.FromSlash(m.File))
	source, err := os.ReadFile(place)
	if err != nil {
		return "", fmt.Errorf("read source: %w", err)
	}
	changed, overlay := filepath.Join(t.Dir, "changed.go"), filepath.Join(t.Dir, "overlay.json")
	if err := os.WriteFile(changed, m.apply(source), 0o600); err != nil {
		return "", fmt.Errorf("write the mutant: %w", err)
	}
	data, err := json.Marshal(map[string]any{"Replace": map[string]string{place: changed}})
	if err == nil {
		err = os.WriteFile(overlay, data, 0o600)
	}
	if err != nil {
		return "", fmt.Errorf("write the mutant: %w", err)
	}
	folder := filepath.Dir(m.File)
	args := []string{"test", "-overlay", overlay, "-tags", t.Tags, "-vet=off", "-count=1", "-failfast", "-timeout=120s", "./" + filepath.ToSlash(folder)}
	if drawsCases(filepath.Join(t.Root, folder)) {
		args = append(args, "-rapid.nofailfile") // what fails a mutant is no case to keep
	}
	c := exec.CommandContext(ctx, "go", args...)
	c.Dir = t.Root
	c.Env = append(os.Environ(), "CGO_ENABLED=0")
	printed, err := c.CombinedOutput()
	return fateOf(ctx, string(printed), err)
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

// fateOf reads what go test printed.
func fateOf(ctx context.Context, printed string, err error) (Fate, error) {
	var failed *exec.ExitError
	switch {
	case ctx.Err() != nil:
		return "", fmt.Errorf("try a mutant: %w", ctx.Err())
	case err == nil:
		return Survived, nil
	case !errors.As(err, &failed):
		return "", fmt.Errorf("try a mutant: %w", err)
	case strings.Contains(printed, "[build failed]") || strings.Contains(printed, "[setup failed]"):
		return Unbuilt, nil
	}
	return Killed, nil
}

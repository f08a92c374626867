package main

import (
	"context"
	"errors"
	"fmt"
	"io"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"time"
)

// tags are the build tags of the tests: ci gives Fyne its driver without a
// screen and shuts out the system's fonts; migrated_fynedo says that all
// calls into the toolkit from elsewhere go through fyne.Do.
const tags = "ci,migrated_fynedo"

// stopWait is how long a tool may take to end after it was asked to.
const stopWait = 10 * time.Second

// tool is what every command works with.
type tool struct {
	root      string // folder of go.mod
	out, errs io.Writer
}

// findRoot walks up from the working folder to the one with this module's go.mod.
func findRoot() (string, error) {
	dir, err := os.Getwd()
	if err != nil {
		return "", fmt.Errorf("find the module: %w", err)
	}
	for {
		data, err := os.ReadFile(filepath.Join(dir, "go.mod"))
		if err == nil && strings.HasPrefix(string(data), "module ebbwell\n") {
			return dir, nil
		}
		parent := filepath.Dir(dir)
		if parent == dir {
			return "", errors.New("find the module: no go.mod of ebbwell here or above")
		}
		dir = parent
	}
}

// say writes a line about what is being done.
func (t tool) say(format string, args ...any) {
	_, _ = fmt.Fprintf(t.errs, format+"\n", args...)
}

// command prepares a program that runs in the module's root and is asked to
// stop, not killed, when ctx ends. env is added to the environment.
func (t tool) command(ctx context.Context, env []string, name string, args ...string) *exec.Cmd {
	c := exec.CommandContext(ctx, name, args...)
	c.Dir = t.root
	c.Env = append(os.Environ(), env...)
	c.Stdin, c.Stdout, c.Stderr = os.Stdin, t.out, t.errs
	c.Cancel = func() error { return c.Process.Signal(os.Interrupt) }
	c.WaitDelay = stopWait
	return c
}

// call runs a program with its output shown.
func (t tool) call(ctx context.Context, env []string, name string, args ...string) error {
	if err := t.command(ctx, env, name, args...).Run(); err != nil {
		return fmt.Errorf("run %s: %w", name, err)
	}
	return nil
}

// read runs a program and returns what it printed.
func (t tool) read(ctx context.Context, env []string, name string, args ...string) (string, error) {
	c := t.command(ctx, env, name, args...)
	c.Stdout = nil
	data, err := c.Output()
	if err != nil {
		return string(data), fmt.Errorf("run %s: %w", name, err)
	}
	return string(data), nil
}

// bin returns the path of a file in the folder of built programs.
func (t tool) bin(name string) string { return filepath.Join(t.root, "bin", name) }

// splitPackages takes the package patterns out of a list of arguments, so that
// they can stand before flags that go itself does not know.
func splitPackages(args []string) (packages, rest []string) {
	for _, a := range args {
		if a == "." || a == "./..." || strings.HasPrefix(a, "./") || strings.HasPrefix(a, "ebbwell/") {
			packages = append(packages, a)
		} else {
			rest = append(rest, a)
		}
	}
	if len(packages) == 0 {
		packages = []string{"./..."}
	}
	return packages, rest
}

package main

import (
	"context"
	"errors"
	"fmt"
	"os"
	"runtime"
	"time"
)

// programTags are how the window is built: every call from another goroutine goes through
// the toolkit's queue, and what a screen reader asks is answered where the toolkit can.
const programTags = "migrated_fynedo,accessibility"

// stillEvery is how often a long build says that it is alive.
const stillEvery = 10 * time.Second

// run builds the program and starts it with the arguments given.
func run(ctx context.Context, t tool, args []string) error {
	if err := deps(ctx, t, nil); err != nil {
		return err
	}
	program, err := t.buildProgram(ctx)
	if err != nil {
		return err
	}
	if runtime.GOOS == "linux" && os.Getenv("DISPLAY") == "" && os.Getenv("WAYLAND_DISPLAY") == "" {
		return fmt.Errorf("%s is built, but there is no screen to open it on: neither DISPLAY nor WAYLAND_DISPLAY is set", program)
	}
	return t.call(ctx, languageEnv(os.LookupEnv), program, args...)
}

// buildProgram builds the real window into bin/ and returns its path.
func (t tool) buildProgram(ctx context.Context) (string, error) {
	program := t.bin("ebbwell")
	if runtime.GOOS == "windows" {
		program += ".exe"
	}
	if _, err := os.Stat(program); errors.Is(err, os.ErrNotExist) {
		t.say("Building Ebbwell. The first time, with the window toolkit's C parts, takes about 3 minutes.")
	}
	stop := t.still("building")
	defer stop()
	err := t.call(ctx, []string{"CGO_ENABLED=1"}, "go", "build", "-buildvcs=false", "-tags", programTags, "-o", program, "./cmd/ebbwell")
	if err != nil {
		return "", fmt.Errorf("build the program: %w", err)
	}
	return program, nil
}

// still says every few seconds that something goes on, until stopped.
func (t tool) still(doing string) (stop func()) {
	done, ended := make(chan struct{}), make(chan struct{})
	begun := time.Now()
	go func() {
		defer close(ended)
		tick := time.NewTicker(stillEvery)
		defer tick.Stop()
		for {
			select {
			case <-done:
				return
			case now := <-tick.C:
				t.say("  still %s, %d s", doing, int(now.Sub(begun).Seconds()))
			}
		}
	}()
	return func() { close(done); <-ended }
}

// languageEnv is what to add to the environment so that the toolkit finds a
// language: without one it complains and falls back.
func languageEnv(lookup func(string) (string, bool)) []string {
	for _, name := range []string{"LC_ALL", "LC_MESSAGES", "LANG"} {
		if value, ok := lookup(name); ok && value != "" {
			return nil
		}
	}
	return []string{"LANG=C.UTF-8"}
}

// Command dev is the one helper for people who work on Ebbwell. Start it from
// anywhere inside the module:
//
//	go run ./cmd/dev COMMAND [arguments]
//
// It needs Go and nothing else: it imports the standard library only, so that
// it starts at once on a machine that has neither a C compiler nor the
// modules. What needs more (a compiler for the real window, a virtual screen,
// the linter) it installs or builds first, and says so.
//
// Every command ends with the exit code of the tool it ran.
package main

import (
	"context"
	"errors"
	"fmt"
	"io"
	"os"
	"os/exec"
	"os/signal"
	"syscall"
)

// command is one thing the helper does.
type command struct {
	name, args, does string
	do               func(context.Context, tool, []string) error
}

// commands lists them in the order of the help text.
func commands() []command {
	return []command{
		{"deps", "[build] [window] [all]", "install the system packages that are missing", deps},
		{"run", "[arguments]", "build the program and start it", run},
		{"test", "[packages] [-pictures=false] [-report] [flags of go test]", "run the tests of the whole tree, or of some packages", test},
		{"lint", "", "look for mistakes: gofmt, go vet, functions nothing reaches, builds for other systems, golangci-lint", lint},
		{"notices", "", "write the licences of the modules and the typeface into assets", notices},
		{"bench", "[packages] [-bench REGEXP] [-count N]", "run benchmarks, with ratios to their baselines", bench},
		{"fuzz", "[packages] [-time 60s] [-plain=PACKAGES]", "run each fuzz target for a time and tell what it found", fuzz},
		{"faults", "[-n 6] [-monkey]", "try to lose data: kills at chosen changes of files, a full disk, damage, a clock that moves; or whatever comes", faults},
		{"race", "[packages] [flags of go test]", "run the tests of app and internal under the race detector; needs a C compiler", race},
		{"mutate", "[-package NAMES] [-n N] [-seed N] [-only TEXT] [-again FILE] [-quick] [-list]", "try the tests of the science packages with small mistakes", mutant},
		{"shots", "[-help] [flags] [DIR]", "draw every screen, light and dark, small and large; flags draw less", shots},
		{"words", "[-lang de] [-file planner]", "how far the languages are, and the longest sentences", words},
		{"window", "[-shots DIR] [-keep]", "drive the main job in the real window on a virtual screen", window},
		{"package", "[linux-amd64] [linux-arm64] [windows-amd64]", "make what a user installs: .deb, .tar.gz, .zip in bin/packages", makePackages},
		{"installed", "[-shots DIR] [-keep]", "install the .deb on a bare Debian in a folder and drive the main job there; needs root", installed},
		{"wine", "[-shots DIR] [-keep]", "start the Windows build under Wine and drive the main job there", wine},
	}
}

func main() {
	ctx, stop := signal.NotifyContext(context.Background(), os.Interrupt, syscall.SIGTERM)
	err := dispatch(ctx, os.Args[1:], os.Stdout, os.Stderr)
	stop()
	os.Exit(exitCode(err, os.Stderr))
}

// dispatch finds the command and does it.
func dispatch(ctx context.Context, args []string, out, errs io.Writer) error {
	if len(args) == 0 || args[0] == "help" || args[0] == "-h" || args[0] == "--help" {
		return usage(out)
	}
	for _, c := range commands() {
		if c.name != args[0] {
			continue
		}
		root, err := findRoot()
		if err != nil {
			return err
		}
		return c.do(ctx, tool{root: root, out: out, errs: errs}, args[1:])
	}
	return fmt.Errorf("there is no command %q; `go run ./cmd/dev help` lists them", args[0])
}

// usage lists the commands.
func usage(out io.Writer) error {
	if _, err := fmt.Fprintln(out, "Use: go run ./cmd/dev COMMAND [arguments]"); err != nil {
		return fmt.Errorf("write help: %w", err)
	}
	for _, c := range commands() {
		if _, err := fmt.Fprintf(out, "\n  %s %s\n      %s\n", c.name, c.args, c.does); err != nil {
			return fmt.Errorf("write help: %w", err)
		}
	}
	return nil
}

// exitCode passes on the exit code of a tool that failed; the tool has said
// why. Any other error is written here.
func exitCode(err error, errs io.Writer) int {
	var failed *exec.ExitError
	switch {
	case err == nil:
		return 0
	case errors.As(err, &failed) && failed.ExitCode() > 0:
		return failed.ExitCode()
	}
	_, _ = fmt.Fprintln(errs, "dev:", err)
	return 1
}

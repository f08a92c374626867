// Command window drives the main job in the real window on a virtual screen
// and leaves a picture of every stage. `go run ./cmd/dev window` builds it,
// builds the program, and starts it.
//
// What it does stands in the lists of script.go; how to move the mouse and
// read the controls is in package drive.
package main

import (
	"context"
	"errors"
	"flag"
	"fmt"
	"os"
	"os/signal"
	"path/filepath"
	"syscall"
	"time"

	"ebbwell/cmd/dev/drive"
	"ebbwell/internal/offline"
)

// The virtual screen, and how long one step may take: a machine without a
// graphics card draws slowly.
const (
	screenWidth  = 1600
	screenHeight = 1000
	patience     = 30 * time.Second
)

// shutOff is the first argument with which this program shuts itself off from all
// networks and becomes the program named behind it: the system then ends that
// program at the first socket into a network. So the real program, with all the
// libraries of the window, is seen not to dial.
const shutOff = "shut-off"

func main() {
	if len(os.Args) > 2 && os.Args[1] == shutOff {
		if err := becomeOffline(os.Args[2:]); err != nil {
			_, _ = fmt.Fprintln(os.Stderr, "window:", err)
			os.Exit(1)
		}
	}
	ctx, stop := signal.NotifyContext(context.Background(), os.Interrupt, syscall.SIGTERM)
	err := start(ctx, os.Args[1:])
	stop()
	if err != nil {
		_, _ = fmt.Fprintln(os.Stderr, "window:", err)
		os.Exit(1)
	}
}

// start reads the arguments, makes a fresh folder for the run and does it.
func start(ctx context.Context, args []string) (err error) {
	flags := flag.NewFlagSet("window", flag.ContinueOnError)
	program := flags.String("program", filepath.Join("bin", "ebbwell"), "the built program")
	shots := flags.String("shots", filepath.Join("shots", "window"), "folder for the pictures")
	keep := flags.Bool("keep", false, "keep the folder of the run, with the program's data")
	windows := flags.Bool("windows", false, "the program is a Windows program under Wine")
	kills := flags.Int("kills", 1, "how many times the program is killed while the timers of a test day run")
	part := flags.String("part", "", "squad does only the test day of a squad, on a practice begun for it")
	if err := flags.Parse(args); err != nil {
		return fmt.Errorf("read arguments: %w", err)
	}
	if flags.NArg() > 0 {
		return fmt.Errorf("read arguments: %q is not known", flags.Arg(0))
	}
	if *part != "" && *part != "squad" {
		return fmt.Errorf("read arguments: there is no part %q", *part)
	}
	work, err := os.MkdirTemp("", "ebbwell-window-")
	if err != nil {
		return fmt.Errorf("make a folder for the run: %w", err)
	}
	if *keep {
		defer fmt.Println("The run is kept in", work)
	} else {
		defer func() { err = errors.Join(err, os.RemoveAll(work)) }()
	}
	c := drive.Config{
		Program: *program, Work: work, Shots: *shots,
		Width: screenWidth, Height: screenHeight, Patience: patience,
	}
	if self, err := os.Executable(); err == nil && !*windows {
		c.Before = []string{self, shutOff}
	}
	if *windows {
		// Wine shows this machine's files on drive Z, and ends a program at once on a signal.
		c.CloseKeys, c.Root = "alt+F4", "Z:"
	}
	var small disk
	defer func() { err = errors.Join(err, small.unmount()) }()
	var full []drive.Step
	if *windows {
		fmt.Println("A full disk is not tried under Wine.")
	} else if full, err = diskPart(ctx, &small, work, os.Stdout); err != nil {
		return err
	}
	steps := script(*windows, *kills)
	if *part == "squad" {
		steps = squadAlone(*kills)
	}
	steps = append(steps, full...)
	return runScript(ctx, c, steps)
}

// runScript does the script once, on a virtual screen of its own.
func runScript(ctx context.Context, c drive.Config, steps []drive.Step) (err error) {
	d, err := drive.New(ctx, c)
	if err != nil {
		return err
	}
	defer func() { err = errors.Join(err, d.Close()) }()
	return drive.Run(ctx, d, steps, os.Stdout)
}

// becomeOffline shuts this process off from all networks and becomes another program.
func becomeOffline(line []string) error {
	if err := offline.Shut(); err != nil {
		_, _ = fmt.Fprintln(os.Stderr, "window: goes on, and does not see whether the program dials:", err)
	}
	if err := syscall.Exec(line[0], line, os.Environ()); err != nil {
		return fmt.Errorf("start %s: %w", line[0], err)
	}
	return nil
}

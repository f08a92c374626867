// Package drive works a desktop program as a person does: it starts it on a
// virtual screen, finds its controls by name, moves the mouse, presses keys,
// reads what the controls show, and takes pictures.
//
// It knows where the controls are because the program, started with
// --places FILE, writes them there as JSON whenever its layout has come to
// rest ([Places]). [New] makes a [Driver]; [Run] lets it do a list of [Step]s
// and, when one fails, leaves a picture, the last places and the end of the
// program's log beside the other pictures.
//
// It needs Xvfb, setxkbmap, xdotool and ImageMagick's import.
package drive

import (
	"context"
	"errors"
	"fmt"
	"os"
	"path/filepath"
	"slices"
	"strconv"
	"strings"
	"time"
)

// How often the places file is read, and how long a control must stay where
// it is before the mouse goes there.
const (
	readEvery = 40 * time.Millisecond
	settle    = 200 * time.Millisecond
)

// Config says what to drive.
type Config struct {
	Program string // path of the built program
	Args    []string
	// Demo opens the invented practice instead of the run's own data folder.
	Demo bool
	// Before is what stands before the program in the command that starts it: a
	// program that makes something ready and then becomes it. Mostly none.
	Before []string
	// Work is the folder of one run: home, data, places and log of the
	// program. Shots is the folder for pictures.
	Work, Shots   string
	Width, Height int // of the virtual screen, in pixels
	// CloseKeys close the window where the program does not hear the signal by
	// which a system asks it to end: "alt+F4". Without, the signal is sent.
	CloseKeys string
	// Root comes before every path that is typed into the program, such as the
	// letter of a drive.
	Root string
	// Patience is how long to wait for anything before giving up.
	Patience time.Duration
}

// Driver drives one program on one virtual screen.
type Driver struct {
	config  Config
	display *Display
	program *process
	window  string // xdotool's number of the window
	shots   int
	// typed are the names and figures that were typed: none of them is to be in a log.
	typed []string
	clock clock
}

// clock is how a driver waits; tests have one of their own.
type clock struct {
	now func() time.Time
	// pause lets some time pass; its error is the context's.
	pause func(ctx context.Context, d time.Duration) error
}

// machineClock is the machine's.
func machineClock() clock {
	return clock{now: time.Now, pause: func(ctx context.Context, d time.Duration) error {
		select {
		case <-ctx.Done():
			return ctx.Err()
		case <-time.After(d):
			return nil
		}
	}}
}

// New makes the folders and starts the virtual screen; [Driver.Close] ends it.
func New(ctx context.Context, c Config) (*Driver, error) {
	for _, dir := range []string{c.Work, c.Shots, filepath.Join(c.Work, "home")} {
		if err := os.MkdirAll(dir, 0o700); err != nil {
			return nil, fmt.Errorf("make folders for the run: %w", err)
		}
	}
	if err := removeOld(c.Shots); err != nil {
		return nil, err
	}
	display, err := StartDisplay(ctx, c.Width, c.Height)
	if err != nil {
		return nil, err
	}
	return &Driver{config: c, display: display, clock: machineClock()}, nil
}

// removeOld removes what an earlier run left in the folder for pictures.
func removeOld(dir string) error {
	for _, pattern := range []string{"[0-9][0-9]-*.png", "failed*"} {
		old, err := filepath.Glob(filepath.Join(dir, pattern))
		if err != nil {
			return fmt.Errorf("clear the folder for pictures: %w", err)
		}
		for _, file := range old {
			if err := os.Remove(file); err != nil {
				return fmt.Errorf("clear the folder for pictures: %w", err)
			}
		}
	}
	return nil
}

// Close kills the program if it still runs and ends the virtual screen.
func (d *Driver) Close() error {
	var err error
	if d.program != nil && d.program.running() {
		err = d.program.kill()
	}
	return errors.Join(err, d.display.Stop())
}

// Data is the program's data folder.
func (d *Driver) Data() string { return filepath.Join(d.config.Work, "data") }

// LogFile is where the program's output is gathered.
func (d *Driver) LogFile() string { return filepath.Join(d.config.Work, "program.log") }

// placesFile is where the program writes its controls.
func (d *Driver) placesFile() string { return filepath.Join(d.config.Work, "places.json") }

// Start starts the program and waits until its window is on the screen, laid
// out, and has the keyboard. Extra arguments are added.
func (d *Driver) Start(ctx context.Context, extra ...string) error {
	if d.program != nil && d.program.running() {
		return errors.New("start the program: it is running")
	}
	if err := os.Remove(d.placesFile()); err != nil && !errors.Is(err, os.ErrNotExist) {
		return fmt.Errorf("start the program: %w", err)
	}
	args := []string{"--data", d.Data()}
	if d.config.Demo {
		args = []string{"--demo"}
	}
	args = slices.Concat(args, []string{"--places", d.placesFile()}, d.config.Args)
	env := Environment(os.Environ(), d.display.Name, filepath.Join(d.config.Work, "home"))
	line := slices.Concat(d.config.Before, []string{d.config.Program}, args, extra)
	program, err := startProcess(line, env, d.LogFile())
	if err != nil {
		return err
	}
	d.program = program
	if err := d.findWindow(ctx); err != nil {
		return err
	}
	return d.Until(ctx, "the first layout", func(Places) error { return nil })
}

// findWindow waits for the program's window and gives it the keyboard: there
// is no window manager here to do it.
func (d *Driver) findWindow(ctx context.Context) error {
	pid := strconv.Itoa(d.program.cmd.Process.Pid)
	return d.until(ctx, "the window", func() error {
		printed, err := d.display.xdotool(ctx, "search", "--onlyvisible", "--pid", pid)
		if err != nil {
			return err
		}
		ids := strings.Fields(printed)
		if len(ids) == 0 {
			return errors.New("there is none")
		}
		d.window = ids[len(ids)-1]
		_, err = d.display.xdotool(ctx, "windowfocus", d.window)
		return err
	})
}

// Process is the number the system gave the program.
func (d *Driver) Process() int { return d.program.cmd.Process.Pid }

// Quit ends the program the friendly way, and says when it does not end well.
func (d *Driver) Quit(ctx context.Context) error {
	if d.config.CloseKeys == "" {
		return d.program.quit(ctx, d.config.Patience)
	}
	if err := d.Press(ctx, d.config.CloseKeys); err != nil {
		return err
	}
	return d.program.wait(ctx, d.config.Patience)
}

// Typed is a path of this machine as it is typed into the program.
func (d *Driver) Typed(path string) string { return d.config.Root + path }

// Kill ends the program in the middle of anything.
func (d *Driver) Kill() error { return d.program.kill() }

// Shot takes a picture, named and numbered. What was done last has a moment to
// be drawn; a picture that shows next to nothing is taken again.
func (d *Driver) Shot(ctx context.Context, name string) error {
	d.shots++
	file := filepath.Join(d.config.Shots, fmt.Sprintf("%02d-%s.png", d.shots, name))
	if err := d.clock.pause(ctx, settle); err != nil {
		return fmt.Errorf("take a picture: %w", err)
	}
	return d.until(ctx, "the window to be drawn", func() error { return d.display.Shot(ctx, d.window, file) })
}

// Complaints lists what the program's log has that a sound run does not:
// panics, calls from a wrong thread, errors of the toolkit, and lines with something
// of what was typed.
func (d *Driver) Complaints() ([]string, error) {
	data, err := os.ReadFile(d.LogFile())
	if err != nil {
		return nil, fmt.Errorf("read the program's log: %w", err)
	}
	return append(complaints(string(data)), telling(string(data), d.typed)...), nil
}

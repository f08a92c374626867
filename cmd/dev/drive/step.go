package drive

import (
	"context"
	"errors"
	"fmt"
	"io"
	"os"
	"path/filepath"
	"strings"
	"time"
)

// Step is one thing to do or to check.
type Step struct {
	// Says what it is, for the list that is printed.
	Says string
	Do   func(context.Context, *Driver) error
}

// Run does the steps in order and writes a line for each. At the first that
// fails it stops, leaves failed.png, failed-places.json and failed.log among
// the pictures, and returns its error. The last line counts.
func Run(ctx context.Context, d *Driver, steps []Step, out io.Writer) error {
	if len(steps) == 0 {
		return errors.New("there are no steps")
	}
	for i, s := range steps {
		begun := time.Now()
		err := s.Do(ctx, d)
		mark := "ok  "
		if err != nil {
			mark = "FAIL"
		}
		if _, e := fmt.Fprintf(out, "%s %3d  %s (%.1f s)\n", mark, i+1, s.Says, time.Since(begun).Seconds()); e != nil {
			err = errors.Join(err, e)
		}
		if err != nil {
			// What is left behind must come out even when ctx has ended.
			left := d.leave(context.WithoutCancel(ctx), out)
			_, e := fmt.Fprintf(out, "window: %d passed, 1 failed, %d skipped\n", i, len(steps)-i-1)
			return errors.Join(fmt.Errorf("step %d, %s: %w", i+1, s.Says, err), left, e)
		}
	}
	_, err := fmt.Fprintf(out, "window: %d passed, 0 failed\n", len(steps))
	return err
}

// leave keeps what helps to see why a step failed.
func (d *Driver) leave(ctx context.Context, out io.Writer) error {
	dir := d.config.Shots
	err := d.display.capture(ctx, "root", filepath.Join(dir, "failed.png"))
	for from, to := range map[string]string{d.placesFile(): "failed-places.json", d.LogFile(): "failed.log"} {
		data, e := os.ReadFile(from)
		if errors.Is(e, os.ErrNotExist) {
			continue
		}
		err = errors.Join(err, e, os.WriteFile(filepath.Join(dir, to), data, 0o600))
		if from == d.LogFile() {
			_, e = io.WriteString(out, tail(string(data), 20))
			err = errors.Join(err, e)
		}
	}
	return err
}

// tail returns the last lines of a text.
func tail(text string, lines int) string {
	all := strings.SplitAfter(text, "\n")
	return strings.Join(all[max(0, len(all)-lines-1):], "")
}

package main

import (
	"context"
	"errors"
	"fmt"
	"os"
	"os/exec"
	"path/filepath"
	"runtime"
	"strconv"
	"syscall"
	"time"

	"ebbwell/cmd/dev/drive"
)

const (
	// moveBench is a slider of the planner that is dragged in the real window.
	moveBench = "Move"
	// planned is an athlete of the invented practice who has a plan in the making.
	planned = "Sefa Quillonde"
	// dragged is the slider.
	dragged = "planner.water.slider"
	// grasped is where the slider stands, a share of its length.
	grasped = 0.167
	// moves are those of a drag, drags how many are measured in each window by turns.
	moves = 20
	drags = 3
	// quick and slow are the waits after a movement: as fast as a slider is followed, and
	// so slow that all that comes late after a movement comes before the next.
	quick = 120 * time.Millisecond
	slow  = time.Second
)

// benchMove drags in the planner and beside it moves the mouse over a window of the same
// size with nothing in it that is painted once a movement. It measures what a movement
// costs in all threads: without a graphics card, painting too.
func (t tool) benchMove(ctx context.Context, dir, full, empty string) (r result, err error) {
	swayed := [2]float64{0.3, 0.19} // 1.52 and 1.26 L of drinks in all, shares of the slider
	if runtime.GOOS != "linux" || !onPath("Xvfb") || !onPath("setxkbmap") || !onPath("xdotool") {
		return lacks(moveBench, "Xvfb for an empty window"), nil
	}
	d, size, err := openPlanner(ctx, filepath.Join(dir, "move"), full)
	if err != nil {
		return result{}, err
	}
	defer func() { err = errors.Join(err, d.Close()) }()
	screen, beside, err := openBeside(ctx, dir, empty, size)
	if err != nil {
		return result{}, err
	}
	defer func() { err = errors.Join(err, endBeside(beside), screen.Stop()) }()
	r = result{pkg: program, name: moveBench, values: map[string][]float64{}}
	for i := range drags + 1 {
		for _, pace := range []struct {
			name  string
			wait  time.Duration
			moves int
		}{{"quick", quick, moves}, {"slow", slow, moves / 4}} {
			used := stopwatch{pid: d.Process()}
			if err := d.Sway(ctx, dragged, grasped, swayed, pace.moves, pace.wait, used.read); err != nil {
				return result{}, err
			}
			plain := stopwatch{pid: beside.Process.Pid}
			if err := screen.Sway(ctx, 200, 200, [2]int{250, 210}, pace.moves, pace.wait, plain.read); err != nil {
				return result{}, err
			}
			if i > 0 { // in the first, texts are drawn for the first time
				r.values["ms-"+pace.name] = append(r.values["ms-"+pace.name], used.each(pace.moves))
				r.values["ms-empty-"+pace.name] = append(r.values["ms-empty-"+pace.name], plain.each(pace.moves))
			}
		}
	}
	return r, nil
}

// openPlanner opens a plan of the invented practice, and tells the size of the window.
func openPlanner(ctx context.Context, dir, full string) (d *drive.Driver, size [2]float64, err error) {
	d, err = drive.New(ctx, drive.Config{
		Program: full, Demo: true, Work: dir, Shots: filepath.Join(dir, "shots"), Width: 1366, Height: 900, Patience: restMost,
	})
	if err != nil {
		return nil, size, err
	}
	defer func() {
		if err != nil {
			err = errors.Join(err, d.Close())
		}
	}()
	for _, s := range []drive.Step{
		drive.Start(), drive.Fill("roster.search", planned), drive.Click("roster.table.0"), drive.Press("Return"), drive.Click("frame.tabs.plan"),
	} {
		if err := s.Do(ctx, d); err != nil {
			return nil, size, fmt.Errorf("%s: %w", s.Says, err)
		}
	}
	_, size, err = d.Wait(ctx, dragged)
	return d, size, err
}

// openBeside opens the window with nothing in it, on a screen of its own.
func openBeside(ctx context.Context, dir, empty string, size [2]float64) (*drive.Display, *exec.Cmd, error) {
	screen, err := drive.StartDisplay(ctx, 1366, 900)
	if err != nil {
		return nil, nil, err
	}
	px := func(x float64) string { return strconv.FormatFloat(x, 'f', 0, 64) }
	c := exec.CommandContext(ctx, empty, "-paints", "-width", px(size[0]), "-height", px(size[1]))
	c.Env = drive.Environment(os.Environ(), screen.Name, dir)
	if err := c.Start(); err != nil {
		return nil, nil, errors.Join(fmt.Errorf("start %s: %w", empty, err), screen.Stop())
	}
	return screen, c, nil
}

// endBeside ends it.
func endBeside(c *exec.Cmd) error {
	stopped := c.Process.Signal(syscall.SIGTERM)
	var ended *exec.ExitError
	if err := c.Wait(); !errors.As(err, &ended) {
		stopped = errors.Join(stopped, err)
	}
	return stopped
}

// stopwatch takes the CPU time a process has used between two looks.
type stopwatch struct {
	pid  int
	seen []time.Duration
}

// read looks.
func (s *stopwatch) read() error {
	used, err := cpuOf(s.pid)
	s.seen = append(s.seen, used)
	return err
}

// each is what passed between the first look and the last, shared among so many, in ms.
func (s *stopwatch) each(n int) float64 {
	return float64((s.seen[len(s.seen)-1] - s.seen[0]).Microseconds()) / 1000 / float64(n)
}

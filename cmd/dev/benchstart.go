package main

import (
	"context"
	"errors"
	"fmt"
	"os"
	"os/exec"
	"path/filepath"
	"runtime"
	"slices"
	"strconv"
	"strings"
	"syscall"
	"time"

	"ebbwell/cmd/dev/drive"
)

// Two of the benchmarks that are no benchmarks of go test: the real program beside
// a window of the same toolkit with nothing in it.
const (
	startBench = "Start"
	sizeBench  = "Size"
	// emptyWindow is the package of the window with nothing in it.
	emptyWindow = "./cmd/dev/testdata/empty"
	// keptPractice is the practice the program starts on.
	keptPractice = "internal/store/testdata/databases/v3.db"
	// starts is how many starts are measured, of each program in turn.
	starts = 7
)

// benchProgram measures the start, the size and a drag of the real program. What is not
// there to measure with is named as a missing peer.
func (t tool) benchProgram(ctx context.Context) ([]result, error) {
	dir, err := os.MkdirTemp("", "ebbwell-bench-")
	if err != nil {
		return nil, fmt.Errorf("make a folder: %w", err)
	}
	defer os.RemoveAll(dir) //nolint:errcheck // a left-over temporary folder does no harm
	full, empty := filepath.Join(dir, "ebbwell"), filepath.Join(dir, "empty")
	for _, one := range []struct{ from, to string }{{"./cmd/ebbwell", full}, {emptyWindow, empty}} {
		err := t.call(ctx, []string{"CGO_ENABLED=1"}, "go", "build", "-trimpath", "-buildvcs=false", "-tags", "migrated_fynedo", "-ldflags", "-s -w", "-o", one.to, one.from)
		if err != nil {
			t.say("The window cannot be built: %v", err)
			const compiler = "a C compiler"
			return []result{lacks(startBench, compiler), lacks(sizeBench, compiler), lacks(moveBench, compiler)}, nil
		}
	}
	size, err := sizes(full, empty)
	if err != nil {
		return nil, err
	}
	start, err := t.benchStart(ctx, dir, full, empty)
	if err != nil {
		return []result{size}, err
	}
	move, err := t.benchMove(ctx, dir, full, empty)
	return []result{size, start, move}, err
}

// lacks is a benchmark that had no peer.
func lacks(bench, peer string) result {
	return result{pkg: program, name: bench, values: map[string][]float64{missingPeer + peer + ")": {1}}}
}

// sizes compares the files of the two programs.
func sizes(full, empty string) (result, error) {
	r := result{pkg: program, name: sizeBench, values: map[string][]float64{}}
	for unit, path := range map[string]string{"MB": full, "MB-empty": empty} {
		info, err := os.Stat(path)
		if err != nil {
			return r, fmt.Errorf("measure the program: %w", err)
		}
		r.values[unit] = []float64{float64(info.Size()) / 1e6}
	}
	return r, nil
}

// benchStart starts both programs in turn on a virtual screen.
func (t tool) benchStart(ctx context.Context, dir, full, empty string) (result, error) {
	if runtime.GOOS != "linux" || !onPath("Xvfb") || !onPath("setxkbmap") {
		return lacks(startBench, "Xvfb for an empty window"), nil
	}
	screen, err := drive.StartDisplay(ctx, 1366, 900)
	if err != nil {
		return result{}, err
	}
	defer screen.Stop() //nolint:errcheck // what was measured stands
	data := filepath.Join(dir, "practice")
	if err := os.MkdirAll(data, 0o700); err != nil {
		return result{}, fmt.Errorf("make the practice: %w", err)
	}
	kept, err := os.ReadFile(filepath.Join(t.root, filepath.FromSlash(keptPractice)))
	if err == nil {
		err = os.WriteFile(filepath.Join(data, "ebbwell.db"), kept, 0o600)
	}
	if err != nil {
		return result{}, fmt.Errorf("make the practice: %w", err)
	}
	env := drive.Environment(os.Environ(), screen.Name, dir)
	r := result{pkg: program, name: startBench, values: map[string][]float64{}}
	for i := range starts + 1 {
		for unit, line := range map[string][]string{"ms-cpu": {full, "-data", data}, "ms-empty": {empty}} {
			used, err := untilRest(ctx, env, line)
			if err != nil {
				return result{}, err
			}
			if i > 0 { // the first brings the files into memory and makes the copy of the day
				r.values[unit] = append(r.values[unit], float64(used.Microseconds())/1000)
			}
		}
	}
	return r, nil
}

// A program rests once it has used no more than restUse in restFor: the toolkit
// looks for events some sixty times a second.
const (
	restLook = 50 * time.Millisecond
	restUse  = 20 * time.Millisecond
	restFor  = 800 * time.Millisecond
	restMost = 30 * time.Second
)

// untilRest starts a program, waits until it has shown what it shows first and
// rests, and ends it. It tells the CPU time used by then, of all its threads.
func untilRest(ctx context.Context, env, line []string) (used time.Duration, err error) {
	c := exec.CommandContext(ctx, line[0], line[1:]...)
	c.Env = env
	if err := c.Start(); err != nil {
		return 0, fmt.Errorf("start %s: %w", line[0], err)
	}
	defer func() {
		stopped := c.Process.Signal(syscall.SIGTERM)
		var ended *exec.ExitError
		if waited := c.Wait(); !errors.As(waited, &ended) {
			stopped = errors.Join(stopped, waited)
		}
		err = errors.Join(err, stopped)
	}()
	var history []time.Duration
	for range int(restMost / restLook) {
		select {
		case <-ctx.Done():
			return 0, fmt.Errorf("wait for %s: %w", line[0], ctx.Err())
		case <-time.After(restLook):
		}
		if used, err = cpuOf(c.Process.Pid); err != nil {
			return 0, err
		}
		history = append(history, used)
		if n := len(history) - 1 - int(restFor/restLook); n >= 0 && used-history[n] <= restUse {
			return history[n], nil
		}
	}
	return 0, fmt.Errorf("%s does not come to rest", line[0])
}

// cpuOf is the CPU time all threads of a process have used, as Linux tells it.
func cpuOf(pid int) (used time.Duration, err error) {
	tasks, err := filepath.Glob(fmt.Sprintf("/proc/%d/task/*/schedstat", pid))
	if err != nil || len(tasks) == 0 {
		return 0, errors.Join(fmt.Errorf("process %d has ended, or its times cannot be read", pid), err)
	}
	for _, task := range slices.Sorted(slices.Values(tasks)) {
		data, err := os.ReadFile(task)
		if err != nil {
			continue // the thread has ended meanwhile
		}
		first, _, _ := strings.Cut(string(data), " ")
		ns, err := strconv.ParseInt(first, 10, 64)
		if err != nil {
			return 0, fmt.Errorf("read the times of process %d: %w", pid, err)
		}
		used += time.Duration(ns)
	}
	return used, nil
}

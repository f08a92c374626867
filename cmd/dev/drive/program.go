package drive

import (
	"context"
	"errors"
	"fmt"
	"os"
	"os/exec"
	"slices"
	"strings"
	"syscall"
	"time"
)

// process is the running program.
type process struct {
	cmd   *exec.Cmd
	ended chan struct{} // closed when it has ended
	err   error         // how, once ended
}

// startProcess starts a command with its output appended to a log file.
func startProcess(line, env []string, logFile string) (*process, error) {
	log, err := os.OpenFile(logFile, os.O_CREATE|os.O_APPEND|os.O_WRONLY, 0o600)
	if err != nil {
		return nil, fmt.Errorf("start the program: %w", err)
	}
	defer log.Close() //nolint:errcheck // the program has its own handle
	c := exec.Command(line[0], line[1:]...)
	c.Env, c.Stdout, c.Stderr = env, log, log
	if err := c.Start(); err != nil {
		return nil, fmt.Errorf("start the program: %w", err)
	}
	p := &process{cmd: c, ended: make(chan struct{})}
	go func() {
		p.err = c.Wait()
		close(p.ended)
	}()
	return p, nil
}

// running reports whether the program has not ended yet.
func (p *process) running() bool {
	select {
	case <-p.ended:
		return false
	default:
		return true
	}
}

// quit asks the program to end and waits; it must end by itself, without an error.
func (p *process) quit(ctx context.Context, patience time.Duration) error {
	if err := p.cmd.Process.Signal(syscall.SIGTERM); err != nil {
		return fmt.Errorf("ask the program to quit: %w", err)
	}
	return p.wait(ctx, patience)
}

// wait waits until the program has ended by itself, without an error.
func (p *process) wait(ctx context.Context, patience time.Duration) error {
	select {
	case <-p.ended:
	case <-ctx.Done():
		return fmt.Errorf("wait for the program's end: %w", ctx.Err())
	case <-time.After(patience):
		return fmt.Errorf("wait for the program's end: still there after %s", patience)
	}
	if p.err != nil {
		return fmt.Errorf("the program ended badly: %w", p.err)
	}
	return nil
}

// kill ends the program as a power cut would, in the middle of anything.
func (p *process) kill() error {
	if err := p.cmd.Process.Kill(); err != nil && !errors.Is(err, os.ErrProcessDone) {
		return fmt.Errorf("kill the program: %w", err)
	}
	<-p.ended
	return nil
}

// Environment is what the program sees: the virtual screen, one pixel a unit,
// a language, a home folder of its own, and drawing without a graphics card.
func Environment(base []string, display, home string) []string {
	own := []string{
		"DISPLAY=" + display, "FYNE_SCALE=1", "LANG=C.UTF-8", "LIBGL_ALWAYS_SOFTWARE=1",
		"HOME=" + home, "XDG_CONFIG_HOME=" + home, "XDG_DATA_HOME=" + home, "XDG_CACHE_HOME=" + home, "XDG_RUNTIME_DIR=" + home,
	}
	dropped := []string{"WAYLAND_DISPLAY", "WAYLAND_SOCKET", "XAUTHORITY", "LC_ALL", "LC_MESSAGES", "XDG_SESSION_TYPE"}
	for _, line := range own {
		name, _, _ := strings.Cut(line, "=")
		dropped = append(dropped, name)
	}
	env := slices.DeleteFunc(slices.Clone(base), func(line string) bool {
		name, _, _ := strings.Cut(line, "=")
		return slices.Contains(dropped, name)
	})
	return append(env, own...)
}

// complaints lists the lines of a log that a sound run does not have.
func complaints(log string) []string {
	var list []string
	lines := strings.Split(log, "\n")
	for i, line := range lines {
		next := ""
		if i+1 < len(lines) {
			next = lines[i+1]
		}
		if !harmless(line, next) && complains(line) {
			list = append(list, strings.TrimSpace(line))
		}
	}
	return list
}

// private reports whether a text that is typed would tell of a person: a name or a
// figure, but no path, and no number so short that a log may have it by chance.
func private(text string) bool {
	return !strings.ContainsAny(text, `/\:`) && (len([]rune(text)) > 4 || strings.Contains(text, ",") && len(text) > 3)
}

// telling lists the lines of a log that have something of what was typed.
func telling(log string, typed []string) []string {
	var list []string
	for _, line := range strings.Split(log, "\n") {
		if slices.ContainsFunc(typed, func(text string) bool { return strings.Contains(line, text) }) {
			list = append(list, "it tells what was typed: "+strings.TrimSpace(line))
		}
	}
	return list
}

// complains reports whether a line of a log is a complaint.
func complains(line string) bool {
	for _, sign := range []string{"Fyne error", "Error in Fyne call thread", "panic:", "fatal error:", "DATA RACE"} {
		if strings.Contains(line, sign) {
			return true
		}
	}
	return false
}

// harmless knows two complaints of the toolkit (Fyne 2.8.1) that say nothing
// about the program; next is the line after.
func harmless(line, next string) bool {
	// The virtual screen has no desktop session whose colours could be watched.
	if strings.Contains(line, "failed to watch theme settings") {
		return true
	}
	// While it quits, the toolkit empties and writes its own preferences file,
	// and its watcher may read it in between; the end may cut the cause off.
	return strings.Contains(line, "Preferences load error:") && (strings.Contains(next, "Cause: EOF") || !strings.Contains(next, "Cause:"))
}

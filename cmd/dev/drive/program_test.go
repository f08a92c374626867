package drive

import (
	"context"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"
	"time"
)

func TestEnvironment(t *testing.T) {
	base := []string{"PATH=/bin", "DISPLAY=:0", "WAYLAND_DISPLAY=wayland-0", "LC_ALL=de_DE.UTF-8", "HOME=/home/somebody", "XAUTHORITY=/x"}
	env := Environment(base, ":7", "/work-folder")
	for _, want := range []string{"PATH=/bin", "DISPLAY=:7", "FYNE_SCALE=1", "LANG=C.UTF-8", "HOME=/work-folder", "XDG_CONFIG_HOME=/work-folder"} {
		if !slices.Contains(env, want) {
			t.Errorf("the environment lacks %s", want)
		}
	}
	seen := map[string]bool{}
	for _, line := range env {
		name, _, _ := strings.Cut(line, "=")
		if seen[name] {
			t.Errorf("%s is set twice", name)
		}
		seen[name] = true
	}
	for _, name := range []string{"WAYLAND_DISPLAY", "LC_ALL", "XAUTHORITY"} {
		if seen[name] {
			t.Errorf("%s came through", name)
		}
	}
}

func TestComplaints(t *testing.T) {
	log := "started\n" +
		"2026/11/25 09:18:12 Fyne error:  failed to watch theme settings\n" +
		"2026/11/25 09:18:12   Cause: exec: \"dbus-launch\"\n" +
		"2026/11/25 09:18:13 Fyne error:  Preferences load error:\n" +
		"2026/11/25 09:18:13   Cause: EOF\n" +
		"2026/11/25 09:18:13 Fyne error:  Preferences load error:\n" +
		"2026/11/25 09:18:13   Cause: permission denied\n" +
		"2026/11/25 09:18:13 Fyne error:  Attempt to overwrite settings\n" +
		"2026/11/25 09:18:14 *** Error in Fyne call thread, this should have been called in fyne.Do[AndWait] ***\n" +
		"panic: runtime error\n"
	got := complaints(log)
	want := []string{"Preferences", "overwrite", "call thread", "panic:"}
	if len(got) != len(want) {
		t.Fatalf("got %q", got)
	}
	for i := range want {
		if !strings.Contains(got[i], want[i]) {
			t.Errorf("got %q, want it about %q", got[i], want[i])
		}
	}
	if got := complaints("opened the store\n"); len(got) != 0 {
		t.Errorf("a sound log: got %q", got)
	}
}

// A log has no name and no figure of a person in it.
func TestTelling(t *testing.T) {
	var typed []string
	for text, want := range map[string]bool{"Sefa Quillonde": true, "72,4": true, "17:05": false, "8": false, "/tmp/page.pdf": false} {
		if private(text) != want {
			t.Errorf("%q is private: %v", text, !want)
		}
		if private(text) {
			typed = append(typed, text)
		}
	}
	log := "2026/11/25 17:05:12 opened 8 files\nsaved Sefa Quillonde\nmass 72,4\n"
	if got := telling(log, typed); len(got) != 2 {
		t.Errorf("got %q", got)
	}
}

// behave is what the test's own program does when it is started as the
// program to drive.
const behave = "EBBWELL_BEHAVE"

func TestMain(m *testing.M) {
	switch os.Getenv(behave) {
	case "stay":
		time.AfterFunc(time.Minute, func() { os.Exit(4) }) // whoever started it is gone
		select {}
	case "fail":
		os.Exit(3)
	case "end":
		os.Exit(0)
	}
	os.Exit(m.Run())
}

// startSelf starts the test's own program with a behaviour.
func startSelf(t *testing.T, how string) *process {
	t.Helper()
	p, err := startProcess([]string{os.Args[0]}, append(os.Environ(), behave+"="+how), filepath.Join(t.TempDir(), "log"))
	if err != nil {
		t.Fatal(err)
	}
	t.Cleanup(func() {
		if err := p.kill(); err != nil {
			t.Error(err)
		}
	})
	return p
}

func TestProcessEnds(t *testing.T) {
	ctx := context.Background()
	if err := startSelf(t, "end").wait(ctx, time.Minute); err != nil {
		t.Errorf("it ended well, and wait says %v", err)
	}
	if err := startSelf(t, "fail").wait(ctx, time.Minute); err == nil || !strings.Contains(err.Error(), "exit status 3") {
		t.Errorf("it ended with code 3, and wait says %v", err)
	}
	stays := startSelf(t, "stay")
	if err := stays.wait(ctx, time.Millisecond); err == nil || !strings.Contains(err.Error(), "still there") {
		t.Errorf("it stays, and wait says %v", err)
	}
	if !stays.running() {
		t.Error("it stays, and running says no")
	}
	// The signal ends a program that does not handle it: that is no good end.
	if err := stays.quit(ctx, time.Minute); err == nil || !strings.Contains(err.Error(), "terminated") {
		t.Errorf("quit says %v", err)
	}
	if stays.running() {
		t.Error("it has ended, and running says yes")
	}
}

func TestProcessKill(t *testing.T) {
	p := startSelf(t, "stay")
	for range 2 { // killing what is dead does no harm
		if err := p.kill(); err != nil || p.running() {
			t.Errorf("killed: %v, running %t", err, p.running())
		}
	}
}

func TestStartProcessWithoutProgram(t *testing.T) {
	if _, err := startProcess([]string{filepath.Join(t.TempDir(), "none")}, nil, filepath.Join(t.TempDir(), "log")); err == nil {
		t.Error("a program that is not there was started")
	}
}

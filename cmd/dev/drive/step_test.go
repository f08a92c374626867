package drive

import (
	"bytes"
	"context"
	"errors"
	"image"
	"image/color"
	"image/png"
	"os"
	"path/filepath"
	"strings"
	"testing"
	"time"
)

// done makes steps that only count.
func done(n *int) Step {
	return Step{"count", func(context.Context, *Driver) error { *n++; return nil }}
}

func TestRunCounts(t *testing.T) {
	var out bytes.Buffer
	n := 0
	if err := Run(context.Background(), &Driver{}, []Step{done(&n), done(&n)}, &out); err != nil || n != 2 {
		t.Errorf("%d steps done, %v", n, err)
	}
	if !strings.HasSuffix(out.String(), "\nwindow: 2 passed, 0 failed\n") {
		t.Errorf("printed %q", out.String())
	}
	if err := Run(context.Background(), &Driver{}, nil, &out); err == nil {
		t.Error("no steps, and all went well")
	}
}

func TestRunStopsAtTheFirstFailure(t *testing.T) {
	d := driverOf(t, "stay", time.Second)
	put(t, d, Control{Name: "save"})
	if err := os.WriteFile(d.LogFile(), []byte("line one\nline two\n"), 0o600); err != nil {
		t.Fatal(err)
	}
	var out bytes.Buffer
	n := 0
	bad := Step{"see rain", func(context.Context, *Driver) error { return errors.New("it is dry") }}
	err := Run(context.Background(), d, []Step{done(&n), bad, done(&n), done(&n)}, &out)
	if err == nil || !strings.Contains(err.Error(), "step 2, see rain: it is dry") || n != 1 {
		t.Errorf("%d steps done, %v", n, err)
	}
	// There is no screen here, and that is told, not passed over.
	if !strings.Contains(err.Error(), "import") {
		t.Errorf("no picture was taken, and the error does not say so: %v", err)
	}
	for _, part := range []string{"FAIL   2  see rain", "line two\n", "window: 1 passed, 1 failed, 2 skipped\n"} {
		if !strings.Contains(out.String(), part) {
			t.Errorf("%q lacks %q", out.String(), part)
		}
	}
	for _, name := range []string{"failed-places.json", "failed.log"} {
		if _, err := os.Stat(filepath.Join(d.config.Shots, name)); err != nil {
			t.Error(err)
		}
	}
}

func TestEveryStepSaysWhatItDoes(t *testing.T) {
	for _, c := range []struct {
		step Step
		want string
	}{
		{Start(), "start"},
		{Start("--demo"), "start --demo"},
		{Quit(), "quit"},
		{Kill(), "kill"},
		{Click("a"), "click a"},
		{Drag("a", 0, 0.5), "drag a from 0 to 0.5"},
		{Fill("a", "72,4"), `fill a with "72,4"`},
		{Press("Tab", "Tab"), "press Tab, Tab"},
		{Write("x"), `type "x"`},
		{See("a"), "see a"},
		{Gone("a"), "a is gone"},
		{Shows("a", "x"), `a shows "x"`},
		{Focus("a"), "a has the keyboard"},
		{Shot("a"), "picture a"},
		{Check("one athlete", nil), "check: one athlete"},
		{Sound(), "the log has no complaint"},
	} {
		if c.step.Says != c.want || c.step.Do == nil {
			t.Errorf("got %q, want %q", c.step.Says, c.want)
		}
	}
}

func TestCheckLooksIntoTheDataFolder(t *testing.T) {
	d := driverOf(t, "stay", time.Second)
	var looked string
	step := Check("", func(_ context.Context, dir string) error { looked = dir; return nil })
	if err := step.Do(context.Background(), d); err != nil || looked != d.Data() {
		t.Errorf("looked into %q, %v", looked, err)
	}
}

func TestTail(t *testing.T) {
	if got := tail("a\nb\nc\n", 2); got != "b\nc\n" {
		t.Errorf("got %q", got)
	}
	if got := tail("a\n", 20); got != "a\n" {
		t.Errorf("got %q", got)
	}
}

func TestColours(t *testing.T) {
	file := filepath.Join(t.TempDir(), "p.png")
	picture := image.NewRGBA(image.Rect(0, 0, 4, 4))
	for i := range 3 {
		picture.Set(i, 0, color.RGBA{uint8(80 * i), 9, 9, 255})
	}
	var b bytes.Buffer
	if err := png.Encode(&b, picture); err != nil {
		t.Fatal(err)
	}
	if err := os.WriteFile(file, b.Bytes(), 0o600); err != nil {
		t.Fatal(err)
	}
	if n, err := colours(file, 10); err != nil || n != 4 {
		t.Errorf("got %d, %v; want the three and the ground", n, err)
	}
	if n, err := colours(file, 2); err != nil || n != 2 {
		t.Errorf("got %d, %v; want to stop at 2", n, err)
	}
	if _, err := colours(filepath.Join(t.TempDir(), "none.png"), 2); err == nil {
		t.Error("a picture that is not there was looked at")
	}
}

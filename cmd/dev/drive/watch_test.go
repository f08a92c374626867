package drive

import (
	"context"
	"encoding/json"
	"errors"
	"maps"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"
	"time"
)

// driverOf makes a driver whose program behaves as told; it has no screen.
func driverOf(t *testing.T, how string, patience time.Duration) *Driver {
	t.Helper()
	dir := t.TempDir()
	return &Driver{
		config:  Config{Work: dir, Shots: dir, Patience: patience},
		display: &Display{Name: ":none"},
		program: startSelf(t, how),
		clock:   (&testClock{}).clock(),
	}
}

// testClock goes on only when a driver waits; meanwhile what is planned is done.
type testClock struct {
	at   time.Duration
	plan map[time.Duration]func()
}

func (c *testClock) clock() clock {
	return clock{
		now: func() time.Time { return time.Unix(0, 0).Add(c.at) },
		pause: func(ctx context.Context, d time.Duration) error {
			from := c.at
			c.at += d
			for _, at := range slices.Sorted(maps.Keys(c.plan)) {
				if from < at && at <= c.at {
					c.plan[at]()
				}
			}
			return ctx.Err()
		},
	}
}

// put writes places the way the program does: whole or not at all.
func put(t *testing.T, d *Driver, controls ...Control) {
	t.Helper()
	data, err := json.Marshal(Places{Size: [2]float64{100, 100}, Controls: controls})
	if err == nil {
		err = os.WriteFile(d.placesFile()+".part", data, 0o600)
	}
	if err == nil {
		err = os.Rename(d.placesFile()+".part", d.placesFile())
	}
	if err != nil {
		t.Error(err)
	}
}

func TestWaitForRest(t *testing.T) {
	d := driverOf(t, "stay", time.Minute)
	// The file appears late, then the control, then it moves.
	late := 3 * readEvery
	c := &testClock{plan: map[time.Duration]func(){late: func() { put(t, d) }}}
	for x := range 4 {
		c.plan[late+time.Duration(x+1)*settle/2] = func() { put(t, d, Control{Name: "save", X: float64(x), W: 10, H: 10}) }
	}
	d.clock = c.clock()
	found, size, err := d.Wait(context.Background(), "save")
	if err != nil || found.X != 3 || size != [2]float64{100, 100} {
		t.Errorf("got %+v in %v, %v", found, size, err)
	}
	if rest := late + 4*settle/2 + settle; c.at < rest {
		t.Errorf("it was taken to rest after %s, before %s", c.at, rest)
	}
}

func TestWaitTellsWhatIsThere(t *testing.T) {
	d := driverOf(t, "stay", 2*readEvery)
	put(t, d, Control{Name: "save", Text: "Save"}, Control{Name: "undo"})
	ctx := context.Background()
	_, _, gone := d.Wait(ctx, "close")
	for name, c := range map[string]struct {
		err  error
		says string
	}{
		"not there":    {gone, "save undo"},
		"other text":   {d.WaitText(ctx, "save", "Saved"), `it shows "Save"`},
		"no focus":     {d.WaitFocus(ctx, "save"), "nothing has it"},
		"still there":  {d.WaitGone(ctx, "undo"), "still there"},
		"never a file": {driverOf(t, "stay", 2*readEvery).WaitGone(ctx, "undo"), "places.json"},
	} {
		if c.err == nil || !strings.Contains(c.err.Error(), c.says) {
			t.Errorf("%s: got %v, want an error that says %q", name, c.err, c.says)
		}
	}
	if err := d.WaitText(ctx, "save", "Save"); err != nil {
		t.Error(err)
	}
	if err := d.WaitGone(ctx, "close"); err != nil {
		t.Error(err)
	}
}

func TestWaitFocus(t *testing.T) {
	d := driverOf(t, "stay", 2*readEvery)
	put(t, d, Control{Name: "a"}, Control{Name: "b", Focused: true})
	if err := d.WaitFocus(context.Background(), "b"); err != nil {
		t.Error(err)
	}
	if err := d.WaitFocus(context.Background(), "a"); err == nil || !strings.Contains(err.Error(), "b has it") {
		t.Errorf("got %v", err)
	}
}

func TestWaitGivesUpWhenTheProgramHasEnded(t *testing.T) {
	d := driverOf(t, "fail", time.Hour)
	err := d.until(context.Background(), "rain", func() error { return errors.New("dry") })
	if err == nil || !strings.Contains(err.Error(), "exit status 3") || !strings.Contains(err.Error(), "dry") {
		t.Errorf("got %v", err)
	}
}

func TestWaitStopsWithItsContext(t *testing.T) {
	ctx, stop := context.WithCancel(context.Background())
	stop()
	d := driverOf(t, "stay", time.Hour)
	if err := d.until(ctx, "rain", func() error { return errors.New("dry") }); !errors.Is(err, context.Canceled) {
		t.Errorf("got %v", err)
	}
}

func TestSoundReadsTheLog(t *testing.T) {
	d := driverOf(t, "stay", time.Second)
	ctx := context.Background()
	if err := Sound().Do(ctx, d); err == nil {
		t.Error("there is no log, and it is sound")
	}
	for log, want := range map[string]bool{"opened\n": true, "panic: no\n": false} {
		if err := os.WriteFile(filepath.Join(d.config.Work, "program.log"), []byte(log), 0o600); err != nil {
			t.Fatal(err)
		}
		if err := Sound().Do(ctx, d); (err == nil) != want {
			t.Errorf("%q: got %v", log, err)
		}
	}
}

func TestRemoveOld(t *testing.T) {
	dir := t.TempDir()
	for _, name := range []string{"01-start.png", "failed.png", "failed.log", "my-notes.txt", "roster.png"} {
		if err := os.WriteFile(filepath.Join(dir, name), nil, 0o600); err != nil {
			t.Fatal(err)
		}
	}
	if err := removeOld(dir); err != nil {
		t.Fatal(err)
	}
	left, err := filepath.Glob(filepath.Join(dir, "*"))
	if err != nil || len(left) != 2 {
		t.Errorf("left are %v, %v", left, err)
	}
}

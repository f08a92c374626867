package app

import (
	"os"
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/test"

	"ebbwell/app/apptest"
	"ebbwell/app/kit/desk"
)

// A window opens no larger than its screen and wholly on it.
func TestWindowFitsItsScreen(t *testing.T) {
	laptop, desktop, second := Area{0, 24, 1366, 744}, Area{0, 0, 2560, 1440}, Area{1366, 0, 1920, 1080}
	frame := fyne.NewSize(4, 30)
	for name, c := range map[string]struct {
		was     Placement
		screens []Area
		scale   float32
		want    Placement
	}{
		"first on a large screen":        {Placement{}, []Area{desktop}, 1, Placement{Width: 1440, Height: 900}},
		"first on a laptop":              {Placement{}, []Area{laptop}, 1, Placement{Width: 1362, Height: 714}},
		"first on a laptop, large scale": {Placement{}, []Area{laptop}, 1.5, Placement{Width: 908, Height: 476}},
		"as it stood":                    {Placement{100, 80, 1180, 640, true}, []Area{laptop}, 1, Placement{100, 80, 1180, 640, true}},
		"half off":                       {Placement{900, 600, 1180, 640, true}, []Area{laptop}, 1, Placement{182, 128, 1180, 640, true}},
		"on the second screen":           {Placement{1500, 50, 1600, 900, true}, []Area{laptop, second}, 1, Placement{1500, 50, 1600, 900, true}},
		"the second screen is gone":      {Placement{1500, 50, 1600, 900, true}, []Area{laptop}, 1, Placement{1500, 50, 1362, 714, false}},
		"no screen is known":             {Placement{}, nil, 1, Placement{Width: 1440, Height: 900}},
	} {
		t.Run(name, func(t *testing.T) {
			if got := c.was.Fit(c.screens, c.scale, frame); got != c.want {
				t.Errorf("got %+v, want %+v", got, c.want)
			}
		})
	}
}

func TestPlacementIsRemembered(t *testing.T) {
	kept := test.NewTempApp(t).Preferences()
	want := Placement{-12, 30, 1180.5, 700, true}
	want.Save(kept)
	if got := LoadPlacement(kept); got != want {
		t.Errorf("got %+v", got)
	}
}

// A signal saves what was typed and closes the folder, as the window's close does.
func TestSignalClosesAsTheWindowDoes(t *testing.T) {
	dir := t.TempDir()
	w := test.NewTempApp(t).NewWindow("") // the signal closes it
	closed := false
	s := NewShell(fyne.CurrentApp(), w, apptest.Words(t), Options{
		Dir: dir, Now: apptest.Now, Beside: desk.Inline{}, OnWindow: func(do func()) { do() }, Closing: func() { closed = true },
	})
	s.Start()
	begin(t, w)
	signals := make(chan os.Signal, 1)
	signals <- os.Interrupt
	close(signals)
	s.CloseOn(signals)
	if s.Program() != nil || !closed {
		t.Error("the program runs on")
	}
	again, _ := start(t, dir, false)
	if again.Program() == nil || again.Program().Desk().Practice().Practitioner != "Ada Fennimoor" {
		t.Error("the folder was not closed")
	}
}

package app

import (
	"encoding/json"
	"fmt"
	"os"
	"path/filepath"
	"reflect"
	"time"

	"fyne.io/fyne/v2"

	"ebbwell/app/kit/field"
)

// placeInfo is one named control of the window, in px of the content.
type placeInfo struct {
	Name    string  `json:"name"`
	X       float32 `json:"x"`
	Y       float32 `json:"y"`
	W       float32 `json:"w"`
	H       float32 `json:"h"`
	Focused bool    `json:"focused"`
	Text    string  `json:"text"`
}

// placesInfo is all of them.
type placesInfo struct {
	Size     [2]float32  `json:"size"`
	Controls []placeInfo `json:"controls"`
	Seq      int         `json:"seq"`
}

// ReportPlaces writes where the window's named controls stand to a file, again
// whenever that has changed and settled. Tests drive the real window by it.
// The function returned stops it.
func ReportPlaces(w fyne.Window, file string) (stop func()) {
	done := make(chan struct{})
	ticker := time.NewTicker(60 * time.Millisecond)
	go func() {
		defer ticker.Stop()
		reportPlaces(w, file, ticker.C, done)
	}()
	return func() { close(done) }
}

// reportPlaces looks at each tick, until it is done or cannot write.
func reportPlaces(w fyne.Window, file string, ticks <-chan time.Time, done <-chan struct{}) {
	var before, written placesInfo
	for {
		select {
		case <-done:
			return
		case <-ticks:
		}
		var now placesInfo
		fyne.DoAndWait(func() { now = placesOf(w.Canvas()) })
		settled := reflect.DeepEqual(now, before)
		before = now
		now.Seq = written.Seq
		if !settled || reflect.DeepEqual(now, written) {
			continue
		}
		now.Seq++
		if err := writePlaces(file, now); err != nil {
			fmt.Fprintln(os.Stderr, "ebbwell:", err)
			return
		}
		written = now
	}
}

// writePlaces puts the list in the file's place in one step.
func writePlaces(file string, p placesInfo) error {
	data, err := json.Marshal(p)
	if err != nil {
		return fmt.Errorf("write places: %w", err)
	}
	part := filepath.Join(filepath.Dir(file), "."+filepath.Base(file)+".part")
	if err := os.WriteFile(part, data, 0o600); err != nil {
		return fmt.Errorf("write places: %w", err)
	}
	if err := os.Rename(part, file); err != nil {
		return fmt.Errorf("write places: %w", err)
	}
	return nil
}

// placesOf lists the named controls of what is on top: a dialog or a list over
// the window hides what is below it.
func placesOf(c fyne.Canvas) placesInfo {
	p := placesInfo{Size: [2]float32{c.Size().Width, c.Size().Height}}
	root, from := c.Content(), fyne.Position{}
	if top := c.Overlays().Top(); top != nil {
		root, from = top, top.Position()
	}
	for _, s := range field.Names(root) {
		at := from.Add(s.Pos)
		p.Controls = append(p.Controls, placeInfo{
			Name: s.Name, X: at.X, Y: at.Y, W: s.Size.Width, H: s.Size.Height,
			Focused: s.Object != nil && any(c.Focused()) == any(s.Object), Text: textOf(s.Object),
		})
	}
	return p
}

// textOf is what a control shows.
func textOf(o fyne.CanvasObject) string {
	if t, ok := o.(interface{ Text() string }); ok {
		return t.Text()
	}
	if c, ok := o.(interface{ Chosen() string }); ok {
		return c.Chosen()
	}
	return ""
}

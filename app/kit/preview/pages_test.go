package preview

import (
	"context"
	"errors"
	"image"
	"testing"

	"ebbwell/app/apptest"
	"ebbwell/internal/handout"
	"ebbwell/internal/handout/paper"
)

// Pages tell how wide they are, and stand below one another.
func TestPagesAreAsWideAsThereIsRoom(t *testing.T) {
	wide := []float32{}
	p := newPages(func(w float32) { wide = append(wide, w) })
	apptest.Window(t, p, 640, 500, false, 100)
	if len(wide) == 0 || wide[len(wide)-1] != 638 {
		t.Errorf("widths told: %v", wide)
	}
	p.set(paper.A4().Quarter(), []*image.RGBA{image.NewRGBA(image.Rect(0, 0, 10, 10)), image.NewRGBA(image.Rect(0, 0, 10, 10))})
	if width := p.Width(); width != widest*105 {
		t.Errorf("a quarter sheet is %g px wide", width)
	}
	if h, one := p.HeightFor(640), p.pageHeight(p.width)+2; h != 2*one+pageGap {
		t.Errorf("two pages of %g are %g high", one, h)
	}
}

// blank is a blank test sheet, with so many copies.
func blank(t *testing.T, copies int) paper.Document {
	t.Helper()
	press, err := handout.NewPress(apptest.Words(t), paper.A4())
	if err != nil {
		t.Fatal(err)
	}
	return press.BlankSheets(make([]handout.BlankSheet, copies))
}

// What is stopped draws nothing more, and lets go what it drew.
func TestStoppedDrawingEnds(t *testing.T) {
	stopped, cancel := context.WithCancel(context.Background())
	cancel()
	if _, err := draw(stopped, blank(t, 1), 500); !errors.Is(err, context.Canceled) {
		t.Errorf("work that was stopped ends with %v", err)
	}
	d, _ := apptest.Desk(t)
	jobs := 0
	w := NewDrawing(d, func() Job {
		jobs++
		return Job{Lay: func(context.Context) (paper.Document, error) { return blank(t, 1), nil }, Done: func(error) {}}
	})
	apptest.Window(t, w.Pages, 640, 500, false, 100)
	if jobs == 0 || len(w.Pages.Pictures()) == 0 {
		t.Fatalf("%d jobs, %d pages: the check would mean nothing", jobs, len(w.Pages.Pictures()))
	}
	w.Stop()
	if w.Pages.Pictures()[0] != nil {
		t.Error("a page is held after the drawing was stopped")
	}
	w.Want()
	if w.Pages.Pictures()[0] != nil {
		t.Error("drawn after it was stopped")
	}
}

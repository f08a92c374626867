// Package preview shows pages as they will print: beside what is chosen for them, or in
// the dialog that asks where they are to be kept, where they are printed and saved as
// pictures too.
package preview

import (
	"context"
	"image"

	"fyne.io/fyne/v2"

	"ebbwell/app/kit/desk"
	"ebbwell/internal/handout/paper"
)

// Job lays pages out once, as they are wanted when it is made.
type Job struct {
	// Lay lays the pages out; it runs beside the window.
	Lay func(ctx context.Context) (paper.Document, error)
	// Done is told on the window's thread that the pages are shown, or why they are not.
	// It is told nothing where other pages are wanted by then.
	Done func(err error)
}

// Drawing lays pages out and draws them beside the window, one job at a time.
// Each wish has a number; a result whose number is not the newest is dropped,
// and the newest wish is worked on next.
type Drawing struct {
	// Pages show what was drawn.
	Pages *Pages

	desk    *desk.Desk
	next    func() Job
	wish    int
	running bool
	stopped bool
	stop    func()
}

// NewDrawing makes a drawing that draws as soon as its pages have a width; next makes the
// job of a wish.
func NewDrawing(d *desk.Desk, next func() Job) *Drawing {
	w := &Drawing{desk: d, next: next, stop: func() {}}
	w.Pages = newPages(func(float32) { w.Want() })
	return w
}

// Want asks for the pages as they are chosen now, as wide as there is room.
func (w *Drawing) Want() {
	w.wish++
	if !w.running && w.Pages.width > 0 {
		w.work()
	}
}

// Stop ends what is being drawn; nothing is drawn any more, and what was is let go: the
// toolkit keeps what it has shown for a minute, and six pages are 40 MB.
func (w *Drawing) Stop() {
	w.stopped = true
	w.stop()
	for _, s := range w.Pages.sheets {
		s.picture.Image = nil
	}
}

// work does the newest wish.
func (w *Drawing) work() {
	wish, job, width := w.wish, w.next(), w.Pages.width*w.pixels()
	var doc paper.Document
	var pictures []*image.RGBA
	w.running = true
	w.stop = w.desk.Beside.Run(func(ctx context.Context) (err error) {
		if doc, err = job.Lay(ctx); err != nil {
			return err
		}
		pictures, err = draw(ctx, doc, float64(width))
		return err
	}, func(err error) {
		w.running = false
		switch {
		case w.stopped:
			return
		case wish != w.wish:
			w.work()
			return
		case err == nil:
			w.Pages.set(doc.Size, pictures)
		}
		job.Done(err)
	})
}

// draw draws all pages of a document, width px wide.
func draw(ctx context.Context, d paper.Document, width float64) ([]*image.RGBA, error) {
	scale := min(max(width/d.Size.Width, paper.MinScale), paper.MaxScale)
	var list []*image.RGBA
	for i := range d.Pages {
		if err := ctx.Err(); err != nil {
			return nil, err
		}
		picture, err := d.Picture(i, scale)
		if err != nil {
			return nil, err
		}
		list = append(list, picture)
	}
	return list, nil
}

// pixels is how many pixels of the screen stand for a px of the layout.
func (w *Drawing) pixels() float32 {
	if c := fyne.CurrentApp().Driver().CanvasForObject(w.Pages); c != nil && c.Scale() > 0 {
		return c.Scale()
	}
	return 1
}

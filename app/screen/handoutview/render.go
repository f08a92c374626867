package handoutview

import (
	"context"
	"image"

	"fyne.io/fyne/v2"

	"ebbwell/internal/handout/paper"
)

// rendering lays pages out and draws them beside the window, one job at a time.
// Each wish has a number; a result whose number is not the newest is dropped,
// and the newest wish is worked on next.
type rendering struct {
	wish, done int
	running    bool
	// laid is the page of the last job; asked is what it was laid out for.
	laid  laid
	asked choice
	fresh bool
}

// want asks for the page as it is chosen now, as wide as there is room.
func (v *View) want() {
	v.render.wish++
	if !v.render.running && v.preview.width > 0 {
		v.work()
	}
}

// work does the newest wish.
func (v *View) work() {
	r := &v.render
	wish, c, width := r.wish, v.choice, v.preview.width
	page, known := r.laid, r.fresh && r.asked == c
	scale := v.pixels()
	var pictures []*image.RGBA
	r.running = true
	v.desk.Beside.Run(func(ctx context.Context) (err error) {
		if !known {
			if page, err = layOut(v.file.subject, c); err != nil {
				return err
			}
		}
		pictures, err = draw(ctx, page.document, float64(width*scale))
		return err
	}, func(err error) {
		r.running = false
		if wish != r.wish {
			v.work()
			return
		}
		r.done = wish
		if err != nil {
			r.fresh = false
			v.showFailure(err)
			return
		}
		r.laid, r.asked, r.fresh = page, c, true
		v.showPage(page, pictures)
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
func (v *View) pixels() float32 {
	if c := fyne.CurrentApp().Driver().CanvasForObject(v.preview); c != nil && c.Scale() > 0 {
		return c.Scale()
	}
	return 1
}

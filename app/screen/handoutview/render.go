package handoutview

import (
	"context"

	"ebbwell/app/kit/preview"
	"ebbwell/internal/handout/paper"
)

// rendering is what was laid out last.
type rendering struct {
	// laid is the page of the last job; asked is what it was laid out for.
	laid  laid
	asked choice
	fresh bool
}

// job lays out the page as it is chosen now; one that is known is only drawn anew.
func (v *View) job() preview.Job {
	r, c := &v.render, v.choice
	page, known := r.laid, r.fresh && r.asked == c
	return preview.Job{
		Lay: func(context.Context) (paper.Document, error) {
			var err error
			if !known {
				page, err = layOut(v.file.subject, c)
			}
			return page.document, err
		},
		Done: func(err error) {
			if r.fresh = err == nil; err != nil {
				v.showFailure(err)
				return
			}
			r.laid, r.asked = page, c
			v.showPage(page)
		},
	}
}

package mix

import (
	"fyne.io/fyne/v2"

	"ebbwell/app/kit/field"
	"ebbwell/app/kit/look"
	"ebbwell/internal/words"
)

// guardHeight is the room for the caution at the foot of the mix, in px at 100 %
// text. It is always kept, so that nothing jumps when a guard speaks.
const guardHeight float32 = 62

// guardRoom is where the guards speak: the gravest, in place, with the way to the
// others.
type guardRoom struct {
	w       *words.Words
	Caution *look.Caution
	// All are the sentences that speak, the gravest first.
	All  []string
	more *field.Link
	box  *fyne.Container
}

func newGuardRoom(h *field.Host, w *words.Words, all func()) *guardRoom {
	r := &guardRoom{w: w, Caution: look.NewCaution("", "", nil)}
	r.more = field.NewLink(h, "planner.cautions", "", all)
	r.box = &fyne.Container{Layout: cautionRoom{}, Objects: []fyne.CanvasObject{r.Caution, r.more}}
	look.ShowIf(r.more, false)
	return r
}

// set shows the gravest of the sentences that speak.
func (r *guardRoom) set(speaking []string) {
	r.All = append(r.All[:0], speaking...)
	first := ""
	if len(speaking) > 0 {
		first = speaking[0]
	}
	r.Caution.SetText("", first)
	if len(speaking) > 1 {
		r.more.SetText(r.w.Say("planner.cautions.all", len(speaking)))
	}
	look.ShowIf(r.more, len(speaking) > 1)
	r.box.Refresh()
}

// cautionRoom is a layout of a caution with a link below it, in room that is always
// kept.
type cautionRoom struct{}

func (cautionRoom) Layout(o []fyne.CanvasObject, size fyne.Size) {
	h := look.HeightFor(o[0], size.Width)
	o[0].Move(fyne.Position{})
	o[0].Resize(fyne.NewSize(size.Width, h))
	o[1].Move(fyne.NewPos(-field.LinkPad, h+2))
	o[1].Resize(o[1].MinSize())
}

func (cautionRoom) MinSize(o []fyne.CanvasObject) fyne.Size {
	h := float32(0)
	if o[0].Visible() {
		h = o[0].MinSize().Height
	}
	if o[1].Visible() {
		h += 2 + o[1].MinSize().Height
	}
	return fyne.NewSize(look.Scaled(160), max(h, look.Scaled(guardHeight)))
}

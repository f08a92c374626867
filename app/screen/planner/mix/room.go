package mix

import (
	"strings"

	"fyne.io/fyne/v2"

	"ebbwell/app/kit/look"
	"ebbwell/internal/words"
)

// guardHeight is the room for what speaks at the foot of the mix, in px at
// 100 % text. It is always kept, so that nothing jumps when a guard speaks.
const guardHeight float32 = 106

// fewGuards are how many sentences there is room for; more are counted above
// them, so that one sees that there are some to scroll to.
const fewGuards = 3

// guardRoom is where the guards speak: a caution while there is one, else what
// the limits are. What does not fit scrolls, the gravest first.
type guardRoom struct {
	w       *words.Words
	Caution *look.Caution
	limits  *look.Paragraph
	remark  *fyne.Container
	column  *fyne.Container
	scroll  *look.Scroll
	box     fyne.CanvasObject
	shown   string
}

func newGuardRoom(w *words.Words) *guardRoom {
	r := &guardRoom{w: w, Caution: look.NewCaution("", "", nil), limits: look.NewParagraph("", look.Note, look.Ink)}
	r.remark = look.Remark(r.limits)
	r.column = look.VBox(8, r.Caution, r.remark)
	r.scroll = look.NewScroll(look.Pad(3, RingRoom, 0, RingRoom, r.column))
	r.box = &fyne.Container{Layout: fixedHeight{guardHeight}, Objects: []fyne.CanvasObject{r.scroll}}
	return r
}

// set shows the sentences that speak, and the limits below them.
func (r *guardRoom) set(speaking []string, limits string) {
	text, title := strings.Join(speaking, " "), ""
	if len(speaking) > fewGuards {
		title = r.w.Say("planner.cautions", len(speaking))
	}
	now := title + text + limits
	if now == r.shown {
		return
	}
	r.shown = now
	r.Caution.SetText(title, text)
	r.limits.SetText(limits)
	look.ShowIf(r.remark, limits != "")
	r.scroll.ScrollTo(0)
	r.scroll.Refresh()
}

// fixedHeight is a layout of one object that is always so many px high, at
// 100 % text.
type fixedHeight struct{ px float32 }

// Layout leaves the object a little wider, as [fillMiddle] does.
func (l fixedHeight) Layout(o []fyne.CanvasObject, size fyne.Size) {
	o[0].Move(fyne.NewPos(-RingRoom, 0))
	o[0].Resize(fyne.NewSize(size.Width+2*RingRoom, size.Height))
}

func (l fixedHeight) MinSize(o []fyne.CanvasObject) fyne.Size {
	return fyne.NewSize(o[0].MinSize().Width, look.Scaled(l.px))
}

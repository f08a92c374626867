package look

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
)

// Label is one line of text. It follows the theme and the text size, and
// redraws only when its text really changed.
type Label struct {
	written

	align   fyne.TextAlign
	shorten bool
	whole   bool
}

// NewLabel makes a line of text, aligned left.
func NewLabel(text string, style Style, tone Tone) *Label {
	l := &Label{written: written{text: text, style: style, tone: tone}}
	l.ExtendBaseWidget(l)
	return l
}

// Right aligns the text right and returns the label.
func (l *Label) Right() *Label { return l.aligned(fyne.TextAlignTrailing) }

// Centre centres the text and returns the label.
func (l *Label) Centre() *Label { return l.aligned(fyne.TextAlignCenter) }

func (l *Label) aligned(a fyne.TextAlign) *Label {
	l.align = a
	l.Refresh()
	return l
}

// Shorten lets the label be narrower than its text, which then ends in an
// ellipsis, and returns the label.
func (l *Label) Shorten() *Label {
	l.shorten = true
	l.Refresh()
	return l
}

// WholeOrNone lets the label be narrower than its text, which is not shown then, and
// returns the label: for what says in other words what stands beside it.
func (l *Label) WholeOrNone() *Label {
	l.whole = true
	return l.Shorten()
}

// CreateRenderer draws the text.
func (l *Label) CreateRenderer() fyne.WidgetRenderer {
	r := &labelRenderer{label: l, text: canvas.NewText("", nil)}
	r.apply()
	return r
}

type labelRenderer struct {
	label *Label
	text  *canvas.Text
}

// apply takes over state and theme without drawing.
func (r *labelRenderer) apply() {
	l, size := r.label, r.label.Size()
	text := l.text
	if l.shorten && size.Width > 0 {
		if text = Ellipsis(text, l.style, size.Width); l.whole && text != l.text {
			text = ""
		}
	}
	y := max(float32(int((size.Height-l.style.Height())/2)), 0)
	r.text.Alignment = l.align
	Write(r.text, l.style, PaletteNow().Tone(l.tone), text, fyne.NewPos(0, y), size.Width)
}

func (r *labelRenderer) Layout(fyne.Size) {
	was := r.text.Text
	r.apply()
	if r.text.Text != was {
		r.text.Refresh()
	}
}

func (r *labelRenderer) MinSize() fyne.Size {
	if r.label.shorten {
		return fyne.NewSize(0, r.label.style.Height())
	}
	return fyne.NewSize(ceil(r.label.style.Width(r.label.text)), r.label.style.Height())
}

func (r *labelRenderer) Refresh() {
	r.apply()
	r.text.Refresh()
}

func (r *labelRenderer) Objects() []fyne.CanvasObject { return []fyne.CanvasObject{r.text} }
func (r *labelRenderer) Destroy()                     {}

// Ellipsis shortens a text so that it fits a width in a style, ending it in an
// ellipsis; a text that fits is returned as it is.
func Ellipsis(text string, style Style, width float32) string {
	if style.Width(text) <= width+0.5 {
		return text
	}
	runes := []rune(text)
	low, high := 0, len(runes)
	for low < high {
		mid := (low + high + 1) / 2
		if style.Width(string(runes[:mid])+"…") <= width {
			low = mid
		} else {
			high = mid - 1
		}
	}
	for low > 0 && runes[low-1] == ' ' {
		low--
	}
	return string(runes[:low]) + "…"
}

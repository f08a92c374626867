package look

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/widget"
)

// OneOf is one line of text that says the longest of some texts that has room for
// the whole of it; each is shorter than the one before, and the last is always said.
type OneOf struct {
	widget.BaseWidget
	label *Label
	style Style
	texts [3]string
}

var (
	_ Based  = (*OneOf)(nil)
	_ Holder = (*OneOf)(nil)
)

// NewOneOf makes a line of one of some texts, the longest first.
func NewOneOf(style Style, texts ...string) *OneOf {
	o := &OneOf{label: NewLabel("", style, Ink), style: style}
	copy(o.texts[:], texts)
	o.ExtendBaseWidget(o)
	return o
}

// SetTexts changes the texts; empty ones are not said.
func (o *OneOf) SetTexts(texts ...string) {
	was := o.texts
	o.texts = [3]string{}
	copy(o.texts[:], texts)
	if o.texts != was {
		o.fit()
	}
}

// In sets the ink and returns the line.
func (o *OneOf) In(tone Tone) *OneOf {
	o.label.SetTone(tone)
	return o
}

// Text is what is said.
func (o *OneOf) Text() string { return o.label.Text() }

// fit takes the longest that has room.
func (o *OneOf) fit() {
	last := ""
	for _, text := range o.texts {
		if text == "" {
			continue
		}
		last = text
		if o.style.Width(text) <= o.Size().Width+0.5 {
			break
		}
	}
	o.label.SetText(last)
}

// Baseline is that of the text.
func (o *OneOf) Baseline() float32 { return o.style.Baseline() }

// Parts returns the text.
func (o *OneOf) Parts() []fyne.CanvasObject { return []fyne.CanvasObject{o.label} }

// CreateRenderer places the text.
func (o *OneOf) CreateRenderer() fyne.WidgetRenderer { return &oneOfRenderer{o} }

type oneOfRenderer struct{ o *OneOf }

func (r *oneOfRenderer) Layout(size fyne.Size) {
	r.o.fit()
	r.o.label.Move(fyne.Position{})
	r.o.label.Resize(fyne.NewSize(size.Width, r.o.style.Height()))
}

// MinSize is that of the shortest.
func (r *oneOfRenderer) MinSize() fyne.Size {
	least := float32(0)
	for _, text := range r.o.texts {
		if text != "" {
			least = r.o.style.Width(text)
		}
	}
	return fyne.NewSize(least, r.o.style.Height())
}

func (r *oneOfRenderer) Refresh() {
	r.o.fit()
	r.o.label.Refresh()
}

func (r *oneOfRenderer) Objects() []fyne.CanvasObject { return r.o.Parts() }
func (r *oneOfRenderer) Destroy()                     {}

package look

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/widget"
)

// Room inside a caution, in px.
const (
	cautionBar  float32 = 3
	cautionPadX float32 = 14
	cautionPadY float32 = 10
)

// Caution is what the person has to know: a bar of ink at the left edge, a
// sunk ground, a sentence. It is hidden while it has nothing to say.
type Caution struct {
	widget.BaseWidget
	title, sentence *Paragraph
	body            *fyne.Container
}

var (
	_ Flowing = (*Caution)(nil)
	_ Holder  = (*Caution)(nil)
)

// NewCaution makes a caution; action, a link or a button below the sentence,
// may be nil.
func NewCaution(title, sentence string, action fyne.CanvasObject) *Caution {
	c := &Caution{
		title:    NewParagraph(title, Strong, Ink),
		sentence: NewParagraph(sentence, Note, Ink),
	}
	c.body = VBox(3, c.title, c.sentence)
	if action != nil {
		c.body.Add(Pad(3, 0, 0, 0, HBox(0, action)))
	}
	c.ExtendBaseWidget(c)
	c.arrange()
	return c
}

// NewVerdict is a caution that answers a page: title and sentence are larger, and
// the action stands at the right.
func NewVerdict(action fyne.CanvasObject) *Caution {
	c := &Caution{title: NewParagraph("", Title, Ink), sentence: NewParagraph("", Body, Ink)}
	c.body = Columns(12, []Track{Share(1), Fit()}, VBox(3, c.title, c.sentence), action)
	c.ExtendBaseWidget(c)
	c.arrange()
	return c
}

// SetText changes both texts; without either the caution is hidden.
func (c *Caution) SetText(title, sentence string) {
	if c.title.Text() == title && c.sentence.Text() == sentence {
		return
	}
	c.title.SetText(title)
	c.sentence.SetText(sentence)
	c.arrange()
	c.Refresh()
}

// arrange hides what is empty.
func (c *Caution) arrange() {
	show := func(o fyne.CanvasObject, on bool) {
		if on {
			o.Show()
		} else {
			o.Hide()
		}
	}
	show(c.title, c.title.Text() != "")
	show(c.sentence, c.sentence.Text() != "")
	show(c, c.title.Text() != "" || c.sentence.Text() != "")
}

// Text returns title and sentence as they stand.
func (c *Caution) Text() (title, sentence string) { return c.title.Text(), c.sentence.Text() }

// Parts returns texts and action.
func (c *Caution) Parts() []fyne.CanvasObject { return []fyne.CanvasObject{c.body} }

// HeightFor returns the height at a width.
func (c *Caution) HeightFor(width float32) float32 {
	return HeightFor(c.body, width-cautionBar-2*cautionPadX) + 2*cautionPadY
}

// CreateRenderer draws bar, ground and texts.
func (c *Caution) CreateRenderer() fyne.WidgetRenderer {
	r := &cautionRenderer{c: c, ground: canvas.NewRectangle(nil), bar: canvas.NewRectangle(nil)}
	r.apply()
	r.Layout(c.Size()) // the toolkit may draw it anew later, and then lays nothing out
	return r
}

type cautionRenderer struct {
	c           *Caution
	ground, bar *canvas.Rectangle
}

func (r *cautionRenderer) apply() {
	p := PaletteNow()
	r.ground.FillColor, r.bar.FillColor = p.Sunk, p.Ink
}

func (r *cautionRenderer) Layout(size fyne.Size) {
	r.ground.Resize(size)
	r.bar.Resize(fyne.NewSize(cautionBar, size.Height))
	r.c.body.Move(fyne.NewPos(cautionBar+cautionPadX, cautionPadY))
	r.c.body.Resize(fyne.NewSize(size.Width-cautionBar-2*cautionPadX, size.Height-2*cautionPadY))
}

func (r *cautionRenderer) MinSize() fyne.Size {
	size := r.c.body.MinSize().AddWidthHeight(cautionBar+2*cautionPadX, 2*cautionPadY)
	if w := r.c.Size().Width; w > 0 {
		size.Height = r.c.HeightFor(w)
	}
	return size
}

func (r *cautionRenderer) Refresh() {
	r.apply()
	r.Layout(r.c.Size())
	canvas.Refresh(r.c)
}

func (r *cautionRenderer) Objects() []fyne.CanvasObject {
	return []fyne.CanvasObject{r.ground, r.bar, r.c.body}
}

func (r *cautionRenderer) Destroy() {}

package heat

import (
	"strings"

	"fyne.io/fyne/v2"

	"ebbwell/app/kit/look"
)

// Cautions shows what the heat of a session calls for.
type Cautions struct {
	caution *look.Caution
	lines   *look.Paragraph
	always  *look.Paragraph
	body    *fyne.Container
}

// NewCautions makes the part.
func NewCautions() *Cautions {
	p := &Cautions{caution: look.NewCaution("", "", nil), lines: look.NewParagraph("", look.Note, look.Ink), always: look.NewParagraph("", look.Note, look.Ink2)}
	p.body = look.VBox(10, p.caution, p.lines, p.always)
	return p
}

// Body is the part.
func (p *Cautions) Body() fyne.CanvasObject { return p.body }

// Show shows a caution.
func (p *Cautions) Show(c Caution) {
	p.caution.SetText(c.Title, c.Sentence)
	setText(p.lines, strings.Join(c.Lines, "\n"))
	setText(p.always, c.Always)
	p.body.Refresh()
}

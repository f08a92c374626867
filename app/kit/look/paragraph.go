package look

import (
	"strings"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/widget"
)

// Paragraph is running text that wraps to its width; its height follows.
// Line breaks in the text are kept.
type Paragraph struct {
	widget.BaseWidget

	text  string
	style Style
	tone  Tone
}

var _ Flowing = (*Paragraph)(nil)

// NewParagraph makes running text.
func NewParagraph(text string, style Style, tone Tone) *Paragraph {
	p := &Paragraph{text: text, style: style, tone: tone}
	p.ExtendBaseWidget(p)
	return p
}

// Text returns the text.
func (p *Paragraph) Text() string { return p.text }

// SetText changes the text.
func (p *Paragraph) SetText(text string) {
	if p.text == text {
		return
	}
	p.text = text
	p.Refresh()
}

// SetTone changes the ink.
func (p *Paragraph) SetTone(tone Tone) {
	if p.tone == tone {
		return
	}
	p.tone = tone
	p.Refresh()
}

// HeightFor returns the height of the text at a width.
func (p *Paragraph) HeightFor(width float32) float32 {
	if p.text == "" {
		return 0
	}
	n := len(Wrap(p.text, p.style, width))
	return float32(n-1)*p.style.Pitch() + p.style.Height()
}

// Baseline returns the distance from the top to the first baseline.
func (p *Paragraph) Baseline() float32 { return p.style.Baseline() }

// AccessibilityLabel is the text.
func (p *Paragraph) AccessibilityLabel() string { return p.text }

// AccessibilityRole is text.
func (p *Paragraph) AccessibilityRole() fyne.AccessibleRole { return fyne.AccessibleRoleText }

// CreateRenderer draws one text object a line.
func (p *Paragraph) CreateRenderer() fyne.WidgetRenderer {
	r := &paragraphRenderer{p: p}
	r.wrap(p.Size().Width)
	return r
}

type paragraphRenderer struct {
	p     *Paragraph
	lines []*canvas.Text
	shown int
}

// wrap spreads the text over line objects, keeping those it has, and reports
// whether anything changed.
func (r *paragraphRenderer) wrap(width float32) bool {
	var rows []string
	if r.p.text != "" && width > 0 {
		rows = Wrap(r.p.text, r.p.style, width)
	}
	changed := len(rows) != r.shown
	r.shown = len(rows)
	for len(r.lines) < len(rows) {
		r.lines = append(r.lines, canvas.NewText("", nil))
	}
	ink := PaletteNow().Tone(r.p.tone)
	for i, line := range r.lines {
		text := ""
		if i < len(rows) {
			text = rows[i]
		}
		changed = changed || line.Text != text
		Write(line, r.p.style, ink, text, fyne.NewPos(0, float32(i)*r.p.style.Pitch()), width)
	}
	return changed
}

func (r *paragraphRenderer) Layout(size fyne.Size) {
	if r.wrap(size.Width) {
		canvas.Refresh(r.p)
	}
}

func (r *paragraphRenderer) MinSize() fyne.Size {
	if r.p.text == "" {
		return fyne.Size{}
	}
	width := r.p.Size().Width
	if width <= 0 {
		width = r.p.style.Size() * 30
	}
	return fyne.NewSize(r.p.style.Size()*4, r.p.HeightFor(width))
}

func (r *paragraphRenderer) Refresh() {
	r.wrap(r.p.Size().Width)
	canvas.Refresh(r.p)
}

func (r *paragraphRenderer) Objects() []fyne.CanvasObject {
	list := make([]fyne.CanvasObject, r.shown)
	for i := range list {
		list[i] = r.lines[i]
	}
	return list
}

func (r *paragraphRenderer) Destroy() {}

// Wrap breaks a text into lines that fit a width, at spaces where it can and
// inside a word that is wider than the line where it must. It returns at
// least one line; without a width it breaks only where the text does.
func Wrap(text string, style Style, width float32) []string {
	if width <= 0 {
		return strings.Split(text, "\n")
	}
	var rows []string
	for _, part := range strings.Split(text, "\n") {
		rows = append(rows, wrapLine(part, style, width)...)
	}
	return rows
}

func wrapLine(text string, style Style, width float32) []string {
	var rows []string
	row := ""
	for _, word := range strings.Split(text, " ") {
		longer := row + " " + word
		if row == "" {
			longer = word
		}
		if style.Width(longer) <= width {
			row = longer
			continue
		}
		if row != "" {
			rows = append(rows, row)
		}
		for style.Width(word) > width {
			head := headThatFits(word, style, width)
			rows = append(rows, head)
			word = word[len(head):]
		}
		row = word
	}
	return append(rows, row)
}

// headThatFits is the longest beginning of a word that fits, one rune at least.
func headThatFits(word string, style Style, width float32) string {
	runes := []rune(word)
	low, high := 1, len(runes)
	for low < high {
		mid := (low + high + 1) / 2
		if style.Width(string(runes[:mid])) <= width {
			low = mid
		} else {
			high = mid - 1
		}
	}
	return string(runes[:low])
}

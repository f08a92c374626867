package look

import (
	"strings"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
)

// Paragraph is running text that wraps to its width; its height follows.
// Line breaks in the text are kept.
type Paragraph struct {
	written

	name string
	// wrapped are the lines at the widths that were asked for last, the latest first:
	// a layout asks for the height at one and then sets the lines at another.
	wrapped [2]wrappedAt
}

// wrappedAt are the lines of a text at a width in a size of text.
type wrappedAt struct {
	text        string
	width, size float32
	style       Style
	rows        []string
}

// rows are the lines at a width.
func (p *Paragraph) rows(width float32) []string {
	key := wrappedAt{text: p.text, width: width, size: p.style.Size(), style: p.style}
	for i, w := range p.wrapped {
		if w.rows != nil && w.text == key.text && w.width == key.width && w.size == key.size && w.style == key.style {
			p.wrapped[0], p.wrapped[i] = p.wrapped[i], p.wrapped[0]
			return p.wrapped[0].rows
		}
	}
	key.rows = Wrap(p.text, p.style, width)
	p.wrapped[1], p.wrapped[0] = p.wrapped[0], key
	return key.rows
}

var _ Flowing = (*Paragraph)(nil)

// NewParagraph makes running text.
func NewParagraph(text string, style Style, tone Tone) *Paragraph {
	p := &Paragraph{written: written{text: text, style: style, tone: tone}}
	p.ExtendBaseWidget(p)
	return p
}

// Called gives it a name by which tests and drivers read it.
func (p *Paragraph) Called(name string) *Paragraph {
	p.name = name
	return p
}

// Name is the name it was given; mostly none.
func (p *Paragraph) Name() string { return p.name }

// HeightFor returns the height of the text at a width.
func (p *Paragraph) HeightFor(width float32) float32 {
	if p.text == "" {
		return 0
	}
	n := len(p.rows(width))
	return float32(n-1)*p.style.Pitch() + p.style.Height()
}

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
		rows = r.p.rows(width)
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
	for part := range strings.SplitSeq(text, "\n") {
		rows = wrapLine(rows, part, style, width)
	}
	return rows
}

// wrapLine adds the lines of a text without line breaks. A line is a piece of the text:
// nothing is put together anew.
func wrapLine(rows []string, text string, style Style, width float32) []string {
	for {
		end := rowEnd(text, style, width)
		if end < 0 {
			word, _, _ := strings.Cut(text, " ")
			head := headThatFits(word, style, width)
			rows, text = append(rows, head), text[len(head):]
			continue
		}
		rows = append(rows, text[:end])
		if end == len(text) {
			return rows
		}
		text = strings.TrimLeft(text[end:], " ") // no further line begins with a space
		if text == "" {
			return rows
		}
	}
}

// rowEnd is where the longest beginning of a text ends that fits a row and breaks no word;
// below zero where the first word is wider than the row. The widths of the words, which
// occur again and again, say about where: only there is a row measured as a whole, as it
// will be drawn.
func rowEnd(text string, style Style, width float32) int {
	var few [32]int
	ends, sum := few[:0], float32(0)
	for at := 0; at <= len(text) && sum <= width; {
		stop := len(text)
		if i := strings.IndexByte(text[at:], ' '); i >= 0 {
			stop = at + i
		}
		if stop > at {
			sum += style.Width(text[at:stop])
		}
		if at > 0 {
			sum += style.Width(" ")
		}
		ends, at = append(ends, stop), stop+1
	}
	last := len(ends) - 1
	for last >= 0 && style.Width(text[:ends[last]]) > width {
		last--
	}
	if last < 0 {
		return -1
	}
	end := ends[last]
	if last < len(ends)-1 {
		return end
	}
	for end < len(text) { // narrower together than one by one
		next := len(text)
		if i := strings.IndexByte(text[end+1:], ' '); i >= 0 {
			next = end + 1 + i
		}
		if style.Width(text[:next]) > width {
			break
		}
		end = next
	}
	return end
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

package handout

import (
	"strconv"
	"strings"

	"ebbwell/internal/handout/paper"
)

// head is what stands at the top of a large page: its title, the line under
// it, and a last line under the practice at the right.
type head struct {
	title, under, right string
}

// frame is the frame of a large page: the head, the safety box and the small
// print at the foot, to which the page may add sentences.
func (p *Press) frame(t Terms, h head, small ...string) paper.Frame {
	fr := paper.Frame{Size: p.size, Margin: margin, Top: top, Bottom: bottom}
	w := fr.Inner()
	fr.Header = func(page int) paper.Block {
		if page > 1 {
			return p.laterHeader(h.title, w)
		}
		return p.header(t, h, w)
	}
	fr.Footer = p.footer(t, w, small...)
	fr.Number = func(page, of int) paper.Block {
		return p.faces.Line(smallStyle(), p.say.Say("handout.number", strconv.Itoa(page), strconv.Itoa(of)), 40, paper.Right)
	}
	return fr
}

// tightest is the most that lines are set closer.
const tightest = 2

// way is how close a page is set: an index of the styles, one of the rows of breaks,
// what is folded, and how much smaller the whole of it is; 0 is no smaller.
type way struct {
	tight, low int
	// lean above 0 sets what is read before and after the session in running lines, from
	// 2 on leaves out the bar of the test, at 3 the athlete's words and the rule of the
	// steps too; gather is how many breaks that follow one
	// another share a row, 0 for none.
	lean, gather int
	small        float64
}

// closer are the ways to set a page closer, one after the other.
func closer() []way {
	return []way{{tight: 1}, {tight: 1, low: 1}, {tight: 2, low: 1}, {tight: 2, low: 2}, {tight: 2, low: 3}}
}

// pageWays are those of the athlete's page, which is to be one side: what is read in
// the session keeps the largest type that there is room for. What is read at home is
// folded, and breaks share rows, before its type is below [leastDuring].
func pageWays() []way {
	list := []way{
		{tight: 1}, {tight: 1, low: 1}, {tight: 2, low: 1}, {tight: 2, low: 2}, {tight: 2, low: 1, lean: 1}, {tight: 2, low: 2, lean: 1}, {tight: 2, low: 3},
	}
	for low := 3; low <= smallestForm; low++ {
		list = append(list, way{tight: 2, low: low, lean: 1}, way{tight: 2, low: low, lean: 2})
	}
	for _, most := range []int{gatherMost, 6, 8} {
		list = append(list, way{tight: 2, low: 2, lean: 1, gather: most}, way{tight: 2, low: 2, lean: 2, gather: most})
	}
	list = append(list, way{tight: 2, low: 2, lean: 3, gather: 6}, way{tight: 2, low: 2, lean: 3, gather: 8}, way{tight: 2, low: smallestForm, lean: 3, gather: 8})
	return list
}

// on is the press that sets pages in this way.
func (w way) on(p *Press) *Press {
	press := *p
	press.tight, press.low, press.lean, press.gather = w.tight, w.low, w.lean, w.gather
	if w.small > 0 {
		press.size.Width, press.size.Height = p.size.Width/w.small, p.size.Height/w.small
	}
	return &press
}

// pour fills pages; where one side is not enough, lines are set closer if that
// saves a side, and no closer than it needs.
func (p *Press) pour(lay func(p *Press) (paper.Frame, []paper.Item)) []paper.Page {
	return p.pourBy(closer(), lay)
}

// pourOne fills one side, unless that would be too small to read.
func (p *Press) pourOne(lay func(p *Press) (paper.Frame, []paper.Item)) []paper.Page {
	return p.pourBy(pageWays(), lay)
}

// telling lays pages out. Where the typeface lacks a letter of what they say, they are
// laid out again with a sentence in the small print that says so.
func (p *Press) telling(lay func(p *Press) []paper.Page) []paper.Page {
	p.faces.Forget()
	pages := lay(p)
	if len(p.faces.Lacked()) == 0 {
		return pages
	}
	press := *p
	press.lacks = true
	return lay(&press)
}

// lackPrint is the sentence of the small print that stands where letters are lacking.
func (p *Press) lackPrint() []string {
	if !p.lacks {
		return nil
	}
	return []string{p.say.Say("handout.lacking", paper.Lacking)}
}

// once fills pages in one way.
func (p *Press) once(lay func(p *Press) (paper.Frame, []paper.Item)) []paper.Page {
	return p.telling(func(p *Press) []paper.Page { return paper.Pour(lay(p)) })
}

func (p *Press) pourBy(ways []way, lay func(p *Press) (paper.Frame, []paper.Item)) []paper.Page {
	return p.telling(func(p *Press) []paper.Page { return p.closest(ways, lay) })
}

// closest sets pages by the first of the ways that saves most sides.
func (p *Press) closest(ways []way, lay func(p *Press) (paper.Frame, []paper.Item)) []paper.Page {
	pages := paper.Pour(lay(p))
	*p.used = way{}
	for _, w := range ways {
		if len(pages) == 1 {
			break
		}
		fewer := paper.Pour(lay(w.on(p)))
		if len(fewer) >= len(pages) {
			continue
		}
		pages, *p.used = fewer, w
		if w.small <= 0 {
			continue
		}
		for i := range pages {
			pages[i] = pages[i].Scaled(w.small)
		}
	}
	return pages
}

// header is the top of the first side.
func (p *Press) header(t Terms, h head, width float64) paper.Block {
	const right = 54.0
	left := width - right - 4
	st := p.faces.Fit(titleStyle(), h.title, left, 0.7)
	lines := p.faces.Clip(st, p.faces.Wrap(st, h.title, left), 4, left)
	block := p.faces.Lines(st, lines, left, paper.Left)
	body := p.body().In(paper.Grey)
	lines = p.faces.Clip(body, p.faces.Wrap(body, h.under, left), 4, left)
	block = block.Under(p.faces.Lines(body, lines, left, paper.Left), 0.6)
	house := p.house(t, h.right, right)
	all := block.Over(house.At(width-right, 1.0))
	all.Width, all.Height = width, all.Height+2.6
	line := paper.Line{X2: width, Y1: all.Height, Y2: all.Height, Width: rule, Ink: paper.Black}
	all = all.With(line)
	all.Height += 3.6
	return all
}

// house is the practice, set to the right.
func (p *Press) house(t Terms, last string, width float64) paper.Block {
	am := p.amounts(t)
	st := noteStyle()
	var who []string
	for _, s := range []string{t.Practice.Practitioner, t.Practice.Registration} {
		if s = strings.TrimSpace(s); s != "" {
			who = append(who, am.typed(s))
		}
	}
	// A telephone number is not broken over two lines.
	telephone := strings.Join(strings.Fields(am.typed(t.Practice.Telephone)), "\u00a0")
	var lines []string
	for _, s := range []string{am.typed(t.Practice.Name), p.say.Commas(who), telephone, last} {
		lines = append(lines, p.faces.Clip(st, p.faces.Wrap(st, s, width), 4, width)...)
	}
	return p.faces.Lines(st, lines, width, paper.Right)
}

// laterHeader is the top of the sides after the first.
func (p *Press) laterHeader(title string, width float64) paper.Block {
	st := noteStyle()
	lines := p.faces.Clip(st, p.faces.Wrap(st, title, width), 1, width)
	b := p.faces.Lines(st, lines, width, paper.Left)
	b.Width, b.Height = width, b.Height+1
	b = b.With(paper.Line{X2: width, Y1: b.Height, Y2: b.Height, Width: hairlineWidth, Ink: paper.Black})
	b.Height += 4
	return b
}

// document puts pages together with what a reader of the file is told.
func (p *Press) document(t Terms, title, subject string, pages []paper.Page) paper.Document {
	d := paper.NewDocument(p.faces, p.size, pages)
	d.Title, d.Subject, d.Lacks = title, subject, p.faces.Lacked()
	d.Folded = foldedBy(*p.used)
	d.Author = p.amounts(t).typed(t.Practice.Name)
	d.Language = p.say.Language().String()
	return d
}

// What is left out of an athlete's page that is to be one side.
const (
	FoldedTest  = "test"  // the bar of the test, and what the bars add up to
	FoldedWords = "words" // the athlete's words and the rule of the steps
)

// foldedBy lists what a way leaves out.
func foldedBy(w way) []string {
	switch {
	case w.lean >= leanest:
		return []string{FoldedTest, FoldedWords}
	case w.lean > 1:
		return []string{FoldedTest}
	}
	return nil
}

// section is a heading held to what follows.
func (p *Press) section(title string, width float64) paper.Item {
	return paper.Item{Block: p.faces.Line(headingStyle(), title, width, paper.Left), Gap: p.gap(), Keep: true}
}

// lineItems sets a text as one item for each line, so that it can run on to
// another side. The first lines stay together.
func lineItems(f *paper.Faces, st paper.Style, s string, width, gap float64) []paper.Item {
	var items []paper.Item
	for i, line := range f.Wrap(st, s, width) {
		it := paper.Item{Block: f.Line(st, line, width, paper.Left)}
		if i == 0 {
			it.Gap = gap
		}
		items = append(items, it)
	}
	for i := range min(2, len(items)-1) {
		items[i].Keep = true
	}
	return items
}

// column is a heading with a text under it.
type column struct {
	title string
	body  func(width float64) []paper.Block
}

// pair sets two columns next to each other; one under the other when either
// is long. A column without blocks is left out.
func (p *Press) pair(left, right column, width float64) []paper.Item {
	const tall = 85.0
	half := (width - columnGap) / 2
	l, r := left.blocks(half), right.blocks(half)
	lb, rb := paper.Stack(0, l...), paper.Stack(0, r...)
	if len(l) == 0 && len(r) == 0 {
		return nil
	}
	if len(l) == 0 || len(r) == 0 || lb.Height > tall || rb.Height > tall {
		return append(p.single(left, width), p.single(right, width)...)
	}
	lb = p.faces.Line(headingStyle(), left.title, half, paper.Left).Under(lb, 0)
	rb = p.faces.Line(headingStyle(), right.title, half, paper.Left).Under(rb, 0)
	return []paper.Item{{Block: paper.Beside(columnGap, lb, rb), Gap: p.gap()}}
}

func (c column) blocks(width float64) []paper.Block {
	if c.body == nil {
		return nil
	}
	return c.body(width)
}

// single sets a column over the whole width.
func (p *Press) single(c column, width float64) []paper.Item {
	blocks := c.blocks(width)
	if len(blocks) == 0 {
		return nil
	}
	items := []paper.Item{p.section(c.title, width)}
	for _, b := range blocks {
		items = append(items, paper.Item{Block: b})
	}
	return items
}

// clipRunes keeps the first n characters, with a visible "…" where some go.
func clipRunes(s string, n int) string {
	r := []rune(strings.TrimSpace(s))
	if len(r) <= n {
		return string(r)
	}
	return string(r[:n-1]) + "…"
}

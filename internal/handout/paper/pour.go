package paper

// Item is a block in a flow of blocks.
type Item struct {
	Block Block
	// Gap is the room above it; none at the top of a page.
	Gap float64
	// Keep holds the item on one page with the next.
	Keep bool
	// Break begins a page with the item.
	Break bool
	// Head is set again at the top when a page begins with this item, such as
	// the heads of the columns above a later row of a table.
	Head *Block
}

// Frame is what stands around the flow on every page.
type Frame struct {
	Size Size
	// Margin is the room at the left and right, Top and Bottom that above and
	// below.
	Margin, Top, Bottom float64
	// Header makes the top of a page, counted from 1. It may be nil.
	Header func(page int) Block
	// Footer stands at the bottom of every page; of the pages after the first Later, where
	// that is not nil.
	Footer Block
	Later  *Block
	// Number makes the sign of a page where there are several; it is put
	// above the right end of the bottom margin. It may be nil.
	Number func(page, of int) Block
}

// Inner is the width between the margins.
func (f Frame) Inner() float64 { return f.Size.Width - 2*f.Margin }

// foot is the footer of a page, counted from 1.
func (f Frame) foot(page int) Block {
	if page > 1 && f.Later != nil {
		return *f.Later
	}
	return f.Footer
}

// gapFooter is the least room between the flow and the footer.
const gapFooter = 4.0

// Pour fills pages with items, in order. An item that does not fit moves to
// the next page; one that fits on no page is parted. There is always one page.
func Pour(fr Frame, items []Item) []Page {
	p := &pourer{frame: fr}
	p.newPage()
	for i := 0; i < len(items); {
		n := group(items[i:])
		if !p.empty && (items[i].Break || p.y+groupHeight(items[i:i+n]) > p.limit) {
			p.newPage()
		}
		for _, it := range items[i : i+n] {
			p.put(it)
		}
		i += n
	}
	return p.finish()
}

// group is how many items from the first on must stay together.
func group(items []Item) int {
	n := 1
	for n < len(items) && items[n-1].Keep {
		n++
	}
	return n
}

// groupHeight is the height of items one under the other, with their gaps.
func groupHeight(items []Item) float64 {
	var h float64
	for _, it := range items {
		h += it.Gap + it.Block.Height
	}
	return h
}

// pourer is the state of [Pour]: the pages so far and the place on the last.
type pourer struct {
	frame Frame
	pages []Page
	y     float64 // where the next item goes
	limit float64 // where the flow has to end
	empty bool    // nothing of the flow is on this page yet
}

func (p *pourer) newPage() {
	fr := p.frame
	p.pages = append(p.pages, Page{})
	p.y, p.empty = fr.Top, true
	p.limit = fr.Size.Height - fr.Bottom
	if foot := fr.foot(len(p.pages)); foot.Height > 0 {
		p.limit -= foot.Height + gapFooter
	}
	if fr.Header != nil {
		h := fr.Header(len(p.pages))
		p.draw(h, p.y)
		p.y += h.Height
	}
}

// draw puts a block on the last page.
func (p *pourer) draw(b Block, y float64) {
	page := &p.pages[len(p.pages)-1]
	page.Marks = append(page.Marks, b.At(p.frame.Margin, y).Marks...)
}

// put sets one item, on a new page or on several where it has to.
func (p *pourer) put(it Item) {
	if !p.empty && p.y+it.Gap+it.Block.Height > p.limit {
		p.newPage()
	}
	if p.empty {
		if it.Head != nil && len(p.pages) > 1 {
			p.draw(*it.Head, p.y)
			p.y += it.Head.Height
		}
	} else {
		p.y += it.Gap
	}
	b := it.Block
	for p.y+b.Height > p.limit {
		first, rest := b.cut(max(p.limit-p.y, minimumRoom))
		p.draw(first, p.y)
		p.y += first.Height
		if len(rest.Marks) == 0 {
			p.empty = false
			return
		}
		p.newPage()
		b = rest
	}
	p.draw(b, p.y)
	p.y += b.Height
	p.empty = false
}

// minimumRoom keeps a page that is all header and footer from stopping the flow.
const minimumRoom = 8.0

// finish writes the footers and the page numbers, last so that a program that
// reads the page aloud comes to them last.
func (p *pourer) finish() []Page {
	fr := p.frame
	for i := range p.pages {
		foot := fr.foot(i + 1)
		foot = foot.At(fr.Margin, fr.Size.Height-fr.Bottom-foot.Height)
		p.pages[i].Marks = append(p.pages[i].Marks, foot.Marks...)
		if len(p.pages) < 2 || fr.Number == nil {
			continue
		}
		b := fr.Number(i+1, len(p.pages))
		at := b.At(fr.Size.Width-fr.Margin-b.Width, fr.Size.Height-fr.Bottom+1)
		p.pages[i].Marks = append(p.pages[i].Marks, at.Marks...)
	}
	return p.pages
}

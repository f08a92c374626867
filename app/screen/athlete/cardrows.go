package athlete

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/widget"

	"ebbwell/app/kit/look"
)

// cardRows sets cards of one width into as few rows as they fit in, the rows as even
// as they can be, with an arrow from each card to the next beside it.
type cardRows struct {
	widget.BaseWidget
	cards []fyne.CanvasObject
}

var (
	_ look.Flowing = (*cardRows)(nil)
	_ look.Holder  = (*cardRows)(nil)
)

func newCardRows(cards []fyne.CanvasObject) *cardRows {
	c := &cardRows{cards: cards}
	c.ExtendBaseWidget(c)
	return c
}

// Least width of a card, in px at 100 % text, and the gap between cards, in px.
const (
	cardLeast float32 = 190
	cardGap   float32 = 28
)

// Size of an arrow and thickness of its shaft, px.
const (
	arrowWide, arrowHead float32 = 14, 8
	arrowShaft           float32 = 2
)

// Parts returns the cards.
func (c *cardRows) Parts() []fyne.CanvasObject { return c.cards }

// rows is how many rows there are, and how many cards in each.
func (c *cardRows) rows(width float32) (rows, each int) {
	n := len(c.cards)
	fit := max(1, int((width+cardGap)/(look.Scaled(cardLeast)+cardGap)))
	rows = max(1, (n+fit-1)/fit)
	return rows, max(1, (n+rows-1)/rows)
}

// HeightFor returns the height of all rows at a width.
func (c *cardRows) HeightFor(width float32) float32 {
	if len(c.cards) == 0 {
		return 0
	}
	rows, _ := c.rows(width)
	return float32(rows)*(c.cards[0].MinSize().Height+cardGap) - cardGap
}

// CreateRenderer places the cards and draws the arrows.
func (c *cardRows) CreateRenderer() fyne.WidgetRenderer {
	r := &cardRowsRenderer{c: c}
	for range c.cards {
		r.arrows = append(r.arrows, newArrow())
	}
	r.paint()
	return r
}

// arrow points from one card to the next.
type arrow struct {
	shaft *canvas.Rectangle
	head  *canvas.ArbitraryPolygon
}

func newArrow() arrow {
	a := arrow{shaft: canvas.NewRectangle(nil), head: look.NewTriangle(nil)}
	a.head.Points = []fyne.Position{{X: 0, Y: 0}, {X: 1, Y: 0.5}, {X: 0, Y: 1}}
	return a
}

// place puts the arrow into the middle of a gap; without room it is not seen.
func (a arrow) place(x, middle float32, on bool) {
	a.shaft.Hidden, a.head.Hidden = !on, !on
	left := x + (cardGap-arrowWide)/2
	a.shaft.Move(fyne.NewPos(left, middle-arrowShaft/2))
	a.shaft.Resize(fyne.NewSize(arrowWide-arrowHead, arrowShaft))
	a.head.Move(fyne.NewPos(left+arrowWide-arrowHead, middle-arrowHead/2))
	a.head.Resize(fyne.NewSquareSize(arrowHead))
}

type cardRowsRenderer struct {
	c      *cardRows
	arrows []arrow
}

func (r *cardRowsRenderer) paint() {
	ink := look.PaletteNow().Ink2
	for _, a := range r.arrows {
		a.shaft.FillColor, a.head.FillColor = ink, ink
	}
}

func (r *cardRowsRenderer) Layout(size fyne.Size) {
	_, each := r.c.rows(size.Width)
	w := float32(int((size.Width - cardGap*float32(each-1)) / float32(each)))
	for i, card := range r.c.cards {
		h := card.MinSize().Height
		at := fyne.NewPos(float32(i%each)*(w+cardGap), float32(i/each)*(h+cardGap))
		card.Resize(fyne.NewSize(w, h))
		card.Move(at)
		r.arrows[i].place(at.X-cardGap, at.Y+float32(int(h/2)), i%each > 0)
	}
}

func (r *cardRowsRenderer) MinSize() fyne.Size {
	least := look.Scaled(cardLeast)
	return fyne.NewSize(least, r.c.HeightFor(max(least, r.c.Size().Width)))
}

func (r *cardRowsRenderer) Refresh() {
	r.paint()
	r.Layout(r.c.Size())
	for _, card := range r.c.cards {
		card.Refresh()
	}
}

func (r *cardRowsRenderer) Objects() []fyne.CanvasObject {
	list := append([]fyne.CanvasObject{}, r.c.cards...)
	for _, a := range r.arrows {
		list = append(list, a.shaft, a.head)
	}
	return list
}

func (r *cardRowsRenderer) Destroy() {}

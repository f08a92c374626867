package athlete

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/widget"

	"ebbwell/app/kit/look"
)

// cardRows sets cards of one width into as few rows as they fit in, the rows as even
// as they can be.
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
	cardGap   float32 = 12
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

// CreateRenderer places the cards.
func (c *cardRows) CreateRenderer() fyne.WidgetRenderer { return &cardRowsRenderer{c} }

type cardRowsRenderer struct{ c *cardRows }

func (r *cardRowsRenderer) Layout(size fyne.Size) {
	_, each := r.c.rows(size.Width)
	w := float32(int((size.Width - cardGap*float32(each-1)) / float32(each)))
	for i, card := range r.c.cards {
		h := card.MinSize().Height
		card.Resize(fyne.NewSize(w, h))
		card.Move(fyne.NewPos(float32(i%each)*(w+cardGap), float32(i/each)*(h+cardGap)))
	}
}

func (r *cardRowsRenderer) MinSize() fyne.Size {
	least := look.Scaled(cardLeast)
	return fyne.NewSize(least, r.c.HeightFor(max(least, r.c.Size().Width)))
}

func (r *cardRowsRenderer) Refresh() {
	r.Layout(r.c.Size())
	for _, card := range r.c.cards {
		card.Refresh()
	}
}

func (r *cardRowsRenderer) Objects() []fyne.CanvasObject { return r.c.cards }
func (r *cardRowsRenderer) Destroy()                     {}

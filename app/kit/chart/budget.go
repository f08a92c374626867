package chart

import (
	"fyne.io/fyne/v2"

	"ebbwell/app/kit/look"
)

// BudgetShare is one thing a range is made of.
type BudgetShare struct {
	Name string
	// Part is its share, 0 to 1; Text is it in words: "94 %".
	Part float64
	Text string
}

// BudgetData is what a [BudgetBars] shows.
type BudgetData struct {
	Shares  []BudgetShare
	Summary string
}

// BudgetBars draws what a range is made of: ink, not hues, since a share of
// doubt is no substance.
type BudgetBars struct {
	base
	data BudgetData
}

// NewBudgetBars makes an empty budget.
func NewBudgetBars() *BudgetBars {
	c := &BudgetBars{}
	c.start(c, func() fyne.Size {
		return fyne.NewSize(look.Scaled(220), budgetRow()*float32(max(len(c.data.Shares), 1)))
	}, c.paint)
	return c
}

// budgetRow is the height of a line.
func budgetRow() float32 { return look.Note.Height() + look.Scaled(12) }

// leastBar is the share of the width that the longest bar keeps beside long names.
const leastBar = 0.18

// Set shows other data. The shares are copied.
func (c *BudgetBars) Set(d BudgetData) {
	had := len(c.data.Shares)
	shares := append(c.data.Shares[:0], d.Shares...)
	c.data = d
	c.data.Shares = shares
	c.shownHigher(d.Summary, had != len(shares))
}

func (c *BudgetBars) paint(size fyne.Size) {
	d, k := &c.data, c.pen.ink
	if len(d.Shares) == 0 {
		c.say(size)
		return
	}
	var names, texts float32
	for _, s := range d.Shares {
		names, texts = max(names, look.Note.Width(s.Name)), max(texts, look.Note.Width(s.Text))
	}
	texts = min(texts, size.Width*0.25)
	names = min(names, max(size.Width*0.56, size.Width*(1-leastBar)-texts-look.Scaled(34)))
	at := scale{from: 0, to: 1, start: names + look.Scaled(20), end: size.Width - texts - look.Scaled(14)}
	for i, s := range d.Shares {
		y := float32(i)*budgetRow() + look.Scaled(6)
		thick := look.Scaled(12)
		c.pen.text(s.Name, 0, y, names, look.Note, k.Ink, left)
		c.pen.round(at.start, y+(look.Note.Height()-thick)/2+look.Scaled(2), max(at.inside(s.Part)-at.start, 2), thick, 2, k.Ink2)
		c.pen.text(s.Text, at.end, y, size.Width-at.end, look.Note, k.Ink, right)
	}
}

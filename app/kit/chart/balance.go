package chart

import (
	"fyne.io/fyne/v2"

	"ebbwell/app/kit/look"
)

// BalanceRow is one line of a running balance. Its parts begin where the line
// above ended; parts with negative values go back.
type BalanceRow struct {
	// Name stands above the bar at the left, Value in the same line at the right.
	Name, Value string
	Parts       []Part
}

// BalanceData is what a [BalanceBars] shows.
type BalanceData struct {
	Rows []BalanceRow
	// Total is the line under the rule; it begins at zero again.
	Total BalanceRow
	// Provisional makes the total pale.
	Provisional bool
	// Max is the least end of the scale.
	Max     float64
	Summary string
}

// BalanceBars draws what went out and in one under the other, each beginning
// where the one above ended, and what it comes to.
type BalanceBars struct {
	base
	data BalanceData
}

// NewBalanceBars makes an empty balance.
func NewBalanceBars() *BalanceBars {
	c := &BalanceBars{}
	c.start(c, func() fyne.Size {
		return fyne.NewSize(look.Scaled(200), float32(len(c.data.Rows)+1)*balanceRow()+look.Scaled(8))
	}, c.paint)
	return c
}

// balanceRow is the height of a line.
func balanceRow() float32 { return look.Body.Height() + balanceBar() + look.Scaled(5) }

// balanceBar is the height of a bar.
func balanceBar() float32 { return look.Scaled(8) }

// Set shows other data. Rows and parts are copied.
func (c *BalanceBars) Set(d BalanceData) {
	kept := c.data
	c.data = d
	c.data.Rows = kept.Rows[:0]
	for i, r := range d.Rows {
		var parts []Part
		if i < cap(kept.Rows) {
			parts = kept.Rows[:i+1][i].Parts[:0]
		}
		r.Parts = append(parts, r.Parts...)
		c.data.Rows = append(c.data.Rows, r)
	}
	c.data.Total.Parts = append(kept.Total.Parts[:0], d.Total.Parts...)
	c.shownHigher(d.Summary, len(kept.Rows) != len(d.Rows))
}

func (c *BalanceBars) paint(size fyne.Size) {
	d, k := &c.data, c.pen.ink
	if len(d.Rows) == 0 {
		c.say(size)
		return
	}
	at := scale{from: 0, to: c.end(), start: 0, end: size.Width}
	y, from := float32(0), 0.0
	for _, r := range d.Rows {
		from = c.row(r, from, at, y, size, false)
		y += balanceRow()
	}
	c.pen.rect(0, y-1, size.Width, 1.4, k.Ink2)
	y += look.Scaled(4)
	c.row(d.Total, 0, at, y, size, d.Provisional)
}

// row draws a line and returns where it ends.
func (c *BalanceBars) row(r BalanceRow, from float64, at scale, y float32, size fyne.Size, pale bool) float64 {
	k := c.pen.ink
	value := min(look.Body.Width(r.Value), size.Width*0.6)
	c.pen.text(r.Value, size.Width-value, y, value, look.Body, k.Ink, right)
	c.pen.text(r.Name, 0, y, size.Width-value-look.Scaled(8), look.Body, k.Ink2, left)
	top := y + look.Body.Height()
	for _, part := range r.Parts {
		to := from + signed(part.Value)
		x1, x2 := at.inside(min(from, to)), at.inside(max(from, to))
		c.pen.round(x1, top, x2-x1, balanceBar(), 1, k.hue(part.Of, pale))
		from = to
	}
	return from
}

// end is the furthest that the balance reaches.
func (c *BalanceBars) end() float64 {
	end, at := max(length(c.data.Max), 1e-9), 0.0
	for _, r := range c.data.Rows {
		for _, part := range r.Parts {
			at += signed(part.Value)
			end = max(end, at)
		}
	}
	return max(end, total(c.data.Total.Parts))
}

// signed is a value as a step forward or back.
func signed(x float64) float64 {
	if x < 0 {
		return -length(-x)
	}
	return length(x)
}

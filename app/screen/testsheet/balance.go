package testsheet

import (
	"strconv"
	"strings"

	"fyne.io/fyne/v2"

	"ebbwell/app/kit/amount"
	"ebbwell/app/kit/chart"
	"ebbwell/app/kit/desk"
	"ebbwell/app/kit/look"
	"ebbwell/internal/consult"
	"ebbwell/internal/quantity"
	"ebbwell/internal/record"
	"ebbwell/internal/sweat"
)

// balance is the running balance beside the parts of a sheet: what the sheet
// comes to as far as it is filled, what is wrong with it, what is missing.
type balance struct {
	desk *desk.Desk
	by   amount.Writer
	bars *chart.BalanceBars
	rate *look.Label
	sure *look.Paragraph
	// red is a gain in mass: before all else.
	red   *look.Caution
	items *troubleItems
	title *look.Label
	lines []*look.Paragraph
	list  *fyne.Container
	// head stays in sight: what is wrong, and what the sheet comes to.
	head, column *fyne.Container
	pinned       *pinned
	body         fyne.CanvasObject
}

// newBalance makes an empty balance; do are what its links can do.
func newBalance(d *desk.Desk, by amount.Writer, do troubleActions) *balance {
	b := &balance{
		desk: d, by: by, bars: chart.NewBalanceBars(), rate: look.NewLabel("", look.Key, look.Ink),
		red:  look.NewCaution("", "", nil),
		sure: look.NewParagraph("", look.Note, look.Ink2), items: newTroubleItems(d, do),
		title: look.NewLabel(d.Words.Say("testsheet.balance.missing"), look.Strong, look.Ink), list: look.VBox(4),
	}
	b.head = look.VBox(10, b.red, b.items.box,
		look.NewLabel(d.Words.Say("testsheet.balance"), look.Strong, look.Ink), look.HBox(12, b.rate, look.Grow(b.sure)))
	b.column = look.VBox(10, newTwoUp(b.bars, look.VBox(10, b.title, b.list)))
	b.pinned = newPinned(b.head, b.column)
	b.body = look.NewSheet(b.pinned)
	return b
}

// speaker is who speaks in it.
func (b *balance) speaker() speaker {
	return speaker{amount.Speaker{Words: b.desk.Words, By: b.by, Today: b.desk.Now()}}
}

// show shows a sheet's findings and what is wrong with it.
func (b *balance) show(t record.Test, a record.Athlete, f consult.Findings, wrong []trouble) {
	b.red.SetText("", "")
	if g, ok := consult.GainOf(f, a, consult.TestDay(t)); ok {
		b.red.SetText(desk.GainWords(b.desk.Words, b.by, b.desk.Practice(), g))
	}
	data := b.data(f)
	b.bars.Set(data)
	look.ShowIf(b.bars, len(data.Rows) > 0)
	b.showRate(f, wrong)
	b.items.show(b.speaker(), t, wrong)
	b.showMissing(f)
	b.pinned.Refresh()
}

// showRate shows the sweat rate and how sure it is.
func (b *balance) showRate(f consult.Findings, wrong []trouble) {
	say, rate := b.desk.Words.Say, f.Sweat.Fluid.Rate
	lacking := b.desk.Words.List(b.lacking(f, wrong))
	switch {
	case rate.Known && rate.Ranged:
		b.rate.SetText(b.by.Found(rate))
		b.sure.SetText(say("testsheet.balance.range", b.by.Range(rate)))
	case rate.Known:
		b.rate.SetText(b.by.Found(rate))
		b.sure.SetText(say("testsheet.balance.provisional", lacking))
	case lacking != "":
		b.rate.SetText("")
		b.sure.SetText(say("testsheet.balance.until", lacking))
	default:
		b.rate.SetText("")
		b.sure.SetText("")
	}
	look.ShowIf(b.rate, rate.Known)
}

// lacking names, in short, what the sweat rate still waits for.
func (b *balance) lacking(f consult.Findings, wrong []trouble) []string {
	var list []string
	seen := map[string]bool{}
	add := func(name string) {
		if !seen[name] {
			seen[name] = true
			list = append(list, name)
		}
	}
	sp := b.speaker()
	for _, w := range wrong {
		if w.code == codeProblem && w.refused() {
			add(sp.problemName(w.problem))
		}
	}
	for _, m := range f.Sweat.Missing {
		if m.Optional || m.ID == sweat.MissingSodium {
			continue
		}
		key := "testsheet.short." + strings.TrimPrefix(m.ID, "missing.")
		if m.Item > 0 {
			add(b.desk.Words.Say(key, strconv.Itoa(m.Item)))
			continue
		}
		add(b.desk.Words.Say(key))
	}
	return list
}

// showMissing lists what is missing and what that may do.
func (b *balance) showMissing(f consult.Findings) {
	missing := f.Sweat.Missing
	for len(b.lines) < len(missing) {
		p := look.NewParagraph("", look.Note, look.Ink2)
		b.lines = append(b.lines, p)
		b.list.Add(p)
	}
	for i, p := range b.lines {
		if i < len(missing) {
			p.SetText(desk.MissingSentence(b.desk.Speaker(f.Care.MassHidden), missing[i]))
		}
		look.ShowIf(p, i < len(missing))
	}
	look.ShowIf(b.title, len(missing) > 0)
}

// data is the balance as bars.
func (b *balance) data(f consult.Findings) chart.BalanceData {
	say := b.desk.Words.Say
	d := chart.BalanceData{Max: 1}
	for _, l := range f.Sweat.Balance {
		if !l.Known || l.Kilograms == 0 { // what is missing is listed below
			continue
		}
		d.Rows = append(d.Rows, chart.BalanceRow{
			Name: say("testsheet." + l.ID), Value: b.value(l, f), Parts: partsOf(l, f),
		})
	}
	loss := f.Sweat.Fluid.Loss
	d.Provisional = !loss.Ranged
	d.Total = chart.BalanceRow{Name: say("testsheet.line.loss"), Value: b.by.Found(loss)}
	if d.Provisional {
		d.Total.Name = say("testsheet.line.loss.provisional")
	}
	if loss.Known {
		d.Total.Parts = []chart.Part{{Of: look.Loss, Value: max(0, loss.Value)}}
	}
	var list []string
	for _, r := range append(d.Rows, d.Total) {
		list = append(list, strings.TrimSpace(r.Name+" "+r.Value))
	}
	d.Summary = b.desk.Words.Commas(list)
	return d
}

// value is what a line comes to, in words where it is nothing or missing.
func (b *balance) value(l sweat.Line, f consult.Findings) string {
	say := b.desk.Words.Say
	switch l.ID {
	case sweat.LineBody:
		return b.by.Amount(l.Kilograms, quantity.Kilogram)
	case sweat.LineDrunk:
		return b.by.Found(f.Sweat.Fluid.Drunk)
	case sweat.LineRespiratory, sweat.LineExchange:
		if b.by.Hidden {
			return say("testsheet.value.takenoff")
		}
		return b.by.Amount(l.Kilograms, quantity.Kilogram)
	}
	return b.by.Amount(1000*l.Kilograms, quantity.Gram)
}

// partsOf is a line in the hues of what it holds.
func partsOf(l sweat.Line, f consult.Findings) []chart.Part {
	switch l.ID {
	case sweat.LineBody:
		return []chart.Part{{Of: look.Loss, Value: l.Kilograms}}
	case sweat.LineEaten:
		return []chart.Part{{Of: look.Food, Value: l.Kilograms}}
	case sweat.LineDrunk:
		return drunkParts(f)
	}
	return []chart.Part{{Of: look.Nothing, Value: l.Kilograms}}
}

// drunkParts is what was drunk, water first, in kg.
func drunkParts(f consult.Findings) []chart.Part {
	water, drink := 0.0, 0.0
	for _, p := range f.Intake.Bottles {
		switch {
		case !p.Known:
		case record.ID(p.Product.ID) == consult.Water:
			water += p.Grams / 1000
		default:
			drink += p.Grams / 1000
		}
	}
	return []chart.Part{{Of: look.Water, Value: water}, {Of: look.Drink, Value: drink}}
}

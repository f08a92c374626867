package trip

import (
	"math"

	"fyne.io/fyne/v2"

	"ebbwell/app/kit/look"
	"ebbwell/app/screen/heat"
	"ebbwell/internal/climate"
	"ebbwell/internal/quantity"
)

// sumLine are the figures above a packing list; what there is none of is left out.
type sumLine struct {
	figures, names [5]*look.Label
	boxes          [5]fyne.CanvasObject
	box            *fyne.Container
}

func newSumLine(v *View) *sumLine {
	l, say := &sumLine{}, v.desk.Words.Say
	l.box = look.HBox(44)
	for i, name := range []string{say("trip.sum.powder"), say("trip.sum.salt"), say("trip.sum.gels"), say("trip.sum.bottles", bottle(v.speaker(nil))), say("trip.sum.water")} {
		l.figures[i] = look.NewLabel("", look.Second, look.Ink)
		l.names[i] = look.NewLabel(name, look.Note, look.Ink2)
		l.boxes[i] = look.VBox(0, l.figures[i], l.names[i])
		l.box.Add(l.boxes[i])
	}
	return l
}

// show shows the sums of a list.
func (l *sumLine) show(sp heat.Speaker, list climate.PackingList) {
	count := func(n int) string { return sp.Words.Number(float64(n), 0) }
	for i, sum := range []struct {
		some bool
		text string
	}{
		{list.Powder > 0, packMass(sp, list.Powder)}, {list.Salt > 0, packMass(sp, list.Salt)}, {list.Gels > 0, count(list.Gels)},
		{list.Bottles > 0, count(list.Bottles)}, {list.SafeWater > 0, packLitres(sp, float64(list.SafeWater))},
	} {
		l.figures[i].SetText(sum.text)
		look.ShowIf(l.boxes[i], sum.some)
	}
	l.box.Refresh()
}

// packMass is a mass as one shops for it, rounded up: 2 kg, 330 g.
func packMass(sp heat.Speaker, g quantity.Grams) string {
	x := float64(g)
	switch {
	case x >= 1000:
		return practical(sp, up(x/1000, 0.1), quantity.Kilogram, 1)
	case x >= 100:
		return practical(sp, up(x, 10), quantity.Gram, 0)
	}
	return practical(sp, up(x, 1), quantity.Gram, 0)
}

// packLitres is a volume as one shops for it, rounded up: 3.5 L, 7 L.
func packLitres(sp heat.Speaker, litres float64) string {
	if litres < 5 {
		return practical(sp, up(litres, 0.5), quantity.Litre, 1)
	}
	return practical(sp, up(litres, 1), quantity.Litre, 0)
}

// practical writes an amount with as many decimals as it needs; other units are
// rounded up to whole ones.
func practical(sp heat.Speaker, x float64, u quantity.Unit, decimals int) string {
	plain := sp.By
	plain.Hidden = false // a packed mass is no body mass
	shown := plain.Unit(u)
	if shown != u {
		if y, err := quantity.Convert(x, u, shown); err == nil {
			x, decimals = up(y, 1), 0
		}
	}
	if x == math.Trunc(x) {
		decimals = 0
	}
	return sp.Words.Number(x, decimals) + "\u00a0" + string(shown)
}

// up rounds up to a step, but for what arithmetic added.
func up(x, step float64) float64 { return math.Ceil(x/step-1e-9) * step }

// eachList says what each traveller carries in hand luggage.
type eachList struct {
	v     *View
	names []*look.Label
	texts []*look.Paragraph
	rows  []fyne.CanvasObject
	table *fyne.Container
	body  *look.Sheet
}

func newEachList(v *View) *eachList {
	l := &eachList{v: v, table: look.VBox(0)}
	l.body = look.NewPanel(v.desk.Words.Say("trip.each"), nil, l.table)
	return l
}

// show shows what lists leave in the hand.
func (l *eachList) show(made []packed) {
	for len(l.rows) < len(made) {
		name, text := look.NewLabel("", look.Strong, look.Ink).Shorten(), look.NewParagraph("", look.Body, look.Ink)
		row := look.VBox(0, look.Pad(6, 0, 6, 0, look.Columns(12, []look.Track{look.Share(1), look.Share(3)}, name, text)), look.NewRule())
		l.names, l.texts, l.rows = append(l.names, name), append(l.texts, text), append(l.rows, row)
		l.table.Add(row)
	}
	some := false
	for i, row := range l.rows {
		text := ""
		if i < len(made) {
			l.names[i].SetText(made[i].member.athlete.Name)
			text = l.v.carried(made[i])
			l.texts[i].SetText(text)
		}
		look.ShowIf(row, text != "")
		some = some || text != ""
	}
	look.ShowIf(l.body, some)
	refresh(l.body)
}

// carried is what a traveller has in hand luggage; empty for nothing.
func (v *View) carried(p packed) string {
	sp, t := v.speaker(nil), v.now()
	var parts []string
	if p.list.Bottles > 0 {
		parts = append(parts, sp.Words.Say("trip.each.bottles", p.list.Bottles))
	}
	for _, s := range p.list.Supplies {
		n := s.HandLuggage
		switch sourceOf(t, s) {
		case climate.Carry:
			n = s.Servings
		case climate.Buy:
			n = 0
		}
		if n > 0 {
			parts = append(parts, servingsText(sp, s, n, sp.Words.FoodWithin(s.Supply.ID, v.productName(s.Supply.ID))))
		}
	}
	return sp.Words.Dots(parts)
}

// servingsText is so many servings of a supply: "330 g maltodextrin powder", "2 × gel".
func servingsText(sp heat.Speaker, s climate.PackedSupply, n int, name string) string {
	if s.Supply.Form == climate.Salt || s.Supply.Form == climate.Powder {
		return sp.Words.AmountOf(packMass(sp, s.Supply.Serving*quantity.Grams(n)), name)
	}
	return sp.Words.Portions(float64(n), name)
}

package pantry

import (
	"ebbwell/app/kit/look"
	"ebbwell/internal/consult"
	"ebbwell/internal/fuel"
	"ebbwell/internal/quantity"
	"ebbwell/internal/sweat"
)

// result is what a product comes to, beside the fields of its label.
type result struct {
	v       *View
	figure  *look.Label
	under   *look.Label
	holds   *look.Table
	drink   *look.Paragraph
	caution *look.Caution
	box     *look.Sheet
}

// newResult makes an empty one.
func newResult(v *View) *result {
	say := v.desk.Words.Say
	r := &result{
		v: v, figure: look.NewLabel("", look.Key, look.Ink), under: look.NewLabel("", look.Note, look.Ink2).Shorten(),
		drink: look.NewParagraph("", look.Note, look.Ink2), caution: look.NewCaution("", "", nil),
	}
	r.holds = look.NewTable("pantry.result", []look.Column{
		{Title: "", Width: look.Share(1)},
		{Title: say("pantry.hundred"), Width: look.Fixed(74), Right: true, From: 240},
		{Title: say("pantry.portion"), Width: look.Fixed(74), Right: true},
	})
	r.box = look.NewSheet(look.VBox(12, look.NewLabel(say("pantry.result"), look.Strong, look.Ink),
		look.VBox(0, r.figure, r.under), r.holds, r.drink, r.caution))
	return r
}

// show follows the form. What is odd is said once something was entered.
func (r *result) show(f form, entered bool) {
	w := r.v.desk.Words
	row := rowOf(consult.ProductOf(f.record()), &f.product)
	r.holds.SetTitle(1, w.Say("pantry.in", w.Say("per."+string(row.Per))))
	what, of := row.Portion.Carbohydrate, "pantry.result.portion"
	if !what.Known {
		what, of = row.Hundred.Carbohydrate, "pantry.result."+string(row.Per)
	}
	r.figure.SetText("–")
	if what.Known {
		r.figure.SetText(w.Number(what.Value, 1) + "\u00a0" + string(quantity.Gram))
	}
	r.under.SetText(w.Say("pantry.result.carbohydrate", w.Say(of)))
	r.holds.SetRows(r.parts(row))
	r.drink.SetText("")
	if !f.blank() {
		r.drink.SetText(r.drinkWords(row))
	}
	r.caution.SetText("", "")
	if code := f.doubt(); code != "" && entered {
		r.caution.SetText(w.Say("pantry.doubt."+code+".title"), w.Say("pantry.doubt."+code))
	}
}

// parts are carbohydrate and sodium, also in mmol as the laboratory counts.
func (r *result) parts(row Row) [][]look.Cell {
	v, w := r.v, r.v.desk.Words
	mmol := func(c fuel.Content) look.Cell {
		if !c.Known {
			return look.Cell{}
		}
		return look.Cell{Text: w.Number(sweat.Millimoles(quantity.Milligrams(c.Value)), 1) + "\u00a0" + string(quantity.Millimole), Tone: look.Ink2}
	}
	portion := func(c fuel.Content, decimals int, u quantity.Unit) look.Cell {
		if row.Product.Portion.Grams <= 0 {
			return look.Cell{}
		}
		return v.content(c, decimals, u)
	}
	rows := [][]look.Cell{
		{{Text: w.Say("pantry.carbohydrate")}, v.content(row.Hundred.Carbohydrate, 1, quantity.Gram), portion(row.Portion.Carbohydrate, 1, quantity.Gram)},
		{{Text: w.Say("pantry.sodium")}, v.content(row.Hundred.Sodium, 0, quantity.Milligram), portion(row.Portion.Sodium, 0, quantity.Milligram)},
	}
	if row.Hundred.Sodium.Known {
		rows = append(rows, []look.Cell{{}, mmol(row.Hundred.Sodium), mmol(row.Portion.Sodium)})
	}
	return rows
}

// drinkWords are those of the list's sheet.
func (r *result) drinkWords(row Row) string { return (&detail{v: r.v}).drinkWords(&row) }

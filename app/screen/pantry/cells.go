package pantry

import (
	"strings"

	"ebbwell/app/kit/desk"
	"ebbwell/app/kit/look"
	"ebbwell/internal/fuel"
	"ebbwell/internal/quantity"
)

// cells are the texts of one product, in the order of [Column].
func (v *View) cells(r Row) []look.Cell {
	w := v.desk.Words
	note := func(text string) look.Cell { return look.Cell{Text: text, Tone: look.Ink2} }
	name := look.Cell{Text: v.nameOf(r.Product.Name)}
	if short, _, ok := strings.Cut(name.Text, " ("); ok {
		name.Short = []string{short}
	}
	if r.Own != nil {
		name.Style = look.Strong
	}
	portion := note("")
	if r.Product.Portion.Grams > 0 {
		portion = note(v.portionWords(r.Product))
		if short, _, ok := strings.Cut(portion.Text, ", "); ok {
			portion.Short = []string{short}
		}
	}
	return []look.Cell{
		name, note(w.Say("per." + string(r.Per))),
		v.content(r.Hundred.Carbohydrate, 1, quantity.Gram), v.content(r.Hundred.Sodium, 0, quantity.Milligram),
		v.drinkOnly(r, v.content(r.Strength, 1, quantity.PerCent)), note(v.fructose(r)),
		v.drinkOnly(r, note(v.bandWord(r))),
		portion, v.content(r.Portion.Carbohydrate, 1, quantity.Gram), v.content(r.Portion.Sodium, 0, quantity.Milligram),
		v.sourceCell(r),
	}
}

// drinkOnly leaves a cell empty for what is not drunk.
func (v *View) drinkOnly(r Row, c look.Cell) look.Cell {
	if r.Product.Form != fuel.Drink {
		return look.Cell{}
	}
	return c
}

// content is what something holds, or that nobody knows.
func (v *View) content(c fuel.Content, decimals int, u quantity.Unit) look.Cell {
	if !c.Known {
		return look.Cell{Text: v.desk.Words.Say("pantry.unknown"), Tone: look.Ink2}
	}
	return look.Cell{Text: v.desk.Words.Number(c.Value, decimals) + "\u00a0" + string(u)}
}

// fructose is the share of fructose: one number, or two where no analysis
// assigns all of the carbohydrate; empty where there is none.
func (v *View) fructose(r Row) string {
	if r.Hundred.Carbohydrate.Known && r.Hundred.Carbohydrate.Value == 0 {
		return ""
	}
	if !r.FructoseKnown {
		return v.desk.Words.Say("pantry.unknown")
	}
	return v.desk.Words.Between(quantity.Range{Low: 100 * r.Fructose.Low, High: 100 * r.Fructose.High}, 0) + "\u00a0%"
}

// bandWord is the band of the estimated osmolality.
func (v *View) bandWord(r Row) string {
	if !r.Osmolality.Known {
		return v.desk.Words.Say("pantry.unknown")
	}
	return v.desk.Words.Say("osmolality.band." + string(fuel.BandOf(r.Osmolality.Value)))
}

// sourceCell is the source with its number; with the first of its numbers, or none,
// where room is short.
func (v *View) sourceCell(r Row) look.Cell {
	o := r.Product.Origin
	c := look.Cell{Text: strings.TrimSpace(o.Source + " " + o.Number), Tone: look.Ink2}
	if r.Own != nil && o.Source == "" {
		c.Text = v.desk.Words.Say("pantry.own")
	}
	if first, _, ok := strings.Cut(o.Number, " / "); ok {
		c.Short = append(c.Short, o.Source+" "+first)
	}
	if o.Number != "" {
		c.Short = append(c.Short, o.Source)
	}
	return c
}

// portionWords is a portion: "bar, 40 g"; of a drink its volume.
func (v *View) portionWords(p fuel.Product) string {
	size := v.desk.Words.Number(p.Portion.Grams, portionDecimals(p.Portion.Grams)) + "\u00a0" + string(quantity.Gram)
	if volume := (fuel.Amount{Product: p, Grams: p.Portion.Grams}).Volume(); p.Form == fuel.Drink && volume.Known {
		size = v.by.Amount(volume.Value, quantity.Millilitre)
	}
	switch {
	case p.Portion.Name == "":
		return size
	case strings.Contains(p.Portion.Name, strings.ReplaceAll(size, "\u00a0", " ")):
		return p.Portion.Name // "500 mL bottle"
	}
	return v.desk.Words.Say("pantry.portion.of", p.Portion.Name, size)
}

// portionDecimals shows small portions to the half gram.
func portionDecimals(grams float64) int {
	if grams < 10 {
		return 1
	}
	return 0
}

// sourceWords is where a composition comes from, in full.
func (v *View) sourceWords(o fuel.Origin) string {
	var parts []string
	for _, s := range []string{o.Source, o.Number, o.Title} {
		if s != "" {
			parts = append(parts, s)
		}
	}
	return v.desk.Words.Commas(parts)
}

// sureWords says how surely the composition was read.
func (v *View) sureWords(r Row) string {
	if r.Own != nil {
		return v.desk.Words.Say("pantry.sure.own")
	}
	return desk.Sureness(v.desk.Words, r.Product.Origin.Sure)
}

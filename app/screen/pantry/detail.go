package pantry

import (
	"fyne.io/fyne/v2"

	"ebbwell/app/kit/field"
	"ebbwell/app/kit/look"
	"ebbwell/internal/evidence"
	"ebbwell/internal/fuel"
	"ebbwell/internal/quantity"
	"ebbwell/internal/record"
)

// detail is everything about the chosen product, below the list.
type detail struct {
	v   *View
	row *Row

	name    *look.Paragraph
	words   detailWords
	holds   *look.Table
	ways    detailWays
	content *fyne.Container
	box     *look.Sheet
}

// detailWords are the sentences about the product.
type detailWords struct{ form, drink, source, note *look.Paragraph }

// detailWays are what can be done with it.
type detailWays struct{ edit, correct, remove *field.Button }

// newDetail makes an empty one.
func newDetail(v *View) *detail {
	say, h := v.desk.Words.Say, v.desk.Host
	note := func() *look.Paragraph { return look.NewParagraph("", look.Note, look.Ink2) }
	d := &detail{v: v, name: look.NewParagraph("", look.Strong, look.Ink), words: detailWords{note(), note(), note(), note()}}
	d.holds = look.NewTable("pantry.holds", []look.Column{
		{Title: say("pantry.holds"), Width: look.Share(1)},
		{Title: say("pantry.hundred"), Width: look.Fixed(80), Right: true, From: 290},
		{Title: say("pantry.portion"), Width: look.Fixed(72), Right: true},
	})
	d.ways.edit = field.NewButton(h, "pantry.edit", say("pantry.edit"), field.Outline, d.own(v.edit))
	d.ways.correct = field.NewButton(h, "pantry.correct", say("pantry.correct"), field.Outline, func() {
		if d.row != nil {
			v.correct(d.row.Product)
		}
	})
	d.ways.remove = field.NewButton(h, "pantry.delete", say("pantry.delete"), field.Quiet, d.own(v.remove))
	about := look.VBox(8, look.VBox(2, d.name, d.words.form), look.HBox(8, d.ways.edit, d.ways.correct, d.ways.remove))
	from := look.VBox(6, look.NewLabel(say("pantry.source.title"), look.NoteStrong, look.Ink), d.words.source, d.words.note)
	drink := look.VBox(6, look.NewLabel(say("pantry.asdrink"), look.NoteStrong, look.Ink), d.words.drink)
	d.content = look.Panels(24, []look.Track{look.Fixed(172), look.Share(7), look.Share(7)}, about, d.holds, look.VBox(12, from, drink))
	d.box = look.NewSheet(d.content)
	return d
}

// own does something with the chosen product where it is one of the practice. A key
// may come after the product is gone: the keyboard stays on a button that is hidden.
func (d *detail) own(do func(record.Product)) func() {
	return func() {
		if d.row != nil && d.row.Own != nil {
			do(*d.row.Own)
		}
	}
}

// show follows the chosen product; nil hides the sheet.
func (d *detail) show(r *Row) {
	d.row = r
	if r == nil {
		d.box.Hide()
		return
	}
	d.box.Show()
	v, w := d.v, d.v.desk.Words
	d.name.SetText(v.nameOf(r.Product.Name))
	d.words.form.SetText(d.about(r))
	look.ShowIf(d.ways.edit, r.Own != nil)
	look.ShowIf(d.ways.remove, r.Own != nil)
	look.ShowIf(d.ways.correct, r.Own == nil)
	d.holds.SetTitle(1, w.Say("pantry.in", w.Say("per."+string(r.Per))))
	d.holds.Without(2, r.Product.Portion.Grams <= 0)
	d.holds.SetRows(d.parts(r))
	d.words.source.SetText(w.Say("pantry.source.words", v.sourceOr(r), v.sureWords(*r)))
	d.words.note.SetText(w.FoodNote(r.Product.ID, r.Product.Origin.Note))
	look.ShowIf(d.words.note, r.Product.Origin.Note != "")
	d.words.drink.SetText(d.drinkWords(r))
	d.content.Refresh()
}

// about is form, portion and what the product stands in for.
func (d *detail) about(r *Row) string {
	w := d.v.desk.Words
	text := w.Say("form." + string(r.Product.Form))
	if r.Product.Portion.Grams > 0 {
		text = w.Say("pantry.about", text, d.v.portionWords(r.Product))
	}
	if r.Own != nil && r.Own.Replaces != "" {
		text += "\n" + d.v.replacesWords(*r.Own)
	}
	return text
}

// replacesWords names the generic product that an own one stands in for.
func (v *View) replacesWords(p record.Product) string {
	name := p.Replaces
	if generic, err := fuel.Generic(); err == nil {
		if g, ok := generic.Find(p.Replaces); ok {
			name = v.desk.Words.Food(g.ID, g.Name)
		}
	}
	return v.desk.Words.Say("pantry.replaces", name)
}

// sourceOr is the source, or that none was written down.
func (v *View) sourceOr(r *Row) string {
	if s := v.sourceWords(r.Product.Origin); s != "" {
		return s
	}
	return v.desk.Words.Say("pantry.source.none")
}

// parts are the rows of what the product holds.
func (d *detail) parts(r *Row) [][]look.Cell {
	v, w := d.v, d.v.desk.Words
	whole := 1.0
	if r.Per == fuel.Per100Millilitres {
		whole = r.Product.Density.Value
	}
	portion := fuel.Content{}
	if r.Product.Portion.Grams > 0 {
		portion = fuel.Of(r.Product.Portion.Grams / 100)
	}
	line := func(key string, c fuel.Content, decimals int, u quantity.Unit) []look.Cell {
		in := look.Cell{}
		if portion.Known {
			in = v.content(c.Times(portion.Value), decimals, u)
		}
		return []look.Cell{{Text: w.Say(key)}, v.content(c.Times(whole), decimals, u), in}
	}
	c := r.Product.Per100
	return [][]look.Cell{
		line("pantry.carbohydrate", c.AvailableCarbohydrate(), 1, quantity.Gram),
		line("pantry.sugars", c.Sugars.Total, 1, quantity.Gram),
		line("pantry.sodium", c.Sodium, 0, quantity.Milligram),
		line("pantry.potassium", c.Potassium, 0, quantity.Milligram),
		line("pantry.energy", c.Energy, 0, quantity.Kilocalorie),
	}
}

// drinkWords are strength, fructose and osmolality with the set its band is
// from.
func (d *detail) drinkWords(r *Row) string {
	v, w := d.v, d.v.desk.Words
	text := ""
	if r.Product.Form == fuel.Drink && r.Strength.Known && quantity.Round(r.Strength.Value, 1) > 0 {
		text = w.Say("pantry.strength.words", w.Number(r.Strength.Value, 1), w.Number(fuel.Strength().Range.Low, 0), w.Number(fuel.Strength().Range.High, 0)) + " "
	}
	if share := v.fructose(*r); share != "" && r.FructoseKnown {
		text += w.Say("pantry.fructose.words", share) + " "
	}
	switch {
	case r.Product.Form == fuel.Powder:
		return text + w.Say("pantry.powder.words")
	case r.Product.Form != fuel.Drink:
		return text + w.Say("pantry.notdrink")
	case !r.Osmolality.Known:
		return text + w.Say("pantry.osmolality.unknown")
	}
	return text + v.osmolalityWords(*r)
}

// osmolalityWords is an osmolality, estimated or stated, with its band and where
// the band is from.
func (v *View) osmolalityWords(r Row) string {
	w, x := v.desk.Words, r.Osmolality.Value
	key, figure := "pantry.osmolality.words", quantity.RoundTo(x, 10)
	if r.Stated() {
		key, figure = "pantry.osmolality.stated", x
	}
	set := ""
	if e, ok := evidence.Find("osmolality.isotonic.low"); ok {
		set = e.Source.Name(w.Say)
	}
	return w.Say(key, w.Number(figure, 0), w.Say("osmolality.band."+string(fuel.BandOf(x))),
		w.Number(evidence.IsotonicLow, 0), w.Number(evidence.IsotonicHigh, 0), set)
}

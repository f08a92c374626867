package pantry

import (
	"context"
	"errors"
	"strconv"

	"fyne.io/fyne/v2"

	"ebbwell/app/kit/field"
	"ebbwell/app/kit/look"
	"ebbwell/internal/evidence"
	"ebbwell/internal/fuel"
	"ebbwell/internal/quantity"
	"ebbwell/internal/record"
	"ebbwell/internal/store"
	"ebbwell/internal/sweat"
)

// ingredients is how many lines a drink is made up of.
const ingredients = 4

// mixed is a drink being made up: powders, sugar and salt to a volume.
type mixed struct {
	parts       [ingredients]fuel.Amount
	millilitres float64
}

// errNothing: there is nothing to make up yet.
var errNothing = errors.New("nothing to make up")

// drink is the finished drink.
func (m mixed) drink(id, name string) (fuel.Product, error) {
	r := fuel.Recipe{ID: id, Name: name, Litres: m.millilitres / 1000}
	for _, a := range m.parts {
		if a.Product.ID != "" && a.Grams > 0 {
			r.Parts = append(r.Parts, a)
		}
	}
	if len(r.Parts) == 0 || m.millilitres <= 0 {
		return fuel.Product{}, errNothing
	}
	return r.Drink()
}

// mixer is the dialog in which a drink is made up.
type mixer struct {
	v       *View
	state   mixed
	figure  *look.Label
	words   *look.Paragraph
	caution *look.Caution
	name    *field.Line
	dialog  *field.Dialog
}

// askPowder opens the dialog; a powder chosen in the list is its first line.
func (v *View) askPowder() {
	say, h := v.desk.Words.Say, v.desk.Host
	m := &mixer{
		v: v, figure: look.NewLabel("", look.Key, look.Ink), words: look.NewParagraph("", look.Note, look.Ink2),
		caution: look.NewCaution("", "", nil), name: field.NewLine(h, "pantry.mix.name", 120),
	}
	m.state.millilitres = evidence.UsualBottle
	m.name.SetPlaceholder(say("pantry.mix.name"))
	rows := []fyne.CanvasObject{look.HeaderRow(12, m.columns())}
	for i := range ingredients {
		rows = append(rows, m.line(i))
	}
	volume := field.NewNumber(h, "pantry.mix.volume", evidence.MadeUpVolume, quantity.Millilitre)
	volume.SetShown(v.by.Unit(quantity.Millilitre))
	volume.SetValue(m.state.millilitres)
	volume.OnChanged = func(r field.Reading) {
		m.state.millilitres = 0
		if r.Usable() {
			m.state.millilitres = r.Value
		}
		m.show()
	}
	upto := look.Columns(12, []look.Track{look.Share(1), look.Fixed(120)}, look.NewLabel(say("pantry.mix.upto"), look.Body, look.Ink2), volume)
	content := look.VBox(12, look.VBox(0, rows...), look.Pad(0, 8, 0, 8, upto), look.VBox(2, m.figure, m.words), m.caution, m.name)
	m.show()
	m.dialog = h.Ask(v.canvas(), field.Question{
		Name: "pantry.mix", Title: say("pantry.mix"), Sentence: say("pantry.mix.sentence"), Content: content, Width: 620,
		Actions: []field.Action{
			{Name: "no", Text: say("pantry.mix.close")},
			{Name: "yes", Text: say("pantry.mix.keep"), Kind: field.Primary, Do: m.keep},
		},
	})
}

func (m *mixer) columns() []look.Column {
	say := m.v.desk.Words.Say
	return []look.Column{{Title: say("pantry.mix.what"), Width: look.Share(1)}, {Title: say("pantry.mix.grams"), Width: look.Fixed(120), Right: true}}
}

// line is one ingredient.
func (m *mixer) line(i int) fyne.CanvasObject {
	v, begin := m.v, "pantry.mix."+strconv.Itoa(i+1)+"."
	what := field.NewSuggest(v.desk.Host, begin+"what", false, v.powders).Choosy()
	grams := field.NewNumber(v.desk.Host, begin+"grams", evidence.LabelGrams, quantity.Gram)
	take := func(id string) {
		m.state.parts[i].Product = fuel.Product{}
		if p, ok := v.desk.Products().Find(record.ID(id)); ok && id != "" {
			m.state.parts[i].Product = p
		}
		m.show()
	}
	what.OnChosen = func(o field.Option) { take(o.Key) }
	what.OnChanged = func(string) {
		o, _ := what.Taken()
		take(o.Key)
	}
	grams.OnChanged = func(r field.Reading) {
		m.state.parts[i].Grams = 0
		if r.Usable() {
			m.state.parts[i].Grams = r.Value
		}
		m.show()
	}
	if p, ok := v.chosenPowder(); ok && i == 0 {
		what.Set(field.Option{Key: p.ID, Text: p.Name})
		m.state.parts[i].Product = p
	}
	return look.FieldRow(12, m.columns(), what, grams)
}

// chosenPowder is the powder chosen in the list.
func (v *View) chosenPowder() (fuel.Product, bool) {
	p, ok := v.desk.Products().Find(v.chosen())
	return p, ok && p.Form == fuel.Powder
}

// powders are what can be dissolved: powders, and what is poured in.
func (v *View) powders(text string) []field.Option {
	var options []field.Option
	for _, p := range v.desk.Products().Products() {
		if p.Form == fuel.Powder || p.Form == fuel.SemiSolid {
			options = append(options, field.Option{Key: p.ID, Text: p.Name, Note: v.desk.Words.Say("form." + string(p.Form))})
		}
	}
	return field.Matching(options, text)
}

// show says what the drink comes to.
func (m *mixer) show() {
	w := m.v.desk.Words
	m.figure.SetText("–")
	m.words.SetText(w.Say("pantry.mix.empty"))
	m.caution.SetText("", "")
	p, err := m.state.drink("mixed", "mixed")
	switch {
	case errors.Is(err, fuel.ErrTooStrong):
		m.caution.SetText(w.Say("pantry.mix.toostrong.title"), w.Say("pantry.mix.toostrong"))
		return
	case err != nil:
		return
	}
	row := rowOf(p, nil)
	if row.Strength.Known {
		m.figure.SetText(w.Number(row.Strength.Value, 1) + "\u00a0" + string(quantity.PerCent))
	}
	text := (&detail{v: m.v}).drinkWords(&row)
	if sodium := row.Hundred.Sodium; sodium.Known {
		mmol := sweat.Millimoles(quantity.Milligrams(10 * sodium.Value))
		text = w.Say("pantry.mix.sodium", w.Number(10*sodium.Value, 0), w.Number(mmol, 0)) + " " + text
	}
	m.words.SetText(text)
	if row.Strength.Value > evidence.StrengthHigh {
		m.caution.SetText(w.Say("pantry.doubt.strong.title"), w.Say("pantry.doubt.strong"))
	}
}

// keep keeps the drink as a product of one's own.
func (m *mixer) keep() (stay bool) {
	w := m.v.desk.Words
	p, err := m.state.drink("mixed", m.name.Text())
	switch {
	case err != nil:
		m.caution.SetText(w.Say("pantry.mix.nothing"), "")
		return true
	case m.name.Text() == "":
		m.name.SetTrouble(field.Wrong, w.Say("pantry.mix.needsname"))
		m.name.Focus()
		return true
	}
	own := copyOf(p, m.recipe())
	own.Replaces, own.PortionName = "", ""
	if _, err := m.v.desk.Store.SaveProduct(context.Background(), own, store.Edit{}); err != nil {
		m.v.desk.Trouble(err)
		return true
	}
	m.v.reload()
	m.v.show(own.ID)
	m.v.desk.Say(w.Say("pantry.mix.kept", own.Name), "", nil)
	return false
}

// recipe says how the drink is made, as its source.
func (m *mixer) recipe() string {
	w := m.v.desk.Words
	var parts []string
	for _, a := range m.state.parts {
		if a.Product.ID != "" && a.Grams > 0 {
			parts = append(parts, w.Say("pantry.mix.part", w.Number(a.Grams, 1)+"\u00a0"+string(quantity.Gram), a.Product.Name))
		}
	}
	return w.Say("pantry.mix.recipe", w.List(parts), m.v.by.Amount(m.state.millilitres, quantity.Millilitre))
}

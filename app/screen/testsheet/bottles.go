package testsheet

import (
	"strconv"

	"fyne.io/fyne/v2"

	"ebbwell/app/kit/bind"
	"ebbwell/app/kit/field"
	"ebbwell/app/kit/look"
	"ebbwell/internal/consult"
	"ebbwell/internal/fuel"
	"ebbwell/internal/quantity"
	"ebbwell/internal/record"
)

// bottles is the second part: what was drunk, and below it what was eaten.
type bottles struct {
	b       *binder
	columns []look.Column
	rows    []*bottleRow
	table   *fyne.Container
	nothing *field.Check
	next    *field.Button
	foods   *foods
	body    fyne.CanvasObject
}

// newBottles builds the part.
func newBottles(b *binder) *bottles {
	say := b.Say
	p := &bottles{b: b, table: look.VBox(0), foods: newFoods(b)}
	p.columns = []look.Column{
		{Width: look.Fixed(16), Right: true},
		{Title: say("testsheet.bottle.what"), Width: look.Share(1)},
		{Title: say("testsheet.bottle.before"), Width: look.Fixed(74), Right: true},
		{Title: say("testsheet.bottle.after"), Width: look.Fixed(74), Right: true},
		{Title: say("testsheet.bottle.poured"), Width: look.Fixed(96), Right: true},
		{Title: say("testsheet.bottle.drunk", string(b.By.Unit(quantity.Millilitre))), Width: look.Fixed(78), Right: true},
		{Width: look.Fixed(max(40, field.NewLink(b.Desk.Host, "", say("testsheet.bottle.more"), func() {}).MinSize().Width/look.Scaled(1)))},
	}
	p.nothing = b.Check(PartBottles, "testsheet.nothing", say("testsheet.nothing"), func(t record.Test) bool { return t.Loss.NothingDrunk },
		func(s *sheet, on bool) { s.Record.Loss.NothingDrunk = on })
	p.next = field.NewButton(b.Desk.Host, "testsheet.bottle.next", say("testsheet.bottle.next"), field.Outline, func() { p.focusEmpty() })
	p.next.SetHint(say("testsheet.bottle.next.key"))
	p.grow(1)
	foot := look.HBox(18, p.next, p.nothing)
	top := look.VBox(0, look.HeaderRow(bottleGap, p.columns), p.table)
	p.body = look.VBox(paneGap, panel(say("testsheet.bottles"), say("testsheet.bottles.note"), top, foot), p.foods.body)
	return p
}

// bottleGap is the room between the columns, in px.
const bottleGap float32 = 8

// grow makes lines up to a number of them.
func (p *bottles) grow(to int) {
	for len(p.rows) < to {
		r := newBottleRow(p, len(p.rows))
		p.rows = append(p.rows, r)
		p.table.Add(r.box)
	}
}

// focusEmpty goes to the empty line behind the last bottle.
func (p *bottles) focusEmpty() {
	if n := len(p.b.Doc.Now().Record.Bottles); n < len(p.rows) {
		p.rows[n].what.Focus()
	}
}

// show follows the sheet.
func (p *bottles) show(s sheet, f consult.Findings, sp speaker, wrong []trouble) {
	n, open := len(s.Record.Bottles), s.Record.State == record.TestOpen
	wanted := n
	if open {
		wanted++
	}
	p.grow(wanted)
	for i, r := range p.rows {
		look.ShowIf(r.box, i < wanted)
		r.show(s, f, sp, wrong)
	}
	look.ShowIf(p.next, open)
	look.ShowIf(p.nothing, n == 0 || s.Record.Loss.NothingDrunk)
	p.foods.show(s, f)
}

// bottleRow is one bottle: a line of its weighings, below it what else may
// have happened to it.
type bottleRow struct {
	p      *bottles
	i      int
	what   *field.Suggest
	poured *field.Number
	cells  []*field.Number
	drunk  *look.Label
	more   *field.Link
	detail *bottleDetail
	note   *rowNote
	box    *fyne.Container
}

// newBottleRow makes the i-th line.
func newBottleRow(p *bottles, i int) *bottleRow {
	r := &bottleRow{p: p, i: i, drunk: look.NewLabel("", look.Body, look.Ink2).Right(), note: newRowNote()}
	b := p.b
	r.what = productField(b, PartBottles, r.name("what"), drinks, func(t *record.Test, grow bool) *productPlace {
		if bottle := bottleAt(t, i, grow); bottle != nil {
			return &productPlace{&bottle.ProductID, &bottle.Name}
		}
		return nil
	})
	r.what.SetPlaceholder(b.Say("testsheet.bottle.water"))
	r.what.SetSpoken(b.Say("field.spoken.row", b.Say("testsheet.field.bottles.productID"), strconv.Itoa(i+1)))
	before, after := r.number("before"), r.number("after")
	r.poured = r.number("poured")
	r.poured.Also(quantity.Millilitre, r.density)
	r.poured.OnEnter = func(field.Reading) { p.focusAfter(i) }
	r.cells = []*field.Number{before, after, r.poured}
	r.more = field.NewLink(b.Desk.Host, r.name("more"), b.Say("testsheet.bottle.more"), func() { r.detail.turn() })
	r.more.PassBy()
	r.detail = newBottleDetail(r)
	number := look.NewLabel(b.Desk.Words.Number(float64(i+1), 0), look.Body, look.Ink).Right()
	line := look.FieldRow(bottleGap, p.columns, number, r.what, before, after, r.poured, r.drunk, r.more)
	inset := look.Scaled(16) + bottleGap + 8
	r.box = look.VBox(0, line, look.Pad(0, 8, 0, inset, look.VBox(0, r.note.box, r.detail.box)))
	return r
}

// name is the name of one of the line's controls.
func (r *bottleRow) name(what string) string { return bottleControl(r.i+1, what) }

// number binds one of the numbers of the bottle; what is wrong with it stands below
// the line, its unit above the column.
func (r *bottleRow) number(name string) *field.Number {
	f, _ := record.SheetFieldOf("bottles.*." + name)
	n := bind.SheetRowNumber(r.p.b, f, record.SheetRow{Number: r.i + 1}, r.at)
	n.OnProblem = func(field.Weight, string) {}
	if f.Unit == quantity.Gram {
		n.SetSuffix("")
	}
	return n
}

// at finds the bottle.
func (r *bottleRow) at(t *record.Test, grow bool) (any, string) {
	bottle := bottleAt(t, r.i, grow)
	if bottle == nil {
		return nil, ""
	}
	return bottle, "bottles." + string(bottle.ID)
}

// density is how many grams a millilitre of what is in the bottle weighs; 0 where
// nobody knows.
func (r *bottleRow) density() float64 {
	s := r.p.b.Doc.Now()
	bottle := bottleAt(&s.Record, r.i, false)
	id := consult.Water
	if bottle != nil {
		id = bottle.ProductID
	}
	p, ok := r.p.b.Desk.Products().Find(id)
	if !ok || !p.Density.Known {
		return 0
	}
	return p.Density.Value
}

// show follows the sheet.
func (r *bottleRow) show(s sheet, f consult.Findings, sp speaker, wrong []trouble) {
	bottle := bottleAt(&s.Record, r.i, false)
	look.ShowIf(r.more, bottle != nil && s.Record.State == record.TestOpen)
	r.drunk.SetText(r.volume(bottle, f))
	if bottle != nil && r.p.b.Typing() != r.name("what") && r.what.Text() == "" && bottle.ProductID == consult.Water {
		// A bottle begun by its weight holds water until something else is said.
		if water, ok := r.p.b.Desk.Products().Find(consult.Water); ok {
			r.what.Set(field.Option{Key: water.ID, Text: water.Name})
		}
	}
	r.note.set(r.words(s, sp, wrong))
	r.detail.show(bottle, s)
}

// volume is what was drunk of the bottle, in words where it is not known yet.
func (r *bottleRow) volume(bottle *record.Bottle, f consult.Findings) string {
	b := r.p.b
	if bottle == nil {
		return ""
	}
	if bottle.Use == record.UsePoured {
		return b.Say("testsheet.bottle.pouredover")
	}
	for _, d := range f.Sweat.Bottles {
		switch {
		case d.Item != r.i+1:
		case !d.Known:
			return b.Say("testsheet.value.none")
		case d.Bounds.Width() > 0:
			low, high := b.By.Number(d.Bounds.Low, quantity.Millilitre), b.By.Number(d.Bounds.High, quantity.Millilitre)
			return low + "–" + high
		default:
			return b.By.Number(d.Drunk, quantity.Millilitre)
		}
	}
	return ""
}

// words say what is wrong or odd in the line.
func (r *bottleRow) words(s sheet, sp speaker, wrong []trouble) string {
	for _, w := range wrong {
		if w.bottle == r.i+1 && w.refused() {
			title, sentence := sp.trouble(s.Record, w)
			return title + " " + sentence
		}
	}
	if r.i >= len(s.Record.Bottles) {
		return ""
	}
	for _, n := range append(r.cells, r.detail.numbers()...) {
		if _, text := n.Trouble(); text != "" {
			return text
		}
	}
	if product := s.Record.Bottles[r.i]; product.ProductID == "" && product.Name != "" {
		return r.p.b.Say("testsheet.product.unknown")
	}
	return ""
}

// focusAfter goes to the line after one, or to the next field.
func (p *bottles) focusAfter(i int) {
	if i+1 < len(p.rows) && p.rows[i+1].box.Visible() {
		p.rows[i+1].what.Focus()
	}
}

// productPlace is where a product stands in a record: its id, and its name
// where nothing in the list is meant.
type productPlace struct {
	id   *record.ID
	name *string
}

// drinks and eaten list what there is to drink and to eat.
func drinks(p *consult.Pantry) []fuel.Product { return p.Drinks() }

func eaten(p *consult.Pantry) []fuel.Product { return p.Foods() }

// productField is the name of a product, with matches from the list; what is
// not in it is kept as typed.
func productField(b *binder, part, name string, of func(*consult.Pantry) []fuel.Product, place func(t *record.Test, grow bool) *productPlace) *field.Suggest {
	f := b.Suggest(part, name, func(text string) []field.Option {
		var list []field.Option
		for _, p := range of(b.Desk.Products()) {
			list = append(list, field.Option{Key: p.ID, Text: p.Name, Note: productNote(b, p)})
		}
		return field.Matching(list, text)
	}, func(t record.Test) field.Option {
		at := place(&t, false)
		if at == nil {
			return field.Option{}
		}
		if p, ok := b.Desk.Products().Find(*at.id); ok {
			return field.Option{Key: p.ID, Text: p.Name}
		}
		return field.Option{Text: *at.name}
	}, func(t *record.Test, o field.Option) {
		at := place(t, true)
		*at.id, *at.name = record.ID(o.Key), o.Text
	}).Choosy()
	f.SetLeast(100)
	return f
}

// productNote is what a list says beside a product.
func productNote(b *binder, p fuel.Product) string {
	c := p.Per100.AvailableCarbohydrate()
	if !c.Known {
		return ""
	}
	return b.Say("testsheet.product.carbohydrate", b.Desk.Words.Number(c.Value, 0))
}

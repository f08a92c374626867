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

// foods is what was eaten in the session.
type foods struct {
	b       *binder
	columns []look.Column
	rows    []*foodRow
	table   *fyne.Container
	body    fyne.CanvasObject
}

// foodRow is one food.
type foodRow struct {
	what                 *field.Suggest
	portions, mass       *field.Number
	carbohydrate, sodium *look.Label
	remove               *field.Link
	note                 *rowNote
	box                  *fyne.Container
}

// newFoods builds the sheet of foods.
func newFoods(b *binder) *foods {
	say := b.Say
	p := &foods{b: b, table: look.VBox(0)}
	p.columns = []look.Column{
		{Title: say("testsheet.food.what"), Width: look.Share(1)},
		{Title: say("testsheet.food.portions"), Width: look.Fixed(72), Right: true},
		{Title: say("testsheet.food.mass"), Width: look.Fixed(74), Right: true},
		{Title: say("testsheet.food.carbohydrate"), Width: look.Fixed(84), Right: true},
		{Title: say("testsheet.food.sodium"), Width: look.Fixed(70), Right: true},
		{Width: look.Fixed(52)},
	}
	p.grow(1)
	p.body = panel(say("testsheet.foods"), "", look.VBox(0, look.HeaderRow(bottleGap, p.columns), p.table),
		look.NewParagraph(say("testsheet.foods.note"), look.Note, look.Ink2))
	return p
}

// grow makes lines up to a number of them.
func (p *foods) grow(to int) {
	for len(p.rows) < to {
		r := p.row(len(p.rows))
		p.rows = append(p.rows, r)
		p.table.Add(r.box)
	}
}

// row makes the i-th line.
func (p *foods) row(i int) *foodRow {
	b, begin := p.b, "testsheet.food."+strconv.Itoa(i+1)+"."
	right := func() *look.Label { return look.NewLabel("", look.Body, look.Ink2).Right() }
	r := &foodRow{carbohydrate: right(), sodium: right(), note: newRowNote()}
	r.what = productField(b, PartBottles, begin+"what", eaten, func(t *record.Test, grow bool) *productPlace {
		if food := foodAt(t, i, grow); food != nil {
			return &productPlace{&food.ProductID, &food.Name}
		}
		return nil
	})
	r.what.SetPlaceholder(b.Say("testsheet.food.type"))
	r.what.SetSpoken(b.Say("field.spoken.row", b.Say("testsheet.field.foods.productID"), strconv.Itoa(i+1)))
	number := func(name string) *field.Number {
		f, _ := record.SheetFieldOf("foods.*." + name)
		n := bind.SheetRowNumber(b, f, record.SheetRow{Number: i + 1}, func(t *record.Test, grow bool) (any, string) {
			if food := foodAt(t, i, grow); food != nil {
				return food, "foods." + string(food.ID)
			}
			return nil, ""
		})
		n.SetSuffix("")
		n.OnProblem = func(field.Weight, string) {}
		return n
	}
	r.portions, r.mass = number("portions"), number("mass")
	r.portions.SetFormat(b.Desk.Words.Half)
	r.mass.OnEnter = func(field.Reading) {
		if i+1 < len(p.rows) && p.rows[i+1].box.Visible() {
			p.rows[i+1].what.Focus()
		}
	}
	r.remove = field.NewLink(b.Desk.Host, begin+"remove", b.Say("testsheet.food.remove"), func() { p.remove(i) })
	r.remove.PassBy()
	r.box = look.VBox(0, look.FieldRow(bottleGap, p.columns, r.what, r.portions, r.mass, r.carbohydrate, r.sodium, r.remove), look.Pad(0, 8, 0, 8, look.VBox(0, r.note.box)))
	return r
}

// remove takes a food out.
func (p *foods) remove(i int) {
	b := p.b
	b.Pick("testsheet.food.remove", func(s *sheet) {
		forget(s, "foods."+string(s.Record.Foods[i].ID))
		removeFood(&s.Record, i)
	})
	b.Show()
	b.Desk.Offer(b.Say("testsheet.food.removed", strconv.Itoa(i+1)), b.Say("testsheet.undo"), func() { b.Undo() })
}

// show follows the sheet.
func (p *foods) show(s sheet, f consult.Findings) {
	open := s.Record.State == record.TestOpen
	wanted := len(s.Record.Foods)
	if open {
		wanted++
	}
	p.grow(wanted)
	for i, r := range p.rows {
		look.ShowIf(r.box, i < wanted)
		look.ShowIf(r.remove, open && i < len(s.Record.Foods))
		p.showRow(r, i, s, f)
	}
}

// showRow shows what a food held.
func (p *foods) showRow(r *foodRow, i int, s sheet, f consult.Findings) {
	r.carbohydrate.SetText("")
	r.sodium.SetText("")
	note := ""
	for _, part := range f.Intake.Foods {
		if part.Item != i+1 || !part.Known {
			continue
		}
		r.carbohydrate.SetText(p.content(part.Carbohydrate, quantity.Gram))
		r.sodium.SetText(p.content(part.Sodium, quantity.Milligram))
	}
	if i < len(s.Record.Foods) {
		for _, n := range []*field.Number{r.portions, r.mass} {
			if _, text := n.Trouble(); text != "" {
				note = text
			}
		}
		if food := s.Record.Foods[i]; note == "" && food.ProductID == "" && food.Name != "" {
			note = p.b.Say("testsheet.product.unknown")
		}
	}
	r.note.set(note)
}

// content is what a food held, or that it is not known.
func (p *foods) content(c fuel.Content, u quantity.Unit) string {
	if !c.Known {
		return p.b.Say("testsheet.value.unknown")
	}
	return p.b.By.Amount(c.Value, u)
}

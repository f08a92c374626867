package pantry

import (
	"fyne.io/fyne/v2"

	"ebbwell/app/kit/bind"
	"ebbwell/app/kit/field"
	"ebbwell/app/kit/look"
	"ebbwell/internal/evidence"
	"ebbwell/internal/fuel"
	"ebbwell/internal/quantity"
	"ebbwell/internal/record"
)

// editor is one product of the practitioner's own, as its label prints it.
type editor struct {
	v  *View
	id record.ID
	// fresh is a product that was not kept before.
	fresh  bool
	b      *bind.Binder[form]
	rows   editorRows
	result *result
	done   *field.Button
	remove *field.Button
	box    fyne.CanvasObject
}

// editorRows are those that come and go with the form of the product and the
// kind of its label.
type editorRows struct {
	per              *field.Toggle
	volume, mass     fyne.CanvasObject
	density          *field.Number
	available, total fyne.CanvasObject
	salt, sodium     fyne.CanvasObject
	osmolality       fyne.CanvasObject
}

// newEditor opens a product.
func newEditor(v *View, p record.Product) (*editor, error) {
	d := v.desk
	doc, err := bind.Open(d, bind.Kind[form]{
		Ref: record.Ref{Kind: record.KindProduct, ID: p.ID}, Clone: func(f form) form { return f },
		Meta: func(f *form) *record.Meta { return &f.product.Meta }, Save: keep(d.Store),
	}, formOf(p, v.by.US))
	if err != nil {
		return nil, err
	}
	e := &editor{v: v, id: p.ID, fresh: p.CreatedAt.IsZero(), b: bind.New(d, v.by, doc)}
	e.b.OnChange = e.follow
	say, h := d.Words.Say, d.Host
	e.done = field.NewButton(h, "pantry.done", say("pantry.done"), field.Primary, v.back)
	e.remove = field.NewButton(h, "pantry.remove", say("pantry.delete"), field.Outline, func() {
		now := e.now().record()
		v.back()
		v.remove(now)
	})
	e.result = newResult(v)
	e.build()
	e.b.Show()
	e.follow()
	return e, nil
}

// now is the product as it stands.
func (e *editor) now() form { return e.b.Doc.Now().Record }

// kept reports whether there is anything of it in the records.
func (e *editor) kept() bool { return !e.fresh || e.b.Doc.CanUndo() }

// under says what the product is.
func (e *editor) under() string {
	p := e.now().product
	if p.Replaces != "" {
		return e.v.replacesWords(p)
	}
	return e.v.desk.Words.Say("pantry.ownproduct")
}

// actions are what can be done with it.
func (e *editor) actions() []fyne.CanvasObject {
	if !e.kept() {
		return []fyne.CanvasObject{e.done}
	}
	return []fyne.CanvasObject{e.remove, e.done}
}

// build makes the fields.
func (e *editor) build() {
	say := e.v.desk.Words.Say
	label := e.panel(say("pantry.label"), say("pantry.label.note"), e.about(), look.NewRule(), e.figures())
	rest := e.panel(say("pantry.more"), say("pantry.more.note"), e.sugars(), look.NewRule(), e.origin())
	fields := look.NewScroll(look.Pad(0, 8, 20, 0, look.VBox(14, label, rest)))
	e.box = look.Pad(14, 0, 0, 0, look.Panels(14, []look.Track{look.Share(13), look.Share(8)}, fields,
		look.NewScroll(look.Pad(0, 0, 20, 0, e.result.box))))
}

// panel is a sheet with a heading and a note.
func (e *editor) panel(title, note string, body ...fyne.CanvasObject) fyne.CanvasObject {
	head := []fyne.CanvasObject{look.NewLabel(title, look.Strong, look.Ink), look.NewParagraph(note, look.Note, look.Ink2)}
	return look.NewSheet(look.VBox(10, append([]fyne.CanvasObject{look.VBox(2, head...)}, body...)...))
}

// entry is a field with its words.
func (e *editor) entry(key string, f fyne.CanvasObject) look.Entry {
	return look.NewEntry(e.v.desk.Words.Say(key), f)
}

// about is what the product is.
func (e *editor) about() fyne.CanvasObject {
	b := e.b
	name := b.Line("", "pantry.edit.name", 120, func(f *form) *string { return &f.product.Name })
	kind := b.Choice("", "pantry.edit.form", b.Options("form.", string(fuel.Drink), string(fuel.Powder), string(fuel.Gel), string(fuel.Solid), string(fuel.SemiSolid)), bind.Word[form]{
		Get: func(f form) string { return f.product.Form },
		Set: func(f *form, word string) { *f = f.taken(fuel.Form(word)) },
	})
	kind.OnChosen = e.relaid(kind.OnChosen)
	portion := b.Line("", "pantry.edit.portion", 60, func(f *form) *string { return &f.product.PortionName })
	portion.SetPlaceholder(b.Say("pantry.portion.example"))
	volume := e.number("volume", evidence.PortionVolume, quantity.Millilitre, "portionMass", held(func(f *form) *record.Number { return &f.volume }))
	mass := e.number("mass", evidence.PortionMass, quantity.Gram, "portionMass", held(func(f *form) *record.Number { return &f.mass }))
	density := e.number("density", evidence.Density, quantity.GramPerMillilitre, "density", held(func(f *form) *record.Number { return &f.density }))
	density.SetFormat(func(x float64) string { return e.v.desk.Words.Number(x, 3) })
	e.rows.volume, e.rows.mass, e.rows.density = volume, mass, density
	return look.NewForm(
		e.entry("pantry.edit.name", name).Wide(), e.entry("pantry.edit.form", kind), e.entry("pantry.edit.density", density),
		e.entry("pantry.edit.portion", portion), e.entry("pantry.edit.size", volume), e.entry("pantry.edit.size", mass))
}

// held writes a number by which the figures are read; what they came to before
// is remembered.
func held(of func(f *form) *record.Number) func(f *form, grow bool) *record.Number {
	return func(f *form, grow bool) *record.Number {
		if grow {
			f.hold()
		}
		return of(f)
	}
}

// printed is a number of the label as it stands there.
func printed(of func(f *form) *record.Number) func(f *form, grow bool) *record.Number {
	return func(f *form, _ bool) *record.Number { return of(f) }
}

// number binds a number. One beyond its limits is not calculated with: what was
// typed is kept as text.
func (e *editor) number(name string, f evidence.Field, u quantity.Unit, path string, at func(f *form, grow bool) *record.Number) *field.Number {
	n := e.b.Number("", "pantry.edit."+name, f, u, func(r *form, grow bool) (*record.Number, string) { return at(r, grow), path })
	n.SetFormat(func(x float64) string { return e.v.desk.Words.Number(x, asPrinted(x)) })
	put := n.OnChanged
	n.OnChanged = func(r field.Reading) {
		if r.State == field.Refused {
			r.State = field.Unreadable
		}
		put(r)
	}
	return n
}

// asPrinted is how many decimals a figure is shown with: as many as it needs,
// three at most, and no more than three digits that mean something. A figure
// that was worked out from another amount has more of them than any label.
func asPrinted(x float64) int {
	most := 3
	switch {
	case x >= 100:
		most = 0
	case x >= 10:
		most = 1
	case x >= 1:
		most = 2
	}
	for d := range most {
		if diff := quantity.Round(x, d) - x; diff < 1e-9 && diff > -1e-9 {
			return d
		}
	}
	return most
}

// relaid shows all fields anew after a choice that turns the figures round.
func (e *editor) relaid(choose func(string)) func(string) {
	return func(key string) {
		choose(key)
		e.b.Show()
		e.follow()
	}
}

// follow shows what the product comes to, and the rows its form needs.
func (e *editor) follow() {
	f := e.now()
	drink := f.product.Form == string(fuel.Drink)
	look.ShowIf(e.rows.volume, drink)
	look.ShowIf(e.rows.mass, !drink)
	look.ShowIf(e.rows.density, drink || f.product.Form == string(fuel.Gel))
	look.ShowIf(e.rows.osmolality, drink)
	look.ShowIf(e.rows.available, !f.american)
	look.ShowIf(e.rows.salt, !f.american)
	look.ShowIf(e.rows.total, f.american)
	look.ShowIf(e.rows.sodium, f.american)
	e.rows.per.Choose(string(f.per))
	e.rows.density.SetPlaceholder("")
	if weight := f.labelOf(f.per, f.printed()).Weight(); drink && weight.Known {
		e.rows.density.SetPlaceholder(e.v.desk.Words.Number(weight.Value, 3))
	}
	e.result.show(f, e.kept())
	if e.box != nil {
		e.box.Refresh()
	}
}

// stepped follows undo and redo.
func (e *editor) stepped(moved bool) bool {
	if moved {
		e.follow()
	}
	return moved
}

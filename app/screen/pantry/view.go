package pantry

import (
	"context"
	"fmt"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"

	"ebbwell/app/kit/amount"
	"ebbwell/app/kit/desk"
	"ebbwell/app/kit/field"
	"ebbwell/app/kit/look"
	"ebbwell/internal/fuel"
	"ebbwell/internal/record"
	"ebbwell/internal/store"
)

// View is the list of products, or the editor of one.
type View struct {
	desk  *desk.Desk
	by    amount.Writer
	state State
	rows  []Row
	list  listParts
	// editor is nil while the list is shown.
	editor *editor
	body   *fyne.Container
}

// listParts are what the list is shown with.
type listParts struct {
	search *field.Line
	show   *field.Tabs
	count  *look.Label
	table  *look.Table
	none   *look.Paragraph
	detail *detail
	add    *field.Button
	powder *field.Button
	box    fyne.CanvasObject
}

var (
	_ desk.View   = (*View)(nil)
	_ desk.Undoer = (*View)(nil)
)

// New opens the list; a place that names one of the practitioner's own products
// opens that in the editor, a new one where the place asks for it.
func New(d *desk.Desk, place desk.Place) (*View, error) {
	v := &View{desk: d, by: d.Speaker(false).By, body: container.NewStack()}
	if err := v.load(); err != nil {
		return nil, err
	}
	v.build()
	v.show("")
	switch {
	case place.New:
		v.begin()
	case place.Record != "":
		p, err := d.Store.LoadProduct(context.Background(), place.Record)
		if err != nil {
			return nil, fmt.Errorf("open a product: %w", err)
		}
		v.edit(p)
	}
	return v, nil
}

// load reads the products anew; what was searched and sorted stays.
func (v *View) load() error {
	own, err := v.desk.Store.Products(context.Background())
	if err != nil {
		return fmt.Errorf("list the products: %w", err)
	}
	lately, err := v.desk.Store.UsedLately(context.Background())
	if err != nil {
		return fmt.Errorf("list what is used lately: %w", err)
	}
	v.desk.ProductsChanged()
	s := NewState(v.desk.Products(), own, lately, v.desk.Words.Order())
	if v.state.show != "" {
		s.text, s.show, s.column, s.down, s.sorted = v.state.text, v.state.show, v.state.column, v.state.down, v.state.sorted
	}
	v.state = s
	return nil
}

// build makes the list.
func (v *View) build() {
	say, h := v.desk.Words.Say, v.desk.Host
	l := &v.list
	l.search = field.NewLine(h, "pantry.search", 80)
	l.search.SetPlaceholder(say("pantry.search"))
	l.search.OnChanged = func(text string) {
		v.state = v.state.Search(text)
		v.show(v.chosen())
	}
	l.show = field.NewTabs(h, "pantry.show", v.shows())
	l.show.OnChosen = func(key string) {
		v.state = v.state.Showing(Show(key))
		v.show(v.chosen())
	}
	l.count = look.NewLabel("", look.Note, look.Ink2).Right()
	l.add = field.NewButton(h, "pantry.new", say("pantry.new"), field.Primary, v.begin)
	l.powder = field.NewButton(h, "pantry.powder", say("pantry.powder"), field.Outline, v.askPowder)
	l.table = look.NewTable("pantry.table", v.columns()).Scrolling()
	l.table.OnChosen = func(int) { v.showDetail() }
	l.table.OnOpened = v.open
	l.table.OnSort = func(column int, down bool) {
		v.state = v.state.Sort(Column(column), down)
		l.table.ShowSort(column, down)
		v.show(v.chosen())
	}
	l.none = look.NewParagraph("", look.Body, look.Ink2)
	l.detail = newDetail(v)
	top := look.Columns(20, []look.Track{look.Fixed(260), look.Share(1), look.Fixed(130)}, l.search, l.show, l.count)
	table := container.NewStack(look.NewSheet(l.table), look.Pad(56, 24, 0, 26, l.none))
	l.box = look.Pad(14, 0, 20, 0, look.VBox(14, top, look.Grow(table), l.detail.box))
	v.body.Objects = []fyne.CanvasObject{l.box}
}

// shows are the parts of the list.
func (v *View) shows() []field.Tab {
	var list []field.Tab
	for _, s := range []Show{ShowAll, ShowDrinks, ShowFoods, ShowOwn} {
		list = append(list, field.Tab{Key: string(s), Text: v.desk.Words.Say("pantry.show." + string(s))})
	}
	return list
}

// columns are those of the table, in the order of [Column].
func (v *View) columns() []look.Column {
	say := v.desk.Words.Say
	return []look.Column{
		{Title: say("pantry.name"), Width: look.Share(23), Sorts: true},
		{Title: say("pantry.per"), Width: look.Fixed(54)},
		{Title: say("pantry.carbohydrate"), Width: look.Fixed(90), Right: true, Sorts: true},
		{Title: say("pantry.sodium"), Width: look.Fixed(68), Right: true, Sorts: true},
		{Title: say("pantry.strength"), Width: look.Fixed(66), Right: true, Sorts: true, From: 780},
		{Title: say("pantry.fructose"), Width: look.Fixed(74), Right: true, Sorts: true, From: 1000},
		{Title: say("pantry.osmolality"), Width: look.Fixed(92), Sorts: true, From: 900},
		{Title: say("pantry.portion"), Width: look.Share(19), From: 1200},
		{Title: say("pantry.carbohydrate.in"), Width: look.Fixed(104), Right: true, Sorts: true, From: 1300},
		{Title: say("pantry.sodium.in"), Width: look.Fixed(82), Right: true, Sorts: true, From: 1300},
		{Title: say("pantry.source"), Width: look.Share(23), Sorts: true, From: 620},
	}
}

// show fills the list from the state and chooses a product where it is there,
// else the first.
func (v *View) show(id record.ID) {
	w := v.desk.Words
	v.rows = v.state.Rows(func(f fuel.Form) string { return w.Say("form." + string(f)) })
	cells := make([][]look.Cell, len(v.rows))
	chosen := min(0, len(v.rows)-1)
	for i, r := range v.rows {
		cells[i] = v.cells(r)
		if r.ID() == id {
			chosen = i
		}
	}
	v.list.table.SetRows(cells)
	v.list.table.Choose(chosen)
	v.list.count.SetText(w.Say("pantry.count", len(v.rows)))
	v.list.none.SetText("")
	switch {
	case len(v.rows) > 0:
	case v.state.show == ShowOwn && v.state.text == "":
		v.list.none.SetText(w.Say("pantry.none.own"))
	default:
		v.list.none.SetText(w.Say("pantry.none"))
	}
	v.showDetail()
}

// chosen is the product chosen in the list; empty when none is.
func (v *View) chosen() record.ID {
	if i := v.list.table.Chosen(); i >= 0 && i < len(v.rows) {
		return v.rows[i].ID()
	}
	return ""
}

// showDetail follows the chosen row.
func (v *View) showDetail() {
	var row *Row
	if i := v.list.table.Chosen(); i >= 0 && i < len(v.rows) {
		row = &v.rows[i]
	}
	v.list.detail.show(row)
	if v.list.box != nil {
		v.list.box.Refresh() // the sheet may be higher or lower now
	}
}

// open edits an own product; of a generic one the sheet below has the ways.
func (v *View) open(row int) {
	if row >= 0 && row < len(v.rows) && v.rows[row].Own != nil {
		v.edit(*v.rows[row].Own)
	}
}

// begin begins a product of the practitioner's own.
func (v *View) begin() {
	v.edit(record.Product{Meta: record.Meta{ID: record.NewID()}, Form: string(fuel.Drink)})
}

// correct opens a copy of a generic product, which stands in for it once
// something in it was changed.
func (v *View) correct(p fuel.Product) {
	p.Origin.Note = v.desk.Words.FoodNote(p.ID, p.Origin.Note)
	v.edit(copyOf(p, v.desk.Words.Say("pantry.copy.source", v.sourceWords(p.Origin))))
}

// edit shows the editor of a product.
func (v *View) edit(p record.Product) {
	e, err := newEditor(v, p)
	if err != nil {
		v.desk.Trouble(err)
		return
	}
	v.editor = e
	v.body.Objects = []fyne.CanvasObject{e.box}
	v.body.Refresh()
	v.desk.HeadChanged()
}

// back shows the list again, with the product that was edited chosen.
func (v *View) back() {
	if v.editor == nil {
		return
	}
	id := v.editor.id
	v.editor.b.Doc.EndVisit()
	if !v.editor.b.FlushNow() {
		return
	}
	v.editor = nil
	if err := v.load(); err != nil {
		v.desk.Trouble(err)
	}
	v.body.Objects = []fyne.CanvasObject{v.list.box}
	v.show(id)
	v.body.Refresh()
	v.desk.HeadChanged()
}

// remove deletes an own product, unless a test or a plan calculates with it.
func (v *View) remove(p record.Product) {
	w, ref := v.desk.Words, record.Ref{Kind: record.KindProduct, ID: p.ID}
	var used store.Uses
	v.desk.Beside.Run(func(ctx context.Context) (err error) {
		if used, err = v.desk.Store.UsesOf(ctx, p.ID); err != nil || used != (store.Uses{}) {
			return err
		}
		return v.desk.Store.Delete(ctx, ref, store.Edit{})
	}, func(err error) {
		switch {
		case err != nil:
			v.desk.Trouble(err)
			return
		case used != (store.Uses{}):
			v.desk.Say(w.Say("pantry.used", v.nameOf(p.Name), v.usedIn(used)), "", nil)
			return
		}
		v.reload()
		v.desk.Say(w.Say("pantry.deleted", v.nameOf(p.Name)), w.Say("pantry.undelete"), func() { v.bringBack(ref) })
	})
}

// usedIn says where a product is calculated with: "2 tests and 1 plan".
func (v *View) usedIn(u store.Uses) string {
	w := v.desk.Words
	var parts []string
	for _, one := range []struct {
		key string
		n   int
	}{{"pantry.used.tests", u.Tests}, {"pantry.used.plans", u.Plans}, {"pantry.used.trips", u.Trips}} {
		if one.n > 0 {
			parts = append(parts, w.Say(one.key, one.n))
		}
	}
	return w.List(parts)
}

// bringBack takes a delete back.
func (v *View) bringBack(ref record.Ref) {
	if err := v.desk.Store.Undelete(context.Background(), ref, store.Edit{}); err != nil {
		v.desk.Trouble(err)
		return
	}
	v.reload()
	v.show(ref.ID)
}

// reload reads the products and shows the list.
func (v *View) reload() {
	if err := v.load(); err != nil {
		v.desk.Trouble(err)
		return
	}
	v.show(v.chosen())
}

// nameOf is a product's name, or words for one that has none yet.
func (v *View) nameOf(name string) string {
	if name == "" {
		return v.desk.Words.Say("pantry.unnamed")
	}
	return name
}

// Head is the title with the way to a new product, or the selected product.
func (v *View) Head() desk.Head {
	say := v.desk.Words.Say
	if v.editor != nil {
		return desk.Head{Title: v.nameOf(v.editor.now().product.Name), Under: v.editor.under(), Actions: v.editor.actions()}
	}
	return desk.Head{Title: say("frame.pantry"), Actions: []fyne.CanvasObject{v.list.powder, v.list.add}}
}

// Body is the list or the editor.
func (v *View) Body() fyne.CanvasObject { return v.body }

// Place names what is shown, so that the window can open it again.
func (v *View) Place() desk.Place {
	p := desk.Place{Screen: desk.Pantry}
	if v.editor != nil && v.editor.kept() {
		p.Record = v.editor.id
	}
	return p
}

// Leave ends the visit to the selected field.
func (v *View) Leave() {
	if v.editor != nil {
		v.editor.b.Doc.EndVisit()
		v.desk.ProductsChanged()
	}
}

// Undo takes back the last step in the editor; Redo does it again.
func (v *View) Undo() bool { return v.editor != nil && v.editor.stepped(v.editor.b.Undo()) }

// Redo does again what was taken back.
func (v *View) Redo() bool { return v.editor != nil && v.editor.stepped(v.editor.b.Redo()) }

// CanUndo reports whether there is a step to take back.
func (v *View) CanUndo() bool { return v.editor != nil && v.editor.b.Doc.CanUndo() }

// CanRedo reports whether there is one to do again.
func (v *View) CanRedo() bool { return v.editor != nil && v.editor.b.Doc.CanRedo() }

// Key takes the keys no field has a use for: Escape leaves the editor, Enter
// goes on to the next field.
func (v *View) Key(e *fyne.KeyEvent) {
	switch {
	case v.editor == nil:
	case e.Name == fyne.KeyEscape:
		v.back()
	case e.Name == fyne.KeyReturn || e.Name == fyne.KeyEnter:
		if c := v.canvas(); c != nil {
			c.FocusNext()
		}
	}
}

// canvas is the canvas the screen stands on.
func (v *View) canvas() fyne.Canvas { return fyne.CurrentApp().Driver().CanvasForObject(v.body) }

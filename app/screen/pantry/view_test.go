package pantry

import (
	"context"
	"flag"
	"math"
	"strings"
	"testing"

	"fyne.io/fyne/v2"

	"ebbwell/app/apptest"
	"ebbwell/app/kit/desk"
	"ebbwell/app/kit/field"
	"ebbwell/internal/consult"
	"ebbwell/internal/fuel"
	"ebbwell/internal/quantity"
	"ebbwell/internal/record"
	"ebbwell/internal/store"
)

var update = flag.Bool("update", false, "keep new golden pictures")

// open shows the screen in a window.
func open(t testing.TB, d *desk.Desk, place desk.Place) (*View, fyne.Window) {
	t.Helper()
	v, err := New(d, place)
	if err != nil {
		t.Fatal(err)
	}
	return v, apptest.Window(t, v.Body(), 1000, 704, false, 100)
}

// own is the only product of the practitioner's own.
func own(t testing.TB, d *desk.Desk) record.Product {
	t.Helper()
	list, err := d.Store.Products(context.Background())
	if err != nil || len(list) != 1 {
		t.Fatalf("%d products of one's own, %v", len(list), err)
	}
	return list[0]
}

func names(v *View) []string {
	var list []string
	for i := range v.list.table.Rows() {
		list = append(list, v.list.table.Row(i)[0])
	}
	return list
}

func TestSearchShowSort(t *testing.T) {
	d, _ := apptest.Demo(t)
	v, w := open(t, d, desk.Place{Screen: desk.Pantry})
	all := len(names(v))
	if all < 50 || names(v)[0] != "Sports drink 6 %" {
		t.Fatalf("%d products, the first %q", all, names(v)[0])
	}
	apptest.Type(t, w, "pantry.search", "sports drink")
	if got := names(v); len(got) != 3 {
		t.Errorf("found %q", got)
	}
	apptest.Type(t, w, "pantry.search", "NDB 09040")
	if got := names(v); len(got) != 1 || got[0] != "Banana" {
		t.Errorf("by the number of its source found %q", got)
	}
	apptest.Type(t, w, "pantry.search", "")
	for show, has := range map[Show]string{ShowDrinks: "Maltodextrin powder", ShowFoods: "Energy gel"} {
		v.list.show.OnChosen(string(show))
		if got := strings.Join(names(v), "|"); !strings.Contains(got, has) || len(names(v)) >= all {
			t.Errorf("%s shows %s", show, got)
		}
	}
	v.list.show.OnChosen(string(ShowOwn))
	if len(names(v)) != 0 || !strings.Contains(v.list.none.Text(), "No own products yet") || v.list.detail.box.Visible() {
		t.Errorf("no own products: %q", v.list.none.Text())
	}
	v.list.show.OnChosen(string(ShowAll))
	v.list.table.OnSort(int(ByStrength), true)
	if got := v.rows[0]; got.Strength.Value < 15 || v.rows[all-1].Strength.Known {
		t.Errorf("the strongest is %s, the last %s", got.Product.Name, v.rows[all-1].Product.Name)
	}
}

func TestEveryColumnSorts(t *testing.T) {
	content := func(x float64) fuel.Content { return fuel.Of(x) }
	r := func(name string, x float64) Row {
		return Row{
			Product: fuel.Product{Name: name, Origin: fuel.Origin{Source: name}}, Hundred: Held{content(x), content(x)}, Portion: Held{content(x), content(x)},
			Strength: content(x), Osmolality: content(x), Fructose: quantity.Range{Low: x, High: x}, FructoseKnown: true,
		}
	}
	s := State{order: strings.Compare, all: []Row{r("b", 2), r("a", 1), {Product: fuel.Product{Name: "c", Origin: fuel.Origin{Source: "c"}}}}}
	word := func(fuel.Form) string { return "" }
	for _, c := range []Column{ByName, ByCarbohydrate, BySodium, ByStrength, ByFructose, ByOsmolality, ByPortionCarbohydrate, ByPortionSodium, BySource} {
		if up := s.Sort(c, false).Rows(word); up[0].Product.Name != "a" || up[2].Product.Name != "c" {
			t.Errorf("column %d up begins with %s and ends with %s", c, up[0].Product.Name, up[2].Product.Name)
		}
		down := s.Sort(c, true).Rows(word)
		last := map[bool]string{true: "a", false: "c"}[c == ByName || c == BySource]
		if down[2].Product.Name != last {
			t.Errorf("column %d down ends with %s, want %s", c, down[2].Product.Name, last)
		}
	}
}

func TestEveryRowHasASource(t *testing.T) {
	d, _ := apptest.Desk(t)
	v, _ := open(t, d, desk.Place{Screen: desk.Pantry})
	for i, r := range v.rows {
		if cells := v.cells(r); cells[len(cells)-1].Text == "" {
			t.Errorf("%s has no source", r.Product.Name)
		}
		v.list.table.Choose(i)
		v.showDetail()
		if text := v.list.detail.words.source.Text(); strings.Contains(text, "sure.") || !strings.Contains(text, ":") {
			t.Errorf("%s: %q", r.Product.Name, text)
		}
	}
}

func TestNewProductFromALabel(t *testing.T) {
	d, _ := apptest.Desk(t)
	v, w := open(t, d, desk.Place{Screen: desk.Pantry})
	v.begin()
	if apptest.Has(w, "pantry.search") {
		t.Fatal("the list is still in sight")
	}
	apptest.Type(t, w, "pantry.edit.name", "Isotonic, blackcurrant")
	apptest.Type(t, w, "pantry.edit.volume", "500")
	apptest.Type(t, w, "pantry.edit.available", "6,4")
	apptest.Type(t, w, "pantry.edit.salt", "0.13")
	apptest.Type(t, w, "pantry.edit.source", "label, May 2026")
	apptest.Leave(w)
	v.back()
	p := consult.ProductOf(own(t, d))
	if s := p.Strength(); math.Abs(s.Value-6.4) > 1e-9 || p.Form != fuel.Drink || p.Name != "Isotonic, blackcurrant" {
		t.Errorf("kept as %+v, strength %g", p, s.Value)
	}
	if got := rowOf(p, nil).Hundred.Sodium.Value; math.Abs(got-52) > 1e-9 {
		t.Errorf("%g mg of sodium in 100 mL, want 52", got)
	}
	if got := names(v)[0]; got != "Isotonic, blackcurrant" || v.list.table.Chosen() != 0 {
		t.Errorf("the list begins with %q, chosen is %d", got, v.list.table.Chosen())
	}
	// The planner sees it at once.
	if _, ok := d.Products().Find(record.ID(p.ID)); !ok {
		t.Error("the pantry of the desk does not have it")
	}
	// Opened again the fields read like the label.
	v.open(0)
	for name, want := range map[string]string{"available": "6.4", "salt": "0.13", "volume": "500", "density": ""} {
		if got := apptest.Text(t, w, "pantry.edit."+name); got != want {
			t.Errorf("%s reads %q, want %q", name, got, want)
		}
	}
	if !v.editor.kept() || v.Place().Record != record.ID(p.ID) {
		t.Error("the place does not name the product")
	}
}

func TestUndoAndRefusedFigures(t *testing.T) {
	d, _ := apptest.Desk(t)
	v, w := open(t, d, desk.Place{Screen: desk.Pantry, New: true})
	apptest.Type(t, w, "pantry.edit.available", "6")
	apptest.Leave(w)
	apptest.Type(t, w, "pantry.edit.salt", "-2")
	apptest.Leave(w)
	if !v.editor.b.FlushNow() {
		t.Fatal("not kept")
	}
	p := own(t, d)
	if p.Per100.Sodium.Known() {
		t.Errorf("salt of -2 g became %g mg of sodium", *p.Per100.Sodium.Value)
	}
	raw, err := d.Store.RawOf(context.Background(), record.Ref{Kind: record.KindProduct, ID: p.ID})
	if err != nil || len(raw) != 1 || raw[0].Text != "-2" {
		t.Errorf("what was typed is kept as %+v, %v", raw, err)
	}
	again, w2 := open(t, d, desk.Place{Screen: desk.Pantry, Record: p.ID})
	if got := apptest.Text(t, w2, "pantry.edit.salt"); got != "-2" {
		t.Errorf("opened again salt reads %q", got)
	}
	if again.CanUndo() {
		t.Error("there is something to undo in a product just opened")
	}
	for step := 1; step <= 2; step++ {
		if !v.Undo() {
			t.Fatalf("step %d cannot be undone", step)
		}
	}
	if v.CanUndo() {
		t.Fatal("more than two steps can be undone")
	}
	if got := apptest.Text(t, w, "pantry.edit.available"); got != "" {
		t.Errorf("after undo the carbohydrate reads %q", got)
	}
	if !v.Redo() || apptest.Text(t, w, "pantry.edit.available") != "6" {
		t.Error("redo does not bring the carbohydrate back")
	}
}

func TestPortionFirst(t *testing.T) {
	d, _ := apptest.Desk(t)
	said := ""
	d.Say = func(sentence, _ string, _ func()) { said = sentence }
	v, w := open(t, d, desk.Place{Screen: desk.Pantry, New: true})
	v.editor.b.Pick("", func(s *sheetOf) { s.Record = s.Record.taken(fuel.Gel) })
	v.editor.follow()
	v.editor.rows.per.OnChosen(string(fuel.PerPortion))
	if v.editor.now().per != fuel.Per100Grams || !strings.Contains(said, "portion first") {
		t.Errorf("figures are for %s, said %q", v.editor.now().per, said)
	}
	apptest.Type(t, w, "pantry.edit.mass", "40")
	v.editor.rows.per.OnChosen(string(fuel.PerPortion))
	apptest.Type(t, w, "pantry.edit.available", "24")
	apptest.Leave(w)
	if got := consult.ProductOf(v.editor.now().record()).Per100.Available.Value; math.Abs(got-60) > 1e-9 {
		t.Errorf("24 g in a gel of 40 g are %g g in 100 g", got)
	}
}

func TestCorrectAGenericProduct(t *testing.T) {
	d, _ := apptest.Desk(t)
	v, w := open(t, d, desk.Place{Screen: desk.Pantry})
	apptest.Type(t, w, "pantry.search", "sports drink 6")
	apptest.Click(t, w, "pantry.correct")
	if list, err := d.Store.Products(context.Background()); err != nil || len(list) != 0 {
		t.Fatalf("looking at a copy kept %d products, %v", len(list), err)
	}
	apptest.Type(t, w, "pantry.edit.salt", "0.2")
	apptest.Type(t, w, "pantry.edit.sugars", "5.5")
	apptest.Type(t, w, "pantry.edit.osmolality", "301")
	apptest.Leave(w)
	v.back()
	p := own(t, d)
	if again, w2 := open(t, d, desk.Place{Screen: desk.Pantry, Record: p.ID}); apptest.Text(t, w2, "pantry.edit.sugars") != "5.5" || apptest.Text(t, w2, "pantry.edit.osmolality") != "301" {
		t.Errorf("opened again the label reads %+v", again.editor.now().figures)
	}
	if p.Replaces != "generic.drink-6" || !strings.Contains(p.Source, "corrected from") {
		t.Errorf("the copy stands in for %q, source %q", p.Replaces, p.Source)
	}
	got, _ := d.Products().Find("generic.drink-6")
	if rowOf(got, nil).Hundred.Sodium.Value != 80 {
		t.Errorf("the generic drink now holds %+v", rowOf(got, nil).Hundred)
	}
	if row := rowOf(got, nil); math.Abs(row.Osmolality.Value-301) > 1e-6 || !strings.Contains(v.osmolalityWords(row), "as stated by the maker: isotonic") || !strings.HasPrefix(v.osmolalityWords(row), "301") {
		t.Errorf("the stated osmolality reads %q", v.osmolalityWords(row))
	}
	if list := names(v); len(list) != 1 {
		t.Errorf("beside the correction the list has %q", list)
	}
}

func TestDeleteAndBringBack(t *testing.T) {
	d, _ := apptest.Desk(t)
	p := record.Product{Meta: record.Meta{ID: record.NewID()}, Name: "Bar", Form: "solid"}
	if _, err := d.Store.SaveProduct(context.Background(), p, store.Edit{}); err != nil {
		t.Fatal(err)
	}
	var undo func()
	d.Say = func(_, _ string, do func()) { undo = do }
	v, w := open(t, d, desk.Place{Screen: desk.Pantry})
	all := len(names(v))
	apptest.Click(t, w, "pantry.delete")
	if len(names(v)) != all-1 || undo == nil {
		t.Fatalf("%d of %d products are left", len(names(v)), all)
	}
	v.list.detail.show(nil)
	for _, b := range []*field.Button{v.list.detail.ways.edit, v.list.detail.ways.correct, v.list.detail.ways.remove} {
		b.TypedKey(&fyne.KeyEvent{Name: fyne.KeyReturn}) // the keyboard may still be on a button that went
	}
	undo()
	if own(t, d).Name != "Bar" || v.rows[v.list.table.Chosen()].Product.Name != "Bar" {
		t.Error("it was not brought back, or is not the chosen one")
	}
}

func TestUsedProductStays(t *testing.T) {
	d, _ := apptest.Demo(t)
	p := record.Product{Meta: record.Meta{ID: record.NewID()}, Name: "Bar", Form: "solid", Replaces: "generic.fig-bar"}
	if _, err := d.Store.SaveProduct(context.Background(), p, store.Edit{}); err != nil {
		t.Fatal(err)
	}
	a := apptest.AthleteNamed(t, d, "Jorun")
	plans, err := d.Store.Plans(context.Background(), a.ID)
	if err != nil || len(plans) == 0 {
		t.Fatalf("%d plans, %v", len(plans), err)
	}
	plans[0].Options[0].Items[0].ProductID = p.ID
	if _, err := d.Store.SavePlan(context.Background(), plans[0], store.Edit{}); err != nil {
		t.Fatal(err)
	}
	said := ""
	d.Say = func(sentence, _ string, _ func()) { said = sentence }
	v, w := open(t, d, desk.Place{Screen: desk.Pantry})
	apptest.Type(t, w, "pantry.search", "bar")
	v.show(p.ID)
	apptest.Click(t, w, "pantry.delete")
	if own(t, d).Name != "Bar" || !strings.Contains(said, "1 plan") {
		t.Errorf("said %q", said)
	}
}

func TestMakeUpADrink(t *testing.T) {
	d, _ := apptest.Desk(t)
	v, w := open(t, d, desk.Place{Screen: desk.Pantry})
	apptest.Type(t, w, "pantry.search", "table sugar")
	v.askPowder()
	if got := apptest.Text(t, w, "pantry.mix.1.what"); got != "Table sugar (sucrose)" {
		t.Fatalf("the first line has %q", got)
	}
	apptest.Type(t, w, "pantry.mix.1.grams", "30")
	apptest.Type(t, w, "pantry.mix.2.what", "table salt")
	apptest.Press(w, fyne.KeyReturn)
	apptest.Type(t, w, "pantry.mix.2.grams", "0.6")
	// 60 g of sugar and 1.2 g of salt in a litre, half of it: the home drink of
	// the catalogue.
	apptest.Click(t, w, "pantry.mix.yes")
	if !apptest.Has(w, "pantry.mix.name") {
		t.Fatal("a drink without a name was kept")
	}
	apptest.Type(t, w, "pantry.mix.name", "Kitchen drink")
	apptest.Click(t, w, "pantry.mix.yes")
	p := consult.ProductOf(own(t, d))
	home, _ := d.Products().Find("generic.home-drink")
	if got, want := p.Strength().Value, home.Strength().Value; math.Abs(got-want) > 0.1 {
		t.Errorf("strength %g, the home drink has %g", got, want)
	}
	if got, want := rowOf(p, nil).Hundred.Sodium.Value, rowOf(home, nil).Hundred.Sodium.Value; math.Abs(got-want) > 2 {
		t.Errorf("sodium %g mg in 100 mL, the home drink has %g", got, want)
	}
	if !strings.Contains(p.Origin.Source, "30.0\u00a0g of Table sugar") {
		t.Errorf("the source is %q", p.Origin.Source)
	}
	if field.Find(w.Content(), "pantry.mix.name") != nil {
		t.Error("the dialog is still open")
	}
}

func TestTooMuchInABottle(t *testing.T) {
	var m mixed
	sugar := fuel.Product{ID: "s", Name: "s", Form: fuel.Powder, Per100: fuel.Composition{Available: fuel.Of(100)}}
	if _, err := m.drink("a", "a"); err == nil {
		t.Error("nothing makes a drink")
	}
	m.parts[2], m.millilitres = fuel.Amount{Product: sugar, Grams: 1000}, 500
	if _, err := m.drink("a", "a"); err == nil {
		t.Error("1000 g of sugar dissolve in 500 mL")
	}
}

func TestAmericanUnits(t *testing.T) {
	d, _ := apptest.Desk(t)
	practice := d.Practice()
	practice.Settings.Units = "us"
	if _, err := d.Store.SavePractice(context.Background(), practice, store.Edit{}); err != nil {
		t.Fatal(err)
	}
	d.PracticeChanged()
	v, w := open(t, d, desk.Place{Screen: desk.Pantry, New: true})
	apptest.Type(t, w, "pantry.edit.volume", "12")
	apptest.Type(t, w, "pantry.edit.carbohydrate", "6")
	apptest.Type(t, w, "pantry.edit.fibre", "0")
	apptest.Type(t, w, "pantry.edit.sodium", "45")
	apptest.Leave(w)
	r := rowOf(consult.ProductOf(v.editor.now().record()), nil)
	if math.Abs(r.Portion.Carbohydrate.Value-6*3.5488235475) > 1e-6 || math.Abs(r.Hundred.Sodium.Value-45) > 1e-9 {
		t.Errorf("a can of 12 fl oz holds %+v", r.Portion)
	}
}

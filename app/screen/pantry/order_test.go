package pantry

import (
	"slices"
	"testing"

	"ebbwell/app/apptest"
	"ebbwell/app/kit/desk"
	"ebbwell/internal/fuel"
	"ebbwell/internal/record"
)

// Own products and what is made for sport stand first, then what was used lately in its
// order, then all else.
func TestSportsProductsFirstThenUsedLately(t *testing.T) {
	d, _ := apptest.Desk(t)
	s := NewState(d.Products(), nil, []record.ID{"generic.banana", "generic.water", "generic.gel"}, d.Words.Order())
	rows := s.Rows(func(fuel.Form) string { return "" })
	turn := 0
	for i, r := range rows {
		now := 2
		switch {
		case fuel.MadeForSport(r.Product):
			now = 0
		case r.ID() == "generic.banana" || r.ID() == "generic.water":
			now = 1
		}
		if now < turn {
			t.Errorf("row %d, %s, stands too late", i+1, r.Product.Name)
		}
		turn = max(turn, now)
	}
	at := func(id record.ID) int { return slices.IndexFunc(rows, func(r Row) bool { return r.ID() == id }) }
	if at("generic.banana") != at("generic.water")-1 {
		t.Errorf("banana is row %d, water %d", at("generic.banana")+1, at("generic.water")+1)
	}
}

// A new product is not doubted before anything of its label was typed; then it is.
func TestDoubtsComeAfterTyping(t *testing.T) {
	d, _ := apptest.Desk(t)
	v, err := New(d, desk.Place{Screen: desk.Pantry, New: true})
	if err != nil {
		t.Fatal(err)
	}
	w := apptest.Window(t, v.Body(), 1180, 700, false, 100)
	doubts := func() bool {
		title, _ := v.editor.result.caution.Text()
		return v.editor.result.caution.Visible() && title == "Sodium is not known"
	}
	if doubts() || v.editor.result.caution.Visible() {
		t.Error("a product is doubted before anything was typed")
	}
	apptest.Type(t, w, "pantry.edit.name", "Blackcurrant drink")
	if v.editor.result.caution.Visible() {
		t.Error("a product is doubted for its name alone")
	}
	apptest.Type(t, w, "pantry.edit.available", "6")
	apptest.Leave(w)
	if !doubts() {
		t.Error("a label without sodium is not doubted")
	}
}

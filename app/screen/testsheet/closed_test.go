package testsheet

import (
	"context"
	"strings"
	"testing"

	"ebbwell/app/apptest"
	"ebbwell/app/kit/desk"
	"ebbwell/internal/evidence"
	"ebbwell/internal/quantity"
	"ebbwell/internal/record"
	"ebbwell/internal/store"
)

// ownDrink is a drink of the practice's own.
func ownDrink(t *testing.T, d *desk.Desk, p record.Product, sodium, density float64) record.Product {
	t.Helper()
	p.Name, p.Form, p.Density = "Club drink", "drink", record.Num(density, quantity.GramPerMillilitre)
	p.PortionName, p.PortionMass = "bottle", record.Num(500, quantity.Gram)
	p.Per100 = record.Composition{Available: record.Num(6, quantity.Gram), Sodium: record.Num(sodium, quantity.Milligram), Water: record.Num(93, quantity.Gram)}
	kept, err := d.Store.SaveProduct(context.Background(), p, store.Edit{})
	if err != nil {
		t.Fatal(err)
	}
	d.ProductsChanged()
	return kept
}

// A closed sheet keeps its figures whatever becomes of its products and of the
// practice's settings, and says which these would differ today. Opened for
// correction it is calculated with what holds now.
func TestClosedSheetKeepsItsFigures(t *testing.T) {
	d, went := apptest.Desk(t)
	a := consenting(t, d)
	drink := ownDrink(t, d, record.Product{Meta: record.Meta{ID: record.NewID()}}, 50, 1.02)
	sheet := aTest(a, "2026-05-10", 62.4)
	sheet.Bottles[1].ProductID = drink.ID
	if _, err := d.Store.SaveTest(context.Background(), sheet, store.Edit{}); err != nil {
		t.Fatal(err)
	}
	place := desk.Place{Screen: desk.Tests, Athlete: a.ID, Record: sheet.ID, Part: PartFindings}
	b := openAt(t, d, went, place)
	if b.v.ui.foot.step.code != stepClose {
		t.Fatalf("not to be closed: %+v", b.v.ui.foot.step)
	}
	open := b.v.found
	apptest.Click(t, b.w, "testsheet.next")
	if list := b.v.found.Differing(open); b.kept().State != record.TestClosed || len(list) > 0 {
		t.Fatalf("closing changes %v", list)
	}
	if _, said := b.v.ui.notice.Text(); strings.Contains(said, "otherwise") || !strings.Contains(said, "Read-only; values as calculated that day") {
		t.Errorf("nothing changed, and it says %q", said)
	}
	before := allText(b.w)

	ownDrink(t, d, drink, 90, 1.08)
	p := d.Practice()
	p.Settings.UrineBands = evidence.SetNATA
	if _, err := d.Store.SavePractice(context.Background(), p, store.Edit{}); err != nil {
		t.Fatal(err)
	}
	d.PracticeChanged()
	later := openAt(t, d, went, place)
	if list := later.v.found.Differing(open); len(list) > 0 {
		t.Errorf("the closed sheet differs in %v", list)
	}
	_, said := later.v.ui.notice.Text()
	for _, part := range []string{"these would differ", "sodium intake", "Nothing was changed"} {
		if !strings.Contains(said, part) {
			t.Errorf("%q is not said in %q", part, said)
		}
	}
	if got := strings.Replace(allText(later.w), said, "", 1); !sameLines(before, got) {
		t.Errorf("the closed sheet shows\n%s\nit showed\n%s", got, before)
	}
	if r := later.v.report(); r.Evidence != evidence.Version {
		t.Errorf("the report names evidence %q", r.Evidence)
	}
	apptest.Click(t, later.w, "testsheet.correct")
	apptest.Type(t, later.w, "testsheet.reopen.why", "the label was read wrongly")
	apptest.Click(t, later.w, "testsheet.reopen.yes")
	if list := later.v.found.Differing(open); len(list) == 0 || later.v.found.Kept != "" {
		t.Error("opened for correction it is not calculated with the product as it is now")
	}
}

// sameLines reports whether two screens show the same, but for the notice.
func sameLines(a, b string) bool {
	lines := func(text string) string {
		var list []string
		for _, l := range strings.Split(text, "\n") {
			if l != "" && !strings.HasPrefix(l, "Closed. Read-only") {
				list = append(list, l)
			}
		}
		return strings.Join(list, "\n")
	}
	return lines(a) == lines(b)
}

// The laboratory's value comes to a sheet as it was closed: products that changed
// meanwhile change nothing, and the sheet is closed with those of then.
func TestLateValueKeepsTheProductsOfThen(t *testing.T) {
	d, went := apptest.Desk(t)
	a := consenting(t, d)
	drink := ownDrink(t, d, record.Product{Meta: record.Meta{ID: record.NewID()}}, 50, 1.02)
	sheet := aTest(a, "2026-05-10", 62.4)
	sheet.Bottles[1].ProductID = drink.ID
	sheet.Patches[0].Sodium, sheet.Patches[0].AtLaboratory = record.Number{}, true
	if _, err := d.Store.SaveTest(context.Background(), sheet, store.Edit{}); err != nil {
		t.Fatal(err)
	}
	place := desk.Place{Screen: desk.Tests, Athlete: a.ID, Record: sheet.ID, Part: PartFindings}
	b := openAt(t, d, went, place)
	apptest.Click(t, b.w, "testsheet.next")
	sodium := b.v.found.Intake.Sodium
	ownDrink(t, d, drink, 90, 1.08)
	b = openAt(t, d, went, place)
	if _, said := b.v.ui.notice.Text(); b.kept().State != record.TestWaiting || b.v.found.Intake.Sodium.Value != sodium.Value || !strings.Contains(said, "Enter the sodium") {
		t.Fatalf("waiting: %q, sodium in %g, not %g; said %q", b.kept().State, b.v.found.Intake.Sodium.Value, sodium.Value, said)
	}
	b.part(PartUrine)
	b.enter("testsheet.patch.1.sodium", "46.2")
	if !b.v.found.Sweat.Sodium.LossRate.Known || b.v.found.Intake.Sodium.Value != sodium.Value {
		t.Fatal("the late value is not calculated in, or with another product")
	}
	late := b.v.found
	b.part(PartFindings)
	apptest.Click(t, b.w, "testsheet.next")
	again := openAt(t, d, went, place)
	if list := again.v.found.Differing(late); again.kept().State != record.TestClosed || len(list) > 0 {
		t.Errorf("closed as %q, differing in %v", again.kept().State, list)
	}
}

// What cannot be read is calculated anew, and that is said on the sheet and on the
// report.
func TestClosedSheetThatCannotBeRead(t *testing.T) {
	d, went := apptest.Desk(t)
	a := consenting(t, d)
	test := closedTest(t, d, a, "2026-05-10", 62.4)
	place := desk.Place{Screen: desk.Tests, Athlete: a.ID, Record: test.ID, Part: PartFindings}
	kept, err := d.Store.FrozenOf(context.Background(), refOf(test))
	if err != nil {
		t.Fatal(err)
	}
	for _, c := range []struct {
		name, inputs, results, evidence, said string
		onPaper                               bool
	}{
		{"older evidence", string(kept[0].Inputs), string(kept[0].Results), "2020.1", "evidence version 2020.1", false},
		{"figures", string(kept[0].Inputs), "[]", evidence.Version, "from that day’s entries", true},
		{"everything", "[]", "[]", evidence.Version, "with today’s products", true},
	} {
		if _, err := d.Store.Freeze(context.Background(), refOf(test), store.Freezing{Inputs: []byte(c.inputs), Results: []byte(c.results), Evidence: c.evidence}); err != nil {
			t.Fatal(err)
		}
		b := openAt(t, d, went, place)
		if _, said := b.v.ui.notice.Text(); !strings.Contains(said, c.said) || strings.Contains(said, "Read-only; values as calculated") == c.onPaper {
			t.Errorf("%s: said %q", c.name, said)
		}
		r := b.v.report()
		if onPaper := strings.Contains(strings.Join(r.Terms.Cautions, " "), c.said); onPaper != c.onPaper || !c.onPaper && r.Evidence != "2020.1" {
			t.Errorf("%s: on paper %v, evidence %q", c.name, r.Terms.Cautions, r.Evidence)
		}
	}
}

package squad

import (
	"context"
	"strings"
	"testing"

	"ebbwell/app/apptest"
	"ebbwell/app/kit/desk"
	"ebbwell/internal/handout/pdfread"
	"ebbwell/internal/record"
)

// TestNameTypedAnywhere: a name begins in an empty field, in one whose value is selected
// and where no field has the keyboard; a bib in a field that holds a value, too.
func TestNameTypedAnywhere(t *testing.T) {
	d, clock, id := squadDesk(t, crew())
	h := openDay(t, d, clock, id, 1186, 700, false, 100)
	h.at("before", "sen\n")
	if h.who() != "Senna Dunmarsh" {
		t.Fatalf("in an empty field: %s", h.who())
	}
	h.at("before", "72.4\n")
	h.v.openRowAt(3, "before")
	h.typed("lia\n")
	if h.who() != "Lia Fennick" {
		t.Fatalf("over a selected value: %s", h.who())
	}
	if w := h.kept("Senna Dunmarsh").Weighings; len(w) != 1 || w[0].Mass.Or(0) != 72.4 {
		t.Errorf("the name went into the mass: %+v", w)
	}
	apptest.Leave(h.w)
	h.typed("quar\n")
	if h.who() != "Edda Quarnford" {
		t.Fatalf("where no field is: %s", h.who())
	}
	h.at("before", "79.6/7\n")
	if h.who() != "Ravka Oldenmoor" || h.kept("Edda Quarnford").Weighings[0].Mass.Or(0) != 79.6 {
		t.Errorf("a bib behind a value: %s", h.who())
	}
	h.v.doc.ChangeSession("", "bib", func(g *record.GroupSession) { g.Members[7].Bib = "23" })
	h.v.changed()
	h.typed("/23\n")
	if h.who() != "Maren Stillwell" {
		t.Errorf("a bib of one's own: %s", h.who())
	}
}

// TestBlankSheetsInTheOrderOfTheScale: the sheets on paper come in the order in which the
// rows are filled afterwards.
func TestBlankSheetsInTheOrderOfTheScale(t *testing.T) {
	d, clock, id := squadDesk(t, crew())
	h := openDay(t, d, clock, id, 1186, 700, false, 100)
	h.v.takeOff(0)
	sheets, err := h.v.blank(false)
	if err != nil {
		t.Fatal(err)
	}
	pdf, err := sheets.PDF(d.Now())
	if err != nil {
		t.Fatal(err)
	}
	texts, err := pdfread.Texts(pdf)
	if err != nil {
		t.Fatal(err)
	}
	all, from := strings.Join(texts, " "), 0
	for i, r := range h.v.rows {
		at := strings.Index(all[from:], r.Sheet.Athlete.Name)
		if at < 0 {
			t.Fatalf("%s does not come in place %d", r.Sheet.Athlete.Name, i+1)
		}
		from += at
	}
	if strings.Contains(all, "Tamsin") {
		t.Error("there is a sheet for one who was taken off")
	}
}

// TestEnteredAfterwards: what was written on paper is entered on another day, which is
// changed for all in one place.
func TestEnteredAfterwards(t *testing.T) {
	d, clock, id := squadDesk(t, crew()[:2])
	h := openDay(t, d, clock, id, 1186, 700, false, 100)
	h.v.askChange()
	apptest.Type(t, h.w, "squad.change.day", "16.5.2026")
	apptest.Click(t, h.w, "squad.change.done")
	h.v.openRowAt(0, "before")
	h.at("before", "61.8\n")
	for _, name := range []string{"Tamsin Orrelby", "Neve Carrowmere"} {
		if one := h.kept(name); one.Session.Date != "2026-05-16" {
			t.Errorf("%s: %s", name, one.Session.Date)
		}
	}
	once, twice := h.v.Undo(), h.v.Undo()
	if !once || !twice || h.kept("Tamsin Orrelby").Session.Date != "2026-05-18" {
		t.Error("the day cannot be taken back")
	}
}

// TestScaleIsAskedOnceADay: the first session of a day asks the resolution, with that of
// the session it begins as in the field; the next of the day takes it as it is.
func TestScaleIsAskedOnceADay(t *testing.T) {
	d, clock, _ := squadDesk(t, crew()[:2])
	clock.at = clock.at.AddDate(0, 0, 1)
	var went desk.Place
	d.Go = func(p desk.Place) { went = p }
	begin := func(step string) record.GroupSession {
		t.Helper()
		v, err := New(d, desk.Place{Screen: desk.TestDay, New: true})
		if err != nil {
			t.Fatal(err)
		}
		w := apptest.Window(t, v.Body(), 1186, 700, false, 100)
		if asked := apptest.Has(w, "squad.start.step"); asked != (step != "") {
			t.Fatalf("asked: %v", asked)
		}
		if step != "" {
			if text := apptest.Text(t, w, "squad.start.step"); text != "0.1" && text != "0.100" && text != "0.10" {
				t.Errorf("the field begins with %q", text)
			}
			apptest.Type(t, w, "squad.start.step", step)
		}
		apptest.Click(t, w, "squad.start.1")
		apptest.Click(t, w, "squad.start.begin")
		g, err := d.Store.LoadGroupSession(context.Background(), went.Record)
		if err != nil {
			t.Fatal(err)
		}
		return g
	}
	for i, step := range []string{"0.05", ""} {
		if g := begin(step); g.ScaleStep.Or(0) != 0.05 {
			t.Errorf("session %d of the day has %v", i+1, g.ScaleStep.Or(0))
		}
	}
}

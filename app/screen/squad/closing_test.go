package squad

import (
	"context"
	"strings"
	"testing"

	"ebbwell/app/apptest"
	"ebbwell/internal/quantity"
	"ebbwell/internal/record"
	"ebbwell/internal/squad"
)

// TestAddingKeepsTheSteps: who is added late is no step back, and takes none away; a
// step back gives the new sheet what held for all.
func TestAddingKeepsTheSteps(t *testing.T) {
	d, clock, id := squadDesk(t, crew()[:2])
	late := apptest.Save(t, d, record.Athlete{Meta: record.Meta{ID: record.NewID()}, Name: "Late Comer", Born: "2000-01-01"})
	h := openDay(t, d, clock, id, 1186, 700, false, 100)
	h.at("before", "61.8\n")
	h.v.doc.ChangeSession("", "end", func(g *record.GroupSession) { g.Session.End = "18:55" })
	if added, words := h.v.addAthlete(late.ID); !added {
		t.Fatal(words)
	}
	if one := h.kept("Late Comer"); one.Session.End != "18:55" {
		t.Errorf("the late comer ends at %s", one.Session.End)
	}
	if !h.v.Undo() || len(h.v.rows) != 3 || h.kept("Late Comer").Session.End != "18:40" || h.kept("Tamsin Orrelby").Session.End != "18:40" {
		t.Errorf("%d rows, the late comer ends at %s", len(h.v.rows), h.kept("Late Comer").Session.End)
	}
	if !h.v.Undo() || len(h.v.rows) != 3 || len(h.kept("Tamsin Orrelby").Weighings) != 0 {
		t.Errorf("the mass before is not taken back: %+v", h.kept("Tamsin Orrelby").Weighings)
	}
	if first, second := h.v.Redo(), h.v.Redo(); !first || !second || len(h.v.rows) != 3 || h.kept("Late Comer").Session.End != "18:55" || len(h.kept("Tamsin Orrelby").Weighings) != 1 {
		t.Errorf("forward: %+v", h.kept("Late Comer").Session)
	}
}

// TestCloseAllDone closes what is done, names what is not, and no step back opens it.
func TestCloseAllDone(t *testing.T) {
	d, clock, id := squadDesk(t, crew()[:3])
	h := openDay(t, d, clock, id, 1186, 700, false, 100)
	for range 3 {
		one := plan()[h.who()]
		h.at("before", one.before+"\n")
		h.at("bottle.1.before", one.filled[0]+"\n")
		h.at("bottle.2.before", one.filled[1]+"\n")
	}
	h.until(18, 47)
	for i, p := range crew()[:3] {
		one := plan()[p.name]
		h.v.openRowAt(i, "bottle.1.after")
		h.typed(one.left[0] + "\n" + one.more[0] + "\n" + one.left[1] + "\n" + one.more[1] + "\n\n" + one.after + "\n")
		h.v.open.focusFirst("urine")
		h.typed("0\n")
		h.v.openRowAt(i, "symptoms")
		h.typed(one.symptom + "\n")
	}
	ready, stay := h.v.closable()
	if len(ready) != 2 || len(stay) != 1 || !strings.HasPrefix(stay[0], "Runa Hollowick: ") || !strings.Contains(stay[0], d.Words.Say("squad.lack.told")) {
		t.Fatalf("%d can be closed, these stay: %q", len(ready), stay)
	}
	h.v.askClose()
	apptest.Click(t, h.w, "squad.close.yes")
	want := map[string]record.TestState{"Tamsin Orrelby": record.TestClosed, "Neve Carrowmere": record.TestClosed, "Runa Hollowick": record.TestOpen}
	states := func(when string) {
		t.Helper()
		for name, state := range want {
			if one := h.kept(name); one.State != state {
				t.Errorf("%s %s is %q, want %q", when, name, one.State, state)
			}
		}
	}
	states("closed:")
	for i := range h.v.rows {
		if r := h.v.rows[i]; r.Closed {
			frozen, err := d.Store.FrozenOf(context.Background(), record.Ref{Kind: record.KindTest, ID: r.Sheet.Test.ID})
			if err != nil || len(frozen) != 1 || frozen[0].Line.Rate == nil {
				t.Errorf("%s: %d frozen copies, %v", r.Sheet.Athlete.Name, len(frozen), err)
			}
		}
	}
	for h.v.Undo() {
		states("after a step back")
	}
	if one := h.kept("Tamsin Orrelby"); len(squad.Masses(one, record.After)) != 1 {
		t.Errorf("a closed sheet lost its mass: %+v", one.Weighings)
	}
	if one := h.kept("Runa Hollowick"); len(one.Weighings) != 0 {
		t.Errorf("the open sheet was not taken back: %+v", one.Weighings)
	}
}

// TestEffortWithoutDecimals: a rating is written as it was given.
func TestEffortWithoutDecimals(t *testing.T) {
	d, clock, id := squadDesk(t, crew()[:1])
	h := openDay(t, d, clock, id, 1186, 700, false, 100)
	if text := h.v.sharedWords(); !strings.Contains(text, "effort 7\u00a0MET") {
		t.Errorf("said %q", text)
	}
	h.v.doc.ChangeSession("", "effort", func(g *record.GroupSession) {
		g.Session.Met, g.Session.Effort = record.Number{}, record.Num(9, quantity.None)
	})
	if text := h.v.sharedWords(); !strings.Contains(text, "effort 9 ") {
		t.Errorf("said %q", text)
	}
}

package squad

import (
	"fmt"
	"strings"
	"testing"

	"ebbwell/app/apptest"
	"ebbwell/internal/consult"
	"ebbwell/internal/quantity"
	"ebbwell/internal/record"
	"ebbwell/internal/squad"
)

// TestBottleUses: a bottle that was shared, poured over or a cup of a volume is entered
// in the row, counts as the own sheet counts it, and asks for no weighing.
func TestBottleUses(t *testing.T) {
	d, clock, id := squadDesk(t, crew()[:1])
	h := openDay(t, d, clock, id, 1186, 700, false, 100)
	if apptest.Has(h.w, "squad.bottle.1.volume") {
		t.Error("the uses stand there unasked")
	}
	h.at("before", "61.8\n")
	h.typed("742\n")
	apptest.Click(t, h.w, "squad.bottles")
	apptest.Type(t, h.w, "squad.bottle.2.volume", "250")
	h.until(18, 47)
	h.v.open.focusFirst("bottle.1.after")
	h.at("bottle.1.after", "402\n")
	h.typed("\n\n")
	h.at("after", "60.7\n")
	h.at("urine", "0\n")
	h.v.open.focusFirst("symptoms")
	h.at("symptoms", "0\n")
	r := h.v.rows[0]
	if drunk, ok := r.Drunk(1); !ok || drunk != 250 || r.State != squad.Done {
		t.Errorf("drunk %v, %s, missing %q", drunk, r.State, r.Missing)
	}
	before := r.Loss.Value
	h.v.pick("squad.bottle.1.use", h.v.open.id, func(s *sheet) { s.Record.Bottles[0].Use = record.UseShared })
	h.v.rebuild()
	apptest.Type(t, h.w, "squad.bottle.1.shareLow", "40")
	apptest.Type(t, h.w, "squad.bottle.1.shareHigh", "60")
	one := h.kept("Tamsin Orrelby")
	if b := one.Bottles[0]; b.Use != record.UseShared || b.ShareLow.Or(0) != 40 || b.ShareHigh.Or(0) != 60 || one.Bottles[1].Volume.Or(0) != 250 {
		t.Errorf("kept %+v", one.Bottles)
	}
	if after := h.v.rows[0].Loss.Value; after >= before {
		t.Errorf("half of a bottle counts as the whole: %.3f L, before %.3f L", after, before)
	}
	if h.v.unfolded = false; !h.v.open.unusual() {
		t.Error("a shared bottle folds away")
	}
}

// TestOddOnce types each mistake, answers the question with a reason once, and finds
// the reason among those that the findings and the printed report name.
func TestOddOnce(t *testing.T) { //nolint:gocognit,funlen // one path through every mistake
	before := [2][2]string{{"742", "688"}, {"741", "690"}}
	for name, c := range map[string]struct {
		mass, after  string
		filled, left [2]string
		says         string
	}{
		"pounds before":    {"136.2", "", before[0], [2]string{}, "squad.odd.pounds"},
		"digits before":    {"16.8", "", before[0], [2]string{}, "squad.odd.digits"},
		"pounds after":     {"61.8", "134.0", before[0], [2]string{"402", "452"}, "squad.odd.pounds"},
		"digits after":     {"61.8", "67.0", before[0], [2]string{"402", "452"}, "squad.odd.digits"},
		"same mass":        {"61.8", "61.8", before[0], [2]string{"402", "452"}, "squad.odd.same"},
		"not drunk from":   {"61.8", "60.7", before[0], [2]string{"742", "452"}, "squad.odd.undrunk"},
		"one value twice":  {"61.8", "60.7", before[0], [2]string{"452", "452"}, "squad.odd.twice"},
		"of the neighbour": {"61.8", "60.7", before[0], [2]string{"431", "452"}, "squad.odd.next"},
		"the row above":    {"61.8", "60.7", before[1], [2]string{"402", "452"}, "squad.odd.row"},
		"another's bottle": {"61.8", "60.7", [2]string{"300", "688"}, [2]string{"640", "452"}, "squad.odd.bottle"},
	} {
		t.Run(name, func(t *testing.T) {
			d, clock, id := squadDesk(t, []person{crew()[1], crew()[0]})
			h := openDay(t, d, clock, id, 1186, 700, false, 100)
			h.v.edit("", h.v.rows[0].Sheet.Test.ID, func(s *sheet) {
				for i, x := range []float64{741, 690} {
					s.Record.Bottles[i].Before = record.Num(x, quantity.Gram)
				}
				s.Record.Bottles[0].After, s.Record.Bottles[1].After = record.Num(431, quantity.Gram), record.Num(520, quantity.Gram)
			})
			h.v.left()
			h.v.openRowAt(1, "before")
			h.at("before", c.mass+"\n")
			for i := range 2 {
				h.v.open.focusFirst(fmt.Sprintf("bottle.%d.before", i+1))
				h.typed(c.filled[i] + "\n")
			}
			h.until(18, 47)
			if c.after != "" {
				for i := range 2 {
					h.v.openRowAt(1, fmt.Sprintf("bottle.%d.after", i+1))
					h.typed(c.left[i] + "\n")
				}
				h.v.openRowAt(1, "after")
				h.typed(c.after + "\n")
			}
			odd := h.v.rows[1].Odd
			if len(odd) != 1 || odd[0].Kept() {
				t.Fatalf("odd %+v", odd)
			}
			title, _ := h.v.oddWords(h.v.rows[1], odd[0])
			if template := d.Words.Say(c.says, "§", "§", "§"); !strings.HasPrefix(title, strings.Split(strings.Split(template, "§")[0], "%!")[0]) {
				t.Errorf("asked %q, want %q", title, template)
			}
			h.v.openRowAt(1, "reason")
			h.at("reason", "looked twice")
			h.key('\n')
			if _, open := openOdd(h.v.rows[1]); open {
				t.Errorf("asked again: %+v", h.v.rows[1].Odd)
			}
			h.kept("Tamsin Orrelby")
			h.v.Leave()
			h = openDay(t, d, clock, id, 1186, 700, false, 100)
			if _, open := openOdd(h.v.rows[1]); open {
				t.Errorf("asked again after opening anew: %+v", h.v.rows[1].Odd)
			}
			reasons := consult.KeptOdds(h.v.rows[1].Found)
			if len(reasons) != 1 || reasons[0].Text != "looked twice" {
				t.Errorf("the findings name %+v", reasons)
			}
		})
	}
}

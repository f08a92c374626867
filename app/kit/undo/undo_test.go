package undo

import (
	"slices"
	"testing"

	"pgregory.net/rapid"
)

func TestOneVisitIsOneStep(t *testing.T) {
	var h History[string]
	state := ""
	for _, next := range []string{"6", "61", "61.7"} {
		h.Record(state, "mass", "mass")
		state = next
	}
	h.EndVisit()
	h.Record(state, "mass", "mass")
	state = "61.9"
	for _, want := range []string{"61.7", ""} {
		got, ok := h.Undo(state)
		if !ok || got != want {
			t.Fatalf("undo gave %q, %v, want %q", got, ok, want)
		}
		state = got
	}
	if _, ok := h.Undo(state); ok {
		t.Error("undo went back past the beginning")
	}
	state, _ = h.Redo(state)
	if state != "61.7" || !h.CanRedo() || h.UndoLabel() != "mass" {
		t.Errorf("redo gave %q, more %v, label %q", state, h.CanRedo(), h.UndoLabel())
	}
	h.Record(state, "", "other")
	if h.CanRedo() {
		t.Error("a new change left a future")
	}
}

func TestKeepsTheNewest(t *testing.T) {
	var h History[int]
	for i := range most + 50 {
		h.Record(i, "", "")
	}
	n, now := 0, most+50
	for h.CanUndo() {
		now, _ = h.Undo(now)
		n++
	}
	if n != most || now != 50 {
		t.Errorf("went back %d steps to %d, want %d to 50", n, now, most)
	}
}

// walker is a history and, beside it, the line of states it should walk.
type walker struct {
	h    History[int]
	line []int
	at   int
}

// change makes a new state; what lay ahead on the line is forgotten.
func (w *walker) change(next int) {
	w.h.Record(w.line[w.at], "", "")
	w.line = append(slices.Clone(w.line[:w.at+1]), next)
	w.at++
}

// step goes one step by undo (-1) or redo (+1) and checks where it came to.
func (w *walker) step(t *rapid.T, by int, go1 func(int) (int, bool)) {
	got, ok := go1(w.line[w.at])
	if to := w.at + by; ok != (to >= 0 && to < len(w.line)) {
		t.Fatalf("a step of %d from %d of %d: %v", by, w.at, len(w.line), ok)
	}
	if ok {
		w.at += by
	}
	if got != w.line[w.at] {
		t.Fatalf("a step of %d gave %d, want %d", by, got, w.line[w.at])
	}
}

// Undo and redo walk the same line whatever the order.
func TestUndoRedoWalkOneLine(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		w := walker{line: []int{0}}
		for range rapid.IntRange(1, 60).Draw(t, "moves") {
			switch rapid.IntRange(0, 2).Draw(t, "move") {
			case 0:
				w.change(rapid.Int().Draw(t, "next"))
			case 1:
				w.step(t, -1, w.h.Undo)
			case 2:
				w.step(t, 1, w.h.Redo)
			}
		}
	})
}

// TestMap: what joins every state is there after a step back and a step forward.
func TestMap(t *testing.T) {
	var h History[string]
	h.Record("a", "", "one")
	h.Record("ab", "", "two")
	state, _ := h.Undo("abc")
	h.Map(func(s string) string { return s + "+" })
	state += "+"
	if back, _ := h.Undo(state); back != "a+" {
		t.Errorf("back to %q", back)
	}
	if on, _ := h.Redo("a+"); on != "ab+" {
		t.Errorf("on to %q", on)
	}
	if on, _ := h.Redo("ab+"); on != "abc+" || h.CanRedo() {
		t.Errorf("on to %q", on)
	}
}

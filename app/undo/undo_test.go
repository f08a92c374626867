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

// Undo and redo walk the same line whatever the order.
func TestUndoRedoWalkOneLine(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		var h History[int]
		line, at := []int{0}, 0
		for range rapid.IntRange(1, 60).Draw(t, "moves") {
			switch rapid.IntRange(0, 2).Draw(t, "move") {
			case 0:
				next := rapid.Int().Draw(t, "next")
				h.Record(line[at], "", "")
				line = append(slices.Clone(line[:at+1]), next)
				at++
			case 1:
				got, ok := h.Undo(line[at])
				if ok != (at > 0) {
					t.Fatalf("undo possible: %v at %d", ok, at)
				}
				if ok {
					at--
				}
				if got != line[at] {
					t.Fatalf("undo gave %d, want %d", got, line[at])
				}
			case 2:
				got, ok := h.Redo(line[at])
				if ok != (at < len(line)-1) {
					t.Fatalf("redo possible: %v at %d of %d", ok, at, len(line))
				}
				if ok {
					at++
				}
				if got != line[at] {
					t.Fatalf("redo gave %d, want %d", got, line[at])
				}
			}
		}
	})
}

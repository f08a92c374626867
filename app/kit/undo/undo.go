// Package undo is the one mechanism by which typing and moving is undone and
// done again. A screen keeps its state in a plain value that it never changes
// in place; before each change it hands the present state to a [History].
//
// One visit to a field, or one drag of a slider, is one step back: changes
// recorded with the same visit join.
package undo

// most is how many steps back are kept; a sheet is a few kilobytes.
const most = 200

// History is the past and the undone future of a state. The zero History is
// empty and ready.
type History[S any] struct {
	past, future []moment[S]
	open         string
}

// moment is a state and the label of the change that followed it.
type moment[S any] struct {
	state S
	label string
}

// Record keeps the state before a change. Changes of one visit (not empty)
// join into one step; label names the change ("water"). What was undone before
// is forgotten.
func (h *History[S]) Record(before S, visit, label string) {
	h.future = nil
	if visit != "" && visit == h.open && len(h.past) > 0 {
		return
	}
	h.open = visit
	h.past = append(h.past, moment[S]{before, label})
	if len(h.past) > most {
		h.past = append([]moment[S](nil), h.past[len(h.past)-most:]...)
	}
}

// EndVisit closes the visit: the next change is a step of its own.
func (h *History[S]) EndVisit() { h.open = "" }

// CanUndo reports whether there is a step back, CanRedo one forward.
func (h *History[S]) CanUndo() bool { return len(h.past) > 0 }

// CanRedo reports whether there is a step forward.
func (h *History[S]) CanRedo() bool { return len(h.future) > 0 }

// UndoLabel names the change that Undo takes back; empty when there is none.
func (h *History[S]) UndoLabel() string {
	if len(h.past) == 0 {
		return ""
	}
	return h.past[len(h.past)-1].label
}

// Undo returns the state before the last step; ok is false when there is none.
func (h *History[S]) Undo(now S) (state S, ok bool) {
	if len(h.past) == 0 {
		return now, false
	}
	last := h.past[len(h.past)-1]
	h.past = h.past[:len(h.past)-1]
	h.future = append(h.future, moment[S]{now, last.label})
	h.open = ""
	return last.state, true
}

// Redo returns the state after the step that was undone last.
func (h *History[S]) Redo(now S) (state S, ok bool) {
	if len(h.future) == 0 {
		return now, false
	}
	next := h.future[len(h.future)-1]
	h.future = h.future[:len(h.future)-1]
	h.past = append(h.past, moment[S]{now, next.label})
	h.open = ""
	return next.state, true
}

// Map changes every state that is kept, those behind and those ahead: for what
// joins all of them and is no step itself.
func (h *History[S]) Map(f func(S) S) {
	for _, list := range [][]moment[S]{h.past, h.future} {
		for i := range list {
			list[i].state = f(list[i].state)
		}
	}
}

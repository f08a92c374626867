package testsheet

import (
	"cmp"
	"slices"

	"ebbwell/internal/consult"
	"ebbwell/internal/evidence"
	"ebbwell/internal/record"
)

// trouble is one thing that is wrong or odd on a sheet.
type trouble struct {
	// code says what: codeProblem for a problem of the calculation, else one of
	// the codes below.
	code    string
	problem evidence.Problem
	// path of the field in the record, part and control it stands in.
	path, part, control string
	// bottle counts from 1 where a bottle is meant.
	bottle int
	// text is what was typed, or the reason a value was kept for.
	text string
	// keepable: the value may be kept with a written reason.
	keepable bool
}

// The codes of a trouble.
const (
	codeProblem    = "problem"
	codeUnreadable = "unreadable"       // the text is no number, day or time
	codeEndsBefore = "end-before-start" // the end does not lie after the start
	codeKept       = "kept"             // beyond its limits, and kept with a reason
)

// refused reports whether the value is not used as it is.
func (w trouble) refused() bool {
	switch w.code {
	case codeProblem:
		return w.problem.Severity == evidence.Refuses
	case codeKept:
		return false
	}
	return true
}

// endsBeforeStart reports whether start and end are both entered and do not
// make a session.
func endsBeforeStart(t record.Test) bool {
	_, ok := t.Session.Minutes()
	return !ok && t.Session.Start != "" && t.Session.End != ""
}

// troubles lists what is wrong with a sheet: what is not used first, then in
// the order of the parts and of the controls. can tells whether a refused value
// would be used if a reason were given.
func troubles(s sheet, f consult.Findings, order []string, can func(reasonPath string, p evidence.Problem) bool) []trouble {
	var list []trouble
	if endsBeforeStart(s.Record) {
		list = append(list, trouble{code: codeEndsBefore, path: "session.end"})
	}
	for path, text := range s.Raw {
		list = append(list, trouble{code: codeUnreadable, path: path, text: text})
	}
	for _, p := range f.Sweat.Problems {
		if w, ok := problemOf(s, p, can); ok {
			list = append(list, w)
		}
	}
	for i := range list {
		list[i].place(s.Record)
	}
	slices.SortStableFunc(list, func(a, b trouble) int {
		return cmp.Or(cmp.Compare(rank(a), rank(b)), cmp.Compare(slices.Index(partList(), a.part), slices.Index(partList(), b.part)),
			cmp.Compare(slices.Index(order, a.control), slices.Index(order, b.control)), cmp.Compare(a.control, b.control))
	})
	return list
}

// rank puts what is not used before what is only asked about.
func rank(w trouble) int {
	if w.refused() {
		return 0
	}
	return 1
}

// problemOf is the trouble a problem makes; ok is false for a question about
// one field, which stands at the field alone.
func problemOf(s sheet, p evidence.Problem, can func(string, evidence.Problem) bool) (w trouble, ok bool) {
	w = trouble{code: codeProblem, problem: p, path: consult.PathOf(s.Record, p)}
	if p.Field == evidence.PatchOn || p.Field == evidence.PatchOff {
		if at := patchAt(&s.Record, p.Item-1); at != nil {
			w.path = "patches." + string(at.ID) + map[evidence.Field]string{evidence.PatchOn: ".on", evidence.PatchOff: ".off"}[p.Field]
		}
	}
	reason := consult.ReasonPath(s.Record, p)
	if w.path == "" {
		w.path = reason
	}
	switch text := s.Reasons[reason]; {
	case p.Severity == evidence.Warns && text != "":
		w.code, w.text, w.path = codeKept, text, reason
	case p.Severity == evidence.Warns && p.Field == evidence.MassChange && p.Value > 0:
		return w, false // a gain is no odd value but a red flag
	case p.Severity == evidence.Warns:
		return w, consult.PathOf(s.Record, p) == "" && aboutFigure(p.Field)
	case p.Code == evidence.CodeOutside && reason != "":
		w.keepable = can(reason, p)
	}
	return w, true
}

// aboutFigure reports whether a field is not entered but worked out, so that
// there is no field to show a question at.
func aboutFigure(f evidence.Field) bool {
	switch f {
	case evidence.Duration, evidence.MassChange, evidence.MassSpread, evidence.SweatRate, evidence.DrinkingRate:
		return true
	}
	return false
}

// place finds part, control and bottle of a trouble.
func (w *trouble) place(t record.Test) {
	w.part, w.control = partOf(t, w.path), controlOf(t, w.path)
	if w.code != codeProblem {
		return
	}
	switch w.problem.Field {
	case evidence.BottleMass, evidence.PouredAway, evidence.RefillMass, evidence.ShareDrunk, evidence.PouredVolume:
		w.bottle = w.problem.Item
	case evidence.PatchOn, evidence.PatchOff:
		w.part = PartUrine
	}
	if w.bottle > 0 {
		w.part = PartBottles
		if w.control == "" {
			w.control = bottleControl(w.bottle, "after")
		}
	}
}

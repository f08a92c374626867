package testsheet

import (
	"ebbwell/internal/consult"
	"ebbwell/internal/record"
	"ebbwell/internal/sweat"
)

// partOf names the part of the sheet that a field stands in, by its path in
// the record; that of a figure is the part of the control it is put right in.
func partOf(t record.Test, path string) string {
	if control, ok := figureControls()[path]; ok {
		return partOfControl(control)
	}
	if f, row, ok := record.SheetFieldAt(&t, path); ok {
		return string(f.PartOf(row))
	}
	return PartBefore
}

// complete lists the parts that have all the balance needs of them and
// nothing wrong in them.
func complete(s sheet, f consult.Findings, wrong []trouble) map[string]bool {
	t := s.Record
	_, timed := t.Session.Minutes()
	urine := t.Loss.NoUrine || t.Loss.Urine.Known()
	marker := t.Urine.NotTaken || t.Urine.Gravity.Known() || t.Urine.Osmolality.Known() || t.Urine.Colour.Known()
	done := map[string]bool{
		PartBefore: t.Session.Date != "" && t.Session.Start != "" && t.Session.Sport != "" &&
			weighed(t, record.Before) && t.Air.Temperature.Known(),
		PartBottles:  (len(t.Bottles) > 0 || t.Loss.NothingDrunk) && !lacks(f, bottleMissing()),
		PartAfter:    timed && urine && weighed(t, record.After) && !lacks(f, []string{sweat.MissingKitDry, sweat.MissingKitWet}),
		PartUrine:    marker && !lacks(f, []string{sweat.MissingSodium}),
		PartFindings: t.State == record.TestClosed,
	}
	for _, w := range wrong {
		if w.refused() {
			done[w.part] = false
		}
	}
	return done
}

// weighed reports whether there is a reading of a moment.
func weighed(t record.Test, m record.Moment) bool {
	for _, i := range weighings(t, m) {
		if t.Weighings[i].Mass.Known() {
			return true
		}
	}
	return false
}

// bottleMissing is what can be missing of bottles and food.
func bottleMissing() []string {
	return []string{
		sweat.MissingDrinks, sweat.MissingBottle, sweat.MissingBottleBefore, sweat.MissingBottleAfter, sweat.MissingFood,
	}
}

// lacks reports whether one of the things is missing.
func lacks(f consult.Findings, ids []string) bool {
	for _, m := range f.Sweat.Missing {
		for _, id := range ids {
			if m.ID == id {
				return true
			}
		}
	}
	return false
}

// step is the next sensible thing to do with a sheet; its words are under
// "testsheet.next." and the code.
type step struct {
	code string
	// part to go to, and the control there; empty for the part's first.
	part, control string
	// item counts bottles from 1.
	item int
	// trouble is what has to be put right, for its name.
	trouble *trouble
}

// The codes of a step.
const (
	stepBottle  = "bottle"  // weigh it again
	stepCheck   = "check"   // look at a value again
	stepPart    = "part"    // go on to the next part
	stepMissing = "missing" // enter what is missing
	stepClose   = "close"
	stepWaiting = "waiting" // close, the laboratory's sodium to come
	stepLate    = "late"    // the laboratory's sodium is in: close for good
	stepNone    = ""
)

// next says what to do from a part of the sheet: first what is wrong on it,
// then the part that follows, at the end closing or what still stands in its
// way.
func next(s sheet, f consult.Findings, wrong []trouble, part string) step {
	t := s.Record
	switch {
	case t.State == record.TestClosed:
		return step{}
	case t.State == record.TestWaiting && f.Waits():
		return step{}
	case t.State == record.TestWaiting:
		return step{code: stepLate}
	}
	for i, w := range wrong {
		if w.refused() && w.part == part {
			return putRight(&wrong[i])
		}
	}
	list := partList()
	for i, p := range list[:len(list)-1] {
		if p == part {
			return step{code: stepPart, part: list[i+1]}
		}
	}
	return ending(f, wrong)
}

// putRight is the step that mends a trouble.
func putRight(w *trouble) step {
	st := step{code: stepCheck, part: w.part, control: w.control, trouble: w}
	if w.bottle > 0 {
		st.code, st.item = stepBottle, w.bottle
	}
	return st
}

// ending is the step from the findings.
func ending(f consult.Findings, wrong []trouble) step {
	for i, w := range wrong {
		if w.refused() {
			return putRight(&wrong[i])
		}
	}
	for _, m := range f.Sweat.Missing {
		if !m.Optional && m.ID != sweat.MissingSodium {
			control := missingControl(m)
			return step{code: stepMissing, part: partOfControl(control), control: control}
		}
	}
	switch {
	case !f.Ready():
		return step{}
	case f.Waits():
		return step{code: stepWaiting}
	}
	return step{code: stepClose}
}

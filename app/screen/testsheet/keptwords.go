package testsheet

import (
	"slices"
	"strings"

	"ebbwell/app/kit/desk"
	"ebbwell/internal/consult"
	"ebbwell/internal/evidence"
	"ebbwell/internal/record"
)

// keptWords say of a closed sheet where its figures come from: those kept when
// it was closed, and whether they would come out otherwise today; or that they
// had to be calculated anew.
func (v *View) keptWords() string {
	t, say, f := v.b.Doc.Now().Record, v.b.Say, v.found
	switch {
	case f.Kept == consult.KeptNothing, f.Kept == consult.KeptMethod, (f.Kept == consult.KeptInputs || f.Kept == consult.KeptHidden) && t.State == record.TestClosed:
		return say("testsheet.kept." + string(f.Kept))
	case t.State == record.TestWaiting:
		return say("testsheet.waiting")
	}
	list := []string{say("testsheet.closed")}
	if f.Evidence != evidence.Version {
		list = append(list, say("testsheet.kept.evidence", f.Evidence, evidence.Version))
	}
	if text := v.differsWords(); text != "" {
		list = append(list, text)
	}
	return strings.Join(list, " ")
}

// alteredWords say that a byte of a closed sheet, or of what was kept when it was closed,
// became another on the disk; empty where none did, and once the sheet is open again.
func (v *View) alteredWords() (title, sentence string) {
	if v.b.Doc.Now().Record.State == record.TestOpen || !v.altered && !slices.ContainsFunc(v.kept, func(f record.Frozen) bool { return f.Altered }) {
		return "", ""
	}
	return v.b.Say("testsheet.altered.title"), v.b.Say("testsheet.altered")
}

// goToCopies leads to where an earlier copy of the records is looked at and restored.
func (v *View) goToCopies() { v.desk.Go(desk.Place{Screen: desk.Practice, Part: desk.PartRecords}) }

// differsWords name the figures that would come out otherwise if the sheet were
// calculated today; empty when none would.
func (v *View) differsWords() string {
	s := v.b.Doc.Now()
	today := consult.Find(s.Record, v.athlete, s.Texts(refOf(s.Record)), v.desk.Calculate())
	differing := v.found.Differing(today)
	if len(differing) == 0 {
		return ""
	}
	var names []string
	for _, name := range headlines() {
		if slices.Contains(differing, name) {
			names = append(names, v.b.Say("testsheet.kept.figure."+name))
		}
	}
	if len(names) == 0 {
		return v.b.Say("testsheet.kept.differs.lesser")
	}
	return v.b.Say("testsheet.kept.differs", v.desk.Words.List(names))
}

// headlines are the figures a difference is named for.
func headlines() []string {
	return []string{"sweat-rate", "deficit", "drunk", "carbohydrate-rate", "sodium-in-rate", "sodium-lost-rate"}
}

// Package testsheet is the Tests tab of an athlete: the sheet of a field sweat
// test, filled in the order of the day, with a running balance beside it that
// says what is missing or odd while it can still be put right, and the
// findings at its end.
//
// [New] opens a sheet, the newest one or a new one. What is entered is a
// sheet value (the record, the texts that could not be read, the reasons for
// values kept all the same); it changes through a [desk.Document], so that
// every keystroke is saved and can be taken back. The functions in sheet.go,
// rows.go, progress.go and trouble.go are pure; the rest is widgets that show
// a sheet and hand back what a person typed. Nothing is calculated here: the
// figures come from package consult.
//
// Five parts stand behind the tabs: before, bottles and food, after, urine and
// patch, findings. The first four are one file or two each; the last is the
// package findings below this one.
package testsheet

import "ebbwell/internal/record"

// The parts of a sheet, as places name them.
const (
	PartBefore   = string(record.SheetBefore)
	PartBottles  = string(record.SheetBottles)
	PartAfter    = string(record.SheetAfter)
	PartUrine    = string(record.SheetUrine)
	PartFindings = "findings"
)

// partList is the parts in the order of the day.
func partList() []string {
	return []string{PartBefore, PartBottles, PartAfter, PartUrine, PartFindings}
}

package exchange

import (
	"strconv"

	"ebbwell/internal/record"
)

// ResultsName is the table of what was worked out. It is written for other programs
// and never read back: it follows from the records.
const ResultsName = "results"

// Result is what was worked out of one test, as the program shows it.
type Result struct {
	TestID, AthleteID record.ID
	Day               record.Date
	// Method is [record.MethodCorrected] or [record.MethodField].
	Method string
	// Rate in L/h, Loss in L, Deficit in % of the mass before and DeficitVolume in L:
	// below zero where the athlete was heavier after.
	Rate, Loss, Deficit, DeficitVolume Measured
}

// Measured is a figure with its 95 % range; an end that is not known is nil.
type Measured struct{ Value, Low, High *float64 }

// Results are the tests' results, in the order they are to stand in.
type Results []Result

// resultColumns are the columns of the table, in order.
func resultColumns() []Column {
	list := []Column{
		{Name: "testID", Holds: HoldsRecord}, {Name: "athleteID", Holds: HoldsRecord},
		{Name: "day", Holds: HoldsDay}, {Name: "method", Holds: HoldsChoice},
	}
	for _, c := range [...]Column{{Name: "rate", Unit: "L/h"}, {Name: "loss", Unit: "L"}, {Name: "deficit", Unit: "%"}, {Name: "deficitVolume", Unit: "L"}} {
		for _, end := range [...]string{"", ".low", ".high"} {
			list = append(list, Column{Name: c.Name + end, Unit: c.Unit, Holds: HoldsNumber})
		}
	}
	return list
}

// table is the results as a table.
func (r Results) table() Table {
	t := Table{Name: ResultsName, Columns: resultColumns()}
	for _, one := range r {
		row := []string{string(one.TestID), string(one.AthleteID), string(one.Day), one.Method}
		for _, m := range [...]Measured{one.Rate, one.Loss, one.Deficit, one.DeficitVolume} {
			for _, x := range [...]*float64{m.Value, m.Low, m.High} {
				text := ""
				if x != nil {
					text = strconv.FormatFloat(*x, 'g', -1, 64)
				}
				row = append(row, text)
			}
		}
		t.Rows = append(t.Rows, row)
	}
	return t
}

// written are the tables of a file, the last of which explains the others.
func written(r Records, results Results, d Dictionary) []Table {
	return append(Tables(r), results.table(), d.table())
}

// notRecords are the tables of a file that are no records.
func notRecords(name string) bool { return name == dictionaryName || name == ResultsName }

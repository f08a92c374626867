// Package exchange turns records into tables that other programs read: one table
// a kind of record and one for each of its lists, a column a field. Nothing that
// was entered is lost: [ReadOwn] reads what was written and gives the same records.
//
// [WriteCSV], [WriteXLSX] and [WriteJSON] write them; the first two with [Results], what
// was worked out of each test. [Dictionary] says what each column means.
package exchange

import (
	"reflect"

	"ebbwell/internal/record"
)

// Records are what is exchanged. A row that was deleted is not among them.
type Records struct {
	Athletes []record.Athlete
	Groups   []record.Group
	Tests    []record.Test
	Sessions []record.GroupSession
	Plans    []record.Plan
	Trips    []record.Trip
	Products []record.Product
}

// Table is one table, all its cells texts.
type Table struct {
	// Name is "tests", or for a list "tests.bottles".
	Name    string
	Columns []Column
	// Rows have a cell for each column.
	Rows [][]string
}

// Column is one column of a table.
type Column struct {
	// Name is the path of the field, "air.temperature"; of the unit a number was
	// typed in, "air.temperature.typed".
	Name string
	// Unit a number is kept in, as a sign; empty for a pure number and a text.
	Unit string
	// Holds says what is in the cells.
	Holds Holds
}

// Holds is what the cells of a column hold.
type Holds string

// What cells hold. A number has a point, whatever the language; a day is
// 2026-05-14, a time of day 17:05, a moment 2026-05-14T15:05:00.25Z.
const (
	HoldsText   Holds = "text"
	HoldsNumber Holds = "number"
	HoldsWhole  Holds = "whole number"
	HoldsYesNo  Holds = "yes or no" // "yes", or empty for no
	HoldsDay    Holds = "day"
	HoldsClock  Holds = "time of day"
	HoldsMoment Holds = "moment"
	HoldsRecord Holds = "id"
	HoldsUnit   Holds = "unit"
	HoldsChoice Holds = "word"
)

// Heading is the column's name with its unit, as it stands above it.
func (c Column) Heading() string {
	if c.Unit == "" {
		return c.Name
	}
	return c.Name + " [" + c.Unit + "]"
}

// Tables writes records as tables, each table in the order of the records.
// Tables without a row are there too, so that what can be entered is seen.
func Tables(r Records) []Table {
	var list []Table
	whole := reflect.ValueOf(r)
	for i := range whole.NumField() {
		list = append(list, newShape(pathName(whole.Type().Field(i).Name), whole.Field(i).Type().Elem()).write(whole.Field(i))...)
	}
	return list
}

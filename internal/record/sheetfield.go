package record

import (
	"strconv"
	"strings"

	"ebbwell/internal/evidence"
	"ebbwell/internal/quantity"
)

// SheetPart is a part of the test sheet, in the order of the day.
type SheetPart string

// The parts a field may stand in.
const (
	SheetBefore  SheetPart = "before"
	SheetBottles SheetPart = "bottles"
	SheetAfter   SheetPart = "after"
	SheetUrine   SheetPart = "urine"
)

// SheetField describes one field of a test sheet: where it is kept, what limits
// it has, where it is entered and in which words, where it is asked on the blank
// sheet. The calculation's entries, the screen with its controls and the blank
// sheet read it from [SheetFields], so that a new field is not forgotten.
type SheetField struct {
	// Path as the store and texts that cannot be read name it, "*" for the id of a
	// row: "session.met", "bottles.*.before".
	Path string
	// Part it is entered in; empty for a weighing, whose moment tells the part, and
	// for what a person does not enter on the sheet.
	Part SheetPart
	// Evidence names its limits; empty where it has none. Item numbers it among
	// others of that name. AtField: what is odd about it is said at the field
	// alone, the calculation names no problem by it.
	Evidence evidence.Field
	Item     int
	AtField  bool
	// Unit a number is kept in.
	Unit quantity.Unit
	// Control is the name of its control, "#" for the number of its row; Label the
	// key of its words on the screen, where they are not those of the history.
	Control, Label string
	// Paper is the key of its words on the blank sheet; empty where it is not asked
	// there.
	Paper string
	// Elsewhere says why a person does not enter it on the sheet.
	Elsewhere string
	// of is the field in a row of its list, or in a test: a pointer.
	of func(row any) any
}

// List is the path of the rows the field is one of, "bottles.*.refills"; empty for
// a field a sheet has once.
func (f SheetField) List() string {
	if i := strings.LastIndex(f.Path, ".*."); i >= 0 {
		return f.Path[:i]
	}
	return ""
}

// Name is the last part of its path.
func (f SheetField) Name() string { return f.Path[strings.LastIndex(f.Path, ".")+1:] }

// History is the key of its words in the list of corrections.
func (f SheetField) History() string {
	return "testsheet.field." + strings.ReplaceAll(f.Path, ".*", "")
}

// Words is the key of its words on the screen.
func (f SheetField) Words() string {
	if f.Label != "" {
		return f.Label
	}
	return f.History()
}

// Number is the field of a sheet that has it once; nil for another kind.
func (f SheetField) Number(t *Test) *Number {
	n, _ := f.in(t).(*Number)
	return n
}

// NumberIn is the field of a row: a *Bottle, *Refill, *FoodEaten, *Patch,
// *Weighing; nil for another kind.
func (f SheetField) NumberIn(row any) *Number {
	n, _ := f.of(row).(*Number)
	return n
}

// in is the field of a sheet that has it once.
func (f SheetField) in(t *Test) any {
	if f.List() != "" {
		return nil
	}
	return f.of(t)
}

// SheetFieldOf finds the field of a path, with the ids of rows or with "*".
func SheetFieldOf(path string) (f SheetField, ok bool) {
	path = starred(path)
	for _, f := range SheetFields() {
		if f.Path == path {
			return f, true
		}
	}
	return SheetField{Path: path}, false
}

// starred is a path with "*" for the ids of rows.
func starred(path string) string {
	parts := strings.Split(path, ".")
	for i := 1; i < len(parts); i += 2 {
		if !isList(strings.Join(parts[:i], ".")) {
			break
		}
		parts[i] = "*"
	}
	return strings.Join(parts, ".")
}

// isList reports whether a path is that of rows.
func isList(path string) bool {
	switch path {
	case "weighings", "bottles", "bottles.*.refills", "foods", "patches", "partway", "safety":
		return true
	}
	return false
}

// SheetRow is a row of a sheet.
type SheetRow struct {
	// Path is "bottles.<id>"; empty for the sheet itself.
	Path string
	// Number counts from 1 in its list; that of a weighing counts those of its
	// moment. A refill has the number of its bottle, and Within counts it there.
	Number, Within int
	// Of is the row: a *Test, *Weighing, *Bottle …
	Of any
}

// SheetRows lists the rows of a list of a sheet; the sheet itself for "".
func SheetRows(t *Test, list string) []SheetRow {
	var rows []SheetRow
	add := func(id ID, i int, of any) {
		rows = append(rows, SheetRow{Path: list + "." + string(id), Number: i + 1, Of: of})
	}
	switch list {
	case "":
		return []SheetRow{{Of: t}}
	case "weighings":
		count := map[Moment]int{}
		for i := range t.Weighings {
			w := &t.Weighings[i]
			add(w.ID, count[w.Moment], w)
			count[w.Moment]++
		}
	case "bottles":
		for i := range t.Bottles {
			add(t.Bottles[i].ID, i, &t.Bottles[i])
		}
	case "bottles.*.refills":
		for i := range t.Bottles {
			for j := range t.Bottles[i].Refills {
				r := &t.Bottles[i].Refills[j]
				path := "bottles." + string(t.Bottles[i].ID) + ".refills." + string(r.ID)
				rows = append(rows, SheetRow{Path: path, Number: i + 1, Within: j + 1, Of: r})
			}
		}
	case "foods":
		for i := range t.Foods {
			add(t.Foods[i].ID, i, &t.Foods[i])
		}
	case "patches":
		for i := range t.Patches {
			add(t.Patches[i].ID, i, &t.Patches[i])
		}
	}
	return rows
}

// SheetNumber is a number of a sheet.
type SheetNumber struct {
	Field SheetField
	// Path in the record, and the number of its row from 1; 0 where a sheet has it
	// once.
	Path   string
	Row    int
	Number Number
	// Of is the row it stands in.
	Of any
}

// SheetNumbers lists every number of a sheet in the order it is entered.
func SheetNumbers(t *Test) []SheetNumber {
	var list []SheetNumber
	all := SheetFields()
	for from := 0; from < len(all); {
		to, rows := from+1, all[from].List()
		for to < len(all) && all[to].List() == rows {
			to++
		}
		for _, row := range SheetRows(t, rows) {
			for _, f := range all[from:to] {
				if n := f.NumberIn(row.Of); n != nil {
					list = append(list, SheetNumber{f, f.pathIn(row), row.Number, *n, row.Of})
				}
			}
		}
		from = to
	}
	return list
}

// pathIn is the path of the field in a row.
func (f SheetField) pathIn(row SheetRow) string {
	if row.Path == "" {
		return f.Path
	}
	return row.Path + "." + f.Name()
}

// ControlOf names the control of the field in a row.
func (f SheetField) ControlOf(row SheetRow) string {
	name := strings.Replace(f.Control, "#", strconv.Itoa(row.Number), 1)
	name = strings.Replace(name, "#", strconv.Itoa(row.Within), 1)
	if w, ok := row.Of.(*Weighing); ok {
		name = strings.Replace(name, "@", string(w.Moment), 1)
	}
	return name
}

// PartOf is the part the field is entered in, in a row.
func (f SheetField) PartOf(row SheetRow) SheetPart {
	w, ok := row.Of.(*Weighing)
	switch {
	case !ok:
		return f.Part
	case w.Moment == After:
		return SheetAfter
	}
	return SheetBefore
}

// SheetFieldAt finds the field of a path of a sheet and the row it stands in; ok is
// false where the sheet has no such row.
func SheetFieldAt(t *Test, path string) (f SheetField, row SheetRow, ok bool) {
	f, ok = SheetFieldOf(path)
	if !ok {
		return f, row, false
	}
	for _, row := range SheetRows(t, f.List()) {
		if f.pathIn(row) == path {
			return f, row, true
		}
	}
	return f, row, false
}

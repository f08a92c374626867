package bind

import (
	"strconv"

	"ebbwell/app/kit/field"
	"ebbwell/internal/record"
)

// SheetNumber binds a number that a test sheet has once, as it is described in
// [record.SheetFields]: its control, limits, unit and part.
func SheetNumber(b *Binder[record.Test], f record.SheetField) *field.Number {
	return b.Number(string(f.Part), f.Control, f.Evidence, f.Unit, At(f.Path, f.Number))
}

// RowOf finds a row of a sheet, such as the second bottle, and its path; with grow it
// is added. It is nil where there is none.
type RowOf func(t *record.Test, grow bool) (row any, path string)

// SheetRowNumber binds a number of a row of a test sheet, as it is described; row
// says which row it is, from 1, for the name of its control.
func SheetRowNumber(b *Binder[record.Test], f record.SheetField, row record.SheetRow, at RowOf) *field.Number {
	n := b.Number(string(f.Part), f.ControlOf(row), f.Evidence, f.Unit, func(t *record.Test, grow bool) (*record.Number, string) {
		found, path := at(t, grow)
		if found == nil {
			return nil, ""
		}
		return f.NumberIn(found), path + "." + f.Name()
	})
	n.SetItem(row.Number)
	n.SetSpoken(b.Say("field.spoken.row", b.Say(f.History()), strconv.Itoa(row.Number)))
	return n
}

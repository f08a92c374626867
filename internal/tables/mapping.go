package tables

import (
	"encoding/json"
	"fmt"
	"slices"

	"ebbwell/internal/quantity"
	"ebbwell/internal/record"
)

// Order is the order of day, month and year in a date that is all numbers; one that
// begins with four digits is year, month, day whatever the order.
type Order string

// The orders.
const (
	DayMonthYear Order = "dmy"
	MonthDayYear Order = "mdy"
	YearMonthDay Order = "ymd"
)

// Mapping says how a sheet is read.
type Mapping struct {
	Kind record.ImportKind
	// Sheet is the name of the sheet; empty for a text file.
	Sheet string
	// Heading is the row of the headings, from 0; UnitRow: units stand in the row below.
	Heading int
	UnitRow bool
	// Grouped: the row above the headings has groups of columns, "Body mass" over "before"
	// and "after".
	Grouped bool
	// Columns has one for each column of the sheet.
	Columns []Column
	Order   Order
	// Ordered: somebody chose the order of day and month, so that it is not asked again.
	Ordered bool
	// DecimalComma: in texts a comma is the decimal sign.
	DecimalComma bool
	// Begin is the start that is entered where only the duration is known; empty: such
	// a row is a fault.
	Begin record.Clock
}

// Column is what one column means.
type Column struct {
	Heading string
	Target  Target
	Unit    quantity.Unit
	// Site is where a patch sat.
	Site record.Site
	// FromValues: no heading gives the unit, it was chosen by the values.
	FromValues bool
}

// Marshal writes a mapping for a template.
func (m Mapping) Marshal() ([]byte, error) {
	data, err := json.Marshal(m)
	if err != nil {
		return nil, fmt.Errorf("write a mapping: %w", err)
	}
	return data, nil
}

// ReadMapping reads what [Mapping.Marshal] wrote; words it does not know are left out.
func ReadMapping(data []byte) (Mapping, error) {
	var m Mapping
	if err := json.Unmarshal(data, &m); err != nil {
		return Mapping{}, fmt.Errorf("read a mapping: %w", err)
	}
	if m.Heading < 0 || m.Heading > MostRows || len(m.Columns) > MostColumns {
		return Mapping{}, fmt.Errorf("read a mapping: %w", ErrNotTable)
	}
	m.Grouped = m.Grouped && m.Heading > 0
	if _, ok := m.Begin.Minutes(); !ok {
		m.Begin = ""
	}
	for i := range m.Columns {
		m.Columns[i] = m.Columns[i].sound(m.Kind)
	}
	return m, nil
}

// sound is a column with a target, a unit and a site that there are.
func (c Column) sound(kind record.ImportKind) Column {
	if !slices.Contains(Targets(kind), c.Target) {
		c.Target = Unused
	}
	if units := c.Target.Units(); !slices.Contains(units, c.Unit) {
		c.Unit = ""
		if len(units) > 0 {
			c.Unit = units[0]
		}
	}
	if !c.Target.Sited() || !slices.Contains(Sites(), c.Site) {
		c.Site = ""
	}
	return c
}

// With is the mapping with another meaning for a column; what else means it, where
// only one may, is left out.
func (m Mapping) With(column int, t Target) Mapping {
	m.Columns = slices.Clone(m.Columns)
	if column < 0 || column >= len(m.Columns) {
		return m
	}
	if of, ok := meaningOf(t); ok && !of.many && t != Worked {
		for i := range m.Columns {
			if m.Columns[i].Target == t {
				m.Columns[i].Target, m.Columns[i].Unit = Unused, ""
			}
		}
	}
	c := m.Columns[column]
	c.Target, c.FromValues = t, false
	if t.Sited() && c.Site == "" {
		c.Site, _ = SiteOf(c.Heading)
	}
	m.Columns[column] = c.sound(m.Kind)
	return m
}

// Of returns a file of another kind: columns that mean nothing in it are left out.
func (m Mapping) Of(kind record.ImportKind) Mapping {
	m.Kind, m.Columns = kind, slices.Clone(m.Columns)
	for i := range m.Columns {
		m.Columns[i] = m.Columns[i].sound(kind)
	}
	return m
}

// first returns the column of a target; -1 where there is none.
func (m Mapping) first(t Target) int {
	return slices.IndexFunc(m.Columns, func(c Column) bool { return c.Target == t })
}

// data is the first row below the headings.
func (m Mapping) data() int {
	if m.UnitRow {
		return m.Heading + 2
	}
	return m.Heading + 1
}

// Rows is the rows below the headings that hold something and are not the headings again,
// by their place in the sheet.
func (m Mapping) Rows(s Sheet) []int {
	var list []int
	for i := m.data(); i < len(s.Rows); i++ {
		if !saysNothing(s.Rows[i]) && !m.repeatsHeading(s, i) {
			list = append(list, i)
		}
	}
	return list
}

// Find returns the sheet a mapping is of.
func (m Mapping) Find(b Book) (Sheet, bool) {
	at := slices.IndexFunc(b.Sheets, func(s Sheet) bool { return s.Name == m.Sheet })
	if at < 0 {
		return Sheet{}, false
	}
	return b.Sheets[at], true
}

// Fit applies a template to a book: by the headings, wherever they stand. ok is false
// where a heading it uses is not there, or where more than a fifth of those there are
// new to it.
func (m Mapping) Fit(b Book) (fitted Mapping, ok bool) {
	for _, s := range b.Sheets {
		for row := range min(len(s.Rows), headingRows) {
			if m.Grouped && row == 0 {
				continue
			}
			if fitted, ok = m.fitRow(s, row); ok {
				return fitted, true
			}
		}
	}
	return Mapping{}, false
}

// fitRow applies a template to a sheet with its headings in one row.
func (m Mapping) fitRow(s Sheet, row int) (Mapping, bool) {
	names, unitRow := headings(s, row, m.Grouped)
	used := make([]bool, len(m.Columns))
	fresh, filled := 0, 0
	fitted := m
	fitted.Sheet, fitted.Heading, fitted.UnitRow, fitted.Columns = s.Name, row, unitRow, nil
	for _, name := range names {
		c := Column{Heading: name}
		if worded(name) != "" {
			filled++
			at := slices.IndexFunc(m.Columns, func(old Column) bool { return worded(old.Heading) == worded(name) })
			for at >= 0 && used[at] {
				next := slices.IndexFunc(m.Columns[at+1:], func(old Column) bool { return worded(old.Heading) == worded(name) })
				if next < 0 {
					at = -1
					break
				}
				at += 1 + next
			}
			if at >= 0 {
				c, used[at] = m.Columns[at], true
				c.Heading = name
			} else {
				fresh++
			}
		}
		fitted.Columns = append(fitted.Columns, c)
	}
	meant := 0
	for i, c := range m.Columns {
		if c.Target != Unused && c.Target != Worked {
			if meant++; !used[i] {
				return Mapping{}, false
			}
		}
	}
	return fitted, meant > 0 && fresh*5 <= filled
}

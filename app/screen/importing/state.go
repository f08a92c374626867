// Package importing is the screen on which a file of tests, athletes or results of a
// laboratory is read: which file, what its columns mean, what is wrong or odd, and what
// came of it. Nothing is written before the person says so.
package importing

import (
	"errors"
	"maps"
	"slices"

	"ebbwell/internal/record"
	"ebbwell/internal/tables"
)

// phase is how far an import is.
type phase int

const (
	choosing phase = iota
	checking       // the columns are known; what they give is shown
	writing
	done
)

// state is an import as it is open, without anything drawn.
type state struct {
	phase phase
	// file is its name.
	file    string
	book    tables.Book
	mapping tables.Mapping
	// template is the one the file was known by; its name is empty for none.
	template record.ImportTemplate
	draft    tables.Draft
	// own are the records of a file this program wrote; nil for another file.
	own *tables.Own
	// another are the rows that are imported though the same is there; without leaves
	// out every row with a fault.
	another map[int]bool
	without bool
}

// mentions is who and which days the file speaks of.
func (s *state) mentions(today record.Date) tables.Mentioned {
	if s.own == nil {
		return tables.Mentions(s.book, s.mapping, today)
	}
	return s.own.Mentions()
}

// choice is what was decided about the rows.
func (s *state) choice() tables.Choice {
	c := tables.Choice{LeaveOut: map[int]bool{}, Another: s.another}
	if s.without {
		for _, row := range s.faulty() {
			c.LeaveOut[row] = true
		}
	}
	return c
}

// faulty lists the rows with a fault, each once.
func (s *state) faulty() []int {
	rows := map[int]bool{}
	for _, f := range s.draft.Faults {
		if f.Row >= 0 {
			rows[f.Row] = true
		}
	}
	return slices.Sorted(maps.Keys(rows))
}

// twins lists the rows that are there already.
func (s *state) twins() []tables.RowDraft {
	var list []tables.RowDraft
	for _, r := range s.draft.Rows {
		if r.Twin.Any() {
			list = append(list, r)
		}
	}
	return list
}

// ready reports whether something is imported and nothing stands against it.
func (s *state) ready() bool {
	t := s.draft.Take(s.choice())
	return !s.draft.OrderOpen() && len(s.draft.Standing(s.choice())) == 0 && len(t.Athletes)+len(t.Tests)+len(t.Results) > 0
}

// sheet is the sheet that is read.
func (s *state) sheet() tables.Sheet {
	sheet, _ := s.mapping.Find(s.book)
	return sheet
}

// errorKey is the key of the words for a file that cannot be read.
func errorKey(err error) string {
	for _, known := range []struct {
		err error
		key string
	}{
		{tables.ErrEmpty, "import.error.empty"}, {tables.ErrBytes, "import.error.bytes"}, {tables.ErrRows, "import.error.rows"},
		{tables.ErrColumns, "import.error.columns"}, {tables.ErrCell, "import.error.cell"}, {tables.ErrSheets, "import.error.sheets"},
		{tables.ErrOldBook, "import.error.old"}, {tables.ErrLocked, "import.error.locked"}, {tables.ErrNotTable, "import.error.table"},
	} {
		if errors.Is(err, known.err) {
			return known.key
		}
	}
	return ""
}

package tables

import (
	"bytes"
	"errors"
)

// What a file may hold at most; more is refused before it fills the memory.
const (
	MostBytes    = 32 << 20  // of a file as it lies on the disk
	MostUnpacked = 192 << 20 // of a workbook, unpacked
	MostRows     = 20_000
	MostColumns  = 300
	MostCell     = 4_000 // characters of a cell
	MostSheets   = 60
)

// Why a file cannot be read. The errors of [Open] wrap one of these.
var (
	// ErrEmpty means: there is nothing in it.
	ErrEmpty = errors.New("the file is empty")
	// ErrBytes means: the file, or what it unpacks to, is too large.
	ErrBytes = errors.New("the file is too large")
	// ErrRows means: too many rows.
	ErrRows = errors.New("a sheet has too many rows")
	// ErrColumns means: too many columns.
	ErrColumns = errors.New("a row has too many columns")
	// ErrCell means: a cell with a text that is too long.
	ErrCell = errors.New("a cell is too long")
	// ErrSheets means: too many sheets.
	ErrSheets = errors.New("the workbook has too many sheets")
	// ErrOldBook means: a workbook of the kind before 2007.
	ErrOldBook = errors.New("the workbook is of an old kind")
	// ErrLocked means: a workbook under a password.
	ErrLocked = errors.New("the workbook is locked")
	// ErrNotTable means: neither a workbook nor a text with separators.
	ErrNotTable = errors.New("the file is no table")
)

// Book is a file as it was read.
type Book struct {
	Sheets []Sheet
	// Encoding and Separator say how a text file was understood; empty and zero for a
	// workbook.
	Encoding  Encoding
	Separator rune
}

// Sheet is one table of cells. Rows may be of any length.
type Sheet struct {
	// Name is empty for a text file.
	Name string
	Rows [][]Cell
	// Spans are its merged cells.
	Spans []Span
}

// Cell is one cell.
type Cell struct {
	// Text is what stands there without the spaces around it. A day a workbook keeps
	// as a number is "2026-05-14", a time of day "17:05", both "2026-05-14 17:05".
	Text string
	// Number: a workbook keeps it as a number, so that its point is a decimal point.
	Number bool
}

// Open reads a file. What it is is seen from its bytes, not from its name.
func Open(data []byte) (Book, error) {
	switch {
	case len(data) == 0:
		return Book{}, ErrEmpty
	case len(data) > MostBytes:
		return Book{}, ErrBytes
	case bytes.HasPrefix(data, []byte("PK\x03\x04")):
		return openWorkbook(data)
	case bytes.HasPrefix(data, []byte("\xd0\xcf\x11\xe0")): // a compound file: before 2007, or encrypted
		if bytes.Contains(data, []byte("E\x00n\x00c\x00r\x00y\x00p\x00t")) {
			return Book{}, ErrLocked
		}
		return Book{}, ErrOldBook
	}
	return openText(data)
}

// At returns a cell by row and column, both from 0; an empty one beyond the end.
func (s Sheet) At(row, column int) Cell {
	if row < 0 || column < 0 || row >= len(s.Rows) || column >= len(s.Rows[row]) {
		return Cell{}
	}
	return s.Rows[row][column]
}

// Width is the number of columns of the longest row.
func (s Sheet) Width() int {
	most := 0
	for _, row := range s.Rows {
		most = max(most, len(row))
	}
	return most
}

// Letters names a column as a spreadsheet does: 0 is "A", 26 is "AA".
func Letters(column int) string {
	name := ""
	for n := column + 1; n > 0; n = (n - 1) / 26 {
		name = string(rune('A'+(n-1)%26)) + name
	}
	return name
}

// blank reports whether nothing stands in a row.
func blank(row []Cell) bool {
	for _, c := range row {
		if c.Text != "" {
			return false
		}
	}
	return true
}

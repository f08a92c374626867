package tables

import (
	"archive/zip"
	"bytes"
	"errors"
	"fmt"
	"math"
	"strconv"
	"strings"
	"time"

	"github.com/xuri/excelize/v2"
)

// openWorkbook reads a workbook: the values as they are kept, no formula is worked
// out.
func openWorkbook(data []byte) (b Book, err error) {
	if err := unpacks(data); err != nil {
		return Book{}, err
	}
	book, err := excelize.OpenReader(bytes.NewReader(data), excelize.Options{UnzipSizeLimit: MostUnpacked, UnzipXMLSizeLimit: MostUnpacked})
	if err != nil {
		return Book{}, fmt.Errorf("%w: %w", ErrNotTable, err)
	}
	defer func() { err = errors.Join(err, book.Close()) }()
	names := book.GetSheetList()
	if len(names) > MostSheets {
		return Book{}, ErrSheets
	}
	later := false
	if props, err := book.GetWorkbookProps(); err == nil && props.Date1904 != nil {
		later = *props.Date1904
	}
	formulas, merged := unworked(data)
	for _, name := range names {
		rows, err := sheetRows(book, name, later, formulas[name])
		if err != nil {
			return Book{}, err
		}
		b.Sheets = append(b.Sheets, Sheet{Name: name, Rows: rows}.withSpans(merged[name]))
	}
	return b, nil
}

// unpacks refuses an archive that says, or lies about, how much is in it: the
// sizes are added up before anything is unpacked, and the library holds to its own
// limit while it does.
func unpacks(data []byte) error {
	archive, err := zip.NewReader(bytes.NewReader(data), int64(len(data)))
	if err != nil {
		return fmt.Errorf("%w: %w", ErrNotTable, err)
	}
	sum := uint64(0)
	for _, f := range archive.File {
		if sum += f.UncompressedSize64; f.UncompressedSize64 > MostUnpacked || sum > MostUnpacked {
			return ErrBytes
		}
	}
	return nil
}

// sheetRows reads a sheet. Each cell is asked for as it is kept and as it is shown:
// how it is shown tells a day and a time of day from a number.
func sheetRows(book *excelize.File, name string, later bool, formulas map[string]bool) (rows [][]Cell, err error) {
	kept, err := book.Rows(name)
	if err != nil {
		var kind excelize.ErrSheetNotExist
		if errors.As(err, &kind) { // a chart
			return nil, nil
		}
		return nil, fmt.Errorf("%w: %w", ErrNotTable, err)
	}
	defer func() { err = errors.Join(err, kept.Close()) }()
	shown, err := book.Rows(name)
	if err != nil {
		return nil, fmt.Errorf("%w: %w", ErrNotTable, err)
	}
	defer func() { err = errors.Join(err, shown.Close()) }()
	for kept.Next() && shown.Next() {
		raw, err := kept.Columns(excelize.Options{RawCellValue: true})
		if err != nil {
			return nil, fmt.Errorf("%w: %w", ErrNotTable, err)
		}
		seen, err := shown.Columns()
		if err != nil {
			return nil, fmt.Errorf("%w: %w", ErrNotTable, err)
		}
		row := make([]Cell, 0, min(len(raw), MostColumns))
		for i, text := range raw {
			row = append(row, workbookCell(text, textAt(seen, i), later))
		}
		if rows, err = addRow(rows, marked(row, len(rows), formulas)); err != nil {
			return nil, err
		}
	}
	if err := kept.Error(); err != nil {
		return nil, fmt.Errorf("%w: %w", ErrNotTable, err)
	}
	for len(rows) > 0 && blank(rows[len(rows)-1]) {
		rows = rows[:len(rows)-1]
	}
	return rows, nil
}

// textAt is a text of a list; empty beyond its end.
func textAt(list []string, i int) string {
	if i >= len(list) {
		return ""
	}
	return list[i]
}

// workbookCell is a cell of what is kept and what is shown.
func workbookCell(kept, shown string, later bool) Cell {
	x, err := strconv.ParseFloat(kept, 64)
	if err != nil || math.IsInf(x, 0) || math.IsNaN(x) {
		return Cell{Text: kept}
	}
	day, clock := shownDay(shown), strings.Contains(shown, ":")
	switch {
	case strings.HasSuffix(strings.TrimSpace(shown), "%"):
		return Cell{Text: plainNumber(x*100) + " %", Number: true}
	case !day && !clock || x < 0 || x > lastSerial:
		return Cell{Text: plainNumber(x), Number: true}
	case day && x >= 1:
		at, err := excelize.ExcelDateToTime(x, later)
		if err != nil {
			return Cell{Text: plainNumber(x), Number: true}
		}
		at = at.Round(time.Second)
		if at.Hour() == 0 && at.Minute() == 0 {
			return Cell{Text: at.Format(time.DateOnly)}
		}
		return Cell{Text: at.Format("2006-01-02 15:04")}
	}
	seconds := int(math.Round(x * 24 * 60 * 60))
	text := fmt.Sprintf("%02d:%02d", seconds/3600, seconds/60%60)
	if seconds%60 > 0 {
		text += fmt.Sprintf(":%02d", seconds%60)
	}
	return Cell{Text: text}
}

// lastSerial is 31 December 9999 as workbooks count days.
const lastSerial = 2958465.99

// shownDay reports whether a number is shown as a day: with two marks between
// digits, or with the name of a month.
func shownDay(shown string) bool {
	marks := 0
	for i, r := range shown {
		if i > 0 && (r == '-' || r == '/' || r == '.') {
			marks++
		}
	}
	if marks >= 2 {
		return true
	}
	for _, word := range wordsOf(shown) {
		if monthNamed(word) > 0 {
			return true
		}
	}
	return false
}

// plainNumber writes a number as it would be typed, to the 15 digits that a
// workbook keeps.
func plainNumber(x float64) string {
	if rounded, err := strconv.ParseFloat(strconv.FormatFloat(x, 'g', 15, 64), 64); err == nil {
		x = rounded
	}
	return strconv.FormatFloat(x, 'f', -1, 64)
}

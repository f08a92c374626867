package exchange

import (
	"errors"
	"fmt"
	"io"
	"strconv"
	"unicode/utf8"

	"github.com/xuri/excelize/v2"
)

// mostCell is the longest text a cell of a workbook holds (Excel specifications
// and limits).
const mostCell = 32767

// ErrLongCell means: a text is longer than a workbook's cell holds.
var ErrLongCell = errors.New("a text is longer than a workbook's cell holds")

// WriteXLSX writes a workbook with a sheet for each table, one of what was worked out
// and one that explains the columns. Numbers are numbers, kept to 15 digits as workbooks do; a text is
// a text, whatever it begins with.
func WriteXLSX(to io.Writer, r Records, results Results, d Dictionary) (err error) {
	book := excelize.NewFile()
	defer func() { err = errors.Join(err, book.Close()) }()
	for i, t := range written(r, results, d) {
		if i == 0 {
			err = book.SetSheetName(book.GetSheetName(0), t.Name)
		} else {
			_, err = book.NewSheet(t.Name)
		}
		if err == nil {
			err = writeSheet(book, t)
		}
		if err != nil {
			return fmt.Errorf("write sheet %s: %w", t.Name, err)
		}
	}
	if _, err := book.WriteTo(to); err != nil {
		return fmt.Errorf("write the workbook: %w", err)
	}
	return nil
}

// writeSheet writes one table, row after row.
func writeSheet(book *excelize.File, t Table) error {
	w, err := book.NewStreamWriter(t.Name)
	if err != nil {
		return err
	}
	rows := append([][]string{headings(t)}, guarded(t)...)
	for i, row := range rows {
		cells := make([]any, len(row))
		for j, text := range row {
			if cells[j], err = workbookCell(text, i > 0 && t.Columns[j].Holds.numeric()); err != nil {
				return err
			}
		}
		if err := w.SetRow("A"+strconv.Itoa(i+1), cells); err != nil {
			return err
		}
	}
	return w.Flush()
}

// workbookCell is a text or a number as a workbook wants it.
func workbookCell(text string, number bool) (any, error) {
	if utf8.RuneCountInString(text) > mostCell {
		return nil, ErrLongCell
	}
	if !number || text == "" {
		return text, nil
	}
	x, err := strconv.ParseFloat(text, 64)
	if err == nil {
		// The library cuts off what is beyond; a measured value is rounded.
		x, err = strconv.ParseFloat(strconv.FormatFloat(x, 'g', bookDigits, 64), 64)
	}
	if err != nil {
		return nil, fmt.Errorf("write a number: %w", err)
	}
	return x, nil
}

// bookDigits is how many digits of a number a workbook keeps (Excel
// specifications and limits).
const bookDigits = 15

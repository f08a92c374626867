package exchange

import (
	"errors"
	"fmt"
	"io"

	"github.com/xuri/excelize/v2"
)

// ReadXLSX reads what [WriteXLSX] wrote, or what was changed in it.
func ReadXLSX(from io.Reader) (records Records, faults []Fault, err error) {
	book, err := openBook(from)
	if err != nil {
		return Records{}, nil, err
	}
	defer func() { err = errors.Join(err, book.Close()) }()
	held := heldBy()
	var tables []Table
	for _, name := range book.GetSheetList() {
		if notRecords(name) {
			continue
		}
		rows, err := sheetRows(book, name)
		if err != nil {
			return Records{}, nil, err
		}
		t, err := tableOf(name, rows, held[name])
		if err != nil {
			return Records{}, nil, fmt.Errorf("read sheet %s: %w", name, err)
		}
		tables = append(tables, t)
	}
	return readTables(tables)
}

// openBook opens a workbook that does not unpack to more than is read.
func openBook(from io.Reader) (*excelize.File, error) {
	book, err := excelize.OpenReader(from, excelize.Options{RawCellValue: true, UnzipSizeLimit: MostBytes, UnzipXMLSizeLimit: MostBytes / 4})
	if err != nil {
		return nil, fmt.Errorf("open the workbook: %w", err)
	}
	return book, nil
}

// sheetRows reads the cells of a sheet, as they are stored.
func sheetRows(book *excelize.File, name string) (rows [][]string, err error) {
	in, err := book.Rows(name)
	if err != nil {
		return nil, fmt.Errorf("read sheet %s: %w", name, err)
	}
	defer func() { err = errors.Join(err, in.Close()) }()
	for in.Next() {
		row, err := in.Columns(excelize.Options{RawCellValue: true})
		if err != nil {
			return nil, fmt.Errorf("read sheet %s: %w", name, err)
		}
		if rows = append(rows, row); len(rows) > MostRows || len(row) > MostColumns {
			return nil, ErrTooLarge
		}
	}
	if err := in.Error(); err != nil {
		return nil, fmt.Errorf("read sheet %s: %w", name, err)
	}
	return rows, nil
}

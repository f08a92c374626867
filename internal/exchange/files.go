package exchange

import (
	"archive/zip"
	"encoding/csv"
	"encoding/json"
	"fmt"
	"io"
)

// format stands in a JSON file, so that a later version knows what it reads.
const format = "ebbwell records 1"

// WriteCSV writes a zip with a CSV file for each table, one of what was worked out,
// "results.csv", and one that explains the columns, "dictionary.csv". The files are UTF-8, with a mark at the
// beginning by which spreadsheets know it.
func WriteCSV(to io.Writer, r Records, results Results, d Dictionary) error {
	archive := zip.NewWriter(to)
	if err := WriteCSVInto(archive, r, results, d); err != nil {
		return err
	}
	if err := archive.Close(); err != nil {
		return fmt.Errorf("write tables: %w", err)
	}
	return nil
}

// WriteCSVInto is [WriteCSV] into a zip that holds something else too.
func WriteCSVInto(archive *zip.Writer, r Records, results Results, d Dictionary) error {
	for _, t := range written(r, results, d) {
		w, err := archive.Create(t.Name + ".csv")
		if err == nil {
			err = writeCSV(w, t)
		}
		if err != nil {
			return fmt.Errorf("write table %s: %w", t.Name, err)
		}
	}
	return nil
}

// byteOrderMark begins a UTF-8 file for a spreadsheet.
const byteOrderMark = "\ufeff"

// writeCSV writes one table.
func writeCSV(to io.Writer, t Table) error {
	if _, err := io.WriteString(to, byteOrderMark); err != nil {
		return err
	}
	w := csv.NewWriter(to)
	w.UseCRLF = true // RFC 4180
	if err := w.Write(headings(t)); err != nil {
		return err
	}
	// A row of one empty cell is written by the package as an empty line, which
	// is read as none; no table here has one column.
	return w.WriteAll(guarded(t))
}

// headings is the first row of a table.
func headings(t Table) []string {
	all := make([]string, len(t.Columns))
	for i, c := range t.Columns {
		all[i] = c.Heading()
	}
	return all
}

// file is how records stand in a JSON file.
type file struct {
	Format  string
	Records Records
}

// WriteJSON writes records as JSON, with the names this program's source uses.
func WriteJSON(to io.Writer, r Records) error {
	e := json.NewEncoder(to)
	e.SetIndent("", "  ")
	if err := e.Encode(file{format, r}); err != nil {
		return fmt.Errorf("write records: %w", err)
	}
	return nil
}

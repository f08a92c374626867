package exchange

import (
	"archive/zip"
	"bytes"
	"encoding/csv"
	"encoding/json"
	"errors"
	"fmt"
	"io"
	"path"
	"slices"
	"strings"
	"unicode/utf8"
)

// What a file may hold at most; more is refused before it fills the memory.
const (
	MostBytes   = 256 << 20 // of a file, unpacked
	MostColumns = 2000
	MostRows    = 1_000_000
)

// ErrTooLarge means: a file holds more than this program reads.
var ErrTooLarge = errors.New("the file holds more than can be read")

// ErrNotText means: a table is not written in UTF-8.
var ErrNotText = errors.New("the file is not in UTF-8")

// ErrNoTables means: a file holds nothing this program wrote.
var ErrNoTables = errors.New("the file holds no tables of this program")

// ReadCSV reads what [WriteCSV] wrote, or what was changed in it.
func ReadCSV(from io.ReaderAt, size int64) (Records, []Fault, error) {
	archive, err := zip.NewReader(from, size)
	if err != nil {
		return Records{}, nil, fmt.Errorf("open the tables: %w", err)
	}
	left, held := int64(MostBytes), heldBy()
	var tables []Table
	for _, f := range archive.File {
		name, isTable := strings.CutSuffix(path.Base(f.Name), ".csv")
		if !isTable || notRecords(name) {
			continue
		}
		t, err := unzipTable(f, name, held[name], &left)
		if err != nil {
			return Records{}, nil, fmt.Errorf("read table %s: %w", name, err)
		}
		tables = append(tables, t)
	}
	return readTables(tables)
}

// readTables reads tables of a file; one without a single table is refused.
func readTables(tables []Table) (Records, []Fault, error) {
	if len(tables) == 0 {
		return Records{}, nil, ErrNoTables
	}
	r, faults := Read(tables)
	return r, faults, nil
}

// unzipTable reads one table; left is how much the file may still unpack to.
func unzipTable(f *zip.File, name string, held map[string]Holds, left *int64) (Table, error) {
	in, err := f.Open()
	if err != nil {
		return Table{}, err
	}
	defer in.Close() //nolint:errcheck // it was only read
	data, err := io.ReadAll(io.LimitReader(in, *left+1))
	if err != nil {
		return Table{}, err
	}
	if *left -= int64(len(data)); *left < 0 {
		return Table{}, ErrTooLarge
	}
	return readCSV(data, name, held)
}

// readCSV reads one table.
func readCSV(data []byte, name string, held map[string]Holds) (Table, error) {
	if !utf8.Valid(data) {
		return Table{}, ErrNotText
	}
	r := csv.NewReader(bytes.NewReader(bytes.TrimPrefix(data, []byte(byteOrderMark))))
	r.FieldsPerRecord = -1
	rows, err := r.ReadAll()
	if err != nil {
		return Table{}, err
	}
	return tableOf(name, rows, held)
}

// tableOf makes a table of rows, the first of which are the headings.
func tableOf(name string, rows [][]string, held map[string]Holds) (Table, error) {
	t := Table{Name: name}
	if len(rows) == 0 {
		return t, nil
	}
	if len(rows) > MostRows || len(rows[0]) > MostColumns {
		return t, ErrTooLarge
	}
	for _, heading := range rows[0] {
		c := Column{Name: heading}
		if before, _, ok := strings.Cut(heading, " ["); ok {
			c.Name = before
		}
		c.Holds = held[c.Name]
		t.Columns = append(t.Columns, c)
	}
	t.Rows = eachText(Table{Columns: t.Columns, Rows: rows[1:]}, rearm)
	t.Rows = slices.DeleteFunc(t.Rows, func(row []string) bool {
		return !slices.ContainsFunc(row, func(cell string) bool { return cell != "" })
	})
	return t, nil
}

// heldBy says what the columns of each table hold.
func heldBy() map[string]map[string]Holds {
	held := map[string]map[string]Holds{}
	for _, top := range shapes() {
		for _, s := range top.all() {
			held[s.name] = map[string]Holds{}
			for _, c := range s.columns() {
				held[s.name][c.Name] = c.Holds
			}
		}
	}
	return held
}

// ReadJSON reads what [WriteJSON] wrote.
func ReadJSON(from io.Reader) (Records, error) {
	data, err := io.ReadAll(io.LimitReader(from, MostBytes+1))
	if err != nil {
		return Records{}, fmt.Errorf("read records: %w", err)
	}
	if len(data) > MostBytes {
		return Records{}, ErrTooLarge
	}
	var f file
	if err := json.Unmarshal(data, &f); err != nil {
		return Records{}, fmt.Errorf("read records: %w", err)
	}
	if f.Format != format {
		return Records{}, ErrNoTables
	}
	return f.Records, nil
}

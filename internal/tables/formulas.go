package tables

import (
	"archive/zip"
	"bytes"
	"encoding/xml"
	"io"
	"path"
	"strings"

	"github.com/xuri/excelize/v2"
)

// noResult stands in a cell whose formula the workbook keeps without a result: it is
// told as a fault, since the formula itself is never worked out.
const noResult = "#FORMULA!"

// unworked finds the cells with a formula and without a result, by the name of the
// sheet and the cell's name, and the merged cells. What cannot be read has none: whoever
// reads the sheet says what is wrong with it.
func unworked(data []byte) (formulas map[string]map[string]bool, merged map[string][]Span) {
	archive, err := zip.NewReader(bytes.NewReader(data), int64(len(data)))
	if err != nil {
		return nil, nil
	}
	formulas, merged = map[string]map[string]bool{}, map[string][]Span{}
	left := int64(MostUnpacked)
	for name, file := range sheetFiles(archive) {
		text := unzipped(archive, file, &left)
		if bytes.Contains(text, []byte("<f>")) || bytes.Contains(text, []byte("<f ")) || bytes.Contains(text, []byte("<f/>")) {
			formulas[name] = unworkedOf(text)
		}
		merged[name] = spansOf(text)
	}
	return formulas, merged
}

// mostSpans is how many merged cells of a sheet are known.
const mostSpans = 5_000

// spansOf lists the merged cells of one sheet.
func spansOf(text []byte) (list []Span) {
	at := bytes.Index(text, []byte("<mergeCells"))
	if at < 0 {
		return nil
	}
	in := xml.NewDecoder(bytes.NewReader(text[at:]))
	for len(list) < mostSpans {
		token, err := in.RawToken()
		if err != nil {
			return list
		}
		switch x := token.(type) {
		case xml.StartElement:
			if span, ok := spanOf(attribute(x, "ref")); ok && x.Name.Local == "mergeCell" {
				list = append(list, span)
			}
		case xml.EndElement:
			if x.Name.Local == "mergeCells" {
				return list
			}
		}
	}
	return list
}

// spanOf reads a reference such as "B2:D2".
func spanOf(ref string) (Span, bool) {
	from, to, ok := strings.Cut(ref, ":")
	if !ok {
		return Span{}, false
	}
	column, row, err1 := excelize.CellNameToCoordinates(from)
	lastColumn, lastRow, err2 := excelize.CellNameToCoordinates(to)
	if err1 != nil || err2 != nil || lastColumn < column || lastRow < row {
		return Span{}, false
	}
	return Span{Row: row - 1, Column: column - 1, Rows: lastRow - row + 1, Columns: lastColumn - column + 1}, true
}

// sheetFiles leads from the names of the sheets to their files.
func sheetFiles(archive *zip.Reader) map[string]string {
	const most = 1 << 20
	left := int64(most)
	var book struct {
		Sheets []struct {
			Name string `xml:"name,attr"`
			ID   string `xml:"http://schemas.openxmlformats.org/officeDocument/2006/relationships id,attr"`
		} `xml:"sheets>sheet"`
	}
	var links struct {
		List []struct {
			ID     string `xml:"Id,attr"`
			Target string `xml:"Target,attr"`
		} `xml:"Relationship"`
	}
	if xml.Unmarshal(unzipped(archive, "xl/workbook.xml", &left), &book) != nil ||
		xml.Unmarshal(unzipped(archive, "xl/_rels/workbook.xml.rels", &left), &links) != nil {
		return nil
	}
	at := map[string]string{}
	for _, l := range links.List {
		if strings.HasPrefix(l.Target, "/") {
			at[l.ID] = strings.TrimPrefix(l.Target, "/")
		} else {
			at[l.ID] = path.Join("xl", l.Target)
		}
	}
	files := map[string]string{}
	for _, s := range book.Sheets {
		if file := at[s.ID]; file != "" {
			files[s.Name] = file
		}
	}
	return files
}

// unzipped is a file of an archive; nothing where it is not there or holds more than
// is left to read.
func unzipped(archive *zip.Reader, name string, left *int64) []byte {
	f, err := archive.Open(name)
	if err != nil {
		return nil
	}
	defer f.Close() //nolint:errcheck // it was only read
	text, err := io.ReadAll(io.LimitReader(f, *left+1))
	if *left -= int64(len(text)); err != nil || *left < 0 {
		return nil
	}
	return text
}

// unworkedOf lists the cells of one sheet with a formula and without a result.
func unworkedOf(text []byte) map[string]bool {
	cells := map[string]bool{}
	in := xml.NewDecoder(bytes.NewReader(text))
	at, formula, result := "", false, false
	for {
		token, err := in.RawToken()
		if err != nil {
			return cells
		}
		switch x := token.(type) {
		case xml.StartElement:
			switch x.Name.Local {
			case "c":
				at, formula, result = attribute(x, "r"), false, false
			case "f":
				formula = true
			case "v", "is": // it may be empty: a formula may well give nothing
				result = true
			}
		case xml.EndElement:
			if x.Name.Local == "c" && formula && !result && len(cells) < MostRows {
				cells[at] = true
			}
		}
	}
}

// attribute is one of an element; empty where it has none of that name.
func attribute(x xml.StartElement, name string) string {
	for _, a := range x.Attr {
		if a.Name.Local == name {
			return a.Value
		}
	}
	return ""
}

// marked puts the mark into the cells of a row, counted from 0, that have a formula and
// no result. A row with nothing else in it is left blank: it waits to be filled.
func marked(row []Cell, at int, cells map[string]bool) []Cell {
	if len(cells) == 0 || blank(row) {
		return row
	}
	for column := range MostColumns {
		name, err := excelize.CoordinatesToCellName(column+1, at+1)
		if err != nil || !cells[name] {
			continue
		}
		for len(row) <= column {
			row = append(row, Cell{})
		}
		if row[column].Text == "" {
			row[column].Text = noResult
		}
	}
	return row
}

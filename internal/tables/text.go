package tables

import (
	"bytes"
	"encoding/csv"
	"errors"
	"fmt"
	"io"
	"strings"
	"unicode"
	"unicode/utf8"

	"golang.org/x/text/encoding"
	"golang.org/x/text/encoding/charmap"
	xunicode "golang.org/x/text/encoding/unicode"
)

// Encoding is how the letters of a text file are written.
type Encoding string

// The encodings that are read.
const (
	UTF8        Encoding = "UTF-8"
	UTF16       Encoding = "UTF-16"
	Windows1252 Encoding = "Windows-1252"
)

// openText reads a text file with separators.
func openText(data []byte) (Book, error) {
	text, how, err := decode(data)
	if err != nil {
		return Book{}, err
	}
	if odd(text) || markup(text) {
		return Book{}, ErrNotTable
	}
	named, rest := separatorLine(text)
	comma := named
	if comma == 0 {
		comma = separatorOf(rest)
	}
	rows, err := splitRows(rest, comma)
	if err != nil {
		return Book{}, err
	}
	if named != 0 { // rows are numbered as the file has them
		rows = append([][]Cell{nil}, rows...)
	}
	return Book{Sheets: []Sheet{{Rows: rows}}, Encoding: how, Separator: comma}, nil
}

// decode turns bytes into text: by the mark at the beginning, else as UTF-16 where
// every second byte is zero, as UTF-8 where it is that, else as Windows-1252.
func decode(data []byte) (string, Encoding, error) {
	if rest, ok := bytes.CutPrefix(data, []byte("\xef\xbb\xbf")); ok {
		return strings.ToValidUTF8(string(rest), "\ufffd"), UTF8, nil
	}
	if order, ok := wide(data); ok {
		return decodeBy(xunicode.UTF16(order, xunicode.UseBOM), data, UTF16)
	}
	if utf8.Valid(data) {
		return string(data), UTF8, nil
	}
	return decodeBy(charmap.Windows1252, data, Windows1252)
}

// decodeBy decodes bytes by a table.
func decodeBy(table encoding.Encoding, data []byte, how Encoding) (string, Encoding, error) {
	text, err := table.NewDecoder().Bytes(data)
	if err != nil {
		return "", how, fmt.Errorf("%w: %w", ErrNotTable, err)
	}
	return strings.TrimPrefix(string(text), "\ufeff"), how, nil
}

// wide reports whether bytes are UTF-16 and in which order: by a mark, or by zeros
// at every second place.
func wide(data []byte) (order xunicode.Endianness, ok bool) {
	switch {
	case bytes.HasPrefix(data, []byte("\xff\xfe")):
		return xunicode.LittleEndian, true
	case bytes.HasPrefix(data, []byte("\xfe\xff")):
		return xunicode.BigEndian, true
	}
	look := data[:min(len(data), 1000)&^1]
	var zeros [2]int
	for i, b := range look {
		if b == 0 {
			zeros[i%2]++
		}
	}
	many := len(look) / 3
	switch {
	case len(look) >= 4 && zeros[1] > many && zeros[0] == 0:
		return xunicode.LittleEndian, true
	case len(look) >= 4 && zeros[0] > many && zeros[1] == 0:
		return xunicode.BigEndian, true
	}
	return xunicode.LittleEndian, false
}

// odd reports whether a text is no text: a tenth of the first thousand signs are
// signs nobody types.
func odd(text string) bool {
	seen, strange := 0, 0
	for _, r := range text {
		if seen++; seen > 1000 {
			break
		}
		if r == 0 || r == utf8.RuneError || unicode.IsControl(r) && !unicode.IsSpace(r) {
			strange++
		}
	}
	return strange*10 > seen
}

// markup reports whether a text is a page or a document, which some programs name as if it
// were a workbook: its tags are no columns.
func markup(text string) bool {
	begin := strings.ToLower(strings.TrimSpace(text[:min(len(text), 200)]))
	for _, tag := range []string{"<?xml", "<!doctype", "<html", "<head", "<table", "<workbook"} {
		if strings.HasPrefix(begin, tag) {
			return true
		}
	}
	return false
}

// separatorLine reads the line "sep=;" that some spreadsheets begin a file with.
func separatorLine(text string) (comma rune, rest string) {
	line, rest, _ := strings.Cut(text, "\n")
	line = strings.Trim(strings.TrimSpace(line), `"`)
	if sign, ok := strings.CutPrefix(strings.ToLower(line), "sep="); ok {
		if r, n := utf8.DecodeRuneInString(sign); n == len(sign) && strings.ContainsRune(",;\t|", r) {
			return r, rest
		}
	}
	return 0, text
}

// separatorOf is the sign by which most of the first lines are cut into the same
// number of cells; a comma may be the decimal sign, so it comes last.
func separatorOf(text string) rune {
	best, most := ',', 0.0
	for _, sign := range []rune{'\t', ';', '|', ','} {
		counts := signsIn(text, sign)
		if len(counts) == 0 {
			continue
		}
		same, with := map[int]int{}, 0
		for _, n := range counts {
			if n > 0 {
				same[n]++
				with++
			}
		}
		usual := 0
		for _, n := range same {
			usual = max(usual, n)
		}
		if score := float64(usual+with) / float64(2*len(counts)); score > most+0.15 {
			best, most = sign, score
		}
	}
	return best
}

// signsIn counts a sign in each of the first lines, outside quotation marks.
func signsIn(text string, sign rune) []int {
	var counts []int
	n, filled, quoted := 0, false, false
	for _, r := range text {
		switch {
		case r == '"':
			quoted = !quoted
		case r == '\n' && !quoted:
			if filled {
				counts = append(counts, n)
			}
			n, filled = 0, false
			if len(counts) == 30 {
				return counts
			}
		case r == sign && !quoted:
			n++
		}
		filled = filled || !unicode.IsSpace(r)
	}
	if filled {
		counts = append(counts, n)
	}
	return counts
}

// splitRows cuts a text into rows of cells. An empty line is a row, so that rows
// are numbered as the file has them.
func splitRows(text string, comma rune) ([][]Cell, error) {
	in := csv.NewReader(strings.NewReader(strings.ReplaceAll(text, "\r\n", "\n")))
	in.Comma, in.LazyQuotes, in.FieldsPerRecord = comma, true, -1
	var rows [][]Cell
	for {
		texts, err := in.Read()
		if errors.Is(err, io.EOF) {
			break
		}
		if err != nil {
			return nil, fmt.Errorf("%w: %w", ErrNotTable, err)
		}
		line, _ := in.FieldPos(0)
		for len(rows) < line-1 && len(rows) <= MostRows {
			rows = append(rows, nil)
		}
		row := make([]Cell, 0, min(len(texts), MostColumns))
		for _, t := range texts {
			row = append(row, Cell{Text: t})
		}
		if rows, err = addRow(rows, row); err != nil {
			return nil, err
		}
	}
	if len(rows) == 0 {
		return nil, ErrEmpty
	}
	return rows, nil
}

// addRow adds a row within the limits, each text tidied.
func addRow(rows [][]Cell, row []Cell) ([][]Cell, error) {
	for len(row) > 0 && strings.TrimSpace(row[len(row)-1].Text) == "" {
		row = row[:len(row)-1]
	}
	if len(rows) >= MostRows {
		return nil, ErrRows
	}
	if len(row) > MostColumns {
		return nil, ErrColumns
	}
	for i, c := range row {
		if len(c.Text) > MostCell && utf8.RuneCountInString(c.Text) > MostCell {
			return nil, fmt.Errorf("%w: row %d, column %s", ErrCell, len(rows)+1, Letters(i))
		}
		row[i].Text = tidy(c.Text)
	}
	return append(rows, row), nil
}

// tidy takes away spaces around a text and signs nobody sees.
func tidy(text string) string {
	text = strings.Map(func(r rune) rune {
		switch {
		case r == '\n', r == '\t':
			return ' '
		case r == '\u200b', r == '\ufeff', unicode.IsControl(r):
			return -1
		}
		return r
	}, text)
	return strings.TrimSpace(text)
}

// Package copying puts texts and tables on the clipboard, and says at the foot of the
// window what was copied. The toolkit's clipboard holds text: a table is text with tabs,
// which spreadsheets and letters take as a table, and of a chart its figures are copied.
// A chart as a picture is kept as a file, see package picture.
package copying

import (
	"strings"
	"unicode/utf8"

	"fyne.io/fyne/v2"

	"ebbwell/app/kit/desk"
	"ebbwell/app/kit/field"
	"ebbwell/app/kit/look"
)

// Table is a table with a name, its titles and its rows.
type Table struct {
	Name   string
	Titles []string
	Rows   [][]string
}

// Text is the table as text: a line for each row, a tab between two cells. What would
// break a cell (tabs, ends of lines) becomes a space. A cell that a spreadsheet would
// take for a formula gets a mark before it.
func (t Table) Text() string {
	var b strings.Builder
	line := func(cells []string) {
		for i, c := range cells {
			if i > 0 {
				b.WriteByte('\t')
			}
			b.WriteString(cell(c))
		}
		b.WriteByte('\n')
	}
	if strings.Join(t.Titles, "") != "" {
		line(t.Titles)
	}
	for _, r := range t.Rows {
		line(r)
	}
	return b.String()
}

// cell is a text as it may stand in a cell. A number with a sign stays one.
func cell(text string) string {
	text = strings.TrimSpace(strings.NewReplacer("\t", " ", "\r\n", " ", "\n", " ", "\r", " ", "\u00a0", " ", "\u202f", " ").Replace(text))
	if text == "" {
		return ""
	}
	if runs(text) {
		return "'" + text
	}
	return text
}

// runs reports whether a spreadsheet would work a text out: it begins as a formula does,
// the wide signs of Chinese and Japanese keyboards too, and is no number with a sign.
func runs(text string) bool {
	first, size := utf8.DecodeRuneInString(text)
	if !strings.ContainsRune("=@+-＝＠＋－", first) {
		return false
	}
	number, unit, _ := strings.Cut(text[size:], " ")
	signed := (first == '+' || first == '-') && number != "" && strings.Trim(number, "0123456789.,%") == ""
	return !signed || strings.ContainsAny(unit, "=+-*|!&^()'\"")
}

// Of is the table that a widget shows, all its rows.
func Of(name string, t *look.Table) Table {
	out := Table{Name: name, Titles: t.Titles()}
	for i := range t.Rows() {
		out.Rows = append(out.Rows, t.Row(i))
	}
	return out
}

// Text puts a text on the clipboard and says so.
func Text(d *desk.Desk, text, said string) {
	fyne.CurrentApp().Clipboard().SetContent(text)
	d.Say(said, "", nil)
}

// Link copies the table that of gives when it is pressed; label is the key of its
// words, "copy.table" or "copy.figures".
func Link(d *desk.Desk, name, label string, of func() Table) *field.Link {
	l := field.NewLink(d.Host, name, d.Words.Say(label), func() {
		t := of()
		Text(d, t.Text(), d.Words.Say("copy.done", len(t.Rows), t.Name))
	})
	l.PassBy()
	return l
}

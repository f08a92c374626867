package exchange

import (
	"strings"
	"unicode/utf8"
)

// A spreadsheet takes a cell that begins with one of these for a formula, the wide
// signs of Chinese and Japanese keyboards too; such a text gets an apostrophe before
// it, and so does one that begins with an apostrophe, so that reading takes away
// exactly what writing put there.
const formulaStarts = "=+-@\t\r'＝＋－＠"

// cellEnds are signs at which a spreadsheet that expects another separator than the
// comma, or that does not see the quotes, parts a text: what comes behind one is then
// a cell of its own, and is written as one.
const cellEnds = ";\t\r\n|"

// disarm writes a text so that no spreadsheet takes it, or a part of it, for a formula.
func disarm(text string) string {
	return eachCell(text, func(out *strings.Builder, rest string) (taken int) {
		if begins(rest) {
			out.WriteByte('\'')
		}
		return 0
	})
}

// rearm takes away what disarm put there.
func rearm(text string) string {
	return eachCell(text, func(_ *strings.Builder, rest string) (taken int) {
		if strings.HasPrefix(rest, "'") && begins(rest[1:]) {
			return 1
		}
		return 0
	})
}

// begins reports whether a text begins as a formula does.
func begins(text string) bool {
	first, size := utf8.DecodeRuneInString(text)
	return size > 0 && strings.ContainsRune(formulaStarts, first)
}

// eachCell writes a text anew and lets do begin each part that a spreadsheet may take
// for a cell; do says how many bytes of it are left out.
func eachCell(text string, do func(out *strings.Builder, rest string) (taken int)) string {
	var out strings.Builder
	for fresh, i := true, 0; i < len(text); i++ {
		if fresh {
			i += do(&out, text[i:])
		}
		fresh = strings.IndexByte(cellEnds, text[i]) >= 0
		out.WriteByte(text[i])
	}
	return out.String()
}

// numeric reports whether cells hold what this package writes and nobody types.
func (h Holds) numeric() bool { return h == HoldsNumber || h == HoldsWhole }

// guarded copies rows with every text disarmed; numbers stay as they are.
func guarded(t Table) [][]string { return eachText(t, disarm) }

// eachText copies rows with each cell that is not a number changed.
func eachText(t Table, change func(string) string) [][]string {
	rows := make([][]string, len(t.Rows))
	for i, row := range t.Rows {
		rows[i] = make([]string, len(row))
		for j, cell := range row {
			if j < len(t.Columns) && t.Columns[j].Holds.numeric() {
				rows[i][j] = cell
			} else {
				rows[i][j] = change(cell)
			}
		}
	}
	return rows
}

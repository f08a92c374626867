package exchange

import "strings"

// A spreadsheet takes a cell that begins with one of these for a formula; such
// a text gets an apostrophe before it, and so does one that begins with an
// apostrophe, so that reading takes away exactly what writing put there.
const formulaStarts = "=+-@\t\r'"

// disarm writes a text so that no spreadsheet takes it for a formula.
func disarm(text string) string {
	if text != "" && strings.ContainsRune(formulaStarts, rune(text[0])) {
		return "'" + text
	}
	return text
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

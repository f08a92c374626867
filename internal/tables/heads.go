package tables

import (
	"slices"
	"strings"
	"unicode"
	"unicode/utf8"
)

// textsOf are the texts of a row, one for each column of the sheet.
func textsOf(s Sheet, row int) []string {
	texts := make([]string, s.Width())
	for i := range texts {
		texts[i] = s.At(row, i).Text
	}
	return texts
}

// headings are the texts above the columns, with the group above each where groups stand
// in the row before, and with the units of the row below where that holds nothing else.
func headings(s Sheet, row int, grouped bool) (names []string, unitRow bool) {
	names = textsOf(s, row)
	if grouped {
		if under, ok := underGroups(s, row); ok {
			names = under
		}
	}
	units := 0
	for i := range names {
		text := s.At(row+1, i).Text
		if text == "" {
			continue
		}
		if _, ok := unitOf(text); !ok || s.At(row+1, i).Number {
			return names, false
		}
		units++
	}
	if units < 2 {
		return names, false
	}
	for i := range names {
		if text := s.At(row+1, i).Text; text != "" {
			names[i] += " (" + strings.Trim(text, "[]() ") + ")"
		}
	}
	return names, true
}

// hasGroups reports whether more headings are known where those of a row are read with
// the groups in the row above than without either.
func hasGroups(s Sheet, row int) bool {
	under, ok := underGroups(s, row)
	return ok && headingScore(under) > max(headingScore(textsOf(s, row)), headingScore(textsOf(s, row-1)))
}

// underGroups are the headings of a row, each with the group that stands above it: over
// its own column, or over one to the left as a merged cell shows it. ok is false where the
// two rows cannot be groups and headings.
func underGroups(s Sheet, row int) (names []string, ok bool) {
	if row < 1 || row >= len(s.Rows) || !wordsOnly(s.Rows[row]) || !wordsOnly(s.Rows[row-1]) {
		return nil, false
	}
	names, group, below := textsOf(s, row), "", false
	for i, name := range names {
		above := s.At(row-1, i).Text
		if above != "" {
			group = above
		}
		if end, merged := s.mergedAt(row-1, i); merged {
			group = s.At(row-1, end).Text
		} else if above == "" && name == "" {
			group = ""
		}
		switch {
		case name == "":
			names[i] = above
		case group == "" || worded(group) == worded(name):
		default:
			names[i], below = withGroup(group, name), true
		}
	}
	return names, below
}

// withGroup is a heading with its group: alone where it is known alone, and with the group
// means nothing or only a text, such as "end" below "session", or a column of notes that
// merely stands right of a group.
func withGroup(group, name string) string {
	both := group + " " + name
	alone, together := find(name), find(both)
	if len(alone) > 0 && alone[0].score >= sureMatch && (len(together) == 0 || isText(together[0].target)) {
		return name
	}
	return both
}

// isText reports whether a target is no value.
func isText(t Target) bool {
	of, ok := meaningOf(t)
	return !ok || of.sort == SortText
}

// wordsOnly reports whether the cells of a row can be headings: there are some, none is
// a number or a day, and each has a letter.
func wordsOnly(row []Cell) bool {
	for _, c := range row {
		if c.Text == "" {
			continue
		}
		if c.Number || utf8.RuneCountInString(c.Text) > longestHeading || !strings.ContainsFunc(c.Text, unicode.IsLetter) && c.Text != "%" {
			return false
		}
		if _, _, err := parseDay(c.Text, DayMonthYear, "", true); err == nil {
			return false
		}
	}
	return !blank(row)
}

// longestHeading is how many characters a heading has at most.
const longestHeading = 80

// headingScore counts what of some texts is known as a heading.
func headingScore(texts []string) int {
	n := 0
	for _, text := range texts {
		if text == "" || utf8.RuneCountInString(text) > 2*longestHeading {
			continue
		}
		if f := find(text); len(f) > 0 && f[0].score >= sureMatch {
			n += 10
		}
	}
	return n
}

// Span is a cell that was merged of several: it stands in the first of them.
type Span struct {
	Row, Column   int
	Rows, Columns int
}

// mergedAt is the column in which the text of a cell stands that is merged over others.
func (s Sheet) mergedAt(row, column int) (first int, ok bool) {
	at := slices.IndexFunc(s.Spans, func(x Span) bool {
		return row >= x.Row && row < x.Row+x.Rows && column >= x.Column && column < x.Column+x.Columns
	})
	if at < 0 {
		return 0, false
	}
	return s.Spans[at].Column, true
}

// withSpans keeps the merged cells of the rows in which headings may stand, and writes the
// text of a cell that is merged over several rows into each of them: one name stands
// beside three tests.
func (s Sheet) withSpans(merged []Span) Sheet {
	const most = 1_000
	left := MostRows * 10 // cells that are filled in
	for _, x := range merged {
		if x.Row < headingRows && len(s.Spans) < most {
			s.Spans = append(s.Spans, x)
		}
		text := s.At(x.Row, x.Column)
		if x.Rows < 2 || x.Column >= MostColumns || text.Text == "" {
			continue
		}
		for row := x.Row + 1; row < x.Row+x.Rows && row < len(s.Rows) && left > 0; row++ {
			if left--; blank(s.Rows[row]) {
				continue
			}
			for len(s.Rows[row]) <= x.Column {
				s.Rows[row] = append(s.Rows[row], Cell{})
			}
			if s.Rows[row][x.Column].Text == "" {
				s.Rows[row][x.Column] = text
			}
		}
	}
	return s
}

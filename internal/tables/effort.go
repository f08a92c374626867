package tables

import (
	"strings"

	"ebbwell/internal/evidence"
	"ebbwell/internal/quantity"
	"ebbwell/internal/record"
)

// The scales on which an effort is rated: the sheet's own, 0 to 10, and the older one of 6
// to 20 (Borg 1982, Med Sci Sports Exerc 14:377; its ends are its name). We know of no
// published relation between the two that we could read, so a rating from 6 to 20 is not
// turned into one of the sheet: it is kept in the note as it was written, and asked about.
const (
	ScaleOfTen    quantity.Unit = "0–10"
	ScaleOfTwenty quantity.Unit = "6–20"
)

// The ends of the scale from 6 to 20.
const twentyFrom, twentyTo = 6, 20

// scale tells the scale of a column of ratings: by its heading, else by its values, which
// are all from 6 to 20 and some of them above ten.
func (m Mapping) scale(s Sheet, column int) (of quantity.Unit, fromValues bool) {
	words := " " + worded(m.Columns[column].Heading) + " "
	switch {
	case strings.Contains(words, " 6 20 "):
		return ScaleOfTwenty, false
	case strings.Contains(words, " 0 10 "), strings.Contains(words, " 1 10 "), strings.Contains(words, " cr 10 "):
		return ScaleOfTen, false
	}
	above := false
	for _, x := range m.values(s, column) {
		if x < twentyFrom || x > twentyTo {
			return ScaleOfTen, false
		}
		above = above || x > 10
	}
	if above {
		return ScaleOfTwenty, true
	}
	return ScaleOfTen, false
}

// effort reads a rating of effort: onto the sheet, or into the note where it is on the
// scale from 6 to 20.
func (w *builder) effort(t *record.Test) {
	column := w.m.first(Effort)
	if column < 0 || w.m.Columns[column].Unit != ScaleOfTwenty {
		w.put(&t.Session.Effort, Effort, 0)
		return
	}
	cell := w.s.At(w.at, column)
	if nothing(cell.Text) {
		return
	}
	n, err := parseNumber(cell, w.m.DecimalComma, "")
	if err != nil {
		w.cellFault(column, FaultNumber)
		return
	}
	if n.value < twentyFrom || n.value > twentyTo {
		limit := evidence.Problem{Code: evidence.CodeOutside, Severity: evidence.Refuses, Value: n.value, Limit: quantity.Range{Low: twentyFrom, High: twentyTo}}
		w.fault(Fault{Row: w.at, Column: column, Cell: cell.Text, Code: FaultLimit, Problem: limit})
		return
	}
	said := cell.Text
	if w.o.Twenty != nil {
		said = w.o.Twenty(cell.Text)
	}
	t.Note = strings.TrimSpace(t.Note + "\n" + said)
	w.ask(Question{Column: column, Code: QuestionScale})
}

package importing

import (
	"strconv"

	"fyne.io/fyne/v2"

	"ebbwell/app/kit/desk"
	"ebbwell/app/kit/field"
	"ebbwell/app/kit/look"
	"ebbwell/internal/quantity"
	"ebbwell/internal/tables"
	"ebbwell/internal/words"
)

// mostListed is how many lines of a list are shown; how many more there are is said.
const mostListed = 120

// listed are lines with the row, the column and a sentence.
func (v *View) listed(empty, note string, n int, line func(i int) (row, column, sentence string, extra fyne.CanvasObject)) fyne.CanvasObject {
	if n == 0 {
		return look.OnPaper(look.NewParagraph(v.Say(empty), look.Body, look.Ink2))
	}
	columns := []look.Column{{Title: v.Say("import.list.row"), Width: look.Fixed(72)}, {Title: v.Say("import.list.column"), Width: look.Share(2)},
		{Title: "", Width: look.Share(5)}}
	list := look.VBox(0, look.Pad(0, 0, 8, 0, look.NewParagraph(v.Say(note), look.Body, look.Ink2)), look.HeaderRow(12, columns))
	for i := range min(n, mostListed) {
		row, column, sentence, extra := line(i)
		said := look.VBox(4, look.NewParagraph(sentence, look.Body, look.Ink))
		if extra != nil {
			said.Add(extra)
		}
		list.Add(look.FieldRow(12, columns, look.NewLabel(row, look.Body, look.Ink2), look.NewParagraph(column, look.Body, look.Ink2), said))
	}
	if n > mostListed {
		list.Add(look.Pad(8, 0, 0, 0, look.NewParagraph(v.Say("import.more", n-mostListed), look.Note, look.Ink2)))
	}
	return look.InMargin(look.PageScroll(look.NewSheet(list)))
}

// place writes row and column of a file as a spreadsheet names them.
func (v *View) place(row, column int) (string, string) {
	r, c := "", ""
	if row >= 0 {
		r = v.Words.Number(float64(row+1), 0)
	}
	if column >= 0 && column < len(v.s.mapping.Columns) {
		c = v.Say("import.column.named", tables.Letters(column), shorten(v.s.mapping.Columns[column].Heading, 60))
	}
	return r, c
}

// faultList lists what stops the import.
func (v *View) faultList() fyne.CanvasObject {
	faults := v.s.draft.Faults
	return v.listed("import.faults.none", "import.faults.note", len(faults), func(i int) (row, column, sentence string, extra fyne.CanvasObject) {
		row, column = v.place(faults[i].Row, faults[i].Column)
		if v.s.own != nil {
			row, column = v.ownPlace(faults[i])
		}
		return row, column, v.fault(faults[i]), nil
	})
}

// ownPlace writes where a fault of a file of this program is: row, table and column.
func (v *View) ownPlace(f tables.Fault) (row, column string) {
	at, ok := v.s.own.Place(f)
	if !ok {
		return "", ""
	}
	return strconv.Itoa(at.Row + 1), at.Table + " · " + at.Column
}

// fault says what is wrong.
func (v *View) fault(f tables.Fault) string {
	cell := shorten(f.Cell, 40)
	switch f.Code {
	case tables.FaultLimit:
		p := f.Problem
		return v.Say("import.fault.limit", v.least(p.Value, p.Unit), v.least(p.Limit.Low, p.Unit), v.least(p.Limit.High, p.Unit))
	case tables.FaultNoColumn:
		return v.Say("import.fault.nocolumn", v.target(f.Target))
	case tables.FaultNumber, tables.FaultUnit, tables.FaultDay, tables.FaultClock, tables.FaultMinutes, tables.FaultChoice, tables.FaultFailed,
		tables.FaultFuture, tables.FaultLong, tables.FaultOwn:
		return v.Say("import.fault.cell."+string(f.Code), cell)
	}
	return v.Say("import.fault.row." + string(f.Code))
}

// least writes a value with as many decimals as it has, three at most.
func (v *View) least(x float64, u quantity.Unit) string {
	for d := range 3 {
		if quantity.Round(x, d) == quantity.Round(x, 3) {
			return v.Words.NumberIn(x, d, string(u))
		}
	}
	return v.Words.NumberIn(x, 3, string(u))
}

// twinList lists what is there already, each with the choice to import it all the same.
func (v *View) twinList(chosen func()) fyne.CanvasObject {
	twins := v.s.twins()
	return v.listed("import.twins.none", "import.twins.note", len(twins), func(i int) (row, column, sentence string, extra fyne.CanvasObject) {
		r := twins[i]
		row, _ = v.place(r.Row, -1)
		column = r.Athlete.Name
		if r.Test != nil {
			if day, ok := r.Test.Session.Date.Time(); ok {
				column = v.Say("import.left.test", r.Athlete.Name, v.Words.Date(day))
			}
		}
		sentence = v.Say("import.twin.kept")
		if !r.Twin.Kept {
			sentence = v.Say("import.twin.row", v.Words.Number(float64(r.Twin.Row+1), 0))
		}
		tick := field.NewCheck(v.desk.Host, "import.another."+strconv.Itoa(i+1), v.Say("import.another"))
		tick.Set(v.s.another[r.Row])
		tick.OnChanged = func(on bool) {
			v.s.another[r.Row] = on
			chosen()
		}
		return row, column, sentence, tick
	})
}

// questionList lists what is odd.
func (v *View) questionList() fyne.CanvasObject {
	questions := v.s.draft.Questions
	return v.listed("import.questions.none", "import.questions.note", len(questions), func(i int) (row, column, sentence string, extra fyne.CanvasObject) {
		row, column = v.place(questions[i].Row, questions[i].Column)
		if column == "" {
			column = questions[i].Cell
		}
		return row, column, v.question(questions[i]), nil
	})
}

// question says what is odd.
func (v *View) question(q tables.Question) string {
	switch q.Code {
	case tables.QuestionLimit, tables.QuestionSheet:
		if q.Hidden && desk.TellsMass(q.Problem.Field) {
			return v.Say("import.question.hidden")
		}
		return words.AtStart(desk.ProblemSentence(v.Words, q.Problem))
	case tables.QuestionUnit:
		return v.Say("import.question.unit", string(v.s.mapping.Columns[q.Column].Unit))
	case tables.QuestionGrouped, tables.QuestionReplaces, tables.QuestionBound:
		return v.Say("import.question.cell."+string(q.Code), shorten(q.Cell, 40))
	}
	return v.Say("import.question.row." + string(q.Code))
}

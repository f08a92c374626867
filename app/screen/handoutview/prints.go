package handoutview

import (
	"context"

	"fyne.io/fyne/v2"

	"ebbwell/app/kit/field"
	"ebbwell/app/kit/look"
	"ebbwell/app/kit/saveto"
	"ebbwell/internal/consult"
	"ebbwell/internal/record"
)

// printed lists the pages that were handed out, to be saved again as they were.
type printed struct {
	v    *View
	list []record.Print
	// closed are the prints that may show a body mass that is hidden now: they are
	// not opened or saved again.
	closed map[record.ID]bool
	table  *look.Table
	none   *look.Paragraph
	again  *field.Button
	// last opens the newest, in one click.
	last *field.Button
	rows *fyne.Container
	box  *look.Sheet
}

// newPrinted makes the list.
func newPrinted(v *View) *printed {
	say := v.desk.Words.Say
	p := &printed{v: v, list: v.file.prints, closed: v.file.closed, none: look.NewParagraph(say("handoutview.prints.none"), look.Body, look.Ink2)}
	p.table = look.NewTable("handoutview.prints", []look.Column{
		{Title: say("handoutview.prints.page"), Width: look.Share(4)}, {Title: say("handoutview.prints.when"), Width: look.Share(5)},
	})
	p.table.OnChosen = func(int) { p.enable() }
	p.table.OnOpened = func(int) { p.saveAgain() }
	p.again = field.NewButton(v.desk.Host, "handoutview.again", say("handoutview.again"), field.Outline, p.saveAgain)
	p.last = field.NewButton(v.desk.Host, "handoutview.last", say("handoutview.last"), field.Outline, p.openLast)
	withdrawn := look.NewCaution("", "", nil)
	if day, ok := consult.Withdrawn(v.file.subject.athlete, v.desk.Today()); ok && len(p.list) > 0 {
		at, _ := day.Time()
		withdrawn.SetText("", say("handoutview.prints.withdrawn", v.desk.Words.Date(at)))
	}
	hidden := look.NewCaution("", "", nil)
	if len(p.closed) > 0 {
		hidden.SetText("", say("handoutview.prints.hidden"))
	}
	p.rows = look.VBox(10, look.NewLabel(say("handoutview.prints"), look.Strong, look.Ink), withdrawn, hidden, p.none, p.table, look.HBox(0, p.last), look.HBox(0, p.again))
	p.box = look.NewSheet(p.rows)
	p.show()
	return p
}

// load reads the list anew.
func (p *printed) load() {
	list, closed, err := printsOf(context.Background(), p.v.desk, p.v.file.subject.athlete)
	if err != nil {
		p.v.desk.Trouble(err)
		return
	}
	p.list, p.closed = list, closed
	p.show()
	p.v.body.Refresh()
}

// show fills the list, the newest first.
func (p *printed) show() {
	w, zone := p.v.desk.Words, p.v.desk.Now().Location()
	var rows [][]look.Cell
	for _, one := range p.list {
		at := one.At.In(zone)
		name := one.Page
		if key := "handoutview.page." + one.Page; w.Has(key) {
			name = w.Say(key)
		}
		if p.closed[one.ID] {
			name = w.Say("handoutview.prints.closed")
		}
		rows = append(rows, []look.Cell{{Text: name}, {Text: w.Say("handoutview.moment", w.Date(at), w.Clock(at)), Tone: look.Ink2}})
	}
	p.table.SetRows(rows)
	for o, on := range map[fyne.CanvasObject]bool{p.none: len(rows) == 0, p.table: len(rows) > 0, p.again: len(rows) > 0, p.last: len(rows) > 0} {
		if on {
			o.Show()
		} else {
			o.Hide()
		}
	}
	p.enable()
	p.rows.Refresh()
}

// enable lets a chosen print be saved again, and the newest be opened.
func (p *printed) enable() {
	look.EnableIf(p.again, p.open(p.table.Chosen()))
	look.EnableIf(p.last, p.open(0))
}

// open reports whether the i-th print may be shown.
func (p *printed) open(i int) bool { return i >= 0 && i < len(p.list) && !p.closed[p.list[i].ID] }

// openLast opens the newest print as it was handed out.
func (p *printed) openLast() {
	if !p.open(0) {
		return
	}
	v, one, path := p.v, p.list[0], ""
	name := v.desk.Words.Say("handoutview.file", v.file.subject.athlete.Name, p.table.Row(0)[0], string(record.DateOf(one.At)))
	v.desk.Beside.Run(func(ctx context.Context) error {
		whole, err := v.desk.Store.LoadPrint(ctx, one.ID)
		if err != nil {
			return err
		}
		path, err = saveto.Aside(saveto.FileName(name, one.Ending()), whole.Bytes)
		return err
	}, func(err error) {
		if err != nil {
			v.desk.Trouble(err)
			return
		}
		saveto.Show(v.desk, path)
	})
}

// saveAgain saves the chosen print as it was handed out.
func (p *printed) saveAgain() {
	i := p.table.Chosen()
	if !p.open(i) {
		return
	}
	v, w, one := p.v, p.v.desk.Words, p.list[i]
	row := p.table.Row(i)
	saveto.Ask(v.desk, v.canvas(), saveto.Request{
		Name: "handoutview.ask", Title: w.Say("handoutview.again.title", row[0], row[1]), Sentence: w.Say("handoutview.again.sentence"),
		Yes: w.Say("handoutview.save.yes"), File: saveto.FileName(w.Say("handoutview.file", v.file.subject.athlete.Name, row[0], string(record.DateOf(one.At))), one.Ending()),
		Write: func(ctx context.Context, path string) error {
			whole, err := v.desk.Store.LoadPrint(ctx, one.ID)
			if err != nil {
				return err
			}
			return v.desk.Store.WriteFile(ctx, path, whole.Bytes, one.AthleteID)
		},
		Done: v.said,
	})
}

package colleague

import (
	"context"
	"fmt"

	"fyne.io/fyne/v2"

	"ebbwell/app/kit/field"
	"ebbwell/app/kit/look"
	"ebbwell/internal/bundle"
	"ebbwell/internal/record"
	"ebbwell/internal/store"
)

// questionsPart lists what merges left to a person.
type questionsPart struct {
	v    *View
	rows *fyne.Container
	body *look.Sheet
}

func newQuestionsPart(v *View) *questionsPart {
	p := &questionsPart{v: v, rows: look.VBox(10)}
	say := v.desk.Words.Say
	p.body = look.NewPanel(say("take.asks"), nil, look.NewParagraph(say("take.asks.note"), look.Note, look.Ink2), p.rows)
	return p
}

// load reads what is open.
func (p *questionsPart) load() error {
	ctx := context.Background()
	list, err := p.v.desk.Store.Questions(ctx, "")
	if err != nil {
		return fmt.Errorf("list what is to be decided: %w", err)
	}
	p.rows.Objects = nil
	for i, q := range list {
		a, err := p.v.desk.Store.LoadAthlete(ctx, q.AthleteID)
		if err != nil {
			continue // deleted: it waits with the athlete
		}
		p.rows.Add(p.row(i, q, a))
	}
	look.ShowIf(p.body, len(p.rows.Objects) > 0)
	return nil
}

// row is one question with its two answers.
func (p *questionsPart) row(i int, q record.Question, a record.Athlete) fyne.CanvasObject {
	w, sp, h := p.v.desk.Words, p.v.sp, p.v.desk.Host
	text := w.Say("take.asks."+q.Act, sp.name(a), sp.field(q.Kind, q.Field), sp.other(bundle.Act(q.Act), decoded(q.Stands), decoded(q.Other), q.Field, sp.hidden(a)))
	keep := field.NewButton(h, field.PartName("take.question", i, "keep"), w.Say("take.keep"), field.Outline, func() { p.decide(q, false) })
	other := field.NewButton(h, field.PartName("take.question", i, "other"), w.Say("take.other"), field.Outline, func() { p.decide(q, true) })
	return look.VBox(6, look.NewParagraph(text, look.Body, look.Ink), look.HBox(10, keep, other))
}

// decide answers one.
func (p *questionsPart) decide(q record.Question, take bool) {
	p.v.desk.Trouble(p.v.desk.Store.Decide(context.Background(), q.ID, take))
	p.v.again()
}

// mergesPart lists what was taken in, with a way back.
type mergesPart struct {
	v     *View
	list  []record.Merge
	table *look.Table
	undo  *field.Button
	body  *look.Sheet
}

func newMergesPart(v *View) *mergesPart {
	say := v.desk.Words.Say
	p := &mergesPart{v: v}
	p.table = look.NewTable("take.merges", []look.Column{{Title: say("take.column.when"), Width: look.Fixed(90)}, {Title: say("take.column.from"), Width: look.Share(4)}, {Title: say("take.column.state"), Width: look.Share(3)}})
	p.table.OnChosen = func(int) { p.enable() }
	p.undo = field.NewButton(v.desk.Host, "take.undo", say("take.undo"), field.Outline, p.takeBack)
	p.body = look.NewPanel(say("take.merges"), nil, p.table, look.HBox(0, p.undo), look.NewParagraph(say("take.undo.note"), look.Note, look.Ink2))
	return p
}

// load reads what was taken in.
func (p *mergesPart) load() (err error) {
	if p.list, err = p.v.desk.Store.Merges(context.Background()); err != nil {
		return fmt.Errorf("list what was taken in: %w", err)
	}
	w, now := p.v.desk.Words, p.v.desk.Now()
	var rows [][]look.Cell
	for _, m := range p.list {
		state := look.Cell{Text: w.Say("take.count.in", m.Athletes+m.Tests+m.Plans)}
		if m.UndoneAt != nil {
			state = look.Cell{Text: w.Say("take.undone"), Tone: look.Ink2}
		}
		rows = append(rows, []look.Cell{{Text: w.ShortDate(m.At.In(now.Location()), now)}, {Text: m.Practice}, state})
	}
	p.table.SetRows(rows)
	look.ShowIf(p.body, len(rows) > 0)
	p.enable()
	return nil
}

// enable lets the chosen one be taken back.
func (p *mergesPart) enable() {
	i := p.table.Chosen()
	look.EnableIf(p.undo, i >= 0 && i < len(p.list) && p.list[i].UndoneAt == nil)
}

// takeBack takes the chosen one back.
func (p *mergesPart) takeBack() {
	w, i := p.v.desk.Words, p.table.Chosen()
	if i < 0 || i >= len(p.list) {
		return
	}
	err := p.v.desk.Store.UndoMerge(context.Background(), p.list[i].ID)
	switch {
	case store.CodeOf(err) == store.CodeConflict:
		p.v.desk.Say(w.Say("take.undo.used"), "", nil)
	case err != nil:
		p.v.desk.Trouble(err)
	default:
		p.v.desk.ProductsChanged()
		p.v.desk.Say(w.Say("take.undo.done", p.list[i].Practice), "", nil)
	}
	p.v.again()
}

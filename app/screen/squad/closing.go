package squad

import (
	"context"
	"fmt"

	"fyne.io/fyne/v2"

	"ebbwell/app/kit/desk"
	"ebbwell/app/kit/field"
	"ebbwell/app/kit/look"
	"ebbwell/internal/record"
	"ebbwell/internal/squad"
)

// closable are the rows whose sheets can be closed as they stand; stay names those
// that cannot, each with what stands in the way.
func (v *View) closable() (ready []squad.Row, stay []string) {
	for _, r := range v.rows {
		if r.Closed {
			continue
		}
		c := squad.ClosingOf(r)
		if c.Ready {
			ready = append(ready, r)
			continue
		}
		var lacks []string
		for _, id := range c.Lacks {
			lacks = append(lacks, v.say(lackKey(id)))
		}
		stay = append(stay, v.say("squad.close.one", r.Sheet.Athlete.Name, v.desk.Words.Commas(lacks)))
	}
	return ready, stay
}

// askClose asks whether to close all sheets that are done, and names those that stay
// open.
func (v *View) askClose() {
	if v.open != nil {
		v.open.commit()
	}
	v.look()
	ready, stay := v.closable()
	if len(ready) == 0 {
		return
	}
	list := look.VBox(2, look.NewLabel(v.say("squad.close.stays"), look.Strong, look.Ink))
	for _, text := range stay {
		list.Add(look.NewParagraph(text, look.Body, look.Ink))
	}
	var content fyne.CanvasObject
	if len(stay) > 0 {
		content = look.Pad(0, look.BarRoom+4, 0, 0, list)
	}
	v.desk.Host.Ask(v.canvas(), field.Question{
		Name: "squad.close", Title: v.say("squad.close.title", len(ready)), Sentence: v.say("squad.close.sentence"), Loses: true, Width: 560,
		Content: content,
		Actions: []field.Action{
			{Name: "no", Text: v.say("field.ask.cancel")},
			{Name: "yes", Text: v.say("squad.close.yes"), Kind: field.Primary, Do: func() bool {
				v.closeAll(ready)
				return false
			}},
		},
		OnClosed: v.openAgain,
	})
}

// closeAll closes sheets one by one, each whole; the first that fails is said, and
// those behind it stay open.
func (v *View) closeAll(rows []squad.Row) {
	if !v.flushNow() {
		return
	}
	closed := 0
	for _, r := range rows {
		if err := v.closeSheet(r); err != nil {
			v.desk.Say(v.say("squad.close.failed", r.Sheet.Athlete.Name, desk.Sentence(v.desk.Words, err)), "", nil)
			break
		}
		closed++
	}
	v.look()
	v.reopen()
	v.follow()
	v.desk.HeadChanged()
	if closed == len(rows) {
		v.desk.Say(v.say("squad.close.done", closed), "", nil)
	}
}

// closeSheet closes a sheet as its own screen does, or until the laboratory's values
// come.
func (v *View) closeSheet(r squad.Row) error {
	ctx, id := context.Background(), r.Sheet.Test.ID
	kept, err := v.desk.Store.LoadTest(ctx, id)
	if err != nil {
		return fmt.Errorf("close the sheet: %w", err)
	}
	texts := v.doc.Now().sheets[id].Texts(record.Ref{Kind: record.KindTest, ID: id})
	closed, err := v.desk.CloseSheet(ctx, kept, r.Sheet.Athlete, texts, v.desk.Calculate())
	if err != nil {
		return err
	}
	v.doc.Closed(closed)
	return v.desk.NoteCorrected(ctx, closed)
}

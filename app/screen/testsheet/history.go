package testsheet

import (
	"context"

	"ebbwell/app/kit/desk"
	"ebbwell/app/kit/field"
	"ebbwell/app/kit/look"
)

// corrections are the corrections of the sheet as it is kept, worded, newest
// first. A sheet nothing was entered in has none.
func (v *View) corrections(ctx context.Context) ([]desk.HistoryEntry, error) {
	if v.untouched() {
		return nil, nil
	}
	t := v.b.Doc.Now().Record
	changes, err := v.desk.Store.History(ctx, refOf(t))
	if err != nil {
		return nil, err
	}
	sp := v.desk.Speaker(v.by.Hidden)
	h := historian{Speaker: sp, test: t, products: v.desk.Products(), activities: v.ui.before.activities.Named(v.desk.Words.Activity), hidden: v.by.Hidden}
	return h.entries(changes), nil
}

// showHistory lists every corrected value: before and after, when, by whom and
// why.
func (v *View) showHistory() {
	if !v.b.FlushNow() {
		return
	}
	entries, err := v.corrections(context.Background())
	if err != nil {
		v.desk.Trouble(err)
		return
	}
	say, list := v.b.Say, look.VBox(10)
	sentence := say("testsheet.history.note")
	if len(entries) == 0 {
		sentence = say("testsheet.history.none")
	}
	for _, e := range entries {
		list.Add(desk.HistoryBox(v.desk.Speaker(v.by.Hidden), e))
	}
	v.desk.Host.Ask(v.canvas(), field.Question{
		Name: "testsheet.history", Title: say("testsheet.history.title"), Sentence: sentence, Content: list, Width: 560,
		Actions: []field.Action{{Name: "done", Text: say("testsheet.history.done"), Kind: field.Primary}},
	})
}

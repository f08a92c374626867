package importing

import (
	"context"

	"fyne.io/fyne/v2"

	"ebbwell/app/kit/desk"
	"ebbwell/app/kit/field"
	"ebbwell/app/kit/look"
	"ebbwell/internal/record"
	"ebbwell/internal/store"
)

// showDone shows what came of an import.
func (v *View) showDone(im record.Import) {
	v.s = state{phase: done, file: im.File}
	h := v.desk.Host
	box := look.VBox(12, look.NewLabel(v.Say("import.done", im.File), look.Title, look.Ink))
	when := look.NewParagraph(v.Say("import.done.when", v.added(im), v.Words.Date(v.local(im.At)), v.Words.Clock(v.local(im.At))), look.Body, look.Ink)
	box.Add(when)
	athletes := field.NewButton(h, "import.athletes", v.Say("import.toathletes"), field.Primary, func() { v.desk.Go(desk.Place{Screen: desk.Athletes}) })
	again := v.button("import.again", "import.again", func() { v.desk.Go(desk.Place{Screen: desk.Import}) })
	if im.UndoneAt != nil {
		box.Add(look.NewParagraph(v.Say("import.done.undone", v.Words.Date(v.local(*im.UndoneAt))), look.Body, look.Ink))
		box.Add(look.HBox(10, again))
		v.show(look.OnPaper(box))
		return
	}
	box.Add(look.NewParagraph(v.Say("import.done."+string(im.Kind)), look.Body, look.Ink2))
	undo := v.button("import.undo", "import.undo", func() { v.askUndo(im) })
	box.Add(look.HBox(10, athletes, again, undo))
	if len(v.imported) > 0 {
		box.Add(newClosePart(v).body)
	}
	v.show(look.OnPaper(box))
}

// askUndo asks before an import is taken back.
func (v *View) askUndo(im record.Import) {
	v.desk.Host.Confirm(v.canvas(), "import.undo.ask", v.Say("import.undo.title"), v.Say("import.undo.sentence", v.added(im)), v.Say("import.undo"), func() {
		var u store.Undone
		v.run(func(ctx context.Context) (err error) {
			u, err = v.desk.Store.UndoImport(ctx, im.ID)
			return err
		}, func(err error) {
			if err != nil {
				v.desk.Trouble(err)
				return
			}
			v.showUndone(im, u)
		})
	})
}

// showUndone says what was removed, and what stays and why.
func (v *View) showUndone(im record.Import, u store.Undone) {
	v.s = state{phase: done, file: im.File}
	box := look.VBox(12, look.NewLabel(v.Say("import.undone"), look.Title, look.Ink),
		look.NewParagraph(v.Say("import.undone.removed", v.counted(u.Tests, u.Athletes, u.Results, u.Plans, u.Trips)), look.Body, look.Ink))
	if len(u.Left) > 0 {
		box.Add(look.NewParagraph(v.Say("import.undone.left"), look.Body, look.Ink))
		box.Add(v.leftList(u.Left))
	}
	box.Add(look.HBox(10, v.button("import.again", "import.again", func() { v.desk.Go(desk.Place{Screen: desk.Import}) })))
	v.show(look.OnPaper(box))
}

// leftList lists what stays.
func (v *View) leftList(left []store.LeftImported) fyne.CanvasObject {
	list := look.VBox(4)
	for i, l := range left {
		if i == mostListed {
			list.Add(look.NewParagraph(v.Say("import.more", len(left)-i), look.Note, look.Ink2))
			break
		}
		what := l.Athlete
		if day, ok := l.Date.Time(); ok {
			what = v.Say("import.left.test", l.Athlete, v.Words.Date(day))
			if l.Athlete == "" {
				what = v.Say("import.left.result", v.Words.Date(day))
			}
		}
		list.Add(look.Columns(10, []look.Track{look.Share(1), look.Share(1)}, look.NewParagraph(what, look.Body, look.Ink),
			look.NewParagraph(v.Say("import.left."+string(l.Why)), look.Body, look.Ink2)))
	}
	return list
}

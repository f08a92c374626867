package colleague

import (
	"context"

	"fyne.io/fyne/v2"

	"ebbwell/app/kit/desk"
	"ebbwell/app/kit/field"
	"ebbwell/app/kit/look"
	"ebbwell/app/kit/saveto"
	"ebbwell/internal/store"
)

// ending is that of a file for a colleague.
const ending = ".ebbwell"

// View is the screen.
type View struct {
	desk *desk.Desk
	sp   speaker
	path *field.Line
	pass *field.Line
	show *field.Check
	open *field.Button
	// trouble says why a file is not taken.
	trouble *look.Caution
	comes   *comesPart
	asked   *questionsPart
	merges  *mergesPart
	// stop stops what is being done; nil while nothing is.
	stop func()
	body fyne.CanvasObject
}

var _ desk.View = (*View)(nil)

// New opens the screen.
func New(d *desk.Desk) (*View, error) {
	v := &View{desk: d, sp: speaker{d}, trouble: look.NewCaution("", "", nil)}
	say, h := d.Words.Say, d.Host
	v.path, v.pass = field.NewLine(h, "take.path", 1000), field.NewLine(h, "take.pass", 200)
	v.path.SetText(saveto.Newest(ending))
	choose := field.NewLink(h, "take.choose", say("openfile.choose"), v.choose)
	v.pass.Conceal(true)
	v.show = field.NewCheck(h, "take.show", say("lock.show"))
	v.show.OnChanged = func(on bool) { v.pass.Conceal(!on) }
	v.open = field.NewButton(h, "take.open", say("take.open"), field.Primary, v.lookInto)
	v.pass.OnEnter = func(string) { v.lookInto() }
	form := look.NewForm(look.NewEntry(say("take.path"), look.VBox(4, v.path, look.HBox(0, choose))).Wide(), look.NewEntry(say("lock.phrase"), v.pass).Wide(), look.NewEntry("", v.show).Wide()).Measured(140, 300, 1)
	v.comes, v.asked, v.merges = newComesPart(v), newQuestionsPart(v), newMergesPart(v)
	first := look.NewPanel(say("take.file"), nil, form, v.trouble, look.HBox(0, v.open), look.NewParagraph(say("take.file.note"), look.Note, look.Ink2))
	left := look.VBox(look.SheetGap, first, v.asked.body, v.merges.body)
	pair := look.NewPair(0.5, 900, left, v.comes.body)
	v.body = look.Pad(look.TopPad, 0, look.FootPad, 0, look.InMargin(look.PageScroll(pair)))
	if err := v.load(); err != nil {
		return nil, err
	}
	return v, nil
}

// load reads what is to be decided, and what was taken in.
func (v *View) load() error {
	if err := v.asked.load(); err != nil {
		return err
	}
	return v.merges.load()
}

// again reads both anew.
func (v *View) again() {
	v.desk.Trouble(v.load())
	v.body.Refresh()
}

// choose lists the files of a folder that may be a colleague's.
func (v *View) choose() {
	w := v.desk.Words
	saveto.AskFile(v.desk, v.canvas(), saveto.Source{
		Name: "take.ask", Title: w.Say("take.file"), Sentence: w.Say("take.file.note"), Endings: []string{ending},
		Read: func(_ context.Context, path string) error {
			f, err := saveto.OpenFile(path)
			if err != nil {
				return err
			}
			return f.Close()
		},
		Wrong: func(err error) (title, sentence string) { return w.Say("take.wrong"), desk.Sentence(w, err) },
		Done:  func(path string) { v.path.SetText(path); v.canvas().Focus(v.pass) },
	})
}

// canvas is where the screen is drawn.
func (v *View) canvas() fyne.Canvas { return fyne.CurrentApp().Driver().CanvasForObject(v.body) }

// lookInto opens the file and shows what would come of it.
func (v *View) lookInto() {
	path, phrase := v.path.Text(), v.pass.Text()
	if path == "" || v.stop != nil {
		return
	}
	v.trouble.SetText("", "")
	v.comes.clear()
	var found looked
	v.busy(v.desk.Words.Say("take.opening"), func(ctx context.Context) (err error) {
		found, err = lookInto(ctx, v.desk, path, phrase)
		return err
	}, func(err error) {
		if err != nil {
			v.refuse(err)
			return
		}
		found.judge(v.desk)
		v.comes.show(found)
	})
}

// refuse says why a file is not taken.
func (v *View) refuse(err error) {
	w := v.desk.Words
	sentence := desk.Sentence(w, err)
	if end := why(err); end != "" {
		sentence = w.Say("take.wrong." + end)
	}
	v.trouble.SetText(w.Say("take.wrong"), sentence)
	v.body.Refresh()
}

// busy does something slow beside the window, with a way to stop.
func (v *View) busy(doing string, work func(context.Context) error, done func(error)) {
	v.comes.working(doing)
	ended := false
	stop := v.desk.Beside.Run(work, func(err error) {
		ended, v.stop = true, nil
		v.comes.rested()
		done(err)
		v.body.Refresh()
	})
	if !ended {
		v.stop = stop
	}
}

// takeIn writes what was shown.
func (v *View) takeIn(l looked) {
	w := v.desk.Words
	in := l.in
	in.Progress = func(done, of int) {
		fyne.Do(func() { v.comes.working(w.Say("take.writing", done, of)) })
	}
	v.busy(w.Say("take.writing", 0, 0), func(ctx context.Context) error {
		_, err := v.desk.Store.Merge(ctx, in)
		return err
	}, func(err error) {
		if err != nil {
			if store.CodeOf(err) == store.CodeConflict {
				v.trouble.SetText(w.Say("take.wrong"), w.Say("take.wrong.changed"))
				return
			}
			v.refuse(err)
			return
		}
		v.comes.clear()
		v.desk.ProductsChanged()
		v.desk.Say(w.Say("take.done", l.in.Bundle.From), "", nil)
		v.again()
	})
}

// Head is the title.
func (v *View) Head() desk.Head { return desk.Head{Title: v.desk.Words.Say("take.title")} }

// Body is the screen.
func (v *View) Body() fyne.CanvasObject { return v.body }

// Leave stops what is being done: nothing of it is written.
func (v *View) Leave() {
	if v.stop != nil {
		v.stop()
	}
}

// Shown gives the keyboard to the path.
func (v *View) Shown() {
	if c := v.canvas(); c != nil {
		c.Focus(v.path)
	}
}

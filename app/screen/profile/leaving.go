package profile

import (
	"context"
	"strings"

	"fyne.io/fyne/v2"

	"ebbwell/app/kit/desk"
	"ebbwell/app/kit/field"
	"ebbwell/app/kit/look"
	"ebbwell/internal/record"
	"ebbwell/internal/store"
)

// leavingPart takes an athlete out of the records: for now, or for good.
type leavingPart struct {
	v    *View
	body fyne.CanvasObject
}

func newLeavingPart(v *View) *leavingPart {
	say, h := v.sp.Say, v.desk.Host
	p := &leavingPart{v: v}
	remove := field.NewButton(h, "profile.delete", say("profile.delete"), field.Outline, p.remove)
	erase := field.NewButton(h, "profile.erase", say("profile.erase"), field.Outline, p.askErase)
	p.body = look.NewSheet(look.VBox(8, look.NewLabel(say("profile.leaving"), look.Strong, look.Ink),
		look.NewParagraph(say("profile.leaving.note"), look.Note, look.Ink2), look.HBox(10, remove, erase)))
	return p
}

// remove deletes the athlete; the strip at the foot brings them back.
func (p *leavingPart) remove() {
	v, ctx := p.v, context.Background()
	a := v.now()
	v.b.Doc.EndVisit()
	if !v.b.FlushNow() {
		return
	}
	if err := v.desk.Store.Delete(ctx, refOf(a.ID), store.Edit{}); err != nil {
		v.desk.Trouble(err)
		return
	}
	p.setGoing(true)
	v.desk.Go(desk.Place{Screen: desk.Athletes})
	v.desk.Say(v.sp.Say("profile.deleted", desk.NameOf(v.desk.Words, a)), v.sp.Say("profile.undelete"), func() {
		if err := v.desk.Store.Undelete(ctx, refOf(a.ID), store.Edit{}); err != nil {
			v.desk.Trouble(err)
			return
		}
		v.desk.Go(desk.Place{Screen: desk.Profile, Athlete: a.ID})
	})
}

// askErase says what would be gone for good, and asks whether to go on.
func (p *leavingPart) askErase() {
	v, ctx := p.v, context.Background()
	a := v.now()
	if !v.b.FlushNow() {
		return
	}
	tests, err := v.desk.Store.Tests(ctx, a.ID)
	if err != nil {
		v.desk.Trouble(err)
		return
	}
	plans, err := v.desk.Store.Plans(ctx, a.ID)
	if err != nil {
		v.desk.Trouble(err)
		return
	}
	saved, err := v.desk.Store.SavedOf(ctx, a.ID)
	if err != nil {
		v.desk.Trouble(err)
		return
	}
	say := v.sp.Say
	sentence := say("profile.erase.what", desk.NameOf(v.desk.Words, a), say("profile.erase.tests", len(tests)), say("profile.erase.plans", len(plans)))
	// What stays elsewhere is said before anything is decided.
	beside := look.VBox(8)
	if copies, err := v.desk.Store.Snapshots(); err == nil && len(copies) > 0 {
		beside.Add(look.NewParagraph(say("profile.erase.copies", len(copies)), look.Body, look.Ink))
	}
	if folder := v.desk.Practice().Settings.Backup.Folder; folder != "" {
		beside.Add(look.NewParagraph(say("profile.erase.backups", folder), look.Body, look.Ink))
	}
	files := newFilesPart(v, saved)
	beside.Add(files.box)
	beside.Add(look.NewParagraph(say("profile.erase.elsewhere"), look.Body, look.Ink))
	p.ask(field.Question{Name: "profile.erase.first", Title: say("profile.erase.title"), Sentence: sentence, Content: beside, Width: 620}, say("profile.erase.goon"),
		func() bool { return true }, func() { p.askName(files.asked()) })
}

// ask asks whether to go on; then goes on once the question is gone, since
// another may follow it.
func (p *leavingPart) ask(q field.Question, yes string, may func() bool, then func()) {
	agreed := false
	q.Actions = []field.Action{
		{Name: "no", Text: p.v.sp.Say("field.ask.cancel")},
		{Name: "yes", Text: yes, Kind: field.Primary, Do: func() (stay bool) {
			agreed = may()
			return !agreed
		}},
	}
	q.OnClosed = func() {
		if agreed {
			then()
		}
	}
	p.v.desk.Host.Ask(p.v.canvas(), q)
}

// askName lets the name be typed before anything is erased, with the files saved
// elsewhere where that was asked for.
func (p *leavingPart) askName(files bool) {
	v, say := p.v, p.v.sp.Say
	name := desk.NameOf(v.desk.Words, v.now())
	typed := field.NewLine(v.desk.Host, "profile.erase.name", 200)
	trouble := look.NewParagraph("", look.Note, look.Ink)
	content := look.VBox(8, typed, trouble)
	q := field.Question{
		Name: "profile.erase.second", Title: say("profile.erase.type"), Sentence: say("profile.erase.type.sentence", name), Content: content,
	}
	p.ask(q, say("profile.erase.yes"), func() bool {
		if strings.TrimSpace(typed.Text()) == strings.TrimSpace(name) {
			return true
		}
		trouble.SetText(say("profile.erase.other"))
		return false
	}, func() { p.erase(name, files) })
}

// erase removes the athlete for good, from the copies too, and says which hold
// them still: those of an earlier version of the program.
func (p *leavingPart) erase(name string, files bool) {
	v := p.v
	id, on := v.now().ID, v.canvas()
	v.b.Doc.EndVisit()
	if !v.b.FlushNow() {
		return
	}
	p.setGoing(true)
	var left store.Erased
	v.desk.Say(v.sp.Say("profile.erasing", name), "", nil)
	v.desk.Beside.Run(func(ctx context.Context) (err error) {
		left, err = v.desk.Store.EraseAthlete(ctx, id, files)
		return err
	}, func(err error) {
		if err != nil && store.CodeOf(err) != "" && !p.gone(id) {
			p.setGoing(false)
			v.desk.Trouble(err)
			return
		}
		v.desk.Go(desk.Place{Screen: desk.Athletes})
		v.desk.Say(v.sp.Say("profile.erased", name), "", nil)
		p.tellFiles(on, name, left.Files, func() { p.tellCopies(on, name, left.Snapshots) })
	})
}

// setGoing lets nothing be changed any more, or again.
func (p *leavingPart) setGoing(on bool) {
	p.v.going = on
	p.v.follow()
}

// gone reports whether an athlete is there no more.
func (p *leavingPart) gone(id record.ID) bool {
	_, err := p.v.desk.Store.LoadAthlete(context.Background(), id)
	return store.CodeOf(err) == store.CodeNotFound
}

// tellCopies lists the copies that hold an erased athlete still, and offers to
// remove them.
func (p *leavingPart) tellCopies(on fyne.Canvas, name string, copies []store.Snapshot) {
	v, say := p.v, p.v.sp.Say
	if len(copies) == 0 || on == nil {
		return
	}
	list := look.VBox(2)
	for _, c := range copies {
		at := c.At.In(v.desk.Now().Location())
		list.Add(look.NewLabel(say("profile.copy", v.desk.Words.Date(at), v.desk.Words.Clock(at), say("snapshot."+string(c.Reason))), look.Note, look.Ink))
	}
	v.desk.Host.Ask(on, field.Question{
		Name: "profile.copies", Title: say("profile.copies.title"), Sentence: say("profile.copies", name), Content: list,
		Actions: []field.Action{
			{Name: "keep", Text: say("profile.copies.keep"), Kind: field.Primary},
			{Name: "remove", Text: say("profile.copies.remove"), Do: func() bool {
				v.desk.Trouble(v.desk.Store.RemoveSnapshots(copies))
				return false
			}},
		},
	})
}

package profile

import (
	"context"

	"fyne.io/fyne/v2"

	"ebbwell/app/kit/desk"
	"ebbwell/app/kit/field"
	"ebbwell/app/kit/look"
	"ebbwell/internal/care"
	"ebbwell/internal/record"
)

// historyFirst is how many changes stand in the panel at first.
const historyFirst = 6

// historyPart is every change of the record: what, from what to what, when, by
// whom and why.
type historyPart struct {
	v       *View
	changes []record.Change
	// asked counts the looks into the store: an old answer is dropped.
	asked int
	all   bool
	list  *fyne.Container
	more  *field.Link
	foot  *fyne.Container
	body  fyne.CanvasObject
}

func newHistoryPart(v *View) *historyPart {
	p := &historyPart{v: v, list: look.VBox(10)}
	p.more = field.NewLink(v.desk.Host, "profile.history.all", "", func() {
		p.all = !p.all
		p.show()
	})
	p.foot = look.HBox(0, p.more)
	p.body = look.NewSheet(look.VBox(8, look.NewLabel(v.sp.Say("profile.history"), look.Strong, look.Ink), p.list, p.foot))
	return p
}

// load looks the changes up beside the window, once what was typed is kept.
func (p *historyPart) load() {
	if p.v.fresh {
		p.show()
		return
	}
	p.asked++
	mine, store, keep, ref := p.asked, p.v.desk.Store, p.v.desk.Keep, refOf(p.v.now().ID)
	var list []record.Change
	p.v.desk.Beside.Run(func(ctx context.Context) (err error) {
		if err := keep.Flush(ctx); err != nil {
			return err
		}
		list, err = store.History(ctx, ref)
		return err
	}, func(err error) {
		if err != nil || mine != p.asked {
			return // the foot of the window tells of a save that failed
		}
		p.changes = list
		p.show()
	})
}

// show fills the panel.
func (p *historyPart) show() {
	say, n := p.v.sp.Say, len(p.changes)
	shown := p.changes
	if !p.all {
		shown = shown[:min(n, historyFirst)]
	}
	p.list.Objects = nil
	if n == 0 {
		p.list.Add(look.NewParagraph(say("profile.history.none"), look.Note, look.Ink2))
	}
	a := p.v.now()
	hidden := care.MassHidden(a, p.v.desk.Now())
	for _, c := range shown {
		p.list.Add(desk.HistoryBox(p.v.sp.Speaker, p.v.sp.entry(c, a, p.v.groups, hidden)))
	}
	show(p.more, n > historyFirst)
	p.more.SetText(say("profile.history.all", n))
	if p.all {
		p.more.SetText(say("profile.history.less"))
	}
	p.list.Refresh()
	p.foot.Refresh()
	p.v.page.Refresh()
}

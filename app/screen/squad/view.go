package squad

import (
	"context"
	"slices"
	"time"

	"fyne.io/fyne/v2"

	"ebbwell/app/kit/amount"
	"ebbwell/app/kit/desk"
	"ebbwell/app/kit/field"
	"ebbwell/app/kit/look"
	"ebbwell/internal/record"
	"ebbwell/internal/squad"
)

// View is the test day of a group.
type View struct {
	desk   *desk.Desk
	doc    *document
	people people
	looker squad.Looker
	// rows is the session as it stands, at the index of the one at the scale, -1 for
	// none.
	rows []squad.Row
	at   int
	// typing is the field a person is typing in, visit the visit to it.
	typing, visit string
	open          *openRow
	// station is the station being worked; wantsSecond the moment whose second
	// weighing was asked for by key.
	station     string
	wantsSecond record.Moment
	// unfolded: how the bottles were used stands below the open row.
	unfolded bool
	// shown: the screen stands in the window, so that a field can have the keyboard.
	shown bool
	// level is how much room the window has for the columns.
	level level
	jump  *jump
	ui    widgets
	body  fyne.CanvasObject
	// stop takes back the next look at the clock.
	stop func()
	// begin is the page that begins a session; nil on an open one.
	begin *start
	// group shows the findings of the group in place of the rows.
	group *groupPage
}

// widgets are what the day is shown with.
type widgets struct {
	shared *look.Paragraph
	scale  *look.Label
	next   *look.Label
	counts *look.Label
	// nextBelow and counted stand on a line of their own in a narrow window.
	nextBelow, counted *look.Label
	title, second      *fyne.Container
	list               *fyne.Container
	scroll             *look.Scroll
	sticky             *fyne.Container
	head               *headRow
	rows               []*rowView
	clock              *clockView
	add                *field.Button
	closing            *field.Link
	forAll             *fyne.Container
	time               *field.Button
	station            *field.Toggle
	page               *fyne.Container
	rowBox             *fyne.Container
}

var (
	_ desk.View    = (*View)(nil)
	_ desk.Undoer  = (*View)(nil)
	_ desk.Printer = (*View)(nil)
	_ desk.Shower  = (*View)(nil)
	_ desk.Stayer  = (*View)(nil)
)

// New opens the session a place names, or the page that begins one.
func New(d *desk.Desk, place desk.Place) (*View, error) {
	v := &View{desk: d, at: -1}
	if place.New {
		begin, err := newStart(v)
		if err != nil {
			return nil, err
		}
		v.begin, v.body = begin, begin.body
		return v, nil
	}
	now, who, err := load(d, place.Record)
	if err != nil {
		return nil, err
	}
	v.people, v.doc = who, newDocument(d, now)
	v.build()
	v.look()
	if place.Part == desk.PartGroup {
		v.showGroup()
		v.follow()
	} else {
		v.follow()
		v.openFirst()
	}
	return v, nil
}

// say is a text of the catalogue.
func (v *View) say(key string, args ...any) string { return v.desk.Words.Say(key, args...) }

// speaker words what is shown of an athlete.
func (v *View) speaker(hidden bool) amount.Speaker { return v.desk.Speaker(hidden) }

// look works the session out as it is now.
func (v *View) look() {
	now := v.doc.Now()
	v.rows = v.looker.Look(now.session, v.people.sheetsOf(now), v.desk.Now(), v.desk.Calculate())
	if v.open != nil { // the same athlete stays at the scale, wherever the row is now
		v.at = slices.IndexFunc(v.rows, func(r squad.Row) bool { return r.Sheet.Test.ID == v.open.id })
		if v.at < 0 {
			v.open = nil
		}
	}
	v.at = min(v.at, len(v.rows)-1)
}

// openFirst opens the row whose turn it is.
func (v *View) openFirst() {
	for i, r := range v.rows {
		if r.Flagged && !r.Flag.Told() {
			v.openRowAt(i, "")
			return
		}
	}
	if next := squad.Next(v.rows, -1); len(next) > 0 {
		v.openRowAt(next[0], "")
	}
}

// Head is the title, and at the right the clock.
func (v *View) Head() desk.Head {
	h := desk.Head{Title: v.say("frame.test-day")}
	if v.begin != nil {
		h.Under = v.desk.Words.Date(v.desk.Now())
		return h
	}
	g := v.doc.Now().session
	day := v.speaker(false).Dated(g.Session.Date, "")
	h.Under = v.say("squad.head", day, v.nameOf(g), v.say("squad.athletes", len(v.rows)))
	h.Short = v.say("squad.head.short", day, v.say("squad.athletes", len(v.rows)))
	h.Actions = []fyne.CanvasObject{v.ui.time, v.ui.add, v.ui.clock}
	return h
}

// nameOf is what a session is called.
func (v *View) nameOf(g record.GroupSession) string {
	switch {
	case g.Name != "":
		return g.Name
	case g.Session.Sport != "":
		return desk.SportWord(v.desk.Words, g.Session.Sport)
	}
	return v.say("squad.unnamed")
}

// Body is the day.
func (v *View) Body() fyne.CanvasObject { return v.body }

// HelpPage is that of a shared session.
func (v *View) HelpPage() desk.HelpPage { return desk.HelpSquad }

// Place names what is shown.
func (v *View) Place() desk.Place {
	p := desk.Place{Screen: desk.TestDay}
	switch {
	case v.begin != nil:
		p.New = true
	default:
		p.Record = v.doc.Now().session.ID
		if v.group != nil {
			p.Part = desk.PartGroup
		}
	}
	return p
}

// Shown starts the clock and gives the keyboard to the row at the scale.
func (v *View) Shown() {
	if v.doc == nil {
		return
	}
	v.shown = true
	v.watch()
	if v.open != nil {
		v.open.focusFirst("")
	}
}

// Stayed lets the clock go on in a day that could not be left.
func (v *View) Stayed() {
	if v.shown && v.stop == nil {
		v.watch()
	}
}

// every is how often the clock is looked at.
const every = 5 * time.Second

// watch looks at the clock again after a while, where a clock goes.
func (v *View) watch() {
	if v.desk.Later == nil {
		return
	}
	v.stop = v.desk.Later(every, func() {
		v.Tick()
		v.watch()
	})
}

// Tick shows what the clock says: how long the session and the patches run, and rings
// for what has fallen due.
func (v *View) Tick() {
	v.look()
	v.follow()
	v.desk.HeadChanged()
	v.desk.Bell.Ring(v.reminders(), v.soundFailed)
}

// Leave ends the visit to a field and stops the clock.
func (v *View) Leave() {
	if v.stop != nil {
		v.stop()
		v.stop = nil
	}
	if v.doc != nil {
		if v.open != nil {
			v.open.commit()
		}
		v.doc.EndVisit()
	}
}

// CanUndo reports whether there is a step to take back, CanRedo one to do again.
func (v *View) CanUndo() bool { return v.doc != nil && v.doc.history.CanUndo() }

// CanRedo reports whether there is one to do again.
func (v *View) CanRedo() bool { return v.doc != nil && v.doc.history.CanRedo() }

// Undo takes back the last step, Redo does it again.
func (v *View) Undo() bool { return v.stepped(v.doc != nil && v.doc.Undo()) }

// Redo does again what was taken back.
func (v *View) Redo() bool { return v.stepped(v.doc != nil && v.doc.Redo()) }

func (v *View) stepped(moved bool) bool {
	if moved {
		v.flush()
		v.lookByHand()
		v.rebuild()
	}
	return moved
}

// flush saves beside the window; the foot of the rail tells when that fails.
func (v *View) flush() { v.desk.Beside.Run(v.desk.Keep.Flush, func(error) {}) }

// flushNow saves before something else is done; false, with words at the foot, when
// that failed.
func (v *View) flushNow() bool {
	if err := v.desk.Keep.Flush(context.Background()); err != nil {
		v.desk.Trouble(err)
		return false
	}
	return true
}

// changed follows a change of the day by the person.
func (v *View) changed() {
	v.desk.Withdraw()
	v.lookByHand()
	v.follow()
	v.desk.HeadChanged()
}

// edit changes the sheet at the scale: typing joins the visit to a field.
func (v *View) edit(name string, id record.ID, f func(*sheet)) {
	if v.visit == "" || v.typing != name {
		v.visit, v.typing = desk.NewVisit(), name
	}
	v.doc.ChangeSheet(v.visit, name, id, f)
	v.changed()
}

// pick changes a sheet in one step by itself.
func (v *View) pick(name string, id record.ID, f func(*sheet)) {
	v.doc.ChangeSheet("", name, id, f)
	v.flush()
	v.changed()
}

// left ends the visit to a field.
func (v *View) left() {
	v.visit, v.typing = "", ""
	v.doc.EndVisit()
	v.flush()
}

// canvas is the canvas the day stands on.
func (v *View) canvas() fyne.Canvas { return fyne.CurrentApp().Driver().CanvasForObject(v.body) }

// now is the time as it is kept.
func (v *View) now() *time.Time {
	at := v.desk.Now().UTC()
	return &at
}

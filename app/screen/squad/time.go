package squad

import (
	"time"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/widget"

	"ebbwell/app/kit/desk"
	"ebbwell/app/kit/look"
	"ebbwell/internal/record"
	"ebbwell/internal/squad"
)

// startOrEnd starts the session now, or ends it, or goes on with one that was ended
// too early.
func (v *View) startOrEnd() {
	now := v.desk.Now()
	v.doc.ChangeSession("", "squad.time", func(g *record.GroupSession) {
		switch {
		case g.Session.Start == "":
			g.Session.Start, g.Session.Date = squad.ClockNow(now), record.DateOf(now)
		case g.Session.End == "" || now.Before(squad.SpanOf(g.Session, now.Location()).End):
			squad.EndNow(&g.Session, now)
		default:
			g.Session.End, g.Session.EndsNextDay = "", false
		}
	})
	v.flush()
	v.changed()
}

// longAgo is how long after its end a session is one of another day.
const longAgo = 12 * time.Hour

// showTime says how long the session runs, or ended ago, and what the key does.
func (v *View) showTime() {
	now, s := v.desk.Now(), v.doc.Now().session.Session
	span := squad.SpanOf(s, now.Location())
	words, button := v.say("squad.time.none"), v.say("squad.time.start")
	switch {
	case span.HasStart && now.Before(span.Start):
		words, button = v.say("squad.time.in", minutesUntil(span.Start.Sub(now).Minutes())), v.say("squad.time.end")
	case span.HasEnd && now.Sub(span.End) > longAgo:
		words, button = "", v.say("squad.time.on")
	case span.HasEnd && !now.Before(span.End):
		words, button = v.say("squad.time.ended", int(now.Sub(span.End).Minutes())), v.say("squad.time.on")
	case span.HasStart:
		words, button = v.say("squad.time.runs", int(now.Sub(span.Start).Minutes())), v.say("squad.time.end")
	}
	v.ui.time.SetText(button)
	v.ui.clock.set(words, v.desk.Words.Clock(now))
}

// clockOf is the time of day of an instant.
func (v *View) clockOf(at time.Time) string {
	return v.desk.Words.Clock(at.In(v.desk.Now().Location()))
}

// clockView is the time of day with what it means for the session.
type clockView struct {
	widget.BaseWidget
	words, time *look.Label
}

func newClockView() *clockView {
	c := &clockView{words: look.NewLabel("", look.Note, look.Ink2), time: look.NewLabel("", look.Key, look.Ink)}
	c.ExtendBaseWidget(c)
	return c
}

func (c *clockView) set(words, clock string) {
	c.words.SetText(words)
	c.time.SetText(clock)
}

// Parts returns words and time.
func (c *clockView) Parts() []fyne.CanvasObject { return []fyne.CanvasObject{c.words, c.time} }

// CreateRenderer draws words and time on one line.
func (c *clockView) CreateRenderer() fyne.WidgetRenderer { return &clockRenderer{c} }

type clockRenderer struct{ c *clockView }

// clockGap is between words and time, in px.
const clockGap float32 = 10

func (r *clockRenderer) Layout(size fyne.Size) {
	words, clock := r.c.words.MinSize(), r.c.time.MinSize()
	r.c.words.Move(fyne.NewPos(0, float32(int((size.Height-words.Height)/2))))
	r.c.words.Resize(words)
	r.c.time.Move(fyne.NewPos(words.Width+clockGap, float32(int((size.Height-clock.Height)/2))))
	r.c.time.Resize(clock)
}

func (r *clockRenderer) MinSize() fyne.Size {
	words, clock := r.c.words.MinSize(), r.c.time.MinSize()
	return fyne.NewSize(words.Width+clockGap+clock.Width, max(words.Height, clock.Height))
}

func (r *clockRenderer) Refresh() {
	r.Layout(r.c.Size())
	canvas.Refresh(r.c)
}
func (r *clockRenderer) Objects() []fyne.CanvasObject { return r.c.Parts() }
func (r *clockRenderer) Destroy()                     {}

// goToSheets opens the list of single sheets.
func (v *View) goToSheets() { v.desk.Go(desk.Place{Screen: desk.TestDay, Part: desk.PartSheets}) }

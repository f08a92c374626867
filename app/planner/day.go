package planner

import (
	"strconv"

	"fyne.io/fyne/v2"

	"ebbwell/app/chart"
	"ebbwell/app/field"
	"ebbwell/app/look"
	"ebbwell/internal/consult"
	"ebbwell/internal/plan"
	"ebbwell/internal/record"
)

// dayTab is the day on the clock: what comes before, in and after the session,
// and what is still owed where another follows.
type dayTab struct {
	v *View
	// more are the sessions after the first; preset is true until one is
	// changed by hand.
	more    []outing
	preset  bool
	picture *chart.BreakTimeline
	table   *look.Table
	totals  *look.Paragraph
	trouble *look.Caution
	rows    *fyne.Container
	add     *field.Button
	box     *fyne.Container
}

func newDayTab(v *View) part {
	t := &dayTab{v: v, preset: true, picture: chart.NewBreakTimeline(), totals: look.NewParagraph("", look.Body, look.Ink)}
	say := v.sp.say
	t.trouble = look.NewCaution("", "", nil)
	t.table = look.NewTable("planner.day", []look.Column{
		{Title: say("planner.day.when"), Width: look.Fixed(120)},
		{Title: say("planner.day.what"), Width: look.Share(5)},
		{Title: say("planner.day.amount"), Width: look.Share(4)},
		{Title: say("planner.day.why"), Width: look.Share(6)},
	})
	t.rows = look.VBox(6)
	t.add = field.NewButton(v.desk.Host, "planner.day.add", say("planner.day.add"), field.Outline, t.addOuting)
	start := v.b.Clock("", "planner.day.start", func(p *record.Plan) (*record.Clock, string) { return &p.Target.Start, "target.start" })
	start.SetBox(96)
	t.box = look.VBox(12, newForm(look.NewEntry(say("planner.session.start"), start)), t.rows, look.HBox(10, t.add), t.trouble, t.picture, t.totals, t.table)
	return t
}

func (t *dayTab) body() fyne.CanvasObject { return t.box }

// open lays the day out anew.
func (t *dayTab) open() {
	if t.preset {
		t.more = nil
		if o, ok := t.v.now.second(); ok {
			t.more = []outing{o}
		}
	}
	t.makeRows()
	setVisible(t.rows, len(t.more) > 0)
	t.follow()
	t.box.Refresh()
}

// follow shows the day with the mix in hand.
func (t *dayTab) follow() {
	v := t.v
	sessions, names, mixes, wrong := t.sessions()
	var day plan.Day
	if wrong == "" {
		made, err := plan.PlanDay(sessions)
		if err != nil {
			wrong = v.sp.say("planner.day.overlap")
		}
		day = made
	}
	t.trouble.SetText("", wrong)
	d := v.sp.dayPicture(day, sessions)
	totals := v.sp.totalWords(day, names)
	if d.Summary == "" {
		d.Summary = totals
	}
	t.picture.Set(d)
	t.totals.SetText(totals)
	var rows [][]look.Cell
	for _, l := range v.sp.dayLines(day, names, mixes) {
		rows = append(rows, []look.Cell{{Text: l.when}, {Text: l.what, Style: look.Strong}, {Text: l.amount}, {Text: l.note, Tone: look.Ink2, Style: look.Note}})
	}
	t.table.SetRows(rows)
}

// sessions are those of the day with what is taken in each; wrong says what
// stands in the way.
func (t *dayTab) sessions() (list []plan.DaySession, names, mixes []string, wrong string) {
	v := t.v
	today, _ := v.desk.Today().Time()
	start, ok := onClock(today, v.now.plan.Target.Start)
	if !ok {
		return nil, nil, nil, v.sp.say("planner.day.nostart")
	}
	list = []plan.DaySession{{Start: start, Planner: v.now.kase.Planner, Length: v.now.length, Mix: v.now.mix}}
	names = []string{titleOf(v.now.plan, v.sp.say("planner.day.session", 1))}
	mixes = []string{v.sp.mixWords(v.now.kase, v.now.mix)}
	for i, o := range t.more {
		c, mix, ok := t.caseOf(o)
		at, timed := onClock(today, o.start)
		if !ok || !timed {
			return nil, nil, nil, v.sp.say("planner.day.nosecond", i+2)
		}
		for !at.After(list[len(list)-1].Start) {
			at = at.AddDate(0, 0, 1) // past midnight
		}
		list = append(list, plan.DaySession{Start: at, Planner: c.Planner, Length: o.length, Mix: mix})
		names = append(names, titleOf(c.Plan, v.sp.say("planner.day.session", i+2)))
		mixes = append(mixes, v.sp.mixWords(c, mix))
	}
	return list, names, mixes, ""
}

// caseOf is the case of a further session with the mix that is done in it.
func (t *dayTab) caseOf(o outing) (c consult.Case, mix plan.Mix, ok bool) {
	v := t.v
	if o.plan == v.now.plan.ID {
		s := v.now.at(o.length)
		return s.kase, s.mix, true
	}
	p, ok := v.file.plan(o.plan)
	if !ok || o.plan == "" {
		return c, mix, false
	}
	c, _, err := v.file.lenient(p, v.desk)
	if err != nil {
		return c, mix, false
	}
	s := newState(c).at(o.length)
	return c, s.mix, true
}

// addOuting adds another session to the day.
func (t *dayTab) addOuting() {
	t.preset = false
	t.more = append(t.more, outing{plan: t.v.now.plan.ID, length: plan.Expected})
	t.v.show()
}

// makeRows makes the rows of the further sessions.
func (t *dayTab) makeRows() {
	t.rows.Objects = nil
	for i := range t.more {
		t.rows.Add(t.outingRow(i))
	}
	t.rows.Refresh()
}

// outingRow is one further session: its start, its plan, its length.
func (t *dayTab) outingRow(i int) fyne.CanvasObject {
	v, name := t.v, "planner.day.session."+strconv.Itoa(i+2)
	h, say := v.desk.Host, v.sp.say
	start := field.NewClock(h, name+".start")
	start.SetBox(96)
	start.SetClock(t.more[i].start)
	start.OnLeft = func(c record.Clock, ok bool) {
		if ok && c != t.more[i].start {
			t.more[i].start, t.preset = c, false
			v.show()
		}
	}
	which := field.NewChoice(h, name+".plan", v.planOptions())
	which.SetLeast(200)
	which.Choose(string(t.more[i].plan))
	which.OnChosen = func(key string) {
		t.more[i].plan, t.preset = record.ID(key), false
		v.show()
	}
	remove := field.NewLink(h, name+".remove", say("planner.remove"), func() {
		t.more, t.preset = append(t.more[:i:i], t.more[i+1:]...), false
		v.show()
	})
	label := look.NewLabel(say("planner.day.session", i+2), look.Body, look.Ink2)
	return look.Columns(10, []look.Track{look.Fixed(formWords), look.Fixed(96), look.Fixed(240), look.Fit()}, label, start, which, remove)
}

package planner

import (
	"fyne.io/fyne/v2"

	"ebbwell/app/kit/chart"
	"ebbwell/app/kit/field"
	"ebbwell/app/kit/look"
	"ebbwell/internal/plan"
	"ebbwell/internal/record"
)

// dayTab is the day on the clock: what comes before, in and after the session,
// and what is still owed where another follows.
type dayTab struct {
	v       *View
	more    *furtherRows
	picture *chart.BreakTimeline
	table   *look.Table
	totals  *look.Paragraph
	trouble *look.Caution
	add     *field.Button
	box     *fyne.Container
}

func newDayTab(v *View) part {
	t := &dayTab{v: v, more: newFurtherRows(v), picture: chart.NewBreakTimeline(), totals: look.NewParagraph("", look.Body, look.Ink)}
	say := v.sp.say
	t.trouble = look.NewCaution("", "", nil)
	t.table = look.NewTable("planner.day", []look.Column{
		{Title: say("planner.day.when"), Width: look.Fixed(120)},
		{Title: say("planner.day.what"), Width: look.Share(5)},
		{Title: say("planner.day.amount"), Width: look.Share(4)},
		{Title: say("planner.day.why"), Width: look.Share(6)},
	})
	t.add = field.NewButton(v.desk.Host, "planner.day.add", say("planner.day.add"), field.Outline, t.more.add)
	start := v.b.Clock("", "planner.day.start", func(p *record.Plan) (*record.Clock, string) { return &p.Target.Start, "target.start" })
	start.SetBox(96)
	t.box = look.VBox(12, newForm(look.NewEntry(say("planner.session.start"), start)), t.more.box, look.HBox(10, t.add), t.trouble, t.picture, t.totals, t.table)
	return t
}

func (t *dayTab) body() fyne.CanvasObject { return t.box }

// open lays the day out anew.
func (t *dayTab) open() {
	t.more.open()
	look.EnableIf(t.add, t.v.now.draft())
	t.follow()
	t.box.Refresh()
}

// follow shows the day with the mix in hand.
func (t *dayTab) follow() {
	v := t.v
	sessions, names, mixes, wrong := t.sessions()
	var day plan.Day
	if len(sessions) > 0 {
		made, err := plan.PlanDay(sessions)
		if err != nil {
			wrong = v.sp.say("planner.day.overlap")
		}
		day = made
	}
	t.trouble.SetText("", wrong)
	d := v.sp.dayPicture(day, sessions)
	if len(day.Events) == 0 {
		d.Summary = wrong
	}
	totals := v.sp.totalWords(day, names)
	if d.Summary == "" {
		d.Summary = totals
	}
	t.picture.Set(d)
	t.totals.SetText(totals)
	var rows [][]look.Cell
	for _, l := range v.sp.dayLines(day, names, mixes, v.now.salted()) {
		rows = append(rows, []look.Cell{{Text: l.when}, {Text: l.what, Style: look.Strong}, {Text: l.amount}, {Text: l.note, Tone: look.Ink2, Style: look.Note}})
	}
	t.table.SetRows(rows)
}

// sessions are those of the day with what is taken in each, without those that
// cannot be laid out; wrong says what stands in the way.
func (t *dayTab) sessions() (list []plan.DaySession, names, mixes []string, wrong string) {
	v := t.v
	today, _ := v.desk.Today().Time()
	start, ok := onClock(today, v.now.plan.Target.Start)
	if !ok {
		return nil, nil, nil, v.sp.say("planner.day.nostart")
	}
	list = []plan.DaySession{{Start: start, Planner: v.now.planCase.Planner, Length: v.now.length, Mix: v.now.mix}}
	names = []string{titleOf(v.now.plan, v.sp.say("planner.day.session", 1))}
	mixes = []string{v.sp.mixWords(v.now.planCase, v.now.mix)}
	for i, f := range v.now.further() {
		s, ok := t.more.at(i, f)
		at, timed := onClock(today, f.Start)
		if !ok || !timed {
			if wrong == "" {
				wrong = v.sp.say("planner.day.nosecond", i+2)
			}
			continue
		}
		for !at.After(list[len(list)-1].Start) {
			at = at.AddDate(0, 0, 1) // past midnight
		}
		list = append(list, plan.DaySession{Start: at, Planner: s.planCase.Planner, Length: s.length, Mix: s.mix})
		names = append(names, titleOf(s.plan, v.sp.say("planner.day.session", i+2)))
		mixes = append(mixes, v.sp.mixWords(s.planCase, s.mix))
	}
	return list, names, mixes, wrong
}

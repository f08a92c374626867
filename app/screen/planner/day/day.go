package day

import (
	"fyne.io/fyne/v2"

	"ebbwell/app/kit/chart"
	"ebbwell/app/kit/field"
	"ebbwell/app/kit/look"
	"ebbwell/app/kit/picture"
	"ebbwell/app/screen/planner/part"
	"ebbwell/internal/plan"
	"ebbwell/internal/record"
	"ebbwell/internal/words"
)

// DayTab is the day on the clock: what comes before, in and after the session,
// and what is still owed where another follows.
type DayTab struct {
	v       *part.Plan
	More    *furtherRows
	picture *chart.BreakTimeline
	Table   *look.Table
	sources *look.Paragraph
	Totals  *look.Paragraph
	Trouble *look.Caution
	add     *field.Button
	box     *fyne.Container
}

// New makes the day plan of an open plan.
func New(v *part.Plan) part.Part {
	t := &DayTab{v: v, More: newFurtherRows(v), picture: chart.NewBreakTimeline(), Totals: look.NewParagraph("", look.Body, look.Ink)}
	say := v.Speaker.Say
	t.Trouble = look.NewCaution("", "", nil)
	t.Table = look.NewTable("planner.day", []look.Column{
		{Title: say("planner.day.when"), Width: look.Fixed(120)},
		{Title: say("planner.day.what"), Width: look.Share(15)},
		{Title: say("planner.day.amount"), Width: look.Share(12)},
		{Title: say("planner.day.why"), Width: look.Share(11)},
	})
	t.sources = look.NewParagraph("", look.Note, look.Ink2)
	t.add = field.NewButton(v.Desk.Host, "planner.day.add", say("planner.day.add"), field.Outline, t.More.add)
	start := v.Binder.Clock("", "planner.day.start", func(p *record.Plan) (*record.Clock, string) { return &p.Target.Start, "target.start" })
	start.SetBox(96)
	keep := picture.Link(v.Desk, "planner.day.picture", say("picture.day", v.File.Athlete.Name), picture.One(v.File.Athlete.ID), func() fyne.CanvasObject { return t.picture })
	t.box = look.VBox(12, part.NewForm(look.NewEntry(say("planner.session.start"), start)), t.More.box, look.HBox(10, t.add, keep), t.Trouble, t.picture, t.Totals, t.Table, t.sources)
	return t
}

// Body is what stands on the page.
func (t *DayTab) Body() fyne.CanvasObject { return t.box }

// Open lays the day out anew.
func (t *DayTab) Open() {
	t.More.Open()
	look.EnableIf(t.add, t.v.Now.Draft())
	t.Follow()
	t.box.Refresh()
}

// Follow shows the day with the selected mix.
func (t *DayTab) Follow() {
	v := t.v
	sessions, names, mixes, wrong := t.Sessions()
	var day plan.Day
	if len(sessions) > 0 {
		made, err := plan.PlanDay(sessions)
		if err != nil {
			wrong = v.Speaker.Say("planner.day.overlap")
		}
		day = made
	}
	t.Trouble.SetText("", wrong)
	d := dayPicture(v.Speaker, day, sessions)
	if len(day.Events) == 0 {
		d.Summary = wrong
	}
	totals := totalWords(v.Speaker, day, names)
	if d.Summary == "" {
		d.Summary = totals
	}
	t.picture.Set(d)
	t.Totals.SetText(totals)
	var rows [][]look.Cell
	for _, l := range dayLines(v.Speaker, day, names, mixes, v.Now.Salted()) {
		rows = append(rows, []look.Cell{{Text: l.when}, {Text: l.what, Style: look.Strong}, {Text: l.amount}, {Text: l.note, Tone: look.Ink2, Style: look.Note}})
	}
	t.Table.SetRows(rows)
	t.sources.SetText(sourcesOf(v.Speaker, day))
}

// Sessions are those of the day with what is taken in each, without those that
// cannot be laid out; wrong says what stands in the way.
func (t *DayTab) Sessions() (list []plan.DaySession, names, mixes []string, wrong string) {
	v := t.v
	today, _ := v.Desk.Today().Time()
	start, ok := onClock(today, v.Now.Plan.Target.Start)
	if !ok {
		return nil, nil, nil, v.Speaker.Say("planner.day.nostart")
	}
	list = []plan.DaySession{{Start: start, Planner: v.Now.PlanCase.Planner, Length: v.Now.Length, Mix: v.Live.Mix}}
	names = []string{sessionName(v, v.Now.Plan, 0)}
	mixes = []string{mixWords(v.Speaker, v.Now.PlanCase, v.Live.Mix)}
	for i, f := range further(v.Now) {
		s, ok := t.More.at(i, f)
		at, timed := onClock(today, f.Start)
		if !ok || !timed {
			if wrong == "" {
				wrong = v.Speaker.Say("planner.day.nosecond", i+2)
			}
			continue
		}
		for !at.After(list[len(list)-1].Start) {
			at = at.AddDate(0, 0, 1) // past midnight
		}
		list = append(list, plan.DaySession{Start: at, Planner: s.PlanCase.Planner, Length: s.Length, Mix: s.Mix})
		names = append(names, sessionName(v, s.Plan, i+1))
		mixes = append(mixes, mixWords(v.Speaker, s.PlanCase, s.Mix))
	}
	return list, names, mixes, wrong
}

// sessionName is what the i-th session of the day is called, from 0: one by another
// plan as that plan, else as the session was named, else by its place.
func sessionName(v *part.Plan, p record.Plan, i int) string {
	switch {
	case p.ID != v.Now.Plan.ID:
		return v.Speaker.PlanName(p)
	case p.Target.SessionName != "":
		return words.AtStart(p.Target.SessionName)
	}
	return v.Speaker.Say("planner.day.session", i+1)
}

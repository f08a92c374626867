package breaks

import (
	"strings"

	"fyne.io/fyne/v2"

	"ebbwell/app/kit/chart"
	"ebbwell/app/kit/desk"
	"ebbwell/app/kit/field"
	"ebbwell/app/kit/look"
	"ebbwell/app/screen/planner/part"
	"ebbwell/app/screen/planner/wording"
	"ebbwell/internal/consult"
	"ebbwell/internal/plan"
	"ebbwell/internal/record"
)

// BreaksTab is what to take at each chance the sport gives: drawn on a line of
// time, and as rows whose chances can be changed for this athlete and
// competition.
type BreaksTab struct {
	v        *part.Plan
	picture  *chart.BreakTimeline
	data     chart.BreakData
	Words    *look.Paragraph
	mouthful *look.Paragraph
	rows     *chanceRows
	table    *field.Choice
	score    *field.Line
	change   *fyne.Container
	Trouble  *look.Paragraph
	box      *fyne.Container
	editor   *Editor
}

// scheduleRoom is kept for what is said of the breaks, px at 100 % text, so that
// the rows below do not move while a slider is dragged.
const scheduleRoom float32 = 40

// New makes the panel of the chances to drink.
func New(v *part.Plan) part.Part {
	t := &BreaksTab{v: v, picture: chart.NewBreakTimeline(), rows: newChanceRows(v)}
	t.editor = NewEditor(v)
	t.editor.OnShown = func() {
		t.data.Stops = t.editor.Stops
		t.picture.Set(t.data)
	}
	t.picture.OnDragged, t.picture.OnReleased = t.Drag, t.Release
	h, say := v.Desk.Host, v.Speaker.Say
	t.Words, t.mouthful = look.NewParagraph("", look.Body, look.Ink), look.NewParagraph("", look.Body, look.Ink2)
	t.Trouble = look.NewParagraph("", look.Note, look.Ink)
	weigh := field.NewButton(h, "planner.mouthful", say("planner.mouthful.weigh"), field.Outline, func() { AskMouthful(v) })
	t.table = field.NewChoice(h, "planner.breaks.table", sportOptions(v))
	t.table.SetLeast(230)
	t.table.SetPlaceholder(say("planner.breaks.table"))
	t.table.OnChosen = t.TakeTable
	t.score = field.NewLine(h, "planner.breaks.score", 40)
	t.score.SetPlaceholder(say("planner.breaks.score"))
	t.score.OnEnter = t.TakeScore
	add := field.NewButton(h, "planner.breaks.add", say("planner.breaks.add"), field.Outline, t.rows.add)
	t.change = look.HBox(10, add, look.NewLabel(say("planner.breaks.from"), look.Body, look.Ink2), t.table, look.MinSized(180, 0, t.score))
	t.box = look.VBox(12, t.picture, look.MinSized(0, scheduleRoom, t.Words), look.Columns(12, []look.Track{look.Share(1), look.Fit()}, t.mouthful, weigh), t.rows.box, t.change, t.Trouble)
	return t
}

// Body is what stands on the page.
func (t *BreaksTab) Body() fyne.CanvasObject { return t.box }

// Open shows the chances there are.
func (t *BreaksTab) Open() {
	v := t.v
	d := &t.data
	d.Minutes = v.Now.PlanCase.Planner.Session().Minutes[v.Now.Length]
	d.Ticks = d.Ticks[:0]
	for at := 0.0; at <= d.Minutes; at += wording.QuarterHours(d.Minutes) {
		d.Ticks = append(d.Ticks, chart.Tick{At: at, Text: v.Speaker.Minute(at)})
	}
	d.Spells = Spells(d.Spells[:0], v.Live.Take, d.Minutes)
	t.mouthful.SetText(mouthfulWords(v.Speaker, v.Now, &v.Live))
	t.rows.Open()
	look.ShowIf(t.change, v.Now.Draft())
	look.ShowIf(t.score, v.Now.Plan.Target.Sport == "tennis")
	t.Trouble.SetText("")
	t.Follow()
	t.box.Refresh()
}

// Follow shows what a movement changed.
func (t *BreaksTab) Follow() {
	v := t.v
	words := strings.Join(scheduleWords(v.Speaker, v.Now, &v.Live), "\n")
	t.data.Summary = words
	t.editor.Follow()
	width := t.Words.Size().Width
	before := look.HeightFor(t.Words, width)
	t.Words.SetText(words)
	if now := look.HeightFor(t.Words, width); now != before && max(now, before) > look.Scaled(scheduleRoom) {
		t.box.Refresh()
		v.Lay()
	}
	t.rows.Follow()
}

// sportOptions are the sports of the table of chances.
func sportOptions(v *part.Plan) []field.Option {
	sports, err := plan.Sports()
	if err != nil {
		v.Desk.Trouble(err)
		return nil
	}
	var list []field.Option
	for _, s := range sports {
		list = append(list, field.Option{Key: s.Code + "/" + s.Session, Text: desk.SportWord(v.Desk.Words, s.Code), Note: desk.KindWord(v.Desk.Words, s.Session)})
	}
	return list
}

// TakeTable puts a sport's chances in the place of those there are.
func (t *BreaksTab) TakeTable(key string) {
	sports, err := plan.Sports()
	if err != nil {
		t.v.Desk.Trouble(err)
		return
	}
	session := t.v.Now.PlanCase.Planner.Session()
	for _, s := range sports {
		if s.Code+"/"+s.Session == key {
			t.take(s.Chances(session.Minutes[plan.Expected], session.Heat))
		}
	}
}

// TakeScore puts the rests of a tennis match of that score in the place of the
// chances there are.
func (t *BreaksTab) TakeScore(text string) {
	sets, ok := readScore(text)
	if ok {
		list, err := plan.TennisChances(sets, t.v.Now.PlanCase.Planner.Session().Minutes[plan.Expected])
		if err == nil {
			t.take(list)
			return
		}
	}
	t.Trouble.SetText(t.v.Speaker.Say("planner.breaks.noscore"))
	t.box.Refresh()
}

func (t *BreaksTab) take(list []plan.Chance) {
	t.v.Binder.Pick("planner.breaks.table", func(s *part.Sheet) { s.Record.Chances = consult.RecordChances(s.Record.ID, list) })
}

// chanceAt is a chance of a plan, in place; one of its own where it is not there.
func chanceAt(p *record.Plan, id record.ID) *record.Chance {
	for i := range p.Chances {
		if p.Chances[i].ID == id {
			return &p.Chances[i]
		}
	}
	return &record.Chance{}
}

package planner

import (
	"strings"

	"fyne.io/fyne/v2"

	"ebbwell/app/kit/chart"
	"ebbwell/app/kit/desk"
	"ebbwell/app/kit/field"
	"ebbwell/app/kit/look"
	"ebbwell/internal/consult"
	"ebbwell/internal/plan"
	"ebbwell/internal/record"
)

// breaksTab is what to take at each chance the sport gives: drawn on a line of
// time, and as rows whose chances can be changed for this athlete and
// competition.
type breaksTab struct {
	v        *View
	picture  *chart.BreakTimeline
	data     chart.BreakData
	words    *look.Paragraph
	mouthful *look.Label
	rows     *chanceRows
	table    *field.Choice
	score    *field.Line
	change   *fyne.Container
	trouble  *look.Paragraph
	box      *fyne.Container
}

// scheduleRoom is kept for what is said of the breaks, px at 100 % text, so that
// the rows below do not move while a slider is dragged.
const scheduleRoom float32 = 40

func newBreaksTab(v *View) part {
	t := &breaksTab{v: v, picture: chart.NewBreakTimeline(), rows: newChanceRows(v)}
	h, say := v.desk.Host, v.sp.say
	t.words, t.mouthful = look.NewParagraph("", look.Body, look.Ink), look.NewLabel("", look.Body, look.Ink2).Shorten()
	t.trouble = look.NewParagraph("", look.Note, look.Ink)
	weigh := field.NewButton(h, "planner.mouthful", say("planner.mouthful.weigh"), field.Outline, v.askMouthful)
	t.table = field.NewChoice(h, "planner.breaks.table", v.sportOptions())
	t.table.SetLeast(230)
	t.table.SetPlaceholder(say("planner.breaks.table"))
	t.table.OnChosen = t.takeTable
	t.score = field.NewLine(h, "planner.breaks.score", 40)
	t.score.SetPlaceholder(say("planner.breaks.score"))
	t.score.OnEnter = t.takeScore
	add := field.NewButton(h, "planner.breaks.add", say("planner.breaks.add"), field.Outline, t.rows.add)
	t.change = look.HBox(10, add, look.NewLabel(say("planner.breaks.from"), look.Body, look.Ink2), t.table, look.MinSized(180, 0, t.score))
	t.box = look.VBox(12, t.picture, look.MinSized(0, scheduleRoom, t.words), look.HBox(12, look.Grow(t.mouthful), weigh), t.rows.box, t.change, t.trouble)
	return t
}

func (t *breaksTab) body() fyne.CanvasObject { return t.box }

// open shows the chances there are.
func (t *breaksTab) open() {
	v := t.v
	d := &t.data
	d.Minutes = v.now.planCase.Planner.Session().Minutes[v.now.length]
	d.Ticks = d.Ticks[:0]
	for at := 0.0; at <= d.Minutes; at += quarterHours(d.Minutes) {
		d.Ticks = append(d.Ticks, chart.Tick{At: at, Text: v.sp.minute(at)})
	}
	d.Spells = spells(d.Spells[:0], v.live.take, d.Minutes)
	t.mouthful.SetText(v.sp.mouthfulWords(v.now, &v.live))
	t.rows.open()
	look.ShowIf(t.change, v.now.draft())
	look.ShowIf(t.score, v.now.plan.Target.Sport == "tennis")
	t.trouble.SetText("")
	t.follow()
	t.box.Refresh()
}

// follow shows what a movement changed.
func (t *breaksTab) follow() {
	v := t.v
	t.data.Stops = v.sp.stops(t.data.Stops[:0], v.live.take)
	words := strings.Join(v.sp.scheduleWords(v.now, &v.live), "\n")
	t.data.Summary = words
	t.picture.Set(t.data)
	width := t.words.Size().Width
	before := look.HeightFor(t.words, width)
	t.words.SetText(words)
	if now := look.HeightFor(t.words, width); now != before && max(now, before) > look.Scaled(scheduleRoom) {
		t.box.Refresh()
		v.ui.page.lay()
	}
	t.rows.follow()
}

// sportOptions are the sports of the table of chances.
func (v *View) sportOptions() []field.Option {
	sports, err := plan.Sports()
	if err != nil {
		v.desk.Trouble(err)
		return nil
	}
	var list []field.Option
	for _, s := range sports {
		list = append(list, field.Option{Key: s.Code + "/" + s.Session, Text: desk.SportWord(v.desk.Words, s.Code), Note: v.sp.sessionWord(s.Session)})
	}
	return list
}

// sessionWord is the word for a kind of session of the table.
func (sp speaker) sessionWord(code string) string {
	if key := "sport-session." + code; sp.w.Has(key) {
		return sp.say(key)
	}
	return strings.ReplaceAll(code, "-", " ")
}

// takeTable puts a sport's chances in the place of those there are.
func (t *breaksTab) takeTable(key string) {
	sports, err := plan.Sports()
	if err != nil {
		t.v.desk.Trouble(err)
		return
	}
	session := t.v.now.planCase.Planner.Session()
	for _, s := range sports {
		if s.Code+"/"+s.Session == key {
			t.take(s.Chances(session.Minutes[plan.Expected], session.Heat))
		}
	}
}

// takeScore puts the rests of a tennis match of that score in the place of the
// chances there are.
func (t *breaksTab) takeScore(text string) {
	sets, ok := readScore(text)
	if ok {
		list, err := plan.TennisChances(sets, t.v.now.planCase.Planner.Session().Minutes[plan.Expected])
		if err == nil {
			t.take(list)
			return
		}
	}
	t.trouble.SetText(t.v.sp.say("planner.breaks.noscore"))
	t.box.Refresh()
}

func (t *breaksTab) take(list []plan.Chance) {
	t.v.b.Pick("planner.breaks.table", func(s *sheet) { s.Record.Chances = consult.RecordChances(s.Record.ID, list) })
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

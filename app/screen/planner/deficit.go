package planner

import (
	"math"

	"ebbwell/app/kit/chart"
	"ebbwell/app/kit/desk"
	"ebbwell/app/kit/field"
	"ebbwell/app/kit/look"
	"ebbwell/internal/plan"
	"ebbwell/internal/quantity"
)

// Widths above the picture of the deficit, in px at 100 % text: they are fixed,
// so that nothing moves while the figures change.
const (
	endFigure float32 = 104
	endRange  float32 = 232
)

// deficitPanel is the deficit at the end: the figure that answers, how sure it
// is, and its course over the session.
type deficitPanel struct {
	sp           speaker
	figure, sure *look.Label
	why          *field.Link
	picture      *chart.DeficitChart
	data         chart.DeficitData
	box          *look.Sheet
	// brief is the figure alone, for where the picture is out of sight.
	brief                  *look.Sheet
	briefFigure, briefSure *look.Label
}

func newDeficitPanel(h *field.Host, sp speaker, why func()) *deficitPanel {
	p := &deficitPanel{sp: sp, picture: chart.NewDeficitChart()}
	p.figure = look.NewLabel("", look.Key, look.Ink).Right()
	p.sure = look.NewLabel("", look.Note, look.Ink2).Shorten()
	p.why = field.NewLink(h, "planner.deficit.why", sp.say("planner.why"), why)
	unit := "planner.deficit.unit"
	if sp.by.Hidden {
		unit += ".hidden"
	}
	name := newTitled(sp.say("planner.deficit"), sp.say(unit))
	head := look.Columns(12, []look.Track{look.Share(1), look.Fixed(endFigure), look.Fixed(endRange), look.Fit()}, name, p.figure, p.sure, p.why)
	p.box = look.NewSheet(look.VBox(4, head, look.Grow(p.picture)))
	p.briefFigure = look.NewLabel("", look.Key, look.Ink).Right()
	p.briefSure = look.NewLabel("", look.Note, look.Ink2).Shorten()
	p.brief = look.NewSheet(look.Columns(12, []look.Track{look.Share(1), look.Fixed(endFigure), look.Fixed(endRange)},
		newTitled(sp.say("planner.deficit"), sp.say(unit)), p.briefFigure, p.briefSure))
	return p
}

// open sets what a movement leaves alone: the length, the habit, the limit, the
// levels, the names of the chances.
func (p *deficitPanel) open(s state, k *calculation) {
	d := &p.data
	d.Minutes = s.planCase.Planner.Session().Minutes[s.length]
	d.Habit = p.points(d.Habit[:0], k.usual, k.habit, k.even())
	d.HabitEnd = chart.EndLabel{Figure: p.sp.deficit(k.habit), Name: p.sp.say("planner.deficit.habit")}
	d.LimitText = ""
	if aim := s.planCase.Planner.Aim().Deficit; aim.On && !p.sp.by.Hidden {
		d.Limit, d.LimitText = -aim.High, p.sp.say("planner.deficit.limit", p.sp.short(aim.High))
	}
	d.Ticks = p.levels(d.Ticks[:0], k.habit)
	d.Times = p.times(d.Times[:0], d.Minutes)
	d.Chances = d.Chances[:0]
	for i := range k.take.Takes {
		ch := k.take.Takes[i].Chance
		d.Chances = append(d.Chances, chart.DrinkChance{
			Minute: ch.Minute + ch.Seconds/120, Minutes: ch.Seconds / 60, Name: desk.ChanceWord(p.sp.w, ch.Code),
		})
	}
	leaveOutAlike(d.Chances)
}

// follow shows what a movement changes.
func (p *deficitPanel) follow(s state, k *calculation) {
	q := &k.at
	p.figure.SetText(p.sp.deficit(*q))
	p.sure.SetText(p.sp.sure(s, *q))
	p.briefFigure.SetText(p.figure.Text())
	p.briefSure.SetText(p.sure.Text())
	d := &p.data
	d.Plan = p.points(d.Plan[:0], k.course, *q, k.even())
	d.Range = p.ranges(d.Range[:0], k)
	for i := range k.take.Takes {
		d.Chances[i].Amount = ""
		if ml := k.take.Takes[i].ML; ml > 0 {
			d.Chances[i].Amount = p.sp.millilitres(float64(ml))
		}
	}
	d.PlanEnd = chart.EndLabel{Figure: p.sp.deficit(*q), Name: p.sp.say("planner.deficit.plan")}
	if !k.even() && !k.take.Fits {
		x, u := p.sp.end(k.take.DeficitL, k.take.Deficit)
		d.PlanEnd = chart.EndLabel{Figure: p.sp.change(x.Value, u), Name: p.sp.say("planner.deficit.breaks")}
	}
	d.Summary = p.sp.say("planner.deficit.summary", p.sp.deficit(*q), p.sure.Text(), d.HabitEnd.Figure)
	p.picture.Set(*d)
}

// leaveOutAlike takes the names away from many chances that are all called the
// same: they would say nothing.
func leaveOutAlike(list []chart.DrinkChance) {
	const many = 5
	for _, c := range list {
		if len(list) < many || c.Name != list[0].Name {
			return
		}
	}
	for i := range list {
		list[i].Name = ""
	}
}

// sure says how sure the deficit is: its range on a like day, and the volume.
func (sp speaker) sure(s state, q plan.Prediction) string {
	key := "planner.sure"
	if s.planCase.Planner.Basis().Kind == plan.Estimate {
		key += ".estimate"
	}
	if sp.by.Hidden {
		return sp.say(key+".hidden", sp.spread(q))
	}
	return sp.say(key, sp.spread(q), sp.litres(math.Abs(q.DeficitL.Value)))
}

// points are a course as the picture takes it. Without chances of its own the
// session is drunk through evenly, from nothing to the end.
func (p *deficitPanel) points(into []chart.Point, course []plan.Point, q plan.Prediction, even bool) []chart.Point {
	if even {
		x, _ := p.sp.end(q.DeficitL, q.Deficit)
		return append(into, chart.Point{}, chart.Point{Minute: q.Minutes, Change: x.Value})
	}
	for i := range course {
		x, _ := p.sp.end(course[i].DeficitL, course[i].Deficit)
		into = append(into, chart.Point{Minute: course[i].Minute, Change: x.Value})
	}
	return into
}

// ranges are the ranges at the points of the plan.
func (p *deficitPanel) ranges(into []chart.Span, k *calculation) []chart.Span {
	if k.even() {
		x, _ := p.sp.end(k.at.DeficitL, k.at.Deficit)
		return append(into, chart.Span{}, chart.Span{Low: x.Low, High: x.High})
	}
	for i := range k.course {
		x, _ := p.sp.end(k.course[i].DeficitL, k.course[i].Deficit)
		into = append(into, chart.Span{Low: x.Low, High: x.High})
	}
	return into
}

// mostHalves is the deficit in litres up to which every half one has a line.
const mostHalves = 2.5

// levels are the lines across, from nothing to below what the habit may come to.
func (p *deficitPanel) levels(into []chart.Tick, habit plan.Prediction) []chart.Tick {
	x, u := p.sp.end(habit.DeficitL, habit.Deficit)
	into = append(into, chart.Tick{Text: p.sp.w.Number(0, 0)})
	if u == quantity.Litre && -x.Low <= mostHalves {
		for at := 0.5; at < math.Ceil(2*max(-x.Low, 1))/2+0.5; at += 0.5 {
			into = append(into, chart.Tick{At: -at, Text: p.sp.w.Number(-at, 1) + "\u00a0" + string(u)})
		}
		return into
	}
	lowest := int(math.Ceil(max(-x.Low, 2)))
	every := max(1, lowest/4)
	for at := every; at <= lowest; at += every {
		into = append(into, chart.Tick{At: -float64(at), Text: p.sp.w.Number(-float64(at), 0) + "\u00a0" + string(u)})
	}
	return into
}

// times are the marks below, where no chances are named.
func (p *deficitPanel) times(into []chart.Tick, minutes float64) []chart.Tick {
	every := quarterHours(minutes)
	for at := 0.0; at <= minutes; at += every {
		into = append(into, chart.Tick{At: at, Text: p.sp.say("planner.minutes", p.sp.w.Number(at, 0))})
	}
	return into
}

// quarterHours is how far apart marks of time stand: so that there are no more
// than seven.
func quarterHours(minutes float64) float64 {
	every := 15.0
	for minutes/every > 7 {
		every *= 2
	}
	return every
}

// short writes a limit in per cent with no idle decimals.
func (sp speaker) short(x float64) string {
	if x == math.Trunc(x) {
		return sp.percent(x, 0)
	}
	return sp.percent(x, 1)
}

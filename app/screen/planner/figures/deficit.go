package figures

import (
	"math"

	"ebbwell/app/kit/chart"
	"ebbwell/app/kit/desk"
	"ebbwell/app/kit/field"
	"ebbwell/app/kit/look"
	"ebbwell/app/screen/planner/state"
	"ebbwell/app/screen/planner/wording"
	"ebbwell/internal/plan"
	"ebbwell/internal/quantity"
)

// Widths above the picture of the deficit, in px at 100 % text: they are fixed,
// so that nothing moves while the figures change.
const (
	endFigure float32 = 104
	endRange  float32 = 232
)

// Deficit is the deficit at the end: the figure that answers, how sure it
// is, and its course over the session.
type Deficit struct {
	sp           wording.Speaker
	Figure, sure *look.Label
	why          *field.Link
	picture      *chart.DeficitChart
	Data         chart.DeficitData
	Box          *look.Sheet
	// Brief is the figure alone, for where the picture is out of sight.
	Brief                  *look.Sheet
	briefFigure, briefSure *look.Label
}

func NewDeficit(h *field.Host, sp wording.Speaker, why func()) *Deficit {
	p := &Deficit{sp: sp, picture: chart.NewDeficitChart()}
	p.Figure = look.NewLabel("", look.Key, look.Ink).Right()
	p.sure = look.NewLabel("", look.Note, look.Ink2).Shorten()
	p.why = field.NewLink(h, "planner.deficit.why", sp.Say("planner.why"), why)
	unit := "planner.deficit.unit"
	if sp.By.Hidden {
		unit += ".hidden"
	}
	name := newTitled(sp.Say("planner.deficit"), sp.Say(unit))
	head := look.Columns(12, []look.Track{look.Share(1), look.Fixed(endFigure), look.Fixed(endRange), look.Fit()}, name, p.Figure, p.sure, p.why)
	p.Box = look.NewSheet(look.VBox(4, head, look.Grow(p.picture)))
	p.briefFigure = look.NewLabel("", look.Key, look.Ink).Right()
	p.briefSure = look.NewLabel("", look.Note, look.Ink2).Shorten()
	p.Brief = look.NewSheet(look.Columns(12, []look.Track{look.Share(1), look.Fixed(endFigure), look.Fixed(endRange)},
		newTitled(sp.Say("planner.deficit"), sp.Say(unit)), p.briefFigure, p.briefSure))
	return p
}

// Open sets what a movement leaves alone: the length, the habit, the limit, the
// levels, the names of the chances.
func (p *Deficit) Open(s state.State, k *state.Calculation) {
	d := &p.Data
	d.Minutes = s.PlanCase.Planner.Session().Minutes[s.Length]
	d.Habit = p.points(d.Habit[:0], k.Usual, k.Habit, k.HabitEven())
	d.HabitEnd = chart.EndLabel{Figure: p.sp.Deficit(k.Habit), Name: p.sp.Say("planner.deficit.habit")}
	d.LimitText = ""
	if aim := s.PlanCase.Planner.Aim().Deficit; aim.On && !p.sp.By.Hidden {
		d.Limit, d.LimitText = -aim.High, p.sp.Say("planner.deficit.limit", p.sp.Short(aim.High))
	}
	d.Ticks = p.levels(d.Ticks[:0], k.Habit)
	d.Times = p.times(d.Times[:0], d.Minutes)
	d.Chances = d.Chances[:0]
	for i := range k.Take.Takes {
		ch := k.Take.Takes[i].Chance
		d.Chances = append(d.Chances, chart.DrinkChance{
			Minute: ch.Minute + ch.Seconds/120, Minutes: ch.Seconds / 60, Name: desk.ChanceWord(p.sp.Words, ch.Code),
		})
	}
	leaveOutAlike(d.Chances)
}

// Follow shows what a movement changes.
func (p *Deficit) Follow(s state.State, k *state.Calculation) {
	q := &k.At
	p.Figure.SetText(p.sp.Deficit(*q))
	p.sure.SetText(sure(p.sp, s, *q))
	p.briefFigure.SetText(p.Figure.Text())
	p.briefSure.SetText(p.sure.Text())
	d := &p.Data
	d.Plan = p.points(d.Plan[:0], k.Course, *q, k.Even())
	d.Range = p.ranges(d.Range[:0], k)
	for i := range k.Take.Takes {
		d.Chances[i].Amount = ""
		if ml := k.Take.Takes[i].ML; ml > 0 {
			d.Chances[i].Amount = p.sp.Millilitres(float64(ml))
		}
	}
	d.PlanEnd = chart.EndLabel{Figure: p.sp.Deficit(*q), Name: p.sp.Say("planner.deficit.plan")}
	if !k.Even() && !k.Take.Fits {
		x, u := p.sp.End(k.Take.DeficitL, k.Take.Deficit)
		d.PlanEnd = chart.EndLabel{Figure: p.sp.Change(x.Value, u), Name: p.sp.Say("planner.deficit.breaks")}
	}
	d.Summary = p.sp.Say("planner.deficit.summary", p.sp.Deficit(*q), p.sure.Text(), d.HabitEnd.Figure)
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
func sure(sp wording.Speaker, s state.State, q plan.Prediction) string {
	key := "planner.sure"
	if s.PlanCase.Planner.Basis().Kind == plan.Estimate {
		key += ".estimate"
	}
	if sp.By.Hidden {
		return sp.Say(key+".hidden", sp.Spread(q))
	}
	return sp.Say(key, sp.Spread(q), sp.Litres(math.Abs(q.DeficitL.Value)))
}

// points are a course as the picture takes it. Without chances of its own the
// session is drunk through evenly, from nothing to the end.
func (p *Deficit) points(into []chart.Point, course []plan.Point, q plan.Prediction, even bool) []chart.Point {
	if even {
		x, _ := p.sp.End(q.DeficitL, q.Deficit)
		return append(into, chart.Point{}, chart.Point{Minute: q.Minutes, Change: x.Value})
	}
	for i := range course {
		x, _ := p.sp.End(course[i].DeficitL, course[i].Deficit)
		into = append(into, chart.Point{Minute: course[i].Minute, Change: x.Value})
	}
	return into
}

// ranges are the ranges at the points of the plan.
func (p *Deficit) ranges(into []chart.Span, k *state.Calculation) []chart.Span {
	if k.Even() {
		x, _ := p.sp.End(k.At.DeficitL, k.At.Deficit)
		return append(into, chart.Span{}, chart.Span{Low: x.Low, High: x.High})
	}
	for i := range k.Course {
		x, _ := p.sp.End(k.Course[i].DeficitL, k.Course[i].Deficit)
		into = append(into, chart.Span{Low: x.Low, High: x.High})
	}
	return into
}

// mostHalves is the deficit in litres up to which every half one has a line.
const mostHalves = 2.5

// levels are the lines across, from nothing to below what the habit may come to.
func (p *Deficit) levels(into []chart.Tick, habit plan.Prediction) []chart.Tick {
	x, u := p.sp.End(habit.DeficitL, habit.Deficit)
	into = append(into, chart.Tick{Text: p.sp.Words.Number(0, 0)})
	if u == quantity.Litre && -x.Low <= mostHalves {
		for at := 0.5; at < math.Ceil(2*max(-x.Low, 1))/2+0.5; at += 0.5 {
			into = append(into, chart.Tick{At: -at, Text: p.sp.Words.Number(-at, 1) + "\u00a0" + string(u)})
		}
		return into
	}
	lowest := int(math.Ceil(max(-x.Low, 2)))
	every := max(1, lowest/4)
	for at := every; at <= lowest; at += every {
		into = append(into, chart.Tick{At: -float64(at), Text: p.sp.Words.Number(-float64(at), 0) + "\u00a0" + string(u)})
	}
	return into
}

// times are the marks below, where no chances are named.
func (p *Deficit) times(into []chart.Tick, minutes float64) []chart.Tick {
	every := wording.QuarterHours(minutes)
	for at := 0.0; at <= minutes; at += every {
		into = append(into, chart.Tick{At: at, Text: p.sp.Say("planner.minutes", p.sp.Words.Number(at, 0))})
	}
	return into
}

package figures

import (
	"math"

	"fyne.io/fyne/v2"

	"ebbwell/app/kit/chart"
	"ebbwell/app/kit/desk"
	"ebbwell/app/kit/field"
	"ebbwell/app/kit/look"
	"ebbwell/app/screen/planner/state"
	"ebbwell/app/screen/planner/wording"
	"ebbwell/internal/plan"
	"ebbwell/internal/quantity"
)

// deficitFigure and carbohydrateFigure are the widths of the two figures, px at
// 100 % text: they are fixed, so that nothing moves while the figures change.
const (
	deficitFigure      float32 = 97
	carbohydrateFigure float32 = 96
)

// Deficit is the deficit at the end: the figure that answers, how sure it
// is, and its course over the session.
type Deficit struct {
	sp wording.Speaker
	key
	bar     *chart.RangeBar
	band    chart.RangeBarData
	picture *chart.DeficitChart
	Data    chart.DeficitData
	Box     *look.Sheet
	// fields lie under the bottles of the picture.
	fields *fyne.Container
}

// NewDeficit makes the figure and its picture; more stands at the head of the
// picture.
func NewDeficit(h *field.Host, sp wording.Speaker, why func(), more fyne.CanvasObject) *Deficit {
	p := &Deficit{sp: sp, picture: chart.NewDeficitChart(), bar: chart.NewRangeBar()}
	unit := "planner.deficit.unit"
	if sp.By.Hidden {
		unit += ".hidden"
	}
	p.key = newKey(newTitled(sp.Say("planner.deficit"), sp.Say(unit)), field.NewLink(h, "planner.deficit.why", sp.Say("planner.why"), why), p.bar, deficitFigure)
	p.fields = &fyne.Container{Layout: underStops{p.picture}}
	head := look.HBox(12, look.Grow(look.NewLabel(sp.Say("planner.deficit.picture"), look.Strong, look.Ink).Shorten()), more)
	p.Box = look.NewSheet(look.VBox(4, head, look.Grow(&fyne.Container{Layout: &upon{}, Objects: []fyne.CanvasObject{p.picture, p.fields}})))
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
	p.band.Habit, p.band.Max = shortfall(p.sp, k.Habit, math.Max(-d.Ticks[len(d.Ticks)-1].At, 1))
	aim := s.PlanCase.Planner.Aim().Deficit
	p.band.Limit, p.band.Limited = aim.High, aim.On && !p.sp.By.Hidden
	p.band.Estimate = s.PlanCase.Planner.Basis().Kind == plan.Estimate
	d.StopMax = 0
	for i := range k.Take.Takes {
		d.StopMax = max(d.StopMax, k.Take.Takes[i].Chance.MostML())
	}
}

// Break puts the breaks under the picture: what is taken, the play between, and
// the fields, which may be none.
func (p *Deficit) Break(stops []chart.BreakStop, spells []chart.Spell, fields []fyne.CanvasObject) {
	p.Data.Stops, p.Data.Spells, p.Data.Fields = stops, spells, len(fields) > 0
	p.fields.Objects = fields
	p.picture.Set(p.Data)
	p.fields.Refresh()
}

// Stops shows other amounts at the same breaks.
func (p *Deficit) Stops(stops []chart.BreakStop) {
	p.Data.Stops = stops
	p.picture.Set(p.Data)
}

// OnDragged is told what the bottle of a break is dragged to, in mL, and that it is
// let go.
func (p *Deficit) OnDragged(dragged func(stop int, to float64), released func()) {
	p.picture.OnDragged, p.picture.OnReleased = dragged, released
}

// shortfall is how far a session ends below the mass it began with, as the screen
// says it, and the end of a scale that holds it.
func shortfall(sp wording.Speaker, q plan.Prediction, end float64) (at, most float64) {
	x, _ := sp.End(q.DeficitL, q.Deficit)
	return max(-x.Value, 0), end
}

// Follow shows what a movement changes.
func (p *Deficit) Follow(s state.State, k *state.Calculation) {
	q := &k.At
	p.Figure.SetText(p.sp.Deficit(*q))
	p.side.SetText(sure(p.sp, s, *q))
	p.foot.SetText(notReplaced(p.sp, *q))
	end, _ := p.sp.End(q.DeficitL, q.Deficit)
	p.band.At, p.band.Range = max(-end.Value, 0), chart.Span{Low: max(-end.High, 0), High: max(-end.Low, 0)}
	p.band.Summary = p.Figure.Text()
	p.bar.Set(p.band)
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
	d.Summary = p.sp.Say("planner.deficit.summary", p.sp.Deficit(*q), p.side.Text(), d.HabitEnd.Figure)
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

// sure says how sure the deficit is: its range on a like day.
func sure(sp wording.Speaker, s state.State, q plan.Prediction) string {
	key := "planner.sure"
	if s.PlanCase.Planner.Basis().Kind == plan.Estimate {
		key += ".estimate"
	}
	return sp.Say(key, sp.Spread(q))
}

// notReplaced says how much of the loss is not replaced; empty where the figure is
// that already.
func notReplaced(sp wording.Speaker, q plan.Prediction) string {
	if sp.By.Hidden {
		return ""
	}
	return sp.Say("planner.deficit.left", sp.Litres(math.Abs(q.DeficitL.Value)))
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
	every := (lowest + 3) / 4
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

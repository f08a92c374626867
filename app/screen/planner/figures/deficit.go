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
	split  *split
	head   *fyne.Container
	// selected is the break whose split stands in the head; none below zero, until
	// one is chosen the one at which most is drunk.
	selected int
	said     deficitSaid
	// within and past say how the deficit stands to the limit; empty without one.
	within, past string
}

// deficitSaid is what the words of the deficit were made of, so that they are made
// anew only where it changed.
type deficitSaid struct {
	set  bool
	q    plan.Ranged
	l    plan.Ranged
	take struct {
		drinkable, planned, missed int
		missedAt                   float64
		left                       [plan.Foods]float64
	}
}

// NewDeficit makes the figure and its picture; more stands at the head of the
// picture.
func NewDeficit(h *field.Host, sp wording.Speaker, why func(), more fyne.CanvasObject) *Deficit {
	p := &Deficit{sp: sp, picture: chart.NewDeficitChart(), bar: chart.NewRangeBar(), split: newSplit(sp), selected: -1}
	p.Data.Comma, p.Data.Dot = sp.Say("format.comma"), sp.Say("format.dot")
	title := look.NewOneOf(look.Strong, sp.Say("planner.deficit"), sp.Say("planner.deficit.short"))
	if sp.By.Hidden {
		title = look.NewOneOf(look.Strong, sp.Say("planner.deficit.hidden"), sp.Say("planner.deficit.short"))
	}
	p.key = newKey(title, field.NewLink(h, "planner.deficit.why", sp.Say("planner.why"), why), p.bar, deficitFigure)
	p.fields = &fyne.Container{Layout: underStops{p.picture}}
	name := look.NewOneOf(look.Strong, sp.Say("planner.deficit.picture"), sp.Say("planner.deficit.picture.short"))
	p.head = &fyne.Container{Layout: pictureHead{name, p.split}, Objects: []fyne.CanvasObject{name, &fyne.Container{Layout: &upon{}, Objects: []fyne.CanvasObject{p.split.row}}, more}}
	p.Box = look.NewSheet(look.VBox(4, p.head, look.Grow(&fyne.Container{Layout: &upon{}, Objects: []fyne.CanvasObject{p.picture, p.fields}})))
	return p
}

// Picture is the chart alone, as it is kept as a picture.
func (p *Deficit) Picture() fyne.CanvasObject { return p.picture }

// Select selects a break: its bottle has the handle, its split stands in the head.
func (p *Deficit) Select(s state.State, k *state.Calculation, stop int) {
	p.selected = stop
	p.Data.Selected = stop
	p.picture.Set(p.Data)
	p.showSplit(s, k)
	if p.Data.OneField {
		p.fields.Refresh() // it stands under another bottle
	}
}

// Selected is the break whose split stands in the head; -1 without breaks.
func (p *Deficit) Selected() int { return p.selected }

// Least is the least height of the sheet of the picture at a width; tight, the least that
// can be read.
func (p *Deficit) Least(width float32, tight bool) float32 {
	return 2*look.SheetPadY + p.head.MinSize().Height + 4 + p.picture.LeastHeight(width-2*look.SheetPadX, tight)
}

// Split is what is said of the selected break.
func (p *Deficit) Split() string { return p.split.text() }

// showSplit says what is taken at the selected break.
func (p *Deficit) showSplit(s state.State, k *state.Calculation) {
	if p.selected < 0 || p.selected >= len(k.Take.Takes) {
		p.selected = widest(k.Take)
	}
	p.Data.Selected = p.selected
	if !p.split.show(s, k, p.selected) {
		p.head.Refresh()
	}
}

// widest is the break at which most is drunk; -1 without breaks.
func widest(t plan.Schedule) int {
	best := -1
	for i := range t.Takes {
		if best < 0 || t.Takes[i].ML > t.Takes[best].ML {
			best = i
		}
	}
	return best
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
	// nothing that is drunk ends lower than the low end of drinking nothing
	none := s.PlanCase.Planner.Evaluate(s.Length, plan.Mix{})
	foot, _ := p.sp.End(none.DeficitL, none.Deficit)
	d.Lowest = min(foot.Low, -1)
	d.Ticks = p.levels(d.Ticks[:0], -d.Lowest)
	d.Times = p.times(d.Times[:0], d.Minutes)
	d.Chances = d.Chances[:0]
	for i := range k.Take.Takes {
		ch := k.Take.Takes[i].Chance
		d.Chances = append(d.Chances, chart.DrinkChance{
			Minute: ch.Minute + ch.Seconds/120, Minutes: ch.Seconds / 60, Name: desk.ChanceWord(p.sp.Words, ch.Code),
		})
	}
	leaveOutAlike(d.Chances)
	p.band.Habit, p.band.Max = shortfall(p.sp, k.Habit, -d.Lowest)
	aim := s.PlanCase.Planner.Aim().Deficit
	p.within, p.past = "", ""
	if aim.On && !p.sp.By.Hidden {
		p.within, p.past = p.sp.Say("planner.deficit.within", p.sp.Short(aim.High)), p.sp.Say("planner.deficit.past", p.sp.Short(aim.High))
	}
	p.band.Limit, p.band.Limited = aim.High, aim.On && !p.sp.By.Hidden
	p.band.Estimate = s.PlanCase.Planner.Basis().Kind == plan.Estimate
	d.StopMax = 0
	for i := range k.Take.Takes {
		d.StopMax = max(d.StopMax, k.Take.Takes[i].Chance.MostML())
	}
	p.selected = -1
	p.said = deficitSaid{}
	p.split.shown.set = false
}

// Break puts the breaks under the picture: what is taken, the play between, and
// the fields, which may be none, or one that belongs to the selected break.
func (p *Deficit) Break(stops []chart.BreakStop, spells []chart.Spell, fields []fyne.CanvasObject, one bool) {
	p.Data.Stops, p.Data.Spells, p.Data.Fields, p.Data.OneField = stops, spells, len(fields) > 0, one
	p.fields.Objects = fields
	p.picture.Set(p.Data)
	p.fields.Refresh()
}

// Stops shows other amounts at the same breaks.
func (p *Deficit) Stops(stops []chart.BreakStop) {
	p.Data.Stops = stops
	p.picture.Set(p.Data)
}

// OnDragged is told what the bottle of a break is dragged to, in mL, that it is let
// go, and that a break is clicked. Without the first two the bottles stand still.
func (p *Deficit) OnDragged(dragged func(stop int, to float64), released func(), selected func(stop int)) {
	p.picture.OnDragged, p.picture.OnReleased, p.picture.OnSelected = dragged, released, selected
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
	p.say(s, k)
	end, _ := p.sp.End(q.DeficitL, q.Deficit)
	p.band.At, p.band.Range = max(-end.Value, 0), chart.Span{Low: max(-end.High, 0), High: max(-end.Low, 0)}
	p.band.Summary = p.Figure.Text()
	p.bar.Set(p.band)
	d := &p.Data
	d.Plan = p.points(d.Plan[:0], k.Course, *q, k.Even())
	d.Range = p.ranges(d.Range[:0], k)
	p.showSplit(s, k)
	p.picture.Set(*d)
}

// say words the deficit, where it changed.
func (p *Deficit) say(s state.State, k *state.Calculation) {
	q, now := &k.At, deficitSaid{set: true, q: k.At.Deficit, l: k.At.DeficitL}
	now.take.drinkable, now.take.planned = k.Take.DrinkableML, k.Take.PlannedML
	now.take.missed, now.take.missedAt = k.Take.WithoutMaybe.MissedML, k.Take.WithoutMaybe.Deficit.Value
	now.take.left = k.Take.FoodLeft
	if now == p.said {
		return
	}
	p.said = now
	figure := p.sp.Deficit(*q)
	p.Figure.SetText(figure)
	whole, short := sure(p.sp, s, *q)
	p.side.set(whole, short)
	p.foot.SetTexts(p.against(s, *q))
	d := &p.Data
	d.PlanEnd = chart.EndLabel{Figure: figure, Name: p.sp.Say("planner.deficit.plan")}
	if !k.Even() && !k.Take.Fits() {
		x, u := p.sp.End(k.Take.DeficitL, k.Take.Deficit)
		d.PlanEnd = chart.EndLabel{Figure: p.sp.Change(x.Value, u), Name: p.sp.Say("planner.deficit.breaks")}
	}
	d.Aside = p.aside(s, k)
	d.Summary = p.sp.Say("planner.deficit.summary", figure, whole, d.HabitEnd.Figure)
}

// aside says what the breaks do not carry, and what is left when those that may not
// happen do not.
func (p *Deficit) aside(s state.State, k *state.Calculation) string {
	if k.Even() {
		return ""
	}
	list := p.sp.NotTaken(s, k.Take)
	if w := k.Take.WithoutMaybe; w.MissedML > 0 {
		x, u := p.sp.End(w.DeficitL, w.Deficit)
		list = append(list, p.sp.Say("planner.breaks.missed.short", p.sp.Change(x.Value, u)))
	}
	return wording.Sentences(list...)
}

// against holds the deficit against the limit and says how much is not replaced, and
// the first of it alone.
func (p *Deficit) against(s state.State, q plan.Prediction) (long, short string) {
	left, held := notReplaced(p.sp, q), p.within
	if q.Deficit.Value > s.PlanCase.Planner.Aim().Deficit.High {
		held = p.past
	}
	if held == "" {
		return left, ""
	}
	return p.sp.Say("planner.deficit.both", held, left), held
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
func sure(sp wording.Speaker, s state.State, q plan.Prediction) (whole, short string) {
	spread := sp.Spread(q)
	if s.PlanCase.Planner.Basis().Kind == plan.Estimate {
		return sp.Say("planner.sure.estimate", spread), ""
	}
	return sp.Say("planner.sure", spread), spread
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

// mostHalves is the deficit in litres up to which every half one has a line, mostLines
// how many lines there are at most.
const (
	mostHalves = 2.5
	mostLines  = 5
)

// levels are the lines across, from nothing to the lowest that can come.
func (p *Deficit) levels(into []chart.Tick, lowest float64) []chart.Tick {
	every, decimals, u := math.Ceil(lowest/mostLines), 0, quantity.PerCent
	if p.sp.By.Hidden {
		u = quantity.Litre
		if lowest <= mostHalves {
			every, decimals = 0.5, 1
		}
	}
	into = append(into, chart.Tick{Text: p.sp.Words.Number(0, 0)})
	for at := every; at <= lowest+levelTolerance; at += every {
		into = append(into, chart.Tick{At: -at, Text: p.sp.Words.Number(-at, decimals) + "\u00a0" + string(u)})
	}
	return into
}

// levelTolerance forgives rounding.
const levelTolerance = 1e-9

// times are the marks below, where no chances are named.
func (p *Deficit) times(into []chart.Tick, minutes float64) []chart.Tick {
	every := wording.QuarterHours(minutes)
	for at := 0.0; at <= minutes; at += every {
		into = append(into, chart.Tick{At: at, Text: p.sp.Say("planner.minutes", p.sp.Words.Number(at, 0))})
	}
	return into
}

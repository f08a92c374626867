package mix

import (
	"fyne.io/fyne/v2"

	"ebbwell/app/kit/chart"
	"ebbwell/app/kit/desk"
	"ebbwell/app/kit/field"
	"ebbwell/app/kit/look"
	"ebbwell/app/screen/planner/state"
	"ebbwell/app/screen/planner/wording"
	"ebbwell/internal/plan"
	"ebbwell/internal/record"
)

// Panel is what goes in: a row for each slot, what is drunk in all, and what can be
// added. Its rows are made once, for all slots there are.
type Panel struct {
	sp    wording.Speaker
	title *look.Label
	hint  *look.Label
	head  *fyne.Container

	Note     *look.Paragraph
	Rows     [plan.Slots]*row
	list     *fyne.Container
	rows     *fitting
	addDrink *field.Button
	addFood  *field.Button
	Salt     *look.Paragraph
	fold     *saltFold
	sum      *sum
	body     *fyne.Container
	Box      *look.Sheet
}

// NewPanel makes the panel. unfold is called when the salt is to be shown.
func NewPanel(h *field.Host, sp wording.Speaker, do Actions, add func(role record.Role), suggest fyne.CanvasObject, unfold func()) *Panel {
	p := &Panel{sp: sp, title: look.NewLabel("", look.Strong, look.Ink).Shorten(), hint: look.NewLabel("", look.Note, look.Ink2)}
	p.Note = look.NewParagraph("", look.Note, look.Ink2)
	p.Salt = look.NewParagraph("", look.Note, look.Ink2)
	p.fold, p.sum = newSaltFold(h, sp, unfold), newSum(sp)
	p.list = look.VBox(0)
	for _, slot := range state.Slots() {
		p.Rows[slot] = newRow(h, sp, slot, do)
		p.list.Add(p.Rows[slot].box)
	}
	p.list.Add(p.fold.box)
	p.addDrink = field.NewButton(h, "planner.add.drink", sp.Say("planner.add.drink"), field.Outline, func() { add(record.RoleDrink) })
	p.addFood = field.NewButton(h, "planner.add.food", sp.Say("planner.add.food"), field.Outline, func() { add(record.RoleFood) })
	p.head = &fyne.Container{Layout: headLayout{}, Objects: []fyne.CanvasObject{p.title, p.hint, suggest}}
	p.rows = newFitting(look.Pad(0, RingRoom, 0, RingRoom, look.VBox(4, p.Note, p.list, p.Salt)))
	p.body = &fyne.Container{Layout: &fillMiddle{p}, Objects: []fyne.CanvasObject{
		p.head, p.rows, look.VBox(8, look.NewRule(), p.sum.box, look.HBox(10, p.addDrink, p.addFood)),
	}}
	p.Box = look.NewSheet(p.body)
	return p
}

// Natural is the height at which no slider needs to scroll, at a width.
func (p *Panel) Natural(width float32) float32 {
	p.setTight(false)
	inner := width - 2*look.SheetPadX
	h := 2*look.SheetPadY + 2*middleGap + 2
	for _, o := range []fyne.CanvasObject{p.body.Objects[0], p.body.Objects[2]} {
		h += look.HeightFor(o, inner)
	}
	return h + p.rowsHeight(inner)
}

// rowsHeight is the height of the rows at a width.
func (p *Panel) rowsHeight(inner float32) float32 {
	return p.rows.height(inner + 2*RingRoom)
}

// setTight sets the rows close, and leaves out the bar of the sum.
func (p *Panel) setTight(on bool) {
	for _, r := range p.Rows {
		r.name.tight = on
	}
	look.ShowIf(p.sum.bar, !on)
}

// loosen gives a row back its second line where the name needs it and the room is there.
func (p *Panel) loosen(inner, room float32) {
	for _, r := range p.Rows {
		if r.name.overlong() {
			r.name.tight = false
			r.name.tight = p.rowsHeight(inner) > room+1
		}
	}
}

// Open shows another case, option or length.
func (p *Panel) Open(s state.State, raw func(slot plan.Slot) string) {
	p.title.SetText(p.sp.Say("planner.mix", p.sp.OptionName(s.Selected())))
	p.hint.SetText(hintOf(p.sp, s))
	p.Note.SetText(wording.Sentences(mixNote(p.sp, s), gaps(p.sp, s.PlanCase)))
	look.ShowIf(p.Note, p.Note.Text() != "")
	p.fold.open(s)
	for _, r := range p.Rows {
		r.Open(s, p.sp, raw(r.slot), r.slot == plan.Salt && p.fold.folded(s))
	}
	p.Salt.SetText(p.sp.SaltCare(s.PlanCase.Care))
	look.ShowIf(p.Salt, p.Salt.Text() != "")
	for _, b := range []*field.Button{p.addDrink, p.addFood} {
		look.ShowIf(b, s.Draft())
		look.EnableIf(b, s.Movable())
	}
	p.sum.open(s)
	p.head.Refresh()
	p.list.Refresh()
	p.Box.Refresh()
}

// Follow shows what a movement changes; typing is the slot whose number is being
// typed into, none for -1.
func (p *Panel) Follow(s state.State, k *state.Calculation, typing plan.Slot) {
	for _, r := range p.Rows {
		r.Follow(s, k, p.sp, r.slot == typing)
	}
	p.sum.follow(s, k)
}

// Unfold shows the salt, or folds it again.
func (p *Panel) Unfold(on bool) { p.fold.byHand = on }

// Total is what is drunk in all, as it is shown.
func (p *Panel) Total() string { return p.sum.total.Text() }

// Advise shows on the sliders where the aim is met, or no longer.
func (p *Panel) Advise(on bool) {
	for _, r := range p.Rows {
		r.advised = on
	}
}

// hintOf says how the sliders are moved, or that they stand.
func hintOf(sp wording.Speaker, s state.State) string {
	switch {
	case !s.Draft():
		return sp.Say("planner.mix.agreed")
	case s.Movable():
		return sp.Say("planner.mix.hint")
	}
	return ""
}

// mixNote says why the sliders of a draft cannot be moved; empty where they can.
func mixNote(sp wording.Speaker, s state.State) string {
	switch {
	case s.Draft() && s.Selected().Kind == record.OptionHabit:
		return sp.Say("planner.mix.habit")
	case s.Length != plan.Expected:
		return sp.Say("planner.mix.length")
	}
	return ""
}

// sum is what is drunk in all: the volume, in mouthfuls, and a bar by drink with
// habit and limit.
type sum struct {
	sp               wording.Speaker
	total, mouthfuls *look.Label
	bar              *chart.TotalBar
	data             chart.TotalData
	box              *fyne.Container
	shown            struct {
		drunk     float64
		mouthfuls int
	}
}

func newSum(sp wording.Speaker) *sum {
	t := &sum{sp: sp, total: look.NewLabel("", look.Strong, look.Ink), mouthfuls: look.NewLabel("", look.Note, look.Ink2), bar: chart.NewTotalBar()}
	head := look.HBox(8, look.Grow(look.NewLabel(sp.Say("planner.total"), look.Strong, look.Ink)), t.mouthfuls, t.total)
	t.box = look.VBox(2, head, t.bar)
	return t
}

// open sets what a movement leaves alone: the habit, the limit, the end of the bar.
func (t *sum) open(s state.State) {
	p := s.PlanCase.Planner
	habit, limit := p.Evaluate(s.Length, s.Habit), p.CeilingOf(s.Length)
	t.data.Habit, t.data.Limit = habit.Fluid.DrunkL, limit.FluidL
	t.data.Max = max(limit.FluidL*limitInside, t.data.Habit)
	t.data.HabitWords = t.sp.Say("planner.mark.habit", bare(t.sp, plan.Water, habit.Fluid.DrunkL*1000))
	t.data.LimitWords = t.sp.Say("planner.mark.limit", t.sp.StopsAtBare(limit))
	t.shown.drunk = -1
}

// limitInside leaves room behind the limit on the bar.
const limitInside = 1.12

// follow shows what a movement changes.
func (t *sum) follow(s state.State, k *state.Calculation) {
	n := 0
	for i := range k.Take.Takes {
		n += k.Take.Takes[i].Mouthfuls
	}
	if k.At.Fluid.DrunkL != t.shown.drunk || n != t.shown.mouthfuls {
		t.shown.drunk, t.shown.mouthfuls = k.At.Fluid.DrunkL, n
		t.total.SetText(t.sp.Litres(k.At.Fluid.DrunkL))
		t.mouthfuls.SetText(t.sp.Mouthfuls(n))
		t.box.Objects[0].Refresh()
	}
	d := &t.data
	d.Parts = d.Parts[:0]
	for slot := plan.Water; slot.IsDrink(); slot++ {
		if s.PlanCase.Slots[slot].InUse {
			d.Parts = append(d.Parts, chart.Part{Of: desk.Substance(slot), Value: k.Mix[slot] / 1000})
		}
	}
	d.Summary = t.total.Text()
	t.bar.Set(*d)
}

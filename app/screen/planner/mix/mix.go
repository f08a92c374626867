package mix

import (
	"fyne.io/fyne/v2"

	"ebbwell/app/kit/field"
	"ebbwell/app/kit/look"
	"ebbwell/app/screen/planner/state"
	"ebbwell/app/screen/planner/wording"
	"ebbwell/internal/consult"
	"ebbwell/internal/plan"
	"ebbwell/internal/quantity"
	"ebbwell/internal/record"
)

// Panel is what goes in: a row for each slot, what can be added, and where
// the guards speak. Its rows are made once, for all slots there are.
type Panel struct {
	sp    wording.Speaker
	title *look.Label

	Note     *look.Paragraph
	Rows     [plan.Slots]*row
	list     *fyne.Container
	addDrink *field.Button
	addFood  *field.Button
	Salt     *look.Paragraph
	total    *look.Label
	Guards   *guardRoom
	body     *fyne.Container
	Box      *look.Sheet
}

// NewPanel makes the panel.
func NewPanel(h *field.Host, sp wording.Speaker, do Actions, add func(role record.Role), suggest fyne.CanvasObject, cautions func()) *Panel {
	p := &Panel{sp: sp, title: look.NewLabel("", look.Strong, look.Ink).Shorten(), Guards: newGuardRoom(h, sp.Words, cautions)}
	p.total = look.NewLabel("", look.Strong, look.Ink)
	p.Note = look.NewParagraph("", look.Note, look.Ink2)
	p.Salt = look.NewParagraph("", look.Note, look.Ink2)
	p.list = look.VBox(0)
	for _, slot := range state.Slots() {
		p.Rows[slot] = newRow(h, sp, slot, do)
		p.list.Add(p.Rows[slot].box)
	}
	p.addDrink = field.NewButton(h, "planner.add.drink", sp.Say("planner.add.drink"), field.Outline, func() { add(record.RoleDrink) })
	p.addFood = field.NewButton(h, "planner.add.food", sp.Say("planner.add.food"), field.Outline, func() { add(record.RoleFood) })
	head := look.HBox(12, look.Grow(p.title), legend(sp), suggest)
	rows := look.NewScroll(look.Pad(0, RingRoom, 0, RingRoom, look.VBox(4, p.Note, p.list, p.Salt)))
	p.body = &fyne.Container{Layout: &fillMiddle{}, Objects: []fyne.CanvasObject{
		head, rows, look.VBox(10, look.NewRule(), look.HBox(8, look.Grow(look.NewLabel(sp.Say("planner.total"), look.Strong, look.Ink)), p.total),
			look.HBox(10, p.addDrink, p.addFood), p.Guards.box),
	}}
	p.Box = look.NewSheet(p.body)
	return p
}

// legend explains the marks of a slider.
func legend(sp wording.Speaker) fyne.CanvasObject {
	habit := look.HBox(4, look.NewMark(), look.NewLabel(sp.Say("planner.legend.habit"), look.Note, look.Ink2))
	limit := look.HBox(4, newLimitMark(), look.NewLabel(sp.Say("planner.legend.limit"), look.Note, look.Ink2))
	return look.HBox(10, habit, limit)
}

// Natural is the height at which no slider needs to scroll, at a width.
func (p *Panel) Natural(width float32) float32 {
	inner := width - 2*look.SheetPadX
	rows, _ := p.body.Objects[1].(*look.Scroll)
	h := 2*look.SheetPadY + 2*middleGap + 2
	for _, o := range []fyne.CanvasObject{p.body.Objects[0], p.body.Objects[2]} {
		h += look.HeightFor(o, inner)
	}
	return h + look.HeightFor(rows.Parts()[0], inner+2*RingRoom)
}

// Open shows another case, option or length.
func (p *Panel) Open(s state.State, raw func(slot plan.Slot) string) {
	p.title.SetText(p.sp.Say("planner.mix", p.sp.OptionName(s.Hand())))
	p.Note.SetText(wording.Sentences(mixNote(p.sp, s), gaps(p.sp, s.PlanCase), p.sp.BreaksAsked(s)))
	look.ShowIf(p.Note, p.Note.Text() != "")
	for _, r := range p.Rows {
		r.Open(s, p.sp, raw(r.slot))
	}
	p.Salt.SetText(p.sp.SaltCare(s.PlanCase.Care))
	look.ShowIf(p.Salt, p.Salt.Text() != "")
	look.EnableIf(p.addDrink, s.Movable())
	look.EnableIf(p.addFood, s.Movable())
	p.list.Refresh()
	p.Box.Refresh()
}

// Follow shows what a movement changes; typing is the slot whose number is being
// typed into, none for -1.
func (p *Panel) Follow(s state.State, k *state.Calculation, typing plan.Slot, odd string) {
	for _, r := range p.Rows {
		r.Follow(s, k, p.sp, r.slot == typing)
	}
	speaking := p.sp.Cautions(s, k.At)
	if !k.Even() {
		speaking = append(speaking, p.sp.NotTaken(s, k.Take)...)
	}
	if odd != "" {
		speaking = append([]string{odd}, speaking...)
	}
	p.total.SetText(p.sp.Total(k))
	p.Guards.set(speaking)
}

// Advise shows on the sliders where the aim is met, or no longer.
func (p *Panel) Advise(on bool) {
	for _, r := range p.Rows {
		r.advised = on
	}
}

// mixNote says why the sliders cannot be moved; empty where they can.
func mixNote(sp wording.Speaker, s state.State) string {
	switch {
	case !s.Draft():
		return sp.Say("planner.mix.agreed")
	case s.Hand().Kind == record.OptionHabit:
		return sp.Say("planner.mix.habit")
	case s.Length != plan.Expected:
		return sp.Say("planner.mix.length")
	}
	return ""
}

// gaps says what of the habit a plan cannot calculate with: what counts as plain
// water, and what is left out.
func gaps(sp wording.Speaker, c consult.Case) string {
	var drinks, foods []string
	for _, g := range c.Gaps() {
		name, at := g.Name, sp.Words.Number(float64(g.Item), 0)
		switch {
		case g.Food && name == "":
			foods = append(foods, sp.Say("planner.gap.food", at))
		case g.Food:
			foods = append(foods, name)
		case name == "":
			drinks = append(drinks, sp.Say("planner.gap.bottle", at))
		default:
			drinks = append(drinks, name)
		}
	}
	text := ""
	if len(drinks) > 0 {
		text = sp.Say("planner.gap.drinks", sp.Words.List(drinks))
	}
	if len(foods) > 0 {
		text = wording.Sentences(text, sp.Say("planner.gap.foods", sp.Words.List(foods)))
	}
	if urine := c.HabitUrine(); urine > 0 {
		text = wording.Sentences(text, sp.Say("planner.gap.urine", sp.By.Amount(urine, quantity.Litre)))
	}
	return text
}

// fillMiddle sets the first object at the top, the last at the foot, and gives
// the middle one, which scrolls, the room between.
type fillMiddle struct{}

const middleGap float32 = 10

// RingRoom is the room beside a slider in a scroll, so that the ring around a
// knob at its end is not cut off.
const RingRoom float32 = 6

func (fillMiddle) Layout(o []fyne.CanvasObject, size fyne.Size) {
	top, foot := look.HeightFor(o[0], size.Width), look.HeightFor(o[2], size.Width)
	o[0].Move(fyne.Position{})
	o[0].Resize(fyne.NewSize(size.Width, top))
	o[1].Move(fyne.NewPos(-RingRoom, top+middleGap))
	o[1].Resize(fyne.NewSize(size.Width+2*RingRoom, max(size.Height-top-foot-2*middleGap, 0)))
	o[2].Move(fyne.NewPos(0, size.Height-foot))
	o[2].Resize(fyne.NewSize(size.Width, foot))
}

func (fillMiddle) MinSize(o []fyne.CanvasObject) fyne.Size {
	width := max(o[0].MinSize().Width, o[2].MinSize().Width)
	return fyne.NewSize(width, o[0].MinSize().Height+look.Scaled(160)+o[2].MinSize().Height+2*middleGap)
}

package planner

import (
	"fyne.io/fyne/v2"

	"ebbwell/app/kit/field"
	"ebbwell/app/kit/look"
	"ebbwell/internal/consult"
	"ebbwell/internal/plan"
	"ebbwell/internal/record"
)

// mixPanel is what goes in: a row for each slot, what can be added, and where
// the guards speak. Its rows are made once, for all slots there are.
type mixPanel struct {
	sp    speaker
	title *look.Label

	note     *look.Paragraph
	rows     [plan.Slots]*row
	list     *fyne.Container
	addDrink *field.Button
	addFood  *field.Button
	salt     *look.Paragraph
	guards   *guardRoom
	body     *fyne.Container
	box      *look.Sheet
}

// newMixPanel makes the panel.
func newMixPanel(h *field.Host, sp speaker, do rowActions, add func(role record.Role)) *mixPanel {
	p := &mixPanel{sp: sp, title: look.NewLabel("", look.Strong, look.Ink).Shorten(), guards: newGuardRoom(sp.w)}
	p.note = look.NewParagraph("", look.Note, look.Ink2)
	p.salt = look.NewParagraph("", look.Note, look.Ink2)
	p.list = look.VBox(0)
	for _, slot := range slots() {
		p.rows[slot] = newRow(h, sp, slot, do)
		p.list.Add(p.rows[slot].box)
	}
	p.addDrink = field.NewButton(h, "planner.add.drink", sp.say("planner.add.drink"), field.Outline, func() { add(record.RoleDrink) })
	p.addFood = field.NewButton(h, "planner.add.food", sp.say("planner.add.food"), field.Outline, func() { add(record.RoleFood) })
	head := look.HBox(12, look.Grow(p.title), legend(sp))
	rows := look.NewScroll(look.Pad(0, ringRoom, 0, ringRoom, look.VBox(4, p.note, p.list, p.salt)))
	p.body = &fyne.Container{Layout: &fillMiddle{}, Objects: []fyne.CanvasObject{
		head, rows, look.VBox(10, look.HBox(10, p.addDrink, p.addFood), look.NewRule(), p.guards.box),
	}}
	p.box = look.NewSheet(p.body)
	return p
}

// legend explains the marks of a slider.
func legend(sp speaker) fyne.CanvasObject {
	habit := look.HBox(4, look.NewMark(), look.NewLabel(sp.say("planner.legend.habit"), look.Note, look.Ink2))
	advice := look.HBox(4, newBandMark(), look.NewLabel(sp.say("planner.legend.advised"), look.Note, look.Ink2))
	limit := look.HBox(4, newLimitMark(), look.NewLabel(sp.say("planner.legend.limit"), look.Note, look.Ink2))
	return look.HBox(10, habit, advice, limit)
}

// slots lists the slots in the order of the rows.
func slots() []plan.Slot {
	var list []plan.Slot
	for s := plan.Water; s < plan.Slots; s++ {
		list = append(list, s)
	}
	return list
}

// natural is the height at which no slider needs to scroll, at a width.
func (p *mixPanel) natural(width float32) float32 {
	inner := width - 2*look.SheetPadX
	rows, _ := p.body.Objects[1].(*look.Scroll)
	h := 2*look.SheetPadY + 2*middleGap + 2
	for _, o := range []fyne.CanvasObject{p.body.Objects[0], p.body.Objects[2]} {
		h += look.HeightFor(o, inner)
	}
	return h + look.HeightFor(rows.Parts()[0], inner+2*ringRoom)
}

// open shows another case, option or length.
func (p *mixPanel) open(s state, raw func(slot plan.Slot) string) {
	p.title.SetText(p.sp.say("planner.mix", p.sp.optionName(s.hand())))
	p.note.SetText(sentences(p.sp.mixNote(s), p.sp.gaps(s.planCase)))
	look.ShowIf(p.note, p.note.Text() != "")
	for _, r := range p.rows {
		r.open(s, p.sp, raw(r.slot))
	}
	p.salt.SetText(p.sp.saltCare(s.planCase.Care))
	look.ShowIf(p.salt, p.salt.Text() != "")
	look.EnableIf(p.addDrink, s.movable())
	look.EnableIf(p.addFood, s.movable())
	p.list.Refresh()
	p.box.Refresh()
}

// follow shows what a movement changes; typing is the slot whose number is being
// typed into, none for -1.
func (p *mixPanel) follow(s state, k *calculation, typing plan.Slot, odd string) {
	for _, r := range p.rows {
		r.follow(s, k, p.sp, r.slot == typing)
	}
	speaking := p.sp.cautions(s, k.at)
	if !k.even() {
		speaking = append(speaking, p.sp.notTaken(s, k.take)...)
	}
	if odd != "" {
		speaking = append([]string{odd}, speaking...)
	}
	p.guards.set(speaking, p.sp.limits(s, k.at))
}

// mixNote says why the sliders cannot be moved; empty where they can.
func (sp speaker) mixNote(s state) string {
	switch {
	case !s.draft():
		return sp.say("planner.mix.agreed")
	case s.hand().Kind == record.OptionHabit:
		return sp.say("planner.mix.habit")
	case s.length != plan.Expected:
		return sp.say("planner.mix.length")
	}
	return ""
}

// gaps says what of the habit a plan cannot calculate with: what counts as plain
// water, and what is left out.
func (sp speaker) gaps(c consult.Case) string {
	var drinks, foods []string
	for _, g := range c.Gaps() {
		name, at := g.Name, sp.w.Number(float64(g.Item), 0)
		switch {
		case g.Food && name == "":
			foods = append(foods, sp.say("planner.gap.food", at))
		case g.Food:
			foods = append(foods, name)
		case name == "":
			drinks = append(drinks, sp.say("planner.gap.bottle", at))
		default:
			drinks = append(drinks, name)
		}
	}
	text := ""
	if len(drinks) > 0 {
		text = sp.say("planner.gap.drinks", sp.w.List(drinks))
	}
	if len(foods) > 0 {
		text = sentences(text, sp.say("planner.gap.foods", sp.w.List(foods)))
	}
	return text
}

// fillMiddle sets the first object at the top, the last at the foot, and gives
// the middle one, which scrolls, the room between.
type fillMiddle struct{}

const middleGap float32 = 10

// ringRoom is the room beside a slider in a scroll, so that the ring around a
// knob at its end is not cut off.
const ringRoom float32 = 6

func (fillMiddle) Layout(o []fyne.CanvasObject, size fyne.Size) {
	top, foot := look.HeightFor(o[0], size.Width), look.HeightFor(o[2], size.Width)
	o[0].Move(fyne.Position{})
	o[0].Resize(fyne.NewSize(size.Width, top))
	o[1].Move(fyne.NewPos(-ringRoom, top+middleGap))
	o[1].Resize(fyne.NewSize(size.Width+2*ringRoom, max(size.Height-top-foot-2*middleGap, 0)))
	o[2].Move(fyne.NewPos(0, size.Height-foot))
	o[2].Resize(fyne.NewSize(size.Width, foot))
}

func (fillMiddle) MinSize(o []fyne.CanvasObject) fyne.Size {
	width := max(o[0].MinSize().Width, o[2].MinSize().Width)
	return fyne.NewSize(width, o[0].MinSize().Height+look.Scaled(160)+o[2].MinSize().Height+2*middleGap)
}

package planner

import (
	"ebbwell/app/kit/field"
	"ebbwell/app/kit/look"
	"ebbwell/internal/evidence"
	"ebbwell/internal/fuel"
	"ebbwell/internal/plan"
	"ebbwell/internal/quantity"

	"fyne.io/fyne/v2"
)

// Widths in a slider's row, in px at 100 % text.
const (
	rowDifference float32 = 38
	rowNumber     float32 = 86
	rowPortions   float32 = 100 // "3½ portions"
	rowStrength   float32 = 62
)

// row is one slot among the sliders: its name, how it differs from the habit,
// its amount as a number, and the slider.
type row struct {
	slot     plan.Slot
	name     *naming
	strength *field.Number
	remove   *field.Link
	differs  *look.Label
	number   *field.Number
	slider   *field.Slider
	// raw is what was typed and could not be read; it stays in sight.
	raw string
	box *fyne.Container
	// several is true where the number of a food is more than one portion.
	several bool
}

// newRow makes the row of a slot; it is set by show.
func newRow(h *field.Host, by speaker, slot plan.Slot, do rowActions) *row {
	name := "planner." + slotName(slot)
	r := &row{slot: slot, differs: look.NewLabel("", look.Note, look.Ink2).Right()}
	r.strength = field.NewNumber(h, name+".strength", "", quantity.PerCent)
	r.strength.SetLeast(rowStrength)
	if by.by.Hidden {
		r.strength.SetSuffix("") // no per cent where mass is hidden
	}
	r.remove = field.NewLink(h, name+".remove", by.say("planner.remove"), func() { do.remove(slot) })
	r.name = newNaming(substance(slot), look.HBox(8, r.strength, r.remove))
	r.number = numberOf(h, by, name+".amount", slot)
	r.number.SetStyle(look.Strong)
	r.slider = field.NewSlider(h, name+".slider", substance(slot), field.Scale{Max: 1, Step: 1})
	r.listen(do)
	width := rowNumber
	if slot.IsFood() {
		width = rowPortions
	}
	line := look.Columns(8, []look.Track{look.Share(1), look.Fixed(rowDifference), look.Fixed(width)}, r.name, r.differs, r.number)
	r.box = look.VBox(0, line, r.slider, look.Gap(0, 4))
	return r
}

// numberOf makes the number of a slot in its unit.
func numberOf(h *field.Host, by speaker, name string, slot plan.Slot) *field.Number {
	switch {
	case slot.IsFood():
		n := field.NewNumber(h, name, evidence.Portions, quantity.Portion)
		n.SetFormat(by.w.Half)
		return n
	case slot == plan.Salt:
		n := field.NewNumber(h, name, evidence.FoodMass, quantity.Gram)
		n.SetDecimals(1)
		return n
	}
	n := field.NewNumber(h, name, evidence.PouredVolume, quantity.Millilitre)
	n.SetShown(by.by.Unit(quantity.Litre))
	n.SetDecimals(quantity.Decimals(by.by.Unit(quantity.Litre)))
	return n
}

// rowActions are what a row tells.
type rowActions struct {
	moved, settled  func(slot plan.Slot, to float64)
	stopped         func(slot plan.Slot)
	typed           func(slot plan.Slot, r field.Reading)
	left            func(slot plan.Slot)
	strength        func(slot plan.Slot, r field.Reading)
	remove          func(slot plan.Slot)
	problem         func(slot plan.Slot, text string)
	strengthProblem func(slot plan.Slot, text string)
}

func (r *row) listen(do rowActions) {
	slot := r.slot
	r.slider.OnMoved = func(to float64) { do.moved(slot, to) }
	r.slider.OnReleased = func(to float64) { do.settled(slot, to) }
	r.slider.OnStopped = func() { do.stopped(slot) }
	r.number.OnChanged = func(n field.Reading) { do.typed(slot, n) }
	r.number.OnLeft = func(field.Reading) { do.left(slot) }
	r.number.OnProblem = func(_ field.Weight, text string) { do.problem(slot, text) }
	r.strength.OnLeft = func(n field.Reading) { do.strength(slot, n) }
	r.strength.OnProblem = func(_ field.Weight, text string) { do.strengthProblem(slot, text) }
}

// open sets what a movement leaves alone: name, scale, habit, what may be done.
func (r *row) open(s state, sp speaker, raw string) {
	look.ShowIf(r.box, s.shows(r.slot))
	if !r.box.Visible() {
		return
	}
	info, item := s.planCase.Slots[r.slot], s.planCase.Planner.Menu()[r.slot]
	r.name.set(sp.product(s.planCase, r.slot), sp.rowNote(s, r.slot))
	most := max(item.Most, s.habit[r.slot], s.mix[r.slot])
	r.slider.SetScale(field.Scale{Max: most, Step: item.Step, Page: pageOf(r.slot, item.Step)})
	r.slider.SetMark(s.habit[r.slot])
	look.ShowIf(r.strength, info.Strength.Known())
	if info.Strength.Known() {
		r.strength.SetValue(*info.Strength.Value)
	}
	look.ShowIf(r.remove, s.movable() && s.removable(r.slot))
	look.ShowIf(r.name.behind, r.strength.Visible() || r.remove.Visible())
	r.name.Refresh()
	look.EnableIf(r.slider, s.movable())
	look.EnableIf(r.number, s.movable())
	look.EnableIf(r.strength, s.movable())
	if r.raw = raw; raw != "" {
		r.number.SetRaw(raw)
	}
}

// follow sets what a movement changes. The number that is being typed into is
// left as it stands.
func (r *row) follow(s state, k *calculation, sp speaker, typing bool) {
	if !r.box.Visible() {
		return
	}
	x := s.mix[r.slot]
	r.slider.SetLimit(max(k.most[r.slot], x))
	r.slider.SetValue(x)
	if b := k.bands[r.slot]; b.Empty {
		r.slider.SetBand(1, 0)
	} else {
		r.slider.SetBand(b.Low, b.High)
	}
	if !typing && r.raw == "" {
		r.number.SetValue(x)
	}
	if r.slot.IsFood() && x > 1 != r.several {
		r.several = x > 1
		r.number.SetSuffix(sp.portionWord(x))
	}
	r.differs.SetText(sp.step(r.slot, x-s.habit[r.slot]))
}

// pageOf is the movement of Page Up and Page Down, in increments: a quarter of a
// litre, two portions, half a gram.
func pageOf(slot plan.Slot, step float64) float64 {
	if slot.IsFood() {
		return 4 * step
	}
	return 5 * step
}

// rowNote says behind the name what one has to know of a drink or a food.
func (sp speaker) rowNote(s state, slot plan.Slot) string {
	item := s.planCase.Planner.Menu()[slot]
	switch {
	case slot == plan.Salt:
		return sp.say("planner.salt.note")
	case slot == plan.Water:
		return ""
	case slot.IsFood():
		return sp.say("planner.food.note", s.planCase.Slots[slot].Product.Portion.Name, sp.w.Number(item.Unit.CarbohydrateG, 0))
	case item.SodiumUnknown:
		return sp.say("planner.drink.unknown")
	}
	return sp.sodiumOf(s.planCase.Slots[slot].Product)
}

// sodiumOf says how much sodium a drink has; nothing where that is not known.
func (sp speaker) sodiumOf(p fuel.Product) string {
	litre, err := p.ByVolume(1000)
	if err != nil {
		return ""
	}
	return sp.say("planner.drink.note", sp.w.Number(fuel.Mix([]fuel.Amount{litre}, 0).SodiumMmolL().Value, 0))
}

package mix

import (
	"fyne.io/fyne/v2"

	"ebbwell/app/kit/field"
	"ebbwell/app/kit/look"
	"ebbwell/app/screen/planner/state"
	"ebbwell/app/screen/planner/wording"
	"ebbwell/internal/evidence"
	"ebbwell/internal/fuel"
	"ebbwell/internal/plan"
	"ebbwell/internal/quantity"
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
	Strength *field.Number
	remove   *field.Link
	differs  *look.Label
	Number   *field.Number
	Slider   *field.Slider
	// Raw is what was typed and could not be read; it stays in sight.
	Raw string
	box *fyne.Container
	// several is true where the number of a food is more than one portion.
	several bool
	// advised shows where the aim is met: while a proposal is open.
	advised bool
}

// newRow makes the row of a slot; it is set by show.
func newRow(h *field.Host, by wording.Speaker, slot plan.Slot, do Actions) *row {
	name := "planner." + wording.SlotName(slot)
	r := &row{slot: slot, differs: look.NewLabel("", look.Note, look.Ink2).Right()}
	r.Strength = field.NewNumber(h, name+".strength", "", quantity.PerCent)
	r.Strength.SetLeast(rowStrength)
	if by.By.Hidden {
		r.Strength.SetSuffix("") // no per cent where mass is hidden
	}
	r.remove = field.NewLink(h, name+".remove", by.Say("planner.remove"), func() { do.Remove(slot) })
	r.name = newNaming(wording.Substance(slot), look.HBox(8, r.Strength, r.remove))
	r.Number = numberOf(h, by, name+".amount", slot)
	r.Number.SetStyle(look.Strong)
	r.Slider = field.NewSlider(h, name+".slider", wording.Substance(slot), field.Scale{Max: 1, Step: 1})
	r.listen(do)
	width := rowNumber
	if slot.IsFood() {
		width = rowPortions
	}
	line := look.Columns(8, []look.Track{look.Share(1), look.Fixed(rowDifference), look.Fixed(width)}, r.name, r.differs, r.Number)
	r.box = look.VBox(0, line, r.Slider, look.Gap(0, 4))
	return r
}

// numberOf makes the number of a slot in its unit.
func numberOf(h *field.Host, by wording.Speaker, name string, slot plan.Slot) *field.Number {
	switch {
	case slot.IsFood():
		n := field.NewNumber(h, name, evidence.Portions, quantity.Portion)
		n.SetFormat(by.Words.Half)
		return n
	case slot == plan.Salt:
		n := field.NewNumber(h, name, evidence.FoodMass, quantity.Gram)
		n.SetDecimals(1)
		return n
	}
	n := field.NewNumber(h, name, evidence.PouredVolume, quantity.Millilitre)
	n.SetShown(by.By.Unit(quantity.Litre))
	n.SetDecimals(quantity.Decimals(by.By.Unit(quantity.Litre)))
	return n
}

// Actions are what a row tells.
type Actions struct {
	Moved, Settled  func(slot plan.Slot, to float64)
	Stopped         func(slot plan.Slot)
	Typed           func(slot plan.Slot, r field.Reading)
	Left            func(slot plan.Slot)
	Strength        func(slot plan.Slot, r field.Reading)
	Remove          func(slot plan.Slot)
	Problem         func(slot plan.Slot, text string)
	StrengthProblem func(slot plan.Slot, text string)
}

func (r *row) listen(do Actions) {
	slot := r.slot
	r.Slider.OnMoved = func(to float64) { do.Moved(slot, to) }
	r.Slider.OnReleased = func(to float64) { do.Settled(slot, to) }
	r.Slider.OnStopped = func() { do.Stopped(slot) }
	r.Number.OnChanged = func(n field.Reading) { do.Typed(slot, n) }
	r.Number.OnLeft = func(field.Reading) { do.Left(slot) }
	r.Number.OnProblem = func(_ field.Weight, text string) { do.Problem(slot, text) }
	r.Strength.OnLeft = func(n field.Reading) { do.Strength(slot, n) }
	r.Strength.OnProblem = func(_ field.Weight, text string) { do.StrengthProblem(slot, text) }
}

// Open sets what a movement leaves alone: name, scale, habit, what may be done.
func (r *row) Open(s state.State, sp wording.Speaker, raw string) {
	look.ShowIf(r.box, s.Shows(r.slot))
	if !r.box.Visible() {
		return
	}
	info, item := s.PlanCase.Slots[r.slot], s.PlanCase.Planner.Menu()[r.slot]
	r.name.set(sp.Product(s.PlanCase, r.slot), rowNote(sp, s, r.slot))
	most := max(item.Most, s.Habit[r.slot], s.Mix[r.slot])
	r.Slider.SetScale(field.Scale{Max: most, Step: item.Step, Page: pageOf(r.slot, item.Step)})
	r.Slider.SetMark(s.Habit[r.slot])
	look.ShowIf(r.Strength, info.Strength.Known())
	if info.Strength.Known() {
		r.Strength.SetValue(*info.Strength.Value)
	}
	look.ShowIf(r.remove, s.Movable() && s.Removable(r.slot))
	look.ShowIf(r.name.behind, r.Strength.Visible() || r.remove.Visible())
	r.name.Refresh()
	r.Slider.SetStill(!s.Draft())
	look.EnableIf(r.Slider, s.Movable())
	look.EnableIf(r.Number, s.Movable())
	look.EnableIf(r.Strength, s.Movable())
	if r.Raw = raw; raw != "" {
		r.Number.SetRaw(raw)
	}
}

// Follow sets what a movement changes. The number that is being typed into is
// left as it stands.
func (r *row) Follow(s state.State, k *state.Calculation, sp wording.Speaker, typing bool) {
	if !r.box.Visible() {
		return
	}
	x := k.Mix[r.slot]
	r.Slider.SetLimit(max(k.Most[r.slot], x))
	r.Slider.SetValue(x)
	if b := k.Bands[r.slot]; b.Empty || !r.advised {
		r.Slider.SetBand(1, 0)
	} else {
		r.Slider.SetBand(b.Low, b.High)
	}
	if !typing && r.Raw == "" {
		r.Number.SetValue(x)
	}
	if r.slot.IsFood() && x > 1 != r.several {
		r.several = x > 1
		r.Number.SetSuffix(sp.PortionWord(x))
	}
	r.differs.SetText(sp.Step(r.slot, x-s.Habit[r.slot]))
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
func rowNote(sp wording.Speaker, s state.State, slot plan.Slot) string {
	item := s.PlanCase.Planner.Menu()[slot]
	switch {
	case slot == plan.Salt:
		return sp.Say("planner.salt.note")
	case slot == plan.Water:
		return ""
	case slot.IsFood():
		return sp.Say("planner.food.note", s.PlanCase.Slots[slot].Product.Portion.Name, sp.Words.Number(item.Unit.CarbohydrateG, 0))
	case item.SodiumUnknown:
		return sp.Say("planner.drink.unknown")
	}
	return sodiumOf(sp, s.PlanCase.Slots[slot].Product)
}

// sodiumOf says how much sodium a drink has; nothing where that is not known.
func sodiumOf(sp wording.Speaker, p fuel.Product) string {
	litre, err := p.ByVolume(1000)
	if err != nil {
		return ""
	}
	return sp.Say("planner.drink.note", sp.Words.Number(fuel.Mix([]fuel.Amount{litre}, 0).SodiumMmolL().Value, 0))
}

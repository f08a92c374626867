package mix

import (
	"fyne.io/fyne/v2"

	"ebbwell/app/kit/desk"
	"ebbwell/app/kit/field"
	"ebbwell/app/kit/look"
	"ebbwell/app/screen/planner/state"
	"ebbwell/app/screen/planner/wording"
	"ebbwell/internal/consult"
	"ebbwell/internal/evidence"
	"ebbwell/internal/fuel"
	"ebbwell/internal/plan"
	"ebbwell/internal/quantity"
)

// Widths in a slider's row, in px at 100 % text.
const (
	rowNumber   float32 = 86
	rowPortions float32 = 100 // "3½ portions"
	rowStrength float32 = 62
)

// row is one slot among the sliders: its name, how it differs from the habit,
// its amount as a number and in the athlete's own measures, and the slider.
type row struct {
	slot     plan.Slot
	name     *naming
	Strength *field.Number
	remove   *field.Link
	differs  *look.Label
	Number   *field.Number
	// fixed is the amount of an agreed plan, in the place of the number.
	fixed  *look.Label
	Slider *field.Slider
	// Raw is what was typed and could not be read; it stays in sight.
	Raw string
	box *fyne.Container
	// several is true where the number of a food is more than one portion.
	several bool
	// advised shows where the aim is met: while a proposal is open.
	advised bool
	shown   shown
}

// shown is what a row shows, so that it is worded anew only where it changed.
type shown struct {
	set            bool
	x, habit, most float64
	typing         bool
	// at is the first break at which a food is eaten, breaks how many there are.
	at, breaks int
}

// newRow makes the row of a slot; it is set by show.
func newRow(h *field.Host, by wording.Speaker, slot plan.Slot, do Actions) *row {
	name := "planner." + wording.SlotName(slot)
	r := &row{slot: slot, differs: look.NewLabel("", look.Note, look.Ink2).Right(), fixed: look.NewLabel("", look.Strong, look.Ink).Right()}
	r.Strength = field.NewNumber(h, name+".strength", "", quantity.PerCent)
	r.Strength.SetLeast(rowStrength)
	if by.By.Hidden {
		r.Strength.SetSuffix("") // no per cent where mass is hidden
	}
	r.remove = field.NewLink(h, name+".remove", by.Say("planner.remove"), func() { do.Remove(slot) })
	r.name = newNaming(desk.Substance(slot), look.HBox(8, r.Strength, r.remove))
	r.Number = numberOf(h, by, name+".amount", slot)
	r.Number.SetStyle(look.Strong)
	r.Slider = field.NewSlider(h, name+".slider", desk.Substance(slot), field.Scale{Max: 1, Step: 1})
	r.Slider.KeepWords()
	r.listen(do)
	width := rowNumber
	if slot.IsFood() {
		width = rowPortions
	}
	r.box = &fyne.Container{Layout: &rowLayout{r, width}, Objects: []fyne.CanvasObject{r.name, r.differs, r.Number, r.fixed, r.Slider}}
	return r
}

// numberOf makes the number of a slot in its unit.
func numberOf(h *field.Host, by wording.Speaker, name string, slot plan.Slot) *field.Number {
	switch {
	case slot.IsFood():
		n := field.NewNumber(h, name, evidence.Portions, quantity.Portion)
		n.SetFormat(by.Words.Half)
		n.SetSuffix(by.PortionWord(1))
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
	Moved, Released func(slot plan.Slot, to float64)
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
	r.Slider.OnReleased = func(to float64) { do.Released(slot, to) }
	r.Slider.OnStopped = func() { do.Stopped(slot) }
	r.Number.OnChanged = func(n field.Reading) { do.Typed(slot, n) }
	r.Number.OnLeft = func(field.Reading) { do.Left(slot) }
	r.Number.OnProblem = func(_ field.Weight, text string) { do.Problem(slot, text) }
	r.Strength.OnLeft = func(n field.Reading) { do.Strength(slot, n) }
	r.Strength.OnProblem = func(_ field.Weight, text string) { do.StrengthProblem(slot, text) }
}

// Open sets what a movement leaves alone: name, scale, habit, what may be done.
func (r *row) Open(s state.State, sp wording.Speaker, raw string, folded bool) {
	look.ShowIf(r.box, s.Shows(r.slot) && !folded)
	r.shown = shown{}
	if !r.box.Visible() {
		return
	}
	info, item := s.PlanCase.Slots[r.slot], s.PlanCase.Planner.Menu()[r.slot]
	r.name.set(sp.Product(s.PlanCase, r.slot), rowNote(sp, s, r.slot))
	most := max(item.Most, s.Habit[r.slot], s.Mix[r.slot])
	r.Slider.SetScale(field.Scale{Max: most, Step: item.Step, Page: pageOf(r.slot, item.Step)})
	r.Slider.SetMark(s.Habit[r.slot])
	r.Slider.SetMarkWords(sp.Say("planner.mark.habit", bare(sp, r.slot, s.Habit[r.slot])))
	look.ShowIf(r.Strength, info.Strength.Known() && s.Draft())
	if info.Strength.Known() {
		r.Strength.SetValue(*info.Strength.Value)
	}
	look.ShowIf(r.remove, s.Movable() && s.Removable(r.slot))
	look.ShowIf(r.name.behind, r.Strength.Visible() || r.remove.Visible())
	look.ShowIf(r.Number, s.Draft())
	look.ShowIf(r.fixed, !s.Draft())
	r.Slider.SetStill(!s.Draft())
	look.EnableIf(r.Slider, s.Movable())
	look.EnableIf(r.Number, s.Movable())
	look.EnableIf(r.Strength, s.Movable())
	if r.Raw = raw; raw != "" {
		r.Number.SetRaw(raw)
	}
	r.name.Refresh()
}

// Follow sets what a movement changes. The number that is being typed into is
// left as it stands; what reads the same is not worded anew.
func (r *row) Follow(s state.State, k *state.Calculation, sp wording.Speaker, typing bool) {
	if !r.box.Visible() {
		return
	}
	now := shown{set: true, x: k.Mix[r.slot], habit: s.Habit[r.slot], most: max(k.Most[r.slot], k.Mix[r.slot]), typing: typing}
	if r.slot.IsFood() {
		now.at, now.breaks = whereEaten(k, r.slot)
	}
	was := r.shown
	r.shown = now
	r.Slider.SetLimit(now.most)
	r.Slider.SetValue(now.x)
	if !was.set || was.most != now.most {
		r.Slider.SetLimitWords(sp.Say("planner.mark.limit", bare(sp, r.slot, now.most)))
	}
	if b := k.Bands[r.slot]; b.Empty || !r.advised {
		r.Slider.SetBand(1, 0)
	} else {
		r.Slider.SetBand(b.Low, b.High)
	}
	if now == was {
		return
	}
	if !typing && r.Raw == "" {
		r.Number.SetValue(now.x)
	}
	if r.slot.IsFood() && now.x > 1 != r.several {
		r.several = now.x > 1
		r.Number.SetSuffix(sp.PortionWord(now.x))
	}
	r.fixed.SetText(amountOf(sp, r.slot, now.x))
	r.differs.SetText(sp.More(r.slot, now.x-now.habit))
	short := whenEaten(sp, k, now)
	long := words(sp, s, k, r.slot, now, short)
	if r.slot.IsDrink() {
		short = sp.InMouthfuls(now.x, k.Mouthful)
	}
	r.name.say(long, short)
	r.box.Layout.Layout(r.box.Objects, r.box.Size()) // the change from the habit may be wider
}

// amountOf is an amount as an agreed plan shows it.
func amountOf(sp wording.Speaker, slot plan.Slot, x float64) string {
	switch {
	case slot.IsFood():
		return sp.Words.Half(x) + "\u00a0" + sp.PortionWord(x)
	case slot == plan.Salt:
		return sp.Words.Number(x, 1) + "\u00a0" + string(quantity.Gram)
	}
	return sp.Litres(x / 1000)
}

// bare is an amount without its unit, for a mark.
func bare(sp wording.Speaker, slot plan.Slot, x float64) string {
	switch {
	case x == 0:
		return sp.Words.Number(0, 0)
	case slot.IsFood():
		return sp.Words.Half(x)
	case slot == plan.Salt:
		return sp.Words.Number(x, 1)
	}
	return sp.By.Number(x/1000, quantity.Litre)
}

// words say an amount in the athlete's own measures: a drink in bottles or mouthfuls,
// food by what it brings and when it is eaten.
func words(sp wording.Speaker, s state.State, k *state.Calculation, slot plan.Slot, now shown, when string) string {
	switch {
	case slot.IsFood() && now.x > 0:
		grams := sp.Words.Number(now.x*s.PlanCase.Planner.Menu()[slot].Unit.CarbohydrateG, 0)
		if when == "" {
			return sp.Say("planner.eaten", grams)
		}
		return sp.Say("planner.eaten.when", grams, when)
	case slot.IsDrink() && now.x > 0:
		if text := sp.InBottles(consult.BottlesOf(s.Plan), now.x); text != "" {
			return text
		}
		return sp.InMouthfuls(now.x, k.Mouthful)
	case slot == plan.Salt:
		return sp.Say("planner.salt.note")
	}
	return ""
}

// whereEaten is the first break at which a food is eaten, and at how many it is.
func whereEaten(k *state.Calculation, slot plan.Slot) (first, n int) {
	for i := range k.Take.Takes {
		if k.Take.Takes[i].Food[slot-plan.Food1] > 0 {
			if n++; n == 1 {
				first = i
			}
		}
	}
	return first, n
}

// whenEaten names the break at which a food is eaten, or says at how many.
func whenEaten(sp wording.Speaker, k *state.Calculation, now shown) string {
	switch {
	case now.breaks == 0:
		return ""
	case now.breaks > 1:
		return sp.Say("planner.eaten.breaks", now.breaks)
	}
	return sp.Say("planner.eaten.at", sp.ChanceName(k.Take.Takes[now.at].Chance))
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
	case slot == plan.Salt || slot == plan.Water:
		return ""
	case slot.IsFood():
		return s.PlanCase.Slots[slot].Product.Portion.Name
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

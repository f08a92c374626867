package figures

import (
	"fyne.io/fyne/v2"

	"ebbwell/app/kit/look"
	"ebbwell/app/screen/planner/state"
	"ebbwell/app/screen/planner/wording"
	"ebbwell/internal/plan"
)

// split says what is taken at the selected break: "half-time: water 150, sports drink
// 130, ½ fig bar", each with the square of its substance.
type split struct {
	sp    wording.Speaker
	at    *look.Label
	names [plan.Slots]*look.Label
	marks [plan.Slots]*look.Swatch
	row   *fyne.Container
	shown struct {
		set  bool
		take plan.Take
	}
}

func newSplit(sp wording.Speaker) *split {
	s := &split{sp: sp, at: look.NewLabel("", look.NoteStrong, look.Ink), row: look.HBox(6)}
	s.row.Add(s.at)
	for _, slot := range state.Slots() {
		s.marks[slot], s.names[slot] = look.NewSwatch(wording.Substance(slot)), look.NewLabel("", look.Note, look.Ink)
		s.row.Add(s.marks[slot])
		s.row.Add(s.names[slot])
	}
	return s
}

// show says what is taken at a break; nothing where stop is none. It reports whether
// it is as wide as before.
func (s *split) show(now state.State, k *state.Calculation, stop int) (same bool) {
	if stop < 0 || stop >= len(k.Take.Takes) {
		was := s.row.Visible()
		look.ShowIf(s.row, false)
		s.shown.set = false
		return !was
	}
	take := k.Take.Takes[stop]
	if s.shown.set && s.shown.take == take {
		return true
	}
	s.shown.set, s.shown.take = true, take
	s.at.SetText(s.sp.Say("planner.split.at", s.sp.ChanceName(take.Chance)))
	any := false
	set := func(slot plan.Slot, on bool, text func() string) {
		if on {
			any = true
			s.names[slot].SetText(text())
		}
		look.ShowIf(s.names[slot], on)
		look.ShowIf(s.marks[slot], on)
	}
	for d, ml := range take.ByDrink {
		set(plan.Slot(d), ml > 0, func() string {
			return s.sp.Say("planner.split.drink", wording.Lower(s.sp.Product(now.PlanCase, plan.Slot(d))), s.sp.Millilitres(float64(ml)))
		})
	}
	for f, x := range take.Food {
		slot := plan.Food1 + plan.Slot(f)
		set(slot, x > 0, func() string { return s.sp.Portions(x, s.sp.Product(now.PlanCase, slot)) })
	}
	set(plan.Salt, false, nil)
	if !any {
		s.names[plan.Water].SetText(s.sp.Say("planner.split.nothing"))
		look.ShowIf(s.names[plan.Water], true)
	}
	look.ShowIf(s.row, true)
	return false
}

// text is what it says.
func (s *split) text() string {
	list := []string{s.at.Text()}
	for _, n := range s.names {
		if n.Visible() {
			list = append(list, n.Text())
		}
	}
	return wording.Sentences(list...)
}

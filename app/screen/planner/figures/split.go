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
	// called are the names of the products within a sentence; they are put together
	// where another case is opened.
	called [plan.Slots]string
	shown  struct {
		set  bool
		take plan.Take
	}
}

func newSplit(sp wording.Speaker) *split {
	s := &split{sp: sp, at: look.NewLabel("", look.NoteStrong, look.Ink), row: &fyne.Container{Layout: splitLayout{}}}
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
	fresh := !s.shown.set
	s.shown.set, s.shown.take = true, take
	s.at.SetText(s.sp.Say("planner.split.at", s.sp.ChanceName(take.Chance)))
	for slot := plan.Water; fresh && slot < plan.Salt; slot++ {
		s.called[slot] = wording.Lower(s.sp.Product(now.PlanCase, slot))
	}
	some := false
	for d, ml := range take.ByDrink {
		if ml > 0 {
			s.names[d].SetText(s.sp.Say("planner.split.drink", s.called[d], s.sp.Millilitres(float64(ml))))
		}
		some = s.showOne(plan.Slot(d), ml > 0) || some
	}
	for f, x := range take.Food {
		slot := plan.Food1 + plan.Slot(f)
		if x > 0 {
			s.names[slot].SetText(s.sp.Portions(x, s.called[slot]))
		}
		some = s.showOne(slot, x > 0) || some
	}
	s.showOne(plan.Salt, false)
	if !some {
		s.names[plan.Water].SetText(s.sp.Say("planner.split.nothing"))
		look.ShowIf(s.names[plan.Water], true)
	}
	look.ShowIf(s.row, true)
	return false
}

// showOne shows what is taken of a slot, or does not; it returns which.
func (s *split) showOne(slot plan.Slot, on bool) bool {
	look.ShowIf(s.names[slot], on)
	look.ShowIf(s.marks[slot], on)
	return on
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

// splitLayout sets what is in sight in a row on one line, a little apart.
type splitLayout struct{}

const splitGap float32 = 6

func (splitLayout) Layout(o []fyne.CanvasObject, _ fyne.Size) {
	x, line := float32(0), look.NoteStrong.Baseline()
	for _, one := range o {
		if !one.Visible() {
			continue
		}
		size := one.MinSize()
		drop, _ := look.BaselineOf(one)
		one.Move(fyne.NewPos(x, line-drop))
		one.Resize(size)
		x += size.Width + splitGap
	}
}

func (splitLayout) MinSize(o []fyne.CanvasObject) fyne.Size {
	var size fyne.Size
	for _, one := range o {
		if one.Visible() {
			least := one.MinSize()
			size = fyne.NewSize(size.Width+least.Width+splitGap, max(size.Height, least.Height))
		}
	}
	return fyne.NewSize(max(size.Width-splitGap, 0), size.Height)
}

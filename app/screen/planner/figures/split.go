package figures

import (
	"fyne.io/fyne/v2"

	"ebbwell/app/kit/desk"
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
	// whole and brief are what is taken of each slot, with the name of the product and
	// without it; empty for what is not taken.
	whole, brief [plan.Slots]string
	// name is the break's name, number its place among the breaks, which stands for the
	// name where that leaves no room.
	name, bare, number string
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
		s.marks[slot], s.names[slot] = look.NewSwatch(desk.Substance(slot)), look.NewLabel("", look.Note, look.Ink)
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
	s.bare = s.sp.ChanceName(take.Chance)
	s.name = s.sp.Say("planner.split.at", s.bare)
	s.number = s.sp.Say("planner.split.at", s.sp.Words.Number(float64(stop+1), 0))
	s.at.SetText(s.name)
	for slot := plan.Water; fresh && slot < plan.Salt; slot++ {
		s.called[slot] = s.sp.ProductWithin(now.PlanCase, slot)
	}
	s.whole, s.brief = [plan.Slots]string{}, [plan.Slots]string{}
	some := false
	for d, ml := range take.ByDrink {
		if ml > 0 {
			s.brief[d], some = s.sp.Millilitres(float64(ml)), true
			s.whole[d] = s.sp.Words.AmountOf(s.brief[d], s.called[d])
		}
	}
	for f, x := range take.Food {
		if slot := plan.Food1 + plan.Slot(f); x > 0 {
			s.brief[slot], s.whole[slot], some = s.sp.Words.Half(x), s.sp.Words.Portions(x, s.called[slot]), true
		}
	}
	if !some {
		s.whole[plan.Water] = s.sp.Say("planner.split.nothing")
	}
	s.say(s.whole, some)
	look.ShowIf(s.row, true)
	return false
}

// say writes what is taken; marked with the squares of the substances.
func (s *split) say(texts [plan.Slots]string, marked bool) {
	for slot := range texts {
		look.ShowIf(s.names[slot], texts[slot] != "")
		look.ShowIf(s.marks[slot], texts[slot] != "" && marked)
		if texts[slot] != "" {
			s.names[slot].SetText(texts[slot])
		}
	}
}

// fit says as much as has room in a width: all of it, without the names of the
// products, with the number of the break for its name, the name of the break alone.
// That name is never cut: where it has no room either, fit reports false.
func (s *split) fit(room float32) bool {
	marked := s.brief != [plan.Slots]string{}
	for _, way := range [...]struct {
		at    string
		texts [plan.Slots]string
	}{{s.name, s.whole}, {s.name, s.brief}, {s.number, s.whole}, {s.number, s.brief}, {s.bare, [plan.Slots]string{}}} {
		if s.wide(way.at, way.texts, marked) <= room {
			s.at.SetText(way.at)
			s.say(way.texts, marked)
			return true
		}
	}
	return false
}

// wide is the width of what is said.
func (s *split) wide(at string, texts [plan.Slots]string, marked bool) float32 {
	w := look.NoteStrong.Width(at)
	for slot := range texts {
		if texts[slot] == "" {
			continue
		}
		w += splitGap + look.Note.Width(texts[slot])
		if marked {
			w += splitGap + s.marks[slot].MinSize().Width
		}
	}
	return w + 1
}

// text is what it says.
func (s *split) text() string {
	list := []string{s.name}
	for _, text := range s.whole {
		if text != "" {
			list = append(list, text)
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

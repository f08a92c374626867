package mix

import (
	"fyne.io/fyne/v2"

	"ebbwell/app/kit/field"
	"ebbwell/app/kit/look"
	"ebbwell/app/screen/planner/state"
	"ebbwell/app/screen/planner/wording"
)

// saltFold is the line in the place of the salt while sodium does not matter: that
// there is none, why, and the way to add some.
type saltFold struct {
	// byHand is true once the salt was opened by hand.
	byHand bool
	link   *field.Link
	box    *fyne.Container
}

func newSaltFold(h *field.Host, sp wording.Speaker, unfold func()) *saltFold {
	f := &saltFold{}
	f.link = field.NewLink(h, "planner.salt.open", sp.Say("planner.salt.open"), unfold)
	f.box = look.HBox(8, look.NewSwatch(look.Salt), look.NewLabel(sp.Say("planner.salt"), look.Strong, look.Ink),
		look.Grow(look.NewOneOf(look.Note, sp.Say("planner.salt.folded"), sp.Say("planner.salt.folded.short"), sp.Say("planner.mark.none")).In(look.Ink2)), f.link)
	return f
}

// folded reports whether the salt has no row of its own.
func (f *saltFold) folded(s state.State) bool { return !f.byHand && !s.SodiumMatters() }

// open shows the line where the salt is folded.
func (f *saltFold) open(s state.State) {
	look.ShowIf(f.box, s.Draft() && s.Salted() && f.folded(s))
	look.ShowIf(f.link, s.Movable())
}

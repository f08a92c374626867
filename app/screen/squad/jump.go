package squad

import (
	"fyne.io/fyne/v2"

	"ebbwell/app/kit/field"
	"ebbwell/app/kit/look"
	"ebbwell/internal/squad"
)

// jump is a name or a bib number being typed: the row it means is named beside it,
// and Enter goes there.
type jump struct {
	line  *field.Line
	found *look.Label
	box   *fyne.Container
	// from is the field that had the keyboard.
	from fyne.Focusable
}

func newJump(v *View) *jump {
	j := &jump{line: field.NewLine(v.desk.Host, "squad.jump", 40), found: look.NewLabel("", look.Body, look.Ink2).Shorten()}
	j.line.OnChanged = func(string) { v.showJump() }
	j.line.OnEnter = func(string) { v.endJump(true) }
	j.line.OnLeft = func(string) {
		if !j.line.Focused() {
			v.endJump(false)
		}
	}
	j.box = look.Columns(10, []look.Track{look.Fit(), look.Fixed(160), look.Share(1)}, look.NewLabel(v.say("squad.jump"), look.Body, look.Ink), j.line, j.found)
	j.box.Hide()
	return j
}

// beginJump begins a name with a letter, or a bib number with none.
func (v *View) beginJump(r rune) {
	j := v.jump
	if !j.box.Visible() {
		j.from = v.canvas().Focused()
	}
	j.line.SetText("")
	j.box.Show()
	v.ui.title.Hide()
	v.ui.page.Refresh()
	j.line.Focus()
	if r != 0 {
		j.line.TypedRune(r)
	}
	v.showJump()
}

// showJump says whom the text means.
func (v *View) showJump() {
	list := squad.Match(v.rows, v.jump.line.Text())
	switch {
	case v.jump.line.Text() == "":
		v.jump.found.SetText(v.say("squad.jump.how"))
	case len(list) == 0:
		v.jump.found.SetText(v.say("squad.jump.nobody"))
	case len(list) == 1:
		v.jump.found.SetText(v.say("squad.jump.enter", v.rows[list[0]].Sheet.Athlete.Name))
	default:
		r := v.rows[list[0]]
		v.jump.found.SetText(v.say("squad.jump.several", r.Sheet.Athlete.Name, r.Number(), len(list)-1))
	}
}

// endJump goes to the row that is meant, or back to where the keyboard was.
func (v *View) endJump(there bool) {
	j := v.jump
	if j == nil || !j.box.Visible() {
		return
	}
	list := squad.Match(v.rows, j.line.Text())
	j.box.Hide()
	v.ui.title.Show()
	v.ui.page.Refresh()
	switch {
	case there && len(list) > 0:
		at := list[0]
		if i := indexOf(list, v.at); i >= 0 {
			at = list[(i+1)%len(list)] // the next with the same name
		}
		v.openRowAt(at, "")
	case there && j.from != nil:
		v.canvas().Focus(j.from)
	}
}

package squad

import (
	"errors"
	"slices"

	"fyne.io/fyne/v2"

	"ebbwell/app/kit/field"
	"ebbwell/app/kit/look"
	"ebbwell/app/kit/sound"
	"ebbwell/internal/squad"
)

// reminders name what is due in the rows as they were looked at last.
func (v *View) reminders() []string {
	return squad.Reminders(v.doc.Now().session.ID, v.rows, v.desk.Now())
}

// lookByHand works the session out after a change by the person. What fell due by that
// change, an end that was set or a time that was typed, needs no sound; what the clock
// brought keeps its own.
func (v *View) lookByHand() {
	was := v.reminders()
	v.look()
	v.desk.Bell.Given(slices.DeleteFunc(v.reminders(), func(name string) bool { return slices.Contains(was, name) }))
}

// soundFailed says that a reminder was not heard.
func (v *View) soundFailed(err error) { v.desk.Say(v.soundWords(err), "", nil) }

// soundWords say how the playing of the tone went.
func (v *View) soundWords(err error) string {
	switch {
	case err == nil:
		return v.say("squad.sound.played")
	case errors.Is(err, sound.ErrNone):
		return v.say("squad.sound.none")
	}
	return v.say("squad.sound.failed")
}

// soundPart is the switch of the sound, and the button that tries it.
func (v *View) soundPart() fyne.CanvasObject {
	bell := v.desk.Bell
	on := field.NewCheck(v.desk.Host, "squad.change.sound", v.say("squad.sound.switch"))
	on.Set(bell.On())
	on.OnChanged = bell.Switch
	said := look.NewParagraph(v.say("squad.sound.note"), look.Note, look.Ink2)
	try := field.NewButton(v.desk.Host, "squad.change.sound.try", v.say("squad.sound.try"), field.Outline, func() {
		bell.Try(func(err error) { said.SetText(v.soundWords(err)) })
	})
	return look.VBox(6, said, look.HBox(14, on, try)) // the answer stays in sight above the button
}

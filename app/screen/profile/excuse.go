package profile

import (
	"fyne.io/fyne/v2"

	"ebbwell/app/kit/field"
	"ebbwell/app/kit/look"
)

// excuse lets a number beyond its limits be kept with a written reason.
type excuse struct {
	v      *View
	path   string
	number *field.Number
	keep   *field.Link
	drop   *field.Link
	note   *look.Paragraph
	box    *fyne.Container
}

// newExcuse makes the lines below a number; name is the number's, path its place
// in the record.
func (v *View) newExcuse(name, path string, number *field.Number) *excuse {
	say, x := v.sp.Say, &excuse{v: v, path: path, number: number, note: look.NewParagraph("", look.Note, look.Ink2)}
	x.keep = field.NewLink(v.desk.Host, name+".keep", say("profile.reason.keep"), x.ask)
	x.drop = field.NewLink(v.desk.Host, name+".drop", say("profile.reason.drop"), func() {
		v.b.Pick(name, func(s *sheet) { delete(s.Reasons, path) })
		number.SetRaw(number.Text()) // judges anew
		x.follow()
	})
	x.box = look.VBox(0, x.note, look.HBox(0, x.keep), look.HBox(0, x.drop))
	return x
}

// follow shows the way to keep a refused number, or the reason it is kept for.
func (x *excuse) follow() {
	why := x.v.b.Doc.Now().Reasons[x.path]
	refused := x.number.Reading().State == field.Refused
	show(x.keep, refused && why == "" && x.v.b.Typing() == "")
	show(x.drop, refused && why != "")
	x.note.SetText("")
	if refused && why != "" {
		x.note.SetText(x.v.sp.Say("profile.reason.kept", why))
		x.number.SetTrouble(field.Odd, "")
	}
	show(x.note, x.note.Text() != "")
	show(x.box, x.note.Visible() || x.keep.Visible())
	x.box.Refresh()
}

// ask asks for the reason.
func (x *excuse) ask() {
	_, words := x.number.Trouble()
	x.v.askWhy("profile.reason", x.v.sp.Say("profile.reason.title"), words, func(why string) {
		x.v.b.Pick(x.number.Name(), func(s *sheet) { s.Reasons[x.path] = why })
	}, nil)
}

package testsheet

import (
	"fyne.io/fyne/v2"

	"ebbwell/app/kit/field"
	"ebbwell/app/kit/look"
	"ebbwell/internal/record"
)

// fold holds fields that are rarely used behind one line: a link that names them,
// beside it what is filled in. It opens by itself where something in it is wrong.
type fold struct {
	b       *binder
	link    *field.Link
	summary *look.Paragraph
	body    fyne.CanvasObject
	box     *fyne.Container
	// title names what is behind it; controls are the names of its fields.
	title    string
	controls []string
	// words say what is filled in; needed opens it whatever the person did.
	words  func() string
	needed func() bool
	open   bool
}

// newFold folds an object away. The words of what is filled in come from its fields
// unless words is set.
func newFold(b *binder, name, title string, body fyne.CanvasObject, controls ...string) *fold {
	f := &fold{b: b, title: title, summary: look.NewParagraph("", look.Note, look.Ink2), body: body, controls: controls}
	f.link = field.NewLink(b.Desk.Host, name, title, f.turn)
	f.link.PassBy()
	line := look.Columns(8, []look.Track{look.Fit(), look.Share(1)}, f.link, f.summary)
	f.box = look.VBox(6, look.Pad(0, 0, 0, -field.LinkPad, line), body)
	f.words = f.filled
	return f
}

// turn opens the fold and goes to its first field, or closes it.
func (f *fold) turn() {
	f.open = !f.open
	f.b.OnLeft()
	if f.open && len(f.controls) > 0 {
		f.b.GoTo(f.controls[0])
	}
}

// holds reports whether a control stands behind the line.
func (f *fold) holds(control string) bool {
	for _, c := range f.controls {
		if c == control {
			return true
		}
	}
	return false
}

// show follows the sheet.
func (f *fold) show() {
	open := f.open || f.wrong() || f.needed != nil && f.needed()
	look.ShowIf(f.body, open)
	look.ShowIf(f.summary, !open)
	f.link.SetText(f.title)
	if open {
		f.link.SetText(f.b.Say("testsheet.fold.close"))
	}
	f.summary.SetText(f.words())
}

// wrong reports whether one of its fields has something to say.
func (f *fold) wrong() bool {
	for _, c := range f.controls {
		if n, ok := f.control(c).(interface{ Trouble() (field.Weight, string) }); ok {
			if w, _ := n.Trouble(); w != field.Fine {
				return true
			}
		}
	}
	return false
}

// control is a field of the fold; nil where there is none.
func (f *fold) control(name string) any {
	if bound := f.b.Field(name); bound != nil {
		return bound.Field
	}
	return nil
}

// filled names the fields that hold something, with what they hold.
func (f *fold) filled() string {
	var list []string
	for _, d := range record.SheetFields() {
		if !f.holds(d.Control) {
			continue
		}
		if text := shownIn(f.control(d.Control)); text != "" {
			list = append(list, f.b.Say("testsheet.fold.value", f.b.Say(d.Words()), text))
		}
	}
	if len(list) == 0 {
		return f.b.Say("testsheet.fold.empty")
	}
	return f.b.Desk.Words.Dots(list)
}

// shownIn is what stands in a field, with its unit; empty where it is empty.
func shownIn(control any) string {
	switch c := control.(type) {
	case *field.Number:
		return c.Worded()
	case *field.Choice:
		for _, o := range c.Options() {
			if o.Key == c.Chosen() {
				return o.Text
			}
		}
	}
	return ""
}

package athlete

import (
	"slices"

	"fyne.io/fyne/v2"

	"ebbwell/app/kit/copying"
	"ebbwell/app/kit/desk"
	"ebbwell/app/kit/field"
	"ebbwell/app/kit/look"
	"ebbwell/internal/care"
)

// dueLines is how many things due stand below the first; the others are under all
// dates.
const dueLines = 2

// Widths of the columns of what is due, in px at 100 % text.
const (
	dueDay    float32 = 88
	dueButton float32 = 124
)

// dueSheet is the gravest thing due with the only primary button, and two lines more.
func (v *Overview) dueSheet() fyne.CanvasObject {
	list := v.file.due()
	box := look.VBox(4)
	from := 0
	switch {
	case len(v.file.tests) == 0:
		box.Add(v.first())
		if len(v.file.care.Outstanding) > 0 {
			from = 1 // the button settles it
		}
	case v.planIsNext():
		box.Add(look.NewLabel(v.nothingDue(list), look.Title, look.Ink))
		if b := v.planButton(field.Primary); b != nil {
			box.Add(look.HBox(10, b))
		}
	case len(list) == 0:
		box.Add(look.NewLabel(v.sp.Say("overview.due.none"), look.Title, look.Ink))
	default:
		t := v.sp.task(v.file, list[0])
		box.Add(v.lead(t.title, t.known, field.NewButton(v.desk.Host, field.PartName("overview.due", 0, "open"), t.button, field.Primary, v.goTo(t.opens))))
		from = 1
	}
	for i := from; i < min(len(list), from+dueLines); i++ {
		box.Add(look.NewRule())
		box.Add(v.dueLine(i, list[i]))
	}
	return look.NewSheet(box)
}

// lead is the title of what is due first, what is known of it, and its button.
func (v *Overview) lead(title, known string, button fyne.CanvasObject) fyne.CanvasObject {
	return look.VBox(2, look.NewParagraph(title, look.Title, look.Ink),
		look.Columns(16, []look.Track{look.Share(1), look.Fit()}, look.NewParagraph(known, look.Body, look.Ink), button))
}

// dueLine is one thing due with its day and the way there.
func (v *Overview) dueLine(i int, d due) fyne.CanvasObject {
	t := v.sp.task(v.file, d)
	style := look.Body
	if t.late {
		style = look.Strong
	}
	return look.Columns(12, []look.Track{look.Fixed(dueDay), look.Share(1), look.Fit()},
		look.NewParagraph(t.day, style, look.Ink2), look.NewParagraph(t.sentence, look.Body, look.Ink),
		field.NewButton(v.desk.Host, field.PartName("overview.due", i, "open"), t.button, field.Outline, v.goTo(t.opens)))
}

// planIsNext reports that nothing is due soon and a plan can be opened.
func (v *Overview) planIsNext() bool {
	list := v.file.due()
	if len(v.file.tests) == 0 || v.planButton(field.Outline) == nil {
		return false
	}
	return !slices.ContainsFunc(list, func(d due) bool { return !d.later(v.file.today()) })
}

// nothingDue says until when nothing is due.
func (v *Overview) nothingDue(list []due) string {
	if len(list) == 0 {
		return v.sp.Say("overview.due.none")
	}
	next := list[0].day
	for _, d := range list {
		next = min(next, d.day)
	}
	return v.sp.Say("overview.due.until", v.sp.shortDate(next))
}

// first is the way on for an athlete without a test, or
// what comes before it, for a minor and for one who may be.
func (v *Overview) first() fyne.CanvasObject {
	title := v.sp.Say("overview.first.title")
	if len(v.file.care.Outstanding) == 0 {
		return v.lead(title, v.sp.Say("overview.first"), v.testButton(field.Primary))
	}
	settle := field.NewButton(v.desk.Host, "overview.settle", v.sp.Say("overview.settle"), field.Primary,
		v.goTo(desk.Place{Screen: desk.Profile, Athlete: v.file.athlete.ID, Part: desk.PartMinor}))
	sentence := v.sp.Say("overview.minor", desk.Outstanding(v.desk.Words, v.file.care.Outstanding))
	if !care.AgeKnown(v.file.athlete, v.file.now) {
		sentence = v.sp.Say("overview.born")
	}
	return v.lead(title, sentence, settle)
}

// datesSheet is all that is due and all that has happened.
func (v *Overview) datesSheet() fyne.CanvasObject {
	back := field.NewLink(v.desk.Host, "overview.dates.back", v.sp.Say("overview.dates.back"), func() { v.showDates(false) })
	box := look.VBox(4, titled(v.sp.Say("overview.dates.title"), back))
	columns := []look.Track{look.Fixed(dueDay), look.Share(1)}
	for _, d := range v.file.due() {
		t := v.sp.task(v.file, d)
		box.Add(look.Columns(12, columns, look.NewLabel(t.day, look.Body, look.Ink2), look.NewParagraph(t.sentence, look.Body, look.Ink)))
	}
	var lines []line
	for _, e := range v.file.trail() {
		lines = append(lines, v.sp.line(v.file.athlete.ID, e))
	}
	copied := copying.Link(v.desk, "overview.trail.copy", "copy.table", func() copying.Table { return v.trailTable(lines) })
	look.ShowIf(copied, len(lines) > 0)
	box.Add(titled(v.sp.Say("overview.trail"), copied))
	if len(lines) == 0 {
		box.Add(look.NewParagraph(v.sp.Say("overview.trail.empty"), look.Note, look.Ink2))
	} else {
		t := newTrail(v.desk.Host, lines, func(i int) { v.desk.Go(lines[i].opens) })
		box.Add(look.Grow(look.Pad(0, -trailPadX, 0, -trailPadX, t.within)))
	}
	return look.Pad(look.TopPad, 0, look.FootPad, 0, look.NewSheet(box))
}

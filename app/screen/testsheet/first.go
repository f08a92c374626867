package testsheet

import (
	"fyne.io/fyne/v2"

	"ebbwell/app/kit/field"
	"ebbwell/app/kit/look"
	"ebbwell/internal/care"
)

// empty is what a person sees whose athlete has no test yet.
func (v *View) empty() fyne.CanvasObject {
	say, h := v.desk.Words.Say, v.desk.Host
	begin := field.NewButton(h, "testsheet.new", say("testsheet.new"), field.Primary, v.beginNew)
	blank := field.NewButton(h, "testsheet.blank", say("testsheet.blank"), field.Outline, v.printBlank)
	return look.OnPaper(look.VBox(12, look.Empty(say("testsheet.empty"), nil), look.HBox(10, begin, blank)))
}

// unsettled says what comes before a first sheet, and leads there.
func (v *View) unsettled() fyne.CanvasObject {
	say, h := v.desk.Words.Say, v.desk.Host
	sentence := say("testsheet.unsettled")
	if !care.AgeKnown(v.athlete, v.desk.Now()) {
		sentence = say("testsheet.unsettled.age")
	}
	list := look.VBox(4)
	for _, what := range care.Of(v.athlete, v.desk.Now()).Outstanding {
		list.Add(look.NewParagraph(say("testsheet.unsettled."+what), look.Body, look.Ink))
	}
	profile := field.NewButton(h, "testsheet.profile", say("testsheet.profile"), field.Primary, v.goToProfile)
	return look.OnPaper(look.VBox(12,
		look.NewLabel(say("testsheet.unsettled.title"), look.Strong, look.Ink),
		look.NewParagraph(sentence, look.Body, look.Ink2), list, look.HBox(0, profile)))
}

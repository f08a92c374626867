package profile

import (
	"fyne.io/fyne/v2"

	"ebbwell/app/kit/bind"
	"ebbwell/app/kit/desk"
	"ebbwell/app/kit/field"
	"ebbwell/app/kit/look"
	"ebbwell/internal/care"
	"ebbwell/internal/record"
)

// The words of a choice to hide body mass or to show it.
const (
	massHidden = "hidden"
	massShown  = "shown"
)

// minorPart is what comes first for a minor: guardian, assent, hidden mass.
type minorPart struct {
	v       *View
	caution *look.Caution
	// ask is the one question to both, with their names.
	ask, note *look.Paragraph
	body      fyne.CanvasObject
}

func newMinorPart(v *View) *minorPart {
	say, p := v.sp.Say, &minorPart{v: v}
	guardian := v.b.Line("", "profile.minor.guardian", 200, func(a *record.Athlete) *string { return &a.Guardian })
	guardian.SetPlaceholder(say("profile.minor.guardian.hint"))
	assent := v.b.Date("", "profile.minor.assent", field.Past, func(a *record.Athlete) (*record.Date, string) { return &a.Assent, "assent" })
	mass := v.b.Toggle("", "profile.minor.mass", []field.Option{
		{Key: massHidden, Text: say("profile.mass.hidden")}, {Key: massShown, Text: say("profile.mass.shown")},
	}, bind.Word[record.Athlete]{
		Get: func(a record.Athlete) string {
			switch {
			case !a.MassHiddenSettled:
				return ""
			case a.MassHidden:
				return massHidden
			}
			return massShown
		},
		Set: func(a *record.Athlete, w string) { confirmMass(a, w == massHidden) },
	})
	p.caution = look.NewCaution("", "", nil)
	p.note = look.NewParagraph("", look.Note, look.Ink2)
	p.ask = look.NewParagraph("", look.Body, look.Ink)
	p.body = look.NewSheet(look.VBox(8, look.NewLabel(say("profile.minor"), look.Strong, look.Ink), p.caution, p.ask,
		row(say("profile.minor.guardian"), broad(guardian)),
		row(say("profile.minor.assent"), look.MaxWidth(dayWidth, assent)),
		row(say("profile.minor.mass"), look.MaxWidth(dayWidth, mass)),
		p.note))
	return p
}

// follow shows the part for a minor, and what is still open in it.
func (p *minorPart) follow(a record.Athlete) {
	say := p.v.sp.Say
	show(p.body, a.Minor(p.v.desk.Now()))
	open := care.Of(a, p.v.desk.Now()).Outstanding
	if len(open) > 0 {
		p.caution.SetText(say("profile.minor.first"), say("profile.minor.open", desk.Outstanding(p.v.desk.Words, open)))
	} else {
		p.caution.SetText("", "")
	}
	p.ask.SetText(p.question(a))
	p.note.SetText(say("profile.minor.note"))
}

// question asks guardian and athlete once, by their names: consent and assent are one
// answer.
func (p *minorPart) question(a record.Athlete) string {
	switch say := p.v.sp.Say; {
	case a.Name == "":
		return ""
	case a.Guardian == "":
		return say("profile.minor.question", a.Name)
	default:
		return say("profile.minor.question.named", p.v.sp.Words.List(givers(a, p.v.desk.Now())))
	}
}

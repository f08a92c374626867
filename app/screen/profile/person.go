package profile

import (
	"cmp"
	"slices"

	"fyne.io/fyne/v2"

	"ebbwell/app/kit/bind"
	"ebbwell/app/kit/field"
	"ebbwell/app/kit/look"
	"ebbwell/internal/care"
	"ebbwell/internal/evidence"
	"ebbwell/internal/handout/paper"
	"ebbwell/internal/quantity"
	"ebbwell/internal/record"
)

// labelWidth is the column of words beside fields, in px at 100 % text.
const labelWidth float32 = 128

// row is a field with its words at the left.
func row(words string, o fyne.CanvasObject) fyne.CanvasObject {
	return look.Columns(12, []look.Track{look.Fixed(labelWidth), look.Share(1)}, look.NewParagraph(words, look.Body, look.Ink2), o)
}

// Widths of fields in px at 100 % text: for a few figures, a day or a choice,
// and for words.
const (
	fewWidth  float32 = 124
	dayWidth  float32 = 204
	wordWidth float32 = 560
)

// few keeps the box of a number small; what is said below may be wider.
func few(n *field.Number) *field.Number {
	n.SetBox(fewWidth)
	return n
}

// broad keeps a line of text from growing with the window.
func broad(o fyne.CanvasObject) fyne.CanvasObject { return look.MaxWidth(wordWidth, o) }

// personPart is who the athlete is.
type personPart struct {
	v    *View
	born *field.Date
	age  *look.Label
	// letters says which letters of the name cannot be printed.
	letters *look.Paragraph
	// mass is the field of the usual mass; where mass is hidden it is kept out
	// of sight until it is asked for.
	mass             *field.Number
	massRow, covered fyne.CanvasObject
	massBox          *fyne.Container
	asked            bool
	hide             fyne.CanvasObject
	// unborn says why mass is hidden while the birth date is not known.
	unborn  fyne.CanvasObject
	excuses []*excuse
	body    fyne.CanvasObject
}

func newPersonPart(v *View) *personPart {
	say, p := v.sp.Say, &personPart{v: v}
	name := v.b.Line("", "profile.name", 200, func(a *record.Athlete) *string { return &a.Name })
	p.born = v.b.Date("", "profile.born", field.Past, func(a *record.Athlete) (*record.Date, string) { return &a.Born, "born" })
	p.age = look.NewLabel("", look.Note, look.Ink2).Shorten()
	p.letters = look.NewParagraph("", look.Note, look.Ink2)
	sex := v.b.Toggle("", "profile.sex", v.b.Options("profile.sex.", string(record.Female), string(record.Male)), bind.Word[record.Athlete]{
		Get: func(a record.Athlete) string { return string(a.Sex) }, Set: func(a *record.Athlete, w string) { a.Sex = record.Sex(w) },
	})
	height := v.b.Number("", "profile.height", evidence.Height, quantity.Metre, bind.At("height", func(a *record.Athlete) *record.Number { return &a.Height }))
	height.SetShown(quantity.Centimetre)
	height.Hint = height.MetresHint
	if v.sp.By.US {
		height.SetShown(quantity.Inch)
	}
	excuseHeight := v.newExcuse("profile.height", "height", height)
	p.excuses = []*excuse{excuseHeight}
	p.body = look.NewSheet(look.VBox(8,
		look.NewLabel(say("profile.person"), look.Strong, look.Ink),
		row(say("profile.name"), look.VBox(2, broad(name), p.letters)),
		row(say("profile.born"), look.Columns(10, []look.Track{look.Fixed(dayWidth), look.Share(1)}, p.born, p.age)),
		row(say("profile.sex"), look.MaxWidth(dayWidth, sex)),
		row(say("profile.height"), look.VBox(2, few(height), excuseHeight.box)),
		p.newMass(), v.reads(),
	))
	return p
}

// reads is the language of the pages the athlete is handed; out of sight where there is
// only one.
func (v *View) reads() fyne.CanvasObject {
	options := slices.Concat([]field.Option{{Key: asPractice, Text: v.sp.Say("profile.reads.practice", v.sp.Say("language."+v.desk.PageLanguage().String()))}}, v.desk.LanguageOptions())
	choice := v.b.Choice("", "profile.reads", options, bind.Word[record.Athlete]{
		Get: func(a record.Athlete) string { return cmp.Or(a.PageLanguage, asPractice) },
		Set: func(a *record.Athlete, key string) {
			if a.PageLanguage = key; key == asPractice {
				a.PageLanguage = ""
			}
		},
	})
	line := row(v.sp.Say("profile.reads"), broad(choice))
	look.ShowIf(line, len(v.desk.Languages) > 1)
	return line
}

// asPractice is the choice of the practice's language, which is kept as nothing.
const asPractice = "practice"

// newMass is the usual mass, and the choice to hide it.
func (p *personPart) newMass() fyne.CanvasObject {
	v, say := p.v, p.v.sp.Say
	p.mass = v.b.Number("", "profile.mass", evidence.BodyMass, quantity.Kilogram, bind.At("usualMass", func(a *record.Athlete) *record.Number { return &a.UsualMass }))
	if !v.sp.By.US {
		p.mass.Hint = p.mass.PoundsHint
	}
	left := p.mass.OnLeft
	p.mass.OnLeft = func(r field.Reading) {
		p.asked = false // out of sight again
		left(r)
	}
	x := v.newExcuse("profile.mass", "usualMass", p.mass)
	p.excuses = append(p.excuses, x)
	p.massRow = row(say("profile.mass"), look.VBox(2, few(p.mass), x.box))
	ask := field.NewLink(v.desk.Host, "profile.mass.show", say("profile.mass.show"), p.ask)
	p.covered = row(say("profile.mass"), look.HBox(10, look.NewLabel(say("profile.mass.covered"), look.Body, look.Ink3), ask))
	p.hide = row("", v.b.Check("", "profile.mass.hide", say("profile.mass.hide"),
		func(a record.Athlete) bool { return care.MassHidden(a, v.desk.Now()) },
		func(s *sheet, on bool) { confirmMass(&s.Record, on) }))
	p.unborn = row("", look.NewParagraph(say("profile.mass.born"), look.Note, look.Ink2))
	p.massBox = look.VBox(2, p.massRow, p.covered, p.unborn, p.hide)
	return p.massBox
}

// ask shows the field of the mass and gives it the keyboard.
func (p *personPart) ask() {
	p.asked = true
	p.v.showAfterTyping()
	p.mass.Focus()
}

// follow reads the age back, and keeps the mass out of sight where it is hidden.
func (p *personPart) follow(a record.Athlete) {
	years, state := ageOf(a, p.v.desk.Now())
	p.age.SetText(p.v.sp.Say("profile.age."+string(state), years))
	letters := p.v.desk.Unprintable(a.Name)
	p.letters.SetText(p.v.sp.Say("profile.name.letters", p.v.desk.Words.Commas(letters), paper.Lacking))
	show(p.letters, len(letters) > 0)
	covered := care.MassHidden(a, p.v.desk.Now()) && !p.asked && p.v.b.Typing() != "profile.mass"
	show(p.massRow, !covered)
	show(p.covered, covered)
	known := care.AgeKnown(a, p.v.desk.Now())
	show(p.unborn, !known)
	show(p.hide, known && state != ageMinor)
	if hide := p.v.b.Field("profile.mass.hide"); hide != nil {
		hide.Field.(*field.Check).Set(care.MassHidden(a, p.v.desk.Now()))
	}
	for _, x := range p.excuses {
		x.follow()
	}
	p.massBox.Refresh()
}

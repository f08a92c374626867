package profile

import (
	"fyne.io/fyne/v2"

	"ebbwell/app/kit/bind"
	"ebbwell/app/kit/field"
	"ebbwell/app/kit/look"
	"ebbwell/internal/consult"
	"ebbwell/internal/evidence"
	"ebbwell/internal/plan"
	"ebbwell/internal/quantity"
	"ebbwell/internal/record"
)

// mouthfulPart is the athlete's own mouthful: typed, or from ten mouthfuls with
// the bottle weighed before and after.
type mouthfulPart struct {
	v      *View
	ten    *field.Button
	excuse *excuse
	body   fyne.CanvasObject
}

func newMouthfulPart(v *View) *mouthfulPart {
	p := &mouthfulPart{v: v}
	number := v.b.Number("", "profile.mouthful", evidence.MouthfulVolume, quantity.Millilitre, bind.At("mouthful", func(a *record.Athlete) *record.Number { return &a.Mouthful }))
	number.SetDecimals(0)
	if v.sp.By.US {
		number.SetDecimals(1)
	}
	p.ten = field.NewButton(v.desk.Host, "profile.mouthful.ten", v.sp.Say("profile.mouthful.ten"), field.Outline, p.ask)
	p.excuse = v.newExcuse("profile.mouthful", "mouthful", number)
	p.body = look.VBox(2, look.HBox(10, look.MinSized(fewWidth, 0, number), p.ten), p.excuse.box)
	return p
}

// ask asks for the two weighings and writes the mouthful they give.
func (p *mouthfulPart) ask() {
	say, h := p.v.sp.Say, p.v.desk.Host
	before := field.NewNumber(h, "profile.ten.before", evidence.BottleMass, quantity.Gram)
	after := field.NewNumber(h, "profile.ten.after", evidence.BottleMass, quantity.Gram)
	result := look.NewLabel(say("profile.ten.none"), look.Note, look.Ink2)
	calculate := func() (plan.Mouthful, bool) {
		x, ok1 := before.Value()
		y, ok2 := after.Value()
		if !ok1 || !ok2 {
			result.SetText(say("profile.ten.none"))
			return 0, false
		}
		m, err := plan.MouthfulFromTen(x, y, p.density())
		if err != nil {
			result.SetText(say("profile.ten.wrong"))
			return 0, false
		}
		result.SetText(say("profile.ten.is", p.v.sp.By.Amount(float64(m), quantity.Millilitre)))
		return m, true
	}
	changed := func(field.Reading) { calculate() }
	before.OnChanged, after.OnChanged = changed, changed
	h.Ask(p.v.canvas(), field.Question{
		Name: "profile.ten", Title: say("profile.ten.title"), Sentence: say("profile.ten"),
		Content: look.VBox(8, row(say("profile.ten.before"), few(before)), row(say("profile.ten.after"), few(after)), result),
		Actions: []field.Action{
			{Name: "no", Text: say("field.ask.cancel")},
			{Name: "yes", Text: say("profile.ten.yes"), Kind: field.Primary, Do: func() (stay bool) {
				m, ok := calculate()
				if ok {
					p.v.b.Pick("profile.mouthful", func(s *sheet) {
						s.Record.Mouthful = record.Num(quantity.Round(float64(m), 1), quantity.Millilitre)
						delete(s.Raw, "mouthful")
					})
					p.v.b.Show()
				}
				return !ok
			}},
		},
	})
}

// density is that of water, g/mL.
func (p *mouthfulPart) density() float64 {
	if water, ok := p.v.desk.Products().Find(consult.Water); ok && water.Density.Known {
		return water.Density.Value
	}
	return 1
}

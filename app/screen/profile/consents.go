package profile

import (
	"slices"

	"fyne.io/fyne/v2"

	"ebbwell/app/kit/bind"
	"ebbwell/app/kit/field"
	"ebbwell/app/kit/look"
	"ebbwell/internal/record"
)

// consentsGroup is the group of the fields of all consents.
const consentsGroup = "consents"

// consentsPart is what the athlete consented to.
type consentsPart struct {
	v     *View
	rows  *fyne.Container
	add   *field.Button
	shown []record.ID
	body  fyne.CanvasObject
}

func newConsentsPart(v *View) *consentsPart {
	p := &consentsPart{v: v, rows: look.VBox(0)}
	p.add = field.NewButton(v.desk.Host, "profile.consent.add", v.sp.Say("profile.consent.add"), field.Outline, func() {
		v.b.Pick("profile.consents", func(s *sheet) {
			s.Record.Consents = append(s.Record.Consents, newConsent(s.Record, v.desk.Now(), v.sp.Words.List(givers(s.Record, v.desk.Now()))))
		})
		v.b.GoTo(field.PartName("profile.consent", len(p.shown)-1, "purpose"))
	})
	p.body = look.NewSheet(look.VBox(8, look.NewLabel(v.sp.Say("profile.consents"), look.Strong, look.Ink), p.rows, look.HBox(0, p.add)))
	return p
}

// follow builds the rows anew where consents came or went.
func (p *consentsPart) follow(a record.Athlete) {
	var ids []record.ID
	for _, c := range a.Consents {
		ids = append(ids, c.ID)
	}
	if slices.Equal(ids, p.shown) {
		return
	}
	p.shown = ids
	p.v.b.Drop(consentsGroup)
	p.rows.Objects = nil
	for i, id := range ids {
		p.rows.Add(p.row(i, id))
	}
	p.rows.Refresh()
	p.v.b.Show()
}

// row is one consent: what for and by whom, then its days.
func (p *consentsPart) row(i int, id record.ID) fyne.CanvasObject {
	b, say := p.v.b, p.v.sp.Say
	at := func(a *record.Athlete) *record.Consent {
		if c := consentOf(a, id); c != nil {
			return c
		}
		return &record.Consent{} // gone: its row goes with the next look
	}
	day := func(what string, side field.Side, of func(*record.Consent) *record.Date) fyne.CanvasObject {
		d := b.Date(consentsGroup, field.PartName("profile.consent", i, what), side, func(a *record.Athlete) (*record.Date, string) {
			return of(at(a)), "consents." + string(id) + "." + what
		})
		d.SetLeast(116)
		return look.VBox(2, look.NewLabel(say("profile.consent."+what), look.Note, look.Ink2), d)
	}
	purpose := b.Choice(consentsGroup, field.PartName("profile.consent", i, "purpose"), b.Options("profile.purpose.", purposeWords()...), bind.Word[record.Athlete]{
		Get: func(a record.Athlete) string { return string(at(&a).Purpose) },
		Set: func(a *record.Athlete, w string) { at(a).Purpose = record.Purpose(w) },
	})
	by := b.Line(consentsGroup, field.PartName("profile.consent", i, "by"), 200, func(a *record.Athlete) *string { return &at(a).GivenBy })
	out := field.NewLink(p.v.desk.Host, field.PartName("profile.consent", i, "remove"), say("profile.consent.remove"), func() {
		b.Pick("profile.consents", func(s *sheet) { dropConsent(&s.Record, id) })
	})
	days := look.Panels(10, []look.Track{look.Share(1), look.Share(1), look.Share(1)},
		day("given", field.Past, func(c *record.Consent) *record.Date { return &c.Given }),
		day("until", field.Coming, func(c *record.Consent) *record.Date { return &c.Until }),
		day("withdrawn", field.Past, func(c *record.Consent) *record.Date { return &c.Withdrawn }))
	head := look.Columns(8, []look.Track{look.Fixed(168), look.Fit(), look.Share(1), look.Fit()},
		purpose, look.NewLabel(say("profile.consent.by"), look.Note, look.Ink2), by, out)
	return look.VBox(0, look.Pad(6, 0, 10, 0, look.VBox(6, head, days)), look.NewRule())
}

// purposeWords are the purposes as words of a closed list.
func purposeWords() []string {
	var list []string
	for _, p := range record.Purposes() {
		list = append(list, string(p))
	}
	return list
}

// reveal brings the consents into sight.
func (p *consentsPart) reveal() {
	top := p.body.Position().Y
	p.v.page.Reveal(top, top+p.body.Size().Height)
}

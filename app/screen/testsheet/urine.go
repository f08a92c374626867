package testsheet

import (
	"fyne.io/fyne/v2"

	"ebbwell/app/kit/desk"
	"ebbwell/app/kit/field"
	"ebbwell/app/kit/look"
	"ebbwell/internal/consult"
	"ebbwell/internal/evidence"
	"ebbwell/internal/record"
)

// urine is the fourth part: the urine marker, and the sweat patches.
type urine struct {
	b       *binder
	fields  []*field.Number
	band    *look.Paragraph
	consent *look.Caution
	patches *patches
	body    fyne.CanvasObject
}

// newUrine builds the part.
func newUrine(b *binder) *urine {
	p := &urine{b: b, band: look.NewParagraph("", look.Note, look.Ink2), consent: look.NewCaution("", "", nil), patches: newPatches(b)}
	p.body = look.VBox(paneGap, p.marker(), p.patches.body)
	return p
}

// marker is what was read of the urine, and when.
func (p *urine) marker() fyne.CanvasObject {
	b, say := p.b, p.b.Say
	number := func(path string) *field.Number {
		f, _ := record.SheetFieldOf(path)
		n := b.Number(PartUrine, f.Control, f.Evidence, f.Unit, func(t *record.Test, grow bool) (*record.Number, string) {
			if grow {
				t.Urine.NotTaken = false
			}
			return f.Number(t), path
		})
		p.fields = append(p.fields, n)
		return n
	}
	gravity, osmolality, colour := number("urine.gravity"), number("urine.osmolality"), number("urine.colour")
	gravity.SetDecimals(3)
	when := b.Toggle(PartUrine, "testsheet.urine.when", b.Options("testsheet.when.", string(record.Before), string(record.After)), word(
		func(t record.Test) string { return string(t.Urine.When) }, func(t *record.Test, w string) { t.Urine.When = record.Moment(w) }))
	none := b.Check(PartUrine, "testsheet.urine.nottaken", say("testsheet.urine.nottaken"), func(t record.Test) bool { return t.Urine.NotTaken },
		func(s *sheet, on bool) { s.Record.Urine.NotTaken = on })
	return panel(say("testsheet.urine"), "", p.consent, newForm(
		look.NewEntry(say("testsheet.urine.gravity"), small(gravity)), look.NewEntry(say("testsheet.urine.when"), when),
		look.NewEntry(say("testsheet.urine.osmolality"), small(osmolality)), look.NewEntry(say("testsheet.urine.colour"), small(colour)),
		look.NewEntry("", none).Wide(),
	), p.band)
}

// show follows the sheet where the fields do not by themselves.
func (p *urine) show(s sheet, f consult.Findings) {
	p.band.SetText(p.words(f))
	look.ShowIf(p.band, p.band.Text() != "")
	if s.Record.State == record.TestOpen {
		for _, n := range p.fields {
			look.EnableIf(n, !s.Record.Urine.NotTaken)
		}
	}
	p.patches.show(s, f)
}

// words say in which band the marker lies, with the source, and how little it
// proves.
func (p *urine) words(f consult.Findings) string {
	w, text := p.b.Desk.Words, ""
	for _, m := range f.Sweat.Markers {
		if m.Band == "" || m.Marker == evidence.MorningMassMarker {
			continue
		}
		text += w.Say("testsheet.marker."+string(m.Marker), w.Say("band."+m.Band), m.Source.Name(w.Say)) + " "
	}
	if text == "" {
		return ""
	}
	for _, m := range f.Sweat.Markers {
		for _, n := range m.Figure.Why.Notes {
			return text + desk.NoteSentence(p.b.Desk.Speaker(f.Care.MassHidden), n)
		}
	}
	return text
}

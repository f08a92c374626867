package profile

import (
	"fyne.io/fyne/v2"

	"ebbwell/app/kit/look"
	"ebbwell/internal/care"
	"ebbwell/internal/record"
)

// flagsPart is what must be known before anything is advised: the table of
// conditions as a list to tick. A condition that holds shows what it changes,
// and asks for a note and, where a plan needs one, for the physician.
type flagsPart struct {
	v       *View
	minor   fyne.CanvasObject
	details map[record.FlagKind]fyne.CanvasObject
	body    fyne.CanvasObject
}

func newFlagsPart(v *View) *flagsPart {
	say := v.sp.Say
	p := &flagsPart{v: v, details: map[record.FlagKind]fyne.CanvasObject{}}
	box := look.VBox(2, look.NewLabel(say("profile.flags"), look.Strong, look.Ink),
		look.Pad(0, 0, 4, 0, look.NewParagraph(say("profile.flags.note"), look.Note, look.Ink2)))
	for _, e := range care.Effects() {
		if e.Kind == record.FlagMinor {
			p.minor = look.Pad(4, 0, 6, 0, look.VBox(2, look.NewLabel(say("flag.under-18.name"), look.Body, look.Ink),
				look.NewParagraph(say("flag.under-18.effect"), look.Note, look.Ink2)))
			box.Add(p.minor)
			continue
		}
		p.details[e.Kind] = p.newDetails(e)
		box.Add(v.b.Check("", "profile.flag."+string(e.Kind), say("flag."+string(e.Kind)+".name"),
			func(a record.Athlete) bool { return v.flagged(&a, e.Kind) },
			func(s *sheet, on bool) { setFlag(&s.Record, e.Kind, on) }).Wrap())
		box.Add(p.details[e.Kind])
	}
	p.body = look.NewSheet(box)
	return p
}

// newDetails is what a condition that holds shows below its tick.
func (p *flagsPart) newDetails(e care.Effect) fyne.CanvasObject {
	v, say, name := p.v, p.v.sp.Say, "profile.flag."+string(e.Kind)
	text := func(of func(*record.Flag) *string) func(*record.Athlete) *string {
		return func(a *record.Athlete) *string {
			if f := flagOf(a, e.Kind); f != nil {
				return of(f)
			}
			return new(string) // not ticked: nothing to show, nothing to type into
		}
	}
	note := v.b.Line("", name+".note", 400, text(func(f *record.Flag) *string { return &f.Note }))
	note.SetPlaceholder(say("profile.flag.note.hint"))
	line := func(words string, o fyne.CanvasObject) fyne.CanvasObject {
		return look.Columns(8, []look.Track{look.Fixed(64), look.Share(1)}, look.NewLabel(words, look.Note, look.Ink2), o)
	}
	box := look.VBox(6, look.NewParagraph(say("flag."+string(e.Kind)+".effect"), look.Note, look.Ink2), line(say("profile.flag.note"), note))
	if e.Physician {
		physician := v.b.Line("", name+".physician", 200, text(func(f *record.Flag) *string { return &f.Physician }))
		physician.SetPlaceholder(say("profile.flag.physician.hint"))
		box.Add(line(say("profile.flag.physician"), physician))
	}
	return look.Pad(0, 0, 8, look.Scaled(28), box)
}

// follow shows the details of the conditions that hold.
func (p *flagsPart) follow(a record.Athlete) {
	for kind, o := range p.details {
		show(o, p.v.flagged(&a, kind))
	}
	show(p.minor, a.Minor(p.v.desk.Now()))
}

// flagged reports whether a condition holds today.
func (v *View) flagged(a *record.Athlete, kind record.FlagKind) bool {
	f := flagOf(a, kind)
	return f != nil && care.FlagHolds(*f, v.desk.Now())
}

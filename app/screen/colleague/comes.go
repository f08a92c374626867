package colleague

import (
	"fyne.io/fyne/v2"

	"ebbwell/app/kit/field"
	"ebbwell/app/kit/look"
	"ebbwell/internal/bundle"
	"ebbwell/internal/record"
)

// comesPart shows what a file brings, before anything is written.
type comesPart struct {
	v     *View
	doing *look.Paragraph
	stop  *field.Button
	lines *fyne.Container
	body  *fyne.Container
}

func newComesPart(v *View) *comesPart {
	p := &comesPart{v: v, doing: look.NewParagraph("", look.Body, look.Ink), lines: look.VBox(look.SheetGap)}
	p.stop = field.NewButton(v.desk.Host, "take.stop", v.desk.Words.Say("take.stop"), field.Outline, func() {
		if v.stop != nil {
			v.stop()
		}
	})
	p.body = look.VBox(look.SheetGap)
	p.clear()
	return p
}

// clear shows how it goes, while no file is open.
func (p *comesPart) clear() {
	p.v.open.SetKind(field.Primary)
	say := p.v.desk.Words.Say
	p.lines.Objects = []fyne.CanvasObject{look.NewPanel(say("take.how"), nil, look.NewParagraph(say("take.how.look"), look.Body, look.Ink),
		look.NewParagraph(say("take.how.merge"), look.Body, look.Ink), look.NewParagraph(say("take.how.caution"), look.Body, look.Ink))}
	p.rested()
}

// working shows what is being done, with a way to stop.
func (p *comesPart) working(text string) {
	p.doing.SetText(text)
	p.body.Objects = []fyne.CanvasObject{look.NewSheet(look.VBox(8, p.doing, look.HBox(0, p.stop)))}
	p.body.Refresh()
}

// rested shows the lines again.
func (p *comesPart) rested() {
	p.body.Objects = []fyne.CanvasObject{p.lines}
	p.body.Refresh()
}

// show shows what would come of a file.
func (p *comesPart) show(l looked) {
	w, v := p.v.desk.Words, p.v
	b, r := l.in.Bundle, l.in.Seen
	head := look.VBox(6, look.NewParagraph(w.Say("take.from", b.From, b.By, w.Date(b.Made.In(v.desk.Now().Location()))), look.Body, look.Ink))
	for _, text := range p.counts(r) {
		head.Add(look.NewParagraph(text, look.Body, look.Ink))
	}
	if r.Nothing() {
		head.Add(look.NewParagraph(w.Say("take.nothing"), look.Body, look.Ink))
	} else {
		v.open.SetKind(field.Outline) // what comes next is to take it in
		head.Add(look.HBox(10, field.NewButton(v.desk.Host, "take.in", w.Say("take.in"), field.Primary, func() { v.takeIn(l) }),
			field.NewButton(v.desk.Host, "take.leave", w.Say("take.leave"), field.Outline, func() { p.clear(); v.body.Refresh() })))
		head.Add(look.NewParagraph(w.Say("take.in.note"), look.Note, look.Ink2))
	}
	p.lines.Objects = []fyne.CanvasObject{look.NewPanel(w.Say("take.comes"), nil, head)}
	for _, part := range []fyne.CanvasObject{p.guarded(l), p.conflicts(l), p.decisions(l)} {
		if part != nil {
			p.lines.Add(part)
		}
	}
	p.lines.Refresh()
	v.body.Refresh()
}

// counts says how much comes.
func (p *comesPart) counts(r bundle.Result) (list []string) {
	w := p.v.desk.Words
	for _, c := range []struct {
		what string
		n    int
	}{
		{"newathletes", len(r.NewAthletes)}, {"athletes", len(r.Athletes)}, {"newtests", len(r.NewTests)},
		{"tests", len(r.Tests)}, {"newplans", len(r.NewPlans)}, {"plans", len(r.Plans)}, {"pages", len(r.Prints)}, {"left", len(r.Left)},
	} {
		if c.n > 0 {
			list = append(list, w.Say("take.count."+c.what, c.n))
		}
	}
	return list
}

// guarded are red flags, plans that come as drafts and numbers that are not entered;
// nil for none.
func (p *comesPart) guarded(l looked) fyne.CanvasObject {
	w, sp := p.v.desk.Words, p.v.sp
	box := look.VBox(6)
	for _, t := range l.gains {
		box.Add(look.NewCaution("", w.Say("take.gain", sp.name(l.athletes[t.AthleteID]), sp.sheet(t)), nil))
	}
	for _, plan := range l.drafts {
		box.Add(look.NewParagraph(w.Say("take.draft", plan.Name, sp.name(l.athletes[plan.AthleteID])), look.Body, look.Ink))
	}
	for _, h := range l.in.Seen.Held {
		a := l.athletes[h.Athlete]
		box.Add(look.NewParagraph(w.Say("take.held", sp.name(a), sp.field(h.Ref.Kind, h.Path), sp.value(h.Value, h.Path, sp.hidden(a))), look.Body, look.Ink))
	}
	if len(box.Objects) == 0 {
		return nil
	}
	return look.NewPanel(w.Say("take.guards"), nil, box)
}

// conflicts are what both sides changed, side by side; nil for none.
func (p *comesPart) conflicts(l looked) fyne.CanvasObject {
	w, sp := p.v.desk.Words, p.v.sp
	box := look.VBox(10)
	for _, c := range l.in.Seen.Conflicts {
		name := w.Say("take.product")
		if a, ok := l.athletes[c.Athlete]; ok {
			name = sp.name(a)
		}
		ours, theirs := sp.sides(c, sp.hidden(l.athletes[c.Athlete]) && c.Ref.Kind != record.KindProduct)
		left, right := look.NewParagraph(w.Say("take.here", ours), look.Body, look.Ink), look.NewParagraph(w.Say("take.there", theirs), look.Body, look.Ink2)
		stands := w.Say("take.stands.here")
		if c.TheirsStands {
			left, right = look.NewParagraph(w.Say("take.here", ours), look.Body, look.Ink2), look.NewParagraph(w.Say("take.there", theirs), look.Body, look.Ink)
			stands = w.Say("take.stands.there")
		}
		box.Add(look.VBox(2, look.NewParagraph(w.Say("take.conflict", name, sp.field(c.Ref.Kind, c.Path)), look.Strong, look.Ink),
			look.Columns(16, []look.Track{look.Share(1), look.Share(1)}, left, right), look.NewParagraph(stands, look.Note, look.Ink2)))
	}
	if len(box.Objects) == 0 {
		return nil
	}
	return look.NewPanel(w.Say("take.conflicts"), nil, look.NewParagraph(w.Say("take.conflicts.note"), look.Note, look.Ink2), box)
}

// sides are the two sides of a conflict in words: of a whole record when each was last
// changed; of two numbers that read the same as many places as tell them apart.
func (s speaker) sides(c bundle.Conflict, hidden bool) (ours, theirs string) {
	w := s.desk.Words
	if c.Path == "" {
		return w.ShortDate(c.OursAt, s.desk.Now()), w.ShortDate(c.TheirsAt, s.desk.Now())
	}
	ours, theirs = s.value(c.Ours, c.Path, hidden), s.value(c.Theirs, c.Path, hidden)
	a, b := c.Ours.Number, c.Theirs.Number
	if ours != theirs || a == nil || b == nil || hidden && tellsMass(c.Ours.Unit) {
		return ours, theirs
	}
	const most = 4
	for d := 1; d <= most && ours == theirs; d++ {
		by := s.desk.Speaker(false).By
		ours, theirs = by.Rounded(*a, c.Ours.Unit, d), by.Rounded(*b, c.Theirs.Unit, d)
	}
	return ours, theirs
}

// decisions are what will be left to a person; nil for nothing.
func (p *comesPart) decisions(l looked) fyne.CanvasObject {
	w, sp := p.v.desk.Words, p.v.sp
	box := look.VBox(6)
	for _, d := range l.in.Seen.Decisions {
		a := l.athletes[d.Athlete]
		box.Add(look.NewParagraph(w.Say("take.asks."+string(d.Act), sp.name(a), sp.field(d.Ref.Kind, d.Path), sp.other(d.Act, d.Stands, d.Other, d.Path, sp.hidden(a))), look.Body, look.Ink))
	}
	if len(box.Objects) == 0 {
		return nil
	}
	return look.NewPanel(w.Say("take.asks"), nil, look.NewParagraph(w.Say("take.asks.note"), look.Note, look.Ink2), box)
}

// other says what a decision is about: what the colleague has, or the condition that
// they removed.
func (s speaker) other(act bundle.Act, stands, other bundle.Value, path string, hidden bool) string {
	if act == bundle.ActRemove {
		return s.value(stands, path, hidden)
	}
	return s.value(other, path, hidden)
}

package testsheet

import (
	"fyne.io/fyne/v2"

	"ebbwell/app/kit/field"
	"ebbwell/app/kit/look"
	"ebbwell/internal/record"
	"ebbwell/internal/squad"
)

// after is the third part: the end, the scale again, what left the body, how
// it felt.
type after struct {
	b            *binder
	end          *field.Clock
	nextDay      *field.Check
	masses       *weighingList
	urine, stool *field.Number
	guess        *field.Number
	flag         *redFlag
	// device leads to the file of a watch or a bike computer.
	device *field.Link
	// clocks says that the clocks changed during the session.
	clocks *look.Paragraph
	kit    *fold
	body   fyne.CanvasObject
}

// newAfter builds the part.
func newAfter(b *binder, flag *redFlag, askDevice func()) *after {
	p := &after{b: b, flag: flag, device: newDeviceLink(b, "testsheet.device.after", askDevice)}
	p.body = look.VBox(paneGap, flag.box, p.session(), p.scale(), p.loss(), p.feeling())
	return p
}

// show follows the sheet where the fields do not by themselves.
func (p *after) show(s sheet) {
	p.masses.show(s)
	p.kit.show()
	look.ShowIf(p.nextDay, endsBeforeStart(s.Record) || s.Record.Session.EndsNextDay)
	look.ShowIf(p.clocks, squad.ClocksChanged(s.Record.Session, p.b.Desk.Now().Location()))
	weight, text := field.Fine, ""
	switch _, readable := p.end.Clock(); {
	case !readable:
		weight, text = p.end.Trouble()
	case endsBeforeStart(s.Record) && p.b.Typing() != "testsheet.end":
		weight, text = field.Wrong, p.b.Say("testsheet.trouble.end.title")
	}
	p.end.SetTrouble(weight, text)
	if s.Record.State == record.TestOpen {
		look.EnableIf(p.urine, !s.Record.Loss.NoUrine)
		look.EnableIf(p.stool, !s.Record.Loss.NoStool)
	}
}

// session is the end, and how much of it was played. The guess comes first:
// it is asked before anything is shown.
func (p *after) session() fyne.CanvasObject {
	b, say := p.b, p.b.Say
	var guess, played look.Entry
	guess, p.guess = number(b, "loss.guess")
	played, _ = number(b, "session.played")
	p.end = b.Clock(PartAfter, "testsheet.end", func(t *record.Test) (*record.Clock, string) { return &t.Session.End, "session.end" })
	p.nextDay = b.Check(PartAfter, "testsheet.nextday", say("testsheet.nextday"), func(t record.Test) bool { return t.Session.EndsNextDay },
		func(s *sheet, on bool) { s.Record.Session.EndsNextDay = on })
	p.clocks = look.NewParagraph(say("testsheet.clocks"), look.Note, look.Ink)
	ending := look.VBox(4, small(p.end), p.nextDay, p.clocks)
	return look.NewPanel(say("testsheet.ending"), p.device, newForm(
		guess, look.NewEntry(say("testsheet.end"), ending), played,
	), look.NewParagraph(say("testsheet.ending.note"), look.Note, look.Ink2))
}

// scale is the weighing after, and the kit.
func (p *after) scale() fyne.CanvasObject {
	b, say := p.b, p.b.Say
	dress := b.Toggle(PartAfter, "testsheet.scale.after", b.Options("testsheet.dress.", string(record.DressMinimal), string(record.DressKit)), word(
		func(t record.Test) string { return string(t.Scale.After) }, func(t *record.Test, w string) { t.Scale.After = record.Dress(w) }))
	other := b.Check(PartAfter, "testsheet.scale.other", say("testsheet.scale.other"), func(t record.Test) bool { return t.Scale.Other },
		func(s *sheet, on bool) { s.Record.Scale.Other = on })
	p.masses = newWeighingList(b, PartAfter, record.After)
	dry, _ := number(b, "scale.kitDry")
	wet, _ := number(b, "scale.kitWet")
	p.kit = newFold(b, "testsheet.fold.kit", say("testsheet.fold.kit"), newForm(dry, wet), "testsheet.kit.dry", "testsheet.kit.wet")
	p.kit.needed = func() bool {
		now := b.Doc.Now().Record.Scale
		return now.Before == record.DressKit || now.After == record.DressKit
	}
	return panel(say("testsheet.scale.again"), say("testsheet.scale.again.note"), newForm(
		look.NewEntry(say("testsheet.scale.after"), look.MaxWidth(400, dress)).Wide(),
		look.NewEntry(say("testsheet.after.mass"), p.masses.box), look.NewEntry("", other).Wide(),
	), p.kit.box)
}

// loss is urine and stool, each with "none" as an answer.
func (p *after) loss() fyne.CanvasObject {
	b, say := p.b, p.b.Say
	_, p.urine = number(b, "loss.urine")
	_, p.stool = number(b, "loss.stool")
	noUrine := b.Check(PartAfter, "testsheet.urine.none", say("testsheet.urine.none"), func(t record.Test) bool { return t.Loss.NoUrine },
		func(s *sheet, on bool) { s.Record.Loss.NoUrine = on })
	noStool := b.Check(PartAfter, "testsheet.stool.none", say("testsheet.stool.none"), func(t record.Test) bool { return t.Loss.NoStool },
		func(s *sheet, on bool) { s.Record.Loss.NoStool = on })
	beside := func(n *field.Number, none *field.Check) fyne.CanvasObject {
		return look.HBox(12, look.MinSized(96, 0, n), none)
	}
	return panel(say("testsheet.left"), "", newForm(
		look.NewEntry(say("testsheet.urine.passed"), beside(p.urine, noUrine)).Wide(),
		look.NewEntry(say("testsheet.stool.passed"), beside(p.stool, noStool)).Wide(),
	))
}

// feeling is what the athlete says, and anything else worth a note.
func (p *after) feeling() fyne.CanvasObject {
	b, say := p.b, p.b.Say
	rating := func(name, low, high, path string, of func(t *record.Test) *record.Number) *field.Rating {
		return b.Rating(PartAfter, name, low, high, at(path, of))
	}
	thirst := rating("testsheet.thirst", say("testsheet.thirst.low"), say("testsheet.thirst.high"), "feeling.thirst", func(t *record.Test) *record.Number { return &t.Feeling.Thirst })
	stomach := rating("testsheet.stomach", say("testsheet.stomach.low"), say("testsheet.stomach.high"), "feeling.stomach", func(t *record.Test) *record.Number { return &t.Feeling.Stomach })
	note := b.Notes(PartAfter, "testsheet.note", 3, func(t *record.Test) *string { return &t.Note })
	return panel(say("testsheet.feeling"), "", newForm(
		look.NewEntry(say("testsheet.thirst"), look.MaxWidth(400, thirst)).Wide(),
		look.NewEntry(say("testsheet.stomach"), look.MaxWidth(400, stomach)).Wide(),
		look.NewEntry(say("testsheet.note"), note).Wide(),
	))
}

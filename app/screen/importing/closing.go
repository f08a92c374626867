package importing

import (
	"context"
	"errors"
	"fmt"

	"fyne.io/fyne/v2"

	"ebbwell/app/kit/desk"
	"ebbwell/app/kit/field"
	"ebbwell/app/kit/look"
	"ebbwell/internal/consult"
	"ebbwell/internal/record"
	"ebbwell/internal/tables"
)

// openAsked keeps a sheet open that the import asked about.
const openAsked consult.WhyOpen = "asked"

// closePart closes what an import brought, as far as nothing about it asks for a look.
type closePart struct {
	v    *View
	note *look.Paragraph
	do   *field.Button
	stop *field.Button
	body fyne.CanvasObject
}

// newClosePart builds the line below what was imported.
func newClosePart(v *View) *closePart {
	p := &closePart{v: v, note: look.NewParagraph(v.Say("import.close.note"), look.Body, look.Ink2)}
	p.do = v.button("import.close", "import.close", p.look)
	p.stop = v.button("import.close.stop", "import.stop", v.halt)
	v.at.SetText("")
	p.body = look.VBox(8, p.note, look.HBox(10, p.do, p.stop, v.at))
	look.ShowIf(p.stop, false)
	return p
}

// sheet is an imported sheet with what it is closed with.
type sheet struct {
	test    record.Test
	athlete record.Athlete
	texts   []record.RawText
}

// looked is what may be closed, and how many sheets stay open, by why.
type looked struct {
	ready []sheet
	stay  map[consult.WhyOpen]int
}

// whyOrder is the order in which it is said why sheets stay open.
func whyOrder() []consult.WhyOpen {
	return []consult.WhyOpen{consult.OpenFlag, consult.OpenRefused, consult.OpenMissing, consult.OpenOdd, openAsked}
}

// asked lists the sheets of a draft that the import asked about. That somebody is a
// minor is no question of the sheet.
func asked(d tables.Draft) map[record.ID]bool {
	rows := map[int]bool{}
	for _, q := range d.Questions {
		if q.Row >= 0 && q.Code != tables.QuestionMinor {
			rows[q.Row] = true
		}
	}
	list := map[record.ID]bool{}
	for _, r := range d.Rows {
		if r.Test != nil && rows[r.Row] {
			list[r.Test.ID] = true
		}
	}
	return list
}

// busy shows how far the work is, with the way to stop it.
func (p *closePart) busy(on bool) {
	look.ShowIf(p.stop, on)
	look.EnableIf(p.do, !on)
	if !on {
		p.v.at.SetText("")
	}
	p.body.Refresh()
}

// look goes through the sheets and asks before any is closed.
func (p *closePart) look() {
	v, with := p.v, p.v.desk.Calculate()
	var found looked
	p.busy(true)
	v.run(func(ctx context.Context) (err error) {
		found, err = v.lookThrough(ctx, with)
		return err
	}, func(err error) {
		p.busy(false)
		if err != nil {
			v.stopped(err)
			return
		}
		p.ask(found, with)
	})
}

// lookThrough finds out which of the imported sheets may be closed.
func (v *View) lookThrough(ctx context.Context, with consult.Setup) (looked, error) {
	l, people := looked{stay: map[consult.WhyOpen]int{}}, map[record.ID]record.Athlete{}
	tell := v.progress("import.close.looking")
	for i, id := range v.imported {
		tell(i, len(v.imported))
		if err := ctx.Err(); err != nil {
			return l, err
		}
		t, err := v.desk.Store.LoadTest(ctx, id)
		if err != nil {
			return l, fmt.Errorf("look at an imported sheet: %w", err)
		}
		if t.State != record.TestOpen {
			continue
		}
		a, ok := people[t.AthleteID]
		if !ok {
			if a, err = v.desk.Store.LoadAthlete(ctx, t.AthleteID); err != nil {
				return l, fmt.Errorf("look at an imported sheet: %w", err)
			}
			people[a.ID] = a
		}
		texts, err := v.desk.Store.RawOf(ctx, record.Ref{Kind: record.KindTest, ID: id})
		if err != nil {
			return l, fmt.Errorf("look at an imported sheet: %w", err)
		}
		why := consult.WhyLook(consult.Find(t, a, texts, with), a)
		if why == "" && v.asked[id] {
			why = openAsked
		}
		if why != "" {
			l.stay[why]++
			continue
		}
		l.ready = append(l.ready, sheet{t, a, texts})
	}
	return l, nil
}

// ask asks whether to close the sheets that are ready, and says how many stay open.
func (p *closePart) ask(l looked, with consult.Setup) {
	v := p.v
	list := look.VBox(4)
	for _, why := range whyOrder() {
		if n := l.stay[why]; n > 0 {
			list.Add(look.NewParagraph(v.Say("import.close.stays."+string(why), n), look.Body, look.Ink))
		}
	}
	actions := []field.Action{{Name: "no", Text: v.Say("field.ask.cancel")}}
	title, sentence := v.Say("import.close.nothing"), v.Say("import.close.nothing.sentence")
	if n := len(l.ready); n > 0 {
		title, sentence = v.Say("import.close.title", n), v.Say("import.close.sentence")
		actions = append(actions, field.Action{Name: "yes", Text: v.Say("import.close.yes"), Kind: field.Primary, Do: func() bool {
			p.close(l.ready, with)
			return false
		}})
	}
	v.desk.Host.Ask(v.canvas(), field.Question{Name: "import.close.ask", Title: title, Sentence: sentence, Content: list, Width: 560, Actions: actions})
}

// close closes sheets one by one, each whole; those behind one that fails, or behind a
// stop, stay open.
func (p *closePart) close(list []sheet, with consult.Setup) {
	v, done := p.v, 0
	p.busy(true)
	tell := v.progress("import.close.closing")
	v.run(func(ctx context.Context) error {
		for i, o := range list {
			tell(i, len(list))
			if err := ctx.Err(); err != nil {
				return err
			}
			if _, err := v.desk.CloseSheet(ctx, o.test, o.athlete, o.texts, with); err != nil {
				return err
			}
			done++
		}
		return nil
	}, func(err error) {
		p.busy(false)
		p.note.SetText(v.Say("import.close.done", done))
		v.desk.HeadChanged()
		if err != nil {
			v.stopped(err)
		}
	})
}

// stopped says why work on sheets ended early.
func (v *View) stopped(err error) {
	if errors.Is(err, context.Canceled) {
		v.desk.Say(v.Say("import.close.stopped"), "", nil)
		return
	}
	v.desk.Say(desk.Sentence(v.Words, err), "", nil)
}

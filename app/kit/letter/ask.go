package letter

import (
	"context"
	"fmt"

	"fyne.io/fyne/v2"

	"ebbwell/app/kit/copying"
	"ebbwell/app/kit/desk"
	"ebbwell/app/kit/field"
	"ebbwell/app/kit/look"
	"ebbwell/app/kit/saveto"
	"ebbwell/internal/consult"
	"ebbwell/internal/record"
)

// Source is what a screen shows a letter of.
type Source struct {
	// Name is how tests and drivers find the dialog: Name.copy, Name.save.
	Name string
	// File is the name a kept letter is offered, without its ending, in the window's
	// language.
	File string
	// Athlete is whom it is of; what it was written from is Kind and Record.
	Athlete record.ID
	Kind    record.Kind
	Record  record.ID
	// Of is the letter in the language of a desk.
	Of func(ctx context.Context, d *desk.Desk) (Letter, error)
}

// Ask shows a letter in the language of the practice's pages, to be copied or kept.
func Ask(d *desk.Desk, on fyne.Canvas, s Source) {
	other, err := d.In(d.PageLanguage())
	if err != nil {
		d.Trouble(err)
		return
	}
	l, err := s.Of(context.Background(), other)
	if err != nil {
		d.Trouble(err)
		return
	}
	say, text := d.Words.Say, l.Text()
	var dialog *field.Dialog
	dialog = d.Host.Ask(on, field.Question{
		Name: s.Name, Title: say("letter.ask"), Sentence: say("letter.ask.sentence"), Content: shown(l), Width: 680,
		Actions: []field.Action{
			{Name: "no", Text: say("letter.close")},
			{Name: "save", Text: say("letter.save"), Kind: field.Outline, Do: func() bool {
				dialog.Close() // what is asked next stands in its place
				save(d, on, s, s.print(text, other.Words.Language().String()))
				return true
			}},
			{Name: "copy", Text: say("letter.copy"), Kind: field.Primary, Do: func() bool {
				copying.Text(d, text, say("letter.copied", s.File))
				return false
			}},
		},
	})
}

// shown is the letter as it is read before it leaves.
func shown(l Letter) fyne.CanvasObject {
	box := look.VBox(4, look.NewParagraph(l.Title, look.Strong, look.Ink))
	for _, p := range l.Parts {
		box.Add(look.Pad(6, 0, 0, 0, look.NewLabel(p.Title, look.Note, look.Ink2)))
		for _, line := range p.Lines {
			box.Add(look.NewParagraph(line, look.Body, look.Ink))
		}
	}
	return box
}

// print is the letter as it is kept among the pages of the athlete.
func (s Source) print(text, language string) record.Print {
	return record.Print{AthleteID: s.Athlete, Kind: s.Kind, Record: s.Record, Page: record.PageLetter, Language: language, Bytes: []byte(text)}
}

// save asks where the letter is to be kept, and keeps it there and with the records.
func save(d *desk.Desk, on fyne.Canvas, s Source, p record.Print) {
	say := d.Words.Say
	saveto.Ask(d, on, saveto.Request{
		Name: s.Name + ".ask", Title: say("letter.save"), Sentence: say("letter.save.sentence"), Yes: say("letter.save.yes"),
		File: saveto.FileName(s.File, p.Ending()),
		Write: func(ctx context.Context, path string) error {
			if _, err := d.Store.HandOut(ctx, p, path); err != nil {
				return fmt.Errorf("write and keep a letter: %w", err)
			}
			return nil
		},
		Done: func(path string) {
			d.Say(say("letter.saved", path), say("saveto.open"), func() { saveto.Show(d, path) })
		},
	})
}

// InputOf is what a letter of an athlete is written of, on a desk in the language of
// the pages: a test, which may be nil, and the plan the athlete takes along. A plan that
// cannot be opened is named as one.
func InputOf(ctx context.Context, d *desk.Desk, a record.Athlete, test *consult.Findings) (Input, error) {
	in := Input{Speaker: d.SpeakerFor(a), Practice: d.Practice(), Athlete: a, Test: test, At: d.Now()}
	plans, err := d.Store.Plans(ctx, a.ID)
	if err != nil {
		return in, err
	}
	p := consult.ToTakeAlong(plans)
	if p == nil {
		return in, nil
	}
	tests, err := d.AllFindings(ctx, a)
	if err != nil {
		return in, err
	}
	c, err := d.OpenPlan(ctx, *p, a, tests)
	if err != nil {
		in.Lost = true
		return in, nil //nolint:nilerr // the letter says it, and the planner why
	}
	in.Plan = &c
	return in, nil
}

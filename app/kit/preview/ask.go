package preview

import (
	"context"
	"fmt"
	"sync/atomic"

	"fyne.io/fyne/v2"

	"ebbwell/app/kit/desk"
	"ebbwell/app/kit/field"
	"ebbwell/app/kit/look"
	"ebbwell/app/kit/picture"
	"ebbwell/app/kit/saveto"
	"ebbwell/internal/handout/paper"
	"ebbwell/internal/record"
)

// Sizes of the dialog.
const (
	// dialogWidth is its width in px at 100 % text.
	dialogWidth float32 = 860
	// mostSides is how many sides are drawn: of a squad's sheets there may be a hundred.
	mostSides = 6
)

// Printable are pages that are shown as they will print before they are kept.
type Printable struct {
	// Lay lays the pages out; it runs beside the window, anew at each [Shown.Again]. ticked
	// says that what Tick offers is asked for.
	Lay func(ctx context.Context, ticked bool) (paper.Document, error)
	// Tick is a box to tick for another form of the pages; without a name there is none.
	Tick Tick
	// About are the athletes that the pages show something of.
	About []record.ID
	// Keep keeps the pages at a path; nil to write them as a PDF and no more.
	Keep func(ctx context.Context, path string, doc paper.Document) error
	// Picture keeps the pages as pictures where it is told; nil where each side of what is
	// laid out becomes a file.
	Picture func(ctx context.Context, path string) error
	// Pictured is told that they were kept; nil for a sentence that names the file.
	Pictured func(path string)
	// Printer hands a file to the system's printing; nil for [saveto.Print].
	Printer func(ctx context.Context, path string) error
}

// Tick is a box to tick: the end of its name, its words, and how it stands at first.
type Tick struct {
	Name, Text string
	On         bool
}

// Shown is the dialog with its pages.
type Shown struct {
	desk    *desk.Desk
	request saveto.Request
	of      Printable
	drawing *Drawing
	dialog  *field.Dialog
	more    *look.Paragraph
	trouble *look.Caution
	// ticked is set where the window runs, and read beside it.
	ticked atomic.Bool
}

// Ask asks where pages are to be kept, and shows them below as they will print. They can
// be printed, and saved as pictures, from there too. A request without Write writes what
// is laid out.
func Ask(d *desk.Desk, on fyne.Canvas, r saveto.Request, of Printable) *Shown {
	s := &Shown{desk: d, of: of, more: look.NewParagraph("", look.Note, look.Ink2), trouble: look.NewCaution("", "", nil)}
	if s.of.Printer == nil {
		s.of.Printer = saveto.Print
	}
	if r.Write == nil {
		r.Write = s.keep
	}
	if of.Tick.Name != "" {
		r.Extra = s.tick(r.Name)
	}
	s.request, s.drawing = r, NewDrawing(d, s.job)
	r.Below, r.Width, r.OnClosed, r.Help = look.VBox(10, s.trouble, s.drawing.Pages, s.more), dialogWidth, s.drawing.Stop, string(desk.HelpPaper)
	r.Actions = []field.Action{{Name: "print", Text: d.Words.Say("saveto.print"), Do: s.print}}
	r.Others = []saveto.Other{{Name: "picture", Text: d.Words.Say("picture.title"), Ending: ".png", Write: s.draws, Done: s.drawn}}
	s.dialog = saveto.Ask(d, on, r)
	return s
}

// tick is the box to tick.
func (s *Shown) tick(name string) *field.Check {
	t := s.of.Tick
	box := field.NewCheck(s.desk.Host, name+"."+t.Name, t.Text)
	box.Set(t.On)
	s.ticked.Store(t.On)
	box.OnChanged = func(on bool) {
		s.ticked.Store(on)
		s.Again()
	}
	return box
}

// lay lays the pages out as they are asked for.
func (s *Shown) lay(ctx context.Context) (paper.Document, error) {
	return s.of.Lay(ctx, s.ticked.Load())
}

// keep keeps the pages at a path.
func (s *Shown) keep(ctx context.Context, path string) error {
	doc, err := s.lay(ctx)
	if err != nil {
		return err
	}
	if s.of.Keep != nil {
		return s.of.Keep(ctx, path, doc)
	}
	pdf, err := doc.PDF(s.desk.Now())
	if err != nil {
		return fmt.Errorf("write pages: %w", err)
	}
	return s.desk.Store.WriteFile(ctx, path, pdf, s.of.About...)
}

// Again draws the pages anew, after something else was asked for.
func (s *Shown) Again() { s.drawing.Want() }

// job lays out what is shown.
func (s *Shown) job() Job {
	sides := 0
	return Job{
		Lay: func(ctx context.Context) (paper.Document, error) {
			doc, err := s.lay(ctx)
			sides = len(doc.Pages)
			doc.Pages = doc.Pages[:min(sides, mostSides)]
			return doc, err
		},
		Done: func(err error) {
			w := s.desk.Words
			s.more.SetText("")
			if sides > mostSides {
				s.more.SetText(w.Say("saveto.sides", mostSides, sides))
			}
			s.trouble.SetText("", "")
			if err != nil {
				s.trouble.SetText(w.Say("handoutview.failed"), desk.Sentence(w, err))
			}
		},
	}
}

// print prints the pages through the system.
func (s *Shown) print() (stay bool) {
	r := s.request
	saveto.Send(s.desk, saveto.Sending{File: r.File, Write: r.Write, Printer: s.of.Printer, Done: s.dialog.Close, Failed: s.trouble.SetText})
	return true
}

// draws keeps the pages as pictures.
func (s *Shown) draws(ctx context.Context, path string) error {
	if s.of.Picture != nil {
		return s.of.Picture(ctx, path)
	}
	doc, err := s.lay(ctx)
	if err != nil {
		return err
	}
	_, err = picture.WritePages(ctx, s.desk, path, doc, s.of.About)
	return err
}

// drawn says where the pictures are.
func (s *Shown) drawn(path string) {
	if s.of.Pictured != nil {
		s.of.Pictured(path)
		return
	}
	d := s.desk
	d.Say(d.Words.Say("picture.saved", path), d.Words.Say("saveto.open"), func() { saveto.Show(d, path) })
}

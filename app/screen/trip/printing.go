package trip

import (
	"context"
	"errors"
	"strings"

	"fyne.io/fyne/v2"

	"ebbwell/app/kit/field"
	"ebbwell/app/kit/look"
	"ebbwell/app/kit/saveto"
	"ebbwell/internal/handout"
	"ebbwell/internal/handout/paper"
	"ebbwell/internal/record"
	"ebbwell/internal/words"
)

// pageTrip is a trip's page, as prints are kept under.
const pageTrip = "trip-page"

// sheetOut is one page to be printed; the athlete is empty for the list of
// everybody together.
type sheetOut struct {
	trip, athlete record.ID
	// about are the athletes it shows something of.
	about []record.ID
	name  string
	page  handout.TripPage
	words *words.Words
}

// printDialog asks for whom, and where to, pages are to be printed.
type printDialog struct {
	v       *View
	whose   *field.Choice
	form    *field.Toggle
	folder  *field.Line
	trouble *look.Paragraph
	dialog  *field.Dialog
	busy    bool
	stop    func()
}

// Print asks for whom, and where to, the pages are to be printed.
func (v *View) Print() {
	m := v.shown()
	if m == nil || len(v.now().Stops) == 0 || !v.b.FlushNow() {
		return
	}
	crew := v.crew()
	p := &printDialog{v: v, folder: field.NewLine(v.desk.Host, "trip.print.folder", 1000), trouble: look.NewParagraph("", look.Note, look.Ink), stop: func() {}}
	pages, err := v.pages(everybody)
	if err != nil {
		v.desk.Trouble(err)
		return
	}
	var letters []string
	size := v.desk.Paper()
	v.desk.Beside.Run(func(ctx context.Context) (err error) {
		letters, err = lettersOf(ctx, size, pages)
		return err
	}, func(err error) {
		if err != nil {
			v.desk.Trouble(err)
			return
		}
		p.ask(crew, m, letters)
	})
}

// lettersOf lists the letters of pages that cannot be printed.
func lettersOf(ctx context.Context, size paper.Size, pages []sheetOut) ([]string, error) {
	_, letters, err := eachLaid(ctx, size, pages, func(sheetOut, paper.Document) ([]string, error) { return nil, nil })
	return letters, err
}

// ask asks for whom and where to, once it is known which letters cannot be printed.
func (p *printDialog) ask(crew []*member, m *member, letters []string) {
	v, say := p.v, p.v.desk.Words.Say
	p.folder.SetText(saveto.Folder())
	options := []field.Option{{Key: string(m.athlete.ID), Text: say("trip.print.one", m.athlete.Name)}}
	if len(crew) > 1 {
		options = append(options, field.Option{Key: everybody, Text: say("trip.print.all", len(crew))})
	}
	p.whose = field.NewChoice(v.desk.Host, "trip.print.whose", options)
	p.whose.Choose(options[len(options)-1].Key)
	p.form = field.NewToggle(v.desk.Host, "trip.print.form", []field.Option{{Key: formPDF, Text: say("trip.print.pdf")}, {Key: formPicture, Text: say("trip.print.png")}})
	p.form.Choose(formPDF)
	content := look.VBox(8)
	if len(letters) > 0 {
		content.Add(saveto.LettersCaution(v.desk.Words, letters))
	}
	for _, o := range []fyne.CanvasObject{row(say("trip.print.whose"), 400, p.whose), row(say("trip.print.form"), 400, p.form), row(say("trip.print.folder"), 400, p.folder), p.trouble} {
		content.Add(o)
	}
	p.dialog = v.desk.Host.Ask(v.canvas(), field.Question{
		Name: "trip.print", Title: say("trip.print.title"), Sentence: say("trip.print.sentence"), Width: 560, OnClosed: func() { p.stop() },
		Content: content,
		Actions: []field.Action{{Name: "no", Text: say("field.ask.cancel")}, {Name: "yes", Text: say("trip.print.yes"), Kind: field.Primary, Do: p.write}},
	})
}

// whose are the travellers.
func (v *View) whose() []record.ID {
	var list []record.ID
	for _, m := range v.crew() {
		list = append(list, m.athlete.ID)
	}
	return list
}

// write lays the pages out and writes them beside the window; closing the
// dialog stops it after the page being printed.
func (p *printDialog) write() (stay bool) {
	if p.busy {
		return true
	}
	v, say := p.v, p.v.desk.Words.Say
	folder, size := strings.TrimSpace(p.folder.Text()), v.desk.Paper()
	pages, err := v.pages(p.whose.Chosen())
	if err != nil {
		p.trouble.SetText(say("trip.print.failed", saveto.Reason(v.desk.Words, err)))
		return true
	}
	put, pictures := v.printTo, p.form.Chosen() == formPicture
	if pictures {
		put = v.drawTo
	}
	p.busy = true
	p.trouble.SetText(say("trip.print.writing", len(pages)))
	var files, letters []string
	p.stop = v.desk.Beside.Run(func(ctx context.Context) (err error) {
		files, letters, err = put(ctx, folder, size, pages)
		return err
	}, func(err error) {
		p.busy, p.stop = false, func() {}
		switch {
		case errors.Is(err, context.Canceled):
			v.desk.Say(say("trip.print.stopped", len(files), folder), "", nil)
			return
		case err != nil:
			p.trouble.SetText(say("trip.print.failed", saveto.Reason(v.desk.Words, err)))
			return
		}
		saveto.Remember(folder)
		p.dialog.Close()
		done := say("trip.print.done.all", len(files), folder)
		switch {
		case len(files) == 1:
			done = say("trip.print.done", files[0])
		case pictures:
			done = say("trip.print.done.pictures", len(files), folder)
		}
		if len(letters) > 0 {
			done += " " + say("saveto.letters.title", v.desk.Words.Commas(letters))
		}
		v.desk.Say(done, "", nil)
	})
	return true
}

// pages are the pages of one traveller, or of each and the list of all: each in the
// language that is read.
func (v *View) pages(whose string) ([]sheetOut, error) {
	var list []sheetOut
	crew := v.crew()
	for _, m := range crew {
		if whose == everybody || whose == string(m.athlete.ID) {
			other, err := v.in(v.desk.ReadBy(m.athlete))
			if err != nil {
				return nil, err
			}
			list = append(list, sheetOut{v.now().ID, m.athlete.ID, []record.ID{m.athlete.ID}, v.pageName(m), other.pageOf(m), other.desk.Words})
		}
	}
	if whose == everybody && len(crew) > 1 {
		other, err := v.in(v.desk.PageLanguage())
		if err != nil {
			return nil, err
		}
		list = append(list, sheetOut{v.now().ID, "", v.whose(), v.pageName(nil), other.squadPage(), other.desk.Words})
	}
	return list, nil
}

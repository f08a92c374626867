package trip

import (
	"context"
	"slices"
	"sync/atomic"

	"ebbwell/app/kit/field"
	"ebbwell/app/kit/preview"
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

// printDialog asks for whom, and where to, pages are to be printed, over the pages as they
// will print.
type printDialog struct {
	v     *View
	whose *field.Choice
	size  paper.Size
	// chosen are the pages asked for: chosen where the window runs, laid out and written
	// beside it.
	chosen atomic.Pointer[[]sheetOut]
	// files are those written last; letters are those of their pages that cannot be printed.
	files, letters []string
}

// Print asks for whom, and where to, the pages are to be printed.
func (v *View) Print() {
	m := v.shown()
	if m == nil || len(v.now().Stops) == 0 || !v.b.FlushNow() {
		return
	}
	crew := v.crew()
	p := &printDialog{v: v, size: v.desk.Paper()}
	pages, err := v.pages(everybody)
	if err != nil {
		v.desk.Trouble(err)
		return
	}
	var letters []string
	v.desk.Beside.Run(func(ctx context.Context) (err error) {
		letters, err = lettersOf(ctx, p.size, pages)
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
	options := []field.Option{{Key: string(m.athlete.ID), Text: say("trip.print.one", m.athlete.Name)}}
	if len(crew) > 1 {
		options = append(options, field.Option{Key: everybody, Text: say("trip.print.all", len(crew))})
	}
	p.whose = field.NewChoice(v.desk.Host, "trip.print.whose", options)
	p.whose.Choose(options[len(options)-1].Key)
	if !p.choose() {
		return
	}
	shown := preview.Ask(v.desk, v.canvas(), saveto.Request{
		Name: "trip.print", Title: say("trip.print.title"), Sentence: say("trip.print.sentence"), Yes: say("trip.print.yes"),
		Letters: letters, Extra: row(say("trip.print.whose"), 400, p.whose), Busy: say("trip.print.writing"),
		Write: func(ctx context.Context, folder string) (err error) {
			p.files, p.letters, err = v.printTo(ctx, folder, p.size, *p.chosen.Load())
			return err
		},
		Done:    func(folder string) { v.desk.Say(p.done(folder, "trip.print.done.all"), "", nil) },
		Stopped: func(folder string) { v.desk.Say(say("trip.print.stopped", len(p.files), folder), "", nil) },
	}, preview.Printable{
		Lay: p.lay,
		Picture: func(ctx context.Context, folder string) (err error) {
			p.files, p.letters, err = v.drawTo(ctx, folder, p.size, *p.chosen.Load())
			return err
		},
		Pictured: func(folder string) { v.desk.Say(p.done(folder, "trip.print.done.pictures"), "", nil) },
	})
	p.whose.OnChosen = func(string) {
		if p.choose() {
			shown.Again()
		}
	}
}

// choose takes the pages of whom is chosen; false where they cannot be had, which is said.
func (p *printDialog) choose() bool {
	pages, err := p.v.pages(p.whose.Chosen())
	if err != nil {
		p.v.desk.Trouble(err)
		return false
	}
	p.chosen.Store(&pages)
	return true
}

// lay lays out what is chosen, one page after the other.
func (p *printDialog) lay(ctx context.Context, _ bool) (all paper.Document, err error) {
	_, _, err = eachLaid(ctx, p.size, *p.chosen.Load(), func(_ sheetOut, doc paper.Document) ([]string, error) {
		doc.Pages = slices.Concat(all.Pages, doc.Pages)
		all = doc
		return nil, nil
	})
	return all, err
}

// done says what was written where, and which letters of it are lacking.
func (p *printDialog) done(folder, several string) string {
	w := p.v.desk.Words
	said := w.Say(several, len(p.files), folder)
	if len(p.files) == 1 {
		said = w.Say("trip.print.done", p.files[0])
	}
	if len(p.letters) > 0 {
		said += " " + w.Say("saveto.letters.title", w.Commas(p.letters))
	}
	return said
}

// whose are the travellers.
func (v *View) whose() []record.ID {
	var list []record.ID
	for _, m := range v.crew() {
		list = append(list, m.athlete.ID)
	}
	return list
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

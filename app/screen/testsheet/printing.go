package testsheet

import (
	"context"
	"fmt"
	"image"
	"strings"
	"time"

	"golang.org/x/text/language"

	"ebbwell/app/kit/desk"
	"ebbwell/app/kit/picture"
	"ebbwell/app/kit/preview"
	"ebbwell/app/kit/saveto"
	"ebbwell/app/screen/testsheet/findings"
	"ebbwell/internal/care"
	"ebbwell/internal/consult"
	"ebbwell/internal/evidence"
	"ebbwell/internal/handout"
	"ebbwell/internal/handout/paper"
	"ebbwell/internal/quantity"
	"ebbwell/internal/record"
	"ebbwell/internal/store"
	"ebbwell/internal/words"
)

// The pages of a test, as prints are kept under.
const (
	pageBlank  = "blank-sheet"
	pageReport = "test-report"
)

// page is a page to be printed.
type page struct {
	kind string
	test record.ID
	size paper.Size
	// name of the file, without its ending.
	name string
	// words are the texts of the page.
	words *words.Words
	// layout lays the page out; ticked says that what is offered was asked for.
	layout func(p *handout.Press, ticked bool) paper.Document
	// tick is what is offered: the end of the key of its words.
	tick preview.Tick
}

// laid is the page laid out.
func (p page) laid(ticked bool) (paper.Document, error) {
	press, err := handout.NewPress(p.words, p.size)
	if err != nil {
		return paper.Document{}, err
	}
	return p.layout(press, ticked), nil
}

// printBlank prints a sheet to fill in by hand.
func (v *View) printBlank() {
	other, err := v.in(v.desk.PageLanguage())
	if err != nil {
		v.desk.Trouble(err)
		return
	}
	w := other.desk.Words
	b := handout.BlankSheet{
		Terms: other.terms(), Athlete: v.athlete.Name, Sport: desk.SportWord(w, v.athlete.Sport), Day: v.desk.Now(),
	}
	var test record.ID
	if v.b != nil {
		t := v.b.Doc.Now().Record
		test, b.Place, b.Day = t.ID, t.Session.Place, consult.TestDay(t)
		b.Sport = desk.SportWord(w, t.Session.Sport)
		if _, dated := t.Session.Date.Time(); !dated {
			b.Day = time.Time{}
		}
	}
	v.print(page{kind: pageBlank, test: test, name: v.desk.Words.Say("testsheet.file.blank", v.athlete.Name), words: w, tick: preview.Tick{Name: "short"},
		layout: func(p *handout.Press, short bool) paper.Document {
			asked := b
			asked.Short = short
			return p.BlankSheet(asked)
		}})
}

// printed is the report as it is given away, its texts, and the name of its file; false
// where it cannot be made, which is then said.
func (v *View) printed() (r handout.TestReport, w *words.Words, name string, ok bool) {
	if !v.b.FlushNow() {
		return r, nil, "", false
	}
	other, err := v.in(v.desk.PageLanguage())
	if err != nil {
		v.desk.Trouble(err)
		return r, nil, "", false
	}
	r = other.report()
	corrected, err := other.corrections(context.Background())
	if err != nil {
		v.desk.Trouble(err)
		return r, nil, "", false
	}
	r.Corrections = onPaper(corrected)
	return r, other.desk.Words, v.desk.Words.Say("testsheet.file.report", v.athlete.Name, string(v.b.Doc.Now().Record.Session.Date)), true
}

// saveReport asks where the report is to be kept as a picture.
func (v *View) saveReport() {
	r, w, name, ok := v.printed()
	if !ok {
		return
	}
	size := v.desk.Paper()
	picture.Save(v.desk, v.canvas(), picture.Request{
		Name: "testsheet.askpicture", File: name, About: []record.ID{v.athlete.ID},
		Pictures: func(context.Context) ([]image.Image, error) {
			press, err := handout.NewPress(w, size)
			if err != nil {
				return nil, err
			}
			return picture.OfPages(press.TestReport(r))
		},
	})
}

// printReport prints the findings.
func (v *View) printReport() {
	r, w, name, ok := v.printed()
	if !ok {
		return
	}
	t := v.b.Doc.Now().Record
	v.print(page{kind: pageReport, test: t.ID, name: name, words: w, tick: preview.Tick{Name: "appendix"}, layout: func(p *handout.Press, appendix bool) paper.Document {
		asked := r
		asked.Appendix = appendix
		return p.TestReport(asked)
	}})
}

// in is the sheet as it is worded in another language, for pages.
func (v *View) in(tag language.Tag) (*View, error) {
	d, err := v.desk.In(tag)
	if err != nil || d == v.desk {
		return v, err
	}
	other := *v
	other.desk, other.by = d, d.SpeakerFor(v.athlete).By // the figures too are written as that language does
	if v.b != nil {
		other.calculate() // with the foods by their names there
	}
	return &other, nil
}

// terms are what pages of this athlete share.
func (v *View) terms() handout.Terms {
	return handout.TermsOf(v.desk.Practice(), care.Of(v.athlete, v.desk.Now()), v.desk.Words)
}

// report puts the findings on paper: the same rows as on the screen.
func (v *View) report() handout.TestReport {
	in, t, f := v.input(), v.b.Doc.Now().Record, v.found
	r := handout.TestReport{
		Terms: v.terms(), Athlete: v.athlete.Name, Day: consult.TestDay(t), Session: findings.Session(v.speaker().Speaker, in),
		FilledInBy: t.CreatedBy, Evidence: evidence.Version, Bar: v.bar(f),
		Summary: findings.Summary(v.speaker().Speaker, in),
		Quality: handout.ReportQuality(f, v.desk.Words), Applied: handout.ReportApplied(f, v.by.Hidden, v.desk.Words),
		Guess: quantity.Litres(t.Loss.Guess.Or(0)),
	}
	r.Terms.MassHidden = v.by.Hidden
	r.Done, r.Calculation = handout.ReportDone(f, r.Terms, v.desk.Words), handout.ReportCalculation(f, v.by.Hidden, v.desk.Words)
	switch {
	case f.Kept == consult.KeptFigures:
		r.Evidence = f.Evidence
	case f.Kept == consult.KeptNothing, f.Kept == consult.KeptMethod, (f.Kept == consult.KeptInputs || f.Kept == consult.KeptHidden) && t.State == record.TestClosed:
		r.Terms.Cautions = append(r.Terms.Cautions, v.desk.Words.Say("testsheet.kept."+string(f.Kept)))
	}
	for _, c := range findings.Cautions(v.speaker().Speaker, in) {
		r.Terms.Cautions = append(r.Terms.Cautions, handout.Titled(c.Title, c.Sentence))
	}
	for _, row := range findings.Rows(v.speaker().Speaker, in) {
		row.Figure.Ranged = row.Figure.Ranged && !row.Reading // what was read off has no range on paper
		r.Findings = append(r.Findings, handout.Finding{
			Name: row.Name, Figure: row.Figure, Decimals: row.Decimals, Reading: row.Reading, Beside: row.Beside, Notes: row.Notes, Further: further(row.Key, v.by.Hidden),
		})
	}
	return r
}

// further reports whether a figure follows from others that are on the report.
func further(key string, hidden bool) bool {
	if strings.HasPrefix(key, "correction.") {
		return true // told under other losses
	}
	switch key {
	case "not-replaced", "sodium-lost", "sodium-in", "carbohydrate", "drunk":
		return true
	case "deficit":
		return !hidden // it is told in per cent there
	}
	return false
}

// bar is the session as the page draws it.
func (v *View) bar(f consult.Findings) handout.Bar {
	fluid := f.Sweat.Fluid
	if !fluid.Loss.Known || !fluid.Deficit.Known {
		return handout.Bar{}
	}
	b := handout.TestBar(f, v.by.Hidden, v.desk.Words)
	if _, ok := f.Test.Session.Date.Time(); !ok {
		b.Label = ""
	}
	return b
}

// print asks where a page is to be kept, over the page as it will print, and keeps it
// there and in the records.
func (v *View) print(p page) {
	d, athlete, say := v.desk, v.athlete.ID, v.desk.Words.Say
	p.size, p.tick.Text = d.Paper(), say("testsheet.print."+p.tick.Name)
	r := saveto.Request{
		Name: "testsheet.print", Title: say("testsheet.print." + p.kind), Sentence: say("testsheet.print"), Yes: say("testsheet.print.yes"),
		File: saveto.FileName(p.name, ".pdf"),
		Done: func(path string) {
			d.Say(say("testsheet.print.done", path), say("saveto.open"), func() { saveto.Show(d, path) })
		},
	}
	if doc, err := p.laid(p.tick.On); err == nil { // else it is said over the page
		r.Letters = doc.Lacks
	}
	preview.Ask(d, v.canvas(), r, preview.Printable{
		About: []record.ID{athlete}, Tick: p.tick, Lay: func(_ context.Context, ticked bool) (paper.Document, error) { return p.laid(ticked) },
		Keep: func(ctx context.Context, path string, doc paper.Document) error {
			return keepPage(ctx, d, athlete, p, doc, path)
		},
	})
}

// keepPage writes a page to a file and keeps it with the records of an athlete. It runs
// beside the window.
func keepPage(ctx context.Context, d *desk.Desk, athlete record.ID, p page, doc paper.Document, to string) error {
	pdf, err := doc.PDF(d.Now())
	if err != nil {
		return err
	}
	kept := record.Print{AthleteID: athlete, Kind: record.KindTest, Record: p.test, Page: p.kind, Language: p.words.Language().String(), Bytes: pdf}
	if _, err := d.Store.LoadTest(ctx, p.test); store.CodeOf(err) == store.CodeNotFound {
		kept.Kind, kept.Record = record.KindAthlete, athlete // a sheet nothing was entered in is not kept
	}
	if _, err := d.Store.HandOut(ctx, kept, to); err != nil {
		return fmt.Errorf("write and keep the page: %w", err)
	}
	return nil
}

package testsheet

import (
	"context"
	"errors"
	"fmt"
	"io/fs"
	"os"
	"path/filepath"
	"strings"
	"time"
	"unicode"

	"ebbwell/app/desk"
	"ebbwell/app/field"
	"ebbwell/app/look"
	"ebbwell/app/testsheet/findings"
	"ebbwell/internal/consult"
	"ebbwell/internal/evidence"
	"ebbwell/internal/handout"
	"ebbwell/internal/handout/paper"
	"ebbwell/internal/quantity"
	"ebbwell/internal/record"
	"ebbwell/internal/store"
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
	// name of the file, without its ending.
	name   string
	layout func(*handout.Press) paper.Document
}

// printBlank prints a sheet to fill in by hand.
func (v *View) printBlank() {
	w := v.desk.Words
	b := handout.BlankSheet{
		Terms: v.terms(), Athlete: v.athlete.Name, Sport: desk.SportWord(w, v.athlete.Sport), Day: v.desk.Now(),
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
	v.print(page{pageBlank, test, w.Say("testsheet.file.blank", v.athlete.Name), func(p *handout.Press) paper.Document { return p.BlankSheet(b) }})
}

// printReport prints the findings.
func (v *View) printReport() {
	if !v.b.FlushNow() {
		return
	}
	r, t := v.report(), v.b.Doc.Now().Record
	name := v.desk.Words.Say("testsheet.file.report", v.athlete.Name, string(t.Session.Date))
	v.print(page{pageReport, t.ID, name, func(p *handout.Press) paper.Document { return p.TestReport(r) }})
}

// terms are what pages of this athlete share.
func (v *View) terms() handout.Terms {
	return handout.TermsOf(v.desk.Practice(), consult.CareOf(v.athlete, v.desk.Now()), v.desk.Words)
}

// report puts the findings on paper: the same rows as on the screen.
func (v *View) report() handout.TestReport {
	in, t, f := v.input(), v.b.Doc.Now().Record, v.found
	r := handout.TestReport{
		Terms: v.terms(), Athlete: v.athlete.Name, Day: consult.TestDay(t), Session: findings.Session(v.desk.Words, v.by, in),
		FilledInBy: t.CreatedBy, Evidence: evidence.Version, Bar: v.bar(f),
	}
	r.Terms.MassHidden = v.by.Hidden
	for _, c := range findings.Cautions(v.desk.Words, v.by, in) {
		r.Terms.Cautions = append(r.Terms.Cautions, strings.TrimSpace(c.Title+" "+c.Sentence))
	}
	for _, row := range findings.Rows(v.desk.Words, v.by, in) {
		row.Figure.Ranged = row.Figure.Ranged && !row.Reading // what was read off has no range on paper
		r.Findings = append(r.Findings, handout.Finding{
			Name: row.Name, Figure: row.Figure, Decimals: row.Decimals, Reading: row.Reading, Beside: row.Beside, Notes: row.Notes,
		})
	}
	return r
}

// bar is the session as the page draws it.
func (v *View) bar(f consult.Findings) handout.Bar {
	fluid := f.Sweat.Fluid
	if !fluid.Loss.Known || !fluid.Deficit.Known {
		return handout.Bar{}
	}
	b := handout.Bar{
		Loss: quantity.Litres(fluid.Loss.Value), LossRange: fluid.Loss.Range, Ranged: fluid.Loss.Ranged,
		Deficit: handout.Deficit{
			Percent: quantity.Percent(fluid.DeficitShare.Value), PercentKnown: fluid.DeficitShare.Known, Litres: quantity.Litres(fluid.Deficit.Value),
			PercentRange: fluid.DeficitShare.Range, LitresRange: fluid.Deficit.Range, Ranged: fluid.Deficit.Ranged && fluid.DeficitShare.Ranged,
		},
	}
	if day, ok := f.Test.Session.Date.Time(); ok {
		b.Label = v.desk.Words.Day(day)
	}
	for _, p := range f.Intake.Bottles {
		if !p.Known || p.Millilitres == 0 {
			continue
		}
		part := handout.Part{Substance: handout.Drink, Name: p.Product.Name, Litres: quantity.Litres(p.Millilitres / 1000)}
		if record.ID(p.Product.ID) == consult.Water {
			part.Substance = handout.Water
		}
		b.Parts = append(b.Parts, part)
	}
	return b
}

// print asks where a page is to be kept, and keeps it there and in the records.
func (v *View) print(p page) {
	say := v.desk.Words.Say
	path := field.NewLine(v.desk.Host, "testsheet.print.path", 1000)
	path.SetText(freePath(documents(), fileName(p.name)))
	trouble := look.NewParagraph("", look.Note, look.Ink)
	asked := ""
	save := func() (stay bool) {
		to := strings.TrimSpace(path.Text())
		if _, err := os.Stat(to); err == nil && asked != to {
			asked = to
			trouble.SetText(say("testsheet.print.replaces"))
			return true
		}
		if err := v.write(p, to); err != nil {
			trouble.SetText(say("testsheet.print.failed", reason(err)))
			return true
		}
		v.desk.Say(say("testsheet.print.done", to), "", nil)
		return false
	}
	v.desk.Host.Ask(v.canvas(), field.Question{
		Name: "testsheet.print", Title: say("testsheet.print." + p.kind), Sentence: say("testsheet.print"), Content: look.VBox(6, path, trouble), Width: 560,
		Actions: []field.Action{{Name: "no", Text: say("field.ask.cancel")}, {Name: "yes", Text: say("testsheet.print.yes"), Kind: field.Primary, Do: save}},
	})
}

// write makes the page, writes it to a file and keeps it with the records.
func (v *View) write(p page, to string) error {
	press, err := handout.NewPress(v.desk.Words, paper.A4())
	if err != nil {
		return err
	}
	pdf, err := p.layout(press).PDF(v.desk.Now())
	if err != nil {
		return err
	}
	if err := os.WriteFile(to, pdf, 0o600); err != nil {
		return fmt.Errorf("write the page: %w", err)
	}
	if _, err := v.desk.Store.LoadTest(context.Background(), p.test); store.CodeOf(err) == store.CodeNotFound {
		p.test = "" // a sheet nothing was entered in is not kept
	}
	kept := record.Print{AthleteID: v.athlete.ID, Kind: record.KindTest, Record: p.test, Page: p.kind, Language: v.desk.Words.Language().String(), Bytes: pdf}
	if p.test == "" {
		kept.Kind, kept.Record = record.KindAthlete, v.athlete.ID
	}
	if _, err := v.desk.Store.SavePrint(context.Background(), kept); err != nil {
		return err
	}
	return nil
}

// documents is the user's folder for documents, their home where it has none.
func documents() string {
	home, err := os.UserHomeDir()
	if err != nil {
		return "."
	}
	if dir := filepath.Join(home, "Documents"); isDir(dir) {
		return dir
	}
	return home
}

func isDir(path string) bool {
	info, err := os.Stat(path)
	return err == nil && info.IsDir()
}

// fileName makes a name that every file system takes.
func fileName(name string) string {
	clean := strings.Map(func(r rune) rune {
		if unicode.IsLetter(r) || unicode.IsDigit(r) || strings.ContainsRune(" -_.,", r) {
			return r
		}
		return -1
	}, name)
	return shorten(strings.Trim(strings.Join(strings.Fields(clean), " "), ". "), 80) + ".pdf"
}

// freePath is a path in a folder at which there is no file yet.
func freePath(dir, name string) string {
	path := filepath.Join(dir, name)
	for n := 2; n < 1000; n++ {
		if _, err := os.Stat(path); errors.Is(err, fs.ErrNotExist) {
			return path
		}
		path = filepath.Join(dir, fmt.Sprintf("%s %d.pdf", strings.TrimSuffix(name, ".pdf"), n))
	}
	return path
}

// reason is why a file could not be written, without the path said twice.
func reason(err error) string {
	var at *fs.PathError
	if errors.As(err, &at) {
		return at.Err.Error()
	}
	return err.Error()
}

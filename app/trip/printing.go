package trip

import (
	"context"
	"errors"
	"fmt"
	"io/fs"
	"os"
	"path/filepath"
	"strconv"
	"strings"
	"unicode"

	"ebbwell/app/field"
	"ebbwell/app/look"
	"ebbwell/internal/handout"
	"ebbwell/internal/handout/paper"
	"ebbwell/internal/record"
)

// pageTrip is a trip's page, as prints are kept under.
const pageTrip = "trip-page"

// sheetOut is one page to be printed; the athlete is empty for the list of
// everybody together.
type sheetOut struct {
	athlete record.ID
	name    string
	page    handout.TripPage
}

// Print asks for whom, and where to, the pages are to be printed.
func (v *View) Print() {
	m := v.shown()
	if m == nil || len(v.now().Stops) == 0 || !v.b.FlushNow() {
		return
	}
	say := v.desk.Words.Say
	crew := v.crew()
	folder := field.NewLine(v.desk.Host, "trip.print.folder", 1000)
	folder.SetText(documents())
	trouble := look.NewParagraph("", look.Note, look.Ink)
	options := []field.Option{{Key: string(m.athlete.ID), Text: say("trip.print.one", m.athlete.Name)}}
	if len(crew) > 1 {
		options = append(options, field.Option{Key: everybody, Text: say("trip.print.all", len(crew))})
	}
	whose := field.NewChoice(v.desk.Host, "trip.print.whose", options)
	whose.Choose(options[len(options)-1].Key)
	print := func() (stay bool) {
		files, err := v.printTo(folder.Text(), v.pages(whose.Chosen()))
		if err != nil {
			trouble.SetText(say("trip.print.failed", reason(err)))
			return true
		}
		if len(files) == 1 {
			v.desk.Say(say("trip.print.done", files[0]), "", nil)
			return false
		}
		v.desk.Say(say("trip.print.done.all", len(files), folder.Text()), "", nil)
		return false
	}
	v.desk.Host.Ask(v.canvas(), field.Question{
		Name: "trip.print", Title: say("trip.print.title"), Sentence: say("trip.print.sentence"), Width: 560,
		Content: look.VBox(8, row(say("trip.print.whose"), 400, whose), row(say("trip.print.folder"), 400, folder), trouble),
		Actions: []field.Action{{Name: "no", Text: say("field.ask.cancel")}, {Name: "yes", Text: say("trip.print.yes"), Kind: field.Primary, Do: print}},
	})
}

// pages are the pages of one traveller, or of each and the list of all.
func (v *View) pages(whose string) []sheetOut {
	var list []sheetOut
	crew := v.crew()
	for _, m := range crew {
		if whose == everybody || whose == string(m.athlete.ID) {
			list = append(list, sheetOut{m.athlete.ID, v.pageName(m), v.pageOf(m)})
		}
	}
	if whose == everybody && len(crew) > 1 {
		list = append(list, sheetOut{"", v.pageName(nil), v.squadPage()})
	}
	return list
}

// printTo writes pages into a folder, a file each, and keeps those of athletes
// with the records. It returns the files. No file that is there is written over.
func (v *View) printTo(folder string, pages []sheetOut) ([]string, error) {
	press, err := handout.NewPress(v.desk.Words, paper.A4())
	if err != nil {
		return nil, err
	}
	var files []string
	for _, p := range pages {
		pdf, err := press.TripPage(p.page).PDF(v.desk.Now())
		if err != nil {
			return files, err
		}
		path := freePath(strings.TrimSpace(folder), fileName(p.name))
		if err := os.WriteFile(path, pdf, 0o600); err != nil {
			return files, fmt.Errorf("write the page: %w", err)
		}
		files = append(files, path)
		if p.athlete == "" {
			continue // prints are kept with an athlete
		}
		ref := v.tripRef()
		if _, err := v.desk.Store.SavePrint(context.Background(), record.Print{
			AthleteID: p.athlete, Kind: ref.Kind, Record: ref.ID, Page: pageTrip, Language: v.desk.Words.Language().String(), Bytes: pdf,
		}); err != nil {
			return files, err
		}
	}
	return files, nil
}

// documents is the user's folder for documents, their home where it has none.
func documents() string {
	home, err := os.UserHomeDir()
	if err != nil {
		return "."
	}
	if info, err := os.Stat(filepath.Join(home, "Documents")); err == nil && info.IsDir() {
		return filepath.Join(home, "Documents")
	}
	return home
}

// fileName makes a name that every file system takes.
func fileName(name string) string {
	clean := strings.Map(func(r rune) rune {
		if unicode.IsLetter(r) || unicode.IsDigit(r) || strings.ContainsRune(" -_.,", r) {
			return r
		}
		return -1
	}, name)
	runes := []rune(strings.Trim(strings.Join(strings.Fields(clean), " "), ". "))
	return string(runes[:min(len(runes), 80)]) + ".pdf"
}

// freePath is a path in a folder at which there is no file yet.
func freePath(folder, name string) string {
	path := filepath.Join(folder, name)
	for n := 2; n < 1000; n++ {
		if _, err := os.Stat(path); errors.Is(err, fs.ErrNotExist) {
			return path
		}
		path = filepath.Join(folder, strings.TrimSuffix(name, ".pdf")+" "+strconv.Itoa(n)+".pdf")
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

package importing

import (
	"context"
	"time"

	"fyne.io/fyne/v2"

	"ebbwell/app/kit/desk"
	"ebbwell/app/kit/field"
	"ebbwell/app/kit/look"
	"ebbwell/app/kit/saveto"
	"ebbwell/internal/record"
	"ebbwell/internal/store"
)

// endings are those of files that can be imported.
func endings() []string { return []string{".csv", ".tsv", ".txt", ".xlsx", ".xlsm", ".json", ".zip"} }

// showChoose shows the page that chooses a file, with the imports there were.
func (v *View) showChoose() {
	v.s.phase = choosing
	v.trouble.SetText("", "")
	ask := field.NewButton(v.desk.Host, "import.ask", v.Say("import.ask"), field.Primary, v.ask)
	note := func(key string) fyne.CanvasObject { return look.NewParagraph(v.Say(key), look.Body, look.Ink2) }
	page := look.VBox(14, look.NewSheet(look.VBox(12, look.NewLabel(v.Say("import.choose"), look.Strong, look.Ink), note("import.choose.note"),
		look.HBox(0, ask), v.trouble, look.NewRule(), look.NewLabel(v.Say("import.expected"), look.Strong, look.Ink),
		note("import.expected.tests"), note("import.expected.athletes"), note("import.expected.laboratory"), note("import.expected.own"))))
	if past := v.past(); past != nil {
		page.Add(past)
	}
	v.show(look.InMargin(look.PageScroll(look.MaxWidth(760, page))))
}

// ask asks which file to read.
func (v *View) ask() {
	var s state
	last := ""
	saveto.AskFile(v.desk, v.canvas(), saveto.Source{
		Name: "import.file", Title: v.Say("import.ask"), Sentence: v.Say("import.choose.note"), Endings: endings(),
		Read: func(ctx context.Context, path string) (err error) {
			last = path
			s, err = v.read(ctx, path)
			return err
		},
		Wrong: func(err error) (title, sentence string) { return v.refusal(last, err) },
		Done:  func(string) { v.take(s) },
	})
}

// past lists the imports there were; nil for none.
func (v *View) past() fyne.CanvasObject {
	list, err := v.desk.Store.Imports(context.Background())
	if err != nil {
		v.desk.Trouble(err)
	}
	if len(list) == 0 {
		return nil
	}
	table := look.NewTable("import.past", []look.Column{
		{Title: v.Say("import.past.when"), Width: look.Fixed(92)}, {Title: v.Say("import.past.file"), Width: look.Share(3)},
		{Width: look.Fixed(84)},
	}).Scrolling()
	var rows [][]look.Cell
	for _, im := range list {
		state := ""
		if im.UndoneAt != nil {
			state = v.Say("import.past.undone")
		}
		rows = append(rows, []look.Cell{{Text: v.Words.ShortDate(v.local(im.At), v.desk.Now())}, {Text: im.File}, {Text: state, Tone: look.Ink2}})
	}
	table.SetRows(rows)
	table.OnOpened = func(row int) {
		if row >= 0 && row < len(list) {
			v.desk.Go(desk.Place{Screen: desk.Import, Record: list[row].ID})
		}
	}
	return look.NewSheet(look.VBox(8, look.NewLabel(v.Say("import.past"), look.Strong, look.Ink),
		look.NewParagraph(v.Say("import.past.note"), look.Note, look.Ink2), look.MinSized(0, 110, table)))
}

// local is a moment on the wall's clock.
func (v *View) local(at time.Time) time.Time { return at.In(v.desk.Now().Location()) }

// added says what an import added.
func (v *View) added(im record.Import) string {
	plans, trips := store.PlansAndTrips(im)
	return v.counted(im.Tests, im.Athletes, im.Results, plans, trips)
}

// counted is how much there is of each sort, as a list.
func (v *View) counted(tests, athletes, results, plans, trips int) string {
	var parts []string
	for _, part := range []struct {
		n   int
		key string
	}{
		{tests, "import.count.tests"}, {athletes, "import.count.athletes"}, {results, "import.count.results"},
		{plans, "import.count.plans"}, {trips, "import.count.trips"},
	} {
		if part.n > 0 {
			parts = append(parts, v.Say(part.key, part.n))
		}
	}
	if len(parts) == 0 {
		return v.Say("import.count.nothing")
	}
	return v.Words.List(parts)
}

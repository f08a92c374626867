// Package shots draws every screen on the invented practice with the software
// painter, for people who work on the program to look at.
package shots

import (
	"context"
	"fmt"
	"image/png"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"time"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/test"
	"golang.org/x/text/language"

	"ebbwell/app"
	"ebbwell/app/kit/desk"
	"ebbwell/app/kit/field"
	"ebbwell/app/kit/look"
	"ebbwell/internal/record"
	"ebbwell/internal/store"
	"ebbwell/internal/words"
)

// Now is the day the pictures are drawn on.
func Now() time.Time { return time.Date(2026, 5, 18, 12, 41, 0, 0, time.UTC) }

// shot is one picture to draw.
type shot struct {
	name  string
	place desk.Place
	// refused: what is saved is refused.
	refused bool
	// outside makes a page that stands in the window while there is no practice, in
	// place of a screen; nil for a screen.
	outside func(*field.Host) fyne.CanvasObject
}

// withHelp begins the names of screens that are shown with their page of help.
const withHelp = "help-"

// open shows the screen in the window as wide as it is now, without a message of the one
// before; away takes away what stands in the place of a screen.
func (s shot) open(p *app.Program, w fyne.Window) (away func()) {
	if s.outside != nil {
		screen := w.Content()
		w.SetContent(s.outside(field.NewHost(p.Desk().Words)))
		return func() { w.SetContent(screen) }
	}
	if said, ok := field.Find(w.Content(), "frame.strip.close").(*field.Button); ok {
		said.Press()
	}
	p.Open(s.place)
	if s.refused {
		p.Desk().Trouble(&store.Error{Code: store.CodeNoSpace, Doing: "save a plan"})
	}
	s.toggleHelp(p)
	return func() {}
}

// never is a clock that does not go on: what is drawn stays as it is.
func never(time.Duration, func()) (stop func()) { return func() {} }

// toggleHelp opens the page of help where the screen is shown with it, or closes it.
func (s shot) toggleHelp(p *app.Program) {
	if strings.HasPrefix(s.name, withHelp) {
		p.Help()
	}
}

// Which chooses what is drawn.
type Which struct {
	// Only are beginnings of names of screens; none means all.
	Only []string
	// Sizes are windows, in px.
	Sizes []fyne.Size
	// Dark are the themes: false is light.
	Dark []bool
	// Language is the tag of a language, complete or not, or [Long].
	Language string
	// Percent are the sizes of text, in per cent.
	Percent []int
}

// Everything is every screen, light and dark, in a small and a large window.
func Everything() Which {
	return Which{
		Sizes: []fyne.Size{{Width: 1180, Height: 760}, {Width: 1600, Height: 1000}},
		Dark:  []bool{false, true}, Percent: []int{100}, Language: language.English.String(),
	}
}

// draws reports whether a screen is to be drawn.
func (w Which) draws(name string) bool {
	begins := func(with string) bool { return strings.HasPrefix(name, with) }
	return len(w.Only) == 0 || slices.ContainsFunc(w.Only, begins)
}

// Draw writes pictures of screens into a folder. say is told each file.
func Draw(dir string, which Which, say func(file string)) error {
	if err := os.MkdirAll(dir, 0o755); err != nil {
		return fmt.Errorf("draw pictures: %w", err)
	}
	texts, err := which.texts()
	if err != nil {
		return fmt.Errorf("draw pictures: %w", err)
	}
	for _, size := range which.Sizes {
		if err := drawAll(dir, texts, size, which, say); err != nil {
			return err
		}
	}
	return nil
}

// Long is English with longer words; see [words.Longer].
const Long = "long"

// texts are those of the language.
func (w Which) texts() (*words.Words, error) {
	if w.Language == Long {
		return words.Longer()
	}
	tag, err := language.Parse(w.Language)
	if err != nil {
		return nil, fmt.Errorf("read the language %q: %w", w.Language, err)
	}
	return words.New(tag)
}

// drawAll draws the screens in one size of the window.
func drawAll(dir string, texts *words.Words, size fyne.Size, which Which, say func(string)) error {
	a := test.NewApp()
	defer a.Quit()
	w := test.NewWindow(nil)
	defer w.Close()
	w.SetPadded(false)
	w.Resize(size)
	shell := app.NewShell(a, w, texts, app.Options{Demo: true, Now: Now, Beside: desk.Inline{}, After: never})
	shell.Start()
	defer func() { _ = shell.Close() }()
	program := shell.Program()
	if program == nil {
		return fmt.Errorf("draw pictures: the invented practice did not open")
	}
	list, err := places(program.Desk())
	if err != nil {
		return fmt.Errorf("draw pictures: %w", err)
	}
	list, folder := slices.DeleteFunc(list, func(s shot) bool { return !which.draws(s.name) }), program.Desk().Store.Dir()
	for _, dark := range which.Dark {
		for _, percent := range which.Percent {
			a.Settings().SetTheme(look.NewTheme(dark, percent))
			for _, s := range list {
				away := s.open(program, w)
				if s.outside == nil && program.Place().Screen != s.place.Screen {
					return fmt.Errorf("draw pictures: %s did not open", s.name)
				}
				closed, err := openDialog(w, s.name, folder)
				if err != nil {
					return err
				}
				layOutAgain(w)
				file := filepath.Join(dir, fileName(s.name, size, dark, percent))
				if err := save(file, w); err != nil {
					return err
				}
				closed()
				away()
				say(file)
				s.toggleHelp(program)
			}
		}
	}
	return nil
}

// fileName names a picture; the size of text is named where it is not 100 %.
func fileName(screen string, size fyne.Size, dark bool, percent int) string {
	mode := "light"
	if dark {
		mode = "dark"
	}
	text := ""
	if percent != 100 {
		text = fmt.Sprintf("-%d", percent)
	}
	return fmt.Sprintf("%s-%s-%gx%g%s.png", screen, mode, size.Width, size.Height, text)
}

// layOutAgain lays the window out until heights that depend on widths agree.
func layOutAgain(w fyne.Window) {
	for range 3 {
		w.Content().Refresh()
		if top := w.Canvas().Overlays().Top(); top != nil {
			top.Refresh()
		}
	}
}

// save writes what the window shows.
func save(file string, w fyne.Window) error {
	f, err := os.Create(file)
	if err != nil {
		return fmt.Errorf("draw %s: %w", file, err)
	}
	if err := png.Encode(f, w.Canvas().Capture()); err != nil {
		_ = f.Close()
		return fmt.Errorf("draw %s: %w", file, err)
	}
	return f.Close()
}

// places are the screens to draw.
func places(d *desk.Desk) ([]shot, error) {
	ctx, s := context.Background(), d.Store
	list, err := s.Athletes(ctx)
	if err != nil {
		return nil, err
	}
	by := map[string]record.ID{}
	for _, a := range list {
		by[a.Name] = a.ID
	}
	trips, err := s.Trips(ctx)
	if err != nil || len(trips) == 0 {
		return nil, fmt.Errorf("find the trip of the invented practice: %w", err)
	}
	lead, hidden, gained, open := by["Ravka Oldenmoor"], by["Mirel Ashgarth"], by["Ilse Tarnholme"], by["Kester Undermill"]
	draft := by["Sefa Quillonde"]
	squad, err := squadOf(ctx, s, gained, by["Odo Brackwater"], hidden, draft, open)
	if err != nil {
		return nil, err
	}
	defer d.ProductsChanged()
	states, err := statesOf(ctx, s, by["Dorian Wexcombe"], draft)
	if err != nil {
		return nil, err
	}
	away, err := awayOf(ctx, s, trips[0], []record.ID{lead, hidden, gained, open, draft, by["Nessa Quarrow"], by["Ottoline Marsk"]})
	if err == nil {
		err = sentBack(ctx, s, by["Jorun Tallowby"])
	}
	if err != nil {
		return nil, err
	}
	states = append(append(states, away...), outside()...)
	return withImports(ctx, s, append(plainPlaces(trips[0], squad, lead, hidden, gained, open, draft), states...))
}

// plainPlaces are the screens of the invented practice as they open.
func plainPlaces(t record.Trip, squad, lead, hidden, gained, open, draft record.ID) []shot {
	part := func(p desk.Place, part string) desk.Place { p.Part = part; return p }
	trip, sheet := desk.Place{Screen: desk.Trip, Record: t.ID}, desk.Place{Screen: desk.Tests, Athlete: open}
	practice, plan := desk.Place{Screen: desk.Practice}, desk.Place{Screen: desk.Plan, Athlete: draft}
	return []shot{
		{name: "athletes", place: desk.Place{Screen: desk.Athletes}}, {name: "test-day", place: desk.Place{Screen: desk.TestDay}},
		{name: "squad-start", place: desk.Place{Screen: desk.TestDay, New: true}}, {name: "squad", place: desk.Place{Screen: desk.TestDay, Record: squad}},
		{name: "squad-group", place: desk.Place{Screen: desk.TestDay, Record: squad, Part: desk.PartGroup}},
		{name: "trips", place: desk.Place{Screen: desk.Trips}},
		{name: "trip", place: part(trip, string(t.Stops[0].ID))}, {name: "trip-open", place: desk.Place{Screen: desk.Trip, Record: t.ID, Athlete: lead, Part: string(t.Stops[1].ID)}},
		{name: "trip-edit", place: part(trip, "edit")}, {name: "trip-packing", place: part(trip, "packing")},
		{name: "pantry", place: desk.Place{Screen: desk.Pantry}},
		{name: "practice", place: practice}, {name: "practice-standards", place: part(practice, "standards")}, {name: "practice-thresholds", place: part(practice, "thresholds")},
		{name: "practice-records", place: part(practice, "records")}, {name: "practice-redflags", place: part(practice, "redflags")}, {name: "practice-about", place: part(practice, "about")},
		{name: "overview", place: desk.Place{Screen: desk.Overview, Athlete: lead}},
		{name: "overview-hidden", place: desk.Place{Screen: desk.Overview, Athlete: hidden}},
		{name: "overview-gained", place: desk.Place{Screen: desk.Overview, Athlete: gained}}, {name: "overview-due", place: desk.Place{Screen: desk.Overview, Athlete: open}},
		{name: "overview-draft", place: desk.Place{Screen: desk.Overview, Athlete: draft}},
		{name: "profile", place: desk.Place{Screen: desk.Profile, Athlete: gained}},
		{name: "give", place: desk.Place{Screen: desk.Give, Athlete: hidden}}, {name: "give-group", place: desk.Place{Screen: desk.Give}},
		{name: "give-colleague", place: desk.Place{Screen: desk.Give, Athlete: hidden, Part: desk.PartColleague}}, {name: "colleague", place: desk.Place{Screen: desk.Colleague}}, {name: "colleague-comes", place: desk.Place{Screen: desk.Colleague}},
		{name: "profile-new", place: desk.Place{Screen: desk.Profile, New: true}},
		{name: "sheet-before", place: part(sheet, "before")}, {name: "sheet-bottles", place: part(sheet, "bottles")},
		{name: "sheet-device", place: part(sheet, "before")},
		{name: "sheet-after", place: part(sheet, "after")}, {name: "sheet-urine", place: part(sheet, "urine")},
		{name: "findings", place: desk.Place{Screen: desk.Tests, Athlete: lead, Part: "findings"}},
		{name: "findings-hidden", place: desk.Place{Screen: desk.Tests, Athlete: hidden, Part: "findings"}},
		{name: "findings-letter", place: desk.Place{Screen: desk.Tests, Athlete: lead, Part: "findings"}}, {name: "findings-letter-hidden", place: desk.Place{Screen: desk.Tests, Athlete: hidden, Part: "findings"}},
		{name: "findings-paper", place: desk.Place{Screen: desk.Tests, Athlete: lead, Part: "findings"}}, {name: "trip-paper", place: trip},
		{name: "squad-paper", place: desk.Place{Screen: desk.TestDay, Record: squad, Part: desk.PartGroup}},
		{name: "plan-agreed", place: desk.Place{Screen: desk.Plan, Athlete: lead}},
		{name: "plan-draft", place: plan}, {name: "plan-steps", place: part(plan, "steps")}, {name: "plan-breaks", place: part(plan, "breaks")},
		{name: "plan-day", place: part(plan, "day")}, {name: "plan-session", place: part(plan, "session")}, {name: "plan-beside", place: part(plan, "beside")},
		{name: "plan-hidden", place: desk.Place{Screen: desk.Plan, Athlete: hidden}},
		{name: "plan-none", place: desk.Place{Screen: desk.Plan, Athlete: gained}},
		{name: "handout", place: desk.Place{Screen: desk.Handout, Athlete: lead}},
		{name: "handout-hidden", place: desk.Place{Screen: desk.Handout, Athlete: hidden}},
		{name: withHelp + "athletes", place: desk.Place{Screen: desk.Athletes}}, {name: withHelp + "plan-draft", place: plan}, {name: withHelp + "sheet-before", place: part(sheet, "before")},
	}
}

package testday

import (
	"context"
	"fmt"
	"strconv"
	"strings"

	"fyne.io/fyne/v2"

	"ebbwell/app/kit/desk"
	"ebbwell/app/kit/field"
	"ebbwell/app/kit/look"
	"ebbwell/internal/consult"
	"ebbwell/internal/record"
)

// View is a day in the field.
type View struct {
	desk  *desk.Desk
	state State
	start *startPart
	print *printPart
	group *field.Button
	body  fyne.CanvasObject
}

var (
	_ desk.View    = (*View)(nil)
	_ desk.Printer = (*View)(nil)
)

// Room around and between the sheets, in px.
const (
	sheetGap float32 = 14
	topPad   float32 = 16
	footPad  float32 = 20
)

// New loads what is unfinished.
func New(d *desk.Desk) (*View, error) {
	state, err := load(d)
	if err != nil {
		return nil, fmt.Errorf("open the test day: %w", err)
	}
	v := &View{desk: d, state: state}
	if len(state.People) == 0 {
		v.body = v.nobody()
		return v, nil
	}
	v.start, v.print = newStartPart(v), newPrintPart(v)
	v.group = field.NewButton(d.Host, "testday.group.begin", d.Words.Say("testday.group.begin"), field.Outline, func() {
		d.Go(desk.Place{Screen: desk.TestDay, New: true})
	})
	right := look.VBox(sheetGap, v.start.body, look.Grow(v.print.body))
	v.body = look.Pad(topPad, 0, footPad, 0, &fyne.Container{Layout: sideBySide{}, Objects: []fyne.CanvasObject{v.sheets(), right}})
	return v, nil
}

// leftShare is the share of the width of what is unfinished.
const leftShare float32 = 0.63

// sideBySide sets two objects side by side over the whole height, on whole px.
type sideBySide struct{}

func (sideBySide) Layout(o []fyne.CanvasObject, size fyne.Size) {
	left := float32(int((size.Width - sheetGap) * leftShare))
	o[0].Resize(fyne.NewSize(left, size.Height))
	o[0].Move(fyne.NewPos(0, 0))
	o[1].Resize(fyne.NewSize(max(0, size.Width-left-sheetGap), size.Height))
	o[1].Move(fyne.NewPos(left+sheetGap, 0))
}

func (sideBySide) MinSize([]fyne.CanvasObject) fyne.Size { return fyne.NewSize(640, 300) }

// load reads the athletes and works the newest unfinished sheets out.
func load(d *desk.Desk) (State, error) {
	ctx := context.Background()
	people, err := d.Store.People(ctx)
	if err != nil {
		return State{}, err
	}
	open, err := d.Store.Unfinished(ctx)
	if err != nil {
		return State{}, err
	}
	return more(d, NewState(people, open))
}

// more works the sheets out that are to be shown next.
func more(d *desk.Desk, s State) (State, error) {
	sheets, err := d.Store.Sheets(context.Background(), s.Next())
	if err != nil {
		return s, err
	}
	found, gained := make([]consult.Findings, len(sheets)), map[record.ID]record.Athlete{}
	for i, one := range sheets {
		found[i] = consult.Find(one.Test, record.Athlete{}, one.Raw, d.Calculate())
		if _, ok := consult.GainOf(found[i], record.Athlete{}, consult.TestDay(one.Test)); !ok {
			continue
		}
		// few gain: only theirs is the profile that is looked into
		a, err := d.Store.LoadAthlete(context.Background(), one.Test.AthleteID)
		if err != nil {
			return s, err
		}
		gained[a.ID] = a
	}
	return s.With(found, gained), nil
}

// nobody is what a person sees who has no athlete yet.
func (v *View) nobody() fyne.CanvasObject {
	say := v.desk.Words.Say
	add := field.NewButton(v.desk.Host, "testday.first", say("testday.first"), field.Primary, func() {
		v.desk.Go(desk.Place{Screen: desk.Profile, New: true})
	})
	return look.Pad(topPad, 0, footPad, 0, look.VBox(0, look.MaxWidth(720, look.NewSheet(look.Empty(say("testday.nobody"), add)))))
}

// openWidth is the column of the buttons, in px at 100 % text.
const openWidth float32 = 116

// sheets lists what is unfinished.
func (v *View) sheets() fyne.CanvasObject {
	say := v.desk.Words.Say
	title := look.NewLabel(say("testday.sheets"), look.Strong, look.Ink)
	if len(v.state.Sheets) == 0 {
		return look.NewSheet(look.VBox(8, title, look.NewParagraph(say("testday.none"), look.Body, look.Ink2)))
	}
	columns := []look.Column{{Title: say("testday.athlete"), Width: look.Share(10)}, {Title: say("testday.lacks"), Width: look.Share(13)}, {Width: look.Fixed(openWidth)}}
	rows := look.VBox(0)
	from := 0
	add := func() {
		for i, s := range v.state.Sheets[from:] {
			rows.Add(v.row(from+i, s, columns))
		}
		from = len(v.state.Sheets)
	}
	add()
	list := look.VBox(0, rows)
	if v.state.More() > 0 {
		list.Add(look.Pad(8, 0, 8, 0, v.moreSheets(add, list)))
	}
	return look.NewSheet(look.VBox(2, title, look.HeaderRow(16, columns), look.Grow(look.NewScroll(list))))
}

// moreSheets is the button that shows more of what is unfinished.
func (v *View) moreSheets(add func(), list *fyne.Container) fyne.CanvasObject {
	say := func() string {
		return v.desk.Words.Say("testday.showmore", min(AtOnce, v.state.More()), v.state.More())
	}
	var button *field.Button
	button = field.NewButton(v.desk.Host, "testday.showmore", say(), field.Outline, func() {
		state, err := more(v.desk, v.state)
		if err != nil {
			v.desk.Trouble(err)
			return
		}
		v.state = state
		add()
		button.SetText(say())
		if v.state.More() == 0 {
			button.Hide()
		}
		list.Refresh()
		v.body.Refresh()
	})
	return look.HBox(0, button)
}

// row is one unfinished sheet with the way to it.
func (v *View) row(i int, s Sheet, columns []look.Column) fyne.CanvasObject {
	who := look.VBox(2, look.NewParagraph(s.Name, look.Strong, look.Ink), look.NewParagraph(v.session(s), look.Note, look.Ink2))
	open := field.NewButton(v.desk.Host, "testday.sheet."+strconv.Itoa(i+1)+".open", v.desk.Words.Say("testday.open"), field.Outline, func() {
		v.desk.Go(desk.Place{Screen: desk.Tests, Athlete: s.Athlete, Record: s.ID})
	})
	open.SetSpoken(v.desk.Words.Say("testday.open.spoken", s.Name, v.session(s)))
	return look.FieldRow(16, columns, who, v.stand(s), look.HBox(0, look.Stretch(), open))
}

// stand is what a sheet lacks; a gain in mass stands before it as a red flag.
func (v *View) stand(s Sheet) fyne.CanvasObject {
	lacks := look.NewParagraph(v.lacks(s), look.Note, look.Ink)
	if !s.Gained {
		return lacks
	}
	title, sentence := desk.GainWords(v.desk.Words, v.desk.Speaker(s.Hidden).By, v.desk.Practice(), s.Gain)
	return look.VBox(4, look.NewCaution(title, sentence, nil), lacks)
}

// session says when and where a sheet was begun.
func (v *View) session(s Sheet) string {
	w := v.desk.Words
	parts := []string{w.Say("testday.undated")}
	if day, ok := s.Session.Date.Time(); ok {
		parts[0] = w.Day(day)
		if day.Year() != v.desk.Now().Year() {
			parts[0] = w.Date(day)
		}
	}
	switch {
	case s.Session.Place != "":
		parts = append(parts, s.Session.Place)
	case s.Session.Sport != "":
		parts = append(parts, desk.SportWord(w, s.Session.Sport))
	}
	return w.Commas(parts)
}

// mostLacks is how many things a line says that a sheet misses.
const mostLacks = 3

// lacks says what a sheet still misses.
func (v *View) lacks(s Sheet) string {
	w := v.desk.Words
	if s.Ready {
		return w.Say("testday.ready")
	}
	if len(s.Lacks) == 0 {
		return w.Say("testday.look")
	}
	var list []string
	for _, m := range s.Lacks[:min(len(s.Lacks), mostLacks)] {
		list = append(list, desk.MissingSentence(v.desk.Speaker(s.Hidden), m))
	}
	if more := len(s.Lacks) - mostLacks; more > 0 {
		list = append(list, w.Say("testday.more", more))
	}
	return strings.Join(list, " ")
}

// Head is the title, and the way to a session of a group.
func (v *View) Head() desk.Head {
	h := desk.Head{Title: v.desk.Words.Say("frame.test-day"), Under: v.desk.Words.Date(v.desk.Now())}
	if v.group != nil {
		h.Actions = []fyne.CanvasObject{v.group}
	}
	return h
}

// Body is the day.
func (v *View) Body() fyne.CanvasObject { return v.body }

// Leave has nothing to save.
func (v *View) Leave() {}

// Print prints the blank sheets that are marked.
func (v *View) Print() {
	if v.print != nil {
		v.print.ask()
	}
}

// canvas is the canvas the day stands on.
func (v *View) canvas() fyne.Canvas { return fyne.CurrentApp().Driver().CanvasForObject(v.body) }

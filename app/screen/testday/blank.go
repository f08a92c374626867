package testday

import (
	"context"
	"fmt"
	"slices"
	"strconv"

	"fyne.io/fyne/v2"

	"ebbwell/app/kit/desk"
	"ebbwell/app/kit/field"
	"ebbwell/app/kit/look"
	"ebbwell/app/kit/preview"
	"ebbwell/app/kit/saveto"
	"ebbwell/internal/care"
	"ebbwell/internal/handout"
	"ebbwell/internal/handout/paper"
	"ebbwell/internal/record"
	"ebbwell/internal/store"
)

// everybody is the key of the choice that shows all athletes.
const everybody = "everybody"

// printPart prints blank sheets for several athletes into one file.
type printPart struct {
	v        *View
	group    *field.Choice
	list     *fyne.Container
	scroll   *look.Scroll
	all      *field.Link
	more     *field.Link
	nameless *field.Check
	print    *field.Button
	rows     []*fyne.Container
	body     fyne.CanvasObject
}

func newPrintPart(v *View) *printPart {
	say, h := v.desk.Words.Say, v.desk.Host
	p := &printPart{v: v, list: look.VBox(0)}
	options := []field.Option{{Key: everybody, Text: say("testday.everybody")}}
	for i, g := range v.state.Groups() {
		options = append(options, field.Option{Key: strconv.Itoa(i), Text: g})
	}
	p.group = field.NewChoice(h, "testday.group", options)
	p.group.Choose(everybody)
	p.group.OnChosen = p.choose
	p.all = field.NewLink(h, "testday.all", "", p.markAll)
	p.nameless = field.NewCheck(h, "testday.nameless", say("testday.nameless"))
	p.nameless.OnChanged = func(on bool) {
		v.state.Nameless = on
		p.follow()
	}
	p.print = field.NewButton(h, "testday.print", "", field.Outline, p.ask)
	p.more = field.NewLink(h, "testday.blank.more", "", func() {
		v.state.Shown += AtOnce
		p.add()
	})
	p.scroll = look.NewScroll(look.Pad(0, 0, 0, ringRoom, look.VBox(0, p.list, look.HBox(0, p.more))))
	p.rows = []*fyne.Container{look.Columns(10, []look.Track{look.Share(1), look.Fit()}, p.group, p.all), look.HBox(0, p.print)}
	p.body = look.NewSheet(look.VBox(8,
		look.NewLabel(say("testday.blank"), look.Strong, look.Ink),
		look.NewParagraph(say("testday.blank.note"), look.Note, look.Ink2),
		p.rows[0], look.Grow(look.Pad(0, 0, 0, -ringRoom, p.scroll)), p.nameless, p.rows[1]))
	p.fill()
	return p
}

// choose shows the athletes of a group.
func (p *printPart) choose(key string) {
	group := ""
	if i, err := strconv.Atoi(key); err == nil && i < len(p.v.state.Groups()) {
		group = p.v.state.Groups()[i]
	}
	p.v.state = p.v.state.InGroup(group)
	p.fill()
}

// ringRoom is the room for the focus border left of the ticks, in px.
const ringRoom float32 = 4

// mostRunes is how much of a name a tick shows.
const mostRunes = 40

// fill lists the athletes shown, each to be marked.
func (p *printPart) fill() {
	p.list.Objects = nil
	p.add()
	p.scroll.ScrollTo(0)
	p.follow()
}

// add lists those that are shown and not listed yet.
func (p *printPart) add() {
	listed := p.v.state.Listed()
	for i := len(p.list.Objects); i < min(len(listed), p.v.state.Shown); i++ {
		p.list.Add(p.tick(i, listed[i]))
	}
	p.more.Hide()
	if left := len(listed) - len(p.list.Objects); left > 0 {
		p.more.SetText(p.v.desk.Words.Say("testday.showmore", min(AtOnce, left), left))
		p.more.Show()
	}
	p.list.Refresh()
	p.scroll.Refresh()
}

// tick is the mark of one athlete.
func (p *printPart) tick(i int, a store.Person) *field.Check {
	name := []rune(a.Name)
	if len(name) > mostRunes {
		name = append(name[:mostRunes-1:mostRunes-1], '…')
	}
	tick := field.NewCheck(p.v.desk.Host, "testday.blank."+strconv.Itoa(i+1), string(name))
	tick.Set(p.v.state.IsMarked(a.ID))
	tick.OnChanged = func(on bool) {
		p.v.state = p.v.state.Mark(a.ID, on)
		p.follow()
	}
	return tick
}

// markAll marks everybody shown, or nobody where all were.
func (p *printPart) markAll() {
	p.v.state = p.v.state.MarkListed(!p.allMarked())
	p.fill()
}

// allMarked reports whether everybody shown is marked.
func (p *printPart) allMarked() bool {
	for _, a := range p.v.state.Listed() {
		if !p.v.state.IsMarked(a.ID) {
			return false
		}
	}
	return true
}

// follow says how many sheets there would be.
func (p *printPart) follow() {
	say, n := p.v.desk.Words.Say, p.v.state.Pages()
	p.print.SetText(say("testday.print", n))
	set(p.print, n > 0)
	p.all.SetText(say("testday.mark"))
	if p.allMarked() {
		p.all.SetText(say("testday.unmark"))
	}
	for _, row := range p.rows {
		row.Refresh()
	}
}

// ask asks where the sheets are to be kept.
func (p *printPart) ask() {
	sheets, err := p.sheets()
	if err != nil {
		p.v.desk.Trouble(err)
		return
	}
	if len(sheets) == 0 {
		p.v.desk.Say(p.v.desk.Words.Say("testday.nobodymarked"), "", nil)
		return
	}
	p.lay(sheets)
}

// lay lays the sheets out beside the window, since there may be many, and then asks where
// they go, over the sheets as they will print: it is said first which letters of them
// cannot be printed.
func (p *printPart) lay(sheets []handout.BlankSheet) {
	d, say := p.v.desk, p.v.desk.Words.Say
	var about []record.ID
	for _, a := range p.v.state.Marked() {
		about = append(about, a.ID)
	}
	short := preview.Tick{Name: "short", Text: say("handoutview.short")}
	var letters []string
	d.Beside.Run(func(context.Context) error {
		file, err := p.document(sheets, short.On)
		letters = file.Lacks
		return err
	}, func(err error) {
		if err != nil {
			d.Trouble(err)
			return
		}
		preview.Ask(d, p.v.canvas(), saveto.Request{
			Name: "testday.file", Title: say("testday.file", len(sheets)), Sentence: say("testday.file.sentence"), Yes: say("testday.file.yes"),
			File: saveto.FileName(say("testday.file.name", string(d.Today())), ".pdf"), Letters: letters,
			Done: func(path string) {
				d.Say(say("testday.file.done", path), say("saveto.open"), func() { saveto.Show(d, path) })
			},
		}, preview.Printable{About: about, Tick: short, Lay: func(_ context.Context, ticked bool) (paper.Document, error) {
			return p.document(sheets, ticked)
		}})
	})
}

// sheets are the blank sheets of the marked athletes, by name, with one without
// a name at the end where it was asked for.
func (p *printPart) sheets() ([]handout.BlankSheet, error) {
	d, err := p.v.desk.In(p.v.desk.PageLanguage())
	if err != nil {
		return nil, fmt.Errorf("print blank sheets: %w", err)
	}
	var list []handout.BlankSheet
	for _, line := range p.v.state.Marked() {
		a, err := d.Store.LoadAthlete(context.Background(), line.ID)
		if err != nil {
			return nil, fmt.Errorf("print blank sheets: %w", err)
		}
		list = append(list, handout.BlankSheet{
			Terms:   handout.TermsOf(d.Practice(), care.Of(a, d.Now()), d.Words),
			Athlete: a.Name, Sport: desk.SportWord(d.Words, a.Sport), Day: d.Now(),
		})
	}
	if p.v.state.Nameless {
		list = append(list, handout.BlankSheet{Terms: handout.TermsOf(d.Practice(), care.Care{}, d.Words)})
	}
	return list, nil
}

// document lays the sheets out, one after the other, in one file; short ones are one side.
func (p *printPart) document(sheets []handout.BlankSheet, short bool) (paper.Document, error) {
	d, err := p.v.desk.In(p.v.desk.PageLanguage())
	if err != nil {
		return paper.Document{}, err
	}
	press, err := handout.NewPress(d.Words, d.Paper())
	if err != nil {
		return paper.Document{}, fmt.Errorf("print blank sheets: %w", err)
	}
	list := slices.Clone(sheets)
	for i := range list {
		list[i].Short = short
	}
	return press.BlankSheets(list), nil
}

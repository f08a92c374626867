package roster

import (
	"context"
	"fmt"
	"strconv"
	"time"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"

	"ebbwell/app/kit/desk"
	"ebbwell/app/kit/field"
	"ebbwell/app/kit/look"
	"ebbwell/internal/care"
	"ebbwell/internal/consult"
	"ebbwell/internal/quantity"
	"ebbwell/internal/record"
	"ebbwell/internal/store"
)

// View is the list of athletes.
type View struct {
	desk   *desk.Desk
	state  State
	rows   []int
	search *field.Line
	table  *look.Table
	count  *look.Label
	add    *field.Button
	give   *field.Button
	// imports leads to where a file is read; Practice does too.
	imports *field.Button
	body    fyne.CanvasObject
}

var _ desk.View = (*View)(nil)

// New loads the list.
func New(d *desk.Desk) (*View, error) {
	state, err := load(d)
	if err != nil {
		return nil, err
	}
	v := &View{desk: d, state: state}
	v.add = field.NewButton(d.Host, "roster.new", d.Words.Say("roster.new"), field.Primary, v.begin)
	v.give = field.NewButton(d.Host, "roster.give", d.Words.Say("give.go"), field.Outline, func() { d.Go(desk.Place{Screen: desk.Give}) })
	v.imports = field.NewButton(d.Host, "roster.import", d.Words.Say("roster.import"), field.Outline, v.toImport)
	if state.Empty() {
		v.body = v.empty()
		return v, nil
	}
	v.build()
	v.show()
	return v, nil
}

// load reads the athletes, and nothing yet of their tests and plans.
func load(d *desk.Desk) (State, error) {
	list, err := d.Store.People(context.Background())
	if err != nil {
		return State{}, fmt.Errorf("list the athletes: %w", err)
	}
	method, now := d.Practice().Settings.Method(), d.Now()
	return NewState(list, d.ByName(list), Ask{
		Key:   d.Words.OrderKey(),
		Flags: func(a store.Person) []record.FlagKind { return care.ByGravity(care.FlagsOf(known(a), now)) },
		Keeps: func(a store.Person, l record.FrozenLine) bool {
			return l.Method == method && !care.MassHidden(known(a), now) // else kept by another method, or perhaps while mass was seen
		},
		Word: func(sport string) string { return desk.SportWord(d.Words, sport) },
	}), nil
}

// read reads tests and plans of some rows, at most so many, all for most below 0.
func (v *View) read(rows []int, most int) {
	rows = v.state.ToRead(rows, most)
	ids := make([]record.ID, len(rows))
	for k, i := range rows {
		ids[k] = v.state.Row(i).ID
	}
	lines, err := v.desk.Store.Lines(context.Background(), ids)
	if err != nil {
		v.desk.Trouble(err)
	}
	v.state.ReadLines(rows, lines)
}

// known is what a line of the list knows of an athlete.
func known(a store.Person) record.Athlete {
	out := record.Athlete{Born: a.Born, MassHidden: a.MassHidden}
	for _, kind := range a.Flags {
		out.Flags = append(out.Flags, record.Flag{Kind: kind})
	}
	return out
}

// workOut works last tests out that were not kept for a list: those of some
// rows, at most so many.
func (v *View) workOut(rows []int, most int) {
	ids := v.state.ToWorkOut(rows, most)
	if len(ids) == 0 {
		return
	}
	sheets, err := v.desk.Store.Sheets(context.Background(), ids)
	if err != nil {
		v.desk.Trouble(err)
		return
	}
	found := make([]consult.Findings, len(sheets))
	for i, s := range sheets {
		found[i] = consult.FindAsClosed(s.Test, s.Athlete, s.Raw, s.Kept, v.desk.Calculate())
	}
	v.state.WorkedOut(found)
}

// build makes search and table.
func (v *View) build() {
	say := v.desk.Words.Say
	v.search = field.NewLine(v.desk.Host, "roster.search", 80)
	v.search.SetPlaceholder(say("roster.search"))
	v.search.OnChanged = func(text string) {
		v.state = v.state.Search(text)
		v.show()
	}
	v.search.OnEnter = func(string) {
		if len(v.rows) > 0 {
			v.open(max(0, v.table.Chosen()))
		}
	}
	v.count = look.NewLabel("", look.Note, look.Ink2)
	v.table = look.NewTable("roster.table", []look.Column{
		{Title: say("roster.name"), Width: look.Share(13), Sorts: true},
		{Title: say("roster.sport"), Width: look.Share(12), Sorts: true, From: 920},
		{Title: say("roster.test"), Width: look.Fixed(142), Sorts: true},
		{Title: say("roster.rate"), Width: look.Fixed(82), Right: true, Sorts: true, From: 760},
		{Title: say("roster.step"), Width: look.Fixed(88), Sorts: true, From: 660},
		{Title: say("roster.review"), Width: look.Fixed(92), Sorts: true},
		{Title: say("roster.flags"), Width: look.Share(17), Sorts: true},
	}).Roomy().OneClick().Scrolling()
	v.table.OnOpened = v.open
	v.table.OnSort = func(column int, down bool) {
		v.state = v.state.Sort(Column(column), down)
		v.table.ShowSort(column, down)
		v.show()
	}
	v.table.ShowSort(int(ByName), false)
	top := look.Columns(16, []look.Track{look.Fixed(320), look.Share(1)}, v.search, v.count)
	v.body = container.New(stack{}, look.Pad(16, 0, 12, 0, top), look.Pad(0, 0, 20, 0, look.NewSheet(v.table)))
}

// empty is what a person sees who has no athlete yet.
func (v *View) empty() fyne.CanvasObject {
	first := field.NewButton(v.desk.Host, "roster.first", v.desk.Words.Say("roster.new"), field.Primary, v.begin)
	again := field.NewButton(v.desk.Host, "roster.first.import", v.desk.Words.Say("roster.import"), field.Outline, v.toImport)
	return look.Pad(16, 0, 20, 0, look.NewSheet(look.Empty(v.desk.Words.Say("roster.empty"), look.HBox(10, first, again))))
}

// aScreenful is how many rows are read, and tests worked out, at once for rows in
// sight.
const aScreenful = 40

// show fills the table from the state.
func (v *View) show() {
	w := v.desk.Words
	v.rows = v.state.Rows()
	if v.state.SortsByLines() {
		v.read(v.rows, -1)
		if v.state.SortsByTest() {
			v.workOut(v.rows, -1)
		}
		v.rows = v.state.Rows()
	}
	v.table.SetSource(len(v.rows), func(i int) []look.Cell {
		if !v.state.Row(v.rows[i]).Read {
			v.read(v.rows[i:], aScreenful)
		}
		if r := v.state.Row(v.rows[i]); r.Open || r.Unsaid && r.LastTest.ID != "" {
			v.workOut(v.rows[i:], aScreenful)
		}
		return v.cells(v.state.Row(v.rows[i]))
	})
	v.count.SetText(w.Say("roster.count", len(v.rows)))
}

// cells are the texts of one athlete.
func (v *View) cells(r Row) []look.Cell {
	w := v.desk.Words
	sport := look.Cell{Text: desk.SportWord(w, r.Sport), Tone: look.Ink2}
	if r.Position != "" {
		sport.Short = []string{sport.Text}
		sport.Text += ", " + r.Position
	}
	rate := look.Cell{Text: w.Say("roster.norate"), Tone: look.Ink3}
	if r.Known {
		rate = look.Cell{Text: w.Amount(r.Rate, quantity.LitrePerHour)}
		if !r.Ranged {
			rate.Tone = look.Ink3
		}
	}
	return []look.Cell{
		{Text: r.Name, Style: look.Strong, Person: true}, sport, v.testCell(r), rate, v.stepCell(r), v.reviewCell(r), v.alertCell(r),
	}
}

func (v *View) testCell(r Row) look.Cell {
	w := v.desk.Words
	day, ok := r.LastTest.Date.Time()
	switch {
	case r.LastTest.ID == "":
		return look.Cell{Text: w.Say("roster.notest"), Tone: look.Ink3}
	case !ok:
		return look.Cell{Text: w.Say("roster.undated")}
	case r.LastTest.State == record.TestWaiting:
		return look.Cell{Text: w.Say("roster.test.waiting", v.date(day)), Short: []string{w.Say("roster.test.waiting.short", v.date(day))}}
	case r.LastTest.State != record.TestClosed:
		return look.Cell{Text: w.Say("roster.test."+string(r.LastTest.State), v.date(day))}
	}
	return look.Cell{Text: v.date(day)}
}

// date writes a day in short, its year only where that is not this one.
func (v *View) date(t time.Time) string { return v.desk.Words.ShortDate(t, v.desk.Now()) }

func (v *View) stepCell(r Row) look.Cell {
	w := v.desk.Words
	switch {
	case r.Plan.ID == "":
		return look.Cell{Text: w.Say("roster.noplan"), Tone: look.Ink3}
	case r.Plan.Step == 0:
		return look.Cell{Text: w.Say("roster.agreed")}
	}
	return look.Cell{Text: w.Say("roster.stepof", w.Number(float64(r.Plan.Step), 0), w.Number(float64(r.Plan.Steps), 0))}
}

// reviewCell is the day of the review, in semibold once it is due.
func (v *View) reviewCell(r Row) look.Cell {
	day, ok := r.Plan.Review.Time()
	if !ok {
		return look.Cell{}
	}
	if r.Plan.Review <= v.desk.Today() {
		return look.Cell{Text: v.desk.Words.Say("roster.due", v.date(day)), Style: look.Strong, Short: []string{v.date(day)}}
	}
	return look.Cell{Text: v.date(day), Tone: look.Ink2}
}

// alertCell names the gravest thing to know and how many more there are; only how many
// where room is short. The order is that of the head: a gain, what is the matter today,
// a correction behind the plan, the conditions.
func (v *View) alertCell(r Row) look.Cell {
	w, n := v.desk.Words, r.Alerts()
	if n == 0 {
		return look.Cell{}
	}
	c := look.Cell{Short: []string{w.Say("alerts.count", n)}}
	switch {
	case r.Gained:
		c.Text, c.Style = w.Say("alert.gain"), look.Strong
		c.Short = []string{w.Say("alert.gain.short")}
	case r.Plan.Corrected && (len(r.Flags) == 0 || !care.EffectOf(r.Flags[0]).Today):
		c.Text = w.Say("alert.since")
	default:
		c.Text = w.Say("flag." + string(r.Flags[0]) + ".name")
	}
	if n > 1 {
		c.Text = w.Say("alerts.more", c.Text, n-1)
	}
	return c
}

// open opens the athlete in a row.
func (v *View) open(row int) {
	if row >= 0 && row < len(v.rows) {
		v.desk.Go(desk.Place{Screen: desk.Overview, Athlete: v.state.Row(v.rows[row]).ID})
	}
}

// begin begins a new athlete.
func (v *View) begin() { v.desk.Go(desk.Place{Screen: desk.Profile, New: true}) }

// toImport goes to where a file of tests is read.
func (v *View) toImport() { v.desk.Go(desk.Place{Screen: desk.Import}) }

// Head is the title and the way to a new athlete.
func (v *View) Head() desk.Head {
	h := desk.Head{Title: v.desk.Words.Say("frame.athletes"), Actions: []fyne.CanvasObject{v.add}}
	if !v.state.Empty() {
		h.Spare = []fyne.CanvasObject{v.give, v.imports}
	}
	return h
}

// Body is the list.
func (v *View) Body() fyne.CanvasObject { return v.body }

// Leave has nothing to save.
func (v *View) Leave() {}

// stack sets the first object at the top and gives the second the rest.
type stack struct{}

func (stack) Layout(o []fyne.CanvasObject, size fyne.Size) {
	top := look.HeightFor(o[0], size.Width)
	o[0].Resize(fyne.NewSize(size.Width, top))
	o[0].Move(fyne.NewPos(0, 0))
	o[1].Move(fyne.NewPos(0, top))
	o[1].Resize(fyne.NewSize(size.Width, max(0, size.Height-top)))
}

func (stack) MinSize([]fyne.CanvasObject) fyne.Size { return fyne.NewSize(400, 300) }

// RowOf is the name of an athlete's row; empty where the list does not show it.
func (v *View) RowOf(id record.ID) string {
	for i, at := range v.rows {
		if v.state.Row(at).ID == id {
			return "roster.table." + strconv.Itoa(i)
		}
	}
	return ""
}

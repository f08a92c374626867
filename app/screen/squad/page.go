package squad

import (
	"slices"
	"strconv"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/widget"

	"ebbwell/app/kit/field"
	"ebbwell/app/kit/look"
	"ebbwell/internal/record"
	"ebbwell/internal/squad"
)

func itoa(i int) string { return strconv.Itoa(i) }

func indexOf(list []int, x int) int { return slices.Index(list, x) }

// build makes the widgets of the day.
func (v *View) build() {
	say, h, u := v.say, v.desk.Host, &v.ui
	u.shared = look.NewParagraph("", look.Body, look.Ink)
	change := field.NewLink(h, "squad.change", say("squad.change"), v.askChange)
	sheets := field.NewLink(h, "squad.sheets", say("squad.sheets"), v.goToSheets)
	blank := field.NewLink(h, "squad.blank", say("squad.blank"), v.printBlank)
	u.closing = field.NewLink(h, "squad.close", "", v.askClose)
	links := look.HBox(14, u.closing, blank, sheets, change)
	u.forAll = look.Columns(14, []look.Track{look.Share(1), look.Fit()}, u.shared, links)
	shared := newFrame(look.Pad(8, 14, 8, 14, u.forAll))
	u.scale, u.next = look.NewLabel("", look.Title, look.Ink).Shorten(), look.NewLabel("", look.Body, look.Ink2)
	u.nextBelow = look.NewLabel("", look.Body, look.Ink2)
	u.counts = look.NewLabel("", look.Note, look.Ink2)
	u.station = field.NewToggle(h, "squad.by", []field.Option{{Key: byAthlete, Text: say("squad.by.athlete")}, {Key: byStation, Text: say("squad.by.station")}})
	u.station.OnChosen = v.chooseWay
	group := field.NewLink(h, "squad.group", say("squad.group"), v.showGroup)
	u.counted = look.NewLabel("", look.Note, look.Ink2)
	u.title = look.HBox(14, look.Grow(u.scale), u.next, u.counts, u.station, group)
	u.second = look.HBox(14, u.nextBelow, look.Stretch(), u.counted)
	v.jump = newJump(v)
	u.list, u.sticky, u.head = look.VBox(0), look.VBox(0), newHeadRow(v)
	u.scroll = look.NewScroll(u.list)
	u.rowBox = look.VBox(0, u.head, u.sticky, look.Grow(u.scroll))
	u.clock = newClockView()
	u.add = field.NewButton(h, "squad.add", say("squad.add"), field.Outline, v.askAdd)
	u.time = field.NewButton(h, "squad.time", "", field.Outline, v.startOrEnd)
	u.time.SetHint("F2")
	u.page = look.VBox(8, shared, v.jump.box, u.title, u.second, look.Grow(newFrame(u.rowBox)))
	v.body = &fyne.Container{Layout: &watching{v: v}, Objects: []fyne.CanvasObject{look.Pad(10, 0, look.FootPad, 0, u.page)}}
}

// The two ways of working.
const (
	byAthlete = "athlete"
	byStation = "station"
)

// chooseWay works by athlete or by station.
func (v *View) chooseWay(key string) {
	v.doc.ChangeSession("", "squad.by", func(g *record.GroupSession) { g.ByStation = key == byStation })
	v.station = ""
	if key == byStation {
		v.station = v.firstStation()
	}
	v.flush()
	v.changed()
}

// firstStation is the first station at which somebody has nothing yet.
func (v *View) firstStation() string {
	for _, s := range stations() {
		for i := range v.rows {
			if v.lacksAt(i, s) {
				return s
			}
		}
	}
	return stationAfter
}

// watching builds the open row anew when the window becomes narrow for the size of
// its text, or wide again.
type watching struct{ v *View }

func (l *watching) Layout(o []fyne.CanvasObject, size fyne.Size) {
	if at := gridFor(size.Width - 2).level; at != l.v.level {
		l.v.level = at
		l.v.ui.rows = nil
		l.v.rebuild()
	}
	o[0].Resize(size)
}

func (l *watching) MinSize(_ []fyne.CanvasObject) fyne.Size { return fyne.NewSize(640, 300) }

// follow shows the day as it is.
func (v *View) follow() {
	u, g := &v.ui, v.doc.Now().session
	u.shared.SetText(v.sharedWords())
	ready, _ := v.closable()
	u.closing.SetText(v.say("squad.close", len(ready)))
	look.ShowIf(u.closing, len(ready) > 0)
	u.forAll.Refresh()
	v.showTime()
	if v.group != nil {
		u.page.Refresh()
		return
	}
	u.station.Choose(map[bool]string{true: byStation, false: byAthlete}[g.ByStation])
	scale, next := v.scaleWords()
	u.scale.SetText(scale)
	look.ShowIf(u.next, v.level == wide && next != "")
	look.ShowIf(u.counts, v.level == wide)
	look.ShowIf(u.second, v.level != wide && v.jump != nil && !v.jump.box.Visible())
	u.next.SetText(next)
	u.nextBelow.SetText(next)
	u.counts.SetText(v.countWords())
	u.counted.SetText(v.countWords())
	v.showRowViews()
	u.page.Refresh()
}

// scaleWords say who is at the scale, and who is next.
func (v *View) scaleWords() (scale, next string) {
	scale = v.say("squad.scale.nobody")
	if v.at >= 0 && v.at < len(v.rows) {
		scale = v.say("squad.scale", v.rows[v.at].Sheet.Athlete.Name)
		if s := v.stationNow(); s != "" {
			scale = v.say("squad.scale.station", v.say("squad.station."+s), v.rows[v.at].Sheet.Athlete.Name)
		}
	}
	list := squad.Next(v.rows, v.at)
	switch len(list) {
	case 0:
	case 1:
		next = v.say("squad.next.one", v.rows[list[0]].Sheet.Athlete.Name)
	default:
		next = v.say("squad.next", v.rows[list[0]].Sheet.Athlete.Name, v.rows[list[1]].Sheet.Athlete.Name)
	}
	return scale, next
}

// countWords say how many are how far.
func (v *View) countWords() string {
	var list []string
	for _, s := range squad.States() {
		if n := squad.Count(v.rows, s); n > 0 {
			list = append(list, v.say("squad.count."+string(s), n))
		}
	}
	return v.desk.Words.Dots(list)
}

// showRowViews shows every row, building anew only those that say something else.
func (v *View) showRowViews() {
	u := &v.ui
	if len(u.rows) != len(v.rows) {
		u.rows = make([]*rowView, len(v.rows))
	}
	changed := len(u.list.Objects) != len(v.rows)
	var sticky []fyne.CanvasObject
	for i := range v.rows {
		var w *rowView
		if v.open != nil && i == v.at {
			v.open.i = i
			w = v.open.view
			v.open.show()
		} else {
			w = v.closedRow(i)
			if old := u.rows[i]; old != nil && !old.open && old.said == w.said {
				w = old
			}
		}
		if u.rows[i] != w {
			u.rows[i], changed = w, true
		}
		if r := v.rows[i]; v.level != wide && r.Flagged && !r.Flag.Told() && i != v.at {
			sticky = append(sticky, v.stickyFlag(i))
		}
	}
	if changed {
		u.list.Objects = make([]fyne.CanvasObject, len(u.rows))
		for i, w := range u.rows {
			u.list.Objects[i] = w
		}
	}
	if text := v.dueWords(); text != "" {
		sticky = append(sticky, look.Pad(4, 12, 4, 12, look.NewParagraph(text, look.NoteStrong, look.Ink)))
	}
	u.sticky.Objects = sticky
	u.list.Refresh()
	u.scroll.Refresh()
	u.rowBox.Refresh()
}

// dueWords name the patches that are to come off now, those on longest first.
func (v *View) dueWords() string {
	var due []squad.Row
	for _, r := range v.rows {
		if r.Patch.Due {
			due = append(due, r)
		}
	}
	if len(due) == 0 {
		return ""
	}
	slices.SortStableFunc(due, func(a, b squad.Row) int { return int(b.Patch.Minutes) - int(a.Patch.Minutes) })
	var names []string
	for _, r := range due {
		names = append(names, v.say("squad.patch.due.one", r.Sheet.Athlete.Name, int(r.Patch.Minutes)))
	}
	return v.say("squad.patch.due", v.desk.Words.List(names))
}

// stickyFlag is a red flag that stays in sight in a narrow window.
func (v *View) stickyFlag(i int) fyne.CanvasObject {
	return field.NewButton(v.desk.Host, "squad.flag."+itoa(i+1), v.say("squad.flag.sticky", v.rows[i].Sheet.Athlete.Name), field.Warning, func() { v.openRowAt(i, "") })
}

// hintWords say what the keys do.
func (v *View) hintWords() string {
	if v.stationNow() != "" {
		return v.say("squad.keys.station")
	}
	return v.say("squad.keys")
}

// headRow names the columns.
type headRow struct {
	widget.BaseWidget
	cells []cell
}

func newHeadRow(v *View) *headRow {
	h := &headRow{}
	for c := colName; c < columnsInAll; c++ {
		if headKey(c) == "" {
			continue
		}
		l := look.NewLabel(v.head(c), look.Note, look.Ink2).Shorten()
		if c >= colBefore && c <= colAfter {
			l = l.Right()
		}
		h.cells = append(h.cells, cell{object: l, col: c})
	}
	h.ExtendBaseWidget(h)
	return h
}

// Parts returns the names.
func (h *headRow) Parts() []fyne.CanvasObject {
	list := make([]fyne.CanvasObject, len(h.cells))
	for i, c := range h.cells {
		list[i] = c.object
	}
	return list
}

// CreateRenderer draws the names over a hairline.
func (h *headRow) CreateRenderer() fyne.WidgetRenderer {
	return &headRenderer{h: h, rule: canvas.NewRectangle(nil)}
}

type headRenderer struct {
	h    *headRow
	rule *canvas.Rectangle
}

func (r *headRenderer) Layout(size fyne.Size) {
	g := gridFor(size.Width)
	for _, c := range r.h.cells {
		look.ShowIf(c.object, g.shows(c.col))
		c.place(g, rowPadY, look.Scaled(linePx), look.Scaled(linePx))
	}
	r.rule.FillColor = look.PaletteNow().Hairline
	r.rule.Move(fyne.NewPos(0, size.Height-1))
	r.rule.Resize(fyne.NewSize(size.Width, 1))
}

func (r *headRenderer) MinSize() fyne.Size {
	return fyne.NewSize(look.Scaled(400), look.Scaled(linePx)+2*rowPadY)
}

func (r *headRenderer) Refresh() {
	r.Layout(r.h.Size())
	canvas.Refresh(r.h)
}

func (r *headRenderer) Objects() []fyne.CanvasObject { return append(r.h.Parts(), r.rule) }
func (r *headRenderer) Destroy()                     {}

// framed is a white sheet without room at its edges.
type framed struct {
	widget.BaseWidget
	content fyne.CanvasObject
}

func newFrame(content fyne.CanvasObject) *framed {
	f := &framed{content: content}
	f.ExtendBaseWidget(f)
	return f
}

// Parts returns the content.
func (f *framed) Parts() []fyne.CanvasObject { return []fyne.CanvasObject{f.content} }

// HeightFor returns the height at a width.
func (f *framed) HeightFor(width float32) float32 { return look.HeightFor(f.content, width-2) + 2 }

// CreateRenderer draws ground and edge.
func (f *framed) CreateRenderer() fyne.WidgetRenderer {
	r := &framedRenderer{f: f, ground: look.NewOutline()}
	r.paint()
	return r
}

type framedRenderer struct {
	f      *framed
	ground *look.Outline
}

func (r *framedRenderer) paint() {
	p := look.PaletteNow()
	r.ground.Paint(p.Sheet, p.Hairline, 1, look.SheetRadius)
}

func (r *framedRenderer) Layout(size fyne.Size) {
	r.paint()
	r.ground.Place(fyne.Position{}, size)
	r.f.content.Move(fyne.NewPos(1, 1))
	r.f.content.Resize(size.SubtractWidthHeight(2, 2))
}

func (r *framedRenderer) MinSize() fyne.Size {
	return r.f.content.MinSize().AddWidthHeight(2, 2)
}

func (r *framedRenderer) Refresh() {
	r.Layout(r.f.Size())
	canvas.Refresh(r.f)
}

func (r *framedRenderer) Objects() []fyne.CanvasObject { return r.ground.With(r.f.content) }
func (r *framedRenderer) Destroy()                     {}

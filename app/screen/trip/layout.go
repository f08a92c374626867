package trip

import (
	"slices"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/widget"

	"ebbwell/app/kit/field"
	"ebbwell/app/kit/look"
	"ebbwell/app/screen/heat"
	"ebbwell/internal/record"
)

// Sizes of a trip's screen, in px at 100 % text: the gap between sheets, what
// the two columns need at least, the share of the left one, the column of words
// of a form.
const (
	gap        float32 = 14
	leftLeast  float32 = 300
	rightLeast float32 = 520
	leftShare  float32 = 0.34
	leftMost   float32 = 460
	formLabel  float32 = 128
	formGap    float32 = 6
	footPad    float32 = 20
)

// sides are two columns of sheets, or one where large text leaves no room for
// both.
type sides struct {
	widget.BaseWidget
	left, right fyne.CanvasObject
	// least is what the right one needs, px at 100 % text.
	least float32
}

var (
	_ look.Flowing = (*sides)(nil)
	_ look.Holder  = (*sides)(nil)
)

func newSides(left, right fyne.CanvasObject) *sides {
	s := &sides{left: left, right: right, least: rightLeast}
	s.ExtendBaseWidget(s)
	return s
}

// Parts returns both columns.
func (s *sides) Parts() []fyne.CanvasObject { return []fyne.CanvasObject{s.left, s.right} }

// leftWidth is the width of the left column, zero when it stands above.
func (s *sides) leftWidth(width float32) float32 {
	if width < look.Scaled(leftLeast)+gap+look.Scaled(s.least) {
		return 0
	}
	return min(max(look.Scaled(leftLeast), width*leftShare), look.Scaled(leftMost))
}

// HeightFor returns the height at a width.
func (s *sides) HeightFor(width float32) float32 {
	left := s.leftWidth(width)
	if left == 0 {
		return look.HeightFor(s.left, width) + gap + look.HeightFor(s.right, width)
	}
	return max(look.HeightFor(s.left, left), look.HeightFor(s.right, width-gap-left))
}

// CreateRenderer places both columns.
func (s *sides) CreateRenderer() fyne.WidgetRenderer { return &sidesRenderer{s} }

type sidesRenderer struct{ s *sides }

func (r *sidesRenderer) Layout(size fyne.Size) {
	s, left := r.s, r.s.leftWidth(size.Width)
	s.left.Move(fyne.Position{})
	if left == 0 {
		high := look.HeightFor(s.left, size.Width)
		s.left.Resize(fyne.NewSize(size.Width, high))
		s.right.Move(fyne.NewPos(0, high+gap))
		s.right.Resize(fyne.NewSize(size.Width, look.HeightFor(s.right, size.Width)))
		return
	}
	right := size.Width - gap - left
	s.left.Resize(fyne.NewSize(left, look.HeightFor(s.left, left)))
	s.right.Move(fyne.NewPos(left+gap, 0))
	s.right.Resize(fyne.NewSize(right, look.HeightFor(s.right, right)))
}

func (r *sidesRenderer) MinSize() fyne.Size {
	width := look.Scaled(leftLeast)
	if w := r.s.Size().Width; w > 0 {
		return fyne.NewSize(width, r.s.HeightFor(w))
	}
	return fyne.NewSize(width, r.s.HeightFor(width))
}

func (r *sidesRenderer) Refresh() {
	r.Layout(r.s.Size())
	r.s.left.Refresh()
	r.s.right.Refresh()
}

func (r *sidesRenderer) Objects() []fyne.CanvasObject { return r.s.Parts() }
func (r *sidesRenderer) Destroy()                     {}

// scrolled lets a part be higher than the room there is, beside the bar.
func scrolled(o fyne.CanvasObject) fyne.CanvasObject { return look.InMargin(look.PageScroll(o)) }

// refresh lays a sheet's content out anew: lines may have come or gone.
func refresh(s *look.Sheet) {
	for _, o := range s.Parts() {
		o.Refresh()
	}
}

// row is words with a field beside them, no wider than most px at 100 % text.
func row(words string, most float32, o fyne.CanvasObject) fyne.CanvasObject {
	return look.Columns(10, []look.Track{look.Fixed(formLabel), look.Share(1)}, look.NewParagraph(words, look.Body, look.Ink2), look.MaxWidth(most, o))
}

// tabRow is the row above a trip: the stops as tabs, worded as fully as the room
// allows.
type tabRow struct {
	widget.BaseWidget
	tabs  *field.Tabs
	sp    heat.Speaker
	trip  record.Trip
	shown []field.Tab
}

var _ look.Holder = (*tabRow)(nil)

func newTabRow(tabs *field.Tabs) *tabRow {
	r := &tabRow{tabs: tabs}
	r.ExtendBaseWidget(r)
	return r
}

// set words the tabs of a trip.
func (r *tabRow) set(sp heat.Speaker, t record.Trip) {
	r.sp, r.trip = sp, t
	r.fit(r.Size().Width)
	r.Refresh()
}

// fit words the tabs so that they fit a width.
func (r *tabRow) fit(width float32) {
	for level := range tabLevels {
		list := r.tabsAt(level)
		if level == tabLevels-1 || wide(list) <= width {
			if !slices.Equal(list, r.shown) {
				r.shown = list
				r.tabs.SetTabs(list)
			}
			return
		}
	}
}

// tabsAt are the tabs in one of their forms.
func (r *tabRow) tabsAt(level int) []field.Tab {
	say := r.sp.Words.Say
	var list []field.Tab
	for i, s := range r.trip.Stops {
		list = append(list, field.Tab{Key: string(s.ID), Text: tabText(r.sp, s, i, level)})
	}
	return append(list, field.Tab{Key: PartEdit, Text: say("trip.tab.edit")}, field.Tab{Key: PartPacking, Text: say("trip.tab.packing")})
}

// wide is about how wide tabs are, in px.
func wide(list []field.Tab) float32 {
	w := float32(0)
	for _, t := range list {
		w += look.Strong.Width(t.Text) + 26
	}
	return w - 26
}

// Parts returns the tabs.
func (r *tabRow) Parts() []fyne.CanvasObject { return []fyne.CanvasObject{r.tabs} }

// CreateRenderer sets the tabs at the left.
func (r *tabRow) CreateRenderer() fyne.WidgetRenderer { return &tabRowRenderer{r} }

type tabRowRenderer struct{ r *tabRow }

func (t *tabRowRenderer) Layout(size fyne.Size) {
	r := t.r
	r.fit(size.Width)
	tabs := r.tabs.MinSize()
	r.tabs.Move(fyne.NewPos(0, size.Height-tabs.Height))
	r.tabs.Resize(tabs)
}

func (t *tabRowRenderer) MinSize() fyne.Size {
	return fyne.NewSize(200, t.r.tabs.MinSize().Height)
}

func (t *tabRowRenderer) Refresh() { t.Layout(t.r.Size()) }

func (t *tabRowRenderer) Objects() []fyne.CanvasObject { return t.r.Parts() }
func (t *tabRowRenderer) Destroy()                     {}

// setText sets a paragraph and hides it while it is empty.
func setText(p *look.Paragraph, text string) {
	p.SetText(text)
	look.ShowIf(p, text != "")
}

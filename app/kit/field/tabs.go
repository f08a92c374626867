package field

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"

	"ebbwell/app/kit/look"
)

// Tab is one of the words of [Tabs].
type Tab struct {
	// Key is what is told, Text what is read.
	Key, Text string
	// Done sets a check mark behind the words.
	Done bool
}

// checkMark is the sign for done; the typeface has it.
const checkMark = "✓"

// tabGap is the room between tabs, in px; tabTop and tabFoot are above and
// below the words.
const (
	tabGap  float32 = 26
	tabTop  float32 = 7
	tabFoot float32 = 9
)

// Tabs are words side by side, one of them chosen and underlined. Arrow keys,
// Home and End choose.
type Tabs struct {
	control
	// OnChosen is told the key the person chose.
	OnChosen func(key string)

	tabs   []Tab
	chosen int
	foot   float32
	// ticked tabs keep room for the check mark, so that nothing moves when
	// one comes.
	ticked bool
}

var _ Field = (*Tabs)(nil)

// NewTabs makes tabs with the first one chosen.
func NewTabs(h *Host, name string, tabs []Tab) *Tabs {
	t := &Tabs{tabs: tabs, foot: tabFoot}
	t.init(t, h, name)
	return t
}

// SetTabs changes the words; the chosen key stays chosen when it is still there.
func (t *Tabs) SetTabs(tabs []Tab) {
	key := t.Chosen()
	t.tabs, t.chosen = tabs, 0
	t.Choose(key)
	t.Refresh()
}

// SetFoot sets the room between words and underline, in px, so that the line
// can lie on an edge further down.
func (t *Tabs) SetFoot(px float32) {
	if t.foot != px {
		t.foot = px
		t.Refresh()
	}
}

// SetDone sets or takes the check mark of a tab.
func (t *Tabs) SetDone(key string, done bool) {
	t.ticked = true
	if i := t.at(key); i >= 0 && t.tabs[i].Done != done {
		t.tabs[i].Done = done
		t.Refresh()
	}
}

// Chosen returns the key of the chosen tab.
func (t *Tabs) Chosen() string {
	if t.chosen < 0 || t.chosen >= len(t.tabs) {
		return ""
	}
	return t.tabs[t.chosen].Key
}

// Choose chooses a tab; nobody is told.
func (t *Tabs) Choose(key string) {
	if i := t.at(key); i >= 0 && i != t.chosen {
		t.chosen = i
		t.Refresh()
	}
}

// ChooseNone leaves no tab chosen; nobody is told.
func (t *Tabs) ChooseNone() {
	if t.chosen >= 0 {
		t.chosen = -1
		t.Refresh()
	}
}

func (t *Tabs) at(key string) int {
	for i, tab := range t.tabs {
		if tab.Key == key {
			return i
		}
	}
	return -1
}

// pick chooses a tab for the person.
func (t *Tabs) pick(i int) {
	if i < 0 || i >= len(t.tabs) || i == t.chosen {
		return
	}
	t.chosen = i
	t.Refresh()
	tell(t.OnChosen, t.Chosen())
}

// Tapped chooses the tab under the pointer.
func (t *Tabs) Tapped(e *fyne.PointEvent) {
	if t.press() {
		t.pick(t.under(e.Position.X))
	}
}

// under is the tab at a distance from the left, -1 between tabs.
func (t *Tabs) under(x float32) int {
	for i, s := range t.spans() {
		if x >= s.from-tabGap/2 && x < s.to+tabGap/2 {
			return i
		}
	}
	return -1
}

// TypedKey chooses by arrow, Home and End.
func (t *Tabs) TypedKey(e *fyne.KeyEvent) {
	t.keyed()
	switch e.Name {
	case fyne.KeyLeft:
		t.pick(max(0, t.chosen-1))
	case fyne.KeyRight:
		t.pick(t.chosen + 1)
	case fyne.KeyHome:
		t.pick(0)
	case fyne.KeyEnd:
		t.pick(len(t.tabs) - 1)
	default:
		t.host.Key(e)
	}
}

// span is the room of one tab.
type span struct{ from, to float32 }

// spans is where the tabs stand; chosen or not, a tab is as wide as it is in
// semibold, so that nothing moves.
func (t *Tabs) spans() []span {
	list := make([]span, len(t.tabs))
	x := float32(0)
	for i, tab := range t.tabs {
		w := look.Strong.Width(tab.Text)
		if tab.Done || t.ticked {
			w += look.Body.Width(" " + checkMark)
		}
		list[i] = span{x, x + w}
		x += w + tabGap
	}
	return list
}

// words is the room of a tab without that kept for a check mark to come.
func (t *Tabs) words(s span, i int) span {
	if t.ticked && !t.tabs[i].Done {
		s.to -= look.Body.Width(" " + checkMark)
	}
	return s
}

// Baseline is where the words stand.
func (t *Tabs) Baseline() float32 { return tabTop + look.Body.Baseline() }

// CreateRenderer draws words, check marks and the line under the chosen one.
func (t *Tabs) CreateRenderer() fyne.WidgetRenderer {
	r := &tabsRenderer{t: t, under: canvas.NewRectangle(nil), ring: newRing()}
	r.set()
	return r
}

type tabsRenderer struct {
	t           *Tabs
	texts       []*canvas.Text
	ticks       []*canvas.Text
	under, ring *canvas.Rectangle
}

func (r *tabsRenderer) set() {
	t, p := r.t, look.PaletteNow()
	show(r.under, t.chosen >= 0)
	show(r.ring, t.ringed() && t.chosen >= 0)
	for len(r.texts) < len(t.tabs) {
		r.texts = append(r.texts, canvas.NewText("", nil))
		r.ticks = append(r.ticks, canvas.NewText("", nil))
	}
	for i, s := range t.spans() {
		style, ink := look.Body, p.Ink2
		if i == t.chosen {
			style, ink = look.Strong, p.Ink
			r.setChosen(t.words(s, i), p)
		}
		if t.Disabled() {
			ink = p.Ink3
		}
		text := r.texts[i]
		look.Write(text, style, ink, t.tabs[i].Text, fyne.NewPos(s.from, tabTop), s.to-s.from)
		tick := r.ticks[i]
		tick.Alignment = fyne.TextAlignTrailing
		look.Write(tick, look.Body, ink, checkMark, fyne.NewPos(s.from, tabTop), s.to-s.from)
		show(tick, t.tabs[i].Done)
	}
}

// setChosen underlines the chosen tab, and rings it while it has the keyboard.
func (r *tabsRenderer) setChosen(s span, p look.Palette) {
	h := r.MinSize().Height
	r.under.FillColor = p.Ink
	r.under.Move(fyne.NewPos(s.from, h-2))
	r.under.Resize(fyne.NewSize(s.to-s.from, 2))
	placeRing(r.ring, p.Ink, fyne.NewPos(s.from-8, 0), fyne.NewSize(s.to-s.from+16, h-4))
	show(r.ring, r.t.ringed())
}

func (r *tabsRenderer) Layout(fyne.Size) { r.set() }

func (r *tabsRenderer) MinSize() fyne.Size {
	w := float32(0)
	if spans := r.t.spans(); len(spans) > 0 {
		w = spans[len(spans)-1].to
	}
	return fyne.NewSize(w, float32(int(look.Body.Height()+tabTop+r.t.foot+0.99))+2)
}

func (r *tabsRenderer) Refresh() {
	r.set()
	canvas.Refresh(r.t)
}

func (r *tabsRenderer) Objects() []fyne.CanvasObject {
	list := []fyne.CanvasObject{r.under, r.ring}
	for i := range r.t.tabs {
		list = append(list, r.texts[i], r.ticks[i])
	}
	return list
}

func (r *tabsRenderer) Destroy() {}

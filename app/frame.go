package app

import (
	"slices"
	"time"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/widget"

	"ebbwell/app/kit/desk"
	"ebbwell/app/kit/field"
	"ebbwell/app/kit/look"
)

// Sizes of the frame, in px; the rail and the head follow the text size.
const (
	railWidth  float32 = 131
	headHeight float32 = 55
	sidePad    float32 = 24
	footPad    float32 = 20
)

// frame is the window's fixed part: the rail at the left, the head above, the
// screen below.
type frame struct {
	desk  *desk.Desk
	rail  *field.Rail
	saved *look.Paragraph
	title *look.Label
	under *look.Label
	// facts are what under says where there is room, and in a narrow window.
	facts facts
	tabs  *field.Tabs
	undo  *field.Button
	redo  *field.Button
	// alerts names the gravest thing to know of the athlete, or only how many there
	// are, and opens the list.
	alerts *field.Button
	known  alertWords
	// spare are the actions that go first where room is short, rest all others;
	// undoes says that steps can be taken back here.
	spare, rest []fyne.CanvasObject
	undoes      bool
	strip       *field.Strip
	// keys opens the list of keys.
	keys *field.Link
	// stopStrip stops the wait after which the strip goes.
	stopStrip func()

	head *fyne.Container // title, tabs, actions
	body *fyne.Container // the screen
	page *fyne.Container
	// railBox is the rail with what stands below it, main the window without what is
	// drawn over it.
	railBox *fyne.Container
	main    fyne.CanvasObject
	root    fyne.CanvasObject
}

// newFrame makes the frame; the functions are what its controls do.
func newFrame(d *desk.Desk, openPlace func(desk.Screen), openTab func(desk.Screen), undo, redo func()) *frame {
	w := d.Words
	f := &frame{
		desk:  d,
		saved: look.NewParagraph("", look.Note, look.Ink3).Called("frame.saved"),
		title: look.NewLabel("", look.Title, look.Ink).Shorten(),
		under: look.NewLabel("", look.Body, look.Ink2).Shorten(),
		strip: field.NewStrip(d.Host, "frame.strip"), stopStrip: func() {},
	}
	f.rail = field.NewRail(d.Host, "frame.rail", screenTabs(w.Say, desk.Athletes, desk.TestDay, desk.Trips, desk.Pantry, desk.Practice))
	f.rail.OnChosen = func(key string) { openPlace(desk.Screen(key)) }
	f.tabs = field.NewTabs(d.Host, "frame.tabs", screenTabs(w.Say, desk.Overview, desk.Tests, desk.Plan, desk.Handout))
	f.tabs.OnChosen = func(key string) { openTab(desk.Screen(key)) }
	f.keys = field.NewLink(d.Host, "frame.keys", w.Say("frame.keys"), nil)
	f.alerts = field.NewButton(d.Host, "frame.alerts", "", field.Warning, nil)
	f.undo = field.NewButton(d.Host, "frame.undo", w.Say("frame.undo"), field.Outline, undo)
	f.redo = field.NewButton(d.Host, "frame.redo", w.Say("frame.redo"), field.Outline, redo)
	f.head = container.New(&headLayout{frame: f})
	f.body = container.NewStack()
	return f
}

// screenTabs makes a tab a screen.
func screenTabs(say func(string, ...any) string, screens ...desk.Screen) []field.Tab {
	var list []field.Tab
	for _, s := range screens {
		list = append(list, field.Tab{Key: string(s), Text: say("frame." + string(s))})
	}
	return list
}

// build puts rail, head and body together; below the rail stands the tour, over all its
// ring.
func (f *frame) build(below, over fyne.CanvasObject) {
	brand := look.Pad(18, 0, 18, 16, look.NewLabel(f.desk.Words.Say("program.name"), look.Title, look.Ink))
	f.railBox = look.VBox(0, brand, f.rail, look.Pad(10, 4, 8, 4, below), look.Grow(look.Gap(0, 0)), look.Pad(0, 8, 2, 16-field.LinkPad, look.HBox(0, f.keys)), look.Pad(0, 8, 14, 16, f.saved))
	f.page = container.New(&pageLayout{frame: f}, f.head, look.NewRule(), f.body, f.strip)
	f.main = container.New(&frameLayout{frame: f}, newGround(f.railBox), look.NewRule(), f.page)
	f.root = container.NewStack(f.main, over)
}

// say shows a sentence at the foot of the window.
func (f *frame) say(sentence, action string, do func()) {
	f.stopStrip()
	f.strip.Say(sentence, action, do)
	f.page.Refresh()
	f.stopStrip = f.desk.Later(stripStays, func() { f.unsay(sentence) })
}

// stripStays is how long a sentence stays at the foot: time to read it and to reach
// its button.
const stripStays = 20 * time.Second

// unsay takes a sentence away again, if it still stands there.
func (f *frame) unsay(sentence string) {
	if f.strip.Message() == sentence {
		f.closeStrip()
	}
}

// closeStrip hides what is said at the foot; false when nothing is.
func (f *frame) closeStrip() bool {
	if !f.strip.Visible() {
		return false
	}
	f.stopStrip()
	f.strip.Hide()
	f.page.Refresh()
	return true
}

// showHead draws the head of a screen.
func (f *frame) showHead(h desk.Head, undoes bool) {
	f.title.SetText(h.Title)
	f.facts = facts{full: h.Under, short: h.Short}
	f.tabs.Hide()
	if h.Athlete != "" {
		f.tabs.Show()
		if f.tabs.Choose(string(h.Tab)); h.Tab == "" {
			f.tabs.ChooseNone()
		}
	}
	f.spare, f.rest, f.undoes = h.Spare, h.Actions, undoes
	objects := []fyne.CanvasObject{f.title, f.under, f.tabs}
	if f.alerts.Hide(); h.Athlete != "" && f.known.full != "" {
		f.alerts.Show()
		objects = append(objects, f.alerts)
	}
	if undoes {
		objects = append(objects, f.undo, f.redo)
	}
	f.head.Objects = slices.Concat(objects, h.Spare, h.Actions)
	if at := f.page.Size(); f.head.Size().Height != f.fitHead(at.Width).height() {
		f.page.Layout.Layout(f.page.Objects, at)
	}
	f.head.Refresh()
}

// showBody puts a screen below the head.
func (f *frame) showBody(o fyne.CanvasObject) {
	f.body.Objects = []fyne.CanvasObject{o}
	f.body.Refresh()
}

// frameLayout sets the rail, as wide as its words need, a hairline and the page side by
// side.
type frameLayout struct{ frame *frame }

func (l *frameLayout) Layout(o []fyne.CanvasObject, size fyne.Size) {
	rail := max(look.Scaled(railWidth), l.frame.rail.MinSize().Width)
	o[0].Move(fyne.NewPos(0, 0))
	o[0].Resize(fyne.NewSize(rail, size.Height))
	o[1].Move(fyne.NewPos(rail, 0))
	o[1].Resize(fyne.NewSize(1, size.Height))
	o[2].Move(fyne.NewPos(rail+1, 0))
	o[2].Resize(fyne.NewSize(max(0, size.Width-rail-1), size.Height))
}

// MinSize lets the window be as small as 900 x 560.
func (*frameLayout) MinSize([]fyne.CanvasObject) fyne.Size { return fyne.NewSize(900, 560) }

// pageLayout sets head, hairline, body and strip one below the other.
type pageLayout struct{ frame *frame }

func (l *pageLayout) Layout(o []fyne.CanvasObject, size fyne.Size) {
	head := l.frame.fitHead(size.Width).height()
	o[0].Move(fyne.NewPos(0, 0))
	o[0].Resize(fyne.NewSize(size.Width, head))
	o[1].Move(fyne.NewPos(0, head))
	o[1].Resize(fyne.NewSize(size.Width, 1))
	o[2].Move(fyne.NewPos(sidePad, head+1))
	strip := fyne.NewSize(size.Width-2*sidePad, look.HeightFor(o[3], size.Width-2*sidePad))
	foot := float32(0)
	if o[3].Visible() {
		foot = strip.Height + footPad // the strip covers nothing
	}
	o[2].Resize(fyne.NewSize(max(0, size.Width-2*sidePad), max(0, size.Height-head-1-foot)))
	o[3].Move(fyne.NewPos(sidePad, size.Height-strip.Height-footPad))
	o[3].Resize(strip)
}

func (l *pageLayout) MinSize([]fyne.CanvasObject) fyne.Size { return fyne.NewSize(100, 100) }

// ground is a sunk surface with something on it. Paper needs none: every picture begins
// with it, and a rectangle of the whole window is a sixth of what a picture takes.
type ground struct {
	widget.BaseWidget
	content fyne.CanvasObject
}

func newGround(content fyne.CanvasObject) *ground {
	g := &ground{content: content}
	g.ExtendBaseWidget(g)
	return g
}

// Parts returns what stands on the ground.
func (g *ground) Parts() []fyne.CanvasObject { return []fyne.CanvasObject{g.content} }

// CreateRenderer draws the surface.
func (g *ground) CreateRenderer() fyne.WidgetRenderer {
	r := &groundRenderer{g: g, fill: canvas.NewRectangle(nil)}
	r.paint()
	return r
}

type groundRenderer struct {
	g    *ground
	fill *canvas.Rectangle
}

func (r *groundRenderer) paint() {
	r.fill.FillColor = look.PaletteNow().Sunk
}

func (r *groundRenderer) Layout(size fyne.Size) {
	r.fill.Resize(size)
	r.g.content.Resize(size)
}

func (r *groundRenderer) MinSize() fyne.Size { return r.g.content.MinSize() }

func (r *groundRenderer) Refresh() {
	r.paint()
	r.fill.Refresh()
	r.g.content.Refresh()
}

func (r *groundRenderer) Objects() []fyne.CanvasObject {
	return []fyne.CanvasObject{r.fill, r.g.content}
}

func (r *groundRenderer) Destroy() {}

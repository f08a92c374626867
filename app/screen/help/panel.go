package help

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/driver/desktop"
	"fyne.io/fyne/v2/widget"

	"ebbwell/app/kit/desk"
	"ebbwell/app/kit/field"
	"ebbwell/app/kit/look"
)

// width of a panel, and the room inside it, in px at 100 % text.
const (
	width   float32 = 400
	padding float32 = 20
)

// edgeWidth is the line at the left of a panel, edgeFocused while it has the keyboard.
const (
	edgeWidth   float32 = 1
	edgeFocused float32 = 3
)

// Panel shows one page. While it has the keyboard it scrolls by keys; Escape and F1
// close it. What lies under it gets no clicks.
type Panel struct {
	widget.BaseWidget

	host    *field.Host
	keys    []Key
	page    desk.HelpPage
	title   *look.Paragraph
	scroll  *look.Scroll
	tour    *field.Button
	close   *field.Button
	fill    *canvas.Rectangle
	edge    *canvas.Rectangle
	focused bool
	// OnClose is told that the panel is to be closed.
	OnClose func()
}

var (
	_ look.Holder       = (*Panel)(nil)
	_ fyne.Focusable    = (*Panel)(nil)
	_ fyne.Shortcutable = (*Panel)(nil)
	_ desktop.Mouseable = (*Panel)(nil)
	_ desktop.Hoverable = (*Panel)(nil)
)

// NewPanel makes a hidden panel; everywhere are the keys of the window.
func NewPanel(h *field.Host, everywhere []Key) *Panel {
	p := &Panel{host: h, keys: everywhere, title: look.NewParagraph("", look.Title, look.Ink), scroll: look.NewScroll(look.Gap(0, 0))}
	p.close = field.NewButton(h, "help.close", h.Words.Say("help.close"), field.Primary, func() { p.OnClose() })
	p.tour = field.NewButton(h, "help.tour", h.Words.Say("tour.again"), field.Outline, nil)
	p.tour.Hide()
	p.fill, p.edge = canvas.NewRectangle(nil), canvas.NewRectangle(nil)
	p.OnClose = func() {}
	p.Hidden = true
	p.ExtendBaseWidget(p)
	return p
}

// OfferTour shows a button that begins the tour; nil for none.
func (p *Panel) OfferTour(begin func()) {
	p.tour.OnPressed = begin
	look.ShowIf(p.tour, begin != nil)
}

// ShowPage shows a page from its top.
func (p *Panel) ShowPage(page desk.HelpPage) {
	p.page = page
	w := p.host.Words
	p.title.SetText(w.Explain("help." + string(page) + ".title"))
	p.scroll.SetContent(look.Pad(0, 14, 4, 0, content(w, page, p.keys)))
	p.Show()
	p.Refresh()
}

// Page is the page that is shown.
func (p *Panel) Page() desk.HelpPage { return p.page }

// FocusGained and FocusLost show who has the keyboard.
func (p *Panel) FocusGained() { p.setFocused(true) }

// FocusLost takes the mark away.
func (p *Panel) FocusLost() { p.setFocused(false) }

func (p *Panel) setFocused(on bool) {
	p.focused = on
	p.Refresh()
}

// TypedRune has no use for letters.
func (*Panel) TypedRune(rune) {}

// TypedShortcut passes on the shortcuts of the window.
func (p *Panel) TypedShortcut(s fyne.Shortcut) {
	if p.host.OnShortcut != nil {
		p.host.OnShortcut(s)
	}
}

// TypedKey scrolls and closes; a key it has no use for goes on.
func (p *Panel) TypedKey(e *fyne.KeyEvent) {
	line, sight := look.Body.Pitch(), p.scroll.Size().Height
	end := max(0, look.HeightFor(p.scroll.Parts()[0], p.scroll.Size().Width)-sight)
	to := p.scroll.Offset()
	switch e.Name {
	case fyne.KeyDown:
		to += 2 * line
	case fyne.KeyUp:
		to -= 2 * line
	case fyne.KeyPageDown, fyne.KeySpace:
		to += sight - line
	case fyne.KeyPageUp:
		to -= sight - line
	case fyne.KeyHome:
		to = 0
	case fyne.KeyEnd:
		to = end
	case fyne.KeyEscape, fyne.KeyF1:
		p.OnClose()
		return
	default:
		p.host.Key(e)
		return
	}
	p.scroll.ScrollTo(min(max(to, 0), end))
}

// Tapped gives the panel the keyboard.
func (p *Panel) Tapped(*fyne.PointEvent) {
	if c := fyne.CurrentApp().Driver().CanvasForObject(p); c != nil {
		c.Focus(p)
	}
}

// The panel keeps clicks, the wheel and the pointer from what lies under it.

// TappedSecondary does nothing.
func (*Panel) TappedSecondary(*fyne.PointEvent) {}

// DoubleTapped does nothing.
func (*Panel) DoubleTapped(*fyne.PointEvent) {}

// MouseDown does nothing.
func (*Panel) MouseDown(*desktop.MouseEvent) {}

// MouseUp does nothing.
func (*Panel) MouseUp(*desktop.MouseEvent) {}

// MouseIn does nothing.
func (*Panel) MouseIn(*desktop.MouseEvent) {}

// MouseMoved does nothing.
func (*Panel) MouseMoved(*desktop.MouseEvent) {}

// MouseOut does nothing.
func (*Panel) MouseOut() {}

// Dragged does nothing.
func (*Panel) Dragged(*fyne.DragEvent) {}

// DragEnd does nothing.
func (*Panel) DragEnd() {}

// Scrolled scrolls the page wherever the pointer is on the panel.
func (p *Panel) Scrolled(e *fyne.ScrollEvent) { p.scroll.Scrolled(e) }

// Parts returns title, page and buttons.
func (p *Panel) Parts() []fyne.CanvasObject {
	return []fyne.CanvasObject{p.title, p.scroll, p.close, p.tour}
}

// CreateRenderer draws the panel.
func (p *Panel) CreateRenderer() fyne.WidgetRenderer {
	r := &panelRenderer{p}
	r.paint()
	return r
}

type panelRenderer struct{ p *Panel }

func (r *panelRenderer) paint() {
	c := look.PaletteNow()
	r.p.fill.FillColor, r.p.edge.FillColor = c.Sheet, c.Edge
	if r.p.focused {
		r.p.edge.FillColor = c.Ink
	}
}

// Layout sets the title above, the buttons below and the page between them.
func (r *panelRenderer) Layout(size fyne.Size) {
	p, pad := r.p, look.Scaled(padding)
	inner := max(0, size.Width-2*pad)
	line := edgeWidth
	if p.focused {
		line = edgeFocused
	}
	p.fill.Resize(size)
	p.edge.Resize(fyne.NewSize(line, size.Height))
	title := look.HeightFor(p.title, inner)
	p.title.Move(fyne.NewPos(pad, pad))
	p.title.Resize(fyne.NewSize(inner, title))
	buttons := p.close.MinSize()
	foot := size.Height - pad - buttons.Height
	p.close.Move(fyne.NewPos(pad, foot))
	p.close.Resize(buttons)
	p.tour.Move(fyne.NewPos(pad+buttons.Width+10, foot))
	p.tour.Resize(p.tour.MinSize())
	top := pad + title + 10
	p.scroll.Move(fyne.NewPos(pad, top))
	p.scroll.Resize(fyne.NewSize(inner+pad/2, max(0, foot-14-top)))
}

func (r *panelRenderer) MinSize() fyne.Size {
	return fyne.NewSize(look.Scaled(width), look.Scaled(200))
}

func (r *panelRenderer) Refresh() {
	r.paint()
	r.Layout(r.p.Size())
	canvas.Refresh(r.p)
}

func (r *panelRenderer) Objects() []fyne.CanvasObject {
	return append([]fyne.CanvasObject{r.p.fill, r.p.edge}, r.p.Parts()...)
}

func (r *panelRenderer) Destroy() {}

package field

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/driver/desktop"
	"fyne.io/fyne/v2/widget"

	"ebbwell/app/kit/look"
)

// popupRows is how many options a list shows at once.
const popupRows = 8

// popupOwner is the field a list hangs on. The list has the keyboard while it
// is open and hands on what it has no use for.
type popupOwner interface {
	Field
	// picked is told the option that was chosen and its place, closed that the
	// list is gone.
	picked(i int, o Option)
	closed()
	// letter, key and shortcut are what was typed meanwhile.
	letter(rune)
	otherKey(*fyne.KeyEvent)
	otherShortcut(fyne.Shortcut)
}

// popup is a list of options over the window. A click beside it closes it.
type popup struct {
	widget.BaseWidget
	owner popupOwner
	on    fyne.Canvas
	list  *popupList
}

// openPopup hangs a list of options on a field; at is the option at hand, -1
// for none.
func openPopup(owner popupOwner, options []Option, at int) *popup {
	on := canvasOf(owner)
	if on == nil {
		return nil
	}
	p := &popup{owner: owner, on: on}
	p.list = &popupList{popup: p, options: options, at: at, hovered: -1}
	p.list.ExtendBaseWidget(p.list)
	p.ExtendBaseWidget(p)
	p.list.reveal()
	on.Overlays().Add(p)
	on.Focus(p.list)
	return p
}

// setOptions changes the list while it is open; at is the option at hand, -1
// for none.
func (p *popup) setOptions(options []Option, at int) {
	p.list.options, p.list.at, p.list.first = options, at, 0
	p.Refresh()
}

// close takes the list away; the field has the keyboard again.
func (p *popup) close() {
	p.on.Overlays().Remove(p)
	p.owner.closed()
}

// Tapped closes the list: the click was beside it.
func (p *popup) Tapped(*fyne.PointEvent) { p.close() }

// TappedSecondary closes the list too.
func (p *popup) TappedSecondary(*fyne.PointEvent) { p.close() }

// Parts returns the list.
func (p *popup) Parts() []fyne.CanvasObject { return []fyne.CanvasObject{p.list} }

// CreateRenderer places the list by its field.
func (p *popup) CreateRenderer() fyne.WidgetRenderer { return &popupRenderer{p} }

type popupRenderer struct{ p *popup }

// Layout hangs the list below the field, or above where there is no room.
func (r *popupRenderer) Layout(size fyne.Size) {
	p := r.p
	at := fyne.CurrentApp().Driver().AbsolutePositionForObject(p.owner)
	h := look.ControlHeight()
	below, above := size.Height-(at.Y+h+2), at.Y-2
	p.list.fit(max(below, above))
	list := p.list.MinSize()
	list.Width = min(max(list.Width, p.owner.Size().Width), size.Width)
	y := at.Y + h + 2
	if list.Height > below && (list.Height <= above || above > below) {
		y = max(at.Y-2-list.Height, 0)
	}
	p.list.Move(fyne.NewPos(max(min(at.X, size.Width-list.Width), 0), y))
	p.list.Resize(list)
}

func (r *popupRenderer) MinSize() fyne.Size { return fyne.Size{} }

func (r *popupRenderer) Refresh() {
	r.Layout(r.p.Size())
	r.p.list.Refresh()
	canvas.Refresh(r.p)
}

func (r *popupRenderer) Objects() []fyne.CanvasObject { return []fyne.CanvasObject{r.p.list} }
func (r *popupRenderer) Destroy()                     {}

// popupList is the list itself.
type popupList struct {
	widget.BaseWidget
	popup   *popup
	options []Option
	// at is the option that Enter picks, first the topmost in sight.
	at, first, hovered int
	// rows is how many have room at once; 0 is as many as usual.
	rows int
	// turned is what the wheel turned that is less than a row, px.
	turned float32
}

var (
	_ fyne.Focusable    = (*popupList)(nil)
	_ fyne.Tabbable     = (*popupList)(nil)
	_ fyne.Shortcutable = (*popupList)(nil)
	_ fyne.Scrollable   = (*popupList)(nil)
	_ desktop.Hoverable = (*popupList)(nil)
	_ desktop.Keyable   = (*popupList)(nil)
)

// Name is the name of the field with ".list" behind it.
func (l *popupList) Name() string { return l.popup.owner.Name() + ".list" }

// most is how many rows there may be at once.
func (l *popupList) most() int {
	if l.rows > 0 {
		return min(l.rows, popupRows)
	}
	return popupRows
}

// shown is how many rows there are.
func (l *popupList) shown() int { return min(len(l.options), l.most()) }

// fit keeps the list to the rows that have room in a height.
func (l *popupList) fit(height float32) {
	l.rows = max(1, int((height-2*popupPad)/popupRow()))
	l.reveal()
}

// reveal brings the option at hand into sight.
func (l *popupList) reveal() {
	l.first = min(l.first, max(l.at, 0))
	l.first = max(l.first, l.at-l.most()+1)
	l.first = max(min(l.first, len(l.options)-l.most()), 0)
}

func (l *popupList) move(to int) {
	l.at = min(max(to, 0), len(l.options)-1)
	l.reveal()
	l.Refresh()
}

func (l *popupList) pick(i int) {
	if i < 0 || i >= len(l.options) {
		l.popup.close()
		return
	}
	o := l.options[i]
	l.popup.close()
	l.popup.owner.picked(i, o)
}

// TypedKey moves, picks and closes.
func (l *popupList) TypedKey(e *fyne.KeyEvent) {
	switch e.Name {
	case fyne.KeyDown:
		l.move(l.at + 1)
	case fyne.KeyUp:
		l.move(l.at - 1)
	case fyne.KeyPageDown:
		l.move(l.at + l.most() - 1)
	case fyne.KeyPageUp:
		l.move(l.at - l.most() + 1)
	case fyne.KeyReturn, fyne.KeyEnter:
		if w, ok := l.popup.owner.(interface{ waits() bool }); ok && l.at < 0 && w.waits() {
			l.move(0)
			return
		}
		picked := l.at >= 0
		l.pick(l.at)
		if picked {
			Next(l.popup.on)
		} else {
			l.popup.owner.otherKey(e)
		}
	case fyne.KeyEscape:
		l.popup.close()
	case fyne.KeyTab:
		l.pick(l.at)
		l.popup.on.FocusNext()
	default:
		l.popup.owner.otherKey(e)
	}
}

// AcceptsTab takes the Tab key: it picks and goes on.
func (l *popupList) AcceptsTab() bool { return true }

// TypedRune hands the letter to the field.
func (l *popupList) TypedRune(r rune) { l.popup.owner.letter(r) }

// TypedShortcut hands the shortcut to the field.
func (l *popupList) TypedShortcut(s fyne.Shortcut) { l.popup.owner.otherShortcut(s) }

// KeyDown lets the field know of the shift key.
func (l *popupList) KeyDown(e *fyne.KeyEvent) {
	if k, ok := l.popup.owner.(desktop.Keyable); ok {
		k.KeyDown(e)
	}
}

// KeyUp lets the field know of the shift key.
func (l *popupList) KeyUp(e *fyne.KeyEvent) {
	if k, ok := l.popup.owner.(desktop.Keyable); ok {
		k.KeyUp(e)
	}
}

// FocusGained and FocusLost change nothing: the field shows the focus.
func (l *popupList) FocusGained() {}

// FocusLost changes nothing.
func (l *popupList) FocusLost() {}

// rowAt is the option at a height of the list, -1 when there is none.
func (l *popupList) rowAt(y float32) int {
	i := int((y - popupPad) / popupRow())
	if y < popupPad || i >= l.shown() {
		return -1
	}
	return l.first + i
}

// Tapped picks the option under the pointer.
func (l *popupList) Tapped(e *fyne.PointEvent) {
	if i := l.rowAt(e.Position.Y); i >= 0 {
		l.pick(i)
	}
}

// MouseIn shows the option under the pointer.
func (l *popupList) MouseIn(e *desktop.MouseEvent) { l.hover(l.rowAt(e.Position.Y)) }

// MouseMoved follows the pointer.
func (l *popupList) MouseMoved(e *desktop.MouseEvent) { l.hover(l.rowAt(e.Position.Y)) }

// MouseOut forgets it.
func (l *popupList) MouseOut() { l.hover(-1) }

func (l *popupList) hover(i int) {
	if i != l.hovered {
		l.hovered = i
		l.Refresh()
	}
}

// Scrolled moves the rows in sight, as far as a page goes: small turns of a wheel or a
// pad add up to rows.
func (l *popupList) Scrolled(e *fyne.ScrollEvent) {
	l.turned -= look.WheelStep(e).Scrolled.DY
	rows := int(l.turned / popupRow())
	l.turned -= float32(rows) * popupRow()
	l.first = max(min(l.first+rows, len(l.options)-l.most()), 0)
	l.Refresh()
}

package field

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/driver/desktop"
	"fyne.io/fyne/v2/widget"
)

// Field is what all inputs have in common.
type Field interface {
	fyne.Widget
	fyne.Focusable
	fyne.Disableable
	// Name is stable and dotted: "testsheet.bottle.2.before".
	Name() string
	// Focus asks for the keyboard.
	Focus()
}

// control is the part all inputs share: name, focus, hover.
type control struct {
	widget.DisableableWidget

	host   *Host
	name   string
	self   Field
	spoken string

	focused, hovered bool
	// clicked says that the keyboard came by a click, and no key was used since.
	clicked bool
	// onFocused is told that the field takes the keyboard; nil for nobody.
	onFocused func()
	// passedBy has Enter go past it on its way to the next field.
	passedBy bool
}

// init ties the control to the widget that embeds it.
func (c *control) init(self Field, h *Host, name string) {
	c.host, c.name, c.self = h, name, self
	c.ExtendBaseWidget(self)
}

// Name is how tests and drivers find the field.
func (c *control) Name() string { return c.name }

// SetSpoken sets the words a screen reader says for the field.
func (c *control) SetSpoken(text string) { c.spoken = text }

// AccessibilityLabel is what a screen reader says, where the field says no more.
func (c *control) AccessibilityLabel() string { return c.spoken }

// AccessibilityRole is text unless a widget says otherwise.
func (c *control) AccessibilityRole() fyne.AccessibleRole { return fyne.AccessibleRoleText }

// Focus asks for the keyboard.
func (c *control) Focus() {
	if on := canvasOf(c.self); on != nil {
		on.Focus(c.self)
	}
}

// Focused reports whether the field has the keyboard.
func (c *control) Focused() bool { return c.focused }

// FocusGained shows the focus and scrolls the field into sight.
func (c *control) FocusGained() {
	c.focused = true
	c.host.last = c.self
	c.self.Refresh()
	reveal(c.self)
	if c.onFocused != nil {
		c.onFocused()
	}
}

// SetOnFocused is told each time the field takes the keyboard.
func (c *control) SetOnFocused(do func()) { c.onFocused = do }

// FocusLost hides the focus.
func (c *control) FocusLost() {
	c.focused, c.clicked = false, false
	c.self.Refresh()
}

// TypedRune passes every letter on.
func (c *control) TypedRune(r rune) { c.host.Rune(r) }

// TypedKey passes every key on.
func (c *control) TypedKey(e *fyne.KeyEvent) { c.host.Key(e) }

// MouseIn shows that the pointer is over the field.
func (c *control) MouseIn(*desktop.MouseEvent) { c.setHovered(true) }

// MouseMoved changes nothing.
func (c *control) MouseMoved(*desktop.MouseEvent) {}

// MouseOut shows that the pointer has gone.
func (c *control) MouseOut() { c.setHovered(false) }

func (c *control) setHovered(on bool) {
	if c.hovered == on {
		return
	}
	c.hovered = on
	if !c.Disabled() {
		c.self.Refresh()
	}
}

// press is what a click does first: the field takes the keyboard. It reports
// whether the click counts.
func (c *control) press() bool {
	if c.Disabled() {
		return false
	}
	if !c.focused {
		c.clicked = true
		c.Focus()
	}
	return true
}

// ringed says that the border of the focus is to be seen: for the keyboard, and not
// after a click.
func (c *control) ringed() bool { return c.focused && !c.clicked }

// keyed brings the border of the focus back when a key is used after a click.
func (c *control) keyed() {
	if c.clicked {
		c.clicked = false
		c.self.Refresh()
	}
}

// canvasOf is the canvas an object stands on, nil when on none. What was shown
// for the first time a moment ago is not known to the driver before it is drawn:
// it stands on the one window there is.
func canvasOf(o fyne.CanvasObject) fyne.Canvas {
	app := fyne.CurrentApp()
	if app == nil {
		return nil
	}
	if on := app.Driver().CanvasForObject(o); on != nil {
		return on
	}
	if all := app.Driver().AllWindows(); len(all) == 1 {
		return all[0].Canvas()
	}
	return nil
}

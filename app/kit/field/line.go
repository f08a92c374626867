package field

// Line is one line of text to type: names, places, words. Long text scrolls.
type Line struct {
	entry

	// OnChanged is told the text at every keystroke, OnLeft when the keyboard
	// leaves or Enter is pressed, OnEnter at Enter. Without OnEnter the key
	// goes on to the dialog or the window.
	OnChanged func(text string)
	OnLeft    func(text string)
	OnEnter   func(text string)
}

var _ Field = (*Line)(nil)

// NewLine makes a line of text, aligned left, up to most runes long; 0 is as
// long as one likes.
func NewLine(h *Host, name string, most int) *Line {
	l := &Line{}
	l.editor.most = most
	l.hooks = entryHooks{
		changed: func() { tell(l.OnChanged, l.Text()) },
		left:    func() { tell(l.OnLeft, l.Text()) },
		enter:   func() bool { return tell(l.OnEnter, l.Text()) },
	}
	l.start(l, h, name)
	return l
}

// AlignRight aligns the text right, as figures are, and returns the line.
func (l *Line) AlignRight() *Line {
	l.setup.right = true
	return l
}

// SetSuffix sets a unit in note style inside the box.
func (l *Line) SetSuffix(unit string) {
	l.setup.suffix = unit
	l.Refresh()
}

// tell calls a listener that may be absent and reports whether it is there.
func tell[T any](listener func(T), x T) bool {
	if listener != nil {
		listener(x)
	}
	return listener != nil
}

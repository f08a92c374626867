package field

import (
	"fyne.io/fyne/v2"

	"ebbwell/internal/record"
)

// Clock is a typed time of day: 9:05, 905 and 9.05 are the same. The arrow
// keys move by five minutes, Page Up and Page Down by an hour.
type Clock struct {
	entry

	// OnChanged is told every time that can be read, and the empty one.
	OnChanged func(record.Clock)
	// OnLeft is told the time when the keyboard leaves or Enter is pressed; ok
	// is false when the text is no time of day.
	OnLeft func(c record.Clock, ok bool)

	reported record.Clock
}

var _ Field = (*Clock)(nil)

// NewClock makes a time of day that is not given.
func NewClock(h *Host, name string) *Clock {
	c := &Clock{}
	c.editor.most = 12
	c.setup.right = true
	c.setup.least = 74
	c.hooks = entryHooks{changed: c.changedTime, left: c.leftTime, key: c.stepKey}
	c.start(c, h, name)
	return c
}

// Clock returns the time; ok is false when the text is no time of day. An
// empty field is an empty time.
func (c *Clock) Clock() (at record.Clock, ok bool) {
	at, err := ReadClock(c.Text())
	return at, err == nil
}

// SetClock shows a time; nobody is told. While it is being typed, a text that
// is read as that time stays as it is.
func (c *Clock) SetClock(at record.Clock) {
	if now, ok := c.Clock(); c.focused && ok && now == at {
		return
	}
	c.reported = at
	c.SetText(string(at))
	c.SetTrouble(Fine, "")
}

func (c *Clock) changedTime() {
	at, ok := c.Clock()
	if !ok {
		return
	}
	c.SetTrouble(Fine, "")
	if at != c.reported {
		c.reported = at
		tell(c.OnChanged, at)
	}
}

// leftTime writes the time out, or says that it is none.
func (c *Clock) leftTime() {
	at, ok := c.Clock()
	if ok {
		c.editor.set(string(at))
		c.kept = c.Text()
		c.SetTrouble(Fine, "")
	} else {
		c.SetTrouble(Wrong, c.host.Words.Say("field.clock.unreadable"))
	}
	c.Refresh()
	if c.OnLeft != nil {
		c.OnLeft(at, ok)
	}
}

// stepKey moves the time.
func (c *Clock) stepKey(e *fyne.KeyEvent) bool {
	step := stepOf(e, 5.0, 60)
	if step == 0 {
		return false
	}
	at, _ := c.Clock()
	minutes, given := at.Minutes()
	if !given {
		t := c.host.Today()
		minutes, step = float64(t.Hour()*60+t.Minute()/5*5), 0
	}
	c.editor.set(string(record.ClockAt(minutes + step)))
	c.editor.selectAll()
	c.changed()
	return true
}

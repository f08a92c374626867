package field

import (
	"errors"
	"strconv"
	"strings"
	"time"

	"fyne.io/fyne/v2"

	"ebbwell/internal/record"
	"ebbwell/internal/words"
)

// Date is a typed day. It reads several forms and says back, inside the box,
// the day it understood. The keys t and y are today and yesterday; the arrow
// keys move by a day, Page Up and Page Down by a week.
type Date struct {
	entry

	// OnChanged is told every day that can be read, and the empty one.
	OnChanged func(record.Date)
	// OnLeft is told the day when the keyboard leaves or Enter is pressed; ok
	// is false when the text is no day.
	OnLeft func(d record.Date, ok bool)

	side Side
	// reported is the day OnChanged knows.
	reported record.Date
}

var _ Field = (*Date)(nil)

// NewDate makes a day that is not given; side tells where days without a year
// lie.
func NewDate(h *Host, name string, side Side) *Date {
	d := &Date{side: side}
	d.editor.most = 30
	d.setup.least = 196
	d.hooks = entryHooks{changed: d.changedDay, left: d.leftDay, key: d.stepKey}
	d.start(d, h, name)
	return d
}

// Date returns the day; ok is false when the text is no day. An empty field is
// an empty day.
func (d *Date) Date() (day record.Date, ok bool) {
	day, err := d.reader().Read(d.Text())
	return day, err == nil
}

// SetDate shows a day; nobody is told. While it is being typed, a text that is
// read as that day stays as it is.
func (d *Date) SetDate(day record.Date) {
	if now, ok := d.Date(); d.focused && ok && now == day {
		return
	}
	d.reported = day
	d.SetText(d.write(day))
	d.readBack()
	d.SetTrouble(Fine, "")
}

// reader reads with the texts and the day of the host.
func (d *Date) reader() DayReader {
	w := d.host.Words
	r := DayReader{Today: d.host.Today(), Side: d.side, Between: between(w),
		TodayKey: w.Say("field.date.today"), YesterdayKey: w.Say("field.date.yesterday")}
	for m := 1; m <= 12; m++ {
		r.Months = append(r.Months, w.Say("month."+strconv.Itoa(m)))
	}
	return r
}

// between are the words that a written day has beside its figures and its month.
func between(w *words.Words) []string {
	list := strings.Fields(w.Say("format.date", "", "", ""))
	return append(list, strings.TrimLeft(w.Say("format.first"), "1"))
}

// write is a day as it stands in the box: "14 May 2026".
func (d *Date) write(day record.Date) string {
	t, ok := day.Time()
	if !ok {
		return ""
	}
	return d.host.Words.Date(t)
}

// weekday is the short name of the day of the week: "Thu".
func (d *Date) weekday(t time.Time) string {
	return d.host.Words.Say("field.weekday." + strconv.Itoa(int(t.Weekday())))
}

// readBack shows the day that was understood: the whole of it while it was
// typed in another form, else the day of the week.
func (d *Date) readBack() {
	day, ok := d.Date()
	t, given := day.Time()
	d.setup.suffix = ""
	switch {
	case !ok || !given:
	case d.Text() == d.write(day):
		d.setup.suffix = d.weekday(t)
	default:
		d.setup.suffix = d.host.Words.Say("field.date.readback", d.weekday(t), d.write(day))
	}
	d.Refresh()
}

// changedDay follows the typing. The key for today or yesterday alone writes
// the day out.
func (d *Date) changedDay() {
	r := d.reader()
	day, err := r.Read(d.Text())
	if text := d.Text(); err == nil && (text == r.TodayKey || text == r.YesterdayKey) {
		d.editor.set(d.write(day))
		d.editor.selectAll()
	}
	d.readBack()
	if err != nil {
		return
	}
	d.SetTrouble(Fine, "")
	if day != d.reported {
		d.reported = day
		tell(d.OnChanged, day)
	}
}

// leftDay writes the day out in full, or says that it is none.
func (d *Date) leftDay() {
	day, ok := d.Date()
	if ok {
		d.editor.set(d.write(day))
		d.kept = d.Text()
		d.SetTrouble(Fine, "")
	} else {
		d.SetTrouble(Wrong, d.WrongWords())
	}
	d.readBack()
	if d.OnLeft != nil {
		d.OnLeft(day, ok)
	}
}

// WrongWords say what is wrong with a text that is no day to be used.
func (d *Date) WrongWords() string {
	if _, err := d.reader().Read(d.Text()); errors.Is(err, ErrFuture) {
		return d.host.Words.Say("field.date.future")
	}
	return d.host.Words.Say("field.date.unreadable")
}

// stepKey moves the day.
func (d *Date) stepKey(e *fyne.KeyEvent) bool {
	days := stepOf(e, 1, 7)
	if days == 0 {
		return false
	}
	day, ok := d.Date()
	if t, given := day.Time(); ok && given {
		day = record.DateOf(t.AddDate(0, 0, days))
	} else {
		day = record.DateOf(d.host.Today())
	}
	d.editor.set(d.write(day))
	d.editor.selectAll()
	d.changed()
	return true
}

package testsheet

import (
	"context"
	"errors"
	"strings"
	"time"

	"fyne.io/fyne/v2"

	"ebbwell/app/kit/field"
	"ebbwell/app/kit/look"
	"ebbwell/app/kit/saveto"
	"ebbwell/internal/device"
	"ebbwell/internal/quantity"
	"ebbwell/internal/record"
)

// newDeviceLink leads to what the file of a watch or a bike computer says of the
// session.
func newDeviceLink(b *binder, name string, ask func()) *field.Link {
	l := field.NewLink(b.Desk.Host, name, b.Say("testsheet.device"), ask)
	l.PassBy()
	return l
}

// askDevice asks for a device's file.
func (v *View) askDevice() {
	var read device.Session
	saveto.AskFile(v.desk, v.canvas(), saveto.Source{
		Name: "testsheet.device", Title: v.b.Say("testsheet.device.title"), Sentence: v.b.Say("testsheet.device.sentence"),
		Endings: []string{".fit", ".gpx", ".tcx"},
		Read: func(_ context.Context, path string) (err error) {
			f, err := saveto.OpenFile(path)
			if err != nil {
				return err
			}
			defer func() { err = errors.Join(err, f.Close()) }()
			read, err = device.Read(f)
			return err
		},
		Wrong: v.deviceWrong,
		Done:  func(string) { v.offerDevice(read) },
	})
}

// deviceWrong says what is wrong with a file and what to do.
func (v *View) deviceWrong(err error) (title, sentence string) {
	say := v.b.Say
	var e *device.Error
	if !errors.As(err, &e) {
		e = &device.Error{Code: device.CodeRead, Err: err}
	}
	title = say("testsheet.device.wrong." + string(e.Code))
	kept := say("testsheet.device.wrong.kept")
	switch {
	case e.Code == device.CodeLarge:
		title = say("testsheet.device.wrong.large", device.MostBytes>>20)
	case e.Code == device.CodeMany:
		title = say("testsheet.device.wrong.many", device.MostSamples)
	case e.Name != "" && e.Code == device.CodeValue:
		return title, say("testsheet.device.wrong.at.value", e.Line, e.Name, e.Text)
	case e.Line > 0:
		return title, say("testsheet.device.wrong.at.line", e.Line)
	case e.Byte > 0:
		return title, say("testsheet.device.wrong.at.byte", e.Byte)
	}
	return title, kept
}

// deviceDialog shows the values of a file beside those of the sheet.
type deviceDialog struct {
	offers []offer
	ticks  []*field.Check
}

// offerDevice shows what a file says, each value with a tick of its own.
func (v *View) offerDevice(f device.Session) {
	d := &deviceDialog{offers: deviceOffers(v.b.Doc.Now(), f, v.deviceZone(f))}
	say := v.b.Say
	columns := deviceColumns(say)
	rows := look.VBox(0, look.HeaderRow(12, columns))
	for i := range d.offers {
		o := &d.offers[i]
		if o.key == deviceHeart {
			o.text = say("testsheet.device.heart.note", v.desk.Words.Number(*o.number.Value, 0), v.deviceDay(f))
		}
		tick := field.NewCheck(v.desk.Host, "testsheet.device.take."+o.key, say("testsheet.device.value."+o.key))
		tick.Set(o.ticked)
		d.ticks = append(d.ticks, tick)
		rows.Add(look.FieldRow(12, columns, tick, look.NewLabel(v.offered(*o), look.Strong, look.Ink), look.NewLabel(v.onSheet(*o), look.Body, look.Ink2)))
		if note := v.offerNote(*o, f); note != "" {
			noteInRow(rows, note)
		}
	}
	content := look.VBox(10)
	if c := v.otherDay(f); c != nil {
		content.Add(c)
	}
	content.Add(rows)
	v.desk.Host.Ask(v.canvas(), field.Question{
		Name: "testsheet.device.offer", Title: say("testsheet.device.offer"), Sentence: v.deviceSummary(f), Content: content, Width: 720,
		Actions: []field.Action{
			{Name: "no", Text: say("field.ask.cancel")},
			{Name: "yes", Text: say("testsheet.device.take"), Kind: field.Primary, Do: func() bool { v.takeDevice(d); return false }},
		},
	})
}

// noteInRow puts a note into the last row, above its hairline.
func noteInRow(rows *fyne.Container, note string) {
	row, ok := rows.Objects[len(rows.Objects)-1].(*fyne.Container)
	if !ok {
		return
	}
	line := row.Objects[len(row.Objects)-1]
	row.Objects = append(row.Objects[:len(row.Objects)-1], look.Pad(0, 8, 8, 34, look.NewParagraph(note, look.Note, look.Ink2)), line)
}

// deviceColumns are the columns of the dialog.
func deviceColumns(say func(string, ...any) string) []look.Column {
	return []look.Column{
		{Title: say("testsheet.device.column.value"), Width: look.Share(1)},
		{Title: say("testsheet.device.column.file"), Width: look.Fixed(190)},
		{Title: say("testsheet.device.column.sheet"), Width: look.Fixed(150)},
	}
}

// deviceDay is the day of a file's session.
func (v *View) deviceDay(f device.Session) string {
	return v.desk.Words.Date(minuteOf(f.Start, v.deviceZone(f)))
}

// deviceZone is the zone of the clock a file's times are given by: the device's own, which
// is the wall's where the session was, else this computer's. Where both show the same at
// the end it is this computer's, which knows when clocks change.
func (v *View) deviceZone(f device.Session) *time.Location {
	here := v.desk.Now().Location()
	if f.Zone == nil || f.End.In(f.Zone).Format(time.DateTime) == f.End.In(here).Format(time.DateTime) {
		return here
	}
	return f.Zone
}

// deviceClock says by which clock the times are, where that may be another than the
// athlete's; empty where both clocks agree.
func (v *View) deviceClock(f device.Session) string {
	here := v.desk.Now().Location()
	switch {
	case f.Zone == nil:
		return v.b.Say("testsheet.device.clock.computer")
	case v.deviceZone(f) == here:
		return ""
	}
	return v.b.Say("testsheet.device.clock.device", v.desk.Words.Clock(minuteOf(f.Start, here)))
}

// deviceSummary says in short what the file holds.
func (v *View) deviceSummary(f device.Session) string {
	zone := v.deviceZone(f)
	from, to := minuteOf(f.Start, zone), minuteOf(f.End, zone)
	w := v.desk.Words
	list := []string{v.b.Say("testsheet.device.summary", string(f.Format), w.Date(from), w.Clock(from), w.Clock(to))}
	if clock := v.deviceClock(f); clock != "" {
		list = append(list, clock)
	}
	if f.Distance.Known {
		list = append(list, v.b.Say("testsheet.device.way", v.by.Amount(f.Distance.Kilometres, quantity.Kilometre)))
	}
	if n := len(f.Pauses); n > 0 {
		list = append(list, v.b.Say("testsheet.device.pauses", n, v.by.Amount(float64(f.Paused()), quantity.Minute)))
	}
	if f.Parts > 1 {
		list = append(list, v.b.Say("testsheet.device.parts", f.Parts))
	}
	if _, ok := endsOn(from, to); !ok {
		list = append(list, v.b.Say("testsheet.device.long"))
	}
	return strings.Join(list, " ")
}

// otherDay says that a file is of another day than the sheet; nil where it is not.
func (v *View) otherDay(f device.Session) fyne.CanvasObject {
	now, ok := v.b.Doc.Now().Record.Session.Date.Time()
	from := minuteOf(f.Start, v.deviceZone(f))
	if !ok || record.DateOf(from) == record.DateOf(now) {
		return nil
	}
	w := v.desk.Words
	return look.NewCaution(v.b.Say("testsheet.device.otherday", w.Date(from), w.Date(now)), v.b.Say("testsheet.device.otherday.do"), nil)
}

// offered writes the value of the file.
func (v *View) offered(o offer) string {
	switch o.key {
	case deviceDate:
		return v.dayText(o.day)
	case deviceStart:
		return string(o.clock)
	case deviceEnd:
		if o.nextDay {
			return v.b.Say("testsheet.device.nextday", string(o.clock))
		}
		return string(o.clock)
	case deviceHeart:
		return v.b.Say("testsheet.device.heart", v.desk.Words.Number(*o.number.Value, 0))
	}
	return v.by.Amount(*o.number.Value, o.unit)
}

// dayText writes a day; a stroke for none.
func (v *View) dayText(d record.Date) string {
	if t, ok := d.Time(); ok {
		return v.desk.Words.ShortDay(t)
	}
	return "–"
}

// onSheet writes what the sheet has now.
func (v *View) onSheet(o offer) string {
	raw := v.b.Doc.Now().Raw[o.path()]
	switch {
	case o.same:
		return v.b.Say("testsheet.device.same")
	case raw != "":
		return raw
	case o.key == deviceDate:
		return v.dayText(o.dayNow)
	case o.key == deviceHeart && o.filled:
		return v.b.Say("testsheet.device.hasnote")
	case o.clockNow != "":
		return string(o.clockNow)
	case o.numberNow.Known():
		return v.by.Amount(*o.numberNow.Value, o.unit)
	}
	return "–"
}

// offerNote says how a value was made, and why it is not ticked.
func (v *View) offerNote(o offer, f device.Session) string {
	say := v.b.Say
	var list []string
	switch o.key {
	case devicePlayed:
		list = append(list, say("testsheet.device.note.played"))
	case deviceSpeed:
		if f.Moving > 0 {
			list = append(list, say("testsheet.device.note.speed", v.by.Amount(f.Moving.Minutes(), quantity.Minute)))
		}
		if o.doubt {
			list = append(list, say("testsheet.device.note.unsteady"))
		}
	case deviceHeart:
		list = append(list, say("testsheet.device.note.heart"))
	case deviceTemperature:
		list = append(list, say("testsheet.device.note.temperature"))
	}
	if o.key == deviceTemperature || o.key == devicePower || o.key == deviceHeart {
		if o.samples > 0 {
			list = append(list, say("testsheet.device.samples", o.samples))
		} else {
			list = append(list, say("testsheet.device.own"))
		}
	}
	return strings.Join(list, " ")
}

// takeDevice puts what is ticked on the sheet, in one step.
func (v *View) takeDevice(d *deviceDialog) {
	var taken []offer
	for i, o := range d.offers {
		if d.ticks[i].On() && !o.same {
			taken = append(taken, o)
		}
	}
	if len(taken) == 0 {
		return
	}
	v.b.Pick("testsheet.device", func(s *sheet) {
		for _, o := range taken {
			o.take(s)
		}
	})
	v.follow()
	v.desk.Offer(v.b.Say("testsheet.device.taken", len(taken)), v.b.Say("testsheet.device.undo"), func() { v.Undo() })
}

package testsheet

import (
	"strconv"

	"fyne.io/fyne/v2"

	"ebbwell/app/kit/field"
	"ebbwell/app/kit/look"
	"ebbwell/internal/evidence"
	"ebbwell/internal/quantity"
	"ebbwell/internal/record"
)

// weighingList is the readings of one moment: one to begin with for a session
// and a line more when it is asked for, each on a line of its own day for a
// morning with an empty one behind the last.
type weighingList struct {
	// hidden reports whether body mass is hidden: a mass is then shown only while it
	// is typed.
	hidden func() bool
	b      *binder
	part   string
	moment record.Moment
	rows   []*weighingRow
	// more shows a line for one reading more; asked is how many lines were wanted.
	more  *field.Link
	asked int
	// again reports whether something asks for a second reading; may be nil.
	again func() bool
	lines *fyne.Container
	box   *fyne.Container
}

// weighingRow is one reading.
type weighingRow struct {
	mass *field.Number
	day  *field.Date
	take *field.Button
	note *rowNote
	box  *fyne.Container
	// pounds is the reading in kilograms if it was typed in pounds.
	pounds float64
}

func newWeighingList(b *binder, part string, m record.Moment) *weighingList {
	l := &weighingList{b: b, part: part, moment: m, lines: look.VBox(6)}
	l.more = field.NewLink(b.Desk.Host, "testsheet."+string(m)+".mass.more", b.Say("testsheet.mass.second"), l.another)
	l.more.PassBy()
	l.box = look.VBox(2, l.lines, look.Pad(0, 0, 0, -field.LinkPad, look.HBox(0, l.more)))
	l.grow(1)
	return l
}

// another shows a line for one reading more and goes to it.
func (l *weighingList) another() {
	l.asked = filledWeighings(l.b.Doc.Now(), l.moment) + 1
	l.b.OnLeft()
	for _, r := range l.rows {
		if r.box.Visible() && r.mass.Text() == "" {
			r.mass.Focus()
			return
		}
	}
}

// grow makes lines up to a number of them.
func (l *weighingList) grow(to int) {
	for len(l.rows) < to {
		r := l.row(len(l.rows))
		l.rows = append(l.rows, r)
		l.lines.Add(r.box)
	}
}

// row makes the i-th line.
func (l *weighingList) row(i int) *weighingRow {
	r := &weighingRow{note: newRowNote()}
	fields := map[record.Moment]evidence.Field{
		record.Before: evidence.MassBefore, record.After: evidence.MassAfter, record.Morning: evidence.MorningMass,
	}
	name := "testsheet." + string(l.moment) + ".mass." + strconv.Itoa(i+1)
	r.mass = l.b.Number(l.part, name, fields[l.moment], quantity.Kilogram, func(t *record.Test, grow bool) (*record.Number, string) {
		if grow {
			growWeighings(t, l.moment, i)
		}
		w := weighingAt(t, l.moment, i, grow)
		if w == nil {
			return nil, ""
		}
		if grow && l.moment != record.Morning && w.At == nil {
			at := l.b.Desk.Now().UTC()
			w.At = &at
		}
		return &w.Mass, "weighings." + string(w.ID) + ".mass"
	})
	r.mass.SetItem(i + 1)
	r.mass.SetSpoken(l.b.Say("testsheet.history.row", l.b.Say("testsheet.field.weighings.mass"), l.b.Say("testsheet.history.weighing."+string(l.moment), strconv.Itoa(i+1))))
	r.mass.Hint = r.mass.PoundsHint
	r.mass.OnProblem = func(field.Weight, string) {} // said below the line, where there is room
	r.take = field.NewButton(l.b.Desk.Host, name+".pounds", "", field.Outline, func() { l.takePounds(i) })
	r.take.Hide()
	r.mass.OnEnter = func(field.Reading) { l.enter(r) }
	tracks, objects := []look.Track{look.Fixed(124), look.Share(1)}, []fyne.CanvasObject{r.mass, look.HBox(0, r.take)}
	if l.moment == record.Morning {
		r.day = l.b.Date(l.part, "testsheet.morning.day."+strconv.Itoa(i+1), field.Past, func(t *record.Test) (*record.Date, string) {
			if w := weighingAt(t, l.moment, i, false); w != nil {
				return &w.Date, "weighings." + string(w.ID) + ".date"
			}
			return new(record.Date), ""
		})
		tracks, objects = []look.Track{look.Fixed(124), look.Fixed(196), look.Share(1)}, []fyne.CanvasObject{r.mass, r.day, objects[1]}
	}
	r.box = look.VBox(0, look.Columns(12, tracks, objects...), r.note.box)
	return r
}

// growWeighings makes the empty readings before the i-th, where a person fills
// the second line first.
func growWeighings(t *record.Test, m record.Moment, i int) {
	for n := len(weighings(*t, m)); n < i; n++ {
		weighingAt(t, m, n, true)
	}
}

// enter goes on to what is offered, or to the next field.
func (l *weighingList) enter(r *weighingRow) {
	if r.take.Visible() {
		r.take.Focus()
		return
	}
	l.b.Desk.Host.Key(&fyne.KeyEvent{Name: fyne.KeyReturn})
}

// takePounds takes a reading as pounds.
func (l *weighingList) takePounds(i int) {
	kg := l.rows[i].pounds
	l.b.Pick(l.rows[i].take.Name(), func(s *sheet) {
		w := weighingAt(&s.Record, l.moment, i, false)
		if w == nil {
			return
		}
		w.Mass = record.Num(kg, quantity.Pound)
		delete(s.Reasons, "weighings."+string(w.ID)+".mass")
	})
	l.b.Show()
	l.b.OnLeft() // the offer is taken
	l.rows[i].mass.Focus()
}

// show follows the sheet.
func (l *weighingList) show(s sheet) {
	covered := l.hidden != nil && l.hidden()
	filled := filledWeighings(s, l.moment)
	wanted := max(1, filled, l.asked)
	if filled == 1 && l.again != nil && l.again() {
		wanted = 2
	}
	if l.moment == record.Morning {
		wanted = filled + 1
	}
	l.grow(wanted)
	look.ShowIf(l.more, l.moment != record.Morning && filled >= 1 && wanted == filled && s.Record.State == record.TestOpen)
	l.more.SetText(l.b.Say("testsheet.mass.second"))
	if filled > 1 {
		l.more.SetText(l.b.Say("testsheet.mass.another"))
	}
	for i, r := range l.rows {
		look.ShowIf(r.box, i < wanted)
		r.mass.Cover(covered)
		l.showRow(r, s, i)
		if covered && l.b.Typing() != r.mass.Name() {
			r.note.set("") // it may name the mass
		}
	}
}

// showRow shows what belongs to one line beside its number.
func (l *weighingList) showRow(r *weighingRow, s sheet, i int) {
	reading := r.mass.Reading()
	r.pounds = 0
	if reading.Known && r.mass.PoundsHint(reading) != "" {
		if kg, err := quantity.Convert(reading.Value, quantity.Pound, quantity.Kilogram); err == nil {
			r.pounds = kg
		}
	}
	if r.pounds > 0 {
		r.take.SetText(l.b.Say("testsheet.pounds.take", l.b.Desk.Words.Number(r.pounds, 1)))
	}
	_, words := r.mass.Trouble()
	r.note.set(words)
	offered := r.take.Visible()
	look.ShowIf(r.take, r.pounds > 0 && s.Record.State == record.TestOpen)
	if offered != r.take.Visible() {
		r.box.Refresh()
	}
	if r.day != nil {
		w := weighingAt(&s.Record, l.moment, i, false)
		if w != nil && !r.day.Visible() {
			r.day.SetDate(w.Date) // the day a new reading is most likely of
		}
		look.ShowIf(r.day, w != nil)
	}
}

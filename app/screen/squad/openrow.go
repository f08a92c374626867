package squad

import (
	"slices"
	"strconv"

	"fyne.io/fyne/v2"

	"ebbwell/app/kit/field"
	"ebbwell/app/kit/look"
	"ebbwell/internal/consult"
	"ebbwell/internal/evidence"
	"ebbwell/internal/quantity"
	"ebbwell/internal/record"
	"ebbwell/internal/squad"
)

// waterID is plain water.
const waterID = consult.Water

// input is a field of the open row that Enter goes through.
type input struct {
	// what names the field: "before", "bottle.1.after".
	what string
	// station is the station it belongs to.
	station string
	control interface {
		field.Field
		Text() string
		SelectAll()
		TakeRunes(func(rune) bool)
	}
	// has reports whether the sheet has a value for it.
	has func(squad.Row) bool
	// put commits a text that is read as a whole when the field is left; nil where
	// every key is taken in.
	put func(text string)
}

// The stations, in the order of the day.
const (
	stationBefore  = "before"
	stationFilled  = "filled"
	stationBottles = "bottles"
	stationAfter   = "after"
	stationUrine   = "urine"
	stationPatch   = "patch"
	stationAsk     = "symptoms"
)

// openRow is the row at the scale, with its fields.
type openRow struct {
	v  *View
	i  int
	id record.ID
	// inputs in the order of the hands' work.
	inputs []*input
	view   *rowView
	// what follows the sheet while one types.
	loss, under, state *look.Label
	missing            *look.Paragraph
	drunk              []*look.Label
	patchFirst         *look.Label
	patchSecond        *look.Label
	asked              *look.Label
	guess              *field.Number
	against            *look.Paragraph
	panels             *fyne.Container
	panelInputs        []*input
	// panelled is what the panels say, to see whether they are to be built anew.
	panelled string
	// hints say what the keys do, legend what the numbers of the symptoms mean.
	hints, legend *look.Paragraph
	// level is the room there is: the columns that find none stand below, as extra.
	level level
	extra []cell
}

// newOpenRow builds the row of the i-th athlete.
func newOpenRow(v *View, i int) *openRow {
	o := &openRow{v: v, i: i, id: v.rows[i].Sheet.Test.ID, level: v.level}
	r := v.rows[i]
	o.view = newRowView(nameOfRow(i), nil)
	o.view.open = true
	o.view.pitch, o.view.box = look.ControlHeight()+6, look.ControlHeight()
	o.add(look.NewLabel(r.Number(), look.Note, look.Ink2), colNumber, 0, false)
	o.add(look.NewLabel(r.Sheet.Athlete.Name, look.Title, look.Ink).Shorten(), colName, 0, false)
	o.add(look.NewLabel(v.underName(r), look.Note, look.Ink2).Shorten(), colName, 0, true)
	o.mass(record.Before)
	o.bottles(r)
	o.estimate()
	o.mass(record.After)
	o.rest(r)
	o.below()
	o.show()
	return o
}

// add puts an object into a column.
func (o *openRow) add(object fyne.CanvasObject, col column, line int, sub bool) {
	if leftOut(col, o.level) {
		o.extra = append(o.extra, cell{object: object, col: col, line: line, sub: sub})
		return
	}
	o.view.cells = append(o.view.cells, cell{object: object, col: col, line: line, sub: sub})
}

// row is how the athlete stands now.
func (o *openRow) row() squad.Row { return o.v.rows[o.i] }

// input takes a field in.
func (o *openRow) input(in *input) {
	in.control.TakeRunes(func(r rune) bool { return o.v.key(in, r) })
	o.inputs = append(o.inputs, in)
}

// number makes a field for a number of an athlete's sheet, under a whole name; at finds
// it with its path, nil where it is not there and is not to grow.
func (v *View) number(name string, id record.ID, f evidence.Field, u quantity.Unit, trouble func(field.Weight, string), at func(t *record.Test, grow bool) (*record.Number, string)) *field.Number {
	n := field.NewNumber(v.desk.Host, name, f, u)
	n.OnProblem = trouble // before there is a number to judge
	n.SetShown(v.speaker(false).By.Unit(u))
	s := v.doc.Now().sheets[id]
	if x, path := at(&s.Record, false); x != nil {
		switch {
		case s.Raw[path] != "":
			n.SetRaw(s.Raw[path])
		case x.Known():
			n.SetValue(*x.Value)
		}
	}
	n.OnChanged = func(r field.Reading) {
		v.edit(name, id, func(s *sheet) {
			x, path := at(&s.Record, true)
			s.Put(x, path, r)
		})
	}
	n.OnLeft = func(field.Reading) { v.left() }
	return n
}

// number makes a field for a number of the sheet.
func (o *openRow) number(what string, f evidence.Field, u quantity.Unit, at func(t *record.Test, grow bool) (*record.Number, string)) *field.Number {
	n := o.v.number("squad."+what, o.id, f, u, func(field.Weight, string) {}, at) // said below the row
	n.SetSuffix("")
	n.OnEnter = func(field.Reading) { o.v.enter(what) }
	if o.row().Closed {
		n.Disable()
	}
	return n
}

// weighing is the n-th weighing of a moment, from 0; nil where it is not there and
// is not to grow.
func (v *View) weighing(t *record.Test, m record.Moment, n int, grow bool) *record.Weighing {
	count := 0
	for i := range t.Weighings {
		if t.Weighings[i].Moment != m {
			continue
		}
		if count == n {
			return &t.Weighings[i]
		}
		count++
	}
	if !grow {
		return nil
	}
	for ; count <= n; count++ {
		t.Weighings = append(t.Weighings, record.Weighing{Meta: record.Meta{ID: record.NewID()}, Moment: m, Order: len(t.Weighings) + 1})
	}
	return &t.Weighings[len(t.Weighings)-1]
}

// massField makes the field of the n-th weighing of a moment.
func (o *openRow) massField(what string, m record.Moment, n int) *field.Number {
	kind := evidence.MassBefore
	if m == record.After {
		kind = evidence.MassAfter
	}
	f := o.number(what, kind, quantity.Kilogram, func(t *record.Test, grow bool) (*record.Number, string) {
		w := o.v.weighing(t, m, n, grow)
		if w == nil {
			return nil, ""
		}
		if grow && w.At == nil {
			w.At = o.v.now()
		}
		return &w.Mass, "weighings." + string(w.ID) + ".mass"
	})
	f.SetItem(n + 1)
	f.Cover(o.row().Hidden)
	if m == record.After {
		left := f.OnLeft
		f.OnLeft = func(r field.Reading) {
			o.setFirstAside(m)
			left(r)
		}
	}
	return f
}

// setFirstAside sets a mistaken first weighing aside once a second stands.
func (o *openRow) setFirstAside(m record.Moment) {
	t := o.v.doc.Now().sheets[o.id].Record
	before := t.Clone()
	squad.WeighAgain(&before, m)
	for i := range before.Weighings {
		if before.Weighings[i].Aside != t.Weighings[i].Aside {
			o.v.edit(o.v.typing, o.id, func(s *sheet) { squad.WeighAgain(&s.Record, m) })
			return
		}
	}
}

// hasMass reports whether the n-th weighing of a moment stands.
func hasMass(m record.Moment, n int) func(squad.Row) bool {
	return func(r squad.Row) bool { return len(squad.Masses(r.Sheet.Test, m)) > n }
}

// mass is the field of a weighing in its column.
func (o *openRow) mass(m record.Moment) {
	col, station := colBefore, stationBefore
	if m == record.After {
		col, station = colAfter, stationAfter
	}
	f := o.massField(string(m), m, 0)
	if m == record.After {
		f.SetStyle(look.Second)
	}
	o.add(f, col, 0, false)
	o.input(&input{what: string(m), station: station, control: f, has: hasMass(m, 0)})
}

// bottles are the fields of the bottles, a line each.
func (o *openRow) bottles(r squad.Row) {
	var before, after []*input
	for i, b := range r.Sheet.Test.Bottles {
		of := look.Drink
		if b.ProductID == waterID {
			of = look.Water
		}
		o.add(look.NewSwatch(of), colSwatch, i, false)
		name := "bottle." + strconv.Itoa(i+1)
		one := o.number(name+".before", evidence.BottleMass, quantity.Gram, o.inBottle(i, "before", func(b *record.Bottle) *record.Number { return &b.Before }))
		two := o.number(name+".after", evidence.BottleMass, quantity.Gram, o.inBottle(i, "after", func(b *record.Bottle) *record.Number { return &b.After }))
		one.SetItem(i + 1)
		two.SetItem(i + 1)
		o.add(one, colBottle, i, false)
		o.add(two, colBottleAfter, i, false)
		before = append(before, &input{what: name + ".before", station: stationFilled, control: one, has: func(r squad.Row) bool { return weighedOr(r.Sheet.Test.Bottles[i].Before, r.Sheet.Test.Bottles[i]) }})
		after = append(after, &input{what: name + ".after", station: stationBottles, control: two, has: func(r squad.Row) bool { return weighedOr(r.Sheet.Test.Bottles[i].After, r.Sheet.Test.Bottles[i]) }},
			o.refill(i, name+".more"))
		drunk := look.NewLabel("", look.Body, look.Ink).Right()
		o.drunk = append(o.drunk, drunk)
		o.add(drunk, colDrunk, i, false)
	}
	for _, in := range append(before, after...) {
		o.input(in)
	}
}

// weighedOr reports whether a mass of a bottle stands, or a volume in its place.
func weighedOr(mass record.Number, b record.Bottle) bool { return mass.Known() || b.Volume.Known() }

// refill is the field of what was added to a bottle and poured away.
func (o *openRow) refill(i int, what string) *input {
	l := o.line(what, 24)
	l.AlignRight()
	b := o.row().Sheet.Test.Bottles[i]
	path := "bottles." + string(b.ID) + ".refills"
	if text := o.v.amountsText(b); text != o.v.say("squad.dash") {
		l.SetText(text)
	}
	if raw := o.v.doc.Now().sheets[o.id].Raw[path]; raw != "" {
		l.SetText(raw)
	}
	in := &input{what: what, station: stationBottles, control: l, has: func(r squad.Row) bool {
		b := r.Sheet.Test.Bottles[i]
		return len(b.Refills) > 0 || b.Poured.Known() || b.Volume.Known()
	}}
	in.put = func(text string) {
		added, poured, ok := squad.Amounts(text)
		l.SetTrouble(field.Fine, "")
		if !ok {
			l.SetTrouble(field.Wrong, o.v.say("squad.refill.unreadable"))
		}
		o.v.edit("squad."+what, o.id, func(s *sheet) {
			delete(s.Raw, path)
			if !ok {
				s.Raw[path] = text
				return
			}
			squad.PutAmounts(&s.Record.Bottles[i], added, poured)
		})
	}
	l.OnChanged = in.put
	o.add(l, colRefill, i, false)
	return in
}

// line makes a field for a text.
func (o *openRow) line(what string, most int) *field.Line {
	l := field.NewLine(o.v.desk.Host, "squad."+what, most)
	l.OnLeft = func(string) { o.v.left() }
	l.OnEnter = func(string) { o.v.enter(what) }
	if o.row().Closed {
		l.Disable()
	}
	return l
}

// rest are urine, patch and symptoms, and what is known so far.
func (o *openRow) rest(r squad.Row) {
	urine := o.number("urine", evidence.UrineMass, quantity.Gram, func(t *record.Test, _ bool) (*record.Number, string) { return &t.Loss.Urine, "loss.urine" })
	urine.SetPlaceholder(o.v.say("squad.urine.unit"))
	typed := urine.OnChanged
	urine.OnChanged = func(reading field.Reading) {
		typed(reading)
		o.v.edit("squad.urine", o.id, func(s *sheet) { s.Record.Loss.NoUrine = reading.Known && reading.Value == 0 })
	}
	if r.Sheet.Test.Loss.NoUrine && !r.Sheet.Test.Loss.Urine.Known() {
		urine.SetValue(0)
	}
	o.add(urine, colUrine, 0, false)
	o.input(&input{what: "urine", station: stationUrine, control: urine, has: func(r squad.Row) bool { return r.Sheet.Test.Loss.Urine.Known() || r.Sheet.Test.Loss.NoUrine }})
	o.patch()
	o.symptoms()
	o.loss, o.under = look.NewLabel("", look.Second, look.Ink), look.NewLabel("", look.Note, look.Ink2).Shorten()
	o.state, o.missing = look.NewLabel("", look.Strong, look.Ink).Shorten(), look.NewParagraph("", look.Note, look.Ink2)
	o.add(o.loss, colLoss, 0, false)
	o.add(o.under, colLoss, 0, true)
	o.add(o.state, colState, 0, false)
	o.add(o.missing, colState, 0, true)
}

// commit ends the visit to a field whose text is read as a whole.
func (o *openRow) commit() {
	for _, in := range o.inputs {
		if in.put != nil && in.control.Text() != "" && (in.what == "patch" || in.what == "symptoms") {
			in.put(in.control.Text())
		}
	}
}

// find is the field with a name; nil where there is none.
func (o *openRow) find(what string) *input {
	for _, in := range append(slices.Clone(o.inputs), o.panelInputs...) {
		if in.what == what {
			return in
		}
	}
	return nil
}

package breaks

import (
	"slices"
	"strconv"

	"fyne.io/fyne/v2"

	"ebbwell/app/kit/chart"
	"ebbwell/app/kit/field"
	"ebbwell/app/kit/look"
	"ebbwell/app/screen/planner/part"
	"ebbwell/app/screen/planner/wording"
	"ebbwell/internal/evidence"
	"ebbwell/internal/plan"
	"ebbwell/internal/quantity"
	"ebbwell/internal/record"
)

// mostFields is how many breaks have a field each: more would not stand side by
// side, and then the selected one alone has a field.
const mostFields = 7

// Editor sets how much is drunk at a break, by its height in a picture or as a
// number. What is set stays; the other breaks are filled around it.
type Editor struct {
	v *part.Plan
	// Stops are the breaks as a picture shows them.
	Stops []chart.BreakStop
	// OnShown is told that the stops are others.
	OnShown func()
	// OnSelected is told the stop that is dragged or typed at.
	OnSelected func(stop int)
	// Fields are the amounts as numbers, one for each stop; where there are too many
	// stops it is one, for the selected stop.
	Fields []*field.Number
	one    bool
	at     int
	drag   dragged
	// takes are what the stops were made of.
	takes []plan.Take
}

// dragged is the amount that a column is dragged to, until it is let go.
type dragged struct {
	on   bool
	stop int
	ml   float64
}

// NewEditor makes an editor of the breaks of a plan; it has no fields.
func NewEditor(v *part.Plan) *Editor { return &Editor{v: v} }

// Open makes the fields of the breaks there are. It reports whether they are
// others than before.
func (e *Editor) Open() (others bool) {
	n, was := len(e.v.Live.Take.Takes), e.one
	e.one = n > mostFields && e.v.Now.Draft()
	switch {
	case !e.v.Now.Draft():
		n = 0 // an agreed plan shows its amounts as text
	case e.one:
		n = 1
	}
	others = len(e.Fields) != n || e.one != was
	for len(e.Fields) < n {
		e.Fields = append(e.Fields, e.number(len(e.Fields)))
	}
	e.Fields = e.Fields[:n]
	for i, f := range e.Fields {
		look.EnableIf(f, e.v.Now.Draft() && e.kept(e.stopOf(i)) >= 0)
	}
	return others
}

// One reports whether the one field there is belongs to the selected break.
func (e *Editor) One() bool { return e.one }

// stopOf is the stop of a field.
func (e *Editor) stopOf(i int) int {
	if e.one {
		return e.at
	}
	return i
}

// fieldOf is the field of a stop; nil where it has none.
func (e *Editor) fieldOf(stop int) *field.Number {
	switch {
	case e.one && stop == e.at && len(e.Fields) > 0:
		return e.Fields[0]
	case !e.one && stop < len(e.Fields):
		return e.Fields[stop]
	}
	return nil
}

// Select gives the one field to another break.
func (e *Editor) Select(stop int) {
	if e.at == stop && e.one {
		return
	}
	e.at = stop
	if e.one && len(e.Fields) > 0 && stop >= 0 && stop < len(e.v.Live.Take.Takes) {
		look.EnableIf(e.Fields[0], e.v.Now.Draft() && e.kept(stop) >= 0)
		e.Fields[0].SetValue(float64(e.v.Live.Take.Takes[stop].ML))
	}
}

// number is a field of a stop.
func (e *Editor) number(i int) *field.Number {
	n := field.NewNumber(e.v.Desk.Host, "planner.break."+strconv.Itoa(i+1)+".amount", evidence.PouredVolume, quantity.Millilitre)
	n.SetDecimals(0)
	n.SetOnFocused(func() { e.selected(e.stopOf(i)) })
	n.OnLeft = func(r field.Reading) {
		switch stop := e.stopOf(i); {
		case stop >= len(e.v.Live.Take.Takes) || r.State == field.Unreadable || r.State == field.Refused:
			return
		case r.State == field.Empty:
			e.set(stop, record.Number{})
		case quantity.Round(r.Value, 0) != float64(e.v.Live.Take.Takes[stop].ML):
			e.set(stop, record.Num(quantity.Round(r.Value, 0), quantity.Millilitre))
		}
	}
	return n
}

// Follow shows what a movement changed.
func (e *Editor) Follow() {
	takes := e.v.Live.Take.Takes
	if len(e.takes) != len(takes) || len(e.Stops) != len(takes) {
		e.takes, e.Stops = make([]plan.Take, len(takes)), make([]chart.BreakStop, len(takes))
	}
	for i := range takes {
		if e.takes[i] != takes[i] || e.Stops[i].Parts == nil {
			name := ""
			if e.takes[i].Chance == takes[i].Chance {
				name = e.Stops[i].Name
			}
			e.takes[i], e.Stops[i] = takes[i], stop(e.v.Speaker, takes[i], name)
		}
	}
	for i, f := range e.Fields {
		if stop := e.stopOf(i); stop >= 0 && stop < len(e.v.Live.Take.Takes) && !f.Focused() {
			f.SetValue(float64(e.v.Live.Take.Takes[stop].ML))
		}
	}
	e.shown()
}

func (e *Editor) selected(stop int) {
	if e.OnSelected != nil {
		e.OnSelected(stop)
	}
}

func (e *Editor) shown() {
	if e.OnShown != nil {
		e.OnShown()
	}
}

// Drag shows a column at another height, no higher than the chance carries.
func (e *Editor) Drag(stop int, to float64) {
	v := e.v
	if !v.Now.Draft() || stop >= len(v.Live.Take.Takes) {
		return
	}
	if !e.drag.on {
		e.selected(stop)
	}
	take := v.Live.Take.Takes[stop]
	ml := quantity.RoundTo(min(to, take.Chance.MostML()-evidence.ScheduleRound/2), evidence.ScheduleRound)
	e.drag = dragged{on: true, stop: stop, ml: ml}
	var drink [plan.Drinks]float64
	for d, of := range take.ByDrink {
		if take.ML > 0 {
			drink[d] = ml * float64(of) / float64(take.ML)
		}
	}
	if take.ML == 0 {
		drink[plan.Water] = ml
	}
	shown := &e.Stops[stop]
	e.takes[stop] = plan.Take{} // made anew when the bottle is let go
	shown.Parts, shown.Amount, shown.Mouthfuls = wording.PartsOf(drink, take.Food), v.Speaker.Millilitres(ml), ""
	shown.Number = v.Speaker.Plain(ml, quantity.Millilitre)
	if f := e.fieldOf(stop); f != nil {
		f.SetValue(ml)
	}
	e.shown()
}

// Release sets the amount of the break; the others are filled around it.
func (e *Editor) Release() {
	drag := e.drag
	e.drag = dragged{}
	if drag.on {
		e.set(drag.stop, record.Num(drag.ml, quantity.Millilitre))
	}
}

// kept is the place of a stop's chance in the record; -1 where it has none.
func (e *Editor) kept(stop int) int {
	if stop >= len(e.v.Live.Take.Takes) {
		return -1
	}
	chance := e.v.Live.Take.Takes[stop].Chance
	return slices.IndexFunc(e.v.Now.Plan.Chances, func(c record.Chance) bool { return sameChance(chance, c) })
}

// set keeps an amount for the chance of a stop, as one step back.
func (e *Editor) set(stop int, amount record.Number) {
	at := e.kept(stop)
	if at < 0 {
		return
	}
	id := e.v.Now.Plan.Chances[at].ID
	e.v.Binder.Pick("planner.breaks.set", func(s *part.Sheet) { chanceAt(&s.Record, id).Amount = amount })
}

// Objects are the fields as they are laid out.
func (e *Editor) Objects() []fyne.CanvasObject {
	var list []fyne.CanvasObject
	for _, f := range e.Fields {
		list = append(list, f)
	}
	return list
}

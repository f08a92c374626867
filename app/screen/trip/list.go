package trip

import (
	"cmp"
	"context"
	"fmt"
	"slices"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"

	"ebbwell/app/kit/desk"
	"ebbwell/app/kit/field"
	"ebbwell/app/kit/look"
	"ebbwell/app/screen/heat"
	"ebbwell/internal/record"
)

// List is the table of trips.
type List struct {
	desk  *desk.Desk
	sp    heat.Speaker
	trips []record.Trip
	names map[record.ID]string
	table *look.Table
	add   *field.Button
	body  fyne.CanvasObject
}

var _ desk.View = (*List)(nil)

// NewList loads the trips.
func NewList(d *desk.Desk) (*List, error) {
	trips, err := d.Store.Trips(context.Background())
	if err != nil {
		return nil, fmt.Errorf("list the trips: %w", err)
	}
	names, err := d.Store.TravellerNames(context.Background())
	if err != nil {
		return nil, fmt.Errorf("list the travellers: %w", err)
	}
	v := &List{desk: d, sp: heat.Speaker{Speaker: d.Speaker(false)}, trips: inOrder(trips, d.Today(), d.Words.Order()), names: names}
	say := d.Words.Say
	v.add = field.NewButton(d.Host, "trips.new", say("trips.new"), field.Primary, v.begin)
	if len(trips) == 0 {
		first := field.NewButton(d.Host, "trips.first", say("trips.new"), field.Primary, v.begin)
		v.body = look.Pad(16, 0, 20, 0, look.NewSheet(look.Empty(say("trips.empty"), first)))
		return v, nil
	}
	v.build()
	return v, nil
}

// inOrder puts trips in the order they matter: those to come and those going
// on by their next day, those without dates, those that are over, the last
// first. Those of one day are in the order of their names.
func inOrder(trips []record.Trip, today record.Date, byName func(a, b string) int) []record.Trip {
	rank := func(t record.Trip) (int, string) {
		from, until, ok := dates(t)
		switch {
		case !ok:
			return 1, ""
		case record.DateOf(until) >= today:
			return 0, string(record.DateOf(from))
		}
		return 2, string(record.DateOf(until))
	}
	list := slices.Clone(trips)
	slices.SortStableFunc(list, func(a, b record.Trip) int {
		ra, da := rank(a)
		rb, db := rank(b)
		if ra == 2 && rb == 2 {
			da, db = db, da
		}
		return cmp.Or(cmp.Compare(ra, rb), cmp.Compare(da, db), byName(a.Name, b.Name))
	})
	return list
}

// build makes the table.
func (v *List) build() {
	say := v.desk.Words.Say
	v.table = look.NewTable("trips.table", []look.Column{
		{Title: say("trips.name"), Width: look.Share(14)}, {Title: say("trips.who"), Width: look.Share(8)},
		{Title: say("trips.dates"), Width: look.Share(9)}, {Title: say("trips.stops"), Width: look.Fixed(60), Right: true, From: 820},
		{Title: say("trips.next"), Width: look.Share(10)},
	}).Roomy().Scrolling()
	v.table.OnOpened = v.open
	var rows [][]look.Cell
	for _, t := range v.trips {
		rows = append(rows, v.cells(t))
	}
	v.table.SetRows(rows)
	v.body = container.NewStack(look.Pad(16, 0, 20, 0, look.VBox(0, look.Grow(look.NewSheet(look.VBox(0, look.Grow(v.table)))))))
}

// cells are the texts of one trip.
func (v *List) cells(t record.Trip) []look.Cell {
	w := v.desk.Words
	days := w.Say("trips.nodates")
	if from, until, ok := dates(t); ok {
		days = v.sp.Span(from, until)
	}
	return []look.Cell{
		{Text: title(v.sp, t), Style: look.Strong}, {Text: v.who(t), Tone: look.Ink2}, {Text: days},
		{Text: w.Number(float64(len(t.Stops)), 0), Tone: look.Ink2}, {Text: v.next(t), Tone: look.Ink2, Short: v.nextDay(t)},
	}
}

// who names one or two travellers, and counts more.
func (v *List) who(t record.Trip) string {
	var names []string
	for _, x := range t.Travellers {
		if name := v.names[x.AthleteID]; name != "" {
			names = append(names, name)
		}
	}
	v.desk.Words.Sort(names)
	switch len(names) {
	case 0:
		return v.desk.Words.Say("trip.nobody")
	case 1, 2:
		return v.desk.Words.List(names)
	}
	return v.desk.Words.Say("trip.travellers", len(names))
}

// next says what comes next on a trip.
func (v *List) next(t record.Trip) string {
	say, today := v.desk.Words.Say, v.desk.Today()
	i := stopOn(t, today)
	switch {
	case len(t.Stops) == 0:
		return say("trips.nostops")
	case i < 0:
		if _, _, ok := dates(t); ok {
			return say("trips.over")
		}
		return say("trips.nodates")
	}
	s := t.Stops[i]
	place := stopPlace(v.sp, s, i)
	if s.From <= today {
		return say("trips.now", place)
	}
	from, _ := s.From.Time()
	return say("trips.from", place, v.sp.Day(from))
}

// nextDay is the day of what comes next, for less room; nothing where there is none.
func (v *List) nextDay(t record.Trip) []string {
	i, today := stopOn(t, v.desk.Today()), v.desk.Today()
	if i < 0 || len(t.Stops) == 0 {
		return nil
	}
	if s := t.Stops[i]; s.From > today {
		from, _ := s.From.Time()
		return []string{v.desk.Words.Say("trip.from", v.sp.Day(from))}
	}
	return []string{shortDates(v.sp, t.Stops[i])}
}

// open opens the trip in a row.
func (v *List) open(row int) {
	if row >= 0 && row < len(v.trips) {
		v.desk.Go(desk.Place{Screen: desk.Trip, Record: v.trips[row].ID})
	}
}

// begin begins a new trip.
func (v *List) begin() { v.desk.Go(desk.Place{Screen: desk.Trip, New: true}) }

// Head is the title and the way to a new trip.
func (v *List) Head() desk.Head {
	return desk.Head{Title: v.desk.Words.Say("frame.trips"), Actions: []fyne.CanvasObject{v.add}}
}

// Body is the list.
func (v *List) Body() fyne.CanvasObject { return v.body }

// Leave has nothing to save.
func (v *List) Leave() {}

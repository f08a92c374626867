package planner

import (
	"strconv"

	"fyne.io/fyne/v2"

	"ebbwell/app/kit/desk"
	"ebbwell/app/kit/field"
	"ebbwell/app/kit/look"
	"ebbwell/internal/consult"
	"ebbwell/internal/evidence"
	"ebbwell/internal/plan"
	"ebbwell/internal/quantity"
	"ebbwell/internal/record"
)

// furtherRows are the sessions of the day after the plan's own, a row each: its
// start, how long it lasts, the plan it is done by.
type furtherRows struct {
	v     *View
	rows  []*furtherRow
	cases []furtherCase
	visit string
	box   *fyne.Container
}

// furtherCase is a session as it is calculated with; ok is false where it cannot
// be.
type furtherCase struct {
	state
	ok bool
}

// furtherRow is one of them.
type furtherRow struct {
	start   *field.Clock
	minutes *field.Number
	which   *field.Choice
	remove  *field.Link
	box     *fyne.Container
}

// The paths under which texts that cannot be read are kept.
const (
	furtherPath    = "rules.further."
	furtherStart   = ".start"
	furtherMinutes = ".minutes"
)

// furtherGap is between the fields of a row, which stand below those of the form.
const furtherGap float32 = 10

// rawPath is where the text of a field of the i-th row is kept.
func rawPath(i int, part string) string { return furtherPath + strconv.Itoa(i+2) + part }

func newFurtherRows(v *View) *furtherRows { return &furtherRows{v: v, box: look.VBox(6)} }

// open shows the sessions; rows are made once and then set.
func (r *furtherRows) open() {
	v := r.v
	list, raw := v.now.further(), v.b.Doc.Now().Raw
	r.cases = r.cases[:0]
	for len(r.rows) < len(list) {
		r.grow(len(r.rows))
	}
	for i, row := range r.rows {
		look.ShowIf(row.box, i < len(list))
		if i >= len(list) {
			continue
		}
		f := list[i]
		s, ok := v.furtherState(f)
		r.cases = append(r.cases, furtherCase{s, ok})
		row.which.SetOptions(v.planOptions())
		row.which.Choose(string(f.Plan))
		if f.Plan == "" {
			row.which.Choose(string(v.now.plan.ID))
		}
		row.showStart(f.Start, raw[rawPath(i, furtherStart)], v.sp)
		row.showMinutes(v, f, raw[rawPath(i, furtherMinutes)])
		for _, c := range []fyne.Disableable{row.start, row.minutes, row.which} {
			look.EnableIf(c, v.now.draft())
		}
		look.ShowIf(row.remove, v.now.draft())
	}
	look.ShowIf(r.box, len(list) > 0)
}

func (row *furtherRow) showStart(at record.Clock, raw string, sp speaker) {
	if raw == "" {
		row.start.SetClock(at)
		return
	}
	row.start.SetText(raw)
	row.start.SetTrouble(field.Wrong, sp.say("field.clock.unreadable"))
}

// showMinutes shows how long a session lasts; while that is not said, how long
// its plan says stands in the field.
func (row *furtherRow) showMinutes(v *View, f consult.Further, raw string) {
	usual := ""
	if s, ok := v.furtherState(consult.Further{Plan: f.Plan}); ok {
		usual = v.desk.Words.Number(s.planCase.Planner.Session().Minutes[plan.Expected], 0)
	}
	row.minutes.SetPlaceholder(usual)
	switch {
	case raw != "":
		row.minutes.SetRaw(raw)
	case f.Minutes > 0:
		row.minutes.SetValue(f.Minutes)
	default:
		row.minutes.Clear()
	}
}

// grow makes the i-th row.
func (r *furtherRows) grow(i int) {
	v, name := r.v, "planner.day.session."+strconv.Itoa(i+2)
	h, say := v.desk.Host, v.sp.say
	row := &furtherRow{start: field.NewClock(h, name+".start"), minutes: field.NewNumber(h, name+".minutes", evidence.Duration, quantity.Minute), which: field.NewChoice(h, name+".plan", nil)}
	row.start.SetBox(96)
	row.start.OnChanged = func(c record.Clock) {
		r.typed(name+".start", i, rawPath(i, furtherStart), "", func(f *consult.Further) { f.Start = c })
	}
	row.start.OnLeft = func(_ record.Clock, ok bool) {
		if !ok {
			r.typed(name+".start", i, rawPath(i, furtherStart), row.start.Text(), func(f *consult.Further) { f.Start = "" })
		}
		r.left()
	}
	row.minutes.SetBox(96)
	row.minutes.OnChanged = func(got field.Reading) {
		minutes, raw := got.Value, ""
		if !got.Usable() {
			minutes = 0
			if got.State != field.Empty {
				raw = got.Raw
			}
		}
		r.typed(name+".minutes", i, rawPath(i, furtherMinutes), raw, func(f *consult.Further) { f.Minutes = minutes })
	}
	row.minutes.OnLeft = func(field.Reading) { r.left() }
	row.which.SetLeast(200)
	row.which.OnChosen = func(key string) {
		other := record.ID(key)
		if other == v.now.plan.ID {
			other = ""
		}
		r.pick(name+".plan", func(_ *sheet, list []consult.Further) []consult.Further {
			list[i].Plan = other
			return list
		})
	}
	row.remove = field.NewLink(h, name+".remove", say("planner.remove"), func() { r.remove(i) })
	row.box = look.Columns(furtherGap, []look.Track{look.Fixed(formWords - furtherGap), look.Fixed(96), look.Fixed(96), look.Fixed(240), look.Fit()},
		look.NewLabel(say("planner.day.session", i+2), look.Body, look.Ink2), row.start, row.minutes, row.which, row.remove)
	r.rows = append(r.rows, row)
	r.box.Add(row.box)
}

// at is the i-th session with the mix in hand, where it is done by the plan
// itself.
func (r *furtherRows) at(i int, f consult.Further) (s state, ok bool) {
	if i >= len(r.cases) {
		return s, false
	}
	now, s := r.v.now, r.cases[i].state
	if f.Plan == "" {
		s.plan, s.option = now.plan, now.option
		s = s.settle()
	}
	return s, r.cases[i].ok
}

// typed takes in a keystroke in a row, with what of it could not be read.
func (r *furtherRows) typed(name string, i int, path, raw string, f func(*consult.Further)) {
	v := r.v
	list := v.now.further()
	if i >= len(list) {
		return
	}
	if r.visit == "" {
		r.visit = desk.NewVisit()
	}
	v.desk.Withdraw()
	v.b.Doc.Change(r.visit, name, func(s *sheet) {
		f(&list[i])
		consult.SetFurther(&s.Record, list)
		delete(s.Raw, path)
		if raw != "" {
			s.Raw[path] = raw
		}
	})
	v.changed()
	v.desk.HeadChanged()
}

// left ends the visit to a field of a row.
func (r *furtherRows) left() {
	r.visit = ""
	r.v.b.Doc.EndVisit()
	r.v.b.Flush()
}

// pick changes the list as one step.
func (r *furtherRows) pick(name string, f func(s *sheet, list []consult.Further) []consult.Further) {
	list := r.v.now.further()
	r.v.b.Pick(name, func(s *sheet) { consult.SetFurther(&s.Record, f(s, list)) })
}

// add adds a session by the plan itself.
func (r *furtherRows) add() {
	r.pick("planner.day.add", func(_ *sheet, list []consult.Further) []consult.Further { return append(list, consult.Further{}) })
}

// remove takes a session out; what was kept of the rows below moves up.
func (r *furtherRows) remove(i int) {
	r.pick("planner.day.remove", func(s *sheet, list []consult.Further) []consult.Further {
		for j := i; j < len(list); j++ {
			for _, part := range []string{furtherStart, furtherMinutes} {
				delete(s.Raw, rawPath(j, part))
				if below := s.Raw[rawPath(j+1, part)]; below != "" {
					s.Raw[rawPath(j, part)] = below
				}
			}
		}
		return append(list[:i:i], list[i+1:]...)
	})
}

// furtherState is a further session as it is open: its plan, with the mix that
// is done by it over its length. ok is false where that cannot be calculated.
func (v *View) furtherState(f consult.Further) (s state, ok bool) {
	s = v.now.at(plan.Expected)
	if f.Plan != "" && f.Plan != v.now.plan.ID {
		p, there := v.file.plan(f.Plan)
		if !there {
			return s, false
		}
		c, _, err := v.file.lenient(p, v.desk)
		if err != nil {
			return s, false
		}
		s = newState(c)
	}
	if f.Minutes <= 0 {
		return s, true
	}
	c, length, err := s.planCase.Lasting(f.Minutes)
	if err != nil {
		return s, false
	}
	s.planCase = c
	return s.at(length), true
}

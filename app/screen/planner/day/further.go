package day

import (
	"strconv"

	"fyne.io/fyne/v2"

	"ebbwell/app/kit/desk"
	"ebbwell/app/kit/field"
	"ebbwell/app/kit/look"
	"ebbwell/app/screen/planner/part"
	"ebbwell/app/screen/planner/state"
	"ebbwell/app/screen/planner/wording"
	"ebbwell/internal/consult"
	"ebbwell/internal/evidence"
	"ebbwell/internal/plan"
	"ebbwell/internal/quantity"
	"ebbwell/internal/record"
)

// furtherRows are the sessions of the day after the plan's own, a row each: its
// start, how long it lasts, the plan it is done by.
type furtherRows struct {
	v     *part.Plan
	Rows  []*furtherRow
	cases []furtherCase
	visit string
	box   *fyne.Container
}

// furtherCase is a session as it is calculated with; ok is false where it cannot
// be.
type furtherCase struct {
	state.State
	ok bool
}

// furtherRow is one of them.
type furtherRow struct {
	start   *field.Clock
	minutes *field.Number
	Which   *field.Choice
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

func newFurtherRows(v *part.Plan) *furtherRows { return &furtherRows{v: v, box: look.VBox(6)} }

// Open shows the sessions; rows are made once and then set.
func (r *furtherRows) Open() {
	v := r.v
	list, raw := further(v.Now), v.Binder.Doc.Now().Raw
	r.cases = r.cases[:0]
	for len(r.Rows) < len(list) {
		r.grow(len(r.Rows))
	}
	for i, row := range r.Rows {
		look.ShowIf(row.box, i < len(list))
		if i >= len(list) {
			continue
		}
		f := list[i]
		s, ok := furtherState(v, f)
		r.cases = append(r.cases, furtherCase{s, ok})
		row.Which.SetOptions(v.PlanOptions())
		row.Which.Choose(string(f.Plan))
		if f.Plan == "" {
			row.Which.Choose(string(v.Now.Plan.ID))
		}
		row.showStart(f.Start, raw[rawPath(i, furtherStart)], v.Speaker)
		row.showMinutes(v, f, raw[rawPath(i, furtherMinutes)])
		for _, c := range []fyne.Disableable{row.start, row.minutes, row.Which} {
			look.EnableIf(c, v.Now.Draft())
		}
		look.ShowIf(row.remove, v.Now.Draft())
	}
	look.ShowIf(r.box, len(list) > 0)
}

func (row *furtherRow) showStart(at record.Clock, raw string, sp wording.Speaker) {
	if raw == "" {
		row.start.SetClock(at)
		return
	}
	row.start.SetText(raw)
	row.start.SetTrouble(field.Wrong, sp.Say("field.clock.unreadable"))
}

// showMinutes shows how long a session lasts; while that is not said, how long
// its plan says stands in the field.
func (row *furtherRow) showMinutes(v *part.Plan, f consult.Further, raw string) {
	usual := ""
	if s, ok := furtherState(v, consult.Further{Plan: f.Plan}); ok {
		usual = v.Desk.Words.Number(s.PlanCase.Planner.Session().Minutes[plan.Expected], 0)
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
	h, say := v.Desk.Host, v.Speaker.Say
	row := &furtherRow{start: field.NewClock(h, name+".start"), minutes: field.NewNumber(h, name+".minutes", evidence.Duration, quantity.Minute), Which: field.NewChoice(h, name+".plan", nil)}
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
	row.Which.SetLeast(200)
	row.Which.OnChosen = func(key string) {
		other := record.ID(key)
		if other == v.Now.Plan.ID {
			other = ""
		}
		r.pick(name+".plan", func(_ *part.Sheet, list []consult.Further) []consult.Further {
			list[i].Plan = other
			return list
		})
	}
	row.remove = field.NewLink(h, name+".remove", say("planner.remove"), func() { r.remove(i) })
	row.box = look.Columns(furtherGap, []look.Track{look.Fixed(part.FormWords - furtherGap), look.Fixed(96), look.Fixed(96), look.Fixed(240), look.Fit()},
		look.NewLabel(say("planner.day.session", i+2), look.Body, look.Ink2), row.start, row.minutes, row.Which, row.remove)
	r.Rows = append(r.Rows, row)
	r.box.Add(row.box)
}

// at is the i-th session with the selected mix, where it is done by the plan
// itself.
func (r *furtherRows) at(i int, f consult.Further) (s state.State, ok bool) {
	if i >= len(r.cases) {
		return s, false
	}
	now, s := r.v.Now, r.cases[i].State
	if f.Plan == "" {
		s.Plan, s.Option = now.Plan, now.Option
		s = s.WithMixes()
	}
	return s, r.cases[i].ok
}

// typed takes in a keystroke in a row, with what of it could not be read.
func (r *furtherRows) typed(name string, i int, path, raw string, f func(*consult.Further)) {
	v := r.v
	list := further(v.Now)
	if i >= len(list) {
		return
	}
	if r.visit == "" {
		r.visit = desk.NewVisit()
	}
	v.Desk.Withdraw()
	v.Binder.Doc.Change(r.visit, name, func(s *part.Sheet) {
		f(&list[i])
		consult.SetFurther(&s.Record, list)
		delete(s.Raw, path)
		if raw != "" {
			s.Raw[path] = raw
		}
	})
	v.Changed()
	v.Desk.HeadChanged()
}

// left ends the visit to a field of a row.
func (r *furtherRows) left() {
	r.visit = ""
	r.v.Binder.Doc.EndVisit()
	r.v.Binder.Flush()
}

// pick changes the list as one step.
func (r *furtherRows) pick(name string, f func(s *part.Sheet, list []consult.Further) []consult.Further) {
	list := further(r.v.Now)
	r.v.Binder.Pick(name, func(s *part.Sheet) { consult.SetFurther(&s.Record, f(s, list)) })
}

// add adds a session by the plan itself.
func (r *furtherRows) add() {
	r.pick("planner.day.add", func(_ *part.Sheet, list []consult.Further) []consult.Further { return append(list, consult.Further{}) })
}

// remove takes a session out; what was kept of the rows below moves up.
func (r *furtherRows) remove(i int) {
	r.pick("planner.day.remove", func(s *part.Sheet, list []consult.Further) []consult.Further {
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
func furtherState(v *part.Plan, f consult.Further) (s state.State, ok bool) {
	s = v.Now.At(plan.Expected)
	if f.Plan != "" && f.Plan != v.Now.Plan.ID {
		p, there := v.File.Plan(f.Plan)
		if !there {
			return s, false
		}
		c, _, err := v.File.Lenient(p, v.Desk)
		if err != nil {
			return s, false
		}
		s = state.New(c)
	}
	if f.Minutes <= 0 {
		return s, true
	}
	c, length, err := s.PlanCase.Lasting(f.Minutes)
	if err != nil {
		return s, false
	}
	s.PlanCase = c
	return s.At(length), true
}

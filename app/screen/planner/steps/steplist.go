package steps

import (
	"slices"
	"strconv"

	"fyne.io/fyne/v2"

	"ebbwell/app/kit/field"
	"ebbwell/app/kit/look"
	"ebbwell/app/screen/planner/part"
	"ebbwell/internal/evidence"
	"ebbwell/internal/handout"
	"ebbwell/internal/quantity"
	"ebbwell/internal/record"
)

// stepList is a row for each step that is kept: from when, how many sessions,
// what to practise, and the way to its mix.
type stepList struct {
	v      *part.Plan
	ids    []record.ID
	mixes  []*field.Button
	counts []*field.Number
	// Practised say what to practise; what is printed where nothing is typed
	// stands in them.
	Practised []*field.Line
	rows      *fyne.Container
	box       *fyne.Container
}

// groupSteps is the group of the fields of the rows.
const groupSteps = "steps"

// stepColumns are the columns of the rows.
func stepColumns(say func(string, ...any) string) []look.Column {
	return []look.Column{
		{Title: "", Width: look.Fixed(80)},
		{Title: say("planner.step.from.title"), Width: look.Fixed(200)},
		{Title: say("planner.step.sessions"), Width: look.Fixed(64)},
		{Title: say("planner.step.practise"), Width: look.Share(1)},
		{Title: "", Width: look.Fixed(104)},
	}
}

// stepFold puts what to practise on a line of its own where the row is too narrow for a
// sentence in it.
func stepFold() look.Fold { return look.Fold{Below: 760, First: []int{0, 1, 2, 4}} }

func newStepList(v *part.Plan) *stepList {
	l := &stepList{v: v, rows: look.VBox(0)}
	l.box = look.VBox(0, look.FoldHeader(10, stepColumns(v.Speaker.Say), stepFold()), l.rows)
	return l
}

// Open shows the steps; the rows are made anew when other steps are kept.
func (l *stepList) Open() {
	var ids []record.ID
	for _, st := range l.v.Now.Plan.Steps {
		ids = append(ids, st.ID)
	}
	if !slices.Equal(ids, l.ids) {
		l.ids = ids
		l.make()
	}
	for i, b := range l.mixes {
		l.Practised[i].SetPlaceholder(handout.PractiseWords(l.v.Now.PlanCase, i, l.v.Speaker.By.US, l.v.Desk.Words))
		hand := l.v.Now.Plan.Steps[i].OptionID == l.v.Now.Option
		b.SetText(l.v.Speaker.Say("planner.step.mix"))
		if hand {
			b.SetText(l.v.Speaker.Say("planner.step.hand"))
		}
		look.EnableIf(b, !hand)
		look.EnableIf(l.counts[i], l.v.Now.Draft())
		if typed := l.counts[i]; !typed.Focused() {
			typed.SetValue(float64(l.v.Now.Plan.Steps[i].Sessions))
		}
	}
	look.ShowIf(l.box, len(ids) > 0)
}

// make builds the rows.
func (l *stepList) make() {
	v := l.v
	v.Binder.Drop(groupSteps)
	l.rows.Objects, l.mixes, l.counts, l.Practised = nil, nil, nil, nil
	for i, id := range l.ids {
		name := "planner.step." + strconv.Itoa(i+1)
		from := v.Binder.Date(groupSteps, name+".from", field.Coming, func(p *record.Plan) (*record.Date, string) {
			return &stepAt(p, id).From, "steps." + string(id) + ".from"
		})
		practise := v.Binder.Line(groupSteps, name+".practise", 400, func(p *record.Plan) *string { return &stepAt(p, id).Practise })
		sessions := l.sessions(name+".sessions", id)
		mix := field.NewButton(v.Desk.Host, name+".mix", v.Speaker.Say("planner.step.mix"), field.Outline, func() {
			v.ChooseOption(stepAt(&v.Now.Plan, id).OptionID)
		})
		l.mixes, l.counts, l.Practised = append(l.mixes, mix), append(l.counts, sessions), append(l.Practised, practise)
		label := look.NewLabel(v.Speaker.RungName(i, false), look.Strong, look.Ink)
		l.rows.Add(look.FoldRow(10, stepColumns(v.Speaker.Say), stepFold(), label, from, sessions, practise, mix))
	}
	l.rows.Refresh()
}

// sessions is the field for how many sessions are done before the next step.
func (l *stepList) sessions(name string, id record.ID) *field.Number {
	v := l.v
	n := field.NewNumber(v.Desk.Host, name, evidence.Field(""), quantity.None)
	n.SetValue(float64(stepAt(&v.Now.Plan, id).Sessions))
	n.OnLeft = func(r field.Reading) {
		if r.Usable() && r.Value >= 1 && int(r.Value) != stepAt(&v.Now.Plan, id).Sessions {
			v.Binder.Pick(name, func(s *part.Sheet) { stepAt(&s.Record, id).Sessions = int(r.Value) })
		}
	}
	return n
}

// stepAt is a step of a plan, in place; one of its own where it is not there.
func stepAt(p *record.Plan, id record.ID) *record.Step {
	for i := range p.Steps {
		if p.Steps[i].ID == id {
			return &p.Steps[i]
		}
	}
	return &record.Step{}
}

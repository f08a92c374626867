package planner

import (
	"fyne.io/fyne/v2"

	"ebbwell/app/kit/bind"
	"ebbwell/app/kit/field"
	"ebbwell/app/kit/look"
	"ebbwell/internal/consult"
	"ebbwell/internal/plan"
	"ebbwell/internal/record"
)

// optionTools are what can be done to the option in hand: its name, a copy,
// taking it out, marking it as the one to agree on, and what the athlete thinks
// of it.
type optionTools struct {
	v                  *View
	title              *look.Label
	copy, remove, mark *field.Button
	smaller            *look.Caution
	buttons            *fyne.Container
	box                *fyne.Container
}

// groupOption is the group of fields that follow the option in hand.
const groupOption = "option"

func newOptionTools(v *View) *optionTools {
	t := &optionTools{v: v, title: look.NewLabel("", look.Strong, look.Ink).Shorten()}
	h, say := v.desk.Host, v.sp.say
	name := v.b.Line(groupOption, "planner.option.name", 60, v.optionText(func(o *record.Option) *string { return &o.Name }))
	words := v.b.Line(groupOption, "planner.option.words", 400, v.optionText(func(o *record.Option) *string { return &o.Words }))
	importance := v.b.Rating(groupOption, "planner.option.importance", say("planner.rating.low"), say("planner.rating.high"),
		v.optionNumber("importance", func(o *record.Option) *record.Number { return &o.Importance }))
	confidence := v.b.Rating(groupOption, "planner.option.confidence", say("planner.rating.low"), say("planner.rating.high"),
		v.optionNumber("confidence", func(o *record.Option) *record.Number { return &o.Confidence }))
	t.copy = field.NewButton(h, "planner.option.duplicate", say("planner.option.duplicate"), field.Outline, t.duplicate)
	t.remove = field.NewButton(h, "planner.option.delete", say("planner.option.delete"), field.Outline, t.delete)
	t.mark = field.NewButton(h, "planner.option.mark", say("planner.option.mark"), field.Outline, t.toggleMark)
	smaller := field.NewButton(h, "planner.smaller", say("planner.smaller.show"), field.Outline, func() { v.ui.tabs.Choose(TabSteps); v.showTab(TabSteps) })
	t.smaller = look.NewCaution("", "", smaller)
	t.buttons = look.HBox(10, t.copy, t.remove, t.mark)
	t.box = look.VBox(8, t.title,
		newForm(look.NewEntry(say("planner.option.name"), name), look.NewEntry(say("planner.option.importance"), importance),
			look.NewEntry(say("planner.option.words"), words), look.NewEntry(say("planner.option.confidence"), confidence)),
		t.smaller, t.buttons)
	return t
}

// optionText is the place of a text of the option in hand.
func (v *View) optionText(of func(o *record.Option) *string) bind.Text[record.Plan] {
	return func(p *record.Plan) *string {
		if o := optionAt(p, v.now.option); o != nil {
			return of(o)
		}
		return new(string)
	}
}

// optionNumber is the place of a number of the option in hand.
func (v *View) optionNumber(path string, of func(o *record.Option) *record.Number) bind.NumberAt[record.Plan] {
	return func(p *record.Plan, _ bool) (*record.Number, string) {
		if o := optionAt(p, v.now.option); o != nil {
			return of(o), "options." + string(o.ID) + "." + path
		}
		return nil, ""
	}
}

// optionAt is an option of a plan, in place; nil where it is not there.
func optionAt(p *record.Plan, id record.ID) *record.Option {
	for i := range p.Options {
		if p.Options[i].ID == id {
			return &p.Options[i]
		}
	}
	return nil
}

// open shows the option in hand.
func (t *optionTools) open() {
	v := t.v
	o := v.now.hand()
	t.title.SetText(v.sp.say("planner.option.in", v.sp.optionName(o)))
	draft := v.now.draft()
	look.ShowIf(t.buttons, draft)
	look.EnableIf(t.remove, draft && o.Kind == record.OptionOwn)
	look.EnableIf(t.mark, draft && o.Kind != record.OptionHabit)
	t.mark.SetText(v.sp.say("planner.option.mark"))
	if v.now.plan.Agreement.OptionID == o.ID {
		t.mark.SetText(v.sp.say("planner.option.unmark"))
	}
	t.smaller.SetText(v.sp.doubt(o))
	t.box.Refresh()
}

// doubt says that confidence is low and a smaller step is proposed; empty where
// it is not.
func (sp speaker) doubt(o record.Option) (title, sentence string) {
	if !o.Confidence.Known() {
		return "", ""
	}
	if _, ok := plan.DefaultStepRules().Smaller(*o.Confidence.Value); !ok {
		return "", ""
	}
	return sp.say("planner.smaller.title", sp.w.Number(*o.Confidence.Value, 0)), sp.say("planner.smaller")
}

func (t *optionTools) duplicate() {
	v := t.v
	var id record.ID
	o := v.now.hand()
	name := v.sp.freeName(v.now.plan, v.sp.say("planner.option.copy", v.sp.optionName(o)))
	v.b.Pick("planner.option.duplicate", func(s *sheet) { id = duplicate(&s.Record, o, name) })
	v.chooseOption(id)
}

func (t *optionTools) delete() {
	v, o := t.v, t.v.now.hand()
	v.b.Pick("planner.option.delete", func(s *sheet) { removeOption(&s.Record, o.ID) })
	v.desk.Offer(v.sp.say("planner.option.deleted", v.sp.optionName(o)), v.sp.say("planner.undo"), func() { v.Undo() })
}

// toggleMark marks the option as the one to agree on, or takes the mark off.
func (t *optionTools) toggleMark() {
	v, id := t.v, t.v.now.option
	v.b.Pick("planner.option.mark", func(s *sheet) {
		if s.Record.Agreement.OptionID == id {
			id = ""
		}
		s.Record.Agreement.OptionID = id
	})
}

// agreedOn is the option that is marked; the one in force where none is.
func agreedOn(p record.Plan) record.Option {
	if o, ok := consult.OptionByID(p, p.Agreement.OptionID); ok {
		return o
	}
	o, _ := consult.InForce(p)
	return o
}

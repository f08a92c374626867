package compare

import (
	"fyne.io/fyne/v2"

	"ebbwell/app/kit/bind"
	"ebbwell/app/kit/field"
	"ebbwell/app/kit/look"
	"ebbwell/app/screen/planner/part"
	"ebbwell/app/screen/planner/state"
	"ebbwell/internal/record"
)

// optionTools are what can be done to the selected option: its name, a copy,
// taking it out, marking it as the one to agree on, and what the athlete thinks
// of it.
type optionTools struct {
	v                  *part.Plan
	title              *look.Label
	copy, Remove, mark *field.Button
	smaller            *look.Caution
	buttons            *fyne.Container
	box                *fyne.Container
}

// groupOption is the group of fields that follow the selected option.
const groupOption = "option"

func newOptionTools(v *part.Plan) *optionTools {
	t := &optionTools{v: v, title: look.NewLabel("", look.Strong, look.Ink).Shorten()}
	h, say := v.Desk.Host, v.Speaker.Say
	name := v.Binder.Line(groupOption, "planner.option.name", 60, optionText(v, func(o *record.Option) *string { return &o.Name }))
	words := v.Binder.Line(groupOption, "planner.option.words", 400, optionText(v, func(o *record.Option) *string { return &o.Words }))
	importance := v.Binder.Rating(groupOption, "planner.option.importance", say("planner.rating.low"), say("planner.rating.high"),
		optionNumber(v, "importance", func(o *record.Option) *record.Number { return &o.Importance }))
	confidence := v.Binder.Rating(groupOption, "planner.option.confidence", say("planner.rating.low"), say("planner.rating.high"),
		optionNumber(v, "confidence", func(o *record.Option) *record.Number { return &o.Confidence }))
	t.copy = field.NewButton(h, "planner.option.duplicate", say("planner.option.duplicate"), field.Outline, t.duplicate)
	t.Remove = field.NewButton(h, "planner.option.delete", say("planner.option.delete"), field.Outline, t.delete)
	t.mark = field.NewButton(h, "planner.option.mark", say("planner.option.mark"), field.Outline, t.toggleMark)
	smaller := field.NewButton(h, "planner.smaller", say("planner.smaller.show"), field.Outline, func() { v.OpenTab(part.TabSteps) })
	t.smaller = look.NewCaution("", "", smaller)
	t.buttons = look.HBox(10, t.copy, t.Remove, t.mark)
	t.box = look.VBox(8, t.title,
		part.NewForm(look.NewEntry(say("planner.option.name"), name), look.NewEntry(say("planner.option.importance"), importance),
			look.NewEntry(say("planner.option.words"), words), look.NewEntry(say("planner.option.confidence"), confidence)),
		t.smaller, t.buttons)
	return t
}

// optionText is the place of a text of the selected option.
func optionText(v *part.Plan, of func(o *record.Option) *string) bind.Text[record.Plan] {
	return func(p *record.Plan) *string {
		if o := state.OptionAt(p, v.Now.Option); o != nil {
			return of(o)
		}
		return new(string)
	}
}

// optionNumber is the place of a number of the selected option.
func optionNumber(v *part.Plan, path string, of func(o *record.Option) *record.Number) bind.NumberAt[record.Plan] {
	return func(p *record.Plan, _ bool) (*record.Number, string) {
		if o := state.OptionAt(p, v.Now.Option); o != nil {
			return of(o), "options." + string(o.ID) + "." + path
		}
		return nil, ""
	}
}

// Open shows the selected option.
func (t *optionTools) Open() {
	v := t.v
	o := v.Now.Selected()
	t.title.SetText(v.Speaker.Say("planner.option.in", v.Speaker.OptionName(o)))
	draft := v.Now.Draft()
	look.ShowIf(t.buttons, draft)
	look.EnableIf(t.Remove, draft && o.Kind == record.OptionOwn)
	look.EnableIf(t.mark, draft && o.Kind != record.OptionHabit)
	t.mark.SetText(v.Speaker.Say("planner.option.mark"))
	if v.Now.Plan.Agreement.OptionID == o.ID {
		t.mark.SetText(v.Speaker.Say("planner.option.unmark"))
	}
	t.smaller.SetText(v.Speaker.Doubt(o))
	t.box.Refresh()
}

func (t *optionTools) duplicate() {
	v := t.v
	var id record.ID
	o := v.Now.Selected()
	name := v.Speaker.FreeName(v.Now.Plan, v.Speaker.Say("planner.option.copy", v.Speaker.OptionName(o)))
	v.Binder.Pick("planner.option.duplicate", func(s *part.Sheet) { id = state.Duplicate(&s.Record, o, name) })
	v.ChooseOption(id)
}

func (t *optionTools) delete() {
	v, o := t.v, t.v.Now.Selected()
	v.Binder.Pick("planner.option.delete", func(s *part.Sheet) { state.RemoveOption(&s.Record, o.ID) })
	v.Desk.Offer(v.Speaker.Say("planner.option.deleted", v.Speaker.OptionName(o)), v.Speaker.Say("planner.undo"), func() { v.Undo() })
}

// toggleMark marks the option as the one to agree on, or takes the mark off.
func (t *optionTools) toggleMark() {
	v, id := t.v, t.v.Now.Option
	v.Binder.Pick("planner.option.mark", func(s *part.Sheet) {
		if s.Record.Agreement.OptionID == id {
			id = ""
		}
		s.Record.Agreement.OptionID = id
	})
}

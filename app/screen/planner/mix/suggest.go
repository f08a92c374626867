package mix

import (
	"context"
	"strconv"

	"fyne.io/fyne/v2"

	"ebbwell/app/kit/field"
	"ebbwell/app/kit/look"
	"ebbwell/app/screen/planner/part"
	"ebbwell/app/screen/planner/state"
	"ebbwell/app/screen/planner/wording"
	"ebbwell/internal/consult"
	"ebbwell/internal/plan"
	"ebbwell/internal/quantity"
	"ebbwell/internal/record"
)

// Suggestions looks for the smallest change from the habit that meets the aim,
// beside the window; its button pressed again stops the search. An answer that
// comes after a newer question is dropped.
type Suggestions struct {
	v      *part.Plan
	Button *field.Button
	search int
	stop   func()
}

func NewSuggestions(v *part.Plan) *Suggestions {
	s := &Suggestions{v: v}
	s.Button = field.NewButton(v.Desk.Host, "planner.suggest", v.Speaker.Say("planner.suggest"), field.Outline, s.Press)
	return s
}

// Press begins a search, or stops the one under way.
func (s *Suggestions) Press() {
	if s.stop != nil {
		s.Halt()
		return
	}
	v := s.v
	p, err := v.Now.ChosenOnly()
	if err != nil {
		v.Desk.Trouble(err)
		return
	}
	s.search++
	mine, look := s.search, v.Now.Search()
	s.Button.SetText(v.Speaker.Say("planner.suggest.stop"))
	var found plan.Suggestion
	ended := false
	stop := v.Desk.Beside.Run(func(context.Context) error {
		found = p.Suggest(look)
		return nil
	}, func(err error) {
		ended = true
		if mine != s.search {
			return
		}
		s.Halt()
		if err == nil {
			suggested(v, found)
		}
	})
	if !ended {
		s.stop = stop
	}
}

// Halt gives up a search that is under way.
func (s *Suggestions) Halt() {
	if s.stop != nil {
		s.stop()
	}
	s.stop = nil
	s.search++
	s.Button.SetText(s.v.Speaker.Say("planner.suggest"))
}

// suggested takes a suggestion into the option in hand, or says what clashes.
func suggested(v *part.Plan, s plan.Suggestion) {
	switch {
	case !s.Met:
		askClash(v, s)
	case s.Moved == 0:
		v.Desk.Say(v.Speaker.Say("planner.suggest.habit"), "", nil)
	default:
		takeMix(v, s.Mix)
		key := "planner.suggest.found"
		if !s.Proved {
			key = "planner.suggest.unproved"
		}
		v.Desk.Offer(v.Speaker.Say(key, changes(v.Speaker, v.Now, s.Mix)), v.Speaker.Say("planner.undo"), func() { v.Undo() })
	}
}

// takeMix moves the option in hand to a mix, as one step. The habit stays as it
// was measured: an option of its own takes the mix.
func takeMix(v *part.Plan, mix plan.Mix) {
	v.Now = v.Now.At(plan.Expected)
	id, planCase := v.Now.Option, v.Now.PlanCase
	fresh := !v.Now.Movable()
	name := v.Speaker.FreeName(v.Now.Plan, v.Speaker.Say("planner.option.suggested"))
	v.Binder.Pick("planner.suggest", func(s *part.Sheet) {
		if fresh {
			habit, _ := consult.OptionOf(s.Record, record.OptionHabit)
			id = state.Duplicate(&s.Record, habit, name)
		}
		state.Edit(&s.Record, id, func(o *record.Option) { *o = planCase.WithMix(*o, mix) })
	})
	v.ChooseOption(id)
}

// changes says how a mix differs from the habit: "+0.15 L water, +½ fig bar".
func changes(sp wording.Speaker, s state.State, mix plan.Mix) string {
	var parts []string
	for _, slot := range state.Slots() {
		step := sp.Step(slot, mix[slot]-s.Habit[slot])
		if step == "" || !s.PlanCase.Slots[slot].InUse {
			continue
		}
		name := wording.Lower(sp.Product(s.PlanCase, slot))
		switch {
		case slot == plan.Salt:
			parts = append(parts, sp.Say("planner.change.salt", step, name))
		case slot.IsDrink():
			parts = append(parts, sp.Say("planner.change.drink", step, name, string(sp.By.Unit(quantity.Litre))))
		default:
			parts = append(parts, sp.Say("planner.change.food", step, name))
		}
	}
	if len(parts) == 0 {
		return sp.Say("planner.change.none")
	}
	return sp.Words.List(parts)
}

// askClash says which conditions cannot be met together, and offers the nearest
// there is for each that may be let go.
func askClash(v *part.Plan, s plan.Suggestion) {
	say := v.Speaker.Say
	list := look.VBox(10)
	var dialog *field.Dialog
	for i, r := range s.Nearest {
		if !r.Possible {
			continue
		}
		take := field.NewButton(v.Desk.Host, "planner.clash."+strconv.Itoa(i+1), say("planner.clash.take"), field.Outline, func() {
			dialog.Close()
			takeMix(v, r.Mix)
		})
		words := look.NewParagraph(nearest(v.Speaker, v.Now, r), look.Body, look.Ink)
		list.Add(look.Columns(12, []look.Track{look.Share(1), look.Fit()}, words, take))
	}
	if len(list.Objects) == 0 {
		list.Add(look.NewParagraph(say("planner.clash.none"), look.Body, look.Ink))
	}
	dialog = v.Desk.Host.Ask(v.Canvas(), field.Question{
		Name: "planner.clash", Title: say("planner.clash.title"), Sentence: say("planner.clash.sentence", conditions(v.Speaker, s.Clash)), Width: 640,
		Content: fyne.CanvasObject(list), Actions: []field.Action{{Name: "done", Text: say("planner.clash.leave")}},
	})
}

// conditions lists the words of a set of conditions.
func conditions(sp wording.Speaker, c plan.Condition) string {
	var list []string
	for _, one := range c.Each() {
		list = append(list, condition(sp, one))
	}
	return sp.Words.List(list)
}

func condition(sp wording.Speaker, one plan.Condition) string {
	if sp.By.Hidden && one == plan.StrengthMost {
		return sp.Say("aim.strength-most.hidden")
	}
	return sp.Say(one.Code())
}

// nearest says what is let go, by how much it is missed, and the mix.
func nearest(sp wording.Speaker, s state.State, r plan.Relaxed) string {
	text := sp.Say("planner.clash.nearest", condition(sp, r.Condition), changes(sp, s, r.Mix))
	if missed := missed(sp, r); missed != "" {
		text += " " + sp.Say("planner.clash.missed", missed)
	}
	return text
}

// missed is by how much a condition is missed, in its unit; empty where that
// would tell of body mass.
func missed(sp wording.Speaker, r plan.Relaxed) string {
	switch {
	case r.Condition.Has(plan.DeficitMost | plan.DeficitLeast):
		if sp.By.Hidden {
			return ""
		}
		return sp.Percent(r.Missed, 1)
	case r.Condition.Has(plan.CarbohydrateMost | plan.CarbohydrateLeast | plan.OneSourceMost):
		return sp.Carbohydrate(r.Missed)
	case r.Condition.Has(plan.SodiumMost | plan.SodiumLeast):
		return sp.Sodium(r.Missed)
	case r.Condition.Has(plan.DrinkingMost):
		return sp.Rate(r.Missed)
	case r.Condition.Has(plan.BreaksMost):
		return sp.Litres(r.Missed)
	case r.Condition.Has(plan.StrengthMost):
		return sp.Strength(r.Missed)
	}
	return ""
}

package planner

import (
	"context"
	"strconv"
	"strings"

	"fyne.io/fyne/v2"

	"ebbwell/app/kit/field"
	"ebbwell/app/kit/look"
	"ebbwell/internal/consult"
	"ebbwell/internal/plan"
	"ebbwell/internal/quantity"
	"ebbwell/internal/record"
)

// suggest looks for the smallest change from the habit that meets the aim,
// beside the window; pressed again it stops. An answer that comes after a newer
// question is dropped.
func (v *View) suggest() {
	if v.grip.stop != nil {
		v.stopSearch()
		return
	}
	p, err := v.now.chosenOnly()
	if err != nil {
		v.desk.Trouble(err)
		return
	}
	v.grip.search++
	mine, look := v.grip.search, v.now.search()
	v.ui.suggest.SetText(v.sp.say("planner.suggest.stop"))
	var found plan.Suggestion
	ended := false
	stop := v.desk.Beside.Run(func(context.Context) error {
		found = p.Suggest(look)
		return nil
	}, func(err error) {
		ended = true
		if mine != v.grip.search {
			return
		}
		v.stopSearch()
		if err == nil {
			v.suggested(found)
		}
	})
	if !ended {
		v.grip.stop = stop
	}
}

// stopSearch gives up a search that is under way.
func (v *View) stopSearch() {
	if v.grip.stop != nil {
		v.grip.stop()
	}
	v.grip.stop = nil
	v.grip.search++
	v.ui.suggest.SetText(v.sp.say("planner.suggest"))
}

// suggested takes a suggestion into the option in hand, or says what clashes.
func (v *View) suggested(s plan.Suggestion) {
	switch {
	case !s.Met:
		v.askClash(s)
	case s.Moved == 0:
		v.desk.Say(v.sp.say("planner.suggest.habit"), "", nil)
	default:
		v.takeMix(s.Mix)
		key := "planner.suggest.found"
		if !s.Proved {
			key = "planner.suggest.unproved"
		}
		v.desk.Offer(v.sp.say(key, v.sp.changes(v.now, s.Mix)), v.sp.say("planner.undo"), func() { v.Undo() })
	}
}

// takeMix moves the option in hand to a mix, as one step. The habit stays as it
// was measured: an option of its own takes the mix.
func (v *View) takeMix(mix plan.Mix) {
	v.now = v.now.at(plan.Expected)
	id, planCase := v.now.option, v.now.planCase
	fresh := !v.now.movable()
	name := v.sp.freeName(v.now.plan, v.sp.say("planner.option.suggested"))
	v.b.Pick("planner.suggest", func(s *sheet) {
		if fresh {
			habit, _ := consult.OptionOf(s.Record, record.OptionHabit)
			id = duplicate(&s.Record, habit, name)
		}
		edit(&s.Record, id, func(o *record.Option) { *o = planCase.WithMix(*o, mix) })
	})
	v.chooseOption(id)
}

// changes says how a mix differs from the habit: "+0.15 L water, +½ fig bar".
func (sp speaker) changes(s state, mix plan.Mix) string {
	var parts []string
	for _, slot := range slots() {
		step := sp.step(slot, mix[slot]-s.habit[slot])
		if step == "" || !s.planCase.Slots[slot].InUse {
			continue
		}
		name := lower(sp.product(s.planCase, slot))
		switch {
		case slot == plan.Salt:
			parts = append(parts, sp.say("planner.change.salt", step, name))
		case slot.IsDrink():
			parts = append(parts, sp.say("planner.change.drink", step, name, string(sp.by.Unit(quantity.Litre))))
		default:
			parts = append(parts, sp.say("planner.change.food", step, name))
		}
	}
	if len(parts) == 0 {
		return sp.say("planner.change.none")
	}
	return sp.w.List(parts)
}

// askClash says which conditions cannot be met together, and offers the nearest
// there is for each that may be let go.
func (v *View) askClash(s plan.Suggestion) {
	say := v.sp.say
	list := look.VBox(10)
	var dialog *field.Dialog
	for i, r := range s.Nearest {
		if !r.Possible {
			continue
		}
		take := field.NewButton(v.desk.Host, "planner.clash."+strconv.Itoa(i+1), say("planner.clash.take"), field.Outline, func() {
			dialog.Close()
			v.takeMix(r.Mix)
		})
		words := look.NewParagraph(v.sp.nearest(v.now, r), look.Body, look.Ink)
		list.Add(look.Columns(12, []look.Track{look.Share(1), look.Fit()}, words, take))
	}
	if len(list.Objects) == 0 {
		list.Add(look.NewParagraph(say("planner.clash.none"), look.Body, look.Ink))
	}
	dialog = v.desk.Host.Ask(v.canvas(), field.Question{
		Name: "planner.clash", Title: say("planner.clash.title"), Sentence: say("planner.clash.sentence", v.sp.conditions(s.Clash)), Width: 640,
		Content: fyne.CanvasObject(list), Actions: []field.Action{{Name: "done", Text: say("planner.clash.leave")}},
	})
}

// conditions lists the words of a set of conditions.
func (sp speaker) conditions(c plan.Condition) string {
	var list []string
	for _, one := range c.Each() {
		list = append(list, sp.condition(one))
	}
	return sp.w.List(list)
}

func (sp speaker) condition(one plan.Condition) string {
	if sp.by.Hidden && one == plan.StrengthMost {
		return sp.say("aim.strength-most.hidden")
	}
	return sp.say(one.Code())
}

// nearest says what is let go, by how much it is missed, and the mix.
func (sp speaker) nearest(s state, r plan.Relaxed) string {
	text := sp.say("planner.clash.nearest", sp.condition(r.Condition), sp.changes(s, r.Mix))
	if missed := sp.missed(r); missed != "" {
		text += " " + sp.say("planner.clash.missed", missed)
	}
	return text
}

// missed is by how much a condition is missed, in its unit; empty where that
// would tell of body mass.
func (sp speaker) missed(r plan.Relaxed) string {
	switch {
	case r.Condition.Has(plan.DeficitMost | plan.DeficitLeast):
		if sp.by.Hidden {
			return ""
		}
		return sp.percent(r.Missed, 1)
	case r.Condition.Has(plan.CarbohydrateMost | plan.CarbohydrateLeast | plan.OneSourceMost):
		return sp.carbohydrate(r.Missed)
	case r.Condition.Has(plan.SodiumMost | plan.SodiumLeast):
		return sp.sodium(r.Missed)
	case r.Condition.Has(plan.DrinkingMost):
		return sp.rate(r.Missed)
	case r.Condition.Has(plan.BreaksMost):
		return sp.litres(r.Missed)
	case r.Condition.Has(plan.StrengthMost):
		return sp.strength(r.Missed)
	}
	return ""
}

// strings joined with a blank, those that are empty left out.
func sentences(list ...string) string {
	var kept []string
	for _, s := range list {
		if s != "" {
			kept = append(kept, s)
		}
	}
	return strings.Join(kept, " ")
}

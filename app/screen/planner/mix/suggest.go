package mix

import (
	"fyne.io/fyne/v2"

	"ebbwell/app/kit/field"
	"ebbwell/app/kit/look"
	"ebbwell/app/screen/planner/part"
	"ebbwell/app/screen/planner/state"
	"ebbwell/app/screen/planner/wording"
	"ebbwell/internal/consult"
	"ebbwell/internal/plan"
	"ebbwell/internal/plan/proposal"
	"ebbwell/internal/quantity"
	"ebbwell/internal/record"
)

// Suggestions shows what is proposed for the habit before anything of it is
// taken: what is said about it, and for each way its first step and its aim.
type Suggestions struct {
	v      *part.Plan
	Button *field.Button
	// OnOpen is told that the proposal is open, and that it is no longer.
	OnOpen func(open bool)
}

// NewSuggestions makes the button that opens the proposal.
func NewSuggestions(v *part.Plan) *Suggestions {
	s := &Suggestions{v: v}
	s.Button = field.NewButton(v.Desk.Host, "planner.suggest", v.Speaker.Say("planner.suggest"), field.Outline, s.Press)
	return s
}

// Press shows the proposal.
func (s *Suggestions) Press() {
	v, say := s.v, s.v.Speaker.Say
	found := v.Now.Proposal()
	content := look.VBox(12)
	for i, sentence := range v.Speaker.Said(found) {
		style := look.Body
		if i == 0 {
			style = look.Strong
		}
		content.Add(look.NewParagraph(sentence, style, look.Ink))
	}
	actions := []field.Action{{Name: "done", Text: say("planner.proposal.leave")}}
	if found.Ask {
		actions = append(actions, field.Action{Name: "breaks", Text: say("planner.proposal.breaks"), Do: func() bool {
			v.OpenTab(part.TabBreaks)
			return false
		}}, field.Action{Name: "settled", Text: say("planner.proposal.settled"), Do: func() bool {
			s.confirmBreaks()
			return false
		}})
	} else {
		for way, r := range found.Routes {
			if r.Exists {
				content.Add(s.way(found, proposal.Way(way)))
				actions = append(actions, s.take(found, proposal.Way(way)))
			}
		}
	}
	s.open(true)
	v.Desk.Host.Ask(v.Canvas(), field.Question{
		OnClosed: func() { s.open(false) },
		Name:     "planner.proposal", Title: say("planner.proposal.title"), Width: 680, Content: fyne.CanvasObject(content), Actions: actions,
	})
}

func (s *Suggestions) open(on bool) {
	if s.OnOpen != nil {
		s.OnOpen(on)
	}
}

// confirmBreaks keeps that the breaks are all there are, and shows the proposal for them.
func (s *Suggestions) confirmBreaks() {
	s.v.Binder.Pick("planner.suggest", func(sheet *part.Sheet) { consult.SetWish(&sheet.Record, consult.BreaksConfirmed, true) })
	s.Press()
}

// wayName is the name of a way in controls, and in the catalogue of texts.
func wayName(way proposal.Way) string {
	if way == proposal.WithFood {
		return "food"
	}
	return "drinks"
}

// way shows one way: its first step and its aim as changes from the habit, and
// what they come to.
func (s *Suggestions) way(found proposal.Proposal, way proposal.Way) fyne.CanvasObject {
	v, say, r := s.v, s.v.Speaker.Say, found.Routes[way]
	first, aim := plan.Mix(r.Steps[0].Mix), plan.Mix(r.Aim)
	title := say("planner.proposal." + wayName(way))
	box := look.VBox(4, look.NewRule(), look.NewLabel(title, look.Strong, look.Ink))
	p := v.Now.PlanCase.Planner
	before := p.Evaluate(plan.Expected, p.Habit())
	line := func(key string, mix plan.Mix) {
		after := p.Evaluate(plan.Expected, mix)
		box.Add(look.NewParagraph(say(key, changes(v.Speaker, v.Now, mix)), look.Body, look.Ink))
		box.Add(look.NewParagraph(say("planner.proposal.change", v.Speaker.Deficit(before), v.Speaker.Deficit(after),
			v.Speaker.Carbohydrate(before.Carbohydrate.TotalGH), v.Speaker.Carbohydrate(after.Carbohydrate.TotalGH)), look.Body, look.Ink2))
	}
	line("planner.proposal.first", first)
	if aim != first {
		line("planner.proposal.aim", aim)
	}
	return box
}

// take is the button that takes a way.
func (s *Suggestions) take(found proposal.Proposal, way proposal.Way) field.Action {
	kind := field.Outline
	if way == found.Pick {
		kind = field.Primary
	}
	text := s.v.Speaker.Say("planner.proposal.take." + wayName(way))
	return field.Action{Name: wayName(way), Text: text, Kind: kind, Do: func() bool {
		s.taken(found, way)
		return false
	}}
}

// taken gives the plan's options what is proposed: the first step of each way,
// and the aim of the way taken, whose option is selected.
func (s *Suggestions) taken(found proposal.Proposal, way proposal.Way) {
	v := s.v
	v.Now = v.Now.At(plan.Expected)
	found.Pick = way
	planCase := v.Now.PlanCase
	kind := [proposal.Ways]record.OptionKind{proposal.DrinksAlone: record.OptionFluid, proposal.WithFood: record.OptionFood}[way]
	var id record.ID
	v.Binder.Pick("planner.suggest", func(sheet *part.Sheet) {
		for i, o := range sheet.Record.Options {
			if mix, ok := consult.Offered(found, o.Kind); ok {
				sheet.Record.Options[i] = planCase.WithMix(o, mix)
			}
			if o.Kind == kind {
				id = o.ID
			}
		}
		if id != "" {
			return
		}
		habit, _ := consult.OptionOf(sheet.Record, record.OptionHabit)
		id = state.Duplicate(&sheet.Record, habit, v.Speaker.FreeName(sheet.Record, v.Speaker.Say("planner.option.suggested")))
		mix, _ := consult.Offered(found, kind)
		state.Edit(&sheet.Record, id, func(o *record.Option) { *o = planCase.WithMix(*o, mix) })
	})
	v.ChooseOption(id)
	first := plan.Mix(found.Routes[way].Steps[0].Mix)
	v.Desk.Offer(v.Speaker.Say("planner.suggest.found", changes(v.Speaker, v.Now, first)), v.Speaker.Say("planner.undo"), func() { v.Undo() })
}

// changes says how a mix differs from the habit: "+0.15 L water, +½ fig bar".
func changes(sp wording.Speaker, s state.State, mix plan.Mix) string {
	var parts []string
	habit := s.PlanCase.Planner.Habit()
	for _, slot := range state.Slots() {
		step := sp.Step(slot, mix[slot]-habit[slot])
		if step == "" || !s.PlanCase.Slots[slot].InUse {
			continue
		}
		name := sp.ProductWithin(s.PlanCase, slot)
		switch {
		case slot == plan.Salt:
			parts = append(parts, sp.Words.AmountOf(step+"\u00a0"+string(quantity.Gram), name))
		case slot.IsDrink():
			parts = append(parts, sp.Words.AmountOf(step+"\u00a0"+string(sp.By.Unit(quantity.Litre)), name))
		default:
			parts = append(parts, sp.Say("planner.change.food", step, name))
		}
	}
	if len(parts) == 0 {
		return sp.Say("planner.change.none")
	}
	return sp.Words.List(parts)
}

package session

import (
	"fyne.io/fyne/v2"

	"ebbwell/app/kit/bind"
	"ebbwell/app/kit/field"
	"ebbwell/app/kit/look"
	"ebbwell/app/screen/planner/part"
	"ebbwell/internal/consult"
	"ebbwell/internal/record"
)

// The habits a plan may start from.
const (
	habitTest  = "test"
	habitUsual = "usual"
)

// wishes are the habit that the plan starts from, and what the athlete does not want.
func (t *SessionTab) wishes() fyne.CanvasObject {
	v := t.v
	say := v.Speaker.Say
	t.habit = field.NewToggle(v.Desk.Host, "planner.habit", v.Binder.Options("planner.habit.", habitTest, habitUsual))
	t.habit.OnChosen = func(key string) { startFrom(v, key == habitUsual) }
	check := func(w consult.Wish) fyne.CanvasObject {
		return v.Binder.Check("", "planner.wish."+string(w), say("planner.wish."+string(w)),
			func(p record.Plan) bool { return consult.Wished(p, w) },
			func(s *bind.Sheet[record.Plan], on bool) { consult.SetWish(&s.Record, w, on) })
	}
	row := look.HBox(18, check(consult.WishNoFood), check(consult.WishNoMore), check(consult.WishNoNewDrink))
	return look.VBox(8, look.NewLabel(say("planner.habit"), look.Strong, look.Ink), look.HBox(0, t.habit),
		look.NewLabel(say("planner.wish"), look.Strong, look.Ink), row, look.HBox(0, check(consult.WishOneBottle)))
}

// startFrom makes the plan start from another habit.
func startFrom(v *part.Plan, usual bool) {
	p := v.Now.Plan.Clone()
	if err := v.Now.PlanCase.StartFrom(&p, usual, v.Desk.Calculate()); err != nil {
		v.Desk.Trouble(err)
		return
	}
	was := v.Now.Plan.Target.Minutes
	v.Restart("planner.habit", p)
	if !p.Target.Minutes.Same(was) {
		v.Desk.Offer(v.Speaker.Say("planner.habit.length", v.Speaker.Minute(p.Target.Minutes.Or(0))), v.Speaker.Say("planner.undo"), func() { v.Undo() })
	}
}

// openHabit shows which habit the plan starts from; there is a choice only where
// the profile tells a usual one.
func (t *SessionTab) openHabit() {
	now := t.v.Now
	t.habit.Choose(habitTest)
	if now.Plan.UsualHabit {
		t.habit.Choose(habitUsual)
	}
	look.EnableIf(t.habit, now.Draft() && (now.Plan.UsualHabit || consult.HasUsualHabit(now.PlanCase.Athlete)))
}

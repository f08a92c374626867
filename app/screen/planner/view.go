package planner

import (
	"context"
	"errors"
	"fmt"

	"fyne.io/fyne/v2"

	"ebbwell/app/kit/bind"
	"ebbwell/app/kit/desk"
	"ebbwell/app/kit/field"
	"ebbwell/app/kit/look"
	"ebbwell/app/screen/planner/breaks"
	"ebbwell/app/screen/planner/mix"
	"ebbwell/app/screen/planner/part"
	"ebbwell/app/screen/planner/review"
	"ebbwell/app/screen/planner/state"
	"ebbwell/app/screen/planner/wording"
	"ebbwell/internal/consult"
	"ebbwell/internal/plan"
	"ebbwell/internal/record"
	"ebbwell/internal/store"
)

// View is an athlete's plan, or what there is to do before there is one.
type View struct {
	*part.Plan
	ui      widgets
	gesture gesture
	body    fyne.CanvasObject
}

// widgets are what a plan is shown with.
type widgets struct {
	page    *page
	strip   *strip
	parts   map[string]part.Part
	head    headButtons
	suggest *mix.Suggestions
	keep    *field.Button
	editor  *breaks.Editor
	// picture saves the chart as a picture.
	picture *field.Button
	// chosen is the part that stands in the place of the steps; none while they
	// are in sight. openers open one, back closes it, title names it.
	chosen  string
	title   *look.Label
	click   *look.Label
	openers *fyne.Container
	back    *field.Button
}

// gesture is what is under way: a visit to a slider or its number, a search.
type gesture struct {
	visit  string
	typing plan.Slot
	// odd is what is odd about the number typed last; showing is true while
	// the screen itself sets its fields.
	odd     string
	showing bool
	// below is true where the screen was opened for what stands below the
	// panels.
	below bool
	// spoken is what the cautions and the limit were worded for.
	spoken spoken
}

// spoken is what cautions and limit depend on while a plan is open.
type spoken struct {
	set     bool
	guards  plan.Guard
	stop    plan.Reason
	rate    float64
	plasma  plan.Plasma
	ceiling plan.Ceiling
	odd     string
}

var (
	_ desk.View    = (*View)(nil)
	_ desk.Undoer  = (*View)(nil)
	_ desk.Printer = (*View)(nil)
	_ desk.Shower  = (*View)(nil)
)

// New opens the plan a place names: the one with its id, the athlete's newest
// where it names none, or a new one, from the test whose id is Part. Part is a panel
// to open else, or an option to select.
func New(d *desk.Desk, place desk.Place) (*View, error) {
	f, err := part.LoadFile(d, place.Athlete)
	if err != nil {
		return nil, err
	}
	v := &View{Plan: &part.Plan{Desk: d, File: f}, gesture: gesture{typing: -1}}
	v.Shell = v
	v.Speaker = wording.Speaker{Speaker: d.SpeakerFor(f.Athlete)}
	p, there, err := v.choose(place)
	switch {
	case errors.Is(err, consult.ErrNoBasis):
		v.body = v.noTest()
		return v, nil
	case errors.Is(err, consult.ErrBlocked):
		v.body = v.blocked(record.ID(place.Part))
		return v, nil
	case err != nil:
		return nil, err
	case !there:
		v.body = v.noPlan()
		return v, nil
	}
	return v, v.Open(p, place.Part)
}

// choose finds the plan to open, or begins one.
func (v *View) choose(place desk.Place) (p record.Plan, there bool, err error) {
	if place.New {
		p, err = v.begin(record.ID(place.Part))
		return p, err == nil, err
	}
	if p, there = v.File.Plan(place.Record); there {
		return p, true, nil
	}
	if place.Record != "" {
		return p, false, part.Gone(place.Record)
	}
	if _, ok := v.File.Usable(); !ok {
		return p, false, consult.ErrNoBasis
	}
	return p, false, nil
}

// begin makes and keeps a plan from a test, the newest that can carry one where
// none is named.
func (v *View) begin(test record.ID) (record.Plan, error) {
	found, ok := v.File.Test(test)
	if !ok {
		if found, ok = v.File.Usable(); !ok {
			return record.Plan{}, consult.ErrNoBasis
		}
	}
	basis, err := consult.BasisOf(v.File.Athlete, consult.First(v.File.Tests, found.Test.ID), v.Desk.Now(), v.Desk.Calculate())
	if err != nil {
		return record.Plan{}, err
	}
	p, err := consult.NewPlan(v.File.Athlete, basis, v.Desk.Calculate(), desk.OptionNames(v.Desk.Words), v.Desk.Now())
	if err == nil {
		p, err = consult.AsBefore(p, v.File.Plans, v.File.Athlete, basis, v.Desk.Calculate())
	}
	if err != nil {
		return record.Plan{}, err
	}
	p.Name = v.Speaker.Say("planner.named", v.Speaker.PlanName(p), v.Desk.Words.Day(v.Desk.Now()))
	kept, err := v.Desk.Store.SavePlan(context.Background(), p, store.Edit{})
	if err != nil {
		return record.Plan{}, fmt.Errorf("begin a plan: %w", err)
	}
	v.File.Plans = append([]record.Plan{kept}, v.File.Plans...)
	return kept, nil
}

// Open shows a plan.
func (v *View) Open(p record.Plan, tab string) error {
	c, wrong, err := v.File.Lenient(p, v.Desk)
	if err != nil {
		v.Now.Plan = p
		v.body = v.cannotOpen(err)
		return nil // said on the screen, with what to do
	}
	doc, err := bind.Open(v.Desk, bind.Kind[record.Plan]{
		Ref: part.RefOf(p), Clone: record.Plan.Clone, Meta: func(p *record.Plan) *record.Meta { return &p.Meta }, Save: v.Desk.Store.SavePlan,
	}, p)
	if err != nil {
		return err
	}
	v.Now = state.New(c)
	v.Binder = bind.New(v.Desk, v.Speaker.By, doc)
	v.Binder.OnChange = v.Changed
	v.Binder.OnLeft = func() { v.ui.page.ask.answered() }
	v.build()
	v.tellWrong(wrong)
	if _, ok := v.ui.parts[tab]; ok {
		v.stand(tab)
		v.ui.page.setBelow(v.ui.parts[tab].Body())
		v.gesture.below = true
	}
	if _, ok := consult.OptionByID(p, record.ID(tab)); ok {
		v.ChooseOption(record.ID(tab))
		return nil
	}
	v.Show()
	return nil
}

// Head is the athlete, and the one thing to do with the plan.
func (v *View) Head() desk.Head {
	h := desk.AthleteHead(v.File.Athlete, desk.Plan, v.Desk.FactsOf(v.File.Athlete))
	if v.Binder != nil {
		h.Actions = v.ui.head.shown(v.Now)
		h.Spare = []fyne.CanvasObject{v.ui.picture}
	}
	return h
}

// Shown scrolls to what the screen was opened for.
func (v *View) Shown() {
	if v.gesture.below {
		v.ui.page.revealBelow()
	}
}

// Body is the plan.
func (v *View) Body() fyne.CanvasObject { return v.body }

// Place names what is shown, so that the window can open it again.
func (v *View) Place() desk.Place {
	p := desk.Place{Screen: desk.Plan, Athlete: v.File.Athlete.ID, Record: v.Now.Plan.ID}
	if v.Binder != nil {
		p.Part = v.ui.chosen
	}
	return p
}

// Leave ends the visit to the selected field.
func (v *View) Leave() {
	if v.Binder != nil {
		v.Binder.Doc.EndVisit()
	}
}

// Undo takes back the last step; Redo does it again. The option that changes is
// taken in hand, so that the step is seen.
func (v *View) Undo() bool { return v.stepped(func() bool { return v.Binder.Undo() }) }

// Redo does again what was taken back.
func (v *View) Redo() bool { return v.stepped(func() bool { return v.Binder.Redo() }) }

func (v *View) stepped(step func() bool) bool {
	if v.Binder == nil {
		return false
	}
	before := v.Binder.Doc.Now().Record
	if !step() {
		return false
	}
	after := v.Binder.Doc.Now().Record
	if id := state.Differing(v.Now.PlanCase, before, after); id != "" {
		v.ChooseOption(id)
	}
	if len(before.Reviews) != len(after.Reviews) {
		review.FollowUsual(v.Plan, before, after)
		review.ChooseInForce(v.Plan)
	}
	return true
}

// CanUndo reports whether there is a step to take back.
func (v *View) CanUndo() bool { return v.Binder != nil && v.Binder.Doc.CanUndo() }

// CanRedo reports whether there is one to do again.
func (v *View) CanRedo() bool { return v.Binder != nil && v.Binder.Doc.CanRedo() }

// Print goes to the page that is printed from.
func (v *View) Print() { v.GoToHandout() }

// Canvas is the canvas the plan stands on.
func (v *View) Canvas() fyne.Canvas { return fyne.CurrentApp().Driver().CanvasForObject(v.body) }

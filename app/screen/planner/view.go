package planner

import (
	"context"
	"errors"
	"fmt"

	"fyne.io/fyne/v2"

	"ebbwell/app/kit/amount"
	"ebbwell/app/kit/bind"
	"ebbwell/app/kit/desk"
	"ebbwell/app/kit/field"
	"ebbwell/internal/consult"
	"ebbwell/internal/plan"
	"ebbwell/internal/record"
	"ebbwell/internal/store"
)

// binder ties fields to the plan that is open.
type binder = bind.Binder[record.Plan]

// sheet is the plan with the texts kept beside it.
type sheet = bind.Sheet[record.Plan]

// View is an athlete's plan, or what there is to do before there is one.
type View struct {
	desk *desk.Desk
	file file
	sp   speaker
	// b is nil where no plan is open.
	b    *binder
	now  state
	live calculation
	ui   widgets
	grip grip
	body fyne.CanvasObject
}

// widgets are what a plan is shown with.
type widgets struct {
	page  *page
	strip *strip
	tabs  *field.Tabs
	parts map[string]part
	head  headButtons
	// suggest is pressed again to stop.
	suggest *field.Button
	keep    *field.Button
}

// part is what stands behind a tab.
type part interface {
	// body is what is shown.
	body() fyne.CanvasObject
	// open shows another case, follow what a movement of a slider changed.
	open()
	follow()
}

// grip is what is under way: a visit to a slider or its number, a search.
type grip struct {
	visit  string
	typing plan.Slot
	// odd is what is odd about the number typed last; showing is true while
	// the screen itself sets its fields.
	odd     string
	showing bool
	search  int
	stop    func()
	// below is true where the screen was opened for what stands below the
	// panels.
	below bool
}

var (
	_ desk.View    = (*View)(nil)
	_ desk.Undoer  = (*View)(nil)
	_ desk.Printer = (*View)(nil)
	_ desk.Shower  = (*View)(nil)
)

// New opens the plan a place names: the one with its id, the athlete's newest
// where it names none, or a new one, from the test whose id is Part.
func New(d *desk.Desk, place desk.Place) (*View, error) {
	f, err := loadFile(d, place.Athlete)
	if err != nil {
		return nil, err
	}
	v := &View{desk: d, file: f, grip: grip{typing: -1}}
	hidden := consult.MassHidden(f.athlete, d.Now())
	v.sp = speaker{w: d.Words, by: amount.Writer{Words: d.Words, US: d.Practice().Settings.Units == "us", Hidden: hidden}}
	p, there, err := v.choose(place)
	switch {
	case errors.Is(err, consult.ErrNoBasis):
		v.body = v.noTest()
		return v, nil
	case err != nil:
		return nil, err
	case !there:
		v.body = v.noPlan()
		return v, nil
	}
	return v, v.open(p, place.Part)
}

// choose finds the plan to open, or begins one.
func (v *View) choose(place desk.Place) (p record.Plan, there bool, err error) {
	if place.New {
		p, err = v.begin(record.ID(place.Part))
		return p, err == nil, err
	}
	if p, there = v.file.plan(place.Record); there {
		return p, true, nil
	}
	if place.Record != "" {
		return p, false, gone(place.Record)
	}
	if _, ok := v.file.usable(); !ok {
		return p, false, consult.ErrNoBasis
	}
	return p, false, nil
}

// begin makes and keeps a plan from a test, the newest that can carry one where
// none is named.
func (v *View) begin(test record.ID) (record.Plan, error) {
	found, ok := v.file.test(test)
	if !ok {
		if found, ok = v.file.usable(); !ok {
			return record.Plan{}, consult.ErrNoBasis
		}
	}
	basis, err := consult.BasisOf(v.file.athlete, []consult.Findings{found})
	if err != nil {
		return record.Plan{}, err
	}
	p, err := consult.NewPlan(v.file.athlete, basis, v.desk.Calculate(), desk.OptionNames(v.desk.Words), v.desk.Now())
	if err == nil {
		p, err = consult.AsBefore(p, v.file.plans, v.file.athlete, basis, v.desk.Calculate())
	}
	if err != nil {
		return record.Plan{}, err
	}
	kept, err := v.desk.Store.SavePlan(context.Background(), p, store.Edit{})
	if err != nil {
		return record.Plan{}, fmt.Errorf("begin a plan: %w", err)
	}
	v.file.plans = append([]record.Plan{kept}, v.file.plans...)
	return kept, nil
}

// open shows a plan.
func (v *View) open(p record.Plan, tab string) error {
	c, wrong, err := v.file.lenient(p, v.desk)
	if err != nil {
		v.now.plan = p
		v.body = v.cannotOpen(err)
		return nil // said on the screen, with what to do
	}
	doc, err := bind.Open(v.desk, bind.Kind[record.Plan]{
		Ref: refOf(p), Clone: record.Plan.Clone, Meta: func(p *record.Plan) *record.Meta { return &p.Meta }, Save: v.desk.Store.SavePlan,
	}, p)
	if err != nil {
		return err
	}
	v.now = newState(c)
	v.b = bind.New(v.desk, v.sp.by, doc)
	v.b.OnChange = v.changed
	v.build()
	v.tellWrong(wrong)
	if _, ok := v.ui.parts[tab]; ok {
		v.ui.tabs.Choose(tab)
		v.ui.page.setBelow(v.ui.parts[tab].body())
		v.grip.below = tab != TabBeside
	}
	v.show()
	return nil
}

func refOf(p record.Plan) record.Ref { return record.Ref{Kind: record.KindPlan, ID: p.ID} }

// Head is the athlete, and the one thing to do with the plan.
func (v *View) Head() desk.Head {
	h := desk.AthleteHead(v.file.athlete, desk.Plan, v.desk.FactsOf(v.file.athlete).WithoutFlags())
	if v.b != nil {
		h.Actions = v.ui.head.shown(v.now)
	}
	return h
}

// Shown scrolls to what the screen was opened for.
func (v *View) Shown() {
	if v.grip.below {
		v.ui.page.revealBelow()
	}
}

// Body is the plan.
func (v *View) Body() fyne.CanvasObject { return v.body }

// Place names what is shown, so that the window can open it again.
func (v *View) Place() desk.Place {
	p := desk.Place{Screen: desk.Plan, Athlete: v.file.athlete.ID, Record: v.now.plan.ID}
	if v.b != nil {
		p.Part = v.ui.tabs.Chosen()
	}
	return p
}

// Leave ends the visit to the field in hand.
func (v *View) Leave() {
	if v.b != nil {
		v.stopSearch()
		v.b.Doc.EndVisit()
	}
}

// Undo takes back the last step; Redo does it again. The option that changes is
// taken in hand, so that the step is seen.
func (v *View) Undo() bool { return v.stepped(func() bool { return v.b.Undo() }) }

// Redo does again what was taken back.
func (v *View) Redo() bool { return v.stepped(func() bool { return v.b.Redo() }) }

func (v *View) stepped(step func() bool) bool {
	if v.b == nil {
		return false
	}
	before := v.b.Doc.Now().Record
	if !step() {
		return false
	}
	after := v.b.Doc.Now().Record
	if id := differing(v.now.planCase, before, after); id != "" {
		v.chooseOption(id)
	}
	if len(before.Reviews) != len(after.Reviews) {
		v.followUsual(before, after)
		v.chooseInForce()
	}
	return true
}

// CanUndo reports whether there is a step to take back.
func (v *View) CanUndo() bool { return v.b != nil && v.b.Doc.CanUndo() }

// CanRedo reports whether there is one to do again.
func (v *View) CanRedo() bool { return v.b != nil && v.b.Doc.CanRedo() }

// Print goes to the page that is printed from.
func (v *View) Print() { v.goToHandout() }

// canvas is the canvas the plan stands on.
func (v *View) canvas() fyne.Canvas { return fyne.CurrentApp().Driver().CanvasForObject(v.body) }

package planner

import (
	"fyne.io/fyne/v2"

	"ebbwell/app/kit/field"
	"ebbwell/app/kit/look"
	"ebbwell/internal/plan"
	"ebbwell/internal/record"
)

// The tabs below the panels, as places name them.
const (
	TabBeside  = "beside"
	TabSteps   = "steps"
	TabBreaks  = "breaks"
	TabDay     = "day"
	TabSession = "session"
)

// tabList is the tabs in their order.
func tabList() []string { return []string{TabBeside, TabSteps, TabBreaks, TabDay, TabSession} }

// build makes the widgets of a plan; show fills them.
func (v *View) build() {
	h, say := v.desk.Host, v.sp.say
	v.ui.head = newHeadButtons(v)
	v.ui.strip = newStrip(h, v.sp, stripActions{rests: v.askRests, length: v.lookAt, open: v.goToPlan, fresh: v.goToNew, climate: v.askClimate})
	v.ui.suggest = field.NewButton(h, "planner.suggest", say("planner.suggest"), field.Outline, v.suggest)
	v.ui.keep = field.NewButton(h, "planner.keep", say("planner.keep"), field.Outline, v.keepAsNew)
	var tabs []field.Tab
	for _, key := range tabList() {
		tabs = append(tabs, field.Tab{Key: key, Text: say("planner.tab." + key)})
	}
	v.ui.tabs = field.NewTabs(h, "planner.tabs", tabs)
	v.ui.tabs.OnChosen = v.showTab
	v.ui.parts = map[string]part{
		TabBeside: newBeside(v), TabSteps: newStepsTab(v), TabBreaks: newBreaksTab(v), TabDay: newDayTab(v), TabSession: newSessionTab(v),
	}
	v.ui.page = newPage(pageParts{
		strip: v.ui.strip.box, trouble: look.NewCaution("", "", nil), mix: newMixPanel(h, v.sp, v.rowActions(), v.askItem),
		deficit: newDeficitPanel(h, v.sp, v.askWhy), bars: newBarsPanel(v.sp),
		tabs: &fyne.Container{Layout: tabsLayout{}, Objects: []fyne.CanvasObject{
			look.HBox(0, v.ui.tabs), look.HBox(12, v.ui.suggest, v.ui.keep),
		}},
		below: look.NewSheet(v.ui.parts[TabBeside].body()),
	})
	v.body = look.Pad(0, 0, 0, -ringLeft, v.ui.page)
}

// rowActions are what the sliders tell.
func (v *View) rowActions() rowActions {
	return rowActions{
		moved:   v.move,
		settled: func(plan.Slot, float64) { v.settled() },
		stopped: v.held,
		typed:   v.typed,
		left:    func(plan.Slot) { v.settled() },
		remove:  v.removeAt,
		strength: func(slot plan.Slot, r field.Reading) {
			if r.Usable() {
				v.makeUp(slot, r)
			}
		},
		problem:         v.oddNumber,
		strengthProblem: v.oddNumber,
	}
}

// showTab shows what stands behind a tab, and brings it into sight.
func (v *View) showTab(key string) {
	v.openPart(key)
	v.ui.page.setBelow(v.ui.parts[key].body())
	v.ui.page.revealBelow()
}

// lookAt looks at another length of the session.
func (v *View) lookAt(l plan.Length) {
	v.now = v.now.at(l)
	v.show()
}

// take another option in hand.
func (v *View) chooseOption(id record.ID) {
	v.now = v.now.choose(id)
	v.show()
}

// removeAt takes the item of a slot out of the option in hand.
func (v *View) removeAt(slot plan.Slot) {
	it, ok := v.now.itemAt(slot)
	if !ok {
		return
	}
	option := v.now.option
	v.b.Pick("planner.remove", func(s *sheet) { removeItem(&s.Record, option, it.ID) })
}

// makeUp makes a powder up to another strength, where that can be dissolved.
func (v *View) makeUp(slot plan.Slot, r field.Reading) {
	info := v.now.planCase.Slots[slot]
	if info.Strength.Known() && *info.Strength.Value == r.Value {
		return
	}
	tried := v.now.plan.Clone()
	setStrength(&tried, v.now.planCase, slot, r.Value, r.Unit)
	if _, err := v.file.open(tried, v.desk); err != nil || r.Value <= 0 {
		v.grip.odd = v.sp.say("planner.toostrong", v.sp.product(v.now.planCase, slot))
		v.ui.page.mix.rows[slot].strength.SetValue(info.Strength.Or(0))
		v.figures()
		return
	}
	v.grip.odd = ""
	c := v.now.planCase
	v.b.Pick("planner.strength", func(s *sheet) { setStrength(&s.Record, c, slot, r.Value, r.Unit) })
}

// keepAsNew keeps the mix in hand as an option of its own, and takes that in
// hand.
func (v *View) keepAsNew() {
	var id record.ID
	now := v.now
	name := v.sp.freeName(now.plan, v.sp.say("planner.option.new"))
	v.b.Pick("planner.keep", func(s *sheet) {
		id = duplicate(&s.Record, now.hand(), name)
		edit(&s.Record, id, func(o *record.Option) { *o = now.planCase.WithMix(*o, now.mix) })
	})
	v.chooseOption(id)
}

// freeName is a name that no option of a plan has yet: "Option 2".
func (sp speaker) freeName(p record.Plan, name string) string {
	taken := func(s string) bool {
		for _, o := range p.Options {
			if o.Name == s {
				return true
			}
		}
		return false
	}
	if !taken(name) {
		return name
	}
	for n := 2; ; n++ {
		if s := sp.say("planner.option.numbered", name, sp.w.Number(float64(n), 0)); !taken(s) {
			return s
		}
	}
}

package planner

import (
	"ebbwell/app/kit/desk"
	"ebbwell/app/kit/field"
	"ebbwell/app/kit/look"
	"ebbwell/internal/consult"
	"ebbwell/internal/evidence"
	"ebbwell/internal/plan"
	"ebbwell/internal/quantity"
	"ebbwell/internal/record"
)

// changed takes in what was typed or chosen in a field of the record.
func (v *View) changed() {
	v.reopen(v.b.Doc.Now().Record)
}

// reopen makes the case anew for a changed plan and shows it. What cannot be
// calculated with is said, and the screen goes on with what can.
func (v *View) reopen(p record.Plan) {
	if v.grip.stop != nil {
		v.stopSearch() // it looks at a plan that is no more
	}
	c, wrong, err := v.file.lenient(p, v.desk)
	if err != nil {
		v.tellWrong(err)
		return
	}
	v.now = v.now.open(c)
	v.tellWrong(wrong)
	v.show()
}

// show shows the plan in all parts; the record is in v.now.
func (v *View) show() {
	v.live.open(v.now, v.chances())
	ui := &v.ui
	ui.strip.open(v.now, v.heatWord(), v.planOptions())
	v.openMix()
	ui.page.deficit.open(v.now, &v.live)
	ui.page.bars.open(&v.live)
	look.EnableIf(ui.suggest, v.now.draft())
	look.EnableIf(ui.keep, v.now.draft())
	v.figures()
	v.openPart(ui.tabs.Chosen())
	ui.page.lay()
	v.desk.HeadChanged()
}

// openPart shows what stands behind a tab.
func (v *View) openPart(key string) {
	v.ui.parts[key].open()
	v.b.Enable(v.now.draft())
	v.b.Show()
}

// chances are those of the plan.
func (v *View) chances() []plan.Chance { return consult.PlanChances(v.now.plan) }

// figures shows what the mix in hand comes to.
func (v *View) figures() {
	p := v.ui.page
	defer v.shows()()
	p.mix.follow(v.now, &v.live, v.grip.typing, v.grip.odd)
	p.deficit.follow(v.now, &v.live)
	p.bars.follow(v.now, &v.live)
}

// shows marks that the screen sets its fields, until the function returned is
// called: what is odd about a number is then only noted.
func (v *View) shows() (done func()) {
	was := v.grip.showing
	v.grip.showing = true
	return func() { v.grip.showing = was }
}

// openMix shows the sliders anew.
func (v *View) openMix() {
	defer v.shows()()
	v.grip.odd = ""
	v.ui.page.mix.open(v.now, v.rawOf)
}

// follow shows what a movement changed, everywhere it is in sight.
func (v *View) follow() {
	v.live.follow(v.now)
	v.figures()
	v.ui.parts[v.ui.tabs.Chosen()].follow()
}

// move takes a movement of a slot into the plan; the changes of one visit are one
// step back.
func (v *View) move(slot plan.Slot, to float64) {
	if v.grip.visit == "" {
		v.grip.visit = desk.NewVisit()
	}
	v.now = v.now.move(slot, to)
	v.take(slot, "")
	v.follow()
}

// take writes the mix in hand into the document, with what was typed for a slot
// and could not be read.
func (v *View) take(slot plan.Slot, raw string) {
	v.desk.Withdraw()
	v.b.Doc.Change(v.grip.visit, "planner.mix", func(s *sheet) {
		v.now.into(&s.Record)
		keepRaw(s, v.now, slot, raw)
	})
	v.now.plan = v.b.Doc.Now().Record
	v.ui.page.mix.rows[slot].raw = raw
}

// settled ends a movement.
func (v *View) settled() {
	v.grip.visit, v.grip.typing = "", -1
	v.b.Doc.EndVisit()
	v.b.Flush()
	v.openMix()
	v.figures()
	v.desk.HeadChanged()
}

// held says why a slider went no further.
func (v *View) held(slot plan.Slot) {
	v.now.stop = v.live.ends[slot]
	v.figures()
}

// typedDecimals takes the dust of a conversion off a typed amount.
const typedDecimals = 3

// typed takes a typed amount in. One that cannot be read is kept as it was typed;
// one that is too much goes as far as the ceiling.
func (v *View) typed(slot plan.Slot, r field.Reading) {
	v.grip.typing = slot
	if v.grip.visit == "" {
		v.grip.visit = desk.NewVisit()
	}
	if r.Usable() || r.State == field.Empty {
		v.now = v.now.move(slot, quantity.Round(r.Value, typedDecimals))
	}
	raw := ""
	if r.State == field.Unreadable || r.State == field.Refused {
		raw = r.Raw
	}
	v.take(slot, raw)
	v.follow()
}

// keepRaw keeps the text of a slot that could not be read, or forgets it.
func keepRaw(s *sheet, now state, slot plan.Slot, raw string) {
	path := now.path(s.Record, slot)
	if path == "" && raw != "" {
		addItem(&s.Record, now.option, now.planCase.Slots[slot].Product)
		path = now.path(s.Record, slot)
	}
	if raw == "" {
		delete(s.Raw, path)
		return
	}
	s.Raw[path] = raw
}

// path is where the amount of a slot of the option in hand stands in the record.
func (s state) path(p record.Plan, slot plan.Slot) string {
	begin := "options." + string(s.option) + "."
	if slot == plan.Salt {
		return begin + "salt"
	}
	o, _ := consult.OptionByID(p, s.option)
	for _, it := range o.Items {
		if at, ok := s.planCase.SlotOf(it); ok && at == slot {
			if slot.IsFood() {
				return begin + "items." + string(it.ID) + ".portions"
			}
			return begin + "items." + string(it.ID) + ".volume"
		}
	}
	return ""
}

// rawOf is what was typed for a slot and could not be read.
func (v *View) rawOf(slot plan.Slot) string {
	s := v.b.Doc.Now()
	return s.Raw[v.now.path(s.Record, slot)]
}

// oddNumber says what is odd about a typed number, where the guards speak.
func (v *View) oddNumber(slot plan.Slot, text string) {
	if text != "" {
		text = v.sp.say("planner.odd", v.sp.product(v.now.planCase, slot), text)
	}
	v.grip.odd = text
	if !v.grip.showing {
		v.figures()
	}
}

// tellWrong says above the panels what of the session cannot be calculated with,
// or that an agreed plan could not be opened as it was agreed.
func (v *View) tellWrong(err error) {
	c := v.ui.page.trouble
	switch {
	case err != nil:
		c.SetText(v.sp.say("planner.wrong"), v.sp.problems(err))
	case v.now.planCase.Anew:
		c.SetText(v.sp.say("planner.anew"), v.sp.say("planner.anew.sentence"))
	default:
		c.SetText("", "")
	}
}

// problems words the problems of an error, one after the other.
func (sp speaker) problems(err error) string {
	var list []string
	collect(err, func(p evidence.Problem) { list = append(list, desk.ProblemSentence(sp.w, p)) })
	if len(list) == 0 {
		return desk.Sentence(sp.w, err)
	}
	text := ""
	for i, s := range list {
		if i > 0 {
			text += " "
		}
		text += s
	}
	return text
}

// collect visits every problem that an error holds.
func collect(err error, visit func(evidence.Problem)) {
	switch e := err.(type) { //nolint:errorlint // walks the whole tree, not to the first match
	case nil:
	case evidence.Problem:
		visit(e)
	case interface{ Unwrap() []error }:
		for _, one := range e.Unwrap() {
			collect(one, visit)
		}
	case interface{ Unwrap() error }:
		collect(e.Unwrap(), visit)
	}
}

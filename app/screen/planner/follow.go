package planner

import (
	"ebbwell/app/kit/desk"
	"ebbwell/app/kit/field"
	"ebbwell/app/kit/look"
	"ebbwell/app/screen/planner/breaks"
	"ebbwell/app/screen/planner/part"
	"ebbwell/app/screen/planner/state"
	"ebbwell/app/screen/planner/wording"
	"ebbwell/internal/consult"
	"ebbwell/internal/evidence"
	"ebbwell/internal/plan"
	"ebbwell/internal/quantity"
	"ebbwell/internal/record"
)

// Changed takes in what was typed or chosen in a field of the record.
func (v *View) Changed() {
	v.Reopen(v.Binder.Doc.Now().Record)
}

// Reopen makes the case anew for a changed plan and shows it. What cannot be
// calculated with is said, and the screen goes on with what can.
func (v *View) Reopen(p record.Plan) {
	c, wrong, err := v.File.Lenient(p, v.Desk)
	if err != nil {
		v.tellWrong(err)
		return
	}
	v.Now = v.Now.Open(c)
	v.tellWrong(wrong)
	v.Show()
}

// Show shows the plan in all parts; the record is in v.now.
func (v *View) Show() {
	v.Live.Open(v.Now, v.chances())
	v.gesture.spoken = spoken{}
	ui := &v.ui
	ui.strip.Open(v.Now, v.PlanOptions())
	ui.page.ask.open()
	v.openMix()
	ui.page.deficit.Open(v.Now, &v.Live)
	ui.page.bars.Open(v.Now, &v.Live)
	ui.editor.Open()
	ui.editor.Follow()
	minutes := v.Now.PlanCase.Planner.Session().Minutes[v.Now.Length]
	if v.Now.Draft() {
		ui.page.deficit.OnDragged(ui.editor.Drag, ui.editor.Release, v.selectBreak)
	} else {
		ui.page.deficit.OnDragged(nil, nil, v.selectBreak)
	}
	ui.page.deficit.Break(ui.editor.Stops, breaks.Spells(nil, v.Live.Take, minutes), ui.editor.Objects(), ui.editor.One())
	ui.page.cards.Open()
	look.ShowIf(ui.suggest.Button, v.Now.Draft())
	look.ShowIf(ui.keep, v.Now.Draft() && (ui.chosen == "" || ui.chosen == part.TabBeside))
	v.figures()
	ui.editor.Select(ui.page.deficit.Selected())
	v.openPart()
	ui.page.Lay()
	v.Desk.HeadChanged()
}

// openPart shows the part that stands below, if one does.
func (v *View) openPart() {
	if p, ok := v.ui.parts[v.ui.chosen]; ok {
		p.Open()
	}
	v.Binder.Enable(v.Now.Draft())
	v.Binder.Show()
}

// chances are those of the plan.
func (v *View) chances() []plan.Chance { return consult.PlanChances(v.Now.Plan) }

// figures shows what the selected mix comes to.
func (v *View) figures() {
	p := v.ui.page
	defer v.shows()()
	p.mix.Follow(v.Now, &v.Live, v.gesture.typing)
	p.deficit.Follow(v.Now, &v.Live)
	v.speak()
	p.bars.Follow(v.Now, &v.Live)
}

// speak words the cautions and the limit, where they changed.
func (v *View) speak() {
	q := &v.Live.At
	now := spoken{true, q.Guards, v.Now.Stop, 0, q.Plasma, q.Ceiling, v.gesture.odd}
	if q.Guards.Has(plan.OverStomach | plan.NearStomach) {
		now.rate = q.Fluid.RateLH
	}
	if !q.Plasma.Show {
		now.plasma = plan.Plasma{}
	}
	if now == v.gesture.spoken {
		return
	}
	v.gesture.spoken = now
	v.ui.strip.caution(v.cautions())
	v.ui.page.limit.SetText(v.Speaker.Limits(v.Now, *q))
}

// shows marks that the screen sets its fields, until the function returned is
// called: what is odd about a number is then only noted.
func (v *View) shows() (done func()) {
	was := v.gesture.showing
	v.gesture.showing = true
	return func() { v.gesture.showing = was }
}

// openMix shows the sliders anew.
func (v *View) openMix() {
	defer v.shows()()
	v.gesture.odd = ""
	v.ui.page.mix.Open(v.Now, v.rawOf)
}

// Follow shows what a movement changed, everywhere it is in sight.
func (v *View) Follow() {
	v.Live.Follow(v.Now)
	v.ui.editor.Follow()
	v.figures()
	v.ui.page.cards.Follow()
	if p, ok := v.ui.parts[v.ui.chosen]; ok {
		p.Follow()
	}
}

// move takes a movement of a slot into the plan; the changes of one visit are one
// step back.
func (v *View) move(slot plan.Slot, to float64) {
	if v.gesture.visit == "" {
		v.gesture.visit = desk.NewVisit()
	}
	shown := v.Live.Mix[slot]
	v.Now = v.Now.Move(slot, to)
	v.Now = v.Now.OnTo(&v.Live, slot, to, shown)
	v.take(slot, "")
	v.Follow()
}

// take writes the selected mix into the document, with what was typed for a slot
// and could not be read.
func (v *View) take(slot plan.Slot, raw string) {
	v.Desk.Withdraw()
	v.Binder.Doc.Change(v.gesture.visit, "planner.mix", func(s *part.Sheet) {
		v.Now.Into(&s.Record)
		keepRaw(s, v.Now, slot, raw)
	})
	v.Now.Plan = v.Binder.Doc.Now().Record
	v.ui.page.mix.Rows[slot].Raw = raw
}

// moveEnded ends a movement.
func (v *View) moveEnded() {
	v.gesture.visit, v.gesture.typing = "", -1
	v.Binder.Doc.EndVisit()
	v.Binder.Flush()
	v.openMix()
	v.ui.page.bars.Open(v.Now, &v.Live)
	v.ui.page.cards.Open()
	v.figures()
	v.Desk.HeadChanged()
}

// held says why a slider went no further.
func (v *View) held(slot plan.Slot) {
	v.Now.Stop = v.Live.Ends[slot]
	v.figures()
}

// typedDecimals takes the dust of a conversion off a typed amount.
const typedDecimals = 3

// typed takes a typed amount in. One that cannot be read is kept as it was typed;
// one that is too much goes as far as the ceiling.
func (v *View) typed(slot plan.Slot, r field.Reading) {
	v.gesture.typing = slot
	if v.gesture.visit == "" {
		v.gesture.visit = desk.NewVisit()
	}
	if r.Usable() || r.State == field.Empty {
		v.Now = v.Now.Move(slot, quantity.Round(r.Value, typedDecimals))
	}
	raw := ""
	if r.State == field.Unreadable || r.State == field.Refused {
		raw = r.Raw
	}
	v.take(slot, raw)
	v.Follow()
}

// keepRaw keeps the text of a slot that could not be read, or forgets it.
func keepRaw(s *part.Sheet, now state.State, slot plan.Slot, raw string) {
	path := now.Path(s.Record, slot)
	if path == "" && raw != "" {
		state.AddItem(&s.Record, now.Option, now.PlanCase.Slots[slot].Product)
		path = now.Path(s.Record, slot)
	}
	if raw == "" {
		delete(s.Raw, path)
		return
	}
	s.Raw[path] = raw
}

// rawOf is what was typed for a slot and could not be read.
func (v *View) rawOf(slot plan.Slot) string {
	s := v.Binder.Doc.Now()
	return s.Raw[v.Now.Path(s.Record, slot)]
}

// oddNumber says what is odd about a typed number, where the guards speak.
func (v *View) oddNumber(slot plan.Slot, text string) {
	if text != "" {
		text = v.Speaker.Say("planner.odd", v.Speaker.Product(v.Now.PlanCase, slot), text)
	}
	v.gesture.odd = text
	if !v.gesture.showing {
		v.figures()
	}
}

// tellWrong says above the panels what of the session cannot be calculated with,
// or that an agreed plan could not be opened as it was agreed.
func (v *View) tellWrong(err error) {
	c := v.ui.page.trouble
	switch {
	case err != nil:
		c.SetText(v.Speaker.Say("planner.wrong"), problems(v.Speaker, err))
	case v.Now.PlanCase.Anew:
		c.SetText(v.Speaker.Say("planner.anew"), v.Speaker.Say("planner.anew.sentence"))
	default:
		c.SetText(v.sinceWords())
	}
}

// sinceWords say what was corrected since the plan was agreed; empty where nothing
// was.
func (v *View) sinceWords() (title, sentence string) {
	c := v.Now.PlanCase
	sentence = desk.SinceWords(v.Desk.Words, v.Speaker.By, c, func(place int) string { return v.Speaker.RungName(place-1, false) })
	if sentence == "" || c.Plan.State != record.PlanAgreed {
		return "", ""
	}
	return v.Speaker.Say("planner.since"), sentence
}

// problems words the problems of an error, one after the other.
func problems(sp wording.Speaker, err error) string {
	var list []string
	collect(err, func(p evidence.Problem) { list = append(list, desk.ProblemSentence(sp.Words, p)) })
	if len(list) == 0 {
		return desk.Sentence(sp.Words, err)
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

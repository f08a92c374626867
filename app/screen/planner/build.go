package planner

import (
	"fyne.io/fyne/v2"

	"ebbwell/app/kit/field"
	"ebbwell/app/kit/look"
	"ebbwell/app/kit/picture"
	"ebbwell/app/screen/agreement"
	"ebbwell/app/screen/planner/breaks"
	"ebbwell/app/screen/planner/compare"
	"ebbwell/app/screen/planner/day"
	"ebbwell/app/screen/planner/figures"
	"ebbwell/app/screen/planner/mix"
	"ebbwell/app/screen/planner/part"
	"ebbwell/app/screen/planner/session"
	"ebbwell/app/screen/planner/state"
	"ebbwell/app/screen/planner/steps"
	"ebbwell/app/screen/planner/wording"
	"ebbwell/internal/plan"
	"ebbwell/internal/record"
)

// behindButtons are the parts behind a button above the steps, in their order: the
// button of the breaks stands at the picture, that of the session at the line above.
func behindButtons() []string { return []string{part.TabBeside, part.TabSteps, part.TabDay} }

// build makes the widgets of a plan; show fills them.
func (v *View) build() {
	h, say := v.Desk.Host, v.Speaker.Say
	v.ui.head = newHeadButtons(v)
	v.ui.strip = newStrip(h, v.Speaker, stripActions{rests: func() { session.AskRests(v.Plan) }, length: v.lookAt, open: v.GoToPlan, cautions: v.showCautions}, v.opener(part.TabSession))
	v.ui.suggest = mix.NewSuggestions(v.Plan)
	v.ui.suggest.OnOpen = v.advise
	v.ui.keep = field.NewButton(h, "planner.keep", say("planner.keep"), field.Outline, v.keepAsNew)
	v.ui.title = look.NewLabel("", look.Strong, look.Ink)
	v.ui.click = look.NewLabel("", look.Note, look.Ink2)
	v.ui.back = field.NewButton(h, "planner.back", say("planner.back"), field.Outline, v.closePart)
	v.ui.openers = look.HBox(8)
	for _, key := range behindButtons() {
		v.ui.openers.Add(v.opener(key))
	}
	v.ui.openers.Add(field.NewButton(h, "planner.letter", say("letter.open.ask"), field.Outline, v.askLetter))
	v.ui.parts = map[string]part.Part{
		part.TabBeside: compare.New(v.Plan), part.TabSteps: steps.New(v.Plan), part.TabBreaks: breaks.New(v.Plan), part.TabDay: day.New(v.Plan), part.TabSession: session.New(v.Plan),
	}
	v.ui.page = newPage(pageParts{
		strip: v.ui.strip, trouble: look.NewCaution("", "", nil),
		ask:     newQuestion(v),
		mix:     mix.NewPanel(h, v.Speaker, v.rowActions(), func(role record.Role) { mix.AskItem(v.Plan, role) }, v.ui.suggest.Button, v.unfoldSalt),
		deficit: figures.NewDeficit(h, v.Speaker, func() { figures.AskWhy(v.Plan) }, v.opener(part.TabBreaks)),
		bars:    figures.NewBars(h, v.Speaker, func() { figures.AskWhy(v.Plan) }),
		bar:     &fyne.Container{Layout: barLayout{}, Objects: []fyne.CanvasObject{v.ui.title, v.ui.click, look.HBox(8, v.ui.keep, v.ui.openers, v.ui.back)}},
		cards:   steps.NewCards(v.Plan), below: look.NewSheet(look.Gap(0, 0)), limit: look.NewCaution("", "", nil),
	})
	v.ui.editor = breaks.NewEditor(v.Plan)
	v.ui.picture = picture.Button(v.Desk, "planner.picture", v.Desk.Words.Say("picture.planner", v.File.Athlete.Name), picture.One(v.File.Athlete.ID), v.ui.page.deficit.Picture)
	v.ui.editor.OnShown = func() { v.ui.page.deficit.Stops(v.ui.editor.Stops) }
	v.ui.editor.OnSelected = v.selectBreak
	v.closePart()
	v.body = look.Pad(0, 0, 0, -ringLeft, look.InMargin(v.ui.page))
}

// opener is the button that opens a part.
func (v *View) opener(key string) *field.Button {
	return field.NewButton(v.Desk.Host, "planner.tabs."+key, v.Speaker.Say("planner.tab."+key), field.Outline, func() { v.OpenTab(key) })
}

// advise shows where the aim is met on the sliders while a proposal is open.
func (v *View) advise(open bool) {
	v.ui.page.mix.Advise(open)
	v.figures()
}

// unfoldSalt gives the salt its row.
func (v *View) unfoldSalt() {
	v.ui.page.mix.Unfold(true)
	v.openMix()
	v.figures()
	v.Lay()
}

// selectBreak selects a break.
func (v *View) selectBreak(stop int) {
	v.ui.editor.Select(stop)
	v.ui.page.deficit.Select(v.Now, &v.Live, stop)
}

// cautions are what speaks, the gravest first: what is odd about what is typed, the
// guards, the heat.
func (v *View) cautions() []wording.Caution {
	list := v.Speaker.Cautions(v.Now, v.Live.At)
	if v.gesture.odd != "" {
		list = append([]wording.Caution{{Short: v.Speaker.Say("planner.caution.odd"), Text: v.gesture.odd}}, list...)
	}
	if heat := session.HeatWord(v.Plan); heat != "" && session.HeatSpeaks(v.Plan) {
		list = append(list, wording.Caution{Short: v.Speaker.Say("planner.caution.heat"), Text: wording.Sentences(heat+".", v.Speaker.Say("caution.drinking"))})
	}
	return list
}

// showCautions lists all that speaks, one bar each, the gravest first.
func (v *View) showCautions() {
	list := look.VBox(8)
	for _, one := range v.cautions() {
		list.Add(look.NewCaution("", one.Text, nil))
	}
	v.Desk.Host.Ask(v.Canvas(), field.Question{
		Name: "planner.cautions", Title: v.Speaker.Say("planner.cautions.title"), Width: 560, Content: list,
		Actions: []field.Action{{Name: "done", Text: v.Speaker.Say("planner.back"), Kind: field.Primary}},
	})
}

// rowActions are what the sliders tell.
func (v *View) rowActions() mix.Actions {
	return mix.Actions{
		Moved:    v.move,
		Released: func(plan.Slot, float64) { v.moveEnded() },
		Stopped:  v.held,
		Typed:    v.typed,
		Left:     func(plan.Slot) { v.moveEnded() },
		Remove:   v.removeAt,
		Strength: func(slot plan.Slot, r field.Reading) {
			if r.Usable() {
				v.makeUp(slot, r)
			}
		},
		Problem:         v.oddNumber,
		StrengthProblem: v.oddNumber,
	}
}

// OpenTab opens a part in the place of the steps, and brings it into sight.
func (v *View) OpenTab(key string) {
	v.stand(key)
	v.openPart()
	v.ui.page.setBelow(v.ui.parts[key].Body())
	v.ui.page.revealBelow()
}

// stand names what stands below: a part, or for none the steps.
func (v *View) stand(key string) {
	v.ui.chosen = key
	title, hint := v.Speaker.Say("planner.strip.steps"), v.Speaker.Say("planner.strip.click")
	if key != "" {
		title, hint = v.Speaker.Say("planner.tab."+key), ""
	}
	v.ui.title.SetText(title)
	v.ui.click.SetText(hint)
	look.ShowIf(v.ui.openers, key == "")
	look.ShowIf(v.ui.keep, v.Now.Draft() && (key == "" || key == part.TabBeside))
	look.ShowIf(v.ui.back, key != "")
	v.ui.page.bar.Refresh()
}

// closePart brings the steps back.
func (v *View) closePart() {
	v.stand("")
	v.ui.page.setBelow(nil)
	v.ui.page.scroll.ScrollTo(0)
}

// Lay lays the page out anew.
func (v *View) Lay() { v.ui.page.Lay() }

// CorrectAgreed asks why an agreed plan is to be corrected.
func (v *View) CorrectAgreed() { agreement.AskCorrection(v.Plan) }

// lookAt looks at another length of the session.
func (v *View) lookAt(l plan.Length) {
	v.Now = v.Now.At(l)
	v.Show()
}

// ChooseOption selects another option.
func (v *View) ChooseOption(id record.ID) {
	v.Now = v.Now.Choose(id)
	v.Show()
}

// removeAt takes the item of a slot out of the selected option.
func (v *View) removeAt(slot plan.Slot) {
	it, ok := v.Now.ItemAt(slot)
	if !ok {
		return
	}
	option := v.Now.Option
	v.Binder.Pick("planner.remove", func(s *part.Sheet) { state.RemoveItem(&s.Record, option, it.ID) })
}

// makeUp makes a powder up to another strength, where that can be dissolved.
func (v *View) makeUp(slot plan.Slot, r field.Reading) {
	info := v.Now.PlanCase.Slots[slot]
	if info.Strength.Known() && *info.Strength.Value == r.Value {
		return
	}
	tried := v.Now.Plan.Clone()
	state.SetStrength(&tried, v.Now.PlanCase, slot, r.Value, r.Unit)
	if _, err := v.File.Open(tried, v.Desk); err != nil || r.Value <= 0 {
		v.gesture.odd = v.Speaker.Say("planner.toostrong", v.Speaker.Product(v.Now.PlanCase, slot))
		v.ui.page.mix.Rows[slot].Strength.SetValue(info.Strength.Or(0))
		v.figures()
		return
	}
	v.gesture.odd = ""
	c := v.Now.PlanCase
	v.Binder.Pick("planner.strength", func(s *part.Sheet) { state.SetStrength(&s.Record, c, slot, r.Value, r.Unit) })
}

// keepAsNew keeps the selected mix as an option of its own, and takes that in
// hand.
func (v *View) keepAsNew() {
	var id record.ID
	now := v.Now
	name := v.Speaker.FreeName(now.Plan, v.Speaker.Say("planner.option.new"))
	v.Binder.Pick("planner.keep", func(s *part.Sheet) {
		id = state.Duplicate(&s.Record, now.Selected(), name)
	})
	v.ChooseOption(id)
}

package testsheet

import (
	"slices"
	"strconv"

	"fyne.io/fyne/v2"

	"ebbwell/app/kit/desk"
	"ebbwell/app/kit/field"
	"ebbwell/app/kit/look"
	"ebbwell/internal/record"
)

// foot are the buttons below a sheet; the main one names the next sensible
// thing.
type foot struct {
	back, next, correct, history, blank, remove *field.Button
	// report, plan and the report's picture stand in the head above the findings.
	report, plan, picture *field.Button
	step                  step
	// guess is the visit to the guess in the findings.
	guess string
	// notices is what stood above the parts when they were laid out last.
	notices string
	box     fyne.CanvasObject
}

// newFoot makes the buttons.
func newFoot(v *View) *foot {
	f, h, say := &foot{}, v.desk.Host, v.b.Say
	f.back = field.NewButton(h, "testsheet.back", say("testsheet.back"), field.Outline, v.goBack)
	f.next = field.NewButton(h, "testsheet.next", "", field.Primary, v.goOn)
	f.correct = field.NewButton(h, "testsheet.correct", say("testsheet.correct"), field.Outline, v.askCorrection)
	f.history = field.NewButton(h, "testsheet.history", say("testsheet.history"), field.Quiet, v.showHistory)
	f.blank = field.NewButton(h, "testsheet.blank", say("testsheet.blank"), field.Quiet, v.printBlank)
	f.remove = field.NewButton(h, "testsheet.delete", say("testsheet.delete"), field.Quiet, v.remove)
	f.report = field.NewButton(h, "testsheet.report", say("testsheet.report"), field.Outline, v.printReport)
	f.picture = field.NewButton(h, "testsheet.picture", say("picture.title"), field.Outline, v.saveReport)
	f.plan = field.NewButton(h, "testsheet.plan", say("testsheet.plan"), field.Primary, v.planFromThis)
	f.box = look.HBox(10, f.next, f.back, f.correct, look.Stretch(), f.history, f.blank, f.remove)
	return f
}

// show names the next thing to do.
func (f *foot) show(v *View) {
	t := v.b.Doc.Now().Record
	f.step = next(v.b.Doc.Now(), v.found, v.wrong, v.part)
	look.ShowIf(f.back, v.part != PartBefore)
	look.ShowIf(f.next, f.step.code != stepNone)
	// one of the two: both do not fit where text is large
	look.ShowIf(f.history, v.part == PartFindings && !v.untouched())
	look.ShowIf(f.blank, !f.history.Visible())
	look.ShowIf(f.correct, t.State != record.TestOpen)
	if f.step.code != stepNone {
		f.next.SetText(v.stepWords(f.step))
		f.next.SetHint("")
		if f.step.code == stepPart {
			f.next.SetHint(v.b.Say("testsheet.next.key"))
		}
	}
	rate := v.found.Sweat.Fluid.Rate
	look.EnableIf(f.plan, rate.Known && rate.Ranged)
	look.EnableIf(f.report, v.found.Sweat.Fluid.Loss.Known)
	look.EnableIf(f.picture, v.found.Sweat.Fluid.Loss.Known)
	f.box.Refresh()
}

// stepWords says a step on the button.
func (v *View) stepWords(st step) string {
	say := v.b.Say
	switch st.code {
	case stepBottle:
		return say("testsheet.next.bottle", strconv.Itoa(st.item))
	case stepCheck:
		sp := v.speaker()
		if st.trouble.code == codeProblem {
			return say("testsheet.next.check", sp.problemName(st.trouble.problem))
		}
		return say("testsheet.next.check", sp.name(v.b.Doc.Now().Record, *st.trouble))
	case stepPart:
		return say("testsheet.next.part." + st.part)
	}
	return say("testsheet.next." + st.code)
}

// goBack shows the part before.
func (v *View) goBack() {
	list := partList()
	for i, p := range list {
		if p == v.part && i > 0 {
			v.showPart(list[i-1])
			return
		}
	}
}

// NextPart shows a part further on, or back, and gives the keyboard to its first
// field: the window has a key for it.
func (v *View) NextPart(step int) {
	list := partList()
	at := slices.Index(list, v.part) + step
	if v.b == nil || at < 0 || at >= len(list) {
		return
	}
	v.showPart(list[at])
	v.begin()
}

// goOn does the next sensible thing.
func (v *View) goOn() {
	switch st := v.ui.foot.step; st.code {
	case stepPart:
		v.showPart(st.part)
		v.begin()
	case stepBottle, stepCheck, stepMissing:
		v.goTo(st.part, st.control)
	case stepClose, stepWaiting, stepLate:
		v.closeSheet(st.code)
	}
}

// planFromThis begins a plan that is based on this test.
func (v *View) planFromThis() {
	if v.b.FlushNow() {
		v.desk.Go(desk.Place{Screen: desk.Plan, Athlete: v.athlete.ID, New: true, Part: string(v.b.Doc.Now().Record.ID)})
	}
}

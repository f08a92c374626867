package planner

import (
	"fyne.io/fyne/v2"

	"ebbwell/app/kit/desk"
	"ebbwell/app/kit/field"
	"ebbwell/app/kit/look"
	"ebbwell/internal/consult"
	"ebbwell/internal/plan"
	"ebbwell/internal/quantity"
	"ebbwell/internal/record"
)

// strip stands above the panels: what session the plan is for, in which air, and
// what it rests on; the length that is looked at; which plan of the athlete's.
type strip struct {
	sp     speaker
	words  *look.Paragraph
	rests  *field.Link
	length *field.Toggle
	plans  *field.Choice
	fresh  *field.Button
	// climate opens the question of another climate.
	climate *field.Button
	box     *fyne.Container
}

// stripActions are what the strip tells.
type stripActions struct {
	rests  func()
	length func(l plan.Length)
	open   func(id record.ID)
	fresh  func()
	// climate asks for another climate.
	climate func()
}

// lengthKey is a length in keys and names.
func lengthKey(l plan.Length) string {
	return [plan.Lengths]string{"short", "expected", "long"}[l]
}

func newStrip(h *field.Host, sp speaker, do stripActions) *strip {
	s := &strip{sp: sp, words: look.NewParagraph("", look.Body, look.Ink2)}
	s.rests = field.NewLink(h, "planner.rests", sp.say("planner.rests"), do.rests)
	var lengths []field.Option
	for l := plan.Short; l <= plan.Long; l++ {
		lengths = append(lengths, field.Option{Key: lengthKey(l), Text: sp.say("planner.length." + lengthKey(l))})
	}
	s.length = field.NewToggle(h, "planner.length", lengths)
	s.length.OnChosen = func(key string) {
		for l := plan.Short; l <= plan.Long; l++ {
			if lengthKey(l) == key {
				do.length(l)
			}
		}
	}
	s.plans = field.NewChoice(h, "planner.plan", nil)
	s.plans.SetLeast(170)
	s.plans.OnChosen = func(key string) { do.open(record.ID(key)) }
	s.fresh = field.NewButton(h, "planner.new", sp.say("planner.new"), field.Quiet, do.fresh)
	s.climate = field.NewButton(h, "planner.climate", sp.say("planner.climate"), field.Outline, do.climate)
	right := look.HBox(10, s.climate, s.length, s.plans, s.fresh)
	s.box = &fyne.Container{Layout: &stripLayout{}, Objects: []fyne.CanvasObject{s.words, s.rests, right}}
	return s
}

// open shows a case.
func (s *strip) open(now state, heat string, plans []field.Option) {
	s.words.SetText(capital(s.sp.session(now)) + s.sp.air(now.planCase, heat) + s.sp.restsOn(now.planCase.Basis))
	s.length.Choose(lengthKey(now.length))
	m := now.planCase.Planner.Session().Minutes
	look.ShowIf(s.length, m[plan.Short] != m[plan.Expected] || m[plan.Long] != m[plan.Expected])
	s.plans.SetOptions(plans)
	s.plans.Choose(string(now.plan.ID))
	look.ShowIf(s.plans, len(plans) > 1)
	s.box.Refresh()
}

// session says what is planned: "League match, 95 min".
func (sp speaker) session(s state) string {
	minutes := s.planCase.Planner.Session().Minutes[s.length]
	name := s.plan.Target.SessionName
	if name == "" {
		name = desk.SportWord(sp.w, s.plan.Target.Sport)
	}
	return sp.say("planner.session.words", name, sp.w.Number(minutes, 0))
}

// air says the air the plan is for, and what the heat of it asks for; empty
// where nothing is known.
func (sp speaker) air(c consult.Case, heat string) string {
	a := c.Basis.Air
	var parts []string
	if a.Temperature.Known() {
		parts = append(parts, sp.warmth(*a.Temperature.Value))
	}
	if a.Humidity.Known() {
		parts = append(parts, sp.say("planner.humidity", sp.w.Number(*a.Humidity.Value, 0)))
	}
	if key := "sun." + string(a.Sun); a.Sun != "" && sp.w.Has(key) {
		word := sp.say(key)
		if a.Sun != record.SunNone {
			word = sp.say("planner.sun", word)
		}
		parts = append(parts, word)
	}
	if heat != "" {
		parts = append(parts, heat)
	}
	if len(parts) == 0 {
		return ""
	}
	text := parts[0]
	for _, part := range parts[1:] {
		text += sp.say("format.comma") + part
	}
	return sp.say("planner.dot") + text
}

// warmth writes the temperature of the air in whole degrees.
func (sp speaker) warmth(celsius float64) string {
	u := sp.by.Unit(quantity.DegreeCelsius)
	x, err := quantity.Convert(celsius, quantity.DegreeCelsius, u)
	if err != nil {
		return ""
	}
	return sp.w.Number(x, 0) + "\u00a0" + string(u)
}

// restsOn says what the plan rests on, with the planned sweat rate.
func (sp speaker) restsOn(b consult.Basis) string {
	rate := sp.say("planner.rate", sp.by.Number(b.Plan.SweatRate.Low, quantity.LitrePerHour), sp.rate(b.Plan.SweatRate.High))
	words := sp.say(b.Plan.Code)
	switch {
	case b.Plan.Kind == plan.Test && len(b.Tests) > 0:
		words = sp.say(b.Plan.Code, sp.w.Day(consult.TestDay(b.Tests[0].Test)))
	case b.Plan.Kind == plan.Pool:
		words = sp.say(b.Plan.Code, len(b.Tests))
	}
	return sp.say("planner.dot") + words + sp.say("format.comma") + rate
}

// stripLayout sets the words at the left with the link behind them, and the
// controls at the right; below, where the words would have little room.
type stripLayout struct{}

const (
	stripGap   float32 = 12
	stripWords float32 = 360
)

// below reports whether the controls stand under the words, and the width that
// words and link have.
func (stripLayout) below(o []fyne.CanvasObject, width float32) (bool, float32) {
	rest := width - o[2].MinSize().Width - stripGap
	if rest < look.Scaled(stripWords) {
		return true, width
	}
	return false, rest
}

// words is the width of the paragraph, and whether the link stands below it.
func (l stripLayout) words(o []fyne.CanvasObject, room float32) float32 {
	p, _ := o[0].(*look.Paragraph)
	link := o[1].MinSize().Width + stripGap
	return min(look.Body.Width(p.Text())+2, room-link)
}

func (l stripLayout) Layout(o []fyne.CanvasObject, size fyne.Size) {
	below, room := l.below(o, size.Width)
	words := l.words(o, room)
	h := look.HeightFor(o[0], words)
	controls, link := o[2].MinSize(), o[1].MinSize()
	line := max(look.ControlHeight(), h)
	o[0].Move(fyne.NewPos(0, (line-h)/2))
	o[0].Resize(fyne.NewSize(words, h))
	o[1].Move(fyne.NewPos(words+stripGap, (line-link.Height)/2))
	o[1].Resize(link)
	if below {
		o[2].Move(fyne.NewPos(0, line+4))
	} else {
		o[2].Move(fyne.NewPos(size.Width-controls.Width, (line-controls.Height)/2))
	}
	o[2].Resize(controls)
}

// height is what the strip needs at a width.
func (l stripLayout) height(o []fyne.CanvasObject, width float32) float32 {
	below, room := l.below(o, width)
	line := max(look.ControlHeight(), look.HeightFor(o[0], l.words(o, room)))
	if below {
		line += 4 + o[2].MinSize().Height
	}
	return line
}

func (stripLayout) MinSize([]fyne.CanvasObject) fyne.Size {
	return fyne.NewSize(look.Scaled(stripWords), look.ControlHeight())
}

package session

import (
	"strings"

	"fyne.io/fyne/v2"

	"ebbwell/app/kit/bind"
	"ebbwell/app/kit/field"
	"ebbwell/app/kit/look"
	"ebbwell/app/screen/planner/part"
	"ebbwell/internal/consult"
	"ebbwell/internal/evidence"
	"ebbwell/internal/fuel"
	"ebbwell/internal/plan"
	"ebbwell/internal/quantity"
	"ebbwell/internal/record"
)

// AimsForm is what the plan is to meet: the published advice stands in the fields
// until something else is chosen with the athlete.
type AimsForm struct {
	v      *part.Plan
	fields []aimField
	sodium *look.Form
	// other takes another range in use, words beside it.
	other *field.Link
	// gut is what was studied above the advice, and the weeks of gut training on
	// the way to the aim.
	gut *look.Paragraph
	// onPage prints the weeks on the athlete's page.
	onPage *fyne.Container
	box    *fyne.Container
}

// aimField is one end of what is aimed at.
type aimField struct {
	number *field.Number
	unit   quantity.Unit
	// usual is the end that holds while nothing is typed; off is true where
	// none does.
	usual func(a plan.Aim) (x float64, off bool)
}

// NewAimsForm makes the form of a plan, empty until it is opened.
func NewAimsForm(v *part.Plan) *AimsForm {
	f := &AimsForm{v: v}
	say := v.Speaker.Say
	f.other = field.NewLink(v.Desk.Host, "planner.aim.other", "", f.takeOther)
	f.other.SetStyle(look.Body)
	f.gut = look.NewParagraph("", look.Note, look.Ink2)
	low := func(b plan.Bound) (float64, bool) { return b.Low, !b.On }
	high := func(b plan.Bound) (float64, bool) { return b.High, !b.On }
	entries := []look.Entry{
		f.entry("carbohydrate.low", evidence.AimCarbohydrate, quantity.GramPerHour, func(p *record.Aims) *record.Number { return &p.CarbohydrateLow }, func(a plan.Aim) (float64, bool) { return low(a.Carbohydrate) }),
		f.entry("carbohydrate.high", evidence.AimCarbohydrate, quantity.GramPerHour, func(p *record.Aims) *record.Number { return &p.CarbohydrateHigh }, func(a plan.Aim) (float64, bool) { return high(a.Carbohydrate) }),
		f.entry("drinking", evidence.AimDrinking, quantity.LitrePerHour, func(p *record.Aims) *record.Number { return &p.Drinking }, func(a plan.Aim) (float64, bool) { return high(a.Drinking) }),
	}
	if !v.Speaker.By.Hidden { // no per cent is on the screen then
		entries = append(entries, f.entry("strength", evidence.AimStrength, quantity.PerCent, func(p *record.Aims) *record.Number { return &p.Strength }, func(a plan.Aim) (float64, bool) { return high(a.Strength) }))
	}
	f.sodium = part.NewForm(
		f.entry("sodium.low", evidence.AimSodium, quantity.MilligramPerHour, func(p *record.Aims) *record.Number { return &p.SodiumLow }, func(a plan.Aim) (float64, bool) { return low(a.Sodium) }),
		f.entry("sodium.high", evidence.AimSodium, quantity.MilligramPerHour, func(p *record.Aims) *record.Number { return &p.SodiumHigh }, func(a plan.Aim) (float64, bool) { return high(a.Sodium) }))
	f.onPage = look.HBox(0, v.Binder.Check("", "planner.wish."+string(consult.GutOnPage), say("planner.wish."+string(consult.GutOnPage)),
		func(p record.Plan) bool { return consult.Wished(p, consult.GutOnPage) },
		func(s *part.Sheet, on bool) { consult.SetWish(&s.Record, consult.GutOnPage, on) }))
	f.box = look.VBox(8, look.NewLabel(say("planner.aims"), look.Strong, look.Ink), look.NewParagraph(say("planner.aims.note"), look.Note, look.Ink2),
		part.NewForm(entries...), f.sodium, look.Pad(0, 0, 0, -field.LinkPad, look.HBox(0, f.other)), f.gut, f.onPage)
	return f
}

// entry is one end with its name.
func (f *AimsForm) entry(name string, of evidence.Field, u quantity.Unit, at func(a *record.Aims) *record.Number, usual func(a plan.Aim) (float64, bool)) look.Entry {
	n := f.v.Binder.Number("", "planner.aim."+name, of, u, bind.At("aims."+name, func(p *record.Plan) *record.Number { return at(&p.Aims) }))
	n.SetBox(96)
	f.fields = append(f.fields, aimField{n, u, usual})
	return look.NewEntry(f.v.Speaker.Say("planner.aim."+name), n)
}

// Open shows the advice in the fields, and the other range in use.
func (f *AimsForm) Open() {
	c := f.v.Now.PlanCase
	advice := c.UsualAim()
	for _, one := range f.fields {
		text := f.v.Speaker.Say("planner.aim.none")
		if x, off := one.usual(advice); !off {
			text = f.v.Speaker.Plain(x, one.unit)
		}
		one.number.SetPlaceholder(text)
	}
	look.ShowIf(f.sodium, f.v.Now.Salted())
	a, ok := f.OtherAdvice()
	if ok {
		f.other.SetText(f.v.Speaker.Say("planner.aim.other", f.v.Speaker.Words.Between(a.Range, 0), f.v.Speaker.Say(a.Code), f.v.Speaker.Say("sure."+string(a.Sure))))
	}
	look.ShowIf(f.other, ok && f.v.Now.Draft())
	text := f.gutWords()
	f.gut.SetText(text)
	look.ShowIf(f.gut, text != "")
	_, weeks := c.GutTraining()
	look.ShowIf(f.onPage, len(weeks) > 0)
}

// gutWords say what was studied above the advice, and how the gut is trained from
// the habit's carbohydrate to the least that is aimed at.
func (f *AimsForm) gutWords() string {
	sp, c := f.v.Speaker, f.v.Now.PlanCase
	var lines []string
	if a, ok := fuel.Studied(c.Planner.Session().Minutes[plan.Expected]); ok {
		lines = append(lines, sp.Say("planner.aim.studied", sp.Words.Number(a.Range.High, 0), sp.Say(a.Code), sp.Say("sure."+string(a.Sure))))
	}
	from, weeks := c.GutTraining()
	if n := len(weeks); n > 0 {
		lines = append(lines, sp.Say("planner.aim.gut", sp.Words.Number(from, 0), sp.Words.Number(weeks[n-1].GramsHour, 0)))
	}
	for i, w := range weeks {
		lines = append(lines, sp.Say("planner.aim.gut.week", sp.Words.Number(float64(i+1), 0), sp.Words.Number(w.GramsHour, 0), sp.Words.Number(w.Dose, 0), sp.Words.Number(w.Every, 0)))
	}
	return strings.Join(lines, "\n")
}

// OtherAdvice is another range of carbohydrate in use for such a session.
func (f *AimsForm) OtherAdvice() (fuel.Advice, bool) {
	s := f.v.Now.PlanCase.Planner.Session()
	list := fuel.CarbohydrateAlternatives(s.Minutes[plan.Expected], s.Effort, s.Intermittent)
	if len(list) == 0 {
		return fuel.Advice{}, false
	}
	return list[0], true
}

// takeOther aims at that range.
func (f *AimsForm) takeOther() {
	a, ok := f.OtherAdvice()
	if !ok {
		return
	}
	f.v.Binder.Pick("planner.aim.other", func(s *part.Sheet) {
		s.Record.Aims.CarbohydrateLow = record.Num(a.Range.Low, quantity.GramPerHour)
		s.Record.Aims.CarbohydrateHigh = record.Num(a.Range.High, quantity.GramPerHour)
	})
}

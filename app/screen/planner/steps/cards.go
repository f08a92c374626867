package steps

import (
	"slices"
	"strconv"

	"fyne.io/fyne/v2"

	"ebbwell/app/kit/chart"
	"ebbwell/app/kit/field"
	"ebbwell/app/kit/look"
	"ebbwell/app/screen/planner/part"
	"ebbwell/app/screen/planner/state"
	"ebbwell/app/screen/planner/wording"
	"ebbwell/internal/consult"
	"ebbwell/internal/plan"
	"ebbwell/internal/record"
)

// Cards is the way from habit to aim as a row of cards. A click takes the mix of a
// selected step; steps that are not kept yet lead to where they are.
type Cards struct {
	v     *part.Plan
	names []*field.Link
	cards []*chart.StepCard
	ids   []record.ID
	// most is the end of the bars, the same for all: the limit, or what passes it. It
	// stands while a slider is moved.
	most float64
	Row  *fyne.Container
}

// NewCards makes an empty row.
func NewCards(v *part.Plan) *Cards {
	return &Cards{v: v, Row: &fyne.Container{Layout: cardLayout{}}}
}

// Open shows the steps that are kept, else those that the rules propose.
func (c *Cards) Open() {
	v := c.v
	today, _ := v.Desk.Today().Time()
	rungs := keptRungs(v.Now, v.Speaker)
	habit, _ := consult.OptionOf(v.Now.Plan, record.OptionHabit)
	ids := []record.ID{habit.ID}
	if len(rungs) == 0 {
		rungs = proposedRungs(v.Now, v.Speaker, v.Now.PlanCase.Planner.Steps(v.Now.Climb(consult.RulesOf(v.Now.Plan), today)))
		ids = append(ids, make([]record.ID, len(rungs))...)
	} else {
		for _, r := range rungs {
			ids = append(ids, r.option)
		}
	}
	c.ids = ids
	c.make(len(ids))
	c.most = v.Now.PlanCase.Planner.CeilingOf(plan.Expected).FluidL * 1000
	for _, col := range columns(v.Speaker, v.Now, rungs) {
		c.most = max(c.most, sum(col.Parts))
	}
	c.set(rungs)
}

// make readies as many cards.
func (c *Cards) make(n int) {
	for i := len(c.cards); i < n; i++ {
		card := chart.NewStepCard()
		card.OnTapped = func() { c.choose(i) }
		name := field.NewLink(c.v.Desk.Host, "planner.card."+strconv.Itoa(i), "", func() { c.choose(i) })
		name.SetStyle(look.Strong)
		c.cards, c.names = append(c.cards, card), append(c.names, name)
		c.Row.Objects = append(c.Row.Objects, card, name)
	}
	for i := range c.cards {
		look.ShowIf(c.cards[i], i < n)
		look.ShowIf(c.names[i], i < n)
	}
	c.Row.Refresh()
}

// Height is how high the cards are, whole or in one line.
func (c *Cards) Height(line bool) float32 { return chart.StepCardHeight(line) }

// InOneLine sets the cards in one line each, where room is short, or whole again.
func (c *Cards) InOneLine(on bool) {
	for _, card := range c.cards {
		card.InOneLine(on)
	}
}

// choose selects the mix of a card.
func (c *Cards) choose(i int) {
	if i >= len(c.ids) || c.ids[i] == "" {
		c.v.OpenTab(part.TabSteps)
		return
	}
	c.v.ChooseOption(c.ids[i])
}

// set fills the cards.
func (c *Cards) set(rungs []rung) {
	v := c.v
	habit, _ := consult.OptionOf(v.Now.Plan, record.OptionHabit)
	mixes := []plan.Mix{v.Now.PlanCase.MixOf(habit)}
	for _, r := range rungs {
		mixes = append(mixes, r.mix)
	}
	for i, col := range columns(v.Speaker, v.Now, rungs) {
		more := ""
		if i > 0 {
			more = moreThan(v.Speaker, v.Now, mixes[i-1], mixes[i])
		}
		c.names[i].SetText(col.Name)
		c.cards[i].Set(chart.StepCardData{
			Name: col.Name, Note: col.Note, Figure: col.Figure, FigureNote: v.Speaker.Say("planner.step.deficit.short"), Second: col.Second, SecondNote: col.SecondNote,
			Parts: col.Parts, Max: c.most, Amount: v.Speaker.Taken(v.Now, mixes[i]), Drunk: col.Third, Change: more, Chosen: c.ids[i] != "" && c.ids[i] == v.Now.Option, Summary: col.Name,
		})
	}
}

// moreThan says in one way how a step differs from the one before: by what is drunk,
// else by what is eaten.
func moreThan(sp wording.Speaker, s state.State, before, mix plan.Mix) string {
	drunk := 0.0
	for slot := plan.Water; slot.IsDrink(); slot++ {
		drunk += mix[slot] - before[slot]
	}
	if text := sp.More(plan.Water, drunk); text != "" {
		return text
	}
	return foodChange(sp, s, s.PlanCase.Planner.Compare(plan.Expected, before, mix))
}

// sum is the length of the parts of a bar.
func sum(parts []chart.Part) float64 {
	total := 0.0
	for _, p := range parts {
		total += p.Value
	}
	return total
}

// Follow shows a movement of the mix of a card.
func (c *Cards) Follow() {
	if !slices.Contains(c.ids, c.v.Now.Option) || c.v.Now.Selected().Kind == record.OptionHabit {
		return
	}
	if rungs := keptRungs(c.v.Now, c.v.Speaker); len(rungs)+1 == len(c.ids) {
		c.set(rungs)
	}
}

// cardLayout sets cards side by side in equal widths, each with its name over it.
type cardLayout struct{}

const cardGap float32 = 12

func (cardLayout) Layout(o []fyne.CanvasObject, size fyne.Size) {
	n := 0
	for i := 0; i < len(o); i += 2 {
		if o[i].Visible() {
			n++
		}
	}
	each := (size.Width - cardGap*float32(n-1)) / float32(max(n, 1))
	for i := 0; i+1 < len(o); i += 2 {
		at := fyne.NewPos(float32(int(float32(i/2)*(each+cardGap))), 0)
		o[i].Move(at)
		o[i].Resize(fyne.NewSize(float32(int(each)), size.Height))
		o[i+1].Move(at.AddXY(chart.CardPad-field.LinkPad, 5))
		o[i+1].Resize(o[i+1].MinSize())
	}
}

func (cardLayout) MinSize(o []fyne.CanvasObject) fyne.Size {
	h := float32(0)
	if len(o) > 0 {
		h = o[0].MinSize().Height
	}
	return fyne.NewSize(look.Scaled(150), h)
}

// Scale is the end of the bars.
func (c *Cards) Scale() float64 { return c.most }

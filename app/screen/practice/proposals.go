package practice

import (
	"fyne.io/fyne/v2"

	"ebbwell/app/kit/bind"
	"ebbwell/app/kit/look"
	"ebbwell/internal/evidence"
	"ebbwell/internal/plan"
	"ebbwell/internal/quantity"
	"ebbwell/internal/record"
)

// Width of the words of a setting of proposals, and of words with field, px at 100 %
// text.
const (
	proposalWords  float32 = 190
	proposalColumn float32 = 264
)

// proposals is what a proposal keeps to in this practice: carbohydrate asked for,
// the size of a step and the increments of drinks.
func (s *standards) proposals() fyne.CanvasObject {
	b, say, w := s.v.b, s.v.b.Say, s.v.b.Desk.Words
	number := func(name string, f evidence.Field, u quantity.Unit, usual string, of func(p *record.Practice) *record.Number) look.Entry {
		n := b.Number("", "practice.proposal."+name, f, u, bind.At("settings."+name, of))
		n.SetPlaceholder(usual)
		s.v.onlyUsable(n)
		return look.NewEntry(say("practice.proposal."+name), look.MaxWidth(150, n)).Wide()
	}
	usual := plan.DefaultStepRules()
	form := look.NewForm(
		number("carbohydrateAim", evidence.AimCarbohydrate, quantity.GramPerHour, say("practice.proposal.length"), func(p *record.Practice) *record.Number { return &p.Settings.CarbohydrateAim }),
		number("stepFluid", evidence.StepFluid, quantity.LitrePerHour, b.By.Number(usual.FluidLH, quantity.LitrePerHour), func(p *record.Practice) *record.Number { return &p.Settings.StepFluid }),
		number("stepCarbohydrate", evidence.StepCarbohydrate, quantity.GramPerHour, w.Number(usual.CarbohydrateGH, 0), func(p *record.Practice) *record.Number { return &p.Settings.StepCarbohydrate }),
		number("drinkStep", evidence.DrinkStep, quantity.Millilitre, say("practice.proposal.bylength"), func(p *record.Practice) *record.Number { return &p.Settings.DrinkStep }),
	).Measured(proposalWords, proposalColumn, 1)
	whole := b.Check("", "practice.proposal.whole", say("practice.proposal.whole"), func(p record.Practice) bool { return p.Settings.WholeSteps },
		func(s *bind.Sheet[record.Practice], on bool) { s.Record.Settings.WholeSteps = on })
	return s.v.panel(say("practice.proposal"), say("practice.proposal.note"), form, whole)
}

package handout

import (
	"ebbwell/internal/consult"
	"ebbwell/internal/fuel"
	"ebbwell/internal/plan"
	"ebbwell/internal/quantity"
	"ebbwell/internal/record"
	"ebbwell/internal/words"
)

// bars are the test and what is planned.
func (k composer) bars() []Bar {
	var list []Bar
	if k.c.Basis.Kind != record.BasisEstimate && len(k.c.Basis.Tests) > 0 {
		list = append(list, TestBar(k.c.Basis.Tests[0], k.c.Care.MassHidden, k.w))
	}
	if k.over {
		return list
	}
	planned := Bar{
		Label: k.stepName(), Parts: k.parts(k.at), Loss: quantity.Litres(k.at.LossL.Value),
		LossRange: k.at.LossL.Range, Ranged: true, Deficit: deficitOf(k.at), Planned: true,
		Estimate: k.c.Basis.Kind == record.BasisEstimate, RangeAlone: k.c.RangeAlone(),
	}
	if !k.c.Care.MassHidden {
		planned.Breath = quantity.Litres(max(0, k.c.Planner.Basis().BreathLH()*k.at.Minutes/60))
		planned.Food = quantity.Litres(k.c.Planner.FoodKg(k.mix))
	}
	return append(list, planned)
}

// TestBar is what happened in a test. Where body mass is hidden nothing stands in
// it from which breath could be worked out.
func TestBar(f consult.Findings, hidden bool, w *words.Words) Bar {
	fluid := f.Sweat.Fluid
	b := Bar{
		Label: w.Day(consult.TestDay(f.Test)), Loss: quantity.Litres(fluid.Loss.Value), LossRange: fluid.Loss.Range,
		Ranged: fluid.Loss.Ranged,
		Deficit: Deficit{
			Percent: quantity.Percent(fluid.DeficitShare.Value), PercentKnown: fluid.DeficitShare.Known,
			Litres: quantity.Litres(fluid.Deficit.Value), PercentRange: fluid.DeficitShare.Range, LitresRange: fluid.Deficit.Range,
			Ranged: fluid.DeficitShare.Ranged,
		},
	}
	for _, part := range f.Intake.Bottles {
		if part.Known && part.Millilitres > 0 {
			name := firstOf(inside(w, part.Product), w.Say("handout.bottle.unnamed"))
			b.Parts = append(b.Parts, Part{
				Substance: substanceOf(part.Product), Name: name, Litres: quantity.Litres(part.Millilitres / 1000),
			})
		}
	}
	b.Parts = joined(b.Parts)
	if !hidden {
		out := f.OtherLosses()
		b.Breath, b.Urine, b.Food = quantity.Litres(max(0, out.Breath)), quantity.Litres(out.Urine), quantity.Litres(out.Food)
	}
	return b
}

// joined puts parts of one name together.
func joined(parts []Part) []Part {
	var list []Part
	for _, p := range parts {
		found := false
		for i := range list {
			if list[i].Name == p.Name {
				list[i].Litres += p.Litres
				found = true
			}
		}
		if !found {
			list = append(list, p)
		}
	}
	return list
}

// inside is the name of a product, in the language of the page, as it stands within a line.
func inside(w *words.Words, p fuel.Product) string { return w.FoodWithin(p.ID, p.Name) }

// substanceOf is water for plain water only: what nobody knows is a drink.
func substanceOf(p fuel.Product) Substance {
	if record.ID(p.ID) == consult.Water {
		return Water
	}
	return Drink
}

// parts are the drinks of a prediction.
func (k composer) parts(q plan.Prediction) []Part {
	var list []Part
	for s := plan.Water; s <= plan.Drink3; s++ {
		if k.c.Slots[s].InUse && q.Fluid.BySlotML[s] > 0 {
			sub := Drink
			if s == plan.Water {
				sub = Water
			}
			list = append(list, Part{Substance: sub, Name: inside(k.w, k.c.Slots[s].Product), Litres: quantity.Litres(q.Fluid.BySlotML[s] / 1000)})
		}
	}
	return list
}

// deficitOf is the deficit at the end of a prediction.
func deficitOf(q plan.Prediction) Deficit {
	return Deficit{
		Percent: quantity.Percent(q.Deficit.Value), PercentKnown: q.Deficit.Known, Litres: quantity.Litres(q.DeficitL.Value),
		PercentRange: q.Deficit.Range, LitresRange: q.DeficitL.Range, Ranged: true,
	}
}

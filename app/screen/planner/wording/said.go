package wording

import (
	"slices"

	"ebbwell/internal/plan/proposal"
	"ebbwell/internal/quantity"
)

// Said are the sentences of a proposal, the most urgent first.
func (sp Speaker) Said(p proposal.Proposal) []string {
	var list []string
	for _, s := range p.Said {
		list = append(list, sp.Say(s.Code, sp.figures(s)...))
	}
	return list
}

// BreaksAsked is the question that what was drunk, or what the plan would end at,
// puts to the breaks; empty where there is none.
func (sp Speaker) BreaksAsked(p proposal.Proposal) string {
	if !p.Ask {
		return ""
	}
	for _, one := range p.Said {
		if slices.Contains([]string{proposal.SayBreaksCarry, proposal.SayAskFirst, proposal.SayAskCut}, one.Code) {
			return sp.Say(one.Code, sp.figures(one)...)
		}
	}
	return ""
}

// figures writes the figures of a sentence in its units.
func (sp Speaker) figures(s proposal.Saying) []any {
	x := s.Figures
	litres := func(i int) any { return sp.Litres(x[i]) }
	end := func(i int) any { return sp.Change(x[i], quantity.PerCent) }
	aim := func(i int) any { return sp.By.SignedLimit(x[i], quantity.PerCent) }
	switch s.Code {
	case proposal.SayLess:
		return []any{litres(0), litres(1), litres(2)}
	case proposal.SayAim:
		return []any{litres(0), end(1), sp.Carbohydrate(x[2]), int(x[3])}
	case proposal.SayAimHidden:
		return []any{litres(0), sp.Carbohydrate(x[1]), int(x[2])}
	case proposal.SayNoMore:
		return []any{end(0), litres(1)}
	case proposal.SayBreaksCarry, proposal.SayAskFirst, proposal.SayAskCut:
		return []any{litres(0), litres(1)}
	case proposal.SayEndsBreaks, proposal.SayEndsStomach:
		return []any{end(0), aim(1), litres(2)}
	case proposal.SayEndsLoss:
		return []any{end(0), aim(1)}
	case proposal.SayRoomBreaks, proposal.SayRoomStomach, proposal.SayAskBreaks, proposal.SayInPlace:
		return []any{litres(0)}
	case proposal.SayStomach, proposal.SayStomachBad:
		return []any{sp.Words.Number(x[0], 0)}
	case proposal.SayDrinksShort, proposal.SayNoFoodShort, proposal.SayFoodShort:
		return []any{sp.Words.Number(x[0], 0), sp.Carbohydrate(x[1])}
	case proposal.SaySaltShort:
		return []any{sp.Words.Number(x[0], 0), sp.Words.Number(x[1], 0)}
	case proposal.SaySaltAim:
		return []any{sp.By.Amount(x[0], quantity.MilligramPerHour), sp.By.Amount(x[1], quantity.MilligramPerHour)}
	case proposal.SayStrong:
		return []any{sp.By.Amount(x[0], quantity.PerCent), sp.By.Limit(x[1], quantity.PerCent)}
	case proposal.SayBefore:
		return []any{litres(0), litres(1), sp.Words.Number(x[2], 0)}
	case proposal.SayBeforeBlind:
		return []any{sp.Words.Number(x[0], 0)}
	case proposal.SayAfter:
		return []any{sp.Words.Number(x[0], 0), sp.Litres(x[1]), sp.Litres(x[2])}
	case proposal.SayAboveAdvice:
		return []any{sp.Carbohydrate(x[0])}
	}
	return nil
}

package findings

import (
	"slices"

	"ebbwell/internal/quantity"
)

// summary says in one sentence what was found; empty where there is no sweat
// rate.
func (sp speaker) summary(in Input) string {
	fluid := in.Findings.Sweat.Fluid
	if !fluid.Rate.Known {
		return ""
	}
	rate, deficit := sp.By.Found(fluid.Rate), sp.By.Found(fluid.Deficit)
	say, drunk := sp.Say, sp.perCent(fluid.Replaced.Value)
	if sp.By.Hidden { // a per cent of body mass would tell it
		say = func(key string, args ...any) string { return sp.Say(key+".hidden", args...) }
		drunk = sp.fraction(fluid.Replaced.Value)
	}
	standing := sp.standing(in)
	switch {
	case fluid.Deficit.Known && fluid.Deficit.Value < 0 && sp.By.Hidden:
		return sp.Say("findings.summary.gain.hidden", rate)
	case fluid.Deficit.Known && fluid.Deficit.Value < 0:
		return sp.Say("findings.summary.gain", rate, sp.By.Amount(-fluid.Deficit.Value, quantity.Kilogram))
	case !fluid.Replaced.Known:
		return sp.Say("findings.summary.rate", rate)
	case !fluid.Deficit.Known:
		return say("findings.summary.drunk", rate, drunk)
	case standing == "":
		return say("findings.summary.plain", rate, drunk, deficit)
	case sp.By.Hidden:
		return say("findings.summary."+standing, rate, drunk, deficit)
	}
	limit := sp.By.Limit(in.Findings.Limit, quantity.PerCent)
	return say("findings.summary."+standing, rate, drunk, sp.By.Found(fluid.DeficitShare), limit)
}

// perCent is a share in whole per cent.
func (sp speaker) perCent(x float64) string {
	return sp.withUnit(sp.Words.Number(x, 0), quantity.PerCent)
}

// firstRows is how many figures stand in the table before the others are asked
// for.
const firstRows = 7

// weighty lists the figures that a plan is made from, the weightiest first.
func weighty() []string {
	return []string{
		"sweat-rate", "sweat-loss", "deficit", "deficit-share", "drinking-rate", "sodium-lost-rate", "carbohydrate-rate",
		"sodium-concentration", "drunk", "sodium-in-rate",
	}
}

// arranged puts the weightiest rows first, each group in the order of the
// table, and tells how many they are.
func arranged(rows []Row) (list []Row, first int) {
	var front []string
	for _, key := range weighty() {
		if len(front) < firstRows && slices.ContainsFunc(rows, func(r Row) bool { return r.Key == key }) {
			front = append(front, key)
		}
	}
	var behind []Row
	for _, r := range rows {
		if slices.Contains(front, r.Key) {
			list = append(list, r)
		} else {
			behind = append(behind, r)
		}
	}
	return append(list, behind...), len(list)
}

package findings

import (
	"math"

	"ebbwell/internal/consult"
	"ebbwell/internal/quantity"
	"ebbwell/internal/sweat"
)

// compare says how a sheet differs from another test of the athlete, and
// whether two single tests can show such a difference at all.
func (sp speaker) compare(in Input, other Other) []string {
	c := sweat.Compare(other.Findings.Sweat, in.Findings.Sweat)
	list := []string{sp.airs(other.Findings, in.Findings)}
	for _, d := range []struct {
		name string
		sweat.Difference
	}{
		{"sweat-rate", c.Rate}, {"sodium-concentration", c.Concentration}, {"sodium-lost-rate", c.SodiumRate},
	} {
		list = append(list, sp.difference(sp.Say("findings.figure."+d.name), d.Difference))
	}
	return list
}

// difference says one difference.
func (sp speaker) difference(name string, d sweat.Difference) string {
	var text string
	switch {
	case d.Code == sweat.DifferenceUnknown:
		text = sp.Say("findings.compare.unknown", name)
	case quantity.Round(d.Size, quantity.Decimals(d.Unit)) == 0:
		text = sp.Say("findings.compare.same", name)
	case d.Size > 0:
		text = sp.Say("findings.compare.higher", name, sp.By.Amount(math.Abs(d.Size), d.Unit), sp.Say(d.Code), sp.By.Amount(d.Smallest, d.Unit))
	default:
		text = sp.Say("findings.compare.lower", name, sp.By.Amount(math.Abs(d.Size), d.Unit), sp.Say(d.Code), sp.By.Amount(d.Smallest, d.Unit))
	}
	if len(d.Beside) == 0 || d.Code == sweat.DifferenceUnknown {
		return text
	}
	var beside []string
	for _, code := range d.Beside {
		beside = append(beside, sp.Say(code))
	}
	return text + " " + sp.Say("findings.compare.beside", sp.Words.List(beside))
}

// airs puts the heat of both side by side: whether they are alike is for the
// practitioner to judge.
func (sp speaker) airs(then, now consult.Findings) string {
	return sp.Say("findings.compare.air", sp.air(then), sp.air(now))
}

// air is heat and effort in short.
func (sp speaker) air(f consult.Findings) string {
	var parts []string
	if t := f.Test.Air.Temperature; t.Known() {
		parts = append(parts, sp.By.Amount(*t.Value, quantity.DegreeCelsius))
	}
	if h := f.Test.Air.Humidity; h.Known() {
		parts = append(parts, sp.withUnit(sp.Words.Number(*h.Value, 0), quantity.PerCent))
	}
	if e := f.Test.Session.Effort; e.Known() {
		parts = append(parts, sp.Say("findings.compare.effort", sp.Words.Number(*e.Value, 0)))
	}
	if len(parts) == 0 {
		return sp.Say("findings.compare.noair")
	}
	return sp.Words.List(parts)
}

package desk

import (
	"slices"
	"time"

	"ebbwell/app/kit/amount"
	"ebbwell/internal/quantity"
	"ebbwell/internal/record"
)

// SafetyLines are the lines of the record of a red flag in the order they happened,
// each with its time: weighings after, answers, actions, who was told.
func SafetyLines(sp amount.Speaker, t record.Test, zone *time.Location) []string {
	type line struct {
		at   time.Time
		text string
	}
	var list []line
	before := 0.0
	for _, w := range t.Weighings {
		if w.Moment == record.Before && w.Mass.Known() && before == 0 {
			before = *w.Mass.Value
		}
	}
	for _, w := range t.Weighings {
		if w.Moment != record.After || !w.Mass.Known() || w.At == nil {
			continue
		}
		text := sp.Say("safety.line.hidden")
		if !sp.By.Hidden {
			text = sp.Say("safety.line.mass.first", sp.By.Amount(*w.Mass.Value, quantity.Kilogram))
			if before > 0 {
				text = sp.Say("safety.line.mass", sp.By.Amount(*w.Mass.Value, quantity.Kilogram),
					sp.By.Signed(*w.Mass.Value-before, quantity.Kilogram), sp.By.Amount(before, quantity.Kilogram))
			}
		}
		list = append(list, line{*w.At, text})
	}
	for _, n := range t.Safety {
		if n.Done == nil {
			continue
		}
		list = append(list, line{*n.Done, safetyLine(sp, n)})
	}
	slices.SortStableFunc(list, func(a, b line) int { return a.at.Compare(b.at) })
	var out []string
	for _, l := range list {
		out = append(out, sp.Say("safety.line", sp.Words.Clock(l.at.In(zone)), l.text))
	}
	return out
}

// safetyLine words one line of the record.
func safetyLine(sp amount.Speaker, n record.SafetyNote) string {
	item := sp.Say("safety.item." + n.Item)
	switch {
	case n.Kind == record.SafetyAsked:
		return sp.Say("safety.line.asked", item, sp.Say("safety.answer."+n.Answer))
	case n.Kind == record.SafetyDone && n.Answer == record.AnswerYes:
		return sp.Say("safety.line.done", item)
	case n.Kind == record.SafetyDone:
		return sp.Say("safety.line.undone", item)
	case n.Item == "nobody":
		return sp.Say("safety.line.nobody", n.Text)
	}
	return sp.Say("safety.line.told", n.Text)
}

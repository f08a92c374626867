package handout

import (
	"ebbwell/internal/consult"
	"ebbwell/internal/quantity"
	"ebbwell/internal/record"
	"ebbwell/internal/words"
)

// ReportQuality says how a test was measured.
func ReportQuality(f consult.Findings, w *words.Words) []string {
	count := map[record.Moment]int{}
	for _, x := range f.Test.Weighings {
		if x.Mass.Known() {
			count[x.Moment]++
		}
	}
	list := []string{w.Say("handout.report.quality.single")}
	if count[record.Before] > 1 && count[record.After] > 1 {
		list[0] = w.Say("handout.report.quality.repeated")
	}
	if step := f.Test.Scale.Step; step.Known() {
		list = append(list, w.Say("handout.report.quality.scale", w.Amount(1000*(*step.Value), quantity.Gram)))
	}
	if n := len(f.Test.Patches); n > 0 {
		return append(list, w.Say("handout.report.quality.patch", n))
	}
	return append(list, w.Say("handout.report.quality.patch.none"))
}

// ReportApplied says what was taken off the plain field method. Where body mass is
// hidden no amount of breath is told.
func ReportApplied(f consult.Findings, hidden bool, w *words.Words) []string {
	breath := f.OtherLosses().Breath
	switch {
	case breath <= 0:
		return []string{w.Say("handout.report.applied.breath.none")}
	case hidden:
		return []string{w.Say("handout.report.applied.breath.hidden")}
	}
	return []string{w.Say("handout.report.applied.breath", w.Amount(breath, quantity.Litre))}
}

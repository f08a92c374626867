package findings

import (
	"ebbwell/app/kit/desk"
	"ebbwell/internal/evidence"
	"ebbwell/internal/record"
)

// statedFor are the statements that stand behind the why of a figure, by their ids:
// what a practitioner expects to be said there and no figure follows from. What is only
// true of some is said of those.
func statedFor(key string, in Input) []string {
	f := in.Findings
	switch key {
	case "carbohydrate-rate":
		list := []string{"fuel.studied", "fuel.recent"}
		if f.Test.Feeling.Stomach.Or(0) > evidence.StepStomachGood {
			list = append(list, "gut-training.trial", "gut-training.review")
		}
		return list
	case "deficit", "deficit-share":
		list := []string{"deficit.by-heat"}
		if f.Sweat.Fluid.Deficit.Value < 0 {
			list = nil
		}
		return append(list, "hyponatraemia.update", "hyponatraemia.other-view")
	case "drinking-rate":
		return []string{"hyponatraemia.update", "heat.nutrition"}
	case "sweat-rate":
		list := []string{"heat.consensus"}
		if in.Athlete.Sex == record.Female {
			list = append(list, "women.rate", "women.cycle", "women.temperature")
		}
		return list
	}
	return nil
}

// statements words them, each with its source and how surely that was read.
func (sp speaker) statements(key string, in Input) []string {
	return desk.Statements(sp.Words, sp.By.Hidden, statedFor(key, in)...)
}

package consult

import (
	"slices"
	"time"

	"ebbwell/internal/care"
	"ebbwell/internal/record"
	"ebbwell/internal/sweat"
)

// Gain is an athlete who weighed more after a session than before: a red flag the
// moment both masses stand, whatever else of the sheet is missing.
type Gain struct {
	// Kilograms heavier.
	Kilograms float64
	// WeighAgain: the gain is within what the scale can read and no symptom was
	// noted, so that it is weighed again first.
	WeighAgain bool
	// Risks are the athlete's own conditions that make it graver.
	Risks []record.FlagKind
}

// scaleUnknown is what a scale whose resolution nobody wrote down can tell, kg: our
// own proposal.
const scaleUnknown = 0.1

// symptomRating is the rating of the stomach from which it counts as a symptom.
const symptomRating = 7

// GainOf is the gain of a sheet; ok is false where the athlete was not heavier.
func GainOf(f Findings, a record.Athlete, on time.Time) (g Gain, ok bool) {
	for _, flag := range f.Sweat.Flags {
		if flag.ID == sweat.FlagGained {
			g, ok = Gain{Kilograms: flag.Size}, true
		}
	}
	if !ok {
		return g, false
	}
	step := f.Test.Scale.Step.Or(scaleUnknown)
	g.WeighAgain = g.Kilograms <= step+1e-9 && f.Test.Feeling.Stomach.Or(0) < symptomRating
	g.Risks = waterRisks(a, on)
	return g, true
}

// Gained reports whether the athlete of a sheet was heavier after than before.
func Gained(f Findings) bool {
	return slices.ContainsFunc(f.Sweat.Flags, func(flag sweat.Flag) bool { return flag.ID == sweat.FlagGained })
}

// waterRisks are an athlete's own conditions that make a gain graver, the gravest first.
func waterRisks(a record.Athlete, on time.Time) (list []record.FlagKind) {
	for _, kind := range care.ByGravity(care.FlagsOf(a, on)) {
		if care.EffectOf(kind).WaterCaution {
			list = append(list, kind)
		}
	}
	return list
}

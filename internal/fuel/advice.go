package fuel

import (
	"math"

	"ebbwell/internal/evidence"
	"ebbwell/internal/quantity"
)

// Effort is how hard a session is.
type Effort int

// The efforts.
const (
	EffortUnknown Effort = iota
	Easy
	Moderate
	Hard
)

// EffortOf reads an effort rating 0-10: moderate from 4, hard from 7 (our
// proposal). A rating outside 0-10 is unknown.
func EffortOf(rating float64) Effort {
	limit, _ := evidence.LimitOf(evidence.Scale0To10)
	switch {
	case math.IsNaN(rating) || !limit.Refuse.Contains(rating):
		return EffortUnknown
	case rating >= evidence.EffortHardFrom:
		return Hard
	case rating >= evidence.EffortModerateFrom:
		return Moderate
	}
	return Easy
}

// Advice is one published range. The zero Advice says nothing.
type Advice struct {
	// Code names the advice; its words are under "advice."+Code.
	Code  string
	Range quantity.Range
	Unit  quantity.Unit
	// LowID and HighID are the evidence entries behind the two ends; LowID
	// is empty where the low end is zero by its nature.
	LowID, HighID string
	Sure          evidence.Sureness
}

// Says reports whether there is any advice.
func (a Advice) Says() bool { return a.Code != "" }

// The codes of carbohydrate during a session.
const (
	FuelNone      = "fuel.none"       // nothing needed
	FuelRinse     = "fuel.rinse"      // mouth rinse to small amounts
	FuelMiddle    = "fuel.middle"     // 1-2.5 h
	FuelLong      = "fuel.long"       // glucose with fructose above 60 g/h
	FuelStopStart = "fuel.stop-start" // hard intermittent play, common practice
	FuelStudied   = "fuel.studied"    // trials above the advice, not advised

	DrinkStrength = "drink.strength"
)

// CarbohydrateDuring is the advised carbohydrate in g/h for a session of a
// length in min (ACSM/AND/DC 2016): none under 45 min; 45 to under 75 min a
// mouth rinse to small amounts when hard, else none; 75-150 min 30-60; above
// 150 min up to 90. An unknown effort counts as hard, so that the range is
// shown.
func CarbohydrateDuring(minutes float64, effort Effort) Advice {
	hard := effort == Hard || effort == EffortUnknown
	switch {
	case !(minutes >= evidence.FuelNoneBelow), minutes < evidence.FuelRinseBelow && !hard:
		return perHour(FuelNone, 0, 0, "", "fuel.none-below", evidence.Second)
	case minutes < evidence.FuelRinseBelow:
		return perHour(FuelRinse, 0, evidence.FuelSmallHigh, "", "fuel.small.high", evidence.Second)
	case minutes <= evidence.FuelLongAbove:
		return perHour(FuelMiddle, evidence.FuelMiddleLow, evidence.FuelMiddleHigh, "fuel.middle.low", "fuel.middle.high", evidence.Second)
	}
	return perHour(FuelLong, evidence.FuelMiddleLow, evidence.FuelLongHigh, "fuel.middle.low", "fuel.long.high", evidence.Second)
}

// CarbohydrateAlternatives lists other ranges in use for such a session; they
// are common practice without a source.
func CarbohydrateAlternatives(minutes float64, effort Effort, intermittent bool) []Advice {
	if effort == Hard && intermittent && minutes >= evidence.FuelStopStartFrom && minutes <= evidence.FuelStopStartUntil {
		return []Advice{perHour(FuelStopStart, evidence.FuelStopStartLow, evidence.FuelStopStartHigh,
			"fuel.stop-start.low", "fuel.stop-start.high", evidence.Practice)}
	}
	return nil
}

// Studied is what trials went up to above the advice, g/h, in sessions long enough
// for the most that is advised: in trained athletes whose gut was trained. It is
// said, and never an aim. ok is false for shorter sessions.
func Studied(minutes float64) (a Advice, ok bool) {
	if !(minutes > evidence.FuelLongAbove) {
		return Advice{}, false
	}
	return perHour(FuelStudied, evidence.FuelLongHigh, evidence.StudiedHigh, "fuel.long.high", "fuel.studied.high", evidence.Memory), true
}

// GutWeek is a week of training the gut for a carbohydrate rate.
type GutWeek struct {
	// GramsHour is what is taken in the week's sessions, g/h, as Dose every so
	// many minutes.
	GramsHour, Dose, Every float64
	// Holds is true in the weeks at the aim.
	Holds bool
}

// GutTraining is the way from a carbohydrate rate that is tolerated to an aim,
// g/h, as a plan of weeks: up by at most 15 g/h a week, taken every 20 min, then
// two weeks at the aim. The spacing and the two weeks are those of Costa et al.
// 2017 (30 g every 20 min); the weekly rise is common practice. It is empty where
// the aim is not above what is tolerated.
func GutTraining(tolerated, aim float64) []GutWeek {
	var weeks []GutWeek
	if !(aim > tolerated) || math.IsInf(aim, 0) || tolerated < 0 {
		return nil
	}
	add := func(rate float64, holds bool) {
		weeks = append(weeks, GutWeek{GramsHour: rate, Dose: rate * evidence.GutTrainingEvery / 60, Every: evidence.GutTrainingEvery, Holds: holds})
	}
	for rate := tolerated + evidence.StepFuelHigh; rate < aim; rate += evidence.StepFuelHigh {
		add(rate, false)
	}
	for range int(evidence.GutTrainingWeeks) {
		add(aim, true)
	}
	return weeks
}

func perHour(code string, low, high float64, lowID, highID string, sure evidence.Sureness) Advice {
	return Advice{
		Code: code, Range: quantity.Range{Low: low, High: high}, Unit: quantity.GramPerHour,
		LowID: lowID, HighID: highID, Sure: sure,
	}
}

// SourceSplit says how a carbohydrate rate above 60 g/h is parted into the
// glucose and the fructose family, g/h, from 2:1 to 1:0.8. Needed is false at
// or below 60, where one source will do.
func SourceSplit(gramsPerHour float64) (glucose, fructose quantity.Range, needed bool) {
	if !(gramsPerHour > evidence.OneSourceHigh) {
		return glucose, fructose, false
	}
	most := gramsPerHour / (1 + evidence.FructoseToGlucoseLow)
	least := gramsPerHour / (1 + evidence.FructoseToGlucoseHigh)
	glucose = quantity.Range{Low: least, High: most}
	fructose = quantity.Range{Low: gramsPerHour - most, High: gramsPerHour - least}
	return glucose, fructose, true
}

// Strength is the advised carbohydrate of what is drunk, 4-8 g per 100 mL;
// past 8 the stomach empties more slowly.
func Strength() Advice {
	return Advice{
		Code: DrinkStrength, Range: quantity.Range{Low: evidence.StrengthLow, High: evidence.StrengthHigh},
		Unit: "g/100 mL", LowID: "drink.strength.low", HighID: "drink.strength.high", Sure: evidence.Read,
	}
}

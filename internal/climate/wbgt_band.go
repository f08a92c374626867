package climate

import (
	"ebbwell/internal/evidence"
	"ebbwell/internal/quantity"
)

// Level is how much caution heat calls for. No level says that nothing can
// happen: heat stroke is known in cool air too.
type Level int

// The levels of caution.
const (
	// UsualCare: nothing beyond what every session asks for.
	UsualCare Level = iota
	// Watch: those at risk are watched.
	Watch
	// Reduce: more rest, shorter or easier.
	Reduce
	// Limit: no hard exercise, half rest, short exposure.
	Limit
	// Cancel: the session is moved or cancelled.
	Cancel
)

// Code names the level in the catalogue of texts.
func (l Level) Code() string {
	switch l {
	case Watch:
		return "watch"
	case Reduce:
		return "reduce"
	case Limit:
		return "limit"
	case Cancel:
		return "cancel"
	}
	return "usual-care"
}

// Practice says how a session goes on.
type Practice struct {
	// Continuous: without breaks, or a competition; else training with breaks.
	Continuous bool
	// Acclimatised: used to heat, fit, without particular risk.
	Acclimatised bool
}

// Band is a row of the WBGT table as it reads for one athlete and session.
type Band struct {
	// Code of the advice ("band.more-rest").
	Code  string
	Level Level
	// Range of the row, °C; the lowest has no low end (-∞ is given as -100),
	// the highest no high end (given as 100).
	Range quantity.Range
}

// BandOf finds the advice for a wet bulb globe temperature.
//
// The bands end at 10.0, 18.3, 22.2, 25.6, 27.8, 30.0 and 32.2 °C. Continuous
// activity and competition have one column, training and activity with breaks
// two: used to heat or not. Above an end the next band holds, however little.
// Meant for healthy adults in light clothes; not for pads or helmets. Local
// policy and the organiser's decision win over any band. Source: ACSM 2007
// (Armstrong et al.); the rows below 27.8 °C read in a second text.
func BandOf(wbgt quantity.Celsius, p Practice) Band {
	ends := [...]float64{evidence.WbgtBandCool, evidence.WbgtBandMild, evidence.WbgtBandRising, evidence.WbgtBandRaised,
		evidence.WbgtBandHigh, evidence.WbgtBandHot, evidence.WbgtBandExtreme}
	row := 0
	for row < len(ends) && float64(wbgt) > ends[row] {
		row++
	}
	b := bandColumn(p)[row]
	b.Range = quantity.Range{Low: -100, High: 100}
	if row > 0 {
		b.Range.Low = ends[row-1]
	}
	if row < len(ends) {
		b.Range.High = ends[row]
	}
	return b
}

// bandColumn is the advice by row, coolest first.
func bandColumn(p Practice) [8]Band {
	usual := Band{Code: "band.usual", Level: UsualCare}
	cancel := Band{Code: "band.cancel", Level: Cancel}
	switch {
	case p.Continuous:
		high := Band{Code: "band.high-for-unacclimatised", Level: Limit}
		if p.Acclimatised {
			high.Level = Reduce
		}
		return [8]Band{usual, usual, {Code: "band.watch-at-risk", Level: Watch}, {Code: "band.raised-for-all", Level: Reduce},
			high, cancel, cancel, cancel}
	case p.Acclimatised:
		drink := Band{Code: "band.usual-note-drinking", Level: UsualCare}
		return [8]Band{usual, usual, usual, drink, drink,
			{Code: "band.with-discretion", Level: Reduce}, {Code: "band.limit-intense", Level: Limit}, cancel}
	}
	return [8]Band{usual, usual, {Code: "band.more-rest", Level: Watch}, {Code: "band.more-rest-shorter", Level: Reduce},
		{Code: "band.more-rest-easier-shorter", Level: Reduce}, {Code: "band.half-rest-no-hard", Level: Limit}, cancel, cancel}
}

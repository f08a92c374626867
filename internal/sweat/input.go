package sweat

import (
	"ebbwell/internal/evidence"
	"ebbwell/internal/quantity"
)

// Input is one test sheet, filled as far as it is. What was not entered is a
// nil pointer or an empty slice; a zero that was entered ("no urine passed") is
// a pointer to zero and counts as in.
type Input struct {
	Time    Time
	Body    Body
	Intake  Intake
	Output  Output
	Markers Markers
	Patches []Patch
	Effort  Effort
	Air     Air
	Options Options
}

// Time is how long the session was.
type Time struct {
	// Elapsed is from start to end; every rate divides by it.
	Elapsed *quantity.Minutes
	// Played is the time really moved; it enters the metabolic rate only, the
	// rest counting as one MET. Nil means all of it.
	Played *quantity.Minutes
}

// Dress is how the athlete stood on the scale.
type Dress string

// How the athlete stood on the scale. Empty means not said; it is then taken as
// minimal, with the wider error of kit that stays on.
const (
	Minimal Dress = "minimal-towelled"
	KitOn   Dress = "kit-on"
)

// Body is the weighing.
type Body struct {
	// Before and After are the readings; duplicates are averaged.
	Before, After           []quantity.Kilograms
	DressBefore, DressAfter Dress
	// Step is the last digit of the scale.
	Step *quantity.Kilograms
	// OtherScale: the athlete was weighed on another scale after than before,
	// so that a constant offset does not cancel.
	OtherScale bool
	// KitDry and KitWet are the clothes weighed apart from the body.
	KitDry, KitWet *quantity.Kilograms
}

// Use is what became of a bottle's contents.
type Use string

// What becomes of a bottle. Empty counts as drunk.
const (
	Drunk      Use = "drunk"
	PouredOver Use = "poured-over"
	// Shared: the athlete's part cannot be told apart but for its bounds.
	Shared Use = "shared"
)

// Bottle is a bottle weighed before and after, or a volume from a carton or a
// cup.
type Bottle struct {
	Use Use
	// Density in g/mL; nil counts as water, 1.
	Density       *float64
	Before, After *quantity.Grams
	// Refills are the masses added in the session.
	Refills []quantity.Grams
	// Poured is what was poured away, not drunk.
	Poured *quantity.Grams
	// Volume is what was taken, where nothing was weighed.
	Volume *quantity.Millilitres
	// ShareLow and ShareHigh bound the athlete's part of a shared bottle; nil
	// means nothing, and everything.
	ShareLow, ShareHigh *quantity.Percent
}

// Food is something eaten in the session. Its whole mass is in the balance.
type Food struct {
	Mass *quantity.Grams
	// Water is the share of it that is water, 0 to 1, for information.
	Water *float64
}

// Intake is what was drunk and eaten. No bottles at all means that drinks are
// still to be entered, unless NothingDrunk says otherwise; no food means that
// nothing was eaten.
type Intake struct {
	Bottles      []Bottle
	NothingDrunk bool
	Foods        []Food
}

// Output is what left the body besides sweat. Nil urine is missing; nil stool
// means none.
type Output struct {
	Urine, Stool *quantity.Grams
}

// Markers are what says how the athlete came to the test.
type Markers struct {
	Gravity    *float64 // urine specific gravity
	Osmolality *float64 // of urine, mOsm/kg
	Colour     *float64 // of urine, 1-8
	// Morning is today's first-morning mass and Baseline those of the mornings
	// before it.
	Morning         *quantity.Kilograms
	Baseline        []quantity.Kilograms
	Thirst, Stomach *float64 // 0-10
}

// Condition of a patch when it came off.
type Condition string

// The conditions of a patch. Empty counts as good.
const (
	Good      Condition = "good"
	Detached  Condition = "detached"
	Saturated Condition = "saturated"
)

// Patch is one sweat patch.
type Patch struct {
	Site evidence.Site
	Side string // "left", "right" or empty
	// On and Off are minutes after the start of the session.
	On, Off   *quantity.Minutes
	Sodium    *quantity.MillimolesPerLitre // nil: waiting for the laboratory
	Potassium *quantity.MillimolesPerLitre
	Method    evidence.Method
	Condition Condition
	// U is the standard uncertainty the laboratory gives; nil takes that of
	// the method.
	U *quantity.MillimolesPerLitre
}

// Effort is what the metabolic rate is calculated from, best first: oxygen
// uptake, energy, effort rating, the usual MET of the sport. [FromMet],
// [FromRunning], [FromCycling] and [FromRowing] give an oxygen uptake. Where
// nothing is given, 6 MET are assumed.
type Effort struct {
	// Oxygen is the uptake while playing, L/min STPD.
	Oxygen *float64
	// RER is the respiratory exchange ratio; nil takes 0.92.
	RER *float64
	// Energy is that of the whole session.
	Energy *quantity.Kilocalories
	// Rating is the effort, 0-10: a wide estimate.
	Rating *float64
	// Sport is the usual MET of the sport, taken as a rating.
	Sport *float64
	// RelativeU is the relative standard uncertainty of the uptake or the
	// energy; zero takes 20 %.
	RelativeU float64
}

// Air is the weather, as far as the balance needs it.
type Air struct {
	Temperature *quantity.Celsius
	Vapour      *quantity.Kilopascals
}

// Options are choices, not measurements.
type Options struct {
	// Uncorrected leaves water breathed out and gas exchange in the sweat loss,
	// the field method; the low end of its range then reaches down for them.
	Uncorrected bool
	// Bands is the set of urine bands in use; an empty set is ACSM 2007.
	Bands evidence.BandSet
	// DeficitAim is the limit of the deficit at the end; nil takes 2 %.
	DeficitAim *quantity.Percent
	Sex        Sex
	// Kept are refused values that somebody kept with a written reason.
	Kept []Kept
}

// Sex as the equations for body water use it.
type Sex string

// The sexes; empty when not given.
const (
	Female Sex = "female"
	Male   Sex = "male"
)

// Kept names a refused value that is used all the same.
type Kept struct {
	Field evidence.Field
	// Item as in the problem that it answers.
	Item int
}

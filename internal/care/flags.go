package care

import (
	"time"

	"ebbwell/internal/record"
)

// Effect is what one condition of the profile changes in what is shown and
// advised. Its words are in the catalogue of texts under "flag.<kind>.name"
// (the condition), "flag.<kind>.effect" (for the practitioner) and
// "flag.<kind>.page" (for the athlete's page).
type Effect struct {
	Kind record.FlagKind
	// Physician: a plan needs the name of the physician who agreed to it.
	Physician bool
	// WithholdSalt: advice to add salt is withheld.
	WithholdSalt bool
	// HideMass: body mass is hidden by default.
	HideMass bool
	// WaterCaution: holds water, loses salt or sweats little, so that the caution
	// about drinking too much is always shown.
	WaterCaution bool
	// MarkerCaution: the urine marker says little.
	MarkerCaution bool
	// Today: it holds on the day it was entered alone.
	Today bool
	// PutOff: the test or hard session is put off.
	PutOff bool
	// OwnTests: the heat balance does not hold for this body, which sweats little
	// however much must evaporate; only what it lost in a test is known.
	OwnTests bool
	// Guardian: a guardian's consent and the athlete's assent come first.
	Guardian bool
}

// Effects is the one table of conditions: common practice in sports medicine
// clearance, no source, except that past hyponatraemia and water-holding
// medicines raise the risk in drinking by rule (Hew-Butler et al. 2015, Clin J
// Sport Med 25:303).
func Effects() []Effect {
	return []Effect{
		{Kind: record.FlagKidney, Physician: true, WithholdSalt: true, WaterCaution: true, MarkerCaution: true},
		{Kind: record.FlagHeart, Physician: true, WithholdSalt: true, WaterCaution: true},
		{Kind: record.FlagBloodPressure, Physician: true, WithholdSalt: true},
		{Kind: record.FlagDiuretics, Physician: true, WaterCaution: true, MarkerCaution: true},
		{Kind: record.FlagDesmopressin, Physician: true, WaterCaution: true, MarkerCaution: true},
		{Kind: record.FlagLithium, Physician: true, WaterCaution: true, MarkerCaution: true},
		{Kind: record.FlagAntidepressant, WaterCaution: true},
		{Kind: record.FlagNSAID, WaterCaution: true},
		{Kind: record.FlagOtherMedicine, Physician: true},
		{Kind: record.FlagDiabetes, Physician: true, MarkerCaution: true},
		{Kind: record.FlagPregnancy, Physician: true, MarkerCaution: true},
		{Kind: record.FlagHyponatraemia, Physician: true, WaterCaution: true},
		{Kind: record.FlagEating, Physician: true, HideMass: true},
		{Kind: record.FlagCysticFibrosis, Physician: true, WaterCaution: true},
		{Kind: record.FlagSickleCell, Physician: true},
		{Kind: record.FlagHeatIllness, Physician: true},
		{Kind: record.FlagSpinalInjury, Physician: true, WaterCaution: true, OwnTests: true},
		{Kind: record.FlagIllToday, Today: true, PutOff: true, MarkerCaution: true},
		{Kind: record.FlagStomachToday, Today: true, PutOff: true, WaterCaution: true, MarkerCaution: true},
		{Kind: record.FlagMinor, HideMass: true, Guardian: true},
	}
}

// EffectOf returns the effect of one condition; the zero Effect with its kind
// for one that is not in the table.
func EffectOf(kind record.FlagKind) Effect {
	for _, e := range Effects() {
		if e.Kind == kind {
			return e
		}
	}
	return Effect{Kind: kind}
}

// FlagsOf lists the conditions of an athlete on a day in the table's order,
// with the one that follows from the age.
func FlagsOf(a record.Athlete, on time.Time) []record.FlagKind {
	has := map[record.FlagKind]bool{record.FlagMinor: a.Minor(on)}
	for _, f := range a.Flags {
		if FlagHolds(f, on) {
			has[f.Kind] = true
		}
	}
	var list []record.FlagKind
	for _, e := range Effects() {
		if has[e.Kind] {
			list = append(list, e.Kind)
		}
	}
	return list
}

// FlagHolds reports whether a condition holds on a day: one of the day alone only on
// the day it was entered.
func FlagHolds(f record.Flag, on time.Time) bool {
	if f.Deleted() {
		return false
	}
	if !EffectOf(f.Kind).Today || f.CreatedAt.IsZero() {
		return true
	}
	return record.DateOf(f.CreatedAt.In(on.Location())) == record.DateOf(on)
}

// Care is what all conditions of an athlete together ask for.
type Care struct {
	Flags []record.FlagKind
	// NeedsPhysician lists the conditions for which no physician is named yet.
	NeedsPhysician []record.FlagKind
	// WithholdSalt lists the conditions for which advice to add salt is withheld.
	WithholdSalt  []record.FlagKind
	WaterCaution  bool
	MarkerCaution bool
	// OwnTests: no estimate holds for this body, only its own tests do.
	OwnTests bool
	// MassHidden: litres only, on screen and on paper.
	MassHidden bool
	// Outstanding lists what a first sheet waits for: "born" while nobody knows
	// whether the athlete is a minor; a minor's "guardian", "assent",
	// "mass-hidden".
	Outstanding []string
}

// Of puts the conditions of an athlete on a day together.
func Of(a record.Athlete, on time.Time) Care {
	care := Care{Flags: FlagsOf(a, on), MassHidden: MassHidden(a, on)}
	if !AgeKnown(a, on) {
		care.Outstanding = []string{"born"}
	}
	named := map[record.FlagKind]bool{}
	for _, f := range a.Flags {
		if !f.Deleted() && f.Physician != "" {
			named[f.Kind] = true
		}
	}
	for _, kind := range care.Flags {
		e := EffectOf(kind)
		if e.Physician && !named[kind] {
			care.NeedsPhysician = append(care.NeedsPhysician, kind)
		}
		if e.WithholdSalt {
			care.WithholdSalt = append(care.WithholdSalt, kind)
		}
		care.WaterCaution = care.WaterCaution || e.WaterCaution
		care.MarkerCaution = care.MarkerCaution || e.MarkerCaution
		care.OwnTests = care.OwnTests || e.OwnTests
		if e.Guardian {
			care.Outstanding = outstanding(a)
		}
	}
	return care
}

// outstanding lists what is still open before a minor's first sheet.
func outstanding(a record.Athlete) []string {
	var list []string
	if a.Guardian == "" {
		list = append(list, "guardian")
	}
	if a.Assent == "" {
		list = append(list, "assent")
	}
	if !a.MassHiddenSettled {
		list = append(list, "mass-hidden")
	}
	return list
}

// AgeKnown reports whether it is known that an athlete is, or is not, a minor
// on a day: without a birth date, or with one that is still to come, they may
// be.
func AgeKnown(a record.Athlete, on time.Time) bool {
	_, ok := a.Age(on)
	return ok
}

// MassHidden reports whether body mass stays hidden: always while the age is
// not known, then as settled in the profile, else by default for a minor and
// for the eating-disorder flag.
func MassHidden(a record.Athlete, on time.Time) bool {
	if !AgeKnown(a, on) {
		return true
	}
	if a.MassHiddenSettled {
		return a.MassHidden
	}
	for _, kind := range FlagsOf(a, on) {
		if EffectOf(kind).HideMass {
			return true
		}
	}
	return a.MassHidden
}

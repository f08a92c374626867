package record

import "time"

// Sex as the body-water equations use it.
type Sex string

// The sexes; empty when not given.
const (
	Female Sex = "female"
	Male   Sex = "male"
)

// Acclimatised says whether an athlete is used to heat.
type Acclimatised string

// The states of acclimatisation; empty when not asked yet.
const (
	AcclimatisedYes Acclimatised = "yes"
	AcclimatisedNo  Acclimatised = "no"
)

// Training says whether an athlete is trained.
type Training string

// The answers; empty while not asked.
const (
	Trained   Training = "trained"
	Untrained Training = "untrained"
)

// Habit is what an athlete usually drinks and eats in a usual session.
type Habit struct {
	// Minutes is the length of the usual session.
	Minutes Number `gorm:"embedded;embeddedPrefix:minutes_" unit:"min"`
	// Water and Drink are rates, L/h; DrinkID is the product drunk.
	Water   Number `gorm:"embedded;embeddedPrefix:water_" unit:"L/h"`
	Drink   Number `gorm:"embedded;embeddedPrefix:drink_" unit:"L/h"`
	DrinkID ID     `gorm:"size:64"`
	// Portions of a food are eaten each hour; FoodID is the product, FoodName
	// what the athlete calls it.
	Portions Number `gorm:"embedded;embeddedPrefix:portions_" unit:"portion"`
	FoodID   ID     `gorm:"size:64"`
	FoodName string
}

// Athlete is one person in care. Lists are in the order shown.
type Athlete struct {
	Meta
	Name         string
	Born         Date   `gorm:"size:10"`
	Sex          Sex    `gorm:"size:8"`
	Height       Number `gorm:"embedded;embeddedPrefix:height_" unit:"m"`      // m
	UsualMass    Number `gorm:"embedded;embeddedPrefix:usual_mass_" unit:"kg"` // kg
	Sport        string
	Position     string
	Acclimatised Acclimatised `gorm:"size:8"`
	// UsualDrinking is what the stomach is used to in a session, L/h; after
	// the first entry it rises only by a review.
	UsualDrinking Number `gorm:"embedded;embeddedPrefix:usual_drinking_" unit:"L/h"`
	// Mouthful is the athlete's own mouthful in mL, from ten of them weighed.
	Mouthful Number `gorm:"embedded;embeddedPrefix:mouthful_" unit:"mL"`
	// Bottles are the athlete's own, one a line with its name and measures, as package
	// consult writes them.
	Bottles string
	// Training is whether the athlete is trained for their sport.
	Training Training `gorm:"size:12"`
	// Habit is what the athlete says they usually do, beside what a test saw.
	Habit Habit `gorm:"embedded;embeddedPrefix:habit_"`
	// DeficitAim is the deficit at the end not to pass, % of body mass, and
	// CarbohydrateAim the carbohydrate wanted, g/h, of this athlete; unknown is
	// as the practice and the advice say.
	DeficitAim      Number `gorm:"embedded;embeddedPrefix:deficit_aim_" unit:"%"`
	CarbohydrateAim Number `gorm:"embedded;embeddedPrefix:carbohydrate_aim_" unit:"g/h"`
	// PageLanguage is the language the athlete reads; empty is the practice's.
	PageLanguage string `gorm:"size:8"`
	// Guardian and Assent settle a minor's consent; MassHidden hides body
	// mass on screen and paper, MassHiddenSettled says that it was asked.
	Guardian          string
	Assent            Date `gorm:"size:10"`
	MassHidden        bool
	MassHiddenSettled bool
	Note              string
	// ImportID is the import the athlete came with; empty for one typed in.
	ImportID ID `gorm:"size:36"`
	// FirstMass is the first body mass, kg, that was ever weighed before a session of
	// one whose usual mass is not known, zero for none. It is no entry and not kept: the
	// store finds it as it loads, and only the class of a hidden mass follows from it.
	FirstMass   float64      `gorm:"-"`
	Flags       []Flag       `gorm:"foreignKey:AthleteID"`
	Consents    []Consent    `gorm:"foreignKey:AthleteID"`
	Memberships []Membership `gorm:"foreignKey:AthleteID"`
}

// Age returns the full years on a day; ok is false when the birth date is
// missing or later.
func (a Athlete) Age(on time.Time) (years int, ok bool) {
	born, ok := a.Born.Time()
	if !ok || on.Before(born) {
		return 0, false
	}
	years = on.Year() - born.Year()
	if on.Month() < born.Month() || (on.Month() == born.Month() && on.Day() < born.Day()) {
		years--
	}
	return years, true
}

// Minor reports whether the athlete is known to be under 18 on a day. One whose
// birth date is missing may be: nothing begins before it is known.
func (a Athlete) Minor(on time.Time) bool {
	years, ok := a.Age(on)
	return ok && years < 18
}

// FlagKind names a condition that changes what is shown and advised; the
// effects stand in one table of package consult.
type FlagKind string

// The conditions of the profile.
const (
	FlagKidney         FlagKind = "kidney"
	FlagHeart          FlagKind = "heart"
	FlagBloodPressure  FlagKind = "blood-pressure"
	FlagDiuretics      FlagKind = "diuretics"
	FlagDesmopressin   FlagKind = "desmopressin"
	FlagLithium        FlagKind = "lithium"
	FlagAntidepressant FlagKind = "antidepressants"
	FlagNSAID          FlagKind = "nsaids"
	FlagOtherMedicine  FlagKind = "other-medicine"
	FlagDiabetes       FlagKind = "diabetes"
	FlagPregnancy      FlagKind = "pregnancy"
	FlagHyponatraemia  FlagKind = "past-hyponatraemia"
	FlagEating         FlagKind = "eating-disorder-or-reds"
	FlagCysticFibrosis FlagKind = "cystic-fibrosis"
	FlagSickleCell     FlagKind = "sickle-cell-trait"
	FlagHeatIllness    FlagKind = "past-heat-illness"
	FlagSpinalInjury   FlagKind = "spinal-cord-injury"
	// FlagIllToday and FlagStomachToday hold on the day they were entered.
	FlagIllToday     FlagKind = "ill-today"
	FlagStomachToday FlagKind = "stomach-upset-today"
	// FlagMinor is never stored: it follows from the birth date.
	FlagMinor FlagKind = "under-18"
)

// Flag is one condition an athlete told of.
type Flag struct {
	Meta
	AthleteID ID       `gorm:"index;size:36"`
	Kind      FlagKind `gorm:"size:32"`
	Note      string
	// Physician is who agreed to a plan, where the flag asks for one.
	Physician string
}

// BothAgreed reports whether a guardian is named and the athlete has assented by a day,
// for one who is a minor then: that is the consent to a test, and it is not asked for
// a second time.
func (a Athlete) BothAgreed(on Date) bool {
	day, ok := on.Time()
	return ok && a.Minor(day) && a.Guardian != "" && a.Assent != "" && a.Assent <= on
}

// Purpose says what a consent is for.
type Purpose string

// What an athlete consents to.
const (
	ConsentTest     Purpose = "test"
	ConsentUrine    Purpose = "urine"
	ConsentCoach    Purpose = "coach"
	ConsentResearch Purpose = "research"
)

// Purposes lists what an athlete can consent to.
func Purposes() []Purpose { return []Purpose{ConsentTest, ConsentUrine, ConsentCoach, ConsentResearch} }

// Consent is a permission with its date.
type Consent struct {
	Meta
	AthleteID ID      `gorm:"index;size:36"`
	Purpose   Purpose `gorm:"size:16"`
	Given     Date    `gorm:"size:10"`
	Until     Date    `gorm:"size:10"`
	Withdrawn Date    `gorm:"size:10"`
	// GivenBy is the athlete, or the guardian of a minor.
	GivenBy string
}

// Holds reports whether the consent is in force on a day.
func (c Consent) Holds(on Date) bool {
	return c.Given != "" && c.Given <= on && (c.Until == "" || on <= c.Until) && (c.Withdrawn == "" || on < c.Withdrawn)
}

// Group is a squad, a team or any set of athletes.
type Group struct {
	Meta
	Name string
}

// Membership puts an athlete into a group.
type Membership struct {
	Meta
	AthleteID ID `gorm:"index;size:36"`
	GroupID   ID `gorm:"index;size:36"`
}

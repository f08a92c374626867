package record

import "time"

// PlanState says how far a plan is.
type PlanState string

// The states of a plan.
const (
	PlanDraft    PlanState = "draft"
	PlanAgreed   PlanState = "agreed"
	PlanReplaced PlanState = "replaced"
)

// BasisKind says what a plan is based on.
type BasisKind string

// What a plan can be based on.
const (
	BasisTest     BasisKind = "test"
	BasisPool     BasisKind = "pool"
	BasisEstimate BasisKind = "estimate"
)

// Plan is a drinking and fuelling plan for one kind of session.
type Plan struct {
	Meta
	AthleteID ID        `gorm:"index;size:36"`
	State     PlanState `gorm:"size:12"`
	Name      string
	Target    Target    `gorm:"embedded"`
	Basis     PlanBasis `gorm:"embedded;embeddedPrefix:basis_"`
	Agreement Agreement `gorm:"embedded"`
	Rules     StepRules `gorm:"embedded;embeddedPrefix:rules_"`
	// UsualHabit: the habit is what the athlete says they usually do, not what
	// the test saw.
	UsualHabit bool
	Aims       Aims `gorm:"embedded;embeddedPrefix:aims_"`
	// Corrected says that the test behind an agreed plan was corrected since.
	Corrected TestCorrected `gorm:"embedded;embeddedPrefix:corrected_"`
	Options   []Option      `gorm:"foreignKey:PlanID"`
	Steps     []Step        `gorm:"foreignKey:PlanID"`
	Chances   []Chance      `gorm:"foreignKey:PlanID"`
	Reviews   []Review      `gorm:"foreignKey:PlanID"`
}

// TestCorrected is a correction of the test behind an agreed plan, told until
// the plan is checked. At is nil while there is none.
type TestCorrected struct {
	At *time.Time
	// Before and After are the total sweat loss of the plan's session, L, as
	// agreed and as it would be now.
	Before Number `gorm:"embedded;embeddedPrefix:before_" unit:"L"`
	After  Number `gorm:"embedded;embeddedPrefix:after_" unit:"L"`
}

// Aims is what was chosen for a plan to meet in place of the published advice,
// which holds where nothing stands; the limit of the deficit is in its Target.
type Aims struct {
	CarbohydrateLow  Number `gorm:"embedded;embeddedPrefix:carbohydrate_low_" unit:"g/h"`
	CarbohydrateHigh Number `gorm:"embedded;embeddedPrefix:carbohydrate_high_" unit:"g/h"`
	SodiumLow        Number `gorm:"embedded;embeddedPrefix:sodium_low_" unit:"mg/h"`
	SodiumHigh       Number `gorm:"embedded;embeddedPrefix:sodium_high_" unit:"mg/h"`
	// Drinking is the drinking rate not to pass; it only lowers the usual one.
	Drinking Number `gorm:"embedded;embeddedPrefix:drinking_" unit:"L/h"`
	// Strength of what is drunk not to pass, g in 100 mL.
	Strength Number `gorm:"embedded;embeddedPrefix:strength_" unit:"%"`
}

// StepRules are the practice's own size and spacing of the steps of a plan, where
// they differ from the usual ones, and what a suggestion keeps to.
type StepRules struct {
	Fluid        Number `gorm:"embedded;embeddedPrefix:fluid_" unit:"L/h"`        // most change in one step
	Carbohydrate Number `gorm:"embedded;embeddedPrefix:carbohydrate_" unit:"g/h"` // most change in one step
	Sessions     Number `gorm:"embedded;embeddedPrefix:sessions_"`
	PerWeek      Number `gorm:"embedded;embeddedPrefix:per_week_"`
	ClearDays    Number `gorm:"embedded;embeddedPrefix:clear_days_"`
	// Bottles are the bottle sizes owned, mL, separated by spaces; Held the
	// products a suggestion may not change, separated by spaces ("salt" is the
	// added salt).
	Bottles string
	Held    string
	// Wishes are what the athlete wants of a proposal and of the schedule, separated by spaces.
	Wishes string
	// Further sessions of the same day as start, minutes and the plan they are
	// done by, "15:00/95/<id>", separated by spaces; what is not known is left
	// out. "none" says that there are none.
	Further string
}

// Target is the session the plan is for and what it aims at; see [Session] for why it
// is not one.
type Target struct {
	SessionName string
	Sport       string
	Minutes     Number `gorm:"embedded;embeddedPrefix:minutes_" unit:"min"`       // expected
	Short       Number `gorm:"embedded;embeddedPrefix:minutes_short_" unit:"min"` // min
	Long        Number `gorm:"embedded;embeddedPrefix:minutes_long_" unit:"min"`  // min
	Effort      Number `gorm:"embedded;embeddedPrefix:effort_"`                   // 0-10
	Start       Clock  `gorm:"size:5"`
	// NextAfter is the hours until the next session; nil when a day or more away.
	NextAfter Number `gorm:"embedded;embeddedPrefix:next_after_" unit:"h"`
	// DeficitAim is the deficit at the end not to pass, %.
	DeficitAim Number `gorm:"embedded;embeddedPrefix:deficit_aim_" unit:"%"`
	EventDate  Date   `gorm:"size:10"`
}

// PlanBasis is the test, the tests or the estimate a plan is based on.
type PlanBasis struct {
	Kind   BasisKind `gorm:"size:12"`
	TestID ID        `gorm:"index;size:36"`
	// PoolIDs lists further tests of a pool, separated by spaces.
	PoolIDs string
	StopID  ID `gorm:"size:36"` // stop of a trip
	// Air the plan is for, where it is not the test's own.
	Air Air `gorm:"embedded;embeddedPrefix:air_"`
	// UsedToHeat is whether the athlete will be used to heat there; empty is as
	// the profile says.
	UsedToHeat Acclimatised `gorm:"size:8"`
}

// Agreement is how a plan was agreed.
type Agreement struct {
	AgreedAt  *time.Time
	AgreedBy  string
	OptionID  ID     `gorm:"size:36"` // the agreed option
	Words     string // why, in the athlete's words
	Physician string // who agreed, where a flag asks for one
	Review    Date   `gorm:"size:10"`
	From      Date   `gorm:"column:from_date;size:10"`
	Until     Date   `gorm:"column:until_date;size:10"`
}

// OptionKind says what an option is.
type OptionKind string

// The kinds of option.
const (
	OptionHabit OptionKind = "habit"
	OptionFluid OptionKind = "fluid-only"
	OptionFood  OptionKind = "with-food"
	OptionOwn   OptionKind = "own"
	OptionAim   OptionKind = "aim"
	// OptionStep is the mix of a step between habit and aim.
	OptionStep OptionKind = "step"
)

// Option is one way to drink and eat in the session.
type Option struct {
	Meta
	PlanID     ID         `gorm:"index;size:36"`
	Order      int        `gorm:"column:position"`
	Kind       OptionKind `gorm:"size:12"`
	Name       string
	Salt       Number `gorm:"embedded;embeddedPrefix:salt_" unit:"g"` // g added
	Importance Number `gorm:"embedded;embeddedPrefix:importance_"`    // 0-10
	Confidence Number `gorm:"embedded;embeddedPrefix:confidence_"`    // 0-10
	Words      string // the athlete's reason
	Items      []Item `gorm:"foreignKey:OptionID"`
}

// Role is what an item is in the mix.
type Role string

// The roles of an item.
const (
	RoleWater Role = "water"
	RoleDrink Role = "drink"
	RoleFood  Role = "food"
)

// Item is one drink or food in an option.
type Item struct {
	Meta
	OptionID  ID   `gorm:"index;size:36"`
	Order     int  `gorm:"column:position"`
	Role      Role `gorm:"size:8"`
	ProductID ID   `gorm:"size:64"`
	Name      string
	Volume    Number `gorm:"embedded;embeddedPrefix:volume_" unit:"mL"`        // mL, drinks and water
	Portions  Number `gorm:"embedded;embeddedPrefix:portions_" unit:"portion"` // foods
	// Strength of a powder made up, g of powder per 100 mL of drink.
	Strength Number `gorm:"embedded;embeddedPrefix:strength_" unit:"%"`
}

// StepState says where a step stands.
type StepState string

// The states of a step.
const (
	StepAhead StepState = "ahead"
	StepNow   StepState = "now"
	StepDone  StepState = "done"
	StepLeft  StepState = "left"
)

// Step is one dated rung between habit and aim.
type Step struct {
	Meta
	PlanID   ID        `gorm:"index;size:36"`
	Order    int       `gorm:"column:position"`
	OptionID ID        `gorm:"size:36"`
	State    StepState `gorm:"size:8"`
	From     Date      `gorm:"column:from_date;size:10"`
	Sessions int       // how many to do before the next
	Practise string
}

// Chance is a moment at which the sport lets one drink.
type Chance struct {
	Meta
	PlanID   ID  `gorm:"index;size:36"`
	Order    int `gorm:"column:position"`
	Name     string
	AtMinute Number `gorm:"embedded;embeddedPrefix:at_minute_" unit:"min"`
	Seconds  Number `gorm:"embedded;embeddedPrefix:seconds_" unit:"s"`
	CanEat   bool
	// Maybe: the chance may not happen.
	Maybe bool
	// Amount was set by hand, mL; the other chances are filled around it.
	Amount Number `gorm:"embedded;embeddedPrefix:amount_" unit:"mL"`
}

// Decision is what a review decided.
type Decision string

// What a review can decide.
const (
	DecisionHold Decision = "hold"
	DecisionNext Decision = "next"
	DecisionBack Decision = "back"
	// DecisionUndone takes back the decision before it on the same step.
	DecisionUndone Decision = "undone"
)

// Review is one session done under the plan, or the decision after several.
type Review struct {
	Meta
	PlanID    ID       `gorm:"index;size:36"`
	StepID    ID       `gorm:"size:36"`
	Order     int      `gorm:"column:position"`
	Date      Date     `gorm:"size:10"`
	DoneShare Number   `gorm:"embedded;embeddedPrefix:done_share_" unit:"%"` // % of the plan
	Drunk     Number   `gorm:"embedded;embeddedPrefix:drunk_" unit:"mL"`     // mL
	Stomach   Number   `gorm:"embedded;embeddedPrefix:stomach_"`             // 0-10
	Decision  Decision `gorm:"size:8"`                                       // empty for a session record
	Note      string
	// Heavier after than before: a red flag.
	Heavier bool
}

package record

import "time"

// GroupSession is a session that several athletes share on one day: entered once,
// one row for each of them. A row is that athlete's own [Test]; the session holds
// what was entered for all, and the test of each holds it too, so that a sheet is
// whole by itself when it is closed, printed, corrected or erased.
type GroupSession struct {
	Meta
	// Name is what the group calls the session; may be empty.
	Name    string
	Session Session `gorm:"embedded"`
	Air     Air     `gorm:"embedded;embeddedPrefix:air_"`
	// ScaleStep is the scale's resolution, asked once a day.
	ScaleStep Number       `gorm:"embedded;embeddedPrefix:scale_step_" unit:"kg"` // kg
	Check     ScaleCheck   `gorm:"embedded;embeddedPrefix:check_"`
	Bottles   []BottleKind `gorm:"foreignKey:GroupSessionID"`
	Members   []Member     `gorm:"foreignKey:GroupSessionID"`
	// PatchSites are the sites of the patches everybody wears, with commas between.
	PatchSites string
	// ByStation: worked one column down, not one row across.
	ByStation bool
}

// ScaleCheck is a drift check of the scale with a known mass.
type ScaleCheck struct {
	Known Number `gorm:"embedded;embeddedPrefix:known_" unit:"kg"` // kg
	Read  Number `gorm:"embedded;embeddedPrefix:read_" unit:"kg"`  // kg
	At    *time.Time
}

// BottleKind is a kind of bottle that every athlete of a session gets.
type BottleKind struct {
	Meta
	GroupSessionID ID     `gorm:"index;size:36"`
	Order          int    `gorm:"column:position"`
	ProductID      ID     `gorm:"size:64"` // what is in it
	Name           string // of what is in it
	Volume         Number `gorm:"embedded;embeddedPrefix:volume_" unit:"mL"` // mL
	Empty          Number `gorm:"embedded;embeddedPrefix:empty_" unit:"g"`   // g, the bottle alone
}

// Member is an athlete of a session, in the order of the scale.
type Member struct {
	Meta
	GroupSessionID ID     `gorm:"index;size:36"`
	AthleteID      ID     `gorm:"index;size:36"`
	TestID         ID     `gorm:"index;size:36"` // the athlete's own sheet
	Order          int    `gorm:"column:position"`
	Bib            string `gorm:"size:8"`
}

// PartwayWeighing is a weighing within the session, such as at half-time, with
// what was drunk and passed since the start.
type PartwayWeighing struct {
	Meta
	TestID ID     `gorm:"index;size:36"`
	Order  int    `gorm:"column:position"`
	At     Clock  `gorm:"column:time_at;size:5"`
	Mass   Number `gorm:"embedded;embeddedPrefix:mass_" unit:"kg"`  // kg
	Drunk  Number `gorm:"embedded;embeddedPrefix:drunk_" unit:"mL"` // mL since the start
	Urine  Number `gorm:"embedded;embeddedPrefix:urine_" unit:"g"`  // g since the start
}

// SafetyKind is a sort of line in the record of a red flag.
type SafetyKind string

// The sorts of lines.
const (
	// SafetyAsked is a symptom that was asked for, with its answer.
	SafetyAsked SafetyKind = "asked"
	// SafetyDone is an action that was ticked, or taken back.
	SafetyDone SafetyKind = "done"
	// SafetyTold is who was told, by name, or why nobody was.
	SafetyTold SafetyKind = "told"
)

// The answers of a line.
const (
	AnswerYes = "yes"
	AnswerNo  = "no"
)

// SafetyNote is one line of what was asked and done about an athlete's safety at a
// test. Lines are added and never changed: the last of an item is what holds.
type SafetyNote struct {
	Meta
	TestID ID         `gorm:"index;size:36"`
	Order  int        `gorm:"column:position"`
	Kind   SafetyKind `gorm:"size:8"`
	Item   string     `gorm:"size:24"` // symptom or action
	Answer string     `gorm:"size:8"`
	// Text is the name of who was told, or the reason why nobody was.
	Text string
	Done *time.Time // when it was done, UTC
}

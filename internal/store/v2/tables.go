package v2

import "time"

// Practice as of version 2.
type Practice struct {
	ID               string `gorm:"primaryKey;size:36"`
	CarbohydrateAim  Number `gorm:"embedded;embeddedPrefix:carbohydrate_aim_"`
	StepFluid        Number `gorm:"embedded;embeddedPrefix:step_fluid_"`
	StepCarbohydrate Number `gorm:"embedded;embeddedPrefix:step_carbohydrate_"`
	WholeSteps       bool
	FieldMethod      bool
	ComfortableOnly  bool
}

// Athlete as of version 2.
type Athlete struct {
	ID              string `gorm:"primaryKey;size:36"`
	Training        string `gorm:"size:12"`
	Habit           Habit  `gorm:"embedded;embeddedPrefix:habit_"`
	DeficitAim      Number `gorm:"embedded;embeddedPrefix:deficit_aim_"`
	CarbohydrateAim Number `gorm:"embedded;embeddedPrefix:carbohydrate_aim_"`
	PageLanguage    string `gorm:"size:8"`
}

// Habit as of version 2.
type Habit struct {
	Minutes  Number `gorm:"embedded;embeddedPrefix:minutes_"`
	Water    Number `gorm:"embedded;embeddedPrefix:water_"`
	Drink    Number `gorm:"embedded;embeddedPrefix:drink_"`
	DrinkID  string `gorm:"size:64"`
	Portions Number `gorm:"embedded;embeddedPrefix:portions_"`
	FoodID   string `gorm:"size:64"`
	FoodName string
}

// Test as of version 2.
type Test struct {
	ID           string `gorm:"primaryKey;size:36"`
	Ill          bool
	StomachUpset bool
}

// NewestTest is the index by which the newest test of an athlete is found and
// its state read, over columns of version 1.
type NewestTest struct {
	AthleteID string `gorm:"size:36;index:idx_tests_newest,where:deleted_at IS NULL,priority:1"`
	Date      string `gorm:"size:10;index:idx_tests_newest,priority:2"`
	Start     string `gorm:"size:5;index:idx_tests_newest,priority:3"`
	ID        string `gorm:"size:36;index:idx_tests_newest,priority:4"`
	State     string `gorm:"size:12;index:idx_tests_newest,priority:5"`
}

// TableName is the table the index is on.
func (NewestTest) TableName() string { return "tests" }

// FrozenLines is the index that holds what a list shows of closed tests, so
// that a list reads no frozen copy.
type FrozenLines struct {
	Kind       string   `gorm:"size:12;index:idx_frozen_lines,priority:1"`
	Record     string   `gorm:"size:36;index:idx_frozen_lines,priority:2"`
	Number     int      `gorm:"index:idx_frozen_lines,priority:3"`
	LineRate   *float64 `gorm:"index:idx_frozen_lines,priority:4"`
	LineRanged bool     `gorm:"index:idx_frozen_lines,priority:5"`
	LineMethod string   `gorm:"size:12;index:idx_frozen_lines,priority:6"`
}

// TableName is the table the index is on.
func (FrozenLines) TableName() string { return "frozen" }

// Plan as of version 2.
type Plan struct {
	ID         string `gorm:"primaryKey;size:36"`
	UsualHabit bool
	Rules      StepRules     `gorm:"embedded;embeddedPrefix:rules_"`
	Corrected  TestCorrected `gorm:"embedded;embeddedPrefix:corrected_"`
}

// Chance as of version 2.
type Chance struct {
	ID     string `gorm:"primaryKey;size:36"`
	Amount Number `gorm:"embedded;embeddedPrefix:amount_"`
}

// StepRules as of version 2.
type StepRules struct{ Wishes string }

// TestCorrected as of version 2.
type TestCorrected struct {
	At     *time.Time
	Before Number `gorm:"embedded;embeddedPrefix:before_"`
	After  Number `gorm:"embedded;embeddedPrefix:after_"`
}

// Frozen as of version 2. Inputs, results and what was shown are zlib streams
// (RFC 1950) from this version on.
type Frozen struct {
	ID      string `gorm:"primaryKey;size:36"`
	Shown   []byte
	Program string     `gorm:"size:24"`
	Line    FrozenLine `gorm:"embedded;embeddedPrefix:line_"`
}

// FrozenLine as of version 2.
type FrozenLine struct {
	Rate   *float64
	Ranged bool
	Method string `gorm:"size:12"`
}

// TableName is the word for several frozen copies.
func (Frozen) TableName() string { return "frozen" }

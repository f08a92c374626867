package record

import "time"

// Practice is the practitioner's own house: one record in a data folder.
type Practice struct {
	Meta
	Name         string
	Practitioner string
	Registration string
	Telephone    string
	// Emergency is the number to call, as printed on every page.
	Emergency string   `gorm:"size:24"`
	Settings  Settings `gorm:"embedded"`
}

// Settings are how the practice likes its figures.
type Settings struct {
	// Units is "metric" or "us".
	Units string `gorm:"size:8"`
	// UrineBands names the band set in use.
	UrineBands string `gorm:"size:24"`
	// OwnGravityWell, OwnGravityMinimal and OwnGravityGreat are the upper edges
	// of the practice's own bands of urine specific gravity.
	OwnGravityWell    Number `gorm:"embedded;embeddedPrefix:own_gravity_well_"`
	OwnGravityMinimal Number `gorm:"embedded;embeddedPrefix:own_gravity_minimal_"`
	OwnGravityGreat   Number `gorm:"embedded;embeddedPrefix:own_gravity_great_"`
	// DeficitAim is the default limit of the deficit at the end, %.
	DeficitAim Number `gorm:"embedded;embeddedPrefix:deficit_aim_" unit:"%"`
	// CarbohydrateAim is the carbohydrate asked for where nothing else is chosen, g/h;
	// unknown is by length and effort.
	CarbohydrateAim Number `gorm:"embedded;embeddedPrefix:carbohydrate_aim_" unit:"g/h"`
	// StepFluid and StepCarbohydrate are how much changes in a step, where it is
	// not what is usual. WholeSteps: steps are not halved where confidence is low.
	StepFluid        Number `gorm:"embedded;embeddedPrefix:step_fluid_" unit:"L/h"`
	StepCarbohydrate Number `gorm:"embedded;embeddedPrefix:step_carbohydrate_" unit:"g/h"`
	WholeSteps       bool
	// DrinkStep is how much of a drink, water too, a proposal adds or takes away at
	// once, mL; unknown is what is usual.
	DrinkStep Number `gorm:"embedded;embeddedPrefix:drink_step_" unit:"mL"`
	// FieldMethod: sweat rates are not corrected for breath and gas exchange.
	FieldMethod bool
	// ComfortableOnly: a schedule fills no break above what is comfortable.
	ComfortableOnly bool
	// Theme is "dark", "system", or empty for light.
	Theme string `gorm:"size:8"`
	// TextSize is 100, 125 or 150 %.
	TextSize int
	// PageLanguage is the language pages are printed in.
	PageLanguage string `gorm:"size:8"`
	// Language is the language of the window; empty is the system's.
	Language string `gorm:"size:8"`
	// Backup is where and how often a copy of all records is made.
	Backup Backup `gorm:"embedded"`
	// RetentionYears is how long records are kept after the last entry.
	RetentionYears int
	// Invented marks the practice that comes for trying the program.
	Invented bool
}

// Backup is where and how often a copy of all records is made by itself.
type Backup struct {
	// Folder the copies go to; empty while none are made by themselves.
	Folder string `gorm:"column:backup_folder"`
	// Days between two copies; 0 is none by itself.
	Days int `gorm:"column:backup_days"`
	// Key is the key that opens locked copies, itself locked with a passphrase; To
	// is what copies are locked for. Empty where they are not locked.
	Key string `gorm:"column:backup_key"`
	To  string `gorm:"column:backup_to"`
	// At is when the last copy was written and found whole, wherever it went; nil
	// while there is none.
	At *time.Time `gorm:"column:backed_up_at"`
}

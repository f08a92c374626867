package v1

import "time"

// Plan as of version 1.
type Plan struct {
	Meta
	AthleteID string   `gorm:"index;not null;size:36"`
	Athlete   *Athlete `gorm:"foreignKey:AthleteID;references:ID"`
	State     string   `gorm:"size:12"`
	Name      string
	Target    Target    `gorm:"embedded"`
	Basis     PlanBasis `gorm:"embedded;embeddedPrefix:basis_"`
	Test      *Test     `gorm:"foreignKey:TestID"`
	Stop      *Stop     `gorm:"foreignKey:StopID"`
	Agreement Agreement `gorm:"embedded"`
	Rules     StepRules `gorm:"embedded;embeddedPrefix:rules_"`
	Aims      Aims      `gorm:"embedded;embeddedPrefix:aims_"`
}

// Aims as of version 1.
type Aims struct {
	CarbohydrateLow  Number `gorm:"embedded;embeddedPrefix:carbohydrate_low_"`
	CarbohydrateHigh Number `gorm:"embedded;embeddedPrefix:carbohydrate_high_"`
	SodiumLow        Number `gorm:"embedded;embeddedPrefix:sodium_low_"`
	SodiumHigh       Number `gorm:"embedded;embeddedPrefix:sodium_high_"`
	Drinking         Number `gorm:"embedded;embeddedPrefix:drinking_"`
	Strength         Number `gorm:"embedded;embeddedPrefix:strength_"`
}

// StepRules as of version 1.
type StepRules struct {
	Fluid        Number `gorm:"embedded;embeddedPrefix:fluid_"`
	Carbohydrate Number `gorm:"embedded;embeddedPrefix:carbohydrate_"`
	Sessions     Number `gorm:"embedded;embeddedPrefix:sessions_"`
	PerWeek      Number `gorm:"embedded;embeddedPrefix:per_week_"`
	ClearDays    Number `gorm:"embedded;embeddedPrefix:clear_days_"`
	Bottles      string
	Held         string
	Further      string
}

// Target as of version 1.
type Target struct {
	SessionName string
	Sport       string
	Minutes     Number `gorm:"embedded;embeddedPrefix:minutes_"`
	Short       Number `gorm:"embedded;embeddedPrefix:minutes_short_"`
	Long        Number `gorm:"embedded;embeddedPrefix:minutes_long_"`
	Effort      Number `gorm:"embedded;embeddedPrefix:effort_"`
	Start       string `gorm:"size:5"`
	NextAfter   Number `gorm:"embedded;embeddedPrefix:next_after_"`
	DeficitAim  Number `gorm:"embedded;embeddedPrefix:deficit_aim_"`
	EventDate   string `gorm:"size:10"`
}

// PlanBasis as of version 1.
type PlanBasis struct {
	Kind       string `gorm:"size:12"`
	TestID     string `gorm:"index;size:36"`
	PoolIDs    string
	StopID     string `gorm:"index;size:36"`
	Air        Air    `gorm:"embedded;embeddedPrefix:air_"`
	UsedToHeat string `gorm:"size:8"`
}

// Agreement as of version 1.
type Agreement struct {
	AgreedAt  *time.Time
	AgreedBy  string
	OptionID  string `gorm:"size:36"`
	Words     string
	Physician string
	Review    string `gorm:"size:10"`
	From      string `gorm:"column:from_date;size:10"`
	Until     string `gorm:"column:until_date;size:10"`
}

// Option as of version 1.
type Option struct {
	Meta
	PlanID     string `gorm:"index;not null;size:36"`
	Plan       *Plan  `gorm:"foreignKey:PlanID;references:ID"`
	Order      int    `gorm:"column:position"`
	Kind       string `gorm:"size:12"`
	Name       string
	Salt       Number `gorm:"embedded;embeddedPrefix:salt_"`
	Importance Number `gorm:"embedded;embeddedPrefix:importance_"`
	Confidence Number `gorm:"embedded;embeddedPrefix:confidence_"`
	Words      string
}

// Item as of version 1.
type Item struct {
	Meta
	OptionID  string  `gorm:"index;not null;size:36"`
	Option    *Option `gorm:"foreignKey:OptionID;references:ID"`
	Order     int     `gorm:"column:position"`
	Role      string  `gorm:"size:8"`
	ProductID string  `gorm:"size:64"`
	Name      string
	Volume    Number `gorm:"embedded;embeddedPrefix:volume_"`
	Portions  Number `gorm:"embedded;embeddedPrefix:portions_"`
	Strength  Number `gorm:"embedded;embeddedPrefix:strength_"`
}

// Step as of version 1.
type Step struct {
	Meta
	PlanID   string  `gorm:"index;not null;size:36"`
	Plan     *Plan   `gorm:"foreignKey:PlanID;references:ID"`
	Order    int     `gorm:"column:position"`
	OptionID string  `gorm:"index;size:36"`
	Option   *Option `gorm:"foreignKey:OptionID;references:ID"`
	State    string  `gorm:"size:8"`
	From     string  `gorm:"column:from_date;size:10"`
	Sessions int
	Practise string
}

// Chance as of version 1.
type Chance struct {
	Meta
	PlanID   string `gorm:"index;not null;size:36"`
	Plan     *Plan  `gorm:"foreignKey:PlanID;references:ID"`
	Order    int    `gorm:"column:position"`
	Name     string
	AtMinute Number `gorm:"embedded;embeddedPrefix:at_minute_"`
	Seconds  Number `gorm:"embedded;embeddedPrefix:seconds_"`
	CanEat   bool
	Maybe    bool
}

// Review as of version 1.
type Review struct {
	Meta
	PlanID    string `gorm:"index;not null;size:36"`
	Plan      *Plan  `gorm:"foreignKey:PlanID;references:ID"`
	StepID    string `gorm:"index;size:36"`
	Step      *Step  `gorm:"foreignKey:StepID;references:ID"`
	Order     int    `gorm:"column:position"`
	Date      string `gorm:"size:10"`
	DoneShare Number `gorm:"embedded;embeddedPrefix:done_share_"`
	Drunk     Number `gorm:"embedded;embeddedPrefix:drunk_"`
	Stomach   Number `gorm:"embedded;embeddedPrefix:stomach_"`
	Decision  string `gorm:"size:8"`
	Note      string
	Heavier   bool
}

package v1

import "time"

// Test as of version 1.
type Test struct {
	Meta
	AthleteID string   `gorm:"index;not null;size:36"`
	Athlete   *Athlete `gorm:"foreignKey:AthleteID;references:ID"`
	State     string   `gorm:"size:12"`
	ClosedAt  *time.Time
	ClosedBy  string
	Session   Session `gorm:"embedded"`
	Air       Air     `gorm:"embedded;embeddedPrefix:air_"`
	Scale     Scale   `gorm:"embedded;embeddedPrefix:scale_"`
	Loss      Loss    `gorm:"embedded"`
	Urine     Urine   `gorm:"embedded;embeddedPrefix:urine_"`
	Feeling   Feeling `gorm:"embedded"`
	Note      string
}

// Session as of version 1.
type Session struct {
	Date        string `gorm:"size:10"`
	Place       string
	Sport       string
	Activity    string
	Start       string `gorm:"size:5"`
	End         string `gorm:"size:5"`
	EndsNextDay bool
	Played      Number `gorm:"embedded;embeddedPrefix:played_"`
	Effort      Number `gorm:"embedded;embeddedPrefix:effort_"`
	Met         Number `gorm:"embedded;embeddedPrefix:met_"`
	Power       Number `gorm:"embedded;embeddedPrefix:power_"`
	Speed       Number `gorm:"embedded;embeddedPrefix:speed_"`
	Energy      Number `gorm:"embedded;embeddedPrefix:energy_"`
	UsedToHeat  string `gorm:"size:8"`
}

// Air as of version 1.
type Air struct {
	Temperature Number `gorm:"embedded;embeddedPrefix:temperature_"`
	Humidity    Number `gorm:"embedded;embeddedPrefix:humidity_"`
	Wind        Number `gorm:"embedded;embeddedPrefix:wind_"`
	Sun         string `gorm:"size:16"`
	Altitude    Number `gorm:"embedded;embeddedPrefix:altitude_"`
	Wbgt        Number `gorm:"embedded;embeddedPrefix:wbgt_"`
	Clothing    string `gorm:"size:24"`
}

// Scale as of version 1.
type Scale struct {
	Step   Number `gorm:"embedded;embeddedPrefix:step_"`
	Before string `gorm:"size:20"`
	After  string `gorm:"size:20"`
	KitDry Number `gorm:"embedded;embeddedPrefix:kit_dry_"`
	KitWet Number `gorm:"embedded;embeddedPrefix:kit_wet_"`
	Other  bool
}

// Loss as of version 1.
type Loss struct {
	Urine        Number `gorm:"embedded;embeddedPrefix:passed_urine_"`
	NoUrine      bool
	NothingDrunk bool
	Stool        Number `gorm:"embedded;embeddedPrefix:passed_stool_"`
	NoStool      bool
	Breath       string `gorm:"size:8"`
	Exchange     string `gorm:"size:8"`
	Guess        Number `gorm:"embedded;embeddedPrefix:guess_"`
}

// Urine as of version 1.
type Urine struct {
	Gravity    Number `gorm:"embedded;embeddedPrefix:gravity_"`
	Osmolality Number `gorm:"embedded;embeddedPrefix:osmolality_"`
	Colour     Number `gorm:"embedded;embeddedPrefix:colour_"`
	When       string `gorm:"size:8"`
	NotTaken   bool
}

// Feeling as of version 1.
type Feeling struct {
	Thirst  Number `gorm:"embedded;embeddedPrefix:thirst_"`
	Stomach Number `gorm:"embedded;embeddedPrefix:stomach_"`
}

// Weighing as of version 1.
type Weighing struct {
	Meta
	TestID string `gorm:"index;not null;size:36"`
	Test   *Test  `gorm:"foreignKey:TestID;references:ID"`
	Moment string `gorm:"size:8"`
	Order  int    `gorm:"column:position"`
	Date   string `gorm:"size:10"`
	Mass   Number `gorm:"embedded;embeddedPrefix:mass_"`
}

// Bottle as of version 1.
type Bottle struct {
	Meta
	TestID    string `gorm:"index;not null;size:36"`
	Test      *Test  `gorm:"foreignKey:TestID;references:ID"`
	Order     int    `gorm:"column:position"`
	ProductID string `gorm:"size:64"`
	Name      string
	Use       string `gorm:"size:12"`
	Before    Number `gorm:"embedded;embeddedPrefix:before_"`
	After     Number `gorm:"embedded;embeddedPrefix:after_"`
	Poured    Number `gorm:"embedded;embeddedPrefix:poured_"`
	Volume    Number `gorm:"embedded;embeddedPrefix:volume_"`
	ShareLow  Number `gorm:"embedded;embeddedPrefix:share_low_"`
	ShareHigh Number `gorm:"embedded;embeddedPrefix:share_high_"`
}

// Refill as of version 1.
type Refill struct {
	Meta
	BottleID string  `gorm:"index;not null;size:36"`
	Bottle   *Bottle `gorm:"foreignKey:BottleID;references:ID"`
	Order    int     `gorm:"column:position"`
	Added    Number  `gorm:"embedded;embeddedPrefix:added_"`
}

// FoodEaten as of version 1.
type FoodEaten struct {
	Meta
	TestID    string `gorm:"index;not null;size:36"`
	Test      *Test  `gorm:"foreignKey:TestID;references:ID"`
	Order     int    `gorm:"column:position"`
	ProductID string `gorm:"size:64"`
	Name      string
	Portions  Number `gorm:"embedded;embeddedPrefix:portions_"`
	Mass      Number `gorm:"embedded;embeddedPrefix:mass_"`
}

// TableName keeps the plural the trade would use.
func (FoodEaten) TableName() string { return "foods_eaten" }

// Patch as of version 1.
type Patch struct {
	Meta
	TestID       string `gorm:"index;not null;size:36"`
	Test         *Test  `gorm:"foreignKey:TestID;references:ID"`
	Order        int    `gorm:"column:position"`
	Site         string `gorm:"size:20"`
	Side         string `gorm:"size:8"`
	On           string `gorm:"column:time_on;size:5"`
	Off          string `gorm:"column:time_off;size:5"`
	Sodium       Number `gorm:"embedded;embeddedPrefix:sodium_"`
	Potassium    Number `gorm:"embedded;embeddedPrefix:potassium_"`
	Method       string `gorm:"size:24"`
	Condition    string `gorm:"size:12"`
	AtLaboratory bool
}

package record

// Trip is a journey of one athlete or a squad.
type Trip struct {
	Meta
	Name string
	// Margin is what is packed beyond the need, %; HoursAwake those of the
	// flight there.
	Margin     Number      `gorm:"embedded;embeddedPrefix:margin_" unit:"%"`
	HoursAwake Number      `gorm:"embedded;embeddedPrefix:hours_awake_" unit:"h"`
	Travellers []Traveller `gorm:"foreignKey:TripID"`
	Stops      []Stop      `gorm:"foreignKey:TripID"`
	Supplies   []Supply    `gorm:"foreignKey:TripID"`
}

// Traveller is an athlete on a trip.
type Traveller struct {
	Meta
	TripID    ID `gorm:"index;size:36"`
	AthleteID ID `gorm:"index;size:36"`
}

// Stop is one place of a trip.
type Stop struct {
	Meta
	TripID ID   `gorm:"index;size:36"`
	Order  int  `gorm:"column:position"`
	From   Date `gorm:"column:from_date;size:10"`
	Until  Date `gorm:"column:until_date;size:10"`
	Place  string
	// City and Month name a row of the climate table; empty where the air is typed.
	City  string
	Month int
	// TimeOfDay is "afternoon" or "mean".
	TimeOfDay string `gorm:"size:12"`
	Air       Air    `gorm:"embedded;embeddedPrefix:air_"`
	// SessionsADay and Minutes of each, and effort, at this stop; see [Session] for why
	// it is not one.
	SessionsADay Number `gorm:"embedded;embeddedPrefix:sessions_a_day_"`
	Minutes      Number `gorm:"embedded;embeddedPrefix:minutes_" unit:"min"`
	Effort       Number `gorm:"embedded;embeddedPrefix:effort_"`
	// HeatDay is the day of acclimatisation on arrival; 0 is the first.
	HeatDay Number `gorm:"embedded;embeddedPrefix:heat_day_"`
	Note    string
}

// Supply is a product taken on a trip, with its lot where it is a supplement.
type Supply struct {
	Meta
	TripID    ID  `gorm:"index;size:36"`
	Order     int `gorm:"column:position"`
	ProductID ID  `gorm:"size:64"`
	Name      string
	Lot       string
	// Source is "carry", "hold" or "buy".
	Source string `gorm:"size:8"`
}

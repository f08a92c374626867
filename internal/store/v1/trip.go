package v1

// Trip as of version 1.
type Trip struct {
	Meta
	Name       string
	Margin     Number `gorm:"embedded;embeddedPrefix:margin_"`
	HoursAwake Number `gorm:"embedded;embeddedPrefix:hours_awake_"`
}

// Traveller as of version 1.
type Traveller struct {
	Meta
	TripID    string   `gorm:"index;not null;size:36"`
	Trip      *Trip    `gorm:"foreignKey:TripID;references:ID"`
	AthleteID string   `gorm:"index;not null;size:36"`
	Athlete   *Athlete `gorm:"foreignKey:AthleteID;references:ID"`
}

// Stop as of version 1.
type Stop struct {
	Meta
	TripID       string `gorm:"index;not null;size:36"`
	Trip         *Trip  `gorm:"foreignKey:TripID;references:ID"`
	Order        int    `gorm:"column:position"`
	From         string `gorm:"column:from_date;size:10"`
	Until        string `gorm:"column:until_date;size:10"`
	Place        string
	City         string
	Month        int
	TimeOfDay    string `gorm:"size:12"`
	Air          Air    `gorm:"embedded;embeddedPrefix:air_"`
	SessionsADay Number `gorm:"embedded;embeddedPrefix:sessions_a_day_"`
	Minutes      Number `gorm:"embedded;embeddedPrefix:minutes_"`
	Effort       Number `gorm:"embedded;embeddedPrefix:effort_"`
	HeatDay      Number `gorm:"embedded;embeddedPrefix:heat_day_"`
	Note         string
}

// Supply as of version 1.
type Supply struct {
	Meta
	TripID    string `gorm:"index;not null;size:36"`
	Trip      *Trip  `gorm:"foreignKey:TripID;references:ID"`
	Order     int    `gorm:"column:position"`
	ProductID string `gorm:"size:64"`
	Name      string
	Lot       string
	Source    string `gorm:"size:8"`
}

package v1

// Group as of version 1.
type Group struct {
	Meta
	Name string
}

// Athlete as of version 1.
type Athlete struct {
	Meta
	Name              string
	Born              string `gorm:"size:10"`
	Sex               string `gorm:"size:8"`
	Height            Number `gorm:"embedded;embeddedPrefix:height_"`
	UsualMass         Number `gorm:"embedded;embeddedPrefix:usual_mass_"`
	Sport             string
	Position          string
	Acclimatised      string `gorm:"size:8"`
	UsualDrinking     Number `gorm:"embedded;embeddedPrefix:usual_drinking_"`
	Mouthful          Number `gorm:"embedded;embeddedPrefix:mouthful_"`
	Guardian          string
	Assent            string `gorm:"size:10"`
	MassHidden        bool
	MassHiddenSettled bool
	Note              string
}

// Flag as of version 1.
type Flag struct {
	Meta
	AthleteID string   `gorm:"index;not null;size:36"`
	Athlete   *Athlete `gorm:"foreignKey:AthleteID;references:ID"`
	Kind      string   `gorm:"size:32"`
	Note      string
	Physician string
}

// Consent as of version 1.
type Consent struct {
	Meta
	AthleteID string   `gorm:"index;not null;size:36"`
	Athlete   *Athlete `gorm:"foreignKey:AthleteID;references:ID"`
	Purpose   string   `gorm:"size:16"`
	Given     string   `gorm:"size:10"`
	Until     string   `gorm:"size:10"`
	Withdrawn string   `gorm:"size:10"`
	GivenBy   string
}

// Membership as of version 1.
type Membership struct {
	Meta
	AthleteID string   `gorm:"index;not null;size:36"`
	Athlete   *Athlete `gorm:"foreignKey:AthleteID;references:ID"`
	GroupID   string   `gorm:"index;not null;size:36"`
	Group     *Group   `gorm:"foreignKey:GroupID;references:ID"`
}

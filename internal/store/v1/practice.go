package v1

// Practice as of version 1.
type Practice struct {
	Meta
	Name         string
	Practitioner string
	Registration string
	Telephone    string
	Emergency    string   `gorm:"size:24"`
	Settings     Settings `gorm:"embedded"`
}

// Settings as of version 1.
type Settings struct {
	Units             string `gorm:"size:8"`
	UrineBands        string `gorm:"size:24"`
	OwnGravityWell    Number `gorm:"embedded;embeddedPrefix:own_gravity_well_"`
	OwnGravityMinimal Number `gorm:"embedded;embeddedPrefix:own_gravity_minimal_"`
	OwnGravityGreat   Number `gorm:"embedded;embeddedPrefix:own_gravity_great_"`
	DeficitAim        Number `gorm:"embedded;embeddedPrefix:deficit_aim_"`
	Theme             string `gorm:"size:8"`
	TextSize          int
	PageLanguage      string `gorm:"size:8"`
	RetentionYears    int
	Invented          bool
}

// Product as of version 1.
type Product struct {
	Meta
	Name        string
	Form        string `gorm:"size:12"`
	Replaces    string `gorm:"size:64"`
	Density     Number `gorm:"embedded;embeddedPrefix:density_"`
	PortionName string
	PortionMass Number      `gorm:"embedded;embeddedPrefix:portion_mass_"`
	Per100      Composition `gorm:"embedded;embeddedPrefix:per100_"`
	Source      string
	Note        string
}

// Composition as of version 1.
type Composition struct {
	Water        Number `gorm:"embedded;embeddedPrefix:water_"`
	Energy       Number `gorm:"embedded;embeddedPrefix:energy_"`
	Carbohydrate Number `gorm:"embedded;embeddedPrefix:carbohydrate_"`
	Fibre        Number `gorm:"embedded;embeddedPrefix:fibre_"`
	Available    Number `gorm:"embedded;embeddedPrefix:available_"`
	Sugars       Number `gorm:"embedded;embeddedPrefix:sugars_"`
	Glucose      Number `gorm:"embedded;embeddedPrefix:glucose_"`
	Fructose     Number `gorm:"embedded;embeddedPrefix:fructose_"`
	Sucrose      Number `gorm:"embedded;embeddedPrefix:sucrose_"`
	Lactose      Number `gorm:"embedded;embeddedPrefix:lactose_"`
	Maltose      Number `gorm:"embedded;embeddedPrefix:maltose_"`
	Starch       Number `gorm:"embedded;embeddedPrefix:starch_"`
	Maltodextrin Number `gorm:"embedded;embeddedPrefix:maltodextrin_"`
	Sodium       Number `gorm:"embedded;embeddedPrefix:sodium_"`
	Potassium    Number `gorm:"embedded;embeddedPrefix:potassium_"`
	Osmolality   Number `gorm:"embedded;embeddedPrefix:osmolality_"`
}

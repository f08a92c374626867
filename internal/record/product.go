package record

// Product is a drink or food of the practitioner's own, or their correction
// of a generic one. Composition is per 100 g; an unknown part stays unknown.
type Product struct {
	Meta
	Name string
	// Form is "drink", "powder", "gel", "solid" or "semi-solid".
	Form string `gorm:"size:12"`
	// Replaces is the id of the generic product this one corrects, or empty.
	Replaces    string `gorm:"size:64"`
	Density     Number `gorm:"embedded;embeddedPrefix:density_"` // g/mL
	PortionName string
	PortionMass Number      `gorm:"embedded;embeddedPrefix:portion_mass_"` // g
	Per100      Composition `gorm:"embedded;embeddedPrefix:per100_"`
	Source      string
	Note        string
}

// Composition is what 100 g hold, in g, sodium and potassium in mg, energy in kcal.
type Composition struct {
	Water        Number `gorm:"embedded;embeddedPrefix:water_"`
	Energy       Number `gorm:"embedded;embeddedPrefix:energy_"`
	Carbohydrate Number `gorm:"embedded;embeddedPrefix:carbohydrate_"` // fibre counted
	Fibre        Number `gorm:"embedded;embeddedPrefix:fibre_"`
	Glucose      Number `gorm:"embedded;embeddedPrefix:glucose_"`
	Fructose     Number `gorm:"embedded;embeddedPrefix:fructose_"`
	Sucrose      Number `gorm:"embedded;embeddedPrefix:sucrose_"`
	Lactose      Number `gorm:"embedded;embeddedPrefix:lactose_"`
	Maltose      Number `gorm:"embedded;embeddedPrefix:maltose_"`
	Starch       Number `gorm:"embedded;embeddedPrefix:starch_"` // maltodextrin too
	Sodium       Number `gorm:"embedded;embeddedPrefix:sodium_"`
	Potassium    Number `gorm:"embedded;embeddedPrefix:potassium_"`
}

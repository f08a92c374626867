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
	Density     Number `gorm:"embedded;embeddedPrefix:density_" unit:"g/mL"` // g/mL
	PortionName string
	PortionMass Number      `gorm:"embedded;embeddedPrefix:portion_mass_" unit:"g"` // g
	Per100      Composition `gorm:"embedded;embeddedPrefix:per100_"`
	Source      string
	Note        string
}

// Composition is what 100 g hold, in g, sodium and potassium in mg, energy in kcal.
type Composition struct {
	Water        Number `gorm:"embedded;embeddedPrefix:water_" unit:"g"`
	Energy       Number `gorm:"embedded;embeddedPrefix:energy_" unit:"kcal"`
	Carbohydrate Number `gorm:"embedded;embeddedPrefix:carbohydrate_" unit:"g"` // fibre counted
	Fibre        Number `gorm:"embedded;embeddedPrefix:fibre_" unit:"g"`
	// Available is the carbohydrate without fibre, as labels print it.
	Available Number `gorm:"embedded;embeddedPrefix:available_" unit:"g"`
	// Sugars is the sum of the free sugars, as labels print it.
	Sugars       Number `gorm:"embedded;embeddedPrefix:sugars_" unit:"g"`
	Glucose      Number `gorm:"embedded;embeddedPrefix:glucose_" unit:"g"`
	Fructose     Number `gorm:"embedded;embeddedPrefix:fructose_" unit:"g"`
	Sucrose      Number `gorm:"embedded;embeddedPrefix:sucrose_" unit:"g"`
	Lactose      Number `gorm:"embedded;embeddedPrefix:lactose_" unit:"g"`
	Maltose      Number `gorm:"embedded;embeddedPrefix:maltose_" unit:"g"`
	Starch       Number `gorm:"embedded;embeddedPrefix:starch_" unit:"g"`
	Maltodextrin Number `gorm:"embedded;embeddedPrefix:maltodextrin_" unit:"g"`
	Sodium       Number `gorm:"embedded;embeddedPrefix:sodium_" unit:"mg"`
	Potassium    Number `gorm:"embedded;embeddedPrefix:potassium_" unit:"mg"`
	Osmolality   Number `gorm:"embedded;embeddedPrefix:osmolality_" unit:"mOsm/L"` // as stated
}

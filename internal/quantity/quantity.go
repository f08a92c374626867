// Package quantity gives the numbers of a sweat test their units.
//
// Each measured kind has its own type, so that kilograms cannot be added to
// litres by accident; turning one kind into another is a named conversion.
// [Unit] names the unit a person reads or types; [Convert] goes between units
// of one kind, and [Parse] reads what a person typed, with comma or point.
package quantity

// Kilograms is a mass in kg.
type Kilograms float64

// Grams is a mass in g.
type Grams float64

// Milligrams is a mass in mg.
type Milligrams float64

// Litres is a volume in L.
type Litres float64

// Millilitres is a volume in mL.
type Millilitres float64

// LitresPerHour is a rate in L/h.
type LitresPerHour float64

// GramsPerHour is a rate in g/h.
type GramsPerHour float64

// MilligramsPerHour is a rate in mg/h.
type MilligramsPerHour float64

// MillimolesPerLitre is a concentration in mmol/L.
type MillimolesPerLitre float64

// Minutes is a length of time in min.
type Minutes float64

// Celsius is a temperature in degrees Celsius.
type Celsius float64

// Percent is a share in hundredths: 2 means 2 %.
type Percent float64

// Kilopascals is a pressure in kPa.
type Kilopascals float64

// MetresPerSecond is a speed in m/s.
type MetresPerSecond float64

// Metres is a length or a height in m.
type Metres float64

// Watts is a power in W.
type Watts float64

// WattsPerSquareMetre is a power per body area in W/m².
type WattsPerSquareMetre float64

// Kilocalories is an energy in kcal.
type Kilocalories float64

// Grams returns the mass in grams.
func (m Kilograms) Grams() Grams { return Grams(m * 1000) }

// Kilograms returns the mass in kilograms.
func (m Grams) Kilograms() Kilograms { return Kilograms(m / 1000) }

// Milligrams returns the mass in milligrams.
func (m Grams) Milligrams() Milligrams { return Milligrams(m * 1000) }

// Grams returns the mass in grams.
func (m Milligrams) Grams() Grams { return Grams(m / 1000) }

// Millilitres returns the volume in millilitres.
func (v Litres) Millilitres() Millilitres { return Millilitres(v * 1000) }

// Litres returns the volume in litres.
func (v Millilitres) Litres() Litres { return Litres(v / 1000) }

// Hours returns the time in hours.
func (t Minutes) Hours() float64 { return float64(t) / 60 }

package fuel

import (
	"ebbwell/internal/evidence"
)

// Solute is a dissolved substance whose particles are counted.
type Solute int

// The solutes.
const (
	Glucose Solute = iota // and fructose
	Sucrose               // and lactose, maltose
	SodiumChloride
	PotassiumChloride
	SodiumCitrate // trisodium citrate dihydrate
	Maltodextrin  // of usual dextrose equivalent
)

// Osmoles is the ideal number of particles in one gram, mOsm: the number of
// ions over the molar mass. A maltodextrin counts as glucose by its dextrose
// equivalent. Zero for an unknown solute.
func (s Solute) Osmoles() float64 {
	switch s {
	case Glucose:
		return 1000 / evidence.GlucoseMolarMass
	case Sucrose:
		return 1000 / evidence.SucroseMolarMass
	case SodiumChloride:
		return 1000 * evidence.SaltIons / evidence.SaltMolarMass
	case PotassiumChloride:
		return 1000 * evidence.SaltIons / evidence.PotassiumSaltMass
	case SodiumCitrate:
		return 1000 * evidence.CitrateIons / evidence.CitrateMolarMass
	case Maltodextrin:
		return 1000 / evidence.GlucoseMolarMass * evidence.DextroseEquivalent / 100
	}
	return 0
}

// osmolesPer100 estimates mOsm in 100 g of a drink: its sugars, and sodium and
// potassium each with one partner ion. Unknown when the kind of any sugar or
// the sodium is.
func (p Product) osmolesPer100() Content {
	c := p.Per100
	if c.Osmolality.Known && p.Density.Known && p.Density.Value > 0 {
		return Of(c.Osmolality.Value * 100 / p.Density.Value / 1000)
	}
	split := c.Split()
	available := c.AvailableCarbohydrate()
	if !available.Known || !c.Sodium.Known || split.Unknown > available.Value*unassignedShare {
		return Content{}
	}
	s := c.Sugars
	sugars := (s.Glucose.Value+s.Fructose.Value)*Glucose.Osmoles() +
		(s.Sucrose.Value+s.Lactose.Value+s.Maltose.Value)*Sucrose.Osmoles() +
		s.Maltodextrin.Value*Maltodextrin.Osmoles()
	ions := evidence.SaltIons * (c.Sodium.Value/evidence.SodiumMolarMass + c.Potassium.Value/evidence.PotassiumMolarMass)
	return Of(sugars + ions)
}

// unassignedShare is the share of carbohydrate that may stay unassigned before
// an osmolality is no longer given: one part in a hundred.
const unassignedShare = 1.0 / 100

// OsmolalityBand names where an osmolality lies.
type OsmolalityBand string

// The bands, and the name of their set: European Union advice on drinks that
// call themselves isotonic.
const (
	Hypotonic  OsmolalityBand = "hypotonic"
	Isotonic   OsmolalityBand = "isotonic"
	Hypertonic OsmolalityBand = "hypertonic"

	OsmolalitySet = "eu-isotonic"
)

// BandOf returns the band of an osmolality in mOsm/kg (or, for dilute drinks,
// mOsm/L) in the set [OsmolalitySet]: isotonic from 270 to 330.
func BandOf(osmolality float64) OsmolalityBand {
	switch {
	case osmolality < evidence.IsotonicLow:
		return Hypotonic
	case osmolality > evidence.IsotonicHigh:
		return Hypertonic
	}
	return Isotonic
}

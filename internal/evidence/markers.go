package evidence

import (
	"math"

	"ebbwell/internal/quantity"
)

// Edges of the urine and body-mass markers.
const (
	AcsmGravity        = 1.020
	AcsmOsmolality     = 700.0 // mOsm/kg
	NataGravityWell    = 1.010 // below it
	NataGravityMinimal = 1.020
	NataGravityGreat   = 1.030
	NataColourWell     = 2.0
	NataColourMinimal  = 4.0
	NataColourGreat    = 6.0
	NataMassWell       = 1.0 // % of body mass, either side
	NataMassMinimal    = 3.0
	NataMassGreat      = 5.0
)

// What the markers are worth.
const (
	GravitySpecificityWomen = 19.5 // %, against serum osmolality
	GravitySpecificityMen   = 28.1
	DimLightLow             = 1.5 // steps that a colour reads darker in dim light
	DimLightHigh            = 2.0
	MorningMassCV           = 0.66 // % from day to day
	MorningsNeeded          = 3.0  // mornings in a baseline
)

// Marker names a marker of hydration.
type Marker string

// The markers.
const (
	GravityMarker     Marker = "gravity"
	OsmolalityMarker  Marker = "osmolality"
	ColourMarker      Marker = "colour"
	MorningMassMarker Marker = "morning-mass"
)

// Band is one step of a marker: up to and with High, or below it when Open.
type Band struct {
	// Code names the band; the catalogue of texts has its word.
	Code string
	High float64
	Open bool
}

// Scale is the bands of one marker, rising; the last reaches to infinity.
type Scale struct {
	Marker Marker
	Bands  []Band
	Sure   Sureness
}

// BandSet is a named choice of bands. Texts and practices differ, so a band is
// never shown without its set and source.
type BandSet struct {
	ID     string
	Source Citation
	Scales []Scale
}

// The sets that come with the program; a practice can bring its own.
const (
	SetACSM = "acsm-2007"
	SetNATA = "nata-2000"
	SetOwn  = "own"
)

// The band codes.
const (
	BandEuhydrated  = "euhydrated"
	BandAbove       = "above-euhydrated"
	BandWell        = "well-hydrated"
	BandMinimal     = "minimal"
	BandSignificant = "significant"
	BandSerious     = "serious"
	BandHeavier     = "heavier"
)

// BandSets lists the sets that come with the program.
func BandSets() []BandSet { return []BandSet{acsmBands(), nataBands()} }

// BandSetNamed returns a set by its id; ok is false when there is none.
func BandSetNamed(id string) (set BandSet, ok bool) {
	for _, s := range BandSets() {
		if s.ID == id {
			return s, true
		}
	}
	return BandSet{}, false
}

// Band places a value of a marker; ok is false when the set has no bands for
// the marker or the value is not a number.
func (s BandSet) Band(m Marker, x float64) (code string, sure Sureness, ok bool) {
	for _, scale := range s.Scales {
		if scale.Marker != m || math.IsNaN(x) {
			continue
		}
		for _, b := range scale.Bands {
			if x < b.High || (x == b.High && !b.Open) {
				return b.Code, scale.Sure, true
			}
		}
	}
	return "", "", false
}

// acsmBands is the single cut of the position stand.
func acsmBands() BandSet {
	return BandSet{ID: SetACSM, Source: acsmFluid2007(), Scales: []Scale{
		{GravityMarker, []Band{{BandEuhydrated, AcsmGravity, false}, {BandAbove, math.Inf(1), false}}, Second},
		{OsmolalityMarker, []Band{{BandEuhydrated, AcsmOsmolality, false}, {BandAbove, math.Inf(1), false}}, Memory},
	}}
}

// nataBands are the four steps of the athletic trainers; its change of body
// mass runs from loss to gain.
func nataBands() BandSet {
	end := math.Inf(1)
	return BandSet{ID: SetNATA, Source: nata2000(), Scales: []Scale{
		{GravityMarker, []Band{
			{BandWell, NataGravityWell, true}, {BandMinimal, NataGravityMinimal, false},
			{BandSignificant, NataGravityGreat, false}, {BandSerious, end, false},
		}, Read},
		{ColourMarker, []Band{
			{BandWell, NataColourWell, false}, {BandMinimal, NataColourMinimal, false},
			{BandSignificant, NataColourGreat, false}, {BandSerious, end, false},
		}, Memory},
		{MorningMassMarker, []Band{
			{BandSerious, -NataMassGreat, true}, {BandSignificant, -NataMassMinimal, true},
			{BandMinimal, -NataMassWell, true}, {BandWell, NataMassWell, false}, {BandHeavier, end, false},
		}, Memory},
	}}
}

// markerEntries lists the markers.
func markerEntries() []Entry {
	acsm, nata := acsmFluid2007(), nata2000()
	lints := Citation{Short: "Lints et al.", Full: "Lints et al., Translational Journal of the ACSM, doi 10.1249/TJX.0000000000000281"}
	dim := Citation{Short: "J Athl Train 2022", Full: "Journal of Athletic Training 2022;57:191"}
	morning := Citation{Short: "Cheuvront et al. 2004", Full: "Cheuvront et al. 2004, International Journal of Sport Nutrition and Exercise Metabolism 14:532"}
	pc, osm := quantity.PerCent, quantity.MilliosmolePerKilogram
	return []Entry{
		{ID: "marker.acsm.gravity", Value: AcsmGravity, Source: acsm, Sure: Second},
		{ID: "marker.acsm.osmolality", Value: AcsmOsmolality, Unit: osm, Source: acsm, Sure: Memory},
		{ID: "marker.nata.gravity.well", Value: NataGravityWell, Source: nata, Sure: Read},
		{ID: "marker.nata.gravity.minimal", Value: NataGravityMinimal, Source: nata, Sure: Read},
		{ID: "marker.nata.gravity.significant", Value: NataGravityGreat, Source: nata, Sure: Read},
		{ID: "marker.nata.colour.well", Value: NataColourWell, Source: nata, Sure: Memory},
		{ID: "marker.nata.colour.minimal", Value: NataColourMinimal, Source: nata, Sure: Memory},
		{ID: "marker.nata.colour.significant", Value: NataColourGreat, Source: nata, Sure: Memory},
		{ID: "marker.nata.mass.well", Value: NataMassWell, Unit: pc, Source: nata, Sure: Memory},
		{ID: "marker.nata.mass.minimal", Value: NataMassMinimal, Unit: pc, Source: nata, Sure: Memory},
		{ID: "marker.nata.mass.significant", Value: NataMassGreat, Unit: pc, Source: nata, Sure: Memory},
		{ID: "marker.gravity.specificity.women", Value: GravitySpecificityWomen, Unit: pc, Source: lints, Sure: Read},
		{ID: "marker.gravity.specificity.men", Value: GravitySpecificityMen, Unit: pc, Source: lints, Sure: Read},
		{ID: "marker.colour.dim-light.low", Value: DimLightLow, Source: dim, Sure: Read},
		{ID: "marker.colour.dim-light.high", Value: DimLightHigh, Source: dim, Sure: Read},
		{ID: "marker.morning-mass.cv", Value: MorningMassCV, Unit: pc, Source: morning, Sure: Memory},
		{ID: "marker.morning-mass.mornings", Value: MorningsNeeded, Source: ownProposal(), Sure: Proposal},
	}
}

// nata2000 is the position statement of the athletic trainers.
func nata2000() Citation {
	return Citation{Short: "NATA 2000", Full: "Casa et al. 2000, Journal of Athletic Training 35:212"}
}

package evidence

import "ebbwell/internal/quantity"

// The fields of a product's label and of a practice's own settings.
const (
	LabelGrams      Field = "grams on a label"
	LabelMilligrams Field = "milligrams on a label"
	LabelEnergy     Field = "energy on a label"
	LabelOsmolality Field = "stated osmolality"
	PortionMass     Field = "portion mass"
	PortionVolume   Field = "portion volume"
	MadeUpVolume    Field = "volume made up"
	RetentionYears  Field = "retention"
)

// labelLimits lists the limits of these fields. They are judgement: what a
// portion of a drink, a bar or a powder can hold.
func labelLimits() []limitRow {
	return []limitRow{
		{LabelGrams, quantity.Gram, span{0, 120}, span{0, 2000}, Proposal},
		{LabelMilligrams, quantity.Milligram, span{0, 2500}, span{0, 40000}, Proposal},
		{LabelEnergy, quantity.Kilocalorie, span{0, 900}, span{0, 8000}, Proposal},
		{LabelOsmolality, quantity.MilliosmolePerLitre, span{10, 800}, span{1, 5000}, Proposal},
		{PortionMass, quantity.Gram, span{5, 600}, span{0.5, 5000}, Proposal},
		{PortionVolume, quantity.Millilitre, span{50, 1500}, span{5, 12000}, Proposal},
		{MadeUpVolume, quantity.Millilitre, span{200, 5000}, span{50, 50000}, Proposal},
		{RetentionYears, quantity.None, span{3, 30}, span{1, 100}, Proposal},
	}
}

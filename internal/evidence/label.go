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
func labelLimits() []Limit {
	r := func(low, high float64) quantity.Range { return quantity.Range{Low: low, High: high} }
	return []Limit{
		{LabelGrams, quantity.Gram, r(0, 120), r(0, 2000), Proposal},
		{LabelMilligrams, quantity.Milligram, r(0, 2500), r(0, 40000), Proposal},
		{LabelEnergy, quantity.Kilocalorie, r(0, 900), r(0, 8000), Proposal},
		{LabelOsmolality, quantity.MilliosmolePerLitre, r(10, 800), r(1, 5000), Proposal},
		{PortionMass, quantity.Gram, r(5, 600), r(0.5, 5000), Proposal},
		{PortionVolume, quantity.Millilitre, r(50, 1500), r(5, 12000), Proposal},
		{MadeUpVolume, quantity.Millilitre, r(200, 5000), r(50, 50000), Proposal},
		{RetentionYears, quantity.None, r(3, 30), r(1, 100), Proposal},
	}
}

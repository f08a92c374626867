package evidence

import "ebbwell/internal/quantity"

// From a patch to the whole body: slope and intercept in mmol/L.
const (
	ForearmSlope     = 0.57
	ForearmIntercept = 11.05
	ForearmFrom      = 12.6 // mmol/L raw, the range it was applied over
	ForearmTo        = 104.8
	ThighSlope       = 0.75
	ThighIntercept   = 11.37
	FiveSlope        = 0.68
	FiveIntercept    = 0.44
	// FiveSiteLimits are the 95 % limits taken for the five-site equation,
	// for which none are published here: as wide as the thigh's.
	FiveSiteLimits = 13.0
)

// Sodium, salt and labels.
const (
	SodiumMolarMass    = 22.990 // mg per mmol
	SodiumInSalt       = 393.4  // mg of sodium in 1 g of sodium chloride
	LabelSaltPerSodium = 2.5    // salt on a label of the European Union per sodium
)

// Bands of sodium in sweat, mmol/L. The published edges are for a raw forearm
// value; carried to the whole body they are the second pair, and a whole-body
// value is never held against the first.
const (
	RawForearmLow    = 30.0
	RawForearmHigh   = 60.0
	WholeBodyTopEdge = 45.0
)

// Holding plasma sodium, and when sodium matters.
const (
	HoldPlasma         = 159.0 // mmol per litre of loss not replaced: (140 + 23.8) / 1.03
	SweatPotassium     = 4.0   // mmol/L, where it was not measured
	SweatPotassiumSD   = 0.7
	HoldFromShare      = 0.8  // of the loss replaced
	HoldFromSodium     = 40.0 // mmol/L, whole body
	SodiumMattersRate  = 1.2  // L/h
	SodiumMattersAfter = 120.0
	ReplacementLow     = 20.0 // mmol/L in a drink
	ReplacementHigh    = 50.0
	PatchOnFrom        = 20.0 // min after the start
	PatchOnTo          = 30.0
)

// Site is where a patch sat.
type Site string

// The sites of a patch.
const (
	ForearmDorsal  Site = "forearm-dorsal"
	ForearmVentral Site = "forearm-ventral"
	UpperArm       Site = "upper-arm"
	Chest          Site = "chest"
	UpperBack      Site = "upper-back"
	Forehead       Site = "forehead"
	Thigh          Site = "thigh"
	Calf           Site = "calf"
	// FiveSiteMean is the mean of forearm, back, chest, forehead and thigh
	// weighted by local sweat rate and area; not a plain mean of five patches.
	FiveSiteMean Site = "five-site-mean"
)

// SiteAgreement is how far the sodium of a site lies from the whole body's:
// site minus whole body, mean and half width of the 95 % limits, mmol/L, before
// and after that study's equation for the site.
type SiteAgreement struct {
	Site                Site
	RawBias, RawLimits  float64
	Bias, Limits        float64
	Equation            bool // an equation is known here
	Slope, Intercept    float64
	EquationID          string
	AppliedLow, Applied float64 // raw range the equation was applied over; zero when not given
}

// SiteAgreements lists the sites with published limits of agreement (n = 49),
// and the five-site mean. Sites that are not listed have none here.
func SiteAgreements() []SiteAgreement {
	return []SiteAgreement{
		{Site: ForearmDorsal, RawBias: 10, RawLimits: 20, Bias: 3, Limits: 14, Equation: true,
			Slope: ForearmSlope, Intercept: ForearmIntercept, EquationID: "sodium.forearm.slope", AppliedLow: ForearmFrom, Applied: ForearmTo},
		{Site: ForearmVentral, RawBias: 0, RawLimits: 19, Bias: 4, Limits: 12},
		{Site: UpperArm, RawBias: 9, RawLimits: 20, Bias: 0, Limits: 14},
		{Site: Chest, RawBias: 22, RawLimits: 25, Bias: 2, Limits: 17},
		{Site: UpperBack, RawBias: 23, RawLimits: 24, Bias: -2, Limits: 16},
		{Site: Thigh, RawBias: 0, RawLimits: 15, Bias: 5, Limits: 13, Equation: true,
			Slope: ThighSlope, Intercept: ThighIntercept, EquationID: "sodium.thigh.slope"},
		{Site: Calf, RawBias: -4, RawLimits: 18, Bias: 4, Limits: 15},
		{Site: FiveSiteMean, Limits: FiveSiteLimits, Equation: true,
			Slope: FiveSlope, Intercept: FiveIntercept, EquationID: "sodium.five-site.slope"},
	}
}

// AgreementOf returns the row of a site; ok is false when there is none.
func AgreementOf(s Site) (row SiteAgreement, ok bool) {
	for _, r := range SiteAgreements() {
		if r.Site == s {
			return r, true
		}
	}
	return SiteAgreement{}, false
}

// Method is how the sodium of a patch was measured.
type Method string

// The methods; each has its own error.
const (
	DirectElectrode   Method = "direct-electrode"
	IndirectElectrode Method = "indirect-electrode"
	FlamePhotometry   Method = "flame-photometry"
	Conductivity      Method = "conductivity"
	IonChromatography Method = "ion-chromatography"
)

// Coefficients of variation against ion chromatography.
const (
	DirectElectrodeCV   = 0.039
	FlamePhotometryCV   = 0.069
	IndirectElectrodeCV = 0.076
	ConductivityCV      = 0.123
)

// MethodCV is the coefficient of variation of a method against ion
// chromatography; zero for that method itself. An unknown method counts as the
// worst of the known ones, and known is false.
func MethodCV(m Method) (cv float64, known bool) {
	switch m {
	case IonChromatography:
		return 0, true
	case DirectElectrode:
		return DirectElectrodeCV, true
	case FlamePhotometry:
		return FlamePhotometryCV, true
	case IndirectElectrode:
		return IndirectElectrodeCV, true
	case Conductivity:
		return ConductivityCV, true
	}
	return ConductivityCV, false
}

// sodiumEntries lists sodium in sweat.
func sodiumEntries() []Entry {
	list := equationEntries()
	list = append(list, agreementEntries()...)
	list = append(list, saltEntries()...)
	return append(list, holdEntries()...)
}

// equationEntries lists the three equations.
func equationEntries() []Entry {
	mmol := quantity.MillimolePerLitre
	raw := quantity.Range{Low: ForearmFrom, High: ForearmTo}
	thigh := Citation{Short: "Baker et al. 2009", Full: "Baker et al. 2009, Journal of Applied Physiology 107:887"}
	lara := Citation{Short: "Lara et al. 2016", Full: "Lara et al. 2016, Journal of the International Society of Sports Nutrition 13:31"}
	return []Entry{
		{ID: "sodium.forearm.slope", Value: ForearmSlope, Valid: raw, Source: baker2016(), Sure: Read},
		{ID: "sodium.forearm.intercept", Value: ForearmIntercept, Unit: mmol, Valid: raw, Source: baker2016(), Sure: Read},
		{ID: "sodium.forearm.from", Value: ForearmFrom, Unit: mmol, Source: baker2016(), Sure: Read},
		{ID: "sodium.forearm.to", Value: ForearmTo, Unit: mmol, Source: baker2016(), Sure: Read},
		{ID: "sodium.thigh.slope", Value: ThighSlope, Source: thigh, Sure: Read},
		{ID: "sodium.thigh.intercept", Value: ThighIntercept, Unit: mmol, Source: thigh, Sure: Read},
		{ID: "sodium.five-site.slope", Value: FiveSlope, Source: thigh, Sure: Read},
		{ID: "sodium.five-site.intercept", Value: FiveIntercept, Unit: mmol, Source: thigh, Sure: Read},
		{ID: "sodium.five-site.limits", Value: FiveSiteLimits, Unit: mmol, Source: ownProposal(), Sure: Proposal},
		{ID: "sodium.band.forearm.low", Value: RawForearmLow, Unit: mmol, Source: lara, Sure: Read},
		{ID: "sodium.band.forearm.high", Value: RawForearmHigh, Unit: mmol, Source: lara, Sure: Read},
		{ID: "sodium.band.whole-body.high", Value: WholeBodyTopEdge, Unit: mmol, Source: lara, Sure: Derived},
	}
}

// agreementEntries lists the limits of agreement and the error of the methods.
func agreementEntries() []Entry {
	mmol := quantity.MillimolePerLitre
	goulet := Citation{Short: "Goulet et al. 2017", Full: "Goulet et al. 2017, Applied Physiology, Nutrition, and Metabolism 42:861"}
	var list []Entry
	for _, r := range SiteAgreements() {
		if r.Site == FiveSiteMean {
			continue
		}
		id := "sodium.site." + string(r.Site)
		list = append(list,
			Entry{ID: id + ".raw-bias", Value: r.RawBias, Unit: mmol, Source: baker2020(), Sure: Read},
			Entry{ID: id + ".raw-limits", Value: r.RawLimits, Unit: mmol, Source: baker2020(), Sure: Read},
			Entry{ID: id + ".bias", Value: r.Bias, Unit: mmol, Source: baker2020(), Sure: Read},
			Entry{ID: id + ".limits", Value: r.Limits, Unit: mmol, Source: baker2020(), Sure: Read},
		)
	}
	return append(list,
		Entry{ID: "sodium.method.direct-electrode", Value: DirectElectrodeCV, Source: goulet, Sure: Read},
		Entry{ID: "sodium.method.flame-photometry", Value: FlamePhotometryCV, Source: goulet, Sure: Read},
		Entry{ID: "sodium.method.indirect-electrode", Value: IndirectElectrodeCV, Source: goulet, Sure: Read},
		Entry{ID: "sodium.method.conductivity", Value: ConductivityCV, Source: goulet, Sure: Read},
	)
}

// saltEntries lists salt arithmetic.
func saltEntries() []Entry {
	molar := Citation{Code: "molar-salt"}
	label := Citation{Short: "Regulation (EU) 1169/2011", Full: "Regulation (EU) No 1169/2011, annex I: salt = sodium x 2.5"}
	return []Entry{
		{ID: "sodium.molar-mass", Value: SodiumMolarMass, Unit: "mg/mmol", Source: molar, Sure: Read},
		{ID: "sodium.in-salt", Value: SodiumInSalt, Unit: "mg/g", Source: molar, Sure: Read},
		{ID: "sodium.label-salt", Value: LabelSaltPerSodium, Source: label, Sure: Read},
	}
}

// holdEntries lists what holds plasma sodium, and when sodium matters.
func holdEntries() []Entry {
	mmol := quantity.MillimolePerLitre
	mccubbin := Citation{Short: "McCubbin 2022", Full: "McCubbin 2022, European Journal of Sport Science"}
	joint := Citation{Short: "ACSM/AND/DC 2016", Full: "Thomas, Erdman, Burke 2016, Medicine and Science in Sports and Exercise 48:543"}
	efsa := Citation{Short: "EFSA 2011", Full: "EFSA Journal 2011;9(6):2211"}
	potassium := Citation{Code: "potassium"}
	return []Entry{
		{ID: "sodium.hold", Value: HoldPlasma, Unit: mmol, Source: nguyenKurtz(), Sure: Derived},
		{ID: "sodium.hold.share", Value: HoldFromShare, Source: mccubbin, Sure: Read},
		{ID: "sodium.hold.concentration", Value: HoldFromSodium, Unit: mmol, Source: mccubbin, Sure: Read},
		{ID: "sodium.potassium", Value: SweatPotassium, Unit: mmol, Source: ownProposal(), Sure: Proposal},
		{ID: "sodium.potassium.sd", Value: SweatPotassiumSD, Unit: mmol, Source: potassium, Sure: Read},
		{ID: "sodium.matters.rate", Value: SodiumMattersRate, Unit: quantity.LitrePerHour, Source: joint, Sure: Memory},
		{ID: "sodium.matters.after", Value: SodiumMattersAfter, Unit: quantity.Minute, Source: joint, Sure: Memory},
		{ID: "sodium.drink.low", Value: ReplacementLow, Unit: mmol, Source: efsa, Sure: Read},
		{ID: "sodium.drink.high", Value: ReplacementHigh, Unit: mmol, Source: efsa, Sure: Read},
		{ID: "sodium.patch.on.from", Value: PatchOnFrom, Unit: quantity.Minute, Source: baker2017(), Sure: Read},
		{ID: "sodium.patch.on.to", Value: PatchOnTo, Unit: quantity.Minute, Source: baker2017(), Sure: Read},
	}
}

// baker2016 gives the forearm equation and the group of 506 athletes.
func baker2016() Citation {
	return Citation{Short: "Baker et al. 2016", Full: "Baker et al. 2016, Journal of Sports Sciences 34:358"}
}

// baker2017 is the review of field methods.
func baker2017() Citation {
	return Citation{Short: "Baker 2017", Full: "Baker 2017, Sports Medicine 47(S1):111"}
}

// baker2020 gives the limits of agreement of the sites.
func baker2020() Citation {
	return Citation{Short: "Baker et al. 2020", Full: "Baker et al. 2020, Physiological Reports 8:e14524"}
}

// Codes of the bands of sodium.
const (
	SodiumLow    = "sodium.low"
	SodiumMiddle = "sodium.middle"
	SodiumHigh   = "sodium.high"
)

// ForearmBand places a raw dorsal-forearm value: below 30, to 60, above
// (Lara et al. 2016). Never hold a whole-body value against these edges.
func ForearmBand(raw float64) string { return sodiumBand(raw, RawForearmLow, RawForearmHigh) }

func sodiumBand(x, low, high float64) string {
	switch {
	case x < low:
		return SodiumLow
	case x <= high:
		return SodiumMiddle
	}
	return SodiumHigh
}

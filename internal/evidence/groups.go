package evidence

import "ebbwell/internal/quantity"

// Measure names what a published group was measured for.
type Measure string

// The measures.
const (
	RateMeasure       Measure = "sweat-rate"
	RateByMassMeasure Measure = "sweat-rate-by-mass"
	ForearmMeasure    Measure = "forearm-sodium"
	WholeBodyMeasure  Measure = "whole-body-sodium"
	SodiumLossMeasure Measure = "sodium-loss"
)

// Group is a published group of athletes: mean and standard deviation of one
// measure.
type Group struct {
	ID      string
	Measure Measure
	Unit    quantity.Unit
	// Sport is empty for a group of many sports.
	Sport    string
	Mean, SD float64
	// Observed is the lowest and highest athlete; zero when not given.
	Observed quantity.Range
	// N is the number of athletes; when WholeStudy, of the study over all
	// sports, the sport's own number not being known here.
	N          int
	WholeStudy bool
	Source     Citation
	Sure       Sureness
}

// The sports that have a group of their own.
const (
	SportAmericanFootball = "american-football"
	SportEndurance        = "endurance"
	SportBasketball       = "basketball"
	SportSoccer           = "soccer"
	SportBaseball         = "baseball"
)

// Groups lists the published groups.
func Groups() []Group {
	return append(manySports(), bySport()...)
}

// manySports is Baker et al. 2016, 506 athletes.
func manySports() []Group {
	r := func(low, high float64) quantity.Range { return quantity.Range{Low: low, High: high} }
	g := func(m Measure, u quantity.Unit, mean, sd float64, seen quantity.Range) Group {
		return Group{ID: "group.many-sports." + string(m), Measure: m, Unit: u, Mean: mean, SD: sd,
			Observed: seen, N: 506, Source: baker2016(), Sure: Read}
	}
	return []Group{
		g(RateMeasure, quantity.LitrePerHour, 1.21, 0.68, r(0.26, 5.73)),
		g(RateByMassMeasure, quantity.MillilitrePerKilogramPerHour, 15.3, 6.8, r(0, 0)),
		g(ForearmMeasure, quantity.MillimolePerLitre, 43.6, 18.2, r(12.6, 104.8)),
		g(WholeBodyMeasure, quantity.MillimolePerLitre, 35.9, 10.4, r(18.2, 70.8)),
	}
}

// bySport is Barnes et al. 2019, 1303 athletes over its sports.
func bySport() []Group {
	barnes := Citation{Short: "Barnes et al. 2019", Full: "Barnes et al. 2019, Journal of Sports Sciences 37:2356"}
	pair := func(sport string, rate, rateSD, loss, lossSD float64) []Group {
		both := Group{Sport: sport, N: 1303, WholeStudy: true, Source: barnes, Sure: Read}
		a, b := both, both
		a.ID, a.Measure, a.Unit = "group."+sport+".sweat-rate", RateMeasure, quantity.LitrePerHour
		a.Mean, a.SD = rate, rateSD
		b.ID, b.Measure, b.Unit = "group."+sport+".sodium-loss", SodiumLossMeasure, quantity.MillimolePerHour
		b.Mean, b.SD = loss, lossSD
		return []Group{a, b}
	}
	list := pair(SportAmericanFootball, 1.51, 0.70, 55.9, 36.8)
	list = append(list, pair(SportEndurance, 1.28, 0.57, 51.7, 27.8)...)
	list = append(list, pair(SportBasketball, 0.95, 0.42, 34.5, 21.2)...)
	list = append(list, pair(SportSoccer, 0.94, 0.38, 34.6, 19.2)...)
	return append(list, pair(SportBaseball, 0.83, 0.34, 27.2, 14.7)...)
}

// groupEntries lists mean and spread of each group.
func groupEntries() []Entry {
	var list []Entry
	for _, g := range Groups() {
		list = append(list,
			Entry{ID: g.ID + ".mean", Value: g.Mean, Unit: g.Unit, Valid: g.Observed, Source: g.Source, Sure: g.Sure},
			Entry{ID: g.ID + ".sd", Value: g.SD, Unit: g.Unit, Valid: g.Observed, Source: g.Source, Sure: g.Sure},
		)
	}
	return list
}

package evidence

import "ebbwell/internal/quantity"

// Weights of the wet bulb globe temperature.
const (
	WbgtWetBulb      = 0.7
	WbgtGlobe        = 0.2
	WbgtAir          = 0.1
	WbgtGlobeIndoors = 0.3
)

// Upper ends of the WBGT bands. The three of training were read in the
// source, those below in a second text that prints the whole table
// (Environmental Health and Preventive Medicine 2017, doi
// 10.1186/s12199-017-0675-y).
const (
	WbgtBandCool    = 10.0 // °C
	WbgtBandMild    = 18.3 // °C
	WbgtBandRising  = 22.2 // °C
	WbgtBandRaised  = 25.6 // °C
	WbgtBandHigh    = 27.8 // °C
	WbgtBandHot     = 30.0 // °C
	WbgtBandExtreme = 32.2 // °C
)

// How well a WBGT from weather is known.
const (
	WeatherWbgtU       = 0.5 // °C
	MeasuredWbgtU      = 0.3 // °C
	SunPresetRelativeU = 0.20
)

// wbgtWeightEntries lists weights of the wet bulb globe temperature.
func wbgtWeightEntries() []Entry {
	source := Citation{Short: "ISO 7243", Full: "ISO 7243:2017, Ergonomics of the thermal environment: assessment of heat stress using the WBGT index"}
	return []Entry{
		{ID: "climate.wbgt.weight.wet-bulb", Value: WbgtWetBulb, Source: source, Sure: Second},
		{ID: "climate.wbgt.weight.globe", Value: WbgtGlobe, Source: source, Sure: Second},
		{ID: "climate.wbgt.weight.air", Value: WbgtAir, Source: source, Sure: Second},
		{ID: "climate.wbgt.weight.globe-indoors", Value: WbgtGlobeIndoors, Source: source, Sure: Second},
	}
}

// wbgtBandEntries lists upper ends of the WBGT bands.
func wbgtBandEntries() []Entry {
	source := Citation{Short: "ACSM 2007", Full: "Armstrong et al. 2007, Medicine and Science in Sports and Exercise 39:556"}
	return []Entry{
		{ID: "climate.wbgt.band.cool", Value: WbgtBandCool, Unit: quantity.DegreeCelsius, Source: source, Sure: Second},
		{ID: "climate.wbgt.band.mild", Value: WbgtBandMild, Unit: quantity.DegreeCelsius, Source: source, Sure: Second},
		{ID: "climate.wbgt.band.rising", Value: WbgtBandRising, Unit: quantity.DegreeCelsius, Source: source, Sure: Second},
		{ID: "climate.wbgt.band.raised", Value: WbgtBandRaised, Unit: quantity.DegreeCelsius, Source: source, Sure: Second},
		{ID: "climate.wbgt.band.high", Value: WbgtBandHigh, Unit: quantity.DegreeCelsius, Source: source, Sure: Read},
		{ID: "climate.wbgt.band.hot", Value: WbgtBandHot, Unit: quantity.DegreeCelsius, Source: source, Sure: Read},
		{ID: "climate.wbgt.band.extreme", Value: WbgtBandExtreme, Unit: quantity.DegreeCelsius, Source: source, Sure: Read},
	}
}

// wbgtErrorEntries lists how well a WBGT from weather is known.
func wbgtErrorEntries() []Entry {
	source := Citation{Short: "Liljegren et al. 2008", Full: "Liljegren, Carhart, Lawday, Tschopp, Sharp 2008, Journal of Occupational and Environmental Hygiene 5:645"}
	return []Entry{
		{ID: "climate.wbgt.weather.u", Value: WeatherWbgtU, Unit: quantity.DegreeCelsius, Source: source, Sure: Memory},
		{ID: "climate.wbgt.measured.u", Value: MeasuredWbgtU, Unit: quantity.DegreeCelsius, Source: ownProposal(), Sure: Proposal},
		{ID: "climate.wbgt.sun-preset.u", Value: SunPresetRelativeU, Source: ownProposal(), Sure: Proposal},
	}
}

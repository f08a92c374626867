package climate

import (
	"ebbwell/internal/evidence"
	"ebbwell/internal/quantity"
)

// Weather is the air and sun of a session.
type Weather struct {
	Temperature quantity.Celsius
	// Humidity is relative, %.
	Humidity quantity.Percent
	// Wind is at the height of the body (1.1 m); A forecast gives it at
	// 10 m, where it is stronger. Indoors it is the fan.
	Wind quantity.MetresPerSecond
	Sun  Sun
	// Altitude is above the sea.
	Altitude quantity.Metres
	// Radiant is a measured mean radiant temperature; nil takes the preset.
	Radiant *quantity.Celsius
}

// Check lists what is odd or impossible about the weather, warnings too.
func (w Weather) Check() []evidence.Problem {
	var list []evidence.Problem
	values := w.values()
	for _, v := range values {
		if p := evidence.Check(v.field, 0, v.value); p != nil {
			list = append(list, *p)
		}
	}
	if _, err := w.Sun.preset(); err != nil {
		list = append(list, Problems(err)...)
	}
	return list
}

// values are the numbers of the weather with their fields.
func (w Weather) values() []fieldValue {
	list := []fieldValue{
		{evidence.AirTemperature, float64(w.Temperature)},
		{evidence.Humidity, float64(w.Humidity)},
		{evidence.Wind, float64(w.Wind)},
		{evidence.Altitude, float64(w.Altitude)},
		// More vapour than any weather holds: hot and humid beyond what is.
		{evidence.VapourPressure, float64(w.Air().Vapour)},
	}
	if w.Radiant != nil {
		list = append(list, fieldValue{evidence.RadiantTemperature, float64(*w.Radiant)})
	}
	return list
}

// refused is the error of weather that cannot be.
func (w Weather) refused(l limits) error {
	if err := l.refused(w.values()...); err != nil {
		return err
	}
	_, err := w.Sun.preset()
	return err
}

// Air is the air of the weather.
func (w Weather) Air() Air {
	return Air{w.Temperature, quantity.Kilopascals(saturation(float64(w.Temperature)) * float64(w.Humidity) / 100)}
}

// RadiantTemperature is the measured one, or air plus what the preset adds.
// The preset is good to 9 °C either way, a proposal.
func (w Weather) RadiantTemperature() (quantity.Celsius, error) {
	if w.Radiant != nil {
		return *w.Radiant, refused(evidence.RadiantTemperature, float64(*w.Radiant))
	}
	p, err := w.Sun.preset()
	return w.Temperature + quantity.Celsius(p.Radiant), err
}

package consult

import (
	"errors"
	"math"
	"time"

	"ebbwell/internal/climate"
	"ebbwell/internal/evidence"
	"ebbwell/internal/quantity"
	"ebbwell/internal/record"
)

// Outing is a session as the heat balance sees it: what is done, in which air. It is
// the one form of a session for test, stop of a trip and plan: [Again] makes it of a
// test, [Traveller.Plan] of a stop, [OutingFor] of a plan.
type Outing struct {
	Session record.Session
	Air     record.Air
	Minutes float64
	// Like is the test whose session it is again; empty for none.
	Like record.ID
}

// Again is the session of a test once more, in its own air.
func Again(f Findings) Outing {
	return Outing{Session: f.Test.Session, Air: f.Test.Air, Minutes: f.Minutes, Like: f.Test.ID}
}

// ErrNoAir says that temperature, humidity or sun are not written down, so nothing
// can be said about the heat.
var ErrNoAir = errors.New("air or sun not known")

// WeatherOf is the weather of a session. Wind that is not known counts as
// nearly still air; altitude as sea level. It returns [ErrNoAir] when
// temperature, humidity or sun are missing.
func WeatherOf(a record.Air) (climate.Weather, error) {
	if !a.Temperature.Known() || !a.Humidity.Known() || a.Sun == "" {
		return climate.Weather{}, ErrNoAir
	}
	return climate.Weather{
		Temperature: quantity.Celsius(*a.Temperature.Value), Humidity: quantity.Percent(*a.Humidity.Value),
		Wind: quantity.MetresPerSecond(a.Wind.Or(evidence.WindNotKnown)), Sun: climate.Sun(a.Sun),
		Altitude: quantity.Metres(a.Altitude.Or(0)),
	}, nil
}

// BodyFor is the body as heat exchange sees it: the mass of a test, else the
// usual one.
func BodyFor(a record.Athlete, t *record.Test) climate.Body {
	mass := usualMass(a)
	if t != nil {
		mass = sessionMass(*t, a)
	}
	return climate.Body{Mass: quantity.Kilograms(mass), Height: quantity.Metres(a.Height.Or(0))}
}

// assumedHeight is an athlete with the height of a usual build where none is
// entered.
func assumedHeight(a record.Athlete, mass float64) record.Athlete {
	if !a.Height.Known() && mass > 0 {
		a.Height = record.Num(math.Sqrt(mass/evidence.UsualBuild), quantity.Metre)
	}
	return a
}

// assumedAir is an air with usual values for what is not written down of
// temperature, humidity and sun. A session is compared with itself in it: what
// is assumed for both of them hardly moves the figure.
func assumedAir(a record.Air) record.Air {
	if !a.Temperature.Known() {
		a.Temperature = record.Num(evidence.AssumedAir, quantity.DegreeCelsius)
	}
	if !a.Humidity.Known() {
		a.Humidity = record.Num(evidence.AssumedHumidity, quantity.PerCent)
	}
	if a.Sun == "" {
		a.Sun = record.Sun(climate.SunShade)
	}
	return a
}

// SessionFor is an outing as package climate takes it.
func SessionFor(o Outing, a record.Athlete, b climate.Body, d Setup) (climate.Session, error) {
	weather, err := WeatherOf(o.Air)
	if err != nil {
		return climate.Session{}, err
	}
	effort, err := effortFor(o, a, b, d)
	if err != nil {
		return climate.Session{}, err
	}
	if played := o.Session.Played; played.Known() && effort.Kind != climate.ByEnergy {
		effort = effort.Over(b, quantity.Minutes(*played.Value), quantity.Minutes(o.Minutes))
	}
	return climate.Session{
		Weather: weather, Effort: effort, Clothing: ClothingOf(o.Air.Clothing), State: HeatStateOf(o.Session.UsedToHeat, a),
		Minutes: quantity.Minutes(o.Minutes),
	}, nil
}

// HeatStateOf is how well a body is used to heat: as said for the session, else
// as the profile says; one that is not is as trained as the profile says.
func HeatStateOf(said record.Acclimatised, a record.Athlete) climate.HeatState {
	if said == "" {
		said = a.Acclimatised
	}
	if said == record.AcclimatisedYes {
		return climate.Acclimatised
	}
	if a.Training == record.Untrained {
		return climate.Untrained
	}
	return climate.Trained
}

// The clothing in play, as it is kept.
const (
	ClothingVest      = "vest-shorts"
	ClothingShirt     = "shirt-shorts"
	ClothingTracksuit = "tracksuit"
)

// ClothingOf reads clothing as kept; shirt and shorts where nothing is said.
func ClothingOf(code string) climate.Clothing {
	switch code {
	case ClothingVest:
		return climate.Vest()
	case ClothingTracksuit:
		return climate.Tracksuit()
	}
	return climate.Shirt()
}

// effortFor is the metabolic rate of a session from what [effortKnownOf] says it
// is known from, the same as its test is corrected by.
func effortFor(o Outing, a record.Athlete, b climate.Body, d Setup) (climate.Effort, error) {
	s := o.Session
	k := effortKnownOf(s, a, d)
	switch k.from {
	case fromPower:
		if k.motion == climate.Rowing {
			return climate.RowingEffort(b, quantity.Watts(*s.Power.Value), k.own)
		}
		return climate.CyclingEffort(b, quantity.Watts(*s.Power.Value), k.own)
	case fromSpeed:
		return climate.RunningEffort(b, quantity.MetresPerSecond(*s.Speed.Value/3.6), 0, false)
	case fromMet:
		return climate.MetEffort(b, *s.Met.Value, k.motion, k.own)
	case fromEnergy:
		return climate.EnergyEffort(b, quantity.Kilocalories(*s.Energy.Value), quantity.Minutes(o.Minutes), k.motion, k.own)
	case fromActivity:
		return k.activity.Effort(b)
	case fromRating:
		return climate.RatedEffort(b, *s.Effort.Value, k.motion, k.own)
	}
	return climate.AssumedEffort(b, k.assumed, k.motion, k.own)
}

func motionOf(s Sport) climate.Motion {
	switch {
	case s.InWater:
		return climate.InWater
	case s.Cycling:
		return climate.Cycling
	case s.Rowing:
		return climate.Rowing
	}
	return climate.OnFoot
}

// ClimateTest is a test as package climate takes it, with the one rate a test
// has. ok is false while the test has no rate with a range, or no air.
func ClimateTest(f Findings, a record.Athlete, today time.Time, d Setup) (t climate.Test, ok bool) {
	return climateTest(&f, f.Test.Air, a, today, d)
}

// climateTest is [ClimateTest] in an air that may be filled in.
func climateTest(f *Findings, air record.Air, a record.Athlete, today time.Time, d Setup) (t climate.Test, ok bool) {
	rate := f.Sweat.Fluid.Rate
	if !rate.Known || !rate.Ranged || rate.Value <= 0 || !f.Timed {
		return climate.Test{}, false
	}
	s, err := SessionFor(Outing{Session: f.Test.Session, Air: air, Minutes: f.Minutes}, a, BodyFor(a, &f.Test), d)
	if err != nil {
		return climate.Test{}, false
	}
	return climate.Test{
		Session: s, Rate: quantity.LitresPerHour(rate.Value), U: quantity.LitresPerHour(rate.U),
		MonthsAgo: monthsAgo(f.Test, today),
	}, true
}

// daysAMonth is the mean length of a month.
const daysAMonth = 365.25 / 12

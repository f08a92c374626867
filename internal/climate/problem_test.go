package climate

import (
	"errors"
	"fmt"
	"math"
	"testing"
	"time"

	"ebbwell/internal/evidence"
	"ebbwell/internal/quantity"
)

// refusal is an error that must name a field and say what is wrong.
type refusal struct {
	name  string
	err   error
	field evidence.Field
	code  string
}

// check holds each refusal against its problem.
func check(t *testing.T, list []refusal) {
	t.Helper()
	for _, c := range list {
		t.Run(c.name, func(t *testing.T) {
			if c.err == nil {
				t.Fatal("not refused")
			}
			for _, p := range Problems(c.err) {
				if p.Field == c.field && p.Code == c.code && p.Severity == evidence.Refuses {
					return
				}
			}
			t.Errorf("no problem %s of %s in %v", c.code, c.field, c.err)
		})
	}
}

// second is the error of a call.
func second(_ any, err error) error { return err }

func TestImpossibleSessionIsRefused(t *testing.T) {
	b, good := sample(t, 25, SunShade)
	session := func(change func(*Session)) error {
		s := good
		change(&s)
		return second(Calculate(b, s))
	}
	check(t, []refusal{
		{"air too hot", session(func(s *Session) { s.Weather.Temperature = 60 }), evidence.AirTemperature, evidence.CodeOutside},
		{"air not a number", session(func(s *Session) { s.Weather.Temperature = quantity.Celsius(math.NaN()) }), evidence.AirTemperature, evidence.CodeNotFinite},
		{"humidity over 100", session(func(s *Session) { s.Weather.Humidity = 101 }), evidence.Humidity, evidence.CodeOutside},
		{"wind below nothing", session(func(s *Session) { s.Weather.Wind = -1 }), evidence.Wind, evidence.CodeOutside},
		{"unknown sun", session(func(s *Session) { s.Weather.Sun = "moonlight" }), evidence.SunField, evidence.CodeBadChoice},
		{"radiant beyond fire", session(func(s *Session) { s.Weather.Radiant = new(quantity.Celsius(300)) }), evidence.RadiantTemperature, evidence.CodeOutside},
		{"no effort", session(func(s *Session) { s.Effort = Effort{Motion: OnFoot} }), evidence.MetabolicRate, evidence.CodeMissing},
		{"in water", session(func(s *Session) { s.Effort.Motion = InWater }), evidence.MetabolicRate, evidence.CodeInWater},
		{"unknown motion", session(func(s *Session) { s.Effort.Motion = "flying" }), evidence.MetabolicRate, evidence.CodeBadChoice},
		{"error of the effort not a number", session(func(s *Session) { s.Effort.Metabolic.U = math.NaN() }), evidence.MetabolicRate, evidence.CodeNotFinite},
		{"clothing of a bear", session(func(s *Session) { s.Clothing.Insulation = 5 }), evidence.Insulation, evidence.CodeOutside},
		{"clothing that shines", session(func(s *Session) { s.Clothing.Reflective = 2 }), evidence.Insulation, evidence.CodeOutside},
		{"unknown state", session(func(s *Session) { s.State = "hardened" }), evidence.HeatStateField, evidence.CodeBadChoice},
		{"no time", session(func(s *Session) { s.Minutes = 0 }), evidence.Duration, evidence.CodeOutside},
		{"no mass", second(Calculate(Body{0, 1.78}, good)), evidence.BodyMass, evidence.CodeOutside},
		{"unknown posture", second(PredictStrain(StrainInput{Posture: "lying"})), evidence.PostureField, evidence.CodeBadChoice},
		{"no minutes", second(PredictStrain(StrainInput{Posture: Sitting})), evidence.Duration, evidence.CodeNegative},
	})
}

func TestImpossibleAirIsRefused(t *testing.T) {
	check(t, []refusal{
		{"dew point above air", second(AirFromDewPoint(20, 21)), evidence.DewPointField, evidence.CodeDewPoint},
		{"hot and saturated beyond any weather", second(NewAir(48, 100)), evidence.VapourPressure, evidence.CodeOutside},
	})
}

// A value beyond a formula's fit comes with the range of the fit, so that a
// sentence can say it.
func TestBeyondTheFitNamesItsRange(t *testing.T) {
	soldiers := func(need, capacity, past float64, air quantity.Celsius) error {
		return second(SoldiersOf(Balance{Need: need, Capacity: capacity, Area: 1, AirPast: past}, air))
	}
	for name, err := range map[string]error{
		"need": soldiers(500, 200, 1, 25), "capacity": soldiers(200, 600, 1, 25), "wind": soldiers(200, 200, 3, 25), "air": soldiers(200, 200, 1, 12),
	} {
		list := Problems(err)
		if len(list) != 1 || list[0].Limit.Width() <= 0 || list[0].Limit.Contains(list[0].Value) || list[0].Unit == quantity.None {
			t.Errorf("%s: %+v", name, list)
		}
	}
}

func TestImpossibleEffortIsRefused(t *testing.T) {
	b := Body{70, 1.78}
	check(t, []refusal{
		{"running at 90 km/h", second(RunningEffort(b, 25, 0, false)), evidence.RunningSpeed, evidence.CodeOutside},
		{"up a wall", second(RunningEffort(b, 3, 0.9, false)), evidence.Gradient, evidence.CodeOutside},
		{"power of a horse", second(CyclingEffort(b, 746, 10)), evidence.Power, evidence.CodeOutside},
		{"rowing at the speed of a train", second(RowingEffort(b, 200, 40)), evidence.OwnSpeed, evidence.CodeOutside},
		{"effort 11 of 10", second(RatedEffort(b, 11, OnFoot, 0)), evidence.EffortRating, evidence.CodeOutside},
		{"40 MET", second(MetEffort(b, 40, OnFoot, 0)), evidence.MetValue, evidence.CodeOutside},
	})
}

func TestImpossibleTravelIsRefused(t *testing.T) {
	london := must[Place](t)(loaded(t).Find("London"))
	july := func(day int) time.Time { return time.Date(2026, 7, day, 0, 0, 0, 0, time.UTC) }
	check(t, []refusal{
		{"thirteenth month", second(london.Afternoon(13)), evidence.MonthField, evidence.CodeOutside},
		{"25 o'clock", second(london.AtHour(1, 25)), evidence.HourField, evidence.CodeOutside},
		{"stop ends before it begins", second(StopDays(july(11), july(10))), evidence.StopDates, evidence.CodeEndBefore},
		{"day of acclimatisation 0", second(Acclimatise(0, 3, Trained)), evidence.HeatDay, evidence.CodeOutside},
		{"margin of 300 %", second(Pack(nil, 3)), evidence.PackingMargin, evidence.CodeOutside},
		{"sessions below nothing", second(Pack([]Stay{{Days: -1, SessionsADay: 1}}, 0.15)), evidence.TripSessions, evidence.CodeOutside},
		{"60 h awake", second(FlightFluid(60)), evidence.FlightHours, evidence.CodeOutside},
	})
}

func TestUnknownPlace(t *testing.T) {
	places := loaded(t)
	_, err := places.Find("Port Nowhere")
	var unknown UnknownPlaceError
	if !errors.As(err, &unknown) || unknown.Name != "Port Nowhere" {
		t.Fatalf("error %v", err)
	}
	if len(unknown.Like) == 0 {
		t.Error("no place with \"Port\" in its name is named")
	}
	if _, err := places.Find("  "); err == nil {
		t.Error("a blank name found a place")
	}
}

func TestProblemsLooksInside(t *testing.T) {
	inner := problem(evidence.Humidity, evidence.CodeOutside, 120)
	err := fmt.Errorf("outer: %w", errors.Join(inner, errors.New("something else"), fmt.Errorf("deeper: %w", inner)))
	if list := Problems(err); len(list) != 2 || list[0].Field != evidence.Humidity {
		t.Errorf("problems %v", list)
	}
	if list := Problems(nil); list != nil {
		t.Errorf("problems of nothing: %v", list)
	}
}

// TestWeatherQuestionsAndRefuses: a warning is listed and does not refuse.
func TestWeatherQuestionsAndRefuses(t *testing.T) {
	w := Weather{Temperature: 44, Humidity: 20, Sun: SunHigh}
	list := w.Check()
	if len(list) != 1 || list[0].Severity != evidence.Warns || list[0].Field != evidence.AirTemperature {
		t.Errorf("problems %v", list)
	}
	if err := w.refused(evidence.Limits()); err != nil {
		t.Errorf("refused: %v", err)
	}
}

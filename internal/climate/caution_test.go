package climate

import (
	"slices"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"ebbwell/internal/evidence"
	"ebbwell/internal/quantity"
)

// TestBandsRiseWithHeat: over every column the level never falls, the last row
// cancels, and the ranges join without a gap.
func TestBandsRiseWithHeat(t *testing.T) {
	for _, p := range []Practice{{Continuous: true}, {Continuous: true, Acclimatised: true}, {}, {Acclimatised: true}} {
		last := Band{Range: quantity.Range{High: -100}}
		for tenth := 0; tenth <= 400; tenth++ {
			b := BandOf(quantity.Celsius(tenth)/10, p)
			if b.Level < last.Level {
				t.Errorf("%+v: level falls at %g °C", p, float64(tenth)/10)
			}
			if b.Range != last.Range && b.Range.Low != last.Range.High {
				t.Errorf("%+v: %v follows %v", p, b.Range, last.Range)
			}
			last = b
		}
		if last.Level != Cancel {
			t.Errorf("%+v: at 40 °C %s", p, last.Level.Code())
		}
	}
}

// TestNotAcclimatisedIsNeverLessCautious than acclimatised.
func TestNotAcclimatisedIsNeverLessCautious(t *testing.T) {
	for tenth := 0; tenth <= 400; tenth++ {
		w := quantity.Celsius(tenth) / 10
		for _, continuous := range []bool{false, true} {
			used, not := BandOf(w, Practice{continuous, true}), BandOf(w, Practice{continuous, false})
			if not.Level < used.Level {
				t.Errorf("%g °C: %s when not used to heat, %s when used", w, not.Level.Code(), used.Level.Code())
			}
		}
	}
}

// TestCoreInsideTheStandard: light work in hot, humid air lies inside what the
// standard was made for, and its core temperature then counts in full.
func TestCoreInsideTheStandard(t *testing.T) {
	b, s := sample(t, 6, SunNone)
	effort, err := MetEffort(b, 4.5, OnFoot, 0.7)
	if err != nil {
		t.Fatal(err)
	}
	s.Effort, s.Minutes = effort, 420
	s.Weather.Temperature, s.Weather.Humidity = 38, 67
	got, err := HeatCaution(b, s, Practice{Acclimatised: true}, new(quantity.Celsius(15)), Basis{})
	if err != nil {
		t.Fatal(err)
	}
	if slices.Contains(got.Codes, CoreExtrapolated) || got.Parts[2].Level < Limit {
		t.Errorf("level %s at %+v, codes %v", got.Parts[2].Level.Code(), got.Parts[2].Figure.Value, got.Codes)
	}
}

// TestHeatCaution: the worst of the three decides, and it is named.
func TestHeatCaution(t *testing.T) {
	b, cool := sample(t, 12, SunOvercast)
	hot := cool
	hot.Weather.Temperature, hot.Weather.Humidity, hot.Weather.Sun = 36, 48, SunHigh
	steam := cool
	steam.Weather.Temperature, steam.Weather.Humidity, steam.Weather.Sun = 40, 92, SunNone
	_, mild := sample(t, 20, SunShade)
	dry := cool
	dry.Weather.Temperature, dry.Weather.Humidity = 20, 20
	treadmill := dry
	treadmill.Effort.OnTheSpot, treadmill.Minutes = true, 120
	for _, c := range []struct {
		name     string
		session  Session
		practice Practice
		measured *quantity.Celsius
		level    Level
		decides  string
	}{
		{"cool", cool, Practice{}, nil, UsualCare, CautionWBGT},
		{"hot and sunny", hot, Practice{Acclimatised: true}, nil, Cancel, CautionWBGT},
		{"measured cooler than calculated", hot, Practice{Acclimatised: true}, new(quantity.Celsius(29)), Reduce, CautionWBGT},
		{"nothing evaporates", steam, Practice{Acclimatised: true}, new(quantity.Celsius(20)), Cancel, CautionWettedness},
		{"no air past a hard run", treadmill, Practice{Acclimatised: true}, nil, Watch, CautionWettedness},
		{"a hard run in mild air", mild, Practice{Acclimatised: true}, nil, Watch, CautionCore},
	} {
		t.Run(c.name, func(t *testing.T) {
			got, err := HeatCaution(b, c.session, c.practice, c.measured, Basis{})
			if err != nil {
				t.Fatal(err)
			}
			if got.Level != c.level || got.Decides != c.decides {
				t.Errorf("%s by %s, want %s by %s: %+v", got.Level.Code(), got.Decides, c.level.Code(), c.decides, got.Parts)
			}
			worst := UsualCare
			for _, p := range got.Parts {
				worst = max(worst, p.Level)
			}
			if got.Level != worst || len(got.Parts) != 3 {
				t.Errorf("level %s of %+v", got.Level.Code(), got.Parts)
			}
			if !slices.Contains(got.Codes, LocalPolicyWins) || !slices.Contains(got.Codes, HeatStrokeAnyDay) {
				t.Errorf("codes %v", got.Codes)
			}
			if got.Parts[0].Figure.Estimate == (c.measured != nil) {
				t.Error("a measured WBGT is no estimate, a calculated one is")
			}
		})
	}
}

// TestNoCodeClears: no code of a caution says that anything is safe.
func TestNoCodeClears(t *testing.T) {
	codes := []string{LocalPolicyWins, HeatStrokeAnyDay, BandMayBeHigher, CoreExtrapolated, CautionWBGT, CautionWettedness, CautionCore}
	for l := UsualCare; l <= Cancel; l++ {
		codes = append(codes, l.Code())
	}
	for w := -10; w < 45; w++ {
		for _, p := range []Practice{{}, {true, true}, {true, false}, {false, true}} {
			codes = append(codes, BandOf(quantity.Celsius(w), p).Code)
		}
	}
	for _, c := range codes {
		if c == "" || strings.Contains(c, "safe") {
			t.Errorf("code %q", c)
		}
	}
}

// TestCautionSaysWhenItExtrapolates: sport leaves the range of ISO 7933.
func TestCautionSaysWhenItExtrapolates(t *testing.T) {
	b, s := sample(t, 25, SunShade)
	got, err := HeatCaution(b, s, Practice{}, nil, Basis{})
	if err != nil {
		t.Fatal(err)
	}
	if !slices.Contains(got.Codes, CoreExtrapolated) || !got.Parts[2].Figure.Estimate || !got.Parts[2].Figure.Ranged {
		t.Errorf("codes %v, core %+v", got.Codes, got.Parts[2].Figure)
	}
}

// TestCoreIsNotFollowedBeyondABody: no core temperature is shown that no body
// reaches; what it calls for stays.
func TestCoreIsNotFollowedBeyondABody(t *testing.T) {
	b, s := sample(t, 40, SunHigh)
	s.Minutes, s.Weather.Humidity = 240, 60
	got, err := HeatCaution(b, s, Practice{}, nil, Basis{})
	if err != nil {
		t.Fatal(err)
	}
	core := got.Parts[2]
	if float64(got.Strain.Rectal) <= evidence.CoreFollowed {
		t.Fatalf("the strain ends at %g °C: no case of this", got.Strain.Rectal)
	}
	if !core.Beyond || core.Figure.Known || core.Figure.Value != evidence.CoreFollowed || core.Figure.Ranged || core.Level != Watch {
		t.Errorf("core %+v", core)
	}
	rapid.Check(t, func(t *rapid.T) {
		s := s
		s.Weather.Temperature = quantity.Celsius(rapid.Float64Range(0, 45).Draw(t, "air"))
		s.Weather.Humidity = quantity.Percent(rapid.Float64Range(5, 75).Draw(t, "humidity"))
		s.Minutes = quantity.Minutes(rapid.IntRange(20, 400).Draw(t, "minutes"))
		got, err := HeatCaution(b, s, Practice{}, nil, Basis{})
		if err != nil {
			t.Fatal(err)
		}
		core := got.Parts[2]
		if core.Figure.Value > evidence.CoreFollowed || core.Beyond == core.Figure.Known || core.Figure.Range.High > evidence.CoreFollowed+1e-9 {
			t.Fatalf("core %+v", core)
		}
		if core.Beyond != (float64(got.Strain.Rectal) > evidence.CoreFollowed) || core.Beyond && core.Level < Watch {
			t.Fatalf("beyond %v at %g °C, level %s", core.Beyond, got.Strain.Rectal, core.Level.Code())
		}
	})
}

// TestStrainOnTheWay is case 1 of annex F at the first minute.
func TestStrainOnTheWay(t *testing.T) {
	in := StrainInput{Air: Air{40, 2.5}, Radiant: 40, Wind: 0.3, Metabolic: 150, Clothing: Clothing{Insulation: 0.5},
		Posture: Standing, Acclimatised: true, Body: Body{75, 1.8}, Minutes: 60}
	var first StrainMinute
	r, err := TraceStrain(in, func(m StrainMinute) {
		if m.Minute == 1 {
			first = m
		}
	})
	if err != nil {
		t.Fatal(err)
	}
	for _, c := range []struct {
		name           string
		got, want, off float64
	}{
		{"skin", float64(first.Skin), 34.3292, 1e-4}, {"surface", float64(first.Surface), 36.757, 1.5e-3},
		{"capacity", float64(first.Capacity), 187.277, 1e-2}, {"need", float64(first.Need), 128.644, 1e-2},
		{"sweat", float64(first.Sweat), 16.022, 1e-2}, {"rectal", float64(first.Rectal), 36.8187, 1e-4},
		{"water after an hour", float64(r.Water), 615.97, 0.1}, {"rectal after an hour", float64(r.Rectal), 37.5196, 1e-3},
	} {
		if d := c.got - c.want; d > c.off || d < -c.off {
			t.Errorf("%s: %g, want %g within %g", c.name, c.got, c.want, c.off)
		}
	}
}

// TestOutside names where work ends and sport begins.
func TestOutside(t *testing.T) {
	in := StrainInput{Air: Air{30, 2}, Radiant: 35, Wind: 0.5, Metabolic: 150, Clothing: Clothing{Insulation: 0.5}, Posture: Standing, Body: Body{75, 1.8}, Minutes: 60}
	if list := in.Outside(); list != nil {
		t.Errorf("work is outside by %v", list)
	}
	in.Metabolic, in.Wind, in.Air.Temperature = 568, 4, 10
	if list := in.Outside(); len(list) != 3 {
		t.Errorf("cold, fast and hard is outside by %v", list)
	}
}

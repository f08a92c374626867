package heat

import (
	"errors"
	"fmt"
	"strconv"
	"strings"
	"testing"
	"time"

	"golang.org/x/text/language"
	"pgregory.net/rapid"

	"ebbwell/app/kit/amount"
	"ebbwell/internal/care"
	"ebbwell/internal/climate"
	"ebbwell/internal/consult"
	"ebbwell/internal/evidence"
	"ebbwell/internal/figure"
	"ebbwell/internal/quantity"
	"ebbwell/internal/record"
	"ebbwell/internal/words"
)

func speaker(t testing.TB, us, hidden bool) Speaker {
	t.Helper()
	w, err := words.New(language.English)
	if err != nil {
		t.Fatal(err)
	}
	return Speaker{amount.Speaker{Words: w, By: amount.Writer{Words: w, US: us, Hidden: hidden}, Today: time.Date(2026, 5, 18, 0, 0, 0, 0, time.UTC)}}
}

// plain takes the hard spaces out of a text.
func plain(s string) string { return strings.ReplaceAll(s, "\u00a0", " ") }

// The low end of a rate is the ceiling of drinking: it never reads higher than
// it is, and the high end never lower.
func TestRatesAreRoundedOutward(t *testing.T) {
	metric, us := speaker(t, false, false), speaker(t, true, false)
	rapid.Check(t, func(t *rapid.T) {
		low := rapid.Float64Range(0, 4).Draw(t, "low")
		r := quantity.Range{Low: low, High: low + rapid.Float64Range(0, 3).Draw(t, "wide")}
		for _, sp := range []Speaker{metric, us} {
			a, b := sp.RateEnds(r)
			shownLow, err1 := strconv.ParseFloat(a, 64)
			shownHigh, err2 := strconv.ParseFloat(b, 64)
			u := sp.By.Unit(quantity.LitrePerHour)
			realLow, err3 := quantity.Convert(r.Low, quantity.LitrePerHour, u)
			realHigh, err4 := quantity.Convert(r.High, quantity.LitrePerHour, u)
			if err := errors.Join(err1, err2, err3, err4); err != nil {
				t.Fatal(err)
			}
			if step := 1.0; shownLow > realLow+1e-4 || shownHigh < realHigh-1e-4 || shownLow < realLow-step || shownHigh > realHigh+step {
				t.Fatalf("%v to %v %s reads %s to %s", realLow, realHigh, u, a, b)
			}
		}
	})
	if got := plain(metric.Rates(quantity.Range{Low: 1.2, High: 2})); got != "1.2 to 2.0 L/h" {
		t.Errorf("a round range reads %q", got)
	}
}

// Every code that package climate hands out has words.
func TestEveryCodeHasWords(t *testing.T) {
	sp := speaker(t, false, false)
	keys := []string{}
	add := func(beginning string, codes ...string) {
		for _, c := range codes {
			keys = append(keys, beginning+c)
		}
	}
	add("basis.", "none", "start", climate.Tested.Code(), climate.Near.Code(), climate.Far.Code())
	add("grade.", climate.Tested.Code(), climate.Near.Code(), climate.Far.Code())
	add("basis.code.", climate.CheckInputs, climate.TestsDisagree, climate.AboveTested, climate.StateNotTested, climate.PlanInWater, climate.MeasuredInWater, climate.OwnTestOnly, climate.NoEstimate, climate.LimitUnsure, climate.PlanNothingLeaves, climate.PlanUncompensable,
		climate.AirExtrapolated, climate.EffortExtrapolated, climate.SodiumNotPredicted, climate.CeilingIsLowEnd)
	add("refusal.code.", refusal(nil), refusal(evidence.Problem{Code: evidence.CodeInWater}))
	add("", climate.AdviseTestFirst, climate.AdviseWeighFirst, climate.AdviseRetestFirst, climate.AdviseRetestSecond, climate.AdviseTestAgain, climate.AdviseSecondTest)
	add("caution.", climate.LocalPolicyWins, climate.HeatStrokeAnyDay, climate.BandMayBeHigher, climate.CoreExtrapolated)
	add("", climate.FirstDays, climate.SodiumFalling, climate.RateRising, climate.Adapted)
	for l := climate.UsualCare; l <= climate.Cancel; l++ {
		add("level.", l.Code())
	}
	for _, s := range climate.Suns() {
		add("sun.", string(s))
	}
	for _, p := range []climate.Practice{{}, {Continuous: true}, {Acclimatised: true}, {Continuous: true, Acclimatised: true}} {
		for wbgt := -5.0; wbgt < 40; wbgt += 0.5 {
			add("", bandKey(climate.BandOf(quantity.Celsius(wbgt), p)))
		}
	}
	for _, by := range []string{climate.ByAir, climate.ByHumidity, climate.BySun, climate.ByEffort, climate.ByClothing, climate.ByHeatState, climate.ByMonths, climate.ByNeed, climate.ByAirSpeed, climate.BySeated} {
		add("apart."+by, ".more", ".less")
	}
	for _, key := range keys {
		if !sp.Words.Has(key) {
			t.Errorf("%q has no words", key)
		}
	}
}

func TestReasons(t *testing.T) {
	metric, us := speaker(t, false, false), speaker(t, true, false)
	for _, c := range []struct {
		d            climate.Difference
		metric, inUS string
	}{
		{climate.Difference{By: climate.ByAir, Size: 5}, "5 °C hotter", "9 °F hotter"},
		{climate.Difference{By: climate.ByAir, Size: -12.4}, "12 °C cooler", "22 °F cooler"},
		{climate.Difference{By: climate.ByHumidity, Size: -1}, "drier", "drier"},
		{climate.Difference{By: climate.BySun, Size: 1}, "more sun", "more sun"},
		{climate.Difference{By: climate.BySun}, "different sun", "different sun"},
		{climate.Difference{By: climate.ByEffort, Size: -25}, "25\u00a0% easier", "25\u00a0% easier"},
		{climate.Difference{By: climate.ByClothing}, "different clothing", "different clothing"},
		{climate.Difference{By: climate.ByHeatState, Size: -1}, "not yet acclimatised to heat", "not yet acclimatised to heat"},
		{climate.Difference{By: climate.ByMonths, Size: 14.2}, "14 months later", "14 months later"},
	} {
		if got := metric.reason(c.d); got != c.metric {
			t.Errorf("%+v reads %q", c.d, got)
		}
		if got := us.reason(c.d); got != c.inUS {
			t.Errorf("in US units %+v reads %q", c.d, got)
		}
	}
	// What follows from other differences is named only where there are none.
	need, air := climate.Difference{By: climate.ByNeed, Size: 40, Apart: 0.4}, climate.Difference{By: climate.ByAir, Size: 8, Apart: 0.2}
	sun := climate.Difference{By: climate.BySun, Size: 1}
	if got := metric.holds(climate.Coverage{Grade: climate.Far, Weight: 0.31, Differences: []climate.Difference{need, air, sun}}); plain(got) != "different, counts 31 %: 8 °C hotter, more sun" {
		t.Errorf("air, sun and need: %q", got)
	}
	if got := metric.holds(climate.Coverage{Grade: climate.Near, Weight: 0.5, Differences: []climate.Difference{need}}); plain(got) != "similar, counts 50 %: more sweat needed" {
		t.Errorf("need alone: %q", got)
	}
	if got := metric.holds(climate.Coverage{Weight: 0.8, Differences: []climate.Difference{sun}}); plain(got) != "tested, counts 80 %" {
		t.Errorf("the same: %q", got)
	}
	if got := metric.holds(climate.Coverage{Weight: 0.8, Odd: true}); plain(got) != "tested, counts 80 % Far from the others: check its entries." {
		t.Errorf("odd: %q", got)
	}
}

// A rate that is no test is called an estimate and stands with its range; its
// middle goes where it may not be shown.
func TestAnswer(t *testing.T) {
	sp := speaker(t, false, false)
	rate := figure.Figure{Known: true, Value: 1.56, Unit: quantity.LitrePerHour, Ranged: true, Estimate: true, Range: quantity.Range{Low: 1.2, High: 2}}
	for name, c := range map[string]struct {
		basis          climate.Basis
		figure, beside string
	}{
		"near":  {climate.Basis{Rate: rate, Grade: climate.Near}, "1.2 to 2.0 L/h", "an estimate, most likely 1.6"},
		"far":   {climate.Basis{Rate: rate, RangeOnly: true, Grade: climate.Far}, "1.2 to 2.0 L/h", "an estimate, a range only"},
		"water": {climate.Basis{Codes: []string{climate.PlanInWater}}, "", "No estimate is possible here."},
	} {
		a := sp.Answer(consult.Calculation{Climate: c.basis}, NoDays)
		if plain(a.Figure) != c.figure || plain(a.Beside) != c.beside {
			t.Errorf("%s: %q, %q", name, a.Figure, a.Beside)
		}
		strip := sp.Strip(consult.Calculation{Climate: c.basis})
		if strip.Ranged != (c.figure != "") || strip.Ranged && (!strip.Estimate || strip.RangeOnly != strings.Contains(c.beside, "range only")) {
			t.Errorf("%s: the strip shows %+v", name, strip)
		}
	}
	measured := rate
	measured.Estimate = false
	a := sp.Answer(consult.Calculation{Climate: climate.Basis{Rate: measured}}, NoDays)
	if plain(a.Figure) != "1.56 L/h" || plain(a.Beside) != "1.2 to 2.0 L/h on a similar day" {
		t.Errorf("tested: %q, %q", a.Figure, a.Beside)
	}
}

func TestDaysOfAStop(t *testing.T) {
	sp := speaker(t, false, false)
	s := record.Stop{From: "2026-07-28", Until: "2026-08-06"}
	late := s
	late.HeatDay = record.Num(6, quantity.None)
	for _, c := range []struct {
		stop        record.Stop
		from, until int
		want        string
		within      bool
	}{
		{s, 5, 7, "1–3 August", true}, {s, 1, 1, "28 July", true}, {s, 3, 6, "30 July – 2 August", true}, {s, 10, 14, "6 August", true},
		{s, 11, 14, "", false}, {late, 5, 7, "28–29 July", true}, {late, 1, 5, "", false}, {record.Stop{}, 5, 7, "", true},
	} {
		if got, within := sp.DaysOf(c.stop)(c.from, c.until); got != c.want || within != c.within {
			t.Errorf("day %d to %d of %+v: %q, %v", c.from, c.until, c.stop.HeatDay.Or(1), got, within)
		}
	}
	advice := []climate.Advice{{Code: climate.AdviseRetestFirst, FromDay: 5, UntilDay: 7}, {Code: climate.AdviseRetestSecond, FromDay: 11, UntilDay: 14}}
	if got := sp.advice(advice, sp.DaysOf(s)); got != "Test there between day 5 and 7 (1–3 August)." {
		t.Errorf("advice: %q", got)
	}
}

func TestTroubles(t *testing.T) {
	sp := speaker(t, false, true)
	problem := func(f evidence.Field, code string, x float64) error {
		return fmt.Errorf("calculate: %w", evidence.Problem{Field: f, Code: code, Severity: evidence.Refuses, Value: x, Limit: quantity.Range{Low: -20, High: 55}, Unit: quantity.DegreeCelsius})
	}
	backwards := record.Stop{From: "2026-07-11", Until: "2026-07-01"}
	for name, c := range map[string]struct {
		err   error
		stop  record.Stop
		field evidence.Field
		want  string
	}{
		"none":      {nil, record.Stop{}, "", ""},
		"ends":      {consult.ErrStopEnds, backwards, evidence.StopDates, "This stop would end before it begins: 11 July 2026 to 1 July 2026. Correct one of the two days."},
		"city":      {climate.UnknownPlaceError{Name: "X"}, record.Stop{}, evidence.PlaceField, "“X” is not in the climate table. Enter the air instead, or choose a nearby city."},
		"like":      {climate.UnknownPlaceError{Name: "X", Like: []string{"Lima", "Lima", "Quito"}}, record.Stop{}, evidence.PlaceField, "“X” is not in the climate table. Similar: Lima, Quito. Or enter the air instead."},
		"no air":    {consult.ErrNoAir, record.Stop{City: "Lima"}, evidence.AirTemperature, "Still missing: the sun. Choose a city, or enter the air."},
		"hot":       {problem(evidence.AirTemperature, evidence.CodeOutside, 80), record.Stop{}, evidence.AirTemperature, "80 °C is outside the range for sport (−20 °C to 55 °C). Check the temperature."},
		"dew point": {problem(evidence.DewPointField, evidence.CodeDewPoint, 31), record.Stop{}, evidence.DewPointField, "The dew point can’t be above the air temperature. Check both."},
		"mass":      {problem(evidence.BodyMass, evidence.CodeOutside, 7), record.Stop{}, evidence.BodyMass, "Height and usual body mass are needed. Enter them in the profile."},
		"minutes":   {problem(evidence.Duration, evidence.CodeOutside, 0), record.Stop{}, evidence.Duration, "How long is a session there? Enter its minutes, or agree a plan to take along."},
		"month":     {problem(evidence.MonthField, evidence.CodeMissing, 0), record.Stop{}, evidence.MonthField, "Which month? Choose one, or enter the days of the stop."},
		"water":     {problem(evidence.MetabolicRate, evidence.CodeInWater, 0), record.Stop{}, evidence.MetabolicRate, "Exercise in water is not estimated. Test in that pool, at that effort."},
		"effort":    {problem(evidence.EffortRating, evidence.CodeMissing, 0), record.Stop{}, evidence.EffortRating, "How hard is it? Enter the effort, or the athlete’s sport in the profile."},
		"gone":      {consult.ErrTestGone, record.Stop{}, "", "A test this was based on was removed. Choose another one."},
	} {
		got := sp.Troubles(c.err, c.stop)
		switch {
		case c.want == "" && len(got) == 0:
		case len(got) != 1 || plain(got[0].Sentence) != c.want || got[0].Field != c.field:
			t.Errorf("%s: %+v, want %q at %q", name, got, c.want, c.field)
		}
	}
}

// A caution never clears anybody, and says so at every level.
func TestCautionNeverClears(t *testing.T) {
	sp := speaker(t, false, false)
	for level := climate.UsualCare; level <= climate.Cancel; level++ {
		r := consult.Calculation{CautionKnown: true, Caution: climate.Caution{
			Level: level, Decides: climate.CautionWBGT, Band: climate.BandOf(20, climate.Practice{}), Codes: []string{climate.LocalPolicyWins, climate.HeatStrokeAnyDay},
			Parts: []climate.CautionPart{{By: climate.CautionWBGT, Level: level, Figure: figure.Figure{Known: true, Value: 20}}, {By: climate.CautionWettedness}},
		}}
		c := sp.Caution(r, care.Care{Flags: []record.FlagKind{record.FlagMinor, record.FlagPregnancy}}, "112")
		all := strings.Join(append([]string{c.Title, c.Sentence, c.Always}, c.Lines...), " ")
		if n := strings.Count(all, "WBGT about"); n != 1 || strings.Contains(all, "of the maximum") {
			t.Errorf("level %d gives its reason %d times, or another look at the heat: %s", level, n, all)
		}
		if strings.Contains(strings.ToLower(all), "safe") {
			t.Errorf("level %d says safe: %s", level, all)
		}
		for _, must := range []string{"local rule", "organiser’s heat policy", "Heat illness can occur at every level", "Drinking does not prevent heat illness", "cold water", "Nothing by mouth", "112", "Under 18", "pregnancy"} {
			if !strings.Contains(all, must) {
				t.Errorf("level %d does not say %q", level, must)
			}
		}
	}
	if c := sp.Caution(consult.Calculation{}, care.Care{}, ""); c.Title != "The heat can’t be assessed here" || !strings.Contains(c.Always, "does not prevent") {
		t.Errorf("unknown heat: %+v", c)
	}
}

// A core temperature that no body reaches is not written, nor a wettedness many
// times what can be.
func TestCautionWritesNothingAbsurd(t *testing.T) {
	metric, us := speaker(t, false, false), speaker(t, true, false)
	beyond := climate.CautionPart{By: climate.CautionCore, Beyond: true, Figure: figure.Figure{Value: evidence.CoreFollowed, Unit: quantity.DegreeCelsius}}
	wet := climate.CautionPart{By: climate.CautionWettedness, Figure: figure.Figure{Known: true, Value: 42}}
	for _, c := range []struct{ got, want string }{
		{metric.cautionPart(beyond, false), "Core temperature could exceed 41 °C, extrapolated (above that the formula is not valid)"},
		{us.cautionPart(beyond, false), "Core temperature could exceed 106 °F, extrapolated (above that the formula is not valid)"},
		{metric.cautionPart(wet, false), "Required skin wettedness is more than twice the maximum"},
	} {
		if plain(c.got) != c.want {
			t.Errorf("reads %q, want %q", c.got, c.want)
		}
	}
}

// Soldiers' sweat is set beside an estimate to compare, or the sentence says
// why it does not hold; where mass is hidden there is neither.
func TestSoldiersBesideTheRate(t *testing.T) {
	calculation := func(s consult.Soldiers) consult.Calculation {
		return consult.Calculation{Soldiers: s, Climate: climate.Basis{Rate: figure.Figure{
			Known: true, Value: 1.5, Unit: quantity.LitrePerHour, Ranged: true, Estimate: true, Range: quantity.Range{Low: 1.1, High: 2}}}}
	}
	asked := func(x climate.Balance, air quantity.Celsius) consult.Soldiers {
		rates, err := climate.SoldiersOf(x, air)
		return consult.Soldiers{Asked: true, Rates: rates, Refused: err}
	}
	for _, c := range []struct {
		name     string
		soldiers consult.Soldiers
		want     string
	}{
		{"not asked", consult.Soldiers{}, ""},
		{"inside", asked(climate.Balance{Need: 200, Capacity: 200, Area: 2, AirPast: 1}, 25),
			"In such heat, soldiers marching in uniform lost 0.54 L/h by one regression and 0.56 L/h by another (Gonzalez et al. 2009). No plan is based on them."},
		{"the straight one below nothing", asked(climate.Balance{Need: 60, Capacity: 500, Area: 2, AirPast: 1}, 25),
			"In such heat, soldiers marching in uniform lost 0.33 L/h by one regression and less than zero by another (Gonzalez et al. 2009). No plan is based on them."},
		{"too much work", asked(climate.Balance{Need: 512, Capacity: 200, Area: 2, AirPast: 1}, 25),
			"The regressions of soldiers’ sweat (Gonzalez et al. 2009) do not apply here. Evaporation needed: 512 W/m² is outside 50 W/m² to 360 W/m², the range of the formula. No plan is based on them."},
		{"too much wind", asked(climate.Balance{Need: 200, Capacity: 200, Area: 2, AirPast: 3.4}, 25),
			"The regressions of soldiers’ sweat (Gonzalez et al. 2009) do not apply here. Wind on the body: 3.4 m/s is outside 0.4 m/s to 2.5 m/s, the range of the formula. No plan is based on them."},
	} {
		t.Run(c.name, func(t *testing.T) {
			if got := speaker(t, false, false).Why(calculation(c.soldiers)).Soldiers; plain(got) != c.want {
				t.Errorf("reads %q, want %q", plain(got), c.want)
			}
			if got := speaker(t, false, true).Why(calculation(c.soldiers)).Soldiers; got != "" {
				t.Errorf("with hidden mass it reads %q", got)
			}
		})
	}
}

// The formula is there to be worked out again, and is not where mass is hidden.
func TestWhyOfARate(t *testing.T) {
	rate := figure.Figure{Known: true, Value: 1.5, Unit: quantity.LitrePerHour, Ranged: true, Estimate: true, Range: quantity.Range{Low: 1.1, High: 2}, Why: figure.Why{
		Formula: "first*exp(start+weight1*(ln(rate1/first1)-start))",
		Inputs: []figure.Input{{Symbol: "first", Value: 1.1, Unit: quantity.LitrePerHour}, {Symbol: "start", Value: 0.33}, {Symbol: "weight1", Value: 0.8},
			{Symbol: "rate1", Value: 1.5, Unit: quantity.LitrePerHour, U: 0.0838}, {Symbol: "first1", Value: 1.12, Unit: quantity.LitrePerHour}},
		Budget: []figure.Share{{Source: "estimate.day-to-day", Part: 0.6}, {Source: "estimate.not-tested", Part: 0.4}}, Sources: []string{"climate.estimate.onset", "climate.estimate.onset"},
	}}
	r := consult.Calculation{Climate: climate.Basis{Rate: rate}}
	w := speaker(t, false, false).Why(r)
	if plain(w.Formula) != "first figure × exp(starting value + weight of test 1 × (ln(rate of test 1 / first figure 1) − starting value))" {
		t.Errorf("the formula reads %q", w.Formula)
	}
	if plain(w.Numbers) != "1.10 L/h × exp(0.33 + 0.8 × (ln(1.50 L/h / 1.12 L/h) − 0.33)) = 1.50 L/h" {
		t.Errorf("with numbers it reads %q", w.Numbers)
	}
	if len(w.Inputs) != 5 || plain(w.Inputs[3].Value) != "1.50 L/h ± 0.084" || len(w.Budget) != 2 || plain(w.Budget[0].Text) != "60 %" || len(w.Sources) != 1 {
		t.Errorf("inputs %+v, budget %+v, sources %v", w.Inputs, w.Budget, w.Sources)
	}
	hidden := speaker(t, false, true).Why(r)
	if hidden.Formula+hidden.Numbers != "" || len(hidden.Inputs)+len(hidden.Steps) != 0 || len(hidden.Budget) != 2 || len(hidden.Sources) != 1 {
		t.Errorf("hidden: %+v", hidden)
	}
}

// Where the practice's own tests are the start, it is said how many athletes are behind
// them.
func TestPracticeStartSaysHowMany(t *testing.T) {
	sp := speaker(t, false, false)
	for n, want := range map[int]string{8: "(8 athletes)", 23: "(23 athletes)"} {
		if got := sp.codes([]string{climate.PracticeStart}, climate.Start{Athletes: n}); !strings.Contains(got, want) {
			t.Errorf("%q does not say %q", got, want)
		}
	}
}

package climate

import (
	"fmt"
	"math"
	"slices"
	"testing"
	"time"

	"ebbwell/internal/evidence"
	"ebbwell/internal/plain"
	"ebbwell/internal/quantity"
)

// loaded is the climate table.
func loaded(t *testing.T) Places {
	t.Helper()
	return must[Places](t)(LoadPlaces())
}

// TestClimateTableIsWhole: every place has its name once, a grade, and months
// that can be.
func TestClimateTableIsWhole(t *testing.T) {
	p := loaded(t)
	seen := map[string]bool{}
	guessed := 0
	for _, place := range p.List {
		if seen[plain.Text(place.Name)] {
			t.Errorf("%s stands twice", place.Name)
		}
		seen[plain.Text(place.Name)] = true
		if !slices.Contains([]string{"A", "B", "C"}, place.Grade) {
			t.Errorf("%s: grade %q", place.Name, place.Grade)
		}
		usual := quantity.Kilopascals(pressure(float64(place.Elevation)))
		for i, m := range place.Months {
			if m.High == nil {
				guessed++
			}
			if fault := m.fault(usual); fault != "" {
				t.Errorf("%s, month %d: %s", place.Name, i+1, fault)
			}
		}
	}
	if guessed == 0 {
		t.Error("no month without a highest: the rule for it is not tested")
	}
}

// fault says what cannot be about a month at a place of a usual pressure.
func (m Month) fault(usual quantity.Kilopascals) string {
	switch {
	case m.High != nil && *m.High < m.Mean:
		return fmt.Sprintf("mean %g above the highest %g", m.Mean, *m.High)
	case m.Low != nil && *m.Low > m.Mean:
		return fmt.Sprintf("mean %g under the lowest %g", m.Mean, *m.Low)
	case m.Pressure != nil && math.Abs(float64(*m.Pressure-usual)) > 3:
		return fmt.Sprintf("pressure %g kPa, usual is %g", *m.Pressure, usual)
	case m.Vapour <= 0 || m.Vapour > 4.5:
		return fmt.Sprintf("vapour %g kPa", m.Vapour)
	case m.YearsAir < 1 || m.YearsVapour < 1:
		return "no years behind it"
	}
	return ""
}

func TestSearchPlaces(t *testing.T) {
	p := loaded(t)
	for _, c := range []struct{ query, first string }{
		{"São Paulo", "Sao Paulo"}, {"  LONDON ", "London"}, {"bogotá", "Bogota"}, {"st louis", "St Louis"},
		{"denpasar", "Bali (Denpasar)"}, {"korea seoul", "Seoul"}, {"san", "San Antonio"}, {"new y", "New York"},
	} {
		found := p.Search(c.query)
		if len(found) == 0 || found[0].Name != c.first {
			t.Errorf("%q finds %v first, want %s", c.query, found[:min(1, len(found))], c.first)
		}
	}
	if n := len(p.Search("")); n != len(p.List) {
		t.Errorf("an empty query lists %d", n)
	}
	if found := p.Search("nowhere"); found != nil {
		t.Errorf("found %v", found)
	}
	if place, err := p.Find("London, United Kingdom"); err != nil || place.Name != "London" {
		t.Errorf("with its country: %v, %v", place.Name, err)
	}
}

// TestDayOfAPlace: cool until six, warmest in the afternoon, and the vapour
// of the month all day.
func TestDayOfAPlace(t *testing.T) {
	p := must[Place](t)(loaded(t).Find("Madrid"))
	month := p.Months[6]
	at := func(h float64) PlaceAir { return must[PlaceAir](t)(p.AtHour(7, h)) }
	afternoon, hot := must[PlaceAir](t)(p.Afternoon(7)), must[PlaceAir](t)(p.HotDay(7))
	if at(3).Temperature != *month.Low || at(6).Temperature != *month.Low {
		t.Errorf("before six %g and %g, lowest %g", at(3).Temperature, at(6).Temperature, *month.Low)
	}
	if d := at(15).Temperature - *month.High; math.Abs(float64(d)) > 1e-9 {
		t.Errorf("at 15 h %g, highest %g", at(15).Temperature, *month.High)
	}
	if d := at(24).Temperature - *month.Low; math.Abs(float64(d)) > 1e-9 {
		t.Errorf("at midnight %g, lowest %g", at(24).Temperature, *month.Low)
	}
	if hot.Temperature != afternoon.Temperature+evidence.HotDayAdds || hot.Humidity >= afternoon.Humidity {
		t.Errorf("hot day %+v beside %+v", hot, afternoon)
	}
	for h := range 25 {
		a := at(float64(h))
		vapour := float64(Saturation(a.Temperature)) * float64(a.Humidity) / 100
		if a.Humidity < evidence.HumidityCap && math.Abs(vapour-float64(month.Vapour)) > 1e-9 {
			t.Errorf("%d h: vapour %g, month %g", h, vapour, month.Vapour)
		}
		if a.Humidity > evidence.HumidityCap {
			t.Errorf("%d h: humidity %g", h, a.Humidity)
		}
	}
}

// TestMissingHighIsGuessedAndSaid: mean plus 5 °C, and a flag.
func TestMissingHighIsGuessedAndSaid(t *testing.T) {
	p := must[Place](t)(loaded(t).Find("Copenhagen"))
	a := must[PlaceAir](t)(p.Afternoon(7))
	if !a.HighGuessed || a.Temperature != p.Months[6].Mean+5 || a.Grade != "B" {
		t.Errorf("%+v, mean %g", a, p.Months[6].Mean)
	}
	if known := must[PlaceAir](t)(must[Place](t)(loaded(t).Find("Madrid")).Afternoon(7)); known.HighGuessed || known.LowGuessed || known.Grade != "A" {
		t.Errorf("%+v", known)
	}
	if mean := must[PlaceAir](t)(p.Mean(7)); mean.HighGuessed {
		t.Error("the mean is not guessed")
	}
}

func TestActivities(t *testing.T) {
	list := must[Activities](t)(LoadActivities())
	ids := map[string]bool{}
	for _, a := range list {
		if ids[a.ID] || a.ID == "" || a.Name == "" || a.Met < 1 || a.Compendium == "" {
			t.Errorf("%+v", a)
		}
		ids[a.ID] = true
		if _, err := a.Effort(Body{70, 1.78}); err != nil {
			t.Errorf("%s: %v", a.ID, err)
		}
	}
	if found := list.Search("Tennis"); len(found) != 4 {
		t.Errorf("tennis finds %v", found)
	}
	for _, query := range []string{"run", "te", "row", "cyc"} { // what begins with it comes first
		last := 2
		for _, a := range list.Search(query) {
			if now := begins(a.Name, query); now > last {
				t.Errorf("%q: %q stands behind others", query, a.Name)
			} else {
				last = now
			}
		}
	}
	for _, query := range []string{"se", "ma", "li"} {
		last := 2
		for _, p := range loaded(t).Search(query) {
			if now := begins(p.Name, query); now > last {
				t.Errorf("%q: %q stands behind others", query, p.Name)
			} else {
				last = now
			}
		}
	}
	if found := list.Search("cycling spot"); len(found) != 4 {
		t.Errorf("cycling on the spot finds %v", found)
	}
	if len(list.Search("")) != len(list) || list.Search("chess") != nil {
		t.Error("an empty query lists all, an unknown one nothing")
	}
	if _, ok := list.Find("chess"); ok {
		t.Error("found chess")
	}
}

// TestEffortOverBreaks: the rest of the time counts at 2 MET.
func TestEffortOverBreaks(t *testing.T) {
	b := Body{70, 1.78}
	e := must[Effort](t)(MetEffort(b, 8, OnFoot, 2))
	half := e.Over(b, 30, 60)
	if want := metFlux(5, b); math.Abs(half.Metabolic.Value-want) > 1e-9 || half.OwnSpeed != 1 {
		t.Errorf("%g W/m² and %g m/s, want %g and 1", half.Metabolic.Value, half.OwnSpeed, want)
	}
	if fault := faultOf(half.Metabolic); fault != "" {
		t.Error(fault)
	}
	if whole := e.Over(b, 60, 60); whole.Metabolic.Value != e.Metabolic.Value {
		t.Error("played all the time changes the effort")
	}
}

// TestAcclimatise goes through two weeks and a half.
func TestAcclimatise(t *testing.T) {
	days := must[[]HeatDay](t)(Acclimatise(1, 17, Trained))
	want := map[int]string{1: FirstDays, 2: FirstDays, 3: SodiumFalling, 6: SodiumFalling, 7: RateRising, 14: RateRising, 15: Adapted}
	for day, code := range want {
		if d := days[day-1]; d.Day != day || d.Code != code {
			t.Errorf("day %d: %+v, want %s", day, d, code)
		}
	}
	for _, d := range days {
		retest := d.Day >= 5 && d.Day <= 7 || d.Day >= 10 && d.Day <= 14
		if d.Retest != retest || d.Easier != (d.Day <= 7) || (d.State == Acclimatised) != (d.Day > 14) {
			t.Errorf("%+v", d)
		}
	}
	used := must[[]HeatDay](t)(Acclimatise(1, 3, Acclimatised))
	if used[0].Code != Adapted || used[0].Retest || used[0].Easier {
		t.Errorf("used to heat: %+v", used[0])
	}
}

func TestStopDays(t *testing.T) {
	from := time.Date(2026, 3, 27, 22, 0, 0, 0, time.UTC)
	for days, want := range map[int]int{0: 1, 1: 2, 9: 10} {
		if got := must[int](t)(StopDays(from, from.AddDate(0, 0, days).Add(-20*time.Hour))); got != want {
			t.Errorf("%d nights: %d days, want %d", days, got, want)
		}
	}
}

// TestPack: a stop of ten days, a session a day, and one of two days with two.
func TestPack(t *testing.T) {
	gel := Supply{ID: "gel", Form: Gel, Servings: 1, Serving: 50, Volume: 40, Supplement: true, Lot: "L7"}
	powder := Supply{ID: "mix", Form: Powder, Servings: 2, Serving: 36}
	salt := Supply{ID: "salt", Form: Salt, Servings: 1, Serving: 1.2}
	ready := Supply{ID: "carton", Form: ReadyMix, Servings: 0.5, Serving: 500, Volume: 500}
	tablet := Supply{ID: "tablet", Form: Solid, Servings: 1, Serving: 4, Supplement: true}
	stays := []Stay{
		{Days: 10, SessionsADay: 1, Drink: 1.1, Bottle: 500, Supplies: []Supply{gel, powder, salt, ready, tablet}},
		{Days: 2, SessionsADay: 2, Drink: 0.9, Bottle: 500, Supplies: []Supply{gel, powder}},
	}
	list := must[PackingList](t)(Pack(stays, 0.15))
	want := []PackedSupply{
		{gel, 17, 850, 1, Hold, ""},           // 14 × 1.15 = 16.1
		{powder, 33, 33 * 36, 2, Hold, ""},    // 28 × 1.15 = 32.2
		{salt, 12, 12 * 1.2, 1, Hold, ""},     // 10 × 1.15 = 11.5
		{ready, 6, 3000, 0, Buy, ""},          // 5 × 1.15 = 5.75
		{tablet, 12, 48, 1, Hold, LotMissing}, // no lot was written down
	}
	if len(list.Supplies) != len(want) {
		t.Fatalf("%+v", list.Supplies)
	}
	for i, p := range list.Supplies {
		if math.Abs(float64(p.Mass-want[i].Mass)) > 1e-9 {
			t.Errorf("%s: %g g, want %g", p.Supply.ID, p.Mass, want[i].Mass)
		}
		p.Mass = want[i].Mass
		if p != want[i] {
			t.Errorf("%+v, want %+v", p, want[i])
		}
	}
	if list.Gels != 17 || list.Powder != 33*36 || math.Abs(float64(list.Salt)-14.4) > 1e-9 || list.Bottles != 3 {
		t.Errorf("%d gels, %g g powder, %g g salt, %d bottles", list.Gels, list.Powder, list.Salt, list.Bottles)
	}
	// Two sessions of 0.9 L and 2 L beside them are more than one of 1.1 L.
	if math.Abs(float64(list.SafeWater)-3.8) > 1e-9 {
		t.Errorf("%g L of drinking water a day", list.SafeWater)
	}
	squad := SumPacking(list, list, list)
	if squad.Gels != 51 || squad.Bottles != 9 || squad.Supplies[0].Servings != 51 || len(squad.Supplies) != 5 {
		t.Errorf("squad: %+v", squad)
	}
}

// TestGelsInHandAreLimited: large ones travel in the hold, and in all no more
// than a litre.
func TestGelsInHandAreLimited(t *testing.T) {
	big := Supply{ID: "big", Form: Gel, Servings: 1, Serving: 150, Volume: 120}
	many := Supply{ID: "many", Form: Gel, Servings: 30, Serving: 50, Volume: 40}
	list := must[PackingList](t)(Pack([]Stay{{Days: 1, SessionsADay: 1, Supplies: []Supply{big, many}}}, 0))
	if list.Supplies[0].HandLuggage != 0 || list.Supplies[1].HandLuggage != 25 {
		t.Errorf("%d and %d in hand", list.Supplies[0].HandLuggage, list.Supplies[1].HandLuggage)
	}
}

func TestFlightFluid(t *testing.T) {
	f, err := FlightFluid(8)
	if err != nil || f.Range != (quantity.Range{Low: 0.8, High: 2.4}) || !f.Estimate {
		t.Errorf("%+v, %v", f, err)
	}
	if fault := faultOf(f); fault != "" {
		t.Error(fault)
	}
}

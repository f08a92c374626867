package demo

import (
	"context"
	"fmt"

	"ebbwell/internal/climate"
	"ebbwell/internal/consult"
	"ebbwell/internal/evidence"
	"ebbwell/internal/quantity"
	"ebbwell/internal/record"
	"ebbwell/internal/store"
)

// session is one invented test in a few numbers.
type session struct {
	// place ends the key of where it was; what was done there stands in the plans' names.
	// Without one it is the town whose afternoons in that month are nearest to the air.
	key, athlete, place string
	towns               []string
	ago                 int // days
	start               record.Clock
	minutes             float64
	effort              float64
	power, speed        float64 // W, km/h; 0 for none
	// air °C, humidity %, wind m/s.
	air, humidity, wind float64
	sun                 record.Sun
	// loss is the sweat loss the day shows, L.
	loss float64
	// water, sports drink, mL; food in portions; urine, g.
	water, drink float64
	food         record.ID
	portions     float64
	urine        float64
	gravity      float64
	patches      []record.Patch
	guess        float64
	// open leaves the sheet unfinished, waits sends the patch to the laboratory.
	open, waits bool
}

func forearm(sodium float64) record.Patch {
	return record.Patch{Site: record.SiteForearmDorsal, Side: "left", Sodium: record.Num(sodium, quantity.MillimolePerLitre)}
}

func thigh(sodium float64) record.Patch {
	return record.Patch{Site: record.SiteThigh, Side: "right", Sodium: record.Num(sodium, quantity.MillimolePerLitre)}
}

func chest(sodium float64) record.Patch {
	return record.Patch{Site: record.SiteChest, Sodium: record.Num(sodium, quantity.MillimolePerLitre)}
}

// warmTowns are where a camp goes for warm air, somewhere in every season.
func warmTowns() []string {
	return []string{"Seville", "Malaga", "Larnaca", "Athens", "Muscat", "Dakar", "Miami", "Brisbane", "Perth", "Durban"}
}

// sessions are the tests, the oldest of each athlete first.
func sessions() []session {
	hockey := session{athlete: "ravka", place: "ground", start: "14:05", minutes: 95, effort: 8, food: "generic.fig-bar"}
	return append([]session{
		with(hockey, session{key: "ravka-autumn", ago: 221, air: 24, humidity: 52, wind: 2, sun: record.SunPart, loss: 1.76, water: 400, drink: 200, urine: 0, gravity: 1.014,
			patches: []record.Patch{forearm(51)}, guess: 0.7}),
		with(hockey, session{key: "ravka-winter", ago: 85, place: "sports-hall", air: 19, humidity: 60, wind: 1, sun: record.SunNone, effort: 6, loss: 1.33, water: 500, urine: 120, gravity: 1.019,
			patches: []record.Patch{forearm(44)}, guess: 0.6}),
		with(hockey, session{key: "ravka-spring", ago: 4, towns: warmTowns(), air: 31, humidity: 46, wind: 1.5, sun: record.SunHigh, loss: 2.15, water: 300, drink: 250, urine: 0, gravity: 1.016,
			patches: []record.Patch{forearm(47.5)}, guess: 0.8}),
		{key: "jorun-cool", athlete: "jorun", place: "reservoir", ago: 190, start: "09:10", minutes: 120, effort: 7, power: 235, air: 14, humidity: 70, wind: 3, sun: record.SunOvercast,
			loss: 1.55, water: 350, drink: 500, urine: 90, gravity: 1.012, patches: []record.Patch{forearm(63), thigh(58)}, guess: 1.0},
		{key: "jorun-warm", athlete: "jorun", place: "circuit", ago: 38, start: "10:00", minutes: 180, effort: 6, power: 205, air: 27, humidity: 48, wind: 2, sun: record.SunHigh,
			loss: 3.6, water: 750, drink: 1000, food: "generic.rice-square", portions: 2, urine: 150, gravity: 1.015, patches: []record.Patch{forearm(68), thigh(61)}, guess: 2.0},
		{key: "sefa-hall", athlete: "sefa", place: "hall", ago: 60, start: "17:30", minutes: 105, effort: 8, air: 26, humidity: 50, wind: 0.5, sun: record.SunNone,
			loss: 3.3, water: 700, drink: 500, urine: 0, gravity: 1.023, patches: []record.Patch{forearm(45.7)}, guess: 1.2},
		{key: "sefa-lab", athlete: "sefa", place: "hall", ago: 2, start: "18:00", minutes: 100, effort: 8, air: 22, humidity: 45, wind: 0.5, sun: record.SunNone,
			loss: 2.6, water: 600, drink: 400, urine: 80, gravity: 1.018, patches: []record.Patch{{Site: record.SiteForearmDorsal, Side: "right"}}, guess: 1.5, waits: true},
		{key: "dorian-league", athlete: "dorian", place: "home", ago: 120, start: "15:00", minutes: 105, effort: 8, air: 17, humidity: 65, wind: 3, sun: record.SunPart,
			loss: 1.75, water: 350, drink: 150, urine: 60, gravity: 1.021, patches: []record.Patch{chest(52)}, guess: 1.0},
		{key: "dorian-heat", athlete: "dorian", towns: warmTowns(), ago: 26, start: "15:00", minutes: 105, effort: 9, air: 29, humidity: 55, wind: 2, sun: record.SunHigh,
			loss: 2.9, water: 500, drink: 250, urine: 0, gravity: 1.024, patches: []record.Patch{forearm(55)}, guess: 1.1},
	}, moreSessions()...)
}

// moreSessions are the juniors, the marathon and the pitch.
func moreSessions() []session {
	return []session{
		{key: "mirel-track", athlete: "mirel", place: "track", ago: 150, start: "18:15", minutes: 70, effort: 7, air: 16, humidity: 68, wind: 2, sun: record.SunLow,
			loss: 0.62, water: 200, urine: 0, gravity: 1.017, guess: 0.3},
		{key: "mirel-camp", athlete: "mirel", place: "park", ago: 20, start: "10:30", minutes: 60, effort: 8, speed: 14, air: 26, humidity: 50, wind: 1.5, sun: record.SunPart,
			loss: 0.86, water: 250, urine: 0, gravity: 1.020, patches: []record.Patch{forearm(36)}, guess: 0.4},
		{key: "odo-erg", athlete: "odo", place: "boathouse", ago: 100, start: "08:00", minutes: 75, effort: 7, air: 21, humidity: 55, wind: 0.5, sun: record.SunNone,
			loss: 1.3, water: 600, urine: 0, gravity: 1.011, patches: []record.Patch{forearm(40)}, guess: 0.9},
		{key: "odo-water", athlete: "odo", place: "lake", ago: 15, start: "08:30", minutes: 100, effort: 8, air: 25, humidity: 60, wind: 3, sun: record.SunHigh,
			loss: 2.2, water: 500, drink: 300, urine: 0, gravity: 1.013, patches: []record.Patch{forearm(46)}, guess: 1.0},
		{key: "ilse-gain", athlete: "ilse", place: "canal", ago: 75, start: "08:00", minutes: 150, effort: 5, speed: 9, air: 15, humidity: 75, wind: 2, sun: record.SunOvercast,
			loss: 1.05, water: 1500, drink: 250, urine: 250, gravity: 1.004, patches: []record.Patch{forearm(52)}, guess: 2.0},
		{key: "ilse-tempo", athlete: "ilse", place: "canal", ago: 12, start: "08:00", minutes: 120, effort: 7, speed: 11.5, air: 21, humidity: 60, wind: 2, sun: record.SunPart,
			loss: 1.42, water: 600, drink: 250, food: "generic.gel", portions: 2, urine: 0, gravity: 1.012, patches: []record.Patch{forearm(50), thigh(47)}, guess: 1.4},
		{key: "kester-training", athlete: "kester", place: "training", ago: 140, start: "16:00", minutes: 90, effort: 8, air: 12, humidity: 80, wind: 4, sun: record.SunOvercast,
			loss: 1.95, water: 700, urine: 0, gravity: 1.026, patches: []record.Patch{forearm(66)}, guess: 1.0},
		{key: "kester-match", athlete: "kester", place: "home", ago: 33, start: "15:00", minutes: 95, effort: 9, air: 24, humidity: 58, wind: 2, sun: record.SunHigh,
			loss: 3.1, water: 900, drink: 500, urine: 0, gravity: 1.022, patches: []record.Patch{forearm(71)}, guess: 1.5},
		{key: "kester-today", athlete: "kester", place: "training", ago: 0, start: "10:00", minutes: 80, effort: 8, air: 22, humidity: 55, wind: 2, sun: record.SunPart,
			loss: 2.1, water: 600, urine: 0, gravity: 1.018, open: true},
		{key: "nessa-match", athlete: "nessa", towns: warmTowns(), ago: 4, start: "14:05", minutes: 95, effort: 8, air: 31, humidity: 46, wind: 1.5, sun: record.SunHigh,
			loss: 2.35, water: 500, drink: 400, food: "generic.fig-bar", portions: 1, urine: 0, gravity: 1.013, patches: []record.Patch{forearm(39)}, guess: 1.4},
		{key: "ottoline-training", athlete: "ottoline", place: "ground", ago: 28, start: "18:30", minutes: 90, effort: 7, air: 18, humidity: 62, wind: 2.5, sun: record.SunOvercast,
			loss: 0.95, water: 350, drink: 0, urine: 0, gravity: 1.018, guess: 0.5},
	}
}

// with is base with what is set in s put over it.
func with(base, s session) session {
	s.athlete, s.start, s.minutes, s.food = base.athlete, base.start, base.minutes, base.food
	if s.place == "" && len(s.towns) == 0 {
		s.place = base.place
	}
	if s.effort == 0 {
		s.effort = base.effort
	}
	return s
}

// addTests writes the sheets and closes those that are done.
func (f *filler) addTests(ctx context.Context) error {
	places, err := climate.LoadPlaces()
	if err != nil {
		return err
	}
	for _, s := range sessions() {
		if len(s.towns) == 0 {
			s.place = f.names.Say("demo.place." + s.place)
		} else {
			town, err := townFor(places, s.towns, s.air, f.today.AddDate(0, 0, -s.ago).Month())
			if err != nil {
				return fmt.Errorf("test %s: %w", s.key, err)
			}
			s.place = f.names.Town(town)
		}
		t := f.sheet(s)
		kept, err := f.store.SaveTest(ctx, t, store.Edit{})
		if err != nil {
			return fmt.Errorf("test %s: %w", s.key, err)
		}
		if !s.open {
			if kept, err = f.close(ctx, kept, s); err != nil {
				return fmt.Errorf("close test %s: %w", s.key, err)
			}
		}
		f.tests[s.key] = kept
	}
	return nil
}

// close freezes a sheet with what it says.
func (f *filler) close(ctx context.Context, t record.Test, s session) (record.Test, error) {
	a := f.athletes[s.athlete]
	found := consult.Find(t, a, nil, f.desk)
	if !found.Ready() {
		return t, fmt.Errorf("the sheet is not whole: missing %v, problems %v", found.Sweat.Missing, found.Sweat.Problems)
	}
	inputs, results, err := consult.FreezeTest(found, a, nil, f.desk)
	if err != nil {
		return t, err
	}
	t.State = record.TestClosed
	if s.waits {
		t.State = record.TestWaiting
	}
	return f.store.CloseTest(ctx, t, store.Freezing{Inputs: inputs, Results: results, Evidence: evidence.Version, Line: consult.LineOf(found)}, store.Edit{})
}

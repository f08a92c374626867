package sweat

import (
	"math"
	"testing"

	"ebbwell/internal/evidence"
	"ebbwell/internal/quantity"
)

// markersOf evaluates markers alone.
func markersOf(t testing.TB, m Markers, o Options) []MarkerResult {
	t.Helper()
	return evaluated(t, Input{Markers: m, Options: o}).Markers
}

func TestMarkersCarryTheirSet(t *testing.T) {
	nata, _ := evidence.BandSetNamed(evidence.SetNATA)
	own := evidence.BandSet{ID: evidence.SetOwn, Scales: []evidence.Scale{
		{Marker: evidence.GravityMarker, Sure: evidence.Practice, Bands: []evidence.Band{
			{Code: evidence.BandWell, High: 1.015}, {Code: evidence.BandMinimal, High: 1.025}, {Code: evidence.BandSignificant, High: math.Inf(1)},
		}},
	}}
	for _, c := range []struct {
		name string
		set  evidence.BandSet
		band string
		id   string
		sure evidence.Sureness
	}{
		{"none chosen", evidence.BandSet{}, evidence.BandAbove, evidence.SetACSM, evidence.Second},
		{"NATA", nata, evidence.BandSignificant, evidence.SetNATA, evidence.Read},
		{"own", own, evidence.BandMinimal, evidence.SetOwn, evidence.Practice},
	} {
		t.Run(c.name, func(t *testing.T) {
			m := markersOf(t, Markers{Gravity: new(1.023)}, Options{Bands: c.set})
			if len(m) != 1 || m[0].Band != c.band || m[0].Set != c.id || m[0].Sure != c.sure {
				t.Errorf("%+v", m)
			}
			if c.id != evidence.SetOwn && m[0].Source.Short == "" {
				t.Error("no source beside the band")
			}
		})
	}
}

func TestMarkersWithoutBands(t *testing.T) {
	m := markersOf(t, Markers{Colour: new(4.0)}, Options{}) // ACSM 2007 has no colours
	if len(m) != 1 || m[0].Band != "" || !m[0].Figure.Known {
		t.Errorf("%+v", m)
	}
}

func TestWeakSpecificity(t *testing.T) {
	for _, c := range []struct {
		sex  Sex
		note string
		args []float64
	}{
		{Female, NoteSpecificity, []float64{19.5}}, {Male, NoteSpecificity, []float64{28.1}},
		{"", NoteSpecificities, []float64{19.5, 28.1}},
	} {
		m := markersOf(t, Markers{Gravity: new(1.016)}, Options{Sex: c.sex})
		if !hasNote(m[0].Figure, NoteSpotMarker) || !hasNote(m[0].Figure, c.note) {
			t.Errorf("%q: notes %v", c.sex, m[0].Figure.Why.Notes)
		}
		if last := m[0].Figure.Why.Notes[1]; len(last.Args) != len(c.args) || last.Args[0] != c.args[0] {
			t.Errorf("%q: args %v", c.sex, last.Args)
		}
	}
	if m := markersOf(t, Markers{Colour: new(4.0)}, Options{}); !hasNote(m[0].Figure, NoteDimLight) {
		t.Error("nothing said about dim light")
	}
}

func TestMorningMass(t *testing.T) {
	nata, _ := evidence.BandSetNamed(evidence.SetNATA)
	base := []quantity.Kilograms{70.2, 69.8, 70.0}
	for _, c := range []struct {
		name     string
		today    float64
		baseline []quantity.Kilograms
		change   float64
		band     string
		note     string
	}{
		{"as usual", 70.0, base, 0, evidence.BandWell, NoteMorningUsual},
		{"a little lighter", 69.3, base, -1, evidence.BandWell, NoteMorningUsual},
		{"lighter", 68.6, base, -2, evidence.BandMinimal, NoteMorningUnusual},
		{"much lighter", 67.2, base, -4, evidence.BandSignificant, NoteMorningUnusual},
		{"heavier", 71.4, base, 2, evidence.BandHeavier, NoteMorningUnusual},
		{"two mornings", 69.3, base[:2], 0, "", NoteMornings},
		{"a morning refused", 69.3, []quantity.Kilograms{70, 70, 700}, 0, "", NoteMornings},
	} {
		t.Run(c.name, func(t *testing.T) {
			m := markersOf(t, Markers{Morning: new(quantity.Kilograms(c.today)), Baseline: c.baseline}, Options{Bands: nata})
			if len(m) != 1 || m[0].Band != c.band || !hasNote(m[0].Figure, c.note) {
				t.Fatalf("%+v", m)
			}
			near(t, "change", m[0].Figure.Value, c.change, 1e-9)
			if known := c.note != NoteMornings; m[0].Figure.Known != known {
				t.Errorf("known is %v", m[0].Figure.Known)
			}
		})
	}
	if m := markersOf(t, Markers{Baseline: base}, Options{}); len(m) != 0 {
		t.Errorf("no morning mass today: %+v", m)
	}
}

func TestRefusedMarkerIsNotUsed(t *testing.T) {
	r := evaluated(t, Input{Markers: Markers{Gravity: new(1.6), Colour: new(9.0), Thirst: new(11.0), Stomach: new(-1.0)}})
	if len(r.Markers) != 0 || len(r.Problems) != 4 {
		t.Errorf("markers %+v, problems %v", r.Markers, r.Problems)
	}
}

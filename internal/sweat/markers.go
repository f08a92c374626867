package sweat

import (
	"math"

	"ebbwell/internal/evidence"
	"ebbwell/internal/figure"
	"ebbwell/internal/quantity"
	"ebbwell/internal/uncertainty"
)

// MarkerResult is one marker with the band it falls into. A marker is context
// beside the figures, never a driver of the plan.
type MarkerResult struct {
	Marker evidence.Marker
	// Figure is the value; for first-morning mass the change from the baseline
	// in % of body mass.
	Figure figure.Figure
	// Band is a code, empty when the set in use has no bands for the marker.
	Band string
	// Set and Source name whose bands they are.
	Set    string
	Source evidence.Citation
	Sure   evidence.Sureness
}

// markers reads the markers in the order of the sheet.
func (s *sheet) markers() []MarkerResult {
	m := s.in.Markers
	set := s.in.Options.Bands
	if set.ID == "" {
		set, _ = evidence.BandSetNamed(evidence.SetACSM)
	}
	var list []MarkerResult
	add := func(f evidence.Field, marker evidence.Marker, p *float64, u quantity.Unit) {
		x, ok := read(&s.check, f, 0, p)
		if ok {
			list = append(list, s.marker(set, marker, constant("reading", x, u).figure(kind{u, anywhere(), true})))
		}
	}
	add(evidence.USG, evidence.GravityMarker, m.Gravity, quantity.None)
	add(evidence.Osmolality, evidence.OsmolalityMarker, m.Osmolality, quantity.MilliosmolePerKilogram)
	add(evidence.UrineColour, evidence.ColourMarker, m.Colour, quantity.None)
	if f, ok := s.morning(); ok {
		list = append(list, s.marker(set, evidence.MorningMassMarker, f))
	}
	read(&s.check, evidence.Thirst, 0, m.Thirst)
	read(&s.check, evidence.Stomach, 0, m.Stomach)
	return list
}

// marker places a figure in the bands in use and puts the sentences beside it.
func (s *sheet) marker(set evidence.BandSet, m evidence.Marker, f figure.Figure) MarkerResult {
	r := MarkerResult{Marker: m, Figure: f, Set: set.ID, Source: set.Source}
	if f.Known {
		// Readings carry three decimals at most; the rest is binary dust.
		r.Band, r.Sure, _ = set.Band(m, quantity.Round(f.Value, markerDecimals))
	}
	r.Figure.Why.Notes = append(r.Figure.Why.Notes, s.markerNotes(m)...)
	return r
}

// markerDecimals is finer than any marker is read.
const markerDecimals = 6

// markerNotes says how little a marker proves.
func (s *sheet) markerNotes(m evidence.Marker) []figure.Note {
	var list []figure.Note
	note := func(id string, args ...float64) { list = append(list, figure.Note{ID: id, Args: args}) }
	if m != evidence.MorningMassMarker {
		note(NoteSpotMarker)
	}
	switch {
	case m == evidence.ColourMarker:
		note(NoteDimLight, evidence.DimLightLow, evidence.DimLightHigh)
	case m != evidence.GravityMarker:
	case s.in.Options.Sex == Female:
		note(NoteSpecificity, evidence.GravitySpecificityWomen)
	case s.in.Options.Sex == Male:
		note(NoteSpecificity, evidence.GravitySpecificityMen)
	default:
		note(NoteSpecificities, evidence.GravitySpecificityWomen, evidence.GravitySpecificityMen)
	}
	return list
}

// morning is today's first-morning mass against the mean of the mornings
// before, %. Fewer mornings than a baseline needs leave it without a value.
func (s *sheet) morning() (f figure.Figure, ok bool) {
	m := s.in.Markers
	today, ok := read(&s.check, evidence.MorningMass, 0, m.Morning)
	var days []term
	for i, d := range m.Baseline {
		if s.check.usable(evidence.MorningMass, i+1, float64(d)) {
			q := uncertainty.Measured(float64(d), dayToDay(float64(d)), uncertainty.Source{Name: SourceMorning, Item: i})
			days = append(days, symbol(numbered("morning", i, len(m.Baseline)), q, quantity.Kilogram))
		}
	}
	if !ok {
		return f, false
	}
	if len(days) < evidence.MorningsNeeded {
		f.Unit = quantity.PerCent
		f.Why.Notes = []figure.Note{{ID: NoteMornings, Args: []float64{float64(len(days)), evidence.MorningsNeeded}}}
		return f, true
	}
	base := mean(days)
	now := symbol("today", uncertainty.Measured(today, dayToDay(today), uncertainty.Source{Name: SourceMorning, Item: len(m.Baseline)}), quantity.Kilogram)
	f = number(100).times(now.minus(base)).over(base).figure(kind{quantity.PerCent, anywhere(), true}, "marker.morning-mass.cv")
	id := NoteMorningUsual
	if math.Abs(f.Value) > evidence.CoverageFactor*f.U {
		id = NoteMorningUnusual
	}
	f.Why.Notes = []figure.Note{{ID: id, Args: []float64{evidence.MorningMassCV}}}
	return f, true
}

// dayToDay is how far a first-morning mass goes up and down, kg.
func dayToDay(mass float64) float64 { return evidence.MorningMassCV / 100 * mass }

package consult

import (
	"math"

	"ebbwell/internal/evidence"
	"ebbwell/internal/record"
)

// BandsOf is the urine band set a practice uses: a published one, or its own
// edges for urine specific gravity. Without a choice it is ACSM 2007.
func BandsOf(s record.Settings) evidence.BandSet {
	if s.UrineBands == evidence.SetOwn {
		return ownBands(s)
	}
	set, ok := evidence.BandSetNamed(s.UrineBands)
	if !ok {
		set, _ = evidence.BandSetNamed(evidence.SetACSM)
	}
	return set
}

// ownBands are the practice's own edges; an edge that was not set leaves its
// band out.
func ownBands(s record.Settings) evidence.BandSet {
	scale := evidence.Scale{Marker: evidence.GravityMarker, Sure: evidence.Practice}
	for _, edge := range []struct {
		code string
		high record.Number
	}{
		{evidence.BandWell, s.OwnGravityWell}, {evidence.BandMinimal, s.OwnGravityMinimal}, {evidence.BandSignificant, s.OwnGravityGreat},
	} {
		if edge.high.Known() {
			scale.Bands = append(scale.Bands, evidence.Band{Code: edge.code, High: *edge.high.Value})
		}
	}
	scale.Bands = append(scale.Bands, evidence.Band{Code: evidence.BandSerious, High: math.Inf(1)})
	return evidence.BandSet{
		ID:     evidence.SetOwn,
		Source: evidence.Citation{Code: "practice-bands"},
		Scales: []evidence.Scale{scale},
	}
}

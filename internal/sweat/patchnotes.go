package sweat

import (
	"math"
	"slices"

	"ebbwell/internal/evidence"
	"ebbwell/internal/figure"
)

// notes are the sentences beside what one patch gave.
func (p patch) notes(s *sheet) []figure.Note {
	in := s.in.Patches[p.index]
	var list []figure.Note
	note := func(id string, args ...float64) { list = append(list, figure.Note{ID: id, Args: args}) }
	switch {
	case p.row.Site == evidence.FiveSiteMean:
		note(NoteFiveSiteLimits, p.row.Limits)
	case p.row.Equation:
		note(NoteAgreement, p.row.Bias, p.row.Limits)
	default:
		note(NoteUncorrectedNa)
		note(NoteRawAgreement, p.row.RawBias, p.row.RawLimits)
	}
	raw := p.raw.q.Value()
	if p.row.Applied > 0 && (raw < p.row.AppliedLow || raw > p.row.Applied) {
		note(NoteForearmOutside, raw, p.row.AppliedLow, p.row.Applied)
	}
	if turn := ForearmTurn(); p.row.Site == evidence.ForearmDorsal && raw < turn {
		note(NoteForearmRaises, raw, turn)
	}
	if in.Method == evidence.Conductivity {
		note(NoteConductivity)
	}
	if _, known := evidence.MethodCV(in.Method); !known {
		note(NoteMethodUnknown)
	}
	if in.On != nil && !between(float64(*in.On), evidence.PatchOnFrom, evidence.PatchOnTo) {
		note(NotePatchTime, float64(*in.On), evidence.PatchOnFrom, evidence.PatchOnTo)
	}
	return list
}

// ForearmTurn is the raw forearm value that its equation leaves as it is,
// mmol/L; lower ones it raises.
func ForearmTurn() float64 { return evidence.ForearmIntercept / (1 - evidence.ForearmSlope) }

// spreadNote speaks when two patches of one site lie further apart than their
// local spread explains in 95 of 100.
func spreadNote(group []patch) []figure.Note {
	raws := make([]float64, len(group))
	total := 0.0
	for i, p := range group {
		raws[i] = p.raw.q.Value()
		total += raws[i]
	}
	apart := (slices.Max(raws) - slices.Min(raws)) / (total / float64(len(raws)))
	most := evidence.CoverageFactor * math.Sqrt2 * evidence.LocalSodiumCV
	if !(apart > most) {
		return nil
	}
	return []figure.Note{{ID: NotePatchesDiffer, Args: []float64{100 * apart, 100 * most}}}
}

// between reports whether x lies from low to high, ends included.
func between(x, low, high float64) bool { return x >= low && x <= high }

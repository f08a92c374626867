package consult

import (
	"slices"

	"ebbwell/internal/evidence"
)

// KeptOdd is an unlikely value that was kept, with the reason that was given.
type KeptOdd struct {
	Field evidence.Field
	Item  int
	Text  string
}

// OfMass reports whether it is about body mass, so that its reason may name it.
func (k KeptOdd) OfMass() bool {
	switch k.Field {
	case evidence.MassBefore, evidence.MassAfter, evidence.MorningMass, evidence.MassChange, evidence.MassSpread:
		return true
	}
	return false
}

// KeptOdds lists the values of a sheet that were kept with a reason, in the order
// they are entered; those of figures that are worked out stand last.
func KeptOdds(f Findings) []KeptOdd {
	reason := map[string]string{}
	for _, r := range f.reasons {
		if r.Reason && r.Text != "" {
			reason[r.Field] = r.Text
		}
	}
	var list []KeptOdd
	for _, e := range Entries(f.Test) {
		if text := reason[e.Path]; text != "" && e.Number.Known() {
			list = append(list, KeptOdd{e.Field, e.Item, text})
		}
	}
	figures := figureReasons()
	var paths []string
	for path := range figures {
		paths = append(paths, path)
	}
	slices.Sort(paths)
	for _, path := range paths {
		if text := reason[path]; text != "" {
			list = append(list, KeptOdd{figures[path].Field, figures[path].Item, text})
		}
	}
	return list
}

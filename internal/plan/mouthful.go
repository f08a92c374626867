package plan

import (
	"errors"
	"fmt"

	"ebbwell/internal/evidence"
	"ebbwell/internal/sweat"
)

// Mouthful is how much the athlete swallows at once, mL.
type Mouthful float64

// tenMouthfuls is how many are weighed.
const tenMouthfuls = 10

// ErrMouthful means: the weighing gives no mouthful.
var ErrMouthful = errors.New("no mouthful from this weighing")

// MouthfulFromTen is the mouthful from ten of them: the bottle weighed before
// and after, in g, and the drink's density in g/mL.
func MouthfulFromTen(beforeG, afterG, density float64) (Mouthful, error) {
	m := (beforeG - afterG) / density / tenMouthfuls
	if !(m >= 1) || m > evidence.StomachAtOnce {
		return 0, fmt.Errorf("ten mouthfuls from %g to %g g: %w", beforeG, afterG, ErrMouthful)
	}
	return Mouthful(m), nil
}

// UsualMouthful is a mouthful from a cup where it was not weighed: about 25 mL
// in men and 20 mL in women (Lawless et al. 2003); the smaller when the sex is
// not known.
func UsualMouthful(s sweat.Sex) Mouthful {
	if s == sweat.Male {
		return evidence.MouthfulMen
	}
	return evidence.MouthfulWomen
}

package heat

import (
	"strings"
	"testing"

	"ebbwell/internal/consult"
)

// What is known beside the figure stands behind the why of an estimate, and so behind
// that of a trip, each with its source.
func TestStatedBehindTheEstimate(t *testing.T) {
	r := consult.Calculation{}
	text := strings.Join(speaker(t, false, false).Why(r).Stated, " ")
	for _, source := range [...]string{"Racinais et al. 2023", "Bandiera et al. 2024", "ISO 7933:2023"} {
		if !strings.Contains(text, source) {
			t.Errorf("%q does not name %s", text, source)
		}
	}
}

package care

import (
	"slices"
	"testing"

	"ebbwell/internal/record"
)

// Every condition of the table has a place among the others, and its own.
func TestEveryConditionHasItsGravity(t *testing.T) {
	seen := map[int]record.FlagKind{}
	for _, e := range Effects() {
		g := Gravity(e.Kind)
		if g == 0 || seen[g] != "" {
			t.Errorf("%s has gravity %d, as %q", e.Kind, g, seen[g])
		}
		seen[g] = e.Kind
	}
	if len(seen) != len(gravest()) {
		t.Errorf("%d conditions in the table, %d in the order", len(seen), len(gravest()))
	}
	if Gravity("no condition") != 0 {
		t.Error("what is no condition is grave")
	}
}

func TestGravestFirst(t *testing.T) {
	asked := []record.FlagKind{record.FlagNSAID, record.FlagMinor, record.FlagHyponatraemia}
	got := ByGravity(asked)
	if !slices.Equal(got, []record.FlagKind{record.FlagHyponatraemia, record.FlagNSAID, record.FlagMinor}) || asked[0] != record.FlagNSAID {
		t.Errorf("got %v of %v", got, asked)
	}
}

package record

import (
	"slices"
	"testing"
)

// TestFirstEntriesAreNoCorrections: what is written where nothing stood counts
// only once the sheet was closed, and carries the reason it was opened for.
func TestFirstEntriesAreNoCorrections(t *testing.T) {
	newestFirst := []Change{
		{ID: "10", Field: "loss.urine", After: "120 g"},
		{ID: "9", Field: "weighings.a.mass", Before: "63.2 kg", After: "62.3 kg", Why: "digits swapped"},
		{ID: "8", Field: "closedBy", Before: "T. P."},
		{ID: "7", Field: "state", Before: "closed", After: "open", Why: "the scale's slip was found"},
		{ID: "6", Field: "closedBy", After: "T. P."},
		{ID: "5", Field: "state", Before: "open", After: "closed"},
		{ID: "4", Field: "bottles.b", Before: "present"},
		{ID: "3", Field: "loss.noUrine", Before: "false", After: "true"},
		{ID: "2", Field: "air.temperature", Before: "13 °C", After: "31 °C"},
		{ID: "1", Field: "air.temperature", After: "13 °C"},
		{ID: "0", Field: "", After: "present"},
	}
	var got, why []string
	for _, c := range Corrections(newestFirst) {
		got, why = append(got, string(c.ID)), append(why, c.Why)
	}
	if want := []string{"10", "9", "4", "2"}; !slices.Equal(got, want) {
		t.Errorf("corrections %v, not %v", got, want)
	}
	if want := []string{"the scale's slip was found", "digits swapped", "", ""}; !slices.Equal(why, want) {
		t.Errorf("reasons %q, not %q", why, want)
	}
}

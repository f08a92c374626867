package squad

import (
	"slices"
	"testing"
)

// TestMatch: names, bibs, and two with one name.
func TestMatch(t *testing.T) {
	s := newSquad(t, day(), 60, 60, 60, 60)
	sheet := s.sheets[s.g.Members[3].TestID]
	sheet.Athlete.Name = "Néve D'Arcy-Carrowmere"
	s.sheets[s.g.Members[3].TestID] = sheet
	s.g.Members[3].Bib = "17"
	rows := s.rows(at18(0))
	for text, want := range map[string][]int{"ta": {0}, "neve": {1, 3}, "17": {3}, "3": {2}, "holl": {2}, "": nil, "x": nil, "CARR": {1, 3}, "darcy": {3}, "arcy carr": nil, "néve": {1, 3}} {
		if got := Match(rows, text); !slices.Equal(got, want) {
			t.Errorf("%q finds %v, want %v", text, got, want)
		}
	}
}

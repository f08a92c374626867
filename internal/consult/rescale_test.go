package consult

import (
	"testing"

	"ebbwell/internal/plan"
	"ebbwell/internal/quantity"
	"ebbwell/internal/record"
)

// footballAt is a football plan of a length with the breaks of the table.
func footballAt(t *testing.T, minutes string) (*Case, []record.Chance) {
	t.Helper()
	for _, s := range readSessions(t) {
		if s.row["sport"] == "football" {
			s.row["minutes"] = minutes
			c, p := s.open()
			return c, p.Chances
		}
	}
	t.Fatal("no session of football")
	return nil, nil
}

// minutesOf are the minutes of the breaks of one name.
func minutesOf(list []record.Chance, name string) []float64 {
	var out []float64
	for _, ch := range list {
		if ch.Name == name {
			out = append(out, quantity.Round(ch.AtMinute.Or(-1), 3))
		}
	}
	return out
}

// A match of twice 45 min is entered as 90 min of play, or as 105 min with half-time:
// the first half ends at 45 min in both, opened so or changed to it, and with breaks
// that were changed by hand. Half of a shorter match is played before half-time too.
func TestHalfTimeIsAtTheEndOfTheFirstHalf(t *testing.T) {
	type length struct {
		text         string
		minutes, end float64
	}
	lengths := []length{{"90", 90, 45}, {"105", 105, 45}, {"97", 97, 45}, {"70", 70, 35}, {"60", 60, 30}}
	for _, from := range lengths {
		c, list := footballAt(t, from.text)
		if got := minutesOf(list, "half-time"); len(got) != 1 || got[0] != from.end {
			t.Errorf("opened at %g min: half-time at %v", from.minutes, got)
		}
		byHand := append([]record.Chance{}, list...)
		for i := range byHand {
			byHand[i].Seconds = record.Num(600, quantity.Second)
		}
		for _, to := range lengths {
			for name, breaks := range map[string][]record.Chance{"of the table": list, "changed by hand": byHand} {
				if got := minutesOf(c.Rescaled(breaks, from.minutes, to.minutes), "half-time"); len(got) != 1 || got[0] != to.end {
					t.Errorf("breaks %s, from %g to %g min: half-time at %v, not %g", name, from.minutes, to.minutes, got, to.end)
				}
			}
		}
	}
}

// The breaks for heat come in about the 30th and the 75th minute of play, whichever
// length is entered.
func TestBreaksForHeatAreAtTheirMinuteOfPlay(t *testing.T) {
	sports, err := plan.Sports()
	if err != nil {
		t.Fatal(err)
	}
	for _, s := range sports {
		if s.Code != "football" {
			continue
		}
		for minutes, want := range map[float64][2]float64{90: {30, 75}, 105: {30, 90}} {
			var got []float64
			for _, ch := range s.Chances(minutes, plan.Hot) {
				if ch.Seconds < 300 {
					got = append(got, quantity.Round(ch.Minute, 3))
				}
			}
			if len(got) != 2 || got[0] != want[0] || got[1] != want[1] {
				t.Errorf("%g min: breaks for heat at %v, not %v", minutes, got, want)
			}
		}
	}
}

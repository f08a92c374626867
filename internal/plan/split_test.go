package plan

import "testing"

// TestCourseBends: where a session was weighed within, the line of the deficit bends
// there, by the share of the loss of each part, and its end stays where it was.
func TestCourseBends(t *testing.T) {
	p, mix := courtPlanner(t), Mix{Water: 900, Drink1: 750}
	var s Schedule
	p.Schedule(Expected, mix, courtChances(t, 105), 30, &s)
	even := p.Course(Expected, &s, nil)
	p.basis.Split = Split{At: 0.4, Share: 0.3}
	bent := p.Course(Expected, &s, nil)
	if len(bent) != len(even)+1 {
		t.Fatalf("%d points, %d without the bend", len(bent), len(even))
	}
	near(t, "end of the line", bent[len(bent)-1].DeficitL.Value, even[len(even)-1].DeficitL.Value)
	end := p.session.Minutes[Expected]
	sweat := p.basis.SweatRate.Value * end / minutesPerHour
	at := -1
	for i, x := range bent {
		if x.Minute == 0.4*end {
			at = i
		}
		if i > 0 && x.Minute < bent[i-1].Minute {
			t.Errorf("the line runs back at %g min", x.Minute)
		}
	}
	if at < 0 {
		t.Fatal("no point at the bend")
	}
	for _, x := range even {
		for _, y := range bent {
			if x.Minute != y.Minute {
				continue
			}
			share := x.Minute / end
			near(t, "what the bend takes off", x.DeficitL.Value-y.DeficitL.Value, sweat*(share-p.basis.Split.by(share)))
			break
		}
	}
}

package trip

import (
	"strings"
	"testing"

	"ebbwell/app/apptest"
)

// Past the stated width the traveller's page prints that it is too uncertain and to weigh
// there, with no amounts; where the range is narrower it does not.
func TestPageTooUncertain(t *testing.T) {
	d, _ := apptest.Demo(t)
	v, _ := hockeyTrip(t, d, 1, "")
	const sentence = "Too uncertain: weigh there."
	wide, narrow := 0, 0
	for _, m := range v.crew() {
		there, err := v.plan(m, v.now().Stops[1])
		if err != nil || !there.Planned && !there.TooUncertain() {
			continue
		}
		paper := v.stopOnPaper(v.speaker(m), m, there, nil, 1)
		told := strings.Contains(strings.Join(paper.Notes, " "), sentence)
		switch {
		case there.TooUncertain():
			wide++
			if !told || len(paper.Plan.Parts)+len(paper.Plan.Foods) > 0 {
				t.Errorf("%s: the page says %q, with %+v", m.athlete.Name, paper.Notes, paper.Plan)
			}
		default:
			narrow++
			if told {
				t.Errorf("%s: the page says %q of a range that is not wide", m.athlete.Name, paper.Notes)
			}
		}
	}
	if wide == 0 || narrow == 0 {
		t.Errorf("%d too uncertain, %d not: the test shows nothing", wide, narrow)
	}
}

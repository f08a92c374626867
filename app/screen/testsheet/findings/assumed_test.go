package findings

import (
	"strings"
	"testing"

	"ebbwell/app/kit/amount"
	"ebbwell/internal/climate"
	"ebbwell/internal/consult"
	"ebbwell/internal/fuel"
	"ebbwell/internal/record"
)

// Where nothing is known of the effort, the findings say what breath and gas exchange are
// calculated from instead: the sport's usual MET, else 6 MET; where it is known they do not.
func TestAssumedEffortIsSaid(t *testing.T) {
	w := english(t)
	sp := speaker{amount.Speaker{Words: w, By: amount.Writer{Words: w}}}
	generic, err := fuel.Generic()
	if err != nil {
		t.Fatal(err)
	}
	activities, err := climate.LoadActivities()
	if err != nil {
		t.Fatal(err)
	}
	d := consult.Setup{Pantry: consult.NewPantry(generic, nil), Activities: activities}
	const sport, six = "calculated from the sport’s usual MET", "calculated from 6 MET"
	for name, c := range map[string]struct {
		of   string
		know bool
		want string
	}{"known": {"football", true, ""}, "of a sport": {"football", false, sport}, "of none": {"", false, six}} {
		test := whole()
		test.Session.Sport = c.of
		if !c.know {
			test.Session.Met, test.Session.Effort = record.Number{}, record.Number{}
		}
		a := athlete()
		a.Sport = c.of
		in := Input{Findings: consult.Find(test, a, nil, d), Athlete: a, Open: true}
		text := strings.ReplaceAll(everything(sp, in), "\u00a0", " ")
		for _, one := range []string{sport, six} {
			if got := strings.Contains(text, one); got != (one == c.want) {
				t.Errorf("%s: %q said %v", name, one, got)
			}
		}
	}
}

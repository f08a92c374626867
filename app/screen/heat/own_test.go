package heat

import (
	"slices"
	"strings"
	"testing"

	"ebbwell/internal/climate"
	"ebbwell/internal/consult"
	"ebbwell/internal/record"
)

// Where only the own test is known, the why is of a measurement: no rule of estimates, no
// heat balance; what it is based on says where it holds, and elsewhere that there is none.
func TestWhyOfAnOwnTest(t *testing.T) {
	sp := speaker(t, false, false)
	tests := []climate.Test{{Rate: 0.4, U: 0.05}}
	r := consult.Calculation{Compared: tests, Tests: []consult.Findings{{Test: record.Test{Session: record.Session{Date: "2026-05-14"}}}}}
	r.Climate = climate.Own(tests, []int{0})
	r.Climate.Codes = slices.Insert(r.Climate.Codes, 0, climate.MeasuredInWater)
	w := sp.Why(r)
	if w.Rule != sp.Say("heat.why.own") || w.Held != "" || w.Formula != "" || len(w.Steps) > 0 || !strings.HasPrefix(plain(w.Figure), "0.40 L/h") {
		t.Errorf("%+v", w)
	}
	if based := sp.Based(r); !strings.Contains(based, "for this pool and effort only") || !strings.Contains(based, "14 May") {
		t.Errorf("based on %q", based)
	}
	r.Climate = climate.Own(tests, nil)
	r.Climate.Codes = []string{climate.NoEstimate}
	if a := sp.Answer(r, NoDays); a.Figure != "" || !strings.Contains(sp.Based(r), "no estimate to drink by") {
		t.Errorf("elsewhere %q, %q", a.Figure, sp.Based(r))
	}
}

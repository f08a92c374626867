package handout

import (
	"strings"
	"testing"
)

// TestReportTellsCorrections: each corrected value stands in the report with
// before, after, when, by whom and why; a report without any has no such block.
func TestReportTellsCorrections(t *testing.T) {
	p, r := press(t), report()
	if all := strings.Join(texts(p.TestReport(r)), " "); strings.Contains(all, "Corrections") {
		t.Error("a report without corrections has the block")
	}
	r.Corrections = []Correction{{What: "Bottle after (1)", Change: "412 g → 430 g", When: "18 May 2026 12:41, Test Person", Why: "the slip was found"}}
	all := pressed(strings.Join(texts(p.TestReport(r)), ""))
	for _, part := range []string{"Corrections", "Bottle after (1)", "412 g → 430 g", "18 May 2026 12:41, Test Person", "the slip was found"} {
		if !strings.Contains(all, pressed(part)) {
			t.Errorf("%q is not to be read in %s", part, all)
		}
	}
	r.Terms.MassHidden = true
	r.Corrections[0].Why = "62.3 kg was read as 63.2 kg"
	if all := pressed(strings.Join(texts(p.TestReport(r)), "")); strings.Contains(all, "62.3") || strings.Contains(all, "63.2") {
		t.Error("a hidden mass stands in the reason of a correction")
	}
}

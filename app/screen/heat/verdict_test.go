package heat

import (
	"strings"
	"testing"

	"ebbwell/internal/climate"
	"ebbwell/internal/consult"
	"ebbwell/internal/figure"
)

// Of several athletes there is one verdict, that of whom the heat asks most of, with the one
// reason that decides it, once; a hotter day that asks for more is said behind it; who
// nothing is known of changes nothing, and of nobody nothing is said.
func TestOneVerdictTheWorst(t *testing.T) {
	sp := speaker(t, false, false)
	judged := func(name string, level climate.Level, over float64) Judged {
		r := consult.Calculation{CautionKnown: true, Caution: climate.Caution{
			Level: level, Decides: climate.CautionWettedness,
			Parts: []climate.CautionPart{
				{By: climate.CautionWBGT, Level: climate.UsualCare, Figure: figure.Figure{Known: true, Value: 24}},
				{By: climate.CautionWettedness, Level: level, Figure: figure.Figure{Known: true, Value: over}},
			},
		}}
		return Judged{Name: name, Calculation: r, Hot: r}
	}
	list := []Judged{judged("Nessa", climate.Watch, 0.9), judged("Odile", climate.Limit, 1.2), {Name: "Ravka"}, judged("Ilse", climate.Reduce, 1.05)}
	v := sp.Verdict(list)
	if v.Level != climate.Limit || v.Title != sp.Say("heat.verdict.limit") {
		t.Errorf("the verdict is %+v", v)
	}
	text := plain(v.Sentence)
	if strings.Count(text, "Odile") != 1 || strings.Contains(text, "WBGT") || strings.Count(text, "%") != 1 {
		t.Errorf("its reason: %q", text)
	}
	for _, name := range []string{"Nessa", "Ilse", "Ravka"} {
		if strings.Contains(text, name) {
			t.Errorf("%q names %s", text, name)
		}
	}
	list[0].Hot.Caution.Level = climate.Cancel
	if hotter := plain(sp.Verdict(list).Sentence); !strings.HasPrefix(hotter, text) || hotter == text {
		t.Errorf("a hot day that calls it off adds nothing to %q: %q", text, hotter)
	}
	for _, nobody := range [][]Judged{nil, {{Name: "Ravka"}}} {
		if v := sp.Verdict(nobody); v.Title != sp.Say("heat.caution.unknown") || v.Sentence != "" {
			t.Errorf("of nobody: %+v", v)
		}
	}
}

package findings

import (
	"strings"
	"testing"
	"time"

	"ebbwell/app/kit/amount"
	"ebbwell/internal/consult"
	"ebbwell/internal/fuel"
	"ebbwell/internal/quantity"
	"ebbwell/internal/record"
)

// TestRecordAndReasons: what was done about a gain, and why an unlikely value was
// kept, go along with the findings and so onto paper; where body mass is hidden the
// reason of a weighing does not.
func TestRecordAndReasons(t *testing.T) {
	w := english(t)
	test := whole()
	for i := range test.Weighings {
		if test.Weighings[i].Moment == record.After {
			test.Weighings[i].Mass = record.Num(64.2, quantity.Kilogram)
		}
	}
	at := time.Date(2026, 5, 18, 12, 24, 0, 0, time.UTC)
	consult.Note(&test, record.SafetyNote{Kind: record.SafetyAsked, Item: "headache", Answer: record.AnswerNo, Done: &at})
	consult.Note(&test, record.SafetyNote{Kind: record.SafetyTold, Item: consult.ToldName, Text: "A. Medic", Done: &at})
	in := inputOf(t, test)
	generic, err := fuel.Generic()
	if err != nil {
		t.Fatal(err)
	}
	in.Findings = consult.Find(test, in.Athlete, []record.RawText{{Field: "weighings.change", Reason: true, Text: "64.2 read twice"}}, consult.Setup{Pantry: consult.NewPantry(generic, nil)})
	said := func(hidden bool) string {
		var all []string
		for _, c := range (speaker{amount.Speaker{Words: w, By: amount.Writer{Words: w, Hidden: hidden}}}).cautions(in) {
			all = append(all, c.Title, c.Sentence)
		}
		return strings.Join(all, "\n")
	}
	for _, want := range []string{"A. Medic was told", "12:24", "Headache: no", "64.2 read twice"} {
		if !strings.Contains(said(false), want) {
			t.Errorf("the findings lack %q:\n%s", want, said(false))
		}
	}
	if strings.Contains(said(true), "64.2") {
		t.Errorf("the reason tells a hidden mass:\n%s", said(true))
	}
}

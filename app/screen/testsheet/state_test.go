package testsheet

import (
	"math"
	"testing"

	"pgregory.net/rapid"

	"ebbwell/app/apptest"
	"ebbwell/app/kit/amount"
	"ebbwell/app/screen/testsheet/findings"
	"ebbwell/internal/consult"
	"ebbwell/internal/evidence"
	"ebbwell/internal/fuel"
	"ebbwell/internal/quantity"
	"ebbwell/internal/record"
	"ebbwell/internal/sweat"
)

// anyNumber draws a number as a person may type it, or none.
func anyNumber(t *rapid.T, u quantity.Unit) record.Number {
	switch rapid.IntRange(0, 4).Draw(t, "kind") {
	case 0:
		return record.Number{}
	case 1:
		return record.Num(rapid.SampledFrom([]float64{0, -1, 1e300, -1e300, math.MaxFloat64, 1e-300}).Draw(t, "edge"), u)
	}
	return record.Num(rapid.Float64Range(0, 1000).Draw(t, "x"), u)
}

// anySheet draws a sheet filled in any way.
func anySheet(t *rapid.T) sheet {
	meta := func() record.Meta { return record.Meta{ID: record.NewID()} }
	clock := func(name string) record.Clock {
		return record.Clock(rapid.SampledFrom([]string{"", "14:00", "15:35", "00:10", "nonsense"}).Draw(t, name))
	}
	r := record.Test{Meta: meta(), State: record.TestState(rapid.SampledFrom([]string{"open", "waiting", "closed"}).Draw(t, "state"))}
	r.Session = record.Session{Date: "2026-05-14", Start: clock("start"), End: clock("end"), EndsNextDay: rapid.Bool().Draw(t, "next"), Effort: anyNumber(t, ""), Played: anyNumber(t, "min")}
	r.Air = record.Air{Temperature: anyNumber(t, "°C"), Humidity: anyNumber(t, "%")}
	r.Loss = record.Loss{Urine: anyNumber(t, "g"), NoUrine: rapid.Bool().Draw(t, "none"), Guess: anyNumber(t, "L")}
	r.Urine.Gravity = anyNumber(t, "")
	for range rapid.IntRange(0, 4).Draw(t, "weighings") {
		m := record.Moment(rapid.SampledFrom([]string{"before", "after", "morning"}).Draw(t, "moment"))
		r.Weighings = append(r.Weighings, record.Weighing{Meta: meta(), Moment: m, Mass: anyNumber(t, "kg")})
	}
	for range rapid.IntRange(0, 3).Draw(t, "bottles") {
		id := record.ID(rapid.SampledFrom([]string{"generic.water", "generic.drink-6", "", "gone"}).Draw(t, "what"))
		use := record.Use(rapid.SampledFrom([]string{"drunk", "shared", "poured-over", ""}).Draw(t, "use"))
		r.Bottles = append(r.Bottles, record.Bottle{Meta: meta(), ProductID: id, Use: use, Before: anyNumber(t, "g"), After: anyNumber(t, "g"), Volume: anyNumber(t, "mL"), ShareLow: anyNumber(t, "%")})
	}
	for range rapid.IntRange(0, 2).Draw(t, "foods") {
		r.Foods = append(r.Foods, record.FoodEaten{Meta: meta(), ProductID: "generic.banana", Portions: anyNumber(t, ""), Mass: anyNumber(t, "g")})
	}
	for range rapid.IntRange(0, 2).Draw(t, "patches") {
		r.Patches = append(r.Patches, record.Patch{Meta: meta(), Site: record.SiteForearmDorsal, On: clock("on"), Off: clock("off"), Sodium: anyNumber(t, "mmol/L"), AtLaboratory: true})
	}
	s := sheet{Record: r, Raw: map[string]string{}, Reasons: map[string]string{}}
	if rapid.Bool().Draw(t, "raw") {
		s.Raw["air.temperature"] = "warm"
	}
	return s
}

// Whatever a sheet holds, what is wrong with it can be said and has a place,
// there is a next step unless it is closed, and its findings can be worded.
func TestAnySheetCanBeSaid(t *testing.T) {
	generic, err := fuel.Generic()
	if err != nil {
		t.Fatal(err)
	}
	d, w := consult.Setup{Pantry: consult.NewPantry(generic, nil)}, apptest.Words(t)
	rapid.Check(t, func(t *rapid.T) {
		s := anySheet(t)
		f := consult.Find(s.Record, record.Athlete{Sex: record.Female}, s.Texts(refOf(s.Record)), d)
		wrong := troubles(s, f, nil, func(string, evidence.Problem) bool { return true })
		for _, hidden := range []bool{false, true} {
			by := amount.Speaker{Words: w, By: amount.Writer{Words: w, Hidden: hidden}}
			for _, tr := range wrong {
				if title, _ := (speaker{by}).trouble(s.Record, tr); title == "" || tr.part == "" {
					t.Errorf("%+v reads %q in part %q", tr, title, tr.part)
				}
			}
			in := findings.Input{Findings: f}
			findings.Rows(by, in)
			findings.Cautions(by, in)
			findings.Session(by, in)
		}
		complete(s, f, wrong)
		for _, part := range partList() {
			st := next(s, f, wrong, part)
			if s.Record.State == record.TestOpen && part != PartFindings && st.code == stepNone {
				t.Errorf("no next step on part %s", part)
			}
			if st.code == stepClose && (!f.Ready() || f.Waits()) {
				t.Errorf("a sheet may be closed that is not ready")
			}
		}
	})
}

func TestNextStep(t *testing.T) {
	bottle := []trouble{{code: codeProblem, part: PartBottles, bottle: 3, control: "testsheet.bottle.3.after",
		problem: evidence.Problem{Field: evidence.BottleMass, Item: 3, Code: evidence.CodeOrder, Severity: evidence.Refuses}}}
	asks := []trouble{{code: codeProblem, part: PartBottles, problem: evidence.Problem{Field: evidence.DrinkingRate, Severity: evidence.Warns}}}
	missing := consult.Findings{Sweat: sweat.Result{Missing: []sweat.Missing{{ID: sweat.MissingKit, Optional: true}, {ID: sweat.MissingUrine}}}}
	ready := consult.Findings{}
	ready.Sweat.Fluid.Rate.Known, ready.Sweat.Fluid.Rate.Ranged = true, true
	waits := ready
	waits.Test.Patches = []record.Patch{{AtLaboratory: true}}
	for name, c := range map[string]struct {
		state record.TestState
		f     consult.Findings
		wrong []trouble
		part  string
		want  string
		at    string
	}{
		"on to the next part":   {record.TestOpen, missing, nil, PartBefore, stepPart, ""},
		"wrong on this part":    {record.TestOpen, missing, bottle, PartBottles, stepBottle, "testsheet.bottle.3.after"},
		"wrong on another part": {record.TestOpen, missing, bottle, PartAfter, stepPart, ""},
		"a question only":       {record.TestOpen, missing, asks, PartBottles, stepPart, ""},
		"findings, wrong":       {record.TestOpen, ready, bottle, PartFindings, stepBottle, "testsheet.bottle.3.after"},
		"findings, missing":     {record.TestOpen, missing, nil, PartFindings, stepMissing, "testsheet.urine.passed"},
		"findings, ready":       {record.TestOpen, ready, asks, PartFindings, stepClose, ""},
		"findings, laboratory":  {record.TestOpen, waits, nil, PartFindings, stepWaiting, ""},
		"waiting":               {record.TestWaiting, waits, nil, PartUrine, stepNone, ""},
		"waiting, the value in": {record.TestWaiting, ready, nil, PartUrine, stepLate, ""},
		"closed":                {record.TestClosed, ready, nil, PartFindings, stepNone, ""},
		"closed, on a part":     {record.TestClosed, ready, nil, PartBefore, stepNone, ""},
	} {
		s := sheet{Record: record.Test{State: c.state}}
		got := next(s, c.f, c.wrong, c.part)
		if got.code != c.want || got.control != c.at {
			t.Errorf("%s: got %q at %q, want %q at %q", name, got.code, got.control, c.want, c.at)
		}
	}
}

func TestMorningsGoBackADay(t *testing.T) {
	test := record.Test{Session: record.Session{Date: "2026-05-14"}}
	for i, want := range []record.Date{"2026-05-14", "2026-05-13", "2026-05-12"} {
		if got := weighingAt(&test, record.Morning, i, true).Date; got != want {
			t.Errorf("morning %d is of %s, want %s", i+1, got, want)
		}
	}
	moveMornings(&test, "2026-05-14", "2026-05-15")
	if test.Weighings[0].Date != "2026-05-15" || test.Weighings[1].Date != "2026-05-13" {
		t.Errorf("moved to %+v", test.Weighings)
	}
}

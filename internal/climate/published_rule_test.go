package climate

import (
	"encoding/csv"
	"math"
	"os"
	"strings"
	"testing"

	"ebbwell/internal/published"
	"ebbwell/internal/quantity"
)

// ruleRow is one estimate of the rows: whose, from which tests, of what.
type ruleRow struct {
	body  Body
	tests []Test
	plan  Session
}

// ruleRows reads the sessions behind testdata/published/estimate.csv.
func ruleRows(t *testing.T) map[string]*ruleRow {
	t.Helper()
	text, err := os.Open("../../testdata/estimate/sessions.csv")
	if err != nil {
		t.Fatal(err)
	}
	defer func() { _ = text.Close() }()
	records, err := csv.NewReader(text).ReadAll()
	if err != nil {
		t.Fatal(err)
	}
	rows := map[string]*ruleRow{}
	for _, rec := range records[1:] {
		row := rows[rec[0]]
		if row == nil {
			row = &ruleRow{}
			rows[rec[0]] = row
		}
		in := inputsOf(t, rec[2])
		switch rec[1] {
		case "athlete":
			row.body = Body{quantity.Kilograms(in.number("mass")), quantity.Metres(in.number("height"))}
		case "plan":
			row.plan = in.session()
		case "test":
			row.tests = append(row.tests, Test{Session: in.session(), Rate: quantity.LitresPerHour(in.number("rate")),
				U: quantity.LitresPerHour(in.number("u")), MonthsAgo: in.number("months")})
		}
	}
	return rows
}

// inputs are named values of a row.
type inputs struct {
	t      *testing.T
	values map[string]string
}

func inputsOf(t *testing.T, text string) inputs {
	t.Helper()
	in := inputs{t, map[string]string{}}
	for _, pair := range strings.Split(text, ";") {
		name, value, ok := strings.Cut(strings.TrimSpace(pair), "=")
		if !ok {
			t.Fatalf("not name=value: %q", pair)
		}
		in.values[name] = value
	}
	return in
}

func (in inputs) number(name string) float64 {
	in.t.Helper()
	return parseNumber(in.t, in.values[name])
}

// session makes a session whose vapour, radiant temperature, effort and air
// past the body are given.
func (in inputs) session() Session {
	in.t.Helper()
	radiant := quantity.Celsius(in.number("radiant"))
	air := Air{quantity.Celsius(in.number("air")), quantity.Kilopascals(in.number("vapour"))}
	motion := map[string]Motion{"on foot": OnFoot, "seated": Cycling}[in.values["posture"]]
	e := Effort{Kind: EffortKind(in.values["effort"]), Motion: motion, Work: quantity.WattsPerSquareMetre(in.number("work")),
		OwnSpeed: quantity.MetresPerSecond(in.number("past"))}
	e.Metabolic.Known, e.Metabolic.Value = true, in.number("metabolic")
	return Session{
		Weather: Weather{Temperature: air.Temperature, Humidity: air.Humidity(), Sun: SunNone, Radiant: &radiant},
		Effort:  e, Clothing: Clothing{Insulation: Clo(in.number("clo"))}, State: HeatState(in.values["state"]),
		Minutes: quantity.Minutes(in.number("minutes")),
	}
}

// TestPublishedEstimate holds the rule against rows of an independent
// implementation of it, 0 to 20 tests.
func TestPublishedEstimate(t *testing.T) {
	rows := ruleRows(t)
	published.WalkAll(t, "estimate", func(in published.In) any {
		row := rows[in.Text("session")]
		if row == nil {
			t.Fatalf("no session %q", in.Text("session"))
		}
		s, err := NewTestSet(Athlete{Body: row.body}, row.tests)
		if err != nil {
			t.Fatal(err)
		}
		b, err := s.Estimate(row.plan)
		if err != nil || len(s.refused) > 0 {
			t.Fatal(err, s.refused)
		}
		d := demandOf(b.Balance, row.plan)
		switch in.Case() {
		case "need W/m²":
			return b.Balance.Need
		case "capacity W/m²":
			return b.Balance.Capacity
		case "smooth need W/m²":
			return d.need
		case "middle L/h":
			return b.Rate.Value
		case "low end L/h":
			return b.Rate.Range.Low
		case "high end L/h":
			return b.Rate.Range.High
		case "spread":
			return b.Rate.U / b.Rate.Value
		case "share not tested":
			return b.NotTested
		case "oddest test":
			most := 0.0
			for _, odd := range s.odd {
				most = math.Max(most, odd)
			}
			return most
		}
		return "no such case"
	})
}

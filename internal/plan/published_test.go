package plan

import (
	"bytes"
	"encoding/csv"
	"fmt"
	"math"
	"os"
	"strconv"
	"strings"
	"testing"

	"ebbwell/internal/fuel"
	"ebbwell/internal/sweat"
)

// published is one row of a table of published values.
type published struct {
	check, source string
	inputs        map[string]string
	expected      float64
	tolerance     float64 // relative, absolute about zero
}

// number reads an input of a row; a missing or unreadable one fails the test.
func (r published) number(t *testing.T, key string) float64 {
	t.Helper()
	x, err := strconv.ParseFloat(r.inputs[key], 64)
	if err != nil {
		t.Fatalf("input %q: %v", key, err)
	}
	return x
}

// readPublished reads testdata/published/name.csv; no rows, an unknown column
// or a row without source and sureness fail.
func readPublished(t *testing.T, name string) []published {
	t.Helper()
	text, err := os.ReadFile("../../testdata/published/" + name + ".csv")
	if err != nil {
		t.Fatal(err)
	}
	lines, err := csv.NewReader(bytes.NewReader(text)).ReadAll()
	if err != nil || len(lines) < 2 {
		t.Fatalf("%d rows: %v", len(lines), err)
	}
	if got := strings.Join(lines[0], ","); got != "case,inputs,expected,tolerance,source,sure" {
		t.Fatalf("columns %s", got)
	}
	var rows []published
	for i, l := range lines[1:] {
		r := published{check: l[0], source: l[4] + " [" + l[5] + "]", inputs: map[string]string{}}
		for _, pair := range strings.Fields(l[1]) {
			key, value, _ := strings.Cut(pair, "=")
			r.inputs[key] = value
		}
		var err1, err2 error
		r.expected, err1 = strconv.ParseFloat(l[2], 64)
		r.tolerance, err2 = strconv.ParseFloat(l[3], 64)
		if err1 != nil || err2 != nil || l[4] == "" || !strings.Contains("RSMDPC", l[5]) || len(l[5]) != 1 {
			t.Fatalf("row %d: %v", i+1, l)
		}
		rows = append(rows, r)
	}
	return rows
}

// walk holds every row of a table against what compute makes of it.
func walk(t *testing.T, name string, compute func(t *testing.T, r published) float64) {
	t.Helper()
	for i, r := range readPublished(t, name) {
		t.Run(fmt.Sprintf("%02d %s %s", i+1, r.check, r.source), func(t *testing.T) {
			got := compute(t, r)
			room := r.tolerance * math.Abs(r.expected)
			if r.expected == 0 {
				room = r.tolerance
			}
			if !(math.Abs(got-r.expected) <= room+1e-12) {
				t.Errorf("%s %v: got %g, published %g within %g", r.check, r.inputs, got, r.expected, room)
			}
		})
	}
}

// rowPlanner is the planner that a row describes: a loss of so many L in so
// many minutes, with the range of one test.
func rowPlanner(t *testing.T, r published) (*Planner, Mix) {
	t.Helper()
	minutes := r.number(t, "minutes")
	rate := r.or(t, "rate", r.or(t, "loss", 0)/(minutes/60))
	span := sweat.PlannedRange(rate, 0, 1)
	b := Basis{SweatRate: Between(rate, span.Low, span.High), Body: Body{MassKg: r.number(t, "kg")}}
	if r.inputs["tight"] != "" {
		b.SweatRate = Between(rate, rate, rate)
	}
	if c := r.or(t, "concentration", 0); c > 0 {
		b.Sodium = Between(c, c, c)
	}
	b.Usual = Usual{Known: r.inputs["usual"] != "", LH: r.or(t, "usual", 0)}
	m := NewMenu()
	if err := m.SetDrink(Drink1, find(t, "drink-6")); err != nil {
		t.Fatal(err)
	}
	m[Drink2] = Item{InUse: true, ID: "bottle", Step: 1, Unit: Unit{
		FluidL: 0.5, CarbohydrateG: r.or(t, "grams", 0), Split: fuel.Split{Unknown: r.or(t, "grams", 0)}, SodiumMg: r.or(t, "sodium", 0),
	}}
	m[Food1] = Item{InUse: true, ID: "snack", Step: 1, Unit: Unit{CarbohydrateG: 1, Split: fuel.Split{Glucose: 1}}}
	s := Session{Minutes: [Lengths]float64{minutes, minutes, minutes}, Effort: fuel.Hard, Intermittent: true}
	return newPlanner(t, b, s, m, Aim{}), Mix{
		Water: r.or(t, "water", 0), Drink1: r.or(t, "six", 0), Drink2: r.or(t, "drink", 0), Food1: r.or(t, "snack", 0),
	}
}

// or reads an input that may be absent.
func (r published) or(t *testing.T, key string, other float64) float64 {
	t.Helper()
	if r.inputs[key] == "" {
		return other
	}
	return r.number(t, key)
}

// one is 1 where something holds, 0 where not.
func one(holds bool) float64 {
	if holds {
		return 1
	}
	return 0
}

func TestPublishedCommonPractice(t *testing.T) {
	walk(t, "common_practice", func(t *testing.T, r published) float64 {
		switch r.check {
		case "before inside early":
			return one(inRange(fuel.BeforeFourHours(r.number(t, "kg")).Range, r.number(t, "litres")))
		case "before inside late":
			return one(inRange(fuel.BeforeTwoHours(r.number(t, "kg")).Range, r.number(t, "litres")))
		}
		p, mix := rowPlanner(t, r)
		q := p.Evaluate(Expected, mix)
		switch r.check {
		case "sweat rate":
			return q.LossL.Value / (q.Minutes / 60)
		case "deficit":
			return q.Deficit.Value
		case "carbohydrate rate":
			return q.Carbohydrate.TotalGH
		case "drinking rate":
			return q.Fluid.RateLH
		case "sodium in":
			return q.Sodium.InMg
		case "sodium loss rate":
			return q.Sodium.LossMgH.Value
		case "sodium loss":
			return q.Sodium.LossMg.Value
		case "stomach guard":
			return one(q.Guards.Has(OverStomach))
		case "over usual guard":
			return one(q.Guards.Has(OverUsual))
		}
		t.Fatalf("case %q", r.check)
		return 0
	})
}

func TestPublishedSchedule(t *testing.T) {
	walk(t, "schedule", func(t *testing.T, r published) float64 {
		switch r.check {
		case "limit litres":
			b := Basis{SweatRate: Between(1, 1, 1), Body: Body{MassKg: r.number(t, "kg")}}
			p := newPlanner(t, b, Session{Minutes: [Lengths]float64{60, 60, 60}}, NewMenu(), Aim{})
			if p.limit != r.number(t, "percent") {
				t.Fatalf("the limit is %g %%", p.limit)
			}
			return p.limit / p.percent(1)
		case "mouthful":
			return float64(UsualMouthful(sweat.Sex(r.inputs["sex"])))
		case "stomach low":
			return StomachTakes(r.inputs["running"] == "yes").Low
		case "stomach high":
			return StomachTakes(r.inputs["running"] == "yes").High
		case "ceiling share":
			p, _ := rowPlanner(t, r)
			return p.CeilingOf(Expected).FluidL / p.Evaluate(Expected, Mix{}).LossL.Value
		case "ceiling deficit":
			p, mix := rowPlanner(t, r)
			mix[Water] = p.CeilingOf(Expected).FluidL * 1000
			return p.Evaluate(Expected, mix).Deficit.Value
		case "step fluid":
			return DefaultStepRules().FluidLH
		case "step carbohydrate":
			return DefaultStepRules().CarbohydrateGH
		case "step sessions":
			return float64(DefaultStepRules().Sessions)
		}
		return chanceRow(t, r)
	})
}

// chanceRow counts chances or their seconds.
func chanceRow(t *testing.T, r published) float64 {
	t.Helper()
	var list []Chance
	if r.inputs["sets"] != "" {
		var sets []TennisSet
		for _, s := range strings.Split(r.inputs["sets"], ",") {
			var set TennisSet
			if _, err := fmt.Sscanf(s, "%d-%d", &set.Won, &set.Lost); err != nil {
				t.Fatal(err)
			}
			sets = append(sets, set)
		}
		var err error
		if list, err = TennisChances(sets, 100); err != nil {
			t.Fatal(err)
		}
	}
	heat := Temperate
	if r.inputs["heat"] == "hot" {
		heat = Hot
	}
	for _, s := range sports(t) {
		if s.Code == r.inputs["sport"] {
			list = append(list, s.Chances(100, heat)...)
		}
	}
	seconds := 0.0
	for _, c := range list {
		seconds += c.Seconds
		if r.check == "seconds of" && c.Code == r.inputs["chance"] {
			return c.Seconds
		}
	}
	switch r.check {
	case "chances", "tennis chances":
		return float64(len(list))
	case "tennis seconds":
		return seconds
	}
	t.Fatalf("case %q", r.check)
	return 0
}

func TestPublishedCarbohydrateRate(t *testing.T) {
	walk(t, "carbohydrate_rate", func(t *testing.T, r published) float64 {
		switch r.check {
		case "rate":
			return hourOf(t, r.number(t, "every"), Item{InUse: true, Step: 1, Unit: Unit{CarbohydrateG: r.number(t, "grams")}}, 1)
		case "drink rate":
			perML := Unit{FluidL: 0.001, CarbohydrateG: r.number(t, "strength") / 100}
			return hourOf(t, r.number(t, "every"), Item{InUse: true, Step: 1, Unit: perML}, r.number(t, "ml"))
		case "hold":
			c, rate := r.number(t, "concentration"), r.number(t, "rate")
			b := Basis{SweatRate: Between(rate, rate, rate), Sodium: Between(c, c, c), Body: Body{MassKg: 70}}
			p := newPlanner(t, b, Session{Minutes: [Lengths]float64{60, 60, 60}}, NewMenu(), Aim{})
			return p.Evaluate(Expected, Mix{Water: 1000 * rate * r.number(t, "share")}).Sodium.HoldMgH.Value
		case "drunk mmol":
			p := courtPlanner(t)
			return p.Evaluate(Expected, Mix{Water: r.number(t, "ml"), Salt: r.number(t, "salt")}).Sodium.DrunkMmolL
		}
		t.Fatalf("case %q", r.check)
		return 0
	})
}

// hourOf takes an amount of an item every so many minutes for an hour, and
// returns the carbohydrate rate.
func hourOf(t *testing.T, every float64, item Item, amount float64) float64 {
	t.Helper()
	m := NewMenu()
	m[Food1] = item
	b := Basis{SweatRate: Between(1, 1, 1), Body: Body{MassKg: 70}}
	p := newPlanner(t, b, Session{Minutes: [Lengths]float64{60, 60, 60}}, m, Aim{})
	var chances []Chance
	for at := every; at <= 60; at += every {
		chances = append(chances, Chance{Minute: at, CanEat: true})
	}
	return p.Evaluate(Expected, Mix{Food1: amount * float64(len(chances))}).Carbohydrate.TotalGH
}

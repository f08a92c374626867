package proposal

import (
	"fmt"
	"math"
	"strconv"
	"strings"
	"testing"

	"ebbwell/internal/evidence"
	"ebbwell/internal/published"
)

// TestPublished holds the proposals against written cases.
func TestPublished(t *testing.T) {
	cases := writtenCases(t)
	of := func(in published.In) *written {
		w, ok := cases[in.Text("name")]
		if !ok {
			in.TB().Fatal("no case of that name")
		}
		return w
	}
	published.WalkAll(t, "proposals", func(in published.In) any {
		if in.Case() == "proposal" {
			for name := range cases[in.Text("name")].inputs {
				in.Has(name)
			}
		}
		w := of(in)
		p := Propose(&w.Case)
		switch what, way, _ := strings.Cut(in.Case(), " "); what {
		case "proposal":
			return w.summary(&p)
		case "aim":
			return w.mix(p.Routes[wayOf(way)].Aim)
		case "steps":
			if way == "before event" {
				return float64(min(StepsBefore(in.Number("days")), len(p.Routes[p.Pick].Steps)))
			}
			var list []string
			for _, s := range p.Routes[wayOf(way)].Steps {
				list = append(list, w.mix(s.Mix))
			}
			return strings.Join(list, " | ")
		case "breaks":
			return p.Limits.BreaksML
		case "reach":
			return p.Limits.ReachML
		case "need":
			return p.Limits.NeedML
		case "limit":
			return p.Limits.LimitML
		}
		mix := w.Habit
		if p.Outcome != Nothing {
			mix = p.Routes[p.Pick].Aim
		}
		return w.EndPercent(w.SumOf(mix))
	})
}

func wayOf(letter string) Way {
	if letter == "B" {
		return WithFood
	}
	return DrinksAlone
}

// summary words what is compared exactly.
func (w *written) summary(p *Proposal) string {
	list := []string{
		fmt.Sprintf("target %.0f", p.Limits.TargetML), fluidWord(&p.Limits),
		[...]string{Nothing: "nothing", Change: "more", DrinkLess: "less", Stuck: "stuck"}[p.Outcome],
	}
	if p.Outcome != Nothing {
		list = append(list, "pick "+[...]string{"A", "B"}[p.Pick])
	}
	for way, r := range p.Routes {
		if r.Exists {
			list = append(list, fmt.Sprintf("%s %d %d %d at %.3f", [...]string{"A", "B"}[way], r.Misses.Fluid, r.Misses.Carbohydrate, r.Misses.Sodium, r.Cost))
		}
	}
	salt := 0
	if p.Wants.Sodium {
		salt = 450
	}
	aim := p.Wants.TargetGH
	if w.Gained {
		aim = CarbohydrateAim(&w.Case)
	}
	return strings.Join(append(list, fmt.Sprintf("fuel %.1f", aim*w.hours()), fmt.Sprintf("salt %d", salt)), ", ")
}

func fluidWord(l *Limits) string {
	word := [...]string{Unsure: "keep", Less: "less", Keep: "keep", NoRoom: "full", More: "more"}[l.Case]
	if l.Case == More && l.Clash {
		word = "moreclash"
	}
	return word
}

// written is a case as it is written in the table.
type written struct {
	Case
	names  []string
	inputs map[string]string
}

// mix words a mix in the order of the menu.
func (w *written) mix(m Mix) string {
	var list []string
	for _, name := range w.order() {
		if x := m[slotOf(w.names, name)]; x != 0 {
			list = append(list, strconv.FormatFloat(x, 'f', -1, 64)+" "+name)
		}
	}
	if len(list) == 0 {
		return "0"
	}
	return strings.Join(list, " + ")
}

// order is the habit's things first, then the menu's.
func (w *written) order() []string {
	var list []string
	seen := map[string]bool{}
	for _, part := range strings.Split(w.inputs["habit"], " + ") {
		if _, name, ok := strings.Cut(part, " "); ok {
			list, seen[name] = append(list, name), true
		}
	}
	for _, name := range w.names {
		if !seen[name] {
			list = append(list, name)
		}
	}
	return list
}

func slotOf(names []string, name string) int {
	for i, n := range names {
		if n == name {
			return i
		}
	}
	return -1
}

// things are what the written cases choose from.
func things() map[string]Source {
	return map[string]Source{
		"water":    {Kind: Water, SodiumMg: 0.03},
		"sport6":   {Kind: Drink, CarbohydrateG: 0.060, SodiumMg: 0.46},
		"light4":   {Kind: Drink, CarbohydrateG: 0.040, SodiumMg: 0.46},
		"gel":      {Kind: Gel, CarbohydrateG: 26, SodiumMg: 50, FoodWaterML: 23},
		"banana":   {Kind: Food, CarbohydrateG: 24, SodiumMg: 1, FoodWaterML: 88},
		"sandwich": {Kind: Food, CarbohydrateG: 39.5, SodiumMg: 281, FoodWaterML: 26},
		"ricesq":   {Kind: Food, CarbohydrateG: 30, SodiumMg: 306, FoodWaterML: 56},
		"date":     {Kind: Food, CarbohydrateG: 16, SodiumMg: 1, FoodWaterML: 5, Whole: true},
		"salt":     {Kind: Salt, SodiumMg: 393.4},
	}
}

// writtenCases reads the cases of the table.
func writtenCases(t *testing.T) map[string]*written {
	t.Helper()
	rows, err := published.Rows("proposals")
	if err != nil {
		t.Fatal(err)
	}
	all := map[string]*written{}
	for _, r := range rows {
		if r.Case == "proposal" {
			all[r.Inputs["name"]] = readWritten(t, r.Inputs)
		}
	}
	return all
}

func readWritten(t *testing.T, in map[string]string) *written {
	t.Helper()
	num := func(name string) float64 {
		x, err := strconv.ParseFloat(in[name], 64)
		if err != nil {
			t.Fatalf("%s: %s is no number: %q", in["name"], name, in[name])
		}
		return x
	}
	w := &written{inputs: in}
	w.Case = Case{
		Minutes: num("minutes"), LossML: 1000 * num("loss"), LowML: 1000 * num("low"), BreathML: 1000 * num("breath"),
		MassKg: num("kg"), DeficitAim: num("aim"), Age: Is(num("age")), Stomach: Is(num("stomach")), Confidence: Is(num("confidence")),
		Hidden: in["hidden"] != "", Running: in["running"] != "", Light: in["effort"] == "easy",
		PastLowSodium: in["past-low-sodium"] != "", Gained: in["gained"] != "", NoFood: in["no-food"] != "",
		NoMoreDrink: in["no-more-drink"] != "", NoNewDrink: in["no-new-drink"] != "", Tested: true,
	}
	if in["sodium"] != "" {
		w.SodiumMmolL = Is(num("sodium"))
	}
	if in["carbohydrate"] != "" {
		w.Carbohydrate = Is(num("carbohydrate"))
	}
	switch {
	case w.Minutes < 45:
	case w.Minutes < 75:
		w.AdviceMost = 30
	case w.Minutes <= 150:
		w.AdviceMost = 60
	default:
		w.AdviceMost = 90
	}
	w.names = strings.Fields(in["menu"])
	for i, name := range w.names {
		w.Sources[i] = things()[name]
	}
	for _, part := range strings.Split(in["habit"], " + ") {
		if amount, name, ok := strings.Cut(part, " "); ok {
			x, err := strconv.ParseFloat(amount, 64)
			if slot := slotOf(w.names, name); err == nil && slot >= 0 {
				w.Habit[slot] = x
				continue
			}
			t.Fatalf("%s: habit %q", in["name"], part)
		}
	}
	readChances(t, w, in["chances"])
	return w
}

// readChances reads "minute:seconds", 0 for a carried bottle, ? for one that
// may not happen, e for one that lets one eat; and what they carry.
func readChances(t *testing.T, w *written, text string) {
	t.Helper()
	var minutes []float64
	for _, field := range strings.Fields(text) {
		at, rest, _ := strings.Cut(field, ":")
		digits := strings.TrimRight(rest, "e?")
		minute, err1 := strconv.ParseFloat(at, 64)
		seconds, err2 := strconv.ParseFloat(digits, 64)
		if err1 != nil || err2 != nil {
			t.Fatalf("chance %q", field)
		}
		minutes = append(minutes, minute)
		w.Chances = append(w.Chances, Chance{Seconds: seconds, CanEat: strings.Contains(rest, "e"), Certain: !strings.Contains(rest, "?")})
	}
	w.BreaksML = carried(w, minutes)
}

// carried is what the breaks carry: certain chances in full, others half of
// what is comfortable, clipped by the stomach (500 mL in it, emptying 18 mL/min,
// running 12) and by the low end of the loss until then.
func carried(w *written, minutes []float64) float64 {
	empties, inside, last, drunk := 18.0, 0.0, 0.0, 0.0
	if w.Running {
		empties = 12
	}
	for i, at := range w.Chances {
		most := min(500, 8*max(8, 0.35*at.Seconds))
		comfortable := 0.7 * most
		switch {
		case at.Seconds == 0:
			most, comfortable = 250, 150
		case at.Seconds <= 8:
			comfortable = most
		}
		if !at.Certain {
			most = comfortable / 2
		}
		inside = max(0, inside-empties*(minutes[i]-last))
		last = minutes[i]
		now := max(0, min(most, 500-inside, w.LowML*minutes[i]/w.Minutes-drunk))
		inside, drunk = inside+now, drunk+now
	}
	return drunk
}

const daysAWeek = 7

// StepsBefore is how many steps of a week begin before the days in which
// nothing changes, for an event some days away.
func StepsBefore(days float64) int {
	if days < evidence.StepClearDaysHigh {
		return 0
	}
	return int(min(evidence.StepsMost, 1+math.Floor((days-evidence.StepClearDaysHigh)/daysAWeek+roundingTolerance)))
}

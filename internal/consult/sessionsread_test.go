package consult

import (
	"encoding/csv"
	"fmt"
	"os"
	"strconv"
	"strings"
	"testing"
	"time"

	"ebbwell/internal/evidence"
	"ebbwell/internal/plan"
	"ebbwell/internal/plan/proposal"
	"ebbwell/internal/quantity"
	"ebbwell/internal/record"
)

// readSession is a session of testdata/sessions_read.csv: what was measured, and within
// what a practitioner signs what is proposed (common practice, no source).
type readSession struct {
	t   *testing.T
	row map[string]string
}

func (s readSession) num(column string) float64 {
	if s.row[column] == "" {
		return 0
	}
	x, err := strconv.ParseFloat(s.row[column], 64)
	if err != nil {
		s.t.Fatal(err)
	}
	return x
}

func readSessions(t *testing.T) []readSession {
	t.Helper()
	file, err := os.Open("testdata/sessions_read.csv")
	if err != nil {
		t.Fatal(err)
	}
	rows, err := csv.NewReader(file).ReadAll()
	if err != nil {
		t.Fatal(err)
	}
	if err := file.Close(); err != nil {
		t.Fatal(err)
	}
	var all []readSession
	for _, row := range rows[1:] {
		s := readSession{t, map[string]string{}}
		for i, column := range rows[0] {
			s.row[column] = row[i]
		}
		all = append(all, s)
	}
	return all
}

// records are the sheet and the athlete of a session.
func (s readSession) records(d Setup) (record.Test, record.Athlete) {
	sheet, a := caseSheet()
	g := func(x float64) record.Number { return record.Num(x, quantity.Gram) }
	kg := s.num("kg")
	a.Born, a.Sex, a.Sport = record.Date(s.row["born"]), record.Sex(s.row["sex"]), s.row["sport"]
	a.Height, a.UsualMass = record.Num(s.num("m"), quantity.Metre), record.Num(kg, quantity.Kilogram)
	a.MassHidden, a.MassHiddenSettled = s.row["hidden"] == "yes", true
	if s.row["past_low_sodium"] == "yes" {
		a.Flags = []record.Flag{{Kind: record.FlagHyponatraemia, Physician: "Doctor"}}
	}
	if kind := record.FlagKind(s.row["flag"]); kind != "" {
		a.Flags = append(a.Flags, record.Flag{Kind: kind, Physician: "Doctor"})
	}
	sheet.Session.Sport, sheet.Session.Place = s.row["sport"], s.row["session"]
	sheet.Session.Effort = record.Num(s.num("effort"), quantity.None)
	if x := s.num("speed"); x > 0 {
		sheet.Session.Speed = record.Num(x, quantity.KilometrePerHour)
	}
	if x := s.num("power"); x > 0 {
		sheet.Session.Power = record.Num(x, quantity.Watt)
	}
	sheet.Session.Start, sheet.Session.End = "10:00", record.ClockAt(600+s.num("minutes"))
	sheet.Air = record.Air{
		Temperature: record.Num(s.num("air"), quantity.DegreeCelsius), Humidity: record.Num(s.num("humidity"), quantity.PerCent),
		Wind: record.Num(1.5, quantity.MetrePerSecond), Sun: record.Sun(s.row["sun"]), Clothing: "shirt-shorts",
	}
	sheet.Foods, sheet.Patches, sheet.Loss.NoStool = nil, nil, true
	sheet.Bottles = []record.Bottle{{Meta: record.Meta{ID: "b1"}, ProductID: Water, Name: "Water", Before: g(s.num("water") + 100), After: g(100), Use: record.UseDrunk}}
	if x := s.num("drink"); x > 0 {
		sheet.Bottles = append(sheet.Bottles, record.Bottle{Meta: record.Meta{ID: "b2"}, ProductID: "generic.drink-6", Name: "Sports drink 6 %", Before: g(x + 100), After: g(100), Use: record.UseDrunk})
	}
	taken := (s.num("water") + s.num("drink")) / 1000
	for _, food := range [...]struct{ id, column string }{{"generic.gel", "gels"}, {"generic.banana", "bananas"}, {"generic.rice-square", "squares"}} {
		if n := s.num(food.column); n > 0 {
			p, _ := d.Pantry.Find(record.ID(food.id))
			taken += n * p.Portion.Grams / 1000
			sheet.Foods = append(sheet.Foods, record.FoodEaten{Meta: record.Meta{ID: record.ID(food.id)}, ProductID: record.ID(food.id), Name: p.Name, Portions: record.Num(n, quantity.Portion)})
		}
	}
	sheet.Feeling.Stomach = record.Num(s.num("stomach"), quantity.None)
	sheet.Weighings[0].Mass = record.Num(kg, quantity.Kilogram)
	sheet.Weighings[1].Mass = record.Num(kg-s.num("lost")+taken, quantity.Kilogram)
	return sheet, a
}

// open opens the plan of a session at its habit.
func (s readSession) open() (*Case, record.Plan) {
	d := testSetup(s.t)
	sheet, a := s.records(d)
	now := time.Date(2026, 5, 18, 12, 0, 0, 0, time.UTC)
	b, err := BasisOf(a, []Findings{Find(sheet, a, nil, d)}, now, d)
	if err != nil {
		s.t.Fatal(err)
	}
	p, err := NewPlan(a, b, d, Names{"Habit", "Without food", "With food", "Aim"}, now)
	if err != nil {
		s.t.Fatal(err)
	}
	if s.row["session"] != "" {
		p.Target.SessionName = s.row["session"]
	}
	if x := s.num("most_lh"); x > 0 {
		p.Aims.Drinking = record.Num(x, quantity.LitrePerHour)
	}
	c, err := OpenCase(p, a, b, d)
	if err != nil {
		s.t.Fatal(err)
	}
	return &c, p
}

// TestSessionsAsRead: sessions as they come, and within what a strict practitioner signs what
// is proposed for them: how much to eat on how much drink, where the day ends, what an
// hour brings.
func TestSessionsAsRead(t *testing.T) {
	for _, s := range readSessions(t) {
		t.Run(s.row["name"], func(t *testing.T) {
			s.t = t
			c, p := s.open()
			option, _ := OptionOf(p, record.OptionHabit)
			habit := c.MixOf(option)
			found := c.Planner.Propose(RulesOf(p))
			if got := [...]string{proposal.Nothing: "nothing", proposal.Change: "change", proposal.DrinkLess: "less", proposal.Stuck: "stuck"}[found.Outcome]; got != s.row["outcome"] {
				t.Errorf("%s, signed was %s", got, s.row["outcome"])
			}
			aim := habit
			if r := found.Picked(); r.Exists {
				aim = plan.Mix(r.Aim)
			}
			if why := s.refused(c, aim); why != "" {
				t.Errorf("%s: %s", s.text(c, aim), why)
			}
			s.steps(c, &found, habit)
			s.firstAtOnce(c, &found, habit)
		})
	}
}

// pieces are the gels and all that is eaten.
func (s readSession) pieces(c *Case, m plan.Mix) (gels, all float64) {
	for f := plan.Food1; f <= plan.Food4; f++ {
		all += m[f]
		if c.Slots[f].Product.ID == "generic.gel" {
			gels += m[f]
		}
	}
	return gels, all
}

// refused is why a practitioner would not sign an aim.
func (s readSession) refused(c *Case, m plan.Mix) string {
	q := c.Planner.Evaluate(plan.Expected, m)
	gels, pieces := s.pieces(c, m)
	end, ml, fuel := -q.Deficit.Value, q.Fluid.DrunkL*1000, q.Carbohydrate.TotalGH
	switch {
	case end < s.num("end_low") || end > s.num("end_high"):
		return fmt.Sprintf("ends at %.2f %%", end)
	case gels > s.num("gels_most"):
		return fmt.Sprintf("%g gels", gels)
	case pieces > s.num("pieces_most"):
		return fmt.Sprintf("%g things to eat", pieces)
	case pieces > 0 && ml < pieces*s.num("ml_a_piece"):
		return fmt.Sprintf("%.0f mL for each thing to eat", ml/pieces)
	case fuel < s.num("fuel_low") || fuel > s.num("fuel_high"):
		return fmt.Sprintf("%.1f g/h", fuel)
	case q.Guards.Has(plan.DryFood):
		return "gels without their water"
	}
	return ""
}

// steps holds every step of both ways: no guard that the habit is without but for what a
// step is there to do, and nothing less to drink unless that is what is proposed.
func (s readSession) steps(c *Case, found *proposal.Proposal, habit plan.Mix) {
	const meant = plan.OverUsual | plan.NearStomach | plan.PastLimit
	was := c.Planner.Evaluate(plan.Expected, habit)
	for way, r := range found.Routes {
		for k, step := range r.Steps {
			q := c.Planner.Evaluate(plan.Expected, plan.Mix(step.Mix))
			if cautioned := q.Guards &^ was.Guards &^ meant; cautioned != 0 {
				s.t.Errorf("way %d, step %d: %s: %v", way, k, s.text(c, plan.Mix(step.Mix)), cautioned.Codes())
			}
			least := proposal.FloorTo(was.Fluid.DrunkL*1000, evidence.ProposalWater) // what was poured is on no increment
			if found.Limits.Case == proposal.Unsure && q.Fluid.FoodWaterL > was.Fluid.FoodWaterL {
				least -= evidence.ProposalWater // in place of what food brings
			}
			if s.num("minutes") > evidence.WaterKeptPast && habit[plan.Water] > 0 && step.Mix[plan.Water] == 0 {
				s.t.Errorf("way %d, step %d: %s: no plain water", way, k, s.text(c, plan.Mix(step.Mix)))
			}
			if q.Fluid.DrunkL*1000 < least-1e-6 && found.Outcome != proposal.DrinkLess {
				s.t.Errorf("way %d, step %d: %s: less than was drunk", way, k, s.text(c, plan.Mix(step.Mix)))
			}
		}
	}
}

// firstAtOnce holds the breaks of a first step: none of them has more than is
// comfortable there, to a mouthful and what one bottle needs, unless about as much was
// drunk at once in the test.
func (s readSession) firstAtOnce(c *Case, found *proposal.Proposal, habit plan.Mix) {
	const about = 1.25
	var was, first plan.Schedule
	c.Schedule(habit, &was)
	atOnce := 0
	for _, take := range was.Takes {
		atOnce = max(atOnce, take.ML)
	}
	for way, r := range found.Routes {
		if !r.Exists {
			continue
		}
		c.Schedule(plan.Mix(r.Steps[0].Mix), &first)
		for _, take := range first.Takes {
			comfortable := evidence.OneBottleOver*take.Chance.ComfortableML() + float64(MouthfulOf(c.Athlete))
			if float64(take.ML) > max(comfortable, about*float64(atOnce)) {
				s.t.Errorf("way %d: %d mL at minute %.0f in the first step, at most %d at once before", way, take.ML, take.Chance.Minute, atOnce)
			}
		}
	}
}

// text is a mix in words.
func (s readSession) text(c *Case, m plan.Mix) string {
	var parts []string
	for i, x := range m {
		switch {
		case !(x > 0):
		case plan.Slot(i) == plan.Salt:
			parts = append(parts, fmt.Sprintf("%g g salt", x))
		default:
			parts = append(parts, fmt.Sprintf("%.4g %s", x, c.Slots[i].Product.Name))
		}
	}
	return strings.Join(parts, " + ")
}

// TestStationsAreAskedAbout: at eight stations without a bottle, neither the marathon in
// the cool, which would get 22 of 60 g/h there, nor the five hours with low blood sodium
// before, whose cut they do not carry, is handed over before the breaks are settled. Until
// then the options hold the habit, or what it comes down to.
func TestStationsAreAskedAbout(t *testing.T) {
	asked := 0
	for _, s := range readSessions(t) {
		if s.row["session"] != "marathon" {
			continue
		}
		s.t = t
		open, p := s.open()
		open.WithKind(&p, s.row["session"])
		c, err := OpenCase(p, open.Athlete, open.Basis, testSetup(t))
		if err != nil {
			t.Fatal(err)
		}
		found := c.Planner.Propose(RulesOf(p))
		if less := found.Outcome == proposal.DrinkLess; !found.Ask || less != (s.row["outcome"] == "less") {
			t.Errorf("%s: asks %v, outcome %d, said %v", s.row["name"], found.Ask, found.Outcome, found.Said)
			continue
		}
		asked++
		for _, kind := range []record.OptionKind{record.OptionFluid, record.OptionFood, record.OptionAim} {
			if mix, _ := Offered(found, kind); mix != plan.Mix(found.Cut) {
				t.Errorf("%s: %s is offered %s before it is settled", s.row["name"], kind, s.text(&c, mix))
			}
		}
		SetWish(&p, BreaksConfirmed, true)
		if c, err = OpenCase(p, open.Athlete, open.Basis, testSetup(t)); err != nil {
			t.Fatal(err)
		}
		if found := c.Planner.Propose(RulesOf(p)); found.Ask {
			t.Errorf("%s: asks though it is settled", s.row["name"])
		}
	}
	if asked != 2 {
		t.Errorf("%d asked", asked)
	}
}

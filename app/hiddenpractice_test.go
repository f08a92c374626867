package app

import (
	"context"
	"fmt"
	"testing"
	"time"

	"ebbwell/app/apptest"
	"ebbwell/internal/climate"
	"ebbwell/internal/consult"
	"ebbwell/internal/evidence"
	"ebbwell/internal/fuel"
	"ebbwell/internal/plan"
	"ebbwell/internal/quantity"
	"ebbwell/internal/record"
	"ebbwell/internal/store"
)

// covered is a practice with one athlete whose body mass is hidden today: two tests
// closed and a plan agreed before it was hidden, one of the tests corrected, a sheet
// open, a plan begun since, and a trip. All but the masses is the same for every mass.
type covered struct {
	// mass, kg; lost in each session, kg; hot is the air of the newest test, °C.
	mass, lost, hot float64
	effort          float64
	// early: hidden before anything was written down.
	early bool
	// pages is the folder the pages are saved to; cases are the letters measured so far.
	pages string
	cases map[typeface]*letters
	// agreed is the plan with its amounts, which are entries; nil until it was begun.
	agreed *record.Plan
}

const (
	coveredAthlete = record.ID("athlete-1")
	coveredTest    = record.ID("test-")
	coveredTrip    = record.ID("trip-1")
	coveredGroup   = record.ID("group-1")
)

// hiding is the practice of the athlete.
func hiding() record.Practice {
	return record.Practice{Meta: record.Meta{ID: "practice-1"}, Name: "Saltmarsh Practice (invented)", Practitioner: "Ada Fennimoor", Emergency: "112"}
}

// setup is what the practice calculates with.
func (c *covered) setup(t *testing.T, p record.Practice) consult.Setup {
	t.Helper()
	generic, err := fuel.Generic()
	must(t, err)
	activities, err := climate.LoadActivities()
	must(t, err)
	return consult.Setup{Pantry: consult.NewPantry(generic, nil), Settings: p.Settings, Activities: activities}
}

// fill writes the records into the folder of a practice without any.
func (c *covered) fill(t *testing.T, dir string) {
	t.Helper()
	ctx := context.Background()
	s, err := store.Open(dir, store.Options{Clock: apptest.Now, By: "Ada Fennimoor"})
	must(t, err)
	d := c.setup(t, hiding())
	a, err := s.SaveAthlete(ctx, c.athlete(), store.Edit{})
	must(t, err)
	var tests []consult.Findings
	for i, ago := range []int{60, 20} {
		kept, err := s.SaveTest(ctx, c.sheet(i+1, ago, c.lost+0.3*float64(i)), store.Edit{})
		must(t, err)
		tests = append([]consult.Findings{c.close(t, s, kept, a, d)}, tests...)
	}
	c.agree(t, s, a, tests, d)
	c.correct(t, s, a, tests[1].Test, d)
	a.MassHidden = true
	_, err = s.SaveAthlete(ctx, a, store.Edit{Why: "asked for by the athlete"})
	must(t, err)
	open := c.sheet(3, 0, c.lost)
	open.Session.End = ""
	_, err = s.SaveTest(ctx, open, store.Edit{})
	must(t, err)
	_, err = s.SaveTrip(ctx, c.trip(), store.Edit{})
	must(t, err)
	c.group(t, s)
	must(t, s.Close())
}

func must(t *testing.T, err error) {
	t.Helper()
	if err != nil {
		t.Fatal(err)
	}
}

func (c *covered) athlete() record.Athlete {
	return record.Athlete{
		Meta: record.Meta{ID: coveredAthlete}, Name: "Nessa Wrayling", Born: "1998-04-05", Sex: record.Female, Sport: "field-hockey",
		Height: record.Num(1.72, quantity.Metre), UsualMass: record.Num(c.mass, quantity.Kilogram), UsualDrinking: record.Num(0.7, quantity.LitrePerHour),
		MassHidden: c.early, MassHiddenSettled: true,
		Consents: []record.Consent{{Meta: record.Meta{ID: "consent-1"}, Purpose: record.ConsentCoach, Given: "2026-01-10"}},
	}
}

// sheet is the sheet with a number, so many days ago.
func (c *covered) sheet(n, ago int, lost float64) record.Test {
	id := func(kind string) record.Meta { return record.Meta{ID: record.ID(fmt.Sprintf("%s-%d", kind, n))} }
	g := func(x float64) record.Number { return record.Num(x, quantity.Gram) }
	return record.Test{
		Meta: id("test"), AthleteID: coveredAthlete, State: record.TestOpen,
		Session: record.Session{
			Date: record.DateOf(apptest.Now().AddDate(0, 0, -ago)), Place: "League match", Sport: "field-hockey", Start: "10:00", End: "11:35",
			Effort: record.Num(c.effort, quantity.None),
		},
		Air: record.Air{
			Temperature: record.Num(c.hot-4*float64(n-2), quantity.DegreeCelsius), Humidity: record.Num(50, quantity.PerCent),
			Wind: record.Num(1.5, quantity.MetrePerSecond), Sun: record.SunPart, Clothing: "shirt-shorts",
		},
		Scale: record.Scale{Step: record.Num(0.05, quantity.Kilogram), Before: record.DressMinimal, After: record.DressMinimal},
		Loss:  record.Loss{NoUrine: true, NoStool: true, Guess: record.Num(0.8, quantity.Litre)}, Urine: record.Urine{Gravity: record.Num(1.016, quantity.None)},
		Feeling: record.Feeling{Thirst: record.Num(3, quantity.None), Stomach: record.Num(1, quantity.None)},
		Weighings: []record.Weighing{
			{Meta: id("before"), Moment: record.Before, Mass: record.Num(c.mass, quantity.Kilogram)},
			{Meta: id("after"), Moment: record.After, Order: 1, Mass: record.Num(quantity.Round(c.mass-lost, 2), quantity.Kilogram)},
		},
		Bottles: []record.Bottle{
			{Meta: id("water"), ProductID: "generic.water", Name: "Water", Before: g(1000), After: g(650), Use: record.UseDrunk},
			{Meta: id("drink"), ProductID: "generic.drink-6", Name: "Sports drink 6 %", Order: 1, Before: g(700), After: g(450), Use: record.UseDrunk},
		},
		Foods: []record.FoodEaten{{Meta: id("food"), ProductID: "generic.fig-bar", Name: "Fig bar", Portions: record.Num(1, quantity.Portion)}},
		Patches: []record.Patch{{
			Meta: id("patch"), Site: record.SiteForearmDorsal, Side: "left", Sodium: record.Num(48, quantity.MillimolePerLitre), On: "10:25", Off: "11:00",
			Method: record.MethodIonChromatography, Condition: record.PatchGood,
		}},
	}
}

// close freezes a sheet with what it says.
func (c *covered) close(t *testing.T, s *store.Store, kept record.Test, a record.Athlete, d consult.Setup) consult.Findings {
	t.Helper()
	f := consult.Find(kept, a, nil, d)
	if !f.Ready() {
		t.Fatalf("%g kg: the sheet is not whole: %v, %v", c.mass, f.Sweat.Missing, f.Sweat.Problems)
	}
	inputs, results, err := consult.FreezeTest(f, a, nil, d)
	must(t, err)
	kept.State = record.TestClosed
	kept, err = s.CloseTest(context.Background(), kept, store.Freezing{Inputs: inputs, Results: results, Evidence: evidence.Version, Line: consult.LineOf(f)}, store.Edit{})
	must(t, err)
	f.Test = kept
	return f
}

// correct mends the mass before of a closed test by 50 g each way: the history then
// holds masses.
func (c *covered) correct(t *testing.T, s *store.Store, a record.Athlete, was record.Test, d consult.Setup) {
	t.Helper()
	open, err := s.ReopenTest(context.Background(), was.ID, "read wrongly")
	must(t, err)
	open = open.Clone()
	for i := range open.Weighings {
		open.Weighings[i].Mass = record.Num(*open.Weighings[i].Mass.Value+0.05, quantity.Kilogram)
	}
	kept, err := s.SaveTest(context.Background(), open, store.Edit{Why: "read wrongly"})
	must(t, err)
	c.close(t, s, kept, a, d)
}

// agree agrees a plan on the newest test, with its steps and a session done.
func (c *covered) agree(t *testing.T, s *store.Store, a record.Athlete, tests []consult.Findings, d consult.Setup) {
	t.Helper()
	ctx, now := context.Background(), apptest.Now().AddDate(0, 0, -10)
	b, err := consult.BasisOf(a, tests, now, d)
	must(t, err)
	if c.agreed == nil {
		c.begin(t, a, b, d, now)
	}
	opened, err := consult.OpenCase(*c.agreed, a, b, d)
	must(t, err)
	inputs, results, err := opened.FreezePlan()
	must(t, err)
	kept, err := s.AgreePlan(ctx, c.agreed.Clone(), store.Freezing{Inputs: inputs, Results: results, Evidence: evidence.Version}, store.Edit{})
	must(t, err)
	step, _, ok := consult.StepNow(kept)
	if !ok {
		return
	}
	_, err = s.SaveReview(ctx, record.Review{
		Meta: record.Meta{ID: "review-1"}, PlanID: kept.ID, StepID: step.ID, Date: record.DateOf(now.AddDate(0, 0, 3)),
		DoneShare: record.Num(85, quantity.PerCent), Drunk: record.Num(650, quantity.Millilitre), Stomach: record.Num(2, quantity.None),
	}, store.Edit{})
	must(t, err)
}

// begin begins the plan that is agreed.
func (c *covered) begin(t *testing.T, a record.Athlete, b consult.Basis, d consult.Setup, now time.Time) {
	t.Helper()
	p, err := consult.NewPlan(a, b, d, consult.Names{Habit: "Habit", Fluid: "Without food", Food: "With food", Aim: "Aim"}, now)
	must(t, err)
	p.Name = "Match"
	opened, err := consult.OpenCase(p, a, b, d)
	must(t, err)
	habit, _ := consult.OptionOf(p, record.OptionHabit)
	aim, _ := consult.OptionOf(p, record.OptionAim)
	rules := plan.DefaultStepRules()
	p = opened.WithLadder(opened.Planner.Steps(plan.Climb{
		Length: plan.Expected, Habit: opened.MixOf(habit), Aim: opened.MixOf(aim), Rules: rules, Start: now,
	}), rules.Sessions, func(n int) string { return fmt.Sprintf("Step %d", n) })
	chosen, _ := consult.InForce(p)
	p.State = record.PlanAgreed
	p.Agreement = record.Agreement{
		AgreedAt: &now, AgreedBy: "Ada Fennimoor", OptionID: chosen.ID, Words: "Half-time is when I can drink.",
		From: record.DateOf(now), Review: record.DateOf(now.AddDate(0, 0, 14)),
	}
	p = opened.WithCarried(p)
	c.agreed = &p
}

// trip is a camp in the heat.
func (c *covered) trip() record.Trip {
	day := func(ahead int) record.Date { return record.DateOf(apptest.Now().AddDate(0, 0, ahead)) }
	return record.Trip{
		Meta: record.Meta{ID: coveredTrip}, Name: "Camp",
		Travellers: []record.Traveller{{Meta: record.Meta{ID: "traveller-1"}, TripID: coveredTrip, AthleteID: coveredAthlete}},
		Stops: []record.Stop{{
			Meta: record.Meta{ID: "stop-1"}, TripID: coveredTrip, From: day(30), Until: day(36), Place: "Camp on the coast",
			Air:     record.Air{Temperature: record.Num(33, quantity.DegreeCelsius), Humidity: record.Num(60, quantity.PerCent), Sun: record.SunHigh, Wind: record.Num(1.5, quantity.MetrePerSecond), Clothing: "shirt-shorts"},
			Minutes: record.Num(95, quantity.Minute), Effort: record.Num(8, quantity.None), SessionsADay: record.Num(1, quantity.None),
		}},
	}
}

// group is a session of two: the newest closed test of the athlete, and another
// athlete's, whose mass is seen.
func (c *covered) group(t *testing.T, s *store.Store) {
	t.Helper()
	ctx := context.Background()
	other := c.athlete()
	other.ID, other.Name, other.MassHidden, other.Consents, other.UsualMass = "athlete-2", "Odile Farrow", false, nil, record.Num(63, quantity.Kilogram)
	_, err := s.SaveAthlete(ctx, other, store.Edit{})
	must(t, err)
	beside := covered{mass: 63, lost: 1.2, hot: 24, effort: 7}
	sheet := beside.sheet(9, 20, 1.2)
	sheet.AthleteID = other.ID
	_, err = s.SaveTest(ctx, sheet, store.Edit{})
	must(t, err)
	g := record.GroupSession{
		Meta: record.Meta{ID: coveredGroup}, Name: "Squad", ScaleStep: record.Num(0.1, quantity.Kilogram), Session: sheet.Session, Air: sheet.Air,
		Members: []record.Member{
			{Meta: record.Meta{ID: "member-1"}, AthleteID: coveredAthlete, TestID: coveredTest + "2", Order: 1},
			{Meta: record.Meta{ID: "member-2"}, AthleteID: other.ID, TestID: sheet.ID, Order: 2},
			{Meta: record.Meta{ID: "member-3"}, AthleteID: coveredAthlete, TestID: coveredTest + "3", Order: 3},
		},
	}
	_, err = s.SaveGroupSession(ctx, g, store.Edit{})
	must(t, err)
}

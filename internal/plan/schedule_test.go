package plan

import (
	"math"
	"testing"

	"pgregory.net/rapid"

	"ebbwell/internal/evidence"
)

// At each chance stand whole mouthfuls that it, the stomach and the loss until
// then bear; no drink passes the plan; a schedule of what it adds up to is the
// same; the line of the deficit ends where the schedule says.
func TestScheduleAddsUp(t *testing.T) {
	list := products(t)
	fitted := 0
	rapid.Check(t, func(t *rapid.T) {
		d := roll(t)
		p := d.planner(t, list)
		mix := d.mix(p.menu)
		chances := d.chances(p.session.Minutes[Expected])
		mouthful := oneOf[Mouthful](d, 20, 22, 25, 37.5, 50)
		var s Schedule
		p.Schedule(Expected, mix, chances, mouthful, &s)
		checkSchedule(t, p, mix, mouthful, &s)
		if s.DrinksFit && s.PlannedML > 0 {
			fitted++
		}
	})
	if fitted == 0 {
		t.Error("no plan fitted: the draw tests one side only")
	}
}

func checkSchedule(t tester, p *Planner, mix Mix, mouthful Mouthful, s *Schedule) {
	t.Helper()
	volumes := p.volumes(mix)
	var given [Drinks]int
	var eaten [Foods]float64
	total, last, perMin := 0, -1.0, p.basis.SweatRate.Value*1000/60
	for i := range s.Takes {
		take := &s.Takes[i]
		if take.Chance.Minute < last {
			t.Fatal("chances out of order")
		}
		last = take.Chance.Minute
		total += take.ML
		if float64(total) > last*perMin+1e-3 {
			t.Fatalf("%d mL drunk when %g are lost", total, last*perMin)
		}
		checkTake(t, p, mouthful, take)
		for d, ml := range take.ByDrink {
			given[d] += ml
		}
		for f, portions := range take.Food {
			eaten[f] += portions
		}
	}
	checkStomach(t, p, s)
	for d := range given {
		if given[d] > volumes[d] {
			t.Fatalf("%d mL of drink %d, %d planned", given[d], d, volumes[d])
		}
	}
	if total != s.DrinkableML || s.DrinkableML > s.PlannedML {
		t.Fatalf("%d scheduled, %d can be drunk, %d planned", total, s.DrinkableML, s.PlannedML)
	}
	checkFood(t, p, mix, s, eaten)
	checkCourse(t, p, s)
	checkAgain(t, p, mix, mouthful, s)
}

// checkAgain schedules what a schedule adds up to: it is the same.
func checkAgain(t tester, p *Planner, mix Mix, mouthful Mouthful, s *Schedule) {
	t.Helper()
	var again Schedule
	chances := make([]Chance, 0, len(s.Takes))
	for i := range s.Takes {
		chances = append(chances, s.Takes[i].Chance)
	}
	p.Schedule(Expected, s.Carried(mix), chances, mouthful, &again)
	for i := range s.Takes {
		if again.Takes[i].ByDrink != s.Takes[i].ByDrink {
			t.Fatalf("chance %d: %v, and of the same again %v", i, s.Takes[i].ByDrink, again.Takes[i].ByDrink)
		}
	}
}

// checkStomach follows what stands in the stomach.
func checkStomach(t tester, p *Planner, s *Schedule) {
	t.Helper()
	empties := evidence.StomachEmpties
	if p.session.Running {
		empties = evidence.StomachEmptiesRun
	}
	stands, last := 0.0, 0.0
	for i := range s.Takes {
		take := &s.Takes[i]
		stands = max(0, stands-empties*(take.Chance.Minute-last)) + float64(take.ML)
		last = take.Chance.Minute
		if stands > evidence.StomachAtOnce+1e-3 {
			t.Fatalf("%g mL stand in the stomach at %g min", stands, last)
		}
	}
}

// checkTake holds one take against its chance, its mouthfuls and its sums.
func checkTake(t tester, p *Planner, mouthful Mouthful, take *Take) {
	t.Helper()
	sum, mouthfuls, bottles := 0, 0, 0
	for d, ml := range take.ByDrink {
		if want := int(math.Floor(float64(take.mouthfuls[d])*float64(mouthful)/5+1e-9)) * 5; ml != want {
			t.Fatalf("%d mL of drink %d in %d mouthfuls of %g", ml, d, take.mouthfuls[d], float64(mouthful))
		}
		if ml > 0 {
			bottles++
		}
		sum, mouthfuls = sum+ml, mouthfuls+take.mouthfuls[d]
	}
	if sum != take.ML || take.ML < 0 || mouthfuls != take.Mouthfuls {
		t.Fatalf("drinks come to %d of %d mL, %d of %d mouthfuls", sum, take.ML, mouthfuls, take.Mouthfuls)
	}
	if bottles > 2 {
		t.Fatalf("%d bottles at one chance", bottles)
	}
	if most := take.Chance.MostML(); float64(take.Mouthfuls)*float64(mouthful) > most+1e-3 {
		t.Fatalf("%d mouthfuls where %g mL are the most", take.Mouthfuls, most)
	}
	for f, portions := range take.Food {
		if portions > 0 && !take.Chance.CanEat && !p.menu[int(Food1)+f].Gel {
			t.Fatalf("food %d where one cannot eat", f)
		}
	}
}

// checkFood holds what is eaten and left against the plan, and all fluid
// against the ceiling.
func checkFood(t tester, p *Planner, mix Mix, s *Schedule, eaten [Foods]float64) {
	t.Helper()
	water := 0.0
	for f := range eaten {
		slot := int(Food1) + f
		if !p.menu[slot].InUse {
			continue
		}
		water += mix[slot] * p.menu[slot].Unit.FoodWaterL
		if want := mix[slot]; math.Abs(eaten[f]+s.FoodLeft[f]-want) > 1e-9 {
			t.Fatalf("food %d: %g eaten, %g left, %g planned", f, eaten[f], s.FoodLeft[f], want)
		}
	}
	if ceiling := p.CeilingOf(Expected).FluidL; s.DrinkableML > 0 && float64(s.DrinkableML)/1000+water > ceiling+1e-9 {
		t.Fatalf("%d mL and %g L of food water scheduled above %g L", s.DrinkableML, water, ceiling)
	}
}

func checkCourse(t tester, p *Planner, s *Schedule) {
	t.Helper()
	points := p.Course(Expected, s, nil)
	last := points[len(points)-1]
	near(t, "end of the line", last.DeficitL.Value, s.DeficitL.Value)
	near(t, "end of the line, %", last.Deficit.Value, s.Deficit.Value)
	for i := 1; i < len(points); i++ {
		if points[i].Minute < points[i-1].Minute-1e-9 {
			t.Fatalf("the line runs back from %g to %g min", points[i-1].Minute, points[i].Minute)
		}
	}
	w := s.WithoutMaybe
	missed := 0.0
	for i := range s.Takes {
		if s.Takes[i].Chance.Certainty == Certain {
			continue
		}
		for d, ml := range s.Takes[i].ByDrink {
			missed += float64(ml) * p.menu[d].Unit.MassKg
		}
	}
	near(t, "without the uncertain chances", w.DeficitL.Value, s.DeficitL.Value+missed)
}

// The schedule's deficit is that of the prediction when everything fits.
func TestScheduleMeetsThePrediction(t *testing.T) {
	p, mix := courtPlanner(t), Mix{Water: 900, Drink1: 750, Food1: 1.5}
	var s Schedule
	p.Schedule(Expected, mix, courtChances(t, 105), 30, &s)
	q := p.Evaluate(Expected, mix)
	if !s.Fits() || len(s.Takes) != 9 {
		t.Fatalf("%d takes, fits %v", len(s.Takes), s.Fits())
	}
	near(t, "deficit", s.Deficit.Value, q.Deficit.Value)
	near(t, "low end", s.Deficit.Low, q.Deficit.Low)
	near(t, "high end", s.Deficit.High, q.Deficit.High)
}

// One half-time at 45 of 105 min cannot carry a plan of 1.5 L.
func TestCannotBeDrunkAtTheBreaks(t *testing.T) {
	p := courtPlanner(t)
	var s Schedule
	p.Schedule(Expected, Mix{Water: 1500}, []Chance{{Code: "half-time", Minute: 45, Seconds: 900, CanEat: true}}, 30, &s)
	if s.DrinksFit || !s.FoodFits || s.PlannedML != 1500 || s.DrinkableML != 480 || s.Fill != 4 {
		t.Fatalf("%d of %d mL, fits %v", s.DrinkableML, s.PlannedML, s.Fits())
	}
	near(t, "deficit", s.DeficitL.Value, 2.82)
	p.Schedule(Expected, Mix{Water: 100, Food1: 1}, nil, 30, &s)
	if s.DrinksFit || s.FoodFits || s.DrinkableML != 0 || s.FoodLeft[0] != 1 {
		t.Fatalf("no chance at all: %+v", s)
	}
}

// What stands at a chance that does not come is missed; the words for it need
// the deficit then.
func TestUncertainChancesFallOut(t *testing.T) {
	p := courtPlanner(t)
	chances := []Chance{
		{Code: "interval", Minute: 20, Seconds: 120, CanEat: true},
		{Code: "half-time", Minute: 50, Seconds: 600, CanEat: true},
		{Code: "interval", Minute: 80, Seconds: 120, CanEat: true},
		{Code: "bench", Minute: 95, Seconds: 60, Certainty: Maybe},
	}
	var s Schedule
	p.Schedule(Expected, Mix{Water: 900}, chances, 40, &s)
	if !s.Fits() || s.WithoutMaybe.MissedML == 0 {
		t.Fatalf("%+v", s.WithoutMaybe)
	}
	near(t, "deficit without, %", s.WithoutMaybe.Deficit.Value, 100*s.WithoutMaybe.DeficitL.Value/72.4)
	near(t, "deficit without", s.WithoutMaybe.DeficitL.Value, 3.3-float64(s.DrinkableML)/1000+float64(s.WithoutMaybe.MissedML)/1000)
}

// A gel stands at a chance with its water, and is called dry when less is
// drunk there.
func TestFoodWithItsWater(t *testing.T) {
	p := courtPlanner(t)
	var s Schedule
	p.Schedule(Expected, Mix{Water: 200, Food3: 1}, []Chance{{Minute: 30, Seconds: 90, CanEat: true}, {Minute: 70, Seconds: 90, CanEat: true}}, 30, &s)
	dry := 0
	for _, take := range s.Takes {
		if take.Food[2] > 0 && (take.WaterWantedML < 120 || !take.Dry && take.ML < take.WaterWantedML) {
			t.Errorf("take %+v", take)
		}
		if take.Dry {
			dry++
		}
	}
	if dry == 0 {
		t.Error("200 mL do not for a gel that wants 220: no take is dry")
	}
}

package consult

import (
	"math"
	"testing"
	"time"

	"ebbwell/internal/climate"
	"ebbwell/internal/fuel"
	"ebbwell/internal/plan"
	"ebbwell/internal/quantity"
	"ebbwell/internal/record"
)

func TestWeatherOfAir(t *testing.T) {
	air := record.Air{Temperature: numberOf(30), Humidity: numberOf(40), Sun: "shade"}
	w, err := WeatherOf(air)
	if err != nil || w.Temperature != 30 || w.Humidity != 40 || w.Wind != 1 || w.Altitude != 0 || w.Sun != climate.SunShade {
		t.Errorf("%+v, %v", w, err)
	}
	air.Wind, air.Altitude = numberOf(2.5), numberOf(700)
	if w, err := WeatherOf(air); err != nil || w.Wind != 2.5 || w.Altitude != 700 {
		t.Errorf("%+v, %v", w, err)
	}
	for name, change := range map[string]func(*record.Air){
		"no temperature": func(a *record.Air) { a.Temperature = record.Number{} }, "no humidity": func(a *record.Air) { a.Humidity = record.Number{} },
		"no sun": func(a *record.Air) { a.Sun = "" },
	} {
		x := air
		change(&x)
		if _, err := WeatherOf(x); err == nil {
			t.Errorf("%s is weather", name)
		}
		y := assumedAir(x)
		if _, err := WeatherOf(y); err != nil {
			t.Errorf("%s, assumed: %v", name, err)
		}
	}
	// Our own: 20 °C, 50 % and shade stand in for what is not written down.
	got := assumedAir(record.Air{})
	if *got.Temperature.Value != 20 || *got.Humidity.Value != 50 || got.Sun != "shade" {
		t.Errorf("%+v", got)
	}
	kept := assumedAir(air)
	if *kept.Temperature.Value != 30 || *kept.Humidity.Value != 40 || kept.Sun != "shade" {
		t.Errorf("%+v", kept)
	}
}

// A usual build, our own, is 22.5 kg/m²: 72.9 kg are 1.8 m.
func TestAssumedHeight(t *testing.T) {
	near(t, "height", assumedHeight(record.Athlete{}, 72.9).Height.Or(0), 1.8, 1e-9)
	near(t, "known", assumedHeight(record.Athlete{Height: numberOf(1.7)}, 72.9).Height.Or(0), 1.7, 0)
	if a := assumedHeight(record.Athlete{}, 0); a.Height.Known() {
		t.Errorf("a body of nothing is %v m", a.Height)
	}
}

// Effort by what is known, and over the breaks but for an energy, which is of the
// whole session.
func TestEffortOfASession(t *testing.T) {
	d := testSetup(t)
	a := record.Athlete{Height: numberOf(1.8)}
	b := climate.Body{Mass: 72, Height: 1.8}
	air := record.Air{Temperature: numberOf(20), Humidity: numberOf(50), Sun: "shade"}
	session := func(s record.Session) climate.Session {
		t.Helper()
		x, err := SessionFor(Outing{Session: s, Air: air, Minutes: 90}, a, b, d)
		if err != nil {
			t.Fatal(err)
		}
		return x
	}
	area := 0.202 * math.Pow(72, 0.425) * math.Pow(1.8, 0.725)
	whole := session(record.Session{Sport: "basketball", Met: numberOf(8)})
	watts := 8 * 3.5 / 1000 * 72 / 60 * 20900 / area
	near(t, "met", whole.Effort.Metabolic.Value, watts, 1e-9)
	half := session(record.Session{Sport: "basketball", Met: numberOf(8), Played: numberOf(45)})
	near(t, "half of it", half.Effort.Metabolic.Value, watts/2+watts/8, 1e-9)
	energy := session(record.Session{Sport: "basketball", Energy: numberOf(700), Played: numberOf(45)})
	near(t, "energy", energy.Effort.Metabolic.Value, 700*4184.0/(90*60)/area, 1e-9)
	running := session(record.Session{Sport: "road-running", Speed: numberOf(12)})
	near(t, "12 km/h", running.Effort.Metabolic.Value, (3.5+0.2*200)/1000*72/60*20900/area, 1e-6)
	rowing := session(record.Session{Sport: "rowing", Power: numberOf(190)})
	near(t, "rowing", rowing.Effort.Metabolic.Value, 190/area/0.19, 1e-9)
	cycling := session(record.Session{Sport: "road-cycling", Power: numberOf(200)})
	near(t, "cycling", cycling.Effort.Metabolic.Value, (7+10.8*200/72)/1000*72/60*20900/area, 1e-9)
	if rowing.Effort.Motion != climate.Rowing || cycling.Effort.Motion != climate.Cycling || running.Effort.Motion != climate.OnFoot {
		t.Errorf("%s %s %s", rowing.Effort.Motion, cycling.Effort.Motion, running.Effort.Motion)
	}
}

func TestHeatStateAndClothing(t *testing.T) {
	for _, c := range []struct {
		said, usual record.Acclimatised
		training    record.Training
		want        climate.HeatState
	}{
		{"", "", "", climate.Trained}, {record.AcclimatisedYes, "", record.Untrained, climate.Acclimatised}, {"", record.AcclimatisedYes, "", climate.Acclimatised},
		{record.AcclimatisedNo, record.AcclimatisedYes, "", climate.Trained}, {"", "", record.Untrained, climate.Untrained},
	} {
		if got := HeatStateOf(c.said, record.Athlete{Acclimatised: c.usual, Training: c.training}); got != c.want {
			t.Errorf("%+v: %s", c, got)
		}
	}
	for code, want := range map[string]climate.Clo{ClothingVest: 0.2, ClothingTracksuit: 0.6, ClothingShirt: 0.3, "": 0.3} {
		if got := ClothingOf(code).Insulation; got != want {
			t.Errorf("%s: %g clo", code, float64(got))
		}
	}
}

func TestSessionOfAPlan(t *testing.T) {
	p := record.Plan{Target: record.Target{Sport: "road-running", Minutes: numberOf(60), Short: numberOf(45), Long: numberOf(90), NextAfter: numberOf(12)}}
	s := SessionOf(p, record.Air{Temperature: numberOf(30)})
	if s.Effort != fuel.EffortUnknown || s.Minutes != [3]float64{45, 60, 90} || s.NextHours != 12 || !s.Running || s.Intermittent || s.Heat != plan.Hot {
		t.Errorf("%+v", s)
	}
	p.Target.Effort = numberOf(0)
	if s := SessionOf(p, record.Air{}); s.Effort != fuel.Easy {
		t.Errorf("an effort of nought is %v", s.Effort)
	}
}

// Under 16 years no gel is offered; sixteen is old enough.
func TestYoungAthletes(t *testing.T) {
	made := time.Date(2026, 5, 14, 0, 0, 0, 0, time.UTC)
	for born, want := range map[record.Date]bool{"2011-01-01": true, "2010-05-15": true, "2010-05-14": false, "2009-01-01": false, "2008-01-01": false, "": false} {
		c := Case{Athlete: record.Athlete{Born: born}, Plan: record.Plan{Meta: record.Meta{CreatedAt: made}}}
		if got := c.young(); got != want {
			t.Errorf("born %s: %v", born, got)
		}
	}
	c := Case{Athlete: record.Athlete{Born: "2012-01-01"}, Plan: record.Plan{Meta: record.Meta{CreatedAt: made}}}
	if !c.young() {
		t.Error("fourteen is young")
	}
}

// Every slot of a plan can be used, the last as well; with no drink of its own a
// plan is offered one.
func TestSlotsOfAPlan(t *testing.T) {
	c, d := newCase(t)
	p := c.Plan.Clone()
	o := p.Options[1]
	o.Items = nil
	for _, id := range []record.ID{"generic.banana", "generic.gel", "generic.dates", "generic.rice-cake"} {
		if product, ok := d.Pantry.Find(id); ok {
			o.Items = append(o.Items, record.Item{Role: record.RoleFood, ProductID: id, Name: product.Name, Portions: numberOf(1)})
		}
	}
	for _, product := range d.Pantry.Foods() {
		if len(o.Items) < 4 && product.ID != "generic.banana" && product.ID != "generic.gel" && product.ID != "generic.dates" && product.ID != "generic.rice-cake" {
			o.Items = append(o.Items, record.Item{Role: record.RoleFood, ProductID: record.ID(product.ID), Name: product.Name, Portions: numberOf(1)})
		}
	}
	p.Options = []record.Option{o}
	full, err := OpenCase(p, c.Athlete, c.Basis, d)
	if err != nil {
		t.Fatal(err)
	}
	mix := full.MixOf(o)
	for s := plan.Food1; s <= plan.Food4; s++ {
		if mix[s] != 1 {
			t.Errorf("food slot %d holds %g", s, mix[s])
		}
		mix[s] = 2
	}
	back := full.MixOf(full.WithMix(o, mix))
	if back[plan.Food4] != 2 || back[plan.Food1] != 2 {
		t.Errorf("%v", back)
	}
	if !full.Slots[plan.Drink1].InUse || full.Slots[plan.Drink1].Product.ID != string(firstDrink) || full.Slots[plan.Drink2].InUse {
		t.Errorf("a plan without a drink is offered %+v", full.Slots[plan.Drink1].Product.ID)
	}
	if c.Slots[plan.Drink1].Product.ID != "own.drink" || c.Slots[plan.Drink2].InUse {
		t.Errorf("a plan with a drink is offered %s", c.Slots[plan.Drink2].Product.ID)
	}
	it := amount(record.Item{Role: record.RoleFood}, 2)
	if it.Portions.Or(0) != 2 || it.Volume.Known() {
		t.Errorf("%+v", it)
	}
	if it := amount(record.Item{Role: record.RoleDrink}, 300); it.Volume.Or(0) != 300 || it.Portions.Known() {
		t.Errorf("%+v", it)
	}
}

// Loss between weighings: 72.0 to 71.2 kg with 0.3 L drunk and 0.1 kg of urine in
// 40 min, then to 70.5 kg with 0.5 L in 60 min; 0.1 kg left by breath in 100 min.
func TestSegmentsOfASession(t *testing.T) {
	f := Findings{Minutes: 100, Timed: true}
	f.Test.Session = record.Session{Start: "10:00", End: "11:40", Date: "2026-05-14"}
	f.Test.Weighings = []record.Weighing{{Moment: record.Before, Mass: numberOf(72)}, {Moment: record.After, Mass: numberOf(70.5)}}
	f.Test.Partway = []record.PartwayWeighing{{At: "10:40", Mass: numberOf(71.2), Drunk: numberOf(300), Urine: numberOf(100)}}
	f.Sweat.Fluid.Loss = known(2)
	f.Sweat.Balance = balanceLines()
	list := Segments(f)
	if len(list) != 2 {
		t.Fatalf("%+v", list)
	}
	near(t, "first", list[0].Loss, 0.8+0.3-0.1-0.04, 1e-9)
	near(t, "rate", list[0].Rate, (0.8+0.3-0.1-0.04)*1.5, 1e-9)
	near(t, "second", list[1].Loss, 0.7+0.5-0.1-0.06, 1e-9)
	near(t, "drunk", list[1].Drunk, 0.5, 1e-9)
	near(t, "minutes", list[1].Minutes, 60, 1e-9)
	s := splitOf(f)
	near(t, "at", s.At, 0.4, 1e-9)
	near(t, "share", s.Share, 0.96/2, 1e-9)
	for name, change := range map[string]func(*Findings){
		"no weighing between": func(f *Findings) { f.Test.Partway = nil }, "not timed": func(f *Findings) { f.Timed = false },
		"no loss": func(f *Findings) { f.Sweat.Fluid.Loss.Known = false }, "no mass": func(f *Findings) { f.Test.Partway[0].Mass = record.Number{} },
		"no weighing before": func(f *Findings) { f.Test.Weighings = f.Test.Weighings[1:] }, "no weighing after": func(f *Findings) { f.Test.Weighings = f.Test.Weighings[:1] },
		"at the start": func(f *Findings) { f.Test.Partway[0].At = "10:00" },
	} {
		g := f
		g.Test = f.Test.Clone()
		change(&g)
		if list := Segments(g); list != nil {
			t.Errorf("%s: %+v", name, list)
		}
	}
	for _, c := range []struct {
		a, b float64
		want bool
	}{{1, 1, false}, {1, 0.81, false}, {1, 0.79, true}, {0.79, 1, true}, {0.81, 1, false}} {
		if got := SegmentsChange([]Segment{{Rate: c.a}, {Rate: c.b}}); got != c.want {
			t.Errorf("%g then %g: %v", c.a, c.b, got)
		}
	}
	if SegmentsChange([]Segment{{Rate: 1}}) {
		t.Error("one does not change")
	}
}

// What is packed of a drink, a powder and a gel for 500 mL.
func TestSuppliesOfATrip(t *testing.T) {
	d := testSetup(t)
	ready, _ := d.Pantry.Find("own.drink")
	s := supplyOf(SlotInfo{Product: ready}, plan.Drink1, 1250, d)
	if s.Form != climate.ReadyMix || s.Servings != 2.5 || s.Volume != 500 || s.Serving != 500 {
		t.Errorf("%+v", s)
	}
	sugar, _ := d.Pantry.Find("generic.sugar")
	for strength, grams := range map[float64]quantity.Grams{6: 30, 8: 40} {
		s = supplyOf(SlotInfo{Product: sugar, Strength: numberOf(strength)}, plan.Drink2, 750, d)
		if s.Form != climate.Powder || s.Servings != 1.5 || math.Abs(float64(s.Serving-grams)) > 1e-9 {
			t.Errorf("%+v", s)
		}
	}
	if s = supplyOf(SlotInfo{Product: sugar}, plan.Drink2, 500, d); math.Abs(float64(s.Serving)-30) > 1e-9 {
		t.Errorf("of the usual strength: %+v", s)
	}
	gel, _ := d.Pantry.Find("generic.gel")
	s = supplyOf(SlotInfo{Product: gel}, plan.Food1, 2, d)
	if s.Form != climate.Gel || s.Servings != 2 || math.Abs(float64(s.Volume)-gel.Portion.Grams/gel.Density.Value) > 1e-9 || s.Fresh {
		t.Errorf("%+v", s)
	}
	banana, _ := d.Pantry.Find("generic.banana")
	if s = supplyOf(SlotInfo{Product: banana}, plan.Food1, 2, d); s.Form != climate.Solid || !s.Fresh || float64(s.Serving) != banana.Portion.Grams {
		t.Errorf("%+v", s)
	}
	for water, want := range map[float64]bool{50: false, 50.1: true, 46: false, 54: true} {
		if got := isFresh(fuel.Product{Form: fuel.Solid, Per100: fuel.Composition{Water: fuel.Of(water)}}); got != want {
			t.Errorf("%g %% water is fresh: %v", water, got)
		}
	}
	for _, c := range []struct {
		s    climate.Supply
		want bool
	}{{climate.Supply{Form: climate.Gel}, true}, {climate.Supply{Form: climate.Powder}, true}, {climate.Supply{Form: climate.Powder, ID: "generic.sugar"}, false}, {climate.Supply{Form: climate.Solid}, false}} {
		if got := isSupplement(c.s); got != c.want {
			t.Errorf("%+v: %v", c.s, got)
		}
	}
	if lot := lotOf([]record.Supply{{ProductID: "a", Lot: "1"}, {ProductID: "b", Lot: "2"}}, "b"); lot != "2" {
		t.Errorf("lot %s", lot)
	}
}

// Sodium, potassium and water that came in less what went out.
func TestExchangeOfASheet(t *testing.T) {
	f := Findings{Intake: fuel.Intake{Bottles: []fuel.Part{{Known: true, Grams: 400, Product: fuel.Product{Per100: fuel.Composition{Potassium: fuel.Of(20)}}}, {Grams: 900, Product: fuel.Product{Per100: fuel.Composition{Potassium: fuel.Of(20)}}}},
		Foods: []fuel.Part{{Known: true, Grams: 100, Product: fuel.Product{Per100: fuel.Composition{Potassium: fuel.Of(358)}}}}}}
	near(t, "potassium", potassiumIn(f), 80+358, 1e-9)
	f.Intake.Sodium = known(690)
	f.Intake.Sodium.U = 46
	f.Sweat.Sodium.Millimoles = known(80)
	f.Sweat.Sodium.Millimoles.U = 10
	f.Sweat.Fluid.Deficit, f.Sweat.Fluid.Loss = known(-0.5), known(2)
	f.Sweat.Fluid.Deficit.U = 0.06
	f.Test.Weighings = []record.Weighing{{Moment: record.Before, Mass: numberOf(70)}}
	a := record.Athlete{Sex: record.Male, Height: numberOf(1.8), Born: "1996-01-01", Meta: record.Meta{CreatedAt: day()}}
	f.Test.Session.Date = "2026-05-14"
	c, ok := OverDrinking(f, a)
	if !ok || !c.Plasma.Known {
		t.Fatalf("%+v, %v", c, ok)
	}
	water := 2.447 - 0.09516*30 + 0.1074*180 + 0.3362*70
	ions := 690/22.990 + 438/39.098 - 80 - 2*4
	near(t, "water", c.Water.Value, water, 1e-9)
	near(t, "plasma", c.Plasma.Value, ((140+23.8)*water+1.03*ions)/(water+0.5)-23.8, 1e-9)
	n := (140+23.8)*water + 1.03*ions
	v := water + 0.5
	u := 0.0
	for _, x := range []float64{
		2 * water / v, 3.76 * (163.8/v - n/v/v), 0.06 * n / v / v, 1.03 / v * math.Hypot(math.Hypot(46/22.990, 10), 2*0.7),
	} {
		u += x * x
	}
	near(t, "u", c.Plasma.U, math.Sqrt(u), 1e-9)
	for name, change := range map[string]func(*Findings){
		"no sodium lost": func(f *Findings) { f.Sweat.Sodium.Millimoles.Known = false }, "no deficit": func(f *Findings) { f.Sweat.Fluid.Deficit.Known = false },
		"no loss": func(f *Findings) { f.Sweat.Fluid.Loss.Known = false }, "no mass": func(f *Findings) { f.Test.Weighings = nil },
	} {
		g := f
		change(&g)
		if _, ok := OverDrinking(g, a); ok {
			t.Errorf("%s: a caution", name)
		}
	}
}

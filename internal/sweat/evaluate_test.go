package sweat

import (
	"errors"
	"math"
	"testing"

	"ebbwell/internal/evidence"
	"ebbwell/internal/figure"
	"ebbwell/internal/quantity"
)

// near holds a value against what is wanted.
func near(t testing.TB, what string, got, want, tolerance float64) {
	t.Helper()
	if !(math.Abs(got-want) <= tolerance) {
		t.Errorf("%s: got %.6g, want %.6g", what, got, want)
	}
}

// state names how far a figure is.
func state(f figure.Figure) string {
	switch {
	case f.Known && f.Ranged:
		return "ranged"
	case f.Known:
		return "provisional"
	case f.Ranged:
		return "range only"
	}
	return "unknown"
}

func TestWholeSheet(t *testing.T) {
	r := evaluated(t, wholeSheet())
	loss := 2.15 - wholeBreath()
	near(t, "loss", r.Fluid.Loss.Value, loss, 1e-9)
	near(t, "rate", r.Fluid.Rate.Value, loss/(95.0/60), 1e-9)
	near(t, "change", r.Fluid.MassChange.Value, -2.5, 1e-9)
	near(t, "deficit", r.Fluid.Deficit.Value, 1.6, 1e-9)
	near(t, "deficit %", r.Fluid.DeficitShare.Value, 2.5, 1e-9)
	near(t, "drunk", r.Fluid.Drunk.Value, 0.55, 1e-9)
	near(t, "replaced", r.Fluid.Replaced.Value, 100*0.55/loss, 1e-9)
	near(t, "not replaced", r.Fluid.NotReplaced.Value, loss-0.55, 1e-9)
	near(t, "concentration", r.Sodium.Concentration.Value, 38.125, 1e-9)
	near(t, "sodium", r.Sodium.LossRate.Value, r.Fluid.Rate.Value*38.125*22.99, 1e-6)
	near(t, "u of the loss", r.Fluid.Loss.U, math.Sqrt(2*0.03*0.03+0.05*0.05+4e-6), 1e-9)
	if len(r.Missing) != 0 || len(r.Problems) != 0 {
		t.Errorf("missing %v, problems %v", r.Missing, r.Problems)
	}
}

// TestPartlyFilled takes one thing away from a whole sheet at a time.
func TestPartlyFilled(t *testing.T) {
	for _, c := range []struct {
		name                        string
		take                        func(*Input)
		loss, rate, deficit, sodium string
		missing                     string
		effectLow, effectHigh       float64
	}{
		{"nothing", func(*Input) {}, "ranged", "ranged", "ranged", "ranged", "", 0, 0},
		{"urine", func(in *Input) { in.Output.Urine = nil }, "provisional", "provisional", "ranged", "provisional", MissingUrine, 0.1, 0.3},
		{"after", func(in *Input) { in.Body.After = nil }, "unknown", "unknown", "unknown", "unknown", MissingAfter, 0, 0},
		{"before", func(in *Input) { in.Body.Before = nil }, "unknown", "unknown", "unknown", "unknown", MissingBefore, 0, 0},
		{"duration", func(in *Input) { in.Time = Time{} }, "provisional", "unknown", "ranged", "unknown", MissingDuration, 0, 0},
		{"a bottle after", func(in *Input) { in.Intake.Bottles[1].After = nil }, "provisional", "provisional", "ranged", "provisional", MissingBottleAfter, -0.688, 0},
		{"a bottle before", func(in *Input) { in.Intake.Bottles[1].Before = nil }, "provisional", "provisional", "ranged", "provisional", MissingBottleBefore, -1, 0},
		{"all drinks", func(in *Input) { in.Intake.Bottles = nil }, "provisional", "provisional", "ranged", "provisional", MissingDrinks, -1, -0.2},
		{"drinks, said to be none", func(in *Input) { in.Intake = Intake{NothingDrunk: true} }, "ranged", "ranged", "ranged", "ranged", "", 0, 0},
		{"the laboratory", func(in *Input) { in.Patches[0].Sodium = nil }, "ranged", "ranged", "ranged", "unknown", MissingSodium, 0, 0},
		{"patches", func(in *Input) { in.Patches = nil }, "ranged", "ranged", "ranged", "unknown", "", 0, 0},
	} {
		t.Run(c.name, func(t *testing.T) {
			in := wholeSheet()
			c.take(&in)
			r := evaluated(t, in)
			got := [4]string{state(r.Fluid.Loss), state(r.Fluid.Rate), state(r.Fluid.Deficit), state(r.Sodium.LossRate)}
			if want := [4]string{c.loss, c.rate, c.deficit, c.sodium}; got != want {
				t.Errorf("loss, rate, deficit, sodium are %v, want %v", got, want)
			}
			checkMissing(t, r, c.missing, c.effectLow, c.effectHigh)
		})
	}
}

func checkMissing(t *testing.T, r Result, id string, low, high float64) {
	t.Helper()
	if id == "" {
		if len(r.Missing) != 0 {
			t.Errorf("missing %v", r.Missing)
		}
		return
	}
	if len(r.Missing) != 1 || r.Missing[0].ID != id {
		t.Fatalf("missing %v, want %s", r.Missing, id)
	}
	near(t, "effect from", r.Missing[0].Effect.Low, low, 1e-9)
	near(t, "effect to", r.Missing[0].Effect.High, high, 1e-9)
}

func TestEmptySheet(t *testing.T) {
	r := evaluated(t, Input{})
	for path, f := range figuresOf(r) {
		if f.Known || f.Ranged {
			t.Errorf("%s is %s on an empty sheet", path, state(f))
		}
	}
	if len(r.Missing) < 4 || len(r.Flags) != 0 {
		t.Errorf("missing %v, flags %v", r.Missing, r.Flags)
	}
}

func TestProvisionalHasNoRange(t *testing.T) {
	in := wholeSheet()
	in.Output.Urine = nil
	f := evaluated(t, in).Fluid.Rate
	if f.U != 0 || f.Range != (quantity.Range{}) || f.Why.Budget != nil {
		t.Errorf("provisional rate has u %g, range %v, budget %v", f.U, f.Range, f.Why.Budget)
	}
}

// TestMeaningless gives what no figure can be made of.
func TestMeaningless(t *testing.T) {
	nan, inf := math.NaN(), math.Inf(1)
	for _, c := range []struct {
		name  string
		spoil func(*Input)
		field evidence.Field
		code  string
	}{
		{"no time", func(in *Input) { in.Time.Elapsed = new(quantity.Minutes(0)) }, evidence.Duration, evidence.CodeOutside},
		{"negative time", func(in *Input) { in.Time.Elapsed = new(quantity.Minutes(-5)) }, evidence.Duration, evidence.CodeOutside},
		{"time not a number", func(in *Input) { in.Time.Elapsed = new(quantity.Minutes(nan)) }, evidence.Duration, evidence.CodeNotFinite},
		{"mass not a number", func(in *Input) { in.Body.Before[0] = quantity.Kilograms(nan) }, evidence.MassBefore, evidence.CodeNotFinite},
		{"infinite mass", func(in *Input) { in.Body.After[0] = quantity.Kilograms(inf) }, evidence.MassAfter, evidence.CodeNotFinite},
		{"negative mass", func(in *Input) { in.Body.After[0] = -62 }, evidence.MassAfter, evidence.CodeOutside},
		{"no mass", func(in *Input) { in.Body.Before[0] = 0 }, evidence.MassBefore, evidence.CodeOutside},
	} {
		t.Run(c.name, func(t *testing.T) {
			in := wholeSheet()
			c.spoil(&in)
			in.Options.Kept = []Kept{{c.field, 0}, {c.field, 1}} // keeping it does not help
			r, err := Evaluate(in)
			var p evidence.Problem
			if !errors.As(err, &p) || p.Field != c.field || p.Code != c.code || p.Severity != evidence.Refuses {
				t.Fatalf("error %v, problem %+v", err, p)
			}
			if len(r.Problems) == 0 {
				t.Error("the problems are not in the result")
			}
			for path, f := range figuresOf(r) {
				if f.Known || f.Ranged {
					t.Errorf("%s is %s", path, state(f))
				}
			}
		})
	}
}

// TestRefused gives values beyond their limits: each is named, none is used,
// and all but the impossible ones are used once they are kept.
func TestRefused(t *testing.T) {
	for _, c := range []struct {
		name   string
		spoil  func(*Input)
		field  evidence.Field
		item   int
		code   string
		figure func(Result) figure.Figure
		// refused and kept are the states of the figure.
		refused, kept string
	}{
		{"pounds after", func(in *Input) { in.Body.After[0] = 137 }, evidence.MassChange, 0, evidence.CodeOutside,
			func(r Result) figure.Figure { return r.Fluid.MassChange }, "unknown", "ranged"},
		{"heavy athlete", func(in *Input) { in.Body.Before[0], in.Body.After[0] = 255, 252 }, evidence.MassBefore, 1, evidence.CodeOutside,
			func(r Result) figure.Figure { return r.Fluid.MassChange }, "unknown", "unknown"},
		{"short session", func(in *Input) { in.Time.Elapsed = new(quantity.Minutes(12)) }, evidence.Duration, 0, evidence.CodeOutside,
			func(r Result) figure.Figure { return r.Fluid.DrinkingRate }, "unknown", "ranged"},
		{"weighings apart", func(in *Input) { in.Body.Before = []quantity.Kilograms{64, 64.6} }, evidence.MassSpread, 1, evidence.CodeOutside,
			func(r Result) figure.Figure { return r.Fluid.Loss }, "unknown", "ranged"},
		{"bottle gained", func(in *Input) { in.Intake.Bottles[0].After = new(quantity.Grams(760)) }, evidence.BottleMass, 1, evidence.CodeOrder,
			func(r Result) figure.Figure { return r.Fluid.Loss }, "provisional", "provisional"},
		{"much urine", func(in *Input) { in.Output.Urine = new(quantity.Grams(1600)) }, evidence.UrineMass, 0, evidence.CodeOutside,
			func(r Result) figure.Figure { return r.Fluid.Loss }, "provisional", "ranged"},
		{"negative urine", func(in *Input) { in.Output.Urine = new(quantity.Grams(-50)) }, evidence.UrineMass, 0, evidence.CodeOutside,
			func(r Result) figure.Figure { return r.Fluid.Loss }, "provisional", "provisional"},
		{"urine not a number", func(in *Input) { in.Output.Urine = new(quantity.Grams(math.NaN())) }, evidence.UrineMass, 0, evidence.CodeNotFinite,
			func(r Result) figure.Figure { return r.Fluid.Loss }, "provisional", "provisional"},
		{"much drunk", func(in *Input) { in.Intake.Bottles[0].Before = new(quantity.Grams(6000)) }, evidence.DrinkingRate, 0, evidence.CodeOutside,
			func(r Result) figure.Figure { return r.Fluid.Loss }, "unknown", "ranged"},
		{"salty patch", func(in *Input) { in.Patches[0].Sodium = new(quantity.MillimolesPerLitre(150)) }, evidence.PatchSodium, 1, evidence.CodeOutside,
			func(r Result) figure.Figure { return r.Sodium.Concentration }, "unknown", "ranged"},
		{"patch off before on", func(in *Input) { in.Patches[0].Off = new(quantity.Minutes(20)) }, evidence.PatchOff, 1, evidence.CodeOrder,
			func(r Result) figure.Figure { return r.Sodium.Concentration }, "unknown", "unknown"},
		{"share turned round", func(in *Input) {
			in.Intake.Bottles[0].Use, in.Intake.Bottles[0].ShareLow, in.Intake.Bottles[0].ShareHigh = Shared, new(quantity.Percent(60)), new(quantity.Percent(40))
		}, evidence.ShareDrunk, 1, evidence.CodeOrder, func(r Result) figure.Figure { return r.Fluid.Loss }, "provisional", "provisional"},
	} {
		t.Run(c.name, func(t *testing.T) {
			in := wholeSheet()
			c.spoil(&in)
			r := evaluated(t, in)
			if got := state(c.figure(r)); got != c.refused {
				t.Errorf("figure is %s, want %s", got, c.refused)
			}
			if !refused(r, c.field, c.item, c.code) {
				t.Errorf("problems %v", r.Problems)
			}
			in.Options.Kept = []Kept{{c.field, c.item}}
			if got := state(c.figure(evaluated(t, in))); got != c.kept {
				t.Errorf("kept, the figure is %s, want %s", got, c.kept)
			}
		})
	}
}

// refused reports whether a result names a refused value.
func refused(r Result, f evidence.Field, item int, code string) bool {
	for _, p := range r.Problems {
		if p.Field == f && p.Item == item && p.Code == code && p.Severity == evidence.Refuses {
			return true
		}
	}
	return false
}

func TestBottles(t *testing.T) {
	g := func(x float64) *quantity.Grams { return new(quantity.Grams(x)) }
	for _, c := range []struct {
		name      string
		bottle    Bottle
		drunk     float64 // mL
		low, high float64
		balance   float64 // kg
	}{
		{"weighed", Bottle{Before: g(700), After: g(400)}, 300, 300, 300, 0.3},
		{"untouched, one gram more", Bottle{Before: g(700), After: g(701)}, 0, 0, 0, 0},
		{"refilled", Bottle{Before: g(700), After: g(400), Refills: []quantity.Grams{250, 150}}, 700, 700, 700, 0.7},
		{"some poured away", Bottle{Before: g(700), After: g(400), Poured: g(50)}, 250, 250, 250, 0.25},
		{"dense", Bottle{Before: g(700), After: g(394), Density: new(1.02)}, 300, 300, 300, 0.306},
		{"from a carton", Bottle{Volume: new(quantity.Millilitres(500)), Density: new(1.04)}, 500, 500, 500, 0.52},
		{"poured over", Bottle{Use: PouredOver, Before: g(700), After: g(400)}, 0, 0, 0, 0},
		{"shared", Bottle{Use: Shared, Before: g(700), After: g(400)}, 150, 0, 300, 0.15},
		{"shared within bounds", Bottle{Use: Shared, Before: g(700), After: g(400), ShareLow: new(quantity.Percent(50)), ShareHigh: new(quantity.Percent(80))}, 195, 150, 240, 0.195},
	} {
		t.Run(c.name, func(t *testing.T) {
			in := wholeSheet()
			in.Intake.Bottles = []Bottle{c.bottle}
			r := evaluated(t, in)
			b := r.Bottles[0]
			if !b.Known {
				t.Fatal("not known")
			}
			near(t, "drunk", b.Drunk, c.drunk, 1e-9)
			near(t, "from", b.Bounds.Low, c.low, 1e-9)
			near(t, "to", b.Bounds.High, c.high, 1e-9)
			near(t, "loss", r.Fluid.Loss.Value, 1.6+c.balance-wholeBreath(), 1e-9)
			near(t, "fluid", r.Fluid.Drunk.Value, c.drunk/1000, 1e-9)
			if low, high := r.Fluid.Loss.Range.Low, r.Fluid.Loss.Range.High; low > 1.6+c.low/1000 || high < 1.6+c.high/1000 {
				t.Errorf("the range %g to %g does not reach the bounds", low, high)
			}
			near(t, "deficit", r.Fluid.Deficit.Value, 1.6, 1e-9)
		})
	}
}

// TestSharedBottleLeavesTheDeficit: what nobody can tell about a bottle says
// nothing about the body mass.
func TestSharedBottleLeavesTheDeficit(t *testing.T) {
	plain := evaluated(t, wholeSheet())
	in := wholeSheet()
	in.Intake.Bottles[0].Use = Shared
	shared := evaluated(t, in)
	if plain.Fluid.Deficit.Range != shared.Fluid.Deficit.Range {
		t.Errorf("deficit %v becomes %v", plain.Fluid.Deficit.Range, shared.Fluid.Deficit.Range)
	}
	if w := shared.Fluid.Loss.Range.Width(); w < 0.3 {
		t.Errorf("range of the loss is %g L wide", w)
	}
	if got := shared.Fluid.Loss.Why.Budget[0].Source; got != SourceShared {
		t.Errorf("most of the range comes from %s", got)
	}
	if got := shared.Narrowing.Rate[0].ID; got != AdviceOwnBottle {
		t.Errorf("advice %s", got)
	}
}

func TestKit(t *testing.T) {
	kg := func(x float64) *quantity.Kilograms { return new(quantity.Kilograms(x)) }
	for _, c := range []struct {
		name          string
		before, after Dress
		dry, wet      *quantity.Kilograms
		loss          float64
		state         string
		u             float64 // of kit and towel
		missing       string
	}{
		{"minimal", Minimal, Minimal, nil, nil, 2.15, "ranged", 0.05, ""},
		{"minimal, kit weighed apart does not enter", Minimal, Minimal, kg(1.0), kg(1.3), 2.15, "ranged", 0.05, ""},
		{"kit on", KitOn, KitOn, nil, nil, 2.15, "ranged", 0.10, MissingKit},
		{"kit on and weighed", KitOn, KitOn, kg(1.0), kg(1.3), 2.45, "ranged", math.Sqrt(0.05*0.05 + 2*0.02*0.02), ""},
		{"kit on after only", Minimal, KitOn, nil, kg(1.3), 3.45, "ranged", math.Hypot(0.05, 0.02), ""},
		{"kit on before only", KitOn, Minimal, kg(1.0), nil, 1.15, "ranged", math.Hypot(0.05, 0.02), ""},
		{"kit on after, not weighed", Minimal, KitOn, nil, nil, 0, "unknown", 0, MissingKitWet},
		{"kit on before, not weighed", KitOn, Minimal, nil, nil, 0, "unknown", 0, MissingKitDry},
		{"kit dried in play", KitOn, KitOn, kg(1.3), kg(1.0), 2.15, "ranged", 0.10, MissingKit},
		{"not said", "", "", nil, nil, 2.15, "ranged", 0.10, ""},
	} {
		t.Run(c.name, func(t *testing.T) {
			in := wholeSheet()
			in.Body.DressBefore, in.Body.DressAfter, in.Body.KitDry, in.Body.KitWet = c.before, c.after, c.dry, c.wet
			r := evaluated(t, in)
			if got := state(r.Fluid.Loss); got != c.state {
				t.Fatalf("loss is %s, want %s", got, c.state)
			}
			if c.state == "ranged" {
				near(t, "loss", r.Fluid.Loss.Value, c.loss-wholeBreath(), 1e-9)
				near(t, "u", r.Fluid.Loss.U, math.Sqrt(c.u*c.u+2*0.03*0.03+4e-6), 1e-9)
			}
			if c.missing != "" && (len(r.Missing) != 1 || r.Missing[0].ID != c.missing) {
				t.Errorf("missing %v", r.Missing)
			}
		})
	}
}

// TestScale: the offset of one scale cancels, that of two does not; duplicates
// help until the step of the scale is all that is left.
func TestScale(t *testing.T) {
	u := func(change func(*Input)) float64 {
		in := wholeSheet()
		in.Intake = Intake{NothingDrunk: true}
		change(&in)
		return evaluated(t, in).Fluid.Loss.U
	}
	same := u(func(*Input) {})
	other := u(func(in *Input) { in.Body.OtherScale = true })
	near(t, "one scale", same, math.Sqrt(2*0.03*0.03+0.05*0.05), 1e-9)
	near(t, "two scales", other, math.Sqrt(same*same+2*0.1*0.1), 1e-9)
	twice := u(func(in *Input) {
		in.Body.Before, in.Body.After = []quantity.Kilograms{64, 64}, []quantity.Kilograms{62.4, 62.4}
	})
	near(t, "twice each", twice, math.Sqrt(0.03*0.03+0.05*0.05), 1e-9)
	for _, c := range []struct {
		step float64
		n    int
		want float64
	}{{0.1, 1, 0.03}, {0.1, 4, 0.1 / math.Sqrt(12)}, {0.2, 1, 0.2 / math.Sqrt(12)}, {0.01, 4, 0.015}, {0, 0, 0.03}} {
		near(t, "scale", ScaleU(c.step, c.n), c.want, 1e-12)
	}
}

func TestBalanceLines(t *testing.T) {
	in := wholeSheet()
	in.Intake.Foods = []Food{{Mass: new(quantity.Grams(50)), Water: new(0.2)}}
	in.Output = Output{Urine: new(quantity.Grams(120)), Stool: new(quantity.Grams(80))}
	in.Effort = Effort{Oxygen: new(2.5)}
	r := evaluated(t, in)
	want := []string{LineBody, LineDrunk, LineEaten, LineUrine, LineStool, LineRespiratory, LineExchange}
	total := 0.0
	for i, l := range r.Balance {
		if i >= len(want) || l.ID != want[i] || !l.Known {
			t.Fatalf("line %d is %+v", i+1, l)
		}
		total += l.Kilograms
	}
	near(t, "sum of the lines", total, r.Fluid.Loss.Value, 1e-9)
	near(t, "urine line", r.Balance[3].Kilograms, -0.12, 1e-12)
	near(t, "food water", r.Fluid.FoodWater, 0.01, 1e-12)
	if r.Balance[5].Kilograms >= 0 || r.Balance[6].Kilograms >= 0 {
		t.Error("a correction adds to the sweat loss")
	}
}

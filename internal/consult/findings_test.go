package consult

import (
	"encoding/json"
	"go/ast"
	"go/parser"
	"go/token"
	"math"
	"strconv"
	"testing"

	"ebbwell/internal/evidence"
	"ebbwell/internal/figure"
	"ebbwell/internal/frozen"
	"ebbwell/internal/fuel"
	"ebbwell/internal/quantity"
	"ebbwell/internal/record"
)

// testSetup is one with the generic catalogue and one own product: the sports
// drink of the common-practice case, 36.75 g carbohydrate and 248 mg sodium in
// 500 mL.
func testSetup(t testing.TB) Setup {
	t.Helper()
	generic, err := fuel.Generic()
	if err != nil {
		t.Fatal(err)
	}
	return Setup{Pantry: NewPantry(generic, []record.Product{caseDrink()})}
}

func caseDrink() record.Product {
	num := func(x float64) record.Number { return record.Num(x, quantity.Gram) }
	return record.Product{
		Meta: record.Meta{ID: "own.drink"}, Name: "Sports drink of the case", Form: "drink", Density: record.Num(1, quantity.GramPerMillilitre),
		PortionName: "bottle", PortionMass: num(500),
		Per100: record.Composition{Available: num(7.35), Sodium: num(49.6), Water: num(92.6)},
	}
}

// caseSheet is the set of common-practice figures, no source: 105 minutes of
// hard court play at 26 °C and 50 %, 72.4 kg, 3.3 L lost, 1.2 L drunk.
func caseSheet() (record.Test, record.Athlete) {
	a := record.Athlete{Meta: record.Meta{ID: "a"}, Name: "Case", Born: "1999-01-02", Sex: record.Female, Sport: "basketball",
		Height: record.Num(1.78, quantity.Metre), UsualMass: record.Num(72.4, quantity.Kilogram)}
	g := func(x float64) record.Number { return record.Num(x, quantity.Gram) }
	kg := func(x float64) record.Number { return record.Num(x, quantity.Kilogram) }
	t := record.Test{
		Meta: record.Meta{ID: "t"}, AthleteID: "a",
		Session: record.Session{Date: "2026-05-14", Start: "17:00", End: "18:45", Effort: record.Num(8, quantity.None)},
		Air:     record.Air{Temperature: record.Num(26, quantity.DegreeCelsius), Humidity: record.Num(50, quantity.PerCent)},
		Scale:   record.Scale{Step: record.Num(0.05, quantity.Kilogram), Before: record.DressMinimal, After: record.DressMinimal},
		Loss:    record.Loss{NoUrine: true},
		Urine:   record.Urine{Gravity: record.Num(1.023, quantity.None)},
		Weighings: []record.Weighing{
			{Meta: record.Meta{ID: "w1"}, Moment: record.Before, Mass: kg(72.4)},
			{Meta: record.Meta{ID: "w2"}, Moment: record.After, Mass: kg(70.3)},
		},
		Bottles: []record.Bottle{
			{Meta: record.Meta{ID: "b1"}, ProductID: Water, Name: "Water", Before: g(1000), After: g(300)},
			{Meta: record.Meta{ID: "b2"}, ProductID: "own.drink", Name: "Drink", Before: g(700), After: g(200)},
		},
		Patches: []record.Patch{{Meta: record.Meta{ID: "p1"}, Site: record.SiteForearmDorsal, Sodium: record.Num(46.2, quantity.MillimolePerLitre),
			On: "17:25", Off: "18:00", Method: record.MethodIonChromatography, Condition: record.PatchGood}},
	}
	return t, a
}

func near(t *testing.T, name string, got, want, tolerance float64) {
	t.Helper()
	if math.Abs(got-want) > tolerance || math.IsNaN(got) {
		t.Errorf("%s: %v, want %v ± %v", name, got, want, tolerance)
	}
}

// The figures that must come out together (common practice, no source), by the
// field method that such practice uses.
func TestCommonPracticeCase(t *testing.T) {
	sheet, a := caseSheet()
	d := testSetup(t)
	d.Settings.FieldMethod = true
	f := Find(sheet, a, nil, d)
	if f.Refused != nil {
		t.Fatal(f.Refused)
	}
	near(t, "sweat loss", f.Sweat.Fluid.Loss.Value, 3.3, 0.005)
	near(t, "sweat rate", f.Sweat.Fluid.Rate.Value, 1.9, 0.05)
	near(t, "deficit", f.Sweat.Fluid.DeficitShare.Value, 2.9, 0.05)
	near(t, "carbohydrate an hour", f.Intake.CarbohydrateRate.Value, 21, 0.05)
	near(t, "sodium in", f.Intake.Sodium.Value, 248+0.03*700, 1)
	if rate := f.Sweat.Sodium.LossRate.Value; rate < 1600 || rate > 1650 {
		t.Errorf("sodium lost %v mg/h, want a little over 1600", rate)
	}
	if total := f.Sweat.Sodium.Loss.Value; total < 2800 || total > 3000 {
		t.Errorf("sodium lost %v mg, want about 2900", total)
	}
	if !f.Ready() || f.Waits() {
		t.Errorf("ready %v, waits %v: missing %v, problems %v", f.Ready(), f.Waits(), f.Sweat.Missing, f.Sweat.Problems)
	}
	for _, m := range f.Sweat.Markers {
		if m.Marker == evidence.GravityMarker && m.Band != evidence.BandAbove {
			t.Errorf("1.023 is %q", m.Band)
		}
	}
}

// Each figure can be worked out again from what its "why" shows.
func TestFiguresComeOutOfTheirWhy(t *testing.T) {
	sheet, a := caseSheet()
	sheet.Foods = []record.FoodEaten{{Meta: record.Meta{ID: "f1"}, ProductID: "generic.banana", Portions: record.Num(0.5, quantity.Portion)}}
	f := Find(sheet, a, nil, testSetup(t))
	seen := 0
	for _, n := range f.Figures() {
		if !n.Figure.Known {
			continue
		}
		seen++
		got, err := evaluate(n.Figure.Why)
		if err != nil {
			t.Errorf("%s: %q: %v", n.Name, n.Figure.Why.Formula, err)
			continue
		}
		near(t, n.Name, got, n.Figure.Value, 1e-9*math.Max(1, math.Abs(n.Figure.Value)))
		if n.Figure.Ranged && !n.Figure.Range.Contains(n.Figure.Value) {
			t.Errorf("%s: %v is outside its own range %+v", n.Name, n.Figure.Value, n.Figure.Range)
		}
	}
	if seen < 16 {
		t.Errorf("only %d figures are known", seen)
	}
}

// evaluate puts the inputs of a why into its formula.
func evaluate(w figure.Why) (float64, error) {
	e, err := parser.ParseExpr(w.Formula)
	if err != nil {
		return 0, err
	}
	values := map[string]float64{}
	for _, in := range w.Inputs {
		values[in.Symbol] = in.Value
	}
	return value(e, values), nil
}

func value(e ast.Expr, values map[string]float64) float64 {
	switch e := e.(type) {
	case *ast.ParenExpr:
		return value(e.X, values)
	case *ast.UnaryExpr:
		return -value(e.X, values)
	case *ast.BasicLit:
		x, _ := strconv.ParseFloat(e.Value, 64)
		return x
	case *ast.Ident:
		if x, ok := values[e.Name]; ok {
			return x
		}
	case *ast.BinaryExpr:
		x, y := value(e.X, values), value(e.Y, values)
		switch e.Op {
		case token.ADD:
			return x + y
		case token.SUB:
			return x - y
		case token.MUL:
			return x * y
		case token.QUO:
			return x / y
		}
	case *ast.CallExpr:
		var args []float64
		for _, a := range e.Args {
			args = append(args, value(a, values))
		}
		return call(e.Fun.(*ast.Ident).Name, args)
	}
	return math.NaN()
}

func call(name string, args []float64) float64 {
	switch name {
	case "exp":
		return math.Exp(args[0])
	case "ln":
		return math.Log(args[0])
	case "sqrt":
		return math.Sqrt(args[0])
	case "min":
		return math.Min(args[0], args[1])
	case "max":
		return math.Max(args[0], args[1])
	}
	return math.NaN()
}

func TestProblemsFindTheirPlace(t *testing.T) {
	sheet, a := caseSheet()
	sheet.Bottles[1].After = record.Num(760, quantity.Gram)
	sheet.Air.Humidity = record.Num(120, quantity.PerCent)
	f := Find(sheet, a, nil, testSetup(t))
	paths := map[string]bool{}
	for _, p := range f.Sweat.Problems {
		paths[PathOf(sheet, p)] = true
	}
	if !paths["bottles.b2.after"] {
		t.Errorf("the heavier bottle is placed at %v", paths)
	}
	if f.Ready() {
		t.Error("a refused bottle leaves the sheet ready")
	}
}

func TestKeptWithAReason(t *testing.T) {
	sheet, a := caseSheet()
	sheet.Weighings[0].Mass = record.Num(16, quantity.Kilogram)
	sheet.Weighings[1].Mass = record.Num(15.6, quantity.Kilogram)
	sheet.Bottles = nil
	sheet.Loss.NothingDrunk = true
	d := testSetup(t)
	if f := Find(sheet, a, nil, d); f.Sweat.Fluid.Rate.Known {
		t.Fatal("16 kg is used without a reason")
	}
	reasons := []record.RawText{
		{Field: "weighings.w1.mass", Reason: true, Text: "checked twice"}, {Field: "weighings.w2.mass", Reason: true, Text: "checked twice"},
	}
	if f := Find(sheet, a, reasons, d); !f.Sweat.Fluid.Rate.Known {
		t.Errorf("kept with a reason and not used: %v", f.Sweat.Problems)
	}
	reasons[0].Reason = false
	if f := Find(sheet, a, reasons, d); f.Sweat.Fluid.Rate.Known {
		t.Error("a raw text counts as a reason")
	}
}

func TestFreezeReadsBack(t *testing.T) {
	sheet, a := caseSheet()
	d := testSetup(t)
	f := Find(sheet, a, nil, d)
	inputs, results, err := FreezeTest(f, a, nil, d)
	if err != nil {
		t.Fatal(err)
	}
	var in frozen.Test
	var out frozen.Findings
	if err := json.Unmarshal(inputs, &in); err != nil {
		t.Fatal(err)
	}
	if err := json.Unmarshal(results, &out); err != nil {
		t.Fatal(err)
	}
	a.UsualMass = in.Athlete.UsualMass
	again := Find(in.Test, a, in.Reasons, d)
	kept := thawed(out, in.Test, a, in.Reasons).Figures()
	for i, n := range again.Figures() {
		if n.Figure.Value != kept[i].Figure.Value || n.Name != kept[i].Name {
			t.Errorf("%s: %v when frozen, %v again", n.Name, kept[i].Figure.Value, n.Figure.Value)
		}
	}
}

func TestEmptySheet(t *testing.T) {
	f := Find(record.Test{Meta: record.Meta{ID: "t"}}, record.Athlete{}, nil, testSetup(t))
	if f.Ready() || f.Refused != nil {
		t.Errorf("ready %v, refused %v", f.Ready(), f.Refused)
	}
	for _, n := range f.Figures() {
		if n.Figure.Ranged {
			t.Errorf("%s has a range on an empty sheet", n.Name)
		}
	}
}

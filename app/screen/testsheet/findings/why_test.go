package findings

import (
	"fmt"
	"go/ast"
	"go/parser"
	"go/token"
	"math"
	"slices"
	"strconv"
	"strings"
	"testing"

	"golang.org/x/text/language"

	"ebbwell/app/kit/amount"
	"ebbwell/internal/consult"
	"ebbwell/internal/figure"
	"ebbwell/internal/fuel"
	"ebbwell/internal/quantity"
	"ebbwell/internal/record"
	"ebbwell/internal/words"
)

// english is the catalogue.
func english(t testing.TB) *words.Words {
	t.Helper()
	w, err := words.New(language.English)
	if err != nil {
		t.Fatal(err)
	}
	return w
}

// athlete is an adult of whom all is known.
func athlete() record.Athlete {
	return record.Athlete{
		Name: "Ravka Oldenmoor", Born: "1999-02-03", Sex: record.Female, Height: record.Num(1.71, quantity.Metre),
		UsualMass: record.Num(64, quantity.Kilogram), Sport: "field-hockey", UsualDrinking: record.Num(0.7, quantity.LitrePerHour),
	}
}

// whole is a sheet with everything in it: shared and refilled bottles, food,
// urine, corrections, two patches and one that came off, mornings.
func whole() record.Test {
	n := func(x float64, u quantity.Unit) record.Number { return record.Num(x, u) }
	id := func() record.Meta { return record.Meta{ID: record.NewID()} }
	mass := func(m record.Moment, day record.Date, kg float64) record.Weighing {
		return record.Weighing{Meta: id(), Moment: m, Date: day, Mass: n(kg, quantity.Kilogram)}
	}
	return record.Test{
		Meta: id(), State: record.TestOpen,
		Session: record.Session{Date: "2026-05-14", Sport: "football", Start: "14:00", End: "16:10", Met: n(9, quantity.Met), Effort: n(8, quantity.None)},
		Air:     record.Air{Temperature: n(27, quantity.DegreeCelsius), Humidity: n(45, quantity.PerCent)},
		Scale:   record.Scale{Step: n(0.05, quantity.Kilogram), Before: record.DressMinimal, After: record.DressMinimal},
		Loss:    record.Loss{Urine: n(120, quantity.Gram), Stool: n(60, quantity.Gram), Guess: n(1, quantity.Litre)},
		Urine:   record.Urine{Gravity: n(1.023, quantity.None), Osmolality: n(810, quantity.MilliosmolePerKilogram), Colour: n(5, quantity.None), When: record.Before},
		Weighings: []record.Weighing{
			mass(record.Before, "", 64), mass(record.Before, "", 64.05), mass(record.After, "", 62.4), mass(record.After, "", 62.45),
			mass(record.Morning, "2026-05-14", 63.4), mass(record.Morning, "2026-05-13", 63.8), mass(record.Morning, "2026-05-12", 63.9), mass(record.Morning, "2026-05-11", 63.6),
		},
		Bottles: []record.Bottle{
			{Meta: id(), ProductID: consult.Water, Use: record.UseDrunk, Before: n(712, quantity.Gram), After: n(412, quantity.Gram),
				Refills: []record.Refill{{Meta: id(), Added: n(200, quantity.Gram)}}},
			{Meta: id(), ProductID: "generic.drink-6", Use: record.UseShared, Before: n(688, quantity.Gram), After: n(432, quantity.Gram),
				ShareLow: n(50, quantity.PerCent), ShareHigh: n(70, quantity.PerCent)},
		},
		Foods: []record.FoodEaten{{Meta: id(), ProductID: "generic.banana", Mass: n(80, quantity.Gram)}},
		Patches: []record.Patch{
			{Meta: id(), Site: record.SiteForearmDorsal, Side: "left", On: "14:25", Off: "15:30", Sodium: n(47.5, quantity.MillimolePerLitre), Potassium: n(4.4, quantity.MillimolePerLitre), Method: record.MethodFlame},
			{Meta: id(), Site: record.SiteThigh, Side: "left", On: "14:25", Off: "15:30", Sodium: n(35, quantity.MillimolePerLitre), Method: record.MethodFlame},
			{Meta: id(), Site: record.SiteChest, On: "14:25", Off: "15:00", Sodium: n(60, quantity.MillimolePerLitre), Condition: record.PatchDetached},
		},
	}
}

// inputOf works a sheet out.
func inputOf(t testing.TB, test record.Test) Input {
	t.Helper()
	generic, err := fuel.Generic()
	if err != nil {
		t.Fatal(err)
	}
	d := consult.Setup{Pantry: consult.NewPantry(generic, nil)}
	return Input{Findings: consult.Find(test, athlete(), nil, d), Athlete: athlete(), Open: true}
}

// evaluate works a formula out with values for its names.
func evaluate(formula string, in []figure.Input) (float64, error) {
	e, err := parser.ParseExpr(formula)
	if err != nil {
		return 0, fmt.Errorf("parse %q: %w", formula, err)
	}
	return arithmetic(e, in)
}

func arithmetic(e ast.Expr, in []figure.Input) (float64, error) {
	switch e := e.(type) {
	case *ast.ParenExpr:
		return arithmetic(e.X, in)
	case *ast.BasicLit:
		return strconv.ParseFloat(e.Value, 64)
	case *ast.Ident:
		for _, i := range in {
			if i.Symbol == e.Name {
				return i.Value, nil
			}
		}
		return 0, fmt.Errorf("no input %q", e.Name)
	case *ast.UnaryExpr:
		x, err := arithmetic(e.X, in)
		return -x, err
	case *ast.BinaryExpr:
		x, err := arithmetic(e.X, in)
		if err != nil {
			return 0, err
		}
		y, err := arithmetic(e.Y, in)
		return map[token.Token]float64{token.ADD: x + y, token.SUB: x - y, token.MUL: x * y, token.QUO: x / y}[e.Op], err
	case *ast.CallExpr:
		return call(e, in)
	}
	return 0, fmt.Errorf("not arithmetic: %T", e)
}

func call(e *ast.CallExpr, in []figure.Input) (float64, error) {
	var args []float64
	for _, a := range e.Args {
		x, err := arithmetic(a, in)
		if err != nil {
			return 0, err
		}
		args = append(args, x)
	}
	switch name := e.Fun.(*ast.Ident).Name; name {
	case "exp":
		return math.Exp(args[0]), nil
	case "ln":
		return math.Log(args[0]), nil
	case "sqrt":
		return math.Sqrt(args[0]), nil
	case "min":
		return min(args[0], args[1]), nil
	case "max":
		return max(args[0], args[1]), nil
	default:
		return 0, fmt.Errorf("function %q", name)
	}
}

// near reports whether two results agree, measured by the largest part.
func near(a, b float64, in []figure.Input, part float64) bool {
	scale := math.Max(math.Abs(a), 1e-12)
	for _, i := range in {
		scale = math.Max(scale, math.Abs(i.Value))
	}
	return math.Abs(a-b) <= part*scale
}

// Every figure of the findings follows from the formula and the inputs its why
// holds, and again, to the digits shown, from the line the screen shows.
func TestEveryFigureFollowsFromItsWhy(t *testing.T) {
	w := english(t)
	sp := speaker{amount.Speaker{Words: w, By: amount.Writer{Words: w}}}
	in := inputOf(t, whole())
	if in.Findings.Refused != nil || len(in.Findings.Sweat.Missing) != 0 {
		t.Fatalf("the sheet is not whole: %v, %v", in.Findings.Refused, in.Findings.Sweat.Missing)
	}
	followed := 0
	for _, r := range Rows(sp.Speaker, in) {
		if !r.Figure.Known {
			continue
		}
		got, err := evaluate(r.Figure.Why.Formula, r.Figure.Why.Inputs)
		if err != nil || !near(got, r.Figure.Value, r.Figure.Why.Inputs, 1e-10) {
			t.Errorf("%s: %q gives %g (%v), the figure is %g", r.Key, r.Figure.Why.Formula, got, err, r.Figure.Value)
		}
		followed++
		shown(t, sp.explain(r, in), r)
	}
	if followed < 20 {
		t.Errorf("only %d figures were followed", followed)
	}
}

// shown works out the line with the numbers in, as a person would who reads it
// off the screen.
func shown(t *testing.T, w Why, r Row) {
	t.Helper()
	if w.Formula.Numbers == "" {
		if !r.Reading {
			t.Errorf("%s: no numbers are shown", r.Key)
		}
		return
	}
	text := w.Formula.Numbers
	units := []quantity.Unit{r.Figure.Unit}
	for _, in := range r.Figure.Why.Inputs {
		units = append(units, in.Unit)
	}
	slices.SortFunc(units, func(a, b quantity.Unit) int { return len(b) - len(a) })
	for _, u := range units {
		if u != quantity.None {
			text = strings.ReplaceAll(text, "\u00a0"+string(u), "")
		}
	}
	text = strings.NewReplacer("×", "*", "−", "-").Replace(text)
	left, right, ok := strings.Cut(text, " = ")
	if !ok {
		t.Fatalf("%s: no result in %q", r.Key, text)
	}
	got, err := evaluate(left, nil)
	want, err2 := strconv.ParseFloat(right, 64)
	if err != nil || err2 != nil || !near(got, want, r.Figure.Why.Inputs, 1e-4) {
		t.Errorf("%s: the screen shows %q, which comes to %g (%v, %v)", r.Key, w.Formula.Numbers, got, err, err2)
	}
}

// The check above can fail.
func TestAFalseFigureIsSeen(t *testing.T) {
	in := inputOf(t, whole())
	f := in.Findings.Sweat.Fluid.Rate
	got, err := evaluate(f.Why.Formula, f.Why.Inputs)
	if err != nil || near(got, f.Value*1.001, f.Why.Inputs, 1e-10) {
		t.Error("a figure one part in a thousand off passed")
	}
}

func TestEverySymbolHasAWord(t *testing.T) {
	w := english(t)
	sp := speaker{amount.Speaker{Words: w, By: amount.Writer{Words: w}}}
	for _, r := range Rows(sp.Speaker, inputOf(t, whole())) {
		for _, in := range r.Figure.Why.Inputs {
			base := strings.TrimRight(in.Symbol, "0123456789")
			if !w.Has("findings.symbol." + base) {
				t.Errorf("%s: the symbol %q has no word", r.Key, in.Symbol)
			}
		}
	}
}

// Budget, sources and notes of the sodium lost name what the figure is based on.
func TestSodiumWhyNamesItsGrounds(t *testing.T) {
	w := english(t)
	sp := speaker{amount.Speaker{Words: w, By: amount.Writer{Words: w}}}
	in := inputOf(t, whole())
	row, ok := figureOf(Rows(sp.Speaker, in), "sodium-lost-rate")
	if !ok {
		t.Fatal("no sodium lost")
	}
	why := sp.explain(row, in)
	total := 0.0
	for _, s := range why.Budget {
		total += s.Part
	}
	if len(why.Budget) == 0 || why.Budget[0].Name != "patch to whole body" || math.Abs(total-1) > 1e-9 {
		t.Errorf("budget %v", why.Budget)
	}
	text := strings.Join(append(append(why.Sources, why.Parts...), why.Notes...), "\n")
	for _, part := range []string{
		"Baker et al. 2016, Journal of Sports Sciences 34:358 (read in the paper)", "Baker et al. 2009",
		"Patch 1, forearm, back: 47.5", "Patch 3, chest: 60\u00a0mmol/L raw, left out: came off.",
		"The average is Ebbwell’s own rule",
	} {
		if !strings.Contains(text, part) {
			t.Errorf("%q is not said in\n%s", part, text)
		}
	}
}

func TestWordsBesideFigures(t *testing.T) {
	w := english(t)
	sp := speaker{amount.Speaker{Words: w, By: amount.Writer{Words: w}}}
	for share, want := range map[float64]string{
		2: "hardly any of what was lost", 9: "about a tenth of what was lost", 26: "about a quarter of what was lost", 51: "about half of what was lost",
		97: "about all that was lost", 130: "more than was lost",
	} {
		if got := sp.fraction(share); got != want {
			t.Errorf("%g %%: got %q, want %q", share, got, want)
		}
	}
	in := inputOf(t, whole())
	for key, want := range map[string]string{
		"carbohydrate-rate": "advised 30–60\u00a0g/h, ACSM/AND/DC 2016",
		"marker.gravity":    "above the euhydrated limit, ACSM 2007",
		"marker.colour":     "", // that set has no bands for it
	} {
		row, ok := figureOf(Rows(sp.Speaker, in), key)
		if !ok || row.Beside != want {
			t.Errorf("%s: got %q (%v), want %q", key, row.Beside, ok, want)
		}
	}
	if row, _ := figureOf(Rows(sp.Speaker, in), "sweat-rate"); !strings.Contains(row.Beside, "football players") {
		t.Errorf("the sport's own group is not named: %q", row.Beside)
	}
	for _, c := range sp.corrections(in) {
		if !strings.HasPrefix(c.Beside, "subtracted") || c.Found == "" {
			t.Errorf("%s: %q, %q", c.Key, c.Found, c.Beside)
		}
	}
}

// figureOf is a row's figure by its key; ok is false when it is not there.
func figureOf(list []Row, key string) (r Row, ok bool) {
	for _, r := range list {
		if r.Key == key {
			return r, true
		}
	}
	return Row{}, false
}

// The rate is the corrected one; what the scale and the bottles alone come to stands in its
// why, once, with its name and above it. Where mass is hidden, breath would follow from both:
// it is not there.
func TestAsWeighedStandsInTheWhy(t *testing.T) {
	w := english(t)
	for _, hidden := range []bool{false, true} {
		sp := speaker{amount.Speaker{Words: w, By: amount.Writer{Words: w, Hidden: hidden}}}
		in := inputOf(t, whole())
		row, ok := figureOf(Rows(sp.Speaker, in), "sweat-rate")
		if !ok {
			t.Fatal("no sweat rate")
		}
		text := strings.ReplaceAll(strings.Join(sp.explain(row, in).Notes, "\n"), "\u00a0", " ")
		_, after, said := strings.Cut(text, "As weighed, without corrections: ")
		if said == hidden || strings.Count(text, "As weighed") > 1 {
			t.Errorf("hidden %v: %s", hidden, text)
		}
		if !said {
			continue
		}
		var raw float64
		if _, err := fmt.Sscanf(after, "%f L/h", &raw); err != nil || raw < in.Findings.Sweat.Fluid.Rate.Value+0.02 {
			t.Errorf("as weighed %g, corrected %g: %q, %v", raw, in.Findings.Sweat.Fluid.Rate.Value, after, err)
		}
	}
}

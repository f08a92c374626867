package climate

import (
	"fmt"
	"go/ast"
	"go/parser"
	"go/token"
	"math"
	"reflect"
	"strconv"
	"testing"

	"ebbwell/internal/evidence"
	"ebbwell/internal/figure"

	"pgregory.net/rapid"
)

// recompute works a formula out from the inputs beside it: + - * / and exp,
// ln, sqrt, min, max.
func recompute(e ast.Expr, inputs map[string]float64) (float64, error) {
	switch e := e.(type) {
	case *ast.ParenExpr:
		return recompute(e.X, inputs)
	case *ast.BasicLit:
		return strconv.ParseFloat(e.Value, 64)
	case *ast.Ident:
		x, ok := inputs[e.Name]
		if !ok {
			return 0, fmt.Errorf("no input %q", e.Name)
		}
		return x, nil
	case *ast.UnaryExpr:
		x, err := recompute(e.X, inputs)
		return -x, err
	case *ast.CallExpr:
		return called(e, inputs)
	case *ast.BinaryExpr:
		x, err := recompute(e.X, inputs)
		if err != nil {
			return 0, err
		}
		y, err := recompute(e.Y, inputs)
		switch e.Op {
		case token.ADD:
			return x + y, err
		case token.SUB:
			return x - y, err
		case token.MUL:
			return x * y, err
		case token.QUO:
			return x / y, err
		}
	}
	return 0, fmt.Errorf("not arithmetic: %T", e)
}

// called works a function out.
func called(e *ast.CallExpr, inputs map[string]float64) (float64, error) {
	name, ok := e.Fun.(*ast.Ident)
	if !ok || len(e.Args) == 0 || len(e.Args) > 2 {
		return 0, fmt.Errorf("not a function of one or two")
	}
	var x [2]float64
	for i, a := range e.Args {
		var err error
		if x[i], err = recompute(a, inputs); err != nil {
			return 0, err
		}
	}
	switch name.Name {
	case "exp":
		return math.Exp(x[0]), nil
	case "ln":
		return math.Log(x[0]), nil
	case "sqrt":
		return math.Sqrt(x[0]), nil
	case "min":
		return min(x[0], x[1]), nil
	case "max":
		return max(x[0], x[1]), nil
	}
	return 0, fmt.Errorf("unknown function %q", name.Name)
}

// faultOf says what is wrong with a figure; empty when nothing is.
func faultOf(f figure.Figure) string {
	if !f.Known {
		return ""
	}
	if math.IsNaN(f.Value) || math.IsInf(f.Value, 0) || math.IsNaN(f.U) || f.U < 0 {
		return fmt.Sprintf("value %g, u %g", f.Value, f.U)
	}
	if f.Ranged && (math.IsNaN(f.Range.Width()) || math.IsInf(f.Range.Width(), 0) || f.Range.Width() < 0 || !f.Range.Contains(f.Value)) {
		return fmt.Sprintf("%g is not in its range %v", f.Value, f.Range)
	}
	inputs := map[string]float64{}
	for _, i := range f.Why.Inputs {
		inputs[i.Symbol] = i.Value
	}
	e, err := parser.ParseExpr(f.Why.Formula)
	if err != nil {
		return fmt.Sprintf("formula %q: %v", f.Why.Formula, err)
	}
	again, err := recompute(e, inputs)
	if err != nil {
		return err.Error()
	}
	if math.Abs(again-f.Value) > 1e-9*max(1, math.Abs(f.Value)) {
		return fmt.Sprintf("%s gives %.12g, the figure says %.12g", f.Why.Formula, again, f.Value)
	}
	part := 0.0
	for i, s := range f.Why.Budget {
		part += s.Part
		if i > 0 && s.Part > f.Why.Budget[i-1].Part {
			return "the budget is not in order"
		}
	}
	if len(f.Why.Budget) > 0 && math.Abs(part-1) > 1e-9 {
		return fmt.Sprintf("the budget adds up to %g", part)
	}
	for _, id := range f.Why.Sources {
		if _, ok := evidence.Find(id); !ok {
			return fmt.Sprintf("no evidence entry %q", id)
		}
	}
	return ""
}

// figuresIn finds the figures of a result, wherever they stand.
func figuresIn(r any) map[string]figure.Figure {
	found := map[string]figure.Figure{}
	var walk func(string, reflect.Value)
	walk = func(at string, v reflect.Value) {
		if v.Type() == reflect.TypeFor[figure.Figure]() {
			found[at] = v.Interface().(figure.Figure)
			return
		}
		switch v.Kind() {
		case reflect.Struct:
			for i := range v.NumField() {
				if v.Type().Field(i).IsExported() {
					walk(at+"."+v.Type().Field(i).Name, v.Field(i))
				}
			}
		case reflect.Slice:
			for i := range v.Len() {
				walk(fmt.Sprintf("%s[%d]", at, i), v.Index(i))
			}
		}
	}
	walk("", reflect.ValueOf(r))
	return found
}

// TestEveryFigureRecomputes: each figure of random estimates comes out again
// from the formula and the inputs it shows.
func TestEveryFigureRecomputes(t *testing.T) {
	seen := map[string]int{}
	rapid.Check(t, func(t *rapid.T) {
		a, tests, plan := drawAthlete(t), drawTests(t), drawSession(t, "plan")
		for i := range tests {
			tests[i].Session = drawSession(t, "test")
		}
		basis, err := Estimate(a, tests, plan)
		if err != nil {
			t.Fatal(err)
		}
		explained, err := Explain(a.Body, plan)
		if err != nil {
			t.Fatal(err)
		}
		caution, err := HeatCaution(a.Body, plan, Practice{}, nil, basis)
		if err != nil {
			t.Fatal(err)
		}
		for _, r := range []any{basis, explained, caution, plan} {
			for at, f := range figuresIn(r) {
				if fault := faultOf(f); fault != "" {
					t.Fatalf("%T%s: %s", r, at, fault)
				}
				if f.Known {
					seen[fmt.Sprintf("%T%s", r, at)]++
				}
			}
		}
	})
	for _, at := range []string{"climate.Basis.Rate", "climate.Basis.Breath", "climate.Explained.Need",
		"climate.Explained.First", "climate.Caution.Parts[0].Figure", "climate.Session.Effort.Metabolic"} {
		if seen[at] == 0 {
			t.Errorf("no figure %s was checked", at)
		}
	}
}

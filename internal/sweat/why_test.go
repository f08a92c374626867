package sweat

import (
	"fmt"
	"go/ast"
	"go/parser"
	"go/token"
	"math"
	"reflect"
	"strconv"
	"testing"

	"ebbwell/internal/figure"
)

// recompute works a "why" out again: its formula with its inputs put in.
func recompute(w figure.Why) (float64, error) {
	e, err := parser.ParseExpr(w.Formula)
	if err != nil {
		return 0, fmt.Errorf("parse %q: %w", w.Formula, err)
	}
	return arithmetic(e, w.Inputs)
}

// arithmetic evaluates a formula: + - * / ( ) and exp, ln, sqrt, min, max.
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
		if e.Op != token.SUB {
			return 0, fmt.Errorf("operator %v", e.Op)
		}
		return -x, err
	case *ast.BinaryExpr:
		return operate(e, in)
	case *ast.CallExpr:
		return call(e, in)
	}
	return 0, fmt.Errorf("not arithmetic: %T", e)
}

func operate(e *ast.BinaryExpr, in []figure.Input) (float64, error) {
	x, err := arithmetic(e.X, in)
	if err != nil {
		return 0, err
	}
	y, err := arithmetic(e.Y, in)
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
	return 0, fmt.Errorf("operator %v", e.Op)
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
	name, ok := e.Fun.(*ast.Ident)
	switch {
	case ok && len(args) == 1 && name.Name == "exp":
		return math.Exp(args[0]), nil
	case ok && len(args) == 1 && name.Name == "ln":
		return math.Log(args[0]), nil
	case ok && len(args) == 1 && name.Name == "sqrt":
		return math.Sqrt(args[0]), nil
	case ok && len(args) == 2 && name.Name == "min":
		return min(args[0], args[1]), nil
	case ok && len(args) == 2 && name.Name == "max":
		return max(args[0], args[1]), nil
	}
	return 0, fmt.Errorf("unknown function with %d arguments", len(args))
}

// figuresOf finds every figure of a result, wherever it stands.
func figuresOf(r any) map[string]figure.Figure {
	found := map[string]figure.Figure{}
	var walk func(path string, v reflect.Value)
	walk = func(path string, v reflect.Value) {
		if f, ok := v.Interface().(figure.Figure); ok {
			found[path] = f
			return
		}
		switch v.Kind() {
		case reflect.Struct:
			for i := range v.NumField() {
				walk(path+"."+v.Type().Field(i).Name, v.Field(i))
			}
		case reflect.Slice:
			for i := range v.Len() {
				walk(fmt.Sprintf("%s[%d]", path, i), v.Index(i))
			}
		}
	}
	walk("", reflect.ValueOf(r))
	return found
}

// checkFigure says what is wrong with a figure; empty when nothing is.
func checkFigure(f figure.Figure) string {
	if !f.Known && !f.Ranged {
		return ""
	}
	if f.Ranged && (!finite(f.Range.Low, f.Range.High) || f.Range.Width() < 0) {
		return fmt.Sprintf("range %v", f.Range)
	}
	if !f.Known {
		return ""
	}
	if !finite(f.Value, f.U) || f.U < 0 {
		return fmt.Sprintf("value %g, u %g", f.Value, f.U)
	}
	if f.Ranged && !f.Range.Contains(f.Value) {
		return fmt.Sprintf("range %v does not hold %g", f.Range, f.Value)
	}
	again, err := recompute(f.Why)
	if err != nil {
		return err.Error()
	}
	scale := math.Abs(f.Value)
	for _, in := range f.Why.Inputs {
		if math.Abs(in.Value) < 1e6 { // sums lose digits of their largest part
			scale = max(scale, math.Abs(in.Value))
		}
	}
	if math.Abs(again-f.Value) > 1e-11*max(1, scale) {
		return fmt.Sprintf("%s gives %.15g from its inputs, figure says %.15g", f.Why.Formula, again, f.Value)
	}
	return checkBudget(f)
}

// checkBudget holds a budget to its promise: falling, adding up to one.
func checkBudget(f figure.Figure) string {
	total := 0.0
	for i, s := range f.Why.Budget {
		total += s.Part
		if i > 0 && s.Part > f.Why.Budget[i-1].Part {
			return fmt.Sprintf("budget not falling: %v", f.Why.Budget)
		}
	}
	if len(f.Why.Budget) > 0 && math.Abs(total-1) > 1e-9 {
		return fmt.Sprintf("budget adds up to %g", total)
	}
	return ""
}

func TestWhyGivesEveryFigureAgain(t *testing.T) {
	figures := figuresOf(evaluated(t, wholeSheet()))
	known := 0
	for path, f := range figures {
		if f.Known {
			known++
		}
		if wrong := checkFigure(f); wrong != "" {
			t.Errorf("%s: %s", path, wrong)
		}
	}
	if known < 14 {
		t.Errorf("only %d known figures in a whole sheet", known)
	}
}

// TestWhyCatchesAFalseFigure makes sure that the check above can fail.
func TestWhyCatchesAFalseFigure(t *testing.T) {
	f := evaluated(t, wholeSheet()).Fluid.Rate
	f.Value *= 1.000001
	if checkFigure(f) == "" {
		t.Error("a figure that its formula does not give passed")
	}
	f = evaluated(t, wholeSheet()).Fluid.Rate
	f.Why.Formula = "loss / hours"
	if checkFigure(f) == "" {
		t.Error("a formula with an unknown symbol passed")
	}
}

package mutate

import (
	"go/ast"
	"go/constant"
	"go/token"
	"go/types"
	"math"
	"strconv"
)

// basic is what a type comes down to when it is a number or a text.
func (f *finder) basic(e ast.Expr) types.BasicInfo {
	t := f.info.TypeOf(e)
	if t == nil {
		return 0
	}
	b, ok := t.Underlying().(*types.Basic)
	if !ok {
		return 0
	}
	return b.Info()
}

// number reports whether an expression is a number, whole whether it counts.
func (f *finder) number(e ast.Expr) bool { return f.basic(e)&types.IsNumeric != 0 }
func (f *finder) whole(e ast.Expr) bool  { return f.basic(e)&types.IsInteger != 0 }

// wholeUpTo is the largest whole number that is changed by one and not by 10 %.
const wholeUpTo = 10

// literal makes a number 10 % larger and 10 % smaller.
func (f *finder) literal(l *ast.BasicLit) {
	if l.Kind != token.FLOAT && l.Kind != token.INT {
		return
	}
	v, ok := constant.Float64Val(constant.ToFloat(constant.MakeFromLiteral(l.Value, l.Kind, 0)))
	if !ok && v == 0 || v == 0 || math.IsInf(v, 0) {
		return
	}
	if !f.whole(l) {
		f.replace(Constant, l, decimal(v*1.1))
		f.replace(Constant, l, decimal(v*0.9))
		return
	}
	step := 1.0
	if v > wholeUpTo {
		step = math.Round(v / 10)
	}
	f.replace(Constant, l, strconv.FormatFloat(v+step, 'f', 0, 64))
	f.replace(Constant, l, strconv.FormatFloat(v-step, 'f', 0, 64))
}

// threshold makes a published threshold 10 % larger and 10 % smaller where it
// is used.
func (f *finder) threshold(s *ast.SelectorExpr) {
	from, ok := s.X.(*ast.Ident)
	if !ok || from.Name != "evidence" || f.info.Types[s].Value == nil || !f.number(s) || constant.Sign(f.info.Types[s].Value) == 0 {
		return
	}
	f.replace(Constant, s, "("+f.text(s)+"*1.1)")
	f.replace(Constant, s, "("+f.text(s)+"*0.9)")
}

// decimal writes a number so that it is a real one.
func decimal(v float64) string {
	s := strconv.FormatFloat(v, 'g', 12, 64)
	for _, r := range s {
		if r == '.' || r == 'e' {
			return s
		}
	}
	return s + ".0"
}

package plan

import (
	"go/ast"
	"go/parser"
	"go/token"
	"math"
	"strconv"
	"testing"

	"pgregory.net/rapid"

	"ebbwell/internal/evidence"
	"ebbwell/internal/figure"
)

// Every figure can be worked out again from its own why.
func TestFiguresCanBeWorkedOutAgain(t *testing.T) {
	list := products(t)
	known := 0
	rapid.Check(t, func(t *rapid.T) {
		d := roll(t)
		p := d.planner(t, list)
		mix := d.mix(p.menu)
		q, f := p.Evaluate(Expected, mix), p.Explain(Expected, mix)
		for _, c := range []struct {
			name string
			fig  figure.Figure
			want float64
			is   bool
		}{
			{"deficit L", f.DeficitL, q.DeficitL.Value, true},
			{"deficit", f.Deficit, q.Deficit.Value, true},
			{"drinking", f.Drinking, q.Fluid.RateLH, true},
			{"carbohydrate", f.Carbohydrate, q.Carbohydrate.TotalGH, true},
			{"strength", f.Strength, q.StrengthPercent, q.Fluid.DrunkL > 0},
			{"sodium in", f.SodiumIn, q.Sodium.InMgH, true},
			{"sodium loss", f.SodiumLoss, q.Sodium.LossMgH.Value, q.Sodium.LossMgH.Known},
			{"share", f.Share, 100 * q.Sodium.Share.Value, q.Sodium.Share.Known},
		} {
			if c.fig.Known != c.is {
				t.Fatalf("%s known %v, want %v", c.name, c.fig.Known, c.is)
			}
			if !c.is {
				continue
			}
			known++
			checkWhy(t, c.name, c.fig, c.want)
		}
	})
	if known == 0 {
		t.Error("no figure was known")
	}
}

func checkWhy(t tester, name string, f figure.Figure, want float64) {
	t.Helper()
	expr, err := parser.ParseExpr(f.Why.Formula)
	if err != nil {
		t.Fatalf("%s: %q: %v", name, f.Why.Formula, err)
	}
	inputs := map[string]float64{}
	for _, in := range f.Why.Inputs {
		inputs[in.Symbol] = in.Value
	}
	near(t, name+" from its why", work(t, expr, inputs), want)
	near(t, name, f.Value, want)
	if f.Ranged && !inRange(f.Range, f.Value) {
		t.Fatalf("%s: %g outside %+v", name, f.Value, f.Range)
	}
	parts := 0.0
	for _, share := range f.Why.Budget {
		parts += share.Part
	}
	if len(f.Why.Budget) > 0 {
		near(t, name+" budget", parts, 1)
	}
	for _, id := range f.Why.Sources {
		if _, ok := evidence.Find(id); !ok {
			t.Fatalf("%s: no evidence %q", name, id)
		}
	}
}

// work evaluates plain arithmetic.
func work(t tester, e ast.Expr, inputs map[string]float64) float64 {
	t.Helper()
	switch e := e.(type) {
	case *ast.ParenExpr:
		return work(t, e.X, inputs)
	case *ast.BasicLit:
		x, err := strconv.ParseFloat(e.Value, 64)
		if err != nil {
			t.Fatal(err)
		}
		return x
	case *ast.Ident:
		x, ok := inputs[e.Name]
		if !ok {
			t.Fatalf("symbol %q has no value", e.Name)
		}
		return x
	case *ast.BinaryExpr:
		x, y := work(t, e.X, inputs), work(t, e.Y, inputs)
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
	}
	t.Fatalf("cannot work out %T", e)
	return 0
}

func TestEstimateIsCalledOne(t *testing.T) {
	b := courtBasis()
	b.Kind = Estimate
	p := newPlanner(t, b, courtSession(), fullMenu(t), Aim{})
	f := p.Explain(Expected, Mix{Water: 500, Food3: 1})
	if !f.Deficit.Estimate || !f.DeficitL.Estimate || f.Drinking.Estimate {
		t.Error("what based on an estimate is one, what is decided is not")
	}
	if f.SodiumIn.Ranged || len(f.SodiumIn.Why.Notes) == 0 {
		t.Error("the sodium of a gel is not known, and not said")
	}
}

// The range of a sodium loss adds relative widths in squares (JCGM 100:2008,
// 5.1.6), either side by itself.
func TestProductOfRanges(t *testing.T) {
	r := Between(2, 1.5, 3).product(Between(40, 30, 60))
	near(t, "value", r.Value, 80)
	near(t, "low", r.Low, 80-80*math.Hypot(0.25, 0.25))
	near(t, "high", r.High, 80+80*math.Hypot(0.5, 0.5))
	if (Ranged{}).product(Between(1, 1, 1)).Known || Between(0, 0, 0).under(5).Known {
		t.Error("known from the unknown")
	}
}

// Codes lists every code once, and each set spells out its own.
func TestCodes(t *testing.T) {
	seen := map[string]bool{}
	for _, c := range Codes() {
		if c == "" || seen[c] {
			t.Errorf("code %q empty or twice", c)
		}
		seen[c] = true
	}
	for one := GainInMass; one < guardEnd; one <<= 1 {
		if one.Code() == "" || !seen[one.Code()] {
			t.Errorf("guard %d has no code", one)
		}
	}
	if Guard(0).Code() != "" {
		t.Error("nothing has a code")
	}
}

// The standard uncertainty of a range is its wider half over 1.96; sodium's budget is
// parted by the squares of relative uncertainties, the larger part first.
func TestBudgetByHand(t *testing.T) {
	if u := halfWidth(Between(2, 1.02, 2.49)); math.Abs(u-0.5) > 1e-9 {
		t.Errorf("below the wider: %g", u)
	}
	if u := halfWidth(Between(2, 1.9, 2.98)); math.Abs(u-0.5) > 1e-9 {
		t.Errorf("above the wider: %g", u)
	}
	b := courtBasis()
	at := func(rate, sodium float64) []figure.Share {
		b.SweatRate, b.Sodium = Between(2, 2-2*rate, 2+2*rate), Between(40, 40-40*sodium, 40+40*sodium)
		e := explainer{p: newPlanner(t, b, courtSession(), fullMenu(t), Aim{})}
		return e.sodiumBudget()
	}
	for _, c := range []struct {
		rate, sodium float64
		first        string
		part         float64
	}{{0.3, 0.4, SourcePlannedSodium, 0.64}, {0.4, 0.3, SourcePlannedRate, 0.64}, {0.2, 0, SourcePlannedRate, 1}} {
		list := at(c.rate, c.sodium)
		if len(list) != 2 || list[0].Source != c.first || math.Abs(list[0].Part-c.part) > 1e-9 || math.Abs(list[0].Part+list[1].Part-1) > 1e-9 {
			t.Errorf("%+v: %+v", c, list)
		}
	}
	if list := at(0, 0); list != nil {
		t.Errorf("nothing uncertain: %+v", list)
	}
	b.Sodium = Ranged{}
	e := explainer{p: newPlanner(t, b, courtSession(), fullMenu(t), Aim{})}
	e.p.basis.SweatRate = Between(2, 1, 3)
	if list := e.sodiumBudget(); len(list) != 2 || list[0].Source != SourcePlannedRate || list[0].Part != 1 {
		t.Errorf("a sodium that is not known: %+v", list)
	}
}

package evidence

import (
	"go/ast"
	"go/constant"
	"go/token"
	"go/types"
	"os"
	"path/filepath"
	"strings"
	"testing"
)

// allowed are the numbers that science code may type, and why.
func allowed() map[string]string {
	return map[string]string{
		"0": "nothing", "1": "one", "2": "two, a square, a mean of two", "3": "a third of a series",
		"4": "a fourth power, a mean of two squared", "0.5": "a half, a rounding", "7": "days in a week",
		"10": "tenths", "60": "minutes and seconds", "100": "per cent", "1000": "thousandths: g and kg, mL and L",
		"0.01":  "a hundredth: per cent, centimetres",
		"1e-06": "a step of arithmetic", "1e-09": "a step of arithmetic", "0.0001": "a step of arithmetic", "1e+09": "beyond any amount",
	}
}

// literal is a number typed in source.
type literal struct {
	at    token.Position
	value string
}

// floats lists the numbers in a package that are used as floating-point values:
// typed with a point or an exponent, or whole and turned into one.
func floats(t *testing.T, folder string) []literal {
	t.Helper()
	set := token.NewFileSet()
	files, err := parsed(set, folder)
	if err != nil {
		t.Fatal(err)
	}
	info := &types.Info{Types: map[ast.Expr]types.TypeAndValue{}}
	conf := types.Config{Importer: &ours{set: set, done: map[string]*types.Package{}}, Error: func(error) {}}
	_, _ = conf.Check(filepath.Base(folder), set, files, info)
	var list []literal
	for _, f := range files {
		ast.Inspect(f, func(n ast.Node) bool {
			lit, ok := n.(*ast.BasicLit)
			if ok && isFloat(lit, info.Types[lit].Type) {
				x := constant.ToFloat(constant.MakeFromLiteral(lit.Value, lit.Kind, 0))
				v, _ := constant.Float64Val(x)
				list = append(list, literal{set.Position(lit.Pos()), short(v)})
			}
			return true
		})
	}
	return list
}

// isFloat reports whether a literal is, or becomes, a floating-point number.
func isFloat(lit *ast.BasicLit, typ types.Type) bool {
	if lit.Kind == token.FLOAT {
		return true
	}
	if lit.Kind != token.INT || typ == nil {
		return false
	}
	basic, ok := typ.Underlying().(*types.Basic)
	return ok && basic.Info()&types.IsFloat != 0
}

// ours imports the packages of this program from source, and others as empty.
type ours struct {
	set  *token.FileSet
	done map[string]*types.Package
}

func (o *ours) Import(path string) (*types.Package, error) {
	if p, ok := o.done[path]; ok {
		return p, nil
	}
	name, own := strings.CutPrefix(path, "ebbwell/internal/")
	if !own {
		return noImports{}.Import(path)
	}
	files, err := parsed(o.set, filepath.Join("..", name))
	if err != nil {
		return nil, err
	}
	conf := types.Config{Importer: o, Error: func(error) {}}
	p, _ := conf.Check(path, o.set, files, nil)
	o.done[path] = p
	return p, nil
}

// short writes a number the shortest way that is still the number.
func short(x float64) string { return strings.TrimSpace(constant.MakeFloat64(x).String()) }

// TestNoThresholdOutsideEvidence: the science packages type no number of their
// own but plain arithmetic. A threshold belongs here, with its entry.
func TestNoThresholdOutsideEvidence(t *testing.T) {
	ok := allowed()
	for _, name := range []string{"sweat", "fuel", "climate", "plan", "plan/proposal"} {
		t.Run(name, func(t *testing.T) {
			list := floats(t, filepath.Join("..", name))
			if len(list) == 0 {
				t.Fatal("no number found at all: the search is broken, or the package is empty")
			}
			for _, l := range list {
				if ok[l.value] == "" {
					t.Errorf("%s:%d: %s is typed here; it belongs in evidence", filepath.Base(l.at.Filename), l.at.Line, l.value)
				}
			}
		})
	}
}

// TestScanFindsThresholds makes sure that the search above can fail: it looks
// through source that types a threshold, whole and broken, outside a float.
func TestScanFindsThresholds(t *testing.T) {
	folder := t.TempDir()
	write(t, filepath.Join(folder, "typed.go"), `package typed

func late(minutes float64) bool { return minutes > 150 }

func many(n int) bool { return n > 150 }

const edge = 1.025
`)
	got := map[string]bool{}
	for _, l := range floats(t, folder) {
		got[l.value] = true
	}
	if len(got) != 2 || !got["150"] || !got["1.025"] {
		t.Errorf("found %v, want 150 (once) and 1.025", got)
	}
}

// write makes a file of source for a test.
func write(t *testing.T, path, text string) {
	t.Helper()
	if err := os.WriteFile(path, []byte(text), 0o600); err != nil {
		t.Fatal(err)
	}
}

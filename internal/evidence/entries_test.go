package evidence

import (
	"go/ast"
	"go/constant"
	"go/parser"
	"go/token"
	"go/types"
	"math"
	"path/filepath"
	"regexp"
	"slices"
	"strings"
	"testing"
)

// source parses the package's own files, tests left out, and works out its
// constants.
func source(t *testing.T) ([]*ast.File, *types.Info) {
	t.Helper()
	set := token.NewFileSet()
	files, err := parsed(set, ".")
	if err != nil {
		t.Fatal(err)
	}
	info := &types.Info{Defs: map[*ast.Ident]types.Object{}}
	// Imports stay unresolved; the constants do not need them.
	conf := types.Config{Importer: noImports{}, Error: func(error) {}}
	_, _ = conf.Check("evidence", set, files, info)
	return files, info
}

// parsed reads the files of a package, tests left out.
func parsed(set *token.FileSet, folder string) ([]*ast.File, error) {
	names, err := filepath.Glob(filepath.Join(folder, "*.go"))
	if err != nil {
		return nil, err
	}
	var files []*ast.File
	for _, name := range names {
		if strings.HasSuffix(name, "_test.go") {
			continue
		}
		f, err := parser.ParseFile(set, name, nil, 0)
		if err != nil {
			return nil, err
		}
		files = append(files, f)
	}
	return files, nil
}

// noImports gives every import an empty package.
type noImports struct{}

func (noImports) Import(path string) (*types.Package, error) {
	p := types.NewPackage(path, path[strings.LastIndex(path, "/")+1:])
	p.MarkComplete()
	return p, nil
}

// thresholds lists the exported numeric constants of the package; those of a
// named type (a severity, a field) are words, not thresholds.
func thresholds(info *types.Info) map[string]float64 {
	found := map[string]float64{}
	for _, object := range info.Defs {
		c, ok := object.(*types.Const)
		if !ok || !c.Exported() || c.Parent() != c.Pkg().Scope() {
			continue
		}
		basic, ok := c.Type().(*types.Basic)
		if !ok || basic.Info()&types.IsNumeric == 0 {
			continue
		}
		x, _ := constant.Float64Val(constant.ToFloat(c.Val()))
		found[c.Name()] = x
	}
	return found
}

// inEntries lists the identifiers used inside functions that make entries or
// tables of them.
func inEntries(files []*ast.File) map[string]bool {
	used := map[string]bool{}
	for _, f := range files {
		for _, d := range f.Decls {
			fn, ok := d.(*ast.FuncDecl)
			if !ok || fn.Body == nil || !strings.HasSuffix(strings.ToLower(fn.Name.Name), "entries") {
				continue
			}
			ast.Inspect(fn.Body, func(n ast.Node) bool {
				if id, ok := n.(*ast.Ident); ok {
					used[id.Name] = true
				}
				return true
			})
		}
	}
	return used
}

// TestEveryThresholdHasAnEntry: each exported number stands in a function that
// lists entries, and an entry of that value is among all of them.
func TestEveryThresholdHasAnEntry(t *testing.T) {
	files, info := source(t)
	found, used := thresholds(info), inEntries(files)
	if len(found) < 100 {
		t.Fatalf("only %d exported numbers found", len(found))
	}
	values := map[float64]bool{}
	for _, e := range All() {
		values[e.Value] = true
	}
	for name, x := range found {
		if !used[name] {
			t.Errorf("%s = %g has no entry", name, x)
		}
		if !values[x] {
			t.Errorf("%s = %g: no entry has that value", name, x)
		}
	}
}

func TestEntries(t *testing.T) {
	seen := map[string]bool{}
	letters := map[Sureness]bool{Read: true, Second: true, Memory: true, Derived: true, Proposal: true, Practice: true}
	for _, e := range All() {
		switch {
		case e.ID == "" || strings.TrimSpace(e.ID) != e.ID || !strings.Contains(e.ID, "."):
			t.Errorf("id %q is not dotted", e.ID)
		case seen[e.ID]:
			t.Errorf("id %q stands twice", e.ID)
		case math.IsNaN(e.Value):
			t.Errorf("%s is not a number", e.ID)
		case !letters[e.Sure]:
			t.Errorf("%s: sureness %q", e.ID, e.Sure)
		case e.Source.Code == "" && (e.Source.Short == "" || e.Source.Full == ""):
			t.Errorf("%s has no source", e.ID)
		case e.Valid.Low > e.Valid.High:
			t.Errorf("%s is valid from %g to %g", e.ID, e.Valid.Low, e.Valid.High)
		}
		seen[e.ID] = true
	}
}

// What is no publication has a code, by which it is said in the window's language; a
// publication is named by its year, or is one of few that have none.
func TestSourcesArePublishedOrCoded(t *testing.T) {
	undated := []string{"Lints", "Nguyen, Kurtz", "Bartoli; Murray", "American College of Sports Medicine, metabolic equations", "Regulation (EU)"}
	year := regexp.MustCompile(`\b(19|20)\d\d\b`)
	sources := map[Citation]string{}
	for _, e := range All() {
		sources[e.Source] = e.ID
	}
	for _, s := range Statements() {
		sources[s.Source] = s.ID
	}
	for c, id := range sources {
		published := year.MatchString(c.Full) || slices.ContainsFunc(undated, func(begin string) bool { return strings.HasPrefix(c.Full, begin) })
		if published == (c.Code != "") {
			t.Errorf("%s: code %q, %q", id, c.Code, c.Full)
		}
	}
}

func TestFind(t *testing.T) {
	if e, ok := Find("deficit.aim"); !ok || e.Value != DeficitAim {
		t.Errorf("deficit.aim: %+v, %v", e, ok)
	}
	if e, ok := Find("nothing.of.the.kind"); ok {
		t.Errorf("found %+v", e)
	}
}

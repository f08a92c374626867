package evidence

import (
	"go/ast"
	"go/parser"
	"go/token"
	"io/fs"
	"os"
	"path/filepath"
	"strings"
	"testing"
)

// namedOutside are the exported names of this package that the program's own code
// uses, tests left out, and the texts it holds, by which entries are named too.
func namedOutside(t *testing.T) map[string]bool {
	t.Helper()
	named := map[string]bool{}
	for _, root := range []string{"../../app", "../../cmd", ".."} {
		err := filepath.WalkDir(root, func(path string, d fs.DirEntry, err error) error {
			if err != nil || d.IsDir() || !strings.HasSuffix(path, ".go") || strings.HasSuffix(path, "_test.go") ||
				strings.HasPrefix(filepath.ToSlash(path), "../evidence/") {
				return err
			}
			f, err := parser.ParseFile(token.NewFileSet(), path, nil, parser.SkipObjectResolution)
			if err != nil {
				return err
			}
			ast.Inspect(f, func(n ast.Node) bool {
				if s, ok := n.(*ast.SelectorExpr); ok {
					if x, ok := s.X.(*ast.Ident); ok && x.Name == "evidence" {
						named[s.Sel.Name] = true
					}
				}
				if lit, ok := n.(*ast.BasicLit); ok && lit.Kind == token.STRING {
					named[lit.Value] = true
				}
				return true
			})
			return nil
		})
		if err != nil {
			t.Fatal(err)
		}
	}
	return named
}

// reached adds to some names those that their own declarations use, over and over:
// a table of bands uses its edges, a constant those it is made of. Lists of entries
// use nothing: they only show.
func reached(files []*ast.File, names map[string]bool) map[string]bool {
	uses := map[string][]string{}
	for _, f := range files {
		for _, d := range f.Decls {
			for name, node := range declared(d) {
				ast.Inspect(node, func(n ast.Node) bool {
					if id, ok := n.(*ast.Ident); ok {
						uses[name] = append(uses[name], id.Name)
					}
					return true
				})
			}
		}
	}
	out := map[string]bool{}
	var add func(string)
	add = func(name string) {
		if out[name] {
			return
		}
		out[name] = true
		for _, used := range uses[name] {
			add(used)
		}
	}
	for name := range names {
		add(name)
	}
	return out
}

// declared are the names of a declaration with what each is made of.
func declared(d ast.Decl) map[string]ast.Node {
	out := map[string]ast.Node{}
	switch d := d.(type) {
	case *ast.FuncDecl:
		if listing := strings.HasSuffix(strings.ToLower(d.Name.Name), "entries") || d.Name.Name == "All"; !listing && d.Body != nil {
			out[d.Name.Name] = d.Body
		}
	case *ast.GenDecl:
		for _, s := range d.Specs {
			if v, ok := s.(*ast.ValueSpec); ok {
				for i, name := range v.Names {
					if i < len(v.Values) {
						out[name.Name] = v.Values[i]
					}
				}
			}
		}
	}
	return out
}

// TestEveryThresholdIsUsed: what is listed as a threshold in use is one that the
// program's code calculates with or compares with. What a source says beside that is
// a [Statement].
func TestEveryThresholdIsUsed(t *testing.T) {
	files, info := source(t)
	named := namedOutside(t)
	used, ids := reached(files, named), entryIDs(files)
	for name, x := range thresholds(info) {
		if !used[name] && !named[ids[name]] {
			t.Errorf("%s = %g is listed, and no code uses it", name, x)
		}
	}
}

// entryIDs are the ids, in quotes, of the entries whose value is a constant.
func entryIDs(files []*ast.File) map[string]string {
	ids := map[string]string{}
	for _, f := range files {
		ast.Inspect(f, func(n ast.Node) bool {
			lit, ok := n.(*ast.CompositeLit)
			if !ok {
				return true
			}
			id, value := idAndValue(lit)
			ids[value] = id
			return true
		})
	}
	return ids
}

// idAndValue are the id, in quotes, and the constant of one entry.
func idAndValue(lit *ast.CompositeLit) (id, value string) {
	for _, e := range lit.Elts {
		pair, ok := e.(*ast.KeyValueExpr)
		if !ok {
			continue
		}
		key, ok := pair.Key.(*ast.Ident)
		if !ok {
			continue
		}
		switch x := pair.Value.(type) {
		case *ast.BasicLit:
			if key.Name == "ID" {
				id = x.Value
			}
		case *ast.Ident:
			if key.Name == "Value" {
				value = x.Name
			}
		}
	}
	return id, value
}

// TestUsedFindsTheUnused makes sure that the search above can fail.
func TestUsedFindsTheUnused(t *testing.T) {
	folder := t.TempDir()
	write(t, filepath.Join(folder, "made.go"), `package made

const (
	Edge   = 1.0
	Half   = Edge / 2
	Listed = 3.0
)

func Band(x float64) bool { return x < Half }

func bandEntries() []float64 { return []float64{Edge, Half, Listed} }
`)
	files, err := parsed(token.NewFileSet(), folder)
	if err != nil {
		t.Fatal(err)
	}
	used := reached(files, map[string]bool{"Band": true})
	if !used["Edge"] || !used["Half"] || used["Listed"] {
		t.Errorf("used: %v", used)
	}
	if _, err := os.Stat(filepath.Join("..", "climate")); err != nil {
		t.Error(err)
	}
}

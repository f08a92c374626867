package words

import (
	"fmt"
	"go/ast"
	"go/parser"
	"go/token"
	"io/fs"
	"path/filepath"
	"strconv"
	"strings"
)

// said is one call of Say whose text is chosen in the source.
type said struct {
	at string // file:line
	// key is the whole key, or its beginning when Begins.
	key    string
	begins bool
	// args counts what is put in; -1 when a list is passed on.
	args int
}

// usage is what one package does with keys.
type usage struct {
	calls []said
	// literals are all its strings; begins and ends are the strings that a
	// key is put together from: "month." + n, key + ".plain".
	literals, begins, ends map[string]bool
}

// scan reads the packages below a folder; tests, the tools for people who
// work on the program, and dotted folders are left out.
func scan(root string) ([]usage, error) {
	packages := map[string]*usage{}
	err := filepath.WalkDir(root, func(path string, d fs.DirEntry, err error) error {
		switch {
		case err != nil:
			return err
		case d.IsDir() && path != root && (strings.HasPrefix(d.Name(), ".") || d.Name() == "testdata" || d.Name() == "dev"):
			return fs.SkipDir
		case d.IsDir() || !strings.HasSuffix(path, ".go") || strings.HasSuffix(path, "_test.go"):
			return nil
		}
		u := packages[filepath.Dir(path)]
		if u == nil {
			u = newUsage()
			packages[filepath.Dir(path)] = u
		}
		return u.addFile(path, nil)
	})
	var list []usage
	for _, u := range packages {
		list = append(list, *u)
	}
	return list, err
}

func newUsage() *usage {
	return &usage{literals: map[string]bool{}, begins: map[string]bool{}, ends: map[string]bool{}}
}

// addFile takes in one file; src is its text, or nil to read it.
func (u *usage) addFile(path string, src any) error {
	files := token.NewFileSet()
	tree, err := parser.ParseFile(files, path, src, parser.SkipObjectResolution)
	if err != nil {
		return fmt.Errorf("read source: %w", err)
	}
	ast.Inspect(tree, func(n ast.Node) bool {
		switch n := n.(type) {
		case *ast.BasicLit:
			if text, ok := stringOf(n); ok {
				u.literals[text] = true
			}
		case *ast.BinaryExpr:
			u.addSum(n)
		case *ast.CallExpr:
			if s, ok := sayOf(n); ok {
				at := files.Position(n.Pos())
				s.at = fmt.Sprintf("%s:%d", filepath.Base(filepath.Dir(at.Filename))+"/"+filepath.Base(at.Filename), at.Line)
				u.calls = append(u.calls, s)
			}
		}
		return true
	})
	return nil
}

// addSum notes the ends of a sum of strings.
func (u *usage) addSum(sum *ast.BinaryExpr) {
	if sum.Op != token.ADD {
		return
	}
	if text, ok := stringOf(leftmost(sum)); ok && strings.HasSuffix(text, ".") {
		u.begins[text] = true
	}
	if text, ok := stringOf(sum.Y); ok && strings.HasPrefix(text, ".") {
		u.ends[text] = true
	}
}

// sayOf reads a call of something named Say (or say) whose first argument is
// a string or a sum that begins with one.
func sayOf(call *ast.CallExpr) (said, bool) {
	name := ""
	switch f := call.Fun.(type) {
	case *ast.SelectorExpr:
		name = f.Sel.Name
	case *ast.Ident:
		name = f.Name
	}
	if !strings.EqualFold(name, "say") || len(call.Args) == 0 {
		return said{}, false
	}
	s := said{args: len(call.Args) - 1}
	if call.Ellipsis.IsValid() {
		s.args = -1
	}
	if sum, ok := call.Args[0].(*ast.BinaryExpr); ok {
		s.key, ok = stringOf(leftmost(sum))
		s.begins = true
		return s, ok
	}
	var ok bool
	s.key, ok = stringOf(call.Args[0])
	return s, ok
}

// leftmost returns the first operand of a sum.
func leftmost(e ast.Expr) ast.Expr {
	for {
		sum, ok := e.(*ast.BinaryExpr)
		if !ok {
			return e
		}
		e = sum.X
	}
}

// stringOf returns the value of a string in the source.
func stringOf(e ast.Expr) (string, bool) {
	lit, ok := e.(*ast.BasicLit)
	if !ok || lit.Kind != token.STRING {
		return "", false
	}
	text, err := strconv.Unquote(lit.Value)
	return text, err == nil
}

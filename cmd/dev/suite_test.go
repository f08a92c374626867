package main

import (
	"go/ast"
	"go/parser"
	"go/token"
	"os"
	"path/filepath"
	"strings"
	"testing"
)

// No test waits by the machine's clock: it would be slow, and fail under load.
// What waits is handed its clock.
func TestNoTestSleeps(t *testing.T) {
	root, err := findRoot()
	if err != nil {
		t.Fatal(err)
	}
	seen := 0
	err = walkGo(root, func(path string) error {
		if !strings.HasSuffix(path, "_test.go") {
			return nil
		}
		seen++
		file, err := parser.ParseFile(token.NewFileSet(), filepath.Join(root, path), nil, 0)
		if err != nil {
			return err
		}
		for _, name := range sleeps(file) {
			t.Errorf("%s waits by the machine's clock: time.%s", path, name)
		}
		return nil
	})
	if err != nil || seen < 100 {
		t.Fatalf("%d files looked at, %v", seen, err)
	}
}

// sleeps lists the calls of package time that wait.
func sleeps(file *ast.File) (list []string) {
	ast.Inspect(file, func(n ast.Node) bool {
		s, ok := n.(*ast.SelectorExpr)
		if !ok {
			return true
		}
		from, ok := s.X.(*ast.Ident)
		if ok && from.Name == "time" && (s.Sel.Name == "Sleep" || s.Sel.Name == "After" || s.Sel.Name == "Tick" || s.Sel.Name == "NewTimer" || s.Sel.Name == "NewTicker") {
			list = append(list, s.Sel.Name)
		}
		return true
	})
	return list
}

func TestSleepsAreSeen(t *testing.T) {
	file, err := parser.ParseFile(token.NewFileSet(), "x.go", "package x\nimport \"time\"\nfunc f() { time.Sleep(time.Second); <-time.After(1) }\n", 0)
	if err != nil {
		t.Fatal(err)
	}
	if list := sleeps(file); len(list) != 2 {
		t.Errorf("saw %v", list)
	}
}

// Every package that the layers, the helpers and the reserved imports name is
// there: a table that names what is gone holds nothing.
func TestLayersAreThere(t *testing.T) {
	root, err := findRoot()
	if err != nil {
		t.Fatal(err)
	}
	names := helpers()
	for _, layer := range layers() {
		names = append(names, layer...)
	}
	for name, allowed := range reserved() {
		if own, ok := strings.CutPrefix(name, "ebbwell/"); ok {
			names = append(names, own)
		}
		names = append(names, allowed...)
	}
	for name, allowed := range upward() {
		names = append(names, name)
		for _, other := range allowed {
			names = append(names, strings.TrimPrefix(other, "ebbwell/"))
		}
	}
	for _, name := range names {
		folder := strings.TrimSuffix(name, "/*")
		if info, err := os.Stat(filepath.Join(root, filepath.FromSlash(folder))); err != nil || !info.IsDir() {
			t.Errorf("there is no %s", folder)
		}
	}
}

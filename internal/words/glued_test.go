package words

import (
	"bufio"
	"fmt"
	"go/ast"
	"go/parser"
	"go/token"
	"io/fs"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"
	"unicode"
)

// gluedList names the functions that still put a text together from parts, a line
// each: "folder/file.go function how".
const gluedList = "testdata/glued.txt"

// glued finds where a function puts texts together as no other language may:
// parts joined by a mark or a word that is typed in the source or is a text of its
// own ("join"), a mark or a word typed beside a text ("sum"), a text of the
// catalogue whose letters are made small or large ("case"). Whole sentences one
// behind the other, and lines one below the other, are no gluing.
func glued(tree *ast.File) []string {
	var list []string
	for _, d := range tree.Decls {
		f, ok := d.(*ast.FuncDecl)
		if !ok || f.Body == nil {
			continue
		}
		ast.Inspect(f.Body, func(n ast.Node) bool {
			how := ""
			switch n := n.(type) {
			case *ast.CallExpr:
				how = gluedCall(n)
			case *ast.BinaryExpr:
				if n.Op != token.ADD {
					return true
				}
				if gluedSum(n) {
					list = append(list, f.Name.Name+" sum")
				}
				ast.Inspect(n, func(in ast.Node) bool { // the parts of a sum are no sums of their own
					if call, ok := in.(*ast.CallExpr); ok && gluedCall(call) != "" {
						list = append(list, f.Name.Name+" "+gluedCall(call))
					}
					return true
				})
				return false
			}
			if how != "" {
				list = append(list, f.Name.Name+" "+how)
			}
			return true
		})
	}
	return list
}

// gluedCall says how a call glues; empty where it does not.
func gluedCall(call *ast.CallExpr) string {
	name := calledName(call)
	switch {
	case name == "Join" && len(call.Args) == 2 && !ofPackage(call, "filepath"):
		if text, ok := stringOf(call.Args[1]); ok && marks(text) || saysText(call.Args[1]) {
			return "join"
		}
	case slices.Contains([]string{"ToLower", "ToUpper", "Title", "AtStart", "lower", "capital"}, name) && len(call.Args) == 1 && saysText(call.Args[0]):
		return "case"
	}
	return ""
}

// gluedSum reports whether a sum of strings has a text of the catalogue in it and a
// mark or a word beside it.
func gluedSum(sum ast.Expr) bool {
	says, typed := false, false
	var walk func(e ast.Expr)
	walk = func(e ast.Expr) {
		switch e := e.(type) {
		case *ast.BinaryExpr:
			walk(e.X)
			walk(e.Y)
		case *ast.ParenExpr:
			walk(e.X)
		case *ast.CallExpr:
			says = says || isSay(e)
		case *ast.BasicLit:
			text, ok := stringOf(e)
			typed = typed || ok && marks(text)
		}
	}
	walk(sum)
	return says && typed
}

// marks reports whether a text has more in it than room, and the star that makes
// letters bold.
func marks(text string) bool {
	return strings.ContainsFunc(text, func(r rune) bool { return !unicode.IsSpace(r) && r != '*' })
}

// saysText reports whether a text of the catalogue is somewhere in an expression.
func saysText(e ast.Expr) bool {
	found := false
	ast.Inspect(e, func(n ast.Node) bool {
		if call, ok := n.(*ast.CallExpr); ok && isSay(call) {
			found = true
		}
		return !found
	})
	return found
}

func isSay(call *ast.CallExpr) bool { return strings.EqualFold(calledName(call), "say") }

// ofPackage reports whether what is called belongs to a package.
func ofPackage(call *ast.CallExpr, name string) bool {
	f, ok := call.Fun.(*ast.SelectorExpr)
	if !ok {
		return false
	}
	of, ok := f.X.(*ast.Ident)
	return ok && of.Name == name
}

// calledName is the last part of what is called: "Join" of strings.Join.
func calledName(call *ast.CallExpr) string {
	switch f := call.Fun.(type) {
	case *ast.SelectorExpr:
		return f.Sel.Name
	case *ast.Ident:
		return f.Name
	}
	return ""
}

// gluedBelow lists what is glued in the source below a folder.
func gluedBelow(root string, folders ...string) ([]string, error) {
	var list []string
	for _, folder := range folders {
		err := filepath.WalkDir(filepath.Join(root, folder), func(path string, d fs.DirEntry, err error) error {
			switch {
			case err != nil:
				return err
			case d.IsDir() && (d.Name() == "apptest" || d.Name() == "shots" || d.Name() == "drive" || d.Name() == "testdata"):
				return fs.SkipDir
			case d.IsDir() || !strings.HasSuffix(path, ".go") || strings.HasSuffix(path, "_test.go"):
				return nil
			}
			tree, err := parser.ParseFile(token.NewFileSet(), path, nil, parser.SkipObjectResolution)
			if err != nil {
				return fmt.Errorf("read source: %w", err)
			}
			within, err := filepath.Rel(root, path)
			for _, g := range glued(tree) {
				list = append(list, filepath.ToSlash(within)+" "+g)
			}
			return err
		})
		if err != nil {
			return nil, err
		}
	}
	slices.Sort(list)
	return list, nil
}

// TestNoSentenceIsGlued: a sentence is whole in the catalogue. The list of what is
// still glued only becomes shorter.
func TestNoSentenceIsGlued(t *testing.T) {
	found, err := gluedBelow(filepath.Join("..", ".."), "app", filepath.Join("internal", "handout"))
	if err != nil {
		t.Fatal(err)
	}
	file, err := os.Open(gluedList)
	if err != nil {
		t.Fatal(err)
	}
	defer file.Close() //nolint:errcheck // it was only read
	known := map[string]int{}
	for lines := bufio.NewScanner(file); lines.Scan(); {
		if line := lines.Text(); line != "" && !strings.HasPrefix(line, "#") {
			known[line]++
		}
	}
	for _, g := range found {
		if known[g]--; known[g] < 0 {
			t.Errorf("%s: glued from parts; make it one text with what differs put in, or a list by Words.List or Commas", g)
		}
	}
	for g, left := range known {
		if left > 0 {
			t.Errorf("%s: no longer glued; take it off %s", g, gluedList)
		}
	}
}

func TestGluingIsSeen(t *testing.T) {
	for body, want := range map[string]string{
		`return strings.Join(parts, ", ")`:                     "f join",
		`return strings.Join(parts, w.Say("format.comma"))`:    "f join",
		`return strings.Join(parts, "\n")`:                     "",
		`return strings.Join(sentences, " ")`:                  "",
		`return say("a") + ", " + say("b")`:                    "f sum",
		`return say("a") + " " + say("b")`:                     "",
		`return "(" + w.Say("a") + ")"`:                        "f sum",
		`return "*" + w.Say("a") + "*"`:                        "",
		`return words.AtStart(w.Say("a"))`:                     "f case",
		`return strings.ToLower(sp.Say("a", x)) + " " + other`: "f case",
		`return strings.ToLower(name)`:                         "",
		`return strings.Join(append(list, w.Say("a")), " ")`:   "",
		`return say("a."+code) + "\u00a0" + string(u)`:         "",
		`return filepath.Join(home, "Documents")`:              "",
		`return say("a", x+", "+y)`:                            "",
	} {
		tree, err := parser.ParseFile(token.NewFileSet(), "f.go", "package p\n\nfunc f() string { "+body+" }\n", parser.SkipObjectResolution)
		if err != nil {
			t.Fatal(err)
		}
		if got := strings.Join(glued(tree), "; "); got != want {
			t.Errorf("%s: got %q, want %q", body, got, want)
		}
	}
}

package mutate

import (
	"go/ast"
	"go/token"
	"go/types"
	"strings"
)

// finder collects the mutants of one file.
type finder struct {
	set    *token.FileSet
	info   *types.Info
	path   string
	source []byte
	within string
	inside bool // in a function
	fixed  bool // in a constant
	cases  []caseOf
	found  []Mutant
}

// caseOf is an expression that a switch compares with or asks for. It is worked out
// by all that come to the switch, while only the clause below counts as run.
type caseOf struct {
	from, to   token.Pos
	switchLine int
}

// file visits every expression of a file that is worked out when the program
// runs, and the values of constants.
func (f *finder) file(file *ast.File) []Mutant {
	for _, d := range file.Decls {
		switch d := d.(type) {
		case *ast.FuncDecl:
			f.within, f.inside, f.fixed = d.Name.Name, true, false
			if d.Body != nil {
				f.walk(d.Body)
			}
		case *ast.GenDecl:
			for _, s := range d.Specs {
				if v, ok := s.(*ast.ValueSpec); ok && !counts(v) {
					f.within, f.inside, f.fixed = v.Names[0].Name, false, d.Tok == token.CONST
					f.walk(v)
				}
			}
		}
	}
	return number(f.found)
}

// counts reports whether constants are counted up from iota: their values mean
// nothing.
func counts(v *ast.ValueSpec) bool {
	found := false
	ast.Inspect(v, func(n ast.Node) bool {
		id, ok := n.(*ast.Ident)
		found = found || ok && id.Name == "iota"
		return !found
	})
	return found
}

func (f *finder) walk(root ast.Node) {
	ast.Inspect(root, func(n ast.Node) bool {
		switch n := n.(type) {
		case *ast.BinaryExpr:
			f.binary(n)
		case *ast.AssignStmt:
			f.assign(n)
		case *ast.CallExpr:
			f.call(n)
			return !prints(n)
		case *ast.BasicLit:
			f.literal(n)
		case *ast.SelectorExpr:
			f.threshold(n)
		case *ast.SwitchStmt:
			f.clauses(n)
		case *ast.IndexExpr:
			f.walk(n.X)
			return false // which element is no number of the trade
		case *ast.ArrayType:
			return false
		}
		return true
	})
}

// clauses remembers where the cases of a switch stand.
func (f *finder) clauses(s *ast.SwitchStmt) {
	line := f.set.Position(s.Body.Lbrace).Line
	for _, stmt := range s.Body.List {
		if clause, ok := stmt.(*ast.CaseClause); ok {
			for _, e := range clause.List {
				f.cases = append(f.cases, caseOf{e.Pos(), e.End(), line})
			}
		}
	}
}

// reached is a line that is run wherever a node is worked out.
func (f *finder) reached(n ast.Node) int {
	for _, c := range f.cases {
		if c.from <= n.Pos() && n.End() <= c.to {
			return c.switchLine
		}
	}
	return f.set.Position(n.Pos()).Line
}

// prints reports whether a call only writes a text, or is infinity: its numbers are
// formats, or any of one sign will do.
func prints(c *ast.CallExpr) bool {
	s, ok := c.Fun.(*ast.SelectorExpr)
	if !ok {
		return false
	}
	id, ok := s.X.(*ast.Ident)
	return ok && (id.Name == "fmt" || id.Name == "strconv" || id.Name == "errors" || id.Name == "math" && s.Sel.Name == "Inf")
}

func (f *finder) binary(b *ast.BinaryExpr) {
	x, y := f.text(b.X), f.text(b.Y)
	with := func(k Kind, op token.Token) { f.replace(k, b, x+" "+op.String()+" "+y) }
	turned := map[token.Token]token.Token{
		token.LSS: token.GEQ, token.GEQ: token.LSS, token.GTR: token.LEQ, token.LEQ: token.GTR, token.EQL: token.NEQ, token.NEQ: token.EQL,
	}
	moved := map[token.Token]token.Token{token.LSS: token.LEQ, token.LEQ: token.LSS, token.GTR: token.GEQ, token.GEQ: token.GTR}
	if op, ok := turned[b.Op]; ok {
		with(Comparison, op)
	}
	if op, ok := moved[b.Op]; ok && (f.whole(b.X) && f.whole(b.Y) || strings.Contains(x+y, "evidence.")) {
		with(Boundary, op)
	}
	if !f.number(b.X) || !f.number(b.Y) {
		return
	}
	if op, ok := map[token.Token]token.Token{token.ADD: token.SUB, token.SUB: token.ADD, token.MUL: token.QUO, token.QUO: token.MUL}[b.Op]; ok {
		with(Arithmetic, op)
	}
	if b.Op == token.ADD || b.Op == token.SUB {
		f.replace(Dropped, b, x+" "+b.Op.String()+" 0*("+y+")")
	}
}

func (f *finder) assign(a *ast.AssignStmt) {
	to, ok := map[token.Token]string{token.ADD_ASSIGN: "-=", token.SUB_ASSIGN: "+=", token.MUL_ASSIGN: "/=", token.QUO_ASSIGN: "*="}[a.Tok]
	if !ok || !f.number(a.Lhs[0]) {
		return
	}
	x, y := f.text(a.Lhs[0]), f.text(a.Rhs[0])
	f.replace(Arithmetic, a, x+" "+to+" "+y)
	if a.Tok == token.ADD_ASSIGN || a.Tok == token.SUB_ASSIGN {
		f.replace(Dropped, a, x+" "+a.Tok.String()+" 0*("+y+")")
	}
}

// call swaps min and max, and math.Min and math.Max, and turns round the
// arithmetic of quantities with an error: plus, minus, times, over.
func (f *finder) call(c *ast.CallExpr) {
	if s, ok := c.Fun.(*ast.SelectorExpr); ok && len(c.Args) == 1 {
		f.method(c, s)
	}
	fun := f.text(c.Fun)
	to, ok := map[string]string{"min": "max", "max": "min", "math.Min": "math.Max", "math.Max": "math.Min"}[fun]
	if ok && len(c.Args) > 1 {
		f.replace(MinMax, c, to+strings.TrimPrefix(f.text(c), fun))
	}
}

func (f *finder) method(c *ast.CallExpr, s *ast.SelectorExpr) {
	to, ok := map[string]string{"plus": "minus", "minus": "plus", "times": "over", "over": "times", "Plus": "Minus", "Minus": "Plus", "Times": "Over", "Over": "Times"}[s.Sel.Name]
	if !ok || !types.Identical(f.info.TypeOf(s.X), f.info.TypeOf(c)) {
		return
	}
	x := f.text(s.X)
	f.replace(Arithmetic, c, x+"."+to+"("+f.text(c.Args[0])+")")
	if strings.EqualFold(to, "plus") || strings.EqualFold(to, "minus") {
		f.replace(Dropped, c, x)
	}
}

// text is the source of a node.
func (f *finder) text(n ast.Node) string {
	return string(f.source[f.at(n.Pos()):f.at(n.End())])
}

func (f *finder) at(p token.Pos) int { return f.set.Position(p).Offset }

// replace records a mutant that puts text in the place of a node.
func (f *finder) replace(k Kind, n ast.Node, text string) {
	var typ types.Type
	if e, ok := n.(ast.Expr); ok {
		typ = f.info.TypeOf(e)
	}
	f.found = append(f.found, Mutant{
		Kind: k, File: f.path, Line: f.set.Position(n.Pos()).Line, reached: f.reached(n), Func: f.within, Outside: !f.inside,
		Was: oneLine(f.text(n)), Is: oneLine(text), from: f.at(n.Pos()), to: f.at(n.End()), text: text,
		node: n, typ: typ, constant: f.fixed,
	})
}

func oneLine(s string) string { return strings.Join(strings.Fields(s), " ") }

// number counts mutants that read the same.
func number(list []Mutant) []Mutant {
	seen := map[string]int{}
	for i := range list {
		name := list[i].Name()
		seen[name]++
		list[i].Nth = seen[name]
	}
	return list
}

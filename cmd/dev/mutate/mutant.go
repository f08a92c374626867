package mutate

import (
	"fmt"
	"go/ast"
	"go/types"
)

// Kind is the sort of mistake.
type Kind string

// The kinds.
const (
	Comparison Kind = "comparison"
	Boundary   Kind = "boundary"
	Arithmetic Kind = "arithmetic"
	Constant   Kind = "constant"
	MinMax     Kind = "min-max"
	Dropped    Kind = "dropped term"
)

// Mutant is one mistake in one file.
type Mutant struct {
	Kind Kind
	// File is the path from the module's root; Line counts from 1.
	File string
	Line int
	// Func is the function or variable the mistake lies in.
	Func string
	// Outside is true for what stands in no function: no test can be said to run it.
	Outside bool
	// Was and Is are the expression before and after, in one line.
	Was, Is string
	// Nth counts mutants of one function that read the same, from 1.
	Nth int

	reached  int // a line that every test runs that comes by the mistake
	from, to int // the bytes of the file that text takes the place of
	text     string
	node     ast.Node
	typ      types.Type // of an expression
	constant bool       // part of a constant
}

// Name says which mutant it is without its line, which moves as the file
// grows: "internal/sweat/term.go Rate: a + b => a - b".
func (m Mutant) Name() string {
	name := fmt.Sprintf("%s %s: %s => %s", m.File, m.Func, m.Was, m.Is)
	if m.Nth > 1 {
		name += fmt.Sprintf(" #%d", m.Nth)
	}
	return name
}

// statement reports whether the mutant is a statement, which stands where no
// switch can: between the semicolons of a loop.
func (m Mutant) statement() bool {
	_, ok := m.node.(ast.Stmt)
	return ok
}

// apply makes the mistake in the source of its file.
func (m Mutant) apply(source []byte) []byte {
	out := append([]byte(nil), source[:m.from]...)
	out = append(out, m.text...)
	return append(out, source[m.to:]...)
}

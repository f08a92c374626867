package mutate

import (
	"cmp"
	"context"
	"encoding/json"
	"fmt"
	"go/ast"
	"go/types"
	"os"
	"path/filepath"
	"slices"
	"strconv"
	"strings"
)

// environment is the variable that says which mutant of a switched program is on.
const environment = "EBBWELL_MUTANT"

// Switched is the test program of a package with its mutants in it, each
// behind its number, so that it is built once and not for every mutant.
type Switched struct {
	binary string
	number map[string]int  // by the mutant's name, from 1
	wrong  map[string]bool // mutants that are no program
}

// Switch builds the test program of a package with all mutants that can stand
// beside each other in one program. Those in a constant, for example, cannot;
// Try builds these one at a time.
func (t Trial) Switch(ctx context.Context, p *Package) (*Switched, error) {
	w := &weaver{p: p, number: map[string]int{}, left: map[int]bool{}, wrong: map[string]bool{}}
	files, err := w.fit()
	if err != nil {
		return nil, err
	}
	replace := map[string]string{}
	for name, text := range files {
		changed := filepath.Join(t.Dir, "switched-"+name)
		if err := os.WriteFile(changed, []byte(text), 0o600); err != nil {
			return nil, fmt.Errorf("write the mutants: %w", err)
		}
		replace[filepath.Join(p.dir, name)] = changed
	}
	overlay := filepath.Join(t.Dir, "switched.json")
	data, err := json.Marshal(map[string]any{"Replace": replace})
	if err == nil {
		err = os.WriteFile(overlay, data, 0o600)
	}
	if err != nil {
		return nil, fmt.Errorf("write the mutants: %w", err)
	}
	s := &Switched{binary: filepath.Join(t.Dir, "switched.test"), number: w.number, wrong: w.wrong}
	build := t.command(ctx, t.Root, "go", "test", "-c", "-overlay", overlay, "-tags", t.Tags, "-vet=off", "-o", s.binary, p.path)
	if out, err := build.CombinedOutput(); err != nil {
		return nil, fmt.Errorf("build %s with its mutants: %w\n%s", p.path, err, out)
	}
	return s, nil
}

// weaver writes the files of a package with its mutants in them.
type weaver struct {
	p      *Package
	number map[string]int
	left   map[int]bool    // numbers that do not fit into the program
	wrong  map[string]bool // mutants that the compiler does not take

	text    strings.Builder // the file being written
	line    int
	spans   []span
	aliases []string // types the mutants have
	imports []string
}

// span is the lines of a file where numbers stand.
type span struct {
	file     string
	from, to int
	numbers  []int
	mistaken bool // nothing but a mutant stands there
}

// place is an expression or statement with its mutants and the places within.
type place struct {
	from, to int
	mutants  []int // numbers
	within   []*place
}

// fit writes the files, leaving out mutants until the compiler takes them all.
func (w *weaver) fit() (map[string]string, error) {
	for i, m := range w.p.Mutants {
		if w.number[m.Name()] = i + 1; m.constant {
			w.left[i+1] = true
		}
	}
	const attempts = 60
	for range attempts {
		files := w.write()
		wrong := w.p.check(files)
		if len(wrong) == 0 {
			for i, m := range w.p.Mutants {
				if w.left[i+1] {
					delete(w.number, m.Name())
				}
			}
			return files, nil
		}
		left := false // one mistake may bring others behind it
		for _, e := range wrong {
			left = w.leave(e) || left
		}
		if !left {
			return nil, fmt.Errorf("put mutants into one program: %s", wrong[0].message)
		}
	}
	return nil, fmt.Errorf("put mutants into one program: %s does not build in %d attempts", w.p.path, attempts)
}

// leave leaves out what stands on the line of an error, the closest only.
func (w *weaver) leave(e mistake) bool {
	var closest *span
	for i, s := range w.spans {
		if s.file == e.file && s.from <= e.line && e.line <= s.to && (closest == nil || s.to-s.from < closest.to-closest.from) {
			closest = &w.spans[i]
		}
	}
	if closest == nil {
		return false
	}
	for _, n := range closest.numbers {
		w.left[n] = true
		if closest.mistaken && !w.p.Mutants[n-1].statement() {
			w.wrong[w.p.Mutants[n-1].Name()] = true
		}
	}
	return true
}

func (w *weaver) write() map[string]string {
	files := map[string]string{}
	w.spans, w.aliases, w.imports = nil, nil, nil
	for i, name := range w.p.names {
		w.text.Reset()
		w.line = 1
		source := w.p.sources[i]
		root := &place{to: len(source)}
		for n, m := range w.p.Mutants {
			if filepath.Base(m.File) == name && !w.left[n+1] {
				root.add(m, n+1)
			}
		}
		w.copy(name, source, root)
		files[name] = w.text.String()
	}
	head := "package " + w.p.pkg.Name() + "\n\nimport (\n\tmutantOS \"os\"\n\tmutantNumber \"strconv\"\n"
	for i, path := range w.imports {
		head += fmt.Sprintf("\tmutantP%d %q\n", i, path)
	}
	head += ")\n\nvar mutantOn = func() int {\n\tn, _ := mutantNumber.Atoi(mutantOS.Getenv(" + strconv.Quote(environment) + "))\n\treturn n\n}()\n\n"
	for i, name := range w.aliases {
		head += fmt.Sprintf("type mutantT%d = %s\n", i, name)
	}
	files["zz_mutants.go"] = head
	return files
}

// add puts a mutant at its place.
func (p *place) add(m Mutant, number int) {
	for _, in := range p.within {
		switch {
		case in.from == m.from && in.to == m.to:
			in.mutants = append(in.mutants, number)
			return
		case in.from <= m.from && m.to <= in.to:
			in.add(m, number)
			return
		}
	}
	one := &place{from: m.from, to: m.to, mutants: []int{number}}
	rest := p.within[:0:0]
	for _, in := range p.within {
		if one.from <= in.from && in.to <= one.to {
			one.within = append(one.within, in)
		} else {
			rest = append(rest, in)
		}
	}
	p.within = append(rest, one)
	slices.SortFunc(p.within, func(a, b *place) int { return cmp.Compare(a.from, b.from) })
}

func (w *weaver) say(text string) {
	w.text.WriteString(text)
	w.line += strings.Count(text, "\n")
}

// copy writes a place as it is, with the places within switched.
func (w *weaver) copy(file string, source []byte, p *place) {
	at := p.from
	for _, in := range p.within {
		w.say(string(source[at:in.from]))
		w.choose(file, source, in)
		at = in.to
	}
	w.say(string(source[at:p.to]))
}

// choose writes a place with its mutants behind their numbers.
func (w *weaver) choose(file string, source []byte, p *place) {
	first := w.p.Mutants[p.mutants[0]-1]
	begin, word := w.line, ""
	if _, ok := first.node.(ast.Stmt); !ok {
		name, ok := w.alias(first.typ)
		if !ok { // an error of the compiler leaves it out
			name = "mutantWithoutType"
		}
		w.say("func() " + name + " {\n")
		word = "return "
	}
	w.say("switch mutantOn {\n")
	for _, n := range p.mutants {
		w.say(fmt.Sprintf("case %d:\n", n))
		from := w.line
		w.say(word + w.p.Mutants[n-1].text + "\n")
		w.spans = append(w.spans, span{file, from, w.line - 1, []int{n}, true})
	}
	if word == "" {
		w.say("default:\n")
	} else {
		w.say("}\n" + word)
	}
	w.copy(file, source, p)
	if word == "" {
		w.say("\n}")
	} else {
		w.say("\n}()")
	}
	w.spans = append(w.spans, span{file, begin, w.line, p.mutants, false})
}

// alias names a type in a way that every file of the package understands.
func (w *weaver) alias(t types.Type) (string, bool) {
	if t == nil {
		return "", false
	}
	if b, ok := t.(*types.Basic); ok {
		return strings.TrimPrefix(b.Name(), "untyped "), b.Info()&(types.IsUntyped) == 0 || b.Kind() == types.UntypedBool
	}
	if n, ok := t.(*types.Named); ok && n.Obj().Pkg() != w.p.pkg && !n.Obj().Exported() {
		return "", false
	}
	if _, ok := t.(*types.TypeParam); ok {
		return "", false
	}
	name := types.TypeString(t, func(p *types.Package) string {
		if p == w.p.pkg {
			return ""
		}
		i := slices.Index(w.imports, p.Path())
		if i < 0 {
			i = len(w.imports)
			w.imports = append(w.imports, p.Path())
		}
		return fmt.Sprintf("mutantP%d", i)
	})
	i := slices.Index(w.aliases, name)
	if i < 0 {
		i = len(w.aliases)
		w.aliases = append(w.aliases, name)
	}
	return fmt.Sprintf("mutantT%d", i), true
}

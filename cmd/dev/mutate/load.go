package mutate

import (
	"bytes"
	"encoding/json"
	"errors"
	"fmt"
	"go/ast"
	"go/importer"
	"go/parser"
	"go/scanner"
	"go/token"
	"go/types"
	"io"
	"os"
	"path/filepath"
)

// listed is what `go list -json` says of a package.
type listed struct {
	ImportPath, Dir, Export string
	GoFiles                 []string
}

// Package is a package with its mutants.
type Package struct {
	// Mutants are all there are, file by file.
	Mutants []Mutant

	path, dir string
	names     []string // of its files
	sources   [][]byte
	pkg       *types.Package
	exports   map[string]string
}

// Find lists the mutants of a package. list is what `go list -export -deps
// -json` printed for it, root the folder of the module.
func Find(root string, list []byte) (*Package, error) {
	p := &Package{exports: map[string]string{}}
	var last listed
	for dec := json.NewDecoder(bytes.NewReader(list)); ; {
		var one listed
		if err := dec.Decode(&one); errors.Is(err, io.EOF) {
			break
		} else if err != nil {
			return nil, fmt.Errorf("read what go list says: %w", err)
		}
		p.exports[one.ImportPath] = one.Export
		last = one // go list names a package after all it needs
	}
	if len(last.GoFiles) == 0 {
		return nil, fmt.Errorf("go list names no file")
	}
	p.path, p.dir, p.names = last.ImportPath, last.Dir, last.GoFiles
	set := token.NewFileSet()
	var files []*ast.File
	for _, name := range p.names {
		source, err := os.ReadFile(filepath.Join(p.dir, name))
		if err != nil {
			return nil, fmt.Errorf("read source: %w", err)
		}
		file, err := parser.ParseFile(set, filepath.Join(p.dir, name), source, parser.SkipObjectResolution)
		if err != nil {
			return nil, fmt.Errorf("read source: %w", err)
		}
		files, p.sources = append(files, file), append(p.sources, source)
	}
	info := &types.Info{Types: map[ast.Expr]types.TypeAndValue{}}
	config := types.Config{Importer: importer.ForCompiler(set, "gc", p.open)}
	var err error
	if p.pkg, err = config.Check(p.path, set, files, info); err != nil {
		return nil, fmt.Errorf("check %s: %w", p.path, err)
	}
	for i, file := range files {
		short, err := filepath.Rel(root, filepath.Join(p.dir, p.names[i]))
		if err != nil {
			return nil, fmt.Errorf("name %s from the root: %w", p.names[i], err)
		}
		f := &finder{set: set, info: info, path: filepath.ToSlash(short), source: p.sources[i]}
		p.Mutants = append(p.Mutants, f.file(file)...)
	}
	return p, nil
}

// open is what the compiler wrote of a package that this one needs.
func (p *Package) open(path string) (io.ReadCloser, error) {
	if p.exports[path] == "" {
		return nil, fmt.Errorf("go list names no %s", path)
	}
	return os.Open(p.exports[path])
}

// mistake is what the compiler says of a line.
type mistake struct {
	file    string
	line    int
	message string
}

// check says what the compiler would say of changed files of the package.
func (p *Package) check(changed map[string]string) (wrong []mistake) {
	set := token.NewFileSet()
	var files []*ast.File
	for name, text := range changed {
		file, err := parser.ParseFile(set, name, text, parser.SkipObjectResolution)
		var list scanner.ErrorList
		if errors.As(err, &list) {
			for _, e := range list {
				wrong = append(wrong, mistake{name, e.Pos.Line, e.Error()})
			}
		}
		files = append(files, file)
	}
	if len(wrong) > 0 {
		return wrong
	}
	config := types.Config{Importer: importer.ForCompiler(set, "gc", p.open), Error: func(err error) {
		var e types.Error
		if errors.As(err, &e) && !e.Soft {
			at := set.Position(e.Pos)
			wrong = append(wrong, mistake{at.Filename, at.Line, e.Error()})
		}
	}}
	_, _ = config.Check(p.path, set, files, nil) // what is wrong is collected
	return wrong
}

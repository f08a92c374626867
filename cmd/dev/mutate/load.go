package mutate

import (
	"bytes"
	"encoding/json"
	"errors"
	"fmt"
	"go/ast"
	"go/importer"
	"go/parser"
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

// Find lists the mutants of a package. list is what `go list -export -deps
// -json` printed for it, root the folder of the module.
func Find(root string, list []byte) ([]Mutant, error) {
	exports := map[string]string{}
	var last listed
	for dec := json.NewDecoder(bytes.NewReader(list)); ; {
		var p listed
		if err := dec.Decode(&p); errors.Is(err, io.EOF) {
			break
		} else if err != nil {
			return nil, fmt.Errorf("read what go list says: %w", err)
		}
		exports[p.ImportPath] = p.Export
		last = p // go list names a package after all it needs
	}
	if len(last.GoFiles) == 0 {
		return nil, fmt.Errorf("go list names no file")
	}
	set := token.NewFileSet()
	var files []*ast.File
	for _, name := range last.GoFiles {
		file, err := parser.ParseFile(set, filepath.Join(last.Dir, name), nil, parser.SkipObjectResolution)
		if err != nil {
			return nil, fmt.Errorf("read source: %w", err)
		}
		files = append(files, file)
	}
	open := func(path string) (io.ReadCloser, error) { return os.Open(exports[path]) }
	info := &types.Info{Types: map[ast.Expr]types.TypeAndValue{}}
	config := types.Config{Importer: importer.ForCompiler(set, "gc", open)}
	if _, err := config.Check(last.ImportPath, set, files, info); err != nil {
		return nil, fmt.Errorf("check %s: %w", last.ImportPath, err)
	}
	var all []Mutant
	for i, file := range files {
		path := filepath.Join(last.Dir, last.GoFiles[i])
		source, err := os.ReadFile(path)
		if err != nil {
			return nil, fmt.Errorf("read source: %w", err)
		}
		short, err := filepath.Rel(root, path)
		if err != nil {
			return nil, fmt.Errorf("name %s from the root: %w", path, err)
		}
		f := &finder{set: set, info: info, path: filepath.ToSlash(short), source: source}
		all = append(all, f.file(file)...)
	}
	return all, nil
}

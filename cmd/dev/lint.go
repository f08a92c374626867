package main

import (
	"bytes"
	"context"
	"fmt"
	"go/format"
	"io/fs"
	"os"
	"path"
	"path/filepath"
	"strings"
)

// linter is golangci-lint, pinned; its rules are in .golangci.yml.
const (
	linter        = "github.com/golangci/golangci-lint/v2/cmd/golangci-lint"
	linterVersion = "v2.15.0"
)

// program is the one package that needs a C compiler.
const program = "ebbwell/cmd/ebbwell"

// lint looks for mistakes, the quick checks first.
func lint(ctx context.Context, t tool, _ []string) error {
	ugly, err := unformatted(t.root)
	if err != nil {
		return err
	}
	if len(ugly) > 0 {
		return fmt.Errorf("run gofmt -w %s", strings.Join(ugly, " "))
	}
	noCgo := []string{"CGO_ENABLED=0"}
	if err := t.call(ctx, noCgo, "go", "vet", "-tags", tags, "./..."); err != nil {
		return err
	}
	if err := t.unreached(ctx); err != nil {
		return err
	}
	if err := t.elsewhere(ctx); err != nil {
		return err
	}
	if err := t.sameNotices(ctx); err != nil {
		return err
	}
	built, err := t.buildTool(ctx, linter, linterVersion)
	if err != nil {
		return err
	}
	return t.call(ctx, noCgo, built, "run", "--build-tags", tags, "./...")
}

// buildTool builds a pinned tool into bin/ once.
func (t tool) buildTool(ctx context.Context, source, version string) (string, error) {
	name := path.Base(source)
	built := t.bin(name + "-" + version)
	if _, err := os.Stat(built); err == nil {
		return built, nil
	}
	dir, err := os.MkdirTemp("", "ebbwell-lint-")
	if err != nil {
		return "", fmt.Errorf("build %s: %w", name, err)
	}
	defer os.RemoveAll(dir) //nolint:errcheck // a left-over temporary folder does no harm
	t.say("Building %s %s; this is done once and may take several minutes.", name, version)
	defer t.still("building " + name)()
	if err := t.call(ctx, []string{"CGO_ENABLED=0", "GOBIN=" + dir, "GOFLAGS="}, "go", "install", source+"@"+version); err != nil {
		return "", fmt.Errorf("build %s: %w", name, err)
	}
	return built, moveFile(filepath.Join(dir, name), built)
}

// moveFile moves a program, also from one file system to another; the target
// is there whole or not at all.
func moveFile(from, to string) error {
	data, err := os.ReadFile(from)
	if err == nil {
		err = os.MkdirAll(filepath.Dir(to), 0o755)
	}
	if err == nil {
		err = os.WriteFile(to+".part", data, 0o755)
	}
	if err == nil {
		err = os.Rename(to+".part", to)
	}
	if err != nil {
		return fmt.Errorf("put %s in its place: %w", filepath.Base(to), err)
	}
	return nil
}

// unformatted lists the Go files that gofmt would change.
func unformatted(root string) ([]string, error) {
	var list []string
	err := walkGo(root, func(path string) error {
		data, err := os.ReadFile(filepath.Join(root, path))
		if err != nil {
			return fmt.Errorf("read source: %w", err)
		}
		nice, err := format.Source(data)
		if err != nil {
			return fmt.Errorf("format %s: %w", path, err)
		}
		if !bytes.Equal(data, nice) {
			list = append(list, path)
		}
		return nil
	})
	return list, err
}

// walkGo visits every Go file below root, by its path from there; dotted
// folders, testdata and bin are left out.
func walkGo(root string, visit func(path string) error) error {
	err := filepath.WalkDir(root, func(path string, d fs.DirEntry, err error) error {
		switch {
		case err != nil:
			return err
		case d.IsDir() && path != root && (strings.HasPrefix(d.Name(), ".") || d.Name() == "testdata" || d.Name() == "bin"):
			return fs.SkipDir
		case d.IsDir() || !strings.HasSuffix(path, ".go"):
			return nil
		}
		short, err := filepath.Rel(root, path)
		if err != nil {
			return err
		}
		return visit(filepath.ToSlash(short))
	})
	if err != nil {
		return fmt.Errorf("walk the source: %w", err)
	}
	return nil
}

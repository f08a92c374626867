package main

import (
	"bytes"
	"context"
	"errors"
	"flag"
	"fmt"
	"go/ast"
	"go/parser"
	"go/token"
	"io"
	"os"
	"os/exec"
	"path"
	"path/filepath"
	"regexp"
	"strings"
	"time"
)

// fuzzTarget is a function that reads whatever it is given.
type fuzzTarget struct {
	folder string // from the root, with slashes
	name   string
}

// fuzz runs each fuzz target of the tree, or of some packages, for a time, tells
// how often each was run, and fails when one found something. What was found
// stands in testdata/fuzz of its package, and is a test from then on.
func fuzz(ctx context.Context, t tool, args []string) error {
	packages, flags := splitPackages(args)
	set := flag.NewFlagSet("fuzz", flag.ContinueOnError)
	set.SetOutput(t.errs)
	each := set.Duration("time", time.Minute, "how long each target runs")
	plain := set.String("plain", "", "packages that are built as all tests are, with commas")
	if err := set.Parse(flags); err != nil {
		return fmt.Errorf("read flags: %w", err)
	}
	if set.NArg() > 0 {
		return fmt.Errorf("fuzz takes packages that begin with ./, -time and -plain, not %q", set.Arg(0))
	}
	targets, err := fuzzTargets(t.root, packages)
	if err != nil {
		return err
	}
	if len(targets) == 0 {
		return fmt.Errorf("there is no fuzz target in %s", strings.Join(packages, " "))
	}
	_, _ = fmt.Fprintf(t.out, "%-40s %-20s %12s  %s\n", "package", "target", "executions", "finding")
	var found []string
	for _, target := range targets {
		run := t.fuzzOne
		if *plain != "" && matchesAny(strings.Split(*plain, ","), target.folder) {
			run = t.fuzzPlain
		}
		out, err := run(ctx, target, *each)
		if ctx.Err() != nil {
			return fmt.Errorf("fuzz: %w", ctx.Err())
		}
		finding := "none"
		if err != nil && !timeEnded(out) {
			finding = findingOf(out)
			found = append(found, target.folder+" "+target.name+"\n"+out)
		}
		_, _ = fmt.Fprintf(t.out, "%-40s %-20s %12s  %s\n", target.folder, target.name, executions(out), finding)
	}
	if len(found) > 0 {
		return fmt.Errorf("%d of %d targets found something:\n\n%s", len(found), len(targets), strings.Join(found, "\n\n"))
	}
	_, _ = fmt.Fprintf(t.out, "%d targets, nothing found\n", len(targets))
	return nil
}

// fuzzOne runs a target and returns what go test said.
func (t tool) fuzzOne(ctx context.Context, target fuzzTarget, each time.Duration) (string, error) {
	var out bytes.Buffer
	quiet := tool{root: t.root, out: &out, errs: &out}
	err := quiet.call(ctx, []string{"CGO_ENABLED=0"}, "go", fuzzLine(target, each)...)
	var failed *exec.ExitError
	if err != nil && !errors.As(err, &failed) {
		_, _ = io.WriteString(t.errs, out.String())
	}
	return out.String(), err
}

// fuzzPlain is fuzzOne with the package built as all tests are: go test -fuzz builds every
// package below anew, and of the toolkit and the database engine that takes minutes. What a
// run reaches is not counted then, so that inputs are changed without knowing which of them
// came further.
func (t tool) fuzzPlain(ctx context.Context, target fuzzTarget, each time.Duration) (string, error) {
	folder := t.bin("fuzz")
	binary := filepath.Join(folder, strings.ReplaceAll(target.folder, "/", "-")+".test")
	var out bytes.Buffer
	quiet := tool{root: t.root, out: &out, errs: &out}
	err := os.MkdirAll(folder, 0o755)
	if err == nil {
		err = quiet.call(ctx, []string{"CGO_ENABLED=0"}, "go", "test", "-c", "-tags", tags, "-o", binary, "./"+target.folder)
	}
	if err != nil {
		return out.String(), fmt.Errorf("build %s: %w", target.folder, err)
	}
	c := quiet.command(ctx, nil, binary, plainLine(target, each, filepath.Join(folder, "reached"))...)
	c.Dir = filepath.Join(t.root, filepath.FromSlash(target.folder))
	if err := c.Run(); err != nil {
		return out.String(), fmt.Errorf("run %s: %w", target.name, err)
	}
	return out.String(), nil
}

// plainLine is the call of a package's tests for one target; what a run reached is kept in
// a folder.
func plainLine(target fuzzTarget, each time.Duration, reached string) []string {
	return []string{
		"-test.run=^$", "-test.fuzz=^" + target.name + "$", "-test.fuzztime=" + each.String(),
		"-test.fuzzminimizetime=" + smallTries, "-test.fuzzcachedir=" + reached,
	}
}

// fuzzLine is the call of go test for one target. Making an input small is given few
// tries: go test does so with every input that reaches something new, and with a large
// one that would take all of the time.
func fuzzLine(target fuzzTarget, each time.Duration) []string {
	return []string{
		"test", "-tags", tags, "-run", "^$", "-fuzz", "^" + target.name + "$",
		"-fuzztime", each.String(), "-fuzzminimizetime", smallTries, "./" + target.folder,
	}
}

// smallTries is how often one input is tried smaller.
const smallTries = "100x"

// fuzzTargets lists the targets of packages, in the order of their folders.
func fuzzTargets(root string, packages []string) (list []fuzzTarget, err error) {
	err = walkGo(root, func(file string) error {
		if !strings.HasSuffix(file, "_test.go") || !matchesAny(packages, path.Dir(file)) {
			return nil
		}
		parsed, err := parser.ParseFile(token.NewFileSet(), filepath.Join(root, filepath.FromSlash(file)), nil, parser.SkipObjectResolution)
		if err != nil {
			return fmt.Errorf("look for fuzz targets: %w", err)
		}
		for _, d := range parsed.Decls {
			if f, ok := d.(*ast.FuncDecl); ok && f.Recv == nil && strings.HasPrefix(f.Name.Name, "Fuzz") {
				list = append(list, fuzzTarget{folder: path.Dir(file), name: f.Name.Name})
			}
		}
		return nil
	})
	return list, err
}

// matchesAny reports whether a folder is one of the packages: "./internal/plan",
// or "./internal/..." for all below.
func matchesAny(packages []string, folder string) bool {
	for _, p := range packages {
		p = strings.TrimPrefix(strings.TrimPrefix(p, "ebbwell/"), "./")
		below, all := strings.CutSuffix(p, "...")
		below = strings.TrimSuffix(below, "/")
		if folder == p || all && (below == "" || folder == below || strings.HasPrefix(folder, below+"/")) {
			return true
		}
	}
	return false
}

// executions is how often a target was run, as go test said last.
func executions(out string) string {
	all := regexp.MustCompile(`execs: (\d+)`).FindAllStringSubmatch(out, -1)
	if len(all) == 0 {
		return "-"
	}
	return all[len(all)-1][1]
}

// timeEnded reports that a run failed only because its time ended: until Go 1.27 go test may
// take its own deadline for a failure (go.dev/issue/75804). Nothing was found then, and no
// input was kept.
func timeEnded(out string) bool {
	return regexp.MustCompile(`--- FAIL: .*\n\s+context deadline exceeded\n`).MatchString(out) && !strings.Contains(out, "Failing input written to")
}

// findingOf is what of a failed run names what was found: where it is kept, or the
// last line that says something.
func findingOf(out string) string {
	if at := regexp.MustCompile(`Failing input written to (\S+)`).FindStringSubmatch(out); at != nil {
		return at[1]
	}
	lines := strings.Split(strings.TrimSpace(out), "\n")
	for i := len(lines) - 1; i >= 0; i-- {
		if line := strings.TrimSpace(lines[i]); line != "" && !strings.HasPrefix(line, "FAIL") && !strings.HasPrefix(line, "exit status") {
			return line
		}
	}
	return "failed without a word"
}

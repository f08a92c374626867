package mutate

import (
	"cmp"
	"context"
	"fmt"
	"os"
	"os/exec"
	"path"
	"path/filepath"
	"slices"
	"strings"
	"time"
)

// Coverage says which tests of a package run which of its lines, so that a
// mutant is tried by those only.
type Coverage struct {
	tests []coveringTest
	left  []string
}

// Left are the tests that fail without any mutant when they draw few cases, so
// that no mutant is tried by them.
func (c *Coverage) Left() []string { return c.left }

// coveringTest is a test with the lines it runs.
type coveringTest struct {
	name string
	took time.Duration
	runs []lines
}

// lines are a piece of one file of the package, from and to included.
type lines struct {
	file     string
	from, to int
}

// quick is how long a test may take to be among those that are tried first.
const quick = 300 * time.Millisecond

// Cover runs every test of a package by itself, once. folder is the package's,
// from the root of the module.
func (t Trial) Cover(ctx context.Context, folder string) (*Coverage, error) {
	binary := filepath.Join(t.Dir, "covered.test")
	if out, err := t.command(ctx, t.Root, "go", "test", "-c", "-cover", "-tags", t.Tags, "-vet=off", "-o", binary, "./"+folder).CombinedOutput(); err != nil {
		return nil, fmt.Errorf("build the tests of %s: %w\n%s", folder, err, out)
	}
	home := filepath.Join(t.Root, filepath.FromSlash(folder))
	listed, err := t.command(ctx, home, binary, "-test.list", "^(Test|Fuzz|Example)").Output()
	if err != nil {
		return nil, fmt.Errorf("list the tests of %s: %w", folder, err)
	}
	c := &Coverage{}
	for _, name := range strings.Fields(string(listed)) {
		one := coveringTest{name: name}
		profile := filepath.Join(t.Dir, "profile")
		begin := time.Now()
		run := t.command(ctx, home, binary, append(t.flags(home), "-test.run", "^"+name+"$", "-test.coverprofile", profile)...)
		if _, err := run.CombinedOutput(); err != nil {
			if ctx.Err() != nil {
				return nil, fmt.Errorf("run %s of %s: %w", name, folder, ctx.Err())
			}
			// A property that counts its draws fails with so few of them: it tells
			// nothing about a mutant.
			c.left = append(c.left, name)
			continue
		}
		one.took = time.Since(begin)
		data, err := os.ReadFile(profile)
		if err != nil {
			return nil, fmt.Errorf("read what %s runs: %w", name, err)
		}
		one.runs = readProfile(string(data))
		c.tests = append(c.tests, one)
	}
	slices.SortStableFunc(c.tests, func(a, b coveringTest) int { return cmp.Compare(a.took, b.took) })
	return c, nil
}

// readProfile reads what of a package was run.
func readProfile(profile string) (runs []lines) {
	for line := range strings.Lines(profile) {
		name, rest, ok := strings.Cut(strings.TrimSpace(line), ":")
		var from, to, column, statements, count int
		if !ok {
			continue
		}
		if _, err := fmt.Sscanf(rest, "%d.%d,%d.%d %d %d", &from, &column, &to, &column, &statements, &count); err == nil && count > 0 {
			runs = append(runs, lines{path.Base(name), from, to})
		}
	}
	return runs
}

// Quick leaves out the tests that take long: a mutant that survives the others
// may still be found by one of these.
func (c *Coverage) Quick() {
	c.tests = slices.DeleteFunc(c.tests, func(t coveringTest) bool { return t.took > quick })
}

// Of lists the tests that run the line of a mutant, in groups: the quicker half of
// the quick ones first, since most mutants fail there. What is worked out before any
// test, such as a constant, is run by all.
func (c *Coverage) Of(m Mutant) (groups [][]string) {
	var fast, slow []string
	for _, t := range c.tests { // in order of the time they take
		if !m.Outside && !slices.ContainsFunc(t.runs, func(l lines) bool {
			return l.file == path.Base(m.File) && l.from <= m.reached && m.reached <= l.to
		}) {
			continue
		}
		if t.took <= quick {
			fast = append(fast, t.name)
		} else {
			slow = append(slow, t.name)
		}
	}
	half := (len(fast) + 1) / 2
	for _, group := range [][]string{fast[:half], fast[half:], slow} {
		if len(group) > 0 {
			groups = append(groups, group)
		}
	}
	return groups
}

// command is a command of the trial, in a folder.
func (t Trial) command(ctx context.Context, folder, name string, args ...string) *exec.Cmd {
	c := exec.CommandContext(ctx, name, args...)
	c.Dir = folder
	c.Env = slices.Concat(os.Environ(), []string{"CGO_ENABLED=0"}, t.Env)
	return c
}

// flags are those of every run of tests.
func (t Trial) flags(home string) []string {
	flags := []string{"-test.short", "-test.parallel=1", "-test.timeout=60s"}
	if drawsCases(home) { // what fails a mutant is no case to keep, nor one to look for the simplest of
		flags = append(flags, "-rapid.nofailfile", "-rapid.shrinktime=0s", "-rapid.checks=125") // a fifth of them with -short
	}
	return flags
}

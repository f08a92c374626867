package main

import (
	"cmp"
	"context"
	"errors"
	"flag"
	"fmt"
	"math/rand/v2"
	"os"
	"path"
	"path/filepath"
	"slices"
	"sort"
	"strings"

	"ebbwell/cmd/dev/mutate"
)

// The packages whose tests are tried, and where what cannot be killed is listed.
const (
	mutated     = "sweat,fuel,climate,plan,plan/proposal,consult,care"
	equivalents = "testdata/mutation/equivalent.txt"
)

// mutation is what was asked for.
type mutation struct {
	packages []string
	n        int
	seed     uint64
	only     string
	again    string // what an earlier run printed; empty for any mutant
	list     bool
	quick    bool // leave out the tests that take long
}

// mutant makes small mistakes in the science packages, one at a time, and
// tells which of them their own tests do not find.
func mutant(ctx context.Context, t tool, args []string) error {
	m, err := readMutation(t, args)
	if err != nil {
		return err
	}
	known, err := mutate.Equivalents(filepath.Join(t.root, filepath.FromSlash(equivalents)))
	if err != nil {
		return err
	}
	if err := mutate.LimitMemory(); err != nil {
		return err
	}
	dir, err := os.MkdirTemp("", "ebbwell-mutate-")
	if err != nil {
		return fmt.Errorf("try mutants: %w", err)
	}
	defer os.RemoveAll(dir) //nolint:errcheck // a left-over temporary folder does no harm
	trial := mutate.Trial{Root: t.root, Tags: tags, Env: []string{drawn}, Dir: dir}
	total := map[mutate.Fate]int{}
	all := 0
	var short []string
	for _, name := range m.packages {
		n, count, err := t.tryPackage(ctx, trial, name, m, known)
		if err != nil {
			return err
		}
		all += n
		for fate, k := range count {
			total[fate] += k
		}
		if !enough(count) {
			short = append(short, name)
		}
	}
	if m.list {
		return nil
	}
	_, err = fmt.Fprint(t.out, summary("all", all, total))
	if len(short) > 0 {
		return fmt.Errorf("less than %d %% killed or more than %d %% equivalent in %s: write a test that finds each mutant, or list it in %s with the reason why none can",
			killedFrom, equivalentTo, strings.Join(short, ", "), equivalents)
	}
	return err
}

// What is asked of every package, in % of the mutants that were tried.
const (
	killedFrom   = 95
	equivalentTo = 3
)

// enough reports whether the tests of a package find what they should.
func enough(count map[mutate.Fate]int) bool {
	killed, survived, equal := count[mutate.Killed], count[mutate.Survived], count[mutate.Equivalent]
	return 100*killed >= killedFrom*(killed+survived) && 100*equal <= equivalentTo*(killed+survived+equal)
}

// readMutation reads the flags.
func readMutation(t tool, args []string) (mutation, error) {
	var m mutation
	var names string
	set := flag.NewFlagSet("mutate", flag.ContinueOnError)
	set.SetOutput(t.errs)
	set.StringVar(&names, "package", mutated, "packages of internal, with commas")
	set.IntVar(&m.n, "n", 0, "try so many of each package, drawn at random; 0 tries all")
	set.Uint64Var(&m.seed, "seed", 1, "what the draw begins with")
	set.StringVar(&m.only, "only", "", "try only mutants whose name has this in it")
	earlier := set.String("again", "", "try only those that survived in this file, which an earlier run printed")
	set.BoolVar(&m.quick, "quick", false, "leave out tests that take long: what survives may still be found by them")
	set.BoolVar(&m.list, "list", false, "name the mutants and try none")
	if err := set.Parse(args); err != nil {
		return m, fmt.Errorf("read flags: %w", err)
	}
	if set.NArg() > 0 {
		return m, fmt.Errorf("mutate takes flags only, not %q", set.Arg(0))
	}
	m.packages = strings.Split(names, ",")
	if *earlier != "" {
		data, err := os.ReadFile(*earlier)
		if err != nil || len(data) == 0 {
			return m, fmt.Errorf("read what survived: %w", cmp.Or(err, errors.New("the file is empty")))
		}
		m.again = "\n" + string(data)
	}
	return m, nil
}

// tryPackage tries the mutants of a package, tells of it, and returns how many
// there are and what became of those tried.
func (t tool) tryPackage(ctx context.Context, trial mutate.Trial, name string, m mutation, known map[string]string) (int, map[mutate.Fate]int, error) {
	// The program that has all mutants in it reads its number from the environment.
	list, err := t.read(ctx, []string{"CGO_ENABLED=0"}, "go", "list", "-tags", tags, "-export", "-deps", "-json=ImportPath,Dir,Export,GoFiles", "os", "strconv", "./internal/"+name)
	if err != nil {
		return 0, nil, err
	}
	p, err := mutate.Find(t.root, []byte(list))
	if err != nil {
		return 0, nil, err
	}
	chosen := draw(p.Mutants, m)
	if !m.list && len(chosen) > 0 {
		if trial.Switched, err = trial.Switch(ctx, p); err != nil {
			return 0, nil, err
		}
		if trial.Covering, err = trial.Cover(ctx, "internal/"+name); err != nil {
			return 0, nil, err
		}
		for _, left := range trial.Covering.Left() {
			t.say("%s: %s is left out, since it fails with few draws", name, left)
		}
		if m.quick {
			trial.Covering.Quick()
		}
	}
	count := map[mutate.Fate]int{}
	for i, one := range chosen {
		fate, err := t.tryOne(ctx, trial, one, m, known)
		if err != nil {
			return 0, nil, err
		}
		count[fate]++
		if (i+1)%100 == 0 && !m.list {
			t.say("%s: %d of %d tried", name, i+1, len(chosen))
		}
	}
	if !m.list {
		_, err = fmt.Fprint(t.out, summary(name, len(p.Mutants), count))
	}
	if stale := staleNames(name, p.Mutants, known); len(stale) > 0 && err == nil {
		err = fmt.Errorf("listed as equivalent, but there is no such mutant:\n  %s", strings.Join(stale, "\n  "))
	}
	return len(p.Mutants), count, err
}

// tryOne tries a mutant and names it when it survived.
func (t tool) tryOne(ctx context.Context, trial mutate.Trial, one mutate.Mutant, m mutation, known map[string]string) (mutate.Fate, error) {
	if m.list {
		_, err := fmt.Fprintf(t.out, "%s:%d %s\n", one.File, one.Line, one.Name())
		return "", err
	}
	if _, ok := known[one.Name()]; ok {
		return mutate.Equivalent, nil
	}
	fate, err := trial.Try(ctx, one)
	if fate == mutate.Survived {
		_, _ = fmt.Fprintf(t.out, "survived (%s) line %d: %s\n", one.Kind, one.Line, one.Name())
	}
	return fate, err
}

// draw chooses the mutants to try; the same seed draws the same.
func draw(all []mutate.Mutant, m mutation) []mutate.Mutant {
	var list []mutate.Mutant
	for _, one := range all {
		if strings.Contains(one.Name(), m.only) && (m.again == "" || strings.Contains(m.again, ": "+one.Name()+"\n")) {
			list = append(list, one)
		}
	}
	if m.n <= 0 || m.n >= len(list) {
		return list
	}
	r := rand.New(rand.NewPCG(m.seed, 0))
	r.Shuffle(len(list), func(i, j int) { list[i], list[j] = list[j], list[i] })
	list = list[:m.n]
	sort.SliceStable(list, func(i, j int) bool { return list[i].File < list[j].File })
	return list
}

// staleNames lists equivalents of a package that are no mutants any more.
func staleNames(name string, all []mutate.Mutant, known map[string]string) []string {
	var stale []string
	for k := range known {
		file, _, _ := strings.Cut(k, " ")
		if path.Dir(file) == "internal/"+name && !slices.ContainsFunc(all, func(m mutate.Mutant) bool { return m.Name() == k }) {
			stale = append(stale, k)
		}
	}
	sort.Strings(stale)
	return stale
}

// summary says how many were found.
func summary(name string, all int, count map[mutate.Fate]int) string {
	killed, survived, equal := count[mutate.Killed], count[mutate.Survived], count[mutate.Equivalent]
	tried := killed + survived
	share := 100.0
	if tried > 0 {
		share = 100 * float64(killed) / float64(tried)
	}
	return fmt.Sprintf("%s: %d mutants, %d tried: killed %d, survived %d (%.1f %% killed), equivalent %d (%.1f %%), did not build %d\n",
		name, all, tried, killed, survived, share, equal, 100*float64(equal)/float64(max(tried+equal, 1)), count[mutate.Unbuilt])
}

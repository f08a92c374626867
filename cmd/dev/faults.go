package main

import (
	"context"
	"errors"
	"flag"
	"fmt"
	"os/exec"
	"regexp"
	"slices"
	"strconv"
	"strings"
)

// faultSet is the tests of one package that try to lose data, with what they are
// told. Each logs lines "faults|what|tried|survived|offered|lost".
type faultSet struct {
	folder, tests string
	flags         []string
}

// faultTests are those that hit the store; n is how often each piece of work is hit.
func faultTests(n int) []faultSet {
	return []faultSet{{
		"./internal/store",
		"^(TestFaults|TestEveryPageZeroed|TestBytesFlipped|TestTornLog|TestClockMoves|TestOddPlaces|TestLockedBackupRefuses|TestTwoPrograms)$",
		[]string{"-faults", strconv.Itoa(n)},
	}}
}

// monkeyTests are those that do whatever comes, at their full length.
func monkeyTests() []faultSet {
	return []faultSet{
		{"./app", "^TestMonkey$", []string{"-monkey-seeds", "8", "-monkey-events", "2000"}},
		{"./app/screen/squad", "^TestRandomInput$", []string{"-keys", "10000"}},
	}
}

// tried is what became of one kind of fault.
type tried struct {
	what                           string
	tried, survived, offered, lost int
}

// faults tries to lose data: it ends a second program at chosen changes of its
// files, fills the disk, damages the files, moves the clock, and tells what was
// tried, what came through, where a copy was offered, and what was lost.
func faults(ctx context.Context, t tool, args []string) error {
	set := flag.NewFlagSet("faults", flag.ContinueOnError)
	set.SetOutput(t.errs)
	n := set.Int("n", 6, "how often each piece of work is hit in each way")
	monkey := set.Bool("monkey", false, "press and type whatever comes instead, over the whole program and over a squad's test day")
	if err := set.Parse(args); err != nil {
		return fmt.Errorf("read flags: %w", err)
	}
	if set.NArg() > 0 {
		return fmt.Errorf("faults takes flags only, not %q", set.Arg(0))
	}
	sets := faultTests(*n)
	if *monkey {
		sets = monkeyTests()
	}
	_, _ = fmt.Fprintf(t.out, "%-34s %6s %9s %8s %5s\n", "fault", "tried", "survived", "offered", "lost")
	total, failed := tried{what: "all of it"}, false
	for _, one := range sets {
		line := slices.Concat([]string{"test", "-tags", tags, "-count=1", "-timeout", "4h", "-v", "-run", one.tests, one.folder}, one.flags)
		out, err := t.read(ctx, []string{"CGO_ENABLED=0"}, "go", line...)
		var exit *exec.ExitError
		if err != nil && !errors.As(err, &exit) {
			return err
		}
		for _, line := range readTried(out) {
			line.print(t)
			total.add(line)
		}
		if err != nil {
			failed = true
			_, _ = fmt.Fprintf(t.errs, "\n%s\n", out)
		}
	}
	total.print(t)
	if failed || total.lost > 0 || total.tried == 0 {
		return fmt.Errorf("%d faults of %d lost something, or a test failed", total.lost, total.tried)
	}
	return nil
}

// print writes a line of the table.
func (l tried) print(t tool) {
	_, _ = fmt.Fprintf(t.out, "%-34s %6d %9d %8d %5d\n", l.what, l.tried, l.survived, l.offered, l.lost)
}

func (l *tried) add(other tried) {
	l.tried, l.survived, l.offered, l.lost = l.tried+other.tried, l.survived+other.survived, l.offered+other.offered, l.lost+other.lost
}

// readTried reads the lines that tests log.
func readTried(out string) (list []tried) {
	for _, m := range regexp.MustCompile(`(?m)faults\|([^|\n]+)\|(\d+)\|(\d+)\|(\d+)\|(\d+)$`).FindAllStringSubmatch(strings.ReplaceAll(out, "\r", ""), -1) {
		var n [4]int
		for i := range n {
			n[i], _ = strconv.Atoi(m[i+2]) // digits
		}
		list = append(list, tried{m[1], n[0], n[1], n[2], n[3]})
	}
	return list
}

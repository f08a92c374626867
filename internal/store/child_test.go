package store

import (
	"bufio"
	"bytes"
	"context"
	"errors"
	"fmt"
	"io"
	"os"
	"os/exec"
	"path/filepath"
	"strconv"
	"strings"
	"testing"
	"time"

	"github.com/go-gormigrate/gormigrate/v2"
	"gorm.io/gorm"
	"gorm.io/gorm/logger"

	"ebbwell/internal/quantity"
	"ebbwell/internal/record"
)

// What a second program is to do, and in which data folder.
const (
	childVariable = "EBBWELL_TEST_CHILD"
	childFolder   = "EBBWELL_TEST_FOLDER"
)

// child does the work of a second program and returns its exit code.
func child(name, dir string) int {
	work := map[string]func(dir string) error{
		"open": childOpen, "stream": childStream, "midway": childMidway, "save": childSave, "look": childLook, "limit": childLimit,
		"deed": childDeed, "import": childImport, "merge": childMerge,
	}
	if err := work[name](dir); err != nil {
		fmt.Println("code:", CodeOf(err))
		fmt.Fprintln(os.Stderr, err)
		return 3
	}
	fmt.Println("done")
	return 0
}

// childOpen opens the folder and closes it.
func childOpen(dir string) error { return openAndClose(Open(dir, Options{})) }

// childLook opens the folder for reading and counts the athletes.
func childLook(dir string) error {
	s, err := Open(dir, Options{ReadOnly: true})
	if err != nil {
		return err
	}
	all, err := s.Athletes(context.Background())
	fmt.Println("athletes:", len(all))
	return errors.Join(err, s.Close())
}

// childSave opens the folder and makes an athlete.
func childSave(dir string) error {
	s, err := Open(dir, Options{})
	if err != nil {
		return err
	}
	_, err = s.SaveAthlete(context.Background(), record.Athlete{Name: "Ann"}, Edit{})
	return errors.Join(err, s.Close())
}

// childStream saves one field of one test without end, and prints each value
// once its save has returned.
func childStream(dir string) error {
	s, err := Open(dir, Options{})
	if err != nil {
		return err
	}
	ctx := context.Background()
	a, err := s.SaveAthlete(ctx, record.Athlete{Name: "Mira"}, Edit{})
	if err != nil {
		return err
	}
	one, err := s.SaveTest(ctx, record.Test{AthleteID: a.ID}, Edit{})
	for i := 1; err == nil; i++ {
		one.Bottles = append(one.Bottles, record.Bottle{Order: i, Before: record.Num(float64(i), quantity.Gram)})
		if one, err = s.SaveTest(ctx, one, Edit{}); err == nil {
			fmt.Println(one.ID, i)
		}
	}
	return err
}

// childMidway tells of every statement of a change of shape, and of the moment
// before its end, and goes on when it is told to.
func childMidway(dir string) error {
	next := bufio.NewReader(os.Stdin)
	said := 0
	stop := func() {
		said++
		fmt.Println("statement", said)
		_, _ = next.ReadString('\n')
	}
	var watched []*gormigrate.Migration
	for _, m := range withNext() {
		watched = append(watched, &gormigrate.Migration{ID: m.ID, Migrate: func(tx *gorm.DB) error {
			err := m.Migrate(tx.Session(&gorm.Session{Logger: watcher{tx.Logger, stop}}))
			stop()
			return err
		}})
	}
	return openAndClose(Open(dir, Options{versions: watched}))
}

// watcher is told of every statement.
type watcher struct {
	logger.Interface
	stop func()
}

func (w watcher) Trace(context.Context, time.Time, func() (string, int64), error) { w.stop() }

// childCommand prepares a second program.
func childCommand(name, dir string) *exec.Cmd {
	cmd := exec.Command(os.Args[0])
	cmd.Env = append(os.Environ(), childVariable+"="+name, childFolder+"="+dir)
	return cmd
}

// runChild runs a second program to its end and returns what it printed.
func runChild(t testing.TB, cmd *exec.Cmd) string {
	t.Helper()
	var complaint bytes.Buffer
	cmd.Stderr = &complaint
	out, err := cmd.Output()
	var exit *exec.ExitError
	if err != nil && (!errors.As(err, &exit) || exit.ExitCode() != 3) {
		t.Fatalf("second program: %v\n%s%s", err, out, complaint.String())
	}
	return strings.TrimSpace(string(out))
}

// killAfter starts a second program, reads lines until enough says so, kills
// it without warning and returns all it printed.
func killAfter(t testing.TB, cmd *exec.Cmd, enough func(line string) bool) []string {
	t.Helper()
	pipe := got(cmd.StdoutPipe())(t)
	must(t, cmd.Start())
	var lines []string
	killed := false
	for scan := bufio.NewScanner(pipe); scan.Scan(); {
		lines = append(lines, scan.Text())
		if !killed && enough(scan.Text()) {
			must(t, cmd.Process.Kill())
			killed = true
		}
	}
	if cmd.Wait() == nil || !killed {
		t.Fatalf("the program ended by itself after %q", lines)
	}
	return lines
}

// TestSecondProgram on the same folder is refused, and may come afterwards.
func TestSecondProgram(t *testing.T) {
	dir := t.TempDir()
	s := got(Open(dir, Options{}))(t)
	if out := runChild(t, childCommand("open", dir)); out != "code: in-use" {
		t.Errorf("the second program said %q", out)
	}
	must(t, s.Close())
	if out := runChild(t, childCommand("open", dir)); out != "done" {
		t.Errorf("the program afterwards said %q", out)
	}
}

// TestKilledWhileSaving: every save that returned is there, and the file is whole.
func TestKilledWhileSaving(t *testing.T) {
	for _, after := range []int{1, 17, 40} {
		dir, n := t.TempDir(), 0
		lines := killAfter(t, childCommand("stream", dir), func(string) bool { n++; return n == after })
		s := open(t, dir, newClock())
		checkWhole(t, s)
		id, count, _ := strings.Cut(lines[len(lines)-1], " ")
		promised, err := strconv.Atoi(count)
		must(t, err)
		one := got(s.LoadTest(context.Background(), record.ID(id)))(t)
		if len(one.Bottles) < promised || len(one.Bottles) > promised+1 {
			t.Errorf("%d saves returned, %d are there", promised, len(one.Bottles))
		}
		for i, b := range one.Bottles {
			if b.Before.Or(0) != float64(i+1) {
				t.Errorf("bottle %d holds %v g", i+1, b.Before.Or(0))
			}
		}
		// Each save is whole: bottle and history.
		if changes := got(s.History(context.Background(), record.Ref{Kind: record.KindTest, ID: one.ID}))(t); len(changes) != len(one.Bottles)+1 {
			t.Errorf("%d bottles and %d changes", len(one.Bottles), len(changes))
		}
	}
}

// TestKilledWhileMigrating at any statement leaves every kept file as it was, and
// the next start brings it up to date.
func TestKilledWhileMigrating(t *testing.T) {
	eachKept(t, func(t *testing.T, file string) {
		all := statementsOf(t, file)
		for _, at := range []int{1, all / 3, 2 * all / 3, all} {
			dir := copyKept(t, file)
			before := rowsAt(t, dir)
			killMidway(t, dir, at)
			if made := madeAfterKill(t, dir); len(made) != versionOf(t, file) {
				t.Errorf("killed at statement %d of %d: versions %q", at, all, made)
			}
			if _, err := os.Stat(filepath.Join(dir, snapshotFolder)); err != nil {
				t.Errorf("no snapshot from before the change: %v", err)
			}
			s := open(t, dir, newClock())
			checkWhole(t, s)
			wantRows(t, before, allRows(t, s.files.reader), versionOf(t, file))
			if made := got(madeVersions(s.files.reader))(t); len(made) != len(versions()) {
				t.Errorf("killed at statement %d of %d, then opened: versions %q", at, all, made)
			}
		}
	})
}

// statementsOf counts the statements that bring a kept file to tomorrow.
func statementsOf(t testing.TB, file string) int {
	t.Helper()
	cmd := childCommand("midway", copyKept(t, file))
	cmd.Stdin = strings.NewReader(strings.Repeat("\n", 10_000))
	n := strings.Count(runChild(t, cmd), "statement")
	if n < 3 {
		t.Fatalf("only %d statements", n)
	}
	return n
}

// killMidway kills a second program at a statement of a change of shape.
func killMidway(t testing.TB, dir string, at int) {
	t.Helper()
	killAt(t, "midway", dir, fmt.Sprint("statement ", at))
}

// killAt starts the work of a second program that waits after each line it prints, and
// kills it at one of them.
func killAt(t testing.TB, name, dir, at string) {
	t.Helper()
	cmd := childCommand(name, dir)
	more := got(cmd.StdinPipe())(t)
	killAfter(t, cmd, func(line string) bool {
		if line == at {
			return true
		}
		_, err := io.WriteString(more, "\n")
		must(t, err)
		return false
	})
}

// madeAfterKill reads the versions with the log that the kill left behind.
func madeAfterKill(t testing.TB, dir string) []string {
	t.Helper()
	db := got(connect(filepath.Join(dir, fileName), forChanging))(t)
	made := got(madeVersions(db))(t)
	must(t, disconnect(db))
	return made
}

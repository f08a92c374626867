package app

import (
	"context"
	"errors"
	"os"
	"os/exec"
	"path/filepath"
	"runtime"
	"slices"
	"testing"
	"time"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/test"

	"ebbwell/app/apptest"
	"ebbwell/app/kit/desk"
	"ebbwell/internal/cputime"
	"ebbwell/internal/demo"
	"ebbwell/internal/record"
	"ebbwell/internal/store"
	"ebbwell/internal/store/large"
)

// The benchmarks of a large practice hold each list against two peers of the
// same run: the sqlite3 command that answers the same questions from the same
// file, and the same screen of a practice that just fills it, which takes one
// screenful of drawing. Beyond that a list may take twice the command's time. All is
// processor time, the least of several rounds that take turns.

// scale is the invented practice, one that fills a screen and a large one, made of it.
type scale struct{ small, screen, large string }

// growth is what makes 10,000 athletes and 60,000 tests of the invented
// practice, and some more.
func growth() large.Copies { return large.Copies{Sessions: 4, Athletes: 910} }

// screenful is what makes a practice of which every list fills the screen, also what is
// found by searching, and no more than a few of them.
func screenful() large.Copies { return large.Copies{Sessions: 3, Athletes: 25} }

// rounds is how often each is measured.
const rounds = 15

// newScale makes the practices.
func newScale(b *testing.B) scale {
	b.Helper()
	s := scale{small: b.TempDir(), screen: b.TempDir(), large: b.TempDir()}
	w := apptest.Words(b)
	for _, dir := range []string{s.small, s.screen, s.large} {
		opened, err := store.Open(dir, store.Options{Clock: apptest.Now})
		if err != nil {
			b.Fatal(err)
		}
		err = demo.Fill(context.Background(), opened, apptest.Now(), demo.Names{Options: desk.OptionNames(w), Step: desk.StepName(w), Say: w.Say, Town: w.City})
		if err != nil {
			b.Fatal(err)
		}
		if err := opened.Close(); err != nil {
			b.Fatal(err)
		}
	}
	for dir, by := range map[string]large.Copies{s.screen: screenful(), s.large: growth()} {
		if err := large.Grow(databaseIn(dir), by); err != nil {
			b.Fatal(err)
		}
	}
	return s
}

// databaseIn is the database in a data folder.
func databaseIn(dir string) string { return filepath.Join(dir, "ebbwell.db") }

// started is a program on a data folder, in a window.
type started struct {
	shell  *Shell
	window fyne.Window
}

// startOn starts the program, and draws what it shows first.
func startOn(b *testing.B, dir string) started {
	b.Helper()
	w := test.NewTempWindow(b, nil)
	w.SetPadded(false)
	w.Resize(fyne.NewSize(1366, 768))
	s := NewShell(test.NewTempApp(b), w, apptest.Words(b), Options{Dir: dir, Now: apptest.Now, Beside: desk.Inline{}, OnWindow: func(do func()) { do() }})
	s.Start()
	if s.Program() == nil {
		b.Fatalf("it did not open: %q", said(w.Content()))
	}
	w.Canvas().Capture()
	return started{s, w}
}

// stop closes the program.
func (x started) stop(b *testing.B) {
	b.Helper()
	if err := x.shell.Close(); err != nil {
		b.Fatal(err)
	}
}

// taking is the processor time of f, without that of tidying up after others.
func taking(f func()) time.Duration {
	runtime.GC()
	begin := cputime.Used()
	f()
	return cputime.Used() - begin
}

// command is the processor time the sqlite3 command takes to answer questions from
// a file; ok is false where there is no such command.
func command(b *testing.B, dir, questions string) (took time.Duration, ok bool) {
	b.Helper()
	return other(b, "sqlite3", "-readonly", databaseIn(dir), questions)
}

// digestOf is what openssl takes for the digest of the file; sha256sum takes longer.
func digestOf(b *testing.B, dir string) (took time.Duration, ok bool) {
	b.Helper()
	return other(b, "openssl", "dgst", "-sha256", databaseIn(dir))
}

// other is the processor time of another program; ok is false where there is none.
func other(b *testing.B, name string, args ...string) (took time.Duration, ok bool) {
	b.Helper()
	path, err := exec.LookPath(name)
	if err != nil {
		return 0, false
	}
	c := exec.Command(path, args...)
	out, err := os.Create(os.DevNull)
	if err != nil {
		b.Fatal(err)
	}
	c.Stdout = out
	if err := errors.Join(c.Run(), out.Close()); err != nil {
		b.Fatalf("%s %q: %v", name, args, err)
	}
	return c.ProcessState.UserTime() + c.ProcessState.SystemTime(), true
}

// people asks for what a list knows of all athletes.
const people = `SELECT id, name, sport, position, born, mass_hidden, changed_at FROM athletes WHERE deleted_at IS NULL ORDER BY name, id;
SELECT m.athlete_id, g.name FROM memberships m JOIN groups g ON g.id = m.group_id WHERE m.deleted_at IS NULL AND g.deleted_at IS NULL ORDER BY g.name;
SELECT athlete_id, kind FROM flags WHERE deleted_at IS NULL ORDER BY id;
`

// lines asks for the tests and plans of the rows in sight.
const lines = `CREATE TEMP TABLE sight AS SELECT id FROM athletes WHERE deleted_at IS NULL ORDER BY name, id LIMIT 40;
WITH n AS (SELECT athlete_id, COUNT(*), MAX(date || ' ' || start || ' ' || id || ' ' || state) AS last FROM tests
WHERE deleted_at IS NULL AND athlete_id IN (SELECT id FROM sight) GROUP BY athlete_id)
SELECT n.*, f.line_rate, f.line_ranged FROM n CROSS JOIN frozen f ON f.kind = 'test'
AND f.record = substr(n.last, 18, length(n.last) - 24) WHERE n.last LIKE '% closed' ORDER BY f.record, f.number;
SELECT id, athlete_id, name, review FROM plans WHERE deleted_at IS NULL AND state = 'agreed' AND COALESCE(basis_stop_id, '') = ''
AND athlete_id IN (SELECT id FROM sight) ORDER BY agreed_at, id;
SELECT plan_id, state FROM steps WHERE deleted_at IS NULL AND plan_id IN (SELECT id FROM plans WHERE athlete_id IN (SELECT id FROM sight)) ORDER BY position, id;
`

// unfinished asks for the open sheets of all athletes.
const unfinished = `SELECT id, athlete_id, date, start, state FROM tests WHERE deleted_at IS NULL AND state IN ('open', 'waiting')
AND athlete_id IN (SELECT id FROM athletes WHERE deleted_at IS NULL) ORDER BY date DESC, start DESC, id DESC;`

// trips asks for all trips.
const trips = `SELECT * FROM trips WHERE deleted_at IS NULL; SELECT * FROM travellers WHERE deleted_at IS NULL; SELECT * FROM stops WHERE deleted_at IS NULL;
SELECT DISTINCT a.id, a.name FROM athletes a JOIN travellers t ON t.athlete_id = a.id WHERE a.deleted_at IS NULL AND t.deleted_at IS NULL;`

// task is what is done with a list, and the same questions for the sqlite3 command;
// before is done before it and not measured.
type task struct {
	name, questions string
	before, do      func(started)
}

// tasks are the lists.
func tasks(b *testing.B) []task {
	open := func(p desk.Place) func(started) {
		return func(x started) {
			x.shell.Program().Open(p)
			x.window.Canvas().Capture()
		}
	}
	search := func(x started) {
		apptest.Type(b, x.window, "roster.search", "rav")
		x.window.Canvas().Capture()
		apptest.Type(b, x.window, "roster.search", "")
	}
	athletes := open(desk.Place{Screen: desk.Athletes})
	return []task{
		{"list", people + lines, nil, athletes},
		{"afresh", people + lines, func(x started) { addSomebody(b, x) }, athletes},
		{"search", "SELECT id, name FROM athletes WHERE deleted_at IS NULL AND name LIKE '%rav%' ORDER BY name;", athletes, search},
		{"testday", people + unfinished, nil, open(desk.Place{Screen: desk.TestDay})},
		{"trips", trips, nil, open(desk.Place{Screen: desk.Trips})},
	}
}

// addSomebody adds an athlete, so that the list is not the one that is kept.
func addSomebody(b *testing.B, x started) {
	b.Helper()
	if _, err := x.shell.Program().Desk().Store.SaveAthlete(context.Background(), record.Athlete{Name: "Zora"}, store.Edit{}); err != nil {
		b.Fatal(err)
	}
}

// BenchmarkLarge holds a practice of 10,000 athletes and 60,000 tests against
// its peers.
func BenchmarkLarge(b *testing.B) {
	s := newScale(b)
	b.Run("start", func(b *testing.B) { benchmarkStart(b, s) })
	b.Run("digest", func(b *testing.B) { benchmarkDigest(b, s) })
	b.Run("frozen", func(b *testing.B) { benchmarkFrozen(b, s) })
	one, many := startOn(b, s.screen), startOn(b, s.large)
	defer one.stop(b)
	defer many.stop(b)
	for _, t := range tasks(b) {
		b.Run(t.name, func(b *testing.B) { measureTask(b, s, t, one, many) })
	}
}

// measureTask measures a task on both practices and by the command, by turns.
func measureTask(b *testing.B, s scale, t task, one, many started) {
	b.Helper()
	for b.Loop() {
		var tookScreen, tookLarge, tookCommand []time.Duration
		there := true
		for range rounds {
			tookScreen, tookLarge = append(tookScreen, t.measure(one)), append(tookLarge, t.measure(many))
			var took time.Duration
			took, there = command(b, s.large, t.questions)
			tookCommand = append(tookCommand, took)
		}
		report(b, tookLarge, tookScreen, tookCommand, there)
	}
}

// measure is the processor time of a task.
func (t task) measure(x started) time.Duration {
	if t.before != nil {
		t.before(x)
	}
	return taking(func() { t.do(x) })
}

// benchmarkFrozen compares the frozen copies of tests as they are kept with what
// was frozen.
func benchmarkFrozen(b *testing.B, s scale) {
	kept, err := large.FrozenBytes(databaseIn(s.small))
	if err != nil {
		b.Fatal(err)
	}
	x := startOn(b, s.small)
	defer x.stop(b)
	plain := 0
	for b.Loop() {
		plain = frozenPlain(b, x.shell.Program().Desk().Store)
	}
	b.ReportMetric(float64(kept), "B-kept")
	b.ReportMetric(float64(plain), "B-plain")
}

// frozenPlain counts the bytes of all frozen copies of tests as they are read.
func frozenPlain(b *testing.B, s *store.Store) (n int) {
	b.Helper()
	ctx := context.Background()
	people, err := s.Athletes(ctx)
	if err != nil {
		b.Fatal(err)
	}
	for _, a := range people {
		sheets, err := s.SheetsOf(ctx, a.ID)
		if err != nil {
			b.Fatal(err)
		}
		for _, one := range sheets {
			for _, f := range one.Kept {
				n += len(f.Inputs) + len(f.Results)
			}
		}
	}
	return n
}

// report prints the least time of a list and its peers; without the command there is no
// limit, and the peer is said to be missing.
func report(b *testing.B, large, screen, peer []time.Duration, there bool) {
	b.Helper()
	b.ReportMetric(0, "ns/op") // of the three together: says nothing
	ms := func(list []time.Duration) float64 { return float64(slices.Min(list).Microseconds()) / 1000 }
	b.ReportMetric(ms(large), "ms-large")
	b.ReportMetric(ms(screen), "ms-screen")
	if !there {
		b.ReportMetric(1, "peer-missing(sqlite3)")
		return
	}
	b.ReportMetric(ms(peer), "ms-sqlite3")
}

// benchmarkStart holds the first content, the whole opening and the memory of a
// large practice against those of a small one: limits 1.4 for the content and
// 1.3 for the memory. The opening checks the whole file beside the window, for damage as
// sqlite3 does, and against its digest as openssl does.
func benchmarkStart(b *testing.B, s scale) {
	few, many := begun{}, begun{}
	few.again(b, s.small) // fonts and the copy of the day
	many.again(b, s.large)
	few, many = begun{}, begun{}
	var tookCommand time.Duration
	there := true
	for b.Loop() {
		few.again(b, s.small)
		many.again(b, s.large)
		checked, sql := command(b, s.large, "PRAGMA quick_check(5); "+people+lines)
		summed, sum := digestOf(b, s.large)
		there = sql && sum
		tookCommand += checked + summed
	}
	n := float64(b.N)
	b.ReportMetric(0, "ns/op")
	if there {
		b.ReportMetric(float64(tookCommand.Milliseconds())/n, "ms-peers")
	} else {
		b.ReportMetric(1, "peer-missing(sqlite3,openssl)")
	}
	b.ReportMetric(float64(many.content.Milliseconds())/n, "ms-content-large")
	b.ReportMetric(float64(few.content.Milliseconds())/n, "ms-content-small")
	b.ReportMetric(float64(many.opened.Milliseconds())/n, "ms-opened-large")
	b.ReportMetric(float64(few.opened.Milliseconds())/n, "ms-opened-small")
	b.ReportMetric(many.heap/1e6/n, "MB-large")
	b.ReportMetric(few.heap/1e6/n, "MB-small")
}

// benchmarkDigest tells how much more an opening takes where the digest of the file
// stands beside it than where it does not. It is held against openssl on the same file, and against the rest of the opening: it runs beside the check for
// damage, so that nobody waits for it who has two processors.
func benchmarkDigest(b *testing.B, s scale) {
	const openings = 3
	opened := func() time.Duration {
		var x begun
		x.again(b, s.large) // whose closing puts the digest there
		return x.opened
	}
	opened()
	digest := databaseIn(s.large) + ".sha256"
	for b.Loop() {
		var with, without, summed []time.Duration
		there := true
		for range openings {
			if _, err := os.Stat(digest); err != nil {
				b.Fatal(err)
			}
			with = append(with, opened())
			if err := os.Remove(digest); err != nil {
				b.Fatal(err)
			}
			without = append(without, opened())
			var took time.Duration
			took, there = digestOf(b, s.large)
			summed = append(summed, took)
		}
		b.ReportMetric(0, "ns/op")
		ms := func(took time.Duration) float64 { return float64(took.Microseconds()) / 1000 }
		b.ReportMetric(ms(slices.Min(with)-slices.Min(without)), "ms-digest")
		b.ReportMetric(ms(slices.Min(without)), "ms-rest")
		if !there {
			b.ReportMetric(1, "peer-missing(openssl)")
			continue
		}
		b.ReportMetric(ms(slices.Min(summed)), "ms-openssl")
	}
}

// begun is what starts have taken together.
type begun struct {
	content, opened time.Duration
	heap            float64
}

// again starts the program on a data folder once more.
func (x *begun) again(b *testing.B, dir string) {
	b.Helper()
	w, r := test.NewTempWindow(b, nil), &byHand{}
	w.SetPadded(false)
	w.Resize(fyne.NewSize(1366, 768))
	s := NewShell(test.NewTempApp(b), w, apptest.Words(b), Options{Dir: dir, Now: apptest.Now, Beside: r, OnWindow: func(do func()) { do() }})
	x.content += taking(func() {
		s.Start()
		w.Canvas().Capture()
	})
	x.opened += taking(func() {
		r.goOn()
		w.Canvas().Capture()
	})
	var m runtime.MemStats
	runtime.GC()
	runtime.ReadMemStats(&m)
	x.heap += float64(m.HeapInuse)
	started{s, w}.stop(b)
}

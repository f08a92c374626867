package store

import (
	"context"
	"errors"
	"fmt"
	"os"
	"path/filepath"
	"slices"
	"testing"
	"time"

	"ebbwell/internal/bundle"
	"ebbwell/internal/lock"
	"ebbwell/internal/quantity"
	"ebbwell/internal/record"
)

// deed is a piece of work that a second program is disturbed over. Each step is
// one call, after which the program would tell the person that it is done.
type deed struct {
	name  string
	steps steps
	// closed deeds open the folder themselves.
	closed bool
	// from is a kept file that the folder begins with; empty for [makeScene].
	from string
	// crashed deeds begin with what is saved still in the log.
	crashed bool
	// empty deeds begin with no folder.
	empty bool
}

// steps are done one after the other.
type steps []func(context.Context, *scene) error

// scene is where a deed is done: the data folder and a folder outside it.
type scene struct {
	data, outside string
	s             *Store
}

// Names and words of the scene. The passphrase is common knowledge.
const (
	erasedName = "Quillfeather"
	keptName   = "Bea Whitlock"
	passphrase = "three dry towels"
	bundleName = "wren.ebb"
)

func sceneAt(folder string) *scene {
	return &scene{data: filepath.Join(folder, "data"), outside: filepath.Join(folder, "outside")}
}

// options of the scene: the day after it was made, so that the day's snapshot is
// taken on the way.
func (p *scene) options() Options {
	c := newClock()
	c.add(48 * time.Hour)
	return Options{Clock: c.now, By: "Kit"}
}

// open opens the scene's folder.
func (p *scene) open() (err error) {
	p.s, err = Open(p.data, p.options())
	return err
}

// makeScene fills a folder: a record of each kind, an athlete to be erased, an
// agreed plan and a draft, a page outside, and the snapshot of a day.
func makeScene(t testing.TB, folder string, crashed bool) {
	t.Helper()
	ctx, p, c := context.Background(), sceneAt(folder), newClock()
	must(t, os.MkdirAll(p.outside, 0o700))
	packBundle(t, p)
	s := got(Open(p.data, Options{Clock: c.now, By: "Kit"}))(t)
	makeWorld(t, s)
	for _, name := range []string{erasedName, keptName} {
		a := got(s.SaveAthlete(ctx, record.Athlete{Name: name}, Edit{}))(t)
		got(s.SaveTest(ctx, record.Test{AthleteID: a.ID, Note: name}, Edit{}))(t)
		first := got(s.SavePlan(ctx, record.Plan{AthleteID: a.ID, Name: "first"}, Edit{}))(t)
		got(s.AgreePlan(ctx, first, frozenFor(name), Edit{}))(t)
		got(s.SavePlan(ctx, record.Plan{AthleteID: a.ID, Name: "second"}, Edit{}))(t)
	}
	c.add(24 * time.Hour)
	got(s.SaveGroup(ctx, record.Group{Name: "next day"}, Edit{}))(t)
	if crashed {
		away := folder + "-crashed"
		must(t, os.CopyFS(away, os.DirFS(folder)))
		must(t, s.Close())
		must(t, os.RemoveAll(folder))
		must(t, os.Rename(away, folder))
		return
	}
	must(t, s.Close())
}

func frozenFor(name string) Freezing {
	return Freezing{Inputs: fmt.Appendf(nil, `{"of":%q}`, name), Results: []byte(`{"b":2}`), Evidence: "2026.1", Why: "closed"}
}

// faultsFlag is the flag that says how often each deed is hit in each way; the
// tests of every day hit each once.
const faultsFlag = "faults"

// deedVariable names the deed a second program does.
const deedVariable = "EBBWELL_TEST_DEED"

// childDeed does a deed in a scene, and tells of each step whether it was done.
func childDeed(folder string) error {
	ctx, p := context.Background(), sceneAt(folder)
	all, err := deeds()
	if err != nil {
		return err
	}
	at := slices.IndexFunc(all, func(d deed) bool { return d.name == os.Getenv(deedVariable) })
	if !all[at].closed {
		if err := p.open(); err != nil {
			return err
		}
	}
	for i, step := range all[at].steps {
		if err := step(ctx, p); err != nil {
			fmt.Println("failed", i, CodeOf(err))
			break
		}
		fmt.Println("did", i)
	}
	if p.s != nil {
		return p.s.Close()
	}
	return nil
}

// deeds lists what the program is disturbed over.
func deeds() ([]deed, error) {
	key, err := lock.NewKey(passphrase, 2)
	if err != nil {
		return nil, err
	}
	files, err := filepath.Glob(filepath.Join(keptFolder, "v*.db"))
	if err != nil {
		return nil, err
	}
	list := []deed{
		{name: "entry", steps: steps{entry(1), entry(2), entry(3)}},
		{name: "squad row", steps: steps{squadRow(1), squadRow(2)}},
		{name: "close test", steps: steps{closeOne, reopenOne}},
		{name: "agree", steps: steps{agreeOne}},
		{name: "hand out", steps: steps{handOut("one page"), handOut("another page")}},
		{name: "delete", steps: steps{deleteOne, undeleteOne}},
		{name: "import", steps: steps{importOne, undoImport}},
		{name: "merge", steps: steps{mergeOne, undoMerge}},
		{name: "erase", steps: steps{eraseOne}},
		{name: "backup", steps: steps{backUp(lock.Key{}), entry(1), backUp(lock.Key{})}},
		{name: "locked backup", steps: steps{backUp(key)}},
		{name: "restore", steps: steps{restoreOpen}},
		{name: "restore closed", closed: true, crashed: true, steps: steps{restoreClosed}},
		{name: "open after a crash", closed: true, crashed: true, steps: steps{openOnly}},
		{name: "first start", closed: true, empty: true, steps: steps{openOnly, firstPractice}},
	}
	for _, file := range files {
		list = append(list, deed{name: "migration of " + filepath.Base(file), closed: true, from: file, steps: steps{openOnly}})
	}
	return list, nil
}

// athlete finds an athlete by name.
func (p *scene) athlete(ctx context.Context, name string) (record.ID, error) {
	list, err := p.s.Athletes(ctx)
	if err != nil {
		return "", err
	}
	at := slices.IndexFunc(list, func(a AthleteSummary) bool { return a.Name == name })
	if at < 0 {
		return "", fmt.Errorf("no athlete is called %s", name)
	}
	return list[at].ID, nil
}

// test is the one test of an athlete.
func (p *scene) test(ctx context.Context, name string) (record.Test, error) {
	id, err := p.athlete(ctx, name)
	if err != nil {
		return record.Test{}, err
	}
	list, err := p.s.Tests(ctx, id)
	if err != nil || len(list) == 0 {
		return record.Test{}, fmt.Errorf("%d tests: %w", len(list), err)
	}
	return list[0], nil
}

// entry types one more bottle.
func entry(n int) func(context.Context, *scene) error {
	return func(ctx context.Context, p *scene) error {
		one, err := p.test(ctx, keptName)
		if err != nil {
			return err
		}
		one.Bottles = append(one.Bottles, record.Bottle{Order: n, Before: record.Num(float64(n), quantity.Gram)})
		_, err = p.s.SaveTest(ctx, one, Edit{})
		return err
	}
}

// squadRow weighs two athletes in one row of a session each, and keeps a text.
func squadRow(n int) func(context.Context, *scene) error {
	return func(ctx context.Context, p *scene) error {
		list, err := p.s.GroupSessions(ctx)
		if err != nil || len(list) == 0 {
			return fmt.Errorf("%d sessions: %w", len(list), err)
		}
		q := Squad{Session: list[0]}
		q.Session.Session.End = record.Clock(fmt.Sprintf("18:%02d", n))
		for _, name := range []string{keptName, erasedName} {
			one, err := p.test(ctx, name)
			if err != nil {
				return err
			}
			one.Weighings = append(one.Weighings, record.Weighing{Order: n, Moment: record.Before, Mass: record.Num(60+float64(n), quantity.Kilogram)})
			q.Tests = append(q.Tests, one)
			q.Texts = append(q.Texts, SquadText{Test: one.ID, Field: "note", Text: fmt.Sprint("text ", n)})
		}
		_, err = p.s.SaveSquad(ctx, q, Edit{})
		return err
	}
}

func closeOne(ctx context.Context, p *scene) error {
	one, err := p.test(ctx, keptName)
	if err != nil {
		return err
	}
	_, err = p.s.CloseTest(ctx, one, frozenFor("closing"), Edit{})
	return err
}

func reopenOne(ctx context.Context, p *scene) error {
	one, err := p.test(ctx, keptName)
	if err != nil {
		return err
	}
	_, err = p.s.ReopenTest(ctx, one.ID, "a wrong bottle")
	return err
}

// agreeOne agrees the second plan in the place of the first.
func agreeOne(ctx context.Context, p *scene) error {
	id, err := p.athlete(ctx, keptName)
	if err != nil {
		return err
	}
	plans, err := p.s.Plans(ctx, id)
	if err != nil {
		return err
	}
	byName := map[string]record.Plan{}
	for _, one := range plans {
		byName[one.Name] = one
	}
	_, err = p.s.AgreePlan(ctx, byName["second"], frozenFor("agreeing"), Edit{}, byName["first"].ID)
	return err
}

func handOut(text string) func(context.Context, *scene) error {
	return func(ctx context.Context, p *scene) error {
		one, err := p.test(ctx, keptName)
		if err != nil {
			return err
		}
		page := record.Print{AthleteID: one.AthleteID, Kind: record.KindTest, Record: one.ID, Page: "page", Bytes: []byte(text)}
		_, err = p.s.HandOut(ctx, page, filepath.Join(p.outside, "page.pdf"))
		return err
	}
}

func deleteOne(ctx context.Context, p *scene) error {
	id, err := p.athlete(ctx, keptName)
	if err != nil {
		return err
	}
	return p.s.Delete(ctx, record.Ref{Kind: record.KindAthlete, ID: id}, Edit{})
}

func undeleteOne(ctx context.Context, p *scene) error {
	list, err := p.s.Deleted(ctx)
	if err != nil || len(list) != 1 {
		return fmt.Errorf("%d are deleted: %w", len(list), err)
	}
	return p.s.Undelete(ctx, list[0].Ref, Edit{})
}

func importOne(ctx context.Context, p *scene) error {
	_, err := p.s.Import(ctx, incoming())
	return err
}

func undoImport(ctx context.Context, p *scene) error {
	list, err := p.s.Imports(ctx)
	if err != nil || len(list) == 0 {
		return fmt.Errorf("%d imports: %w", len(list), err)
	}
	_, err = p.s.UndoImport(ctx, list[0].ID)
	return err
}

// mergeOne puts the bundle of a colleague together with the records.
func mergeOne(ctx context.Context, p *scene) error {
	file, err := os.Open(filepath.Join(p.outside, bundleName))
	if err != nil {
		return err
	}
	b, err := bundle.Read(file)
	if err = errors.Join(err, file.Close()); err != nil {
		return err
	}
	here, err := p.s.HereOf(ctx, b)
	if err != nil {
		return err
	}
	at := time.Date(2026, 5, 16, 12, 0, 0, 0, time.UTC)
	_, err = p.s.Merge(ctx, Incomer{Bundle: b, Seen: bundle.Merge(here, b, at), At: at, File: bundleName})
	return err
}

func undoMerge(ctx context.Context, p *scene) error {
	list, err := p.s.Merges(ctx)
	if err != nil || len(list) == 0 {
		return fmt.Errorf("%d merges: %w", len(list), err)
	}
	return p.s.UndoMerge(ctx, list[0].ID)
}

// packBundle writes the bundle of a colleague beside the folder.
func packBundle(t testing.TB, p *scene) {
	t.Helper()
	there := got(Open(t.TempDir(), Options{Clock: newClock().now, By: "Ida"}))(t)
	a := someone(t, there)
	file := got(os.Create(filepath.Join(p.outside, bundleName)))(t)
	must(t, bundle.Write(file, got(there.Pack(context.Background(), []record.ID{a.ID}, "Saltmarsh (invented)"))(t), "1"))
	must(t, errors.Join(file.Close(), there.Close()))
}

func eraseOne(ctx context.Context, p *scene) error {
	id, err := p.athlete(ctx, erasedName)
	if err != nil {
		return err
	}
	left, err := p.s.EraseAthlete(ctx, id, true)
	if err == nil && len(left.Snapshots) > 0 {
		err = fmt.Errorf("%d snapshots hold the athlete still", len(left.Snapshots))
	}
	return err
}

func backUp(key lock.Key) func(context.Context, *scene) error {
	return func(ctx context.Context, p *scene) error {
		return p.s.BackupWith(ctx, filepath.Join(p.outside, "backup.db"), key)
	}
}

func restoreOpen(ctx context.Context, p *scene) error {
	list, err := p.s.Snapshots()
	if err != nil || len(list) == 0 {
		return fmt.Errorf("%d snapshots: %w", len(list), err)
	}
	return p.s.Restore(ctx, list[len(list)-1])
}

func restoreClosed(ctx context.Context, p *scene) error {
	list, err := Snapshots(p.data)
	if err != nil || len(list) == 0 {
		return fmt.Errorf("%d snapshots: %w", len(list), err)
	}
	return Restore(ctx, p.data, list[len(list)-1], p.options())
}

func openOnly(_ context.Context, p *scene) error { return p.open() }

func firstPractice(ctx context.Context, p *scene) error {
	_, err := p.s.SavePractice(ctx, record.Practice{Practitioner: "Ada Fennimoor"}, Edit{})
	return err
}

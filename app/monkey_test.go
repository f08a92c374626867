package app

import (
	"context"
	"encoding/json"
	"flag"
	"fmt"
	"math/rand/v2"
	"path/filepath"
	"regexp"
	"runtime/debug"
	"slices"
	"strings"
	"testing"

	"fyne.io/fyne/v2"

	"ebbwell/app/apptest"
	"ebbwell/app/kit/desk"
	"ebbwell/app/kit/field"
	"ebbwell/app/kit/keep"
	"ebbwell/app/kit/keep/clock"
	"ebbwell/internal/care"
	"ebbwell/internal/consult"
	"ebbwell/internal/plan"
	"ebbwell/internal/record"
)

// How much TestMonkey does; `cmd/dev faults -monkey` asks for more.
var (
	monkeySeeds  = flag.Int("monkey-seeds", 1, "how many seeds TestMonkey runs")              //nolint:gochecknoglobals // a flag
	monkeyEvents = flag.Int("monkey-events", 150, "how many events TestMonkey makes of each") //nolint:gochecknoglobals // a flag
)

// lookEvery is after how many events the records are looked at.
const lookEvery = 50

// TestMonkey does whatever comes over the whole program, on the invented practice: it
// opens places, clicks what it finds, presses keys, types hostile texts, lets the time
// go on. The program does not panic; no plan is agreed above its limit; of an athlete
// whose mass is hidden none is shown; the history of what was done stays as it was;
// and the records of an athlete change only while something of that athlete is open.
func TestMonkey(t *testing.T) {
	for seed := range *monkeySeeds {
		t.Run(fmt.Sprint("seed ", seed), func(t *testing.T) {
			m := newMonkey(t, uint64(seed))
			begun := len(m.past)
			for m.n = range *monkeyEvents {
				m.event()
				if m.n%lookEvery == lookEvery-1 {
					m.look()
				}
			}
			m.look()
			t.Logf("faults|monkey, seed %d|%d|%d|0|0", seed, *monkeyEvents, *monkeyEvents)
			t.Logf("%d changes were kept and %d plans agreed on the way", len(m.past)-begun, m.agreements)
		})
	}
}

// monkey is what does whatever comes.
type monkey struct {
	hands
	dice *rand.Rand
	n    int
	did  []string // the last events, for who reads a failure
	// known is what was last seen of each athlete's records, by id; touched are those
	// who have been open since, all of them after a screen that shows many.
	known   map[record.ID]string
	touched map[record.ID]bool
	all     bool
	// past is the history that was seen, by id of the change.
	past map[record.ID]string
	// agreed are the plans that were agreed before; agreements counts the new ones.
	agreed     map[record.ID]bool
	agreements int
}

func newMonkey(t *testing.T, seed uint64) *monkey {
	t.Helper()
	home := t.TempDir()
	for _, name := range []string{"HOME", "XDG_DATA_HOME", "XDG_CONFIG_HOME", "XDG_CACHE_HOME", "TMPDIR", "PATH"} {
		t.Setenv(name, home) // nothing is written elsewhere, and no other program started
	}
	t.Chdir(home)
	c := clock.New(apptest.Now())
	s, w := startBy(t, filepath.Join(home, "data"), true, c)
	m := &monkey{hands: hands{t, s, w, c}, dice: rand.New(rand.NewPCG(seed, 17)), past: map[record.ID]string{}}
	m.look()
	return m
}

// event does one thing.
func (m *monkey) event() {
	defer func() {
		if r := recover(); r != nil {
			m.t.Fatalf("event %d: panic: %v\n%s\n%s", m.n, r, strings.Join(m.did, "\n"), debug.Stack())
		}
	}()
	m.open(m.program().Place())
	switch k := m.dice.IntN(20); {
	case k < 2:
		m.goSomewhere()
	case k < 10:
		m.clickAny()
	case k < 14:
		m.typeAny()
	case k < 18:
		m.pressAny()
	case k < 19:
		m.note("time goes on")
		m.c.Advance(keep.Longest)
	default:
		m.note("a step back or on")
		if m.dice.IntN(2) == 0 {
			m.program().undo()
		} else {
			m.program().redo()
		}
	}
	if m.s.Program() == nil {
		m.t.Fatalf("event %d: the program is gone\n%s", m.n, strings.Join(m.did, "\n"))
	}
	m.open(m.program().Place())
	m.hidden()
}

// note remembers what was done.
func (m *monkey) note(format string, args ...any) {
	m.did = append(m.did, fmt.Sprintf("%d at %+v: ", m.n, m.program().Place())+fmt.Sprintf(format, args...))
	m.did = m.did[max(0, len(m.did)-60):]
}

// open takes down whose records a place may change.
func (m *monkey) open(at desk.Place) {
	switch at.Screen {
	case desk.Overview, desk.Tests, desk.Plan, desk.Handout, desk.Profile:
		m.touched[at.Athlete] = true
	case desk.Athletes, desk.Pantry, desk.Trips:
	default:
		m.all = true
	}
}

// goSomewhere opens a place.
func (m *monkey) goSomewhere() {
	screens := []desk.Screen{desk.Athletes, desk.TestDay, desk.Trips, desk.Pantry, desk.Practice, desk.Overview, desk.Tests, desk.Plan, desk.Handout, desk.Profile}
	to := desk.Place{Screen: screens[m.dice.IntN(len(screens))]}
	if slices.Contains(screens[5:], to.Screen) {
		list := m.athletes()
		to.Athlete = list[m.dice.IntN(len(list))].ID
	}
	m.note("go to %+v", to)
	m.program().Open(to)
}

// spots are the controls in sight that lead nowhere outside the program: not those
// that put other records in the place of all.
func (m *monkey) spots() []field.Spot {
	root := m.w.Content()
	if top := m.w.Canvas().Overlays().Top(); top != nil {
		root = top
	}
	return slices.DeleteFunc(field.Names(root), func(s field.Spot) bool {
		return s.Object == nil || s.Disabled || strings.Contains(s.Name, "restore")
	})
}

func (m *monkey) clickAny() {
	spots := m.spots()
	if len(spots) == 0 {
		return
	}
	if m.dice.IntN(3) == 0 { // what goes on is one control of many
		on := slices.DeleteFunc(slices.Clone(spots), func(s field.Spot) bool {
			return !slices.ContainsFunc([]string{".yes", ".agree", ".add", ".new", ".next", ".apply"}, func(end string) bool { return strings.HasSuffix(s.Name, end) })
		})
		if len(on) > 0 {
			spots = on
		}
	}
	s := spots[m.dice.IntN(len(spots))]
	at := fyne.NewPos(s.Size.Width*m.dice.Float32(), s.Size.Height*m.dice.Float32())
	m.note("click %s", s.Name)
	if o, ok := s.Object.(fyne.Tappable); ok {
		o.Tapped(&fyne.PointEvent{Position: at})
	}
}

// hostile are texts that no field expects.
func hostile() []string {
	return []string{
		"", " ", "0", "-0", "72,4", "55.2", "1e308", "-1e308", "NaN", "Inf", "999999999999999999999999", "0,00000001", "½", "٧٢", "１２", "12:61", "25:00", "31.2.2026", "29.2.2000",
		"'; DROP TABLE athletes; --", "<b>x</b>", "%s%d%!(NOVERB)", "=1+1", "\u202egnp.exe", "e\u0301\u0323\u0323\u0323", "👩‍👩‍👧", "\x00\x07\t", "\ufeff", "../../etc", strings.Repeat("long ", 60), strings.Repeat("9", 40),
	}
}

func (m *monkey) typeAny() {
	var fields []field.Spot
	for _, s := range m.spots() {
		if _, ok := s.Object.(fyne.Focusable); ok {
			fields = append(fields, s)
		}
	}
	if len(fields) > 0 && m.dice.IntN(4) > 0 {
		m.w.Canvas().Focus(fields[m.dice.IntN(len(fields))].Object.(fyne.Focusable)) //nolint:forcetypeassert // asked above
	}
	texts := hostile()
	text := texts[m.dice.IntN(len(texts))]
	if m.dice.IntN(2) == 0 {
		text = fmt.Sprint(m.dice.IntN(120))
	}
	m.note("type %q", text)
	for _, r := range text {
		f := m.w.Canvas().Focused()
		if f == nil {
			return
		}
		f.TypedRune(r)
	}
}

func (m *monkey) pressAny() {
	names := []fyne.KeyName{
		fyne.KeyUp, fyne.KeyDown, fyne.KeyLeft, fyne.KeyRight, fyne.KeyEscape, fyne.KeyBackspace, fyne.KeyDelete, fyne.KeyHome, fyne.KeyEnd,
		fyne.KeyReturn, fyne.KeyEnter, fyne.KeyTab, fyne.KeySpace, fyne.KeyPageUp, fyne.KeyPageDown, fyne.KeyF1, fyne.KeyF2, fyne.KeyF5,
	}
	name := names[m.dice.IntN(len(names))]
	m.note("press %s", name)
	event := &fyne.KeyEvent{Name: name}
	if f := m.w.Canvas().Focused(); f != nil {
		f.TypedKey(event)
		return
	}
	m.program().key(event)
}

// athletes lists who is there.
func (m *monkey) athletes() []record.Athlete {
	m.t.Helper()
	ctx, s := context.Background(), m.program().Desk().Store
	lines, err := s.Athletes(ctx)
	if err != nil || len(lines) == 0 {
		m.t.Fatalf("event %d: %d athletes, %v", m.n, len(lines), err)
	}
	var list []record.Athlete
	for _, line := range lines {
		a, err := s.LoadAthlete(ctx, line.ID)
		if err != nil {
			m.t.Fatal(err)
		}
		list = append(list, a)
	}
	return list
}

// look leaves the screen and looks at the records.
func (m *monkey) look() {
	m.t.Helper()
	for m.w.Canvas().Overlays().Top() != nil {
		m.w.Canvas().Overlays().Remove(m.w.Canvas().Overlays().Top())
	}
	m.program().Open(desk.Place{Screen: desk.Pantry})
	if err := m.program().keeper.Flush(context.Background()); err != nil {
		m.t.Fatalf("event %d: not saved: %v\n%s", m.n, err, strings.Join(m.did, "\n"))
	}
	known, agreed := map[record.ID]string{}, map[record.ID]bool{}
	for _, a := range m.athletes() {
		known[a.ID] = m.recordsOf(a, agreed)
		if was, there := m.known[a.ID]; there && was != known[a.ID] && !m.all && !m.touched[a.ID] {
			m.t.Fatalf("event %d: records of an athlete changed who was not open (open were %v)\n%s\nwas %s\nis  %s", m.n, m.touched, strings.Join(m.did, "\n"), was, known[a.ID])
		}
	}
	m.known, m.agreed, m.touched, m.all = known, agreed, map[record.ID]bool{}, false
}

// recordsOf is all that is kept of an athlete; it looks at the history and at the
// plans on the way.
func (m *monkey) recordsOf(a record.Athlete, agreed map[record.ID]bool) string {
	m.t.Helper()
	ctx, d := context.Background(), m.program().Desk()
	tests, err := d.Store.Tests(ctx, a.ID)
	if err != nil {
		m.t.Fatal(err)
	}
	plans, err := d.Store.Plans(ctx, a.ID)
	if err != nil {
		m.t.Fatal(err)
	}
	refs := []record.Ref{{Kind: record.KindAthlete, ID: a.ID}}
	for _, one := range tests {
		refs = append(refs, record.Ref{Kind: record.KindTest, ID: one.ID})
	}
	for _, p := range plans {
		refs = append(refs, record.Ref{Kind: record.KindPlan, ID: p.ID})
		if p.State == record.PlanAgreed {
			if agreed[p.ID] = true; m.agreed != nil && !m.agreed[p.ID] {
				m.agreements++
				m.held(a, p)
			}
		}
	}
	m.pastOf(refs)
	text, err := json.Marshal([]any{a, tests, plans})
	if err != nil {
		m.t.Fatal(err)
	}
	return string(text)
}

// pastOf sees that each change that was seen is as it was.
func (m *monkey) pastOf(refs []record.Ref) {
	m.t.Helper()
	for _, ref := range refs {
		list, err := m.program().Desk().Store.History(context.Background(), ref)
		if err != nil {
			m.t.Fatal(err)
		}
		for _, c := range list {
			text := fmt.Sprintf("%+v", c)
			if was, seen := m.past[c.ID]; seen && was != text {
				m.t.Fatalf("event %d: a change of %v was %s and is %s\n%s", m.n, ref, was, text, strings.Join(m.did, "\n"))
			}
			m.past[c.ID] = text
		}
	}
}

// held sees that no step of a plan that was just agreed is above its limit.
func (m *monkey) held(a record.Athlete, p record.Plan) {
	m.t.Helper()
	ctx, d := context.Background(), m.program().Desk()
	tests, err := d.AllFindings(ctx, a)
	var c consult.Case
	if err == nil {
		c, err = d.OpenPlan(ctx, p, a, tests)
	}
	if err != nil {
		m.t.Fatalf("event %d: an agreed plan does not open: %v", m.n, err)
	}
	for _, o := range p.Options {
		agreed := o.ID == p.Agreement.OptionID || slices.ContainsFunc(p.Steps, func(s record.Step) bool { return s.OptionID == o.ID })
		if agreed && c.Planner.Evaluate(plan.Expected, c.MixOf(o)).Guards.Stops() {
			m.t.Fatalf("event %d: a plan was agreed above its limit\n%s", m.n, strings.Join(m.did, "\n"))
		}
	}
}

// hidden sees that nothing in sight tells the mass of the athlete who is open, where
// it is hidden.
func (m *monkey) hidden() {
	m.t.Helper()
	id := m.program().Place().Athlete
	if id == "" || m.n%5 != 0 {
		return
	}
	ctx, d := context.Background(), m.program().Desk()
	a, err := d.Store.LoadAthlete(ctx, id)
	if err != nil || !care.MassHidden(a, d.Now()) {
		return // it may just be erased, or is not hidden
	}
	tests, err := d.Store.Tests(ctx, id)
	if err != nil {
		m.t.Fatal(err)
	}
	masses := []record.Number{a.UsualMass}
	for _, one := range tests {
		for _, w := range one.Weighings {
			masses = append(masses, w.Mass)
		}
	}
	said := strings.Join(apptest.Texts(m.w.Content()), "\n")
	for _, o := range m.w.Canvas().Overlays().List() {
		said += "\n" + strings.Join(apptest.Texts(o), "\n")
	}
	for _, x := range masses {
		if x.Value == nil || *x.Value < 20 || *x.Value > 200 {
			continue
		}
		for _, form := range []string{"%.1f", "%.2f"} {
			shown := regexp.MustCompile(`\b` + regexp.QuoteMeta(fmt.Sprintf(form, *x.Value)) + `\s*kg`)
			if found := shown.FindString(said); found != "" {
				m.t.Fatalf("event %d: a hidden mass is shown: %q\n%s", m.n, found, strings.Join(m.did, "\n"))
			}
		}
	}
}

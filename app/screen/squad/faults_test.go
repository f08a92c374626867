package squad

import (
	"context"
	"fmt"
	"slices"
	"strings"
	"testing"
	"time"

	"fyne.io/fyne/v2"

	"ebbwell/app/apptest"
	"ebbwell/app/kit/desk"
	"ebbwell/internal/handout/pdfread"
	"ebbwell/internal/quantity"
	"ebbwell/internal/record"
	"ebbwell/internal/squad"
	"ebbwell/internal/store"
)

// TestGroupOf40: forty athletes, two of them with one name.
func TestGroupOf40(t *testing.T) {
	var people []person
	for i := range 40 {
		people = append(people, person{fmt.Sprintf("Athlete %02d Quillonde", i+1), "2000-01-01", "", 60 + float64(i)/2, false})
	}
	people[7].name = people[30].name
	d, clock, id := squadDesk(t, people)
	h := openDay(t, d, clock, id, 1186, 700, false, 100)
	if len(h.v.rows) != 40 {
		t.Fatalf("%d rows", len(h.v.rows))
	}
	h.typed("/31\n")
	if h.v.at != 30 {
		t.Errorf("bib 31 leads to row %d", h.v.at+1)
	}
	h.typed("/" + strings.ToLower(people[30].name) + "\n")
	if h.v.at != 7 {
		t.Errorf("the other of the name is row %d", h.v.at+1)
	}
	h.at("before", "63.5\n")
	if m := squad.Masses(h.v.rows[7].Sheet.Test, record.Before); len(m) != 1 || *m[0].Mass.Value != 63.5 {
		t.Errorf("weighed %+v", m)
	}
	if m := squad.Masses(h.v.rows[30].Sheet.Test, record.Before); len(m) != 0 {
		t.Errorf("the other of the name was weighed: %+v", m)
	}
}

// TestTakenOff: an athlete taken off the list after weighing keeps the sheet, and can
// be put back.
func TestTakenOff(t *testing.T) {
	d, clock, id := squadDesk(t, crew()[:3])
	h := openDay(t, d, clock, id, 1186, 700, false, 100)
	h.at("before", "61.8\n")
	h.v.takeOff(0)
	if len(h.v.rows) != 2 {
		t.Fatalf("%d rows", len(h.v.rows))
	}
	list, err := d.Store.Tests(context.Background(), h.v.people.athletes[firstID(h)].ID)
	if err != nil {
		t.Fatal(err)
	}
	if len(list) != 1 {
		t.Errorf("%d tests", len(list))
	}
	unfinished, err := d.Store.Unfinished(context.Background())
	if err != nil || len(unfinished) != 3 {
		t.Errorf("%d unfinished sheets, %v", len(unfinished), err)
	}
	if !h.v.Undo() || len(h.v.rows) != 3 {
		t.Fatalf("%d rows after undo", len(h.v.rows))
	}
	if one := h.kept("Tamsin Orrelby"); len(one.Weighings) != 1 || one.Weighings[0].Mass.Or(0) != 61.8 {
		t.Errorf("the sheet has %+v", one.Weighings)
	}
}

// TestUndoStaysAtTheScale: a step back, over rows and over what all share, leaves the
// same athlete at the scale and takes back one visit wherever it lies.
func TestUndoStaysAtTheScale(t *testing.T) {
	d, clock, id := squadDesk(t, crew()[:3])
	h := openDay(t, d, clock, id, 1186, 700, false, 100)
	h.at("before", "61.8\n")
	h.v.takeOff(0)
	h.v.openRowAt(1, "")
	if h.who() != "Runa Hollowick" {
		t.Fatal(h.who())
	}
	h.at("before", "83.2")
	if !h.v.Undo() || h.who() != "Runa Hollowick" || len(h.kept("Runa Hollowick").Weighings) != 0 {
		t.Errorf("at %s with %+v", h.who(), h.kept("Runa Hollowick").Weighings)
	}
	if !h.v.Undo() || len(h.v.rows) != 3 || h.who() != "Runa Hollowick" || h.v.at != 2 {
		t.Errorf("%d rows, at %s", len(h.v.rows), h.who())
	}
	if h.focus() != "before" {
		t.Errorf("the keyboard is at %q", h.focus())
	}
	h.v.doc.ChangeSession("", "end", func(g *record.GroupSession) { g.Session.End = "18:55" })
	if one := h.kept("Neve Carrowmere"); one.Session.End != "18:55" {
		t.Errorf("ends at %s", one.Session.End)
	}
	if !h.v.Undo() || h.kept("Neve Carrowmere").Session.End != "18:40" || h.kept("Tamsin Orrelby").Session.End != "18:40" {
		t.Errorf("a change for all is not taken back in one step")
	}
	changes, err := d.Store.History(context.Background(), record.Ref{Kind: record.KindTest, ID: h.kept("Tamsin Orrelby").ID})
	if err != nil || !slices.ContainsFunc(changes, func(c record.Change) bool { return c.Field == "session.end" }) {
		t.Errorf("the history of a sheet does not tell of a change for all: %v", err)
	}
}

// firstID is the test of the first row.
func firstID(h *hands) record.ID { return h.v.rows[0].Sheet.Test.ID }

// TestSameRecord: a row is the sheet its own screen opens; what was changed there
// stands here, and one that was closed there is read only.
func TestSameRecord(t *testing.T) {
	d, clock, id := squadDesk(t, crew()[:2])
	h := openDay(t, d, clock, id, 1186, 700, false, 100)
	h.at("before", "61.8\n")
	one := h.kept("Tamsin Orrelby")
	h.v.Leave()
	one.Loss.Urine = record.Num(120, quantity.Gram)
	one.Session.Start = "17:20"
	if _, err := d.Store.SaveTest(context.Background(), one, store.Edit{}); err != nil {
		t.Fatal(err)
	}
	h = openDay(t, d, clock, id, 1186, 700, false, 100)
	r := h.v.rows[0]
	if r.Sheet.Test.Loss.Urine.Or(0) != 120 || !squad.OwnTimes(h.v.doc.Now().session, r.Sheet.Test) {
		t.Errorf("the row has %+v", r.Sheet.Test.Session)
	}
	if text := h.v.underName(r); !strings.Contains(text, "17:20") {
		t.Errorf("own times are not marked: %q", text)
	}
	h.v.doc.ChangeSession("", "end", func(g *record.GroupSession) { g.Session.End, g.Session.Start = "18:50", "17:00" })
	if kept := h.kept("Tamsin Orrelby"); kept.Session.Start != "17:20" || kept.Session.End != "18:50" {
		t.Errorf("after a change for all: %+v", kept.Session)
	}
	if _, err := d.Store.CloseTest(context.Background(), h.kept("Neve Carrowmere"), store.Freezing{}, store.Edit{}); err != nil {
		t.Fatal(err)
	}
	h = openDay(t, d, clock, id, 1186, 700, false, 100)
	h.v.openRowAt(1, "")
	if in := h.v.open.find("before"); !in.control.Disabled() {
		t.Error("a closed sheet can be typed into")
	}
	h.v.doc.ChangeSession("", "end", func(g *record.GroupSession) { g.Session.End = "18:55" })
	if kept := h.kept("Neve Carrowmere"); kept.Session.End != "18:50" {
		t.Errorf("a closed sheet changed: %+v", kept.Session)
	}
}

// TestPatchesRunOn: times are kept and never counted, so that a patch runs on while
// the program is closed.
func TestPatchesRunOn(t *testing.T) {
	d, clock, id := squadDesk(t, crew()[:1])
	h := openDay(t, d, clock, id, 1186, 700, false, 100)
	h.at("before", "61.8\n")
	h.until(17, 25)
	h.typed("*")
	h.v.Leave()
	clock.at = at(17, 56)
	h = openDay(t, d, clock, id, 1186, 700, false, 100)
	first, second, due := h.v.patchWords(h.v.rows[0])
	if first != d.Words.Say("squad.patch.worn", 31) || second != d.Words.Say("squad.patch.now") || !due {
		t.Errorf("%q, %q, %v", first, second, due)
	}
	if text := h.v.dueWords(); !strings.Contains(text, "Tamsin Orrelby (on 31\u00a0min)") {
		t.Errorf("nobody is reminded: %q", text)
	}
	h.until(18, 0)
	h.typed("*")
	if text := h.v.dueWords(); text != "" {
		t.Errorf("still reminded: %q", text)
	}
	if p := h.v.rows[0].Patch; !p.Off || p.Minutes != 35 {
		t.Errorf("%+v", p)
	}
}

// TestMidnight: a session over midnight is ended by one key on the next day.
func TestMidnight(t *testing.T) {
	d, clock, id := squadDesk(t, crew()[:1])
	clock.at = time.Date(2026, 5, 18, 23, 0, 0, 0, time.UTC)
	h := openDay(t, d, clock, id, 1186, 700, false, 100)
	h.v.doc.ChangeSession("", "times", func(g *record.GroupSession) { g.Session.Start, g.Session.End = "", "" })
	h.v.startOrEnd()
	clock.at = time.Date(2026, 5, 19, 0, 35, 0, 0, time.UTC)
	h.v.Tick()
	h.v.startOrEnd()
	one := h.kept("Tamsin Orrelby")
	if m, ok := one.Session.Minutes(); !ok || m != 95 || !one.Session.EndsNextDay {
		t.Errorf("%+v: %v min", one.Session, m)
	}
}

// TestHiddenMass: nothing on the screen tells the mass of an athlete whose mass is
// hidden once it was typed.
func TestHiddenMass(t *testing.T) {
	d, clock, id := squadDesk(t, crew()[1:2])
	h := openDay(t, d, clock, id, 1186, 700, false, 100)
	h.at("before", "55.2\n")
	h.until(18, 47)
	h.v.openRowAt(0, "after")
	h.at("after", "55.9\n")
	apptest.Leave(h.w)
	h.v.Tick()
	for _, text := range apptest.Texts(h.v.ui.list) {
		if strings.Contains(text, "55") || strings.Contains(text, "0.7") && strings.Contains(text, "kg") {
			t.Errorf("the screen tells %q", text)
		}
	}
	if !h.v.rows[0].Flagged {
		t.Error("a gain of a hidden mass is no flag")
	}
}

// TestAddAthlete: an athlete who comes late gets a sheet with what holds for all, one
// whose profile is not settled does not.
func TestAddAthlete(t *testing.T) {
	d, clock, id := squadDesk(t, crew()[:2])
	late := apptest.Save(t, d, record.Athlete{Meta: record.Meta{ID: record.NewID()}, Name: "Late Comer", Born: "2000-01-01"})
	young := apptest.Save(t, d, record.Athlete{Meta: record.Meta{ID: record.NewID()}, Name: "Young Comer", Born: "2012-01-01"})
	h := openDay(t, d, clock, id, 1186, 700, false, 100)
	if added, _ := h.v.addAthlete(young.ID); added {
		t.Error("a minor was added before guardian and assent")
	}
	if added, words := h.v.addAthlete(late.ID); !added {
		t.Fatal(words)
	}
	if one := h.kept("Late Comer"); one.Session.Start != "17:05" || len(one.Bottles) != 2 {
		t.Errorf("the sheet has %+v", one.Session)
	}
	g, err := d.Store.LoadGroupSession(context.Background(), id)
	if err != nil || len(g.Members) != 3 || g.Members[2].Order != 3 {
		t.Errorf("members %+v, %v", g.Members, err)
	}
}

// TestGroupPage: the table opens a consult, and the keys to the next follow its order.
func TestGroupPage(t *testing.T) {
	d, clock, id := squadDesk(t, crew()[:3])
	var went []desk.Place
	d.Go = func(p desk.Place) { went = append(went, p) }
	h := openDay(t, d, clock, id, 1186, 700, false, 100)
	h.v.showGroup()
	h.v.group.open(1)
	if len(went) != 1 || went[0].Screen != desk.Overview || len(d.Round) != 3 || went[0].Athlete != d.Round[1] {
		t.Errorf("went %+v, round %v", went, d.Round)
	}
	if page := h.v.coachPage(); len(page.Lines) != 0 {
		t.Errorf("the coach is given %+v", page.Lines)
	}
	h.v.showRows()
	if h.v.group != nil || h.v.open == nil {
		t.Error("the rows do not come back")
	}
}

// TestPlansForAll begins a draft for each athlete from the own test, once, and none
// from a test with a red flag of which nobody was told.
func TestPlansForAll(t *testing.T) {
	d, clock, id := squadDesk(t, crew()[:3])
	h := openDay(t, d, clock, id, 1186, 700, false, 100)
	for range 3 {
		one := plan()[h.who()]
		h.at("before", one.before+"\n")
		h.at("bottle.1.before", one.filled[0]+"\n")
		h.at("bottle.2.before", one.filled[1]+"\n")
	}
	h.until(18, 47)
	for i, name := range []string{"Tamsin Orrelby", "Neve Carrowmere", "Runa Hollowick"} {
		one := plan()[name]
		h.v.openRowAt(i, "bottle.1.after")
		h.typed(one.left[0] + "\n" + one.more[0] + "\n" + one.left[1] + "\n" + one.more[1] + "\n\n" + one.after + "\n")
		h.v.open.focusFirst("urine")
		h.typed("0\n")
	}
	h.v.beginPlans(h.v.planReady())
	h.v.beginPlans(h.v.planReady())
	for name, want := range map[string]int{"Tamsin Orrelby": 1, "Neve Carrowmere": 1, "Runa Hollowick": 0} {
		for _, r := range h.v.rows {
			if r.Sheet.Athlete.Name != name {
				continue
			}
			plans, err := d.Store.Plans(context.Background(), r.Sheet.Athlete.ID)
			if err != nil || len(plans) != want {
				t.Errorf("%s has %d plans, want %d: %v", name, len(plans), want, err)
			}
			for _, p := range plans {
				if p.State != record.PlanDraft || p.Basis.TestID != r.Sheet.Test.ID {
					t.Errorf("%s: %s from %s", name, p.State, p.Basis.TestID)
				}
			}
		}
	}
}

// TestCoachPage: the page lists those who consented to sharing, and of one whose mass
// is hidden litres only; what is not known is a dash.
func TestCoachPage(t *testing.T) {
	people := crew()[:3]
	d, clock, id := squadDesk(t, people)
	h := openDay(t, d, clock, id, 1186, 700, false, 100)
	for range 3 {
		one := plan()[h.who()]
		h.at("before", one.before+"\n")
		h.at("bottle.1.before", one.filled[0]+"\n")
		h.at("bottle.2.before", one.filled[1]+"\n")
	}
	h.until(18, 47)
	for i, p := range people {
		h.v.openRowAt(i, "after")
		h.typed(plan()[p.name].after + "\n")
	}
	for _, name := range []string{"Neve Carrowmere", "Runa Hollowick"} {
		a := apptest.AthleteNamed(t, d, name)
		a.Consents = append(a.Consents, record.Consent{Purpose: record.ConsentCoach, Given: "2026-01-05", GivenBy: "a guardian"})
		apptest.Save(t, d, a)
	}
	h.v.Leave()
	h = openDay(t, d, clock, id, 1186, 700, false, 100)
	page, err := h.v.coach(false)
	if err != nil {
		t.Fatal(err)
	}
	pdf, err := page.PDF(d.Now())
	if err != nil {
		t.Fatal(err)
	}
	texts, err := pdfread.Texts(pdf)
	if err != nil {
		t.Fatal(err)
	}
	all := strings.Join(texts, " ")
	for text, want := range map[string]bool{"Neve Carrowmere": true, "Runa Hollowick": true, "Tamsin": false, "1 athlete": true, "kg": false, "55": false, "–": true} {
		if strings.Contains(all, text) != want {
			t.Errorf("%q on the coach's page is %v:\n%s", text, !want, all)
		}
	}
	blank, err := h.v.blank(false)
	if err != nil {
		t.Fatal(err)
	}
	sheets, err := blank.PDF(d.Now())
	if err != nil {
		t.Fatal(err)
	}
	if texts, err = pdfread.Texts(sheets); err != nil || !strings.Contains(strings.Join(texts, " "), "Tamsin Orrelby") {
		t.Errorf("the blank sheets lack a name: %v", err)
	}
}

// BenchmarkKey is a key typed in a group of forty.
func BenchmarkKey(b *testing.B) {
	var people []person
	for i := range 40 {
		people = append(people, person{fmt.Sprintf("Athlete %02d Quillonde", i+1), "2000-01-01", "", 60 + float64(i)/2, false})
	}
	d, clock, id := squadDesk(b, people)
	h := openDay(b, d, clock, id, 1186, 700, false, 100)
	for b.Loop() {
		h.key('6')
		h.w.Canvas().Focused().TypedKey(&fyne.KeyEvent{Name: fyne.KeyBackspace})
	}
}

// TestDuplicate: + goes to a second weighing, and the mean is said with the
// difference.
func TestDuplicate(t *testing.T) {
	d, clock, id := squadDesk(t, crew()[:1])
	h := openDay(t, d, clock, id, 1186, 700, false, 100)
	h.at("before", "61.8\n")
	h.at("bottle.1.before", "+")
	h.at("second", "61.9\n")
	one := h.kept("Tamsin Orrelby")
	if m := squad.Masses(one, record.Before); len(m) != 2 || m[1].Mass.Or(0) != 61.9 {
		t.Fatalf("weighed %+v", m)
	}
	if text := h.v.open.means(h.v.rows[0], record.Before); !strings.Contains(text, "61.85") || !strings.Contains(text, "0.10") {
		t.Errorf("said %q", text)
	}
	h.v.doc.ChangeSession("", "check", func(g *record.GroupSession) {
		g.Check.Known, g.Check.Read = record.Num(20, quantity.Kilogram), record.Num(20.3, quantity.Kilogram)
	})
	if text := h.v.sharedWords(); !strings.Contains(text, "+0.30") {
		t.Errorf("the drift of the scale is not said: %q", text)
	}
}

package store

import (
	"bufio"
	"bytes"
	"context"
	"encoding/json"
	"errors"
	"fmt"
	"os"
	"path/filepath"
	"reflect"
	"testing"
	"time"

	"ebbwell/internal/bundle"
	"ebbwell/internal/quantity"
	"ebbwell/internal/record"
)

// someone fills a practice with one athlete, a closed sheet, a product and an agreed
// plan on it.
func someone(t testing.TB, s *Store) record.Athlete {
	t.Helper()
	ctx := context.Background()
	kg, l := func(x float64) record.Number { return record.Num(x, quantity.Kilogram) }, record.Num(0.7, quantity.LitrePerHour)
	product := got(s.SaveProduct(ctx, record.Product{Name: "Cordial", Form: "drink"}, Edit{}))(t)
	got(s.SaveProduct(ctx, record.Product{Name: "Broth", Form: "drink"}, Edit{}))(t)
	group := got(s.SaveGroup(ctx, record.Group{Name: "First squad"}, Edit{}))(t)
	a := record.Athlete{Meta: record.Meta{ID: record.NewID()}, Name: "Wren Calloway", Born: "1999-02-03", UsualMass: kg(64), UsualDrinking: l}
	a.Flags = []record.Flag{{Kind: record.FlagLithium, Note: "since 2024"}}
	a.Consents = []record.Consent{{Purpose: record.ConsentTest, Given: "2026-01-01"}}
	a.Memberships = []record.Membership{{GroupID: group.ID}}
	a = got(s.SaveAthlete(ctx, a, Edit{}))(t)
	one := record.Test{Meta: record.Meta{ID: record.NewID()}, AthleteID: a.ID, State: record.TestOpen}
	one.Session.Date = "2026-05-01"
	one.Weighings = []record.Weighing{{Moment: record.Before, Mass: kg(64.2)}, {Moment: record.After, Order: 1, Mass: kg(63.1)}}
	one.Bottles = []record.Bottle{{ProductID: product.ID, Before: record.Num(700, quantity.Gram), Refills: []record.Refill{{Added: record.Num(300, quantity.Gram)}}}}
	one = got(s.SaveTest(ctx, one, Edit{}))(t)
	must(t, s.SetReason(ctx, record.Ref{Kind: record.KindTest, ID: one.ID}, "air.temperature", "read twice", Edit{}))
	got(s.CloseTest(ctx, one, Freezing{Inputs: []byte(`{"a":1}`), Results: []byte(`{"b":2}`)}, Edit{}))(t)
	plan := record.Plan{AthleteID: a.ID, State: record.PlanDraft, Name: "Sunday run", Basis: record.PlanBasis{Kind: record.BasisTest, TestID: one.ID}}
	plan.Options = []record.Option{{Meta: record.Meta{ID: record.NewID()}, Kind: record.OptionAim, Items: []record.Item{{ProductID: product.ID, Volume: record.Num(600, quantity.Millilitre)}}}}
	plan.Steps = []record.Step{{OptionID: plan.Options[0].ID, State: record.StepNow}}
	plan = got(s.AgreePlan(ctx, plan, Freezing{Inputs: []byte("{}"), Results: []byte("{}"), Shown: []byte("{}")}, Edit{}))(t)
	got(s.SaveReview(ctx, record.Review{PlanID: plan.ID, StepID: plan.Steps[0].ID, Date: "2026-05-08", Note: "easy"}, Edit{}))(t)
	return got(s.LoadAthlete(ctx, a.ID))(t)
}

// sent packs one athlete as a file and reads it again.
func sent(t testing.TB, s *Store, id record.ID) bundle.Bundle {
	t.Helper()
	var out bytes.Buffer
	must(t, bundle.Write(&out, got(s.Pack(context.Background(), []record.ID{id}, "Saltmarsh (invented)"))(t), "1"))
	return got(bundle.Read(&out))(t)
}

// looked is a bundle as a person has looked at it.
func looked(t testing.TB, s *Store, b bundle.Bundle) Incomer {
	t.Helper()
	at := time.Date(2026, 5, 14, 12, 0, 0, 0, time.UTC)
	here := got(s.HereOf(context.Background(), b))(t)
	return Incomer{Bundle: b, Seen: bundle.Merge(here, b, at), At: at, File: "wren.ebb"}
}

// rowsBut are all rows but for those of some tables.
func rowsBut(t testing.TB, s *Store, tables ...string) tableRows {
	t.Helper()
	rows := allRows(t, s.files.reader)
	for _, table := range tables {
		delete(rows, table)
	}
	return rows
}

// TestBundleThereAndBack: another practice gets all of an athlete, row by row as here,
// and what it sends back unchanged writes nothing.
func TestBundleThereAndBack(t *testing.T) {
	c := newClock()
	here, there := open(t, t.TempDir(), c), open(t, t.TempDir(), c)
	a := someone(t, here)
	in := looked(t, there, sent(t, here, a.ID))
	if len(in.Seen.Conflicts)+len(in.Seen.Decisions)+len(in.Seen.Held) > 0 {
		t.Fatalf("a first bundle asks %+v", in.Seen)
	}
	seen := 0
	in.Progress = func(done, of int) {
		if seen++; done != seen || of != 4 {
			t.Errorf("told %d of %d", done, of)
		}
	}
	m := got(there.Merge(context.Background(), in))(t)
	if m.Athletes != 1 || m.Tests != 1 || m.Plans != 1 || m.Sender != "Kit" || m.Practice != "Saltmarsh (invented)" || seen != 4 {
		t.Errorf("%+v, told %d times", m, seen)
	}
	checkWhole(t, there)
	before, after := rowsBut(t, here), rowsBut(t, there)
	for _, table := range []string{"athletes", "flags", "consents", "tests", "weighings", "bottles", "refills", "plans", "options", "items", "steps", "reviews", "frozen", "raw_texts"} {
		if len(before[table]) == 0 || !reflect.DeepEqual(before[table], after[table]) {
			t.Errorf("%s: here %v, there %v", table, before[table], after[table])
		}
	}
	if len(after["products"]) != 1 || len(after["groups"])+len(after["memberships"]) > 0 {
		t.Errorf("there are %d products, %d groups, %d memberships", len(after["products"]), len(after["groups"]), len(after["memberships"]))
	}
	for _, kind := range []record.Ref{{Kind: record.KindAthlete, ID: a.ID}} {
		ours, theirs := got(here.History(context.Background(), kind))(t), got(there.History(context.Background(), kind))(t)
		if len(theirs) == 0 || !reflect.DeepEqual(ours, theirs) {
			t.Errorf("the history is %+v and there %+v", ours, theirs)
		}
	}
	if back := looked(t, here, sent(t, there, a.ID)); !back.Seen.Nothing() || len(back.Seen.Conflicts) > 0 {
		t.Errorf("back it brings %+v", back.Seen)
	}
	must(t, there.Close())
}

// TestMergeAndItsUndo: edits of both sides come together, questions wait, one undo
// takes all of it back.
func TestMergeAndItsUndo(t *testing.T) {
	c, ctx := newClock(), context.Background()
	here, there := open(t, t.TempDir(), c), open(t, t.TempDir(), c)
	a := someone(t, here)
	got(there.Merge(ctx, looked(t, there, sent(t, here, a.ID))))(t)
	theirs := got(there.LoadAthlete(ctx, a.ID))(t)
	theirs.Position, theirs.Note, theirs.UsualDrinking = "wing", "from there", record.Num(0.9, quantity.LitrePerHour)
	theirs.Flags = nil
	got(there.SaveAthlete(ctx, theirs, Edit{}))(t)
	fresh := got(there.SaveTest(ctx, record.Test{AthleteID: a.ID, State: record.TestOpen, Note: "new"}, Edit{}))(t)
	ours := got(here.LoadAthlete(ctx, a.ID))(t)
	ours.Note = "from here"
	got(here.SaveAthlete(ctx, ours, Edit{}))(t)
	before := rowsBut(t, here, "merges", "athletes")
	kept := got(here.LoadAthlete(ctx, a.ID))(t)

	in := looked(t, here, sent(t, there, a.ID))
	if len(in.Seen.Conflicts) != 1 || in.Seen.Conflicts[0].Path != "note" || len(in.Seen.Decisions) != 2 {
		t.Fatalf("%+v, %+v", in.Seen.Conflicts, in.Seen.Decisions)
	}
	m := got(here.Merge(ctx, in))(t)
	now := got(here.LoadAthlete(ctx, a.ID))(t)
	if now.Position != "wing" || now.Note != "from here" || now.UsualDrinking.Or(0) != 0.7 || len(now.Flags) != 1 || len(now.Memberships) != 1 {
		t.Errorf("%+v", now)
	}
	if back := looked(t, here, sent(t, there, a.ID)); !back.Seen.Nothing() {
		t.Errorf("the same again brings %+v", back.Seen)
	}
	got(here.LoadTest(ctx, fresh.ID))(t)
	if n := len(got(here.Questions(ctx, a.ID))(t)); n != 2 {
		t.Errorf("%d questions", n)
	}
	must(t, here.UndoMerge(ctx, m.ID))
	if after := rowsBut(t, here, "merges", "athletes"); !reflect.DeepEqual(after, before) {
		t.Errorf("after the undo %v, before %v", after, before)
	}
	was := got(here.LoadAthlete(ctx, a.ID))(t)
	was.Meta, kept.Meta = record.Meta{}, record.Meta{}
	if !reflect.DeepEqual(was, kept) {
		t.Errorf("the athlete is %+v, was %+v", was, kept)
	}
	if CodeOf(here.UndoMerge(ctx, m.ID)) != CodeInvalid {
		t.Error("undone twice")
	}
	checkWhole(t, here)
}

// TestQuestionsAreDecided: the other value is taken, or what stands stays; each once.
func TestQuestionsAreDecided(t *testing.T) {
	c, ctx := newClock(), context.Background()
	here, there := open(t, t.TempDir(), c), open(t, t.TempDir(), c)
	a := someone(t, here)
	got(there.Merge(ctx, looked(t, there, sent(t, here, a.ID))))(t)
	theirs := got(there.LoadAthlete(ctx, a.ID))(t)
	theirs.UsualDrinking, theirs.Flags = record.Num(0.9, quantity.LitrePerHour), nil
	got(there.SaveAthlete(ctx, theirs, Edit{}))(t)
	m := got(here.Merge(ctx, looked(t, here, sent(t, there, a.ID))))(t)
	for _, q := range got(here.Questions(ctx, ""))(t) {
		must(t, here.Decide(ctx, q.ID, q.Act == string(bundle.ActSet)))
		if CodeOf(here.Decide(ctx, q.ID, true)) != CodeInvalid {
			t.Error("decided twice")
		}
	}
	now := got(here.LoadAthlete(ctx, a.ID))(t)
	if now.UsualDrinking.Or(0) != 0.9 || len(now.Flags) != 1 || len(got(here.Questions(ctx, ""))(t)) != 0 {
		t.Errorf("%+v", now)
	}
	if CodeOf(here.UndoMerge(ctx, m.ID)) != CodeConflict {
		t.Error("a merge is undone whose athlete was changed since")
	}
	got(here.EraseAthlete(ctx, a.ID, false))(t)
	if rows := allRows(t, here.files.reader)["questions"]; len(rows) > 0 {
		t.Errorf("of one who was erased there are questions: %v", rows)
	}
	if in := looked(t, here, sent(t, there, a.ID)); !in.Seen.Nothing() || len(in.Seen.Left) == 0 {
		t.Errorf("who was erased comes back: %+v", in.Seen)
	}
}

// TestMergeIsOfWhatWasSeen: where the records changed since they were looked at nothing
// is written; where it is stopped neither.
func TestMergeIsOfWhatWasSeen(t *testing.T) {
	c, ctx := newClock(), context.Background()
	here, there := open(t, t.TempDir(), c), open(t, t.TempDir(), c)
	a := someone(t, here)
	got(there.Merge(ctx, looked(t, there, sent(t, here, a.ID))))(t)
	theirs := got(there.LoadAthlete(ctx, a.ID))(t)
	theirs.Note = "from there"
	got(there.SaveAthlete(ctx, theirs, Edit{}))(t)
	in := looked(t, here, sent(t, there, a.ID))
	ours := got(here.LoadAthlete(ctx, a.ID))(t)
	ours.Position = "wing"
	got(here.SaveAthlete(ctx, ours, Edit{}))(t)
	before := rowsBut(t, here)
	if _, err := here.Merge(ctx, in); CodeOf(err) != CodeConflict {
		t.Errorf("%v", err)
	}
	in = looked(t, here, sent(t, there, a.ID))
	stopped, stop := context.WithCancel(ctx)
	in.Progress = func(int, int) { stop() }
	if _, err := here.Merge(stopped, in); !errors.Is(err, context.Canceled) {
		t.Errorf("stopped: %v", err)
	}
	if !reflect.DeepEqual(before, rowsBut(t, here)) {
		t.Error("something was written")
	}
}

// childMerge takes the bundle in the folder, and says so at each record; it goes on
// when it is told to.
func childMerge(dir string) error {
	data, err := os.ReadFile(filepath.Join(dir, "bundle.json"))
	if err != nil {
		return err
	}
	var b bundle.Bundle
	if err := json.Unmarshal(data, &b); err != nil {
		return err
	}
	s, err := Open(dir, Options{By: "Kit"})
	if err != nil {
		return err
	}
	here, err := s.HereOf(context.Background(), b)
	if err != nil {
		return err
	}
	next, at := bufio.NewReader(os.Stdin), time.Date(2026, 5, 14, 12, 0, 0, 0, time.UTC)
	in := Incomer{Bundle: b, Seen: bundle.Merge(here, b, at), At: at, Progress: func(done, _ int) {
		fmt.Println("record", done)
		_, _ = next.ReadString('\n')
	}}
	_, err = s.Merge(context.Background(), in)
	return errors.Join(err, s.Close())
}

// TestMergeKilled: the program is killed at each record of a merge; the file is as it
// was.
func TestMergeKilled(t *testing.T) {
	s := open(t, t.TempDir(), newClock())
	a := someone(t, s)
	data := got(json.Marshal(sent(t, s, a.ID)))(t)
	for _, at := range []int{1, 2, 4} {
		dir := t.TempDir()
		must(t, openAndClose(Open(dir, Options{Clock: func() time.Time { return time.Date(2026, 5, 14, 10, 0, 0, 0, time.UTC) }})))
		must(t, os.WriteFile(filepath.Join(dir, "bundle.json"), data, 0o600))
		killAt(t, "merge", dir, fmt.Sprintf("record %d", at))
		again := open(t, dir, newClock())
		checkWhole(t, again)
		if n := len(got(again.Athletes(context.Background()))(t)); n != 0 || len(allRows(t, again.files.reader)["changes"]) != 0 {
			t.Errorf("killed at record %d: %d athletes are kept", at, n)
		}
		must(t, again.Close())
	}
}

// TestPagesCome: the pages kept of an athlete come with them, once; undoing takes them
// back, and what is no page is refused.
func TestPagesCome(t *testing.T) {
	there, here, ctx := open(t, t.TempDir(), newClock()), open(t, t.TempDir(), newClock()), context.Background()
	a := got(there.SaveAthlete(ctx, record.Athlete{Name: "Wren Calloway", Born: "1999-01-01"}, Edit{}))(t)
	page := got(there.SavePrint(ctx, record.Print{AthleteID: a.ID, Kind: record.KindAthlete, Record: a.ID, Page: "athlete-page", Language: "en", Bytes: []byte("%PDF-1.7 one")}))(t)
	in := looked(t, here, sent(t, there, a.ID))
	m := got(here.Merge(ctx, in))(t)
	if kept := got(here.LoadPrint(ctx, page.ID))(t); string(kept.Bytes) != "%PDF-1.7 one" || kept.AthleteID != a.ID || !kept.At.Equal(page.At) {
		t.Errorf("the page came as %+v", kept)
	}
	if again := looked(t, here, sent(t, there, a.ID)); !again.Seen.Nothing() {
		t.Errorf("the same file brings something again: %+v", again.Seen)
	}
	must(t, here.UndoMerge(ctx, m.ID))
	if list := got(here.PrintsOf(ctx, a.ID))(t); len(list) != 0 {
		t.Errorf("undone, and %d pages stay", len(list))
	}
	got(there.SavePrint(ctx, record.Print{AthleteID: a.ID, Kind: record.KindAthlete, Record: a.ID, Page: "athlete-page", Bytes: []byte("#!/bin/sh")}))(t)
	var out bytes.Buffer
	must(t, bundle.Write(&out, got(there.Pack(ctx, []record.ID{a.ID}, "x"))(t), "1"))
	if _, err := bundle.Read(&out); !errors.Is(err, bundle.ErrDamaged) {
		t.Errorf("what is no page is taken: %v", err)
	}
}

package store

import (
	"bytes"
	"context"
	"fmt"
	"os"
	"path/filepath"
	"reflect"
	"strings"
	"testing"
	"time"

	"ebbwell/internal/record"
)

// TestDeleteAndUndelete: a deleted record is nowhere, and comes back whole.
func TestDeleteAndUndelete(t *testing.T) {
	s, ctx := open(t, t.TempDir(), newClock()), context.Background()
	w := makeWorld(t, s)
	tests := []struct {
		ref  record.Ref
		load func() (any, error)
		list func() (int, error)
	}{
		{record.Ref{Kind: record.KindPlan, ID: w.plan.ID}, func() (any, error) { return s.LoadPlan(ctx, w.plan.ID) },
			func() (int, error) { l, err := s.Plans(ctx, w.athlete.ID); return len(l), err }},
		{record.Ref{Kind: record.KindTest, ID: w.test.ID}, func() (any, error) { return s.LoadTest(ctx, w.test.ID) },
			func() (int, error) { l, err := s.Tests(ctx, w.athlete.ID); return len(l), err }},
		{record.Ref{Kind: record.KindTrip, ID: w.trip.ID}, func() (any, error) { return s.LoadTrip(ctx, w.trip.ID) },
			func() (int, error) { l, err := s.TripsOf(ctx, w.athlete.ID); return len(l), err }},
		{record.Ref{Kind: record.KindProduct, ID: w.product.ID}, func() (any, error) { return s.LoadProduct(ctx, w.product.ID) },
			func() (int, error) { l, err := s.Products(ctx); return len(l), err }},
		{record.Ref{Kind: record.KindGroup, ID: w.group.ID}, func() (any, error) { return s.LoadGroup(ctx, w.group.ID) },
			func() (int, error) { l, err := s.Groups(ctx); return len(l), err }},
		{record.Ref{Kind: record.KindAthlete, ID: w.athlete.ID}, func() (any, error) { return s.LoadAthlete(ctx, w.athlete.ID) },
			func() (int, error) { l, err := s.Athletes(ctx); return len(l), err }},
	}
	for _, tt := range tests {
		t.Run(string(tt.ref.Kind), func(t *testing.T) {
			before, n := got(tt.load())(t), got(tt.list())(t)
			must(t, s.Delete(ctx, tt.ref, Edit{Why: "made twice"}))
			must(t, s.Delete(ctx, tt.ref, Edit{}))
			_, err := tt.load()
			wantCode(t, err, CodeDeleted)
			if now := got(tt.list())(t); now != n-1 {
				t.Errorf("the list had %d records and has %d", n, now)
			}
			list := got(s.Deleted(ctx))(t)
			if len(list) != 1 || list[0].Ref != tt.ref || list[0].By != "Kit" || list[0].At.IsZero() || list[0].Name == "" && list[0].Date == "" {
				t.Errorf("deleted records %+v", list)
			}
			must(t, s.Undelete(ctx, tt.ref, Edit{}))
			must(t, s.Undelete(ctx, tt.ref, Edit{}))
			after := got(tt.load())(t)
			meta := func(x any) record.Meta { return reflect.ValueOf(x).FieldByName("Meta").Interface().(record.Meta) }
			if !meta(after).ChangedAt.After(meta(before).ChangedAt) {
				t.Errorf("ChangedAt did not move")
			}
			same := reflect.New(reflect.TypeOf(after)).Elem()
			same.Set(reflect.ValueOf(after))
			same.FieldByName("Meta").Set(reflect.ValueOf(meta(before)))
			if !reflect.DeepEqual(same.Interface(), before) {
				t.Errorf("before %+v\nafter  %+v", before, after)
			}
			lines := told(t, s, tt.ref)
			if end := lines[len(lines)-2:]; end[0] != ": present >  (made twice)" || end[1] != ":  > present" {
				t.Errorf("history ends with %q", end)
			}
		})
	}
}

// TestSaveDeleted: a screen that still shows a deleted record cannot save it.
func TestSaveDeleted(t *testing.T) {
	s, ctx := open(t, t.TempDir(), newClock()), context.Background()
	one, ref := sheet(t, s)
	must(t, s.Delete(ctx, ref, Edit{}))
	one.Note = "late"
	_, err := s.SaveTest(ctx, one, Edit{})
	wantCode(t, err, CodeDeleted)
	wantCode(t, s.SetRaw(ctx, ref, "note", "x", Edit{}), CodeDeleted)
	wantCode(t, s.Delete(ctx, record.Ref{Kind: record.KindTest, ID: "nothing"}, Edit{}), CodeNotFound)
	wantCode(t, s.Delete(ctx, record.Ref{Kind: "nothing", ID: "nothing"}, Edit{}), CodeInvalid)
	wantCode(t, s.Delete(ctx, record.Ref{Kind: record.KindPractice, ID: "nothing"}, Edit{}), CodeInvalid)
}

// TestDeletedOfDeletedAthlete: what belongs to a deleted athlete is not listed apart.
func TestDeletedOfDeletedAthlete(t *testing.T) {
	s, ctx := open(t, t.TempDir(), newClock()), context.Background()
	one, ref := sheet(t, s)
	must(t, s.Delete(ctx, ref, Edit{}))
	must(t, s.Delete(ctx, record.Ref{Kind: record.KindAthlete, ID: one.AthleteID}, Edit{}))
	if list := got(s.Deleted(ctx))(t); len(list) != 1 || list[0].Ref.ID != one.AthleteID || list[0].Name != "Mira" {
		t.Errorf("deleted records %+v", list)
	}
}

// marked makes an athlete whose every text holds a mark, with all that can be
// theirs, and leaves the mark in old values, deleted rows and the history.
func marked(t testing.TB, s *Store, mark string, group, other record.ID) (record.Athlete, record.Trip) {
	t.Helper()
	ctx := context.Background()
	links := map[string]record.ID{"AthleteID": "", "TestID": "", "BottleID": "", "PlanID": "", "TripID": "", "OptionID": "", "StepID": "",
		"GroupSessionID": "", "GroupID": group, "ProductID": "water", "DrinkID": "water", "FoodID": "banana", "ImportID": "import"}
	a := filled[record.Athlete](t, links)
	a.Name, a.Note, a.Flags[0].Physician = mark, mark, mark
	a = got(s.SaveAthlete(ctx, a, Edit{Why: mark}))(t)
	a.Note = "corrected"
	a = got(s.SaveAthlete(ctx, a, Edit{Why: mark}))(t)
	links["AthleteID"] = a.ID
	test := filled[record.Test](t, links)
	test.State, test.Note, test.Bottles[0].Name = record.TestOpen, mark, mark
	test = got(s.SaveTest(ctx, test, Edit{}))(t)
	ref := record.Ref{Kind: record.KindTest, ID: test.ID}
	must(t, s.SetRaw(ctx, ref, "note", mark, Edit{}))
	test.Bottles = nil
	test = got(s.CloseTest(ctx, test, Freezing{Inputs: []byte(mark), Results: []byte(mark), Why: mark}, Edit{}))(t)
	trip := filled[record.Trip](t, links)
	trip.Name, trip.Travellers = mark, trip.Travellers[:1]
	trip = got(s.SaveTrip(ctx, trip, Edit{}))(t)
	links["TestID"], links["StopID"] = test.ID, trip.Stops[0].ID
	session := filled[record.GroupSession](t, links)
	session.Name = mark
	got(s.SaveGroupSession(ctx, session, Edit{}))(t)
	plan := filledPlan(t, links)
	plan.Name, plan.Agreement.Words = mark, mark
	plan = got(s.SavePlan(ctx, plan, Edit{}))(t)
	got(s.SavePrint(ctx, record.Print{AthleteID: a.ID, Kind: record.KindPlan, Record: plan.ID, Bytes: []byte(strings.Repeat(mark+" ", 2000))}))(t)
	must(t, s.Delete(ctx, record.Ref{Kind: record.KindPlan, ID: plan.ID}, Edit{Why: mark}))
	shared := got(s.SaveTrip(ctx, record.Trip{Name: "Camp", Travellers: []record.Traveller{{AthleteID: a.ID}, {AthleteID: other}}}, Edit{}))(t)
	return a, shared
}

// TestEraseAthlete: nothing of the athlete is left in any file but the
// snapshots that are named, and nothing of anybody else is gone.
func TestEraseAthlete(t *testing.T) {
	dir, c := t.TempDir(), newClock()
	s, ctx := open(t, dir, c), context.Background()
	w := makeWorld(t, s)
	mark := "Quillfeather" + "Zephyr"
	a, shared := marked(t, s, mark, w.group.ID, w.athlete.ID)
	theirs := got(s.Tests(ctx, a.ID))(t)[0].ID
	other := got(s.SavePlan(ctx, record.Plan{AthleteID: w.athlete.ID, State: record.PlanDraft, Basis: record.PlanBasis{TestID: theirs}}, Edit{}))(t)
	if n := countInFiles(t, dir, mark); n == 0 {
		t.Fatal("the mark is not in the files: the test would prove nothing")
	}
	c.add(24 * time.Hour)
	got(s.SaveGroup(ctx, record.Group{Name: "next day"}, Edit{}))(t) // takes the snapshot of the day
	must(t, s.Trouble())

	left := got(s.EraseAthlete(ctx, a.ID, false))(t)
	if n := countInFiles(t, dir, mark); n != 0 {
		t.Errorf("the files still hold the mark %d times", n)
	}
	if n := countInFiles(t, dir, string(a.ID)); n == 0 {
		t.Error("no trace that and when the athlete was erased")
	}
	copies := got(s.Snapshots())(t)
	if len(left.Snapshots) != 0 || len(copies) != 1 || bytes.Contains(got(os.ReadFile(copies[0].Path))(t), []byte(mark)) {
		t.Errorf("of %+v the snapshots that hold the athlete: %+v", copies, left.Snapshots)
	}
	if len(left.SharedTrips) != 1 || left.SharedTrips[0] != shared.ID {
		t.Errorf("shared trips %v, want %s", left.SharedTrips, shared.ID)
	}
	_, err := s.LoadAthlete(ctx, a.ID)
	wantCode(t, err, CodeNotFound)
	wantTold(t, s, record.Ref{Kind: record.KindAthlete, ID: a.ID}, ": present > gone")
	if trip := got(s.LoadTrip(ctx, shared.ID))(t); len(trip.Travellers) != 1 || trip.Travellers[0].AthleteID != w.athlete.ID {
		t.Errorf("the shared trip has %+v", trip.Travellers)
	}
	if p := got(s.LoadPlan(ctx, other.ID))(t); p.Basis.TestID != "" {
		t.Errorf("another's plan still rests on %q", p.Basis.TestID)
	}
	for name, pair := range map[string][2]any{
		"athlete": {w.athlete, got(s.LoadAthlete(ctx, w.athlete.ID))(t)},
		"test":    {w.test, got(s.LoadTest(ctx, w.test.ID))(t)},
		"plan":    {w.plan, got(s.LoadPlan(ctx, w.plan.ID))(t)},
		"session": {w.session, got(s.LoadGroupSession(ctx, w.session.ID))(t)},
		"trip":    {w.trip, got(s.LoadTrip(ctx, w.trip.ID))(t)},
		"print":   {w.print, got(s.LoadPrint(ctx, w.print.ID))(t)},
	} {
		if !reflect.DeepEqual(pair[0], pair[1]) {
			t.Errorf("the other athlete's %s changed", name)
		}
	}
	checkWhole(t, s)
	must(t, s.RemoveSnapshots(copies))
	if list := got(s.Snapshots())(t); len(list) != 0 {
		t.Errorf("snapshots left: %+v", list)
	}
	_, err = s.EraseAthlete(ctx, a.ID, false)
	wantCode(t, err, CodeNotFound)
}

// TestEraseWithoutRewrite: also when the file cannot be rewritten the bytes are
// overwritten, and gone once the folder was closed.
func TestEraseWithoutRewrite(t *testing.T) {
	dir := t.TempDir()
	s := got(Open(dir, Options{Clock: newClock().now}))(t)
	w := makeWorld(t, s)
	mark := "Quillfeather" + "Zephyr"
	a, _ := marked(t, s, mark, w.group.ID, w.athlete.ID)
	must(t, s.write(context.Background(), "erase", func(w *work) error {
		_, err := w.eraseAthlete(a.ID)
		return err
	}))
	must(t, s.Close())
	if n := countInFiles(t, dir, mark); n != 0 {
		t.Errorf("the files still hold the mark %d times", n)
	}
}

// countInFiles counts a text in all files of a data folder but the snapshots.
func countInFiles(t testing.TB, dir, text string) int {
	t.Helper()
	n, files := 0, got(os.ReadDir(dir))(t)
	for _, f := range files {
		if f.IsDir() {
			continue
		}
		n += bytes.Count(got(os.ReadFile(filepath.Join(dir, f.Name())))(t), []byte(text))
	}
	return n
}

// TestEraseManyRows: lists longer than one statement takes.
func TestEraseManyRows(t *testing.T) {
	s, ctx := open(t, t.TempDir(), newClock()), context.Background()
	one, _ := sheet(t, s)
	for i := range 700 {
		one.Bottles = append(one.Bottles, record.Bottle{Name: fmt.Sprint(i), Refills: []record.Refill{refill(1)}})
	}
	got(s.SaveTest(ctx, one, Edit{}))(t)
	got(s.EraseAthlete(ctx, one.AthleteID, false))(t)
	var left int64
	must(t, s.files.reader.Model(&record.Refill{}).Count(&left).Error)
	if left != 0 {
		t.Errorf("%d refills are left", left)
	}
	checkWhole(t, s)
}

// TestRawTexts: what could not be read and why something was kept.
func TestRawTexts(t *testing.T) {
	s, ctx := open(t, t.TempDir(), newClock()), context.Background()
	_, ref := sheet(t, s)
	visit := Edit{Visit: "v"}
	for _, text := range []string{"7", "7o", "7o.2"} {
		must(t, s.SetRaw(ctx, ref, "scale.kitDry", text, visit))
	}
	must(t, s.SetReason(ctx, ref, "scale.kitDry", "wet through", Edit{}))
	raw := got(s.RawOf(ctx, ref))(t)
	want := []record.RawText{
		{Kind: record.KindTest, Record: ref.ID, Field: "scale.kitDry", Text: "7o.2", By: "Kit"},
		{Kind: record.KindTest, Record: ref.ID, Field: "scale.kitDry", Text: "wet through", By: "Kit", Reason: true},
	}
	for i := range raw {
		if raw[i].At.IsZero() {
			t.Errorf("no time: %+v", raw[i])
		}
		raw[i].At = time.Time{}
	}
	if !reflect.DeepEqual(raw, want) {
		t.Errorf("got %+v", raw)
	}
	must(t, s.ClearRaw(ctx, ref, "scale.kitDry", Edit{}))
	must(t, s.ClearRaw(ctx, ref, "scale.kitDry", Edit{}))
	must(t, s.ClearReason(ctx, ref, "scale.kitDry", Edit{}))
	if raw := got(s.RawOf(ctx, ref))(t); len(raw) != 0 {
		t.Errorf("left: %+v", raw)
	}
	wantTold(t, s, ref, ":  > present", "scale.kitDry#typed:  > 7o.2", "scale.kitDry#reason:  > wet through",
		"scale.kitDry#typed: 7o.2 > ", "scale.kitDry#reason: wet through > ")
}

// TestPrints: listed without their bytes, never changed.
func TestPrints(t *testing.T) {
	s, ctx := open(t, t.TempDir(), newClock()), context.Background()
	one, ref := sheet(t, s)
	p := record.Print{AthleteID: one.AthleteID, Kind: ref.Kind, Record: ref.ID, Page: "athlete-page", Language: "en", Bytes: []byte("one")}
	first := got(s.SavePrint(ctx, p))(t)
	p.Bytes = []byte("two")
	second := got(s.SavePrint(ctx, p))(t)
	list := got(s.PrintsOf(ctx, one.AthleteID))(t)
	if len(list) != 2 || list[0].ID != second.ID || list[1].ID != first.ID || list[0].Bytes != nil || list[0].Page != "athlete-page" {
		t.Errorf("prints %+v", list)
	}
	if whole := got(s.LoadPrint(ctx, first.ID))(t); !reflect.DeepEqual(whole, first) || string(whole.Bytes) != "one" {
		t.Errorf("got %+v, want %+v", whole, first)
	}
	_, err := s.SavePrint(ctx, first)
	wantCode(t, err, CodeInvalid)
	_, err = s.LoadPrint(ctx, "nothing")
	wantCode(t, err, CodeNotFound)
	_, err = s.SavePrint(ctx, record.Print{AthleteID: "nobody"})
	wantCode(t, err, CodeInvalid)
}

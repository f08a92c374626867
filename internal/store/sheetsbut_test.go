package store

import (
	"context"
	"reflect"
	"testing"

	"ebbwell/internal/record"
)

// A test that is known is not read again; after any change to it, or to what is in it,
// or a new copy of it, it is. All stand in one order.
func TestSheetsBut(t *testing.T) {
	s, ctx := open(t, t.TempDir(), newClock()), context.Background()
	a := got(s.SaveAthlete(ctx, record.Athlete{Name: "Mira"}, Edit{}))(t)
	known := map[record.ID]Known{}
	for _, day := range []record.Date{"2026-05-02", "2026-05-04", "2026-05-01", "2026-05-03"} {
		test := got(s.SaveTest(ctx, record.Test{AthleteID: a.ID, State: record.TestOpen, Session: record.Session{Date: day},
			Bottles: []record.Bottle{{Name: "1"}}}, Edit{}))(t)
		copied := got(s.Freeze(ctx, record.Ref{Kind: record.KindTest, ID: test.ID}, freezing("closed")))(t)
		known[test.ID] = Known{Changed: test.ChangedAt, Copy: copied.ID}
	}
	whole := got(s.SheetsOf(ctx, a.ID))(t)
	read := func(after string, again ...int) {
		t.Helper()
		list := got(s.SheetsBut(ctx, a.ID, known))(t)
		fresh := got(s.SheetsOf(ctx, a.ID))(t)
		if len(list) != len(fresh) {
			t.Fatalf("after %s: %d sheets, of %d", after, len(list), len(fresh))
		}
		due := map[int]bool{}
		for _, i := range again {
			due[i] = true
		}
		for i := range list {
			want := fresh[i]
			if !due[i] {
				want = Sheet{Unread: true}
				want.Test.ID = fresh[i].Test.ID
			}
			if !reflect.DeepEqual(list[i], want) {
				t.Errorf("after %s: sheet %d is\n%+v, not\n%+v", after, i, list[i], want)
			}
		}
	}
	read("nothing")
	test := whole[1].Test
	test.Bottles[0].Name = "2"
	got(s.SaveTest(ctx, test, Edit{}))(t)
	read("a bottle", 1)
	got(s.Freeze(ctx, record.Ref{Kind: record.KindTest, ID: whole[3].Test.ID}, freezing("again")))(t)
	read("a copy", 1, 3)
	delete(known, whole[0].Test.ID)
	read("one that was not known", 0, 1, 3)
	must(t, s.Delete(ctx, record.Ref{Kind: record.KindTest, ID: whole[2].Test.ID}, Edit{}))
	read("one that is gone", 0, 1, 2)
}

package store

import (
	"context"
	"reflect"
	"testing"

	"ebbwell/internal/record"
)

// The list of the athletes is read again after every write that it shows, and only
// then; it is what one reads who has not read it before.
func TestThePeopleAreReadAgain(t *testing.T) {
	s, ctx := open(t, t.TempDir(), newClock()), context.Background()
	read := func() bool { return !s.files.people.there }
	same := func(after string, again bool) []AthleteSummary {
		t.Helper()
		if read() != again {
			t.Errorf("after %s the list is read again: %v", after, read())
		}
		kept := got(s.People(ctx))(t)
		s.files.people.drop()
		if fresh := got(s.People(ctx))(t); !reflect.DeepEqual(kept, fresh) {
			t.Errorf("after %s the list is\n%+v, read afresh\n%+v", after, kept, fresh)
		}
		return kept
	}
	same("nothing", true)
	g := got(s.SaveGroup(ctx, record.Group{Name: "Squad"}, Edit{}))(t)
	same("a group", true)
	a := got(s.SaveAthlete(ctx, record.Athlete{Name: "Mira", Memberships: []record.Membership{{GroupID: g.ID}}}, Edit{}))(t)
	same("an athlete", true)
	test := got(s.SaveTest(ctx, record.Test{AthleteID: a.ID, State: record.TestOpen}, Edit{}))(t)
	same("a test", false)
	got(s.CloseTest(ctx, test, freezing("closed"), Edit{}))(t)
	same("a closed test", false)
	g.Name = "Seniors"
	got(s.SaveGroup(ctx, g, Edit{}))(t)
	same("another name of the group", true)
	a.Flags = []record.Flag{{Kind: record.FlagHeart}}
	a = got(s.SaveAthlete(ctx, a, Edit{}))(t)
	same("a flag", true)
	ref := record.Ref{Kind: record.KindAthlete, ID: a.ID}
	must(t, s.Delete(ctx, ref, Edit{}))
	if list := same("taking the athlete away", true); len(list) != 0 {
		t.Errorf("%+v is still there", list)
	}
}

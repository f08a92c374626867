package store

import (
	"context"
	"reflect"
	"slices"
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

// What is read as one text a row is what stands in columns, also where a text has the
// sign that stands between.
func TestPeopleAreReadAsTheyAre(t *testing.T) {
	s, ctx := open(t, t.TempDir(), newClock()), context.Background()
	add := func(a record.Athlete) {
		t.Helper()
		got(s.SaveAthlete(ctx, a, Edit{}))(t)
	}
	check := func() {
		t.Helper()
		s.files.people.drop()
		for _, one := range got(s.People(ctx))(t) {
			a := got(s.LoadAthlete(ctx, one.ID))(t)
			if one.Name != a.Name || one.Sport != a.Sport || one.Position != a.Position || one.Born != a.Born || one.MassHidden != a.MassHidden {
				t.Errorf("got  %+v\nwant %+v", one, a)
			}
		}
	}
	add(record.Athlete{Name: "Mira", Sport: "rowing", Position: "bow", Born: "2009-02-01", MassHidden: true})
	add(record.Athlete{Name: "Ann"})
	check()
	add(record.Athlete{Name: "A" + between + "B", Sport: between, Position: "x" + between + between})
	check()
}

// The groups of an athlete stand by name, each once, also of two with one name.
func TestGroupsByName(t *testing.T) {
	s, ctx := open(t, t.TempDir(), newClock()), context.Background()
	a := record.Athlete{Name: "Mira"}
	for _, name := range []string{"Seniors", "Boat", "Seniors", "Eight"} {
		a.Memberships = append(a.Memberships, record.Membership{GroupID: got(s.SaveGroup(ctx, record.Group{Name: name}, Edit{}))(t).ID})
	}
	got(s.SaveAthlete(ctx, a, Edit{}))(t)
	if groups := got(s.People(ctx))(t)[0].Groups; !slices.Equal(groups, []string{"Boat", "Eight", "Seniors"}) {
		t.Errorf("got %q", groups)
	}
}

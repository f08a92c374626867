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
	read := func() bool { return !s.files.people.there || len(s.files.people.touched) > 0 }
	same := func(after string, again bool) []Person {
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

// Of athletes that were saved one by one only they are read again, whatever becomes of
// name, groups and place in the list; a list that was handed out stays as it was.
func TestOnlyWhoWasSavedIsReadAgain(t *testing.T) {
	s, ctx := open(t, t.TempDir(), newClock()), context.Background()
	var saved []record.Athlete
	for _, name := range []string{"Mira", "Ann", "Zora", "Ben"} {
		saved = append(saved, got(s.SaveAthlete(ctx, record.Athlete{Name: name}, Edit{}))(t))
	}
	g := got(s.SaveGroup(ctx, record.Group{Name: "Squad"}, Edit{}))(t)
	before := got(s.People(ctx))(t)
	copied := slices.Clone(before)
	change := func(what string, do func(a *record.Athlete), of int, want ...string) {
		t.Helper()
		do(&saved[of])
		saved[of] = got(s.SaveAthlete(ctx, saved[of], Edit{}))(t)
		if k := &s.files.people; !k.there || !slices.Equal(k.touched, []record.ID{saved[of].ID}) {
			t.Errorf("%s: %d touched, the list is there: %v", what, len(k.touched), k.there)
		}
		now := got(s.People(ctx))(t)
		var names []string
		for _, p := range now {
			names = append(names, p.Name)
		}
		if !slices.Equal(names, want) {
			t.Errorf("%s: %q", what, names)
		}
		s.files.people.drop()
		if fresh := got(s.People(ctx))(t); !reflect.DeepEqual(now, fresh) {
			t.Errorf("%s:\n%+v, read afresh\n%+v", what, now, fresh)
		}
	}
	change("to the end", func(a *record.Athlete) { a.Name = "Zoë" }, 1, "Ben", "Mira", "Zora", "Zoë")
	change("to the beginning", func(a *record.Athlete) { a.Name = "Al" }, 2, "Al", "Ben", "Mira", "Zoë")
	change("the same name", func(a *record.Athlete) { a.Name = "Ben" }, 0, "Al", "Ben", "Ben", "Zoë")
	change("a group and a flag", func(a *record.Athlete) {
		a.Memberships, a.Flags = []record.Membership{{GroupID: g.ID}}, []record.Flag{{Kind: record.FlagHeart}}
	}, 3, "Al", "Ben", "Ben", "Zoë")
	if !reflect.DeepEqual(before, copied) {
		t.Errorf("the list that was handed out became %+v", before)
	}
	for range touchedMost + 1 {
		got(s.SaveAthlete(ctx, record.Athlete{Name: "New"}, Edit{}))(t)
	}
	if s.files.people.there {
		t.Error("so many are read one by one")
	}
	if n := len(got(s.People(ctx))(t)); n != len(saved)+touchedMost+1 {
		t.Errorf("%d athletes", n)
	}
}

package app

import (
	"context"
	"slices"
	"strings"
	"testing"

	"ebbwell/app/apptest"
	"ebbwell/app/kit/desk"
	"ebbwell/app/kit/field"
	"ebbwell/app/kit/look"
)

// A name with signs beyond letters, some made of several runes, is kept as it was
// typed and stands in the head, in the list and when the profile is opened again.
func TestEmojiInAName(t *testing.T) {
	const name = "Zoë 🏑 Ōkta-Lowmere 👩🏽‍🔬"
	s, w := start(t, "", true)
	p := s.Program()
	p.Open(desk.Place{Screen: desk.Profile, New: true})
	apptest.Type(t, w, "profile.name", name)
	apptest.Leave(w)
	id := p.View().Head().Athlete
	if p.View().Head().Title != name || !strings.Contains(said(w.Content()), name) {
		t.Errorf("the head says %q", p.View().Head().Title)
	}
	p.Open(desk.Place{Screen: desk.Athletes})
	names := func() []string {
		table, ok := field.Find(w.Content(), "roster.table").(*look.Table)
		if !ok {
			t.Fatal("there is no list")
		}
		var list []string
		for i := range table.Rows() {
			list = append(list, table.Row(i)[0])
		}
		return list
	}
	if list := names(); len(list) != 12 || !slices.Contains(list, name) {
		t.Errorf("the list is %q", list)
	}
	kept, err := p.Desk().Store.LoadAthlete(context.Background(), id)
	if err != nil || kept.Name != name {
		t.Errorf("kept as %q, %v", kept.Name, err)
	}
	apptest.Type(t, w, "roster.search", "🏑 lowmere")
	if list := names(); len(list) != 1 || list[0] != name {
		t.Errorf("by a sign %q is found", list)
	}
	p.Open(desk.Place{Screen: desk.Profile, Athlete: id})
	if got := apptest.Text(t, w, "profile.name"); got != name {
		t.Errorf("opened again: %q", got)
	}
}

package app

import (
	"context"
	"errors"
	"testing"

	"ebbwell/app/apptest"
	"ebbwell/app/kit/desk"
	"ebbwell/app/kit/keep"
	"ebbwell/app/kit/keep/clock"
	"ebbwell/internal/store"
)

// A new athlete whose name was typed and cleared again leaves nothing behind that
// would hold the window where it is.
func TestNameTypedAndCleared(t *testing.T) {
	for name, hand := range map[string]func(h hands){
		"at once":      func(h hands) { apptest.Type(t, h.w, "profile.name", "Ann"); apptest.Type(t, h.w, "profile.name", "") },
		"after saving": func(h hands) { h.fill("profile.name", "Ann"); h.c.Advance(keep.Longest); h.fill("profile.name", "") },
		"while it is saved": func(h hands) {
			apptest.Type(t, h.w, "profile.name", "Ann")
			h.c.Advance(keep.Longest)
			apptest.Type(t, h.w, "profile.name", "")
		},
		"and a birth date": func(h hands) {
			h.fill("profile.name", "Ann", "profile.born", "3.2.1999")
			h.fill("profile.born", "")
			apptest.Type(t, h.w, "profile.name", "")
		},
	} {
		t.Run(name, func(t *testing.T) {
			c := clock.New(apptest.Now())
			s, w := startBy(t, t.TempDir(), false, c)
			h := hands{t, s, w, c}
			begin(t, w)
			p := s.Program()
			p.Open(desk.Place{Screen: desk.Profile, New: true})
			hand(h)
			for _, to := range []desk.Screen{desk.Pantry, desk.Athletes, desk.Practice} {
				p.Open(desk.Place{Screen: to})
				if p.Place().Screen != to {
					t.Fatalf("%s does not open: %q", to, p.frame.strip.Message())
				}
			}
			if list, err := p.Desk().Store.Athletes(context.Background()); err != nil || len(list) != 0 {
				t.Errorf("there are %d athletes, %v", len(list), err)
			}
		})
	}
}

// Whoever goes on to a tab of an athlete with nothing written down is not locked in
// there: the athlete stays until another screen comes.
func TestTabsOfAnAthleteWithoutAName(t *testing.T) {
	c := clock.New(apptest.Now())
	s, w := startBy(t, t.TempDir(), false, c)
	h := hands{t, s, w, c}
	begin(t, w)
	p := s.Program()
	p.Open(desk.Place{Screen: desk.Profile, New: true})
	h.fill("profile.name", "Ann")
	h.fill("profile.name", "")
	for _, tab := range []desk.Screen{desk.Handout, desk.Plan, desk.Tests, desk.Overview} {
		p.openTab(tab)
	}
	p.Open(desk.Place{Screen: desk.Profile, Athlete: p.Place().Athlete})
	h.fill("profile.name", "Bea")
	p.Open(desk.Place{Screen: desk.Athletes})
	if p.Place().Screen != desk.Athletes {
		t.Fatalf("the list does not open: %q", p.frame.strip.Message())
	}
	if list, err := p.Desk().Store.Athletes(context.Background()); err != nil || len(list) != 1 || list[0].Name != "Bea" {
		t.Errorf("kept %+v, %v", list, err)
	}
}

// A change that can never be kept, since its record is gone, can be given up.
func TestHopelessChangeCanBeGivenUp(t *testing.T) {
	s, w := start(t, "", true)
	p := s.Program()
	p.keeper.Later("test", func(context.Context) error { return &store.Error{Code: store.CodeDeleted, Doing: "save"} })
	p.Open(desk.Place{Screen: desk.Pantry})
	if p.Place().Screen == desk.Pantry {
		t.Fatal("what was typed was dropped without a word")
	}
	apptest.Click(t, w, "frame.strip.act")
	p.Open(desk.Place{Screen: desk.Pantry})
	if p.Place().Screen != desk.Pantry {
		t.Errorf("still locked in: %q", p.frame.strip.Message())
	}
}

// Records that turn out to be damaged while they are open are said to be so, and
// the copies there are can be restored.
func TestDamageWhileOpenOffersCopies(t *testing.T) {
	s, w := start(t, "", true)
	p := s.Program()
	err := &store.Error{Code: store.CodeDamaged, Path: "records", Snapshots: []store.Snapshot{{At: apptest.Now(), Reason: store.SnapshotDaily}}}
	p.cannotOpen(err)
	apptest.Click(t, w, "frame.strip.act")
	if s.Program() != nil || !apptest.Has(w, "refusal.restore.1") {
		t.Errorf("no copy is offered: %q", said(w.Content()))
	}
}

// After a close that was refused, what is typed is saved by itself again.
func TestSavingGoesOnAfterARefusedClose(t *testing.T) {
	c := clock.New(apptest.Now())
	s, _ := startBy(t, "", true, c)
	p, full, wrote := s.Program(), true, 0
	save := func(context.Context) error {
		if full {
			return errors.New("no")
		}
		wrote++
		return nil
	}
	p.keeper.Later("test", save)
	if err := s.Close(); err == nil {
		t.Fatal("the program closed with something not kept")
	}
	full = false
	p.keeper.Later("test", save)
	c.Advance(keep.Longest)
	if wrote != 1 {
		t.Errorf("what was handed over after the refused close was written %d times by itself", wrote)
	}
}

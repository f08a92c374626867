package app

import (
	"context"
	"errors"
	"testing"

	"ebbwell/app/apptest"
	"ebbwell/app/kit/desk"
	"ebbwell/app/kit/keep"
	"ebbwell/app/kit/keep/clock"
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

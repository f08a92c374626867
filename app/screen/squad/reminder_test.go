package squad

import (
	"context"
	"errors"
	"testing"
	"time"

	"fyne.io/fyne/v2/test"

	"ebbwell/app/apptest"
	"ebbwell/app/kit/desk"
	"ebbwell/app/kit/sound"
	"ebbwell/internal/record"
)

// player counts the tones.
type player struct {
	n   int
	err error
}

func (p *player) Play(context.Context) error {
	p.n++
	return p.err
}

// TestSoundAtReminders: with the sound on, a patch that falls due rings once, over sleep
// and a new start; an end that the key sets does not ring, one that the clock brings does.
// The reminder stands on the screen in any case.
func TestSoundAtReminders(t *testing.T) {
	d, clock, id := squadDesk(t, crew()[:2])
	p, settings := &player{}, test.NewTempApp(t).Preferences()
	d.Bell = sound.NewBell(p, settings, desk.Inline{}.Run)
	rings := func(when string, want int) {
		t.Helper()
		if p.n != want {
			t.Fatalf("%s: %d tones, want %d", when, p.n, want)
		}
	}
	h := openDay(t, d, clock, id, 1186, 700, false, 100)
	if d.Bell.On() {
		t.Error("the sound is on before anybody asked for it")
	}
	h.v.askChange()
	apptest.Click(t, h.w, "squad.change.sound")
	apptest.Click(t, h.w, "squad.change.done")
	h.at("before", "61.8\n")
	h.until(17, 10)
	h.typed("*")
	h.until(17, 39)
	rings("before it is due", 0)
	h.clock.at = at(17, 41)
	h.typed("742") // a key just before the look at the clock takes nothing away
	h.v.Tick()
	rings("due", 1)
	if h.v.dueWords() == "" {
		t.Error("nothing is said on the screen")
	}
	h.until(17, 50)
	rings("still on", 1)
	h.v.Leave()
	d.Bell = sound.NewBell(p, settings, desk.Inline{}.Run)
	h = openDay(t, d, clock, id, 1186, 700, false, 100)
	h.until(18, 20) // slept
	rings("started anew, after a sleep", 1)
	if h.v.dueWords() == "" {
		t.Error("after a new start nothing is said on the screen")
	}
	h.v.openRowAt(0, "")
	h.typed("*")
	h.until(18, 25)
	h.v.startOrEnd()
	h.until(18, 30)
	rings("ended by the key", 1)
	h.v.doc.ChangeSession("", "end", func(g *record.GroupSession) { g.Session.End = "18:40" })
	h.v.changed()
	h.until(18, 41)
	rings("ended by the clock", 2)
	h.until(18, 50)
	rings("ended a while ago", 2)
}

// TestSoundIsTried: the button plays it, and says in words what does not work.
func TestSoundIsTried(t *testing.T) {
	d, clock, id := squadDesk(t, crew()[:1])
	h := openDay(t, d, clock, id, 1186, 700, false, 100)
	for key, p := range map[string]sound.Player{"squad.sound.played": &player{}, "squad.sound.none": nil, "squad.sound.failed": &player{err: errors.New("no device")}} {
		d.Bell = sound.NewBell(p, test.NewTempApp(t).Preferences(), desk.Inline{}.Run)
		h = openDay(t, d, clock, id, 1186, 700, false, 100)
		h.v.askChange()
		apptest.Click(t, h.w, "squad.change.sound.try")
		shown := false
		for _, text := range apptest.VisibleTexts(h.w.Canvas().Overlays().Top()) {
			shown = shown || text == d.Words.Say(key)
		}
		if !shown {
			t.Errorf("%s is not said", key)
		}
		apptest.Click(t, h.w, "squad.change.done")
	}
	said := ""
	d.Say = func(sentence, _ string, _ func()) { said = sentence }
	d.Bell.Switch(true)
	h.v.soundFailed(errors.New("no device"))
	if said != d.Words.Say("squad.sound.failed") {
		t.Errorf("a reminder that was not heard: %q", said)
	}
}

// TestClockGoesOn: the clock of a day that could not be left goes on, once; that of one
// that was left stands.
func TestClockGoesOn(t *testing.T) {
	d, clock, id := squadDesk(t, crew()[:1])
	waiting := 0
	d.Later = func(time.Duration, func()) (stop func()) {
		waiting++
		return func() { waiting-- }
	}
	h := openDay(t, d, clock, id, 1186, 700, false, 100)
	if waiting != 1 {
		t.Fatalf("%d clocks go", waiting)
	}
	h.v.Leave()
	if waiting != 0 {
		t.Errorf("%d clocks go once it is left", waiting)
	}
	h.v.Stayed()
	h.v.Stayed()
	if waiting != 1 {
		t.Errorf("%d clocks go in a day that stays", waiting)
	}
}

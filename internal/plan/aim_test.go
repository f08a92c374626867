package plan

import (
	"testing"

	"ebbwell/internal/fuel"
)

// What a plan aims at where nothing was chosen: from 90 min on carbohydrate is asked
// for, before it small amounts are free; drinks no stronger than 8 g per 100 mL; no
// faster than a stomach takes, or than this one took.
func TestDefaultAim(t *testing.T) {
	s := courtSession()
	for _, c := range []struct {
		minutes  float64
		on       bool
		low, top float64
	}{{60, false, 0, 30}, {105, true, 35, 60}, {150, true, 30, 60}, {200, true, 60, 90}} {
		s.Minutes[Expected] = c.minutes
		a := DefaultAim(Usual{}, s)
		if a.Carbohydrate.On != c.on || c.on && (a.Carbohydrate.Low > c.low || a.Carbohydrate.High != c.top) {
			t.Errorf("%g min: %+v", c.minutes, a.Carbohydrate)
		}
	}
	s = courtSession()
	a := DefaultAim(Usual{}, s)
	if a.Strength != Within(0, 8) || a.Drinking != Within(0, 1) || a.Deficit != Within(0, 2) || !a.OneSource || a.Sodium.On {
		t.Errorf("%+v", a)
	}
	if a := DefaultAim(Usual{Known: true, LH: 1.3}, s); a.Drinking != Within(0, 1.3) {
		t.Errorf("used to 1.3 L/h: %+v", a.Drinking)
	}
	if a := DefaultAim(Usual{Known: true, LH: 0.5}, s); a.Drinking != Within(0, 1) {
		t.Errorf("used to 0.5 L/h: %+v", a.Drinking)
	}
	s.Running = true
	if a := DefaultAim(Usual{LH: 1.3}, s); a.Drinking != Within(0, 0.8) {
		t.Errorf("running: %+v", a.Drinking)
	}
}

// Light effort asks for no carbohydrate where hard effort does.
func TestLightEffortAsksForLess(t *testing.T) {
	s := courtSession()
	hard := CarbohydrateAimed(s)
	s.Effort = fuel.Easy
	if light := CarbohydrateAimed(s); light != 0 || hard != 30 {
		t.Errorf("105 min: %g g/h light, %g hard", light, hard)
	}
}

// Only the slots that may change have a band, all of them where none was picked.
func TestAllowedSlots(t *testing.T) {
	b, s := courtBasis(), courtSession()
	one := newPlanner(t, b, s, fullMenu(t), Aim{Allowed: [Slots]bool{Drink1: true}})
	for slot, band := range one.Bands(Expected, courtHabit()) {
		if none := band == (Band{Empty: true}); none != (Slot(slot) != Drink1) {
			t.Errorf("slot %d: %+v", slot, band)
		}
	}
	all := newPlanner(t, b, s, fullMenu(t), Aim{})
	for slot, band := range all.Bands(Expected, Mix{}) {
		if band.Empty {
			t.Errorf("slot %d of all: %+v", slot, band)
		}
	}
	menu := fullMenu(t)
	menu.Clear(Food2)
	if band := newPlanner(t, b, s, menu, Aim{}).Bands(Expected, Mix{})[Food2]; band != (Band{Empty: true}) {
		t.Errorf("a slot without a product: %+v", band)
	}
}

package breaks

import (
	"testing"

	"ebbwell/app/kit/chart"
	"ebbwell/internal/plan"
)

func TestReadScore(t *testing.T) {
	for text, want := range map[string]int{"6-4 6-4": 2, " 7–6, 3-6,6-2 ": 3, "": 0, "6": 0, "6-x": 0, "six-four": 0} {
		if sets, ok := readScore(text); len(sets) != want && want > 0 || ok != (want > 0) {
			t.Errorf("%q is %v, %v", text, sets, ok)
		}
	}
}

func TestSpells(t *testing.T) {
	take := func(minute, seconds float64) plan.Take {
		return plan.Take{Chance: plan.Chance{Minute: minute, Seconds: seconds}}
	}
	got := Spells(nil, plan.Schedule{Takes: []plan.Take{take(0, 60), take(20, 120), take(21, 60), take(90, 600)}}, 95)
	want := []chart.Spell{{From: 1, To: 20}, {From: 22, To: 90}}
	if len(got) != len(want) {
		t.Fatalf("spells are %v", got)
	}
	for i := range want {
		if got[i] != want[i] {
			t.Errorf("spell %d is %v, not %v", i, got[i], want[i])
		}
	}
}

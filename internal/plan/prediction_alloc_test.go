package plan

import (
	"testing"
)

// A slider's move allocates nothing.
func TestEvaluateAllocatesNothing(t *testing.T) {
	p, mix := courtPlanner(t), courtHabit()
	var s Schedule
	chances, points := courtChances(t, 105), make([]Point, 0, 64)
	p.Schedule(Expected, mix, chances, 30, &s)
	n := testing.AllocsPerRun(50, func() {
		_ = p.Evaluate(Expected, mix)
		mix, _ = p.Move(Expected, mix, Water, 650)
		p.Schedule(Expected, mix, chances, 30, &s)
		points = p.Course(Expected, &s, points[:0])
		_ = p.Bands(Expected, mix)
		_ = p.Compare(Expected, mix, courtHabit())
		_ = p.misses(Expected, mix)
	})
	if n != 0 {
		t.Errorf("%g allocations a move", n)
	}
}

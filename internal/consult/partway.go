package consult

import (
	"math"

	"ebbwell/internal/evidence"
	"ebbwell/internal/plan"
	"ebbwell/internal/record"
	"ebbwell/internal/sweat"
)

// Segment is a part of a session between two weighings.
type Segment struct {
	From, To record.Clock
	Minutes  float64
	// Loss is the sweat loss, L, Rate L/h; Drunk L.
	Loss, Rate, Drunk float64
}

// Segments are the parts of a session between its weighings, where it was weighed
// within: mass change and drinks less urine, and of breath and gas exchange the part
// that the time is of the whole. Nil while a part is not known.
func Segments(f Findings) []Segment {
	t := f.Test
	first, last := masses(t, record.Before), masses(t, record.After)
	if len(t.Partway) == 0 || len(first) == 0 || len(last) == 0 || !f.Timed || !f.Sweat.Fluid.Loss.Known {
		return nil
	}
	breath, drunk, urine := 0.0, 0.0, 0.0
	for _, l := range f.Sweat.Balance {
		switch l.ID {
		case sweat.LineRespiratory, sweat.LineExchange:
			breath -= l.Kilograms
		case sweat.LineDrunk, sweat.LineEaten:
			drunk += l.Kilograms
		case sweat.LineUrine, sweat.LineStool:
			urine -= l.Kilograms
		}
	}
	type point struct {
		clock                      record.Clock
		minutes, mass, drunk, lost float64
	}
	points := []point{{clock: t.Session.Start, mass: mean(first)}}
	for _, p := range t.Partway {
		at, ok := f.Since(p.At)
		if !ok || !p.Mass.Known() || !p.Drunk.Known() {
			return nil
		}
		points = append(points, point{p.At, at, *p.Mass.Value, *p.Drunk.Value / 1000, p.Urine.Or(0) / 1000})
	}
	points = append(points, point{t.Session.End, f.Minutes, mean(last), drunk, urine})
	var list []Segment
	for i, p := range points[1:] {
		q := points[i]
		s := Segment{From: q.clock, To: p.clock, Minutes: p.minutes - q.minutes, Drunk: p.drunk - q.drunk}
		if s.Minutes <= 0 {
			return nil
		}
		s.Loss = q.mass - p.mass + s.Drunk - (p.lost - q.lost) - breath*s.Minutes/f.Minutes
		s.Rate = 60 * s.Loss / s.Minutes
		list = append(list, s)
	}
	return list
}

// SegmentsChange reports whether the rate changes within a session by more than it should
// be passed over, from the first part to the last.
func SegmentsChange(list []Segment) bool {
	if len(list) < 2 {
		return false
	}
	a, b := list[0].Rate, list[len(list)-1].Rate
	return math.Abs(a-b) > max(a, b)*evidence.SegmentsDiffer/100
}

// splitOf is how the loss of a session is shared between its parts, as it was weighed
// within; zero where it was not weighed just once.
func splitOf(f Findings) plan.Split {
	list := Segments(f)
	if len(list) != 2 {
		return plan.Split{}
	}
	minutes, loss := list[0].Minutes+list[1].Minutes, list[0].Loss+list[1].Loss
	if list[0].Loss <= 0 || list[1].Loss <= 0 {
		return plan.Split{}
	}
	return plan.Split{At: list[0].Minutes / minutes, Share: list[0].Loss / loss}
}

package sweat

import (
	"math"
	"testing"

	"pgregory.net/rapid"

	"ebbwell/internal/evidence"
)

func TestGroupsFor(t *testing.T) {
	for _, c := range []struct {
		measure evidence.Measure
		sport   string
		first   string
		n       int
	}{
		{evidence.RateMeasure, "", "group.many-sports.sweat-rate", 1},
		{evidence.RateMeasure, evidence.SportSoccer, "group.soccer.sweat-rate", 2},
		{evidence.RateMeasure, "field hockey", "group.many-sports.sweat-rate", 1},
		{evidence.SodiumLossMeasure, evidence.SportEndurance, "group.endurance.sodium-loss", 1},
		{evidence.WholeBodyMeasure, evidence.SportSoccer, "group.many-sports.whole-body-sodium", 1},
	} {
		got := GroupsFor(c.measure, c.sport)
		if len(got) != c.n || got[0].ID != c.first {
			t.Errorf("%s in %q: %d groups, first %s", c.measure, c.sport, len(got), got[0].ID)
		}
	}
	if got := GroupsFor(evidence.SodiumLossMeasure, ""); len(got) != 0 {
		t.Errorf("sodium loss without a sport: %v", got)
	}
}

func TestPlaceEdges(t *testing.T) {
	g := evidence.Groups()[0]
	for _, c := range []struct{ x, want float64 }{{0, 0}, {-1, 0}, {math.Inf(1), 1}} {
		p, ok := PlaceIn(g, c.x)
		if !ok || p.Below != c.want {
			t.Errorf("%g: below %g", c.x, p.Below)
		}
	}
	if _, ok := PlaceIn(g, math.NaN()); ok {
		t.Error("a place for what is not a number")
	}
	if QuantileOf(g, 0) != 0 || !math.IsInf(QuantileOf(g, 1), 1) {
		t.Error("ends of the group")
	}
}

// TestEveryGroup holds each published group to what a distribution must do:
// a place turns a quantile round, and mean and spread come back out.
func TestEveryGroup(t *testing.T) {
	for _, g := range evidence.Groups() {
		mu, s := LogNormal(g.Mean, g.SD)
		mean := math.Exp(mu + s*s/2)
		near(t, g.ID+" mean", mean, g.Mean, 1e-9*g.Mean)
		near(t, g.ID+" sd", mean*math.Sqrt(math.Expm1(s*s)), g.SD, 1e-9*g.SD)
	}
	rapid.Check(t, func(t *rapid.T) {
		g := rapid.SampledFrom(evidence.Groups()).Draw(t, "group")
		share := rapid.Float64Range(0.001, 0.999).Draw(t, "share")
		p, ok := PlaceIn(g, QuantileOf(g, share))
		if !ok || math.Abs(p.Below-share) > 1e-9 {
			t.Fatalf("share %g comes back as %g", share, p.Below)
		}
	})
}

// QuantileOf is the value below which a share of the group lies, for drawing
// it. Shares of 0 and 1 give zero and infinity.
func QuantileOf(g evidence.Group, share float64) float64 {
	mu, s := LogNormal(g.Mean, g.SD)
	return math.Exp(mu + s*math.Sqrt2*math.Erfinv(2*share-1))
}

package plan

import (
	"cmp"
	"fmt"
	"slices"

	"ebbwell/internal/evidence"
	"ebbwell/internal/plan/proposal"
)

// pause is a long break that is certain, when it comes and how long it lasts, min
// of the session as the table has it.
type pause struct{ at, lasts float64 }

// playClock tells when a moment of the table comes in a session of another length. The
// table's length counts its pauses. A session may be entered so, or as the playing time
// alone; in between the pauses come in by and by, so that half-time is at the end of the
// first half in either.
type playClock struct {
	table, pausing float64 // min
	pauses         []pause
}

// clockOf is the clock of the rules that have one length.
func (s Sport) clockOf(minutes float64) playClock {
	c := playClock{table: minutes}
	for _, r := range s.Rules {
		if r.Chance.Certainty != Certain || r.Chance.Seconds < evidence.LongBreak || r.Minutes != minutes {
			continue
		}
		for _, at := range r.At {
			c.pauses = append(c.pauses, pause{at, r.Chance.Seconds / secondsPerMinute})
			c.pausing += r.Chance.Seconds / secondsPerMinute
		}
	}
	return c
}

// checkPauses asks that long breaks of one length follow one another and lie inside it,
// with some play left.
func (s Sport) checkPauses() error {
	for _, r := range s.Rules {
		c := s.clockOf(r.Minutes)
		slices.SortFunc(c.pauses, func(a, b pause) int { return cmp.Compare(a.at, b.at) })
		end := 0.0
		for _, p := range c.pauses {
			if p.at < end {
				return fmt.Errorf("the break at %g begins before the last one ends", p.at)
			}
			end = p.at + p.lasts
		}
		if len(c.pauses) > 0 && (end > c.table || c.pausing >= c.table) {
			return fmt.Errorf("breaks of %g min do not fit into %g", c.pausing, c.table)
		}
	}
	return nil
}

// secondsPerMinute turns the seconds of a break into min.
const secondsPerMinute = 60

// in is when a moment of the table comes in a session of a length, min.
func (c playClock) in(minutes, moment float64) float64 {
	if minutes >= c.table {
		return moment * minutes / c.table
	}
	before := 0.0
	for _, p := range c.pauses {
		before += min(p.lasts, max(0, moment-p.at))
	}
	playing := c.table - c.pausing
	if minutes <= playing {
		return (moment - before) * minutes / playing
	}
	return moment - before + before*(minutes-playing)/c.pausing
}

// of is the moment of the table, the first, that comes so late in a session of a
// length, min.
func (c playClock) of(minutes, at float64) float64 {
	low, high := 0.0, c.table
	for range halvings {
		mid := (low + high) / 2
		if proposal.Passes(at, c.in(minutes, mid)) {
			low = mid
		} else {
			high = mid
		}
	}
	return high
}

// Moved is when a break at a minute of a session of one length comes in one of
// another, min: at the same moment of play. A sport whose breaks come every so many
// minutes has no such moments; its breaks stretch with the length.
func (s Sport) Moved(at, before, after float64) float64 {
	i := slices.IndexFunc(s.Rules, func(r Rule) bool { return r.Minutes > 0 })
	if i < 0 || at >= before {
		return at * after / before
	}
	c := s.clockOf(s.Rules[i].Minutes)
	return c.in(after, c.of(before, at))
}

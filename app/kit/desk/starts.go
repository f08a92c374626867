package desk

import (
	"context"
	"time"

	"ebbwell/internal/climate"
	"ebbwell/internal/consult"
	"ebbwell/internal/evidence"
)

// startsKept is how long what the practice's tests say of a sport is kept before
// it is worked out anew.
const startsKept = time.Minute

// learnt is what the practice's tests say of a sport, and when that was worked
// out.
type learnt struct {
	at    time.Time
	start climate.Start
}

// startOf is where an athlete of a sport without a test is taken to stand, by
// the practice's own tests; the zero Start where they are too few or do not hold.
// It reads athletes of the sport with their tests, so it is asked for only where there
// is no test.
func (d *Desk) startOf(sport string) climate.Start {
	if kept, ok := d.starts[sport]; ok && d.Now().Sub(kept.at) < startsKept {
		return kept.start
	}
	if d.starts == nil {
		d.starts = map[string]learnt{}
	}
	d.starts[sport] = learnt{d.Now(), d.learnStart(sport)}
	return d.starts[sport].start
}

// learnStart works the start of a sport out, from those athletes tested last, so that
// it takes as long in a practice of ten thousand.
func (d *Desk) learnStart(sport string) climate.Start {
	ctx := context.Background()
	tested, err := d.Store.LatestTested(ctx, sport, evidence.StartMost)
	if err != nil {
		d.Trouble(err)
		return climate.Start{}
	}
	var list []climate.Practised
	for _, id := range tested {
		a, err := d.Store.LoadAthlete(ctx, id)
		if err != nil {
			continue // it was removed meanwhile
		}
		found, err := d.AllFindings(ctx, a)
		if err != nil {
			continue
		}
		list = append(list, consult.Practised(a, found, d.Now(), d.Calculate()))
	}
	if l := climate.LearnStart(list); l.Holds {
		return l.Start
	}
	return climate.Start{}
}

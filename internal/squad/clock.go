package squad

import (
	"time"

	"ebbwell/internal/evidence"
	"ebbwell/internal/record"
)

// Span is when a session begins and ends, as instants.
type Span struct {
	Start, End       time.Time
	HasStart, HasEnd bool
}

// SpanOf is the span of a session.
func SpanOf(s record.Session, zone *time.Location) Span {
	var p Span
	p.Start, p.HasStart = s.At(s.Start, zone)
	p.End, p.HasEnd = s.At(s.End, zone)
	if p.HasEnd && p.HasStart && s.EndsNextDay && !p.End.After(p.Start) {
		p.End = p.End.AddDate(0, 0, 1)
	}
	return p
}

// Minutes is how long it really was, which differs from the clocks where they were
// set in between; ok is false while start or end is missing.
func (p Span) Minutes() (minutes float64, ok bool) {
	if !p.HasStart || !p.HasEnd || !p.End.After(p.Start) {
		return 0, false
	}
	return p.End.Sub(p.Start).Minutes(), true
}

// ClocksChanged reports whether the clocks were set within a session, so that times
// on the wall do not give its length.
func ClocksChanged(s record.Session, zone *time.Location) bool {
	went, ok1 := SpanOf(s, zone).Minutes()
	wall, ok2 := s.Minutes()
	return ok1 && ok2 && went != wall
}

// ClockNow is the time of day on the wall.
func ClockNow(now time.Time) record.Clock { return record.Clock(now.Format("15:04")) }

// EndNow ends a session at a time: on the next day where the clock has passed
// midnight since the start.
func EndNow(s *record.Session, now time.Time) {
	s.End = ClockNow(now)
	day, ok := s.Date.Time()
	s.EndsNextDay = ok && record.DateOf(now) != record.DateOf(day)
}

// Patch is how the patches of an athlete stand.
type Patch struct {
	// On and Off are whether any is on the skin, and whether all that were are off.
	On, Off bool
	// Minutes worn, so far or in all; Known is false where no time is there.
	Minutes float64
	Known   bool
	// At is when it came off, By when it is to.
	At, By record.Clock
	// Due: it is on and was worn long enough.
	Due bool
	// Laboratory: its sodium is still to come.
	Laboratory bool
}

// PatchOf is how the patches of a sheet stand at a time.
func PatchOf(t record.Test, now time.Time) Patch {
	var p Patch
	for _, one := range t.Patches {
		if one.On == "" {
			continue
		}
		p.Laboratory = p.Laboratory || !one.Sodium.Known()
		on, ok := putOn(t.Session, one.On, now)
		if one.Off == "" {
			p.On, p.Off = true, false
			if ok {
				p.Minutes, p.Known = now.Sub(on).Minutes(), true
				p.By = ClockNow(on.Add(time.Duration(evidence.PatchWorn) * time.Minute))
				p.Due = p.Minutes >= evidence.PatchWorn
			}
			continue
		}
		off, okOff := t.Session.At(one.Off, now.Location())
		if !p.On {
			p.Off, p.At = true, one.Off
			if ok && okOff {
				if off.Before(on) {
					off = off.AddDate(0, 0, 1)
				}
				p.Minutes, p.Known = off.Sub(on).Minutes(), true
			}
		}
	}
	return p
}

// farOff is further from the start than a patch is put on before a session, or a session
// that begins after midnight is prepared the evening before.
const farOff = 12 * time.Hour

// putOn is when a patch went on: within hours of the start of the session, so that while
// the end is not known a time long before the start is one of the next day, and one that
// is still to come one of the evening before.
func putOn(s record.Session, c record.Clock, now time.Time) (on time.Time, ok bool) {
	on, ok = s.At(c, now.Location())
	start, known := s.At(s.Start, now.Location())
	switch {
	case !ok || !known:
	case start.Sub(on) > farOff:
		on = on.AddDate(0, 0, 1)
	case on.After(now) && on.Sub(start) > farOff:
		on = on.AddDate(0, 0, -1)
	}
	return on, ok
}

// TurnPatches puts the patches of a session on, or takes those that are on off,
// at a time.
func TurnPatches(g record.GroupSession, t *record.Test, now time.Time) {
	PatchesAt(g, t, ClockNow(now))
}

// PatchesAt is [TurnPatches] at a time of day that is typed.
func PatchesAt(g record.GroupSession, t *record.Test, clock record.Clock) {
	on := false
	for i := range t.Patches {
		if p := &t.Patches[i]; p.On != "" && p.Off == "" {
			p.Off, on = clock, true
		}
	}
	if on {
		return
	}
	if len(t.Patches) > 0 && t.Patches[0].On != "" {
		return // they were worn and are off
	}
	sites := Sites(g)
	if len(sites) == 0 {
		sites = []record.Site{""}
	}
	for i, site := range sites {
		if i < len(t.Patches) {
			t.Patches[i].On = clock
			continue
		}
		t.Patches = append(t.Patches, record.Patch{
			Meta: record.Meta{ID: record.NewID()}, Order: i + 1, Site: site, On: clock, AtLaboratory: true,
		})
	}
}

// CrossMidnight says whether a session ends on the next day, by its times: an end
// before its start does.
func CrossMidnight(s *record.Session) {
	start, ok1 := s.Start.Minutes()
	end, ok2 := s.End.Minutes()
	s.EndsNextDay = ok1 && ok2 && end < start
}

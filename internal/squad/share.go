package squad

import (
	"slices"
	"strings"
	"time"

	"ebbwell/internal/consult"
	"ebbwell/internal/record"
)

// shared is one value that a session and its sheets both hold.
type shared struct {
	path string
	// in and of are the value in a session and in a sheet: *record.Number or *string
	// or *bool behind their own types.
	in func(g *record.GroupSession) any
	of func(t *record.Test) any
}

// sharedFields lists what is entered once for all.
func sharedFields() []shared {
	list := []shared{
		{"session.date", func(g *record.GroupSession) any { return &g.Session.Date }, func(t *record.Test) any { return &t.Session.Date }},
		{"session.place", func(g *record.GroupSession) any { return &g.Session.Place }, func(t *record.Test) any { return &t.Session.Place }},
		{"session.sport", func(g *record.GroupSession) any { return &g.Session.Sport }, func(t *record.Test) any { return &t.Session.Sport }},
		{"session.activity", func(g *record.GroupSession) any { return &g.Session.Activity }, func(t *record.Test) any { return &t.Session.Activity }},
		{"session.start", func(g *record.GroupSession) any { return &g.Session.Start }, func(t *record.Test) any { return &t.Session.Start }},
		{"session.end", func(g *record.GroupSession) any { return &g.Session.End }, func(t *record.Test) any { return &t.Session.End }},
		{"session.endsNextDay", func(g *record.GroupSession) any { return &g.Session.EndsNextDay }, func(t *record.Test) any { return &t.Session.EndsNextDay }},
		{"session.met", func(g *record.GroupSession) any { return &g.Session.Met }, func(t *record.Test) any { return &t.Session.Met }},
		{"session.effort", func(g *record.GroupSession) any { return &g.Session.Effort }, func(t *record.Test) any { return &t.Session.Effort }},
		{"air.temperature", func(g *record.GroupSession) any { return &g.Air.Temperature }, func(t *record.Test) any { return &t.Air.Temperature }},
		{"air.humidity", func(g *record.GroupSession) any { return &g.Air.Humidity }, func(t *record.Test) any { return &t.Air.Humidity }},
		{"air.wind", func(g *record.GroupSession) any { return &g.Air.Wind }, func(t *record.Test) any { return &t.Air.Wind }},
		{"air.sun", func(g *record.GroupSession) any { return &g.Air.Sun }, func(t *record.Test) any { return &t.Air.Sun }},
		{"air.altitude", func(g *record.GroupSession) any { return &g.Air.Altitude }, func(t *record.Test) any { return &t.Air.Altitude }},
		{"air.wbgt", func(g *record.GroupSession) any { return &g.Air.Wbgt }, func(t *record.Test) any { return &t.Air.Wbgt }},
		{"air.clothing", func(g *record.GroupSession) any { return &g.Air.Clothing }, func(t *record.Test) any { return &t.Air.Clothing }},
		{"scale.step", func(g *record.GroupSession) any { return &g.ScaleStep }, func(t *record.Test) any { return &t.Scale.Step }},
	}
	return list
}

// sameValue reports whether two places hold the same.
func sameValue(a, b any) bool {
	switch x := a.(type) {
	case *record.Number:
		y, ok := b.(*record.Number)
		return ok && (x.Same(*y) || x.Known() && y.Known() && *x.Value == *y.Value)
	case *record.Date:
		y, ok := b.(*record.Date)
		return ok && *x == *y
	case *record.Clock:
		y, ok := b.(*record.Clock)
		return ok && *x == *y
	case *record.Sun:
		y, ok := b.(*record.Sun)
		return ok && *x == *y
	case *string:
		y, ok := b.(*string)
		return ok && *x == *y
	case *bool:
		y, ok := b.(*bool)
		return ok && *x == *y
	}
	return false
}

// emptyValue reports whether nothing was entered in a place.
func emptyValue(a any) bool {
	switch x := a.(type) {
	case *record.Number:
		return !x.Known()
	case *record.Date:
		return *x == ""
	case *record.Clock:
		return *x == ""
	case *record.Sun:
		return *x == ""
	case *string:
		return *x == ""
	case *bool:
		return !*x
	}
	return true
}

// setValue copies the value of one place into another of the same type.
func setValue(to, from any) {
	switch x := to.(type) {
	case *record.Number:
		*x = *from.(*record.Number)
	case *record.Date:
		*x = *from.(*record.Date)
	case *record.Clock:
		*x = *from.(*record.Clock)
	case *record.Sun:
		*x = *from.(*record.Sun)
	case *string:
		*x = *from.(*string)
	case *bool:
		*x = *from.(*bool)
	}
}

// Open reports whether a sheet can still be written into.
func Open(t record.Test) bool { return t.State == record.TestOpen || t.State == "" }

// Share writes what changed in a session from before to after into a sheet: every
// value the sheet has not of its own. A sheet that is closed stays as it is. It
// reports whether anything changed.
func Share(before, after record.GroupSession, t *record.Test) bool {
	if !Open(*t) {
		return false
	}
	changed := false
	ownTimes := ownSpan(before, *t)
	for _, f := range sharedFields() {
		old, now, here := f.in(&before), f.in(&after), f.of(t)
		if sameValue(old, now) || sameValue(here, now) {
			continue
		}
		if !sameValue(here, old) && !emptyValue(here) {
			continue
		}
		if f.path == "session.endsNextDay" && ownTimes {
			continue // it goes with the athlete's own end
		}
		setValue(here, now)
		changed = true
	}
	return shareBottles(before, after, t) || changed
}

// ownSpan reports whether an athlete has a start or an end of their own.
func ownSpan(g record.GroupSession, t record.Test) bool {
	return t.Session.Start != "" && t.Session.Start != g.Session.Start || t.Session.End != "" && t.Session.End != g.Session.End
}

// shareBottles gives a sheet the bottles of the session: what is in the i-th of
// them follows where the sheet had the same, a new one is added behind, and one
// that went is taken away where nothing of it was entered.
func shareBottles(before, after record.GroupSession, t *record.Test) bool {
	changed := false
	for i, kind := range after.Bottles {
		if i >= len(before.Bottles) {
			if len(t.Bottles) <= i {
				t.Bottles = append(t.Bottles, bottleOf(kind, i))
				changed = true
			}
			continue
		}
		old := before.Bottles[i]
		if i >= len(t.Bottles) || old.ProductID == kind.ProductID && old.Name == kind.Name {
			continue
		}
		if b := &t.Bottles[i]; b.ProductID == old.ProductID && b.Name == old.Name {
			b.ProductID, b.Name = kind.ProductID, kind.Name
			changed = true
		}
	}
	for i := len(before.Bottles) - 1; i >= len(after.Bottles); i-- {
		if i < len(t.Bottles) && untouched(t.Bottles[i]) {
			t.Bottles = slices.Delete(t.Bottles, i, i+1)
			changed = true
		}
	}
	return changed
}

// bottleOf is a new bottle of a kind at a place, counted from 0.
func bottleOf(kind record.BottleKind, at int) record.Bottle {
	return record.Bottle{Meta: record.Meta{ID: record.NewID()}, Order: at + 1, ProductID: kind.ProductID, Name: kind.Name}
}

// untouched reports whether nothing of a bottle was entered.
func untouched(b record.Bottle) bool {
	return !b.Before.Known() && !b.After.Known() && !b.Poured.Known() && !b.Volume.Known() && len(b.Refills) == 0 && b.Use == ""
}

// Own lists what of a sheet is the athlete's own and not the session's, by path.
func Own(g record.GroupSession, t record.Test) []string {
	var list []string
	for _, f := range sharedFields() {
		here := f.of(&t)
		if !emptyValue(here) && !sameValue(here, f.in(&g)) {
			list = append(list, f.path)
		}
	}
	for i, kind := range g.Bottles {
		if i < len(t.Bottles) && t.Bottles[i].ProductID != kind.ProductID {
			list = append(list, "bottles."+string(t.Bottles[i].ID)+".productID")
		}
	}
	if len(t.Bottles) > len(g.Bottles) {
		list = append(list, "bottles")
	}
	return list
}

// OwnTimes reports whether an athlete's start or end is not the session's.
func OwnTimes(g record.GroupSession, t record.Test) bool {
	return slices.ContainsFunc(Own(g, t), func(p string) bool { return p == "session.start" || p == "session.end" })
}

// NewSheet begins an athlete's own sheet in a session.
func NewSheet(g record.GroupSession, a record.Athlete, now time.Time) record.Test {
	t := record.Test{Meta: record.Meta{ID: record.NewID(), CreatedAt: now}, AthleteID: a.ID, State: record.TestOpen}
	t.Session.UsedToHeat = a.Acclimatised
	t.Scale.Before, t.Scale.After = record.DressMinimal, record.DressMinimal
	Share(record.GroupSession{}, g, &t)
	if t.Session.Sport == "" {
		t.Session.Sport = a.Sport
	}
	return t
}

// Begin begins a session of a day: bottles, scale, patches, place, sport and times
// as in an earlier one, which may be empty; the air is measured anew.
func Begin(last record.GroupSession, name string, now time.Time) record.GroupSession {
	g := record.GroupSession{Meta: record.Meta{ID: record.NewID()}, Name: name, ScaleStep: last.ScaleStep, PatchSites: last.PatchSites, ByStation: last.ByStation}
	g.Session = record.Session{
		Date: record.DateOf(now), Place: last.Session.Place, Sport: last.Session.Sport, Activity: last.Session.Activity, Met: last.Session.Met,
		Start: last.Session.Start, End: last.Session.End, EndsNextDay: last.Session.EndsNextDay,
	}
	g.Air = record.Air{Clothing: last.Air.Clothing, Altitude: last.Air.Altitude}
	for i, b := range last.Bottles {
		b.Meta, b.GroupSessionID, b.Order = record.Meta{ID: record.NewID()}, "", i+1
		g.Bottles = append(g.Bottles, b)
	}
	if len(g.Bottles) == 0 {
		g.Bottles = []record.BottleKind{{Meta: record.Meta{ID: record.NewID()}, Order: 1, ProductID: consult.Water}}
	}
	return g
}

// Sites are the sites of the patches everybody wears.
func Sites(g record.GroupSession) []record.Site {
	var list []record.Site
	for _, s := range strings.Split(g.PatchSites, ",") {
		if s = strings.TrimSpace(s); s != "" {
			list = append(list, record.Site(s))
		}
	}
	return list
}

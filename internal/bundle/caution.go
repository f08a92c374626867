package bundle

import (
	"encoding/json"
	"reflect"
	"strings"
	"time"

	"ebbwell/internal/care"
	"ebbwell/internal/record"
)

// side says which of two values is the more cautious.
type side int

const (
	neither side = iota
	oursSafer
	theirsSafer
)

// caution compares the two values of a field by how cautious they are; neither for a
// field that keeps nobody safe.
func caution(kind record.Kind, path, name string, mine, theirs reflect.Value, now time.Time) side {
	switch {
	case kind == record.KindAthlete && (path == "usualDrinking" || path == "deficitAim"),
		kind == record.KindPlan && (path == "aims.drinking" || path == "aims.strength" || path == "target.deficitAim"):
		return lowerLimit(fieldAt(mine, name).Interface().(record.Number), fieldAt(theirs, name).Interface().(record.Number))
	case kind == record.KindAthlete && path == "born":
		return younger(mine.Addr().Interface().(*record.Athlete), theirs.Addr().Interface().(*record.Athlete), now)
	case strings.HasPrefix(path, "consents."):
		return stricter(name, fieldAt(mine, name).String(), fieldAt(theirs, name).String())
	case strings.HasPrefix(path, "flags.") && name == "kind":
		return oursSafer
	}
	return neither
}

// lowerLimit says which limit is lower; one that is known is safer than none.
func lowerLimit(mine, theirs record.Number) side {
	switch {
	case mine.Known() && theirs.Known() && *mine.Value == *theirs.Value:
		return neither
	case !theirs.Known(), mine.Known() && *mine.Value < *theirs.Value:
		return oursSafer
	}
	return theirsSafer
}

// younger says by which birth date somebody is, or may be, a minor where by the other
// they are not.
func younger(mine, theirs *record.Athlete, now time.Time) side {
	minor := func(a *record.Athlete) bool { return !care.AgeKnown(*a, now) || a.Minor(now) }
	switch {
	case minor(mine) == minor(theirs):
		return neither
	case minor(mine):
		return oursSafer
	}
	return theirsSafer
}

// stricter says which of two days of a consent permits less: an earlier end, a later
// beginning; what it is for, and who gave it, stays as it is here.
func stricter(name, mine, theirs string) side {
	earlier := func(a, b string) side {
		if b == "" || a != "" && a < b {
			return oursSafer
		}
		return theirsSafer
	}
	switch name {
	case "withdrawn", "until":
		return earlier(mine, theirs)
	case "given":
		if mine == "" || theirs != "" && mine > theirs {
			return oursSafer
		}
		return theirsSafer
	case "purpose":
		return oursSafer
	}
	return neither
}

// cautious decides about a field that keeps somebody safe: whether theirs stands.
// What they did not change themselves is only an older state of ours.
func (m *merging) cautious(p two, path string, c side, at later, mine, theirs reflect.Value, name string) bool {
	stale := !at.theirs && !at.both
	switch {
	case stale:
		return false
	case c == theirsSafer:
		if at.both {
			m.decideField(p, path, mine, name)
		}
		return true
	}
	m.decideField(p, path, theirs, name)
	return false
}

// hiddenMass puts together whether body mass is hidden: it is where either side has it
// so, unless we showed it and they only have the older state.
func (m *merging) hiddenMass(p two, mine *record.Athlete, theirs record.Athlete) {
	changed := func(o own) bool {
		for _, path := range []string{"massHidden", "massHiddenSettled", "born"} {
			if _, ok := o[path]; ok {
				return true
			}
		}
		return false
	}
	here, there := care.MassHidden(*mine, m.now), care.MassHidden(theirs, m.now)
	noHistory := !p.bothHistories
	switch {
	case here == there, !changed(p.others) && !noHistory:
	case there:
		if changed(p.ours) || noHistory {
			m.decideField(p, "massHidden", reflect.ValueOf(mine).Elem(), "massHidden")
		}
		mine.MassHidden, mine.MassHiddenSettled = true, true
	default:
		m.decideField(p, "massHidden", reflect.ValueOf(&theirs).Elem(), "massHidden")
	}
}

// Act is what a decision would do.
type Act string

// What decisions do.
const (
	// ActSet sets a field, ActAdd adds a row, ActRemove removes one, ActWhole takes a
	// whole plan.
	ActSet    Act = "set"
	ActAdd    Act = "add"
	ActRemove Act = "remove"
	ActWhole  Act = "whole"
)

// Decision is something a person decides: what stands is the more cautious, and what
// else there is can be taken in its place.
type Decision struct {
	Ref     record.Ref
	Athlete record.ID
	Path    string
	Act     Act
	// Stands is what stands, Other what can be taken.
	Stands, Other Value
	// Data is that as JSON.
	Data []byte
}

// decideField lets a person take the value a field has in a row.
func (m *merging) decideField(p two, path string, from reflect.Value, name string) {
	leaf := fieldAt(from, name)
	d := Decision{Ref: p.ref, Athlete: p.athlete, Path: path, Act: ActSet, Other: valueOf(leaf, structField(from, name))}
	d.Data = encoded(leaf.Interface())
	m.out.Decisions = append(m.out.Decisions, d)
}

// decideRemoval lets a person remove a condition that they removed.
func (m *merging) decideRemoval(p two, path string, f record.Flag) {
	m.out.Decisions = append(m.out.Decisions, Decision{Ref: p.ref, Athlete: p.athlete, Path: path, Act: ActRemove, Stands: Value{Text: string(f.Kind)}})
}

// decideConsent lets a person add a consent that was given there.
func (m *merging) decideConsent(p two, path string, c record.Consent) {
	m.out.Decisions = append(m.out.Decisions, Decision{Ref: p.ref, Athlete: p.athlete, Path: path, Act: ActAdd, Other: Value{Text: string(c.Purpose)}, Data: encoded(c)})
}

// decideWhole lets a person take their version of an agreed plan.
func (m *merging) decideWhole(p two, theirs record.Plan) {
	m.out.Decisions = append(m.out.Decisions, Decision{Ref: p.ref, Athlete: p.athlete, Act: ActWhole, Other: Value{Text: theirs.Name}, Data: encoded(theirs)})
}

// encoded writes a record or a field; all of them can be written.
func encoded(v any) []byte {
	data, err := json.Marshal(v)
	if err != nil {
		return nil
	}
	return data
}

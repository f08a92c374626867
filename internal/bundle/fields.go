package bundle

import (
	"reflect"
	"time"

	"ebbwell/internal/record"
)

// later is whose change stands.
type later struct {
	// theirs: only they changed it, or they did so last. both: so did we.
	theirs, both bool
	// tie: at the same time.
	tie              bool
	oursAt, theirsAt time.Time
	byRow            bool
}

// later decides whose a field, a row or a record is: path is looked up in what each
// side changed by itself, row is the row it stands in, which may be new.
//
// Where both histories are there and neither side changed it, they differ because a
// merge before this one left them so: ours stands. Where one has no history the time of
// the row decides.
func (m *merging) later(p two, path, row string, mine, theirs record.Meta) later {
	oursAt, weDid := at(p.ours, path, row)
	theirsAt, theyDid := at(p.others, path, row)
	switch {
	case weDid && !theyDid:
		return later{oursAt: oursAt}
	case theyDid && !weDid:
		return later{theirs: true, theirsAt: theirsAt}
	case weDid && theyDid:
		return later{theirs: theirsAt.After(oursAt), both: true, tie: theirsAt.Equal(oursAt), oursAt: oursAt, theirsAt: theirsAt}
	}
	if p.bothHistories {
		return later{}
	}
	return later{theirs: theirs.ChangedAt.After(mine.ChangedAt), both: true, tie: theirs.ChangedAt.Equal(mine.ChangedAt),
		oursAt: mine.ChangedAt, theirsAt: theirs.ChangedAt, byRow: true}
}

// at is when one side changed a field by itself, or made the row it stands in; for an
// empty path anything at all.
func at(o own, path, row string) (time.Time, bool) {
	if path == "" {
		return o.within("")
	}
	if c, ok := o[path]; ok {
		return c.At, true
	}
	if c, ok := o[row]; ok && row != "" {
		return c.At, true
	}
	return time.Time{}, false
}

// fields puts the fields of one row together.
func (m *merging) fields(p two, mine, theirs reflect.Value, row string) {
	prefix := ""
	if row != "" {
		prefix = row + "."
	}
	eachLeaf(mine, "", func(name string, _ reflect.Value, _ reflect.StructField) {
		if p.ref.Kind == record.KindAthlete && (name == "massHidden" || name == "massHiddenSettled") && row == "" {
			return // both at once, in hiddenMass
		}
		m.field(p, prefix+name, row, mine, theirs, name)
	})
}

// field puts one field together: path names it in the record, name in its row.
func (m *merging) field(p two, path, row string, mine, theirs reflect.Value, name string) {
	ours, others := fieldAt(mine, name), fieldAt(theirs, name)
	if sameLeaf(ours, others) {
		return
	}
	at := m.later(p, path, row, *metaOf(mine), *metaOf(theirs))
	f := structField(mine, name)
	a, b := valueOf(ours, f), valueOf(others, f)
	stand := at.theirs || at.tie && b.key() > a.key()
	if c := caution(p.ref.Kind, path, name, mine, theirs, m.now); c != neither {
		stand = m.cautious(p, path, c, at, mine, theirs, name)
	}
	if at.both {
		m.out.Conflicts = append(m.out.Conflicts, Conflict{Ref: p.ref, Athlete: p.athlete, Path: path, Ours: a, Theirs: b,
			OursAt: at.oursAt, TheirsAt: at.theirsAt, ByRow: at.byRow, TheirsStands: stand})
	}
	if stand {
		ours.Set(others)
	}
}

// structField is the description of a field of a row.
func structField(v reflect.Value, path string) (found reflect.StructField) {
	eachLeaf(v, "", func(name string, _ reflect.Value, f reflect.StructField) {
		if name == path {
			found = f
		}
	})
	return found
}

// lists puts the lists of one row together.
func (m *merging) lists(p two, mine, theirs reflect.Value, prefix string) {
	eachList(mine, func(l list) { m.rows(p, l, listNamed(theirs, l.path), prefix) })
}

// rows puts one list together; the rows keep our order, theirs come behind.
func (m *merging) rows(p two, mine, theirs list, prefix string) {
	there := rowsByID(theirs.rows)
	kept := reflect.MakeSlice(mine.rows.Type(), 0, mine.rows.Len())
	here := map[record.ID]bool{}
	for i := range mine.rows.Len() {
		row := mine.rows.Index(i)
		id := metaOf(row).ID
		here[id] = true
		path := prefix + mine.path + "." + string(id)
		other, ok := there[id]
		switch {
		case ok:
			m.fields(p, row, other, path)
			m.lists(p, row, other, path+".")
		case m.theyRemoved(p, path, row):
			continue
		}
		kept = reflect.Append(kept, row)
	}
	for i := range theirs.rows.Len() {
		row := theirs.rows.Index(i)
		id := metaOf(row).ID
		if path := prefix + mine.path + "." + string(id); !here[id] && m.takesRow(p, path, row) {
			kept = reflect.Append(kept, row)
		}
	}
	if kept.Len() > 0 || mine.rows.Len() > 0 {
		mine.rows.Set(kept)
	}
}

// theyRemoved reports whether a row that is only here goes, because they took it away
// and nobody here changed it since.
func (m *merging) theyRemoved(p two, path string, row reflect.Value) bool {
	if !p.others.removed(path) {
		return false
	}
	if flag, ok := row.Addr().Interface().(*record.Flag); ok {
		m.decideRemoval(p, path, *flag)
		return false
	}
	if _, ok := row.Addr().Interface().(*record.SafetyNote); ok {
		return false // such a line is added and never taken away
	}
	theirsAt := p.others[path].At
	oursAt, changed := p.ours.within(path)
	gone := !changed || theirsAt.After(oursAt)
	if changed {
		m.out.Conflicts = append(m.out.Conflicts, Conflict{Ref: p.ref, Athlete: p.athlete, Path: path, OursAt: oursAt, TheirsAt: theirsAt, TheirsStands: gone,
			Ours: Value{Text: present}})
	}
	return gone
}

// takesRow reports whether a row that is only there comes here: not where we took it
// away and they did not change it since, and a consent only once a person says so.
func (m *merging) takesRow(p two, path string, row reflect.Value) bool {
	theirsAt, changed := p.others.within(path)
	taken := changed || !p.bothHistories // what they had before we parted, we took away
	if p.ours.removed(path) {
		oursAt := p.ours[path].At
		if taken = changed && theirsAt.After(oursAt); changed {
			m.out.Conflicts = append(m.out.Conflicts, Conflict{Ref: p.ref, Athlete: p.athlete, Path: path, OursAt: oursAt, TheirsAt: theirsAt, TheirsStands: taken,
				Theirs: Value{Text: present}})
		}
	}
	if consent, ok := row.Addr().Interface().(*record.Consent); ok && taken {
		m.decideConsent(p, path, *consent)
		return false
	}
	return taken
}

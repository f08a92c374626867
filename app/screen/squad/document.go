package squad

import (
	"context"
	"maps"
	"reflect"
	"sync"

	"ebbwell/app/kit/bind"
	"ebbwell/app/kit/desk"
	"ebbwell/app/kit/undo"
	"ebbwell/internal/record"
	"ebbwell/internal/squad"
	"ebbwell/internal/store"
)

// sheet is an athlete's sheet as it is open here.
type sheet = bind.Sheet[record.Test]

// day is a session with its sheets; it is never changed in place.
type day struct {
	session record.GroupSession
	sheets  map[record.ID]*stamped
}

// stamped is a sheet with the number of its last change.
type stamped struct {
	sheet
	stamp int
}

// clone copies a sheet so that no list is shared.
func (s *stamped) clone(stamp int) *stamped {
	return &stamped{sheet{Record: s.Record.Clone(), Raw: maps.Clone(s.Raw), Reasons: maps.Clone(s.Reasons)}, stamp}
}

// document is the day as it is open: its present, its steps back, its saving.
type document struct {
	keeper  desk.Keeper
	store   *store.Store
	present day
	history undo.History[day]
	stamps  int

	// kept is the day as it was saved last, metas how its records were kept; saves run
	// beside the window.
	mu    sync.Mutex
	kept  day
	metas map[record.ID]record.Meta
}

// newDocument opens a day as it is kept.
func newDocument(d *desk.Desk, now day) *document {
	doc := &document{keeper: d.Keep, store: d.Store, present: now, kept: now, metas: map[record.ID]record.Meta{}}
	doc.metas[now.session.ID] = now.session.Meta
	for id, s := range now.sheets {
		doc.metas[id] = s.Record.Meta
		doc.stamps = max(doc.stamps, s.stamp)
	}
	return doc
}

// Now is the present day; it must not be changed.
func (d *document) Now() day { return d.present }

// ChangeSheet changes one sheet; changes of one visit join.
func (d *document) ChangeSheet(visit, label string, id record.ID, f func(*sheet)) {
	s, ok := d.present.sheets[id]
	if !ok || !squad.Open(s.Record) {
		return
	}
	d.history.Record(d.present, visit, label)
	d.stamps++
	next := s.clone(d.stamps)
	f(&next.sheet)
	sheets := maps.Clone(d.present.sheets)
	sheets[id] = next
	d.put(day{d.present.session, sheets}, visit)
}

// ChangeSession changes what all share, and writes it through to the sheets.
func (d *document) ChangeSession(visit, label string, f func(*record.GroupSession)) {
	d.history.Record(d.present, visit, label)
	before, after := d.present.session, d.present.session.Clone()
	f(&after)
	sheets := maps.Clone(d.present.sheets)
	for _, m := range after.Members {
		s, ok := sheets[m.TestID]
		if !ok {
			continue
		}
		d.stamps++
		next := s.clone(d.stamps)
		if squad.Share(before, after, &next.Record) {
			sheets[m.TestID] = next
		}
	}
	d.put(day{after, sheets}, visit)
}

// Add takes new members in with their sheets. It is no step back: what was added is
// taken off again by its own button, and a step back leaves it there, with what held
// for all at that step.
func (d *document) Add(members []record.Member, tests []record.Test) {
	from := d.present.session
	joined := func(now day) day {
		next := day{now.session.Clone(), maps.Clone(now.sheets)}
		next.session.Members = append(next.session.Members, members...)
		for _, t := range tests {
			d.stamps++
			one := &stamped{sheet{Record: t.Clone(), Raw: map[string]string{}, Reasons: map[string]string{}}, d.stamps}
			squad.Share(from, now.session, &one.Record)
			next.sheets[t.ID] = one
		}
		return next
	}
	d.history.EndVisit()
	d.history.Map(joined)
	d.put(joined(d.present), "")
}

// Closed takes a sheet in as the store has closed it. It is no step back, and a step
// back does not open it.
func (d *document) Closed(t record.Test) {
	s, ok := d.present.sheets[t.ID]
	if !ok {
		return
	}
	d.stamps++
	one := s.clone(d.stamps)
	one.Record = t
	put := func(now day) day {
		if _, ok := now.sheets[t.ID]; !ok {
			return now
		}
		next := day{now.session, maps.Clone(now.sheets)}
		next.sheets[t.ID] = one
		return next
	}
	d.history.EndVisit()
	d.history.Map(put)
	d.present = put(d.present)
	d.mu.Lock()
	d.kept, d.metas[t.ID] = put(d.kept), t.Meta
	d.mu.Unlock()
}

// EndVisit closes the visit to a field.
func (d *document) EndVisit() { d.history.EndVisit() }

// Undo goes a step back, Redo one forward; false where there is none.
func (d *document) Undo() bool { return d.moved(d.history.Undo(d.present)) }

// Redo goes a step forward.
func (d *document) Redo() bool { return d.moved(d.history.Redo(d.present)) }

func (d *document) moved(to day, ok bool) bool {
	if ok {
		d.put(to, "")
	}
	return ok
}

// put makes a day the present and hands its saving over.
func (d *document) put(next day, visit string) {
	d.present = next
	d.keeper.Later("session "+string(next.session.ID), func(ctx context.Context) error { return d.save(ctx, next, store.Edit{Visit: visit}) })
}

// save writes what differs from what is kept, in one transaction. It runs beside
// the window.
func (d *document) save(ctx context.Context, next day, e store.Edit) error {
	d.mu.Lock()
	defer d.mu.Unlock()
	q := store.Squad{Session: next.session}
	q.Session.Meta = d.metas[next.session.ID]
	for id, s := range next.sheets {
		before := d.kept.sheets[id]
		if before == s {
			continue
		}
		t := s.Record
		if before == nil {
			before = &stamped{}
		} else {
			t.Meta = d.metas[id]
		}
		if !reflect.DeepEqual(before.Record, s.Record) {
			q.Tests = append(q.Tests, t)
		}
		q.Texts = append(q.Texts, texts(id, before.Raw, s.Raw, false)...)
		q.Texts = append(q.Texts, texts(id, before.Reasons, s.Reasons, true)...)
	}
	if len(q.Tests)+len(q.Texts) == 0 && reflect.DeepEqual(d.kept.session, next.session) {
		d.kept = next
		return nil
	}
	saved, err := d.store.SaveSquad(ctx, q, e)
	if err != nil {
		return err
	}
	d.metas[saved.Session.ID] = saved.Session.Meta
	for _, t := range saved.Tests {
		d.metas[t.ID] = t.Meta
	}
	d.kept = next
	return nil
}

// texts are those of a sheet that differ from the kept ones, empty where they went.
func texts(id record.ID, kept, now map[string]string, reason bool) []store.SquadText {
	var list []store.SquadText
	for path := range kept {
		if _, there := now[path]; !there {
			list = append(list, store.SquadText{Test: id, Field: path, Reason: reason})
		}
	}
	for path, text := range now {
		if kept[path] != text {
			list = append(list, store.SquadText{Test: id, Field: path, Text: text, Reason: reason})
		}
	}
	return list
}

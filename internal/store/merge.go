package store

import (
	"context"
	"encoding/json"
	"errors"
	"fmt"
	"reflect"
	"strings"
	"time"

	"gorm.io/gorm/clause"

	"ebbwell/internal/bundle"
	"ebbwell/internal/record"
)

// Incomer is a bundle that is to be put together with what is here.
type Incomer struct {
	Bundle bundle.Bundle
	// Seen is what the person has seen would come of it, worked out at the moment At.
	// Where the records here have changed since, nothing is written.
	Seen bundle.Result
	At   time.Time
	// File is the bundle's name without a folder.
	File string
	// Drafts are agreed plans that come as drafts: the guards do not let them be
	// agreed here.
	Drafts map[record.ID]bool
	// Progress is told how many of how many records are written; may be nil.
	Progress func(done, of int)
}

// undoing is what stood before a merge.
type undoing struct {
	// New are records that were not here, in the order they were written.
	New []stamped
	// Athletes and so on as they were before.
	Athletes []record.Athlete
	Tests    []record.Test
	Plans    []record.Plan
	// After are the stamps of those afterwards.
	After   []stamped
	Changes []record.ID
	Frozen  []record.ID
	Raw     []record.RawText
	Prints  []record.ID
}

// stamped is a record with the time it was last changed.
type stamped struct {
	Ref record.Ref
	At  time.Time
}

// Merge puts a bundle together with the records, in one transaction: all of it or
// nothing. CodeConflict where the records are not those the person has seen.
func (s *Store) Merge(ctx context.Context, in Incomer) (record.Merge, error) {
	m := record.Merge{ID: record.NewID(), File: in.File, Practice: in.Bundle.From, Sender: in.Bundle.By}
	err := s.write(ctx, "put a bundle together", func(w *work) error {
		here, err := s.hereOf(w.tx, in.Bundle)
		if err != nil {
			return err
		}
		r := bundle.Merge(here, in.Bundle, in.At)
		if !sameResult(r, in.Seen) {
			return &Error{Code: CodeConflict, Doing: "put a bundle together", Err: errors.New("the records changed since they were looked at")}
		}
		m.At, m.By = w.now, w.by
		x := merging{work: w, in: in, r: r, id: m.ID, ended: ctx.Err}
		return x.all(&m)
	})
	if err != nil {
		return record.Merge{}, err
	}
	return m, nil
}

// sameResult compares what was seen with what is.
func sameResult(a, b bundle.Result) bool {
	one, err := json.Marshal(a)
	two, err2 := json.Marshal(b)
	return err == nil && err2 == nil && string(one) == string(two)
}

// merging is a merge being written.
type merging struct {
	*work
	// ended is the context's error once it is to stop.
	ended func() error
	in    Incomer
	r     bundle.Result
	id    record.ID
	undo  undoing
	done  int
}

// all writes everything and what stood before it.
func (x *merging) all(m *record.Merge) error {
	x.drafts()
	for _, part := range []func() error{x.fresh, x.changed, x.beside, x.marks, x.questions} {
		if err := part(); err != nil {
			return err
		}
	}
	m.Athletes, m.Tests, m.Plans = len(x.r.NewAthletes)+len(x.r.Athletes), len(x.r.NewTests)+len(x.r.Tests), len(x.r.NewPlans)+len(x.r.Plans)
	var people []string
	for _, a := range x.in.Bundle.Athletes {
		people = append(people, string(a.ID))
	}
	m.People = strings.Join(people, " ")
	before, err := json.Marshal(x.undo)
	if err != nil {
		return fmt.Errorf("write down what stood before: %w", err)
	}
	m.Before = before
	return x.tx.Create(m).Error
}

// drafts makes drafts of the plans that may not be agreed here.
func (x *merging) drafts() {
	for _, list := range [][]record.Plan{x.r.NewPlans, x.r.Plans} {
		for i := range list {
			if p := &list[i]; x.in.Drafts[p.ID] && p.State == record.PlanAgreed {
				x.r.Marks = append(x.r.Marks, bundle.Mark{Ref: record.Ref{Kind: record.KindPlan, ID: p.ID}, Path: "state", Before: string(p.State), After: string(record.PlanDraft)})
				p.State, p.Agreement.AgreedAt, p.Agreement.AgreedBy = record.PlanDraft, nil, ""
			}
		}
	}
}

// next tells that one more record is written.
func (x *merging) next() error {
	x.done++
	if x.in.Progress != nil {
		x.in.Progress(x.done, len(x.r.NewProducts)+len(x.r.NewAthletes)+len(x.r.NewTests)+len(x.r.NewPlans)+len(x.r.Athletes)+len(x.r.Tests)+len(x.r.Plans))
	}
	return x.ended()
}

// fresh writes the records that were not here, as they were there: who made them and
// when is theirs.
func (x *merging) fresh() error {
	return errors.Join(freshOf(x, record.KindProduct, x.r.NewProducts), freshOf(x, record.KindAthlete, x.r.NewAthletes),
		freshOf(x, record.KindTest, x.r.NewTests), freshOf(x, record.KindPlan, x.r.NewPlans))
}

// freshOf writes new records of one kind.
func freshOf[T any](x *merging, kind record.Kind, list []T) error {
	sh := x.shapes[kind]
	for i := range list {
		one := copyOf(list[i])
		value := reflect.ValueOf(&one).Elem()
		sh.link(value)
		rows := rowsOf(sh, value)
		ref := record.Ref{Kind: kind, ID: rows[0].meta().ID}
		if err := sound(rows); err != nil {
			return about(err, ref)
		}
		for _, r := range rows {
			if err := x.insert(r); err != nil {
				return about(fail(err, "write row"), ref)
			}
		}
		x.undo.New = append(x.undo.New, stamped{ref, rows[0].meta().ChangedAt})
		if err := x.next(); err != nil {
			return err
		}
	}
	return nil
}

// insert writes one row with its own times and names.
func (x *merging) insert(r row) error {
	m := r.meta()
	values := r.columns()
	values["id"], values["created_at"], values["created_by"] = string(m.ID), kept(m.CreatedAt), m.CreatedBy
	values["changed_at"], values["changed_by"], values["deleted_at"] = kept(m.ChangedAt), m.ChangedBy, nil
	return x.table(r.shape).Create(values).Error
}

// changed writes the records that are here and become others.
func (x *merging) changed() error {
	for i := range x.r.Athletes {
		before, err := changedOne(x, record.KindAthlete, &x.r.Athletes[i])
		if err != nil {
			return err
		}
		x.undo.Athletes = append(x.undo.Athletes, before)
	}
	for i := range x.r.Tests {
		before, err := changedOne(x, record.KindTest, &x.r.Tests[i])
		if err != nil {
			return err
		}
		x.undo.Tests = append(x.undo.Tests, before)
	}
	for i := range x.r.Plans {
		before, err := changedOne(x, record.KindPlan, &x.r.Plans[i])
		if err != nil {
			return err
		}
		x.undo.Plans = append(x.undo.Plans, before)
	}
	return nil
}

// changedOne writes one record and returns it as it was. What the other practice's
// history tells is not told again.
func changedOne[T any](x *merging, kind record.Kind, root *T) (before T, err error) {
	ref := record.Ref{Kind: kind, ID: rootMeta(root).ID}
	if err := pick(x.tx, x.shapes[kind], ref.ID, &before); err != nil {
		return before, about(err, ref)
	}
	steps, err := x.write(kind, root, rootMeta(&before).ChangedAt)
	if err != nil {
		return before, about(err, ref)
	}
	var own []fieldChange
	for _, s := range steps {
		for _, c := range s.fields {
			if !x.explained(ref, c) {
				own = append(own, c)
			}
		}
	}
	x.undo.After = append(x.undo.After, stamped{ref, rootMeta(root).ChangedAt})
	if err := x.log(ref, own, Edit{Visit: string(x.id)}); err != nil {
		return before, err
	}
	return before, x.next()
}

// write writes what differs of a record without a word in the history.
func (w *work) write(kind record.Kind, root any, seen time.Time) ([]step, error) {
	sh, value := w.shapes[kind], reflect.ValueOf(root).Elem()
	sh.link(value)
	rootMeta(root).ChangedAt = seen
	wanted := rowsOf(sh, value)
	if err := sound(wanted); err != nil {
		return nil, err
	}
	now, err := w.kept(sh, wanted[0].meta().ID)
	if err != nil {
		return nil, err
	}
	steps := diff(now, wanted)
	if changed(steps) {
		if err := w.mayChange(kind, now, wanted[0], steps, reopening); err != nil {
			return nil, err
		}
	}
	return steps, w.apply(steps)
}

// explained reports whether the other practice's history says that a field became what it
// becomes here.
func (x *merging) explained(ref record.Ref, c fieldChange) bool {
	var last record.Change
	for _, t := range x.in.Bundle.Changes {
		if t.Kind == ref.Kind && t.Record == ref.ID && t.Field == c.path && !t.At.Before(last.At) {
			last = t
		}
	}
	return !last.At.IsZero() && last.After == c.after
}

// beside writes history, frozen copies, kept pages and unread texts that came.
func (x *merging) beside() error {
	for i := range x.r.Changes {
		if x.r.Changes[i].ID == "" {
			x.r.Changes[i].ID = record.NewID()
		}
		x.r.Changes[i].At = kept(x.r.Changes[i].At)
		x.undo.Changes = append(x.undo.Changes, x.r.Changes[i].ID)
	}
	if len(x.r.Changes) > 0 {
		if err := x.tx.CreateInBatches(x.r.Changes, 100).Error; err != nil {
			return fail(err, "write history")
		}
	}
	for _, f := range x.r.Frozen {
		x.undo.Frozen = append(x.undo.Frozen, f.ID)
		f, err := packed(f)
		f.Sum = sumOfCopy(f)
		if err == nil {
			err = x.tx.Create(&f).Error
		}
		if err != nil {
			return fail(err, "write frozen copy")
		}
	}
	for _, p := range x.r.Prints {
		x.undo.Prints = append(x.undo.Prints, p.ID)
		p.Sum = sumOfPage(p)
		if err := x.tx.Create(&p).Error; err != nil {
			return fail(err, "keep a page")
		}
	}
	for _, raw := range x.r.Raw {
		x.undo.Raw = append(x.undo.Raw, raw)
		if err := x.tx.Clauses(clause.OnConflict{UpdateAll: true}).Create(&raw).Error; err != nil {
			return fail(err, "keep raw text")
		}
	}
	return nil
}

// marks tells in the histories what the merge itself changed.
func (x *merging) marks() error {
	for _, m := range x.r.Marks {
		change := record.Change{ID: record.NewID(), Kind: m.Ref.Kind, Record: m.Ref.ID, Field: m.Path, Before: m.Before, After: m.After, At: x.now, By: x.by, Visit: string(x.id)}
		if err := x.tx.Create(&change).Error; err != nil {
			return fail(err, "write history")
		}
	}
	return nil
}

// questions keeps what is left to a person.
func (x *merging) questions() error {
	for _, d := range x.r.Decisions {
		stands, err := json.Marshal(d.Stands)
		if err != nil {
			return fmt.Errorf("write down a question: %w", err)
		}
		other, err := json.Marshal(d.Other)
		if err != nil {
			return fmt.Errorf("write down a question: %w", err)
		}
		q := record.Question{ID: record.NewID(), MergeID: x.id, AthleteID: d.Athlete, Kind: d.Ref.Kind, Record: d.Ref.ID, Field: d.Path,
			Act: string(d.Act), Stands: stands, Other: other, Data: d.Data, At: x.now}
		if err := x.tx.Create(&q).Error; err != nil {
			return fail(err, "keep a question")
		}
	}
	return nil
}

package store

import (
	"context"
	"encoding/json"
	"errors"
	"fmt"
	"slices"

	"ebbwell/internal/record"
)

// Undone tells what undoing an import removed and what it left.
type Undone struct {
	Athletes, Tests, Results, Plans, Trips int
	Left                                   []LeftImported
}

// LeftImported is a record of an import that stays, and why.
type LeftImported struct {
	Ref record.Ref
	// Athlete is whose it is, by name; Date the day of a test.
	Athlete string
	Date    record.Date
	Why     LeftWhy
}

// LeftWhy says why a record of an import stays when it is undone.
type LeftWhy string

// Why a record stays.
const (
	// LeftChanged: it was changed since.
	LeftChanged LeftWhy = "changed"
	// LeftInUse: a plan, a trip, a session or a printed page needs it.
	LeftInUse LeftWhy = "in-use"
)

// UndoImport removes what an import added, in one transaction: tests and athletes go
// to the deleted records, values of a laboratory are as they were. What was changed
// since, or is used by something that was not imported with it, stays and is told.
// One that was undone already fails with CodeInvalid.
func (s *Store) UndoImport(ctx context.Context, id record.ID) (Undone, error) {
	var u Undone
	err := s.write(ctx, "undo import", func(w *work) error {
		u = Undone{}
		var im record.Import
		if err := w.tx.Where("id = ?", id).Take(&im).Error; err != nil {
			return fail(err, "find import")
		}
		if im.UndoneAt != nil {
			return &Error{Code: CodeInvalid, Doing: "undo import", Err: errors.New("it was undone already")}
		}
		for _, part := range []func(context.Context, record.Import, *Undone) error{w.undoBeside, w.undoTests, w.undoAthletes, w.undoResults} {
			if err := part(ctx, im, &u); err != nil {
				return err
			}
		}
		im.UndoneAt, im.UndoneBy = &w.now, w.by
		return w.tx.Save(&im).Error
	})
	if err != nil {
		return Undone{}, err
	}
	return u, nil
}

// undoBeside removes the plans and trips that are as they came. Products stay: they may
// be used by now.
func (w *work) undoBeside(ctx context.Context, im record.Import, u *Undone) error {
	b := besideOf(im)
	for _, part := range []struct {
		kind record.Kind
		ids  []record.ID
		uses []usedBy
		n    *int
	}{{record.KindPlan, b.Plans, []usedBy{{"prints", "record"}}, &u.Plans}, {record.KindTrip, b.Trips, []usedBy{{"prints", "record"}}, &u.Trips}} {
		for _, id := range part.ids {
			ref := record.Ref{Kind: part.kind, ID: id}
			var m []record.Meta
			if err := errors.Join(ctx.Err(), w.table(w.shapes[part.kind]).Where("id = ? AND deleted_at IS NULL", id).Find(&m).Error); err != nil {
				return fail(err, "look for what was imported")
			}
			if len(m) == 0 {
				continue // deleted since
			}
			why, err := w.whyLeft(ref, m[0], part.uses)
			if err != nil {
				return err
			}
			if why != "" {
				u.Left = append(u.Left, LeftImported{Ref: ref, Athlete: w.nameOf(ref), Why: why})
				continue
			}
			if err := w.remove(ref, m[0]); err != nil {
				return err
			}
			*part.n++
		}
	}
	return nil
}

// nameOf is the name of a plan or a trip.
func (w *work) nameOf(ref record.Ref) string {
	var names []string
	if err := w.table(w.shapes[ref.Kind]).Where("id = ?", ref.ID).Pluck("name", &names).Error; err != nil {
		return ""
	}
	return first(names)
}

// undoTests removes the tests that are as they came.
func (w *work) undoTests(ctx context.Context, im record.Import, u *Undone) error {
	var tests []record.Test
	err := w.tx.Where("import_id = ? AND deleted_at IS NULL", im.ID).Order("date, id").Find(&tests).Error
	if err != nil {
		return fail(err, "list imported tests")
	}
	for _, t := range tests {
		if err := ctx.Err(); err != nil {
			return err
		}
		ref := record.Ref{Kind: record.KindTest, ID: t.ID}
		why, err := w.whyLeft(ref, t.Meta, []usedBy{{"plans", "basis_test_id"}, {"plans", "basis_pool_ids"}, {"members", "test_id"}})
		if err != nil {
			return err
		}
		if why != "" {
			var names []string
			if err := w.tx.Model(&record.Athlete{}).Where("id = ?", t.AthleteID).Pluck("name", &names).Error; err != nil {
				return fail(err, "name the athlete")
			}
			u.Left = append(u.Left, LeftImported{Ref: ref, Athlete: first(names), Date: t.Session.Date, Why: why})
			continue
		}
		if err := w.remove(ref, t.Meta); err != nil {
			return err
		}
		u.Tests++
	}
	return nil
}

// undoAthletes removes the athletes that are as they came and have nothing left.
func (w *work) undoAthletes(ctx context.Context, im record.Import, u *Undone) error {
	var athletes []record.Athlete
	err := w.tx.Where("import_id = ? AND deleted_at IS NULL", im.ID).Order("name, id").Find(&athletes).Error
	if err != nil {
		return fail(err, "list imported athletes")
	}
	for _, a := range athletes {
		if err := ctx.Err(); err != nil {
			return err
		}
		ref := record.Ref{Kind: record.KindAthlete, ID: a.ID}
		why, err := w.whyLeft(ref, a.Meta, []usedBy{{"tests", "athlete_id"}, {"plans", "athlete_id"}, {"travellers", "athlete_id"},
			{"members", "athlete_id"}, {"prints", "athlete_id"}})
		if err != nil {
			return err
		}
		if why != "" {
			u.Left = append(u.Left, LeftImported{Ref: ref, Athlete: a.Name, Why: why})
			continue
		}
		if err := w.remove(ref, a.Meta); err != nil {
			return err
		}
		u.Athletes++
	}
	return nil
}

// usedBy is a column that may point at a record.
type usedBy struct{ table, column string }

// whyLeft says why a record stays; empty when it can go.
func (w *work) whyLeft(ref record.Ref, m record.Meta, uses []usedBy) (LeftWhy, error) {
	var raw int64
	if err := w.tx.Model(&record.RawText{}).Where("kind = ? AND record = ?", ref.Kind, ref.ID).Count(&raw).Error; err != nil {
		return "", fail(err, "look for texts")
	}
	if raw > 0 || !m.ChangedAt.Equal(m.CreatedAt) {
		return LeftChanged, nil
	}
	for _, of := range uses {
		var n int64
		about := w.tx.Table(of.table).Where(of.column+" = ?", ref.ID)
		if of.column == "basis_pool_ids" {
			about = w.tx.Table(of.table).Where(of.column+" LIKE ?", "%"+string(ref.ID)+"%")
		}
		if of.table != "prints" { // a printed page is never deleted
			about = about.Where("deleted_at IS NULL")
		}
		if of.table == "travellers" { // a trip that was deleted keeps nobody
			about = about.Where("trip_id IN (?)", w.tx.Model(&record.Trip{}).Select("id").Where("deleted_at IS NULL"))
		}
		if err := about.Count(&n).Error; err != nil {
			return "", fail(err, "look for uses")
		}
		if n > 0 {
			return LeftInUse, nil
		}
	}
	return "", nil
}

// remove marks a record deleted.
func (w *work) remove(ref record.Ref, m record.Meta) error {
	at := w.now
	if !m.ChangedAt.Before(at) {
		at = m.ChangedAt.Add(1000)
	}
	values := map[string]any{"deleted_at": at, "changed_at": at, "changed_by": w.by}
	if err := w.table(w.shapes[ref.Kind]).Where("id = ?", ref.ID).Updates(values).Error; err != nil {
		return fail(err, "remove imported record")
	}
	return w.log(ref, []fieldChange{{before: Present, act: actRemove}}, Edit{})
}

// undoResults puts patches back as they were, where the value is still the one that
// was imported and the sheet is open to it.
func (w *work) undoResults(ctx context.Context, im record.Import, u *Undone) error {
	if im.Kind != record.ImportLaboratory && im.Results == 0 {
		return nil
	}
	var changed []patched
	if err := json.Unmarshal(im.Added, &changed); err != nil {
		return fail(fmt.Errorf("read what was imported: %w", err), "undo import")
	}
	for _, c := range changed {
		if err := ctx.Err(); err != nil {
			return err
		}
		ref := record.Ref{Kind: record.KindTest, ID: c.Test}
		var t record.Test
		err := pick(w.tx, w.shapes[record.KindTest], c.Test, &t)
		switch CodeOf(err) {
		case "":
		case CodeNotFound, CodeDeleted:
			continue
		default:
			return about(err, ref)
		}
		at := slices.IndexFunc(t.Patches, func(p record.Patch) bool { return p.ID == c.Patch })
		if at < 0 || t.State == record.TestClosed || !c.stands(t.Patches[at]) {
			u.Left = append(u.Left, LeftImported{Ref: ref, Date: t.Session.Date, Why: LeftChanged})
			continue
		}
		p := &t.Patches[at]
		p.Sodium, p.Potassium, p.AtLaboratory = c.Before.Sodium, c.Before.Potassium, c.Before.AtLaboratory
		if err := w.save(record.KindTest, &t, Edit{}, withRespect); err != nil {
			return err
		}
		u.Results++
	}
	return nil
}

// stands reports whether the values are still those that were imported.
func (c patched) stands(p record.Patch) bool {
	return (!c.Sodium.Known() || c.Sodium.Same(p.Sodium)) && (!c.Potassium.Known() || c.Potassium.Same(p.Potassium))
}

// first is the first of some texts; empty for none.
func first(list []string) string {
	if len(list) == 0 {
		return ""
	}
	return list[0]
}

// leaveImports takes tests that go out of what imports changed on patches.
func (w *work) leaveImports(tests []record.ID) error {
	var all []record.Import
	if err := w.tx.Where("kind = ?", record.ImportLaboratory).Find(&all).Error; err != nil {
		return fail(err, "list imports")
	}
	for _, im := range all {
		var changed []patched
		if err := json.Unmarshal(im.Added, &changed); err != nil {
			return fail(fmt.Errorf("read what was imported: %w", err), "erase athlete")
		}
		left := slices.DeleteFunc(slices.Clone(changed), func(c patched) bool { return slices.Contains(tests, c.Test) })
		if len(left) == len(changed) {
			continue
		}
		added, err := json.Marshal(left)
		if err != nil {
			return fmt.Errorf("write down what was imported: %w", err)
		}
		if err := w.tx.Model(&im).Update("added", added).Error; err != nil {
			return fail(err, "write import")
		}
	}
	return nil
}

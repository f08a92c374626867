package store

import (
	"context"
	"errors"
	"reflect"
	"slices"

	"gorm.io/gorm"

	"ebbwell/internal/record"
)

// Erased tells what erasing an athlete left behind.
type Erased struct {
	// Snapshots still hold the athlete until they grow too old or are removed:
	// those of an earlier version, and those that could not be written.
	Snapshots []Snapshot
	// SharedTrips go on without the athlete.
	SharedTrips []record.ID
	// Files were saved elsewhere, with what became of each.
	Files []Saved
}

// EraseAthlete removes an athlete for good, as the withdrawal of consent asks:
// profile, tests, plans, trips of nobody else, history, frozen copies, raw
// texts and printed pages; then the file is rewritten, so that the bytes are
// gone. What stays is one change under the athlete's id that says when and by
// whom. The athlete is taken out of the snapshots of this version too; those of
// an earlier one are named in what is left. Files that were saved elsewhere are named
// too; with files those of nobody else are removed, as far as they are still what was
// saved.
//
// When the athlete is erased but the file could not be rewritten (no space for
// it, somebody reads) or a copy could not, the error comes with what was left all
// the same; the next opening tries again.
func (s *Store) EraseAthlete(ctx context.Context, id record.ID, files bool) (Erased, error) {
	ref := record.Ref{Kind: record.KindAthlete, ID: id}
	var left Erased
	saved, err := s.savedRows(ctx, id)
	if err != nil {
		return left, about(err, ref)
	}
	noted := ""
	err = s.write(ctx, "erase athlete", func(w *work) (err error) {
		if _, err := w.root(ref); err != nil {
			return err
		}
		if noted, err = s.noteErasing(id, erasing{Files: saved, Remove: files}); err != nil {
			return err
		}
		left.SharedTrips, err = w.eraseAthlete(id)
		return err
	})
	if err != nil {
		return Erased{}, about(errors.Join(err, remove(noted)), ref)
	}
	if err := s.eraseRest(ctx, id, erasing{Files: saved, Remove: files}, &left); err != nil {
		return left, about(err, ref)
	}
	return left, about(remove(noted), ref)
}

// wipe rewrites the file while nobody else is in it.
func (s *Store) wipe() error {
	s.gate.Lock()
	defer s.gate.Unlock()
	if s.files == nil {
		return &Error{Code: CodeNotOpen, Doing: "rewrite database", Path: s.dir}
	}
	return wipe(s.files.writer)
}

// eraseAthlete removes the rows, children before parents.
func (w *work) eraseAthlete(id record.ID) (shared []record.ID, err error) {
	own, shared, err := w.tripsOf(id)
	if err != nil {
		return nil, err
	}
	tests, err := w.ids("tests", "athlete_id", []record.ID{id})
	if err != nil {
		return nil, err
	}
	plans, err := w.ids("plans", "athlete_id", []record.ID{id})
	if err != nil {
		return nil, err
	}
	if err := w.leaveTrips(id); err != nil {
		return nil, err
	}
	if err := w.leaveSessions(id); err != nil {
		return nil, err
	}
	if err := w.tx.Where("athlete_id = ?", id).Delete(&record.Print{}).Error; err != nil {
		return nil, err
	}
	if err := w.unlink(tests, own); err != nil {
		return nil, err
	}
	if err := w.leaveImports(tests); err != nil {
		return nil, err
	}
	if err := w.leaveMerges(id); err != nil {
		return nil, err
	}
	for _, part := range []struct {
		kind record.Kind
		ids  []record.ID
	}{{record.KindPlan, plans}, {record.KindTest, tests}, {record.KindTrip, own}, {record.KindAthlete, []record.ID{id}}} {
		if err := w.erase(part.kind, part.ids); err != nil {
			return nil, err
		}
	}
	return shared, w.tx.Create(w.goneFor(id)).Error
}

// goneFor is what stays of an athlete who was erased.
func (w *work) goneFor(id record.ID) *record.Change {
	return &record.Change{ID: record.NewID(), Kind: record.KindAthlete, Record: id, Before: Present, After: Gone, At: w.now, By: w.by}
}

// ids lists the ids of rows whose column has one of some values.
func (w *work) ids(table, column string, values []record.ID) ([]record.ID, error) {
	var all []record.ID
	for chunk := range slices.Chunk(values, 500) {
		var some []record.ID
		if err := w.tx.Table(table).Where(column+" IN ?", chunk).Pluck("id", &some).Error; err != nil {
			return nil, fail(err, "list rows of "+table)
		}
		all = append(all, some...)
	}
	return all, nil
}

// tripsOf lists the trips an athlete is on: those of nobody else, and those
// that others share. A traveller who was taken off a trip no longer counts.
func (w *work) tripsOf(athlete record.ID) (own, shared []record.ID, err error) {
	var all []record.ID
	err = w.tx.Model(&record.Traveller{}).Distinct().Where("athlete_id = ?", athlete).Order("trip_id").Pluck("trip_id", &all).Error
	if err != nil {
		return nil, nil, err
	}
	for _, trip := range all {
		var others int64
		err := w.tx.Model(&record.Traveller{}).Where("trip_id = ? AND athlete_id <> ? AND deleted_at IS NULL", trip, athlete).
			Count(&others).Error
		if err != nil {
			return nil, nil, err
		}
		if others > 0 {
			shared = append(shared, trip)
		} else {
			own = append(own, trip)
		}
	}
	return own, shared, nil
}

// leaveTrips takes an athlete off every trip, and out of the trips' histories.
func (w *work) leaveTrips(athlete record.ID) error {
	places, err := w.ids("travellers", "athlete_id", []record.ID{athlete})
	if err != nil {
		return err
	}
	for _, place := range places {
		err := w.tx.Where("kind = ? AND field LIKE ?", record.KindTrip, "travellers."+string(place)+"%").Delete(&record.Change{}).Error
		if err != nil {
			return err
		}
	}
	return w.tx.Where("athlete_id = ?", athlete).Delete(&record.Traveller{}).Error
}

// leaveSessions takes an athlete out of every session of a group, and out of the
// sessions' histories; a session of nobody else goes.
func (w *work) leaveSessions(athlete record.ID) error {
	places, err := w.ids("members", "athlete_id", []record.ID{athlete})
	if err != nil {
		return err
	}
	var sessions []record.ID
	err = w.tx.Model(&record.Member{}).Distinct().Where("athlete_id = ?", athlete).Pluck("group_session_id", &sessions).Error
	if err != nil {
		return err
	}
	for _, place := range places {
		err := w.tx.Where("kind = ? AND field LIKE ?", record.KindSession, "members."+string(place)+"%").Delete(&record.Change{}).Error
		if err != nil {
			return err
		}
	}
	if err := w.tx.Where("athlete_id = ?", athlete).Delete(&record.Member{}).Error; err != nil {
		return err
	}
	for _, session := range sessions {
		var others int64
		if err := w.tx.Model(&record.Member{}).Where("group_session_id = ?", session).Count(&others).Error; err != nil {
			return err
		}
		if others > 0 {
			continue
		}
		if err := w.erase(record.KindSession, []record.ID{session}); err != nil {
			return err
		}
	}
	return nil
}

// unlink takes tests and trips that go out of the plans that stay.
func (w *work) unlink(tests, trips []record.ID) error {
	stops, err := w.ids("stops", "trip_id", trips)
	if err != nil {
		return err
	}
	for column, ids := range map[string][]record.ID{"basis_test_id": tests, "basis_stop_id": stops} {
		for chunk := range slices.Chunk(ids, 500) {
			if err := w.tx.Model(&record.Plan{}).Where(column+" IN ?", chunk).Update(column, nil).Error; err != nil {
				return err
			}
		}
	}
	return nil
}

// erase removes records with everything in and about them.
func (w *work) erase(kind record.Kind, ids []record.ID) error {
	for chunk := range slices.Chunk(ids, 500) {
		for _, about := range []any{&record.Change{}, &record.RawText{}, &record.Frozen{}, &record.Fingerprint{}} {
			if err := w.tx.Where("kind = ? AND record IN ?", kind, chunk).Delete(about).Error; err != nil {
				return err
			}
		}
		if kind == record.KindAthlete {
			if err := w.tx.Where("athlete_id IN ?", chunk).Delete(&record.SavedFile{}).Error; err != nil {
				return err
			}
		}
		if err := eraseRows(w.tx, w.shapes[kind], "id", chunk); err != nil {
			return err
		}
	}
	return nil
}

// eraseRows removes rows and those inside them; lists go last to first,
// because later ones point at earlier ones.
func eraseRows(tx *gorm.DB, sh *shape, column string, in []record.ID) error {
	model := reflect.New(sh.model).Interface()
	if len(sh.lists) > 0 {
		var ids []record.ID
		if err := tx.Model(model).Where(column+" IN ?", in).Pluck("id", &ids).Error; err != nil {
			return err
		}
		for i := len(sh.lists) - 1; i >= 0; i-- {
			for chunk := range slices.Chunk(ids, 500) {
				if err := eraseRows(tx, sh.lists[i].of, sh.lists[i].parentColumn, chunk); err != nil {
					return err
				}
			}
		}
	}
	return tx.Where(column+" IN ?", in).Delete(model).Error
}

package store

import (
	"context"
	"slices"
	"strings"

	"gorm.io/gorm"

	"ebbwell/internal/bundle"
	"ebbwell/internal/record"
)

// Pack puts together what another practice is given of some athletes: from is this
// practice's name. Trips, shared sessions and groups stay here: each is one record of
// several athletes, and two practices that change it would take the other's people, dates
// or packing away. What is the athlete's own of them goes: the plans for the stops, each
// with its air and length, the sheets of shared sessions, the pages that were saved.
func (s *Store) Pack(ctx context.Context, athletes []record.ID, from string) (bundle.Bundle, error) {
	b := bundle.Bundle{From: from, Made: s.now()}
	s.state.Lock()
	b.By = s.state.by
	s.state.Unlock()
	err := s.read(ctx, "pack records", func(tx *gorm.DB) (err error) {
		if b.Records, err = s.recordsOf(tx, athletes); err != nil {
			return err
		}
		if b.Prints, err = printsOf(tx, athletes, true); err != nil {
			return err
		}
		return ctx.Err()
	})
	if err != nil {
		return bundle.Bundle{}, err
	}
	strip(&b.Records)
	return b, nil
}

// strip takes away what is this practice's own, and what would point at nothing.
func strip(b *bundle.Records) {
	tests := map[record.ID]bool{}
	for i := range b.Athletes {
		b.Athletes[i].Memberships, b.Athletes[i].ImportID = nil, ""
	}
	for i := range b.Tests {
		tests[b.Tests[i].ID] = true
		b.Tests[i].ImportID = ""
	}
	for i := range b.Plans {
		p := &b.Plans[i]
		p.Basis.StopID, p.Corrected = "", record.TestCorrected{}
		if !tests[p.Basis.TestID] {
			p.Basis.TestID = ""
		}
	}
	named := record.ProductsNamed(b.Athletes, b.Tests, b.Plans, nil)
	b.Products = slices.DeleteFunc(b.Products, func(p record.Product) bool { return !named[p.ID] && !named[record.ID(p.Replaces)] })
	b.Changes = slices.DeleteFunc(b.Changes, func(c record.Change) bool { return strings.HasPrefix(c.Field, "memberships.") })
}

// recordsOf reads what is kept of some athletes, and all products.
func (s *Store) recordsOf(tx *gorm.DB, athletes []record.ID) (h bundle.Records, err error) {
	for chunk := range slices.Chunk(athletes, atOnce) {
		if err := s.addRecords(tx, chunk, &h); err != nil {
			return h, err
		}
	}
	found, err := loadRows(tx, s.shapes[record.KindProduct], false, byName)
	if err != nil {
		return h, err
	}
	h.Products = found.Interface().([]record.Product)
	return h, nil
}

// printsOf lists the pages kept of some athletes, with their bytes or without.
func printsOf(tx *gorm.DB, athletes []record.ID, whole bool) (list []record.Print, err error) {
	for chunk := range slices.Chunk(athletes, atOnce) {
		db, some := tx.Where("athlete_id IN ?", chunk).Order("at, id"), []record.Print(nil)
		if !whole {
			db = db.Omit("Bytes")
		}
		if err := db.Find(&some).Error; err != nil {
			return nil, err
		}
		for i := range some {
			some[i].At = some[i].At.UTC()
		}
		list = append(list, some...)
	}
	return list, nil
}

// addRecords adds some athletes with all that is kept of them.
func (s *Store) addRecords(tx *gorm.DB, athletes []record.ID, h *bundle.Records) error {
	theirs := func(db *gorm.DB) *gorm.DB { return db.Where("athlete_id IN ?", athletes).Order("id") }
	for _, part := range []struct {
		kind  record.Kind
		which scope
		add   func(found any) []record.ID
	}{
		{record.KindAthlete, func(db *gorm.DB) *gorm.DB { return db.Where("id IN ?", athletes).Order("id") }, func(found any) (ids []record.ID) {
			for _, a := range found.([]record.Athlete) {
				h.Athletes, ids = append(h.Athletes, a), append(ids, a.ID)
			}
			return ids
		}},
		{record.KindTest, theirs, func(found any) (ids []record.ID) {
			for _, t := range found.([]record.Test) {
				h.Tests, ids = append(h.Tests, t), append(ids, t.ID)
			}
			return ids
		}},
		{record.KindPlan, theirs, func(found any) (ids []record.ID) {
			for _, p := range found.([]record.Plan) {
				h.Plans, ids = append(h.Plans, p), append(ids, p.ID)
			}
			return ids
		}},
	} {
		found, err := loadRows(tx, s.shapes[part.kind], false, part.which)
		if err != nil {
			return err
		}
		if err := addBesideRecords(tx, part.kind, part.add(found.Interface()), h); err != nil {
			return err
		}
	}
	return nil
}

// addBesideRecords adds history, frozen copies and unread texts of some records.
func addBesideRecords(tx *gorm.DB, kind record.Kind, ids []record.ID, h *bundle.Records) error {
	for chunk := range slices.Chunk(ids, atOnce) {
		var changes []record.Change
		var frozen []record.Frozen
		var raw []record.RawText
		about := func() *gorm.DB { return tx.Where("kind = ? AND record IN ?", kind, chunk) }
		if err := about().Order("at, id").Find(&changes).Error; err != nil {
			return err
		}
		if err := about().Order("record, number, id").Find(&frozen).Error; err != nil {
			return err
		}
		if err := about().Order("record, field, reason").Find(&raw).Error; err != nil {
			return err
		}
		for i := range changes {
			changes[i].At = changes[i].At.UTC()
		}
		unpack(frozen)
		h.Changes, h.Frozen, h.Raw = append(h.Changes, changes...), append(h.Frozen, frozen...), append(h.Raw, raw...)
	}
	return nil
}

// HereOf reads what a bundle is put together with. What was deleted here, and athletes
// who were erased, are named in it.
func (s *Store) HereOf(ctx context.Context, b bundle.Bundle) (h bundle.Here, err error) {
	err = s.read(ctx, "look up what a bundle holds", func(tx *gorm.DB) error {
		h, err = s.hereOf(tx, b)
		return err
	})
	return h, err
}

// hereOf is [Store.HereOf] inside a transaction.
func (s *Store) hereOf(tx *gorm.DB, b bundle.Bundle) (bundle.Here, error) {
	var athletes []record.ID
	for _, a := range b.Athletes {
		athletes = append(athletes, a.ID)
	}
	kept, err := s.recordsOf(tx, athletes)
	if err == nil {
		kept.Prints, err = printsOf(tx, athletes, false)
	}
	h := bundle.Here{Records: kept}
	if err != nil {
		return h, err
	}
	h.Gone = map[record.Ref]bool{}
	for kind, ids := range idsOf(b) {
		for chunk := range slices.Chunk(ids, atOnce) {
			var gone []record.ID
			if err := tx.Table(tableOf(kind)).Where("id IN ? AND deleted_at IS NOT NULL", chunk).Pluck("id", &gone).Error; err != nil {
				return h, err
			}
			var erased []record.ID
			if err := tx.Model(&record.Change{}).Where("kind = ? AND record IN ? AND after = ?", kind, chunk, Gone).Pluck("record", &erased).Error; err != nil {
				return h, err
			}
			for _, id := range append(gone, erased...) {
				h.Gone[record.Ref{Kind: kind, ID: id}] = true
			}
		}
	}
	return h, nil
}

// idsOf lists the records of a bundle by kind.
func idsOf(b bundle.Bundle) map[record.Kind][]record.ID {
	all := map[record.Kind][]record.ID{}
	for _, a := range b.Athletes {
		all[record.KindAthlete] = append(all[record.KindAthlete], a.ID)
	}
	for _, t := range b.Tests {
		all[record.KindTest] = append(all[record.KindTest], t.ID)
	}
	for _, p := range b.Plans {
		all[record.KindPlan] = append(all[record.KindPlan], p.ID)
	}
	for _, p := range b.Products {
		all[record.KindProduct] = append(all[record.KindProduct], p.ID)
	}
	return all
}

// tableOf is the table of a kind of a bundle.
func tableOf(kind record.Kind) string {
	return map[record.Kind]string{record.KindAthlete: "athletes", record.KindTest: "tests", record.KindPlan: "plans", record.KindProduct: "products"}[kind]
}

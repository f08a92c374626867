package store

import (
	"context"
	"encoding/json"
	"errors"
	"fmt"
	"reflect"
	"slices"
	"time"

	"gorm.io/gorm"

	"ebbwell/internal/record"
)

// Incoming is what one import adds.
type Incoming struct {
	// File is the name of the file without its folder.
	File string
	Kind record.ImportKind
	// Groups, Athletes and Tests are new; a test's athlete is kept or among them.
	Groups   []record.Group
	Athletes []record.Athlete
	Tests    []record.Test
	// Products, Trips and Plans are new too; what they point at is kept or among these.
	Products []record.Product
	Trips    []record.Trip
	Plans    []record.Plan
	// Results go onto patches of kept tests.
	Results []PatchResult
	// Progress is told how many records are written; nil when nobody wants to know.
	Progress func(done, of int)
}

// PatchResult is what a laboratory found for one patch; an unknown number leaves the
// one that is there.
type PatchResult struct {
	Test, Patch       record.ID
	Sodium, Potassium record.Number
}

// patched is what an import changed on a patch, so that it can be undone.
type patched struct {
	PatchResult
	Before record.Patch
}

// Import adds what was imported in one transaction: all of it, or nothing when it
// fails or the context ends. An id that is kept already fails with CodeInvalid.
func (s *Store) Import(ctx context.Context, in Incoming) (record.Import, error) {
	im := record.Import{ID: record.NewID(), File: in.File, Kind: in.Kind, Athletes: len(in.Athletes), Tests: len(in.Tests), Results: len(in.Results)}
	err := s.write(ctx, "import", func(w *work) error {
		im.At, im.By = w.now, w.by
		of, done := len(in.Groups)+len(in.Athletes)+len(in.Tests)+len(in.Products)+len(in.Trips)+len(in.Plans)+len(in.Results), 0
		next := func() error {
			done++
			if in.Progress != nil {
				in.Progress(done, of)
			}
			return ctx.Err()
		}
		if err := w.addRecords(in, im.ID, next); err != nil {
			return err
		}
		changed, err := w.addResults(in.Results, next)
		if err != nil {
			return err
		}
		if err := errors.Join(addNewOf(w, record.KindProduct, in.Products, next), addNewOf(w, record.KindTrip, in.Trips, next),
			addNewOf(w, record.KindPlan, in.Plans, next)); err != nil {
			return err
		}
		if im.Added, err = json.Marshal(addedBeside(in, changed)); err != nil {
			return fmt.Errorf("write down what was imported: %w", err)
		}
		return w.tx.Create(&im).Error
	})
	if err != nil {
		return record.Import{}, err
	}
	return im, nil
}

// broughtBeside is what an import of an export added beside athletes and tests.
type broughtBeside struct{ Plans, Trips []record.ID }

// addedBeside is what is written down of an import so that it can be undone: the values
// of a laboratory, or plans and trips.
func addedBeside(in Incoming, changed []patched) any {
	if len(in.Plans)+len(in.Trips) == 0 {
		return changed
	}
	var b broughtBeside
	for _, p := range in.Plans {
		b.Plans = append(b.Plans, p.ID)
	}
	for _, t := range in.Trips {
		b.Trips = append(b.Trips, t.ID)
	}
	return b
}

// besideOf reads what [addedBeside] wrote; nothing where values of a laboratory are.
func besideOf(im record.Import) (b broughtBeside) {
	if im.Kind != record.ImportRecords || json.Unmarshal(im.Added, &b) != nil {
		return broughtBeside{}
	}
	return b
}

// PlansAndTrips counts what an import added beside athletes and tests.
func PlansAndTrips(im record.Import) (plans, trips int) {
	b := besideOf(im)
	return len(b.Plans), len(b.Trips)
}

// addNewOf writes new records of one kind.
func addNewOf[T any](w *work, kind record.Kind, list []T, next func() error) error {
	for i := range list {
		one := copyOf(list[i])
		if err := errors.Join(w.addNew(kind, &one), next()); err != nil {
			return err
		}
	}
	return nil
}

// addRecords writes the new records.
func (w *work) addRecords(in Incoming, id record.ID, next func() error) error {
	for i := range in.Groups {
		if err := errors.Join(w.addNew(record.KindGroup, &in.Groups[i]), next()); err != nil {
			return err
		}
	}
	for i := range in.Athletes {
		a := copyOf(in.Athletes[i])
		a.ImportID = id
		if err := errors.Join(w.addNew(record.KindAthlete, &a), next()); err != nil {
			return err
		}
	}
	for i := range in.Tests {
		t := copyOf(in.Tests[i])
		t.ImportID = id
		if err := errors.Join(w.addNew(record.KindTest, &t), next()); err != nil {
			return err
		}
	}
	return nil
}

// addNew saves a record that must not be there yet.
func (w *work) addNew(kind record.Kind, root any) error {
	ref := record.Ref{Kind: kind, ID: rootMeta(root).ID}
	if ref.ID != "" {
		kept, err := w.kept(w.shapes[kind], ref.ID)
		if err != nil {
			return about(err, ref)
		}
		if len(kept) > 0 {
			return &Error{Code: CodeInvalid, Doing: "import", Ref: ref, Err: errors.New("it is kept already")}
		}
	}
	value := reflect.ValueOf(root).Elem()
	fresh := row{shape: w.shapes[kind], value: value}.meta()
	*fresh = record.Meta{ID: fresh.ID}
	return w.save(kind, root, Edit{}, withRespect)
}

// addResults puts results onto the patches they are for.
func (w *work) addResults(results []PatchResult, next func() error) ([]patched, error) {
	var changed []patched
	for _, r := range results {
		ref := record.Ref{Kind: record.KindTest, ID: r.Test}
		var t record.Test
		if err := pick(w.tx, w.shapes[record.KindTest], r.Test, &t); err != nil {
			return nil, about(err, ref)
		}
		at := slices.IndexFunc(t.Patches, func(p record.Patch) bool { return p.ID == r.Patch })
		if at < 0 {
			return nil, &Error{Code: CodeNotFound, Doing: "find patch", Ref: ref}
		}
		p := &t.Patches[at]
		changed = append(changed, patched{PatchResult: r, Before: *p})
		if r.Sodium.Known() {
			p.Sodium, p.AtLaboratory = r.Sodium, false
		}
		if r.Potassium.Known() {
			p.Potassium = r.Potassium
		}
		if err := errors.Join(w.save(record.KindTest, &t, Edit{}, withRespect), next()); err != nil {
			return nil, err
		}
	}
	return changed, nil
}

// TestDays lists every test by athlete and time, deleted ones too, for who looks for
// the same test.
func (s *Store) TestDays(ctx context.Context) ([]TestDay, error) {
	var list []TestDay
	err := s.read(ctx, "list days of tests", func(tx *gorm.DB) error {
		return tx.Model(&record.Test{}).Select("id", "athlete_id", "date", "start", "deleted_at").Order("id").Find(&list).Error
	})
	return list, err
}

// TestDay is a test by whose it is and when.
type TestDay struct {
	ID        record.ID
	AthleteID record.ID
	Date      record.Date
	Start     record.Clock
	DeletedAt *time.Time
}

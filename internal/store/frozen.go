package store

import (
	"context"
	"errors"

	"gorm.io/gorm"

	"ebbwell/assets"
	"ebbwell/internal/record"
)

// Freezing is what is kept beside a closed test or an agreed plan: it shows
// later what was seen when it was closed, whatever the program becomes.
type Freezing struct {
	Inputs, Results []byte // JSON
	// Shown is what the page of an agreed plan showed, as JSON; may be empty.
	Shown    []byte
	Evidence string // version of the evidence
	// Line is what a list shows of a closed test.
	Line record.FrozenLine
	Why  string
}

// Freeze keeps a copy of a record, such as after a late value of the
// laboratory. The first copy of a record has number 1.
func (s *Store) Freeze(ctx context.Context, ref record.Ref, f Freezing) (record.Frozen, error) {
	var copied record.Frozen
	err := s.write(ctx, "freeze", func(w *work) (err error) {
		w.peopleChange = false
		copied, err = w.freeze(ref, f)
		return err
	})
	return copied, about(err, ref)
}

// freeze keeps a copy inside a transaction.
func (w *work) freeze(ref record.Ref, f Freezing) (record.Frozen, error) {
	if _, err := w.root(ref); err != nil {
		return record.Frozen{}, err
	}
	var last []int
	err := w.tx.Model(&record.Frozen{}).Where("kind = ? AND record = ?", ref.Kind, ref.ID).
		Order("number DESC").Limit(1).Pluck("number", &last).Error
	if err != nil {
		return record.Frozen{}, fail(err, "number frozen copy")
	}
	copied := record.Frozen{ID: record.NewID(), Kind: ref.Kind, Record: ref.ID, Number: 1, Inputs: f.Inputs,
		Results: f.Results, Shown: f.Shown, Evidence: f.Evidence, Program: assets.Version, Line: f.Line, At: w.now, By: w.by, Why: f.Why}
	if len(last) > 0 {
		copied.Number = last[0] + 1
	}
	packed, err := packed(copied)
	if err != nil {
		return record.Frozen{}, fail(err, "pack frozen copy")
	}
	packed.Sum = sumOfCopy(packed)
	return copied, fail(w.tx.Create(&packed).Error, "write frozen copy")
}

// FrozenOf lists the frozen copies of a record, newest first.
func (s *Store) FrozenOf(ctx context.Context, ref record.Ref) ([]record.Frozen, error) {
	var list []record.Frozen
	err := s.read(ctx, "load frozen copies", func(tx *gorm.DB) error {
		return tx.Where("kind = ? AND record = ?", ref.Kind, ref.ID).Order("number DESC").Find(&list).Error
	})
	unpack(list)
	return list, about(err, ref)
}

// SavePrint keeps a page as it was printed; its id, time and name are set here.
// A page is never changed: one with an id is refused with CodeInvalid.
func (s *Store) SavePrint(ctx context.Context, p record.Print) (record.Print, error) {
	if p.ID != "" {
		return p, &Error{Code: CodeInvalid, Doing: "save print", Err: errors.New("a page that was printed does not change")}
	}
	p.ID = record.NewID()
	kept, err := s.savePrint(ctx, p)
	if err != nil {
		p.ID = ""
		return p, err
	}
	return kept, nil
}

// PrintsOf lists the pages printed for an athlete, newest first, without
// their bytes; see [Store.LoadPrint].
func (s *Store) PrintsOf(ctx context.Context, athlete record.ID) ([]record.Print, error) {
	var list []record.Print
	err := s.read(ctx, "load prints", func(tx *gorm.DB) error {
		return tx.Omit("Bytes").Where("athlete_id = ?", athlete).Order("at DESC, id DESC").Find(&list).Error
	})
	return list, about(err, record.Ref{Kind: record.KindAthlete, ID: athlete})
}

// LoadPrint loads one printed page with its bytes; CodeAltered where a byte of it is not
// as it was kept.
func (s *Store) LoadPrint(ctx context.Context, id record.ID) (record.Print, error) {
	var p record.Print
	err := s.read(ctx, "load print", func(tx *gorm.DB) error {
		if err := tx.Where("id = ?", id).Take(&p).Error; err != nil {
			return err
		}
		if altered(p.Sum, sumOfPage(p)) && !s.options.AsItIs {
			return &Error{Code: CodeAltered, Doing: "load print", Ref: record.Ref{Kind: p.Kind, ID: p.Record}, Err: errors.New("it is not the page that was kept")}
		}
		return nil
	})
	if err != nil {
		return record.Print{}, err
	}
	return p, nil
}

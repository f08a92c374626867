package store

import (
	"context"
	"reflect"

	"gorm.io/gorm"

	"ebbwell/internal/record"
)

// Imports lists the files that were imported, the last first.
func (s *Store) Imports(ctx context.Context) ([]record.Import, error) {
	var list []record.Import
	err := s.read(ctx, "list imports", func(tx *gorm.DB) error {
		return tx.Order("at DESC, id DESC").Find(&list).Error
	})
	for i := range list {
		list[i].At = list[i].At.UTC()
	}
	return list, err
}

// Templates lists how files are read, by name.
func (s *Store) Templates(ctx context.Context) ([]record.ImportTemplate, error) {
	var list []record.ImportTemplate
	err := s.read(ctx, "list templates", func(tx *gorm.DB) error {
		return tx.Order("name, id").Find(&list).Error
	})
	for i := range list {
		list[i].At = list[i].At.UTC()
	}
	return list, err
}

// SaveTemplate keeps a template; one of the same id is replaced.
func (s *Store) SaveTemplate(ctx context.Context, t record.ImportTemplate) (record.ImportTemplate, error) {
	err := s.write(ctx, "save template", func(w *work) error {
		w.peopleChange = false
		if t.ID == "" {
			t.ID = record.NewID()
		}
		t.At, t.By = w.now, w.by
		return w.tx.Save(&t).Error
	})
	return t, err
}

// RemoveTemplate removes a template for good.
func (s *Store) RemoveTemplate(ctx context.Context, id record.ID) error {
	return s.write(ctx, "remove template", func(w *work) error {
		w.peopleChange = false
		return w.tx.Where("id = ?", id).Delete(&record.ImportTemplate{}).Error
	})
}

// IDs lists the ids of every record of some kinds, deleted ones too.
func (s *Store) IDs(ctx context.Context, kinds ...record.Kind) (map[record.ID]bool, error) {
	all := map[record.ID]bool{}
	err := s.read(ctx, "list ids", func(tx *gorm.DB) error {
		for _, kind := range kinds {
			var ids []record.ID
			if err := tx.Model(reflect.New(s.shapes[kind].model).Interface()).Pluck("id", &ids).Error; err != nil {
				return err
			}
			for _, id := range ids {
				all[id] = true
			}
		}
		return nil
	})
	return all, err
}

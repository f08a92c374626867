package bind

import (
	"context"
	"maps"

	"ebbwell/internal/record"
	"ebbwell/internal/store"
)

// saver writes a sheet: the record first, then the texts that differ from
// those kept. It runs beside the window, one save after another.
type saver[R any] struct {
	store *store.Store
	kind  Kind[R]
	// meta is the record as it was kept last: a save whose texts failed has
	// kept its record all the same.
	meta         record.Meta
	raw, reasons map[string]string
}

// newSaver makes the saver of a sheet as it was loaded.
func newSaver[R any](s *store.Store, k Kind[R], kept Sheet[R]) *saver[R] {
	return &saver[R]{store: s, kind: k, meta: *k.Meta(&kept.Record), raw: maps.Clone(kept.Raw), reasons: maps.Clone(kept.Reasons)}
}

// save writes a sheet and returns it as it is kept.
func (k *saver[R]) save(ctx context.Context, s Sheet[R], e store.Edit) (Sheet[R], error) {
	// A document that took over a state kept elsewhere is newer than what was
	// saved here.
	if m := k.kind.Meta(&s.Record); k.meta.ChangedAt.After(m.ChangedAt) {
		*m = k.meta
	}
	kept, err := k.kind.Save(ctx, s.Record, e)
	if err != nil {
		return s, err
	}
	s.Record, k.meta = kept, *k.kind.Meta(&kept)
	err = write(k.raw, s.Raw, func(path, text string) error { return k.store.SetRaw(ctx, k.kind.Ref, path, text, e) })
	if err != nil {
		return s, err
	}
	err = write(k.reasons, s.Reasons, func(path, text string) error { return k.store.SetReason(ctx, k.kind.Ref, path, text, e) })
	return s, err
}

// write sets every text that differs from the kept one, an empty one where it
// is gone.
func write(kept, wanted map[string]string, set func(path, text string) error) error {
	for path := range kept {
		if _, there := wanted[path]; there {
			continue
		}
		if err := set(path, ""); err != nil {
			return err
		}
		delete(kept, path)
	}
	for path, text := range wanted {
		if kept[path] == text {
			continue
		}
		if err := set(path, text); err != nil {
			return err
		}
		kept[path] = text
	}
	return nil
}

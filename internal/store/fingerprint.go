package store

import (
	"bytes"
	"context"
	"crypto/sha256"
	"encoding/binary"
	"reflect"
	"slices"
	"strconv"
	"strings"
	"time"

	"gorm.io/gorm"
	"gorm.io/gorm/clause"

	"ebbwell/internal/record"
)

// While the file is open, and after a program was killed, it has no digest beside it.
// What never changes, or not for long, has one of its own: frozen copies, kept pages,
// closed tests. It is compared whenever they are read.

// sumOfParts is the SHA-256 (FIPS 180-4) of parts, each behind its length.
func sumOfParts(parts ...[]byte) []byte {
	h := sha256.New()
	for _, part := range parts {
		_, _ = h.Write(binary.BigEndian.AppendUint64(nil, uint64(len(part)))) // a hash takes all
		_, _ = h.Write(part)
	}
	return h.Sum(nil)
}

// sumOfCopy is the digest of a frozen copy as it lies in the file.
func sumOfCopy(f record.Frozen) []byte {
	rate := ""
	if f.Line.Rate != nil {
		rate = strconv.FormatFloat(*f.Line.Rate, 'g', -1, 64)
	}
	return sumOfParts(f.Inputs, f.Results, f.Shown, []byte(f.Evidence), []byte(rate), []byte(strconv.FormatBool(f.Line.Ranged)), []byte(f.Line.Method), []byte(f.Line.Gain))
}

// sumOfPage is the digest of a kept page.
func sumOfPage(p record.Print) []byte {
	return sumOfParts([]byte(p.Page), []byte(p.Language), p.Bytes)
}

// altered reports whether a digest was kept and is another.
func altered(kept, now []byte) bool { return len(kept) > 0 && !bytes.Equal(kept, now) }

// sumOfRows is the digest of a record: every field of its rows that holds something, in
// an order of its own. A column that a later version adds, and nobody filled in, does
// not change it.
func sumOfRows(rows []row) []byte {
	var lines []string
	for _, r := range rows {
		lines = append(lines, r.path)
		for _, l := range r.shape.leaves {
			if text := l.exact(r.value); text != "" {
				lines = append(lines, join(r.path, l.path)+"\x00"+text)
			}
		}
	}
	slices.Sort(lines)
	return sumOfParts([]byte(strings.Join(lines, "\n")))
}

// exact writes a field to the last bit; empty for one that holds nothing.
func (l leaf) exact(row reflect.Value) string {
	field := row.FieldByIndex(l.index)
	if n, ok := field.Interface().(record.Number); ok {
		if n.Value == nil {
			return string(n.Unit)
		}
		return strconv.FormatFloat(*n.Value+0, 'g', -1, 64) + " " + string(n.Unit) // the file knows no -0
	}
	if field.IsZero() {
		return ""
	}
	return l.text(row)
}

// markClosed keeps the digest of a test that is closed as it was just written, and
// forgets that of one that is open.
func (w *work) markClosed(steps []step) error {
	root := steps[0].row
	if root.shape != w.shapes[record.KindTest] {
		return nil
	}
	if stateOf(root) == string(record.TestOpen) || stateOf(root) == "" {
		return w.unmark(record.KindTest, []record.ID{root.meta().ID})
	}
	var rows []row
	for _, s := range steps {
		if s.act != actRemove {
			rows = append(rows, s.row)
		}
	}
	f := record.Fingerprint{Kind: record.KindTest, Record: root.meta().ID, Sum: sumOfRows(rows), Changed: root.meta().ChangedAt}
	return fail(w.tx.Clauses(clause.OnConflict{UpdateAll: true}).Create(&f).Error, "write digest")
}

// unmark forgets the digests of records.
func (w *work) unmark(kind record.Kind, ids []record.ID) error {
	for chunk := range slices.Chunk(ids, 500) {
		if err := w.tx.Where("kind = ? AND record IN ?", kind, chunk).Delete(&record.Fingerprint{}).Error; err != nil {
			return fail(err, "forget digests")
		}
	}
	return nil
}

// TestAltered reports whether a test is closed and a byte of it is not as it was saved. It
// is asked where one is opened: of a list of hundreds it would take as long as the list.
func (s *Store) TestAltered(ctx context.Context, id record.ID) (is bool, err error) {
	err = s.read(ctx, "compare with the digest", func(tx *gorm.DB) error {
		var marks []record.Fingerprint
		if err := tx.Where("kind = ? AND record = ?", record.KindTest, id).Find(&marks).Error; err != nil || len(marks) == 0 {
			return err
		}
		found, err := loadRows(tx, s.shapes[record.KindTest], false, func(db *gorm.DB) *gorm.DB { return db.Where("id = ?", id) })
		if err != nil || found.Len() == 0 {
			return err
		}
		rows := rowsOf(s.shapes[record.KindTest], found.Index(0))
		is = sameTime(marks[0].Changed, rows[0].meta().ChangedAt) && altered(marks[0].Sum, sumOfRows(rows))
		return nil
	})
	return is, about(err, record.Ref{Kind: record.KindTest, ID: id})
}

// sameTime reports whether two times are one as they are kept.
func sameTime(a, b time.Time) bool { return kept(a).Equal(kept(b)) }

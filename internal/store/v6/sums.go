package v6

import (
	"crypto/sha256"
	"encoding/binary"
	"fmt"
	"strconv"

	"gorm.io/gorm"
)

// batch is how many rows are held at a time; pages are large.
const batch = 50

// keptRow is what of a frozen copy or of a page goes into its digest.
type keptRow struct {
	ID                     string
	Inputs, Results, Shown []byte
	Evidence               string
	LineRate               *float64
	LineRanged             bool
	LineMethod, LineGain   string
	Page, Language         string
	Bytes                  []byte
}

// sum gives every row of a table the digest of what it holds.
func sum(tx *gorm.DB, table string, of func(keptRow) []byte) error {
	for last := ""; ; {
		var rows []keptRow
		if err := tx.Table(table).Where("id > ?", last).Order("id").Limit(batch).Find(&rows).Error; err != nil {
			return fmt.Errorf("read %s: %w", table, err)
		}
		if err := tx.Statement.Context.Err(); err != nil {
			return err // somebody stops it
		}
		for _, row := range rows {
			if err := tx.Table(table).Where("id = ?", row.ID).UpdateColumn("sum", of(row)).Error; err != nil {
				return fmt.Errorf("write the digest of %s in %s: %w", row.ID, table, err)
			}
			last = row.ID
		}
		if len(rows) < batch {
			return nil
		}
	}
}

// sumOfCopy is the digest of a frozen copy.
func sumOfCopy(r keptRow) []byte {
	rate := ""
	if r.LineRate != nil {
		rate = strconv.FormatFloat(*r.LineRate, 'g', -1, 64)
	}
	return digest(r.Inputs, r.Results, r.Shown, []byte(r.Evidence), []byte(rate), []byte(strconv.FormatBool(r.LineRanged)), []byte(r.LineMethod), []byte(r.LineGain))
}

// sumOfPage is the digest of a page.
func sumOfPage(r keptRow) []byte { return digest([]byte(r.Page), []byte(r.Language), r.Bytes) }

// digest is the SHA-256 (FIPS 180-4) of parts, each behind its length.
func digest(parts ...[]byte) []byte {
	h := sha256.New()
	for _, part := range parts {
		_, _ = h.Write(binary.BigEndian.AppendUint64(nil, uint64(len(part)))) // a hash takes all
		_, _ = h.Write(part)
	}
	return h.Sum(nil)
}

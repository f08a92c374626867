package v2

import (
	"bytes"
	"compress/zlib"
	"encoding/json"
	"fmt"

	"gorm.io/gorm"
)

// frozenRow is a frozen copy with the bytes that version 1 kept as they are.
type frozenRow struct {
	ID              string
	Kind            string
	Inputs, Results []byte
}

// batch is how many frozen copies are held at a time.
const batch = 200

// packFrozen writes the bytes of every frozen copy as zlib streams, and what a
// list shows of a test beside them.
func packFrozen(tx *gorm.DB) error {
	for last := ""; ; {
		var rows []frozenRow
		err := tx.Table("frozen").Where("id > ?", last).Order("id").Limit(batch).Find(&rows).Error
		if err != nil {
			return fmt.Errorf("read frozen copies: %w", err)
		}
		if err := tx.Statement.Context.Err(); err != nil {
			return err // somebody stops it
		}
		for _, row := range rows {
			if err := packRow(tx, row); err != nil {
				return err
			}
			last = row.ID
		}
		if len(rows) < batch {
			return nil
		}
	}
}

// packRow packs one frozen copy.
func packRow(tx *gorm.DB, row frozenRow) error {
	values := map[string]any{}
	for column, plain := range map[string][]byte{"inputs": row.Inputs, "results": row.Results} {
		packed, err := pack(plain)
		if err != nil {
			return fmt.Errorf("pack frozen copy %s: %w", row.ID, err)
		}
		values[column] = packed
	}
	if rate, ranged, ok := rateOf(row); ok {
		values["line_rate"], values["line_ranged"] = rate, ranged
	}
	if err := tx.Table("frozen").Where("id = ?", row.ID).UpdateColumns(values).Error; err != nil {
		return fmt.Errorf("write frozen copy %s: %w", row.ID, err)
	}
	return nil
}

// pack writes bytes as a zlib stream; nothing stays nothing.
func pack(plain []byte) ([]byte, error) {
	if plain == nil {
		return nil, nil
	}
	var into bytes.Buffer
	w := zlib.NewWriter(&into)
	if _, err := w.Write(plain); err != nil {
		return nil, err
	}
	if err := w.Close(); err != nil {
		return nil, err
	}
	return into.Bytes(), nil
}

// rateOf reads the sweat rate out of the results of a closed test as version 1
// wrote them; ok is false where it is not known or cannot be read.
func rateOf(row frozenRow) (rate float64, ranged, ok bool) {
	if row.Kind != "test" {
		return 0, false, false
	}
	var results struct {
		Sweat struct {
			Fluid struct {
				Rate struct {
					Value         float64
					Known, Ranged bool
				}
			}
		}
	}
	if json.Unmarshal(row.Results, &results) != nil {
		return 0, false, false
	}
	r := results.Sweat.Fluid.Rate
	return r.Value, r.Ranged, r.Known
}

// Package large makes a practice of many athletes out of one of few, for
// benchmarks: rows are copied inside the database, each copy under ids of its
// own, so that ten thousand athletes take seconds.
package large

import (
	"errors"
	"fmt"
	"slices"
	"strings"

	dialector "github.com/glebarez/sqlite"
	"gorm.io/gorm"
	"gorm.io/gorm/logger"
)

// Copies says how a practice grows.
type Copies struct {
	// Sessions are made of every closed test: with itself so many, each a
	// week before the one after it.
	Sessions int
	// Athletes are made of every athlete, with all that is theirs: with
	// themselves so many.
	Athletes int
}

// Grow multiplies what is in the database at path, which nobody may have open.
// Frozen copies are copied as they are, bytes and all: they are of the size they
// would have, but name the test they were made of.
func Grow(path string, c Copies) error {
	db, err := gorm.Open(dialector.Open(path+"?_pragma=journal_mode(MEMORY)&_pragma=synchronous(OFF)"), &gorm.Config{Logger: logger.Discard})
	if err != nil {
		return fmt.Errorf("open %s: %w", path, err)
	}
	pool, err := db.DB()
	if err != nil {
		return fmt.Errorf("open %s: %w", path, err)
	}
	pool.SetMaxOpenConns(1)
	err = db.Transaction(func(tx *gorm.DB) error {
		if err := multiply(tx, c.Sessions, "s", tests()); err != nil {
			return err
		}
		return multiply(tx, c.Athletes, "a", athletes())
	})
	return errors.Join(err, pool.Close())
}

// part is one table that is copied along.
type part struct {
	table string
	// own are the columns that name something that is copied too.
	own []string
	// changed are columns that a copy has another value in: k is its number.
	changed map[string]string
	// only narrows what is copied.
	only string
}

// tests are a test and what is in it.
func tests() []part {
	return []part{
		{"tests", []string{"id"}, map[string]string{"date": "date(date, '-' || (7 * k) || ' days')"}, "state = 'closed'"},
		{"weighings", []string{"id", "test_id"}, nil, closed("test_id")},
		{"bottles", []string{"id", "test_id"}, nil, closed("test_id")},
		{"refills", []string{"id", "bottle_id"}, nil, "bottle_id IN (SELECT id FROM bottles WHERE " + closed("test_id") + ")"},
		{"foods_eaten", []string{"id", "test_id"}, nil, closed("test_id")},
		{"patches", []string{"id", "test_id"}, nil, closed("test_id")},
		{"frozen", []string{"id", "record"}, nil, "kind = 'test' AND " + closed("record")},
	}
}

// closed says that a column names a closed test.
func closed(column string) string {
	return column + " IN (SELECT id FROM tests WHERE state = 'closed')"
}

// athletes are an athlete and all that is theirs; trips too.
func athletes() []part {
	return []part{
		{"athletes", []string{"id"}, map[string]string{"name": "name || ' ' || k"}, ""},
		{"flags", []string{"id", "athlete_id"}, nil, ""},
		{"consents", []string{"id", "athlete_id"}, nil, ""},
		{"memberships", []string{"id", "athlete_id"}, nil, ""},
		{"tests", []string{"id", "athlete_id"}, nil, ""},
		{"weighings", []string{"id", "test_id"}, nil, ""},
		{"bottles", []string{"id", "test_id"}, nil, ""},
		{"refills", []string{"id", "bottle_id"}, nil, ""},
		{"foods_eaten", []string{"id", "test_id"}, nil, ""},
		{"patches", []string{"id", "test_id"}, nil, ""},
		{"raw_texts", []string{"record"}, nil, "kind = 'test'"},
		{"frozen", []string{"id", "record"}, nil, ""},
		{"plans", []string{"id", "athlete_id", "basis_test_id"}, nil, "COALESCE(basis_stop_id, '') = ''"},
		{"options", []string{"id", "plan_id"}, nil, ""},
		{"items", []string{"id", "option_id"}, nil, ""},
		{"steps", []string{"id", "plan_id", "option_id"}, nil, ""},
		{"chances", []string{"id", "plan_id"}, nil, ""},
		{"reviews", []string{"id", "plan_id", "step_id"}, nil, ""},
	}
}

// multiply copies the rows of tables, so many times less one. The number of a
// copy, behind a letter, is added to its id.
func multiply(tx *gorm.DB, times int, letter string, parts []part) error {
	if times < 2 {
		return nil
	}
	for _, p := range parts {
		var columns []string
		if err := tx.Raw("SELECT name FROM pragma_table_info(?)", p.table).Scan(&columns).Error; err != nil {
			return fmt.Errorf("read the columns of %s: %w", p.table, err)
		}
		names, values := make([]string, len(columns)), make([]string, len(columns))
		for i, c := range columns {
			names[i] = "`" + c + "`"
			values[i] = names[i]
			switch {
			case slices.Contains(p.own, c):
				values[i] = fmt.Sprintf("`%s` || '%s' || k", c, letter)
			case p.changed[c] != "":
				values[i] = p.changed[c]
			}
		}
		where := ""
		if p.only != "" {
			where = " WHERE " + p.only
		}
		statement := fmt.Sprintf("WITH RECURSIVE n(k) AS (SELECT 1 UNION ALL SELECT k + 1 FROM n WHERE k < ?) INSERT INTO %s (%s) SELECT %s FROM (SELECT * FROM %s%s), n",
			p.table, strings.Join(names, ", "), strings.Join(values, ", "), p.table, where)
		if err := tx.Exec(statement, times-1).Error; err != nil {
			return fmt.Errorf("copy the rows of %s: %w", p.table, err)
		}
	}
	return nil
}

// FrozenBytes is how many bytes the frozen copies of tests take in the database at
// path, as they are kept; nobody may have it open.
func FrozenBytes(path string) (n int64, err error) {
	db, err := gorm.Open(dialector.Open(path), &gorm.Config{Logger: logger.Discard})
	if err != nil {
		return 0, fmt.Errorf("open %s: %w", path, err)
	}
	pool, err := db.DB()
	if err != nil {
		return 0, fmt.Errorf("open %s: %w", path, err)
	}
	err = db.Raw("SELECT COALESCE(SUM(LENGTH(inputs) + LENGTH(results)), 0) FROM frozen WHERE kind = 'test'").Scan(&n).Error
	return n, errors.Join(err, pool.Close())
}

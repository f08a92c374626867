// Package columns adds columns to a table of an older version of the database,
// for the changes of shape from version 2 on. What it does never changes: files
// of released versions were made by it.
package columns

import (
	"fmt"
	"strings"
	"sync"

	"gorm.io/gorm"
	"gorm.io/gorm/schema"
)

// Add adds the columns of a type that holds the id and the new columns only,
// and gives those that are never null in a new row the value of a row in which
// nothing was entered.
func Add(tx *gorm.DB, table any) error {
	of, err := schema.Parse(table, &sync.Map{}, schema.NamingStrategy{})
	if err != nil {
		return fmt.Errorf("read the shape: %w", err)
	}
	empty := map[string]any{}
	for _, f := range of.Fields {
		if f.DBName == "" || f.PrimaryKey {
			continue
		}
		if err := tx.Migrator().AddColumn(table, f.DBName); err != nil {
			return fmt.Errorf("add column %s.%s: %w", of.Table, f.DBName, err)
		}
		if value, ok := emptyOf(f); ok {
			empty[f.DBName] = value
		}
	}
	if len(empty) == 0 {
		return nil
	}
	if err := tx.Table(of.Table).Where("id <> ''").UpdateColumns(empty).Error; err != nil {
		return fmt.Errorf("fill the new columns of %s: %w", of.Table, err)
	}
	return nil
}

// emptyOf is what a row holds in which nothing was entered; links, measured
// numbers, times and bytes are null then.
func emptyOf(f *schema.Field) (value any, ok bool) {
	switch {
	case f.DataType == schema.Bool:
		return false, true
	case f.DataType == schema.Int:
		return 0, true
	case f.DataType == schema.String && !strings.HasSuffix(f.DBName, "_id"):
		return "", true
	}
	return nil, false
}

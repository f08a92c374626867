package store

import (
	"crypto/sha256"
	"flag"
	"fmt"
	"path/filepath"
	"regexp"
	"sort"
	"strconv"
	"strings"
	"testing"
	"time"

	"gorm.io/gorm"
)

// faultsOf is how often each deed is hit in each way.
func faultsOf(t testing.TB) int {
	t.Helper()
	return got(strconv.Atoi(flag.Lookup(faultsFlag).Value.String()))(t)
}

// tally counts what became of faults of one kind.
type tally struct {
	line                           string
	tried, survived, offered, lost int
}

// outcome is what became of one fault.
type outcome string

const (
	survived outcome = "survived" // opens, with everything
	offered  outcome = "offered"  // says that it is damaged, and a copy has everything
	lost     outcome = "lost"
)

func (c *tally) count(o outcome) {
	c.tried++
	switch o {
	case survived:
		c.survived++
	case offered:
		c.offered++
	case lost:
		c.lost++
	}
}

// log writes the line that `cmd/dev faults` gathers.
func (c *tally) log(t testing.TB) {
	t.Helper()
	t.Logf("faults|%s|%d|%d|%d|%d", c.line, c.tried, c.survived, c.offered, c.lost)
}

// alike is a value of a row as it is alike in two databases with the same records.
func alike(table, column string, value any) any {
	switch at, ok := value.(time.Time); {
	case ok:
		return at.IsZero()
	case column == "path": // folders of a test have names of their own
		return filepath.Base(fmt.Sprint(value))
	case table == "fingerprints" && column == "sum": // it holds ids, which differ
		return "there"
	}
	if raw, ok := value.([]byte); ok {
		return fmt.Sprintf("%x", sha256.Sum256(raw))
	}
	return value
}

// writtenDown writes down every row of a database without ids and times, sorted.
func writtenDown(db *gorm.DB) (string, error) {
	tables, err := db.Migrator().GetTables()
	if err != nil {
		return "", err
	}
	sort.Strings(tables)
	passing := regexp.MustCompile(`[0-9a-f]{8}-[0-9a-f]{4}-[0-9a-f]{4}-[0-9a-f]{4}-[0-9a-f]{12}|\d{4}-\d\d-\d\d[T ]\d\d:\d\d:\d\d[.\d]*(Z|\+00:00)?`)
	var text strings.Builder
	for _, table := range tables {
		var rows []map[string]any
		if err := db.Table(table).Find(&rows).Error; err != nil {
			return "", err
		}
		var lines []string
		for _, row := range rows {
			var cells []string
			for column, value := range row {
				value = alike(table, column, value)
				cells = append(cells, fmt.Sprintf("%s=%v", column, passing.ReplaceAllString(fmt.Sprint(value), "#")))
			}
			sort.Strings(cells)
			lines = append(lines, table+": "+strings.Join(cells, " "))
		}
		sort.Strings(lines)
		text.WriteString(strings.Join(lines, "\n") + "\n")
	}
	return text.String(), nil
}

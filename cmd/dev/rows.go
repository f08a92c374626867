package main

import (
	"bytes"
	"encoding/csv"
	"fmt"
	"os"
	"path/filepath"
)

// rowCount says how many check values there are of each sort.
type rowCount struct {
	// published are results of the literature: read, quoted or from memory.
	published int
	// own are results worked out for the row, and what is our own proposal or
	// common practice.
	own int
	// typed only compare a constant with itself, typed a second time.
	typed int
}

func (c rowCount) String() string {
	return fmt.Sprintf("\ncheck values: %d rows of published results, %d of results worked out, proposed or common practice; apart from these %d that compare a constant with itself typed again\n",
		c.published, c.own, c.typed)
}

// typedCases are the cases of rows that read a constant back, by file where
// only that one does; "" stands for any file.
func typedCases() map[string][]string {
	return map[string][]string{"": {"entry", "edge", "agreement"}, "markers.csv": {"limit"}, "sodium.csv": {"method cv"}}
}

// countRows counts the rows of testdata/published. entries.csv has none: it says
// which row holds an entry.
func countRows(root string) (c rowCount, err error) {
	files, err := filepath.Glob(filepath.Join(root, "testdata", "published", "*.csv"))
	if err != nil {
		return c, fmt.Errorf("count check values: %w", err)
	}
	typed := map[string]bool{}
	for file, cases := range typedCases() {
		for _, name := range cases {
			typed[file+" "+name] = true
		}
	}
	for _, file := range files {
		name := filepath.Base(file)
		if name == "entries.csv" {
			continue
		}
		data, err := os.ReadFile(file)
		if err != nil {
			return c, fmt.Errorf("count check values: %w", err)
		}
		r := csv.NewReader(bytes.NewReader(data))
		r.Comment = '#'
		rows, err := r.ReadAll()
		if err != nil {
			return c, fmt.Errorf("count check values of %s: %w", name, err)
		}
		for _, row := range rows[min(1, len(rows)):] {
			switch sure := row[len(row)-1]; {
			case typed[" "+row[0]] || typed[name+" "+row[0]]:
				c.typed++
			case sure == "R" || sure == "S" || sure == "M":
				c.published++
			default:
				c.own++
			}
		}
	}
	return c, nil
}

package v4

import (
	"fmt"

	"gorm.io/gorm"
)

// The index of version 2 over the tests did not hold whether a test was deleted, so
// that each line of it asked for the row. These two hold all that a list needs.

// TestsOfAthlete is the index by which the tests of an athlete are counted and the
// newest is found.
type TestsOfAthlete struct {
	AthleteID string         `gorm:"size:36;index:idx_tests_of_athlete,priority:1"`
	DeletedAt gorm.DeletedAt `gorm:"index:idx_tests_of_athlete,priority:2"`
	Date      string         `gorm:"size:10;index:idx_tests_of_athlete,priority:3"`
	Start     string         `gorm:"size:5;index:idx_tests_of_athlete,priority:4"`
	ID        string         `gorm:"size:36;index:idx_tests_of_athlete,priority:5"`
	State     string         `gorm:"size:12;index:idx_tests_of_athlete,priority:6"`
}

// TableName is the table the index is on.
func (TestsOfAthlete) TableName() string { return "tests" }

// TestsInState is the index by which unfinished tests are found.
type TestsInState struct {
	State     string         `gorm:"size:12;index:idx_tests_in_state,priority:1"`
	DeletedAt gorm.DeletedAt `gorm:"index:idx_tests_in_state,priority:2"`
	Date      string         `gorm:"size:10;index:idx_tests_in_state,priority:3"`
	Start     string         `gorm:"size:5;index:idx_tests_in_state,priority:4"`
	ID        string         `gorm:"size:36;index:idx_tests_in_state,priority:5"`
	AthleteID string         `gorm:"size:36;index:idx_tests_in_state,priority:6"`
}

// TableName is the table the index is on.
func (TestsInState) TableName() string { return "tests" }

// olderIndexes are those that the new ones take the place of.
func olderIndexes() []string { return []string{"idx_tests_newest", "idx_tests_athlete_id"} }

// addIndexes makes the indexes of version 4 and drops those they take the place of.
func addIndexes(tx *gorm.DB) error {
	for name, on := range map[string]any{"idx_tests_of_athlete": &TestsOfAthlete{}, "idx_tests_in_state": &TestsInState{}} {
		if err := tx.Migrator().CreateIndex(on, name); err != nil {
			return fmt.Errorf("index the tests: %w", err)
		}
	}
	for _, name := range olderIndexes() {
		if err := tx.Migrator().DropIndex("tests", name); err != nil {
			return fmt.Errorf("drop an older index of the tests: %w", err)
		}
	}
	return nil
}

package climate

import (
	"bytes"
	"encoding/csv"
	"fmt"
	"slices"
	"strconv"

	"ebbwell/assets"
	"ebbwell/internal/plain"
	"ebbwell/internal/quantity"
)

// Activity is a row of the table of activities.
type Activity struct {
	// ID is stable: "tennis-singles".
	ID string
	// Name is the activity in English; Family its kind of sport.
	Name, Family string
	// Met is the metabolic rate in multiples of 3.5 mL/kg/min.
	Met    float64
	Motion Motion
	// OwnSpeed through the air; zero is on the spot. OwnSpeedProposed is
	// true where it does not follow from the activity.
	OwnSpeed         quantity.MetresPerSecond
	OwnSpeedProposed bool
	// Compendium is the code of the row in the 2011 Compendium.
	Compendium string
}

// Effort is the activity done by a body.
func (a Activity) Effort(b Body) (Effort, error) { return MetEffort(b, a.Met, a.Motion, a.OwnSpeed) }

// Activities is the table of activities.
type Activities []Activity

// LoadActivities reads the table that comes with the program: a selection of
// the 2011 Compendium of Physical Activities (Ainsworth et al. 2011, Medicine
// and Science in Sports and Exercise 43:1575).
func LoadActivities() (Activities, error) { return readActivities(assets.Activities()) }

// Named is the table with its names in another language: name is asked with id and
// name, and answers with the name to show.
func (list Activities) Named(name func(id, otherwise string) string) Activities {
	named := slices.Clone(list)
	for i := range named {
		named[i].Name = name(named[i].ID, named[i].Name)
	}
	return named
}

// readActivities reads a table of activities.
func readActivities(data []byte) (Activities, error) {
	rows, err := csv.NewReader(bytes.NewReader(data)).ReadAll()
	if err != nil {
		return nil, fmt.Errorf("read activities: %w", err)
	}
	var list Activities
	for i, row := range rows {
		if i == 0 {
			continue
		}
		a, err := activityFrom(row)
		if err != nil {
			return nil, fmt.Errorf("read activities, row %d: %w", i+1, err)
		}
		list = append(list, a)
	}
	return list, nil
}

// activityFrom reads one row: id, activity, family, met, motion, own speed and
// how sure it is, code.
func activityFrom(row []string) (Activity, error) {
	if len(row) != 8 {
		return Activity{}, fmt.Errorf("%d cells instead of 8", len(row))
	}
	met, err := strconv.ParseFloat(row[3], 64)
	if err != nil {
		return Activity{}, fmt.Errorf("MET: %w", err)
	}
	own, err := strconv.ParseFloat(row[5], 64)
	if err != nil {
		return Activity{}, fmt.Errorf("own speed: %w", err)
	}
	a := Activity{row[0], row[1], row[2], met, Motion(row[4]), quantity.MetresPerSecond(own), row[6] == "P", row[7]}
	if _, err := a.Motion.work(met); err != nil {
		return Activity{}, fmt.Errorf("motion %q: %w", row[4], err)
	}
	return a, nil
}

// Find returns the activity with an id.
func (list Activities) Find(id string) (Activity, bool) {
	for _, a := range list {
		if a.ID == id {
			return a, true
		}
	}
	return Activity{}, false
}

// Search lists the activities whose name or family holds every word of the
// query, in the order of the table; an empty query lists all.
func (list Activities) Search(query string) Activities {
	words := plain.Words(query)
	var found Activities
	for _, a := range list {
		if plain.Holds(plain.Text(a.Name+" "+a.Family), words) {
			found = append(found, a)
		}
	}
	slices.SortStableFunc(found, func(a, b Activity) int { return begins(b.Name, query) - begins(a.Name, query) })
	return found
}

package testsheet

import (
	"slices"
	"strconv"
	"strings"
	"time"

	"ebbwell/app/kit/amount"
	"ebbwell/app/kit/desk"
	"ebbwell/internal/climate"
	"ebbwell/internal/consult"
	"ebbwell/internal/handout"
	"ebbwell/internal/quantity"
	"ebbwell/internal/record"
)

// historian words what was corrected on a sheet.
type historian struct {
	amount.Speaker
	test       record.Test
	products   *consult.Pantry
	activities climate.Activities
	// hidden: body mass is hidden, so nothing of it is told.
	hidden bool
}

// entries words the corrections among the changes of a sheet, newest first.
func (h historian) entries(changes []record.Change) []desk.HistoryEntry {
	var list []desk.HistoryEntry
	for _, c := range record.Corrections(changes) {
		list = append(list, h.entry(c))
	}
	return list
}

// onPaper are entries as the report takes them.
func onPaper(list []desk.HistoryEntry) []handout.Correction {
	var out []handout.Correction
	for _, e := range list {
		out = append(out, handout.Correction{What: e.What, Change: e.Change, When: e.When, Why: e.Why})
	}
	return out
}

// entry words one correction.
func (h historian) entry(c record.Change) desk.HistoryEntry {
	e := desk.NewHistoryEntry(h.Speaker, c, h.hidden)
	path, ending := desk.HistoryPath(c.Field)
	e.What = desk.HistoryField(h.Speaker, h.fieldWord(path), ending)
	e.Change = desk.HistoryChange(h.Speaker, c, func(text string) string {
		if ending != "" {
			return text
		}
		return h.value(path, text)
	})
	if h.hidden && tellsBody(path, c) {
		e.Change = h.Say("profile.history.hidden")
	}
	return e
}

// tellsBody reports whether a change holds a mass of the body or of what was
// worn on the scale, or the energy used, which is worked out from mass.
func tellsBody(path string, c record.Change) bool {
	list, rest, _ := strings.Cut(path, ".")
	switch {
	case list == "weighings":
		return strings.HasSuffix(rest, ".mass")
	case path == "scale.kitDry", path == "scale.kitWet", path == "session.energy":
		return true
	}
	for _, u := range []quantity.Unit{quantity.Kilogram, quantity.Pound, quantity.Kilocalorie} {
		if path != "scale.step" && (strings.HasSuffix(c.Before, " "+string(u)) || strings.HasSuffix(c.After, " "+string(u))) {
			return true
		}
	}
	return false
}

// fieldWord names a field by its path, with the row it stands in.
func (h historian) fieldWord(path string) string {
	word := h.Say(historyKey(path))
	if row := h.row(path); row != "" {
		return h.Say("testsheet.history.row", word, row)
	}
	return word
}

// historyKey is the key of the words for a field, or for a whole row.
func historyKey(path string) string {
	if f, ok := record.SheetFieldOf(path); ok {
		return f.History()
	}
	list, _, _ := strings.Cut(path, ".")
	if strings.Contains(path, ".refills.") {
		list += ".refills"
	}
	return "testsheet.field." + list
}

// row is the number of the row a path stands in, and of a weighing when it was;
// empty where the row is no longer there.
func (h historian) row(path string) string {
	parts := strings.Split(path, ".")
	if len(parts) < 2 {
		return ""
	}
	id, at := record.ID(parts[1]), -1
	switch parts[0] {
	case "bottles":
		at = slices.IndexFunc(h.test.Bottles, func(b record.Bottle) bool { return b.ID == id })
	case "foods":
		at = slices.IndexFunc(h.test.Foods, func(f record.FoodEaten) bool { return f.ID == id })
	case "patches":
		at = slices.IndexFunc(h.test.Patches, func(p record.Patch) bool { return p.ID == id })
	case "partway":
		at = slices.IndexFunc(h.test.Partway, func(p record.PartwayWeighing) bool { return p.ID == id })
	case "weighings":
		return h.weighing(id)
	}
	if at < 0 {
		return ""
	}
	return strconv.Itoa(at + 1)
}

// weighing says which weighing it is: "before, 2".
func (h historian) weighing(id record.ID) string {
	for _, m := range []record.Moment{record.Before, record.After, record.Morning} {
		for n, at := range weighings(h.test, m) {
			if h.test.Weighings[at].ID == id {
				return h.Say("testsheet.history.weighing."+string(m), strconv.Itoa(n+1))
			}
		}
	}
	return ""
}

// value reads a value of the history as it stands on the screen.
func (h historian) value(path, text string) string {
	name := path[strings.LastIndex(path, ".")+1:]
	if day, ok := record.Date(text).Time(); ok {
		return h.Words.Date(day)
	}
	if at, err := time.Parse(time.RFC3339, text); err == nil {
		return h.moment(at)
	}
	switch name {
	case "productID":
		if p, ok := h.products.Find(record.ID(text)); ok {
			return p.Name
		}
	case "activity":
		if a, ok := h.activities.Find(text); ok {
			return a.Name
		}
	case "sport":
		return desk.SportWord(h.Words, text)
	}
	if key := valueKey(path, name, text); h.Words.Has(key) {
		return h.Say(key)
	}
	number, unit, _ := strings.Cut(text, " ")
	if _, err := strconv.ParseFloat(number, 64); err != nil || name == "note" || name == "name" || name == "place" {
		return text
	}
	number = strings.Replace(number, ".", h.Say("format.decimal"), 1)
	if unit == "" {
		return number
	}
	return number + "\u00a0" + unit
}

// moment is a time of day, with its date where that is not the day of the sheet.
func (h historian) moment(at time.Time) string {
	at = at.In(h.Today.Location())
	if record.Date(at.Format(time.DateOnly)) == h.test.Session.Date {
		return h.Words.Clock(at)
	}
	return h.Words.Dots([]string{h.Words.Date(at), h.Words.Clock(at)})
}

// valueKey is the key of a word out of a closed list; empty where a field has
// none.
func valueKey(path, name, word string) string {
	switch {
	case word == "true", word == "false":
		return "testsheet.history.yes." + word
	case path == "scale.before", path == "scale.after":
		return "testsheet.dress." + word
	case name == "sun", name == "clothing":
		return name + "." + word
	case name == "usedToHeat":
		return "testsheet.heat." + word
	case strings.HasPrefix(path, "safety.") && (name == "item" || name == "answer" || name == "kind"):
		return "safety." + name + "." + word
	case name == "when", name == "moment":
		return "testsheet.when." + word
	case name == "use", name == "site", name == "side", name == "method", name == "condition":
		return "testsheet." + name + "." + word
	}
	return ""
}

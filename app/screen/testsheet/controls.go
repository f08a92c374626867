package testsheet

import (
	"strconv"
	"strings"

	"ebbwell/internal/record"
	"ebbwell/internal/sweat"
)

// bottleControl names the control of one column of a bottle.
func bottleControl(item int, what string) string {
	return "testsheet.bottle." + strconv.Itoa(item) + "." + what
}

// controlOf names the control that shows a field of the record, or in which a
// figure worked out of several is put right; empty when there is none.
func controlOf(t record.Test, path string) string {
	if name, ok := figureControls()[path]; ok {
		return name
	}
	f, row, ok := record.SheetFieldAt(&t, path)
	if !ok {
		return ""
	}
	return f.ControlOf(row)
}

// figureControls names the controls where what is worked out of several fields is
// put right.
func figureControls() map[string]string {
	first := bottleControl(1, "before")
	return map[string]string{
		"session.minutes": "testsheet.end", "weighings.before": "testsheet.before.mass.1", "weighings.after": "testsheet.after.mass.1",
		"weighings.change": "testsheet.after.mass.1", "figures.sweatRate": first, "figures.drinkingAt": first,
	}
}

// missingControl names the control where something missing is entered.
func missingControl(m sweat.Missing) string {
	switch m.ID {
	case sweat.MissingBefore:
		return "testsheet.before.mass.1"
	case sweat.MissingAfter:
		return "testsheet.after.mass.1"
	case sweat.MissingKit, sweat.MissingKitDry:
		return "testsheet.kit.dry"
	case sweat.MissingKitWet:
		return "testsheet.kit.wet"
	case sweat.MissingDrinks:
		return bottleControl(1, "what")
	case sweat.MissingBottle, sweat.MissingBottleBefore:
		return bottleControl(m.Item, "before")
	case sweat.MissingBottleAfter:
		return bottleControl(m.Item, "after")
	case sweat.MissingFood:
		return "testsheet.food." + strconv.Itoa(m.Item) + ".portions"
	case sweat.MissingUrine:
		return "testsheet.urine.passed"
	case sweat.MissingSodium:
		return "testsheet.patch." + strconv.Itoa(m.Item) + ".sodium"
	}
	return "testsheet.end"
}

// partOfControl names the part a control for something missing stands in.
func partOfControl(control string) string {
	switch kind, _, _ := strings.Cut(strings.TrimPrefix(control, "testsheet."), "."); kind {
	case "bottle", "food":
		return PartBottles
	case "before":
		return PartBefore
	case "patch":
		return PartUrine
	}
	return PartAfter
}

package testsheet

import (
	"slices"
	"strconv"
	"strings"

	"ebbwell/internal/record"
	"ebbwell/internal/sweat"
)

// bottleControl names the control of one column of a bottle.
func bottleControl(item int, what string) string {
	return "testsheet.bottle." + strconv.Itoa(item) + "." + what
}

// controlOf names the control that shows a field of the record; empty when
// there is none.
func controlOf(t record.Test, path string) string {
	head, rest, _ := strings.Cut(path, ".")
	id, field, _ := strings.Cut(rest, ".")
	at := func(kind string, i int) string {
		return "testsheet." + kind + "." + strconv.Itoa(i+1) + "." + controlField(field)
	}
	switch head {
	case "weighings":
		return weighingControl(t, rest, record.ID(id), field)
	case "bottles":
		if i := slices.IndexFunc(t.Bottles, func(b record.Bottle) bool { return string(b.ID) == id }); i >= 0 {
			return refillControl(t.Bottles[i], at("bottle", i), field)
		}
	case "foods":
		if i := slices.IndexFunc(t.Foods, func(f record.FoodEaten) bool { return string(f.ID) == id }); i >= 0 {
			return at("food", i)
		}
	case "patches":
		if i := slices.IndexFunc(t.Patches, func(p record.Patch) bool { return string(p.ID) == id }); i >= 0 {
			return at("patch", i)
		}
	}
	return fixedControls()[path]
}

// controlField is the name of a column of a row in the name of its control.
func controlField(field string) string {
	switch field {
	case "shareLow":
		return "share.low"
	case "shareHigh":
		return "share.high"
	}
	return field
}

// refillControl names the control of a refill, or the one given.
func refillControl(b record.Bottle, other, field string) string {
	id, isRefill := strings.CutPrefix(field, "refills.")
	if !isRefill {
		return other
	}
	id, _, _ = strings.Cut(id, ".")
	for j, r := range b.Refills {
		if string(r.ID) == id {
			return strings.TrimSuffix(other, field) + "refill." + strconv.Itoa(j+1)
		}
	}
	return ""
}

// weighingControl names the control of a reading of the body scale, or of a
// figure made of several.
func weighingControl(t record.Test, rest string, id record.ID, field string) string {
	switch rest {
	case "before":
		return "testsheet.before.mass.1"
	case "after", "change":
		return "testsheet.after.mass.1"
	}
	for _, m := range []record.Moment{record.Before, record.After, record.Morning} {
		for i, at := range weighings(t, m) {
			switch n := strconv.Itoa(i + 1); {
			case t.Weighings[at].ID != id:
			case m == record.Morning && field == "date":
				return "testsheet.morning." + n + ".day"
			case m == record.Morning:
				return "testsheet.morning." + n + ".mass"
			default:
				return "testsheet." + string(m) + ".mass." + n
			}
		}
	}
	return ""
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

// fixedControls names the controls of the fields a sheet has once.
func fixedControls() map[string]string {
	return map[string]string{
		"session.date": "testsheet.date", "session.start": "testsheet.start", "session.end": "testsheet.end",
		"session.minutes": "testsheet.end", "session.played": "testsheet.played", "session.effort": "testsheet.effort",
		"session.met": "testsheet.met", "session.power": "testsheet.power", "session.speed": "testsheet.speed",
		"session.energy":  "testsheet.energy",
		"air.temperature": "testsheet.air.temperature", "air.humidity": "testsheet.air.humidity", "air.wind": "testsheet.air.wind",
		"air.altitude": "testsheet.air.altitude", "air.wbgt": "testsheet.air.wbgt", "scale.step": "testsheet.scale.step",
		"scale.kitDry": "testsheet.kit.dry", "scale.kitWet": "testsheet.kit.wet", "loss.urine": "testsheet.urine.passed",
		"loss.stool": "testsheet.stool.passed", "loss.guess": "testsheet.guess", "urine.gravity": "testsheet.urine.gravity",
		"urine.osmolality": "testsheet.urine.osmolality", "urine.colour": "testsheet.urine.colour",
		"feeling.thirst": "testsheet.thirst", "feeling.stomach": "testsheet.stomach",
		"figures.sweatRate": "testsheet.bottle.1.before", "figures.drinkingAt": "testsheet.bottle.1.before",
	}
}

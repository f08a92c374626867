package profile

import (
	"strings"

	"ebbwell/app/kit/amount"
	"ebbwell/app/kit/desk"
	"ebbwell/internal/record"
)

// speaker words what was corrected.
type speaker struct{ amount.Speaker }

// entry words a change of the profile. Where body mass is hidden it is not told.
func (sp speaker) entry(c record.Change, a record.Athlete, groups []record.Group, hidden bool) desk.HistoryEntry {
	e := desk.NewHistoryEntry(sp.Speaker, c, hidden)
	path, ending := desk.HistoryPath(c.Field)
	e.What = desk.HistoryField(sp.Speaker, sp.fieldWord(path, a, groups), ending)
	e.Change = desk.HistoryChange(sp.Speaker, c, func(text string) string {
		if ending == "" {
			return sp.value(path, text)
		}
		return text
	})
	if hidden && path == "usualMass" {
		e.Change = sp.Say("profile.history.hidden")
	}
	return e
}

// fieldWord names a field by its path in the record, and the row it stands in.
func (sp speaker) fieldWord(path string, a record.Athlete, groups []record.Group) string {
	list, rest, inRow := strings.Cut(path, ".")
	if !inRow || list == "habit" { // a block of fields, no list of rows
		return sp.Say("profile.field." + fieldKey(path))
	}
	id, name, inside := strings.Cut(rest, ".")
	key := list
	if inside {
		key += "." + name
	}
	word := sp.Say("profile.field." + key)
	if whose := sp.rowWord(list, record.ID(id), a, groups); whose != "" {
		return sp.Say("profile.history.row", word, whose)
	}
	return word
}

// fieldKey is the path of a field as the end of a key; the record itself is
// "record".
func fieldKey(path string) string {
	if path == "" {
		return "record"
	}
	return path
}

// rowWord names a row of a list that is still there.
func (sp speaker) rowWord(list string, id record.ID, a record.Athlete, groups []record.Group) string {
	switch list {
	case "flags":
		for _, f := range a.Flags {
			if f.ID == id {
				return sp.Say("flag." + string(f.Kind) + ".name")
			}
		}
	case "consents":
		if c := consentOf(&a, id); c != nil {
			return sp.Say("profile.purpose." + string(c.Purpose))
		}
	case "memberships":
		for _, m := range a.Memberships {
			for _, g := range groups {
				if m.ID == id && g.ID == m.GroupID {
					return g.Name
				}
			}
		}
	}
	return ""
}

// value reads a value of the history as it stands on the screen.
func (sp speaker) value(path, text string) string {
	if day, ok := record.Date(text).Time(); ok {
		return sp.Words.Date(day)
	}
	name := path[strings.LastIndex(path, ".")+1:]
	switch name {
	case "height", "usualMass", "usualDrinking", "mouthful":
		return strings.Replace(text, ".", sp.Say("format.decimal"), 1)
	}
	if key := wordKey(name, text); sp.Words.Has(key) {
		return sp.Say(key)
	}
	return text
}

// wordKey is the key of a word out of a closed list; empty where a field has
// none.
func wordKey(field, word string) string {
	switch field {
	case "sex":
		return "profile.sex." + word
	case "acclimatised":
		return "profile.heat." + word
	case "sport":
		return "sport." + word
	case "pageLanguage":
		return "language." + word
	case "purpose":
		return "profile.purpose." + word
	case "massHidden", "massHiddenSettled":
		return "profile.yes." + word
	}
	return ""
}

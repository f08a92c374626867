package bundle

import (
	"strings"
	"time"

	"ebbwell/internal/record"
)

// own is what one side changed of a record that the other does not know of: by path
// the last such change.
type own map[string]record.Change

// apart finds what each side changed by itself of a record.
func apart(mine, theirs []record.Change) (ours, others own) {
	return ownOf(mine, theirs), ownOf(theirs, mine)
}

// ownOf lists the changes that another history does not hold, or holds as they were
// before the same visit went on.
func ownOf(list, other []record.Change) own {
	known := map[record.ID]record.Change{}
	for _, c := range other {
		known[c.ID] = c
	}
	o := own{}
	for _, c := range list {
		if k, ok := known[c.ID]; ok && !c.At.After(k.At) {
			continue
		}
		if last, ok := o[c.Field]; !ok || c.At.After(last.At) {
			o[c.Field] = c
		}
	}
	return o
}

// present stands in a history for a whole row that is there.
const present = "present"

// removed reports whether the last change of a row took it away.
func (o own) removed(path string) bool {
	c, ok := o[path]
	return ok && c.Before == present && c.After == ""
}

// within is the last change of a row or of anything in it; all for the empty path.
func (o own) within(path string) (at time.Time, ok bool) {
	for field, c := range o {
		if (field == path || path == "" || strings.HasPrefix(field, path+".")) && (!ok || c.At.After(at)) {
			at, ok = c.At, true
		}
	}
	return at, ok
}

// but is what was changed outside of some lists and fields.
func (o own) but(leave func(path string) bool) own {
	rest := own{}
	for field, c := range o {
		if !leave(field) {
			rest[field] = c
		}
	}
	return rest
}

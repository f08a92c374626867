package desk

import (
	"cmp"
	"slices"
	"strings"

	"ebbwell/internal/store"
	"ebbwell/internal/words"
)

// order is the list of the athletes as it was last put into the order of a language.
type order struct {
	words *words.Words
	list  []store.Person
	// places are places in the list, in order.
	places []int32
}

// anewMost is how many athletes are put into an order that is kept; where more are new,
// all are sorted: our choice.
const anewMost = 100

// ByName are the places of a list of [store.Store.People] in the order of the window's
// language, names that are the same in it as they are listed. What was in order the last
// time stays in it: only who is new is looked at. It is not to be written to.
func (d *Desk) ByName(list []store.Person) []int32 {
	if last := &d.order; last.words != d.Words || !last.follow(list, d.Words.OrderKey()) {
		*last = order{d.Words, list, sorted(list, d.Words.OrderKey())}
	}
	return d.order.places
}

// sorted sorts a list by the keys of its names.
func sorted(list []store.Person, key func(name string) string) []int32 {
	keys, places := make([]string, len(list)), make([]int32, len(list))
	for i := range list {
		keys[i], places[i] = key(list[i].Name), int32(i)
	}
	slices.SortFunc(places, func(a, b int32) int { return cmp.Or(strings.Compare(keys[a], keys[b]), cmp.Compare(a, b)) })
	return places
}

// follow puts the list as it is now in the place of the last; ok is false where too much
// of it is new.
func (o *order) follow(list []store.Person, key func(name string) string) (ok bool) {
	now, added := moved(o.list, list)
	if len(added) > anewMost {
		return false
	}
	places := make([]int32, 0, len(list))
	for _, i := range o.places {
		if to := now[i]; to >= 0 {
			places = append(places, to)
		}
	}
	for _, one := range added {
		mine := key(list[one].Name)
		at, _ := slices.BinarySearchFunc(places, one, func(other, one int32) int {
			return cmp.Or(strings.Compare(key(list[other].Name), mine), cmp.Compare(other, one))
		})
		places = slices.Insert(places, at, one)
	}
	o.list, o.places = list, places
	return true
}

// moved is where each athlete of a list stands in another by its place, -1 for one who is
// not there or has another name, and who is new there. Both are as [store.ComparePeople]
// orders them.
func moved(from, to []store.Person) (now, added []int32) {
	now = make([]int32, len(from))
	j := 0
	for i := range from {
		for j < len(to) && store.ComparePeople(to[j], from[i]) < 0 {
			added = append(added, int32(j))
			j++
		}
		now[i] = -1
		if j < len(to) && to[j].ID == from[i].ID && to[j].Name == from[i].Name {
			now[i] = int32(j)
			j++
		}
	}
	for ; j < len(to); j++ {
		added = append(added, int32(j))
	}
	return now, added
}

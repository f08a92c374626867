package desk_test

import (
	"fmt"
	"math/rand/v2"
	"slices"
	"testing"

	"ebbwell/app/apptest"
	"ebbwell/app/kit/desk"
	"ebbwell/internal/record"
	"ebbwell/internal/store"
)

// The order that is kept is the one of who sorts for the first time, whoever comes, goes
// or is named anew.
func TestByNameFollows(t *testing.T) {
	d, _ := apptest.Desk(t)
	draw := rand.New(rand.NewPCG(7, 7))
	names := []string{"Ann", "ann", "Änn", "Zoë", "zoe", "Ben 2", "Ben 10", "Émile", "Emil", ""}
	list := []store.Person{}
	next := 0
	for range 200 {
		list = slices.Clone(list)
		for range draw.IntN(4) {
			switch at := draw.IntN(len(list) + 1); {
			case at == len(list) || draw.IntN(3) == 0:
				next++
				list = append(list, store.Person{ID: record.ID(fmt.Sprint(next)), Name: names[draw.IntN(len(names))]})
			case draw.IntN(2) == 0:
				list = slices.Delete(list, at, at+1)
			default:
				list[at].Name = names[draw.IntN(len(names))]
			}
		}
		slices.SortFunc(list, store.ComparePeople)
		fresh, err := desk.New(d.Store, d.Words, d.Now)
		if err != nil {
			t.Fatal(err)
		}
		if got, want := d.ByName(list), fresh.ByName(list); !slices.Equal(got, want) {
			t.Fatalf("%v, sorted anew %v, of %+v", got, want, list)
		}
	}
	if len(list) < 10 {
		t.Errorf("%d names are too few to tell", len(list))
	}
}

package record

import (
	"encoding/json"
	"strings"
	"testing"
)

// withIDs are records in which every row of every list has an id.
func withIDs() (Test, Athlete) {
	m := func() Meta { return Meta{ID: "one-id"} }
	t := Test{Meta: m(), Note: "kept"}
	t.Weighings, t.Foods, t.Patches, t.Partway, t.Safety = []Weighing{{Meta: m()}}, []FoodEaten{{Meta: m()}}, []Patch{{Meta: m()}}, []PartwayWeighing{{Meta: m()}}, []SafetyNote{{Meta: m()}}
	t.Bottles = []Bottle{{Meta: m(), Refills: []Refill{{Meta: m()}}}}
	a := Athlete{Meta: m(), Name: "kept", Flags: []Flag{{Meta: m()}}, Consents: []Consent{{Meta: m()}}, Memberships: []Membership{{Meta: m()}}}
	return t, a
}

// A copy anew has no id anywhere and all else, and what it was made of keeps its own.
func TestAnew(t *testing.T) {
	test, athlete := withIDs()
	for name, pair := range map[string][2]any{"test": {test, test.Anew()}, "athlete": {athlete, athlete.Anew()}} {
		var texts [2]string
		for i, one := range pair {
			data, err := json.Marshal(one)
			if err != nil {
				t.Fatal(err)
			}
			texts[i] = string(data)
		}
		ids := strings.Count(texts[0], "one-id")
		if ids < 4 || strings.Contains(texts[1], "one-id") || strings.ReplaceAll(texts[0], "one-id", "") != texts[1] {
			t.Errorf("%s: %s\nwas %s", name, texts[1], texts[0])
		}
	}
}

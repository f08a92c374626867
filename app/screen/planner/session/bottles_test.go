package session

import (
	"testing"

	"ebbwell/app/apptest"
	"ebbwell/app/kit/amount"
	"ebbwell/app/screen/planner/wording"
)

func TestReadBottles(t *testing.T) {
	sp := wording.Speaker{Speaker: amount.Speaker{Words: apptest.Words(t)}}
	for text, want := range map[string]int{"500 750": 2, "500, 750;330": 3, "": 0} {
		if sizes, ok := readBottles(text, sp); !ok || len(sizes) != want {
			t.Errorf("%q is %v, %v", text, sizes, ok)
		}
	}
	for _, text := range []string{"big", "500 x", "0", "-500"} {
		if sizes, ok := readBottles(text, sp); ok {
			t.Errorf("%q is read as %v", text, sizes)
		}
	}
}

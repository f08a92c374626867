package climate

import (
	"slices"
	"strings"
	"testing"

	"ebbwell/internal/published"
	"ebbwell/internal/quantity"
)

// ownOf is the basis of the tests of a row, "rate:u" each, L/h.
func ownOf(t *testing.T, text string) Basis {
	t.Helper()
	var tests []Test
	var like []int
	for i, pair := range strings.Fields(text) {
		rate, u, _ := strings.Cut(pair, ":")
		tests = append(tests, Test{Rate: quantity.LitresPerHour(parseNumber(t, rate)), U: quantity.LitresPerHour(parseNumber(t, u))})
		like = append(like, i)
	}
	return Own(tests, like)
}

func TestPublishedOwnTests(t *testing.T) {
	published.Walk(t, "own_tests", map[string]published.Model{
		"own middle": func(in published.In) any { return ownOf(t, in.Text("tests")).Rate.Value },
		"own low":    func(in published.In) any { return ownOf(t, in.Text("tests")).Rate.Range.Low },
		"own high":   func(in published.In) any { return ownOf(t, in.Text("tests")).Rate.Range.High },
	})
}

// Where the heat balance does not hold, a session that was not tested has no rate, and
// tests of other sessions count for nothing.
func TestOwnTestsAlone(t *testing.T) {
	tests := []Test{{Rate: 1.5, U: 0.1}, {Rate: 0.2, U: 0.03}}
	if b := Own(tests, nil); b.Rate.Known || b.Grade != Far || !b.RangeOnly || len(b.From) > 0 || len(b.Coverage) != 2 {
		t.Errorf("not tested: %+v", b)
	}
	b := Own(tests, []int{1})
	if b.Rate.Value < 0.199 || b.Rate.Value > 0.201 || b.Rate.Estimate || b.Grade != Tested || !slices.Equal(b.From, []int{1}) {
		t.Errorf("the test of 0.2 L/h gives %+v", b.Rate)
	}
	if b.Coverage[0].Weight != 0 || b.Coverage[1].Weight != 1 {
		t.Errorf("weights %v and %v", b.Coverage[0].Weight, b.Coverage[1].Weight)
	}
	if apart := ownOf(t, "0.3:0.05 0.9:0.05"); !slices.Contains(apart.Codes, TestsDisagree) || apart.Rate.Range.Low > 0.3 {
		t.Errorf("tests of 0.3 and 0.9 L/h give %+v, %v", apart.Rate, apart.Codes)
	}
}

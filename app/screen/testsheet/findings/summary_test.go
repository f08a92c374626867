package findings

import (
	"slices"
	"strings"
	"testing"

	"ebbwell/app/apptest"
	"ebbwell/app/kit/amount"
	"ebbwell/internal/quantity"
	"ebbwell/internal/record"
)

// massAfter is the whole test with another mass after.
func massAfter(kg float64) record.Test {
	t := whole()
	for i := range t.Weighings {
		if t.Weighings[i].Moment == record.After {
			t.Weighings[i].Mass = record.Num(kg, quantity.Kilogram)
		}
	}
	return t
}

// What was found is one sentence of at most 20 words that leads with the rate, and
// where mass is hidden tells no kilogram and no per cent.
func TestWhatWeFoundIsOneSentence(t *testing.T) {
	w := english(t)
	noRate := whole()
	noRate.Session.End = ""
	for _, c := range []struct {
		name  string
		test  record.Test
		says  string
		empty bool
	}{
		{"past the limit", massAfter(62.4), "past the", false},
		{"within the limit", massAfter(63.6), "within the", false},
		{"gain", massAfter(64.2), "heavier", false},
		{"no rate", noRate, "", true},
	} {
		in := inputOf(t, c.test)
		in.Findings.Limit = 2
		for _, hidden := range []bool{false, true} {
			sp := speaker{amount.Speaker{Words: w, By: amount.Writer{Words: w, Hidden: hidden}}}
			got := sp.summary(in)
			if (got == "") != c.empty {
				t.Errorf("%s: %q", c.name, got)
			}
			if c.empty {
				continue
			}
			if strings.Count(got, ". ") > 0 || !strings.HasSuffix(got, ".") || !strings.HasPrefix(got, "Sweat rate ") || !strings.Contains(got, c.says) {
				t.Errorf("%s: %q", c.name, got)
			}
			if n := len(strings.Fields(strings.ReplaceAll(got, "\u00a0", ""))); n > 20 {
				t.Errorf("%s: %d words: %q", c.name, n, got)
			}
			if hidden && (strings.Contains(got, "kg") || strings.Contains(got, "%")) {
				t.Errorf("%s, hidden: %q", c.name, got)
			}
		}
	}
}

// Seven figures stand first, the weightiest, and the others behind a link, none lost
// and none twice; where mass is hidden what tells it is not among them.
func TestSevenRowsFirst(t *testing.T) {
	w := english(t)
	in := inputOf(t, whole())
	for _, hidden := range []bool{false, true} {
		by := amount.Speaker{Words: w, By: amount.Writer{Words: w, Hidden: hidden}}
		rows := Rows(by, in)
		list, first := arranged(rows)
		if first != firstRows || len(list) != len(rows) || len(rows) <= firstRows {
			t.Fatalf("hidden %v: %d first of %d, of %d", hidden, first, len(list), len(rows))
		}
		seen := map[string]bool{}
		for i, r := range list {
			if seen[r.Key] {
				t.Errorf("%s stands twice", r.Key)
			}
			seen[r.Key] = true
			if hidden && i < first && r.Key == "deficit-share" {
				t.Error("a per cent of a hidden mass is among the first")
			}
		}
		for _, key := range []string{"sweat-rate", "deficit", "sodium-lost-rate", "carbohydrate-rate"} {
			at := slices.IndexFunc(list, func(r Row) bool { return r.Key == key })
			if at < 0 || at >= first {
				t.Errorf("hidden %v: %s stands at %d", hidden, key, at)
			}
		}
	}
}

// On the screen the table has seven rows until the others are asked for, and again
// when they are put away.
func TestOtherRowsAreBehindALink(t *testing.T) {
	d, _ := apptest.Desk(t)
	v := New(d, d.Speaker(false), Actions{})
	in := inputOf(t, whole())
	apptest.Window(t, v.Main(), 820, 900, false, 100)
	v.Open(in)
	if text := v.main.more.AccessibilityLabel(); v.main.table.Rows() != firstRows || !strings.Contains(text, "more") {
		t.Fatalf("%d rows, the link says %q", v.main.table.Rows(), text)
	}
	v.turn()
	if v.main.table.Rows() != len(v.Rows()) {
		t.Errorf("%d of %d rows", v.main.table.Rows(), len(v.Rows()))
	}
	v.turn()
	if v.main.table.Rows() != firstRows {
		t.Errorf("%d rows after putting them away", v.main.table.Rows())
	}
	v.Choose(len(v.Rows()) - 1)
	if v.main.table.Rows() != len(v.Rows()) || v.main.table.Chosen() != len(v.Rows())-1 {
		t.Error("a row behind the link cannot be chosen")
	}
}

package words

import (
	"strings"
	"testing"

	"golang.org/x/text/language"
)

func TestExplain(t *testing.T) {
	w, err := of(language.English, map[string]entry{
		"a.agree": {text: "Agree plans …"}, "a.tab": {text: "2 Bottles and food"}, "a.range": {text: "range"},
		"a.help": {text: "{a.agree}\tTick each. See {a.range}.\n{a.range}, {a.tab}\t{a.tab} first."},
	})
	if err != nil {
		t.Fatal(err)
	}
	if got, want := w.Explain("a.help"), "Agree plans\tTick each. See range.\nRange, Bottles and food\tBottles and food first."; got != want {
		t.Errorf("got %q, want %q", got, want)
	}
}

// Every label that a text of help names is in the catalogue, and nothing is put into it.
func TestLabelsNamedAreThere(t *testing.T) {
	named := 0
	for _, tag := range Languages() {
		texts, err := textsOf(tag)
		if err != nil {
			t.Fatal(err)
		}
		for key, e := range texts {
			for _, l := range labels().FindAllString(e.text, -1) {
				named++
				of, ok := texts[strings.Trim(l, "{}")]
				if !ok || of.forms != nil || strings.Contains(of.text, "%") {
					t.Errorf("%s %s names %s", tag, key, l)
				}
			}
		}
	}
	if named < 400 {
		t.Errorf("only %d labels are named", named)
	}
}

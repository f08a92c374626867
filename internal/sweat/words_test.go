package sweat_test

import (
	"slices"
	"strings"
	"testing"

	"golang.org/x/text/language"

	"ebbwell/internal/evidence"
	"ebbwell/internal/sweat"
	"ebbwell/internal/words"
)

// TestEveryCodeHasWords: whatever this package can say has a text.
func TestEveryCodeHasWords(t *testing.T) {
	w, err := words.New(language.English)
	if err != nil {
		t.Fatal(err)
	}
	codes := sweat.Codes()
	if len(codes) < 90 {
		t.Fatalf("only %d codes", len(codes))
	}
	for _, code := range codes {
		if !w.Has(code) {
			t.Errorf("no text for %q", code)
		}
	}
	for _, set := range evidence.BandSets() {
		for _, scale := range set.Scales {
			for _, b := range scale.Bands {
				if !w.Has("band." + b.Code) {
					t.Errorf("no text for band %q", b.Code)
				}
			}
		}
	}
	for _, band := range []string{evidence.SodiumLow, evidence.SodiumMiddle, evidence.SodiumHigh} {
		if !w.Has(band) {
			t.Errorf("no text for %q", band)
		}
	}
}

// TestEveryEntryHasWords: the settings screen can name every threshold that a
// sweat test is based on.
func TestEveryEntryHasWords(t *testing.T) {
	w, err := words.New(language.English)
	if err != nil {
		t.Fatal(err)
	}
	areas := []string{"uncertainty", "day-to-day", "balance", "respiratory", "exchange", "energy", "correction", "unit", "cool-air",
		"uncorrected", "missing", "oxygen", "deficit", "sodium", "marker", "group", "plasma", "body-water"}
	n := 0
	for _, e := range evidence.All() {
		area, _, _ := strings.Cut(e.ID, ".")
		if !slices.Contains(areas, area) {
			continue
		}
		if n++; !w.Has(e.Key()) {
			t.Errorf("no text for %q", e.ID)
		}
	}
	if n < 150 {
		t.Fatalf("only %d entries", n)
	}
}

// TestCodesAreDistinct: one word for one thing.
func TestCodesAreDistinct(t *testing.T) {
	codes := sweat.Codes()
	slices.Sort(codes)
	if distinct := slices.Compact(slices.Clone(codes)); len(distinct) != len(codes) {
		t.Errorf("%d codes, %d of them distinct", len(codes), len(distinct))
	}
}

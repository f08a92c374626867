package handout

import (
	"strings"
	"testing"

	"ebbwell/internal/words"
)

// mostReportWords is how long a sentence for colleagues may be.
const mostReportWords = 20

// Every sentence of the catalogue that can stand on the page, the card or a band has
// at most fifteen words, what is put in counted as one; those of the report, the trip
// page and the blank sheet at most twenty.
func TestSentencesOfTheCatalogueAreShort(t *testing.T) {
	for _, tag := range words.Languages() {
		checkCatalogue(t, inLanguage(t, tag))
	}
}

// checkCatalogue holds the sentences of one language to their lengths.
func checkCatalogue(t *testing.T, w *words.Words) {
	t.Helper()
	checked := 0
	for _, key := range w.Keys() {
		most := mostWords
		switch {
		case strings.HasPrefix(key, "flag.") && strings.HasSuffix(key, ".page"):
		case !strings.HasPrefix(key, "handout."):
			continue
		case strings.HasPrefix(key, "handout.report."), strings.HasPrefix(key, "handout.trip."), strings.HasPrefix(key, "handout.blank."):
			most = mostReportWords
		}
		text := w.Say(key)
		if i := strings.Index(text, "%!(EXTRA"); i >= 0 {
			text = text[:i]
		}
		for _, s := range sentencesOf(unmarked(text)) {
			n := 0
			for _, word := range strings.Fields(s) {
				if strings.ContainsFunc(word, func(r rune) bool { return r >= 'A' }) {
					n++
				}
			}
			if checked++; n > most {
				t.Errorf("%s, %s: %d words, at most %d: %q", w.Language(), key, n, most, s)
			}
		}
	}
	if checked < 200 {
		t.Errorf("%s: only %d sentences", w.Language(), checked)
	}
}

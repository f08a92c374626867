package handout

import "ebbwell/internal/words"

// cardSentences are those of the card: the same but for whom to ask first, which
// the page says that the card goes with.
func cardSentences(w *words.Words, emergency string) []string {
	return append(plainSentences(stopSentences(w, emergency)), cardPrint(w)...)
}

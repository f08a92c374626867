package reading

import (
	"slices"
	"testing"
)

func TestSentences(t *testing.T) {
	text := "Drink %s now. Is 1.5 L too much? No\nNext line\nTerm\tits meaning."
	got := Sentences(text)
	if want := []string{"Drink %s now.", "Is 1.5 L too much?", "No", "Next line", "Term", "its meaning."}; !slices.Equal(got, want) {
		t.Errorf("got %q, want %q", got, want)
	}
	if n := len(Words("Drink %s – now.")); n != 3 {
		t.Errorf("%d words", n)
	}
}

package plain

import (
	"testing"

	"pgregory.net/rapid"
)

// The short way for ASCII says what the long one does, for every text of ASCII.
func TestASCIIIsFoldedAlike(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		text := string(rapid.SliceOf(rapid.OneOf(rapid.ByteRange(0, 127), rapid.SampledFrom([]byte("019 ,.-'`Aa\t/+")))).Draw(t, "text"))
		if short, long := foldedASCII(text), folded(text); short != long {
			t.Fatalf("%q is %q, in the long way %q", text, short, long)
		}
	})
	for c := range byte(128) {
		for _, text := range []string{string(rune(c)), "a" + string(rune(c)) + "b", "1" + string(rune(c)) + "2"} {
			if short, long := foldedASCII(text), folded(text); short != long {
				t.Errorf("%q is %q, in the long way %q", text, short, long)
			}
		}
	}
}

package desk

import (
	"os"
	"regexp"
	"slices"
	"strings"
	"testing"

	"golang.org/x/text/language"

	"ebbwell/internal/handout"
	"ebbwell/internal/words"
)

// TestEveryRedFlagIsSigned: each sentence of a red flag that redflag.go says is among
// those a clinician reads and signs, with and without an emergency number.
func TestEveryRedFlagIsSigned(t *testing.T) {
	source, err := os.ReadFile("redflag.go")
	if err != nil {
		t.Fatal(err)
	}
	w, err := words.New(language.English)
	if err != nil {
		t.Fatal(err)
	}
	var signed []string
	for _, emergency := range []string{"", "112"} {
		for _, g := range handout.RedFlagWords(w, emergency) {
			signed = append(signed, g.Sentences...)
		}
	}
	keys := regexp.MustCompile(`"((?:gain|flag|safety|squad|overview|letter|findings)\.[a-z.-]+[a-z])"`).FindAllStringSubmatch(string(source), -1)
	if len(keys) < 30 {
		t.Fatalf("only %d texts were found", len(keys))
	}
	for _, found := range keys {
		key := found[1]
		if key == "safety.item" || strings.HasPrefix(key, "gain.number") {
			continue // within a sentence
		}
		text := blanked(w, key)
		if parts := strings.Split(text, handout.RedFlagBlank); !slices.ContainsFunc(signed, func(s string) bool { return holds(s, parts) }) {
			t.Errorf("%s is not among the sentences to sign: %q", key, text)
		}
	}
}

// blanked is a text with a blank for each thing that is put in.
func blanked(w *words.Words, key string) string {
	var args []any
	for {
		if text := w.Say(key, args...); !strings.Contains(text, "%!") || len(args) > 4 {
			return text
		}
		args = append(args, handout.RedFlagBlank)
	}
}

// holds reports whether a sentence is a text with something put in between its parts.
func holds(sentence string, parts []string) bool {
	for i, part := range parts {
		at := strings.Index(sentence, part)
		if at < 0 || i == 0 && at != 0 {
			return false
		}
		sentence = sentence[at+len(part):]
	}
	return sentence == "" || parts[len(parts)-1] == ""
}

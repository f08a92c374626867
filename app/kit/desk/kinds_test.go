package desk

import (
	"testing"

	"golang.org/x/text/language"

	"ebbwell/internal/plan"
	"ebbwell/internal/words"
)

// Every kind of session of the table of chances, and every sport of it, has words.
func TestKindsOfSessionHaveWords(t *testing.T) {
	w, err := words.New(language.English)
	if err != nil {
		t.Fatal(err)
	}
	list, err := plan.Sports()
	if err != nil {
		t.Fatal(err)
	}
	for _, s := range list {
		if !w.Has("sport-session." + s.Session) {
			t.Errorf("%s: no words for %q", s.Code, s.Session)
		}
		if !w.Has("sport." + s.Code) {
			t.Errorf("no words for the sport %q", s.Code)
		}
	}
}

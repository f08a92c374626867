package desk_test

import (
	"strings"
	"testing"

	"golang.org/x/text/language"

	"ebbwell/app/kit/desk"
	"ebbwell/internal/evidence"
	"ebbwell/internal/words"
)

// Every statement is worded with its source; those asked for come and no others, and
// nothing in per cent of body mass where that is hidden.
func TestStatements(t *testing.T) {
	w, err := words.New(language.English)
	if err != nil {
		t.Fatal(err)
	}
	for _, s := range evidence.Statements() {
		got := desk.Statements(w, false, s.ID)
		if len(got) != 1 || !strings.Contains(got[0], s.Source.Name(w.Say)) || !strings.Contains(got[0], w.Say("statement."+s.ID)) {
			t.Errorf("%s: %q", s.ID, got)
		}
	}
	if got := desk.Statements(w, true, "deficit.by-heat", "heat.consensus"); len(got) != 1 {
		t.Errorf("hidden: %q", got)
	}
	if got := desk.Statements(w, false); len(got) != 0 {
		t.Errorf("none asked for: %q", got)
	}
}

package words

import (
	"testing"

	"golang.org/x/text/language"
)

// Texts go into their places as they are; a text with other places than there are
// arguments is left to the printer.
func TestFill(t *testing.T) {
	for _, one := range []struct {
		text   string
		args   []any
		filled string
		ok     bool
	}{
		{"%s of %s", []any{"2 L", "100 % juice, %s"}, "2 L of 100 % juice, %s", true},
		{"100 %% of %s%s.", []any{"a", ""}, "100 % of a.", true},
		{"Until %s.", []any{"2. Jan."}, "Until 2. Jan.", true},
		{"%s. %s.", []any{"Smith et al.", "mai"}, "Smith et al. mai.", true},
		{"100 %%.", nil, "100 %.", true},
		{"nothing", nil, "nothing", true},
		{"%s", []any{"a", "b"}, "", false},
		{"%s %s", []any{"a"}, "", false},
		{"%s", []any{1}, "", false},
	} {
		if filled, ok := fill(one.text, one.args); filled != one.filled || ok != one.ok {
			t.Errorf("%q with %v: %q, %v", one.text, one.args, filled, ok)
		}
	}
}

// A text with texts in it takes one allocation: itself.
func TestSayAllocatesTheTextOnly(t *testing.T) {
	w, err := New(language.English)
	if err != nil {
		t.Fatal(err)
	}
	key := ""
	for k, text := range w.plain {
		if _, ok := fill(text, []any{"a"}); ok && (key == "" || k < key) {
			key = k
		}
	}
	a, said := string([]byte("amount")), ""
	if n := testing.AllocsPerRun(100, func() { said = w.Say(key, a) }); n > 1 || said == "" {
		t.Errorf("%q of %q: %v allocations", said, key, n)
	}
}

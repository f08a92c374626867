package field_test

import (
	"fmt"
	"testing"

	"ebbwell/app/kit/field"
	"ebbwell/internal/record"
	"ebbwell/internal/words"
)

// The day that the program writes is one it reads, in every language and for every day
// of a year: "18 de mayo de 2026" and "1er mai 2026" as well.
func TestWrittenDaysAreRead(t *testing.T) {
	use(t)
	for _, tag := range words.Languages() {
		w, err := words.New(tag)
		if err != nil {
			t.Fatal(err)
		}
		h := field.NewHost(w)
		h.Today = today
		day := field.NewDate(h, "day", field.Nearest)
		for n := range 366 {
			at := today().AddDate(0, 0, n)
			want := record.DateOf(at)
			day.SetText(w.Date(at))
			if got, ok := day.Date(); !ok || got != want {
				t.Errorf("%s: %q is read as %q, %v", tag, w.Date(at), got, ok)
			}
			plain := fmt.Sprintf("%d %s %d", at.Day(), words.Slug(w.Say(fmt.Sprintf("month.%d", at.Month()))), at.Year())
			day.SetText(plain)
			if got, ok := day.Date(); !ok || got != want {
				t.Errorf("%s: without accents %q is read as %q, %v", tag, plain, got, ok)
			}
		}
	}
}

package apptest

import (
	"context"
	"testing"

	"golang.org/x/text/language"

	"ebbwell/app/kit/desk"
	"ebbwell/app/kit/field"
	"ebbwell/internal/record"
	"ebbwell/internal/store"
	"ebbwell/internal/words"
)

// ReadsIn is a desk whose screens read in a language, on the same records; every
// language can be chosen on it.
func ReadsIn(t testing.TB, d *desk.Desk, tag language.Tag) *desk.Desk {
	t.Helper()
	d.Languages = words.Written()
	other, err := d.In(tag)
	if err != nil {
		t.Fatal(err)
	}
	if other != d {
		other.Host = field.NewHost(other.Words)
		other.Host.Today = d.Host.Today
	}
	return other
}

// PagesIn keeps a language as what an athlete's pages are in, on a desk where every
// language can be chosen.
func PagesIn(t testing.TB, d *desk.Desk, name string, tag language.Tag) record.Athlete {
	t.Helper()
	d.Languages = words.Written()
	a := AthleteNamed(t, d, name)
	a.PageLanguage = tag.String()
	kept, err := d.Store.SaveAthlete(context.Background(), a, store.Edit{})
	if err != nil {
		t.Fatal(err)
	}
	return kept
}

package trip

import (
	"strings"
	"testing"

	"ebbwell/app/apptest"
	"ebbwell/app/kit/desk"
	"ebbwell/internal/store"
)

// Letters of a place that cannot be printed are said with where the page is.
func TestLettersOfAPlaceAreSaid(t *testing.T) {
	for place, want := range map[string]bool{"京都": true, "Kyoto": false} {
		d, _ := apptest.Demo(t)
		trips, err := d.Store.Trips(t.Context())
		if err != nil || len(trips) == 0 {
			t.Fatalf("%d trips, %v", len(trips), err)
		}
		one, err := d.Store.LoadTrip(t.Context(), trips[0].ID)
		if err != nil {
			t.Fatal(err)
		}
		one.Stops[0].Place = place
		if _, err := d.Store.SaveTrip(t.Context(), one, store.Edit{}); err != nil {
			t.Fatal(err)
		}
		said := ""
		d.Say = func(sentence, _ string, _ func()) { said = sentence }
		_, w := openWhole(t, d, desk.Place{Screen: desk.Trip, Record: trips[0].ID})
		apptest.Click(t, w, "trip.print")
		apptest.Type(t, w, "trip.print.path", t.TempDir())
		apptest.Click(t, w, "trip.print.yes")
		if got := strings.Contains(said, "Letters that can’t be printed: 京, 都"); got != want || said == "" {
			t.Errorf("%s: it is said: %v: %q", place, got, said)
		}
	}
}

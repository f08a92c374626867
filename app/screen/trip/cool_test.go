package trip

import (
	"context"
	"strings"
	"testing"

	"ebbwell/app/apptest"
	"ebbwell/internal/climate"
	"ebbwell/internal/quantity"
	"ebbwell/internal/record"
	"ebbwell/internal/store"
)

// At a stop in cool air the row, opened, and the traveller's page say that the limit is
// uncertain, to weigh and that thirst comes first; on the hot coast neither does.
func TestCoolStopSaysThatTheLimitIsUncertain(t *testing.T) {
	const sentence = "Cool: weigh. The limit is uncertain, so thirst comes first."
	d, _ := apptest.Demo(t)
	ravka := apptest.AthleteNamed(t, d, "Ravka").ID
	v, w := hockeyTrip(t, d, 1, ravka)
	without(t, w, sentence)
	trip := v.now()
	cold := &trip.Stops[1]
	cold.City, cold.Air = "", record.Air{
		Temperature: record.Num(5, quantity.DegreeCelsius), Humidity: record.Num(60, quantity.PerCent), Sun: record.SunNone,
		Wind: record.Num(1.5, quantity.MetrePerSecond), Clothing: "shirt-shorts",
	}
	if _, err := d.Store.SaveTrip(context.Background(), trip, store.Edit{}); err != nil {
		t.Fatal(err)
	}
	v, w = hockeyTrip(t, d, 1, ravka)
	wants(t, w, sentence)
	for _, m := range v.crew() {
		if m.athlete.ID != ravka {
			continue
		}
		there, err := v.plan(m, v.now().Stops[1])
		if err != nil || !strings.Contains(strings.Join(there.Calculation.Climate.Codes, " "), climate.LimitUnsure) {
			t.Fatalf("%v: %v", there.Calculation.Climate.Codes, err)
		}
		paper := v.stopOnPaper(v.speaker(m), m, there, nil, 1)
		if !strings.Contains(paper.Rests, sentence) {
			t.Errorf("the page says %q", paper.Rests)
		}
	}
}

package handout

import (
	"flag"
	"strconv"
	"testing"

	"ebbwell/internal/golden"
	"ebbwell/internal/handout/paper"
)

var update = flag.Bool("update", false, "write the golden pictures anew")

// goldenScale is about 75 dots an inch: small, but every word can be read.
const goldenScale = 3

// documents are all that is kept as pictures.
func documents(t testing.TB) map[string]paper.Document {
	p := press(t)
	us := match()
	us.Terms.USUnits = true
	letter, err := NewPress(english(t), paper.Letter())
	if err != nil {
		t.Fatal(err)
	}
	hiddenReport, hiddenTrip := report(), trip()
	hiddenReport.Terms.MassHidden, hiddenTrip.Terms.MassHidden = true, true
	return map[string]paper.Document{
		"page":                  p.AthletePage(match()),
		"page-hidden":           p.AthletePage(hidden()),
		"page-minor":            p.AthletePage(minor()),
		"page-estimate":         p.AthletePage(estimate()),
		"page-no-chances":       p.AthletePage(noChances()),
		"page-long-names":       p.AthletePage(longNames()),
		"page-two-sides":        p.AthletePage(twoSides()),
		"page-gain":             p.AthletePage(gain()),
		"page-empty":            p.AthletePage(AthletePage{}),
		"page-letter-us":        letter.AthletePage(us),
		"card":                  p.KitBagCard(card(match())),
		"card-no-chances":       p.KitBagCard(card(noChances())),
		"card-long-names":       p.KitBagCard(card(longNames())),
		"card-estimate":         p.KitBagCard(card(estimate())),
		"cards":                 p.KitBagCards(card(match())),
		"cards-two-sides":       p.KitBagCards(card(twoSides())),
		"blank-sheet":           p.BlankSheet(BlankSheet{Terms: Terms{Practice: practice()}, Athlete: "Ravka Oldenmoor", Sport: "field hockey", Day: day(5, 14)}),
		"blank-sheet-letter-us": letter.BlankSheet(BlankSheet{Terms: us.Terms, Athlete: "Ravka Oldenmoor", Sport: "field hockey"}),
		"blank-sheet-hidden":    p.BlankSheet(BlankSheet{Terms: minor().Terms}),
		"report":                p.TestReport(report()),
		"report-hidden":         p.TestReport(hiddenReport),
		"report-no-sodium":      p.TestReport(noSodium()),
		"bands":                 p.BottleBands(bands()),
		"trip":                  p.TripPage(trip()),
		"trip-hidden":           p.TripPage(hiddenTrip),
	}
}

func TestGoldenPictures(t *testing.T) {
	golden.Needed(t)
	for name, doc := range documents(t) {
		for i := range doc.Pages {
			name := name + "-" + strconv.Itoa(i+1)
			t.Run(name, func(t *testing.T) {
				img, err := doc.Picture(i, goldenScale)
				if err != nil {
					t.Fatal(err)
				}
				golden.Check(t, name, img, *update)
			})
		}
	}
}

package handout

import (
	"fmt"
	"math/rand/v2"
	"os"
	"strconv"
	"testing"

	"ebbwell/internal/consult"
	"ebbwell/internal/quantity"
	"ebbwell/internal/record"
	"ebbwell/internal/words"
)

// hiddenAthletes is how many athletes the search is made for: as many as the variable
// HIDDEN_ATHLETES of the environment says, one in the usual run, since each is laid out
// some twenty times. Package consult searches for 200 in what the pages are made of.
func hiddenAthletes(t *testing.T) int {
	t.Helper()
	said := os.Getenv("HIDDEN_ATHLETES")
	if said == "" {
		return 1
	}
	n, err := strconv.Atoi(said)
	if err != nil {
		t.Fatal(err)
	}
	return n
}

// leastOpen is the share of the mass that the masses that leave every shown text as
// it is must span.
const leastOpen = 0.30

// shownOf is every text of the athlete's page and the card of all options for a body
// mass, all other entries of test and profile fixed; the loss of mass is one of them.
func shownOf(t *testing.T, h house, w *words.Words, sheet record.Test, a record.Athlete, p record.Plan, mass float64) string {
	t.Helper()
	was, shifted := 0.0, sheet.Clone()
	for _, x := range sheet.Weighings {
		if x.Moment == record.Before {
			was = x.Mass.Or(0)
		}
	}
	for i, x := range shifted.Weighings {
		shifted.Weighings[i].Mass = record.Num(x.Mass.Or(0)+mass-was, quantity.Kilogram)
	}
	a.UsualMass = record.Num(mass, quantity.Kilogram)
	b, err := consult.BasisOf(a, []consult.Findings{consult.Find(shifted, a, nil, h.desk)}, p.CreatedAt, h.desk)
	if err != nil {
		return err.Error()
	}
	c, err := consult.OpenCase(p, a, b, h.desk)
	if err != nil {
		return err.Error()
	}
	text := ""
	for _, o := range p.Options {
		text += all(press(t).AthletePage(AthletePageOf(c, o, h.practice, w))) + all(press(t).KitBagCard(KitBagCardOf(c, o, h.practice, w)))
	}
	return text
}

// farthest is how far from a mass, kg in one direction, every text stays as it is.
func farthest(from, towards float64, same func(mass float64) bool) float64 {
	if same(towards) {
		return towards
	}
	near, far := from, towards
	for range 9 {
		if mid := (near + far) / 2; same(mid) {
			near = mid
		} else {
			far = mid
		}
	}
	return near
}

// A hidden body mass cannot be worked out of the athlete's page and card: the masses
// that leave every text of them as it is span at least 30 % of it.
func TestHiddenMassStaysOpenOnPaper(t *testing.T) {
	h, w := openHouse(t), english(t)
	base := h.athlete(t, "Ravka")
	p, b := h.plan(t, base)
	seed := rand.New(rand.NewPCG(7, 11))
	for i := range hiddenAthletes(t) {
		mass := 38 + 50*seed.Float64()
		a, sheet := base.Clone(), b.Tests[0].Test.Clone()
		a.MassHidden, a.MassHiddenSettled = true, true
		a.Height = record.Num(1.5+0.4*seed.Float64(), quantity.Metre)
		a.Mouthful = record.Num(20+20*seed.Float64(), quantity.Millilitre)
		loss := 0.5 + 1.5*seed.Float64()
		for j, x := range sheet.Weighings {
			kg := mass
			if x.Moment == record.After {
				kg -= loss
			}
			sheet.Weighings[j].Mass = record.Num(kg, quantity.Kilogram)
		}
		t.Run(fmt.Sprintf("athlete %d", i+1), func(t *testing.T) {
			shown := shownOf(t, h, w, sheet, a, p, mass)
			same := func(m float64) bool { return shownOf(t, h, w, sheet, a, p, m) == shown }
			low, high := farthest(mass, 0.6*mass, same), farthest(mass, 1.5*mass, same)
			t.Logf("%.1f kg: %.1f to %.1f kg leave every text as it is", mass, low, high)
			if open := (high - low) / mass; open < leastOpen {
				t.Errorf("the mass can be worked out of the page: %.0f %% of it is left open", 100*open)
			}
		})
	}
}

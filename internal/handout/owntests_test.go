package handout

import (
	"fmt"
	"math"
	"slices"
	"strings"
	"testing"

	"golang.org/x/text/language"

	"ebbwell/internal/climate"
	"ebbwell/internal/handout/paper"
	"ebbwell/internal/record"
	"ebbwell/internal/words"
)

// restingOnOwnTests are plans where no heat balance holds: a swimmer's, and that of an
// athlete who plays in a wheelchair.
func restingOnOwnTests() map[string]kindOfPlan {
	return map[string]kindOfPlan{
		climate.MeasuredInWater: {name: "swimmer", athlete: "Jorun", sport: "swimming", activity: "swim-fast", minutes: 90, own: "The bottle stands at my end."},
		climate.OwnTestOnly:     {name: "wheelchair", athlete: "Sefa", sport: "tennis", minutes: 90, own: "Every second seat.", flag: record.FlagSpinalInjury},
	}
}

// A plan that is based on the athlete's own test alone says on page and card, in every
// language, where it holds: once, in one sentence, and no other plan says so.
func TestPageOfAnOwnTest(t *testing.T) {
	h := openHouse(t)
	other, step := h.caseOf(t, "Ravka")
	for code, kind := range restingOnOwnTests() {
		c, o := h.caseOfKind(t, kind)
		if got := c.OwnTests(); got != code {
			t.Fatalf("%s: based on %q", kind.name, got)
		}
		air, t0 := AthletePageOf(c, o, h.practice, english(t)).Heading.Air, *c.Basis.Air.Temperature.Value
		if air.Low != air.High || math.Abs(air.Low-t0) > 0.5 {
			t.Errorf("%s: for air of %g to %g °C, tested at %g", kind.name, air.Low, air.High, t0)
		}
		for _, tag := range []language.Tag{language.English, language.German, language.Spanish, language.French} {
			w := inLanguage(t, tag)
			want := w.Say("handout.caution." + code)
			saysOnce(t, fmt.Sprint(kind.name, ", ", tag), want, AthletePageOf(c, o, h.practice, w), KitBagCardOf(c, o, h.practice, w), w)
			if plain := AthletePageOf(other, step, h.practice, w); contains(plain.Terms.Cautions, want) {
				t.Errorf("%v: a plan of an estimate says %q", tag, want)
			}
		}
	}
}

// saysOnce holds page and card to one sentence among the cautions, and in print.
func saysOnce(t *testing.T, name, want string, page AthletePage, card KitBagCard, w *words.Words) {
	t.Helper()
	for on, cautions := range map[string][]string{"page": page.Terms.Cautions, "card": card.Terms.Cautions} {
		if n := len(slices.DeleteFunc(slices.Clone(cautions), func(s string) bool { return s != want })); n != 1 {
			t.Errorf("%s, %s: said %d times: %q", name, on, n, cautions)
		}
	}
	p, err := NewPress(w, paper.A4())
	if err != nil {
		t.Fatal(err)
	}
	for on, printed := range map[string]string{"page": all(p.AthletePage(page)), "card": all(p.KitBagCard(card))} {
		if strings.Count(printed, want) != 1 {
			t.Errorf("%s, %s: printed %q", name, on, printed)
		}
	}
}

// Amounts above the limit are printed as no instruction, and where the plan holds is then
// not what has to be said.
func TestPageOfAnOwnTestAboveTheLimit(t *testing.T) {
	h := openHouse(t)
	c, o := h.caseOfKind(t, restingOnOwnTests()[climate.MeasuredInWater])
	mix := c.MixOf(o)
	mix[0] = 6000
	o = c.WithMix(o, mix)
	w := english(t)
	if page := AthletePageOf(c, o, h.practice, w); contains(page.Terms.Cautions, w.Say("handout.caution."+climate.MeasuredInWater)) || len(page.Terms.Cautions) == 0 {
		t.Errorf("above the limit: %q", page.Terms.Cautions)
	}
}

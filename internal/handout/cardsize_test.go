package handout

import (
	"slices"
	"strconv"
	"strings"
	"testing"

	"ebbwell/internal/handout/paper"
	"ebbwell/internal/quantity"
	"ebbwell/internal/words"
)

// Type of a card that is read at arm's length, mm: a break's name, the number of
// mouthfuls, and the least of what else stands in a row. Our own proposal.
const (
	armName, armNumber     = 5.5, 9.9
	manyName, manyNumber   = 4.6, 6.4
	leastNameOnCrowdedCard = leastOnCard
)

// sizesOf are the sizes on a card: of its names, and of its numbers of mouthfuls.
func sizesOf(page paper.Page, d During) (names, numbers []float64) {
	for _, m := range page.Marks {
		text, ok := m.(paper.Text)
		if !ok {
			continue
		}
		for _, c := range d.Chances {
			if text.Text == words.AtStart(c.Name) {
				names = append(names, text.Size)
			}
		}
		if _, err := strconv.Atoi(text.Text); err == nil && text.Size > noteStyle().Size {
			numbers = append(numbers, text.Size)
		}
	}
	return names, numbers
}

// The card of the typical match, five breaks, has names of 5.5 mm and numbers of 9.9 mm
// (16 and 28 points) on one side; more breaks go on to its back, and stay readable.
func TestCardIsReadAtArmsLength(t *testing.T) {
	p := press(t)
	doc := p.KitBagCard(card(match()))
	names, numbers := sizesOf(doc.Pages[0], match().During)
	if len(doc.Pages) != 1 || len(names) != 5 || len(numbers) != 5 {
		t.Fatalf("%d sides, %d names, %d numbers", len(doc.Pages), len(names), len(numbers))
	}
	if doc.Size.Width != 105 || doc.Size.Height != 148.5 {
		t.Errorf("the card is %v", doc.Size)
	}
	for i := range names {
		if names[i] < armName || numbers[i] < armNumber {
			t.Errorf("row %d: the name is %.1f mm, the number %.1f mm", i+1, names[i], numbers[i])
		}
	}
	for _, n := range []int{6, 7, 9, 12, 16, 24, 32} {
		a := breaks(n, true)
		doc := p.KitBagCard(card(a))
		if len(doc.Pages) > 3 {
			t.Errorf("%d breaks: %d sides", n, len(doc.Pages))
		}
		for _, page := range doc.Pages {
			names, numbers := sizesOf(page, a.During)
			if least := slices.Min(append(names, armName)); least < manyName {
				t.Errorf("%d breaks: a name of %.1f mm", n, least)
			}
			if least := slices.Min(append(numbers, armNumber)); least < manyNumber {
				t.Errorf("%d breaks: a number of %.1f mm", n, least)
			}
		}
	}
}

// No row of the cards of six kinds of plan is set smaller than 3.6 mm, in any language.
func TestCardsOfSixPlans(t *testing.T) {
	h := openHouse(t)
	for _, k := range sixPlans() {
		for _, tag := range words.Languages() {
			w := inLanguage(t, tag)
			doc := h.documentsOf(t, k, w)["card"]
			if len(doc.Pages) > 3 {
				t.Errorf("%s in %s: %d sides", k.name, tag, len(doc.Pages))
			}
			for i, page := range doc.Pages {
				smallest := 99.0
				for _, m := range page.Marks {
					// The rows stand to the left of the numbers, and are set heavy or above the note's size.
					if text, ok := m.(paper.Text); ok && text.Size > noteStyle().Size+0.05 {
						smallest = min(smallest, text.Size)
					}
				}
				if smallest < leastNameOnCrowdedCard-0.11 { // the total is 3.5
					t.Errorf("%s in %s, side %d: %.2f mm", k.name, tag, i+1, smallest)
				}
			}
		}
	}
}

// wantWords holds a text to words that it has.
func wantWords(t *testing.T, text string, words ...string) {
	t.Helper()
	for _, want := range words {
		if !strings.Contains(text, want) {
			t.Errorf("%q is not there: %s", want, text)
		}
	}
}

// Many breaks that ask for the same share a row, also from bottles with lines, so that one
// card says it in large type; those that differ stay apart.
func TestEqualBreaksShareARowOfTheCard(t *testing.T) {
	for _, lined := range []bool{false, true} {
		a := match()
		a.During.Chances = nil
		for i := range 12 {
			c := Chance{Name: "station " + strconv.Itoa(i+1), Mouthfuls: 4, Volumes: []quantity.Millilitres{150, 0}}
			if lined {
				c.Stands = water(quantity.Millilitres(2000-150*i), quantity.Millilitres(1850-150*i), i+1)
			}
			if i == 5 {
				c.Mouthfuls, c.Volumes = 8, []quantity.Millilitres{300, 0}
			}
			a.During.Chances = append(a.During.Chances, c)
		}
		doc := press(t).KitBagCard(card(a))
		text := plain(all(doc))
		if len(doc.Pages) != 1 || strings.Contains(text, "Card 1 of") {
			t.Errorf("lined %v: %d cards: %s", lined, len(doc.Pages), text)
		}
		_, numbers := sizesOf(doc.Pages[0], a.During)
		if !slices.Equal(numbers, []float64{armNumber, armNumber, armNumber}) {
			t.Errorf("lined %v: the numbers are %v mm", lined, numbers)
		}
		wantWords(t, text, "Station 1, 2, 3, 4, 5", "mouthfuls each", "Station 6", "Station 7, 8, 9, 10, 11, 12")
		if got := strings.Contains(text, "to lines 1–5") && strings.Contains(text, "to line 6") && strings.Contains(text, "to lines 7–12"); got != lined {
			t.Errorf("lined %v: %s", lined, text)
		}
		a.During.Chances[3].Mouthfuls = 0
		for i := range a.During.Chances {
			a.During.Chances[i].Mouthfuls = 0
		}
		if text := plain(all(press(t).KitBagCard(card(a)))); !strings.Contains(text, "150 mL each") {
			t.Errorf("lined %v, without mouthfuls: %s", lined, text)
		}
	}
}

// What one card does not hold is numbered on each, begins with a whole break, and keeps
// the type that is read at arm's length.
func TestFurtherCardsAreNumbered(t *testing.T) {
	for _, n := range []int{9, 12} {
		a := breaks(n, true)
		doc := press(t).KitBagCard(card(a))
		of := len(doc.Pages)
		if of < 2 {
			t.Fatalf("%d breaks are on one card: this test cannot fail", n)
		}
		for i, page := range doc.Pages {
			if want := "Card " + strconv.Itoa(i+1) + " of " + strconv.Itoa(of); !strings.Contains(plain(said(page)), want) {
				t.Errorf("%d breaks: %q is not said: %s", n, want, said(page))
			}
			_, numbers := sizesOf(page, a.During)
			if len(numbers) == 0 {
				t.Errorf("%d breaks, card %d: no break", n, i+1)
			}
			if least := slices.Min(append(numbers, armNumber)); least < armNumber {
				t.Errorf("%d breaks, card %d: a number of %.1f mm", n, i+1, least)
			}
			for _, m := range page.Marks {
				if text, ok := m.(paper.Text); ok && strings.Contains(text.Text, "mouthfuls") && text.Y < 20 {
					t.Errorf("%d breaks, card %d begins within a break: %q at %.1f mm", n, i+1, text.Text, text.Y)
				}
			}
		}
	}
}

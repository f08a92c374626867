package handout

import (
	"slices"
	"strconv"
	"testing"

	"ebbwell/internal/handout/paper"
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

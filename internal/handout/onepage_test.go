package handout

import (
	"fmt"
	"strings"
	"testing"
	"unicode"

	"golang.org/x/text/language"

	"ebbwell/internal/consult"
	"ebbwell/internal/handout/paper"
	"ebbwell/internal/quantity"
	"ebbwell/internal/words"
)

// breaks is the typical page with so many breaks, no two neighbours alike, with or
// without known bottles.
func breaks(n int, bottles bool) AthletePage {
	a := match()
	a.During.Chances, a.During.Total, a.During.TotalMouthfuls = nil, []quantity.Millilitres{0, 0}, 0
	for i := range n {
		drink, mouthfuls := i%2, 2+i%3
		c := Chance{Name: fmt.Sprintf("after game %d", i+1), Volumes: make([]quantity.Millilitres, 2), Mouthfuls: mouthfuls, Maybe: i == n-1}
		c.Volumes[drink] = quantity.Millilitres(25 * mouthfuls)
		if bottles {
			c.Stands = []Stand{{Drink: drink, Holds: 600, Before: quantity.Millilitres(600 - 20*i), Left: quantity.Millilitres(550 - 20*i), Line: i/2 + 1}}
		}
		a.During.Chances = append(a.During.Chances, c)
		a.During.Total[drink] += c.Volumes[drink]
		a.During.TotalMouthfuls += mouthfuls
	}
	return a
}

// The page of three to sixteen breaks is one side, and each break is on it.
func TestPageOfBreaksIsOneSide(t *testing.T) {
	p := press(t)
	for _, n := range []int{3, 6, 9, 12, 16} {
		for _, bottles := range []bool{false, true} {
			doc := p.AthletePage(breaks(n, bottles))
			text := all(doc)
			if len(doc.Pages) != 1 {
				t.Errorf("%d breaks, bottles %v: %d sides", n, bottles, len(doc.Pages))
			}
			for i := range n {
				if name := fmt.Sprintf("After game %d ", i+1); !strings.Contains(text, name) {
					t.Errorf("%d breaks: %q is not there", n, name)
				}
			}
		}
	}
}

// The page is one side with everything on it that it can have: cautions, a minor's
// hidden mass, long names, several drinks, the options compared, many breaks.
func TestFullPageIsOneSide(t *testing.T) {
	p := press(t)
	full := breaks(12, true)
	long := longNames()
	full.Heading, full.Terms.Practice, full.Words = long.Heading, long.Terms.Practice, long.Words
	full.Terms.MassHidden, full.Terms.SaltWithheld = true, true
	full.Terms.Cautions = minor().Terms.Cautions
	full.During.Drinks[1].Name = "home-made blackcurrant drink"
	full.During.Chances[2].Foods = []Portion{{"fig bar", 0.5}, {"banana", 1}}
	full.Sign = Sign{Athlete: true, Guardian: true}
	compared := twoSides()
	compared.During, compared.Terms.Cautions = breaks(9, true).During, minor().Terms.Cautions
	for name, a := range map[string]AthletePage{
		"everything": full, "compared": compared, "estimate": estimate(), "long names": longNames(), "no breaks": noChances(), "minor": minor(),
	} {
		if doc := p.AthletePage(a); len(doc.Pages) != 1 {
			t.Errorf("%s: %d sides", name, len(doc.Pages))
		}
	}
}

// The pages of the invented practice are one side, with their bottles
// known or not.
func TestAgreedPagesAreOneSide(t *testing.T) {
	h, w, p := openHouse(t), english(t), press(t)
	for _, name := range []string{"Ravka", "Dorian", "Mirel", "Kester", "Jorun", "Sefa"} {
		c, o := h.caseOf(t, name)
		known := c.Plan.Clone()
		consult.SetBottles(&known, []float64{500, 750})
		for what, doc := range map[string]paper.Document{
			"":                 p.AthletePage(AthletePageOf(c, o, h.practice, w)),
			", bottles known,": p.AthletePage(AthletePageOf(h.open(t, known, c.Athlete, c.Basis), o, h.practice, w)),
		} {
			if len(doc.Pages) != 1 {
				t.Errorf("the page of %s%s has %d sides", name, what, len(doc.Pages))
			}
		}
	}
}

// The short sheet is one side, on A4 in every language and on Letter in English; it asks for
// what a sweat rate needs, and has lines for four bottles and two foods.
func TestShortSheetIsOneSide(t *testing.T) {
	for _, tag := range words.Languages() {
		shortSheet(t, tag, paper.A4())
	}
	for name, size := range map[string]paper.Size{"A4": paper.A4(), "Letter": paper.Letter()} {
		text := all(shortSheet(t, language.English, size))
		for _, must := range []string{"body mass before, 1", "body mass after, 2", "start", "end", "air", "humidity", "what is in it", "urine passed", "stomach", "Sweat patches"} {
			if !strings.Contains(text, must) {
				t.Errorf("%s: %q is not asked for", name, must)
			}
		}
	}
}

// shortSheet is the sheet in a language and size, held to one side with its rows.
func shortSheet(t *testing.T, tag language.Tag, size paper.Size) paper.Document {
	t.Helper()
	w, err := words.New(tag)
	if err != nil {
		t.Fatal(err)
	}
	p, err := NewPress(w, size)
	if err != nil {
		t.Fatal(err)
	}
	doc := p.BlankSheet(BlankSheet{Terms: Terms{Practice: practice()}, Athlete: "Ravka Oldenmoor", Short: true})
	if len(doc.Pages) != 1 {
		t.Errorf("%v, %s: %d sides", size, tag, len(doc.Pages))
	}
	numbered := map[string]int{}
	for _, text := range strings.Fields(all(doc)) {
		numbered[text]++
	}
	const scales = 3 // effort, thirst, stomach: they have the numbers of rows too
	if numbered["4"] < scales+1 || numbered["2"] < scales+2 {
		t.Errorf("%v, %s: of rows and scales there are %d fourth and %d second", size, tag, numbered["4"], numbered["2"])
	}
	return doc
}

// Neighbours that are alike share a row where there are many, with a square to tick
// for each.
func TestEqualNeighboursJoin(t *testing.T) {
	var list []Chance
	for i := range 8 {
		list = append(list, Chance{Name: fmt.Sprintf("minute %d", 15*(i+1)), Volumes: []quantity.Millilitres{100}, Mouthfuls: 4 + i/4})
	}
	rows := joinEqual(list)
	if len(rows) != 2 || rows[0].times() != 4 {
		t.Fatalf("%d rows: %+v", len(rows), rows)
	}
	if got := press(t).joinedName(rows[0]); got != "minute 15, 30, 45, 60" {
		t.Errorf("the row is called %q", got)
	}
	if rows[0].Name = "set 1"; !strings.Contains(press(t).joinedName(rows[0]), " to ") {
		t.Errorf("names that differ read %q", press(t).joinedName(rows[0]))
	}
}

// The long blank sheet is two sides in every language and size: what is written before and
// in the session, and what is written after it, each with the athlete's name and the day.
func TestLongBlankSheetPartsAfterTheSession(t *testing.T) {
	for _, tag := range words.Languages() {
		for _, size := range []paper.Size{paper.A4(), paper.Letter()} {
			p, err := NewPress(inLanguage(t, tag), size)
			if err != nil {
				t.Fatal(err)
			}
			terms := Terms{Practice: practice(), MassHidden: true, Cautions: []string{"Ask the physician before this plan is used."}}
			doc := p.BlankSheet(BlankSheet{Terms: terms, Athlete: "Ravka Oldenmoor", Day: day(5, 14)})
			if len(doc.Pages) != 2 {
				t.Errorf("%s, %v: %d sides", tag, size, len(doc.Pages))
				continue
			}
			first, second := said(doc.Pages[0]), said(doc.Pages[1])
			for _, key := range []string{"handout.blank.before", "handout.blank.bottles", "handout.blank.foods"} {
				if text := p.say.Say(key); !strings.Contains(first, text) || strings.Contains(second, text) {
					t.Errorf("%s, %v: %q is not on the first side alone", tag, size, text)
				}
			}
			for _, text := range []string{p.say.Say("handout.blank.after"), p.say.Say("handout.blank.urine.title"), p.say.Say("handout.blank.patches"), "Ravka Oldenmoor", p.say.Date(day(5, 14))} {
				if !strings.Contains(second, text) {
					t.Errorf("%s, %v: %q is not on the second side", tag, size, text)
				}
			}
		}
	}
	many := BlankSheet{Terms: Terms{Practice: practice()}, Bottles: 24, Foods: 24}
	if n := len(press(t).BlankSheet(many).Pages); n > 3 {
		t.Errorf("%d sides of 24 bottles and 24 foods", n)
	}
}

// mostWords is how long a sentence of an athlete's page may be.
const mostWords = 15

// Each sentence of the page has at most fifteen words. Numbers and signs are no words;
// lists of what to take are no sentences.
func TestSentencesAreShort(t *testing.T) {
	h := openHouse(t)
	for _, tag := range words.Languages() {
		w := inLanguage(t, tag)
		p, err := NewPress(w, paper.A4())
		if err != nil {
			t.Fatal(err)
		}
		h.checkSentences(t, p)
	}
}

// checkSentences holds what the page and the card of several athletes say in one
// language to fifteen words a sentence.
func (h house) checkSentences(t *testing.T, p *Press) {
	t.Helper()
	w := p.say
	var texts []string
	for _, name := range []string{"Ravka", "Dorian", "Mirel", "Kester"} {
		c, o := h.caseOf(t, name)
		a := AthletePageOf(c, o, h.practice, w)
		am := p.amounts(a.Terms)
		texts = append(texts, p.heading(a, am), p.barNote(a.Bars, am), p.stopNote(a.During, am), p.totalText(a.During, am), p.afterText(a.After, am), a.Practise.Rule.Say(w, am.hidden))
		card := KitBagCardOf(c, o, h.practice, w)
		texts = append(texts, p.cardTotal(card.During, am))
		texts = append(texts, p.PageCautions(a)...)
		texts = append(texts, card.Terms.Cautions...)
	}
	texts = append(append(texts, SafetySentences(w, "112")...), cardSentences(w, "112")...)
	for _, key := range w.Keys() {
		if strings.HasPrefix(key, "handout.caution.") || strings.HasPrefix(key, "handout.before.") || strings.HasPrefix(key, "handout.after.") || strings.HasPrefix(key, "handout.practise.rule") {
			texts = append(texts, w.Say(key))
		}
	}
	for _, text := range texts {
		for _, s := range sentencesOf(text) {
			if n := wordsIn(s); n > mostWords {
				t.Errorf("%s, %d words: %q", w.Language(), n, s)
			}
		}
	}
}

// sentencesOf parts a text at the ends of its sentences.
func sentencesOf(text string) []string {
	return strings.FieldsFunc(strings.ReplaceAll(text, ". ", ".\n"), func(r rune) bool { return r == '\n' })
}

// wordsIn counts the words of a sentence that hold a letter.
func wordsIn(s string) int {
	n := 0
	for _, word := range strings.Fields(s) {
		if strings.IndexFunc(word, unicode.IsLetter) >= 0 && !strings.Contains(word, "%!") {
			n++
		}
	}
	return n
}

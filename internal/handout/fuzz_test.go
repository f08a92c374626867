package handout

import (
	"strings"
	"testing"
	"unicode"

	"ebbwell/internal/handout/paper"
	"ebbwell/internal/quantity"
)

// FuzzTexts prints one of the pages with whatever a person may have typed. Nothing
// may fail, leave the sheet or lie on other text; the safety sentences stay on
// every side; what was typed in the free texts is there, or its sign.
func FuzzTexts(f *testing.F) {
	for which := range uint8(len(printed())) {
		f.Add("Ravka", "I want legs left.", "sports drink 6 %", "Half-time", true, which)
		f.Add("", "", "", "", false, which)
		f.Add("Łukasz O'Brien-Żółć", "Ночью жарко\nλέει — 很热 🥵👩‍👩‍👧", "a\tb\r\nc", strings.Repeat("x", 300), true, which)
		f.Add(strings.Repeat("Ab ", 40), strings.Repeat("words and 61 kg ", 160), "%s %d %%", "\x00\xff\u200d\ufeff", false, which)
		f.Add("e\u0301\u0323", strings.Repeat("\u00a0", 900), "(\\)", ") Tj ET", true, which)
	}
	p, faces := press(f), load(f)
	sentences := SafetySentences(p.say, practice().Emergency)
	f.Fuzz(func(t *testing.T, name, words, drink, chance string, hide bool, which uint8) {
		if len(name)+len(words)+len(drink)+len(chance) > 3000 {
			t.Skip("longer than a person types")
		}
		kind := printed()[int(which)%len(printed())]
		page := typedInto(p, kind, name, words, drink, chance, hide)
		safety := sentences
		if strings.HasPrefix(kind, "card") {
			safety = cardSentences(p.say, practice().Emergency)
		}
		wantTidy(t, kind, page, faces, safety)
		if found := revealing.FindString(all(page)); hide && kind != "blank" && found != "" {
			t.Fatalf("%s speaks of %q", kind, found)
		}
		if kind != "page" {
			return
		}
		if _, err := page.PDF(day(5, 18)); err != nil {
			t.Fatal(err)
		}
		want := pressed(faces.Clean(words))
		if got := pressed(strings.Join(texts(page), "")); !hide && len(page.Pages) == 1 && !strings.Contains(got, want) {
			t.Fatalf("typed %q, printed %q", want, got)
		}
	})
}

// wantTidy fails when a side lacks a sentence, leaves the sheet or sets text on
// text.
func wantTidy(t *testing.T, kind string, doc paper.Document, faces *paper.Faces, sentences []string) {
	t.Helper()
	if n := len(doc.Pages); n < 1 || n > 400 {
		t.Fatalf("%s: %d sides", kind, n)
	}
	for i, page := range doc.Pages {
		text := said(page)
		for _, s := range sentences {
			if kind == "report" && i > 0 {
				break // for the file: once, on the first side
			}
			if !strings.Contains(text, s) {
				t.Fatalf("%s, side %d of %d: %q is not there", kind, i+1, len(doc.Pages), s)
			}
		}
		if list := faults(faces, doc.Size, page); len(list) > 0 {
			t.Fatalf("%s, side %d: %s", kind, i+1, list[0])
		}
	}
}

// printed are the kinds of pages.
func printed() []string { return []string{"page", "card", "cards", "report", "trip", "blank"} }

// typedInto puts the same texts into a page of a kind.
func typedInto(p *Press, kind, name, words, drink, chance string, hide bool) paper.Document {
	a := match()
	a.Terms.MassHidden = hide
	a.Heading.Athlete, a.Heading.Session, a.Words = name, chance, words
	a.Terms.Cautions = []string{words}
	a.Terms.Practice.Name, a.Terms.Practice.Practitioner = name, words
	for i := range a.Bars {
		a.Bars[i].Label = chance
		a.Bars[i].Parts[1].Name = drink
	}
	a.During.Drinks[1].Name = drink
	a.During.Chances[1].Name = chance
	a.During.Chances[1].Foods = []Portion{{Name: drink, Portions: 1.5}}
	a.Bag[1].Name = drink
	a.Practise.What = words
	a.After.Further = []FurtherSession{{Start: "18:00", Minutes: 40, Parts: a.Bars[0].Parts, Foods: []Portion{{Name: drink, Portions: 1}}}}
	a.Basis.Place, a.Basis.Estimate = chance, true
	a.Options = []Option{{Name: name, Parts: a.Bars[0].Parts}, {Name: chance, Foods: []Portion{{Name: drink, Portions: 1}}}}
	r := report()
	r.Terms, r.Athlete, r.Session, r.FilledInBy, r.Bar = a.Terms, name, words, name, a.Bars[0]
	r.Findings[0].Name, r.Findings[0].Beside, r.Findings[0].Notes = chance, words, []string{words}
	tr := trip()
	tr.Terms, tr.Trip, tr.Athlete, tr.Notes = a.Terms, name, name, []string{words}
	tr.Stops[0].Place, tr.Stops[0].Rests = chance, words
	tr.Packing[0].What, tr.Packing[0].Amount, tr.Packing[0].Lot = drink, chance, name
	switch kind {
	case "card":
		return p.KitBagCard(card(a))
	case "cards":
		return p.KitBagCards(card(a))
	case "report":
		return p.TestReport(r)
	case "trip":
		return p.TripPage(tr)
	case "blank":
		return p.BlankSheet(BlankSheet{Terms: a.Terms, Athlete: name, Sport: drink, Place: chance, Day: day(5, 14)})
	}
	return p.AthletePage(a)
}

// texts lists all texts of a document.
func texts(d paper.Document) []string {
	var list []string
	for _, page := range d.Pages {
		list = append(list, page.Texts()...)
	}
	return list
}

// pressed leaves out all space.
func pressed(s string) string {
	return strings.Map(func(r rune) rune {
		if unicode.IsSpace(r) {
			return -1
		}
		return r
	}, s)
}

// load reads the typeface.
func load(t testing.TB) *paper.Faces {
	t.Helper()
	f, err := paper.Load()
	if err != nil {
		t.Fatal(err)
	}
	return f
}

// FuzzNumbers prints the page with any numbers.
func FuzzNumbers(f *testing.F) {
	f.Add(2.15, 0.3, 0.25, 1.6, 2.5, 120.0, 7)
	f.Add(0.0, 0.0, 0.0, 0.0, 0.0, 0.0, 0)
	f.Add(1e9, -3.0, 1e-9, -0.3, 1e6, 1e12, 100000)
	p, faces := press(f), load(f)
	f.Fuzz(func(t *testing.T, loss, water, drink, down, percent, sip float64, mouthfuls int) {
		a := match()
		for i := range a.Bars {
			b := &a.Bars[i]
			b.Loss, b.Parts[0].Litres, b.Parts[1].Litres = quantity.Litres(loss), quantity.Litres(water), quantity.Litres(drink)
			b.Deficit.Litres, b.Deficit.Percent = quantity.Litres(down), quantity.Percent(percent)
		}
		a.During.Chances[0].Volumes[0], a.During.Chances[0].Mouthfuls = quantity.Millilitres(sip), mouthfuls
		for _, hide := range []bool{false, true} {
			a.Terms.MassHidden = hide
			doc := p.AthletePage(a)
			for i, page := range doc.Pages {
				if list := faults(faces, doc.Size, page); len(list) > 0 {
					t.Fatalf("side %d: %s", i+1, list[0])
				}
			}
			if _, err := doc.PDF(day(5, 18)); err != nil {
				t.Fatal(err)
			}
		}
	})
}

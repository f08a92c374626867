package handout

import (
	"strings"
	"testing"

	"ebbwell/internal/consult"
	"ebbwell/internal/handout/paper"
	"ebbwell/internal/handout/pdfread"
)

// scripts are names, notes and drinks in letters that the typeface lacks.
const scripts = "王小明 سلمى कबीर 🏑"

// inScripts puts them wherever a person types: into the name, the words, a break, a drink,
// a food, a place, a note, a reason.
func inScripts(p *Press) map[string]paper.Document {
	a := match()
	a.Heading.Athlete, a.Words, a.Terms.Practice.Name = scripts, scripts, scripts
	a.During.Drinks[1].Name, a.During.Chances[0].Name, a.Practise.What = scripts, scripts, scripts
	a.During.Chances[2].Foods = []Portion{{scripts, 0.5}}
	noted := report()
	noted.Findings[0].Notes = []string{scripts}
	noted.Terms.Cautions = []string{Titled("Saved with a reason", scripts)}
	stops := trip()
	stops.Stops[0].Place, stops.Notes = scripts, []string{scripts}
	strips := bands()
	strips.Bands[0].Bottle = consult.OwnBottle{Name: scripts, Full: 600, FullMM: 170, Low: 50, LowMM: 22}
	return map[string]paper.Document{
		"page": p.AthletePage(a), "card": p.KitBagCard(card(a)), "cards": p.KitBagCards(card(a)), "report with notes": p.TestReport(noted),
		"trip": p.TripPage(stops), "bands": p.BottleBands(strips), "blank": p.BlankSheet(BlankSheet{Terms: a.Terms, Athlete: scripts, Place: scripts}),
	}
}

// On each paper letters in any script are printed or replaced by the sign that the small
// print explains, never by boxes, and are listed to be said before: also where they stand
// in notes and not in the name. Read back from the file.
func TestEachPaperInAnyScript(t *testing.T) {
	p := press(t)
	f := load(t)
	for name, doc := range inScripts(p) {
		data, err := doc.PDF(day(5, 18))
		if err != nil {
			t.Fatal(err)
		}
		list, err := pdfread.Texts(data)
		if err != nil {
			t.Fatal(err)
		}
		text := strings.Join(list, " ")
		if strings.ContainsAny(text, strings.ReplaceAll(scripts, " ", "")+"\uFFFD") {
			t.Errorf("%s: letters without a form are in the file: %s", name, text)
		}
		if !strings.Contains(text, "… … … …") {
			t.Errorf("%s: the sign does not stand in their place: %s", name, text)
		}
		if !strings.Contains(all(doc), p.say.Say("handout.lacking", paper.Lacking)) {
			t.Errorf("%s: the small print does not say what it stands for", name)
		}
		for _, letter := range []string{"王", "س", "क", "🏑"} {
			if !strings.Contains(strings.Join(doc.Lacks, ""), letter) {
				t.Errorf("%s: %q is not listed: %v", name, letter, doc.Lacks)
			}
		}
		for i, page := range doc.Pages {
			for _, fault := range faults(f, doc.Size, page) {
				t.Errorf("%s, side %d: %s", name, i+1, fault)
			}
		}
	}
}

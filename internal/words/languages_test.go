package words

import (
	"bytes"
	"encoding/csv"
	"os"
	"path/filepath"
	"regexp"
	"slices"
	"strings"
	"testing"
	"testing/fstest"
	"time"

	"golang.org/x/text/language"

	"ebbwell/assets"
)

// TestLanguagesComplete: a language that is offered lacks no text and has none that
// is wrong. One that is being written may lack texts; what it has is still read.
func TestLanguagesComplete(t *testing.T) {
	all, err := ReviewAll()
	if err != nil {
		t.Fatal(err)
	}
	for _, r := range all {
		if !r.Ready {
			continue
		}
		for _, f := range r.Files {
			for _, key := range f.Missing {
				t.Errorf("%s/%s lacks %s", r.Language, f.Name, key)
			}
			for _, fault := range f.Faults {
				t.Errorf("%s/%s: %s", r.Language, f.Name, fault)
			}
		}
	}
}

// TestEveryLanguageOpens: complete or not, each can be opened and says its formats.
func TestEveryLanguageOpens(t *testing.T) {
	for _, tag := range Written() {
		w, err := New(tag)
		if err != nil {
			t.Fatal(err)
		}
		if !w.Has("format.decimal") || !w.Has("safety.item.fit") {
			t.Errorf("%s lacks texts, its own or English", tag)
		}
	}
}

func TestReviewSeesFaults(t *testing.T) {
	english := `{"a.plain":"Plain text","a.two":"%s of %s","a.count":{"one":"%d bottle","other":"%d bottles"},"a.unit":"%s mL"}`
	for name, c := range map[string]struct{ own, same, want string }{
		"all well":    {`{"a.plain":"Texto","a.two":"%[2]s de %[1]s","a.count":{"one":"%d botella","other":"%d botellas"},"a.unit":"%s mL"}`, "a.unit", ""},
		"missing":     {`{"a.plain":"Texto","a.two":"%s de %s","a.unit":"%s mL"}`, "a.unit", "lacks a.count"},
		"same":        {`{"a.plain":"Texto","a.two":"%s de %s","a.count":{"one":"%d botella","other":"%d botellas"},"a.unit":"%s mL"}`, "", "a.unit: reads as in English; translate it, or list the key in same.txt"},
		"argument":    {`{"a.plain":"Texto","a.two":"%s de","a.count":{"one":"%d botella","other":"%d botellas"},"a.unit":"%s mL"}`, "a.unit", "a.two: has the arguments [1s], in English [1s 2s]"},
		"kind":        {`{"a.plain":"Texto","a.two":"%s de %d","a.count":{"one":"%d botella","other":"%d botellas"},"a.unit":"%s mL"}`, "a.unit", "a.two: has the arguments [1s 2d], in English [1s 2s]"},
		"no one":      {`{"a.plain":"Texto","a.two":"%s de %s","a.count":{"other":"%d botellas"},"a.unit":"%s mL"}`, "a.unit", `a.count: lacks the form "one"`},
		"no form few": {`{"a.plain":"Texto","a.two":"%s de %s","a.count":{"one":"%d x","few":"%d y","other":"%d z"},"a.unit":"%s mL"}`, "a.unit", `a.count: has the form "few"; there are one, many, other and =0, =1 …`},
		"no forms":    {`{"a.plain":"Texto","a.two":"%s de %s","a.count":"%d botellas","a.unit":"%s mL"}`, "a.unit", "a.count: has no plural forms, in English it has"},
		"not English": {`{"a.plain":"Texto","a.two":"%s de %s","a.count":{"one":"%d a","other":"%d b"},"a.unit":"%s mL","b":"Otro"}`, "a.unit", "b: is not in the English file of this name"},
		"stale":       {`{"a.plain":"Texto","a.two":"%s de %s","a.count":{"one":"%d a","other":"%d b"},"a.unit":"%s ml"}`, "a.unit", "a.unit: does not read as in English; take it off same.txt"},
		"empty":       {`{"a.plain":" ","a.two":"%s de %s","a.count":{"one":"%d a","other":"%d b"},"a.unit":"%s mL"}`, "a.unit", "a.plain: is empty"},
	} {
		from := fstest.MapFS{"en/a.json": {Data: []byte(english)}, "es/a.json": {Data: []byte(c.own)}, "es/same.txt": {Data: []byte("# known\n" + c.same + "\n")}}
		mine, err := byFile(from, "en")
		if err != nil {
			t.Fatal(name, err)
		}
		theirs, err := byFile(from, "es")
		if err != nil {
			t.Fatal(name, err)
		}
		same, err := sameIn(from, "es")
		if err != nil {
			t.Fatal(name, err)
		}
		var got []string
		for _, f := range review(mine, theirs, same).Files {
			for _, key := range f.Missing {
				got = append(got, "lacks "+key)
			}
			got = append(got, f.Faults...)
		}
		if text := strings.Join(got, "; "); text != c.want {
			t.Errorf("%s: got %q, want %q", name, text, c.want)
		}
	}
}

func in(t *testing.T, tag language.Tag) *Words {
	t.Helper()
	w, err := New(tag)
	if err != nil {
		t.Fatal(err)
	}
	return w
}

func TestFormatsOfLanguages(t *testing.T) {
	es, fr, de := in(t, language.Spanish), in(t, language.French), in(t, language.German)
	may := time.Date(2026, 5, 14, 0, 0, 0, 0, time.UTC)
	first := time.Date(2026, 10, 1, 0, 0, 0, 0, time.UTC)
	for _, c := range []struct{ got, want string }{
		{es.Number(-2.149, 1), "−2,1"}, {fr.NumberIn(1.5, 2, "L/h"), "1,50\u00a0L/h"}, {de.Signed(0.15, 2), "+0,15"},
		{es.Day(may), "14 de mayo"}, {fr.Day(may), "14 mai"}, {de.Day(may), "14. Mai"},
		{es.ShortDay(first), "1 oct"}, {fr.ShortDay(first), "1er oct."}, {de.ShortDay(first), "1. Okt."},
		{es.Date(may), "14 de mayo de 2026"}, {fr.Date(first), "1er octobre 2026"}, {de.Date(may), "14. Mai 2026"},
		{es.List([]string{"sodio", "hierro"}), "sodio y hierro"}, {es.List([]string{"agua", "hidratos"}), "agua e hidratos"},
		{fr.List([]string{"a", "b", "c"}), "a, b et c"}, {de.List([]string{"a", "ich"}), "a und ich"},
	} {
		if c.got != c.want {
			t.Errorf("got %q, want %q", c.got, c.want)
		}
	}
}

// Each language has its own plural: French counts none as one.
func TestPluralsOfLanguages(t *testing.T) {
	for tag, want := range map[language.Tag]string{
		language.English: "0 tests, 1 test, 2 tests", language.German: "0 Tests, 1 Test, 2 Tests",
		language.Spanish: "0 pruebas, 1 prueba, 2 pruebas", language.French: "0 test, 1 test, 2 tests",
	} {
		w := in(t, tag)
		var got []string
		for n := range 3 {
			got = append(got, w.Say("import.count.tests", n))
		}
		if got := strings.Join(got, ", "); got != want {
			t.Errorf("%s: %q, want %q", tag, got, want)
		}
	}
}

// Days of one month are written together as each language does.
func TestSpansOfDays(t *testing.T) {
	from, until := time.Date(2026, 7, 2, 0, 0, 0, 0, time.UTC), time.Date(2026, 7, 7, 0, 0, 0, 0, time.UTC)
	for tag, want := range map[language.Tag]string{
		language.English: "2–7 July", language.German: "2.–7. Juli", language.Spanish: "2–7 de julio", language.French: "2–7 juillet",
	} {
		w := in(t, tag)
		if got := w.Say("heat.span.days", w.Number(float64(from.Day()), 0), w.Day(until)); got != want {
			t.Errorf("%s: %q, want %q", tag, got, want)
		}
	}
}

// The order is that of the Unicode collation of each language.
func TestNamesAreSortedByLanguage(t *testing.T) {
	for tag, want := range map[language.Tag]string{
		language.German: "Aal Äpfel Zebra", language.Spanish: "nube ñandú oso", language.French: "cote côte zèbre", language.English: "apple Éclair zebra",
	} {
		names := strings.Fields(want)
		slices.Reverse(names)
		in(t, tag).Sort(names)
		if got := strings.Join(names, " "); got != want {
			t.Errorf("%s: got %q, want %q", tag, got, want)
		}
	}
}

func TestNearest(t *testing.T) {
	for _, c := range []struct {
		offered []language.Tag
		asked   []string
		want    language.Tag
	}{
		{Languages(), nil, language.English}, {Languages(), []string{"C"}, language.English}, {Languages(), []string{"en_GB.UTF-8"}, language.English},
		{Languages(), []string{"xx@euro", "en_US"}, language.English}, {Languages(), []string{"ja_JP.UTF-8"}, language.English},
		{Written(), []string{"de_AT.UTF-8@euro"}, language.German}, {Written(), []string{"ja_JP.UTF-8", "fr_CA"}, language.French},
		{Written(), []string{"es_419"}, language.Spanish}, {[]language.Tag{language.English, language.French}, []string{"de_AT"}, language.English},
	} {
		if got := Nearest(c.offered, c.asked...); got != c.want {
			t.Errorf("%v: got %s, want %s", c.asked, got, c.want)
		}
	}
	for locale, want := range map[string]string{"de_AT.UTF-8@euro": "de_AT", "fr": "fr", "pt_BR.UTF-8": "pt_BR"} {
		if got := bare(locale); got != want {
			t.Errorf("%q: got %q, want %q", locale, got, want)
		}
	}
}

// TestTablesAreNamed: what the tables name in English, the texts name alike.
func TestTablesAreNamed(t *testing.T) {
	w := english(t)
	says := func(key string) string { return strings.ReplaceAll(w.Say(key), "\u00a0", " ") } // a unit stays with its number
	for _, r := range tableOf(t, assets.Foods()) {
		if id := strings.TrimPrefix(r["id"], generic); says("food."+id) != r["name"] || (r["portion"] != "" && says("portion."+id) != r["portion"]) {
			t.Errorf("food %s is %q, %q in the texts", id, w.Food(r["id"], ""), w.Portion(r["id"], ""))
		}
		// A note is a sentence in the texts: the numbers are those of the table.
		if note := w.FoodNote(r["id"], ""); !slices.Equal(numbersOf(note), numbersOf(r["note"])) || (note == "") != (r["note"] == "") {
			t.Errorf("the note on %s is %q, in the texts %q", r["id"], r["note"], note)
		}
		if within := w.FoodWithin(r["id"], ""); !strings.EqualFold(plainly(within), plainly(w.Food(r["id"], ""))) {
			t.Errorf("food %s is %q within a line", r["id"], within)
		}
	}
	for _, r := range tableOf(t, assets.Activities()) {
		if got := says("activity." + r["id"]); got != r["activity"] {
			t.Errorf("activity %s is %q in the texts", r["id"], got)
		}
	}
	_, climates, _ := bytes.Cut(assets.Climates(), []byte("\n"))
	for _, r := range tableOf(t, climates) {
		if !w.Has("city."+Slug(r["place"])) || !w.Has("country."+Slug(r["country"])) {
			t.Errorf("%s, %s is not in the texts", r["place"], r["country"])
		}
	}
	for _, r := range tableOf(t, assets.Breaks()) {
		if !w.Has("sport."+r["sport"]) && r["sport"] != "court-or-gym" || !w.Has("chance."+r["chance"]) {
			t.Errorf("%s, %s is not in the texts", r["sport"], r["chance"])
		}
	}
}

// numbersOf are the numbers of a text in their order of size.
func numbersOf(text string) []string {
	list := regexp.MustCompile(`\d+(?:\.\d+)?`).FindAllString(text, -1)
	slices.Sort(list)
	return list
}

func tableOf(t *testing.T, data []byte) []map[string]string {
	t.Helper()
	rows, err := csv.NewReader(bytes.NewReader(data)).ReadAll()
	if err != nil {
		t.Fatal(err)
	}
	var list []map[string]string
	for _, row := range rows[1:] {
		one := map[string]string{}
		for i, name := range rows[0] {
			one[name] = row[i]
		}
		list = append(list, one)
	}
	return list
}

// A glossary holds the terms that the texts of its language have, 120 at the least, each
// with where it is from; R is for a text that was read, M for one that is remembered. What
// only this program has a name for is its own term; of the others, which are the trade's,
// three in four at the least name a text.
func TestGlossariesAreTrue(t *testing.T) {
	for _, tag := range Written() {
		if tag == language.English {
			continue
		}
		rows, said := glossaryRows(t, tag), allSaid(t, tag)
		if len(rows) < 121 {
			t.Fatalf("%s: %d terms", tag, len(rows)-1)
		}
		met, named, own := map[string]bool{}, 0, 0
		for _, row := range rows[1:] {
			source, sure := row[2], row[3]
			if met[row[0]] || source == "" || (sure == "") != (source == "usage" || source == "own term") || !slices.Contains([]string{"", "M", "R"}, sure) {
				t.Errorf("%s: %q is there twice or has no source: %q", tag, row[0], row)
			}
			met[row[0]] = true
			switch {
			case sure != "":
				named++
			case source == "own term":
				own++
			}
			if terms := termsOf(row[1]); !slices.ContainsFunc(terms, func(term string) bool { return strings.Contains(said, plainly(term)) }) {
				t.Errorf("%s: no text says %q", tag, row[1])
			}
		}
		if trade := len(rows) - 1 - own; 4*named < 3*trade || 3*own > len(rows) {
			t.Errorf("%s: %d of %d terms of the trade name a text; %d are our own", tag, named, trade, own)
		}
	}
}

// glossaryRows are those of a language's glossary, with its heading.
func glossaryRows(t *testing.T, tag language.Tag) [][]string {
	t.Helper()
	file, err := os.Open(filepath.Join(tag.String(), "glossary.csv"))
	if err != nil {
		t.Fatal(err)
	}
	defer file.Close() //nolint:errcheck // it was only read
	rows, err := csv.NewReader(file).ReadAll()
	if err != nil {
		t.Fatalf("%s: %v", tag, err)
	}
	return rows
}

// allSaid is every text of a language, plainly.
func allSaid(t *testing.T, tag language.Tag) string {
	t.Helper()
	texts, err := read(tag.String())
	if err != nil {
		t.Fatal(err)
	}
	var all strings.Builder
	for _, e := range texts {
		all.WriteString(strings.Join(e.all(), "\n") + "\n")
	}
	return plainly(all.String())
}

// termsOf are the terms of a glossary's cell: "Backup; sichern", "Auflösung (Waage)".
func termsOf(cell string) []string {
	var terms []string
	for _, term := range regexp.MustCompile(`[;,/]`).Split(regexp.MustCompile(`\([^)]*\)`).ReplaceAllString(cell, ""), -1) {
		if term = strings.TrimSpace(term); term != "" {
			terms = append(terms, term)
		}
	}
	return terms
}

// plainly is a text in small letters with plain blanks and apostrophes.
func plainly(text string) string {
	return strings.ToLower(strings.NewReplacer("\u00a0", " ", "\u202f", " ", "’", "'").Replace(text))
}

package words

import (
	"encoding/csv"
	"maps"
	"os"
	"path/filepath"
	"regexp"
	"slices"
	"strings"
	"testing"

	"golang.org/x/text/language"

	"ebbwell/assets"
	"ebbwell/internal/words/reading"
)

// phrase is a way to say something that no text has.
type phrase struct {
	pattern *regexp.Regexp
	write   string
}

// phrasesIn reads the list of a language; each pattern has to find its own example.
func phrasesIn(t *testing.T, tag language.Tag) []phrase {
	t.Helper()
	file, err := os.Open(filepath.Join("testdata", "phrases-"+tag.String()+".csv"))
	if err != nil {
		t.Fatal(err)
	}
	defer file.Close() //nolint:errcheck // it was only read
	table := csv.NewReader(file)
	table.Comment = '#'
	rows, err := table.ReadAll()
	if err != nil {
		t.Fatal(err)
	}
	var list []phrase
	for _, row := range rows[1:] {
		p := phrase{regexp.MustCompile(`(?i)` + row[0]), row[2]}
		if !p.pattern.MatchString(row[1]) {
			t.Errorf("%q does not find %q", row[0], row[1])
		}
		if p.pattern.MatchString(row[2]) {
			t.Errorf("%q finds %q, which is to be written", row[0], row[2])
		}
		list = append(list, p)
	}
	return list
}

// plainBlanks is a text whose blanks all break.
func plainBlanks(text string) string {
	return strings.NewReplacer("\u00a0", " ", "\u202f", " ").Replace(text)
}

// TestNoPhraseOfTheList: no text, nor what a user reads beside the program, has a phrase
// of the list of its language.
func TestNoPhraseOfTheList(t *testing.T) {
	for _, tag := range Written() {
		least := 12
		if tag == language.English {
			least = 40
		}
		list := phrasesIn(t, tag)
		if len(list) < least {
			t.Errorf("%s: only %d phrases", tag, len(list))
		}
		noPhrase(t, tag, list)
	}
}

// noPhrase holds the texts of a language, and what is read beside the program in it, to
// a list.
func noPhrase(t *testing.T, tag language.Tag, list []phrase) {
	t.Helper()
	texts, err := read(tag.String())
	if err != nil {
		t.Fatal(err)
	}
	all := map[string][]string{}
	for key, e := range texts {
		all[key] = e.all()
	}
	files := []string{"assets/changes/" + tag.String() + ".md"}
	if tag == language.English {
		files = []string{"README.md", "assets/CHANGES.md"}
	}
	for _, file := range files {
		data, err := os.ReadFile(filepath.Join("..", "..", filepath.FromSlash(file)))
		if err != nil {
			t.Fatal(err)
		}
		all[file] = []string{string(data)}
	}
	for _, where := range slices.Sorted(maps.Keys(all)) {
		for _, text := range all[where] {
			for _, p := range list {
				if found := p.pattern.FindString(plainBlanks(text)); found != "" {
					t.Errorf("%s %s says %q; write: %s", tag, where, found, p.write)
				}
			}
		}
	}
}

// Most words of a sentence on a screen, and on what an athlete takes home.
const (
	mostWords     = 20
	mostPageWords = 15
)

// TestSentencesAreShort holds every language to it; what is put in counts as one word.
func TestSentencesAreShort(t *testing.T) {
	for _, tag := range Languages() {
		texts, err := textsOf(tag)
		if err != nil {
			t.Fatal(err)
		}
		for _, key := range slices.Sorted(maps.Keys(texts)) {
			most := mostWords
			if AthletePage.holds(key) || KitBagCard.holds(key) {
				most = mostPageWords
			}
			for _, text := range texts[key].all() {
				for _, s := range reading.Sentences(strings.ReplaceAll(text, "*", "")) {
					if n := len(reading.Words(s)); n > most {
						t.Errorf("%s %s: %d words, at most %d: %s", tag, key, n, most, s)
					}
				}
			}
		}
	}
}

// TestPagesAreEasyToRead: the athlete's page and the card ask for no more than eight
// years of school in English.
func TestPagesAreEasyToRead(t *testing.T) {
	const hardest = 8
	grade, ok := reading.FormulaOf(language.English.String())
	if !ok || grade.Value(reading.Of("en", "Administration of supplementary electrolytes necessitates individualised consideration.")) <= hardest {
		t.Fatal("the check cannot fail")
	}
	for _, paper := range []Paper{AthletePage, KitBagCard} {
		texts, err := OnPaper(language.English, paper)
		if err != nil {
			t.Fatal(err)
		}
		m := reading.Of("en", texts...)
		if m.Sentences < 20 {
			t.Errorf("paper %d: only %d sentences", paper, m.Sentences)
		}
		if got := grade.Value(m); got > hardest {
			t.Errorf("paper %d: %s %.1f, at most %d", paper, grade.Name, got, hardest)
		}
	}
}

// The list of changes says in every language what it says in English: as many versions,
// as many changes in each, the same numbers in each of them.
func TestChangesAreSaidInEveryLanguage(t *testing.T) {
	numbers := regexp.MustCompile(`\d+(\.\d+)*`)
	english := strings.Split(assets.Changes("en"), "\n")
	for _, tag := range Written() {
		if tag == language.English {
			continue
		}
		if assets.Changes(tag.String()) == assets.Changes("en") {
			t.Errorf("%s: no list of changes", tag)
			continue
		}
		lines := strings.Split(assets.Changes(tag.String()), "\n")
		if len(lines) != len(english) {
			t.Errorf("%s: %d lines of changes, in English %d", tag, len(lines), len(english))
			continue
		}
		for i, line := range lines {
			if strings.HasPrefix(line, "- ") != strings.HasPrefix(english[i], "- ") || !slices.Equal(numbers.FindAllString(line, -1), numbers.FindAllString(english[i], -1)) {
				t.Errorf("%s, line %d: %q; in English %q", tag, i+1, line, english[i])
			}
		}
	}
}

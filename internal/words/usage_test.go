package words

import (
	"fmt"
	"maps"
	"path/filepath"
	"regexp"
	"slices"
	"strings"
	"testing"

	"golang.org/x/text/language"
)

// always lists beginnings that only keys have: a string that starts so, in
// any package, must be in the catalogue.
func always() []string { return []string{"note."} }

// faults holds the source against the texts and says what does not fit.
func faults(packages []usage, texts map[string]entry) []string {
	var list []string
	for _, u := range packages {
		for _, s := range u.calls {
			if fault := s.fault(texts); fault != "" {
				list = append(list, s.at+": "+fault)
			}
		}
		for text := range u.literals {
			if _, ok := texts[text]; !ok && isAlways(text) {
				list = append(list, fmt.Sprintf("%q is in no catalogue", text))
			}
		}
	}
	for key := range texts {
		if !slices.ContainsFunc(packages, func(u usage) bool { return u.uses(key) }) {
			list = append(list, fmt.Sprintf("key %q is not used", key))
		}
	}
	slices.Sort(list)
	return list
}

// isAlways reports whether a text is a whole key by its beginning.
func isAlways(text string) bool {
	return slices.ContainsFunc(always(), func(begin string) bool {
		return strings.HasPrefix(text, begin) && len(text) > len(begin) && !strings.HasSuffix(text, ".")
	})
}

// fault says what is wrong with a call of Say; empty when nothing is.
func (s said) fault(texts map[string]entry) string {
	if s.begins {
		for key := range texts {
			if strings.HasPrefix(key, s.key) {
				return ""
			}
		}
		return fmt.Sprintf("no key begins with %q", s.key)
	}
	e, ok := texts[s.key]
	if !ok {
		return fmt.Sprintf("key %q is in no catalogue", s.key)
	}
	if s.args < 0 {
		return ""
	}
	if wants, exact := e.wants(); s.args < wants || (exact && s.args > wants) {
		return fmt.Sprintf("key %q takes %d, and %d are put in", s.key, wants, s.args)
	}
	return ""
}

// uses reports whether a package has a key as a string, or what it is put
// together from.
func (u usage) uses(key string) bool {
	if u.literals[key] {
		return true
	}
	for begin := range u.begins {
		if strings.HasPrefix(key, begin) {
			return true
		}
	}
	for end := range u.ends {
		if stem, ok := strings.CutSuffix(key, end); ok && u.literals[stem] {
			return true
		}
	}
	return false
}

// wants returns how many arguments a text takes; exact is false for plural
// forms, of which some leave the number out.
func (e entry) wants() (n int, exact bool) {
	if e.forms == nil {
		return places(e.text), true
	}
	n = e.arg
	for _, form := range e.forms {
		n = max(n, places(form))
	}
	return n, false
}

// places returns the highest argument a text names.
func places(text string) int {
	highest := 0
	for _, a := range arguments(text) {
		highest = max(highest, a.number)
	}
	return highest
}

func TestTextsAndSourceFit(t *testing.T) {
	packages, err := scan(filepath.Join("..", ".."))
	if err != nil {
		t.Fatal(err)
	}
	calls := 0
	for _, u := range packages {
		calls += len(u.calls)
	}
	if calls < 10 {
		t.Fatalf("only %d calls of Say were found", calls)
	}
	texts, err := read(language.English.String())
	if err != nil {
		t.Fatal(err)
	}
	for _, fault := range faults(packages, texts) {
		t.Error(fault)
	}
}

// TestNoTextClears: the program clears nobody. Drink and heat can harm at any
// level, so no text says that something is safe, or a word that would be read so.
func TestNoTextClears(t *testing.T) {
	clears := regexp.MustCompile(`(?i)\b(safe|safer|safest|safely|safety|harmless|risk-free|no risk|no danger|guaranteed?)\b`)
	if !clears.MatchString("This is safe.") {
		t.Fatal("the check cannot fail")
	}
	texts, err := read(language.English.String())
	if err != nil {
		t.Fatal(err)
	}
	for key, e := range texts {
		for _, text := range append([]string{e.text}, slices.Collect(maps.Values(e.forms))...) {
			if found := clears.FindString(labels().ReplaceAllString(text, "")); found != "" {
				t.Errorf("%s says %q: %s", key, found, text)
			}
		}
	}
}

func TestFaultsAreSeen(t *testing.T) {
	texts := map[string]entry{
		"a.plain":   {text: "Plain, 100 %%"},
		"a.two":     {text: "%s of %s"},
		"a.turned":  {text: "%[2]s of %[1]s"},
		"a.bottles": {forms: map[string]string{"one": "a bottle", "other": "%d bottles"}, arg: 1},
	}
	all := `w.Say("a.plain"); w.Say("a.two", x, y); w.Say("a.turned", x, y); w.Say("a.bottles", n)`
	for name, c := range map[string]struct{ body, want string }{
		"all well":           {all, ""},
		"list passed on":     {all + `; w.Say("a.two", list...)`, ""},
		"own helper":         {all + `; say("a.plain")`, ""},
		"begun":              {`w.Say("a." + x)`, ""},
		"ended":              {`key := "a"; w.Say(key + ".plain"); w.Say(key + ".two"); w.Say(key + ".turned"); w.Say(key + ".bottles", n)`, ""},
		"handed on":          {`button("a.plain"); button("a.two"); button("a.turned"); button("a.bottles")`, ""},
		"no such key":        {all + `; w.Say("a.plane")`, `p/p.go:3: key "a.plane" is in no catalogue`},
		"no such helper key": {all + `; say("a.plane")`, `p/p.go:3: key "a.plane" is in no catalogue`},
		"no such beginning":  {all + `; w.Say("b." + x)`, `p/p.go:3: no key begins with "b."`},
		"one too few":        {all + `; w.Say("a.two", x)`, `p/p.go:3: key "a.two" takes 2, and 1 are put in`},
		"one too many":       {all + `; w.Say("a.plain", x)`, `p/p.go:3: key "a.plain" takes 0, and 1 are put in`},
		"plural without":     {all + `; w.Say("a.bottles")`, `p/p.go:3: key "a.bottles" takes 1, and 0 are put in`},
		"no such note":       {all + `; Note{ID: "note.cold"}`, `"note.cold" is in no catalogue`},
		"not used":           {`w.Say("a.plain"); w.Say("a.two", x, y); w.Say("a.turned", x, y)`, `key "a.bottles" is not used`},
	} {
		u := newUsage()
		if err := u.addFile("p/p.go", "package p\n\nfunc f() { "+c.body+" }\n"); err != nil {
			t.Fatal(name, err)
		}
		if got := strings.Join(faults([]usage{*u}, texts), "; "); got != c.want {
			t.Errorf("%s: got %q, want %q", name, got, c.want)
		}
	}
}

func TestPlaces(t *testing.T) {
	for text, want := range map[string]int{
		"": 0, "none": 0, "100 %%": 0, "%s": 1, "%d and %s": 2, "%[2]s": 2, "%[1]d and %[1]d": 1, "%.1f %%": 1, "%s, %[3]s, %s": 4,
	} {
		if got := places(text); got != want {
			t.Errorf("%q: got %d, want %d", text, got, want)
		}
	}
}

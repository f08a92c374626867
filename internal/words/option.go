package words

import (
	"encoding/json"
	"fmt"
	"maps"
	"path"
	"slices"
	"strings"
	"unicode"
)

// given is a name that the program itself gives to an option, as one language says it.
type given struct{ key, before, behind string }

// Option says the name of an option. One that the program gave, in whatever language
// its window had then, is said in this one; what a person typed stays as it is.
func (w *Words) Option(name string) string {
	if said, ok := w.given(name, true); ok {
		return said
	}
	return name
}

// given is what the program says for a name of its own; numbered: it may end in a
// number that tells it from another.
func (w *Words) given(name string, numbered bool) (said string, ok bool) {
	for _, g := range w.options {
		inner, begins := strings.CutPrefix(name, g.before)
		inner, ends := strings.CutSuffix(inner, g.behind)
		switch {
		case !begins || !ends:
		case g.key == "planner.option.copy":
			return w.Say(g.key, w.Option(inner)), inner != ""
		case g.key == "option.step":
			if isNumber(inner) {
				return w.Say(g.key, inner), true
			}
		case inner == "":
			return w.Say(g.key), true
		}
	}
	stem, number, two := cutLast(name)
	if !numbered || !two || !isNumber(number) {
		return "", false
	}
	if said, ok = w.given(stem, false); ok {
		said = w.Say("planner.option.numbered", said, number)
	}
	return said, ok
}

// cutLast parts a name at its last blank.
func cutLast(name string) (stem, last string, ok bool) {
	at := strings.LastIndexByte(name, ' ')
	if at < 0 {
		return name, "", false
	}
	return name[:at], name[at+1:], true
}

// isNumber reports whether a text is digits.
func isNumber(text string) bool {
	return text != "" && strings.TrimFunc(text, unicode.IsDigit) == ""
}

// optionsGiven gathers the names that the program gives to options, in every language.
func optionsGiven() ([]given, error) {
	var list []given
	for _, l := range spokenList() {
		data, err := files.ReadFile(path.Join(l.tag.String(), "options.json"))
		if err != nil {
			return nil, fmt.Errorf("open names of options: %w", err)
		}
		var texts map[string]string
		if err := json.Unmarshal(data, &texts); err != nil {
			return nil, fmt.Errorf("read names of options: %w", err)
		}
		for _, key := range slices.Sorted(maps.Keys(texts)) {
			if key == "planner.option.numbered" { // a name and a number, whatever the name
				continue
			}
			before, behind, _ := strings.Cut(texts[key], "%s")
			list = append(list, given{key, before, behind})
		}
	}
	return list, nil
}

package words

import (
	"fmt"
	"slices"

	"golang.org/x/text/language"
)

// spoken is a language that has a folder of texts. One that is not ready is
// being written: what it lacks reads in English, and nobody is offered it.
type spoken struct {
	tag   language.Tag
	ready bool
}

// spokenList lists the languages, English first: the others fall back on it.
func spokenList() []spoken {
	return []spoken{
		{tag: language.English, ready: true},
		{tag: language.Spanish, ready: true},
		{tag: language.French, ready: true},
		{tag: language.German, ready: true},
	}
}

// Languages lists the languages that are complete and so can be chosen, English first.
func Languages() []language.Tag {
	var list []language.Tag
	for _, l := range spokenList() {
		if l.ready {
			list = append(list, l.tag)
		}
	}
	return list
}

// Written lists every language that has a folder, complete or not, English first.
func Written() []language.Tag {
	var list []language.Tag
	for _, l := range spokenList() {
		list = append(list, l.tag)
	}
	return list
}

// Nearest is the language to begin with for someone whose system asks for the
// given locales, best first ("de_AT.UTF-8", "fr"): one of those offered, else English.
func Nearest(offered []language.Tag, locales ...string) language.Tag {
	var asked []language.Tag
	for _, l := range locales {
		if tag, err := language.Parse(bare(l)); err == nil {
			asked = append(asked, tag)
		}
	}
	_, at, sure := language.NewMatcher(offered).Match(asked...)
	if sure == language.No {
		return language.English
	}
	return offered[at]
}

// bare is a locale without its encoding and its variant: "de_AT.UTF-8@euro" is "de_AT".
func bare(locale string) string {
	if at := slices.IndexFunc([]rune(locale), func(r rune) bool { return r == '.' || r == '@' }); at >= 0 {
		return string([]rune(locale)[:at])
	}
	return locale
}

// textsOf are the texts of a language; those it lacks are English.
func textsOf(tag language.Tag) (map[string]entry, error) {
	if !slices.Contains(Written(), tag) {
		return nil, fmt.Errorf("open catalogue %q: no such language", tag)
	}
	own, err := read(tag.String())
	if err != nil || tag == language.English {
		return own, err
	}
	all, err := read(language.English.String())
	if err != nil {
		return nil, err
	}
	for key, e := range own {
		all[key] = e
	}
	return all, nil
}

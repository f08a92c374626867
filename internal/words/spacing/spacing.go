// Package spacing finds blanks that part what belongs together: for the tests of the
// catalogue and of the pages.
package spacing

import (
	"regexp"
	"strings"

	"golang.org/x/text/language"
)

// Faults lists where a text may be parted, or is spaced, as its language does not: a
// plain blank between a number, or what is put in for one, and its unit; in French a
// missing or plain blank before : ; ! ? and inside guillemets; in other languages a blank
// at such a mark.
func Faults(tag language.Tag, text string) []string {
	var list []string
	find := func(pattern *regexp.Regexp, what string) {
		for _, found := range pattern.FindAllString(text, -1) {
			list = append(list, what+" "+strings.TrimSpace(found))
		}
	}
	text = strings.ReplaceAll(text, credit, "")
	find(parted(), "plain blank:")
	if base, _ := tag.Base(); base.String() == "fr" {
		find(regexp.MustCompile(`[^\d\s\x{a0}\x{202f}:;!?/.…"](?:[;!?»]|:(?:[\s\x{a0}]|$))`), "no blank:")
		find(regexp.MustCompile(`[ \t][:;!?»]`), "plain blank:")
		find(regexp.MustCompile(`«[^\x{a0}\x{202f}]`), "no fixed blank:")
		return list
	}
	find(regexp.MustCompile(`[^\s\x{a0}\x{202f}][ \x{a0}\x{202f}](?:[;!?»]|:(?:\s|$))`), "blank before a mark:")
	find(regexp.MustCompile(`«[\s\x{a0}\x{202f}]`), "blank:")
	return list
}

// credit is a sentence that a source asks for in its own language.
const credit = "Datenbasis: Deutscher Wetterdienst, eigene Bearbeitung"

// parted finds a number with its unit behind a plain blank.
func parted() *regexp.Regexp {
	return regexp.MustCompile(`(?:\d|½|%(?:\[\d\])?[sd]) (?:mL|L|g|kg|mg|kcal|kJ|mmol|mOsm|mM|MET|mm|cm|m|km|min|h|s|W|lb|oz|fl|mph|ft|°C|°F|%)(?:$|[^\pL\d%])`)
}

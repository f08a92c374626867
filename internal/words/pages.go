package words

import (
	"maps"
	"slices"
	"strings"

	"golang.org/x/text/language"
)

// Paper is what of the texts an athlete reads.
type Paper int

// The papers: the athlete's page, the card for the kit bag.
const (
	AthletePage Paper = iota
	KitBagCard
)

// holds reports whether a text can stand on a paper.
func (p Paper) holds(key string) bool {
	begins := func(list ...string) bool {
		return slices.ContainsFunc(list, func(begin string) bool { return strings.HasPrefix(key, begin) })
	}
	if p == KitBagCard {
		return begins("handout.card.", "handout.during.", "handout.safety.")
	}
	others := begins("handout.report.", "handout.trip.", "handout.blank.", "handout.packing.", "handout.coach.", "handout.band.", "handout.card.")
	return begins("handout.") && !others || begins("flag.") && strings.HasSuffix(key, ".page")
}

// OnPaper lists the texts of a language that can stand on a paper, all their forms, by key.
func OnPaper(tag language.Tag, p Paper) ([]string, error) {
	texts, err := textsOf(tag)
	if err != nil {
		return nil, err
	}
	var list []string
	for _, key := range slices.Sorted(maps.Keys(texts)) {
		if p.holds(key) {
			all := texts[key].all()
			slices.Sort(all)
			list = append(list, all...)
		}
	}
	return list, nil
}

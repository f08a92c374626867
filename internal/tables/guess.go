package tables

import (
	"cmp"
	"slices"
	"strings"

	"ebbwell/internal/quantity"
	"ebbwell/internal/record"
)

// headingRows is how many rows at the top may come before the headings.
const headingRows = 25

// Guess finds out how a book is read: the sheet and the row with the most headings
// that are known, what each column means and in which unit. order is the order of
// dates where the file does not tell.
func Guess(b Book, order Order) Mapping {
	best, most := Mapping{Order: order, Kind: record.ImportTests}, -1
	for _, s := range b.Sheets {
		for row := range min(len(s.Rows), headingRows) {
			n := headingScore(textsOf(s, row))
			if under, ok := underGroups(s, row); ok {
				n = max(n, headingScore(under))
			}
			if n > most {
				best.Sheet, best.Heading, most = s.Name, row, n
			}
		}
	}
	s, ok := best.Find(b)
	if !ok {
		return best
	}
	return GuessSheet(s, best.Heading, b.Separator, order)
}

// GuessSheet is [Guess] for a sheet whose row of headings is known.
func GuessSheet(s Sheet, heading int, separator rune, order Order) Mapping {
	m := Mapping{Sheet: s.Name, Heading: heading, Order: order, Grouped: hasGroups(s, heading)}
	names, unitRow := headings(s, heading, m.Grouped)
	m.UnitRow = unitRow
	for _, n := range names {
		m.Columns = append(m.Columns, Column{Heading: n})
	}
	m.assign()
	m.DecimalComma = commas(s, m, separator)
	m.tellTimes(s)
	m.Kind = m.kind()
	for i := range m.Columns {
		m.Columns[i] = m.unit(s, i)
	}
	m.ounces(s)
	if found, ok := orderOf(s, m); ok {
		m.Order = found
	}
	return m.Of(m.Kind)
}

// kind is what sort of file it is by what its columns mean.
func (m Mapping) kind() record.ImportKind {
	has := func(t Target) bool { return m.first(t) >= 0 }
	weighed := has(MassBefore) || has(MassAfter) || has(BottleBefore) || has(Drunk)
	switch {
	case !weighed && !has(Duration) && (has(Sodium) || has(Potassium)) && (has(Sample) || has(Name) || has(FamilyName)):
		return record.ImportLaboratory
	case weighed, has(Date) && !has(Height):
		return record.ImportTests
	case has(Born), has(Sex), has(Sport), has(Height):
		return record.ImportAthletes
	}
	return record.ImportTests
}

// A heading is taken for what a name of a column covers of its letters.
const (
	leastMatch = 0.45
	sureMatch  = 0.6
)

// found is a meaning a heading may have.
type found struct {
	target Target
	score  float64
	column int
}

// find lists what a heading may mean, the likeliest first.
func find(heading string) []found {
	words := withoutUnits(heading)
	var list []found
	for _, t := range allTargets() {
		score := cover(words, t)
		if t.Sited() && score > 0 {
			score = max(score, cover(withoutSite(words), t))
		}
		if score >= leastMatch && !wrongUnit(heading, t) {
			list = append(list, found{target: t, score: score})
		}
	}
	if slices.ContainsFunc(list, func(f found) bool { return f.target == MassBefore || f.target == MassAfter }) {
		list = slices.DeleteFunc(list, func(f found) bool { return f.target == UsualMass })
	}
	slices.SortStableFunc(list, func(a, b found) int { return cmp.Compare(b.score, a.score) })
	return list
}

// cover is the part of the letters of a heading that a name of a target covers; a
// name of two letters counts only where nothing else stands, but for sodium.
func cover(words []string, t Target) float64 {
	letters, most := lettersOf(words), 0
	if letters == 0 {
		return 0
	}
	for name := range strings.SplitSeq(known()[t], ", ") {
		parts := strings.Fields(name)
		covered := lettersOf(parts)
		if covered > most && holdsAll(words, parts) && (covered > 2 || covered == letters || t.Sited()) {
			most = covered
		}
	}
	return float64(most) / float64(letters)
}

// lettersOf counts the letters of words.
func lettersOf(words []string) int {
	n := 0
	for _, w := range words {
		n += len(w)
	}
	return n
}

// withoutSite is the words of a heading but for those that say where a patch sat.
func withoutSite(words []string) []string {
	var site []string
	for _, names := range siteNames() {
		for name := range strings.SplitSeq(names, ", ") {
			if parts := strings.Fields(name); holdsAll(words, parts) {
				site = append(site, parts...)
			}
		}
	}
	return slices.DeleteFunc(slices.Clone(words), func(w string) bool {
		return slices.Contains(site, w) || sideOf(w) != "" || w == "patch" || w == "sweat"
	})
}

// allTargets lists the targets that have names, in the order of [meanings].
func allTargets() []Target {
	var list []Target
	for _, m := range meanings() {
		list = append(list, m.target)
	}
	return append(list, elsewhere, code)
}

// brackets lists what stands in brackets of a heading, and the rest of it.
func brackets(heading string) (inside []string, rest string) {
	for {
		open := strings.IndexAny(heading, "([{")
		if open < 0 {
			return inside, rest + heading
		}
		end := strings.IndexAny(heading[open:], ")]}")
		if end < 0 {
			return append(inside, heading[open+1:]), rest + heading[:open]
		}
		inside = append(inside, heading[open+1:open+end])
		rest += heading[:open] + " "
		heading = heading[open+end+1:]
	}
}

// measures reports whether what stands in brackets is a unit, of whatever kind.
func measures(text string) bool {
	if _, ok := unitOf(text); ok {
		return true
	}
	text = strings.ToLower(strings.ReplaceAll(text, " ", ""))
	return strings.Contains(text, "/h") || strings.Contains(text, "/min") || strings.Contains(text, ".h-1") || strings.Contains(text, "%") ||
		text == "mg" || text == "bpm" || text == "km" || text == "yrs" || text == "years"
}

// withoutUnits are the words of a heading but for units in brackets and at the end.
func withoutUnits(heading string) []string {
	inside, rest := brackets(heading)
	parts := strings.FieldsFunc(rest, func(r rune) bool { return strings.ContainsRune(" ,;:", r) })
	rest = strings.Join(slices.DeleteFunc(parts, func(part string) bool {
		_, is := unitOf(part)
		return is && strings.Contains(part, "/")
	}), " ")
	words := wordsOf(rest)
	for _, text := range inside {
		if !measures(text) {
			words = append(words, wordsOf(text)...)
		}
	}
	for len(words) > 1 {
		last := words[len(words)-1]
		if _, ok := unitOf(last); !ok || last == "f" || last == "h" || last == "in" {
			break
		}
		words = words[:len(words)-1]
	}
	return words
}

// wrongUnit reports whether a heading gives a unit in which a target cannot be.
func wrongUnit(heading string, t Target) bool {
	m, ok := meaningOf(t)
	if !ok || m.sort != SortNumber && m.sort != SortMinutes {
		return false
	}
	inside, _ := brackets(heading)
	for _, text := range inside {
		u, isUnit := unitOf(text)
		if isUnit && !slices.Contains(sameSign(u, m), u) || !isUnit && measures(text) {
			return true
		}
	}
	return false
}

// sameSign lists the units of a target, with those of its signs that mean another
// unit elsewhere: "oz" of a volume is a fluid ounce, "mmol" of sodium mmol/L.
func sameSign(u quantity.Unit, m meaning) []quantity.Unit {
	if u == quantity.Ounce && slices.Contains(m.units, quantity.FluidOunce) {
		return append(slices.Clone(m.units), quantity.Ounce)
	}
	return m.units
}

// assign gives each column what it most likely means; where only one column may
// mean it, the likeliest one.
func (m *Mapping) assign() {
	var all []found
	for i, c := range m.Columns {
		for _, f := range find(c.Heading) {
			f.column = i
			all = append(all, f)
		}
	}
	slices.SortStableFunc(all, func(a, b found) int { return cmp.Compare(b.score, a.score) })
	done, taken := map[int]bool{}, map[Target]bool{}
	for _, f := range all {
		of, _ := meaningOf(f.target)
		single := !of.many && f.target != Worked && f.target != elsewhere
		if done[f.column] || single && taken[f.target] {
			continue
		}
		done[f.column], taken[f.target] = true, true
		m.Columns[f.column].Target = f.target
	}
	m.resolve(taken)
}

// resolve settles what the meanings of the other columns decide.
func (m *Mapping) resolve(taken map[Target]bool) {
	named := taken[Name] || taken[FamilyName] || taken[Sample]
	drinks, salts := 0, 0
	for _, c := range m.Columns {
		if c.Target == Drunk {
			drinks++
		}
	}
	for i, c := range m.Columns {
		switch {
		case c.Target == code && !named:
			m.Columns[i].Target, named = Name, true
		case c.Target == code, c.Target == elsewhere:
			m.Columns[i].Target = Unused
		case c.Target == Drunk && drinks > 1 && isTotal(c.Heading):
			m.Columns[i].Target = Worked
			drinks--
		case c.Target.Sited():
			site, ok := SiteOf(c.Heading)
			m.Columns[i].Site = site
			if !ok && c.Target == Sodium {
				if salts++; salts > 1 {
					m.Columns[i].Target = Unused
				}
			}
		}
	}
}

// isTotal reports whether a heading says that its column is a sum of others.
func isTotal(heading string) bool {
	for _, w := range wordsOf(heading) {
		switch w {
		case "total", "sum", "gesamt", "summe", "insgesamt", "suma", "somme", "all":
			return true
		}
	}
	return false
}

// tellTimes tells a time of day from a duration where a heading says only "time".
func (m *Mapping) tellTimes(s Sheet) {
	start := m.first(Start)
	if start < 0 || m.first(Duration) >= 0 {
		return
	}
	plainly := 0
	rows := m.Rows(s)
	for _, row := range rows {
		if x, ok := m.number(s.At(row, start)); ok && x > 24 && x < 1000 {
			plainly++
		}
	}
	if plainly*2 > len(rows) {
		m.Columns[start].Target = Duration
	}
}

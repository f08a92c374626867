package field

import (
	"strings"
	"unicode"
)

// editor is a line of text with a caret and a selection; it knows nothing of
// drawing. caret and anchor are places between runes; what lies between them
// is selected.
type editor struct {
	text          []rune
	caret, anchor int
	// most is the greatest number of runes; 0 is no limit.
	most int
	// said is the text as it was last asked for.
	said string
}

// set replaces the text and puts the caret behind it.
func (e *editor) set(text string) {
	e.text = []rune(oneLine(text))
	e.caret = len(e.text)
	e.anchor = e.caret
}

// string is the text; it is made anew only where it has changed.
func (e *editor) string() string {
	i := 0
	for _, r := range e.said {
		if i == len(e.text) || e.text[i] != r {
			i = -1
			break
		}
		i++
	}
	if i != len(e.text) {
		e.said = string(e.text)
	}
	return e.said
}

// slice is the text between two places.
func (e *editor) slice(from, to int) string {
	text := e.string()
	first, last, i := len(text), len(text), 0
	for at := range text {
		if i == from {
			first = at
		}
		if i == to {
			last = at
		}
		i++
	}
	return text[min(first, last):last]
}

// oneLine turns line breaks and tabs into spaces and drops other controls.
func oneLine(text string) string {
	return strings.Map(func(r rune) rune {
		switch {
		case r == '\n' || r == '\t':
			return ' '
		case unicode.IsControl(r) || r == unicode.ReplacementChar:
			return -1
		}
		return r
	}, strings.ReplaceAll(text, "\r\n", "\n"))
}

// selection is what is selected, from before to.
func (e *editor) selection() (from, to int) {
	return min(e.caret, e.anchor), max(e.caret, e.anchor)
}

func (e *editor) selected() string {
	from, to := e.selection()
	return e.slice(from, to)
}

// move puts the caret somewhere; keep leaves the anchor, so that what lies
// between is selected.
func (e *editor) move(to int, keep bool) {
	e.caret = min(max(to, 0), len(e.text))
	if !keep {
		e.anchor = e.caret
	}
}

func (e *editor) selectAll() { e.anchor, e.caret = 0, len(e.text) }

// insert puts text in place of the selection and reports whether anything
// changed. What does not fit is cut off.
func (e *editor) insert(text string) bool {
	runes := []rune(oneLine(text))
	from, to := e.selection()
	if room := e.most - (len(e.text) - (to - from)); e.most > 0 && len(runes) > room {
		runes = runes[:max(room, 0)]
	}
	if len(runes) == 0 && from == to {
		return false
	}
	rest := append([]rune{}, e.text[to:]...)
	e.text = append(append(e.text[:from:from], runes...), rest...)
	e.move(from+len(runes), false)
	return true
}

// erase removes the selection, or else what lies between the caret and to.
func (e *editor) erase(to int) bool {
	if e.caret == e.anchor {
		e.anchor = min(max(to, 0), len(e.text))
	}
	return e.insert("")
}

// left is the place one sign before i, right the one behind it. A sign is a
// rune with what is joined to it: accents, emoji made of several runes.
func (e *editor) left(i int) int {
	for i--; i > 0 && joins(e.text, i); i-- {
	}
	return max(i, 0)
}

func (e *editor) right(i int) int {
	for i++; i < len(e.text) && joins(e.text, i); i++ {
	}
	return min(i, len(e.text))
}

// joins reports whether the rune at i belongs to the sign before it.
func joins(text []rune, i int) bool {
	const joiner = '\u200d'
	r, before := text[i], text[i-1]
	switch {
	case unicode.In(r, unicode.Mn, unicode.Me, unicode.Mc), r == joiner, before == joiner:
		return true
	case r >= 0x1F3FB && r <= 0x1F3FF: // skin tones
		return true
	case regional(r) && regional(before):
		n := 0
		for j := i - 1; j >= 0 && regional(text[j]); j-- {
			n++
		}
		return n%2 == 1
	}
	return false
}

// regional reports whether two of the rune make a flag.
func regional(r rune) bool { return r >= 0x1F1E6 && r <= 0x1F1FF }

// wordLeft is the beginning of the word before i, wordRight the end of the one
// behind it.
func (e *editor) wordLeft(i int) int {
	for i > 0 && !inWord(e.text[i-1]) {
		i--
	}
	for i > 0 && inWord(e.text[i-1]) {
		i--
	}
	return i
}

func (e *editor) wordRight(i int) int {
	for i < len(e.text) && !inWord(e.text[i]) {
		i++
	}
	for i < len(e.text) && inWord(e.text[i]) {
		i++
	}
	return i
}

// selectWord selects the word, or the run of other signs, around i.
func (e *editor) selectWord(i int) {
	if len(e.text) == 0 {
		return
	}
	i = min(i, len(e.text)-1)
	word := inWord(e.text[i])
	from, to := i, i
	for from > 0 && inWord(e.text[from-1]) == word {
		from--
	}
	for to < len(e.text) && inWord(e.text[to]) == word {
		to++
	}
	e.anchor, e.caret = from, to
}

// inWord reports whether a rune is part of a word; a decimal point is.
func inWord(r rune) bool {
	return unicode.IsLetter(r) || unicode.IsDigit(r) || unicode.IsMark(r) || r == '_' || r == '.' || r == ','
}

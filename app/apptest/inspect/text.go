package inspect

import (
	"regexp"
	"strings"
	"unicode/utf8"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
)

// line is one line of text that can be seen.
type line struct {
	drawn
	text  *canvas.Text
	order int
	// ink is where the letters stand, from the height of an ascender down to
	// the baseline.
	ink area
}

// Shares of a line's height above the letters and below their baseline.
const (
	aboveLetters  = 0.20
	belowBaseline = 0.24
)

// lines lists the texts of a tree, hidden ones left out.
func (s *sight) lines() []line {
	var list []line
	for i, d := range s.drawn {
		text, ok := d.object.(*canvas.Text)
		if !ok || strings.TrimSpace(text.Text) == "" || seenThrough(text.Color) {
			continue
		}
		l := line{drawn: d, text: text, order: i, ink: inkOf(text, d.place)}
		if l.ink.and(l.clip).empty() || s.hidden(l) {
			continue
		}
		list = append(list, l)
	}
	return list
}

// inkOf is where the letters of a text stand.
func inkOf(t *canvas.Text, place area) area {
	size, _ := fyne.CurrentApp().Driver().RenderedTextSize(t.Text, t.TextSize, t.TextStyle, t.FontSource)
	left := place.left
	switch t.Alignment {
	case fyne.TextAlignTrailing:
		left = place.right - size.Width
	case fyne.TextAlignCenter:
		left = (place.left + place.right - size.Width) / 2
	}
	top := (place.top + place.bottom - size.Height) / 2
	return area{left, top + size.Height*aboveLetters, left + size.Width, top + size.Height*(1-belowBaseline)}
}

// hidden reports whether something that cannot be seen through was painted
// over a line.
func (s *sight) hidden(l line) bool {
	for _, d := range s.drawn[l.order+1:] {
		if c := fill(d.object); c != nil && solid(c) && d.place.and(d.clip).holds(l.ink.and(l.clip), 0.5) {
			return true
		}
	}
	return false
}

// unworded tells of keys of texts: words in small letters with points between, which the
// catalogue gives back for a key that it does not have.
func unworded(lines []line) []Finding {
	var list []Finding
	for _, l := range lines {
		if key := regexp.MustCompile(`^[a-z]+(\.[a-z0-9-]+)+$`); !l.typed && key.MatchString(strings.TrimSpace(l.text.Text)) {
			list = append(list, Finding{Unworded, strings.TrimSpace(l.text.Text), l.of})
		}
	}
	return list
}

// textsCut tells of texts that lose letters at the edge of what they lie in,
// that are wider than their place, or that were shortened to fit and cannot be gone into.
func textsCut(lines []line) []Finding {
	var list []Finding
	for _, l := range lines {
		word := strings.TrimSpace(l.text.Text)
		switch {
		case l.ink.left < l.clip.left-1 || l.ink.right > l.clip.right+1:
			list = append(list, Finding{Cut, word, l.of})
		case l.place.width() > 1 && l.ink.width() > l.place.width()+1.5:
			list = append(list, Finding{Wider, word, l.of})
		case shortened(word) && !l.typed:
			list = append(list, Finding{Shortened, word, l.of})
		}
	}
	return list
}

// shortened reports whether an ellipsis stands in for letters: one that means
// that a dialog follows stands after a space.
func shortened(s string) bool {
	head, ok := strings.CutSuffix(s, "…")
	last, _ := utf8.DecodeLastRuneInString(head)
	return ok && last != ' ' && last != '\u00a0'
}

// textsOverlap tells of texts that lie on one another.
func (s *sight) textsOverlap(lines []line) []Finding {
	var list []Finding
	for i, a := range lines {
		for _, b := range lines[i+1:] {
			if both := a.ink.and(a.clip).and(b.ink.and(b.clip)); both.width() > 1.5 && both.height() > 1.5 && !s.coveredBetween(a.order+1, b.order, both) {
				list = append(list, Finding{Overlap, strings.TrimSpace(a.text.Text) + " / " + strings.TrimSpace(b.text.Text), a.of})
			}
		}
	}
	return list
}

package look

import "fyne.io/fyne/v2"

// Source is the face of the typeface that a text is set in, for the toolkit's
// FontSource; nil where the text has a letter that the typeface does not, or the
// theme is not ours. The toolkit then reads, once, its own faces and its emoji
// beside ours: that takes longer than all else at the start, and hardly a text
// needs it.
func (s Style) Source(text string) fyne.Resource {
	t := themeNow()
	if t == nil || !covered(text) {
		return nil
	}
	if s.Text().Bold {
		return t.semibold
	}
	return t.regular
}

// covered reports whether the typeface has every letter of a text.
func covered(text string) bool {
	for _, r := range text {
		if (r < ' ' || r > '~') && !inTypeface(r) {
			return false
		}
	}
	return true
}

// inTypeface reports whether a letter beyond ASCII is counted on: Latin with its
// accents, Greek, Cyrillic, and the signs the program writes. All weights have them.
func inTypeface(r rune) bool {
	switch {
	case r >= 0xa0 && r <= 0x17f:
		return r != 0xad // a soft hyphen is no letter
	case r >= 0x391 && r <= 0x3c9:
		return r != 0x3a2 && (r <= 0x3a9 || r >= 0x3b1)
	case r >= 0x410 && r <= 0x44f:
		return true
	}
	switch r {
	case '–', '—', '‘', '’', '‚', '“', '”', '„', '•', '…', '€', '←', '↑', '→', '↓', '−', '≈', '≤', '≥':
		return true
	}
	return false
}

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
	case r >= 0x218 && r <= 0x21b, r >= 0x1e80 && r <= 0x1e85, r >= 0x1ea0 && r <= 0x1ef9:
		return true // Romanian, Welsh, Vietnamese
	case r >= 0x384 && r <= 0x3ce:
		return r != 0x38b && r != 0x38d && r != 0x3a2
	case r >= 0x400 && r <= 0x45f, r == 0x490, r == 0x491:
		return true
	}
	switch r {
	case 'ẞ', '–', '—', '‘', '’', '‚', '“', '”', '„', '•', '…', '€', '←', '↑', '→', '↓', '−', '≈', '≤', '≥':
		return true
	}
	return false
}

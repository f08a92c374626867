package paper

import "strings"

// Style is how a text is set. Size and Leading are mm.
type Style struct {
	Size, Leading float64
	Weight        Weight
	Ink           Ink
}

// In returns the style in another ink.
func (st Style) In(k Ink) Style {
	st.Ink = k
	return st
}

// Heavy returns the style in another weight.
func (st Style) Heavy(w Weight) Style {
	st.Weight = w
	return st
}

// scaled returns the style at another size, leading in proportion.
func (st Style) scaled(by float64) Style {
	st.Size, st.Leading = st.Size*by, st.Leading*by
	return st
}

// Wrap breaks a text into lines no wider than width, at spaces where it can
// and inside a word where it must. Line ends in the text are kept. A text
// without words has no lines.
func (f *Faces) Wrap(st Style, s string, width float64) []string {
	var lines []string
	s = strings.NewReplacer("\r\n", "\n", "\r", "\n", "\u2028", "\n", "\u2029", "\n").Replace(s)
	for part := range strings.SplitSeq(s, "\n") {
		lines = append(lines, f.wrapParagraph(st, f.Clean(part), width)...)
	}
	return lines
}

// wrapParagraph wraps one clean text.
func (f *Faces) wrapParagraph(st Style, s string, width float64) []string {
	var lines []string
	line, used := "", 0.0
	space := f.measure(st, " ")
	for _, word := range strings.FieldsFunc(s, func(r rune) bool { return r == ' ' }) {
		w := f.measure(st, word)
		if line != "" && used+space+w <= width {
			line, used = line+" "+word, used+space+w
			continue
		}
		if line != "" {
			lines = append(lines, line)
		}
		if w > width {
			pieces := f.broken(st, word, width)
			last := len(pieces) - 1
			lines = append(lines, pieces[:last]...)
			word, w = pieces[last], f.measure(st, pieces[last])
		}
		line, used = word, w
	}
	if line != "" {
		lines = append(lines, line)
	}
	return lines
}

// broken breaks a word into pieces that fit in width: one character at least.
func (f *Faces) broken(st Style, word string, width float64) []string {
	var pieces []string
	used, from := 0.0, 0
	for i, r := range word {
		g, _ := f.lookUp(st.Weight, r)
		w := g.width * st.Size
		if used+w > width && i > from {
			pieces = append(pieces, word[from:i])
			used, from = 0, i
		}
		used += w
	}
	return append(pieces, word[from:])
}

// Fit returns the style, made smaller where needed so that the text fits in
// width on one line, but no smaller than the share least of its size.
func (f *Faces) Fit(st Style, s string, width, least float64) Style {
	w := f.Width(st, s)
	if w <= width || w == 0 {
		return st
	}
	return st.scaled(max(least, width/w))
}

// Clip keeps the first n lines; where some are left out, the last one kept
// ends in a visible "…".
func (f *Faces) Clip(st Style, lines []string, n int, width float64) []string {
	if len(lines) <= n || n < 1 {
		return lines
	}
	last := []rune(lines[n-1])
	for len(last) > 0 && f.measure(st, string(last)+"…") > width {
		last = last[:len(last)-1]
	}
	return append(append([]string{}, lines[:n-1]...), strings.TrimRight(string(last), " ")+"…")
}

package handout

import (
	"strings"

	"ebbwell/internal/handout/paper"
)

// marked sets a text in which the words between asterisks stand out, wrapped.
func (p *Press) marked(st paper.Style, s string, width float64) paper.Block {
	out := paper.Block{Width: width}
	space := p.faces.Width(st, " ")
	var line []run
	used := 0.0
	end := func() {
		out = out.With(p.runs(st, line, out.Height)...)
		out.Height += st.Leading
		line, used = nil, 0
	}
	for _, word := range runsOf(s) {
		w := p.faces.Width(word.style(st), word.text)
		if len(line) > 0 && used+space+w > width {
			end()
		}
		if w > width {
			for _, piece := range p.faces.Wrap(word.style(st), word.text, width) {
				if len(line) > 0 {
					end()
				}
				line, used = []run{{piece, word.strong}}, p.faces.Width(word.style(st), piece)
			}
			continue
		}
		if len(line) > 0 {
			used += space
		}
		line, used = append(line, word), used+w
	}
	if len(line) > 0 {
		end()
	}
	return out
}

// run is a piece of text in one weight.
type run struct {
	text   string
	strong bool
}

func (r run) style(st paper.Style) paper.Style {
	if r.strong {
		return st.Heavy(paper.SemiBold)
	}
	return st
}

// runsOf parts a marked text into its words.
func runsOf(s string) []run {
	var list []run
	for i, part := range strings.Split(s, "*") {
		for _, word := range strings.FieldsFunc(part, func(r rune) bool { return r == ' ' || r == '\n' || r == '\r' || r == '\t' }) {
			list = append(list, run{word, i%2 == 1})
		}
	}
	return list
}

// runs draws one line; neighbours of one weight are one text.
func (p *Press) runs(st paper.Style, line []run, y float64) []paper.Mark {
	var marks []paper.Mark
	x := 0.0
	for i := 0; i < len(line); {
		text, j := line[i].text, i+1
		for ; j < len(line) && line[j].strong == line[i].strong; j++ {
			text += " " + line[j].text
		}
		use := line[i].style(st)
		w := p.faces.Width(use, text)
		marks = append(marks, p.faces.Line(use, text, w, paper.Left).At(x, y).Marks...)
		x += w + p.faces.Width(st, " ")
		i = j
	}
	return marks
}

// unmarked is a text without the signs of what stands out.
func unmarked(s string) string { return strings.ReplaceAll(s, "*", "") }

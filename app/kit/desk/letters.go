package desk

import (
	"strings"

	"ebbwell/internal/handout/paper"
)

// Unprintable lists the letters of texts that no page can print, each once: the
// typeface that is printed with lacks them.
func (d *Desk) Unprintable(texts ...string) []string {
	if !strings.ContainsFunc(strings.Join(texts, ""), func(r rune) bool { return r > '~' }) {
		return nil
	}
	if d.faces == nil {
		faces, err := paper.Load()
		if err != nil {
			d.Trouble(err)
			return nil
		}
		d.faces = faces
	}
	d.faces.Forget()
	for _, s := range texts {
		d.faces.Clean(s)
	}
	return d.faces.Lacked()
}

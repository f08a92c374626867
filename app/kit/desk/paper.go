package desk

import "ebbwell/internal/handout/paper"

// Paper is the size the practice prints on: Letter where it calculates in US units,
// else A4.
func (d *Desk) Paper() paper.Size {
	if d.US() {
		return paper.Letter()
	}
	return paper.A4()
}

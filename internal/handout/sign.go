package handout

import "ebbwell/internal/handout/paper"

// signatures are the lines on which an agreed page is signed.
func (p *Press) signatures(s Sign, width float64) []paper.Item {
	if !s.Athlete {
		return nil
	}
	const each = 42.0
	blocks := []paper.Block{p.blank(p.say.Say("handout.sign.athlete"), each)}
	if s.Guardian {
		blocks = append(blocks, p.blank(p.say.Say("handout.sign.guardian"), each))
	}
	line := blocks[0]
	if len(blocks) > 1 {
		line = paper.Stack(1.5, blocks...)
	}
	line.Width = width
	return []paper.Item{{Block: line, Gap: 2}}
}

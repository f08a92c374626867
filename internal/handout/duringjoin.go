package handout

import (
	"slices"
	"strings"

	"ebbwell/internal/quantity"
)

// joinEqual joins neighbours that are alike: "from the bottle 1 to 3".
func joinEqual(list []Chance) []Chance {
	var out []Chance
	for _, c := range list {
		if n := len(out); n > 0 && alike(out[n-1], c) {
			out[n-1] = out[n-1].with(c)
			continue
		}
		out = append(out, c)
	}
	return out
}

// alike reports whether two breaks ask for the same.
func alike(a, b Chance) bool {
	return a.Maybe == b.Maybe && a.Mouthfuls == b.Mouthfuls && slices.Equal(a.Volumes, b.Volumes) && slices.Equal(a.Foods, b.Foods) &&
		len(a.Stands) == 0 && len(b.Stands) == 0
}

// with joins a break to the row of those before it.
func (c Chance) with(next Chance) Chance {
	c.More = append(slices.Clone(c.More), next.Name)
	return c
}

// times is how many breaks a row stands for.
func (c Chance) times() int { return 1 + len(c.More) }

// joinedName names the breaks of a row: "from the bottle 1, 2, 3" where they differ
// by their numbers alone, else the first and the last.
func (p *Press) joinedName(c Chance) string {
	if len(c.More) == 0 {
		return c.Name
	}
	base, name, last := unnumbered(c.Name), c.Name, c.More[len(c.More)-1]
	for _, more := range c.More {
		if base == "" || unnumbered(more) != base {
			return p.say.Say("handout.between", c.Name, last)
		}
		name += p.say.Say("format.comma") + strings.TrimSpace(strings.TrimPrefix(more, base))
	}
	if c.Together && len(c.More) >= gatherMost { // the squares to tick count them
		return p.say.Say("handout.between", c.Name, strings.TrimSpace(strings.TrimPrefix(last, base)))
	}
	return name
}

// unnumbered is a name without the number at its end; empty where it has none.
func unnumbered(name string) string {
	base := strings.TrimRight(name, "0123456789")
	if base == name {
		return ""
	}
	return strings.TrimSpace(base)
}

// gatherMost is how many breaks that follow one another share a row at most: an hour of
// breaks by the clock. Our own proposal.
const gatherMost = 4

// gathered joins breaks that follow one another, a few to a row, with what is taken at
// them together: the bottles as they stand after the last.
func gathered(list []Chance, most int) []Chance {
	var out []Chance
	for _, c := range list {
		if n := len(out); n > 0 && out[n-1].Maybe == c.Maybe && out[n-1].times()+c.times() <= most {
			out[n-1] = out[n-1].together(c)
			continue
		}
		out = append(out, c)
	}
	return out
}

// together is a row of breaks with one more, which may differ from them.
func (c Chance) together(next Chance) Chance {
	c, next = c.summed(), next.summed()
	c.Fewest, c.Mouthfuls = min(c.Fewest, next.Fewest), max(c.Mouthfuls, next.Mouthfuls)
	c.More = append(append(slices.Clone(c.More), next.Name), next.More...)
	for i, v := range next.Volumes {
		c.Volumes[i] += v
	}
	for _, f := range next.Foods {
		if at := slices.IndexFunc(c.Foods, func(own Portion) bool { return own.Name == f.Name }); at >= 0 {
			c.Foods[at].Portions += f.Portions
			continue
		}
		c.Foods = append(c.Foods, f)
	}
	for _, s := range next.Stands {
		at := slices.IndexFunc(c.Stands, func(own Stand) bool { return own.Drink == s.Drink })
		switch {
		case at < 0:
			c.Stands = append(c.Stands, s)
		case c.Stands[at].Bottle == s.Bottle:
			c.Stands[at].Left, c.Stands[at].Line = s.Left, s.Line
		default: // the one before is empty by then
			c.Stands[at] = s
		}
	}
	return c
}

// summed is a row with what its breaks come to together, of its own to change.
func (c Chance) summed() Chance {
	times := float64(c.times())
	if c.Together {
		times = 1
	}
	c.Volumes, c.Foods, c.Stands = slices.Clone(c.Volumes), slices.Clone(c.Foods), slices.Clone(c.Stands)
	for i := range c.Volumes {
		c.Volumes[i] *= quantity.Millilitres(times)
	}
	for i := range c.Foods {
		c.Foods[i].Portions *= times
	}
	if c.Together = true; c.Fewest == 0 {
		c.Fewest = c.Mouthfuls
	}
	return c
}

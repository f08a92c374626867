package handout

import (
	"slices"
	"strings"
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
	base, name := unnumbered(c.Name), c.Name
	for _, more := range c.More {
		if base == "" || unnumbered(more) != base {
			return p.say.Say("handout.between", c.Name, c.More[len(c.More)-1])
		}
		name += p.say.Say("format.comma") + strings.TrimSpace(strings.TrimPrefix(more, base))
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

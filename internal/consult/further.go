package consult

import (
	"errors"
	"fmt"
	"math"
	"strconv"
	"strings"

	"ebbwell/internal/evidence"
	"ebbwell/internal/plan"
	"ebbwell/internal/record"
)

// Further is another session of the day a plan is for, after the plan's own.
type Further struct {
	// Start is empty while it is not known.
	Start record.Clock
	// Minutes it lasts; zero is as long as its plan says.
	Minutes float64
	// Plan by which it is done; empty is the plan itself.
	Plan record.ID
}

// noFurther is kept where there is no further session though the next one is
// near: nothing kept would mean that nobody has said.
const noFurther = "none"

// FurtherOf are the further sessions of the day; said is false where nobody has
// said anything of them. A session is kept as start, minutes and plan,
// "15:00/95/<id>"; each may be missing, and what cannot be read is.
func FurtherOf(p record.Plan) (list []Further, said bool) {
	for _, text := range strings.Fields(p.Rules.Further) {
		said = true
		if text == noFurther {
			continue
		}
		var f Further
		start, rest, _ := strings.Cut(text, "/")
		minutes, other, _ := strings.Cut(rest, "/")
		if at, ok := record.Clock(start).Minutes(); ok {
			f.Start = record.ClockAt(at)
		}
		if x, err := strconv.ParseFloat(minutes, 64); err == nil && sessionLasts(x) {
			f.Minutes = x
		}
		if plainWord(other) {
			f.Plan = record.ID(other)
		}
		list = append(list, f)
	}
	return list, said
}

// SetFurther writes the further sessions of the day down; an empty list says
// that there are none.
func SetFurther(p *record.Plan, list []Further) {
	var texts []string
	for _, f := range list {
		start, minutes := "", ""
		if at, ok := f.Start.Minutes(); ok {
			start = string(record.ClockAt(at))
		}
		if sessionLasts(f.Minutes) {
			minutes = strconv.FormatFloat(f.Minutes, 'f', -1, 64)
		}
		text := start + "/" + minutes
		if plainWord(string(f.Plan)) {
			text += "/" + string(f.Plan)
		}
		texts = append(texts, text)
	}
	if len(texts) == 0 {
		texts = []string{noFurther}
	}
	p.Rules.Further = strings.Join(texts, " ")
}

// ErrLength says that no session lasts so long, or so short.
var ErrLength = errors.New("no session lasts that long")

// Lasting is a case whose session also lasts so many minutes, and the length
// that stands for them: where that is not the expected one, the mix is drunk at
// the same rates. It returns [ErrLength] for minutes that no session lasts, and
// the errors of [plan.New].
func (c Case) Lasting(minutes float64) (Case, plan.Length, error) {
	session, at := c.Planner.Session(), plan.Long
	switch {
	case !sessionLasts(minutes):
		return c, at, fmt.Errorf("plan %s for %v min: %w", c.Plan.ID, minutes, ErrLength)
	case minutes == session.Minutes[plan.Expected]:
		return c, plan.Expected, nil
	case minutes < session.Minutes[plan.Expected]:
		at = plan.Short
	}
	session.Minutes[at] = minutes
	planner, err := plan.New(c.Planner.Basis(), session, c.Planner.Menu(), c.Planner.Aim())
	if err != nil {
		return c, at, fmt.Errorf("plan %s for %v min: %w", c.Plan.ID, minutes, err)
	}
	c.Planner = c.known(planner, c.Planner.Background())
	return c, at, nil
}

// sessionLasts reports whether a session can last so many minutes.
func sessionLasts(minutes float64) bool {
	limit, ok := evidence.LimitOf(evidence.Duration)
	return ok && !math.IsNaN(minutes) && limit.Refuse.Contains(minutes)
}

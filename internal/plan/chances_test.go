package plan

import (
	"fmt"
	"math"
	"strings"
	"testing"

	"ebbwell/internal/evidence"
	"ebbwell/internal/published"
)

// rowTakes reads "minute:seconds" with a mark of question where the chance may
// not happen.
func rowTakes(t testing.TB, text string) []Take {
	t.Helper()
	var list []Take
	for _, word := range strings.Fields(text) {
		var take Take
		sure, maybe := strings.CutSuffix(word, "?")
		if maybe {
			take.Chance.Certainty = Maybe
		}
		if _, err := fmt.Sscanf(sure, "%g:%g", &take.Chance.Minute, &take.Chance.Seconds); err != nil {
			t.Fatalf("chance %q: %v", word, err)
		}
		list = append(list, take)
	}
	return list
}

func rowGut(t testing.TB, in published.In) gut {
	t.Helper()
	g := gut{lossPerMin: in.Number("loss"), emptiesPerMin: evidence.StomachEmpties}
	if in.Text("running") == "yes" {
		g.emptiesPerMin = evidence.StomachEmptiesRun
	}
	return g
}

func TestPublishedChances(t *testing.T) {
	published.WalkAll(t, "chances", func(in published.In) any {
		t := in.TB()
		switch in.Case() {
		case "most":
			return Chance{Seconds: in.Number("seconds")}.MostML()
		case "comfortable":
			return Chance{Seconds: in.Number("seconds")}.ComfortableML()
		}
		takes, g := rowTakes(t, in.Text("chances")), rowGut(t, in)
		if in.Case() == "carries" {
			return g.run(takes, func(c Chance) float64 { return c.sureML(evidence.FillMost) })
		}
		fill, sum := g.fill(takes, in.Number("plan"), evidence.FillMost)
		switch in.Case() {
		case "fill":
			return fill
		case "in all":
			return sum
		case "amounts":
			to, words := in.Number("to"), []string(nil)
			for i := range takes {
				words = append(words, fmt.Sprintf("%.0f", math.Round(takes[i].even/to+negligibleML)*to))
			}
			return strings.Join(words, " ")
		}
		t.Fatalf("case %q", in.Case())
		return nil
	})
}

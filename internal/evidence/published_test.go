package evidence

import (
	"strings"
	"testing"

	"ebbwell/internal/published"
)

// TestPublishedLimits holds each edge of the input limits: what is said of a
// value on it, and of one a step beyond.
func TestPublishedLimits(t *testing.T) {
	published.Walk(t, "limits", map[string]published.Model{
		"edge": func(in published.In) any {
			f := Field(in.Text("field"))
			e, ok := Find("limit." + string(f) + "." + in.Text("edge"))
			if !ok || e.Value != in.Number("at") {
				t.Fatalf("entry of the edge: %v, %g", ok, e.Value)
			}
			said := []string{spoken(f, in.Number("at")), spoken(f, in.Number("beyond"))}
			return strings.Join(said, " and ")
		},
	})
}

// spoken is what is said of a value.
func spoken(f Field, x float64) string {
	p := Check(f, 0, x)
	switch {
	case p == nil:
		return "kept"
	case p.Severity == Refuses:
		return "refused"
	}
	return "questioned"
}

// TestPublishedStatements: every statement has a row with its standing, and none
// stands higher than it was read.
func TestPublishedStatements(t *testing.T) {
	seen := map[string]bool{}
	published.Walk(t, "statements", map[string]published.Model{
		"standing": func(in published.In) any {
			for _, s := range Statements() {
				if s.ID == in.Text("id") {
					seen[s.ID] = true
					return map[Sureness]string{
						Read: "read in the paper", Second: "quoted in a second text", Memory: "not checked against the source",
						Proposal: "Ebbwell's own rule", Practice: "common practice",
					}[s.Sure]
				}
			}
			t.Fatalf("no statement %q", in.Text("id"))
			return nil
		},
	})
	for _, s := range Statements() {
		if !seen[s.ID] {
			t.Errorf("%s has no row", s.ID)
		}
	}
}

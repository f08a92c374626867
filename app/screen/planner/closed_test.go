package planner

import (
	"strings"
	"testing"

	"ebbwell/app/screen/planner/breaks"
	"ebbwell/app/screen/planner/part"
	"ebbwell/internal/plan"
	"ebbwell/internal/record"
)

// A session in which one may not drink is taken from the table like any other: nothing
// is then shown as drunk in what is selected, and the planner says when to drink instead.
func TestSessionWithoutDrinking(t *testing.T) {
	b := begun(t)
	b.tab(part.TabBreaks)
	tab := b.v.ui.parts[part.TabBreaks].(*breaks.BreaksTab)
	tab.TakeTable("swimming/race")
	b.settle()
	if got := b.kept().Chances; len(got) != 1 || got[0].Name != plan.NoDrinking {
		t.Fatalf("%+v", got)
	}
	b.option(record.OptionFluid)
	if b.v.Live.At.Fluid.DrunkL != 0 || !b.v.Live.Take.Closed() {
		t.Errorf("drunk are %g L", b.v.Live.At.Fluid.DrunkL)
	}
	if text := tab.Words.Text(); !strings.HasPrefix(text, b.v.Speaker.Say("planner.breaks.closed")) {
		t.Errorf("the breaks read %q", text)
	}
	said := strings.Join(b.v.Speaker.Said(b.v.Now.Proposal()), " ")
	if !strings.HasPrefix(said, b.v.Speaker.Say("proposal.closed")) || !strings.Contains(said, "before it instead") || strings.Contains(said, "first step") {
		t.Errorf("it says %q", said)
	}
}

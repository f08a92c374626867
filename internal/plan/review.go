package plan

import (
	"math"

	"ebbwell/internal/evidence"
	"ebbwell/internal/plan/proposal"
)

// Done is one session done under a step, the newest last in a list.
type Done struct {
	// Share of the plan that was drunk and eaten, 0 to 1.
	Share float64
	// DrunkLH is the drinking rate, L/h.
	DrunkLH float64
	// Stomach is 0 (fine) to 10 (worst); Asked is false when it was not asked.
	Stomach float64
	Asked   bool
	// Gained: heavier after than before.
	Gained bool
}

// Decision is what a review proposes.
type Decision string

// The decisions.
const (
	Hold Decision = "hold"
	Next Decision = "next"
	Back Decision = "back"
)

// The reasons of a proposal; words under each.
const (
	ReviewGained      = "review.gained"      // a gain in mass: a red flag
	ReviewStomachBad  = "review.stomach-bad" // 7 or more of 10
	ReviewTooFew      = "review.too-few"     // fewer than two sessions
	ReviewNotAsked    = "review.not-asked"   // the stomach was not asked
	ReviewNotDone     = "review.not-done"    // less than 80 % done
	ReviewStomachFair = "review.unsettled"   // stomach between 3 and 7
	ReviewComfortable = "review.comfortable"
)

// Proposal is the rule's word; the practitioner decides.
type Proposal struct {
	Decision Decision
	Reason   string
	// Usual is what the stomach is used to after this review. It rises only
	// here, and only on a comfortable step: to what was drunk and a small
	// step of 0.1 L/h more, never past what stomachs usually take, which is
	// less in running.
	Usual Usual
}

// Review reads the last three sessions done on a step (common practice): back
// at a gain in mass or at a stomach of 7 or more; next at 0-3 in all of at
// least two with 80 % done on average; else hold.
func Review(done []Done, before Usual, running bool) Proposal {
	if n := int(evidence.StepSessionsHigh); len(done) > n {
		done = done[len(done)-n:]
	}
	decision, reason := judge(done)
	usual := before
	if decision == Next {
		usual = risen(done, before, StomachTakes(running).High)
	}
	return Proposal{Decision: decision, Reason: reason, Usual: usual}
}

// judge applies the rule, the gravest finding first.
func judge(done []Done) (Decision, string) {
	worst, share, asked := 0.0, 0.0, true
	for _, d := range done {
		if d.Gained {
			return Back, ReviewGained
		}
		if d.Asked {
			worst = max(worst, d.Stomach)
		}
		asked = asked && d.Asked
		share += d.Share / float64(len(done))
	}
	switch {
	case worst >= evidence.StepStomachBad:
		return Back, ReviewStomachBad
	case len(done) < int(evidence.StepSessionsLow):
		return Hold, ReviewTooFew
	case !asked:
		return Hold, ReviewNotAsked
	case math.IsNaN(share), proposal.Passes(evidence.StepDoneShare, 100*share):
		return Hold, ReviewNotDone
	case !(worst <= evidence.StepStomachGood):
		return Hold, ReviewStomachFair
	}
	return Next, ReviewComfortable
}

// risen is the tolerance after a comfortable step, up to a most in L/h.
func risen(done []Done, before Usual, most float64) Usual {
	mean := 0.0
	for _, d := range done {
		mean += d.DrunkLH / float64(len(done))
	}
	to := min(mean+evidence.StepFluidLow, most)
	if !before.Known {
		return Usual{Known: mean > 0, LH: max(0, to)}
	}
	if !(to > before.LH) {
		return before
	}
	return Usual{Known: true, LH: to}
}

package evidence

import "ebbwell/internal/quantity"

// What is questioned while an athlete still stands at the scale: our own proposals.
const (
	// UnlikeUsual is how far a mass before may lie from the usual one, %.
	UnlikeUsual = 5.0
	// LikeAnother is how near a mass must lie to another athlete's to be taken for
	// theirs, %.
	LikeAnother = 1.0
	// PatchWorn is how long a patch is worn before it is to come off, min.
	PatchWorn = 30.0
	// AskAgain is how often symptoms are asked after a gain in mass, min.
	AskAgain = 10.0
	// SegmentsDiffer is by how much the rates of two parts of a session differ, as a
	// share of the greater, to be spoken of, %.
	SegmentsDiffer = 20.0
)

// fieldEntries lists what is questioned at the scale.
func fieldEntries() []Entry {
	pc := quantity.PerCent
	return []Entry{
		{ID: "scale.unlike-usual", Value: UnlikeUsual, Unit: pc, Source: ownProposal(), Sure: Proposal},
		{ID: "scale.like-another", Value: LikeAnother, Unit: pc, Source: ownProposal(), Sure: Proposal},
		{ID: "patch.worn", Value: PatchWorn, Unit: quantity.Minute, Source: ownProposal(), Sure: Proposal},
		{ID: "gain.ask-again", Value: AskAgain, Unit: quantity.Minute, Source: ownProposal(), Sure: Proposal},
		{ID: "segments.differ", Value: SegmentsDiffer, Unit: pc, Source: ownProposal(), Sure: Proposal},
	}
}

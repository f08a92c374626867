package plan

// Codes lists every code that this package hands out as it is, so that a
// catalogue of texts can be held against it. Chances and sports have theirs in
// the table ([Sports]).
func Codes() []string {
	list := (guardEnd - 1).Codes()
	for _, r := range []Reason{LowEnd, LongSession, SodiumLost, SliderEnd, NotNegative, NotInUse, Measured} {
		list = append(list, string(r))
	}
	return append(list,
		EndsAtCeiling, EndsAtReview,
		ReviewGained, ReviewStomachBad, ReviewTooFew, ReviewNotAsked, ReviewNotDone, ReviewStomachFair, ReviewComfortable,
		DayDrinkEarly, DayDrinkLate, DayEatBefore, DayDuring, DayDrinkAfter, DayEatAfter, DayAsUsual, DayNoDrink,
		NoteSimilarDay, NoteEstimate, NoteSodiumUnknown,
	)
}

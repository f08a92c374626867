package care

import (
	"cmp"
	"slices"

	"ebbwell/internal/record"
)

// gravest lists the conditions from the one that is told first to the one that is
// told last: what a session or its drinking can make an emergency of, then what a
// physician decides, then what only changes the advice. Our own order, no source.
func gravest() []record.FlagKind {
	return []record.FlagKind{
		record.FlagIllToday, record.FlagStomachToday,
		record.FlagHyponatraemia, record.FlagHeatIllness, record.FlagSpinalInjury, record.FlagSickleCell, record.FlagKidney, record.FlagHeart,
		record.FlagDesmopressin, record.FlagCysticFibrosis, record.FlagDiabetes, record.FlagPregnancy, record.FlagLithium, record.FlagDiuretics,
		record.FlagEating, record.FlagBloodPressure, record.FlagOtherMedicine, record.FlagNSAID, record.FlagAntidepressant, record.FlagMinor,
	}
}

// Gravity is how grave a condition is among the others: the larger, the graver; 0 for
// one that is not in the table.
func Gravity(kind record.FlagKind) int {
	list := gravest()
	if i := slices.Index(list, kind); i >= 0 {
		return len(list) - i
	}
	return 0
}

// ByGravity returns conditions with the gravest first.
func ByGravity(kinds []record.FlagKind) []record.FlagKind {
	list := slices.Clone(kinds)
	slices.SortStableFunc(list, func(a, b record.FlagKind) int { return cmp.Compare(Gravity(b), Gravity(a)) })
	return list
}

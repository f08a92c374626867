package consult

import (
	"slices"
	"testing"

	"ebbwell/internal/quantity"
	"ebbwell/internal/record"
)

// A gain in mass is a red flag as soon as both masses stand, with nothing else on
// the sheet; within the scale's resolution and without a symptom it is weighed
// again first.
func TestGainIsARedFlagAtOnce(t *testing.T) {
	weighed := func(before, after, step, stomach float64) record.Test {
		sheet := record.Test{Meta: record.Meta{ID: "t"}, AthleteID: "a", Scale: record.Scale{Step: record.Num(step, quantity.Kilogram)}}
		for at, kg := range map[record.Moment]float64{record.Before: before, record.After: after} {
			sheet.Weighings = append(sheet.Weighings, record.Weighing{Meta: record.Meta{ID: record.ID(at)}, Moment: at, Mass: record.Num(kg, quantity.Kilogram)})
		}
		if stomach >= 0 {
			sheet.Feeling.Stomach = record.Num(stomach, quantity.None)
		}
		return sheet
	}
	a := record.Athlete{Born: "1999-01-02", Flags: []record.Flag{{Kind: record.FlagNSAID}, {Kind: record.FlagSickleCell}}}
	for name, c := range map[string]struct {
		sheet       record.Test
		gain, again bool
	}{
		"heavier":                         {weighed(58.6, 58.9, 0.1, -1), true, false},
		"within the scale":                {weighed(58.6, 58.7, 0.1, -1), true, true},
		"within the scale with a symptom": {weighed(58.6, 58.7, 0.1, 8), true, false},
		"lighter":                         {weighed(58.6, 58.1, 0.1, 8), false, false},
	} {
		t.Run(name, func(t *testing.T) {
			g, ok := GainOf(Find(c.sheet, a, nil, testSetup(t)), a, day())
			if ok != c.gain || g.WeighAgain != c.again {
				t.Fatalf("gain %v, weigh again %v", ok, g.WeighAgain)
			}
			if ok && !slices.Equal(g.Risks, []record.FlagKind{record.FlagNSAID}) {
				t.Errorf("the athlete's own risks are %v", g.Risks)
			}
		})
	}
}

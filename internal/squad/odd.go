package squad

import (
	"math"
	"strconv"
	"strings"

	"ebbwell/internal/consult"
	"ebbwell/internal/evidence"
	"ebbwell/internal/quantity"
	"ebbwell/internal/record"
)

// The odd values, by what may be behind them.
const (
	OddChange      = "change"       // body mass change outside the warn limits; A kg before, B kg after
	OddRate        = "rate"         // sweat rate outside the warn limits; A L/h
	OddDrinking    = "drinking"     // drinking rate outside the warn limits; A L/h
	OddPounds      = "pounds"       // a mass typed in pounds; A as typed, B kg
	OddDigits      = "digits"       // two digits in the wrong order; A as typed, B as it may be
	OddUsual       = "usual"        // far from the usual mass; A kg, B usual kg
	OddAnother     = "another"      // as another athlete's mass; A kg, Name
	OddSame        = "same"         // the same value twice; A kg
	OddBottle      = "bottle"       // heavier after than before with refills; A g, B g, Item
	OddBottleOther = "bottle-other" // as another athlete's bottle; A g, Name, Item
	OddBottleSwap  = "bottle-swap"  // two bottles the other way round; Item
	OddUndrunk     = "undrunk"      // the same before and after without a refill; A g, Item
	OddBottleTwice = "bottle-twice" // the same after as another bottle of the athlete; A g, Item, Other
	OddBottleNext  = "bottle-next"  // the same after as the neighbour's; A g, Name, Item
	OddRowTwice    = "row-twice"    // all bottles before as the neighbour's; Name, Item
	OddApart       = "apart"        // two weighings far apart; A kg, B kg
	OddLimit       = "limit"        // a value outside its limits, whatever it may be; Problem
)

// Odd is a value that may be a mistake while one can still weigh again.
type Odd struct {
	Code string
	// Path is where the reason for keeping it is written.
	Path string
	A, B float64
	// Item is the bottle, Other one it is held against, from 1; Name another athlete's.
	Item, Other int
	Name        string
	// WeighAgain: a second weighing of the body settles it.
	WeighAgain bool
	// Moment is the weighing it is about.
	Moment record.Moment
	// Problem is the limit that was passed, of an [OddLimit].
	Problem evidence.Problem
	// Reason is why it was kept; empty while it stands open.
	Reason string
}

// Kept reports whether it was kept with a reason.
func (o Odd) Kept() bool { return o.Reason != "" }

// oddities lists what is odd in a row, the most likely mistake of each value only.
func oddities(rows []Row, at int) []Odd {
	r := rows[at]
	var list []Odd
	list = append(list, before(rows, at)...)
	list = append(list, after(rows, at)...)
	list = append(list, rowTwice(rows, at)...)
	for i := range r.Sheet.Test.Bottles {
		list = append(list, bottle(rows, at, i)...)
	}
	list = append(list, outside(r, list)...)
	reasons := map[string]string{}
	for _, raw := range r.Sheet.Raw {
		if raw.Reason {
			reasons[raw.Field] = raw.Text
		}
	}
	for i := range list {
		list[i].Reason = reasons[list[i].Path]
	}
	return list
}

// usualMass is what an athlete usually weighs, kg: as the profile says, else as at
// the newest test; zero where nobody knows.
func usualMass(s Sheet) float64 {
	if s.Athlete.UsualMass.Known() {
		return *s.Athlete.UsualMass.Value
	}
	for _, e := range s.Earlier {
		if list := Masses(e.Test, record.Before); len(list) > 0 && e.Test.ID != s.Test.ID {
			return *list[0].Mass.Value
		}
	}
	return 0
}

// used is the weighing of a moment that stands, the last that is not set aside.
func used(t record.Test, m record.Moment) (w record.Weighing, ok bool) {
	for _, one := range Masses(t, m) {
		if !one.Aside {
			w, ok = one, true
		}
	}
	return w, ok
}

// near reports whether two values differ by less than a share, %, of the second.
func near(x, y, percent float64) bool {
	return y > 0 && math.Abs(x-y) <= y*percent/100
}

// inPounds is a mass, kg, that was typed in pounds.
func inPounds(kg float64) float64 {
	x, err := quantity.Convert(kg, quantity.Pound, quantity.Kilogram)
	if err != nil {
		return kg
	}
	return x
}

// before looks at the mass before.
func before(rows []Row, at int) []Odd {
	s := rows[at].Sheet
	w, ok := used(s.Test, record.Before)
	if !ok {
		return nil
	}
	x, usual := *w.Mass.Value, usualMass(s)
	o := Odd{Path: "weighings." + string(w.ID) + ".mass", A: x, Moment: record.Before, WeighAgain: true}
	if usual == 0 || near(x, usual, evidence.UnlikeUsual) && !rows[at].Hidden {
		return nil
	}
	if rows[at].Hidden { // by the class of the mass alone, and without a guess
		if math.Abs(x-usual) <= consult.ClassMass(s.Athlete, usual)*evidence.UnlikeUsual/100 {
			return nil
		}
		o.Code, o.B = OddUsual, usual
		return []Odd{o}
	}
	switch other, swapped := anothers(rows, at, x), swappedDigits(x, func(y float64) bool { return near(y, usual, evidence.UnlikeUsual) }); {
	case near(inPounds(x), usual, evidence.UnlikeUsual):
		o.Code, o.B = OddPounds, inPounds(x)
	case swapped > 0:
		o.Code, o.B = OddDigits, swapped
	case other != "":
		o.Code, o.Name = OddAnother, other
	default:
		o.Code, o.B = OddUsual, usual
	}
	return []Odd{o}
}

// anothers is the name of the one athlete whose usual mass, or mass before, a value
// is; empty where there is none, or several.
func anothers(rows []Row, at int, x float64) string {
	name, n := "", 0
	for i, r := range rows {
		if i == at {
			continue
		}
		like := near(x, usualMass(r.Sheet), evidence.LikeAnother)
		if w, ok := used(r.Sheet.Test, record.Before); ok {
			like = like || near(x, *w.Mass.Value, evidence.LikeAnother)
		}
		if like {
			name, n = r.Sheet.Athlete.Name, n+1
		}
	}
	if n != 1 {
		return ""
	}
	return name
}

// swappedDigits is the value with two neighbouring digits the other way round that
// fits; zero for none.
func swappedDigits(x float64, fits func(float64) bool) float64 {
	text := []byte(strconv.FormatFloat(x, 'f', -1, 64))
	if !strings.Contains(string(text), ".") {
		text = append(text, ".0"...)
	}
	for i := range text {
		for _, j := range []int{i + 1, i + 2} {
			if j >= len(text) || text[i] == '.' || text[j] == '.' || j == i+2 && text[i+1] != '.' || text[i] == text[j] {
				continue
			}
			other := append([]byte(nil), text...)
			other[i], other[j] = other[j], other[i]
			if y, err := strconv.ParseFloat(string(other), 64); err == nil && fits(y) {
				return y
			}
		}
	}
	return 0
}

// after looks at the mass after against the mass before.
func after(rows []Row, at int) []Odd {
	s := rows[at].Sheet
	w, ok := used(s.Test, record.After)
	first, hasFirst := used(s.Test, record.Before)
	if !ok || !hasFirst {
		return nil
	}
	x, m := *w.Mass.Value, *first.Mass.Value
	list := apart(s.Test)
	o := Odd{Path: "weighings." + string(w.ID) + ".mass", A: x, Moment: record.After, WeighAgain: true}
	limit, _ := evidence.LimitOf(evidence.MassChange)
	if rows[at].Hidden { // by the class of the mass alone, and without a guess
		switch change := 100 * (x - m) / consult.ClassMass(s.Athlete, m); {
		case x == m:
			o.Code = OddSame
		case change > 0 && change <= limit.Refuse.High, limit.Warn.Contains(change):
			return append(list, rates(rows[at])...)
		default:
			o.Code, o.A, o.B, o.Path = OddChange, m, x, "weighings.change"
		}
		return append(list, o)
	}
	change := 100 * (x - m) / m
	usual := func(y float64) bool { return limit.Warn.Contains(100 * (y - m) / m) }
	switch swapped, other := swappedDigits(x, usual), anothers(rows, at, x); {
	case x == m:
		o.Code = OddSame
	case change > 0 && change <= limit.Refuse.High:
		return append(list, rates(rows[at])...) // a gain, which is no odd value
	case usual(x):
		return append(list, rates(rows[at])...)
	case usual(inPounds(x)):
		o.Code, o.B = OddPounds, inPounds(x)
	case swapped > 0:
		o.Code, o.B = OddDigits, swapped
	case !limit.Refuse.Contains(change) && other != "":
		o.Code, o.Name = OddAnother, other
	default:
		o.Code, o.A, o.B, o.Path = OddChange, m, x, "weighings.change"
	}
	return append(list, o)
}

// apart looks at duplicate weighings.
func apart(t record.Test) []Odd {
	limit, _ := evidence.LimitOf(evidence.MassSpread)
	var list []Odd
	for _, m := range []record.Moment{record.Before, record.After} {
		low, high, n := 0.0, 0.0, 0
		for _, w := range Masses(t, m) {
			if w.Aside {
				continue
			}
			if x := *w.Mass.Value; n == 0 {
				low, high = x, x
			} else {
				low, high = min(low, x), max(high, x)
			}
			n++
		}
		if n > 1 && quantity.Round(high-low, 3) > limit.Warn.High {
			list = append(list, Odd{Code: OddApart, Path: "weighings." + string(m), A: low, B: high, Moment: m, WeighAgain: true})
		}
	}
	return list
}

// rates looks at the sweat rate and the drinking rate.
func rates(r Row) []Odd {
	var list []Odd
	sweating, _ := evidence.LimitOf(evidence.SweatRate)
	if f := r.Found.Sweat.Fluid.Rate; f.Known && f.Ranged && !sweating.Warn.Contains(f.Value) {
		list = append(list, Odd{Code: OddRate, Path: "figures.sweatRate", A: f.Value, WeighAgain: true, Moment: record.After})
	}
	drinking, _ := evidence.LimitOf(evidence.DrinkingRate)
	if f := r.Found.Sweat.Fluid.DrinkingRate; f.Known && f.Value > drinking.Warn.High {
		list = append(list, Odd{Code: OddDrinking, Path: "figures.drinkingAt", A: f.Value})
	}
	return list
}

// full is what a bottle held in all, g: before and what was added.
func full(b record.Bottle) (grams float64, ok bool) {
	if !b.Before.Known() {
		return 0, false
	}
	grams = *b.Before.Value
	for _, r := range b.Refills {
		grams += r.Added.Or(0)
	}
	return grams, true
}

// bottle looks at the i-th bottle.
func bottle(rows []Row, at, i int) []Odd {
	t := rows[at].Sheet.Test
	b := t.Bottles[i]
	held, ok := full(b)
	if !ok || !b.After.Known() {
		return nil
	}
	if *b.After.Value+b.Poured.Or(0) <= held {
		return twice(rows, at, i)
	}
	o := Odd{Code: OddBottle, Path: "bottles." + string(b.ID) + ".after", A: held, B: *b.After.Value, Item: i + 1}
	for j, other := range t.Bottles {
		held2, ok := full(other)
		if j != i && ok && other.After.Known() && *b.After.Value <= held2 && *other.After.Value <= held && *other.After.Value > held2 {
			o.Code = OddBottleSwap
			return []Odd{o}
		}
	}
	if name := anothersBottle(rows, at, *b.After.Value, b.ProductID); name != "" {
		o.Code, o.Name = OddBottleOther, name
	}
	return []Odd{o}
}

// anothersBottle is the one athlete who has a bottle of the same drink that is not
// weighed again and could weigh so much; empty where there is none, or several.
func anothersBottle(rows []Row, at int, grams float64, product record.ID) string {
	name, n := "", 0
	for i, r := range rows {
		if i == at {
			continue
		}
		for _, b := range r.Sheet.Test.Bottles {
			if held, ok := full(b); ok && b.ProductID == product && !b.After.Known() && grams <= held {
				name, n = r.Sheet.Athlete.Name, n+1
				break
			}
		}
	}
	if n != 1 {
		return ""
	}
	return name
}

// WeighAgain takes a second weighing in: one that lies in the usual limits sets
// aside a first that did not and that it contradicts, so that the mean is not of a
// mistake. Both stay on record.
func WeighAgain(t *record.Test, m record.Moment) {
	first, ok := used(*t, record.Before)
	list := Masses(*t, m)
	if !ok || m != record.After || len(list) < 2 {
		return
	}
	spread, _ := evidence.LimitOf(evidence.MassSpread)
	change, _ := evidence.LimitOf(evidence.MassChange)
	share := func(x float64) float64 { return 100 * (x - *first.Mass.Value) / *first.Mass.Value }
	last := *list[len(list)-1].Mass.Value
	fits := change.Warn.Contains(share(last))
	for i := range t.Weighings {
		w := &t.Weighings[i]
		if w.Moment != m || !w.Mass.Known() || w.ID == list[len(list)-1].ID {
			continue
		}
		far := math.Abs(*w.Mass.Value-last) > spread.Refuse.High
		w.Aside = fits && far && !change.Warn.Contains(share(*w.Mass.Value)) && !gainLike(share(*w.Mass.Value))
	}
}

// gainLike reports whether a change could be a gain, which is never set aside.
func gainLike(percent float64) bool { return percent > 0 && percent <= evidence.GainToBelieve }

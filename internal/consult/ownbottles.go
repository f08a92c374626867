package consult

import (
	"math"
	"strconv"
	"strings"

	"ebbwell/internal/quantity"
	"ebbwell/internal/record"
)

// OwnBottle is a bottle of the athlete's, as it was measured.
type OwnBottle struct {
	// Name is how the athlete calls it: "Blue bottle".
	Name string
	// Full is what it holds filled to its mark, mL; FullMM is how high that mark
	// stands above the table, mm; 0 where it was not measured.
	Full   quantity.Millilitres
	FullMM float64
	// Low and LowMM are a second mark: how high a little poured in stands. It is
	// what tells a domed foot. 0 where it was not measured.
	Low   quantity.Millilitres
	LowMM float64
}

// The inside width a round bottle can have, mm, before its measures are asked about
// again: our own proposal.
const (
	narrowBottle = 40.0
	wideBottle   = 110.0
)

// Lined reports whether lines can be drawn for the bottle: its mark was measured, and
// the second one lies below it where there is one.
func (b OwnBottle) Lined() bool {
	return b.Full > 0 && b.FullMM > 0 && b.Low >= 0 && b.Low < b.Full && b.LowMM >= 0 && b.LowMM < b.FullMM && (b.Low > 0) == (b.LowMM > 0)
}

// About reports whether its lines are from one mark alone, counted from the foot.
func (b OwnBottle) About() bool { return b.Low <= 0 }

// Height is how high a volume stands above the table, mm: on the straight line
// through both marks, or through the foot and the one.
//
//	h(V) = h1 + (V - V1)*(h2 - h1)/(V2 - V1)
func (b OwnBottle) Height(v quantity.Millilitres) float64 {
	return b.LowMM + float64(v-b.Low)*(b.FullMM-b.LowMM)/float64(b.Full-b.Low)
}

// Width is the inside width of a round bottle of these measures, mm: between the
// marks it holds a cylinder of that width.
func (b OwnBottle) Width() float64 {
	return math.Sqrt(4000 * float64(b.Full-b.Low) / (math.Pi * (b.FullMM - b.LowMM)))
}

// Doubtful reports whether no usual bottle has these measures.
func (b OwnBottle) Doubtful() bool {
	return b.Lined() && (b.Width() < narrowBottle || b.Width() > wideBottle)
}

// OwnBottles are the bottles of an athlete, in the order they were written down. What
// holds no drink is left out.
func OwnBottles(a record.Athlete) []OwnBottle {
	var list []OwnBottle
	for _, line := range strings.Split(a.Bottles, "\n") {
		parts := strings.Split(line, "\t")
		for len(parts) < 5 {
			parts = append(parts, "")
		}
		number := func(s string) float64 {
			x, err := strconv.ParseFloat(s, 64)
			if err != nil || !(x > 0) {
				return 0
			}
			return x
		}
		b := OwnBottle{
			Name: strings.TrimSpace(parts[0]), Full: quantity.Millilitres(number(parts[1])), FullMM: number(parts[2]),
			Low: quantity.Millilitres(number(parts[3])), LowMM: number(parts[4]),
		}
		if BottleSize(float64(b.Full)) {
			list = append(list, b)
		}
	}
	return list
}

// SetOwnBottles writes the bottles down; those that hold no drink are left out.
func SetOwnBottles(a *record.Athlete, list []OwnBottle) {
	var lines []string
	for _, b := range list {
		if !BottleSize(float64(b.Full)) {
			continue
		}
		parts := []string{strings.Join(strings.Fields(b.Name), " ")}
		for _, x := range []float64{float64(b.Full), b.FullMM, float64(b.Low), b.LowMM} {
			parts = append(parts, strconv.FormatFloat(max(0, x), 'f', -1, 64))
		}
		lines = append(lines, strings.Join(parts, "\t"))
	}
	a.Bottles = strings.Join(lines, "\n")
}

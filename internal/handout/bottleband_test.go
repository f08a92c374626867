package handout

import (
	"bytes"
	"compress/zlib"
	"io"
	"math"
	"regexp"
	"strconv"
	"strings"
	"testing"

	"ebbwell/internal/consult"
	"ebbwell/internal/handout/paper"
	"ebbwell/internal/record"
)

// bands is the two bottles of the typical page.
func bands() BottleBands {
	return BottleBands{
		Terms: Terms{Practice: practice()}, Athlete: "Ravka", Session: "match", Step: "Step 1", From: day(5, 18),
		Bands: []Band{
			{Substance: Water, Drink: "water", Fill: 600, Bottle: consult.OwnBottle{Name: "Blue bottle", Full: 600, FullMM: 170, Low: 50, LowMM: 22}, Lines: []BandLine{
				{Name: "end of warm-up", Mouthfuls: 4, Left: 450, Line: 1}, {Name: "after quarter 1", Mouthfuls: 4, Left: 300, Line: 2},
				{Name: "after quarter 3", Mouthfuls: 4, Left: 150, Line: 3}, {Name: "on the bench, quarter 4", Mouthfuls: 2, Left: 75, Line: 4, Maybe: true},
			}},
			{Substance: Drink, Drink: "sports drink", Fill: 500, Bottle: consult.OwnBottle{Name: "Green bottle", Full: 500, FullMM: 158, Low: 50, LowMM: 24}, Lines: []BandLine{
				{Name: "half-time", Mouthfuls: 8, Left: 200, Line: 1, Foods: []Portion{{"fig bar", 0.5}}},
			}},
		},
	}
}

// stroke is a level line of a printed page, mm from its lower left corner.
type stroke struct{ x, y, length float64 }

// strokes reads the level lines of a PDF's pages as a printer would draw them.
func strokes(t *testing.T, pdf []byte) []stroke {
	t.Helper()
	const point = 25.4 / 72
	line := regexp.MustCompile(`([\d.-]+) ([\d.-]+) m ([\d.-]+) ([\d.-]+) l S`)
	var list []stroke
	for _, part := range bytes.Split(pdf, []byte("\nstream\n"))[1:] {
		r, err := zlib.NewReader(bytes.NewReader(part))
		if err != nil {
			continue
		}
		content, err := io.ReadAll(r)
		if err != nil {
			continue
		}
		for _, m := range line.FindAllStringSubmatch(string(content), -1) {
			var v [4]float64
			for i := range v {
				if v[i], err = strconv.ParseFloat(m[i+1], 64); err != nil {
					t.Fatal(err)
				}
			}
			if v[1] == v[3] {
				list = append(list, stroke{min(v[0], v[2]) * point, v[1] * point, math.Abs(v[2]-v[0]) * point})
			}
		}
	}
	return list
}

// The lines lie in the file where the measures of the bottle put them, in millimetres:
// (V - 50)*(170 - 22)/(600 - 50) + 22 for the blue one; the check line is 100 mm.
func TestBandMillimetres(t *testing.T) {
	for name, size := range map[string]paper.Size{"A4": paper.A4(), "Letter": paper.Letter()} {
		p, err := NewPress(english(t), size)
		if err != nil {
			t.Fatal(err)
		}
		pdf, err := p.BottleBands(bands()).PDF(day(5, 18))
		if err != nil {
			t.Fatal(err)
		}
		got := linesAboveFeet(t, name, strokes(t, pdf))
		for _, want := range []float64{170, 129.636, 89.273, 48.909, 28.727, 158, 68.667} {
			found := false
			for _, h := range got {
				found = found || math.Abs(h-want) < nearMM
			}
			if !found {
				t.Errorf("%s: no line %g mm above the foot: %v", name, want, got)
			}
		}
		if len(got) != 7 {
			t.Errorf("%s: %d lines: %v", name, len(got), got)
		}
	}
}

// nearMM is how exact a line on paper is, mm.
const nearMM = 0.05

// linesAboveFeet are the heights of the lines of two bands above their feet, mm; the
// check line is there.
func linesAboveFeet(t *testing.T, name string, list []stroke) []float64 {
	t.Helper()
	hundred := false
	feet := map[float64]float64{} // where a band begins, and where its foot is
	for _, s := range list {
		hundred = hundred || math.Abs(s.length-100) < nearMM && math.Abs(s.x-margin) < nearMM
		if math.Abs(s.length-(bandWidth+4)) < nearMM {
			feet[s.x+2] = s.y
		}
	}
	if !hundred || len(feet) != 2 {
		t.Fatalf("%s: line of 100 mm %v, %d feet", name, hundred, len(feet))
	}
	var got []float64
	for x, foot := range feet {
		for _, s := range list {
			if math.Abs(s.length-(bandWidth-bandStrip)) < nearMM && math.Abs(s.x-x-bandStrip) < nearMM {
				got = append(got, s.y-foot)
			}
		}
	}
	return got
}

// A bottle without measures, of measures that no bottle has, too tall for the sheet, or
// filled more than once has no band, and the sheet says why; no line is drawn below
// the low mark.
func TestBandsThatAreRefused(t *testing.T) {
	h, w := openHouse(t), english(t)
	c, o := h.caseOf(t, "Ravka")
	with := func(list ...consult.OwnBottle) BottleBands {
		a := c.Athlete
		consult.SetOwnBottles(&a, list)
		return BottleBandsOf(h.open(t, c.Plan, a, c.Basis), o, h.practice, w)
	}
	good := consult.OwnBottle{Name: "Blue", Full: 600, FullMM: 170, Low: 50, LowMM: 22}
	if b := with(good, consult.OwnBottle{Name: "Green", Full: 500, FullMM: 158}); len(b.Bands) != 2 || len(b.Refused) != 0 {
		t.Fatalf("%d bands, %q", len(b.Bands), b.Refused)
	}
	for name, one := range map[string]struct {
		bottle consult.OwnBottle
		says   string
	}{
		"not measured": {consult.OwnBottle{Name: "Green", Full: 500}, "was not measured"},
		"doubtful":     {consult.OwnBottle{Name: "Green", Full: 500, FullMM: 900}, "Measure it again"},
		"too small":    {consult.OwnBottle{Name: "Green", Full: 200, FullMM: 60}, "does not hold all"},
	} {
		if b := with(good, one.bottle); len(b.Bands) != 1 || len(b.Refused) != 1 || !strings.Contains(b.Refused[0], one.says) {
			t.Errorf("%s: %d bands, %q", name, len(b.Bands), b.Refused)
		}
	}
	tall := bands()
	tall.Bands[1].Bottle.FullMM = 260
	if text := all(press(t).BottleBands(tall)); !strings.Contains(text, "taller than this sheet") {
		t.Errorf("a bottle too tall is not said: %s", text)
	}
	low := bands()
	low.Bands[0].Lines[3].Left = 40
	on, under := low.Bands[0].drawn()
	if len(on) != 3 || len(under) != 1 {
		t.Errorf("%d lines above the low mark, %d below", len(on), len(under))
	}
	if text := plain(all(press(t).BottleBands(low))); !strings.Contains(text, "On the bench, quarter 4: at most to the end.") {
		t.Errorf("the rest is not said: %s", text)
	}
	over := o
	for i := range over.Items {
		if over.Items[i].Role == record.RoleDrink || over.Items[i].Role == record.RoleWater {
			over.Items[i].Volume = record.Num(5000, "mL")
		}
	}
	if b := BottleBandsOf(c, over, h.practice, w); len(b.Bands) != 0 {
		t.Error("bands are printed for more than is lost")
	}
}

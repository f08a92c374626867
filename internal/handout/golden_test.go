package handout

import (
	"bytes"
	"flag"
	"image"
	"image/color"
	"image/draw"
	"image/png"
	"os"
	"path/filepath"
	"strconv"
	"testing"

	"ebbwell/internal/handout/paper"
)

var update = flag.Bool("update", false, "write the golden pictures anew")

// goldenScale is about 75 dots an inch: small, but every word can be read.
const goldenScale = 3

// rounding is what one channel of a pixel may differ by: the rasteriser uses
// other instructions on other processors.
const rounding = 3

// documents are all that is kept as pictures.
func documents(t testing.TB) map[string]paper.Document {
	p := press(t)
	us := match()
	us.Terms.USUnits = true
	letter, err := NewPress(english(t), paper.Letter())
	if err != nil {
		t.Fatal(err)
	}
	hiddenReport, hiddenTrip := report(), trip()
	hiddenReport.Terms.MassHidden, hiddenTrip.Terms.MassHidden = true, true
	return map[string]paper.Document{
		"page":                  p.AthletePage(match()),
		"page-hidden":           p.AthletePage(hidden()),
		"page-minor":            p.AthletePage(minor()),
		"page-estimate":         p.AthletePage(estimate()),
		"page-no-chances":       p.AthletePage(noChances()),
		"page-long-names":       p.AthletePage(longNames()),
		"page-two-sides":        p.AthletePage(twoSides()),
		"page-gain":             p.AthletePage(gain()),
		"page-empty":            p.AthletePage(AthletePage{}),
		"page-letter-us":        letter.AthletePage(us),
		"card":                  p.KitBagCard(card(match())),
		"card-no-chances":       p.KitBagCard(card(noChances())),
		"card-long-names":       p.KitBagCard(card(longNames())),
		"card-estimate":         p.KitBagCard(card(estimate())),
		"cards":                 p.KitBagCards(card(match())),
		"cards-two-sides":       p.KitBagCards(card(twoSides())),
		"blank-sheet":           p.BlankSheet(BlankSheet{Terms: Terms{Practice: practice()}, Athlete: "Ravka Oldenmoor", Sport: "field hockey", Day: day(5, 14)}),
		"blank-sheet-letter-us": letter.BlankSheet(BlankSheet{Terms: us.Terms, Athlete: "Ravka Oldenmoor", Sport: "field hockey"}),
		"blank-sheet-hidden":    p.BlankSheet(BlankSheet{Terms: minor().Terms}),
		"report":                p.TestReport(report()),
		"report-hidden":         p.TestReport(hiddenReport),
		"report-no-sodium":      p.TestReport(noSodium()),
		"trip":                  p.TripPage(trip()),
		"trip-hidden":           p.TripPage(hiddenTrip),
	}
}

func TestGoldenPictures(t *testing.T) {
	for name, doc := range documents(t) {
		for i := range doc.Pages {
			name := name + "-" + strconv.Itoa(i+1)
			t.Run(name, func(t *testing.T) {
				img, err := doc.Picture(i, goldenScale)
				if err != nil {
					t.Fatal(err)
				}
				compare(t, name, img)
			})
		}
	}
}

// compare holds a picture against the kept one. A failed one and what differs
// are written beside it.
func compare(t *testing.T, name string, got *image.RGBA) {
	t.Helper()
	path := filepath.Join("testdata", "golden", name)
	if *update {
		write(t, path+".png", got)
		return
	}
	data, err := os.ReadFile(path + ".png")
	if err != nil {
		t.Fatalf("no kept picture; run with -update and look at it: %v", err)
	}
	want, err := png.Decode(bytes.NewReader(data))
	if err != nil {
		t.Fatal(err)
	}
	diff, n := difference(got, want)
	if n == 0 {
		return
	}
	write(t, path+".failed.png", got)
	write(t, path+".diff.png", diff)
	t.Errorf("%d pixels differ; see %s.failed.png and %s.diff.png", n, path, path)
}

// difference marks in red what differs, and counts it.
func difference(got, want image.Image) (*image.RGBA, int) {
	all := got.Bounds().Union(want.Bounds())
	out, a, b := image.NewRGBA(all), image.NewRGBA(all), image.NewRGBA(all)
	draw.Draw(a, all, got, all.Min, draw.Src)
	draw.Draw(b, all, want, all.Min, draw.Src)
	n := 0
	if got.Bounds() != want.Bounds() {
		n++
	}
	for i := 0; i < len(a.Pix); i += 4 {
		p, q := a.Pix[i:i+4], b.Pix[i:i+4]
		mark := color.RGBA{0xC0 + p[1]/4, 0xC0 + p[1]/4, 0xC0 + p[1]/4, 0xFF}
		if apart(p[0], q[0]) || apart(p[1], q[1]) || apart(p[2], q[2]) || apart(p[3], q[3]) {
			n++
			mark = color.RGBA{0xFF, 0, 0, 0xFF}
		}
		out.Pix[i], out.Pix[i+1], out.Pix[i+2], out.Pix[i+3] = mark.R, mark.G, mark.B, mark.A
	}
	return out, n
}

func apart(a, b uint8) bool { return max(a, b)-min(a, b) > rounding }

func write(t *testing.T, path string, img image.Image) {
	t.Helper()
	if err := os.MkdirAll(filepath.Dir(path), 0o755); err != nil {
		t.Fatal(err)
	}
	var out bytes.Buffer
	if err := (&png.Encoder{CompressionLevel: png.BestCompression}).Encode(&out, img); err != nil {
		t.Fatal(err)
	}
	if err := os.WriteFile(path, out.Bytes(), 0o644); err != nil {
		t.Fatal(err)
	}
}

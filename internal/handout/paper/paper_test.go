package paper

import (
	"flag"
	"strings"
	"testing"
	"time"

	"pgregory.net/rapid"

	"ebbwell/internal/golden"
)

var update = flag.Bool("update", false, "write the golden pictures anew")

func load(t testing.TB) *Faces {
	t.Helper()
	f, err := Load()
	if err != nil {
		t.Fatal(err)
	}
	return f
}

func body() Style { return Style{Size: 3.7, Leading: 5, Ink: Black} }

func TestClean(t *testing.T) {
	f := load(t)
	for _, c := range []struct{ in, want string }{
		{"plain", "plain"},
		{"½ – −2.1 °C “a” × ≤", "½ – −2.1 °C “a” × ≤"},
		{"e\u0301", "é"},
		{"a\nb\tc\r", "a b c "},
		{"soft\u00adhyphen\u200d\u202e", "softhyphen"},
		{"🏑", "…"},
		{"👩‍👧", "…"},
		{"漢字", "…"},
		{"王 Wei 王", "… Wei …"},
		{"Ann 🏃🏽‍♀️ Bo", "Ann … Bo"},
		{"سلمى", "…"},
		{"नमिता", "…"},
		{"bad\xff", "bad…"},
		{"Ωλ Дж", "Ωλ Дж"},
		{"Ελένη Παπαδάκη, Юлія Ґалаґан, Nguyễn Thị Ánh, Ștefan Ž", "Ελένη Παπαδάκη, Юлія Ґалаґан, Nguyễn Thị Ánh, Ștefan Ž"},
	} {
		if got := f.Clean(c.in); got != c.want {
			t.Errorf("%q became %q, want %q", c.in, got, c.want)
		}
	}
}

// What cannot be drawn is listed once, and forgotten when it is said to.
func TestLacked(t *testing.T) {
	f := load(t)
	f.Clean("王 Wei, 王伟, Jo 🏑")
	if got := strings.Join(f.Lacked(), " "); got != "王 伟 🏑" {
		t.Errorf("lacked %q", got)
	}
	if f.Forget(); len(f.Lacked()) != 0 {
		t.Error("not forgotten")
	}
	f.Clean("Ελένη")
	if len(f.Lacked()) != 0 {
		t.Errorf("Greek is lacked: %q", f.Lacked())
	}
}

// TestWeightsDrawTheSame: what the regular weight can draw the others can too,
// since a text is cleaned by the regular one.
func TestWeightsDrawTheSame(t *testing.T) {
	f := load(t)
	n := 0
	for r := rune(' '); r < 0x10000; r++ {
		if _, ok := f.lookUp(Regular, r); !ok {
			continue
		}
		n++
		for _, w := range []Weight{Medium, SemiBold} {
			if _, ok := f.lookUp(w, r); !ok {
				t.Errorf("%U is in the regular weight but not in %d", r, w)
			}
		}
	}
	if n < 500 {
		t.Errorf("only %d characters", n)
	}
}

func TestWrapProperties(t *testing.T) {
	f := load(t)
	rapid.Check(t, func(t *rapid.T) {
		s := rapid.StringOfN(rapid.RuneFrom([]rune("abc defgé 12,.\n½世🏑")), 0, 200, -1).Draw(t, "text")
		width := rapid.Float64Range(1, 90).Draw(t, "width")
		lines := f.Wrap(body(), s, width)
		for _, line := range lines {
			if w := f.Width(body(), line); w > width+1e-9 && len([]rune(line)) > 1 {
				t.Fatalf("%q is %.2f mm wide, more than %.2f", line, w, width)
			}
		}
		squeeze := func(s string) string { return strings.Join(strings.Fields(s), "") }
		if got, want := squeeze(strings.Join(lines, "")), squeeze(f.Clean(s)); got != want {
			t.Fatalf("wrapped %q, want %q", got, want)
		}
	})
}

func TestClip(t *testing.T) {
	f := load(t)
	lines := []string{"one", "two and more", "three"}
	if got := f.Clip(body(), lines, 3, 40); len(got) != 3 || got[2] != "three" {
		t.Errorf("nothing to leave out, got %q", got)
	}
	got := f.Clip(body(), lines, 2, 16)
	if len(got) != 2 || !strings.HasSuffix(got[1], "…") || f.Width(body(), got[1]) > 16 {
		t.Errorf("got %q", got)
	}
}

func TestFit(t *testing.T) {
	f := load(t)
	long := strings.Repeat("wide ", 9)
	if st := f.Fit(body(), "short", 60, 0.5); st != body() {
		t.Errorf("a text that fits was made %v", st)
	}
	if st := f.Fit(body(), long, f.Width(body(), long)*0.8, 0.5); f.Width(st, long) > f.Width(body(), long)*0.8+1e-9 {
		t.Error("a text that could be made to fit does not")
	}
	if st := f.Fit(body(), long, 1, 0.5); st.Size != body().Size*0.5 {
		t.Errorf("made smaller than allowed: %v", st)
	}
}

// TestPourKeepsEverything pours random blocks and asks that each text is on
// some page, in order, above the footer.
func TestPourKeepsEverything(t *testing.T) {
	f := load(t)
	rapid.Check(t, func(t *rapid.T) {
		items, want := anyItems(t, f)
		fr := Frame{Size: A4(), Margin: 15, Top: 10, Bottom: 10, Footer: f.Paragraph(body(), "FOOT", 80)}
		limit := fr.Size.Height - fr.Bottom - fr.Footer.Height
		var got []string
		for _, page := range Pour(fr, items) {
			feet := 0
			for _, m := range page.Marks {
				text, ok := m.(Text)
				switch {
				case !ok:
				case text.Text == "FOOT":
					feet++
				case text.Y > limit:
					t.Fatalf("%q stands in the footer", text.Text)
				default:
					got = append(got, text.Text)
				}
			}
			if feet != 1 {
				t.Fatalf("%d footers", feet)
			}
		}
		if strings.Join(got, " ") != strings.Join(want, " ") {
			t.Fatalf("poured\n%q\nwant\n%q", got, want)
		}
	})
}

// anyItems draws blocks of lines, and lists the lines.
func anyItems(t *rapid.T, f *Faces) (items []Item, want []string) {
	for range rapid.IntRange(0, 40).Draw(t, "items") {
		n := rapid.IntRange(1, 60).Draw(t, "lines")
		lines := make([]string, n)
		for i := range lines {
			lines[i] = rapid.StringMatching(`[a-z]{1,12}`).Draw(t, "line")
		}
		want = append(want, lines...)
		b := f.Lines(body(), lines, 80, Left)
		if rapid.Bool().Draw(t, "framed") {
			b = b.Framed(90, 2)
		}
		items = append(items, Item{Block: b, Gap: rapid.Float64Range(0, 9).Draw(t, "gap"), Keep: rapid.Bool().Draw(t, "keep")})
	}
	return items, want
}

func TestPourKeepsTogether(t *testing.T) {
	f := load(t)
	line := f.Line(body(), "x", 20, Left)
	var items []Item
	for range 49 {
		items = append(items, Item{Block: line})
	}
	items = append(items, Item{Block: f.Line(body(), "heading", 20, Left), Keep: true}, Item{Block: Space(20, 60).With(line.Marks...)})
	pages := Pour(Frame{Size: A4(), Margin: 15, Top: 10, Bottom: 10}, items)
	if len(pages) != 2 || pages[1].Texts()[0] != "heading" {
		t.Errorf("a heading was left behind: %d pages", len(pages))
	}
}

func TestPourRepeatsHeads(t *testing.T) {
	f := load(t)
	head := f.Line(body(), "head", 20, Left)
	items := []Item{{Block: head}}
	for range 80 {
		items = append(items, Item{Block: f.Line(body(), "row", 20, Left), Head: &head})
	}
	for i, page := range Pour(Frame{Size: A4(), Margin: 15, Top: 10, Bottom: 10}, items) {
		if page.Texts()[0] != "head" || strings.Count(strings.Join(page.Texts(), " "), "head") != 1 {
			t.Errorf("page %d does not begin with one head", i+1)
		}
	}
}

// TestPourEndsWithoutRoom: a header and footer that fill the page do not stop it.
func TestPourEndsWithoutRoom(t *testing.T) {
	f := load(t)
	fr := Frame{Size: Size{Width: 60, Height: 30}, Margin: 2, Top: 2, Bottom: 2, Footer: Space(50, 40)}
	pages := Pour(fr, []Item{{Block: f.Lines(body(), []string{"a", "b", "c", "d"}, 50, Left)}})
	var got []string
	for _, page := range pages {
		got = append(got, page.Texts()...)
	}
	if strings.Join(got, "") != "abcd" {
		t.Errorf("poured %q", got)
	}
}

func TestHatchStaysInside(t *testing.T) {
	h := Hatch{X: 3, Y: 4, W: 10, H: 5, Step: 1.7}
	lines := h.lines()
	if len(lines) != 8 {
		t.Errorf("%d lines", len(lines))
	}
	for _, l := range lines {
		if min(l.X1, l.X2) < 3-1e-9 || max(l.X1, l.X2) > 13+1e-9 || min(l.Y1, l.Y2) < 4-1e-9 || max(l.Y1, l.Y2) > 9+1e-9 {
			t.Errorf("%+v leaves the rectangle", l)
		}
	}
	if (Hatch{W: 1, H: 1}).lines() != nil {
		t.Error("a hatch without a step has lines")
	}
}

func TestErrors(t *testing.T) {
	f := load(t)
	if _, err := NewDocument(f, A4(), nil).PDF(time.Time{}); err == nil {
		t.Error("a document without pages became a PDF")
	}
	d := NewDocument(f, A4(), []Page{{}})
	for _, c := range []struct {
		page  int
		scale float64
	}{{1, 2}, {-1, 2}, {0, 0}, {0, -1}, {0, 1000}} {
		if _, err := d.Picture(c.page, c.scale); err == nil {
			t.Errorf("page %d at scale %g was drawn", c.page, c.scale)
		}
	}
}

// sampler shows every kind of mark.
func sampler(f *Faces) Document {
	var b Block
	y := 4.0
	for w, name := range []string{"Regular 123 ½ é", "Medium 123 ½ é", "Semibold 123 ½ é"} {
		st := body().Heavy(Weight(w))
		b = b.With(f.Line(st, name, 40, Left).At(4, y).Marks...)
		b = b.With(f.Line(st, name, 52, Right).At(44, y).Marks...)
		y += 6
	}
	for i, k := range []Ink{Black, Grey, Faint, Hairline, Sunk, Water, Drink, Food, Loss, LossPale, Salt} {
		b = b.With(Box{X: 4 + float64(i)*8, Y: 24, W: 7, H: 7, Fill: k})
	}
	return NewDocument(f, Size{Width: 100, Height: 70}, []Page{{Marks: b.With(
		Check{X: 4, Y: 35, Size: 4},
		Box{X: 12, Y: 35, W: 20, H: 10, Radius: 2, Width: 0.4, Stroke: Black},
		Box{X: 36, Y: 35, W: 20, H: 10, Radius: 2, Width: 0.3, Stroke: Black, Fill: Sunk},
		Box{X: 60, Y: 35, W: 20, H: 10, Width: 0.3, Stroke: Black, Dash: 1.2},
		Hatch{X: 84, Y: 35, W: 12, H: 10, Step: 1.5, Ink: Grey},
		Line{X1: 4, X2: 96, Y1: 50, Y2: 50, Width: 0.26, Ink: Hairline},
		Line{X1: 4, X2: 96, Y1: 54, Y2: 54, Width: 0.5, Ink: Black, Dash: 2},
		Line{X1: 4, X2: 96, Y1: 58, Y2: 66, Width: 0.4, Ink: Loss},
	).Marks}})
}

func TestGoldenMarks(t *testing.T) {
	golden.Needed(t)
	doc := sampler(load(t))
	for name, scale := range map[string]float64{"marks-small": 2.5, "marks-large": 7} {
		got, err := doc.Picture(0, scale)
		if err != nil {
			t.Fatal(err)
		}
		golden.Check(t, name, got, *update)
	}
}

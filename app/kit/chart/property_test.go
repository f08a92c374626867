package chart

import (
	"math"
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"pgregory.net/rapid"

	"ebbwell/app/kit/look"
	"ebbwell/app/kit/look/golden"
)

func TestSpreadProperties(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		n := rapid.IntRange(0, 12).Draw(t, "labels")
		from := float32(rapid.IntRange(-20, 20).Draw(t, "from"))
		to := from + float32(rapid.IntRange(0, 900).Draw(t, "room"))
		list := make([]label, n)
		at := from
		for i := range list {
			at += float32(rapid.IntRange(0, 90).Draw(t, "step"))
			list[i] = label{at: at, width: float32(rapid.IntRange(0, 120).Draw(t, "width")), x: -999}
		}
		fits := roomFor(list) <= to-from
		if got := spread(list, from, to); got != fits {
			t.Fatalf("placed %v, want %v", got, fits)
		}
		if !fits {
			return
		}
		end := from - labelGap
		for i, l := range list {
			if l.x < end+labelGap-0.01 {
				t.Fatalf("label %d touches the one before it: %+v", i, list)
			}
			end = l.x + l.width
		}
		if n > 0 && end > to+0.01 {
			t.Fatalf("the last label ends at %g, beyond %g", end, to)
		}
	})
}

func TestSpreadLeavesAloneWhatFits(t *testing.T) {
	list := []label{{at: 50, width: 40}, {at: 150, width: 40}, {at: 300, width: 60}}
	if !spread(list, 0, 400) {
		t.Fatal("not placed")
	}
	for i, want := range []float32{30, 130, 270} {
		if list[i].x != want {
			t.Errorf("label %d stands at %g, want %g", i, list[i].x, want)
		}
	}
}

func TestScale(t *testing.T) {
	s := scale{from: 0, to: 4, start: 100, end: 20}
	for _, c := range []struct {
		x        float64
		at, held float32
	}{{0, 100, 100}, {1, 80, 80}, {4, 20, 20}, {8, -60, 20}, {-1, 120, 100}, {math.NaN(), 420, 100}, {math.Inf(1), -300, 20}} {
		if got := s.at(c.x); got != c.at {
			t.Errorf("%g lies at %g, want %g", c.x, got, c.at)
		}
		if got := s.inside(c.x); got != c.held {
			t.Errorf("%g is held at %g, want %g", c.x, got, c.held)
		}
	}
	if got := (scale{start: 7, end: 9}).at(3); got != 7 {
		t.Errorf("a scale without width puts 3 at %g", got)
	}
}

// all are the cases of every chart.
func all() map[string][]shown {
	return map[string][]shown{
		"source": sourceCases(), "balance": balanceCases(), "inout": inOutCases(), "heat": heatCases(), "intakecard": intakeCases(),
		"stepcolumns": stepColumnsCases(), "breaks": breakCases(), "strip": stripCases(), "budget": budgetCases(),
		"deficit": deficitCases(),
	}
}

// TestNothingLeavesTheChart draws every case, also at its least size, and asks
// that each object is somewhere and inside.
func TestNothingLeavesTheChart(t *testing.T) {
	golden.Use(t, golden.Mode{Percent: 100})
	for name, cases := range all() {
		for _, c := range cases {
			w := c.build()
			for _, size := range []fyne.Size{fyne.NewSize(c.width, c.height), w.MinSize()} {
				w.Resize(size)
				golden.Open(t, w, size)
				for _, o := range rendered(w) {
					if fault := outside(o, size); fault != "" {
						t.Errorf("%s, %s at %v: %s", name, c.name, size, fault)
					}
				}
			}
		}
	}
}

// outside says what is wrong with an object's place; the ends of thick marks
// may reach a little over the edge.
func outside(o fyne.CanvasObject, size fyne.Size) string {
	const slack = 7
	p, s := o.Position(), o.Size()
	for _, v := range []float32{p.X, p.Y, s.Width, s.Height} {
		if math.IsNaN(float64(v)) || math.IsInf(float64(v), 0) {
			return "it is nowhere"
		}
	}
	what := "a shape"
	if text, ok := o.(*canvas.Text); ok {
		if text.Text == "" {
			return ""
		}
		what = text.Text
		if text.Alignment != left && look.Note.Width(text.Text) < s.Width {
			return "" // a centred text has room to spare
		}
	}
	if p.X < -slack || p.Y < -slack || p.X+s.Width > size.Width+slack || p.Y+s.Height > size.Height+slack {
		return what + " reaches outside"
	}
	return ""
}

// TestTextsDoNotTouch looks for text on text in the typical cases at both
// text sizes.
func TestTextsDoNotTouch(t *testing.T) {
	for _, percent := range []int{100, 150} {
		golden.Use(t, golden.Mode{Percent: percent})
		for name, cases := range all() {
			for _, c := range cases {
				w := c.build()
				golden.Open(t, w, fyne.NewSize(look.Scaled(c.width), look.Scaled(c.height)))
				for _, pair := range touching(w) {
					t.Errorf("%s, %s at %d %%: %q lies on %q", name, c.name, percent, pair[0], pair[1])
				}
			}
		}
	}
}

// touching lists the pairs of texts of a chart that lie on one another.
func touching(w fyne.Widget) (pairs [][2]string) {
	var texts []area
	var words []string
	for _, o := range rendered(w) {
		text, ok := o.(*canvas.Text)
		if !ok || text.Text == "" {
			continue
		}
		a := inked(text)
		for i, b := range texts {
			if a.touches(b) {
				pairs = append(pairs, [2]string{text.Text, words[i]})
			}
		}
		texts, words = append(texts, a), append(words, text.Text)
	}
	return pairs
}

// inked is the area of the letters of a text, without the room above and
// below them.
func inked(text *canvas.Text) area {
	w := fyne.MeasureText(text.Text, text.TextSize, text.TextStyle)
	p, s := text.Position(), text.Size()
	x := p.X
	switch text.Alignment {
	case centre:
		x += (s.Width - w.Width) / 2
	case right:
		x += s.Width - w.Width
	}
	return area{x, p.Y + w.Height*0.25, w.Width, w.Height * 0.5}
}

// TestThemeIsFollowed asks that a chart takes new colours when it is refreshed.
func TestThemeIsFollowed(t *testing.T) {
	app := golden.Use(t, golden.Mode{Percent: 100})
	c := deficit(match())
	golden.Open(t, c, fyne.NewSize(660, 240))
	before := colours(c)
	app.Settings().SetTheme(look.NewTheme(true, 100))
	c.Refresh()
	after := colours(c)
	if len(before) == 0 || len(before) != len(after) {
		t.Fatalf("%d texts, then %d", len(before), len(after))
	}
	for i := range before {
		if before[i] == after[i] {
			t.Errorf("text %d kept the colour of the light theme", i)
		}
	}
}

// colours lists the colours of the texts.
func colours(w fyne.Widget) []string {
	var list []string
	for _, o := range rendered(w) {
		if text, ok := o.(*canvas.Text); ok && text.Text != "" {
			r, g, b, _ := text.Color.RGBA()
			list = append(list, string(rune(r>>8))+string(rune(g>>8))+string(rune(b>>8)))
		}
	}
	return list
}

func TestSummaryIsSaid(t *testing.T) {
	golden.Use(t, golden.Mode{Percent: 100})
	c := deficit(match())
	if c.AccessibilityLabel() != match().Summary || c.AccessibilityRole() != fyne.AccessibleRoleText {
		t.Error("the chart says nothing to a screen reader")
	}
}

func BenchmarkDeficitSet(b *testing.B) {
	golden.Use(b, golden.Mode{Percent: 100})
	c := deficit(match())
	golden.Open(b, c, fyne.NewSize(760, 300))
	d := match()
	b.ReportAllocs()
	for b.Loop() {
		d.Plan[3].Change -= 1e-6
		c.Set(d)
	}
}

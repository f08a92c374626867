package look_test

import (
	"strings"
	"testing"

	"fyne.io/fyne/v2"
	"pgregory.net/rapid"

	"ebbwell/app/kit/look"
	"ebbwell/app/kit/look/golden"
)

// plain is an object of a size that takes what it is given.
func plain(width, height float32) fyne.CanvasObject { return look.Gap(width, height) }

func TestColumnsLineUp(t *testing.T) {
	golden.Use(t, golden.Mode{Percent: 100})
	tracks := []look.Track{look.Fixed(40), look.Share(2), look.Share(1)}
	a, b := []fyne.CanvasObject{plain(1, 10), plain(90, 10), plain(1, 10)}, []fyne.CanvasObject{plain(30, 20), plain(1, 5), plain(70, 5)}
	for _, row := range [][]fyne.CanvasObject{a, b} {
		look.Columns(10, tracks, row...).Resize(fyne.NewSize(360, 30))
	}
	for i, want := range []struct{ x, w float32 }{{0, 40}, {50, 200}, {260, 100}} {
		for _, o := range []fyne.CanvasObject{a[i], b[i]} {
			if o.Position().X != want.x || o.Size().Width != want.w {
				t.Errorf("column %d at %v, %v wide; want %v, %v", i, o.Position().X, o.Size().Width, want.x, want.w)
			}
		}
	}
}

// A share that is held to less leaves the rest to the others; in little room it is a
// share like any.
func TestColumnsAtMost(t *testing.T) {
	golden.Use(t, golden.Mode{Percent: 100})
	tracks := []look.Track{look.Share(1).AtMost(100), look.Share(1), look.Fixed(40)}
	for width, want := range map[float32][3]float32{540: {100, 400, 40}, 140: {50, 50, 40}} {
		o := []fyne.CanvasObject{look.Gap(1, 1), look.Gap(1, 1), look.Gap(1, 1)}
		look.Columns(0, tracks, o...).Resize(fyne.NewSize(width, 20))
		if got := [3]float32{o[0].Size().Width, o[1].Size().Width, o[2].Size().Width}; got != want {
			t.Errorf("at %v they are %v wide, want %v", width, got, want)
		}
	}
}

func TestColumnsGrowWithText(t *testing.T) {
	golden.Use(t, golden.Mode{Percent: 150})
	o := plain(1, 1)
	look.Columns(10, []look.Track{look.Fixed(40)}, o).Resize(fyne.NewSize(360, 30))
	if o.Size().Width != 60 {
		t.Errorf("a column of 40 px is %v px at 150 %%", o.Size().Width)
	}
}

func TestPanelsAreOneHeight(t *testing.T) {
	golden.Use(t, golden.Mode{Percent: 100})
	a, b := plain(1, 10), plain(1, 80)
	c := look.Panels(14, nil, a, b)
	if h := look.HeightFor(c, 300); h != 80 {
		t.Errorf("height %v", h)
	}
	c.Resize(fyne.NewSize(300, 120))
	if a.Size().Height != 120 || b.Size().Height != 120 {
		t.Errorf("heights %v and %v", a.Size().Height, b.Size().Height)
	}
}

func TestGrowTakesWhatIsLeft(t *testing.T) {
	golden.Use(t, golden.Mode{Percent: 100})
	first, mid, last := plain(20, 10), plain(5, 10), plain(30, 10)
	look.HBox(10, first, look.Grow(mid), last).Resize(fyne.NewSize(200, 10))
	if mid.Size().Width != 130 || last.Position().X != 170 {
		t.Errorf("middle %v wide, last at %v", mid.Size().Width, last.Position().X)
	}
	look.VBox(10, first, look.Grow(mid), last).Resize(fyne.NewSize(50, 100))
	if mid.Size().Height != 60 || last.Position().Y != 90 {
		t.Errorf("middle %v high, last at %v", mid.Size().Height, last.Position().Y)
	}
}

func TestHiddenTakesNoRoom(t *testing.T) {
	golden.Use(t, golden.Mode{Percent: 100})
	a, b, c := plain(20, 10), plain(20, 10), plain(20, 10)
	b.Hide()
	box := look.VBox(6, a, b, c)
	box.Resize(fyne.NewSize(50, 100))
	if c.Position().Y != 16 || box.MinSize().Height != 26 {
		t.Errorf("third at %v, box at least %v", c.Position().Y, box.MinSize().Height)
	}
}

func TestRowSharesBaseline(t *testing.T) {
	golden.Use(t, golden.Mode{Percent: 100})
	big, small := look.NewLabel("−2.1 %", look.Key, look.Ink), look.NewLabel("1.35 L", look.Note, look.Ink2)
	row := look.HBox(8, big, small)
	row.Resize(fyne.NewSize(300, 60))
	if x, y := big.Position().Y+big.Baseline(), small.Position().Y+small.Baseline(); x != y {
		t.Errorf("baselines at %v and %v", x, y)
	}
}

func TestParagraphHeightFollowsWidth(t *testing.T) {
	golden.Use(t, golden.Mode{Percent: 100})
	text := strings.Repeat("drink to thirst and never above the plan ", 6)
	p := look.NewParagraph(text, look.Body, look.Ink)
	under := plain(1, 10)
	box := look.VBox(0, p, under)
	box.Resize(fyne.NewSize(600, 400))
	wide := under.Position().Y
	box.Resize(fyne.NewSize(200, 400))
	if narrow := under.Position().Y; narrow <= wide || narrow != p.HeightFor(200) {
		t.Errorf("below the text: %v at 600 px, %v at 200 px; the text needs %v", wide, narrow, p.HeightFor(200))
	}
}

func TestSheetIsAsHighAsItsText(t *testing.T) {
	golden.Use(t, golden.Mode{Percent: 100})
	p := look.NewParagraph(strings.Repeat("word ", 60), look.Body, look.Ink)
	s := look.NewSheet(p)
	if got, want := look.HeightFor(s, 236), p.HeightFor(200)+2*look.SheetPadY; got != want {
		t.Errorf("sheet %v high, want %v", got, want)
	}
}

// A line is as long as it can be: with the next word it would be wider than it may.
func TestWrapFillsLines(t *testing.T) {
	golden.Use(t, golden.Mode{Percent: 100})
	broken := 0
	rapid.Check(t, func(t *rapid.T) {
		text := rapid.StringMatching(`([A-Zé0-9]?[a-z−.,]{0,9} ){0,24}AV?`).Draw(t, "text")
		width := rapid.Float32Range(30, 500).Draw(t, "width")
		rest := text
		for i, row := range look.Wrap(text, look.Body, width) {
			if i > 0 {
				rest = strings.TrimLeft(rest, " ")
			}
			rest = strings.TrimPrefix(rest, row)
			next := strings.TrimLeft(rest, " ")
			if next == rest {
				continue // the end, or the middle of a word
			}
			broken++
			word, _, _ := strings.Cut(next, " ")
			if longer := row + rest[:len(rest)-len(next)] + word; look.Body.Width(longer) <= width {
				t.Fatalf("%q ends a line of %v in %q: %q fits", row, width, text, longer)
			}
		}
	})
	if broken < 100 {
		t.Errorf("only %d lines ended: the test cannot fail", broken)
	}
}

// Wrapping loses no letter, and no line is wider than it may be.
func TestWrapKeepsText(t *testing.T) {
	golden.Use(t, golden.Mode{Percent: 100})
	rapid.Check(t, func(t *rapid.T) {
		text := rapid.StringMatching(`[a-zé0-9 −]{0,80}`).Draw(t, "text")
		width := rapid.Float32Range(30, 300).Draw(t, "width")
		rows := look.Wrap(text, look.Body, width)
		if len(rows) == 0 {
			t.Fatal("no line at all")
		}
		letters := func(s string) string { return strings.ReplaceAll(s, " ", "") }
		if got := letters(strings.Join(rows, "")); got != letters(text) {
			t.Fatalf("%q became %q", text, got)
		}
		for i, row := range rows {
			if i > 0 && strings.HasPrefix(row, " ") {
				t.Fatalf("%q begins with a space in %q", row, text)
			}
			if w := look.Body.Width(row); w > width+0.5 && len([]rune(row)) > 1 {
				t.Fatalf("%q is %v wide, more than %v", row, w, width)
			}
		}
	})
}

func TestEllipsisFits(t *testing.T) {
	golden.Use(t, golden.Mode{Percent: 100})
	rapid.Check(t, func(t *rapid.T) {
		text := rapid.StringMatching(`[A-Za-z ]{0,60}`).Draw(t, "text")
		width := rapid.Float32Range(20, 400).Draw(t, "width")
		short := look.Ellipsis(text, look.Body, width)
		if short == text {
			return
		}
		if !strings.HasSuffix(short, "…") || !strings.HasPrefix(text, strings.TrimSuffix(short, "…")) {
			t.Fatalf("%q became %q", text, short)
		}
		if w := look.Body.Width(short); w > width && short != "…" {
			t.Fatalf("%q is %v wide, more than %v", short, w, width)
		}
	})
}

func TestScrollReveals(t *testing.T) {
	golden.Use(t, golden.Mode{Percent: 100})
	s := look.NewScroll(plain(10, 1000))
	golden.Open(t, s, fyne.NewSize(100, 200))
	s.Reveal(500, 530)
	if at := s.Offset(); at > 500 || at+200 < 530 {
		t.Errorf("500 to 530 is not in sight at %v", at)
	}
	was := s.Offset()
	s.Reveal(450, 470)
	if s.Offset() != was {
		t.Error("what is in sight must not scroll")
	}
	s.Reveal(0, 10)
	if s.Offset() != 0 {
		t.Errorf("top is at %v", s.Offset())
	}
}

func TestScrollWrapsItsText(t *testing.T) {
	golden.Use(t, golden.Mode{Percent: 100})
	p := look.NewParagraph(strings.Repeat("word ", 200), look.Body, look.Ink)
	s := look.NewScroll(look.VBox(0, p))
	golden.Open(t, s, fyne.NewSize(200, 100))
	if got, want := p.Size().Height, p.HeightFor(200); got != want {
		t.Errorf("text is %v high, needs %v", got, want)
	}
}

func TestCautionHidesWhenItHasNothingToSay(t *testing.T) {
	golden.Use(t, golden.Mode{Percent: 100})
	c := look.NewCaution("", "", nil)
	if c.Visible() {
		t.Error("an empty caution is in sight")
	}
	c.SetText("Bottle 3 weighs more after than before.", "Was it refilled?")
	if !c.Visible() {
		t.Error("a caution with words is not in sight")
	}
	if title, sentence := c.Text(); title == "" || sentence == "" {
		t.Error("the words are lost")
	}
	c.SetText("", "")
	if c.Visible() {
		t.Error("an emptied caution is in sight")
	}
}

// Setting the same text again must not draw anything.
func TestLabelDrawsOnlyWhatChanged(t *testing.T) {
	golden.Use(t, golden.Mode{Percent: 100})
	l := look.NewLabel("1.36 L/h", look.Key, look.Ink)
	golden.Open(t, l, fyne.NewSize(200, 40))
	n := testing.AllocsPerRun(100, func() { l.SetText("1.36 L/h") })
	if n != 0 {
		t.Errorf("%v allocations to set the same text", n)
	}
}

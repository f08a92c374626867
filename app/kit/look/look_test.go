package look_test

import (
	"flag"
	"testing"

	"fyne.io/fyne/v2"

	"ebbwell/app/kit/look"
	"ebbwell/app/kit/look/golden"
)

var update = flag.Bool("update", false, "keep new golden pictures")

// shoot takes a picture of a widget on paper in every mode.
func shoot(t *testing.T, name string, width, height float32, build func() fyne.CanvasObject) {
	for _, m := range golden.Modes() {
		t.Run(m.String(), func(t *testing.T) {
			img := golden.Shoot(t, m, fyne.NewSize(width, height), func() fyne.CanvasObject {
				return look.Pad(20, 20, 20, 20, build())
			})
			golden.Check(t, name+"-"+m.String(), img, *update)
		})
	}
}

func TestPictureType(t *testing.T) {
	shoot(t, "type", 560, 300, func() fyne.CanvasObject {
		return look.VBox(6,
			look.HBox(12, look.NewLabel("−2.1 %", look.Key, look.Ink), look.NewLabel("−1.3 to −3.2 % on a similar day · 1.35 L", look.Note, look.Ink2)),
			look.HBox(12, look.NewLabel("1190 mg/h", look.Second, look.Ink), look.NewLabel("760 – 1620", look.Body, look.Ink2)),
			look.NewLabel("Ravka Oldenmoor", look.Title, look.Ink),
			look.NewLabel("Deficit at the end", look.Strong, look.Ink),
			look.NewLabel("In 95 minutes of hard play at 31 °C she lost 2.15 L", look.Body, look.Ink),
			look.NewLabel("weighed with cap, to 1 g", look.Note, look.Ink2),
			look.NewLabel("a line that is too long for its place ends in an ellipsis and goes no further than it may, whatever the window is like", look.Body, look.Ink3).Shorten(),
			look.NewLabel("figures right 1.016", look.Body, look.Ink).Right(),
			look.NewLabel("ink 2, centred", look.NoteStrong, look.Ink2).Centre(),
		)
	})
}

func TestPictureSheet(t *testing.T) {
	shoot(t, "sheet", 620, 420, func() fyne.CanvasObject {
		tracks := []look.Track{look.Fixed(24), look.Share(1), look.Fixed(90)}
		row := func(of look.Substance, name, figure string) fyne.CanvasObject {
			return look.Columns(8, tracks, look.NewSwatch(of), look.NewLabel(name, look.Strong, look.Ink), look.NewLabel(figure, look.Body, look.Ink).Right())
		}
		left := look.NewSheet(look.VBox(10,
			look.HBox(8, look.NewLabel("What goes in", look.Strong, look.Ink), look.Stretch(), look.NewLabel("habit", look.Note, look.Ink2)),
			row(look.Water, "Water", "0.45 L"), row(look.Drink, "Sports drink 6 %", "0.35 L"),
			row(look.Food, "Fig bar", "½ bar"), row(look.Loss, "Sweat", "2.15 L"), row(look.Salt, "Added salt", "0.0 g"),
			look.NewRule(),
			look.Remark(look.NewParagraph("This plan stops at 1.59 L, the low end of the likely loss: a limit, not a goal.", look.Note, look.Ink)),
		))
		right := look.NewSheet(look.VBox(12,
			look.NewLabel("Heat caution", look.Strong, look.Ink),
			look.NewCaution("WBGT about 34 °C, estimated: no hard sessions", "Move the session to a cooler hour, or cancel. Where a stricter local rule applies, it decides.", nil),
			look.NewCaution("", "615 g, then 655 g. Was it refilled?", nil),
			look.NewParagraph("Drinking does not prevent heat illness. Confused, collapsed or acting oddly: call the emergency number.", look.Body, look.Ink2),
		))
		return look.Panels(14, []look.Track{look.Share(1), look.Share(1)}, left, right)
	})
}

func TestPictureTable(t *testing.T) {
	columns := []look.Column{
		{Title: "", Width: look.Share(3), Sorts: true}, {Title: "found", Width: look.Fixed(96), Right: true, Sorts: true},
		{Title: "range, 95 %", Width: look.Fixed(92), Right: true}, {Title: "beside the evidence", Width: look.Share(4)},
	}
	row := func(name, found, span, beside string) []look.Cell {
		return []look.Cell{{Text: name}, {Text: found, Style: look.Strong}, {Text: span}, {Text: beside, Tone: look.Ink2}}
	}
	shoot(t, "table", 680, 300, func() fyne.CanvasObject {
		table := look.NewTable("findings", columns).Roomy()
		table.SetRows([][]look.Cell{
			row("Sweat rate", "1.36 L/h", "1.29 – 1.43", "more than 6 in 10 of 506 athletes"),
			row("Sodium in sweat, whole body", "38 mmol/L", "24 – 52", "near the middle of 506 athletes"),
			row("Sodium lost", "1190 mg/h", "760 – 1620", "the patch gives most of this range"),
			row("Carbohydrate", "9 g/h", "8 – 10", "advised 30–60 g/h for 1–2½ h"),
		})
		table.ShowSort(1, true)
		table.Choose(2)
		table.FocusGained()
		return look.NewSheet(table)
	})
}

func TestPictureEmpty(t *testing.T) {
	shoot(t, "empty", 480, 130, func() fyne.CanvasObject {
		return look.NewSheet(look.Empty("No athletes yet. Make the first one, or open the invented practice to try the program on.", nil))
	})
}

// A caution that is drawn anew at the size it has, as the toolkit does after a
// minute out of sight, has its ground and its bar.
func TestCautionDrawnAnew(t *testing.T) {
	golden.Use(t, golden.Mode{Percent: 100})
	c := look.NewCaution("Bottle 3 weighs more after than before.", "Was it refilled?", nil)
	golden.Open(t, c, fyne.NewSize(300, 80))
	objects := c.CreateRenderer().Objects()
	for i, width := range []float32{300, 3} {
		if got := objects[i].Size(); got.Width != width || got.Height < 40 {
			t.Errorf("object %d is %v, want %v px wide and as high as the caution", i, got, width)
		}
	}
}

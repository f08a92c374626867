package field_test

import (
	"flag"
	"testing"
	"time"

	"fyne.io/fyne/v2"
	"golang.org/x/text/language"

	"ebbwell/app/kit/field"
	"ebbwell/app/kit/look"
	"ebbwell/app/kit/look/golden"
	"ebbwell/internal/evidence"
	"ebbwell/internal/quantity"
	"ebbwell/internal/words"
)

var update = flag.Bool("update", false, "keep new golden pictures")

// today is the day of every test: a Wednesday.
func today() time.Time { return time.Date(2026, 11, 25, 14, 32, 0, 0, time.UTC) }

// newHost makes a host with English texts on that day.
func newHost(t testing.TB) *field.Host {
	t.Helper()
	w, err := words.New(language.English)
	if err != nil {
		t.Fatal(err)
	}
	h := field.NewHost(w)
	h.Today = today
	return h
}

// shoot takes a picture of widgets on a sheet in every mode.
func shoot(t *testing.T, name string, width, height float32, build func(h *field.Host) fyne.CanvasObject) {
	for _, m := range golden.Modes() {
		t.Run(m.String(), func(t *testing.T) {
			img := golden.Shoot(t, m, fyne.NewSize(width, height), func() fyne.CanvasObject {
				return look.Pad(16, 16, 16, 16, look.NewSheet(build(newHost(t))))
			})
			golden.Check(t, name+"-"+m.String(), img, *update)
		})
	}
}

// labelled sets what a state is called beside the widget in it.
func labelled(rows ...any) fyne.CanvasObject {
	box := look.VBox(10)
	for i := 0; i < len(rows); i += 2 {
		name := look.NewLabel(rows[i].(string), look.Note, look.Ink2)
		box.Add(look.Columns(12, []look.Track{look.Fixed(110), look.Share(1)}, name, rows[i+1].(fyne.CanvasObject)))
	}
	return box
}

// focused gives a widget the look of the focus.
func focused[F field.Field](f F) F {
	f.FocusGained()
	return f
}

// disabled disables a widget.
func disabled[F field.Field](f F) F {
	f.Disable()
	return f
}

func TestPictureLine(t *testing.T) {
	shoot(t, "line", 420, 600, func(h *field.Host) fyne.CanvasObject {
		line := func(text string) *field.Line {
			l := field.NewLine(h, "line", 0)
			l.SetText(text)
			return l
		}
		empty := line("")
		empty.SetPlaceholder("type a name…")
		emptyFocused := line("")
		emptyFocused.SetPlaceholder("Water, as the last but one")
		right := line("712").AlignRight()
		right.SetSuffix("g")
		odd, wrong := line("Thermometer"), line("655")
		odd.SetTrouble(field.Odd, "Usually a place. Please check.")
		wrong.SetTrouble(field.Wrong, "Not used: more than before. Was it refilled? Weigh it again.")
		long := "A very long name of a drink, with all that is in it, and more than the box has room for"
		caret := line("Sports drink 6 %")
		caret.FocusGained()
		caret.TypedKey(&fyne.KeyEvent{Name: fyne.KeyEnd})
		over := line("Sports drink 6 %")
		over.MouseIn(nil)
		return labelled("plain", line("Sports drink 6 %"), "pointed at", over, "empty", empty, "empty, focus", focused(emptyFocused),
			"focus, caret", caret, "focus, selected", focused(line("Water")), "right, unit", right,
			"long", line(long), "long, focus", focused(line(long)), "odd", odd, "wrong", wrong, "disabled", disabled(line("Water")))
	})
}

func TestPictureNumber(t *testing.T) {
	shoot(t, "number", 440, 640, func(h *field.Host) fyne.CanvasObject {
		mass := func(raw string) *field.Number {
			n := field.NewNumber(h, "mass", evidence.BodyMass, quantity.Kilogram)
			n.SetBox(106)
			n.SetRaw(raw)
			return n
		}
		pounds := mass("")
		pounds.SetShown(quantity.Pound)
		pounds.SetValue(64)
		hint := mass("")
		hint.Hint = hint.PoundsHint
		hint.SetRaw("154")
		portions := field.NewNumber(h, "bar", evidence.Portions, quantity.Portion)
		portions.SetBox(92)
		portions.SetSuffix("bar")
		portions.SetStyle(look.Strong)
		portions.SetFormat(h.Words.Half)
		portions.SetValue(0.5)
		usg := field.NewNumber(h, "usg", evidence.USG, quantity.None)
		usg.SetBox(106)
		usg.SetDecimals(3)
		usg.SetRaw("1.045")
		return labelled("good", mass("64,35"), "empty", mass(""), "focus", focused(mass("64.35")), "warns", mass("138"),
			"refused", mass("643"), "unreadable", mass("sixty"), "other unit", mass("64 mL"), "in pounds", pounds,
			"pounds?", hint, "portions", portions, "no unit", usg, "disabled", disabled(mass("64.35")))
	})
}

func TestPictureDay(t *testing.T) {
	shoot(t, "day", 420, 420, func(h *field.Host) fyne.CanvasObject {
		day := func() *field.Date {
			d := field.NewDate(h, "day", field.Nearest)
			d.SetBox(200)
			return d
		}
		given, typing, wrong := day(), day(), day()
		given.SetDate("2026-05-14")
		for _, r := range "14.5." {
			typing.TypedRune(r)
		}
		wrong.SetText("31.2.2026")
		wrong.FocusLost()
		clock := func() *field.Clock {
			c := field.NewClock(h, "clock")
			c.SetBox(74)
			return c
		}
		at, late := clock(), clock()
		at.SetClock("09:05")
		late.SetText("25:00")
		late.FocusLost()
		return labelled("given", given, "while typing", focused(typing), "no day", wrong, "disabled", disabled(day()),
			"time", at, "time, focus", focused(clock()), "no time", late)
	})
}

func TestPictureButton(t *testing.T) {
	shoot(t, "button", 560, 240, func(h *field.Host) fyne.CanvasObject {
		row := func(state func(*field.Button)) fyne.CanvasObject {
			outline := field.NewButton(h, "o", "Next bottle", field.Outline, nil)
			outline.SetHint("Enter")
			primary := field.NewButton(h, "p", "Agree this plan", field.Primary, nil)
			quiet := field.NewButton(h, "q", "Close", field.Quiet, nil)
			for _, b := range []*field.Button{outline, primary, quiet} {
				state(b)
			}
			return look.HBox(10, outline, primary, quiet)
		}
		why, far := field.NewLink(h, "why", "why", nil), field.NewLink(h, "far", "heat caution", nil)
		return labelled("plain", row(func(*field.Button) {}), "pointed at", row(func(b *field.Button) { b.MouseIn(nil) }),
			"focus", row(func(b *field.Button) { b.FocusGained() }), "disabled", row(func(b *field.Button) { b.Disable() }),
			"link, focus", look.HBox(10, why, focused(far)))
	})
}

func TestPictureChoose(t *testing.T) {
	sun := []field.Option{{Key: "full", Text: "full, high"}, {Key: "part", Text: "part"}, {Key: "none", Text: "none"}}
	shoot(t, "choose", 640, 520, func(h *field.Host) fyne.CanvasObject {
		choice := func(key string) *field.Choice {
			c := field.NewChoice(h, "sun", sun)
			c.SetPlaceholder("choose")
			c.Choose(key)
			return c
		}
		toggle := func(key string) *field.Toggle {
			tg := field.NewToggle(h, "toggle", []field.Option{{Key: "d", Text: "drunk"}, {Key: "p", Text: "poured"}, {Key: "s", Text: "shared"}})
			tg.Choose(key)
			return tg
		}
		check := func(on bool) *field.Check {
			c := field.NewCheck(h, "check", "Hide body mass on screen and paper")
			c.Set(on)
			return c
		}
		rating := func(v int) *field.Rating {
			r := field.NewRating(h, "rating", "fine", "could not go on")
			r.SetValue(v)
			return r
		}
		return labelled("choice", look.Columns(8, nil, choice("full"), choice(""), focused(choice("part")), disabled(choice("none"))),
			"toggle", look.HBox(10, toggle(""), toggle("p")), "", look.HBox(10, focused(toggle("d")), disabled(toggle("s"))),
			"check", check(false), "", check(true), "focus", focused(check(true)), "disabled", disabled(check(true)),
			"rating", look.MaxWidth(400, rating(field.Unrated)), "focus", look.MaxWidth(400, focused(rating(7))), "disabled", look.MaxWidth(400, disabled(rating(3))))
	})
}

func TestPictureTabs(t *testing.T) {
	shoot(t, "tabs", 600, 220, func(h *field.Host) fyne.CanvasObject {
		tabs := func() *field.Tabs {
			tb := field.NewTabs(h, "tabs", []field.Tab{{Key: "b", Text: "1 Before", Done: true}, {Key: "d", Text: "2 Bottles and food"},
				{Key: "a", Text: "3 After", Done: true}, {Key: "u", Text: "4 Urine and patch"}})
			tb.Choose("d")
			return tb
		}
		return look.VBox(14, tabs(), focused(tabs()), disabled(tabs()))
	})
}

func TestPictureSlider(t *testing.T) {
	shoot(t, "slider", 450, 420, func(h *field.Host) fyne.CanvasObject {
		slider := func(of look.Substance, value, mark, low, high float64) *field.Slider {
			s := field.NewSlider(h, "slider", of, field.Scale{Max: 1.6, Step: 0.05})
			s.SetBand(low, high)
			s.SetMark(mark)
			s.SetValue(value)
			return s
		}
		row := func(of look.Substance, name, note, change, figure, unit string, s *field.Slider) fyne.CanvasObject {
			n := field.NewLine(h, "number", 0).AlignRight()
			n.SetStyle(look.Strong)
			n.SetSuffix(unit)
			n.SetText(figure)
			n.SetLeast(92)
			head := look.HBox(8, look.NewSwatch(of), look.NewLabel(name, look.Strong, look.Ink), look.Grow(look.NewLabel(note, look.Note, look.Ink2).Shorten()),
				look.NewLabel(change, look.Note, look.Ink2), n)
			return look.VBox(2, head, s)
		}
		stopped := slider(look.Food, 0.6, 0, 0.4, 0.8)
		stopped.SetLimit(1.2)
		off := slider(look.Loss, 0.8, 0.2, 2, 1)
		off.Disable()
		over := slider(look.Loss, 0.8, 0.2, 0.9, 1.1)
		over.MouseIn(nil)
		return look.VBox(6,
			row(look.Water, "Water", "", "+0.15", "0.45", "L", slider(look.Water, 0.45, 0.3, 0.52, 0.76)),
			row(look.Drink, "Sports drink 6 %", "20 mmol/L sodium", "+0.10", "0.35", "L", focused(slider(look.Drink, 0.35, 0.25, 0.5, 0.65))),
			row(look.Food, "Fig bar", "38 g carbohydrate each", "+½", "½", "bar", stopped),
			row(look.Salt, "Added salt", "in the drink", "", "0.0", "g", slider(look.Salt, 0, 0, 0, 0.5)), over, off)
	})
}

func TestPictureNotes(t *testing.T) {
	shoot(t, "notes", 420, 500, func(h *field.Host) fyne.CanvasObject {
		notes := func(text string) *field.Notes {
			n := field.NewNotes(h, "notes", 3)
			n.SetPlaceholder("what the athlete said")
			n.SetText(text)
			return n
		}
		inFocus, off := notes("with the keyboard"), notes("disabled")
		inFocus.Parts()[0].(fyne.Focusable).FocusGained()
		off.Disable()
		return look.VBox(10, notes(""), notes("I want legs left for the last quarter. The warm-up drink was fine, the half-time one too sweet."), notes("one\ntwo\nthree\nfour\nfive"), inFocus, off)
	})
}

// shootWindow takes a picture of a window after something was done in it.
func shootWindow(t *testing.T, name string, width, height float32, build func(h *field.Host) (fyne.CanvasObject, func(fyne.Canvas))) {
	for _, m := range golden.Modes() {
		t.Run(m.String(), func(t *testing.T) {
			golden.Use(t, m)
			content, do := build(newHost(t))
			w := golden.Open(t, look.Pad(16, 16, 16, 16, content), fyne.NewSize(look.Scaled(width), look.Scaled(height)))
			do(w.Canvas())
			golden.LayOutAgain(w.Canvas())
			golden.Window(t, name+"-"+m.String(), w, *update)
		})
	}
}

// foods are options with notes.
func foods() []field.Option {
	var list []field.Option
	for _, name := range []string{"Banana", "Bread roll", "Date, dried", "Fig bar", "Gel, 25 g carbohydrate", "Oat biscuit",
		"Orange", "Potato, boiled", "Raisins", "Rice cake, sweet"} {
		list = append(list, field.Option{Key: name, Text: name, Note: "per portion"})
	}
	return list
}

func TestPictureList(t *testing.T) {
	shootWindow(t, "list", 380, 330, func(h *field.Host) (fyne.CanvasObject, func(fyne.Canvas)) {
		c := field.NewChoice(h, "food", foods())
		c.Choose("Fig bar")
		return look.VBox(8, c, look.NewParagraph("Keep the wrappers: what athletes say they ate runs about a third too high.", look.Note, look.Ink2)),
			func(on fyne.Canvas) {
				on.Focus(c)
				c.Open()
			}
	})
}

func TestPictureSuggest(t *testing.T) {
	shootWindow(t, "suggest", 380, 150, func(h *field.Host) (fyne.CanvasObject, func(fyne.Canvas)) {
		s := field.NewSuggest(h, "food", false, func(string) []field.Option { return foods()[:3] })
		return look.VBox(8, s), func(on fyne.Canvas) {
			on.Focus(s)
			s.TypedRune('b')
		}
	})
}

func TestPictureAsk(t *testing.T) {
	shootWindow(t, "ask", 640, 400, func(h *field.Host) (fyne.CanvasObject, func(fyne.Canvas)) {
		behind := look.NewSheet(look.VBox(8, look.NewLabel("Bottles", look.Strong, look.Ink), look.NewParagraph("A sheet behind the question.", look.Body, look.Ink)))
		reason := field.NewLine(h, "ask.reason", 0)
		return behind, func(on fyne.Canvas) {
			h.Ask(on, field.Question{Name: "ask", Title: "Keep 28 kg?", Sentence: "It is outside 20 to 250 kg. It can be kept with a reason, which stands in the history.",
				Content: look.Columns(12, []look.Track{look.Fixed(90), look.Share(1)}, look.NewLabel("Reason", look.Body, look.Ink2), reason),
				Actions: []field.Action{{Name: "no", Text: "Correct it"}, {Name: "yes", Text: "Save with this reason", Kind: field.Primary}}})
		}
	})
}

func TestPictureStrip(t *testing.T) {
	shootWindow(t, "strip", 560, 80, func(h *field.Host) (fyne.CanvasObject, func(fyne.Canvas)) {
		s := field.NewStrip(h, "strip")
		return look.VBox(0, s), func(fyne.Canvas) { s.SayUndo("Bottle 3 deleted.", nil) }
	})
}

func TestPictureRail(t *testing.T) {
	shoot(t, "rail", 330, 260, func(h *field.Host) fyne.CanvasObject {
		rail := func() *field.Rail {
			return field.NewRail(h, "rail", []field.Tab{{Key: "a", Text: "Athletes"}, {Key: "d", Text: "Test day"}, {Key: "t", Text: "Trips"}})
		}
		return look.Columns(12, nil, rail(), focused(rail()))
	})
}

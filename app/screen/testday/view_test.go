package testday

import (
	"bytes"
	"context"
	"flag"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"fyne.io/fyne/v2"

	"ebbwell/app/apptest"
	"ebbwell/app/kit/desk"
	"ebbwell/app/kit/look/golden"
	"ebbwell/internal/quantity"
	"ebbwell/internal/record"
	"ebbwell/internal/store"
)

var update = flag.Bool("update", false, "keep new golden pictures")

// open opens the day in a window.
func open(t *testing.T, d *desk.Desk) (*View, fyne.Window) {
	t.Helper()
	v, err := New(d)
	if err != nil {
		t.Fatal(err)
	}
	return v, apptest.Window(t, v.Body(), 1000, 704, false, 100)
}

func TestUnfinishedSheetsOpen(t *testing.T) {
	d, went := apptest.Demo(t)
	v, w := open(t, d)
	if len(v.state.Sheets) != 2 {
		t.Fatalf("%d sheets", len(v.state.Sheets))
	}
	apptest.Click(t, w, "testday.sheet.1.open")
	apptest.Click(t, w, "testday.sheet.2.open")
	for i, s := range v.state.Sheets {
		if p := (*went)[i]; p.Screen != desk.Tests || p.Athlete != s.Athlete || p.Record != s.ID {
			t.Errorf("sheet %d opens %+v", i+1, p)
		}
	}
	if text := v.lacks(v.state.Sheets[0]); !strings.Contains(text, d.Words.Say("missing.mass-after")) {
		t.Errorf("the sheet of the day misses %q", text)
	}
	if text := v.lacks(v.state.Sheets[1]); !strings.Contains(text, "laboratory") {
		t.Errorf("the sheet at the laboratory misses %q", text)
	}
}

// A gain in mass is the first row, with this athlete's own conditions and the
// practice's emergency number; where mass is hidden no kilogram is told.
func TestGainNamesTheAthletesConditionsAndTheNumber(t *testing.T) {
	for _, hidden := range []bool{false, true} {
		d, _ := apptest.Demo(t)
		a := apptest.AthleteNamed(t, d, "Ravka")
		a.MassHidden, a.MassHiddenSettled = hidden, true
		a.Flags = append(a.Flags, record.Flag{Meta: record.Meta{ID: record.NewID()}, AthleteID: a.ID, Kind: record.FlagHyponatraemia})
		if _, err := d.Store.SaveAthlete(context.Background(), a, store.Edit{}); err != nil {
			t.Fatal(err)
		}
		id := record.NewID()
		weighed := func(m record.Moment, kg float64) record.Weighing {
			return record.Weighing{Meta: record.Meta{ID: record.NewID()}, TestID: id, Moment: m, Mass: record.Num(kg, quantity.Kilogram)}
		}
		gained := record.Test{
			Meta: record.Meta{ID: id}, AthleteID: a.ID, State: record.TestOpen,
			Session:   record.Session{Date: "2026-05-10", Sport: "field-hockey", Start: "14:00", End: "15:35"},
			Scale:     record.Scale{Step: record.Num(0.05, quantity.Kilogram)},
			Weighings: []record.Weighing{weighed(record.Before, 64), weighed(record.After, 64.6)},
		}
		if _, err := d.Store.SaveTest(context.Background(), gained, store.Edit{}); err != nil {
			t.Fatal(err)
		}
		v, w := open(t, d)
		if first := v.state.Sheets[0]; first.ID != id || !first.Gained || first.Hidden != hidden {
			t.Fatalf("the first row is %+v", first)
		}
		text := strings.Join(apptest.Texts(w.Content()), " ")
		for _, want := range []string{"Red flag", d.Words.Say("flag.past-hyponatraemia.name"), d.Practice().Emergency} {
			if want == "" || !strings.Contains(text, want) {
				t.Errorf("hidden %v: %q is not said in %s", hidden, want, text)
			}
		}
		if kilograms := strings.Contains(text, "0.60\u00a0kg"); kilograms == hidden {
			t.Errorf("hidden %v, and kilograms are told: %v", hidden, kilograms)
		}
	}
}

func TestStartByTyping(t *testing.T) {
	d, went := apptest.Demo(t)
	v, w := open(t, d)
	if !v.start.begin.Disabled() {
		t.Error("a sheet can be started for nobody")
	}
	apptest.Type(t, w, "testday.search", "kest")
	apptest.Press(w, fyne.KeyReturn)
	if !apptest.Has(w, "testday.goon") || v.start.chosen.Name != "Kester Undermill" {
		t.Fatalf("chosen %q", v.start.chosen.Name)
	}
	apptest.Click(t, w, "testday.goon")
	apptest.Click(t, w, "testday.begin")
	kester := apptest.AthleteNamed(t, d, "Kester").ID
	if (*went)[0].Record != v.state.Sheets[0].ID || !(*went)[1].New || (*went)[1].Athlete != kester || (*went)[1].Screen != desk.Tests {
		t.Errorf("went %+v", *went)
	}
	apptest.Type(t, w, "testday.search", "kestx")
	if !v.start.begin.Disabled() || apptest.Has(w, "testday.goon") {
		t.Error("a name that is nobody's starts a sheet")
	}
}

// A minor's sheet does not begin before guardian, assent and hidden mass are
// settled.
func TestMinorWaits(t *testing.T) {
	d, went := apptest.Desk(t)
	minor := apptest.Athlete(t, d)
	minor.Meta, minor.Name, minor.Born = record.Meta{ID: record.NewID()}, "Tamsin Lowmere", "2011-03-04"
	if _, err := d.Store.SaveAthlete(context.Background(), minor, store.Edit{}); err != nil {
		t.Fatal(err)
	}
	v, w := open(t, d)
	apptest.Type(t, w, "testday.search", "tamsin")
	apptest.Press(w, fyne.KeyReturn)
	if title, _ := v.start.caution.Text(); title == "" {
		t.Error("it is not said what comes first")
	}
	apptest.Click(t, w, "testday.begin")
	if len(*went) != 1 || (*went)[0].Screen != desk.Profile || (*went)[0].New {
		t.Errorf("went %+v", *went)
	}
}

// Whether an athlete without a birth date is a minor nobody knows: no sheet
// begins, and the profile asks for the date.
func TestNoBirthDateIsSaid(t *testing.T) {
	d, went := apptest.Desk(t)
	a := apptest.Athlete(t, d)
	a.Meta, a.Name, a.Born = record.Meta{ID: record.NewID()}, "Tamsin Lowmere", ""
	if _, err := d.Store.SaveAthlete(context.Background(), a, store.Edit{}); err != nil {
		t.Fatal(err)
	}
	v, w := open(t, d)
	for name, said := range map[string]bool{"tamsin": true, "ravka": false} {
		apptest.Type(t, w, "testday.search", name)
		apptest.Press(w, fyne.KeyReturn)
		if title, text := v.start.caution.Text(); strings.Contains(title, "Date of birth missing") != said || strings.Contains(text, "may be under 18") != said {
			t.Errorf("%s: said %q, %q", name, title, text)
		}
		apptest.Click(t, w, "testday.begin")
		if last := (*went)[len(*went)-1]; (last.Screen == desk.Profile && last.Part == partMinor) != said || last.New == said {
			t.Errorf("%s: went to %+v", name, last)
		}
	}
}

func TestBlankSheetsOfSeveral(t *testing.T) {
	home := t.TempDir()
	t.Setenv("HOME", home)
	d, _ := apptest.Demo(t)
	said := ""
	d.Say = func(sentence, _ string, _ func()) { said = sentence }
	v, w := open(t, d)
	v.Print()
	if said == "" {
		t.Error("nobody is marked, and nothing is said")
	}
	apptest.Click(t, w, "testday.blank.2")
	apptest.Click(t, w, "testday.blank.5")
	apptest.Click(t, w, "testday.nameless")
	if got := apptest.Text(t, w, "testday.print"); got != "Print 3 sheets" {
		t.Errorf("the button says %q", got)
	}
	sheets, err := v.print.sheets()
	if err != nil || len(sheets) != 3 || sheets[0].Athlete != "Ilse Tarnholme" || sheets[1].Athlete != "Mirel Ashgarth" || !sheets[1].Terms.MassHidden || sheets[2].Athlete != "" {
		t.Fatalf("sheets %+v, %v", sheets, err)
	}
	apptest.Click(t, w, "testday.print")
	path := apptest.Text(t, w, "testday.file.path")
	if filepath.Dir(path) != home {
		t.Errorf("offered %q", path)
	}
	apptest.Click(t, w, "testday.file.yes")
	pdf, err := os.ReadFile(path)
	if err != nil || !bytes.HasPrefix(pdf, []byte("%PDF")) || !strings.Contains(said, path) {
		t.Fatalf("%v, said %q", err, said)
	}
	sum := 0
	for i := range sheets {
		single, err := v.print.document(sheets[i:i+1], false)
		if err != nil {
			t.Fatal(err)
		}
		sum += len(single.Pages)
	}
	if got := pagesOf(pdf); got != sum || sum < 3 {
		t.Errorf("%d pages in the file, %d in its sheets", got, sum)
	}
}

// TestLettersOfAnyTextAreSaid: letters that cannot be printed are said before blank sheets
// are saved, wherever on the page they stand: here in the name of the practice. The letters
// themselves are shown where the screen has a font for them, which it has none of here.
func TestLettersOfAnyTextAreSaid(t *testing.T) {
	for name, want := range map[string]bool{"京都 clinic": true, "Saltmarsh clinic": false} {
		d, _ := apptest.Demo(t)
		p := d.Practice()
		p.Name = name
		if _, err := d.Store.SavePractice(t.Context(), p, store.Edit{}); err != nil {
			t.Fatal(err)
		}
		d.PracticeChanged()
		v, w := open(t, d)
		apptest.Click(t, w, "testday.blank.2")
		v.Print()
		said := strings.Join(apptest.Texts(w.Canvas().Overlays().Top()), " ")
		if got := strings.Contains(said, "Letters that can’t be printed: …, …"); got != want || !apptest.Has(w, "testday.file.path") {
			t.Errorf("%s: said %v: %s", name, got, said)
		}
	}
}

func pagesOf(pdf []byte) int { return bytes.Count(pdf, []byte("/Type /Page\n")) }

func TestGroupsOnPaper(t *testing.T) {
	d, _ := apptest.Demo(t)
	v, w := open(t, d)
	v.print.choose("0")
	if len(v.state.Listed()) != 1 || !apptest.Has(w, "testday.blank.1") || apptest.Has(w, "testday.blank.2") {
		t.Fatalf("listed %+v", v.state.Listed())
	}
	apptest.Click(t, w, "testday.all")
	v.print.choose(everybody)
	if v.state.Pages() != 1 || !apptest.Has(w, "testday.blank.8") {
		t.Errorf("%d pages", v.state.Pages())
	}
	apptest.Click(t, w, "testday.all")
	if v.state.Pages() != 11 {
		t.Errorf("%d pages of eleven", v.state.Pages())
	}
	apptest.Click(t, w, "testday.all")
	if v.state.Pages() != 0 {
		t.Errorf("%d pages of none", v.state.Pages())
	}
}

func TestNobodyYet(t *testing.T) {
	d, went := apptest.Desk(t)
	v, w := open(t, d)
	v.Print()
	apptest.Click(t, w, "testday.first")
	if len(*went) != 1 || !(*went)[0].New || (*went)[0].Screen != desk.Profile {
		t.Errorf("went %+v", *went)
	}
}

func TestClosedFolderIsToldOf(t *testing.T) {
	d, _ := apptest.Desk(t)
	if err := d.Store.Close(); err != nil {
		t.Fatal(err)
	}
	if _, err := New(d); store.CodeOf(err) != store.CodeNotOpen {
		t.Errorf("got %v", err)
	}
}

// crowd adds athletes with long names and sheets with long places.
func crowd(t *testing.T, d *desk.Desk) {
	t.Helper()
	ctx := context.Background()
	for i := range 12 {
		a := record.Athlete{Meta: record.Meta{ID: record.NewID()}, Name: strings.Repeat("Anneliese-Wilhelmina ", 1+i%3) + string(rune('A'+i)), Sport: "netball"}
		if _, err := d.Store.SaveAthlete(ctx, a, store.Edit{}); err != nil {
			t.Fatal(err)
		}
		sheet := record.Test{Meta: record.Meta{ID: record.NewID()}, AthleteID: a.ID, State: record.TestOpen,
			Session: record.Session{Date: "2026-05-17", Place: strings.Repeat("Upper Weirside Community Ground ", 1+i%3)}}
		if _, err := d.Store.SaveTest(ctx, sheet, store.Edit{}); err != nil {
			t.Fatal(err)
		}
	}
}

// album lists the screens that are kept as pictures.
func album() golden.Album {
	return golden.Album{Update: *update, Keep: []string{
		"day-small-light-100",
		"day-chosen-light-100",
	}}
}

func TestPictures(t *testing.T) {
	demo, _ := apptest.Demo(t)
	empty, _ := apptest.Desk(t)
	quiet, _ := apptest.Desk(t)
	apptest.Athlete(t, quiet)
	many, _ := apptest.Demo(t)
	crowd(t, many)
	light, dark, text := golden.Mode{Percent: 100}, golden.Mode{Dark: true, Percent: 100}, golden.Mode{Percent: 150}
	small, large := golden.SmallRoom(), golden.LargeRoom()
	for _, p := range []struct {
		name string
		desk *desk.Desk
		mode golden.Mode
		size fyne.Size
		do   func(w fyne.Window)
	}{
		{"small", demo, light, small, nil}, {"small", demo, dark, small, nil}, {"small", demo, text, small, nil},
		{"large", demo, light, large, nil}, {"large", demo, dark, large, nil},
		{"long", many, light, small, nil}, {"empty", empty, light, small, nil}, {"quiet", quiet, light, small, nil}, {"quiet", quiet, dark, small, nil},
		{"chosen", demo, light, small, func(w fyne.Window) {
			apptest.Type(t, w, "testday.search", "kester")
			apptest.Press(w, fyne.KeyReturn)
			apptest.Leave(w)
			apptest.Click(t, w, "testday.blank.1")
		}},
		{"typing", demo, dark, small, func(w fyne.Window) { apptest.Type(t, w, "testday.search", "tide") }},
	} {
		golden.Use(t, p.mode)
		v, err := New(p.desk)
		if err != nil {
			t.Fatal(err)
		}
		w := golden.Open(t, v.Body(), p.size)
		if p.do != nil {
			p.do(w)
			golden.LayOutAgain(w.Canvas())
		}
		album().Screen(t, "day-"+p.name+"-"+p.mode.String(), w)
	}
}

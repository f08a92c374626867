package shots

import (
	"errors"
	"flag"
	"fmt"
	"io/fs"
	"os"
	"regexp"
	"slices"
	"strings"
	"testing"

	"fyne.io/fyne/v2"

	"ebbwell/app/apptest"
	"ebbwell/app/apptest/inspect"
	"ebbwell/app/kit/look"
	"ebbwell/internal/words"
)

var update = flag.Bool("update", false, "take what no longer occurs off the list of what is known")

// known is the list of what breaks a rule and is known to, in English; it can only
// become shorter. Each other language has one of its own.
const known = "testdata/layout-known.txt"

// knownIn is the list of another language.
func knownIn(tag string) string { return "testdata/layout-known-" + tag + ".txt" }

// layoutSizes are windows: the least, in which a screen is opened, a large screen, and a
// small laptop, to which it is made smaller again.
func layoutSizes() []fyne.Size {
	return []fyne.Size{{Width: 1180, Height: 760}, {Width: 1600, Height: 1000}, {Width: 1366, Height: 768}}
}

// numbers stand for any number in a text, so that the list does not change
// with the invented practice.
func numbers() *regexp.Regexp { return regexp.MustCompile(`[0-9]+([.,][0-9]+)*`) }

// TestLayout holds every screen of the invented practice, light and dark, in
// three sizes of the window and of text, to the rules of the layout. Screens
// are laid out and not painted. Dark, everything lies where it lies light: that is
// compared in the least window, and stands for the others.
func TestLayout(t *testing.T) {
	texts := apptest.Words(t)
	hold(t, layouts(t, texts, modes{dark: []bool{false, true}, percent: []int{100, 125, 150}, sizes: layoutSizes(), states: true}), known)
}

// TestLayoutOfLongWords does so in the least window for English with 40 % more letters,
// light, at 100 % and 125 %.
func TestLayoutOfLongWords(t *testing.T) {
	texts, err := words.Longer()
	if err != nil {
		t.Fatal(err)
	}
	hold(t, layouts(t, texts, least()), knownIn("long"))
}

// TestLayoutOfLanguages does so for every other language that is complete.
func TestLayoutOfLanguages(t *testing.T) {
	for _, tag := range words.Languages()[1:] {
		t.Run(tag.String(), func(t *testing.T) {
			texts, err := words.New(tag)
			if err != nil {
				t.Fatal(err)
			}
			in := least()
			in.states = true
			hold(t, layouts(t, texts, in), knownIn(tag.String()))
		})
	}
}

// modes is how a screen is looked at.
type modes struct {
	dark    []bool
	percent []int
	sizes   []fyne.Size
	// states: the states that the invented practice is without, too.
	states bool
}

// least is the least window, light.
func least() modes {
	return modes{dark: []bool{false}, percent: []int{100, 125}, sizes: layoutSizes()[:1]}
}

// hold holds what was found to a list of what is known.
func hold(t *testing.T, all map[string][]string, known string) {
	t.Helper()
	found := map[string][]string{} // entry: the modes it occurs in
	n := 0
	for mode, findings := range all {
		n++
		for _, f := range findings {
			found[f] = append(found[f], mode)
		}
	}
	listed := readKnown(t, known)
	for entry, modes := range found {
		if !slices.Contains(listed, entry) {
			slices.Sort(modes)
			t.Errorf("%s\n\tin %d layouts: %s", entry, len(modes), strings.Join(modes[:min(len(modes), 3)], ", "))
		}
	}
	var still []string
	for _, entry := range listed {
		if _, occurs := found[entry]; occurs {
			still = append(still, entry)
		} else if !*update {
			t.Errorf("this no longer occurs; take it off %s, or run with -update:\n\t%s", known, entry)
		}
	}
	if *update {
		writeKnown(t, known, still)
	}
	t.Logf("%d layouts; %d known entries", n, len(still))
}

// layouts opens every place in every mode and returns what breaks a rule.
func layouts(t *testing.T, texts *words.Words, in modes) map[string][]string {
	o := openAll(t, texts, true)
	list := o.list
	if !in.states { // made-up words are looked at on the screens alone
		list = slices.DeleteFunc(list, func(s shot) bool { return strings.HasPrefix(s.name, stateNames) })
	}
	all, folder := map[string][]string{}, o.program.Desk().Store.Dir()
	for _, percent := range in.percent {
		light := map[string][]string{} // screen: where everything lies in the first window
		for i, dark := range in.dark {
			sizes := in.sizes
			if i > 0 {
				sizes = in.sizes[:1]
			}
			o.app.Settings().SetTheme(look.NewTheme(dark, percent).Still())
			for _, s := range list {
				o.w.Resize(sizes[0])
				away := s.open(o.program, o.w)
				closed, err := openDialog(o.w, s.name, folder)
				if err != nil {
					t.Fatal(err)
				}
				for at, size := range sizes {
					o.w.Resize(size)
					layOutAgain(o.w)
					mode := fmt.Sprintf("%s %gx%g dark=%v %d%%", s.name, size.Width, size.Height, dark, percent)
					all[mode] = entries(strings.TrimPrefix(s.name, withHelp), inspect.Canvas(o.w.Canvas()))
					if at == 0 && len(in.dark) > 1 {
						samePlaces(t, mode, light, s.name, inspect.Places(o.w.Canvas()))
					}
				}
				closed()
				away()
				s.toggleHelp(o.program)
			}
		}
	}
	return all
}

// samePlaces compares where everything lies with where it lay the first time.
func samePlaces(t *testing.T, mode string, first map[string][]string, screen string, now []string) {
	t.Helper()
	was, seen := first[screen]
	if !seen {
		first[screen] = now
		return
	}
	for i := range max(len(was), len(now)) {
		if i >= len(was) || i >= len(now) || was[i] != now[i] {
			t.Errorf("%s: dark, something lies elsewhere: light %q, dark %q", mode, was[min(i, len(was)):min(i+1, len(was))], now[min(i, len(now)):min(i+1, len(now))])
			return
		}
	}
}

// entries are findings as they stand in the list.
func entries(screen string, findings []inspect.Finding) []string {
	list := []string{}
	for _, f := range findings {
		on := screen
		if f.Kind == inspect.FaintShape {
			on = "any" // it belongs to the widget
		}
		entry := fmt.Sprintf("%s | %s | %s", on, f.Kind, what(f))
		if !slices.Contains(list, entry) {
			list = append(list, entry)
		}
	}
	return list
}

// what is what a finding is known by: nothing that changes with the figures,
// the invented names or the size of the window.
func what(f inspect.Finding) string {
	switch f.Kind {
	case inspect.Shortened, inspect.Wider, inspect.Cut, inspect.Small, inspect.Squeezed:
		return "in " + numbers().ReplaceAllString(f.Of, "#")
	case inspect.FaintShape, inspect.Faint:
		before, _, _ := strings.Cut(f.What, " on ")
		return numbers().ReplaceAllString(before, "#") + " in " + numbers().ReplaceAllString(f.Of, "#")
	}
	return numbers().ReplaceAllString(f.What, "#")
}

// readKnown reads the list; its first line says how many there are.
func readKnown(t *testing.T, known string) []string {
	data, err := os.ReadFile(known)
	if errors.Is(err, fs.ErrNotExist) {
		return nil
	}
	if err != nil {
		t.Fatal(err)
	}
	var list []string
	for line := range strings.Lines(string(data)) {
		if line = strings.TrimSpace(line); line != "" && !strings.HasPrefix(line, "#") {
			list = append(list, line)
		}
	}
	if count := fmt.Sprintf("# %d known", len(list)); !strings.HasPrefix(string(data), count) {
		t.Errorf("%s has %d entries and must begin with %q", known, len(list), count)
	}
	return list
}

// writeKnown writes a list that has become shorter.
func writeKnown(t *testing.T, known string, list []string) {
	slices.Sort(list)
	text := fmt.Sprintf("# %d known breaks of the rules of the layout: screen | rule | what, numbers as #.\n# To be mended: the list only becomes shorter. What no longer occurs is taken off with -update.\n", len(list))
	if err := os.WriteFile(known, []byte(text+strings.Join(append(list, ""), "\n")), 0o644); err != nil {
		t.Fatal(err)
	}
}

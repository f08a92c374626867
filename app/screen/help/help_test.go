package help

import (
	"fmt"
	"go/ast"
	"go/parser"
	"go/token"
	"path/filepath"
	"slices"
	"strconv"
	"strings"
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/test"

	"ebbwell/app/apptest"
	"ebbwell/app/apptest/inspect"
	"ebbwell/app/kit/desk"
	"ebbwell/app/kit/field"
	"ebbwell/app/kit/look"
	"ebbwell/internal/words"
	"ebbwell/internal/words/reading"
)

// named lists the constants of a type in a file of package desk.
func named(t *testing.T, file, of string) []string {
	t.Helper()
	tree, err := parser.ParseFile(token.NewFileSet(), filepath.Join("..", "..", "kit", "desk", file), nil, parser.SkipObjectResolution)
	if err != nil {
		t.Fatal(err)
	}
	var list []string
	ast.Inspect(tree, func(n ast.Node) bool {
		spec, ok := n.(*ast.ValueSpec)
		if !ok || len(spec.Values) != 1 {
			return true
		}
		if name, ok := spec.Type.(*ast.Ident); ok && name.Name == of {
			text, err := strconv.Unquote(spec.Values[0].(*ast.BasicLit).Value)
			if err != nil {
				t.Fatal(err)
			}
			list = append(list, text)
		}
		return true
	})
	if len(list) < 11 {
		t.Fatalf("found only %v", list)
	}
	return list
}

// pages are all pages of help, parts what each has.
func pages(t *testing.T) []desk.HelpPage {
	var list []desk.HelpPage
	for _, page := range named(t, "help.go", "HelpPage") {
		list = append(list, desk.HelpPage(page))
	}
	return list
}

func parts() []string { return []string{"title", "for", "enter", "figures", "keys"} }

// Every screen has a page, and every page all its parts in every language.
func TestEveryScreenHasAPage(t *testing.T) {
	for _, s := range named(t, "desk.go", "Screen") {
		if page := desk.HelpOf(desk.Screen(s)); !slices.Contains(pages(t), page) {
			t.Errorf("screen %q has no page of help", s)
		}
	}
	for _, tag := range words.Languages() {
		w, err := words.New(tag)
		if err != nil {
			t.Fatal(err)
		}
		for _, page := range pages(t) {
			for _, part := range parts() {
				if key := "help." + string(page) + "." + part; !w.Has(key) {
					t.Errorf("%s lacks %s", tag, key)
				}
			}
		}
	}
}

// Every text of help belongs to a page, has its terms before a tab, and no sentence of
// more than 20 words.
func TestTextsOfHelp(t *testing.T) {
	known := []string{"help.enter", "help.figures", "help.keys", "help.keys.everywhere", "help.close"}
	for _, page := range pages(t) {
		for _, part := range parts() {
			known = append(known, "help."+string(page)+"."+part)
		}
	}
	for _, tag := range words.Languages() {
		w, err := words.New(tag)
		if err != nil {
			t.Fatal(err)
		}
		for _, key := range w.Keys() {
			if !strings.HasPrefix(key, "help.") {
				continue
			}
			if !slices.Contains(known, key) {
				t.Errorf("%s belongs to no page", key)
			}
			for _, fault := range faults(key, w.Explain(key)) {
				t.Errorf("%s %s: %s", tag, key, fault)
			}
		}
	}
}

// faults says what is wrong with a text of help.
func faults(key, text string) []string {
	var list []string
	for line := range strings.Lines(text) {
		if n := strings.Count(line, "\t"); n > 1 || n == 0 && strings.HasSuffix(key, ".keys") && key != "help.keys" {
			list = append(list, fmt.Sprintf("%d tabs in %q", n, line))
		}
	}
	for _, s := range reading.Sentences(text) {
		if n := len(reading.Words(s)); n > 20 {
			list = append(list, fmt.Sprintf("%d words: %s", n, s))
		}
	}
	return list
}

// A page shows all its texts, and last the keys that hold everywhere.
func TestPageShowsItsTexts(t *testing.T) {
	test.NewTempApp(t)
	w, err := words.New(words.Languages()[0])
	if err != nil {
		t.Fatal(err)
	}
	for _, page := range pages(t) {
		p := NewPanel(field.NewHost(w), []Key{{"Ctrl+S", "save now"}})
		p.ShowPage(page)
		test.NewTempWindow(t, p).Resize(fyne.NewSize(400, 700))
		texts := strings.Join(apptest.Texts(p), " ")
		for _, part := range parts() {
			for _, piece := range strings.FieldsFunc(w.Explain(fmt.Sprintf("help.%s.%s", page, part)), func(r rune) bool { return r == '\n' || r == '\t' }) {
				if !strings.Contains(texts, piece) {
					t.Errorf("%s does not show %q", page, piece)
				}
			}
		}
		if end := strings.Join(strings.Fields(texts), " "); !strings.HasSuffix(end, "Keys everywhere Ctrl+S save now Close") {
			t.Errorf("%s does not end with the keys that hold everywhere: %s", page, end)
		}
	}
}

// No page breaks a rule of the layout, in any language, size of text or theme.
func TestLayoutOfPages(t *testing.T) {
	a := test.NewTempApp(t)
	texts := []*words.Words{}
	for _, tag := range words.Languages() {
		w, err := words.New(tag)
		if err != nil {
			t.Fatal(err)
		}
		texts = append(texts, w)
	}
	long, err := words.Longer()
	if err != nil {
		t.Fatal(err)
	}
	window := test.NewTempWindow(t, nil)
	window.SetPadded(false)
	window.Resize(fyne.NewSize(1180, 760))
	for _, percent := range []int{100, 125, 150} {
		a.Settings().SetTheme(look.NewTheme(percent == 125, percent).Still())
		for _, w := range append(texts, long) {
			p := NewPanel(field.NewHost(w), []Key{{w.Say("keys.key.enter"), w.Say("keys.enter")}})
			p.OfferTour(func() {})
			window.SetContent(Beside(look.Gap(0, 0), p))
			for _, page := range pages(t) {
				p.ShowPage(page)
				for range 3 {
					window.Content().Refresh()
				}
				for _, f := range inspect.Canvas(window.Canvas()) {
					t.Errorf("%s %d%% %s: %+v", w.Language(), percent, page, f)
				}
			}
		}
	}
}

package planner

import (
	"os"
	"path/filepath"
	"regexp"
	"strings"
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/test"

	"ebbwell/app/apptest"
)

// texts lists every text that is drawn and visible below an object.
func texts(o fyne.CanvasObject) []string {
	if o == nil || !o.Visible() {
		return nil
	}
	var list []string
	switch o := o.(type) {
	case *canvas.Text:
		if o.Text != "" {
			list = append(list, o.Text)
		}
	case *fyne.Container:
		for _, child := range o.Objects {
			list = append(list, texts(child)...)
		}
	case fyne.Widget:
		for _, child := range test.WidgetRenderer(o).Objects() {
			list = append(list, texts(child)...)
		}
	}
	return list
}

// Every text of the screen stands in the catalogue.
func TestTextsAreWorded(t *testing.T) {
	w := apptest.Words(t)
	files, err := filepath.Glob("*/*.go")
	if err != nil {
		t.Fatal(err)
	}
	said := regexp.MustCompile(`(?:say|Say)\("([a-z][a-z0-9.-]+[a-z0-9])"`)
	n := 0
	for _, file := range files {
		if strings.HasSuffix(file, "_test.go") {
			continue
		}
		source, err := os.ReadFile(file)
		if err != nil {
			t.Fatal(err)
		}
		for _, found := range said.FindAllStringSubmatch(string(source), -1) {
			n++
			if !w.Has(found[1]) {
				t.Errorf("%s says %q, which no catalogue has", file, found[1])
			}
		}
	}
	if n < 150 {
		t.Errorf("found only %d texts: this test would mean nothing", n)
	}
	for _, key := range w.Keys() {
		if strings.HasPrefix(key, "planner.") && strings.TrimSpace(w.Say(key, "1", "2", "3")) == "" {
			t.Errorf("%s says nothing", key)
		}
	}
}

// drawn is the set of what is drawn below an object, hidden or not.
func drawn(o fyne.CanvasObject) map[fyne.CanvasObject]bool {
	set := map[fyne.CanvasObject]bool{}
	var walk func(o fyne.CanvasObject)
	walk = func(o fyne.CanvasObject) {
		if o == nil {
			return
		}
		switch o := o.(type) {
		case *fyne.Container:
			for _, child := range o.Objects {
				walk(child)
			}
		case fyne.Widget:
			for _, child := range test.WidgetRenderer(o).Objects() {
				walk(child)
			}
		default:
			set[o] = true
		}
	}
	walk(o)
	return set
}

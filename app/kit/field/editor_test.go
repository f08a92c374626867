package field

import (
	"strings"
	"testing"
	"unicode"
	"unicode/utf8"

	"pgregory.net/rapid"
)

func editorWith(text string) *editor {
	e := &editor{}
	e.set(text)
	return e
}

func TestEditorEdits(t *testing.T) {
	for _, c := range []struct {
		name string
		do   func(*editor)
		want string
	}{
		{"insert behind", func(e *editor) { e.insert("!") }, "fig bar!"},
		{"insert before", func(e *editor) { e.move(0, false); e.insert("a ") }, "a fig bar"},
		{"backspace", func(e *editor) { e.erase(e.left(e.caret)) }, "fig ba"},
		{"delete at the end", func(e *editor) { e.erase(e.right(e.caret)) }, "fig bar"},
		{"delete", func(e *editor) { e.move(0, false); e.erase(e.right(e.caret)) }, "ig bar"},
		{"delete a word", func(e *editor) { e.move(0, false); e.erase(e.wordRight(e.caret)) }, " bar"},
		{"erase a word back", func(e *editor) { e.erase(e.wordLeft(e.caret)) }, "fig "},
		{"replace all", func(e *editor) { e.selectAll(); e.insert("gel") }, "gel"},
		{"replace a word", func(e *editor) { e.selectWord(1); e.insert("oat") }, "oat bar"},
		{"erase a selection", func(e *editor) { e.move(3, false); e.move(0, true); e.erase(0) }, " bar"},
		{"line breaks become spaces", func(e *editor) { e.selectAll(); e.insert("a\r\nb\tc\x00d") }, "a b cd"},
	} {
		e := editorWith("fig bar")
		c.do(e)
		if e.string() != c.want {
			t.Errorf("%s: %q, want %q", c.name, e.string(), c.want)
		}
	}
}

func TestEditorLimit(t *testing.T) {
	e := &editor{most: 5}
	e.insert("abc")
	e.insert("defgh")
	if e.string() != "abcde" {
		t.Errorf("%q is longer than five", e.string())
	}
	e.selectAll()
	e.insert("123456789")
	if e.string() != "12345" {
		t.Errorf("a replacement gave %q", e.string())
	}
}

// Arrows and Backspace treat what looks like one sign as one.
func TestEditorSigns(t *testing.T) {
	for _, sign := range []string{"é", "e\u0301", "👍", "👍🏽", "👩‍⚕️", "🇳🇿"} {
		e := editorWith("a" + sign + "b")
		e.move(1, false)
		e.move(e.right(e.caret), false)
		if got := e.caret - 1; got != utf8.RuneCountInString(sign) {
			t.Errorf("right over %q went over %d runes", sign, got)
		}
		e.erase(e.left(e.caret))
		if e.string() != "ab" {
			t.Errorf("backspace over %q left %q", sign, e.string())
		}
	}
}

func TestEditorWords(t *testing.T) {
	e := editorWith("sports drink, 6.5 %")
	var stops []int
	for at := 0; at < len(e.text); {
		at = e.wordRight(at)
		stops = append(stops, at)
	}
	want := []int{6, 13, 17, 19}
	for i := range want {
		if i >= len(stops) || stops[i] != want[i] {
			t.Fatalf("words end at %v, want %v", stops, want)
		}
	}
	e.selectWord(15)
	if e.selected() != "6.5" {
		t.Errorf("the word is %q", e.selected())
	}
}

// Whatever is done to it, an editor's caret stays inside a text without
// control signs and no longer than allowed.
func TestEditorStaysSound(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		e := &editor{most: rapid.IntRange(0, 20).Draw(t, "most")}
		for range rapid.IntRange(1, 30).Draw(t, "steps") {
			switch rapid.IntRange(0, 8).Draw(t, "what") {
			case 0:
				e.insert(rapid.String().Draw(t, "text"))
			case 1:
				e.erase(e.left(e.caret))
			case 2:
				e.erase(e.right(e.caret))
			case 3:
				e.move(rapid.IntRange(-2, 30).Draw(t, "to"), rapid.Bool().Draw(t, "keep"))
			case 4:
				e.move(e.left(e.caret), true)
			case 5:
				e.move(e.wordRight(e.caret), false)
			case 6:
				e.selectWord(e.caret)
			case 7:
				e.erase(e.wordLeft(e.caret))
			case 8:
				e.set(rapid.StringN(0, 10, -1).Draw(t, "set"))
			}
			sound(t, e)
		}
	})
}

func sound(t interface{ Fatalf(string, ...any) }, e *editor) {
	n := len(e.text)
	if e.caret < 0 || e.caret > n || e.anchor < 0 || e.anchor > n {
		t.Fatalf("caret %d, anchor %d in %d runes", e.caret, e.anchor, n)
	}
	if strings.ContainsFunc(e.string(), unicode.IsControl) || !utf8.ValidString(e.string()) {
		t.Fatalf("text %q", e.string())
	}
}

func FuzzEditor(f *testing.F) {
	f.Add("64,35", "kg", 2)
	f.Add("👩‍⚕️ 🇳🇿", "\x00\n", 1)
	f.Fuzz(func(t *testing.T, text, more string, at int) {
		e := editorWith(text)
		e.move(at, false)
		before := e.string()
		put := oneLine(more)
		if e.insert(more) != (put != "") || len(e.string()) != len(before)+len(put) {
			t.Fatalf("insert %q into %q gave %q", more, before, e.string())
		}
		sound(t, e)
		for i := 0; i < len(e.text); {
			next := e.right(i)
			if next <= i || e.left(next) != i && e.left(next) > i {
				t.Fatalf("from %d right to %d, left to %d in %q", i, next, e.left(next), e.string())
			}
			i = next
		}
	})
}

// A part of the text is the runes between its places, whatever they take in bytes.
func TestSlice(t *testing.T) {
	var e editor
	for _, text := range []string{"", "7", "Müller 12½", "日本語"} {
		e.set(text)
		runes := []rune(text)
		for from := range len(runes) + 1 {
			for to := from; to <= len(runes); to++ {
				if got := e.slice(from, to); got != string(runes[from:to]) {
					t.Errorf("%q from %d to %d is %q", text, from, to, got)
				}
			}
		}
	}
}

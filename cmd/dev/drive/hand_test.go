package drive

import (
	"reflect"
	"strings"
	"testing"
)

func TestLines(t *testing.T) {
	for _, c := range []struct {
		name string
		line []string
		want string
	}{
		{"click", clickLine(point{140, 65}, 1), "mousemove 140 65 click --repeat 1 --delay 60 1"},
		{"double click", clickLine(point{1, 2}, 2), "mousemove 1 2 click --repeat 2 --delay 60 1"},
		{"drag", dragLine(point{1, 5}, []point{{2, 5}, {3, 5}}),
			"mousemove 1 5 sleep 0.05 mousedown 1 sleep 0.02 mousemove 2 5 sleep 0.02 mousemove 3 5 sleep 0.05 mouseup 1"},
		{"keys", keyLine([]string{"ctrl+a", "Tab"}), "key --clearmodifiers --delay 15 ctrl+a Tab"},
	} {
		if got := strings.Join(c.line, " "); got != c.want {
			t.Errorf("%s: got %q, want %q", c.name, got, c.want)
		}
	}
}

func TestTypeLines(t *testing.T) {
	plain := func(s string) []string { return []string{"type", "--clearmodifiers", "--delay", "15", "--", s} }
	rare := func(key string) []string { return []string{"key", "--clearmodifiers", "--delay", "120", key} }
	for text, want := range map[string][][]string{
		"":           nil,
		"72,4":       {plain("72,4")},
		"-1.5":       {plain("-1.5")},  // no flag: it stands after --
		"31 °C":      {plain("31 °C")}, // on the keyboard
		"½ Łód":      {rare("U00BD"), plain(" "), rare("shift+U0141"), plain("ód")},
		"\U0001F9CA": {rare("U1F9CA")},
	} {
		if got := typeLines(text); !reflect.DeepEqual(got, want) {
			t.Errorf("%q: got %v, want %v", text, got, want)
		}
	}
}

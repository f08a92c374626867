package drive

import (
	"fmt"
	"strconv"
	"strings"
	"unicode"
)

// The lines of xdotool: one action each.

// The pause between two keys in milliseconds, and the one for a letter that is
// on no key.
const (
	keyDelay  = "15"
	rareDelay = "120"
)

// clickLine moves to a point and clicks there, twice for a double click.
func clickLine(p point, times int) []string {
	return append(moveLine(p), "click", "--repeat", strconv.Itoa(times), "--delay", "60", "1")
}

// moveLine moves the mouse.
func moveLine(p point) []string {
	return []string{"mousemove", strconv.Itoa(p.x), strconv.Itoa(p.y)}
}

// dragLine presses at the first point, moves through the others and lets go.
func dragLine(from point, way []point) []string {
	line := append(moveLine(from), "sleep", "0.05", "mousedown", "1")
	for _, p := range way {
		line = append(line, "sleep", "0.02")
		line = append(line, moveLine(p)...)
	}
	return append(line, "sleep", "0.05", "mouseup", "1")
}

// layout is the keyboard of the virtual screen: American keys, and on the
// third and fourth level of them the letters of western Europe.
const layout = "eu"

// onKeys are the letters beyond ASCII that the layout has.
const onKeys = "°²³–—…×÷äöüÄÖÜßåÅæÆøØéÉèÈëËïÏñÑçÇàÀáÁíÍóÓúÚùÙýÝ"

// typeLines types a text into whatever has the keyboard. A letter that is on
// no key is pressed by itself: xdotool lends it a spare key for a moment, and
// a program that is busy then may not hear of it. Keep such letters out of
// scripts.
func typeLines(text string) [][]string {
	var lines [][]string
	plain := ""
	flush := func() {
		if plain != "" {
			lines = append(lines, []string{"type", "--clearmodifiers", "--delay", keyDelay, "--", plain})
		}
		plain = ""
	}
	for _, r := range text {
		if r < unicode.MaxASCII || strings.ContainsRune(onKeys, r) {
			plain += string(r)
			continue
		}
		flush()
		key := fmt.Sprintf("U%04X", r)
		if unicode.IsUpper(r) {
			key = "shift+" + key
		}
		lines = append(lines, []string{"key", "--clearmodifiers", "--delay", rareDelay, key})
	}
	flush()
	return lines
}

// keyLine presses keys one after the other: "Tab", "Return", "ctrl+z".
func keyLine(keys []string) []string {
	return append([]string{"key", "--clearmodifiers", "--delay", keyDelay}, keys...)
}

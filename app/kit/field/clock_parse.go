package field

import (
	"fmt"
	"strconv"
	"strings"

	"ebbwell/internal/record"
)

// ReadClock reads a time of day: 9:05, 9.05, 905, 0905, 9, 9:05 pm. An empty
// text is an empty time; what is no time of day is [ErrNotTime].
func ReadClock(text string) (record.Clock, error) {
	text = strings.ToLower(strings.TrimSpace(text))
	if text == "" {
		return "", nil
	}
	text, half := halfDay(text)
	hours, minutes, ok := clockParts(text)
	switch {
	case !ok:
		return "", ErrNotTime
	case half != "" && (hours < 1 || hours > 12):
		return "", ErrNotTime
	case half == "p" && hours < 12:
		hours += 12
	case half == "a" && hours == 12:
		hours = 0
	}
	if hours > 23 || minutes > 59 {
		return "", ErrNotTime
	}
	return record.Clock(fmt.Sprintf("%02d:%02d", hours, minutes)), nil
}

// halfDay cuts off am or pm.
func halfDay(text string) (rest, half string) {
	for _, end := range []string{"am", "a.m.", "pm", "p.m."} {
		if rest, ok := strings.CutSuffix(text, end); ok {
			return strings.TrimSpace(rest), end[:1]
		}
	}
	return text, ""
}

// clockParts reads hours and minutes, with or without a sign between them.
func clockParts(text string) (hours, minutes int, ok bool) {
	parts := strings.FieldsFunc(text, func(r rune) bool { return strings.ContainsRune(":.,h ", r) })
	if len(parts) == 1 && len(parts[0]) > 2 {
		at := len(parts[0]) - 2
		parts = []string{parts[0][:at], parts[0][at:]}
	}
	for i, p := range parts {
		n, err := strconv.Atoi(p)
		if err != nil || len(p) > 2 || n < 0 || p[0] == '+' || i > 1 {
			return 0, 0, false
		}
		if i == 0 {
			hours = n
		} else {
			minutes = n
		}
	}
	return hours, minutes, len(parts) > 0
}

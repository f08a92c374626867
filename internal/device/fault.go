package device

import (
	"fmt"
	"strings"
)

// Code says what is wrong with a file.
type Code string

// What can be wrong.
const (
	// CodeRead: the file could not be read at all.
	CodeRead Code = "read"
	// CodeEmpty: there is nothing in it.
	CodeEmpty Code = "empty"
	// CodeLarge: it is larger than [MostBytes].
	CodeLarge Code = "large"
	// CodeMany: it has more readings than [MostSamples].
	CodeMany Code = "many"
	// CodePacked: it is compressed, and is to be unpacked first.
	CodePacked Code = "packed"
	// CodeUnknown: it is none of the three formats.
	CodeUnknown Code = "unknown"
	// CodeEncoding: its characters are not UTF-8 or Latin 1.
	CodeEncoding Code = "encoding"
	// CodeDoctype: it defines entities of its own.
	CodeDoctype Code = "doctype"
	// CodeDeep: its elements stand too deep in each other.
	CodeDeep Code = "deep"
	// CodeDamaged: it ends too early or contradicts itself.
	CodeDamaged Code = "damaged"
	// CodeValue: a value in it cannot be read.
	CodeValue Code = "value"
	// CodeNothing: it holds no recorded session (a route, a course, settings).
	CodeNothing Code = "nothing"
	// CodeNoTime: it does not say when the session was.
	CodeNoTime Code = "notime"
)

// Error says what is wrong with a file and where.
type Error struct {
	Code   Code
	Format Format
	// Line of XML, or Byte of FIT, from 1; 0 where it is the whole file.
	Line int
	Byte int
	// Name is the element whose value cannot be read, Text what stands there, cut to
	// [mostText] characters.
	Name, Text string
	Err        error
}

// mostText is how much of an unreadable value an error shows.
const mostText = 40

// Error is for the log and for people who work on the program.
func (e *Error) Error() string {
	var b strings.Builder
	fmt.Fprintf(&b, "read a device's file: %s", e.Code)
	if e.Format != "" {
		fmt.Fprintf(&b, " (%s)", e.Format)
	}
	if e.Line > 0 {
		fmt.Fprintf(&b, ", line %d", e.Line)
	}
	if e.Byte > 0 {
		fmt.Fprintf(&b, ", byte %d", e.Byte)
	}
	if e.Name != "" {
		fmt.Fprintf(&b, ", %s %q", e.Name, e.Text)
	}
	if e.Err != nil {
		fmt.Fprintf(&b, ": %v", e.Err)
	}
	return b.String()
}

// Unwrap returns what it came from.
func (e *Error) Unwrap() error { return e.Err }

// shortened cuts a text for an error.
func shortened(text string) string {
	runes := []rune(strings.TrimSpace(text))
	if len(runes) > mostText {
		return string(runes[:mostText-1]) + "…"
	}
	return string(runes)
}

// Package device reads the file of a session as a watch, a bike computer or a
// program for training writes it: FIT, GPX and TCX. Out comes a [Session]: when
// it began and ended, how far it went, what was meant of speed, power, heart rate
// and temperature over it, and where it paused.
//
// It is pure and takes the file as hostile: no more than [MostBytes] are read, no
// more than [MostSamples] readings taken in, XML with a document type or deeper
// than [mostDepth] is refused, and a file that is cut off or damaged gives an
// [Error] that says what is wrong and where, and nothing else.
//
// How the means are made is said at [Session]. The containers are read by code of
// this package: the format FIT needs some two hundred lines for what is asked of
// it here, and the software made for it comes under terms that a program which is
// handed on cannot keep.
package device

import (
	"bytes"
	"io"
	"time"

	"ebbwell/internal/quantity"
)

// Format is how a file is written.
type Format string

// The formats that are read.
const (
	FIT Format = "FIT"
	GPX Format = "GPX"
	TCX Format = "TCX"
)

// The limits to a file.
const (
	// MostBytes is how much of a file is read: about a week of one reading a second.
	MostBytes = 32 << 20
	// MostSamples is how many readings are taken in.
	MostSamples = 250_000
	// mostDepth is how deep elements of XML may stand in each other.
	mostDepth = 32
)

// Sport is what was done, as far as the formats agree on words.
type Sport string

// The sports that decide how a speed or a power is used; others are empty.
const (
	Running Sport = "running"
	Cycling Sport = "cycling"
)

// Mean is the mean of a reading over the session, each reading standing until the
// next one; pauses are left out.
type Mean struct {
	Value float64
	// Samples is how many readings are in it; 0 where there are none and Known says
	// whether the device itself gave the mean.
	Samples int
	Known   bool
}

// Pause is a time within the session in which the device did not count.
type Pause struct{ From, To time.Time }

// Session is what a file says of a session. Times are instants in UTC.
//
// A pause is where a FIT file stops its timer; in a file that does not tell, it is
// a time without a reading longer than [ebbwell/internal/evidence.DevicePauseGap].
// Moving is the time outside pauses at
// [ebbwell/internal/evidence.DeviceMovingSpeed] or faster; the mean speed is the way
// made in that time by that time. Both are common practice and have no source.
type Session struct {
	Format     Format
	Sport      Sport
	Start, End time.Time
	// Distance is the whole way; Known where the file tells it or has positions.
	Distance Way
	// Speed is in km/h over moving time, Power in W, HeartRate in beats a minute.
	Speed, Power, HeartRate Mean
	// Temperature is what the device itself measured, °C: on a wrist or a bike it is
	// warmed by the body and the sun. That is common practice and has no source.
	Temperature Mean
	Moving      time.Duration
	Pauses      []Pause
	// Samples is how many readings there are; Parts how many sessions one after
	// another, as in a triathlon, without the changes from one to the next.
	Samples, Parts int
	// Zone is that of the device's own clock, by its offset from UTC; nil where the file
	// does not tell it.
	Zone *time.Location
}

// Way is a distance that may not be known.
type Way struct {
	Kilometres float64
	Known      bool
}

// Paused is how long the pauses are together.
func (s Session) Paused() quantity.Minutes {
	var sum time.Duration
	for _, p := range s.Pauses {
		sum += p.To.Sub(p.From)
	}
	return quantity.Minutes(sum.Minutes())
}

// Read reads the session in a file. It reads no more than [MostBytes] and one byte.
// Its errors are an [*Error], or what r failed with.
func Read(r io.Reader) (Session, error) {
	data, err := io.ReadAll(io.LimitReader(r, MostBytes+1))
	if err != nil {
		return Session{}, &Error{Code: CodeRead, Err: err}
	}
	if len(data) > MostBytes {
		return Session{}, &Error{Code: CodeLarge}
	}
	return read(data)
}

// read finds out how a file is written and reads it.
func read(data []byte) (Session, error) {
	data = bytes.TrimPrefix(data, []byte("\xef\xbb\xbf"))
	switch {
	case len(bytes.TrimSpace(data)) == 0:
		return Session{}, &Error{Code: CodeEmpty}
	case bytes.HasPrefix(data, []byte{0x1f, 0x8b}), bytes.HasPrefix(data, []byte("PK\x03\x04")):
		return Session{}, &Error{Code: CodePacked}
	case isFIT(data):
		return readFIT(data)
	case bytes.HasPrefix(bytes.TrimSpace(data), []byte("<")):
		return readXML(data)
	}
	return Session{}, &Error{Code: CodeUnknown}
}

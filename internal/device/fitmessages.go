package device

import (
	"math"
	"slices"
	"time"
)

// The messages of FIT that are used, by the numbers the format gives them.
const (
	fitFileID, fitSession, fitRecord, fitEvent, fitWhole = 0, 18, 20, 21, 34
)

// What file of FIT a recorded session is in, the timer's events, the sports.
const (
	fitActivity                       = 4
	fitTimer                          = 0
	fitStart, fitStop, fitStopAll     = 0, 1, 4
	fitStopDisable, fitStopDisableAll = 8, 9
	fitRunning, fitCycling            = 1, 2
	fitTransition                     = 3 // from one sport to the next
)

// Times and angles of FIT.
const (
	// fitEpoch is the end of 1989, in seconds of Unix; a time below fitFirstTime
	// counts from the device's own start.
	fitEpoch      = 631065600
	fitFirstTime  = 1 << 28
	fitSemicircle = 180.0 / (1 << 31)
)

// fitSessionFile gathers what is used of a file.
type fitSessionFile struct {
	recorded
	other   bool // the file is not of a recorded session
	noClock bool // times count from the device's start
	stopped time.Time
	sums    sums
}

// readFIT reads a FIT file.
func readFIT(data []byte) (Session, error) {
	f := &fitSessionFile{recorded: recorded{format: FIT}}
	r := &fitReader{data: data, take: f.take}
	if err := r.all(); err != nil {
		return Session{}, err
	}
	switch {
	case f.other || len(f.samples) == 0 && len(f.spans) == 0 && !f.noClock:
		return Session{}, &Error{Code: CodeNothing, Format: FIT}
	case f.noClock:
		return Session{}, &Error{Code: CodeNoTime, Format: FIT}
	}
	f.summary = f.sums.summary()
	slices.SortFunc(f.pauses, func(a, b Pause) int { return a.From.Compare(b.From) })
	return f.session()
}

// take takes one message in.
func (f *fitSessionFile) take(message uint16, v fitValues) error {
	switch message {
	case fitFileID:
		kind := v.of(0, 1)
		f.other = f.other || kind.known && kind.value != fitActivity
	case fitRecord:
		return f.record(v)
	case fitEvent:
		f.event(v)
	case fitSession:
		f.part(v)
	case fitWhole:
		f.clock(v)
	}
	return nil
}

// instant is the time in a field.
func (f *fitSessionFile) instant(x reading) (t time.Time, ok bool) {
	if !x.known {
		return t, false
	}
	if x.value < fitFirstTime {
		f.noClock = true
		return t, false
	}
	return time.Unix(fitEpoch+int64(x.value), 0).UTC(), true
}

// record is one line of readings.
func (f *fitSessionFile) record(v fitValues) error {
	at, ok := f.instant(v.of(fitTimestamp, 1))
	if !ok {
		return nil
	}
	s := sample{at: at, heart: v.of(3, 1), way: v.of(5, 100), power: v.of(7, 1), temperature: v.of(13, 1), speed: v.of(73, 1000)}
	if !s.speed.known {
		s.speed = v.of(6, 1000)
	}
	if lat, long := v.of(0, 1), v.of(1, 1); lat.known && long.known {
		s.lat, s.long = known(lat.value*fitSemicircle), known(long.value*fitSemicircle)
	}
	return f.add(s)
}

// event is the timer's start or stop.
func (f *fitSessionFile) event(v fitValues) {
	event, kind := v.of(0, 1), v.of(1, 1)
	at, ok := f.instant(v.of(fitTimestamp, 1))
	if !ok || !event.known || event.value != fitTimer || !kind.known {
		return
	}
	switch kind.value {
	case fitStop, fitStopAll, fitStopDisable, fitStopDisableAll:
		f.statesPauses = true
		if f.stopped.IsZero() {
			f.stopped = at
		}
	case fitStart:
		f.statesPauses = true
		if !f.stopped.IsZero() && at.After(f.stopped) {
			f.pauses = append(f.pauses, Pause{f.stopped, at})
		}
		f.stopped = time.Time{}
	}
}

// clock takes how far ahead of UTC the device's own clock was. What is no zone there is
// (from 12 h behind to 14 h ahead, by quarters of an hour) tells nothing.
func (f *fitSessionFile) clock(v fitValues) {
	const quarter, behind, ahead, slack = 15 * 60, -12 * 60 * 60, 14 * 60 * 60, 60
	at, local := v.of(fitTimestamp, 1), v.of(5, 1)
	if !at.known || !local.known || at.value < fitFirstTime || local.value < fitFirstTime {
		return
	}
	by := local.value - at.value
	whole := math.Round(by/quarter) * quarter
	if whole >= behind && whole <= ahead && math.Abs(by-whole) <= slack {
		f.zone = time.FixedZone("", int(whole))
	}
}

// part is one session of the file, as the device sums it up.
func (f *fitSessionFile) part(v fitValues) {
	from, ok := f.instant(v.of(2, 1))
	if !ok {
		return
	}
	sport := v.of(5, 1)
	elapsed, timer := v.of(7, 1000), v.of(8, 1000)
	length := time.Duration(min(longest.Seconds(), elapsed.value) * float64(time.Second))
	f.spans = append(f.spans, Pause{from, from.Add(length)})
	if !sport.known || sport.value != fitTransition {
		f.parts++
		f.named(sport)
	}
	seconds := elapsed.value
	if timer.known {
		seconds = timer.value
	}
	p := summary{way: v.of(9, 100), speed: v.of(124, 1000), heart: v.of(16, 1), power: v.of(20, 1), temperature: v.of(57, 1)}
	if !p.speed.known {
		p.speed = v.of(14, 1000)
	}
	f.sums.add(p, seconds)
}

// named takes the sport of a part; two that differ are neither.
func (f *fitSessionFile) named(code reading) {
	var s Sport
	switch {
	case code.known && code.value == fitRunning:
		s = Running
	case code.known && code.value == fitCycling:
		s = Cycling
	}
	if f.parts > 1 && f.sport != s {
		s = ""
	}
	f.sport = s
}

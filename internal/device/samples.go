package device

import (
	"math"
	"slices"
	"time"

	"ebbwell/internal/evidence"
)

// reading is a number that a sample may lack.
type reading struct {
	value float64
	known bool
}

// known makes a reading.
func known(x float64) reading { return reading{x, true} }

// sample is one line of what a device recorded.
type sample struct {
	at time.Time
	// way is from the start, m; speed m/s; power W; heart beats a minute;
	// temperature °C.
	way, speed, power, heart, temperature reading
	// lat and long are in degrees; both or none.
	lat, long reading
}

// recorded is what a file holds, before anything is worked out.
type recorded struct {
	format  Format
	sport   Sport
	samples []sample
	// pauses are those that the file itself tells; told says that it would.
	pauses       []Pause
	statesPauses bool
	// spans are from where to where the file says a part of the session went.
	spans []Pause
	// summary is what the device worked out by itself.
	summary summary
	parts   int
	// zone is that of the device's clock; nil where the file does not tell it.
	zone *time.Location
}

// summary is what a device worked out by itself: way in m, speed in m/s.
type summary struct{ way, speed, power, heart, temperature reading }

// longest is how long one part of a session may say it was.
const longest = 1000 * time.Hour

// longestFile is from the first to the last time of a file: beyond a year a clock was wrong
// in the midst of it.
const longestFile = 366 * 24 * time.Hour

// sums are the means of the parts of a session in the making, by their length.
type sums struct {
	way                              float64
	wayKnown                         bool
	speed, power, heart, temperature weighted
}

// weighted is a mean over time in the making.
type weighted struct{ sum, seconds float64 }

func (w *weighted) add(x reading, seconds float64) {
	if x.known {
		w.sum, w.seconds = w.sum+x.value*seconds, w.seconds+seconds
	}
}

func (w weighted) mean() reading {
	if w.seconds <= 0 {
		return reading{}
	}
	return known(w.sum / w.seconds)
}

// add takes a part in that took some seconds.
func (s *sums) add(part summary, seconds float64) {
	if part.way.known {
		s.way, s.wayKnown = s.way+part.way.value, true
	}
	s.speed.add(part.speed, seconds)
	s.power.add(part.power, seconds)
	s.heart.add(part.heart, seconds)
	s.temperature.add(part.temperature, seconds)
}

// summary is what the parts come to.
func (s *sums) summary() summary {
	return summary{
		way: reading{s.way, s.wayKnown}, speed: s.speed.mean(), power: s.power.mean(),
		heart: s.heart.mean(), temperature: s.temperature.mean(),
	}
}

// add takes a sample in.
func (r *recorded) add(s sample) error {
	if len(r.samples) >= MostSamples {
		return &Error{Code: CodeMany, Format: r.format}
	}
	r.samples = append(r.samples, s)
	return nil
}

// session works out what was recorded.
func (r *recorded) session() (Session, error) {
	slices.SortStableFunc(r.samples, func(a, b sample) int { return a.at.Compare(b.at) })
	s := Session{Format: r.format, Sport: r.sport, Samples: len(r.samples), Parts: max(1, r.parts), Zone: r.zone}
	s.Start, s.End = r.ends()
	if !s.End.After(s.Start) {
		return Session{}, &Error{Code: CodeNothing, Format: r.format}
	}
	if s.End.Sub(s.Start) > longestFile {
		return Session{}, &Error{Code: CodeDamaged, Format: r.format}
	}
	if !r.statesPauses {
		r.pauses = r.gaps()
	}
	s.Pauses = r.pauses
	track, steps := r.track(), r.steps(r.samples, nil)
	s.Distance = r.distance(track)
	s.Speed, s.Moving = r.speed(track)
	s.Power = r.mean(steps, r.summary.power, func(x sample) reading { return x.power })
	s.HeartRate = r.mean(steps, r.summary.heart, func(x sample) reading { return x.heart })
	s.Temperature = r.mean(steps, r.summary.temperature, func(x sample) reading { return x.temperature })
	return s, nil
}

// ends are the first and the last instant.
func (r *recorded) ends() (from, to time.Time) {
	take := func(a, b time.Time) {
		if from.IsZero() || a.Before(from) {
			from = a
		}
		if b.After(to) {
			to = b
		}
	}
	for _, p := range r.spans {
		take(p.From, p.To)
	}
	if n := len(r.samples); n > 0 {
		take(r.samples[0].at, r.samples[n-1].at)
	}
	return from, to
}

// gaps are the pauses of a file that tells none: times without a reading.
func (r *recorded) gaps() []Pause {
	var list []Pause
	for i := 1; i < len(r.samples); i++ {
		from, to := r.samples[i-1].at, r.samples[i].at
		if to.Sub(from).Seconds() > evidence.DevicePauseGap {
			list = append(list, Pause{from, to})
		}
	}
	return list
}

// step is the time from one sample to the next without the pauses, and the way made
// in it, m.
type step struct {
	seconds, metres float64
	from            int
}

// steps are the times between some samples, without the pauses; way tells what lies
// between two, where it is asked.
func (r *recorded) steps(of []sample, way func(a, b sample, seconds float64) float64) []step {
	var list []step
	first := 0 // the first pause that has not ended before the step
	for i := 1; i < len(of); i++ {
		a, b := of[i-1], of[i]
		for first < len(r.pauses) && !r.pauses[first].To.After(a.at) {
			first++
		}
		seconds := b.at.Sub(a.at).Seconds()
		for _, p := range r.pauses[first:] {
			if !p.From.Before(b.at) {
				break
			}
			seconds -= overlap(p, a.at, b.at)
		}
		if seconds > 0 {
			s := step{seconds: seconds, from: i - 1}
			if way != nil {
				s.metres = way(a, b, seconds)
			}
			list = append(list, s)
		}
	}
	return list
}

// overlap is how many seconds of a pause lie between two instants.
func overlap(p Pause, from, to time.Time) float64 {
	if p.From.After(from) {
		from = p.From
	}
	if p.To.Before(to) {
		to = p.To
	}
	return max(0, to.Sub(from).Seconds())
}

// track is the way as it was made: by the device's own count where at least two
// samples have it, else by positions, else by speed. Samples without it are left
// out: some devices write it to every second one only.
func (r *recorded) track() []step {
	counted := func(a, b sample, _ float64) float64 { return max(0, b.way.value-a.way.value) }
	placed := func(a, b sample, _ float64) float64 {
		return greatCircle(a.lat.value, a.long.value, b.lat.value, b.long.value)
	}
	statesPauses := func(a, _ sample, seconds float64) float64 { return a.speed.value * seconds }
	if list := r.having(func(s sample) bool { return s.way.known }); len(list) > 1 {
		return r.steps(list, counted)
	}
	if list := r.having(func(s sample) bool { return s.lat.known }); len(list) > 1 {
		return r.steps(list, placed)
	}
	return r.steps(r.having(func(s sample) bool { return s.speed.known }), statesPauses)
}

// having are the samples that have something.
func (r *recorded) having(has func(sample) bool) []sample {
	var list []sample
	for _, s := range r.samples {
		if has(s) {
			list = append(list, s)
		}
	}
	return list
}

// greatCircle is the way over the globe between two positions in degrees, m, by the
// haversine formula.
func greatCircle(lat1, long1, lat2, long2 float64) float64 {
	rad := func(deg float64) float64 { return deg * math.Pi / 180 }
	half := func(x float64) float64 { return math.Pow(math.Sin(x/2), 2) }
	h := half(rad(lat2-lat1)) + math.Cos(rad(lat1))*math.Cos(rad(lat2))*half(rad(long2-long1))
	return 2 * evidence.EarthRadius * 1000 * math.Asin(math.Sqrt(min(1, h)))
}

// distance is the whole way: what the device worked out, else the sum.
func (r *recorded) distance(track []step) Way {
	if r.summary.way.known {
		return Way{r.summary.way.value / 1000, true}
	}
	sum := 0.0
	for _, s := range track {
		sum += s.metres
	}
	return Way{sum / 1000, len(track) > 0}
}

// speed is the mean over moving time, and that time. Whether somebody moves is judged
// over spans of some seconds: devices count a way in jumps.
func (r *recorded) speed(track []step) (Mean, time.Duration) {
	way, seconds, n := 0.0, 0.0, 0
	var span step
	steps := 0
	for i, s := range track {
		span.metres, span.seconds, steps = span.metres+s.metres, span.seconds+s.seconds, steps+1
		if span.seconds < evidence.DeviceMovingSpan && i < len(track)-1 {
			continue
		}
		if span.metres/span.seconds >= evidence.DeviceMovingSpeed {
			way, seconds, n = way+span.metres, seconds+span.seconds, n+steps
		}
		span, steps = step{}, 0
	}
	switch {
	case n > 0:
		return Mean{Value: kilometresPerHour(way / seconds), Samples: n, Known: true}, time.Duration(seconds * float64(time.Second))
	case r.summary.speed.known && len(track) == 0:
		return Mean{Value: kilometresPerHour(r.summary.speed.value), Known: true}, 0
	}
	return Mean{}, 0
}

// kilometresPerHour turns a speed in m/s into km/h.
func kilometresPerHour(v float64) float64 { return v * 60 * 60 / 1000 }

// mean is that of one reading over time; own is what the device worked out, which
// stands where nothing was recorded.
func (r *recorded) mean(steps []step, own reading, of func(sample) reading) Mean {
	sum, seconds, n := 0.0, 0.0, 0
	for _, s := range steps {
		if x := of(r.samples[s.from]); x.known {
			sum, seconds, n = sum+x.value*s.seconds, seconds+s.seconds, n+1
		}
	}
	switch {
	case n > 0:
		return Mean{Value: sum / seconds, Samples: n, Known: true}
	case own.known:
		return Mean{Value: own.value, Known: true}
	}
	return Mean{}
}

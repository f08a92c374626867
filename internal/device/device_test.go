package device

import (
	"math"
	"os"
	"testing"
	"time"

	"pgregory.net/rapid"

	"ebbwell/internal/evidence"
	"ebbwell/internal/published"
)

// near reports whether two numbers agree to a share.
func near(a, b, share float64) bool { return math.Abs(a-b) <= share*max(1, math.Abs(b)) }

// The two files were written by an encoder that has nothing to do with the reader
// here (github.com/muktihari/fit v0.26.1), one with the bytes the other way round and
// short times: 40 min at 3 m/s, 150 beats, 210 W, 24 °C; the timer stopped for 10 min;
// 30 min at 2.5 m/s, 140 beats, 180 W, 27 °C; a reading every 20 s.
func TestReadsWhatAnotherEncoderWrote(t *testing.T) {
	for _, name := range []string{"run.fit", "run-big-endian.fit"} {
		f, err := os.Open("testdata/" + name)
		if err != nil {
			t.Fatal(err)
		}
		s, err := Read(f)
		if err := f.Close(); err != nil {
			t.Fatal(err)
		}
		if err != nil {
			t.Fatalf("%s: %v", name, err)
		}
		if s.Format != FIT || s.Sport != Running || s.Parts != 1 || s.Samples != 212 {
			t.Errorf("%s: %s, %s, %d parts, %d readings", name, s.Format, s.Sport, s.Parts, s.Samples)
		}
		if !s.Start.Equal(began()) || !s.End.Equal(began().Add(80*time.Minute)) {
			t.Errorf("%s: %s to %s", name, s.Start, s.End)
		}
		if len(s.Pauses) != 1 || s.Paused() != 10 || s.Moving != 70*time.Minute {
			t.Errorf("%s: pauses %v, moving %s", name, s.Pauses, s.Moving)
		}
		for what, c := range map[string]struct{ got, want float64 }{
			"way": {s.Distance.Kilometres, 11.7}, "speed": {s.Speed.Value, 11.7 / (70.0 / 60)},
			"heart": {s.HeartRate.Value, (40*150.0 + 30*140) / 70}, "power": {s.Power.Value, (40*210.0 + 30*180) / 70},
			"temperature": {s.Temperature.Value, (40*24.0 + 30*27) / 70}, "of": {float64(s.Temperature.Samples), 210},
		} {
			if !near(c.got, c.want, 1e-9) {
				t.Errorf("%s: %s is %g, want %g", name, what, c.got, c.want)
			}
		}
	}
}

// One session reads the same whatever it was written as.
func TestThreeFormatsAgree(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		every := time.Duration(rapid.IntRange(1, 20).Draw(t, "every")) * time.Second
		n := rapid.IntRange(30, 200).Draw(t, "n")
		lines := steady(n, every, rapid.Float64Range(1, 6).Draw(t, "pace")*every.Seconds())
		heart, watts := 0.0, 0.0
		for i := range lines {
			lines[i].way = math.Round(lines[i].way*100) / 100
			lines[i].heart = float64(rapid.IntRange(60, 200).Draw(t, "heart"))
			lines[i].power = float64(rapid.IntRange(0, 400).Draw(t, "power"))
			if i < n-1 { // the last stands for no time
				heart, watts = heart+lines[i].heart/float64(n-1), watts+lines[i].power/float64(n-1)
			}
		}
		length := lines[n-1].after
		for format, data := range map[Format][]byte{FIT: asFIT(lines), GPX: asGPX(lines), TCX: asTCX(lines)} {
			s, err := read(data)
			if err != nil {
				t.Fatalf("%s: %v", format, err)
			}
			pace := lines[n-1].way / length.Seconds() * 3.6
			if s.Format != format || !s.Start.Equal(began()) || s.End.Sub(s.Start) != length || len(s.Pauses) != 0 {
				t.Fatalf("%s: %+v", format, s)
			}
			if !near(s.Speed.Value, pace, 1e-4) || !near(s.Distance.Kilometres, lines[n-1].way/1000, 1e-4) {
				t.Fatalf("%s: %g km/h, %g km, want %g, %g", format, s.Speed.Value, s.Distance.Kilometres, pace, lines[n-1].way/1000)
			}
			if !near(s.HeartRate.Value, heart, 1e-9) || !near(s.Power.Value, watts, 1e-9) {
				t.Fatalf("%s: %g beats, %g W, want %g, %g", format, s.HeartRate.Value, s.Power.Value, heart, watts)
			}
			if s.Temperature.Known == (format == TCX) { // it has no place for one
				t.Fatalf("%s: temperature %+v", format, s.Temperature)
			}
		}
	})
}

// Standing still is not moving: it counts to no speed, and to the power and heart rate.
func TestSpeedIsOverMovingTime(t *testing.T) {
	lines := steady(61, 10*time.Second, 30) // 10 min at 3 m/s
	last := lines[60]
	for i := range 30 { // 5 min standing
		lines = append(lines, line{after: last.after + time.Duration(i+1)*10*time.Second, way: last.way, heart: 100, power: 0, warm: 25})
	}
	for _, data := range [][]byte{asFIT(lines), asGPX(lines), asTCX(lines)} {
		s, err := read(data)
		if err != nil {
			t.Fatal(err)
		}
		if !near(s.Speed.Value, 10.8, 1e-4) || s.Moving != 10*time.Minute {
			t.Errorf("%s: %g km/h in %s", s.Format, s.Speed.Value, s.Moving)
		}
		if want := (61*150.0 + 29*100) / 90; !near(s.HeartRate.Value, want, 1e-9) {
			t.Errorf("%s: %g beats, want %g", s.Format, s.HeartRate.Value, want)
		}
		if want := 61 * 200.0 / 90; !near(s.Power.Value, want, 1e-9) {
			t.Errorf("%s: %g W, want %g", s.Format, s.Power.Value, want)
		}
	}
}

// A device that counts its way in jumps, to every second reading only, is moving all
// the time.
func TestWayInJumps(t *testing.T) {
	lines := steady(601, time.Second, 5)
	for i := range lines {
		if i%2 == 1 {
			lines[i].way = lines[i-1].way
		}
	}
	s, err := read(asFIT(lines))
	if err != nil || !near(s.Speed.Value, 18, 1e-3) || s.Moving != 10*time.Minute {
		t.Errorf("%g km/h in %s (%v), want 18 in 10 min", s.Speed.Value, s.Moving, err)
	}
}

// A pause is what the timer says, or else a time without a reading.
func TestPauses(t *testing.T) {
	minute := func(m int) time.Time { return began().Add(time.Duration(m) * time.Minute) }
	lines := steady(31, time.Minute, 180)
	statesPauses := []Pause{{minute(10), minute(15)}}
	s, err := read(asFIT(lines, statesPauses...))
	if err != nil || len(s.Pauses) != 1 || s.Pauses[0] != statesPauses[0] || s.Paused() != 5 {
		t.Errorf("told: %v, %v", s.Pauses, err)
	}
	gap := append(steady(60, 10*time.Second, 30), line{after: 30 * time.Minute, way: 1770, heart: 150}, line{after: 31 * time.Minute, way: 1950, heart: 150})
	for _, data := range [][]byte{asGPX(gap), asTCX(gap)} {
		s, err := read(data)
		want := []Pause{{began().Add(590 * time.Second), minute(30)}, {minute(30), minute(31)}}
		if err != nil || len(s.Pauses) != 2 || s.Pauses[0] != want[0] || s.Pauses[1] != want[1] {
			t.Errorf("%s: %v, %v", s.Format, s.Pauses, err)
		}
		if !near(s.Speed.Value, 10.8, 1e-4) {
			t.Errorf("%s: %g km/h with what was made in a pause", s.Format, s.Speed.Value)
		}
	}
	// a reading just within the gap is none
	within := steady(60, time.Duration(evidence.DevicePauseGap)*time.Second, 90)
	if s, err := read(asGPX(within)); err != nil || len(s.Pauses) != 0 {
		t.Errorf("readings every %g s: %v, %v", evidence.DevicePauseGap, s.Pauses, err)
	}
}

// A device that keeps only its own sums is read by them.
func TestOnlySums(t *testing.T) {
	f := newFIT()
	f.def(0, fitSession, [3]byte{fitTimestamp, 4, 0x86}, [3]byte{2, 4, 0x86}, [3]byte{5, 1, 0}, [3]byte{7, 4, 0x86},
		[3]byte{8, 4, 0x86}, [3]byte{9, 4, 0x86}, [3]byte{14, 2, 0x84}, [3]byte{16, 1, 2}, [3]byte{20, 2, 0x84}, [3]byte{57, 1, 1})
	for i, heart := range []byte{140, 160} {
		at := began().Add(time.Duration(i) * time.Hour)
		f.data(0, fitAt(at), fitAt(at), byte(fitCycling), uint32(3_600_000), uint32(3_600_000), uint32(3_000_000), uint16(8333), heart, uint16(0xffff), int8(-5))
	}
	s, err := read(f.bytes())
	if err != nil || s.Parts != 2 || s.Sport != Cycling || s.End.Sub(s.Start) != 2*time.Hour {
		t.Fatalf("%+v, %v", s, err)
	}
	if s.HeartRate != (Mean{150, 0, true}) || s.Power.Known || s.Temperature != (Mean{-5, 0, true}) || !near(s.Speed.Value, 30, 1e-3) || s.Distance.Kilometres != 60 {
		t.Errorf("%+v", s)
	}
	tcx := `<TrainingCenterDatabase><Activities><Activity Sport="Biking"><Lap StartTime="2026-05-10T15:00:00Z"><TotalTimeSeconds>1800</TotalTimeSeconds>
<DistanceMeters>15000</DistanceMeters><AverageHeartRateBpm><Value>130</Value></AverageHeartRateBpm><MaximumHeartRateBpm><Value>190</Value></MaximumHeartRateBpm></Lap></Activity></Activities></TrainingCenterDatabase>`
	s, err = read([]byte(tcx))
	if err != nil || s.Sport != Cycling || s.End.Sub(s.Start) != 30*time.Minute || s.HeartRate.Value != 130 || s.Distance.Kilometres != 15 {
		t.Errorf("%+v, %v", s, err)
	}
}

// A time with a zone is the same instant; one without is in UTC.
func TestZones(t *testing.T) {
	at := func(text string) time.Time {
		s, err := read([]byte(`<gpx><trk><trkseg><trkpt lat="1" lon="1"><time>` + text + `</time></trkpt>` +
			`<trkpt lat="1" lon="1"><time>2026-12-31T00:00:00Z</time></trkpt></trkseg></trk></gpx>`))
		if err != nil {
			t.Fatal(err)
		}
		return s.Start
	}
	want := time.Date(2026, 3, 29, 0, 30, 0, 0, time.UTC)
	for _, text := range []string{"2026-03-29T00:30:00Z", "2026-03-29T01:30:00+01:00", "2026-03-29T00:30:00.000", "2026-03-28T19:30:00-05:00"} {
		if got := at(text); !got.Equal(want) || got.Location() != time.UTC {
			t.Errorf("%s: %s", text, got)
		}
	}
}

// A triathlon in one file: three sports, and the two changes between them, which are none.
// The power is that of the ride alone.
func TestSeveralSports(t *testing.T) {
	f := newFIT()
	f.def(0, fitRecord, [3]byte{fitTimestamp, 4, 0x86}, [3]byte{3, 1, 0x02}, [3]byte{7, 2, 0x84})
	f.def(1, fitEvent, [3]byte{fitTimestamp, 4, 0x86}, [3]byte{0, 1, 0}, [3]byte{1, 1, 0})
	f.def(2, fitSession, [3]byte{fitTimestamp, 4, 0x86}, [3]byte{2, 4, 0x86}, [3]byte{5, 1, 0}, [3]byte{7, 4, 0x86}, [3]byte{8, 4, 0x86})
	at := began()
	for _, leg := range []struct {
		sport, heart byte
		power        uint16
		minutes      int
	}{{5, 140, 0xffff, 20}, {fitTransition, 150, 0xffff, 2}, {fitCycling, 145, 220, 60}, {fitTransition, 150, 0xffff, 1}, {fitRunning, 160, 0xffff, 30}} {
		end := at.Add(time.Duration(leg.minutes) * time.Minute)
		f.data(1, fitAt(at), byte(fitTimer), byte(fitStart))
		for m := range leg.minutes {
			f.data(0, fitAt(at.Add(time.Duration(m)*time.Minute)), leg.heart, leg.power)
		}
		f.data(1, fitAt(end), byte(fitTimer), byte(fitStopAll))
		length := uint32(leg.minutes * 60_000)
		f.data(2, fitAt(end), fitAt(at), leg.sport, length, length)
		at = end
	}
	s, err := read(f.bytes())
	if err != nil || s.Parts != 3 || s.Sport != "" || s.Paused() != 0 || s.End.Sub(s.Start) != 113*time.Minute {
		t.Fatalf("%d parts of %q, %s to %s, pauses %v, %v", s.Parts, s.Sport, s.Start, s.End, s.Pauses, err)
	}
	if s.Power != (Mean{220, 60, true}) {
		t.Errorf("power %+v", s.Power)
	}
	tcx := `<TrainingCenterDatabase><Activities><MultiSportSession><Id>2026-05-10T15:00:00Z</Id>
<FirstSport><Activity Sport="Biking"><Lap StartTime="2026-05-10T15:00:00Z"><TotalTimeSeconds>3600</TotalTimeSeconds></Lap></Activity></FirstSport>
<NextSport><Transition StartTime="2026-05-10T16:00:00Z"><TotalTimeSeconds>120</TotalTimeSeconds></Transition>
<Activity Sport="Running"><Lap StartTime="2026-05-10T16:02:00Z"><TotalTimeSeconds>1800</TotalTimeSeconds></Lap></Activity></NextSport></MultiSportSession></Activities></TrainingCenterDatabase>`
	s, err = read([]byte(tcx))
	if err != nil || s.Parts != 2 || s.Sport != "" || s.End.Sub(s.Start) != 92*time.Minute {
		t.Errorf("TCX: %+v, %v", s, err)
	}
}

// The zone of the device's own clock: FIT tells it beside its last time, the others by an
// offset; what is no zone there is tells nothing.
func TestZoneOfTheDevice(t *testing.T) {
	for name, c := range map[string]struct {
		ahead time.Duration
		known bool
	}{
		"Berlin in summer": {2 * time.Hour, true}, "UTC": {0, true}, "behind": {-7 * time.Hour, true}, "by quarters": {5*time.Hour + 45*time.Minute, true},
		"a clock that lags": {2*time.Hour - 20*time.Second, true}, "no zone": {2*time.Hour + 7*time.Minute, false}, "a day": {24 * time.Hour, false}, "too far behind": {-13 * time.Hour, false},
	} {
		f := newFIT()
		f.def(0, fitRecord, [3]byte{fitTimestamp, 4, 0x86}, [3]byte{3, 1, 0x02})
		f.data(0, fitAt(began()), byte(120))
		f.data(0, fitAt(began().Add(time.Second)), byte(120))
		f.def(1, fitWhole, [3]byte{fitTimestamp, 4, 0x86}, [3]byte{5, 4, 0x86})
		f.data(1, fitAt(began()), fitAt(began().Add(c.ahead)))
		s, err := read(f.bytes())
		if err != nil || (s.Zone != nil) != c.known {
			t.Errorf("%s: %v, %v", name, s.Zone, err)
			continue
		}
		if c.known {
			_, seconds := began().In(s.Zone).Zone()
			if want := c.ahead.Round(15 * time.Minute); time.Duration(seconds)*time.Second != want {
				t.Errorf("%s: %d s ahead, want %s", name, seconds, want)
			}
		}
	}
	for text, want := range map[string]int{"2026-03-29T01:30:00+01:00": 3600, "2026-03-28T19:30:00-05:00": -5 * 3600, "2026-03-29T00:30:00Z": 0, "2026-03-29T00:30:00": 0} {
		s, err := read([]byte(`<gpx><trk><trkseg><trkpt lat="1" lon="1"><time>` + text + `</time></trkpt><trkpt lat="1" lon="1"><time>2026-12-31T00:00:00Z</time></trkpt></trkseg></trk></gpx>`))
		if err != nil || (s.Zone != nil) != (want != 0) {
			t.Errorf("%s: %v, %v", text, s.Zone, err)
			continue
		}
		if want != 0 {
			if _, ahead := s.Start.In(s.Zone).Zone(); ahead != want {
				t.Errorf("%s: %d s ahead, want %d", text, ahead, want)
			}
		}
	}
}

func TestPublished(t *testing.T) {
	published.Walk(t, "device", map[string]published.Model{
		"way along a meridian": func(in published.In) any {
			return greatCircle(0, 0, in.Number("degrees"), 0) / 1000
		},
		"way along the equator": func(in published.In) any {
			return greatCircle(0, 10, 0, 10+in.Number("degrees")) / 1000
		},
	})
}

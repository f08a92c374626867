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

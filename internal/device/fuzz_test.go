package device

import (
	"encoding/binary"
	"errors"
	"math"
	"os"
	"testing"
	"time"
)

// holds fails where what came out of a file contradicts itself.
func holds(t *testing.T, data []byte) {
	t.Helper()
	s, err := read(data)
	if err != nil {
		var e *Error
		if !errors.As(err, &e) || e.Code == "" || len([]rune(e.Text)) > mostText {
			t.Fatalf("%#v", err)
		}
		return
	}
	if !s.End.After(s.Start) || s.Paused() < 0 || s.Moving < 0 || s.Moving > s.End.Sub(s.Start)+time.Second {
		t.Fatalf("%s to %s, paused %g min, moving %s", s.Start, s.End, s.Paused(), s.Moving)
	}
	for _, m := range []Mean{s.Speed, s.Power, s.HeartRate, s.Temperature, {Value: s.Distance.Kilometres}} {
		if math.IsNaN(m.Value) || !m.Known && m.Samples > 0 {
			t.Fatalf("%+v", s)
		}
	}
}

func FuzzFIT(f *testing.F) {
	for _, name := range []string{"run.fit", "run-big-endian.fit"} {
		data, err := os.ReadFile("testdata/" + name)
		if err != nil {
			f.Fatal(err)
		}
		f.Add(data[:fitHeadLong+200])
	}
	f.Add(asFIT(steady(5, time.Second, 3), Pause{began().Add(time.Second), began().Add(2 * time.Second)}))
	f.Fuzz(func(t *testing.T, data []byte) {
		holds(t, data)
		if len(data) < fitHead { // the messages are reached with a head and a checksum that fit
			return
		}
		out := binary.LittleEndian.AppendUint32([]byte{fitHead, 0x20, 0, 0}, uint32(len(data)))
		out = append(append(out, ".FIT"...), data...)
		holds(t, binary.LittleEndian.AppendUint16(out, fitChecksum(out)))
	})
}

func FuzzGPX(f *testing.F) {
	f.Add(asGPX(steady(3, time.Second, 3)))
	f.Add([]byte(gpxOf("<time>2026-05-10T15:00:00Z</time>")))
	f.Fuzz(func(t *testing.T, data []byte) {
		holds(t, data)
		holds(t, append(append([]byte("<gpx><trk><trkseg><trkpt lat='1' lon='1'><time>2026-05-10T15:00:00Z</time>"), data...), "</trkpt></trkseg></trk></gpx>"...))
	})
}

func FuzzTCX(f *testing.F) {
	f.Add(asTCX(steady(3, time.Second, 3)))
	f.Fuzz(func(t *testing.T, data []byte) {
		holds(t, data)
		holds(t, append(append([]byte("<TrainingCenterDatabase><Activities><Activity><Lap StartTime='2026-05-10T15:00:00Z'>"), data...), "</Lap></Activity></Activities></TrainingCenterDatabase>"...))
	})
}

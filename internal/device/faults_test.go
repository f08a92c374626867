package device

import (
	"encoding/binary"
	"errors"
	"io"
	"os"
	"path/filepath"
	"strings"
	"testing"
	"time"
)

// gpxOf is a small document with something in its one point.
func gpxOf(inner string) string {
	return "<?xml version=\"1.0\"?>\n<gpx><trk><trkseg>\n<trkpt lat=\"1\" lon=\"2\">" + inner + "</trkpt>\n</trkseg></trk></gpx>"
}

// fault is a file and what is wrong with it.
type fault struct {
	data string
	want Error
}

// hold reads each file and looks whether what is wrong is named, with the place.
func hold(t *testing.T, faults map[string]fault) {
	t.Helper()
	for name, c := range faults {
		_, err := Read(strings.NewReader(c.data))
		var got *Error
		if !errors.As(err, &got) {
			t.Errorf("%s: %v", name, err)
			continue
		}
		found := *got
		found.Err = nil
		if found != c.want {
			t.Errorf("%s: %+v, want %+v", name, found, c.want)
		}
		if !strings.Contains(err.Error(), string(c.want.Code)) {
			t.Errorf("%s: %s", name, err)
		}
	}
}

func TestFaultsOfXML(t *testing.T) {
	const at = "<time>2026-05-10T15:00:00Z</time>"
	bomb := `<?xml version="1.0"?><!DOCTYPE gpx [<!ENTITY a "aaaaaaaaaa"><!ENTITY b "&a;&a;&a;&a;&a;&a;&a;&a;&a;&a;">]><gpx><trk><name>&b;</name></trk></gpx>`
	hold(t, map[string]fault{
		"nothing":       {" \n", Error{Code: CodeEmpty}},
		"a table":       {"date;minutes\n1;2\n", Error{Code: CodeUnknown}},
		"another XML":   {"<html><body/></html>", Error{Code: CodeUnknown, Line: 1, Name: "html"}},
		"compressed":    {"\x1f\x8b\x08 and so on", Error{Code: CodePacked}},
		"an archive":    {"PK\x03\x04 and so on", Error{Code: CodePacked}},
		"entities":      {bomb, Error{Code: CodeDoctype, Line: 1}},
		"UTF-16":        {"<\x00?\x00x\x00", Error{Code: CodeDamaged, Line: 1}},
		"an encoding":   {`<?xml version="1.0" encoding="EBCDIC-7"?><gpx/>`, Error{Code: CodeEncoding, Line: 1}},
		"not UTF-8":     {"<gpx><trk><name>\xff</name></trk></gpx>", Error{Code: CodeEncoding, Format: GPX, Line: 1}},
		"an entity":     {gpxOf("<time>&x;</time>"), Error{Code: CodeDamaged, Format: GPX, Line: 3}},
		"cut off":       {"<gpx><trk>\n<trkseg>", Error{Code: CodeDamaged, Format: GPX, Line: 2}},
		"crossed":       {"<gpx><trk></gpx></trk>", Error{Code: CodeDamaged, Format: GPX, Line: 1}},
		"two documents": {gpxOf(at) + "<gpx/>", Error{Code: CodeDamaged, Format: GPX, Line: 4}},
		"deep":          {"<gpx>" + strings.Repeat("<a>", mostDepth), Error{Code: CodeDeep, Format: GPX, Line: 1}},
		"a time":        {gpxOf("<time>yesterday at noon, or a little later than that, perhaps</time>"), Error{Code: CodeValue, Format: GPX, Line: 3, Name: "time", Text: "yesterday at noon, or a little later th…"}},
		"a number":      {gpxOf(at + "<hr>fast</hr>"), Error{Code: CodeValue, Format: GPX, Line: 3, Name: "hr", Text: "fast"}},
		"not a number":  {gpxOf(at + "<hr>NaN</hr>"), Error{Code: CodeValue, Format: GPX, Line: 3, Name: "hr", Text: "NaN"}},
		"a place":       {strings.Replace(gpxOf(at), `"1"`, `"91"`, 1), Error{Code: CodeValue, Format: GPX, Line: 3, Name: "lat", Text: "91"}},
		"a route":       {"<gpx><rte><rtept lat=\"1\" lon=\"2\"/></rte></gpx>", Error{Code: CodeNothing, Format: GPX}},
		"one point":     {gpxOf(at), Error{Code: CodeNothing, Format: GPX}},
		"no times":      {gpxOf("<ele>3</ele>"), Error{Code: CodeNoTime, Format: GPX}},
		"a TCX course":  {"<TrainingCenterDatabase><Courses><Course><Lap><TotalTimeSeconds>9</TotalTimeSeconds></Lap></Course></Courses></TrainingCenterDatabase>", Error{Code: CodeNothing, Format: TCX}},
		"a TCX angle":   {"<TrainingCenterDatabase><Activities><Activity><Lap><Track><Trackpoint><Position>\n<LongitudeDegrees>181</LongitudeDegrees>", Error{Code: CodeValue, Format: TCX, Line: 2, Name: "LongitudeDegrees", Text: "181"}},
	})
}

func TestFaultsOfFIT(t *testing.T) {
	good := asFIT(steady(10, time.Second, 3))
	flipped := append([]byte{}, good...)
	flipped[60] ^= 4
	course := newFIT()
	course.def(0, fitFileID, [3]byte{0, 1, 0})
	course.data(0, byte(6))
	undefined := newFIT()
	undefined.data(3, byte(1))
	started := newFIT()
	started.def(0, fitRecord, [3]byte{fitTimestamp, 4, 0x86})
	started.data(0, uint32(1000))
	hold(t, map[string]fault{
		"FIT cut off":     {string(good[:len(good)-9]), Error{Code: CodeDamaged, Format: FIT, Byte: len(good) - 8}},
		"FIT flipped":     {string(flipped), Error{Code: CodeDamaged, Format: FIT, Byte: len(good) - 1}},
		"FIT with more":   {string(good) + "and more", Error{Code: CodeDamaged, Format: FIT, Byte: len(good) + 1}},
		"a FIT course":    {string(course.bytes()), Error{Code: CodeNothing, Format: FIT}},
		"FIT undefined":   {string(undefined.bytes()), Error{Code: CodeDamaged, Format: FIT, Byte: fitHead + 1}},
		"FIT, no clock":   {string(started.bytes()), Error{Code: CodeNoTime, Format: FIT}},
		"FIT, only heads": {string(newFIT().bytes()), Error{Code: CodeNothing, Format: FIT}},
	})
}

// counting counts what is read of it.
type counting struct {
	from io.Reader
	n    int64
}

func (c *counting) Read(p []byte) (int, error) {
	n, err := c.from.Read(p)
	c.n += int64(n)
	return n, err
}

// A file of a gigabyte is refused, and no more of it read than the limit and a byte.
func TestReadsNoMoreThanTheLimit(t *testing.T) {
	f, err := os.Create(filepath.Join(t.TempDir(), "large.fit"))
	if err != nil {
		t.Fatal(err)
	}
	defer func() { _ = f.Close() }()
	if err := f.Truncate(1 << 30); err != nil {
		t.Skip(err)
	}
	c := &counting{from: f}
	_, err = Read(c)
	var got *Error
	if !errors.As(err, &got) || got.Code != CodeLarge || c.n != MostBytes+1 {
		t.Errorf("%v after %d bytes", err, c.n)
	}
}

// brokenReader fails at once.
type brokenReader struct{}

func (brokenReader) Read([]byte) (int, error) { return 0, os.ErrPermission }

func TestAFileThatCannotBeRead(t *testing.T) {
	_, err := Read(brokenReader{})
	var got *Error
	if !errors.As(err, &got) || got.Code != CodeRead || !errors.Is(err, os.ErrPermission) {
		t.Errorf("%v", err)
	}
}

// More readings than are taken in are refused.
func TestMostSamples(t *testing.T) {
	f := newFIT()
	f.def(0, fitRecord, [3]byte{fitTimestamp, 4, 0x86})
	at := fitAt(began())
	for i := range MostSamples {
		f.data(0, at+uint32(i))
	}
	if s, err := read(f.bytes()); err != nil || s.Samples != MostSamples {
		t.Fatalf("%d, %v", s.Samples, err)
	}
	f.data(0, at+MostSamples)
	var got *Error
	if _, err := read(f.bytes()); !errors.As(err, &got) || got.Code != CodeMany {
		t.Errorf("%v", err)
	}
}

// A message may have fields of developers and a time in its head; fields that are
// shorter than their kind, or unknown, are passed over.
func TestOddMessages(t *testing.T) {
	f := &fitFile{order: binary.BigEndian}
	f.body.Write([]byte{fitDefinition | fitDeveloper | 2, 0, 1, 0, fitRecord, 3, fitTimestamp, 4, 0x86, 3, 1, 2, 7, 1, 0x84, 1, 0, 2, 0})
	f.data(2, fitAt(began()), byte(120), byte(9), uint16(7))
	f.data(2, fitAt(began().Add(10*time.Second)), byte(0xff), byte(9), uint16(7))
	f.def(1, fitRecord, [3]byte{3, 1, 2})
	short := byte(fitAt(began().Add(30*time.Second)) & fitTime)
	f.data(fitCompressed|1<<5|short, byte(140))
	s, err := read(f.bytes())
	if err != nil || s.Samples != 3 || s.End.Sub(s.Start) != 30*time.Second || s.HeartRate != (Mean{120, 1, true}) || s.Power.Known {
		t.Errorf("%+v, %v", s, err)
	}
}

package device

import (
	"bytes"
	"encoding/binary"
	"fmt"
	"math"
	"strings"
	"time"
)

// fitFile builds a FIT file message by message; every session in these tests is
// invented.
type fitFile struct {
	body  bytes.Buffer
	order binary.AppendByteOrder
}

// def writes a definition: number, size and kind of each field.
func (f *fitFile) def(local byte, message uint16, fields ...[3]byte) {
	big := byte(0)
	if f.order == binary.BigEndian {
		big = 1
	}
	f.body.WriteByte(fitDefinition | local)
	f.body.Write([]byte{0, big})
	f.body.Write(f.order.AppendUint16(nil, message))
	f.body.WriteByte(byte(len(fields)))
	for _, x := range fields {
		f.body.Write(x[:])
	}
}

// data writes a message; a byte, uint16 or uint32 for each field.
func (f *fitFile) data(head byte, values ...any) {
	f.body.WriteByte(head)
	for _, v := range values {
		switch x := v.(type) {
		case byte:
			f.body.WriteByte(x)
		case int8:
			f.body.WriteByte(byte(x))
		case uint16:
			f.body.Write(f.order.AppendUint16(nil, x))
		case uint32:
			f.body.Write(f.order.AppendUint32(nil, x))
		default:
			panic(fmt.Sprintf("%T", v))
		}
	}
}

// bytes is the whole file with head and checksum.
func (f *fitFile) bytes() []byte {
	out := []byte{fitHead, 0x20, 0, 0}
	out = binary.LittleEndian.AppendUint32(out, uint32(f.body.Len()))
	out = append(append(out, ".FIT"...), f.body.Bytes()...)
	return binary.LittleEndian.AppendUint16(out, fitChecksum(out))
}

func newFIT() *fitFile { return &fitFile{order: binary.LittleEndian} }

// fitAt is an instant as the format counts it.
func fitAt(t time.Time) uint32 { return uint32(t.Unix() - fitEpoch) }

// line is one reading of an invented session.
type line struct {
	after time.Duration
	way   float64 // m from the start
	heart float64
	power float64
	warm  float64
}

// began is when the invented sessions began.
func began() time.Time { return time.Date(2026, 5, 10, 15, 2, 40, 0, time.UTC) }

// asFIT writes lines as a device does that stops its timer in the pauses.
func asFIT(lines []line, pauses ...Pause) []byte {
	f := newFIT()
	f.def(0, fitFileID, [3]byte{0, 1, 0x00})
	f.data(0, byte(fitActivity))
	f.def(1, fitEvent, [3]byte{fitTimestamp, 4, 0x86}, [3]byte{0, 1, 0}, [3]byte{1, 1, 0})
	f.data(1, fitAt(began()), byte(fitTimer), byte(fitStart))
	f.def(2, fitRecord, [3]byte{fitTimestamp, 4, 0x86}, [3]byte{5, 4, 0x86}, [3]byte{3, 1, 0x02}, [3]byte{7, 2, 0x84}, [3]byte{13, 1, 0x01})
	for _, p := range pauses {
		f.data(1, fitAt(p.From), byte(fitTimer), byte(fitStopAll))
		f.data(1, fitAt(p.To), byte(fitTimer), byte(fitStart))
	}
	for _, l := range lines {
		f.data(2, fitAt(began().Add(l.after)), uint32(math.Round(l.way*100)), byte(l.heart), uint16(l.power), int8(l.warm))
	}
	return f.bytes()
}

// asGPX writes lines as points along a meridian, degrees for metres.
func asGPX(lines []line) []byte {
	var b strings.Builder
	b.WriteString(`<?xml version="1.0" encoding="UTF-8"?>
<gpx version="1.1" xmlns="http://www.topografix.com/GPX/1/1" xmlns:x="urn:x"><trk><name>Invented</name><type>running</type><trkseg>`)
	for _, l := range lines {
		degrees := l.way / (2 * math.Pi * 6371000) * 360
		fmt.Fprintf(&b, `<trkpt lat="%.9f" lon="8.5"><ele>400</ele><time>%s</time><extensions><power>%g</power><x:TrackPointExtension><x:atemp>%g</x:atemp><x:hr>%g</x:hr></x:TrackPointExtension></extensions></trkpt>
`, degrees, began().Add(l.after).Format(time.RFC3339), l.power, l.warm, l.heart)
	}
	b.WriteString("</trkseg></trk></gpx>")
	return []byte(b.String())
}

// asTCX writes lines as one lap.
func asTCX(lines []line) []byte {
	var b strings.Builder
	fmt.Fprintf(&b, `<?xml version="1.0"?>
<TrainingCenterDatabase xmlns="urn:tcx" xmlns:ns3="urn:ext"><Activities><Activity Sport="Running"><Id>%s</Id><Lap StartTime="%s"><Track>`, began().Format(time.RFC3339), began().Format(time.RFC3339))
	for _, l := range lines {
		fmt.Fprintf(&b, `<Trackpoint><Time>%s</Time><DistanceMeters>%g</DistanceMeters><HeartRateBpm><Value>%g</Value></HeartRateBpm><Extensions><ns3:TPX><ns3:Watts>%g</ns3:Watts></ns3:TPX></Extensions></Trackpoint>
`, began().Add(l.after).Format(time.RFC3339Nano), l.way, l.heart, l.power)
	}
	b.WriteString("</Track></Lap></Activity></Activities></TrainingCenterDatabase>")
	return []byte(b.String())
}

// steady is an invented session: so many readings at one pace, one every step.
func steady(n int, every time.Duration, metresEach float64) []line {
	var list []line
	for i := range n {
		list = append(list, line{after: time.Duration(i) * every, way: float64(i) * metresEach, heart: 150, power: 200, warm: 25})
	}
	return list
}

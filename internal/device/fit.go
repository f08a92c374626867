package device

import (
	"bytes"
	"encoding/binary"
	"math"
)

// The container of FIT. A file is a head, messages and a checksum, and may be
// followed by another. A message is defined before its data: which message of the
// format it is, and of which fields of how many bytes.
const (
	fitHead, fitHeadLong = 12, 14
	// fitCompressed marks data with a short time in its first byte, fitDefinition a
	// definition, fitDeveloper one with fields that are not of the format.
	fitCompressed, fitDefinition, fitDeveloper = 0x80, 0x40, 0x20
	fitLocal, fitLocalShort, fitTime           = 0x0f, 0x03, 0x1f
	// fitTimestamp is the field of every message's time.
	fitTimestamp = 253
)

// isFIT reports whether data begins as FIT does.
func isFIT(data []byte) bool {
	return len(data) >= fitHead && (data[0] == fitHead || data[0] == fitHeadLong) && bytes.Equal(data[8:12], []byte(".FIT"))
}

// fitField is one field of a definition.
type fitField struct {
	number, size, kind byte
	developer          bool
}

// fitShape is a definition: the message and its fields.
type fitShape struct {
	defined bool
	message uint16
	order   binary.ByteOrder
	fields  []fitField
}

// fitValue is a field that was read.
type fitValue struct {
	number byte
	value  float64
}

// fitValues are those of one message.
type fitValues []fitValue

// of is the value of a field, divided by its scale.
func (v fitValues) of(number byte, scale float64) reading {
	for _, x := range v {
		if x.number == number {
			return known(x.value / scale)
		}
	}
	return reading{}
}

// fitReader reads one file after another out of some bytes.
type fitReader struct {
	data []byte
	at   int
	end  int // of the messages of the present file
	// shapes are the definitions by their local number.
	shapes [fitLocal + 1]fitShape
	// time is the last whole time, for those that tell only its end.
	time   uint32
	values fitValues
	take   func(message uint16, v fitValues) error
}

// damaged is an error at the present place.
func (r *fitReader) damaged() error { return &Error{Code: CodeDamaged, Format: FIT, Byte: r.at + 1} }

// all reads every file.
func (r *fitReader) all() error {
	for r.at < len(r.data) {
		if err := r.file(); err != nil {
			return err
		}
	}
	return nil
}

// file reads one file with its checksum.
func (r *fitReader) file() error {
	begin := r.at
	if !isFIT(r.data[begin:]) {
		return r.damaged()
	}
	size := int64(binary.LittleEndian.Uint32(r.data[begin+4:]))
	end := int64(begin) + int64(r.data[begin]) + size
	if end+2 > int64(len(r.data)) {
		r.at = len(r.data)
		return r.damaged() // it ends before the messages it says it has
	}
	r.at, r.end, r.time = begin+int(r.data[begin]), int(end), 0
	r.shapes = [fitLocal + 1]fitShape{}
	if binary.LittleEndian.Uint16(r.data[r.end:]) != fitChecksum(r.data[begin:r.end]) {
		r.at = r.end
		return r.damaged()
	}
	for r.at < r.end {
		if err := r.message(); err != nil {
			return err
		}
	}
	r.at = r.end + 2
	return nil
}

// next takes some bytes off the messages.
func (r *fitReader) next(n int) ([]byte, error) {
	if n > r.end-r.at {
		return nil, r.damaged()
	}
	b := r.data[r.at : r.at+n]
	r.at += n
	return b, nil
}

// message reads a definition or data.
func (r *fitReader) message() error {
	head, err := r.next(1)
	if err != nil {
		return err
	}
	h := head[0]
	switch {
	case h&fitCompressed != 0:
		short := uint32(h & fitTime)
		r.time += (short - r.time) & fitTime
		return r.dataOf(h>>5&fitLocalShort, true)
	case h&fitDefinition != 0:
		return r.define(h)
	}
	return r.dataOf(h&fitLocal, false)
}

// define reads a definition.
func (r *fitReader) define(h byte) error {
	b, err := r.next(5)
	if err != nil {
		return err
	}
	s := fitShape{defined: true, order: binary.LittleEndian}
	if b[1] == 1 {
		s.order = binary.BigEndian
	}
	s.message = s.order.Uint16(b[2:])
	if s.fields, err = r.fields(s.fields, int(b[4]), false); err != nil {
		return err
	}
	if h&fitDeveloper != 0 {
		n, err := r.next(1)
		if err != nil {
			return err
		}
		if s.fields, err = r.fields(s.fields, int(n[0]), true); err != nil {
			return err
		}
	}
	r.shapes[h&fitLocal] = s
	return nil
}

// fields reads the fields of a definition.
func (r *fitReader) fields(list []fitField, n int, developer bool) ([]fitField, error) {
	b, err := r.next(3 * n)
	if err != nil {
		return nil, err
	}
	for ; len(b) > 0; b = b[3:] {
		list = append(list, fitField{number: b[0], size: b[1], kind: b[2], developer: developer})
	}
	return list, nil
}

// dataOf reads the data of a message and hands its values on; timed says that its
// time stood in its head.
func (r *fitReader) dataOf(local byte, timed bool) error {
	s := &r.shapes[local]
	if !s.defined {
		r.at--
		return r.damaged()
	}
	r.values = r.values[:0]
	for _, f := range s.fields {
		b, err := r.next(int(f.size))
		if err != nil {
			return err
		}
		if x, ok := fitNumber(b, f.kind, s.order); ok && !f.developer {
			r.values = append(r.values, fitValue{f.number, x})
			if f.number == fitTimestamp {
				r.time = uint32(x)
			}
		}
	}
	if timed {
		r.values = append(r.values, fitValue{fitTimestamp, float64(r.time)})
	}
	return r.take(s.message, r.values)
}

// fitNumber is the first number in a field, in the kind the file gives it; ok is
// false for a text, for bytes, and for what the format writes where nothing is known.
func fitNumber(b []byte, kind byte, order binary.ByteOrder) (x float64, ok bool) {
	size, signed, unknown := fitKind(kind)
	if size == 0 || len(b) < size {
		return 0, false
	}
	var bits uint64
	switch size {
	case 1:
		bits = uint64(b[0])
	case 2:
		bits = uint64(order.Uint16(b))
	case 4:
		bits = uint64(order.Uint32(b))
	default:
		bits = order.Uint64(b)
	}
	switch {
	case bits == unknown:
		return 0, false
	case kind == 0x88:
		x = float64(math.Float32frombits(uint32(bits)))
	case kind == 0x89:
		x = math.Float64frombits(bits)
	case signed:
		shift := 64 - 8*size
		x = float64(int64(bits<<shift) >> shift)
	default:
		x = float64(bits)
	}
	return x, !math.IsNaN(x) && !math.IsInf(x, 0)
}

// fitKind is what the format says of a kind of number: how many bytes, with a sign
// or not, and what is written where nothing is known.
func fitKind(kind byte) (size int, signed bool, unknown uint64) {
	switch kind {
	case 0x00, 0x02: // a word of a list, 8 bits
		return 1, false, math.MaxUint8
	case 0x01:
		return 1, true, math.MaxInt8
	case 0x83:
		return 2, true, math.MaxInt16
	case 0x84:
		return 2, false, math.MaxUint16
	case 0x85:
		return 4, true, math.MaxInt32
	case 0x86, 0x88: // 32 bits, or a float of as many
		return 4, false, math.MaxUint32
	case 0x8e:
		return 8, true, math.MaxInt64
	case 0x8f, 0x89:
		return 8, false, math.MaxUint64
	case 0x0a: // of these, nothing is 0
		return 1, false, 0
	case 0x8b:
		return 2, false, 0
	case 0x8c:
		return 4, false, 0
	case 0x90:
		return 8, false, 0
	}
	return 0, false, 0
}

// fitChecksum is the format's checksum: CRC-16 with the polynomial 0x8005, the bits
// reversed, from zero.
func fitChecksum(data []byte) uint16 {
	var table [256]uint16
	for i := range table {
		c := uint16(i)
		for range 8 {
			odd := c & 1
			c >>= 1
			if odd == 1 {
				c ^= 0xa001
			}
		}
		table[i] = c
	}
	var c uint16
	for _, b := range data {
		c = c>>8 ^ table[byte(c)^b]
	}
	return c
}

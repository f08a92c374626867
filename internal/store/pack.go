package store

import (
	"bytes"
	"compress/zlib"
	"fmt"
	"io"

	"ebbwell/internal/record"
)

// Frozen copies are by far the most of a file. From version 2 on their bytes
// are kept as zlib streams (RFC 1950), which anybody can read.

// packed is a frozen copy as it is kept.
func packed(f record.Frozen) (record.Frozen, error) {
	for _, part := range streams(&f) {
		if *part == nil {
			continue
		}
		var into bytes.Buffer
		w := zlib.NewWriter(&into)
		if _, err := w.Write(*part); err != nil {
			return f, err
		}
		if err := w.Close(); err != nil {
			return f, err
		}
		*part = into.Bytes()
	}
	return f, nil
}

// unpack brings frozen copies that were read to what was frozen. What cannot be
// unpacked because its bytes were damaged is nil: the copy is there, and cannot
// be read, which whoever shows it says; no other record suffers.
func unpack(list []record.Frozen) {
	var u unpacker
	for i := range list {
		list[i].Altered = altered(list[i].Sum, sumOfCopy(list[i]))
		for _, part := range streams(&list[i]) {
			if *part == nil {
				continue
			}
			plain, err := u.unpack(*part)
			if err != nil || list[i].Altered {
				plain, list[i].Altered = nil, true
			}
			*part = plain
		}
	}
}

// unpacker unpacks one stream after the other with the same buffers.
type unpacker struct {
	stream bytes.Reader
	reader io.ReadCloser
	room   bytes.Buffer
}

// unpack reads one zlib stream to its end.
func (u *unpacker) unpack(stream []byte) ([]byte, error) {
	u.stream.Reset(stream)
	if err := u.begin(); err != nil {
		u.reader = nil // its state is not known
		return nil, fmt.Errorf("read stream: %w", err)
	}
	u.room.Reset()
	if _, err := u.room.ReadFrom(u.reader); err != nil {
		u.reader = nil
		return nil, fmt.Errorf("read stream: %w", err)
	}
	return bytes.Clone(u.room.Bytes()), nil
}

// begin readies the reader for the stream.
func (u *unpacker) begin() (err error) {
	if again, ok := u.reader.(zlib.Resetter); ok {
		return again.Reset(&u.stream, nil)
	}
	u.reader, err = zlib.NewReader(&u.stream)
	return err
}

// streams are the bytes of a frozen copy that are packed.
func streams(f *record.Frozen) []*[]byte { return []*[]byte{&f.Inputs, &f.Results, &f.Shown} }

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
	for i := range list {
		for _, part := range streams(&list[i]) {
			if *part == nil {
				continue
			}
			plain, err := unpackOne(*part)
			if err != nil {
				plain = nil
			}
			*part = plain
		}
	}
}

// unpackOne reads one zlib stream to its end.
func unpackOne(stream []byte) ([]byte, error) {
	r, err := zlib.NewReader(bytes.NewReader(stream))
	if err != nil {
		return nil, fmt.Errorf("read stream: %w", err)
	}
	plain, err := io.ReadAll(r)
	if err != nil {
		return nil, fmt.Errorf("read stream: %w", err)
	}
	return plain, nil
}

// streams are the bytes of a frozen copy that are packed.
func streams(f *record.Frozen) []*[]byte { return []*[]byte{&f.Inputs, &f.Results, &f.Shown} }

// Package pdfread reads the texts out of the PDF files that this program
// writes, so that tests can look at what was really put into a file. It knows no
// more of the format than that: pages as compressed streams, and in them each
// text as UTF-16 in brackets before its operator.
package pdfread

import (
	"bytes"
	"compress/zlib"
	"encoding/binary"
	"errors"
	"io"
	"unicode/utf16"
)

// ErrNoText says that a file holds no page with a text.
var ErrNoText = errors.New("no text in the file")

// Texts lists the texts of all pages in the order in which they were written,
// a line each. It returns [ErrNoText] when there are none.
func Texts(pdf []byte) ([]string, error) {
	var list []string
	for _, part := range bytes.Split(pdf, []byte("\nstream\n"))[1:] {
		r, err := zlib.NewReader(bytes.NewReader(part))
		if err != nil {
			continue // not compressed: no page
		}
		content, err := io.ReadAll(r)
		if err != nil {
			continue
		}
		for {
			_, after, found := bytes.Cut(content, []byte(" Td ("))
			if !found {
				break
			}
			var text string
			text, content = bracketed(after)
			list = append(list, text)
		}
	}
	if len(list) == 0 {
		return nil, ErrNoText
	}
	return list, nil
}

// bracketed reads a string up to its closing bracket, undoing escapes.
func bracketed(content []byte) (text string, rest []byte) {
	var raw []byte
	i := 0
	for ; i < len(content) && content[i] != ')'; i++ {
		if content[i] == '\\' && i+1 < len(content) {
			i++
			if content[i] == 'r' {
				raw = append(raw, '\r')
				continue
			}
		}
		raw = append(raw, content[i])
	}
	units := make([]uint16, len(raw)/2)
	for j := range units {
		units[j] = binary.BigEndian.Uint16(raw[2*j:])
	}
	return string(utf16.Decode(units)), content[i:]
}

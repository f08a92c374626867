package device

import (
	"bytes"
	"encoding/xml"
	"errors"
	"io"
	"math"
	"strconv"
	"strings"
	"time"
)

// xmlReader goes through a document element by element and hands on what is used.
type xmlReader struct {
	recorded
	decoder *xml.Decoder
	// path are the names of the elements one stands in, without their prefixes.
	path []string
	// text is what stands in the innermost element.
	text strings.Builder
	// opened and closed take an element in, in the way of the format.
	opened func(name string, attrs []xml.Attr) error
	closed func(name, text string) error
	// untimed: a place of the track without a time was seen.
	untimed bool
}

// readXML reads GPX or TCX, by the outermost element.
func readXML(data []byte) (Session, error) {
	r := &xmlReader{decoder: xml.NewDecoder(bytes.NewReader(data))}
	r.decoder.CharsetReader = charset
	if err := r.walk(); err != nil {
		return Session{}, err
	}
	if len(r.samples) == 0 && len(r.spans) == 0 {
		code := CodeNothing
		if r.untimed { // there is a track, and nobody can tell when it was
			code = CodeNoTime
		}
		return Session{}, &Error{Code: code, Format: r.format}
	}
	return r.session()
}

// errEncoding marks an encoding that is not read.
var errEncoding = errors.New("encoding")

// charset reads the encodings that stand for plain letters.
func charset(label string, in io.Reader) (io.Reader, error) {
	switch strings.ToLower(label) {
	case "utf-8", "utf8", "us-ascii":
		return in, nil
	case "iso-8859-1", "latin1", "windows-1252":
		// Only names of places and people hold letters beyond ASCII, and none is used.
		data, err := io.ReadAll(in)
		if err != nil {
			return nil, err
		}
		for i, b := range data {
			if b >= 0x80 {
				data[i] = '?'
			}
		}
		return bytes.NewReader(data), nil
	}
	return nil, errEncoding
}

// line is where the reader stands.
func (r *xmlReader) line() int {
	line, _ := r.decoder.InputPos()
	return line
}

// fail is an error at the present place.
func (r *xmlReader) fail(code Code, err error) error {
	return &Error{Code: code, Format: r.format, Line: r.line(), Err: err}
}

// walk goes through the document.
func (r *xmlReader) walk() error {
	for {
		token, err := r.decoder.RawToken()
		switch {
		case errors.Is(err, io.EOF) && len(r.path) == 0:
			return nil
		case errors.Is(err, errEncoding), err != nil && strings.Contains(err.Error(), "invalid UTF-8"):
			return r.fail(CodeEncoding, err)
		case err != nil:
			return r.fail(CodeDamaged, err)
		}
		if err := r.token(token); err != nil {
			return err
		}
	}
}

// token takes one token in.
func (r *xmlReader) token(token xml.Token) error {
	switch t := token.(type) {
	case xml.Directive:
		return r.fail(CodeDoctype, nil)
	case xml.StartElement:
		return r.open(t)
	case xml.EndElement:
		return r.close(t.Name.Local)
	case xml.CharData:
		if r.text.Len()+len(t) <= MostBytes {
			r.text.Write(t)
		}
	}
	return nil
}

// open goes into an element.
func (r *xmlReader) open(t xml.StartElement) error {
	if len(r.path) >= mostDepth {
		return r.fail(CodeDeep, nil)
	}
	if len(r.path) == 0 {
		switch {
		case r.format != "":
			return r.fail(CodeDamaged, nil) // a second document
		case t.Name.Local == "gpx":
			r.gpx()
		case t.Name.Local == "TrainingCenterDatabase":
			r.tcx()
		default:
			return &Error{Code: CodeUnknown, Line: r.line(), Name: shortened(t.Name.Local)}
		}
	}
	r.path = append(r.path, t.Name.Local)
	r.text.Reset()
	return r.opened(t.Name.Local, t.Attr)
}

// close leaves an element.
func (r *xmlReader) close(name string) error {
	if len(r.path) == 0 || r.path[len(r.path)-1] != name {
		return r.fail(CodeDamaged, nil)
	}
	err := r.closed(name, strings.TrimSpace(r.text.String()))
	r.path = r.path[:len(r.path)-1]
	r.text.Reset()
	return err
}

// in reports whether an element encloses the present one.
func (r *xmlReader) in(name string) bool {
	for _, n := range r.path {
		if n == name {
			return true
		}
	}
	return false
}

// parent is the element around the present one.
func (r *xmlReader) parent() string {
	if len(r.path) < 2 {
		return ""
	}
	return r.path[len(r.path)-2]
}

// value reads the number in an element; an empty one is none.
func (r *xmlReader) value(name, text string) (reading, error) {
	if text == "" {
		return reading{}, nil
	}
	x, err := strconv.ParseFloat(text, 64)
	if err != nil || math.IsNaN(x) || math.IsInf(x, 0) {
		return reading{}, r.unreadable(name, text)
	}
	return known(x), nil
}

// unreadable is the error of a value that cannot be read.
func (r *xmlReader) unreadable(name, text string) error {
	return &Error{Code: CodeValue, Format: r.format, Line: r.line(), Name: name, Text: shortened(text)}
}

// instant reads a time; one without a zone is in UTC, as both formats say. One with an
// offset tells the device's zone, one in UTC tells nothing of it.
func (r *xmlReader) instant(name, text string) (time.Time, error) {
	for _, layout := range []string{time.RFC3339Nano, "2006-01-02T15:04:05.999999999"} {
		if t, err := time.Parse(layout, text); err == nil {
			if _, ahead := t.Zone(); ahead != 0 && r.zone == nil {
				r.zone = time.FixedZone("", ahead)
			}
			return t.UTC(), nil
		}
	}
	return time.Time{}, r.unreadable(name, text)
}

package exchange

import (
	"archive/zip"
	"bytes"
	"io"
	"slices"
)

// ReadOwn reads a file in whatever form this program wrote it: a workbook, tables in
// an archive, JSON. own is false, and nothing is read, where it is another file.
func ReadOwn(data []byte) (r Records, faults []Fault, own bool, err error) {
	if start := bytes.TrimLeft(data[:min(len(data), 4096)], " \r\n\t\xef\xbb\xbf"); bytes.HasPrefix(start, []byte("{")) && bytes.Contains(start, []byte(format)) {
		r, err = ReadJSON(bytes.NewReader(data))
		return r, nil, true, err
	}
	if !bytes.HasPrefix(data, []byte("PK\x03\x04")) {
		return Records{}, nil, false, nil
	}
	archive, err := zip.NewReader(bytes.NewReader(data), int64(len(data)))
	if err != nil {
		return Records{}, nil, false, nil //nolint:nilerr // whoever reads other files says what is wrong with it
	}
	named := func(name string) *zip.File {
		at := slices.IndexFunc(archive.File, func(f *zip.File) bool { return f.Name == name })
		if at < 0 {
			return nil
		}
		return archive.File[at]
	}
	switch {
	case named("tests.csv") != nil && named("athletes.csv") != nil:
		r, faults, err = ReadCSV(bytes.NewReader(data), int64(len(data)))
		return r, faults, true, err
	case lists(named("xl/workbook.xml"), "tests.bottles"):
		r, faults, err = ReadXLSX(bytes.NewReader(data))
		return r, faults, true, err
	}
	return Records{}, nil, false, nil
}

// lists reports whether a workbook's list of sheets, which may be missing, names one.
func lists(list *zip.File, sheet string) bool {
	const most = 1 << 20
	if list == nil {
		return false
	}
	in, err := list.Open()
	if err != nil {
		return false
	}
	defer in.Close() //nolint:errcheck // it was only read
	text, err := io.ReadAll(io.LimitReader(in, most))
	return err == nil && bytes.Contains(text, []byte(`"`+sheet+`"`))
}

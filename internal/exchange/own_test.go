package exchange

import (
	"bytes"
	"testing"
)

// TestOwnFilesAreKnown: each form is known by what is in it, and gives the same records.
func TestOwnFilesAreKnown(t *testing.T) {
	want := one()
	forms := map[string]func(*bytes.Buffer) error{
		"JSON": func(out *bytes.Buffer) error { return WriteJSON(out, want) },
		"CSV":  func(out *bytes.Buffer) error { return WriteCSV(out, want, nil, nil) },
		"XLSX": func(out *bytes.Buffer) error { return WriteXLSX(out, want, nil, nil) },
	}
	for name, write := range forms {
		var out bytes.Buffer
		if err := write(&out); err != nil {
			t.Fatal(err)
		}
		got, faults, own, err := ReadOwn(out.Bytes())
		if !own || err != nil || len(faults) > 0 || len(got.Tests) != 1 || got.Tests[0].Bottles[0].Before.Or(0) != 650.5 {
			t.Errorf("%s: own %v, %v, %v, %+v", name, own, err, faults, got)
		}
	}
	for name, data := range map[string]string{"text": "Name,Date\n", "JSON": `{"a":1}`, "archive": "PK\x03\x04x", "nothing": ""} {
		if _, _, own, err := ReadOwn([]byte(data)); own || err != nil {
			t.Errorf("%s of somebody else: own %v, %v", name, own, err)
		}
	}
}

// FuzzReadOwn: no bytes make the reader panic.
func FuzzReadOwn(f *testing.F) {
	for _, write := range []func(*bytes.Buffer) error{
		func(out *bytes.Buffer) error { return WriteJSON(out, one()) }, func(out *bytes.Buffer) error { return WriteCSV(out, one(), nil, nil) },
		func(out *bytes.Buffer) error { return WriteXLSX(out, one(), nil, nil) },
	} {
		var out bytes.Buffer
		if err := write(&out); err != nil {
			f.Fatal(err)
		}
		f.Add(out.Bytes())
	}
	f.Fuzz(func(_ *testing.T, data []byte) { _, _, _, _ = ReadOwn(data) })
}

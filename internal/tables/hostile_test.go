package tables

import (
	"archive/zip"
	"bytes"
	"compress/flate"
	"context"
	"errors"
	"runtime"
	"slices"
	"strings"
	"testing"

	"github.com/xuri/excelize/v2"
	"golang.org/x/text/encoding"
	"golang.org/x/text/encoding/charmap"
	xunicode "golang.org/x/text/encoding/unicode"
	"golang.org/x/text/encoding/unicode/utf32"
)

// bomb is a workbook whose sheet unpacks to so many bytes of nothing and says that it has
// so many; both are whole parts of 16 MiB.
func bomb(t testing.TB, size, says uint64) []byte {
	t.Helper()
	const part = 16 << 20
	var packed bytes.Buffer
	w, err := flate.NewWriter(&packed, flate.BestSpeed)
	if err != nil {
		t.Fatal(err)
	}
	_, err = w.Write(make([]byte, part))
	if err = errors.Join(err, w.Flush()); err != nil {
		t.Fatal(err)
	}
	one := bytes.Clone(packed.Bytes()) // what is flushed stands for itself, so that it can be repeated
	packed.Reset()
	if err := w.Close(); err != nil {
		t.Fatal(err)
	}
	whole := append(bytes.Repeat(one, int(size/part)), packed.Bytes()...)
	var out bytes.Buffer
	archive := zip.NewWriter(&out)
	f, err := archive.CreateRaw(&zip.FileHeader{
		Name: "xl/worksheets/sheet1.xml", Method: zip.Deflate, CompressedSize64: uint64(len(whole)), UncompressedSize64: says,
	})
	if err == nil {
		_, err = f.Write(whole)
	}
	if err = errors.Join(err, archive.Close()); err != nil {
		t.Fatal(err)
	}
	return out.Bytes()
}

// TestBombs: an archive of a gigabyte is refused without unpacking it, also where it says
// that there is little in it.
func TestBombs(t *testing.T) {
	const size = 1 << 30
	for name, c := range map[string]struct {
		says uint64
		want error
	}{"honest": {size, ErrBytes}, "a liar": {1000, ErrNotTable}, "a liar to the limit": {MostUnpacked, ErrNotTable}} {
		t.Run(name, func(t *testing.T) {
			data := bomb(t, size, c.says)
			var before, after runtime.MemStats
			runtime.ReadMemStats(&before)
			_, err := Open(data)
			runtime.ReadMemStats(&after)
			if taken := after.TotalAlloc - before.TotalAlloc; !errors.Is(err, c.want) || taken > grown*4*MostUnpacked { // the buffer grows by doubling
				t.Errorf("%d KB unpack to a gigabyte: %v, after %d MB of memory", len(data)>>10, err, taken>>20)
			}
		})
	}
}

// TestEntitiesAreNotExpanded: a workbook that defines texts of its own, each ten times the
// one before, is refused, or read as if it had not.
func TestEntitiesAreNotExpanded(t *testing.T) {
	doctype := `<!DOCTYPE x [<!ENTITY a "boom"><!ENTITY e SYSTEM "file:///etc/hostname">`
	for i := 'b'; i <= 'z'; i++ {
		doctype += `<!ENTITY ` + string(i) + ` "` + strings.Repeat("&"+string(i-1)+";", 10) + `">`
	}
	doctype += "]>"
	for _, entity := range []string{"&z;", "&e;", "&a;"} {
		parts := map[string]string{
			"[Content_Types].xml":        `<Types xmlns="http://schemas.openxmlformats.org/package/2006/content-types"><Override PartName="/xl/workbook.xml" ContentType="application/vnd.openxmlformats-officedocument.spreadsheetml.sheet.main+xml"/></Types>`,
			"_rels/.rels":                `<Relationships xmlns="http://schemas.openxmlformats.org/package/2006/relationships"><Relationship Id="r1" Type="http://schemas.openxmlformats.org/officeDocument/2006/relationships/officeDocument" Target="xl/workbook.xml"/></Relationships>`,
			"xl/workbook.xml":            `<workbook xmlns="http://schemas.openxmlformats.org/spreadsheetml/2006/main" xmlns:r="http://schemas.openxmlformats.org/officeDocument/2006/relationships"><sheets><sheet name="S" sheetId="1" r:id="r1"/></sheets></workbook>`,
			"xl/_rels/workbook.xml.rels": `<Relationships xmlns="http://schemas.openxmlformats.org/package/2006/relationships"><Relationship Id="r1" Type="http://schemas.openxmlformats.org/officeDocument/2006/relationships/worksheet" Target="worksheets/sheet1.xml"/></Relationships>`,
			"xl/worksheets/sheet1.xml": `<?xml version="1.0"?>` + doctype + `<worksheet xmlns="http://schemas.openxmlformats.org/spreadsheetml/2006/main"><sheetData><row r="1"><c r="A1" t="inlineStr"><is><t>Name</t></is></c><c r="B1" t="inlineStr"><is><t>` +
				entity + `</t></is></c></row></sheetData></worksheet>`,
		}
		b, err := Open(zipped(t, parts))
		if err != nil {
			if !errors.Is(err, ErrNotTable) {
				t.Errorf("%s: %v", entity, err)
			}
			continue
		}
		for _, s := range b.Sheets {
			if text := s.At(0, 1).Text; text != "" && text != entity {
				t.Errorf("%s is read as %.40q", entity, text)
			}
		}
	}
}

// zipped is an archive of texts by their names.
func zipped(t testing.TB, parts map[string]string) []byte {
	t.Helper()
	var out bytes.Buffer
	archive := zip.NewWriter(&out)
	for name, text := range parts {
		f, err := archive.Create(name)
		if err == nil {
			_, err = f.Write([]byte(text))
		}
		if err != nil {
			t.Fatal(err)
		}
	}
	if err := archive.Close(); err != nil {
		t.Fatal(err)
	}
	return out.Bytes()
}

// TestEncodings: a file in one of the encodings of spreadsheets is read with its letters, a
// wider one and a page or document under a workbook's name are refused.
func TestEncodings(t *testing.T) {
	const text = "Name;Datum;Gewicht vorher (kg)\nJörn Grünwaß;03.05.2025;82,35\n"
	encode := func(e encoding.Encoding) []byte {
		data, err := e.NewEncoder().Bytes([]byte(text))
		if err != nil {
			t.Fatal(err)
		}
		return data
	}
	wide := func(order xunicode.Endianness, mark xunicode.BOMPolicy) []byte {
		return encode(xunicode.UTF16(order, mark))
	}
	four := func(order utf32.Endianness, mark utf32.BOMPolicy) []byte { return encode(utf32.UTF32(order, mark)) }
	for name, c := range map[string]struct {
		data []byte
		want error
	}{
		"UTF-8": {[]byte(text), nil}, "UTF-8 with a mark": {[]byte("\ufeff" + text), nil}, "Windows-1252": {encode(charmap.Windows1252), nil}, "Latin 1": {encode(charmap.ISO8859_1), nil},
		"UTF-16": {wide(xunicode.LittleEndian, xunicode.UseBOM), nil}, "UTF-16, big": {wide(xunicode.BigEndian, xunicode.UseBOM), nil},
		"UTF-16, no mark": {wide(xunicode.LittleEndian, xunicode.IgnoreBOM), nil}, "UTF-16, big, no mark": {wide(xunicode.BigEndian, xunicode.IgnoreBOM), nil},
		"UTF-32": {four(utf32.LittleEndian, utf32.UseBOM), ErrNotTable}, "UTF-32, big": {four(utf32.BigEndian, utf32.UseBOM), ErrNotTable},
		"a page": {[]byte("<html><body><table><tr><td>Name</td></tr></table></body></html>"), ErrNotTable}, "XML": {[]byte("<?xml version=\"1.0\"?>\n<Workbook/>"), ErrNotTable},
	} {
		b, err := Open(c.data)
		if !errors.Is(err, c.want) || (err == nil) != (c.want == nil) {
			t.Errorf("%s: %v, want %v", name, err, c.want)
			continue
		}
		if err == nil && b.Sheets[0].At(1, 0).Text != "Jörn Grünwaß" {
			t.Errorf("%s is read as %q", name, b.Sheets[0].At(1, 0).Text)
		}
	}
}

// TestHostileFiles: each is refused in words of its own, before it fills the memory.
func TestHostileFiles(t *testing.T) {
	wideRow := strings.Repeat(",", 1_000_000)
	for name, c := range map[string]struct {
		data []byte
		want error
	}{
		"nothing":                     {nil, ErrEmpty},
		"only ends of lines":          {[]byte("\n\n\n"), ErrEmpty},
		"too large":                   {make([]byte, MostBytes+1), ErrBytes},
		"bytes":                       {[]byte("\x00\x01\x02\x03\x04\x05\x06\x07\x08\x00\x01\x02\xff\xfe"), ErrNotTable},
		"an old workbook":             {[]byte("\xd0\xcf\x11\xe0\xa1\xb1\x1a\xe1rest"), ErrOldBook},
		"a locked workbook":           {[]byte("\xd0\xcf\x11\xe0\xa1\xb1\x1a\xe1E\x00n\x00c\x00r\x00y\x00p\x00t\x00e\x00d"), ErrLocked},
		"a zip of nothing":            {[]byte("PK\x03\x04nothing"), ErrNotTable},
		"a million columns":           {[]byte("name" + wideRow + "x\n"), ErrColumns},
		"a long cell":                 {[]byte("name,date\n" + strings.Repeat("é", MostCell+1) + ",2025-05-14\n"), ErrCell},
		"too many rows":               {[]byte("name\n" + strings.Repeat("a\n", MostRows+1)), ErrRows},
		"too many empty rows":         {[]byte("name\n" + strings.Repeat("\n", MostRows+1) + "a\n"), ErrRows},
		"a workbook far to the right": {farCell(t, "XFD1"), ErrColumns},
		"a workbook far down":         {farCell(t, "A1048576"), ErrRows},
	} {
		t.Run(name, func(t *testing.T) {
			if _, err := Open(c.data); !errors.Is(err, c.want) {
				t.Errorf("got %v, want %v", err, c.want)
			}
		})
	}
}

// farCell is a workbook with one cell at the edge.
func farCell(t testing.TB, at string) []byte {
	t.Helper()
	f := excelize.NewFile()
	if err := f.SetCellValue("Sheet1", at, "x"); err != nil {
		t.Fatal(err)
	}
	var out bytes.Buffer
	if err := f.Write(&out); err != nil {
		t.Fatal(err)
	}
	return out.Bytes()
}

// TestFormulasAreNotWorkedOut: what was kept beside a formula is read, the formula
// itself never; in a text file it is the text it is.
func TestFormulasAreNotWorkedOut(t *testing.T) {
	f := excelize.NewFile()
	for at, v := range map[string]any{"A1": "Name", "B1": "Date", "C1": "Mass before (kg)", "A2": "Ida Brandt", "B2": "2025-05-14", "C2": 61.5} {
		if err := f.SetCellValue("Sheet1", at, v); err != nil {
			t.Fatal(err)
		}
	}
	if err := f.SetCellFormula("Sheet1", "A2", `HYPERLINK("http://example.invalid/","Ida")`); err != nil {
		t.Fatal(err)
	}
	if err := f.SetCellFormula("Sheet1", "C2", "60+1.5"); err != nil {
		t.Fatal(err)
	}
	var out bytes.Buffer
	if err := f.Write(&out); err != nil {
		t.Fatal(err)
	}
	b, err := Open(out.Bytes())
	if err != nil {
		t.Fatal(err)
	}
	if got := b.Sheets[0].At(1, 2).Text; got != "61.5" && got != "" {
		t.Errorf("the cell with a formula is read as %q", got)
	}
	for _, row := range b.Sheets[0].Rows {
		for _, c := range row {
			if strings.Contains(c.Text, "HYPERLINK") || strings.Contains(c.Text, "60+") {
				t.Errorf("the formula is read: %q", c.Text)
			}
		}
	}
	_, d := read(t, []byte("Name,Date,Mass before (kg),Comments\nIda Brandt,2025-05-14,61.5,=cmd|' /C calc'!A0\n"), nil, Options{})
	if len(d.Rows) != 1 || d.Rows[0].Test.Note != "=cmd|' /C calc'!A0" {
		t.Errorf("%+v", d)
	}
}

// TestSpreadsheetErrorsAreFaults: a cell the spreadsheet could not work out is no
// value and no nothing.
func TestSpreadsheetErrorsAreFaults(t *testing.T) {
	_, d := read(t, []byte("Name,Date,Mass before (kg),Mass after (kg)\nIda Brandt,2025-05-14,#DIV/0!,61\n"), nil, Options{})
	if len(d.Faults) != 1 || d.Faults[0].Code != FaultFailed || d.Faults[0].Row != 1 || d.Faults[0].Column != 2 || len(d.Rows) != 0 {
		t.Errorf("%+v", d)
	}
}

// FuzzOpen: no bytes make the reader panic or give more than it promises.
func FuzzOpen(f *testing.F) {
	for _, c := range spreadsheets(f) {
		f.Add(c.data)
	}
	f.Add([]byte("sep=;\n\"a\nb\";c\n"))
	f.Add(farCell(f, "C3"))
	f.Add([]byte("\xff\xfea\x00,\x00b\x00\n\x00"))
	f.Fuzz(func(t *testing.T, data []byte) {
		b, err := Open(data)
		if err != nil {
			return
		}
		for _, s := range b.Sheets {
			if len(s.Rows) > MostRows || s.Width() > MostColumns {
				t.Fatalf("%d rows, %d columns", len(s.Rows), s.Width())
			}
		}
	})
}

// FuzzBuild: whatever stands in a text file, what comes out is within the limits or a
// fault, and every fault has a place in the file.
func FuzzBuild(f *testing.F) {
	for _, c := range spreadsheets(f) {
		f.Add(c.data)
	}
	f.Add([]byte("Name,Date,Duration,Mass before\nA,31/02/2025,1h,9e99\n,,-1:00,NaN\n"))
	f.Add([]byte("Sample,Date,Na,K\nx forearm,1/1/2025,1,2\n"))
	f.Fuzz(func(t *testing.T, data []byte) {
		if bytes.HasPrefix(data, []byte("PK")) {
			return // workbooks are tried by the reader's own
		}
		b, err := Open(data)
		if err != nil {
			return
		}
		m := Guess(b, MonthDayYear)
		kept, err := m.Marshal()
		if err != nil {
			t.Fatal(err)
		}
		again, err := ReadMapping(kept)
		if err != nil {
			t.Fatal(err)
		}
		if fitted, ok := again.Fit(b); ok && len(fitted.Columns) != b.Sheets[0].Width() {
			t.Fatalf("%d columns fitted to %d", len(fitted.Columns), b.Sheets[0].Width())
		}
		d, err := Build(context.Background(), b, m, Options{Today: today})
		if err != nil {
			t.Fatal(err)
		}
		for _, fault := range d.Faults {
			if fault.Row >= len(b.Sheets[0].Rows) || fault.Column >= len(m.Columns) {
				t.Fatalf("%+v is nowhere", fault)
			}
		}
		wantWithin(t, d)
	})
}

// FuzzMapping: what is kept of a template never makes the reader panic.
func FuzzMapping(f *testing.F) {
	f.Add([]byte(`{"Kind":"tests","Heading":3,"Columns":[{"Heading":"x","Target":"sodium","Unit":"kg","Site":"chest"}],"Begin":"25:00"}`))
	f.Add([]byte(`{"Heading":-1}`))
	book, err := Open([]byte("x,Name,Date\n1,Ann,2025-05-14\n"))
	if err != nil {
		f.Fatal(err)
	}
	f.Fuzz(func(t *testing.T, data []byte) {
		m, err := ReadMapping(data)
		if err != nil {
			return
		}
		for i := range m.Columns {
			m = m.With(i, Sodium)
		}
		if _, err := Build(context.Background(), book, m, Options{Today: today}); err != nil {
			t.Fatal(err)
		}
	})
}

// TestFormulaWithoutResult: a cell whose formula the workbook keeps without a result is a
// fault of that cell, not an empty one; a formula that gave nothing is empty, and rows
// that only wait to be filled stay blank.
func TestFormulaWithoutResult(t *testing.T) {
	f := excelize.NewFile()
	for at, v := range map[string]any{"A1": "Name", "B1": "Date", "C1": "Mass before (kg)", "D1": "Mass after (kg)", "A2": "Ida Brandt", "B2": "2025-05-14", "C2": 61.5, "A3": "Bo Lund", "B3": "2025-05-14"} {
		if err := f.SetCellValue("Sheet1", at, v); err != nil {
			t.Fatal(err)
		}
	}
	for at, formula := range map[string]string{"D2": "C2-1.2", "C3": "60+1.5", "D4": "C4-1"} {
		if err := f.SetCellFormula("Sheet1", at, formula); err != nil {
			t.Fatal(err)
		}
	}
	var out bytes.Buffer
	if err := f.Write(&out); err != nil {
		t.Fatal(err)
	}
	b, err := Open(out.Bytes())
	if err != nil {
		t.Fatal(err)
	}
	_, d := read(t, out.Bytes(), nil, Options{})
	want := []Fault{{Row: 1, Column: 3, Code: FaultFormula}, {Row: 2, Column: 2, Code: FaultFormula}}
	if !slices.Equal(d.Faults, want) {
		t.Errorf("faults are %+v", d.Faults)
	}
	if len(b.Sheets[0].Rows) != 3 {
		t.Errorf("%d rows are read", len(b.Sheets[0].Rows))
	}
	if cells := unworkedOf([]byte(`<sheetData><row r="1"><c r="A1" t="str"><f>IF(B1="","",B1)</f><v></v></c><c r="B1"><f>1</f><v>1</v></c><c r="C1"><f t="shared" si="0"/></c></row></sheetData>`)); len(cells) != 1 || !cells["C1"] {
		t.Errorf("formulas without a result: %v", cells)
	}
}
